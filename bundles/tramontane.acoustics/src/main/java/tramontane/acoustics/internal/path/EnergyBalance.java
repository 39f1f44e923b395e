package tramontane.acoustics.internal.path;

/**
 * Diffuse sound in bays that are joined by openings, in one band: E_i (A_i + Σ S_p) − Σ S_p τ_p E_j = W_i, where E is the sound power
 * that meets a unit of area.
 *
 * <p>The matrix is symmetric, and positive definite where each bay has a way to something that takes sound up; what one bay gets of
 * the sound of another is what the other would get of its own. Factored once (L D Lᵀ), solved for each source.
 */
final class EnergyBalance {

    private final double[][] rows;

    private EnergyBalance(double[][] rows) {
        this.rows = rows;
    }

    /**
     * Factors.
     *
     * @param matrix the lower triangle, row by row, diagonal included; taken over
     */
    static EnergyBalance factor(double[][] matrix) {
        double[] column = new double[matrix.length]; // what is read again and again lies side by side
        for (int j = 0; j < matrix.length; j++) {
            double pivot = matrix[j][j];
            for (int i = j + 1; i < matrix.length; i++) {
                column[i] = matrix[i][j];
                matrix[i][j] /= pivot;
            }
            for (int i = j + 1; i < matrix.length; i++) {
                double[] row = matrix[i];
                double factor = row[j];
                if (factor == 0) {
                    continue; // most bays are joined to few others
                }
                for (int k = j + 1; k <= i; k++) {
                    row[k] -= factor * column[k];
                }
            }
        }
        return new EnergyBalance(matrix);
    }

    /**
     * Sound power per area in each bay.
     *
     * @param source the bay that is given a sound power of 1
     * @return 1/m²
     */
    double[] solve(int source) {
        int n = rows.length;
        double[] x = new double[n];
        x[source] = 1;
        for (int i = source + 1; i < n; i++) {
            double sum = 0;
            for (int k = source; k < i; k++) {
                sum += rows[i][k] * x[k];
            }
            x[i] -= sum;
        }
        for (int i = 0; i < n; i++) {
            x[i] /= rows[i][i];
        }
        for (int k = n - 1; k > 0; k--) {
            for (int i = 0; i < k; i++) {
                x[i] -= rows[k][i] * x[k];
            }
        }
        return x;
    }
}
