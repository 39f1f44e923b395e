package tramontane.physics.control;

/** A square matrix as the product of two triangles, rows exchanged for the largest pivot. */
final class Factors {

    private final double[][] lu;
    private final int[] rows;
    private final boolean singular;

    /** @param matrix is overwritten and kept */
    Factors(double[][] matrix) {
        int n = matrix.length;
        lu = matrix;
        rows = new int[n];
        boolean broken = false;
        for (int i = 0; i < n; i++) {
            rows[i] = i;
        }
        for (int k = 0; k < n; k++) {
            int best = k;
            for (int i = k + 1; i < n; i++) {
                if (Math.abs(lu[i][k]) > Math.abs(lu[best][k])) {
                    best = i;
                }
            }
            double[] row = lu[best];
            lu[best] = lu[k];
            lu[k] = row;
            int place = rows[best];
            rows[best] = rows[k];
            rows[k] = place;
            double pivot = row[k];
            if (!(Math.abs(pivot) > 0 && Math.abs(pivot) < Double.POSITIVE_INFINITY)) {
                broken = true;
                break;
            }
            for (int i = k + 1; i < n; i++) {
                double[] other = lu[i];
                if (other[k] != 0) {
                    double factor = other[k] / pivot;
                    other[k] = factor;
                    for (int j = k + 1; j < n; j++) {
                        other[j] -= factor * row[j];
                    }
                }
            }
        }
        singular = broken;
    }

    boolean singular() {
        return singular;
    }

    /** What the matrix turns into the right side. */
    double[] solve(double[] right) {
        int n = lu.length;
        double[] x = new double[n];
        for (int i = 0; i < n; i++) {
            double sum = right[rows[i]];
            for (int j = 0; j < i; j++) {
                sum -= lu[i][j] * x[j];
            }
            x[i] = sum;
        }
        for (int i = n - 1; i >= 0; i--) {
            double sum = x[i];
            for (int j = i + 1; j < n; j++) {
                sum -= lu[i][j] * x[j];
            }
            x[i] = sum / lu[i][i];
        }
        return x;
    }
}
