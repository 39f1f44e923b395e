package tramontane.reliability.system;

import tramontane.reliability.statistics.LifeDistribution;

/**
 * A system that somebody looks at only every so often. Failures are noticed then: a system that is down stays down until the visit. At
 * a visit all units are exchanged, so every interval begins as new. Where only failed units are exchanged, the others go on ageing and
 * the first interval alone is described; {@link #exchangesAtVisits} counts that way in the long run.
 *
 * @param system what is looked at
 */
public record MaintenanceInterval(SystemSurvival system) {

    /**
     * Mean share of the time in which the system is down: {@code (1/τ) ∫ F}, summed as such.
     *
     * @param interval τ, above zero
     */
    public double unavailability(double interval) {
        return system.meanFailed(interval);
    }

    /** The rest of {@link #unavailability}: {@code (1/τ) ∫ R}. */
    public double availability(double interval) {
        return 1 - unavailability(interval);
    }

    /**
     * The longest interval that keeps a mean unavailability; infinite where nothing brings the system down.
     *
     * @param unavailability between 0 and 1
     */
    public double longestForUnavailability(double unavailability) {
        Refuse.within("unavailability", unavailability);
        double low = system.life(unavailability);
        if (Double.isInfinite(low)) {
            return low;
        }
        // The mean of F lies below F, so the interval lies behind the time at which F has the value.
        double high = low;
        double target = Math.log(unavailability);
        double atLow = Math.log(unavailability(low)) - target;
        double atHigh = atLow;
        while (atHigh < 0) {
            low = high;
            atLow = atHigh;
            high *= 2;
            atHigh = Math.log(unavailability(high)) - target;
        }
        double x = Math.log(low);
        double y = Math.log(high);
        for (int i = 0; i < 60 && y - x > 1e-12; i++) {
            double middle = (x * atHigh - y * atLow) / (atHigh - atLow);
            if (i % 3 == 2 || !(middle > x) || !(middle < y)) {
                middle = (x + y) / 2;
            }
            double at = Math.log(unavailability(Math.exp(middle))) - target;
            if (at < 0) {
                x = middle;
                atLow = at;
            } else {
                y = middle;
                atHigh = at;
            }
        }
        return Math.exp((x + y) / 2);
    }

    /**
     * The longest interval that keeps a mean availability.
     *
     * @param availability between 0 and 1
     */
    public double longestForAvailability(double availability) {
        return longestForUnavailability(1 - Refuse.within("availability", availability));
    }

    /**
     * The longest interval that the system survives with a probability.
     *
     * @param survival between 0 and 1
     */
    public double longestForSurvival(double survival) {
        return system.life(1 - Refuse.within("survival", survival));
    }

    /**
     * Exchanges per time over a fleet when all units are exchanged at each visit.
     *
     * @param interval between visits, above zero
     * @param fleet    systems, 0 or more
     */
    public double exchangesOfAll(double interval, int fleet) {
        return system.graph().units() / Refuse.positive("interval", interval) * Refuse.atLeast(0, "fleet", fleet);
    }

    /**
     * Long-run exchanges per time and position when a failed unit is exchanged at the first visit behind its failure and no other is:
     * one per mean life rounded up to whole intervals, {@code 1 / (τ Σ R(kτ))} for k from 0.
     *
     * @param life     of a unit
     * @param interval τ, above zero
     */
    public static double exchangesAtVisits(LifeDistribution life, double interval) {
        Refuse.positive("interval", interval);
        double mean = life.mean();
        if (interval < mean * 1e-6) {
            // Rounding up adds half an interval.
            return 1 / (mean + interval / 2);
        }
        double sum = 0;
        double survival = 1;
        for (int k = 0; survival > 1e-16 * (sum + 1) && k < 100_000_000; k++) {
            survival = life.survival(k * interval);
            sum += survival;
        }
        return 1 / (interval * sum);
    }

    /** Long-run exchanges per time and position when a failed unit is exchanged at once: 1 / mean life. */
    public static double exchangesOnFailure(LifeDistribution life) {
        return 1 / life.mean();
    }
}
