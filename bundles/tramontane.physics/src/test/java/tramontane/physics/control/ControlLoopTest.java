package tramontane.physics.control;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Margins against closed forms and against dense grids of frequency responses (margins.py). */
class ControlLoopTest {

    private static final StateSpace ONE = new StateSpace(new double[0][], new double[0], new double[0], -1);

    /** Lags in a row as states, static gain -1. */
    static StateSpace chain(double... taus) {
        int n = taus.length;
        double[][] a = new double[n][n];
        double[] b = new double[n];
        double[] c = new double[n];
        for (int i = 0; i < n; i++) {
            a[i][i] = -1 / taus[i];
            if (i > 0) {
                a[i][i - 1] = 1 / taus[i];
            }
        }
        b[0] = -1 / taus[0];
        c[n - 1] = 1;
        return new StateSpace(a, b, c, 0);
    }

    /** All rows to 1e-9; margins of the table come from roots found to 1e-14. */
    @Test
    void agreesWithDenseGrids() {
        List<String[]> rows = Table.rows("margins.csv");
        assertEquals(36, rows.size());
        int unstable = 0;
        int checked = 0;
        for (String[] row : rows) {
            double[] b = Table.numbers(row[1]);
            double[] flat = Table.numbers(row[0]);
            double[][] a = new double[b.length][];
            for (int i = 0; i < b.length; i++) {
                a[i] = Arrays.copyOfRange(flat, i * b.length, (i + 1) * b.length);
            }
            StateSpace plant = new StateSpace(a, b, Table.numbers(row[2]), Table.number(row[3]));
            List<Double> lags = Arrays.stream(Table.numbers(row[5])).boxed().toList();
            ControlLoop loop = new ControlLoop(plant, Table.number(row[4]), lags, Table.number(row[6]));
            Response response = loop.at(Table.number(row[11]));
            double size = Math.hypot(Table.number(row[12]), Table.number(row[13]));
            assertEquals(Table.number(row[12]), response.real(), 1e-9 * size);
            assertEquals(Table.number(row[13]), response.imaginary(), 1e-9 * size);
            Margins margins = loop.margins();
            String name = b.length + " states, lags " + lags + ", dead time " + row[6] + ": " + margins;
            near(Table.number(row[7]), margins.gain(), name);
            near(Table.number(row[9]), margins.phaseCrossover(), name);
            near(Table.number(row[8]), margins.phase(), name);
            near(Table.number(row[10]), margins.gainCrossover(), name);
            if (!row[14].equals("-")) {
                assertEquals(row[14].equals("0"), loop.closedLoopStable(), name);
                checked++;
                unstable += row[14].equals("0") ? 0 : 1;
            }
        }
        assertTrue(unstable >= 3 && checked - unstable >= 3, unstable + " unstable of " + checked);
    }

    private static void near(double expected, double actual, String name) {
        if (Double.isInfinite(expected) || Double.isNaN(expected)) {
            assertEquals(expected, actual, name);
        } else {
            assertEquals(expected, actual, 1e-9 * Math.max(0.1, Math.abs(expected)), name);
        }
    }

    /** Equal lags: each turns by π/n where tan(π/n) = ωτ. */
    @ParameterizedTest
    @CsvSource({"3, 0.5", "3, 7.9", "3, 8.1", "4, 1", "5, 2", "8, 0.01", "20, 1"})
    void findsTheMarginOfEqualLags(int n, double gain) {
        double expected = Math.pow(1 / Math.cos(Math.PI / n), n) / gain;
        double omega = Math.tan(Math.PI / n) / 40;
        List<Double> lags = Collections.nCopies(n - 1, 40.0);
        for (ControlLoop loop : List.of(new ControlLoop(chain(40), gain, lags, 0),
                new ControlLoop(ONE, gain, Collections.nCopies(n, 40.0), 0),
                new ControlLoop(chain(lags.stream().mapToDouble(x -> x).toArray()), gain, List.of(40.0, 0.0), 0))) {
            Margins margins = loop.margins();
            assertEquals(expected, margins.gain(), 1e-9 * expected);
            assertEquals(omega, margins.phaseCrossover(), 1e-9 * omega);
            assertEquals(expected > 1, loop.closedLoopStable());
            if (n == 3) {
                assertEquals(8 / gain, margins.gain(), 1e-9 * 8 / gain);
            }
            if (gain > 1) {
                double one = Math.sqrt(Math.pow(gain, 2.0 / n) - 1);
                assertEquals(one / 40, margins.gainCrossover(), 1e-9 * one);
                assertEquals(Math.PI - n * Math.atan(one), margins.phase(), 1e-9);
            } else {
                assertEquals(Double.POSITIVE_INFINITY, margins.phase());
            }
        }
    }

    /** One lag and dead time: ωT + atan ωτ = π, margin √(1 + ω²τ²)/K; from a dead time that is nothing to one that is all. */
    @ParameterizedTest
    @ValueSource(doubles = {1e-4, 0.01, 1, 30, 1000, 1e5})
    void findsTheMarginOfALagWithDeadTime(double deadTime) {
        double tau = 25;
        double gain = 3;
        Margins margins = new ControlLoop(chain(tau), gain, List.of(), deadTime).margins();
        double low = 0;
        double high = Math.PI / deadTime;
        for (int i = 0; i < 200; i++) {
            double middle = 0.5 * (low + high);
            if (middle * deadTime + Math.atan(middle * tau) < Math.PI) {
                low = middle;
            } else {
                high = middle;
            }
        }
        assertEquals(low, margins.phaseCrossover(), 1e-9 * low);
        double expected = Math.sqrt(1 + low * low * tau * tau) / gain;
        assertEquals(expected, margins.gain(), 1e-9 * expected);
        double one = Math.sqrt(gain * gain - 1) / tau;
        assertEquals(one, margins.gainCrossover(), 1e-9 * one);
        assertEquals(Math.PI - Math.atan(one * tau) - one * deadTime, margins.phase(), 1e-9 * Math.max(1, one * deadTime));
        assertEquals(expected > 1, new ControlLoop(chain(tau), gain, List.of(), deadTime).closedLoopStable());
    }

    @Test
    void twoLagsNeverHunt() {
        for (double gain : new double[] {0.1, 1, 1e3, 1e6}) {
            ControlLoop loop = new ControlLoop(chain(100, 3), gain, List.of(), 0);
            assertEquals(Double.POSITIVE_INFINITY, loop.margins().gain());
            assertTrue(Double.isNaN(loop.margins().phaseCrossover()));
            assertTrue(loop.closedLoopStable());
            assertEquals(gain > 1, loop.margins().phase() < Math.PI);
        }
    }

    @Test
    void treatsLoopsThatAreHardlyOnes() {
        Margins none = new ControlLoop(chain(1, 2, 3), 0, List.of(1.0), 5).margins();
        assertEquals(new Margins(Double.POSITIVE_INFINITY, Double.POSITIVE_INFINITY, Double.NaN, Double.NaN), none);
        assertTrue(new ControlLoop(chain(1, 2, 3), 0, List.of(1.0), 5).closedLoopStable());
        // a factor only
        assertTrue(new ControlLoop(ONE, 5, List.of(), 0).closedLoopStable());
        assertEquals(Double.POSITIVE_INFINITY, new ControlLoop(ONE, 5, List.of(), 0).margins().gain());
        assertEquals(0.2, new ControlLoop(ONE, -5, List.of(), 0).margins().gain(), 1e-15);
        assertFalse(new ControlLoop(ONE, -5, List.of(), 0).closedLoopStable());
        // dead time only: π/T, and all odd multiples alike
        Margins late = new ControlLoop(ONE, 0.5, List.of(), 4).margins();
        assertEquals(2, late.gain(), 1e-12);
        assertTrue(new ControlLoop(ONE, 0.99, List.of(), 4).closedLoopStable());
        assertFalse(new ControlLoop(ONE, 1.01, List.of(), 4).closedLoopStable());
        // a law of the wrong sign: at rest already
        Margins wrong = new ControlLoop(chain(10), -4, List.of(), 0).margins();
        assertEquals(0.25, wrong.gain(), 1e-15);
        assertEquals(0, wrong.phaseCrossover());
        assertFalse(new ControlLoop(chain(10), -4, List.of(), 0).closedLoopStable());
        assertTrue(new ControlLoop(chain(10), -0.9, List.of(1.0), 0).closedLoopStable());
    }

    /** Three slow lags, two leads, three fast lags: hunts at middle gains, not above, and again at high ones. Nyquist counts rounds. */
    @Test
    void countsRoundsOfAConditionallyStableLoop() {
        double[] lead = {10, 1};
        double[] slow = {1000, 1};
        double[] numerator = Polynomials.times(lead, lead);
        double[] denominator = Polynomials.times(slow, Polynomials.times(slow, slow));
        double[] lags = Polynomials.times(new double[] {0.002, 1}, Polynomials.times(new double[] {0.001, 1}, new double[] {0.001, 1}));
        StateSpace plant = Polynomials.companion(Polynomials.scaled(numerator, -1), denominator);
        int stable = 0;
        int border = 0;
        boolean before = true;
        for (double gain = 1; gain < 1e10; gain *= 1.7) {
            double[] characteristic = Polynomials.sum(Polynomials.times(denominator, lags), Polynomials.scaled(numerator, gain));
            ControlLoop loop = new ControlLoop(plant, gain, List.of(0.002, 0.001, 0.001), 0);
            boolean now = RouthHurwitz.stable(characteristic);
            assertEquals(now, loop.closedLoopStable(), "gain " + gain);
            if (loop.margins().gain() > 1) {
                assertTrue(now);
            }
            border += now != before ? 1 : 0;
            before = now;
            stable += now ? 1 : 0;
        }
        assertEquals(3, border);
        assertTrue(stable > 5);
    }

    /** 200 bodies in a row and between: margins within the time of a glance. */
    @Test
    void isQuickWithManyStates() {
        int n = 200;
        double[][] a = new double[n][n];
        for (int i = 0; i < n; i++) {
            for (int j : new int[] {i + 1, i + 17}) {
                if (j < n) {
                    double g = 1 + (i * 7 + j * 3) % 5;
                    double ci = 50 + (i * 37) % 400;
                    double cj = 50 + (j * 37) % 400;
                    a[i][i] -= g / ci;
                    a[i][j] += g / ci;
                    a[j][j] -= g / cj;
                    a[j][i] += g / cj;
                }
            }
            a[i][i] -= 0.1 / (50 + (i * 37) % 400);
        }
        double[] b = new double[n];
        double[] c = new double[n];
        b[n - 1] = -3;
        c[0] = 1;
        long begin = System.nanoTime();
        StateSpace plant = new StateSpace(a, b, c, 0);
        double sum = 0;
        for (int i = 0; i < 200; i++) {
            sum += plant.at(Math.pow(10, -5 + 0.03 * i)).magnitude();
        }
        assertTrue(sum > 0);
        double took = (System.nanoTime() - begin) * 1e-9;
        assertTrue(took < 3, "took " + took + " s");
        assertTrue(plant.slowest() > plant.fastest());
        Margins margins = new ControlLoop(plant, 1, List.of(5.0), 2).margins();
        Response there = new ControlLoop(plant, 1, List.of(5.0), 2).at(margins.phaseCrossover());
        assertEquals(-1 / margins.gain(), there.real(), 1e-9 / margins.gain());
        assertEquals(0, there.imaginary(), 1e-6 / margins.gain());
    }

    @Test
    void boundsTimeConstants() {
        StateSpace plant = chain(1000, 30, 0.2);
        assertTrue(plant.slowest() >= 1000 && plant.slowest() < 4000, "slowest " + plant.slowest());
        assertTrue(plant.fastest() <= 0.2 && plant.fastest() > 0.05, "fastest " + plant.fastest());
        assertEquals(-1, plant.staticGain(), 1e-12);
        assertEquals(3, plant.size());
    }

    @Test
    void refusesWhatMeansNothing() {
        assertThrows(IllegalArgumentException.class, () -> new StateSpace(new double[][] {{0}}, new double[] {1}, new double[] {1}, 0));
        assertThrows(IllegalArgumentException.class, () -> new StateSpace(new double[][] {{1, 2}}, new double[] {1}, new double[] {1}, 0));
        assertThrows(IllegalArgumentException.class, () -> new StateSpace(new double[][] {{1}}, new double[] {}, new double[] {1}, 0));
        assertThrows(IllegalArgumentException.class,
                () -> new StateSpace(new double[][] {{Double.NaN}}, new double[] {1}, new double[] {1}, 0));
        assertThrows(IllegalArgumentException.class, () -> new ControlLoop(ONE, Double.NaN, List.of(), 0));
        assertThrows(IllegalArgumentException.class, () -> new ControlLoop(ONE, 1, List.of(-1.0), 0));
        assertThrows(IllegalArgumentException.class, () -> new ControlLoop(ONE, 1, List.of(), -1));
    }
}
