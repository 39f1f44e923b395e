package tramontane.selection;

import java.util.List;
import java.util.OptionalDouble;
import org.osgi.annotation.versioning.ConsumerType;
import tramontane.model.AirMover;
import tramontane.model.Design;

/**
 * Says beforehand how good a figure may at best come out for a part, so that a choice that ranks by this figure need not judge every
 * candidate exactly; implemented by whoever gives the figure, and registered as a service. Without one all that may do are judged.
 *
 * <pre>{@code
 * @Component
 * public final class QuietAtBest implements FigureBound {
 *     public String figure() { return "lab.level"; }
 *     public Bound of(Design design, String bank) {
 *         double distance = distance(design); // read once for all candidates
 *         return (part, arrangement, duties) -> duties.isEmpty() ? Best.OPEN // no candidate is quieter than that
 *                 : Best.of(duties.stream().mapToDouble(duty -> 50 * Math.log10(duty.speed())).max().getAsDouble() - 20 * Math.log10(distance));
 *     }
 * }
 * }</pre>
 */
@ConsumerType
public interface FigureBound {

    /** The id of the figure. */
    String figure();

    /**
     * Prepares for a choice.
     *
     * @param design the design that is chosen for, with what its bank holds now
     * @param bank   the id of the bank that a part is chosen for
     */
    Bound of(Design design, String bank);

    /** What is said of the candidates of one choice; asked from several threads at once. */
    @FunctionalInterface
    interface Bound {

        /**
         * The best that the figure, the worst of all places and conditions, may come to.
         *
         * @param part        the part
         * @param arrangement how it is arranged
         * @param duties      where it works, by the reduced design, in each group of cases that this tells of
         */
        Best best(AirMover part, Arrangement arrangement, List<Duty> duties);
    }

    /**
     * What can be said of a figure.
     *
     * @param value   the best that it may come to, SI; empty where that is not known
     * @param missing whether it will not come out at all, as what it needs is not stated; the candidate then stands behind all that
     *                have it, as if it had been judged
     */
    record Best(OptionalDouble value, boolean missing) {

        /** Nothing can be said: the candidate is judged exactly. */
        public static final Best OPEN = new Best(OptionalDouble.empty(), false);
        /** The figure will not come out. */
        public static final Best MISSING = new Best(OptionalDouble.empty(), true);

        /**
         * A figure that comes out no better.
         *
         * @param value SI
         */
        public static Best of(double value) {
            return new Best(OptionalDouble.of(value), false);
        }
    }

    /**
     * Where a bank works in one group of cases, by the reduced design, at the lowest speed that may do; the exact speed is no lower.
     *
     * @param condition the id of the condition as it is declared
     * @param running   how many of its movers run
     * @param flow      of the bank, m³/s
     * @param pressure  of the bank, Pa
     * @param speed     of its movers, rad/s
     * @param density   at its inlet, kg/m³
     * @param fullFlow  of the bank at full speed, m³/s; infinite where it is more than was looked at
     * @param fullSpeed of its movers at full setting, rad/s; the exact speed is no higher
     */
    record Duty(String condition, int running, double flow, double pressure, double speed, double density, double fullFlow, double fullSpeed) {
    }
}
