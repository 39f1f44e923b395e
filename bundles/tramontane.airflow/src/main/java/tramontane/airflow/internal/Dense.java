package tramontane.airflow.internal;

/** Small dense systems. */
final class Dense {

    private Dense() {
    }

    /**
     * Solves a x = b by Gauss's elimination with partial pivoting; neither is changed.
     *
     * @return x; null for a singular matrix
     */
    static double[] solve(double[][] a, double[] b) {
        int n = b.length;
        double[][] m = new double[n][];
        double[] x = b.clone();
        for (int i = 0; i < n; i++) {
            m[i] = a[i].clone();
        }
        for (int k = 0; k < n; k++) {
            int pivot = k;
            for (int i = k + 1; i < n; i++) {
                pivot = Math.abs(m[i][k]) > Math.abs(m[pivot][k]) ? i : pivot;
            }
            if (!(Math.abs(m[pivot][k]) > 0) || Double.isInfinite(m[pivot][k])) {
                return null;
            }
            double[] row = m[pivot];
            m[pivot] = m[k];
            m[k] = row;
            double value = x[pivot];
            x[pivot] = x[k];
            x[k] = value;
            for (int i = k + 1; i < n; i++) {
                double factor = m[i][k] / row[k];
                if (factor != 0) {
                    for (int j = k; j < n; j++) {
                        m[i][j] -= factor * row[j];
                    }
                    x[i] -= factor * value;
                }
            }
        }
        for (int k = n - 1; k >= 0; k--) {
            double sum = x[k];
            for (int j = k + 1; j < n; j++) {
                sum -= m[k][j] * x[j];
            }
            x[k] = sum / m[k][k];
        }
        return x;
    }

    /** Number of negative eigenvalues of a symmetric matrix: signs of the pivots of L D Lᵀ (Sylvester), the largest first. */
    static int negatives(double[][] a) {
        int n = a.length;
        double[][] m = new double[n][];
        for (int i = 0; i < n; i++) {
            m[i] = a[i].clone();
        }
        boolean[] done = new boolean[n];
        int negative = 0;
        for (int k = 0; k < n; k++) {
            int pivot = -1;
            for (int i = 0; i < n; i++) {
                pivot = !done[i] && (pivot < 0 || Math.abs(m[i][i]) > Math.abs(m[pivot][pivot])) ? i : pivot;
            }
            done[pivot] = true;
            double[] row = m[pivot];
            negative += row[pivot] < 0 ? 1 : 0;
            for (int i = 0; i < n && row[pivot] != 0; i++) {
                double factor = done[i] ? 0 : row[i] / row[pivot];
                for (int j = 0; j < n && factor != 0; j++) {
                    m[i][j] -= factor * row[j];
                }
            }
        }
        return negative;
    }
}
