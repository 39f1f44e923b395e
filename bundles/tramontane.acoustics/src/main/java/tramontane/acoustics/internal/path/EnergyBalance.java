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
    private final int[] first;

    private EnergyBalance(double[][] rows, int[] first) {
        this.rows = rows;
        this.first = first;
    }

    /**
     * Factors. What stands left of the first entry of a row that is not 0 stays 0, and is not touched: bays are mostly joined to those
     * near them in the list.
     *
     * @param matrix the lower triangle, row by row, diagonal included; taken over
     */
    static EnergyBalance factor(double[][] matrix) {
        int[] first = new int[matrix.length];
        for (int i = 0; i < matrix.length; i++) {
            double[] row = matrix[i];
            while (first[i] < i && row[first[i]] == 0) {
                first[i]++;
            }
            for (int j = first[i]; j < i; j++) {
                double[] above = matrix[j];
                double sum = row[j];
                for (int k = Math.max(first[i], first[j]); k < j; k++) {
                    sum -= row[k] * above[k];
                }
                row[j] = sum; // times the pivot of j still
            }
            for (int j = first[i]; j < i; j++) {
                double factor = row[j] / matrix[j][j];
                row[i] -= factor * row[j];
                row[j] = factor;
            }
        }
        return new EnergyBalance(matrix, first);
    }

    /**
     * Sound power per area in each bay.
     *
     * @param source the bay that is given a sound power of 1
     * @return 1/m²
     */
    double[] solve(int source) {
        double[] x = new double[rows.length];
        x[source] = 1;
        for (int i = source + 1; i < x.length; i++) {
            double[] row = rows[i];
            double sum = 0;
            for (int k = Math.max(source, first[i]); k < i; k++) {
                sum += row[k] * x[k];
            }
            x[i] = -sum;
        }
        for (int i = source; i < x.length; i++) {
            x[i] /= rows[i][i];
        }
        for (int i = x.length - 1; i > 0; i--) {
            double[] row = rows[i];
            double value = x[i];
            for (int k = first[i]; k < i; k++) {
                x[k] -= row[k] * value;
            }
        }
        return x;
    }
}
