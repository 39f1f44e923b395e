package tramontane.reliability.statistics;

import java.util.List;
import java.util.OptionalDouble;

/**
 * The most likely distribution of a family for what was seen in a life test: exact, right-, left- and interval-censored units.
 *
 * <p>The likelihood is maximised by Newton's method with step control, at most 200 steps; parameters are exact to about 1e-9 of their
 * standard error. It has one maximum at most, see {@link #of}.
 *
 * <p>Bounds are approximate, better the more units failed; see {@link Bounds.Method}. With the shape given, bounds are those of
 * the scale alone.
 *
 * <p>Sources: W. Meeker, L. Escobar, "Statistical Methods for Reliability Data" (1998), chapters 7 and 8; NIST/SEMATECH e-Handbook of
 * Statistical Methods, 8.4.1.2 and 8.4.1.3; IEC 61649.
 *
 * @param family        which family
 * @param data          what was seen
 * @param givenShape    the shape, where it was given instead of estimated
 * @param location      μ, mean of the logarithm of life for lognormal, logarithm of the scale otherwise
 * @param spread        σ, factor on the standard variable; 1/β for Weibull
 * @param logLikelihood its logarithm, of the densities per unit of time for units whose moment of failure is known
 * @param covariance    of μ and ln σ from the observed Fisher information; one row only where the shape is known
 * @param iterations    Newton steps made
 */
public record LifeFit(Family family, LifeData data, OptionalDouble givenShape, double location, double spread, double logLikelihood,
        List<List<Double>> covariance, int iterations) {

    private static final double[] ONE = {1};

    /** Copies the covariance in. */
    public LifeFit {
        covariance = covariance.stream().map(List::copyOf).toList();
    }

    /**
     * Fits location and spread.
     *
     * <p>There is no fit if no unit failed, if all had failed when first looked at, if one single time of failure agrees with all that
     * was seen (all failed at once and no other lived longer, or intervals that overlap all), or if units were looked at once each and
     * those that had failed were not looked at later than the others.
     */
    public static Outcome<LifeFit> of(LifeData data, Family family) {
        return fit(data, family, OptionalDouble.empty());
    }

    /**
     * Fits the scale for a shape that is known, β for Weibull, σ for lognormal.
     *
     * @param shape above zero; 1 for exponential
     */
    public static Outcome<LifeFit> ofShape(LifeData data, Family family, double shape) {
        Requires.positive("shape", shape);
        if (family == Family.EXPONENTIAL && shape != 1) {
            throw new IllegalArgumentException("the shape of an exponential distribution is 1, got " + shape);
        }
        return fit(data, family, OptionalDouble.of(shape));
    }

    private static Outcome<LifeFit> fit(LifeData data, Family family, OptionalDouble shape) {
        return switch (regression(data, family, shape).solve()) {
            case Outcome.NotFound<Regression.Solution>(Outcome.Reason reason, String sentence) -> new Outcome.NotFound<>(reason, sentence);
            case Outcome.Found<Regression.Solution>(Regression.Solution solution) -> new Outcome.Found<>(new LifeFit(family, data, shape,
                    solution.location(ONE), solution.spread(), solution.logLikelihood(), solution.covariance(), solution.iterations()));
        };
    }

    private static Regression regression(LifeData data, Family family, OptionalDouble shape) {
        List<Regression.Row> rows = data.observations().stream().map(each -> new Regression.Row(each, ONE)).toList();
        return new Regression(family, rows,
                shape.isPresent() ? OptionalDouble.of(family.spread(shape.getAsDouble())) : OptionalDouble.empty());
    }

    /** The fitted distribution. */
    public LifeDistribution distribution() {
        return family.distribution(location, spread);
    }

    /** The shape: β for Weibull, σ for lognormal, 1 for exponential. */
    public double shape() {
        return family.shape(spread);
    }

    /** How many parameters were estimated. */
    public int parameters() {
        return covariance.size();
    }

    /** Akaike's information criterion, {@code 2 parameters - 2 logLikelihood}: of two fits to the same data prefer the lower. */
    public double aic() {
        return 2 * parameters() - 2 * logLikelihood;
    }

    /**
     * Two-sided bounds: each end is missed with half of what the confidence leaves.
     *
     * @param confidence above 0, below 1
     * @throws ArithmeticException where a likelihood-ratio bound is not found within 200 steps
     */
    public Bounds bounds(Quantity quantity, double confidence, Bounds.Method method) {
        Requires.share("confidence", confidence);
        double deviate = Regression.deviate((1 + confidence) / 2);
        return between(quantity, -deviate, deviate, method);
    }

    /**
     * The value above which the quantity lies, with a confidence.
     *
     * @param confidence above 0, below 1; below 0.5 the bound lies above the estimate
     */
    public double lower(Quantity quantity, double confidence, Bounds.Method method) {
        return between(quantity, -Regression.deviate(confidence), Double.POSITIVE_INFINITY, method).lower();
    }

    /**
     * The value below which the quantity lies, with a confidence.
     *
     * @param confidence above 0, below 1; below 0.5 the bound lies below the estimate
     */
    public double upper(Quantity quantity, double confidence, Bounds.Method method) {
        return between(quantity, Double.NEGATIVE_INFINITY, Regression.deviate(confidence), method).upper();
    }

    private Bounds between(Quantity quantity, double low, double high, Bounds.Method method) {
        return regression(data, family, givenShape).solve().orElseThrow().bounds(quantity, ONE, low, high, method);
    }
}
