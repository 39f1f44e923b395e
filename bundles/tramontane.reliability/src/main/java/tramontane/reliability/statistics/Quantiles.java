package tramontane.reliability.statistics;

import org.hipparchus.distribution.continuous.BetaDistribution;
import org.hipparchus.distribution.continuous.GammaDistribution;
import org.hipparchus.special.Beta;
import org.hipparchus.special.Gamma;

/** Quantiles and sums that exact bounds are made of. */
final class Quantiles {

    /** Absolute accuracy asked of a quantile; its relative accuracy is what counts, so it is far below the smallest of interest. */
    private static final double ACCURACY = 1e-14;

    private Quantiles() {
    }

    /**
     * Half the chi-square quantile of {@code 2 count} degrees of freedom: the expected number of failures of which, with this probability,
     * at least {@code count} happen.
     *
     * @param count at least 1
     */
    static double halfChiSquare(double probability, int count) {
        return count == 1 ? -Math.log1p(-probability) : new GammaDistribution(count, 1, ACCURACY).inverseCumulativeProbability(probability);
    }

    /** Quantile of the beta distribution. */
    static double beta(double probability, double first, double second) {
        if (first == 1) {
            return -Math.expm1(Math.log1p(-probability) / second);
        }
        if (second == 1) {
            return Math.pow(probability, 1 / first);
        }
        return new BetaDistribution(first, second, ACCURACY).inverseCumulativeProbability(probability);
    }

    /** Probability of at most so many failures where this many are expected, by Poisson. */
    static double atMost(int failures, double expected) {
        return expected == 0 ? 1 : Gamma.regularizedGammaQ(failures + 1, expected);
    }

    /** Probability that at most so many of the units fail if a share of all such units does, by binomial. */
    static double atMost(int failures, int units, double share) {
        if (failures >= units || share <= 0) {
            return 1;
        }
        return share >= 1 ? 0 : Beta.regularizedBeta(1 - share, units - failures, failures + 1);
    }
}
