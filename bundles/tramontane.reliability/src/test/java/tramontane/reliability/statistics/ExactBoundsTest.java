package tramontane.reliability.statistics;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tramontane.reliability.statistics.ExactBounds.Ending;

/** Exact bounds against NIST/SEMATECH e-Handbook 8.3.1 and 8.4.5.1, recomputed with R (qchisq, qbeta). */
class ExactBoundsTest {

    /** Test length factors for confidences 0.50, 0.60, 0.75, 0.80, 0.90, 0.95: R, qchisq(C, 2r + 2)/2. */
    @ParameterizedTest
    @CsvSource({"0, 0.693147, 0.916291, 1.386294, 1.609438, 2.302585, 2.995732",
        "1, 1.678347, 2.022313, 2.692635, 2.994308, 3.889720, 4.743865",
        "2, 2.674060, 3.105379, 3.920402, 4.279030, 5.322320, 6.295794", "3, 3.672061, 4.175263, 5.109427, 5.515046, 6.680783, 7.753657",
        "4, 4.670909, 5.236618, 6.274431, 6.720979, 7.993590, 9.153519", "5, 5.670161, 6.291919, 7.422702, 7.905993, 9.274674, 10.513035"})
    void lengthFactors(int failures, double f50, double f60, double f75, double f80, double f90, double f95) {
        double[] confidences = {0.5, 0.6, 0.75, 0.8, 0.9, 0.95};
        double[] expected = {f50, f60, f75, f80, f90, f95};
        for (int i = 0; i < expected.length; i++) {
            assertEquals(expected[i], ExactBounds.lengthFactor(failures, confidences[i]), 1e-6);
        }
    }

    /** Factors on the estimate T/r, two-sided, time-terminated: R, r/qchisq. */
    @ParameterizedTest
    @CsvSource({"1, 0.60, 0.333967, 4.48142", "1, 0.80, 0.257088, 9.49122", "1, 0.90, 0.210799, 19.49573", "1, 0.95, 0.179480, 39.49789",
        "2, 0.60, 0.467396, 2.42604", "2, 0.80, 0.375776, 3.76073", "2, 0.90, 0.317672, 5.62807", "2, 0.95, 0.276829, 8.25732",
        "3, 0.60, 0.543967, 1.95434", "3, 0.80, 0.449049, 2.72216", "3, 0.90, 0.386914, 3.66887", "3, 0.95, 0.342182, 4.84910",
        "5, 0.60, 0.632432, 1.61836", "5, 0.80, 0.539103, 2.05542", "5, 0.90, 0.475600, 2.53788", "5, 0.95, 0.428510, 3.07979"})
    void factorsOnTheEstimate(int failures, double confidence, double low, double high) {
        Interval mean = ExactBounds.mean(failures, failures, Ending.TIME, confidence);
        assertEquals(low, mean.lower(), 1e-6);
        assertEquals(high, mean.upper(), 5.1e-6);
    }

    /** The e-Handbook's example: 800 h, 2 failures, 90 %: 127 h to 2251 h. */
    @Test
    void handbookExample() {
        Interval mean = ExactBounds.mean(800, 2, Ending.TIME, 0.9);
        assertEquals(127.069, mean.lower(), 1e-3);
        assertEquals(2251.229, mean.upper(), 1e-3);
    }

    @ParameterizedTest
    @CsvSource({"0.9, 434.2945", "0.95, 333.8082", "0.6, 1091.357"})
    void noFailures(double confidence, double lower) {
        assertEquals(lower, ExactBounds.lowerMean(1000, 0, Ending.TIME, confidence), 1e-6 * lower);
        assertEquals(Double.POSITIVE_INFINITY, ExactBounds.upperMean(1000, 0, Ending.TIME, confidence));
    }

    /** R: 2 * 1000 / qchisq(c(0.9, 0.1), 10) for five failures, the last of which ended the test. */
    @Test
    void endedByAFailure() {
        assertEquals(ExactBounds.lowerMean(1000, 4, Ending.TIME, 0.9), ExactBounds.lowerMean(1000, 5, Ending.FAILURE, 0.9), 1e-9);
        assertEquals(125.100243, ExactBounds.lowerMean(1000, 5, Ending.FAILURE, 0.9), 1e-6);
        assertEquals(411.084309, ExactBounds.upperMean(1000, 5, Ending.FAILURE, 0.9), 1e-6);
    }

    /** R: binom.test(found, units, conf.level = confidence)$conf.int. */
    @ParameterizedTest
    @CsvSource({"0, 22, 0.80, 0, 0.0993719797887", "1, 10, 0.95, 0.00252857854446, 0.445016117028",
        "3, 30, 0.90, 0.0278155497397, 0.238597857293",
        "50, 50, 0.95, 0.928878263536, 1", "2, 100000, 0.95, 2.4221019627e-6, 7.2244989365e-05"})
    void shares(int found, int units, double confidence, double lower, double upper) {
        Interval share = ExactBounds.share(found, units, confidence);
        assertEquals(lower, share.lower(), 1e-9 * lower);
        assertEquals(upper, share.upper(), 1e-9 * upper);
    }

    @Property(tries = 200)
    void moreConfidenceIsALowerBound(@ForAll @IntRange(min = 0, max = 300) int failures,
        @ForAll @DoubleRange(min = 0.02, max = 0.9) double confidence) {
        assertTrue(ExactBounds.lowerMean(100, failures, Ending.TIME, confidence + 0.05)
            < ExactBounds.lowerMean(100, failures, Ending.TIME, confidence));
        assertTrue(ExactBounds.lowerMean(100, failures + 1, Ending.TIME, confidence)
            < ExactBounds.lowerMean(100, failures, Ending.TIME, confidence));
        assertTrue(ExactBounds.upperShare(failures, 301, confidence) < ExactBounds.upperShare(failures, 301, confidence + 0.05));
    }

    @Test
    void refusesInSentences() {
        assertEquals("a test that a failure ended has at least one failure, got none",
            assertThrows(IllegalArgumentException.class, () -> ExactBounds.lowerMean(10, 0, Ending.FAILURE, 0.9)).getMessage());
        assertThrows(IllegalArgumentException.class, () -> ExactBounds.lowerMean(10, -1, Ending.TIME, 0.9));
        assertThrows(IllegalArgumentException.class, () -> ExactBounds.lowerMean(0, 1, Ending.TIME, 0.9));
        assertThrows(IllegalArgumentException.class, () -> ExactBounds.lowerMean(10, 1, Ending.TIME, 1));
        assertThrows(IllegalArgumentException.class, () -> ExactBounds.share(3, 2, 0.9));
    }
}
