package tramontane.reliability.statistics;

/**
 * Confidence bounds that hold exactly, also for few or no failures: of the mean life of units that do not age, and of a share.
 *
 * <p>Sources: NIST/SEMATECH e-Handbook of Statistical Methods, 8.4.5.1 and 8.3.1.2 (chi-square bounds); B. Epstein, M. Sobel, "Life
 * Testing", J. Am. Stat. Assoc. 48 (1953); C. Clopper, E. Pearson, Biometrika 26 (1934).
 */
public final class ExactBounds {

    /** What ended a test. */
    public enum Ending {
        /** A time set beforehand; the bounds then hold at least the confidence asked for. */
        TIME,
        /** The last of the failures, their number set beforehand; the bounds then hold just the confidence asked for. */
        FAILURE
    }

    private ExactBounds() {
    }

    /**
     * How many times the mean life all units together must run to show it with at most so many failures: {@code χ²(C; 2r + 2)/2}.
     *
     * @param failures   r, allowed
     * @param confidence C, one-sided
     */
    public static double lengthFactor(int failures, double confidence) {
        failures(failures);
        Requires.share("confidence", confidence);
        return Quantiles.halfChiSquare(confidence, failures + 1);
    }

    /**
     * One-sided lower bound of the mean life: {@code 2T/χ²(C; 2r + 2)}, or {@code 2T/χ²(C; 2r)} where a failure ended the test.
     *
     * @param total    T, time that all units ran, together
     * @param failures r, not below zero; at least 1 where a failure ended the test
     */
    public static double lowerMean(double total, int failures, Ending ending, double confidence) {
        total(total, failures, ending);
        Requires.share("confidence", confidence);
        return total / Quantiles.halfChiSquare(confidence, ending == Ending.TIME ? failures + 1 : failures);
    }

    /**
     * One-sided upper bound of the mean life: {@code 2T/χ²(1 - C; 2r)}, infinite without failures.
     *
     * @param total    T, time that all units ran, together
     * @param failures r, not below zero; at least 1 where a failure ended the test
     */
    public static double upperMean(double total, int failures, Ending ending, double confidence) {
        total(total, failures, ending);
        Requires.share("confidence", confidence);
        return failures == 0 ? Double.POSITIVE_INFINITY : total / Quantiles.halfChiSquare(1 - confidence, failures);
    }

    /**
     * Two-sided bounds of the mean life, as much left out on either side.
     *
     * @param total    T, time that all units ran, together
     * @param failures r, not below zero; at least 1 where a failure ended the test
     */
    public static Interval mean(double total, int failures, Ending ending, double confidence) {
        Requires.share("confidence", confidence);
        double side = (1 + confidence) / 2;
        return new Interval(lowerMean(total, failures, ending, side), upperMean(total, failures, ending, side));
    }

    /** One-sided lower bound (Clopper and Pearson) of a share of which so many of the units were found. */
    public static double lowerShare(int found, int units, double confidence) {
        sample(found, units, confidence);
        return found == 0 ? 0 : Quantiles.beta(1 - confidence, found, units - found + 1.0);
    }

    /** One-sided upper bound (Clopper and Pearson) of a share of which so many of the units were found. */
    public static double upperShare(int found, int units, double confidence) {
        sample(found, units, confidence);
        return found == units ? 1 : Quantiles.beta(confidence, found + 1.0, units - found);
    }

    /** Two-sided bounds (Clopper and Pearson) of a share, as much left out on either side. */
    public static Interval share(int found, int units, double confidence) {
        Requires.share("confidence", confidence);
        double side = (1 + confidence) / 2;
        return new Interval(lowerShare(found, units, side), upperShare(found, units, side));
    }

    static void failures(int failures) {
        if (failures < 0) {
            throw new IllegalArgumentException("failures cannot be below zero, got " + failures);
        }
    }

    private static void total(double total, int failures, Ending ending) {
        Requires.positive("time on test", total);
        failures(failures);
        if (ending == Ending.FAILURE && failures == 0) {
            throw new IllegalArgumentException("a test that a failure ended has at least one failure, got none");
        }
    }

    private static void sample(int found, int units, double confidence) {
        Requires.share("confidence", confidence);
        if (units < 1) {
            throw new IllegalArgumentException("at least 1 unit is needed, got " + units);
        }
        if (found < 0 || found > units) {
            throw new IllegalArgumentException("between 0 and all " + units + " units can be found, got " + found);
        }
    }
}
