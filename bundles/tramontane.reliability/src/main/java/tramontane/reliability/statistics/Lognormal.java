package tramontane.reliability.statistics;

import org.hipparchus.distribution.continuous.NormalDistribution;
import org.hipparchus.special.Erf;

/**
 * The lognormal distribution: the logarithm of life is normal, {@code R(t) = Φ(-ln(t/median)/σ)}.
 *
 * @param median time by which half have failed, above zero
 * @param spread σ, standard deviation of the natural logarithm of life, above zero
 */
public record Lognormal(double median, double spread) implements LifeDistribution {

    private static final NormalDistribution NORMAL = new NormalDistribution();

    /** Refuses what is not above zero and finite. */
    public Lognormal {
        Requires.positive("median", median);
        Requires.positive("spread", spread);
    }

    private double standard(double time) {
        return Math.log(time / median) / spread;
    }

    @Override
    public double survival(double time) {
        return time <= 0 ? 1 : 0.5 * Erf.erfc(standard(time) / Math.sqrt(2));
    }

    @Override
    public double hazard(double time) {
        if (time <= 0) {
            return 0;
        }
        double z = standard(time);
        return Math.exp(-z * z / 2) / Math.sqrt(2 * Math.PI) / (spread * time) / survival(time);
    }

    @Override
    public double life(double failed) {
        return failed <= 0 ? 0 : median * Math.exp(spread * NORMAL.inverseCumulativeProbability(failed));
    }

    @Override
    public double mean() {
        return median * Math.exp(spread * spread / 2);
    }

    @Override
    public Lognormal scaled(double factor) {
        return new Lognormal(median * factor, spread);
    }
}
