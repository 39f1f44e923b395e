package tramontane.physics.control;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Routh's table against roots found by eigenvalues, roots known by construction (routh.py), and textbooks. */
class RouthHurwitzTest {

    @Test
    void agreesWithRoots() {
        List<String[]> rows = Table.rows("routh.csv");
        assertEquals(340, rows.size());
        int unstable = 0;
        for (String[] row : rows) {
            double[] coefficients = Table.numbers(row[3]);
            int right = Integer.parseInt(row[1]);
            String polynomial = Arrays.toString(coefficients);
            assertEquals(right, RouthHurwitz.unstableRoots(coefficients), polynomial);
            assertEquals(right == 0 && row[2].equals("0"), RouthHurwitz.stable(coefficients), polynomial);
            unstable += right > 0 ? 1 : 0;
        }
        assertTrue(unstable > 100 && unstable < 300, unstable + " unstable ones");
    }

    /** Worked examples as remembered of N. Nise, Control Systems Engineering, ch. 6, and K. Ogata, Modern Control Engineering, ch. 5. */
    @Test
    void agreesWithTextbooks() {
        // Nise 6.1
        assertEquals(2, RouthHurwitz.unstableRoots(1, 10, 31, 1030));
        // Nise 6.2: a zero in the first column
        assertEquals(2, RouthHurwitz.unstableRoots(1, 2, 3, 6, 5, 3));
        // Nise 6.4: a row of zeros, four roots on the axis
        assertEquals(0, RouthHurwitz.unstableRoots(1, 7, 6, 42, 8, 56));
        assertFalse(RouthHurwitz.stable(1, 7, 6, 42, 8, 56));
        // Nise 6.5: two right, four on the axis
        assertEquals(2, RouthHurwitz.unstableRoots(1, 1, 12, 22, 39, 59, 48, 38, 20));
        // Ogata: two right
        assertEquals(2, RouthHurwitz.unstableRoots(1, 2, 3, 4, 5));
        // Ogata: s³ + 2s² + s + 2, a pair on the axis
        assertEquals(0, RouthHurwitz.unstableRoots(1, 2, 1, 2));
        assertFalse(RouthHurwitz.stable(1, 2, 1, 2));
        // Ogata: s³ - 3s + 2 = (s - 1)²(s + 2)
        assertEquals(2, RouthHurwitz.unstableRoots(1, 0, -3, 2));
        // Ogata: s⁵ + 2s⁴ + 24s³ + 48s² - 25s - 50 = (s² - 1)(s² + 25)(s + 2)
        assertEquals(1, RouthHurwitz.unstableRoots(1, 2, 24, 48, -25, -50));
        // s⁵ + 2s⁴ + 2s³ + 4s² + 11s + 10: two right
        assertEquals(2, RouthHurwitz.unstableRoots(1, 2, 2, 4, 11, 10));
        // Hurwitz: third order is stable where a₁a₂ > a₀a₃
        assertTrue(RouthHurwitz.stable(1, 2, 3, 5.999));
        assertFalse(RouthHurwitz.stable(1, 2, 3, 6));
        assertFalse(RouthHurwitz.stable(1, 2, 3, 6.001));
    }

    @Test
    void treatsZerosAtBothEnds() {
        assertTrue(RouthHurwitz.stable(0, 0, 1, 3, 2));
        assertFalse(RouthHurwitz.stable(1, 3, 2, 0));
        assertEquals(0, RouthHurwitz.unstableRoots(1, 3, 2, 0));
        assertEquals(1, RouthHurwitz.unstableRoots(1, -3, 0, 0));
        assertTrue(RouthHurwitz.stable(-4));
        assertTrue(RouthHurwitz.stable(-1, -2));
        assertThrows(IllegalArgumentException.class, () -> RouthHurwitz.stable(0, 0));
        assertThrows(IllegalArgumentException.class, () -> RouthHurwitz.stable());
        assertThrows(IllegalArgumentException.class, () -> RouthHurwitz.stable(1, Double.NaN));
    }
}
