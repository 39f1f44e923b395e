package tramontane.reliability.statistics;

import org.hipparchus.special.Gamma;

/**
 * Likelihood-ratio test of a simpler model within a wider one.
 *
 * @param statistic twice the gain in log-likelihood by the wider model
 * @param degrees   how many parameters more it has
 * @param p         probability of such a gain or more if the simpler model holds, by chi-square (good where many units failed); a small
 *                  one speaks against the simpler model
 */
public record RatioTest(double statistic, int degrees, double p) {

    /** The test for these log-likelihoods. */
    static RatioTest of(double simple, double wide, int degrees) {
        double statistic = Math.max(0, 2 * (wide - simple));
        return new RatioTest(statistic, degrees, Gamma.regularizedGammaQ(degrees / 2.0, statistic / 2));
    }
}
