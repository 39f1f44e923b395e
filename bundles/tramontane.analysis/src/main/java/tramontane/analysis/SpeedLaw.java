package tramontane.analysis;

import java.util.Optional;
import org.osgi.annotation.versioning.ConsumerType;
import tramontane.model.AirMover;
import tramontane.model.Condition;

/**
 * How fast a mover turns; implemented by extensions and registered as a service.
 *
 * <p>Of several, the one with the highest service ranking that has an answer is used. Where none has, the speed is the
 * condition's speed setting times the rated speed.
 *
 * <pre>{@code
 * @Component
 * public final class SynchronousMotor implements SpeedLaw {
 *     public Optional<Double> speed(Supply supply) {
 *         boolean mine = supply.mover().section("synchronous").isPresent();
 *         return mine ? supply.condition().supplyFrequency().map(f -> 2 * Math.PI * f.si() / 2) : Optional.empty();
 *     }
 * }
 * }</pre>
 */
@ConsumerType
public interface SpeedLaw {

    /**
     * The speed of a mover.
     *
     * @param supply what it is fed with and works against
     * @return speed, rad/s; empty for a mover that this law does not know
     */
    Optional<Double> speed(Supply supply);

    /**
     * What a mover is fed with and works against.
     *
     * @param mover     the part
     * @param condition the condition, with supply voltage and frequency
     * @param setting   speed setting, 1 for full
     * @param density   air density at its inlet, kg/m³
     */
    record Supply(AirMover mover, Condition condition, double setting, double density) {
    }
}
