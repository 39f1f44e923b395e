package tramontane.selection;

import java.util.List;
import java.util.OptionalDouble;
import org.osgi.annotation.versioning.ConsumerType;
import tramontane.model.AirMover;

/**
 * Says beforehand how good a figure may at best come out for a part, so that a choice that ranks by this figure need not judge every
 * candidate exactly; implemented by whoever gives the figure, and registered as a service. Without one all that may do are judged.
 *
 * <pre>{@code
 * @Component
 * public final class QuietAtBest implements FigureBound {
 *     public String figure() { return "lab.level"; }
 *     public OptionalDouble best(AirMover part, Arrangement arrangement, List<Duty> duties) {
 *         return duties.stream().mapToDouble(duty -> 50 * Math.log10(duty.speed())).max(); // no candidate is quieter than that
 *     }
 * }
 * }</pre>
 */
@ConsumerType
public interface FigureBound {

    /** The id of the figure. */
    String figure();

    /**
     * The best that the figure, the worst of all places and conditions, may come to.
     *
     * @param part        the part
     * @param arrangement how it is arranged
     * @param duties      where it works at the lowest speed that may do, by the reduced design; the exact speed is no lower
     * @return SI; empty where nothing can be said
     */
    OptionalDouble best(AirMover part, Arrangement arrangement, List<Duty> duties);

    /**
     * Where a bank works in one group of cases, by the reduced design.
     *
     * @param condition the condition
     * @param running   how many of its movers run
     * @param flow      of the bank, m³/s
     * @param pressure  of the bank, Pa
     * @param speed     of its movers, rad/s
     * @param density   at its inlet, kg/m³
     */
    record Duty(String condition, int running, double flow, double pressure, double speed, double density) {
    }
}
