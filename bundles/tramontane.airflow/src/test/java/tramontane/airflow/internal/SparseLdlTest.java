package tramontane.airflow.internal;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.Random;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;

class SparseLdlTest {

    @Test
    void solvesASystemDoneByHand() {
        // | 4 -1  0 |       | 2 |      x = (1, 2, 3)
        // |-1  4 -2 | x  =  | 1 |
        // | 0 -2  5 |       |11 |
        SparseLdl matrix = SparseLdl.of(3, new int[] {0, 2}, new int[] {1, 1});
        assertTrue(matrix.factor(new double[] {4, 4, 5}, new double[] {-1, -2}));
        double[] x = {2, 1, 11};
        matrix.solve(x);
        assertArrayEquals(new double[] {1, 2, 3}, x, 1e-15);
    }

    @Test
    void addsUpEntriesOfTheSamePlace() {
        SparseLdl matrix = SparseLdl.of(2, new int[] {0, 1, 0}, new int[] {1, 0, 1});
        assertTrue(matrix.factor(new double[] {3, 3}, new double[] {-0.5, -0.25, -0.25}));
        double[] x = {2, 2};
        matrix.solve(x);
        assertArrayEquals(new double[] {1, 1}, x, 1e-15);
    }

    @Test
    void saysWhenAMatrixIsNotPositiveDefiniteAndWorksAfterwards() {
        SparseLdl matrix = SparseLdl.of(2, new int[] {0}, new int[] {1});
        assertFalse(matrix.factor(new double[] {1, 1}, new double[] {-2}));
        assertTrue(matrix.factor(new double[] {2, 2}, new double[] {-1}));
        double[] x = {1, 1};
        matrix.solve(x);
        assertArrayEquals(new double[] {1, 1}, x, 1e-15);
    }

    @Test
    void worksWithoutUnknowns() {
        SparseLdl matrix = SparseLdl.of(0, new int[0], new int[0]);
        assertTrue(matrix.factor(new double[0], new double[0]));
        matrix.solve(new double[0]);
    }

    @Property(tries = 300)
    void solvesRandomGraphs(@ForAll @IntRange(min = 1, max = 60) int n, @ForAll @IntRange(min = 0, max = 200) int edges,
            @ForAll long seed) {
        Random random = new Random(seed);
        int[] a = new int[n == 1 ? 0 : edges];
        int[] b = new int[a.length];
        double[] entry = new double[a.length];
        double[] diagonal = new double[n];
        Arrays.setAll(diagonal, i -> 0.01 + random.nextDouble());
        for (int e = 0; e < a.length; e++) {
            a[e] = random.nextInt(n);
            b[e] = (a[e] + 1 + random.nextInt(n - 1)) % n;
            double conductance = Math.exp(6 * random.nextGaussian());
            entry[e] = -conductance;
            diagonal[a[e]] += conductance;
            diagonal[b[e]] += conductance;
        }
        double[] right = new double[n];
        Arrays.setAll(right, i -> random.nextGaussian());
        double[] x = right.clone();
        SparseLdl matrix = SparseLdl.of(n, a, b);
        assertTrue(matrix.factor(diagonal, entry));
        matrix.solve(x);
        double[] residual = right.clone();
        double[] size = new double[n];
        for (int i = 0; i < n; i++) {
            residual[i] -= diagonal[i] * x[i];
            size[i] = Math.abs(right[i]) + diagonal[i] * Math.abs(x[i]);
        }
        for (int e = 0; e < a.length; e++) {
            residual[a[e]] -= entry[e] * x[b[e]];
            residual[b[e]] -= entry[e] * x[a[e]];
            size[a[e]] += Math.abs(entry[e] * x[b[e]]);
            size[b[e]] += Math.abs(entry[e] * x[a[e]]);
        }
        // backward stable without pivoting, since the matrix is an M-matrix: rounding of each row only
        for (int i = 0; i < n; i++) {
            assertEquals(0, residual[i] / size[i], 1e-12);
        }
    }

    @Test
    void ordersATreeWithoutAnyFill() {
        // a star whose centre comes first in the numbering fills completely when taken as it stands
        int n = 50;
        int[] a = new int[n - 1];
        int[] b = new int[n - 1];
        for (int e = 0; e < n - 1; e++) {
            b[e] = e + 1;
        }
        assertEquals(n - 1, SparseLdl.of(n, a, b).fill());
    }

    @Test
    void keepsTheFactorsOfAGridSparse() {
        int side = 60;
        int[] a = new int[2 * side * (side - 1)];
        int[] b = new int[a.length];
        int e = 0;
        for (int i = 0; i < side; i++) {
            for (int k = 0; k < side; k++) {
                if (k + 1 < side) {
                    a[e] = i * side + k;
                    b[e++] = i * side + k + 1;
                }
                if (i + 1 < side) {
                    a[e] = i * side + k;
                    b[e++] = (i + 1) * side + k;
                }
            }
        }
        // taken row by row the fill is about side³ = 216 000
        assertTrue(SparseLdl.of(side * side, a, b).fill() < 70_000);
    }

    @Property(tries = 100)
    void ordersEveryNodeOnce(@ForAll @IntRange(min = 2, max = 80) int n, @ForAll @IntRange(min = 0, max = 300) int edges,
            @ForAll long seed) {
        Random random = new Random(seed);
        int[] a = new int[edges];
        int[] b = new int[edges];
        for (int e = 0; e < edges; e++) {
            a[e] = random.nextInt(n);
            b[e] = (a[e] + 1 + random.nextInt(n - 1)) % n;
        }
        int[] order = MinimumDegree.order(n, a, b);
        Arrays.sort(order);
        for (int i = 0; i < n; i++) {
            assertEquals(i, order[i]);
        }
    }
}
