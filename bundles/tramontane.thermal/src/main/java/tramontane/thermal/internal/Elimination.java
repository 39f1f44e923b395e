package tramontane.thermal.internal;

/** Gaussian elimination with row exchanges for small dense systems. */
public final class Elimination {

    private Elimination() {
    }

    /**
     * Solves in place.
     *
     * @param matrix n by n, row after row; destroyed
     * @param vector right side; receives the solution
     * @throws ArithmeticException for a matrix that is singular to rounding
     */
    public static void solve(double[] matrix, double[] vector) {
        int n = vector.length;
        for (int k = 0; k < n; k++) {
            int pivot = k;
            for (int i = k + 1; i < n; i++) {
                if (Math.abs(matrix[i * n + k]) > Math.abs(matrix[pivot * n + k])) {
                    pivot = i;
                }
            }
            double largest = matrix[pivot * n + k];
            if (largest == 0 || !Double.isFinite(largest)) {
                throw new ArithmeticException("singular at row " + k + " of " + n);
            }
            if (pivot != k) {
                for (int j = k; j < n; j++) {
                    double swap = matrix[k * n + j];
                    matrix[k * n + j] = matrix[pivot * n + j];
                    matrix[pivot * n + j] = swap;
                }
                double swap = vector[k];
                vector[k] = vector[pivot];
                vector[pivot] = swap;
            }
            for (int i = k + 1; i < n; i++) {
                double factor = matrix[i * n + k] / largest;
                if (factor != 0) {
                    for (int j = k + 1; j < n; j++) {
                        matrix[i * n + j] -= factor * matrix[k * n + j];
                    }
                    vector[i] -= factor * vector[k];
                }
            }
        }
        for (int k = n - 1; k >= 0; k--) {
            double sum = vector[k];
            for (int j = k + 1; j < n; j++) {
                sum -= matrix[k * n + j] * vector[j];
            }
            vector[k] = sum / matrix[k * n + k];
        }
    }
}
