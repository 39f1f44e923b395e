package tramontane.airflow.internal;

/**
 * The arithmetic of a dense front. Sums over pivots run in the innermost loop for two rows and four columns at a time, so that
 * six values read serve eight products and everything stays in registers.
 */
final class DenseFront {

    private DenseFront() {
    }

    /**
     * Eliminates the pivots of a front: the Cholesky factor of their columns, in place.
     *
     * @param l       holds the columns row by row, each row as long as there are pivots
     * @param start   where they begin
     * @param pivots  number of columns
     * @param rows    number of rows, those of the pivots first
     * @param inverse gets one over each entry of the diagonal
     * @param at      where these begin
     * @return whether all pivots are above zero and finite
     */
    static boolean eliminate(double[] l, int start, int pivots, int rows, double[] inverse, int at) {
        int j = 0;
        for (; j + 4 <= pivots; j += 4) {
            if (!corner(l, start, pivots, j, j + 4, inverse, at)) {
                return false;
            }
            columns(l, start, pivots, rows, j, inverse, at);
        }
        if (j < pivots) {
            if (!corner(l, start, pivots, j, pivots, inverse, at)) {
                return false;
            }
            for (int i = pivots; i < rows; i++) {
                row(l, start, pivots, i, j, pivots, inverse, at);
            }
        }
        return true;
    }

    /** The diagonal entries from one column to another, and those between. */
    private static boolean corner(double[] l, int start, int pivots, int from, int to, double[] inverse, int at) {
        for (int i = from; i < to; i++) {
            row(l, start, pivots, i, from, i, inverse, at);
            int row = start + i * pivots;
            double pivot = l[row + i];
            for (int k = 0; k < i; k++) {
                pivot -= l[row + k] * l[row + k];
            }
            if (!(pivot > 0 && pivot < Double.POSITIVE_INFINITY)) {
                return false;
            }
            double root = Math.sqrt(pivot);
            l[row + i] = root;
            inverse[at + i] = 1 / root;
        }
        return true;
    }

    /** The entries of one row from one column to another. */
    private static void row(double[] l, int start, int pivots, int i, int from, int to, double[] inverse, int at) {
        int row = start + i * pivots;
        for (int j = from; j < to; j++) {
            int other = start + j * pivots;
            double sum = l[row + j];
            for (int k = 0; k < j; k++) {
                sum -= l[row + k] * l[other + k];
            }
            l[row + j] = sum * inverse[at + j];
        }
    }

    /** Four columns, from below their diagonal entries on. */
    private static void columns(double[] l, int start, int pivots, int rows, int j, double[] inverse, int at) {
        int c0 = start + j * pivots;
        int c1 = c0 + pivots;
        int c2 = c1 + pivots;
        int c3 = c2 + pivots;
        double l10 = l[c1 + j];
        double l20 = l[c2 + j];
        double l21 = l[c2 + j + 1];
        double l30 = l[c3 + j];
        double l31 = l[c3 + j + 1];
        double l32 = l[c3 + j + 2];
        double d0 = inverse[at + j];
        double d1 = inverse[at + j + 1];
        double d2 = inverse[at + j + 2];
        double d3 = inverse[at + j + 3];
        int i = j + 4;
        for (; i + 2 <= rows; i += 2) {
            int r0 = start + i * pivots;
            int r1 = r0 + pivots;
            double a0 = l[r0 + j];
            double a1 = l[r0 + j + 1];
            double a2 = l[r0 + j + 2];
            double a3 = l[r0 + j + 3];
            double b0 = l[r1 + j];
            double b1 = l[r1 + j + 1];
            double b2 = l[r1 + j + 2];
            double b3 = l[r1 + j + 3];
            for (int k = 0; k < j; k++) {
                double a = l[r0 + k];
                double b = l[r1 + k];
                double v0 = l[c0 + k];
                double v1 = l[c1 + k];
                double v2 = l[c2 + k];
                double v3 = l[c3 + k];
                a0 -= a * v0;
                b0 -= b * v0;
                a1 -= a * v1;
                b1 -= b * v1;
                a2 -= a * v2;
                b2 -= b * v2;
                a3 -= a * v3;
                b3 -= b * v3;
            }
            a0 *= d0;
            b0 *= d0;
            a1 = (a1 - a0 * l10) * d1;
            b1 = (b1 - b0 * l10) * d1;
            a2 = (a2 - a0 * l20 - a1 * l21) * d2;
            b2 = (b2 - b0 * l20 - b1 * l21) * d2;
            a3 = (a3 - a0 * l30 - a1 * l31 - a2 * l32) * d3;
            b3 = (b3 - b0 * l30 - b1 * l31 - b2 * l32) * d3;
            l[r0 + j] = a0;
            l[r0 + j + 1] = a1;
            l[r0 + j + 2] = a2;
            l[r0 + j + 3] = a3;
            l[r1 + j] = b0;
            l[r1 + j + 1] = b1;
            l[r1 + j + 2] = b2;
            l[r1 + j + 3] = b3;
        }
        if (i < rows) {
            row(l, start, pivots, i, j, j + 4, inverse, at);
        }
    }

    /**
     * Subtracts B Bᵀ from a triangle.
     *
     * @param l        holds B row by row
     * @param start    where it begins
     * @param pivots   number of its columns
     * @param rows     number of its rows
     * @param triangle holds the triangle row by row: one entry, two entries …
     * @param at       where it begins
     */
    static void subtract(double[] l, int start, int pivots, int rows, double[] triangle, int at) {
        int j = 0;
        for (; j + 4 <= rows; j += 4) {
            int c0 = start + j * pivots;
            int c1 = c0 + pivots;
            int c2 = c1 + pivots;
            int c3 = c2 + pivots;
            edge(l, start, pivots, triangle, at, j, j + 4);
            int i = j + 4;
            for (; i + 2 <= rows; i += 2) {
                int r0 = start + i * pivots;
                int r1 = r0 + pivots;
                double a0 = 0;
                double a1 = 0;
                double a2 = 0;
                double a3 = 0;
                double b0 = 0;
                double b1 = 0;
                double b2 = 0;
                double b3 = 0;
                for (int k = 0; k < pivots; k++) {
                    double a = l[r0 + k];
                    double b = l[r1 + k];
                    double v0 = l[c0 + k];
                    double v1 = l[c1 + k];
                    double v2 = l[c2 + k];
                    double v3 = l[c3 + k];
                    a0 += a * v0;
                    b0 += b * v0;
                    a1 += a * v1;
                    b1 += b * v1;
                    a2 += a * v2;
                    b2 += b * v2;
                    a3 += a * v3;
                    b3 += b * v3;
                }
                int t = at + i * (i + 1) / 2 + j;
                triangle[t] -= a0;
                triangle[t + 1] -= a1;
                triangle[t + 2] -= a2;
                triangle[t + 3] -= a3;
                t += i + 1;
                triangle[t] -= b0;
                triangle[t + 1] -= b1;
                triangle[t + 2] -= b2;
                triangle[t + 3] -= b3;
            }
            if (i < rows) {
                entries(l, start, pivots, triangle, at, i, j, j + 4);
            }
        }
        edge(l, start, pivots, triangle, at, j, rows);
    }

    /** The small triangle on the diagonal from one row to another. */
    private static void edge(double[] l, int start, int pivots, double[] triangle, int at, int from, int to) {
        for (int i = from; i < to; i++) {
            entries(l, start, pivots, triangle, at, i, from, i + 1);
        }
    }

    private static void entries(double[] l, int start, int pivots, double[] triangle, int at, int i, int from, int to) {
        int row = start + i * pivots;
        int t = at + i * (i + 1) / 2;
        for (int j = from; j < to; j++) {
            int other = start + j * pivots;
            double sum = 0;
            for (int k = 0; k < pivots; k++) {
                sum += l[row + k] * l[other + k];
            }
            triangle[t + j] -= sum;
        }
    }
}
