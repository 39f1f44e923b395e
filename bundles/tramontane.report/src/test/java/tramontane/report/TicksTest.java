package tramontane.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class TicksTest {

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            0      | 100    | 6  | 0 20 40 60 80 100
            0      | 100    | 5  | 0 50 100
            0      | 1      | 6  | 0.0 0.2 0.4 0.6 0.8 1.0
            0      | 0.3    | 4  | 0.0 0.1 0.2 0.3
            0      | 347    | 8  | 0 50 100 150 200 250 300
            -5     | 12     | 5  | −5 0 5 10
            0.013  | 0.0171 | 6  | 0.013 0.014 0.015 0.016 0.017
            98     | 102    | 5  | 98 99 100 101 102
            0      | 2e7    | 5  | 0.0 0.5e7 1.0e7 1.5e7 2.0e7
            0      | 3e-6   | 4  | 0 1e-6 2e-6 3e-6
            -3e-6  | 0      | 4  | −3e-6 −2e-6 −1e-6 0
            999    | 1001   | 2  | 1000
            0      | 1e-300 | 3  | 0.0 0.5e-300 1.0e-300
            """)
    void marksStandAtRoundNumbers(double from, double to, int most, String labels) {
        assertEquals(labels, String.join(" ", Ticks.of(from, to, most).labels()));
    }

    @Test
    void marksLieWithinAndAreFewAndEven() {
        Random random = new Random(7);
        for (int i = 0; i < 10_000; i++) {
            double from = (random.nextDouble() - 0.5) * Math.pow(10, random.nextInt(12) - 6);
            double to = from + random.nextDouble() * Math.pow(10, random.nextInt(12) - 6) + 1e-9;
            int most = 2 + random.nextInt(12);
            Ticks ticks = Ticks.of(from, to, most);
            int count = ticks.values().size();
            assertTrue(count >= 1 && count <= most, () -> count + " ticks of at most " + most);
            // 2.5 is the farthest from one nice step to the next
            assertTrue(count + 1 >= (most + 1) / 2.5 - 1, () -> "only " + count + " of " + most);
            for (int k = 0; k < count; k++) {
                double value = ticks.values().get(k);
                double slack = 1e-8 * ticks.step();
                assertTrue(value >= from - slack && value <= to + slack);
                if (k > 0) {
                    assertEquals(ticks.step(), value - ticks.values().get(k - 1), 1e-9 * Math.max(Math.abs(from), Math.abs(to)));
                }
            }
        }
    }

    @Test
    void labelsReadAsTheirValues() {
        for (double to : new double[] {1e-9, 3.7e-5, 0.012, 0.9, 17, 4_321, 123_456, 9.9e8}) {
            Ticks ticks = Ticks.of(-to / 3, to, 7);
            for (int i = 0; i < ticks.values().size(); i++) {
                assertEquals(ticks.values().get(i), Double.parseDouble(ticks.labels().get(i).replace('−', '-')), 1e-12 * to);
            }
            assertEquals(ticks.labels().size(), ticks.labels().stream().distinct().count());
        }
    }

    @Test
    void anAxisHasALength() {
        assertThrows(IllegalArgumentException.class, () -> Ticks.of(1, 1, 5));
        assertThrows(IllegalArgumentException.class, () -> Ticks.of(0, Double.NaN, 5));
        assertThrows(IllegalArgumentException.class, () -> Ticks.of(0, 1, 1));
    }
}
