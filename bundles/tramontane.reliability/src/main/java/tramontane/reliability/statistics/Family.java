package tramontane.reliability.statistics;

import java.util.Locale;
import org.hipparchus.distribution.continuous.NormalDistribution;
import org.hipparchus.special.Gamma;

/**
 * A family of life distributions of location and scale in the logarithm of life: {@code ln T = μ + σ Z}.
 *
 * <p>{@code Z} has the standard distribution of the smallest extreme value for {@link #WEIBULL} ({@code η = exp(μ)}, {@code β = 1/σ}) and
 * {@link #EXPONENTIAL} (σ is 1), and the standard normal one for {@link #LOGNORMAL} (median {@code exp(μ)}). What is said of a
 * standardised {@code z} here is computed without loss far into both tails.
 *
 * <p>Source: W. Meeker, L. Escobar, "Statistical Methods for Reliability Data" (1998), chapter 4.
 */
public enum Family {

    /** Units age or run in: {@code R(t) = exp(-(t/η)^β)}. */
    WEIBULL,
    /** The logarithm of life is normal. */
    LOGNORMAL,
    /** Units do not age; a Weibull distribution of shape 1. */
    EXPONENTIAL;

    private static final NormalDistribution NORMAL = new NormalDistribution();
    private static final double HALF_LOG_TWO_PI = 0.9189385332046727418;
    /** Below this width of an interval (in units of how fast the density changes) it is a density times a width. */
    private static final double NARROW = 1e-4;
    /** Where exp(-a) no longer counts beside 1 and exp(a) is near the end of the numbers. */
    private static final double LARGE = 700;

    /** The name in running text, in lower case. */
    public String word() {
        return name().toLowerCase(Locale.ROOT);
    }

    /** Whether only the scale is estimated, because σ is 1. */
    public boolean shapeKnown() {
        return this == EXPONENTIAL;
    }

    /**
     * The distribution of these parameters.
     *
     * @param location μ, the natural logarithm of the scale or the median
     * @param spread   σ, above zero; 1 for {@link #EXPONENTIAL}
     */
    public LifeDistribution distribution(double location, double spread) {
        return switch (this) {
            case WEIBULL -> new Weibull(Math.exp(location), 1 / spread);
            case LOGNORMAL -> new Lognormal(Math.exp(location), spread);
            case EXPONENTIAL -> {
                if (spread != 1) {
                    throw new IllegalArgumentException("the spread of an exponential distribution is 1, got " + spread);
                }
                yield new Exponential(Math.exp(location));
            }
        };
    }

    /** The shape an engineer speaks of: β for Weibull, σ for lognormal, 1 for exponential. */
    public double shape(double spread) {
        return this == WEIBULL ? 1 / spread : spread;
    }

    /** The spread σ of a shape: the inverse of {@link #shape}. */
    public double spread(double shape) {
        return this == WEIBULL ? 1 / shape : shape;
    }

    private boolean normal() {
        return this == LOGNORMAL;
    }

    /** Logarithm of the density of Z. */
    public double logDensity(double z) {
        return normal() ? -z * z / 2 - HALF_LOG_TWO_PI : z - Math.exp(z);
    }

    /** First derivative of {@link #logDensity}. */
    public double logDensitySlope(double z) {
        return normal() ? -z : -Math.expm1(z);
    }

    /** Second derivative of {@link #logDensity}. */
    public double logDensityCurvature(double z) {
        return normal() ? -1 : -Math.exp(z);
    }

    /** Logarithm of the probability that Z is above z. */
    public double logSurvival(double z) {
        return normal() ? logUpperNormal(z) : -Math.exp(z);
    }

    /** Density over survival: minus the first derivative of {@link #logSurvival}. */
    public double hazard(double z) {
        return normal() ? upperNormalHazard(z) : Math.exp(z);
    }

    /** Logarithm of the probability that Z is below z. */
    public double logFailed(double z) {
        return normal() ? logUpperNormal(-z) : logOneMinusExp(Math.exp(z));
    }

    /** Probability that Z is above z. */
    public double survival(double z) {
        return Math.exp(logSurvival(z));
    }

    /**
     * The z below which a share of Z lies.
     *
     * @param failed above 0, below 1
     */
    public double quantile(double failed) {
        Requires.share("share failed", failed);
        return normal() ? NORMAL.inverseCumulativeProbability(failed) : Math.log(-Math.log1p(-failed));
    }

    /** {@code ln(mean life) - μ} for a spread, with its first and second derivative by the spread. */
    double[] logMean(double spread) {
        if (normal()) {
            return new double[] {spread * spread / 2, spread, 1};
        }
        return new double[] {Gamma.logGamma(1 + spread), Gamma.digamma(1 + spread), Gamma.trigamma(1 + spread)};
    }

    /** What was seen of a unit, as seen from its standardised times. */
    enum Seen {
        FAILED, SURVIVED, FAILED_BEFORE, BETWEEN
    }

    /**
     * Contribution of one unit to the log-likelihood, by its standardised times.
     *
     * <p>A failure known to the moment leaves out the logarithm of the rate {@code dz/dt}. {@code into} receives the value, its derivatives
     * by the first and second time (of which only the one that matters is used), and the second derivatives first-first, first-second,
     * second-second.
     *
     * @return whether an interval was so narrow that it was handled as a failure at its middle: then the first derivatives hold for moving
     *     that middle and the logarithm of the interval's width in z is part of the value, but not of the derivatives
     */
    boolean contribution(Seen seen, double first, double second, double[] into) {
        into[1] = 0;
        into[2] = 0;
        into[3] = 0;
        into[4] = 0;
        into[5] = 0;
        switch (seen) {
            case FAILED -> failed(first, into);
            case SURVIVED -> {
                double hazard = hazard(first);
                into[0] = logSurvival(first);
                into[1] = -hazard;
                into[3] = normal() ? -hazard * (hazard - first) : -hazard;
            }
            case FAILED_BEFORE -> failedBefore(second, into);
            case BETWEEN -> {
                double middle = (first + second) / 2;
                double width = second - first;
                double slope = logDensitySlope(middle);
                if (width * (1 + Math.abs(slope)) < NARROW) {
                    failed(middle, into);
                    into[0] += Math.log(width) + width * width / 24 * (logDensityCurvature(middle) + slope * slope);
                    return true;
                }
                if (normal()) {
                    betweenNormal(first, second, into);
                } else {
                    betweenExtreme(first, second, into);
                }
            }
        }
        return false;
    }

    private void failed(double z, double[] into) {
        into[0] = logDensity(z);
        into[1] = logDensitySlope(z);
        into[3] = logDensityCurvature(z);
    }

    private void failedBefore(double z, double[] into) {
        if (normal()) {
            double hazard = upperNormalHazard(-z);
            into[0] = logUpperNormal(-z);
            into[2] = hazard;
            into[5] = -hazard * (hazard + z);
        } else {
            double a = Math.exp(z);
            double weight = a == 0 ? 1 : overExpm1(a, a);
            into[0] = a == 0 ? z : logOneMinusExp(a);
            into[2] = weight;
            into[5] = weight == 0 ? 0 : weight * (1 - a - weight);
        }
    }

    private static void betweenExtreme(double first, double second, double[] into) {
        double a = Math.exp(first);
        double b = Math.exp(second);
        double difference = second - first < 1 ? a * Math.expm1(second - first) : b - a;
        double lower = a / -Math.expm1(-difference);
        double upper = overExpm1(b, difference);
        into[0] = -a + logOneMinusExp(difference);
        if (difference == 0) {
            // Both so early that nothing fails there: the density is exp(z), the interval's share exp(second) - exp(first).
            lower = 1 / Math.expm1(second - first);
            upper = lower + 1;
            into[0] = first + Math.log(Math.expm1(second - first));
        }
        into[1] = -lower;
        into[2] = upper;
        into[3] = -lower * (1 - a + lower);
        into[4] = lower * upper;
        into[5] = upper == 0 ? 0 : upper * (1 - b - upper);
    }

    private void betweenNormal(double first, double second, double[] into) {
        double log;
        if (first > 0) {
            double outer = logUpperNormal(first);
            log = outer + logOneMinusExp(outer - logUpperNormal(second));
        } else if (second < 0) {
            double outer = logUpperNormal(-second);
            log = outer + logOneMinusExp(outer - logUpperNormal(-first));
        } else {
            log = Math.log1p(-Math.exp(logUpperNormal(second)) - Math.exp(logUpperNormal(-first)));
        }
        double lower = Math.exp(logDensity(first) - log);
        double upper = Math.exp(logDensity(second) - log);
        into[0] = log;
        into[1] = -lower;
        into[2] = upper;
        into[3] = lower * (first - lower);
        into[4] = lower * upper;
        into[5] = -upper * (second + upper);
    }

    private static double overExpm1(double numerator, double a) {
        return a > LARGE ? 0 : numerator / Math.expm1(a);
    }

    /** {@code ln(1 - exp(-a))} for a not below zero. */
    private static double logOneMinusExp(double a) {
        return a < 0.6931471805599453 ? Math.log(-Math.expm1(-a)) : Math.log1p(-Math.exp(-a));
    }

    private static double logUpperNormal(double z) {
        if (z > 0) {
            return -z * z / 2 + Math.log(0.5 * ScaledErfc.of(z / Math.sqrt(2)));
        }
        return Math.log1p(-0.5 * Math.exp(-z * z / 2) * ScaledErfc.of(-z / Math.sqrt(2)));
    }

    private static double upperNormalHazard(double z) {
        if (z > 0) {
            return Math.sqrt(2 / Math.PI) / ScaledErfc.of(z / Math.sqrt(2));
        }
        double density = Math.exp(-z * z / 2);
        return density / Math.sqrt(2 * Math.PI) / (1 - 0.5 * density * ScaledErfc.of(-z / Math.sqrt(2)));
    }
}
