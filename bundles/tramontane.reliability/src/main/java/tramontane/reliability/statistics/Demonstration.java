package tramontane.reliability.statistics;

/**
 * How many units must pass to show a reliability, whatever the distribution of lives: each runs for the wanted time and either fails or
 * does not.
 *
 * <p>A test passes with at most the allowed failures. Source: binomial sum, as for instance in W. Meeker, L. Escobar, "Statistical
 * Methods for Reliability Data" (1998), 10.5.
 */
public final class Demonstration {

    private static final int MOST = 1_000_000_000;

    private Demonstration() {
    }

    /**
     * Units for a test without failures, before rounding up: {@code ln(1 - C)/ln R}.
     *
     * @param reliability R, share that survives, to be shown
     * @param confidence  C, one-sided
     */
    public static double units(double reliability, double confidence) {
        Requires.share("reliability", reliability);
        Requires.share("confidence", confidence);
        return Math.log1p(-confidence) / Math.log(reliability);
    }

    /**
     * Fewest units for a test that allows failures.
     *
     * @param reliability R, share that survives, to be shown
     * @param confidence  C, one-sided
     * @param failures    allowed
     */
    public static int units(double reliability, double confidence, int failures) {
        Requires.share("reliability", reliability);
        Requires.share("confidence", confidence);
        ExactBounds.failures(failures);
        return Smallest.from(failures + 1, MOST, units -> confidence(units, failures, reliability) >= confidence * (1 - 1e-12))
            .orElseThrow(() -> new IllegalArgumentException(
                "to show a reliability of " + reliability + " takes more than " + MOST + " units"));
    }

    /** Reliability shown by so many units of which so many failed: one-sided lower bound. */
    public static double reliability(int units, int failed, double confidence) {
        return 1 - ExactBounds.upperShare(failed, units, confidence);
    }

    /** Confidence with which a reliability is shown by so many units of which so many failed. */
    public static double confidence(int units, int failed, double reliability) {
        return 1 - passProbability(units, failed, reliability);
    }

    /**
     * Probability that a test passes.
     *
     * @param failures    allowed
     * @param reliability what the units truly have
     */
    public static double passProbability(int units, int failures, double reliability) {
        Requires.share("reliability", reliability);
        ExactBounds.failures(failures);
        if (units < 1) {
            throw new IllegalArgumentException("at least 1 unit is needed, got " + units);
        }
        return Quantiles.atMost(failures, units, 1 - reliability);
    }
}
