package tramontane.reliability.system;

import org.hipparchus.special.Gamma;
import org.hipparchus.util.CombinatoricsUtils;

import tramontane.reliability.statistics.LifeDistribution;

/**
 * Alike, independent units of which some must run: closed forms.
 *
 * @param needed 1 or more
 * @param units  not below {@code needed}
 */
public record KOutOfN(int needed, int units) {

    /** Refuses what can't be. */
    public KOutOfN {
        Refuse.atLeast(1, "needed units", needed);
        Refuse.atLeast(needed, "units", units);
    }

    /**
     * Probability that too few run; a sum of what is positive, so right in its digits where it is small.
     *
     * @param unit probability that a unit has failed (without repair), or is failed (with)
     */
    public double failed(double unit) {
        Refuse.share("failed share", unit);
        return between(units - needed + 1, units, unit);
    }

    /**
     * Probability that enough run.
     *
     * @param unit probability that a unit runs
     */
    public double survival(double unit) {
        Refuse.share("survival", unit);
        return between(needed, units, unit);
    }

    private double between(int first, int last, double share) {
        double sum = 0;
        for (int i = last; i >= first; i--) {
            sum += CombinatoricsUtils.binomialCoefficientDouble(units, i) * Math.pow(share, i) * Math.pow(1 - share, units - i);
        }
        return Math.min(1, sum);
    }

    /** Probability that too few run at a time, not below zero, when none is repaired. */
    public double failed(LifeDistribution life, double time) {
        return failed(Share.failed(life, Refuse.notNegative("time", time)));
    }

    /** Probability that enough run at a time, not below zero, when none is repaired. */
    public double survival(LifeDistribution life, double time) {
        return survival(life.survival(Refuse.notNegative("time", time)));
    }

    /**
     * MTTF of units that don't age, without repair: {@code mean · Σ 1/i} for i from needed to units.
     *
     * @param mean MTTF of a unit, above zero
     */
    public double meanWithoutAgeing(double mean) {
        Refuse.positive("mean", mean);
        double sum = 0;
        for (int i = units; i >= needed; i--) {
            sum += 1.0 / i;
        }
        return mean * sum;
    }

    /**
     * Long-run share of time in which too few run, when each failed unit is repaired at once, whatever the others do, and units that run
     * go on failing while the system is down.
     *
     * @param mean   mean time to failure of a unit, above zero
     * @param repair mean time of a repair, above zero
     */
    public double unavailability(double mean, double repair) {
        return failed(Refuse.positive("repair", repair) / (Refuse.positive("mean", mean) + repair));
    }

    /**
     * Probability that a row of units that stand by cold and don't age is used up: one runs, the next starts when it fails, always.
     *
     * @param units 2 for a standby pair
     * @param mean  MTTF of a running unit, above zero; that of the row is {@code units · mean}
     * @param time  not below zero
     */
    public static double standbyFailed(int units, double mean, double time) {
        Refuse.atLeast(1, "units", units);
        return Gamma.regularizedGammaP(units, Refuse.notNegative("time", time) / Refuse.positive("mean", mean));
    }

    /** The rest of {@link #standbyFailed(int, double, double)}. */
    public static double standbySurvival(int units, double mean, double time) {
        Refuse.atLeast(1, "units", units);
        return Gamma.regularizedGammaQ(units, Refuse.notNegative("time", time) / Refuse.positive("mean", mean));
    }
}
