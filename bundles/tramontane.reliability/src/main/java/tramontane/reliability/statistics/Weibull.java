package tramontane.reliability.statistics;

import org.hipparchus.special.Gamma;

/**
 * The Weibull distribution, {@code R(t) = exp(-(t/η)^β)}.
 *
 * <p>Source: W. Weibull, "A Statistical Distribution Function of Wide Applicability", J. Appl. Mech. 18 (1951); IEC 61649.
 *
 * @param scale η, the time by which 63.2 % have failed, above zero
 * @param shape β, above zero: below 1 failures get rarer with age, 1 is the exponential distribution, above 1 units wear out
 */
public record Weibull(double scale, double shape) implements LifeDistribution {

    /** Refuses what is not above zero and finite. */
    public Weibull {
        Requires.positive("scale", scale);
        Requires.positive("shape", shape);
    }

    /**
     * The distribution of which a share has failed by a time.
     *
     * @param time   for example L10
     * @param failed the share, for example 0.1
     * @param shape  β
     */
    public static Weibull through(double time, double failed, double shape) {
        Requires.positive("time", time);
        Requires.share("failed", failed);
        Requires.positive("shape", shape);
        return new Weibull(time / Math.pow(-Math.log1p(-failed), 1 / shape), shape);
    }

    /**
     * The distribution of a mean life.
     *
     * @param mean  MTTF
     * @param shape β
     */
    public static Weibull ofMean(double mean, double shape) {
        Requires.positive("mean", mean);
        Requires.positive("shape", shape);
        return new Weibull(mean / Gamma.gamma(1 + 1 / shape), shape);
    }

    @Override
    public double survival(double time) {
        return Math.exp(-Math.pow(time / scale, shape));
    }

    @Override
    public double hazard(double time) {
        return shape / scale * Math.pow(time / scale, shape - 1);
    }

    @Override
    public double life(double failed) {
        return scale * Math.pow(-Math.log1p(-failed), 1 / shape);
    }

    @Override
    public double mean() {
        return scale * Gamma.gamma(1 + 1 / shape);
    }

    @Override
    public Weibull scaled(double factor) {
        return new Weibull(scale * factor, shape);
    }
}
