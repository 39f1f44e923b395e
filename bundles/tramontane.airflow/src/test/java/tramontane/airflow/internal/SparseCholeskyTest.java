package tramontane.airflow.internal;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.HashSet;
import java.util.List;
import java.util.Random;
import java.util.Set;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class SparseCholeskyTest {

    @Test
    void solvesASystemDoneByHand() {
        // | 4 -1  0 |       | 2 |      x = (1, 2, 3)
        // |-1  4 -2 | x  =  | 1 |
        // | 0 -2  5 |       |11 |
        SparseCholesky matrix = SparseCholesky.of(3, new int[] {0, 2}, new int[] {1, 1});
        assertTrue(matrix.factor(new double[] {4, 4, 5}, new double[] {-1, -2}));
        double[] x = {2, 1, 11};
        matrix.solve(x);
        assertArrayEquals(new double[] {1, 2, 3}, x, 1e-15);
    }

    @Test
    void addsUpEntriesOfTheSamePlace() {
        SparseCholesky matrix = SparseCholesky.of(2, new int[] {0, 1, 0}, new int[] {1, 0, 1});
        assertTrue(matrix.factor(new double[] {3, 3}, new double[] {-0.5, -0.25, -0.25}));
        double[] x = {2, 2};
        matrix.solve(x);
        assertArrayEquals(new double[] {1, 1}, x, 1e-15);
    }

    @Test
    void saysWhenAMatrixIsNotPositiveDefiniteAndWorksAfterwards() {
        SparseCholesky matrix = SparseCholesky.of(2, new int[] {0}, new int[] {1});
        assertFalse(matrix.factor(new double[] {1, 1}, new double[] {-2}));
        assertTrue(matrix.factor(new double[] {2, 2}, new double[] {-1}));
        double[] x = {1, 1};
        matrix.solve(x);
        assertArrayEquals(new double[] {1, 1}, x, 1e-15);
    }

    @Test
    void worksWithoutUnknowns() {
        SparseCholesky matrix = SparseCholesky.of(0, new int[0], new int[0]);
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
        SparseCholesky matrix = SparseCholesky.of(n, a, b);
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

    /** Matrices with entries of either sign, small enough to be done densely. */
    @Property(tries = 400)
    void agreesWithADenseFactorisation(@ForAll Shape shape, @ForAll @IntRange(min = 1, max = 70) int n, @ForAll long seed) {
        Random random = new Random(seed);
        int[][] pairs = shape.pairs(n, random);
        double[] entry = new double[pairs[0].length];
        double[] diagonal = new double[n];
        Arrays.setAll(diagonal, i -> 0.1 + random.nextDouble());
        double[][] dense = new double[n][n];
        for (int e = 0; e < entry.length; e++) {
            entry[e] = random.nextGaussian();
            dense[pairs[0][e]][pairs[1][e]] += entry[e];
            dense[pairs[1][e]][pairs[0][e]] += entry[e];
            diagonal[pairs[0][e]] += Math.abs(entry[e]);
            diagonal[pairs[1][e]] += Math.abs(entry[e]);
        }
        for (int i = 0; i < n; i++) {
            dense[i][i] = diagonal[i];
        }
        double[] right = new double[n];
        Arrays.setAll(right, i -> random.nextGaussian());
        double[] expected = right.clone();
        assertTrue(solveDensely(dense, expected));
        SparseCholesky matrix = SparseCholesky.of(n, pairs[0], pairs[1]);
        assertTrue(matrix.factor(diagonal, entry));
        double[] x = right.clone();
        matrix.solve(x);
        // the diagonal exceeds its row by 0.1 at least, and rows reach 200: a condition of a few thousand
        assertArrayEquals(expected, x, 1e-11);
        double[] again = right.clone();
        assertTrue(matrix.factor(diagonal, entry));
        matrix.solve(again);
        assertArrayEquals(x, again, 0);
    }

    /** A matrix just short of definite, or just beyond: the dense factorisation and ours must see it alike. */
    @Property(tries = 400)
    void tellsWhetherAMatrixIsPositiveDefinite(@ForAll Shape shape, @ForAll @IntRange(min = 2, max = 70) int n,
            @ForAll long seed) {
        Random random = new Random(seed);
        int[][] pairs = shape.pairs(n, random);
        double[] entry = new double[pairs[0].length];
        double[] diagonal = new double[n];
        for (int e = 0; e < entry.length; e++) {
            double size = 0.1 + random.nextDouble();
            entry[e] = random.nextBoolean() ? size : -size;
            diagonal[pairs[0][e]] += size;
            diagonal[pairs[1][e]] += size;
        }
        // a bare node adds a pivot of its own
        Arrays.setAll(diagonal, i -> 1.001 * diagonal[i] + (diagonal[i] == 0 ? 1 : 0));
        SparseCholesky matrix = SparseCholesky.of(n, pairs[0], pairs[1]);
        assertTrue(matrix.factor(diagonal, entry));
        int which = random.nextInt(n);
        double before = diagonal[which];
        diagonal[which] = -1e-9;
        assertFalse(matrix.factor(diagonal, entry));
        diagonal[which] = Double.NaN;
        assertFalse(matrix.factor(diagonal, entry));
        diagonal[which] = Double.POSITIVE_INFINITY;
        assertFalse(matrix.factor(diagonal, entry));
        diagonal[which] = before;
        assertTrue(matrix.factor(diagonal, entry));
        // what is left of the node when all others are eliminated is one over its entry in the inverse; less than that is lost
        double[] unit = new double[n];
        unit[which] = 1;
        matrix.solve(unit);
        diagonal[which] = before - 1.01 / unit[which];
        assertFalse(matrix.factor(diagonal, entry));
        diagonal[which] = before - 0.99 / unit[which];
        assertTrue(matrix.factor(diagonal, entry));
    }

    /** Plain Cholesky, for comparison; right-hand side in, solution out. */
    private static boolean solveDensely(double[][] a, double[] x) {
        int n = x.length;
        for (int j = 0; j < n; j++) {
            for (int i = j; i < n; i++) {
                for (int k = 0; k < j; k++) {
                    a[i][j] -= a[i][k] * a[j][k];
                }
                if (i == j && !(a[j][j] > 0)) {
                    return false;
                }
                a[i][j] = i == j ? Math.sqrt(a[j][j]) : a[i][j] / a[j][j];
            }
        }
        for (int i = 0; i < n; i++) {
            for (int k = 0; k < i; k++) {
                x[i] -= a[i][k] * x[k];
            }
            x[i] /= a[i][i];
        }
        for (int i = n - 1; i >= 0; i--) {
            for (int k = i + 1; k < n; k++) {
                x[i] -= a[k][i] * x[k];
            }
            x[i] /= a[i][i];
        }
        return true;
    }

    /** What a graph looks like; pairs come in any order, either way round and now and then twice. */
    enum Shape {
        RANDOM {
            @Override
            void join(int n, Random random, Pairs pairs) {
                for (int e = random.nextInt(3 * n); e > 0; e--) {
                    pairs.add(random.nextInt(n), random.nextInt(n));
                }
            }
        },
        DENSE {
            @Override
            void join(int n, Random random, Pairs pairs) {
                for (int e = 0; e < n * n / 3; e++) {
                    pairs.add(random.nextInt(n), random.nextInt(n));
                }
            }
        },
        COMPLETE {
            @Override
            void join(int n, Random random, Pairs pairs) {
                for (int i = 0; i < n; i++) {
                    for (int k = 0; k < i; k++) {
                        pairs.add(i, k);
                    }
                }
            }
        },
        CHAIN {
            @Override
            void join(int n, Random random, Pairs pairs) {
                for (int i = 1; i < n; i++) {
                    pairs.add(i - 1, i);
                }
            }
        },
        TREE {
            @Override
            void join(int n, Random random, Pairs pairs) {
                for (int i = 1; i < n; i++) {
                    pairs.add(random.nextInt(i), i);
                }
            }
        },
        /** Parts without anything between them, bare nodes among them. */
        PARTS {
            @Override
            void join(int n, Random random, Pairs pairs) {
                for (int e = 2 * n; e > 0; e--) {
                    int i = random.nextInt(n);
                    int k = random.nextInt(n);
                    if (i / 7 == k / 7 && i % 7 != 0 && k % 7 != 0) {
                        pairs.add(i, k);
                    }
                }
            }
        },
        /** Two hubs with all others around them, and a few ways between these; large ones have dense rows to the ordering. */
        STAR {
            @Override
            void join(int n, Random random, Pairs pairs) {
                for (int i = 1; i < n; i++) {
                    pairs.add(0, i);
                    pairs.add(random.nextInt(4) == 0 ? n - 1 : random.nextInt(n), i);
                }
            }
        },
        GRID {
            @Override
            void join(int n, Random random, Pairs pairs) {
                int width = Math.max(1, (int) Math.sqrt(n));
                for (int i = 0; i < n; i++) {
                    if (i % width > 0) {
                        pairs.add(i, i - 1);
                    }
                    if (i >= width) {
                        pairs.add(i, i - width);
                    }
                }
            }
        };

        abstract void join(int n, Random random, Pairs pairs);

        /** First and second nodes of pairs, under shuffled numbers. */
        int[][] pairs(int n, Random random) {
            Pairs pairs = new Pairs();
            join(n, random, pairs);
            int[] number = new int[n];
            for (int i = 0; i < n; i++) {
                int k = random.nextInt(i + 1);
                number[i] = number[k];
                number[k] = i;
            }
            List<int[]> all = pairs.all;
            for (int e = all.size(); e > 0; e--) {
                if (random.nextInt(10) == 0) {
                    all.add(all.get(random.nextInt(all.size())));
                }
            }
            Collections.shuffle(all, random);
            int[][] result = new int[2][all.size()];
            for (int e = 0; e < all.size(); e++) {
                int turned = random.nextInt(2);
                result[0][e] = number[all.get(e)[turned]];
                result[1][e] = number[all.get(e)[1 - turned]];
            }
            return result;
        }
    }

    private static final class Pairs {
        private final List<int[]> all = new ArrayList<>();

        void add(int i, int k) {
            if (i != k) {
                all.add(new int[] {i, k});
            }
        }
    }

    @Property(tries = 200)
    void ordersEveryNodeOnce(@ForAll Shape shape, @ForAll @IntRange(min = 1, max = 400) int n, @ForAll long seed) {
        int[][] pairs = shape.pairs(n, new Random(seed));
        Pattern pattern = Pattern.of(n, pairs[0], pairs[1]);
        for (int[] order : new int[][] {MinimumDegree.order(pattern), Fronts.of(pattern).order}) {
            int[] sorted = order.clone();
            Arrays.sort(sorted);
            for (int i = 0; i < n; i++) {
                assertEquals(i, sorted[i]);
            }
        }
    }

    /** The factor's entries, counted by eliminating in sets. */
    @Property(tries = 200)
    void countsTheFill(@ForAll Shape shape, @ForAll @IntRange(min = 1, max = 70) int n, @ForAll long seed) {
        int[][] pairs = shape.pairs(n, new Random(seed));
        int[] order = MinimumDegree.order(Pattern.of(n, pairs[0], pairs[1]));
        List<Set<Integer>> neighbours = new ArrayList<>();
        for (int i = 0; i < n; i++) {
            neighbours.add(new HashSet<>());
        }
        for (int e = 0; e < pairs[0].length; e++) {
            neighbours.get(pairs[0][e]).add(pairs[1][e]);
            neighbours.get(pairs[1][e]).add(pairs[0][e]);
        }
        long fill = 0;
        for (int pivot : order) {
            Set<Integer> around = neighbours.get(pivot);
            fill += around.size();
            for (int i : around) {
                neighbours.get(i).addAll(around);
                neighbours.get(i).remove(i);
                neighbours.get(i).remove(pivot);
            }
        }
        assertEquals(fill, SparseCholesky.of(n, pairs[0], pairs[1]).fill());
    }

    @Property(tries = 50)
    void ordersATreeWithoutAnyFill(@ForAll @IntRange(min = 1, max = 2000) int n, @ForAll long seed) {
        int[][] pairs = new int[2][n - 1];
        Random random = new Random(seed);
        for (int i = 1; i < n; i++) {
            pairs[0][i - 1] = random.nextInt(Math.max(1, i / 4), i + 1) - 1;
            pairs[1][i - 1] = i;
        }
        assertEquals(n - 1, SparseCholesky.of(n, pairs[0], pairs[1]).fill());
    }

    /** A hub with very many neighbours goes last at once; looking through it at each of them would take hours here. */
    @Test
    void ordersALargeStarWithoutAnyFill() {
        int n = 1_000_000;
        int[] a = new int[n - 1];
        int[] b = new int[n - 1];
        Arrays.setAll(b, e -> e + 1);
        assertEquals(n - 1, SparseCholesky.of(n, a, b).fill());
    }

    /**
     * CHOLMOD of SuiteSparse 5.12 with its approximate minimum degree ordering gives 11 900, 206 332 and 3 089 774 entries
     * with the diagonal on grids of 32, 100 and 317 nodes a side: lnz of its statistics after cholmod_analyze.
     */
    @ParameterizedTest
    @CsvSource({"32, 11900", "100, 206332", "317, 3089774"})
    void keepsTheFactorsOfAGridAsSparseAsOthersDo(int side, long known) {
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
        long entries = side * side + SparseCholesky.of(side * side, a, b).fill();
        assertTrue(entries <= 1.15 * known, () -> entries + " entries, " + known + " known");
    }
}
