package tramontane.report;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

class DecimationTest {

    @Test
    void fewPointsAreAllKept() {
        assertArrayEquals(new int[] {0, 1, 2}, Decimation.of(new double[] {0, 10, 20}, new double[] {5, 6, 5}, 0.5));
        assertArrayEquals(new int[0], Decimation.of(new double[0], new double[0], 0.5));
    }

    @Test
    void aPeakAmongManyPointsIsKept() {
        int n = 100_000;
        double[] x = IntStream.range(0, n).mapToDouble(i -> 500.0 * i / n).toArray();
        double[] y = new double[n];
        y[31_415] = 100;
        y[81_000] = -70;
        int[] kept = Decimation.of(x, y, 0.5);
        assertTrue(kept.length < 4_100, () -> kept.length + " points");
        assertTrue(Arrays.stream(kept).anyMatch(i -> i == 31_415));
        assertTrue(Arrays.stream(kept).anyMatch(i -> i == 81_000));
        assertEquals(0, kept[0]);
        assertEquals(n - 1, kept[kept.length - 1]);
    }

    @Test
    void aLineThatFoldsBackKeepsItsTurns() {
        double[] x = {0, 10, 10.1, 9.9, 5, 20};
        double[] y = {0, 10, 11, 12, 13, 14};
        assertArrayEquals(new int[] {0, 1, 2, 3, 4, 5}, Decimation.of(x, y, 0.5));
    }
}
