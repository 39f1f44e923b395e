package tramontane.reliability.statistics;

import java.util.List;
import java.util.SplittableRandom;

/**
 * A line through median ranks on probability paper.
 *
 * <p>Simple, and good to look at; for censored data likelihood is the better estimate, because the line takes no notice of when survivors
 * left after the last failure. Source: NIST/SEMATECH e-Handbook of Statistical Methods, 8.4.1.3.
 *
 * @param ranks        what the line goes through
 * @param paper        on which it is straight
 * @param direction    what was taken as uncertain
 * @param distribution that the line is
 * @param correlation  r of the points on the paper
 */
public record RankRegression(MedianRanks ranks, ProbabilityPaper paper, Direction direction, LifeDistribution distribution,
    double correlation) {

    /** Samples that give a share to about one in a hundred. */
    private static final int SAMPLES = 2000;
    /** Failures drawn at most by default, so that the answer is there at once for large tests too. */
    private static final int DRAWN = 400_000;
    private static final long SEED = 20170331;
    /** What rounding may do to a correlation. */
    private static final double ROUNDING = 1e-12;

    /** Along which axis distances from the line are made small. */
    public enum Direction {
        /** Distances in ranks; along Y. */
        Y_ON_X,
        /** Distances in lives; along X. What is uncertain are the lives, so this is the usual choice for tests of fans. */
        X_ON_Y
    }

    /**
     * Fits a line.
     *
     * @throws IllegalArgumentException where there are not two failures at different times above zero
     */
    public static RankRegression of(MedianRanks ranks, ProbabilityPaper paper, Direction direction) {
        int count = ranks.ranks().size();
        if (count < 2 || ranks.ranks().getFirst().time() == ranks.ranks().getLast().time()) {
            throw new IllegalArgumentException("a line needs at least two failures at different times");
        }
        double[] x = ranks.ranks().stream().mapToDouble(each -> paper.abscissa(each.time())).toArray();
        double[] y = ordinates(ranks, paper);
        Moments moments = Moments.of(x, y);
        LifeDistribution distribution;
        if (paper == ProbabilityPaper.EXPONENTIAL) {
            double xy = 0;
            double own = 0;
            for (int i = 0; i < count; i++) {
                xy += x[i] * y[i];
                own += direction == Direction.Y_ON_X ? x[i] * x[i] : y[i] * y[i];
            }
            distribution = paper.distribution(direction == Direction.Y_ON_X ? xy / own : own / xy, 0);
        } else {
            double slope = direction == Direction.Y_ON_X ? moments.xy() / moments.xx() : moments.yy() / moments.xy();
            distribution = paper.distribution(slope, moments.meanY() - slope * moments.meanX());
        }
        return new RankRegression(ranks, paper, direction, distribution, moments.correlation());
    }

    private static double[] ordinates(MedianRanks ranks, ProbabilityPaper paper) {
        return ranks.ranks().stream().mapToDouble(each -> paper.ordinate(each.failed())).toArray();
    }

    /** The square of the correlation. */
    public double correlationSquared() {
        return correlation * correlation;
    }

    /** Points of the probability plot. */
    public List<PlotPoint> points() {
        return ranks.points();
    }

    /**
     * {@link #shareNoBetter(int, long)} with as many samples as are quick to draw (2000, fewer above 200 failures) and always the same
     * seed.
     */
    public double shareNoBetter() {
        return shareNoBetter(Math.clamp(DRAWN / ranks.ranks().size(), 200, SAMPLES), SEED);
    }

    /**
     * The p value of the correlation: of samples that truly follow such a distribution, the share that lies no better on a line. Small
     * (below 0.1, say) where the data do not belong on this paper.
     *
     * <p>Each sample has as many units; survivors leave after the same failure as in the test. The distribution's parameters do not
     * matter, because the correlation does not depend on them. Two points always lie on a line: 1.
     *
     * @param samples at least 1
     * @param seed    the same seed gives the same share
     */
    public double shareNoBetter(int samples, long seed) {
        if (samples < 1) {
            throw new IllegalArgumentException("at least 1 sample is needed, got " + samples);
        }
        int count = ranks.ranks().size();
        double[] y = ordinates(ranks, paper);
        double[] x = new double[count];
        int[] atRisk = ranks.ranks().stream().mapToInt(MedianRanks.Rank::atRisk).toArray();
        SplittableRandom random = new SplittableRandom(seed);
        int noBetter = 0;
        for (int sample = 0; sample < samples; sample++) {
            double hazard = 0;
            for (int i = 0; i < count; i++) {
                // Of units in the test, the next failure comes after an exponential step of cumulative hazard: no sorting.
                hazard -= Math.log(1 - random.nextDouble()) / atRisk[i];
                x[i] = paper.ordinateOfHazard(hazard);
            }
            if (Moments.of(x, y).correlation() <= correlation + ROUNDING) {
                noBetter++;
            }
        }
        return (double) noBetter / samples;
    }

    /** Sums about the means. */
    private record Moments(double meanX, double meanY, double xx, double yy, double xy) {

        static Moments of(double[] x, double[] y) {
            double meanX = 0;
            double meanY = 0;
            for (int i = 0; i < x.length; i++) {
                meanX += x[i] / x.length;
                meanY += y[i] / x.length;
            }
            double xx = 0;
            double yy = 0;
            double xy = 0;
            for (int i = 0; i < x.length; i++) {
                xx += (x[i] - meanX) * (x[i] - meanX);
                yy += (y[i] - meanY) * (y[i] - meanY);
                xy += (x[i] - meanX) * (y[i] - meanY);
            }
            return new Moments(meanX, meanY, xx, yy, xy);
        }

        double correlation() {
            return xy / Math.sqrt(xx * yy);
        }
    }
}
