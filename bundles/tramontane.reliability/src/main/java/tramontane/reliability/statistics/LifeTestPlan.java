package tramontane.reliability.statistics;

import java.util.OptionalInt;

/**
 * A test that shows a life: so many units of known Weibull shape run so long, and it is passed with at most the allowed failures.
 *
 * <p>With {@code h = -ln(1 - failed)} the cumulative hazard at the wanted life, n units pass at the confidence C if each runs
 * {@code t = life (H/h)^(1/β)/acceleration}, where H is the cumulative hazard that fails the test with probability C: see
 * {@link FailedUnits}. The steeper the shape, the nearer the time is to the life, from either side: where the shape is not known well, plan
 * with the highest for tests shorter than the life and with the lowest for longer ones.
 *
 * <p>Source: W. Nelson, "Weibull Analysis of Reliability Data with Few or No Failures", J. Qual. Technol. 17 (1985); NIST/SEMATECH
 * e-Handbook of Statistical Methods, 8.3.1.
 *
 * @param life         to be shown, at the conditions of use
 * @param failed       share that may have failed by then: 0.1 for L10
 * @param confidence   C, one-sided
 * @param shape        β of the Weibull distribution, known beforehand
 * @param failures     allowed, not below zero
 * @param acceleration how many times faster units age in the test than in use; 1 at the same conditions
 * @param failedUnits  what is done with units that fail
 */
public record LifeTestPlan(double life, double failed, double confidence, double shape, int failures, double acceleration,
    FailedUnits failedUnits) {

    private static final int MOST = 1_000_000_000;
    /** Rounding of a time that was itself computed by a plan must not cost a unit. */
    private static final double ROUNDING = 1e-12;

    /** What is done with units that fail during the test. Without allowed failures it makes no difference. */
    public enum FailedUnits {
        /**
         * Repaired to the state just before, so that failures follow Poisson: the usual chi-square formula,
         * {@code H = χ²(C; 2f + 2)/(2n)}. Tests in which failed units are taken out come out a little short by it, 0.4 % in time for one
         * failure of 40 and a shape of 3.
         */
        REPAIRED,
        /** Taken out, so that failures follow binomial: {@code H = -ln(1 - p)} with p the upper bound of the share of f in n. */
        REMOVED
    }

    /** Refuses impossible values. */
    public LifeTestPlan {
        Requires.positive("life", life);
        Requires.share("share failed", failed);
        Requires.share("confidence", confidence);
        Requires.positive("shape", shape);
        ExactBounds.failures(failures);
        Requires.positive("acceleration factor", acceleration);
    }

    /** Shows an L10 without failures at the conditions of use. */
    public static LifeTestPlan toShow(double life, double confidence, double shape) {
        return new LifeTestPlan(life, 0.1, confidence, shape, 0, 1, FailedUnits.REPAIRED);
    }

    /** The same with other allowed failures. */
    public LifeTestPlan withFailures(int allowed) {
        return new LifeTestPlan(life, failed, confidence, shape, allowed, acceleration, failedUnits);
    }

    /** The same with another acceleration factor. */
    public LifeTestPlan withAcceleration(double factor) {
        return new LifeTestPlan(life, failed, confidence, shape, failures, factor, failedUnits);
    }

    /** The same with something else done with failed units. */
    public LifeTestPlan withFailedUnits(FailedUnits done) {
        return new LifeTestPlan(life, failed, confidence, shape, failures, acceleration, done);
    }

    /** The distribution of which the wanted life is just true, at the conditions of use. */
    public Weibull target() {
        return Weibull.through(life, failed, shape);
    }

    /** Time each of the units must run in the test. */
    public double time(int units) {
        return life * reach(units) / acceleration;
    }

    /**
     * Fewest units for a test of a time.
     *
     * @param time each unit runs in the test
     */
    public int units(double time) {
        Requires.positive("time", time);
        return Smallest.from(fewest(), MOST, units -> time(units) <= time * (1 + ROUNDING))
            .orElseThrow(() -> new IllegalArgumentException(
                "a test of " + time + " takes more than " + MOST + " units; run longer or accelerate more"));
    }

    /** Most failures that may be allowed for units that run for a time; empty where they show the life not even without a failure. */
    public OptionalInt allowedFailures(int units, double time) {
        Requires.positive("time", time);
        int most = failedUnits == FailedUnits.REMOVED ? units - 1 : MOST;
        if (units < 1) {
            throw new IllegalArgumentException("at least 1 unit is needed, got " + units);
        }
        if (withFailures(0).time(units) > time * (1 + ROUNDING)) {
            return OptionalInt.empty();
        }
        OptionalInt tooMany = Smallest.from(0, most, allowed -> withFailures(allowed).time(units) > time * (1 + ROUNDING));
        return OptionalInt.of(tooMany.isPresent() ? tooMany.getAsInt() - 1 : most);
    }

    /** Acceleration factor that is needed to show the life with units that run for a time. */
    public double acceleration(int units, double time) {
        Requires.positive("time", time);
        return life * reach(units) / time;
    }

    /** The life, at the conditions of use and for the same share failed, that a passed test of units that run for a time shows. */
    public double shownLife(int units, double time) {
        Requires.positive("time", time);
        return time * acceleration / reach(units);
    }

    /** Confidence at which a passed test shows the wanted life. */
    public double shownConfidence(int units, double time) {
        return 1 - passProbability(units, time, 1);
    }

    /**
     * Probability to pass.
     *
     * @param ratio true life over the wanted one; at 1 it is what the confidence leaves for units that should not pass
     */
    public double passProbability(int units, double time, double ratio) {
        enough(units);
        Requires.positive("time", time);
        Requires.positive("ratio of lives", ratio);
        double hazard = -Math.log1p(-failed) * Math.pow(time * acceleration / (life * ratio), shape);
        return failedUnits == FailedUnits.REPAIRED
            ? Quantiles.atMost(failures, units * hazard)
            : Quantiles.atMost(failures, units, -Math.expm1(-hazard));
    }

    /**
     * How many times the wanted life units must truly have to pass with a probability.
     *
     * @param probability for example 0.9
     */
    public double ratioToPass(int units, double time, double probability) {
        Requires.positive("time", time);
        Requires.share("probability to pass", probability);
        return time * acceleration / life / reach(units, 1 - probability);
    }

    /** Length of the test in lives, before acceleration. */
    private double reach(int units) {
        return reach(units, confidence);
    }

    private double reach(int units, double probability) {
        enough(units);
        double hazard = failedUnits == FailedUnits.REPAIRED
            ? Quantiles.halfChiSquare(probability, failures + 1) / units
            : -Math.log1p(-ExactBounds.upperShare(failures, units, probability));
        return Math.pow(hazard / -Math.log1p(-failed), 1 / shape);
    }

    private int fewest() {
        return failedUnits == FailedUnits.REPAIRED ? 1 : failures + 1;
    }

    private void enough(int units) {
        if (units < fewest()) {
            throw new IllegalArgumentException(failures == 0 || failedUnits == FailedUnits.REPAIRED
                ? "at least 1 unit is needed, got " + units
                : "more units are needed than the " + failures + " that may fail, got " + units);
        }
    }
}
