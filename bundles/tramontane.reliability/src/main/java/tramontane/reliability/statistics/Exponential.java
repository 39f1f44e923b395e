package tramontane.reliability.statistics;

/**
 * The exponential distribution, {@code R(t) = exp(-t/θ)}: units do not age.
 *
 * @param mean θ, mean life, above zero
 */
public record Exponential(double mean) implements LifeDistribution {

    /** Refuses what is not above zero and finite. */
    public Exponential {
        Requires.positive("mean", mean);
    }

    @Override
    public double survival(double time) {
        return Math.exp(-time / mean);
    }

    @Override
    public double hazard(double time) {
        return 1 / mean;
    }

    @Override
    public double life(double failed) {
        return -mean * Math.log1p(-failed);
    }

    @Override
    public Exponential scaled(double factor) {
        return new Exponential(mean * factor);
    }
}
