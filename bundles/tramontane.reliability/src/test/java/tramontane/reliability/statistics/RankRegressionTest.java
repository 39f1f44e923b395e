package tramontane.reliability.statistics;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import tramontane.reliability.statistics.MedianRanks.Method;
import tramontane.reliability.statistics.RankRegression.Direction;

/** Median ranks and lines through them against the NIST/SEMATECH e-Handbook (8.2.2.1, 8.4.1.3) and computation with R (qbeta, lm). */
class RankRegressionTest {

    private static final LifeData SIX = failures(16, 34, 53, 75, 93, 120);
    private static final LifeData MIXED = LifeData.of(Observation.failure(31), Observation.failure(39), Observation.failure(57),
        Observation.survivor(65), Observation.failure(70), Observation.survivor(105), Observation.failure(110));

    private static LifeData failures(double... times) {
        return new LifeData(DoubleStream.of(times).mapToObj(Observation::failure).toList());
    }

    /** The e-Handbook's ten failures of twenty units, ended at 500 h. */
    static LifeData handbook() {
        List<Observation> all = new ArrayList<>(failures(54, 187, 216, 240, 244, 335, 361, 373, 375, 386).observations());
        all.add(Observation.survivor(500).times(10));
        return new LifeData(all);
    }

    private static void ranks(LifeData data, Method method, double... expected) {
        double[] got = MedianRanks.of(data, method).ranks().stream().mapToDouble(MedianRanks.Rank::failed).toArray();
        assertEquals(expected.length, got.length);
        for (int i = 0; i < expected.length; i++) {
            assertEquals(expected[i], got[i], 1e-6);
        }
    }

    @Test
    void medianRanks() {
        ranks(SIX, Method.BENARD, 0.109375, 0.265625, 0.421875, 0.578125, 0.734375, 0.890625);
        ranks(SIX, Method.EXACT, 0.109101, 0.264450, 0.421407, 0.578593, 0.735550, 0.890899);
        ranks(MIXED, Method.BENARD, 0.0945946, 0.2297297, 0.3648649, 0.5337838, 0.7871622);
        assertEquals(List.of(1.0, 2.0, 3.0, 4.25, 6.125), MedianRanks.of(MIXED, Method.BENARD).ranks().stream()
            .map(MedianRanks.Rank::order).toList());
    }

    /** R: qbeta(c(0.05, 0.95), i, 7 - i). */
    @ParameterizedTest
    @CsvSource({"1, 0.008512444611, 0.393037768997", "3, 0.1531611180, 0.7286616275", "6, 0.6069622310, 0.9914875554"})
    void rankBounds(int order, double low, double high) {
        MedianRanks ranks = MedianRanks.of(SIX, Method.EXACT);
        Interval bounds = ranks.bounds(ranks.ranks().get(order - 1), 0.9);
        assertEquals(low, bounds.lower(), 1e-9);
        assertEquals(high, bounds.upper(), 1e-9);
    }

    private static void weibull(LifeData data, Method method, Direction direction, double shape, double scale) {
        Weibull got = (Weibull) RankRegression.of(MedianRanks.of(data, method), ProbabilityPaper.WEIBULL, direction).distribution();
        assertEquals(shape, got.shape(), 1e-5 * shape);
        assertEquals(scale, got.scale(), 1e-5 * scale);
    }

    @Test
    void lines() {
        weibull(SIX, Method.BENARD, Direction.Y_ON_X, 1.426967, 76.34542);
        weibull(SIX, Method.BENARD, Direction.X_ON_Y, 1.439663, 76.10960);
        weibull(SIX, Method.EXACT, Direction.Y_ON_X, 1.430179, 76.31703);
        weibull(SIX, Method.EXACT, Direction.X_ON_Y, 1.442875, 76.08209);
        weibull(MIXED, Method.BENARD, Direction.Y_ON_X, 2.068379, 84.04560);
        weibull(MIXED, Method.BENARD, Direction.X_ON_Y, 2.140307, 82.88592);
        weibull(handbook(), Method.BENARD, Direction.Y_ON_X, 1.457519, 667.3364);
        weibull(handbook(), Method.BENARD, Direction.X_ON_Y, 1.625963, 601.9599);
        assertEquals(0.995581, RankRegression.of(MedianRanks.of(SIX, Method.BENARD), ProbabilityPaper.WEIBULL, Direction.Y_ON_X)
            .correlation(), 1e-6);
        assertEquals(0.946786, RankRegression.of(MedianRanks.of(handbook(), Method.BENARD), ProbabilityPaper.WEIBULL, Direction.X_ON_Y)
            .correlation(), 1e-6);
        assertEquals(0.966394, RankRegression.of(MedianRanks.of(MIXED, Method.BENARD), ProbabilityPaper.WEIBULL, Direction.Y_ON_X)
            .correlationSquared(), 1e-6);
    }

    /** R: lm(qnorm(F) ~ log(t)), lm(-log(1 - F) ~ 0 + t) and the other way round, Benard's ranks of the six units. */
    @Test
    void linesOnOtherPapers() {
        MedianRanks ranks = MedianRanks.of(SIX, Method.BENARD);
        Lognormal yOnX = (Lognormal) RankRegression.of(ranks, ProbabilityPaper.LOGNORMAL, Direction.Y_ON_X).distribution();
        Lognormal xOnY = (Lognormal) RankRegression.of(ranks, ProbabilityPaper.LOGNORMAL, Direction.X_ON_Y).distribution();
        assertEquals(53.756795, yOnX.median(), 1e-6 * 53.756795);
        assertEquals(0.860987487, yOnX.spread(), 1e-6);
        assertEquals(53.756795, xOnY.median(), 1e-6 * 53.756795);
        assertEquals(0.817248750, xOnY.spread(), 1e-6);
        assertEquals(66.459248, RankRegression.of(ranks, ProbabilityPaper.EXPONENTIAL, Direction.Y_ON_X).distribution().mean(), 1e-5);
        assertEquals(63.387982, RankRegression.of(ranks, ProbabilityPaper.EXPONENTIAL, Direction.X_ON_Y).distribution().mean(), 1e-5);
    }

    /** Under the truth the p value is uniform: of 400 censored Weibull samples about 5 % and 50 % lie below. */
    @Test
    void pValueIsUniformUnderTheTruth() {
        SplittableRandom random = new SplittableRandom(7);
        int[] below = new int[2];
        for (int sample = 0; sample < 400; sample++) {
            double[] times = random.doubles(20).map(u -> 1000 * Math.pow(-Math.log(1 - u), 1 / 2.5)).sorted().toArray();
            LifeData data = new LifeData(IntStream.range(0, 20)
                .mapToObj(i -> i < 12 ? Observation.failure(times[i]) : Observation.survivor(times[11])).toList());
            double p = RankRegression.of(MedianRanks.of(data, Method.BENARD), ProbabilityPaper.WEIBULL, Direction.X_ON_Y)
                .shareNoBetter(400, 1);
            below[0] += p < 0.05 ? 1 : 0;
            below[1] += p < 0.5 ? 1 : 0;
        }
        assertEquals(20, below[0], 13.1);
        assertEquals(200, below[1], 30);
    }

    @Test
    void pValueTellsWhatIsNoLine() {
        double[] twoKinds = DoubleStream.concat(IntStream.rangeClosed(1, 10).mapToDouble(i -> i),
            IntStream.rangeClosed(1, 20).mapToDouble(i -> 1000 + i)).toArray();
        RankRegression bent = RankRegression.of(MedianRanks.of(failures(twoKinds), Method.BENARD), ProbabilityPaper.WEIBULL,
            Direction.X_ON_Y);
        assertTrue(bent.shareNoBetter() < 0.01);
        RankRegression straight = RankRegression.of(MedianRanks.of(SIX, Method.BENARD), ProbabilityPaper.WEIBULL, Direction.X_ON_Y);
        assertTrue(straight.shareNoBetter() > 0.5);
        assertEquals(straight.shareNoBetter(), straight.shareNoBetter());
        assertEquals(1, RankRegression.of(MedianRanks.of(failures(3, 5), Method.BENARD), ProbabilityPaper.LOGNORMAL, Direction.Y_ON_X)
            .shareNoBetter());
    }

    @ParameterizedTest
    @EnumSource(ProbabilityPaper.class)
    void pValueIsQuick(ProbabilityPaper paper) {
        double[] many = IntStream.range(0, 500).mapToDouble(i -> 100 * Math.sqrt(-Math.log(1 - (i + 0.5) / 500))).toArray();
        RankRegression line = RankRegression.of(MedianRanks.of(failures(many), Method.BENARD), paper, Direction.X_ON_Y);
        line.shareNoBetter();
        long start = System.nanoTime();
        line.shareNoBetter();
        // Ten times what is wanted, 0.1 s, so that a busy machine does not fail the build.
        assertTrue(System.nanoTime() - start < 1_000_000_000L);
    }

    @Test
    void failuresBetweenLooksAreAtTheMiddle() {
        LifeData looked = LifeData.of(Observation.between(100, 200).times(2), Observation.failedBefore(100), Observation.survivor(200));
        assertEquals(List.of(50.0, 150.0, 150.0), MedianRanks.of(looked, Method.BENARD).ranks().stream().map(MedianRanks.Rank::time)
            .toList());
    }

    @Property(tries = 100)
    void orderOfSurvivorsAndFailures(@ForAll @IntRange(min = 2, max = 60) int units,
        @ForAll @DoubleRange(min = 0.2, max = 5) double factor) {
        SplittableRandom random = new SplittableRandom(units);
        List<Observation> all = new ArrayList<>(List.of(Observation.failure(0.5), Observation.failure(2)));
        for (int i = 0; i < units; i++) {
            double time = 0.01 + random.nextDouble();
            all.add(random.nextBoolean() ? Observation.failure(time) : Observation.survivor(time));
        }
        LifeData data = new LifeData(all);
        MedianRanks ranks = MedianRanks.of(data, Method.EXACT);
        for (int i = 1; i < ranks.ranks().size(); i++) {
            assertTrue(ranks.ranks().get(i).failed() > ranks.ranks().get(i - 1).failed());
            assertTrue(ranks.bounds(ranks.ranks().get(i), 0.9).contains(ranks.ranks().get(i).failed()));
        }
        for (ProbabilityPaper paper : ProbabilityPaper.values()) {
            RankRegression line = RankRegression.of(ranks, paper, Direction.X_ON_Y);
            RankRegression longer = RankRegression.of(MedianRanks.of(data.scaled(factor), Method.EXACT), paper, Direction.X_ON_Y);
            assertEquals(line.correlation(), longer.correlation(), 1e-9);
            assertEquals(factor * line.distribution().life(0.1), longer.distribution().life(0.1), 1e-9 * longer.distribution().life(0.1));
        }
    }

    @Test
    void refusesInSentences() {
        MedianRanks one = MedianRanks.of(failures(5, 5), Method.BENARD);
        assertEquals("a line needs at least two failures at different times",
            assertThrows(IllegalArgumentException.class, () -> RankRegression.of(one, ProbabilityPaper.WEIBULL, Direction.Y_ON_X))
                .getMessage());
        MedianRanks none = MedianRanks.of(LifeData.of(Observation.survivor(5)), Method.BENARD);
        assertTrue(none.points().isEmpty());
        assertThrows(IllegalArgumentException.class, () -> RankRegression.of(none, ProbabilityPaper.WEIBULL, Direction.Y_ON_X));
    }
}
