package tramontane.thermal.internal.time;

/** A small dense matrix as lower times upper triangle with row exchanges, to be solved with again and again. */
final class Factors {

    private final int n;
    private final double[] lu;
    private final int[] row;
    private final double[] scratch;

    /**
     * Takes a matrix apart.
     *
     * @param matrix n by n, row after row; taken over
     * @param n      its size
     * @throws ArithmeticException for a matrix that is singular to rounding
     */
    Factors(double[] matrix, int n) {
        this.n = n;
        lu = matrix;
        row = new int[n];
        scratch = new double[n];
        for (int i = 0; i < n; i++) {
            row[i] = i;
        }
        for (int k = 0; k < n; k++) {
            int pivot = k;
            for (int i = k + 1; i < n; i++) {
                if (Math.abs(lu[i * n + k]) > Math.abs(lu[pivot * n + k])) {
                    pivot = i;
                }
            }
            double largest = lu[pivot * n + k];
            if (largest == 0 || !Double.isFinite(largest)) {
                throw new ArithmeticException("singular at row " + k + " of " + n);
            }
            if (pivot != k) {
                for (int j = 0; j < n; j++) {
                    double swap = lu[k * n + j];
                    lu[k * n + j] = lu[pivot * n + j];
                    lu[pivot * n + j] = swap;
                }
                int swap = row[k];
                row[k] = row[pivot];
                row[pivot] = swap;
            }
            for (int i = k + 1; i < n; i++) {
                double factor = lu[i * n + k] / largest;
                lu[i * n + k] = factor;
                if (factor != 0) {
                    for (int j = k + 1; j < n; j++) {
                        lu[i * n + j] -= factor * lu[k * n + j];
                    }
                }
            }
        }
    }

    /** Solves A x = b in place. */
    void solve(double[] b) {
        for (int i = 0; i < n; i++) {
            double sum = b[row[i]];
            for (int j = 0; j < i; j++) {
                sum -= lu[i * n + j] * scratch[j];
            }
            scratch[i] = sum;
        }
        for (int i = n - 1; i >= 0; i--) {
            double sum = scratch[i];
            for (int j = i + 1; j < n; j++) {
                sum -= lu[i * n + j] * b[j];
            }
            b[i] = sum / lu[i * n + i];
        }
    }

    /** Solves x A = b in place. */
    void solveTransposed(double[] b) {
        for (int i = 0; i < n; i++) {
            double sum = b[i];
            for (int j = 0; j < i; j++) {
                sum -= lu[j * n + i] * scratch[j];
            }
            scratch[i] = sum / lu[i * n + i];
        }
        for (int i = n - 1; i >= 0; i--) {
            double sum = scratch[i];
            for (int j = i + 1; j < n; j++) {
                sum -= lu[j * n + i] * scratch[j];
            }
            scratch[i] = sum;
        }
        for (int i = 0; i < n; i++) {
            b[row[i]] = scratch[i];
        }
    }
}
