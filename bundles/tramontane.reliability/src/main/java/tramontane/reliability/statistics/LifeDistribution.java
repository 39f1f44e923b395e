package tramontane.reliability.statistics;

/**
 * How the lives of alike units are spread. Implementations are immutable.
 *
 * <p>Lives are never below zero, and the distribution has a density.
 */
public interface LifeDistribution {

    /**
     * Share of the units that live longer than a time.
     *
     * @param time not below zero
     * @return 1 at zero, falling to 0
     */
    double survival(double time);

    /**
     * Failure rate of those that still live, per unit of time.
     *
     * @param time not below zero; infinite at zero where the distribution starts so
     */
    double hazard(double time);

    /**
     * The time by which a share of the units has failed: L10 for 0.1.
     *
     * @param failed 0 to below 1
     */
    double life(double failed);

    /** Mean life, MTTF; infinite where there is none. */
    double mean();

    /**
     * The same with all lives longer by a factor.
     *
     * @param factor above zero
     */
    LifeDistribution scaled(double factor);
}
