package tramontane.reliability.statistics;

import tramontane.reliability.statistics.ExactBounds.Ending;

/**
 * What a life test shows about units of which the Weibull shape is known: a test of few or no failures.
 *
 * <p>With the shape β known, {@code t^β} is exponential, and the exact bounds of the exponential distribution apply. The bound is as good
 * as the shape; where that is not known well, take it through a likely range.
 *
 * <p>Source: R. Abernethy, "The New Weibull Handbook" (5th ed. 2006), chapter 6; W. Nelson, "Weibull Analysis of Reliability Data with
 * Few or No Failures", J. Qual. Technol. 17 (1985).
 *
 * @param shape    β, known beforehand
 * @param exposure {@code (Σ t^β)^(1/β)}: the time a single unit would have to run to be tested as hard as all of them together
 * @param failures how many failed
 */
public record Weibayes(double shape, double exposure, int failures) {

    /** Which scale stands for the test where the data alone give none. */
    public enum Convention {
        /** Most likely scale, {@code exposure/r^(1/β)}; without failures as if the first were just about to happen, r = 1. */
        MOST_LIKELY,
        /** The scale that true values exceed as often as not, by the exact bound of 50 % confidence. */
        MEDIAN
    }

    /** Refuses what is not above zero, and failures below zero. */
    public Weibayes {
        Requires.positive("shape", shape);
        Requires.positive("time on test", exposure);
        ExactBounds.failures(failures);
    }

    /**
     * A test of units that failed at a known moment or still lived.
     *
     * @throws IllegalArgumentException where a moment of failure is not known; see {@link #cautious}
     */
    public static Weibayes of(LifeData data, double shape) {
        if (!data.exact()) {
            throw new IllegalArgumentException(
                "with a known shape every failure is needed to the moment, or taken cautiously at the last look before it");
        }
        return cautious(data, shape);
    }

    /**
     * A test of any observations: a failure counts, with the time until which the unit was known to live. Lower bounds are then a little
     * low, never high; the scale and upper bounds are a little low too.
     */
    public static Weibayes cautious(LifeData data, double shape) {
        Requires.positive("shape", shape);
        double longest = data.observations().stream().mapToDouble(Observation::from).max().orElseThrow();
        if (longest == 0) {
            throw new IllegalArgumentException("no unit was known to live at any time above zero, so the test shows no life");
        }
        // Relative to the longest time, because t^β of hours and a steep shape is beyond all numbers.
        double sum = data.observations().stream().mapToDouble(each -> each.count() * Math.pow(each.from() / longest, shape)).sum();
        return new Weibayes(shape, longest * Math.pow(sum, 1 / shape), data.failures());
    }

    private double scale(double events) {
        return exposure / Math.pow(events, 1 / shape);
    }

    /** The scale η that stands for the test. */
    public double scale(Convention convention) {
        return switch (convention) {
            case MOST_LIKELY -> scale(Math.max(failures, 1));
            case MEDIAN -> lowerScale(Ending.TIME, 0.5);
        };
    }

    /**
     * One-sided lower bound of the scale η.
     *
     * @param ending {@link Ending#TIME} wherever in doubt: it gives the lower bound
     */
    public double lowerScale(Ending ending, double confidence) {
        return scale(1 / ExactBounds.lowerMean(1, failures, ending, confidence));
    }

    /** One-sided upper bound of the scale η; infinite without failures. */
    public double upperScale(Ending ending, double confidence) {
        return scale(1 / ExactBounds.upperMean(1, failures, ending, confidence));
    }

    /** Two-sided bounds of the scale η. */
    public Interval scale(Ending ending, double confidence) {
        Requires.share("confidence", confidence);
        double side = (1 + confidence) / 2;
        return new Interval(lowerScale(ending, side), upperScale(ending, side));
    }

    /**
     * The distribution demonstrated: true lives are at least as long, at this one-sided confidence. {@code demonstrated(0.9).life(0.1)}
     * is the L10 shown at 90 % by a test that a set time ended.
     */
    public Weibull demonstrated(double confidence) {
        return new Weibull(lowerScale(Ending.TIME, confidence), shape);
    }

    /**
     * Life demonstrated by a test that a set time ended.
     *
     * @param failed     share that may have failed by then, 0.1 for L10
     * @param confidence one-sided
     */
    public double demonstratedLife(double failed, double confidence) {
        Requires.share("share failed", failed);
        return demonstrated(confidence).life(failed);
    }
}
