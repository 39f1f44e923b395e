package tramontane.reliability.system;

import org.hipparchus.special.Gamma;

/**
 * How many spares must lie ready: demand until the next delivery follows Poisson's law, as it does for many units that fail
 * independently, each rarely in that time.
 *
 * @param demand expected demand until the next delivery, not below zero: rate of failures × units × lead time
 * @param batch  what is needed all at once and for sure on top, for example for a preventive exchange; not below zero
 */
public record Spares(double demand, int batch) {

    private static final double MOST = 1e9;

    /** Refuses what can't be. */
    public Spares {
        if (Refuse.notNegative("demand", demand) > MOST) {
            throw new IllegalArgumentException("demand must not be above " + MOST + ", got " + demand);
        }
        Refuse.atLeast(0, "batch", batch);
    }

    /**
     * The demand of a fleet.
     *
     * @param rate     failures per time of one system, not below zero
     * @param leadTime from order to delivery, in the same unit of time, not below zero
     * @param fleet    systems, 0 or more
     */
    public static Spares of(double rate, double leadTime, int fleet) {
        Refuse.atLeast(0, "fleet", fleet);
        return new Spares(Refuse.notNegative("rate", rate) * Refuse.notNegative("lead time", leadTime) * fleet, 0);
    }

    /** The same demand with a batch on top. */
    public Spares withBatch(int size) {
        return new Spares(demand, size);
    }

    /**
     * Probability that more is asked for than lies ready.
     *
     * @param spares 0 or more
     */
    public double shortage(int spares) {
        int left = Refuse.atLeast(0, "spares", spares) - batch;
        if (left < 0) {
            return 1;
        }
        return demand == 0 ? 0 : Gamma.regularizedGammaP(left + 1.0, demand);
    }

    /**
     * The fewest spares that run short with a probability of at most 1 - confidence.
     *
     * @param confidence between 0 and 1
     */
    public int needed(double confidence) {
        double allowed = 1 - Refuse.within("confidence", confidence);
        int high = Math.addExact(batch, (int) Math.min(MOST, demand));
        int stride = 1;
        while (shortage(high) > allowed) {
            high = Math.addExact(high, stride);
            stride *= 2;
        }
        int low = batch - 1;
        while (high - low > 1) {
            int middle = low + (high - low) / 2;
            if (shortage(middle) > allowed) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return high;
    }
}
