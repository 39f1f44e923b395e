package tramontane.analysis;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.osgi.annotation.versioning.ConsumerType;
import tramontane.model.AirMover;
import tramontane.model.Condition;
import tramontane.model.Design;
import tramontane.model.Passage;

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
     * What an input of an {@link Origin} comes from that is the density or the temperature of {@link Supply}: whoever traces puts
     * in its place where that air gets them.
     */
    String INLET = "air at the inlet";

    /**
     * The speed of a mover.
     *
     * @param supply what it is fed with and works against
     * @return speed, rad/s; empty for a mover that this law does not know
     */
    Optional<Double> speed(Supply supply);

    /**
     * The names of the sections of the design itself ({@link SectionType.Owner#DESIGN}) that it reads. An analysis that asks for
     * speeds keeps these of the design, and the sections of movers, passages, conditions and control laws anyway.
     */
    default Set<String> sections() {
        return Set.of();
    }

    /**
     * Where a speed that it gave comes from, for who asks about it.
     *
     * @param supply what the mover is fed with and works against
     * @return the relation and what goes into it beside the speed setting; empty where nothing is said
     */
    default Optional<Origin> origin(Supply supply) {
        return Optional.empty();
    }

    /**
     * Where a speed comes from.
     *
     * @param relation the formula of the speed
     * @param inputs   what goes into it beside the speed setting; density and temperature at the inlet come from {@link #INLET}
     */
    record Origin(Relation relation, List<Trace.Term> inputs) {
        public Origin {
            inputs = List.copyOf(inputs);
        }
    }

    /**
     * What a mover is fed with and works against.
     *
     * @param design      the design as the asking analysis reads it: of its own sections those that a law names in
     *                    {@link #sections}
     * @param bank        the passage in which it sits
     * @param mover       the part
     * @param condition   the condition, with supply voltage and frequency
     * @param setting     speed setting, 1 for full
     * @param density     air density at its inlet, kg/m³
     * @param temperature air temperature at its inlet, K
     */
    record Supply(Design design, Passage bank, AirMover mover, Condition condition, double setting, double density,
            double temperature) {

        /** The same at another speed setting. */
        public Supply withSetting(double other) {
            return new Supply(design, bank, mover, condition, other, density, temperature);
        }

        /** The same with another part. */
        public Supply withMover(AirMover other) {
            return new Supply(design, bank, other, condition, setting, density, temperature);
        }

        /** The same in another condition, for example at another voltage. */
        public Supply withCondition(Condition other) {
            return new Supply(design, bank, mover, other, setting, density, temperature);
        }
    }
}
