package tramontane.airflow.internal;

import java.util.Arrays;

/**
 * Solves sparse symmetric positive definite systems by A = L Lᵀ, again and again with the same pattern.
 *
 * <p>The order of elimination and the place of every entry are found once ({@link #of}); then each {@link #factor} and
 * {@link #solve} works in the memory taken then. The factorisation goes {@linkplain Fronts front by front}, each a dense
 * matrix small enough to stay in the cache.
 *
 * <p>One instance belongs to one thread.
 */
public final class SparseCholesky {

    private final int n;
    private final Fronts fronts;
    /** Entries off the diagonal by front: where those of each begin, which they are, and where they go in its columns. */
    private final int[] entryStart;
    private final int[] entry;
    private final int[] entryPlace;
    /** The columns of L by fronts, one over their diagonal, and the triangles that wait for their parents. */
    private final double[] lower;
    private final double[] inverse;
    private final double[] stack;
    private final double[] work;

    private SparseCholesky(int n, Fronts fronts, int[] a, int[] b) {
        this.n = n;
        this.fronts = fronts;
        entryStart = new int[fronts.count + 1];
        entry = new int[a.length];
        entryPlace = new int[a.length];
        placeEntries(a, b);
        lower = new double[fronts.columns[fronts.count]];
        inverse = new double[n];
        stack = new double[fronts.stack];
        work = new double[n];
    }

    /** The same pattern again, with memory of its own. */
    private SparseCholesky(SparseCholesky like) {
        n = like.n;
        fronts = like.fronts;
        entryStart = like.entryStart;
        entry = like.entry;
        entryPlace = like.entryPlace;
        lower = new double[like.lower.length];
        inverse = new double[n];
        stack = new double[like.stack.length];
        work = new double[n];
    }

    /** Another one for the same pattern, which need not be looked at again. */
    public SparseCholesky another() {
        return new SparseCholesky(this);
    }

    /**
     * Prepares for a pattern.
     *
     * @param n number of unknowns
     * @param a row of each entry off the diagonal
     * @param b column of each entry; {@code (a, b)} stands for {@code (b, a)} too, and may come more than once
     */
    public static SparseCholesky of(int n, int[] a, int[] b) {
        return new SparseCholesky(n, Fronts.of(Pattern.of(n, a, b)), a, b);
    }

    private void placeEntries(int[] a, int[] b) {
        int[] place = new int[n];
        int[] front = new int[n];
        for (int s = 0; s < fronts.count; s++) {
            for (int k = fronts.first[s]; k < fronts.first[s + 1]; k++) {
                place[fronts.order[k]] = k;
                front[k] = s;
            }
        }
        for (int e = 0; e < a.length; e++) {
            if (a[e] == b[e]) {
                throw new IllegalArgumentException("entry " + e + " is on the diagonal, in row " + a[e]);
            }
            entryStart[front[Math.min(place[a[e]], place[b[e]])]]++;
        }
        for (int s = 1; s <= fronts.count; s++) {
            entryStart[s] += entryStart[s - 1];
        }
        // each part is filled from its end, which leaves its start there
        for (int e = a.length - 1; e >= 0; e--) {
            int column = Math.min(place[a[e]], place[b[e]]);
            int row = Math.max(place[a[e]], place[b[e]]);
            int s = front[column];
            int pivots = fronts.first[s + 1] - fronts.first[s];
            int local = row < fronts.first[s + 1] ? row - fronts.first[s] : pivots - fronts.borderStart[s]
                    + Arrays.binarySearch(fronts.border, fronts.borderStart[s], fronts.borderStart[s + 1], row);
            int slot = --entryStart[s];
            entry[slot] = e;
            entryPlace[slot] = local * pivots + column - fronts.first[s];
        }
    }

    /**
     * Factorises.
     *
     * @param diagonal    entries of the diagonal
     * @param offDiagonal entries off the diagonal in the order given to {@link #of}; those of one place add up
     * @return whether the matrix is positive definite; without that there is nothing to solve with
     */
    public boolean factor(double[] diagonal, double[] offDiagonal) {
        int[] first = fronts.first;
        int[] borderStart = fronts.borderStart;
        for (int s = 0; s < fronts.count; s++) {
            int pivots = first[s + 1] - first[s];
            int rows = borderStart[s + 1] - borderStart[s];
            int columns = fronts.columns[s];
            int made = fronts.made[s];
            int size = rows * (rows + 1) / 2;
            Arrays.fill(lower, columns, fronts.columns[s + 1], 0);
            for (int k = 0; k < pivots; k++) {
                lower[columns + k * (pivots + 1)] = diagonal[fronts.order[first[s] + k]];
            }
            for (int p = entryStart[s]; p < entryStart[s + 1]; p++) {
                lower[columns + entryPlace[p]] += offDiagonal[entry[p]];
            }
            Arrays.fill(stack, made, made + size, 0);
            for (int c = fronts.firstChild[s]; c >= 0; c = fronts.nextChild[c]) {
                add(c, pivots, columns, made);
            }
            if (!DenseFront.eliminate(lower, columns, pivots, pivots + rows, inverse, first[s])) {
                return false;
            }
            DenseFront.subtract(lower, columns + pivots * pivots, pivots, rows, stack, made);
            if (fronts.left[s] != made) {
                System.arraycopy(stack, made, stack, fronts.left[s], size);
            }
        }
        return true;
    }

    /** Adds what a front left to its parent's columns and triangle. */
    private void add(int child, int pivots, int columns, int made) {
        int[] inParent = fronts.inParent;
        int start = fronts.borderStart[child];
        int rows = fronts.borderStart[child + 1] - start;
        int inColumns = 0;
        while (inColumns < rows && inParent[start + inColumns] < pivots) {
            inColumns++;
        }
        int p = fronts.left[child];
        for (int i = 0; i < inColumns; i++) {
            int row = columns + inParent[start + i] * pivots;
            for (int k = 0; k <= i; k++) {
                lower[row + inParent[start + k]] += stack[p + k];
            }
            p += i + 1;
        }
        for (int i = inColumns; i < rows; i++) {
            int at = inParent[start + i];
            int row = columns + at * pivots;
            for (int k = 0; k < inColumns; k++) {
                lower[row + inParent[start + k]] += stack[p + k];
            }
            at -= pivots;
            int triangle = made + at * (at + 1) / 2 - pivots;
            for (int k = inColumns; k <= i; k++) {
                stack[triangle + inParent[start + k]] += stack[p + k];
            }
            p += i + 1;
        }
    }

    /** Solves with the last factors: right-hand side in, solution out. */
    public void solve(double[] x) {
        double[] y = work;
        for (int k = 0; k < n; k++) {
            y[k] = x[fronts.order[k]];
        }
        for (int s = 0; s < fronts.count; s++) {
            forwards(y, s);
        }
        for (int s = fronts.count - 1; s >= 0; s--) {
            backwards(y, s);
        }
        for (int k = 0; k < n; k++) {
            x[fronts.order[k]] = y[k];
        }
    }

    private void forwards(double[] y, int s) {
        int first = fronts.first[s];
        int pivots = fronts.first[s + 1] - first;
        int row = fronts.columns[s];
        for (int i = 0; i < pivots; i++) {
            double sum = y[first + i];
            for (int k = 0; k < i; k++) {
                sum -= lower[row + k] * y[first + k];
            }
            y[first + i] = sum * inverse[first + i];
            row += pivots;
        }
        for (int p = fronts.borderStart[s]; p < fronts.borderStart[s + 1]; p++) {
            double sum = 0;
            for (int k = 0; k < pivots; k++) {
                sum += lower[row + k] * y[first + k];
            }
            y[fronts.border[p]] -= sum;
            row += pivots;
        }
    }

    private void backwards(double[] y, int s) {
        int first = fronts.first[s];
        int pivots = fronts.first[s + 1] - first;
        int row = fronts.columns[s] + pivots * pivots;
        for (int p = fronts.borderStart[s]; p < fronts.borderStart[s + 1]; p++) {
            double below = y[fronts.border[p]];
            for (int k = 0; k < pivots; k++) {
                y[first + k] -= lower[row + k] * below;
            }
            row += pivots;
        }
        row = fronts.columns[s] + pivots * pivots;
        for (int i = pivots - 1; i >= 0; i--) {
            row -= pivots;
            double value = y[first + i] * inverse[first + i];
            y[first + i] = value;
            for (int k = 0; k < i; k++) {
                y[first + k] -= lower[row + k] * value;
            }
        }
    }

    /** Entries of L below its diagonal. */
    public long fill() {
        return fronts.fill;
    }
}
