package tramontane.reliability.system;

import org.hipparchus.special.Erf;

import tramontane.reliability.statistics.Exponential;
import tramontane.reliability.statistics.LifeDistribution;
import tramontane.reliability.statistics.Lognormal;
import tramontane.reliability.statistics.Weibull;

/** The share of units that has failed by a time, right in all its digits where it is small. */
final class Share {

    private Share() {
    }

    static double failed(LifeDistribution life, double time) {
        return switch (life) {
            case Weibull weibull -> -Math.expm1(-Math.pow(time / weibull.scale(), weibull.shape()));
            case Exponential exponential -> -Math.expm1(-time / exponential.mean());
            case Lognormal lognormal -> time <= 0 ? 0
                    : 0.5 * Erf.erfc(-Math.log(time / lognormal.median()) / (lognormal.spread() * Math.sqrt(2)));
            default -> 1 - life.survival(time);
        };
    }

    /** Cumulative hazard at an early time, where failures are rare; of distributions that are not known here, to leading order. */
    static double early(LifeDistribution life, double time) {
        if (life instanceof Weibull || life instanceof Exponential || life instanceof Lognormal) {
            return -Math.log1p(-failed(life, time));
        }
        double ratio = Math.log(life.hazard(time * 1.001) / life.hazard(time / 1.001)) / (2 * Math.log(1.001)) + 1;
        return time * life.hazard(time) / Math.max(0.05, ratio);
    }
}
