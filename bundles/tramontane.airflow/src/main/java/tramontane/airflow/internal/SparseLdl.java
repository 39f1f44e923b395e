package tramontane.airflow.internal;

import java.util.Arrays;

/**
 * Solves sparse symmetric positive definite systems by A = L D Lᵀ, again and again with the same pattern.
 *
 * <p>The order of elimination, the elimination tree and the pattern of L are found once ({@link #of}); then each
 * {@link #factor} and {@link #solve} works in the memory taken then. Up-looking factorisation after T. A. Davis, "Algorithm
 * 849: a concise sparse Cholesky factorization package", ACM Trans. Math. Softw. 31 (2005) 587-591.
 *
 * <p>One instance belongs to one thread.
 */
public final class SparseLdl {

    private final int n;
    /** Position in the order of elimination → node. */
    private final int[] order;
    /** Upper triangle of the reordered matrix by columns. */
    private final int[] upperStart;
    private final int[] upperRow;
    private final double[] upper;
    /** Which entry of the upper triangle each edge adds to. */
    private final int[] slot;
    /** Pattern of L by rows, each row in an order in which the columns it needs come first. */
    private final int[] rowStart;
    private final int[] rowColumn;
    /** L by columns, without its unit diagonal. */
    private final int[] lowerStart;
    private final int[] lowerRow;
    private final double[] lower;
    private final int[] filled;
    private final double[] d;
    private final double[] work;

    private SparseLdl(int n, int[] order, int[] upperStart, int[] upperRow, int[] slot, int[] rowStart, int[] rowColumn,
            int[] lowerStart) {
        this.n = n;
        this.order = order;
        this.upperStart = upperStart;
        this.upperRow = upperRow;
        this.slot = slot;
        this.rowStart = rowStart;
        this.rowColumn = rowColumn;
        this.lowerStart = lowerStart;
        upper = new double[upperRow.length];
        lowerRow = new int[rowColumn.length];
        lower = new double[rowColumn.length];
        filled = new int[n];
        d = new double[n];
        work = new double[n];
        for (int k = 0; k < n; k++) {
            for (int p = rowStart[k]; p < rowStart[k + 1]; p++) {
                int column = rowColumn[p];
                lowerRow[lowerStart[column] + filled[column]++] = k;
            }
        }
    }

    /**
     * Prepares for a pattern.
     *
     * @param n number of unknowns
     * @param a row of each entry off the diagonal
     * @param b column of each entry; {@code (a, b)} stands for {@code (b, a)} too, and may come more than once
     */
    public static SparseLdl of(int n, int[] a, int[] b) {
        int[] order = MinimumDegree.order(n, a, b);
        int[] place = new int[n];
        for (int k = 0; k < n; k++) {
            place[order[k]] = k;
        }
        int entries = a.length;
        int[] start = new int[n + 1];
        for (int e = 0; e < entries; e++) {
            start[Math.max(place[a[e]], place[b[e]]) + 1]++;
        }
        for (int k = 0; k < n; k++) {
            start[k + 1] += start[k];
        }
        int[] row = new int[entries];
        int[] slot = new int[entries];
        int[] next = Arrays.copyOf(start, n);
        for (int e = 0; e < entries; e++) {
            int column = Math.max(place[a[e]], place[b[e]]);
            slot[e] = next[column]++;
            row[slot[e]] = Math.min(place[a[e]], place[b[e]]);
        }
        return symbolic(n, order, start, row, slot);
    }

    private static SparseLdl symbolic(int n, int[] order, int[] start, int[] row, int[] slot) {
        int[] parent = new int[n];
        int[] seen = new int[n];
        int[] count = new int[n];
        int[] rowStart = new int[n + 1];
        for (int k = 0; k < n; k++) {
            parent[k] = -1;
            seen[k] = k;
            rowStart[k + 1] = rowStart[k];
            for (int p = start[k]; p < start[k + 1]; p++) {
                for (int i = row[p]; seen[i] != k; i = parent[i]) {
                    if (parent[i] < 0) {
                        parent[i] = k;
                    }
                    seen[i] = k;
                    count[i]++;
                    rowStart[k + 1]++;
                }
            }
        }
        int[] lowerStart = new int[n + 1];
        for (int k = 0; k < n; k++) {
            lowerStart[k + 1] = lowerStart[k] + count[k];
        }
        int[] rowColumn = new int[rowStart[n]];
        int[] path = new int[n];
        Arrays.fill(seen, -1);
        for (int k = 0; k < n; k++) {
            seen[k] = k;
            int top = rowStart[k + 1];
            for (int p = start[k]; p < start[k + 1]; p++) {
                int length = 0;
                for (int i = row[p]; seen[i] != k; i = parent[i]) {
                    path[length++] = i;
                    seen[i] = k;
                }
                while (length > 0) {
                    rowColumn[--top] = path[--length];
                }
            }
        }
        return new SparseLdl(n, order, start, row, slot, rowStart, rowColumn, lowerStart);
    }

    /**
     * Factorises.
     *
     * @param diagonal    entries of the diagonal
     * @param offDiagonal entries off the diagonal in the order given to {@link #of}; those of one place add up
     * @return whether the matrix is positive definite; without that there is nothing to solve with
     */
    public boolean factor(double[] diagonal, double[] offDiagonal) {
        Arrays.fill(upper, 0);
        for (int e = 0; e < slot.length; e++) {
            upper[slot[e]] += offDiagonal[e];
        }
        Arrays.fill(filled, 0);
        double[] y = work;
        for (int k = 0; k < n; k++) {
            for (int p = upperStart[k]; p < upperStart[k + 1]; p++) {
                y[upperRow[p]] += upper[p];
            }
            double pivot = diagonal[order[k]];
            for (int r = rowStart[k]; r < rowStart[k + 1]; r++) {
                int i = rowColumn[r];
                double yi = y[i];
                y[i] = 0;
                int first = lowerStart[i];
                int end = first + filled[i];
                for (int p = first; p < end; p++) {
                    y[lowerRow[p]] -= lower[p] * yi;
                }
                double entry = yi / d[i];
                pivot -= entry * yi;
                lower[end] = entry;
                filled[i]++;
            }
            if (!(pivot > 0) || pivot == Double.POSITIVE_INFINITY) {
                Arrays.fill(y, 0);
                return false;
            }
            d[k] = pivot;
        }
        return true;
    }

    /** Solves with the last factors: right-hand side in, solution out. */
    public void solve(double[] x) {
        double[] y = work;
        for (int k = 0; k < n; k++) {
            y[k] = x[order[k]];
        }
        for (int k = 0; k < n; k++) {
            double yk = y[k];
            for (int p = lowerStart[k]; p < lowerStart[k + 1]; p++) {
                y[lowerRow[p]] -= lower[p] * yk;
            }
        }
        for (int k = n - 1; k >= 0; k--) {
            double sum = y[k] / d[k];
            for (int p = lowerStart[k]; p < lowerStart[k + 1]; p++) {
                sum -= lower[p] * y[lowerRow[p]];
            }
            y[k] = sum;
        }
        for (int k = 0; k < n; k++) {
            x[order[k]] = y[k];
            y[k] = 0;
        }
    }

    /** Entries of L below its diagonal. */
    public int fill() {
        return rowColumn.length;
    }
}
