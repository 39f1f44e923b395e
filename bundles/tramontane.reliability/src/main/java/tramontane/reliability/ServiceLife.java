package tramontane.reliability;

import java.util.List;
import java.util.Optional;

/**
 * How long the equipment is to serve, what it meets, and how it is looked after: section {@value MoverLife#SECTION} of the design.
 *
 * @param serviceLife    how long it is to serve, s
 * @param conditions     conditions in which is judged what must hold with movers failed; those that let movers fail where empty, all where
 *                       none does
 * @param repair         time from the failure of a mover until it is exchanged, s
 * @param crews          how many movers are exchanged at once
 * @param interval       time between visits at which all movers are exchanged, s
 * @param availability   share of the time in which it must cool, between 0 and 1
 * @param fleet          how many of the equipment there are
 * @param restocking     time until spares are there again, s
 * @param confidence     that spares last so long, between 0 and 1
 * @param hazard         whether loss of cooling can hurt somebody
 * @param damage         whether a mover that stops without warning does damage
 * @param solids         what solids reach the movers
 * @param water          how water reaches the movers
 * @param shock          peak acceleration of shocks, m/s²
 * @param shockTime      how long they last, s
 * @param lowestStorage  lowest temperature of storage and transport, K
 * @param highestStorage highest temperature of storage and transport, K
 */
public record ServiceLife(Optional<Double> serviceLife, List<String> conditions, Optional<Double> repair, Crews crews, Optional<Double> interval,
        Optional<Double> availability, int fleet, Optional<Double> restocking, double confidence, boolean hazard, boolean damage,
        BankLife.Solids solids, BankLife.Water water, Optional<Double> shock, Optional<Double> shockTime, Optional<Double> lowestStorage,
        Optional<Double> highestStorage) {

    /** Confidence that spares last where nothing is said; common practice. */
    public static final double CONFIDENCE = 0.95;

    /** One of which nothing is said. */
    public static final ServiceLife NONE = new ServiceLife(Optional.empty(), List.of(), Optional.empty(), Crews.ONE, Optional.empty(),
            Optional.empty(), 1, Optional.empty(), CONFIDENCE, false, false, BankLife.Solids.NONE, BankLife.Water.NONE, Optional.empty(),
            Optional.empty(), Optional.empty(), Optional.empty());

    public ServiceLife {
        conditions = List.copyOf(conditions);
    }

    /** How many movers are exchanged at once. */
    public enum Crews {
        /** One after the other. */
        ONE("one"),
        /** As many as have failed. */
        ENOUGH("one for each");

        private final String word;

        Crews(String word) {
            this.word = word;
        }

        /** The word in files and labels. */
        public String word() {
            return word;
        }
    }
}
