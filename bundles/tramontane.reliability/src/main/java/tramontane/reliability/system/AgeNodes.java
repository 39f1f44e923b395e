package tramontane.reliability.system;

import java.util.ArrayList;
import java.util.List;

import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.LUDecomposition;

/**
 * Points that stand for how far ages have run ahead of calendar time.
 *
 * <p>Coordinate: logarithm of age over time, one per group that ages differently. Points are those of total degree up to a limit over
 * sequences of Leja points that begin at zero (age = time); they carry polynomials of that degree.
 */
final class AgeNodes {

    private static final int MOST = 70;
    private static final int HIGHEST = 10;

    /** Coordinates per dimension, in the order of use. */
    final double[][] line;
    /** Per node and dimension, which coordinate. */
    final int[][] index;
    /** Per dimension: derivative at a node (row) of the polynomial that is 1 at another (column). */
    final double[][][] derivative;

    AgeNodes(double[] low, double[] high) {
        int dimensions = low.length;
        double widest = 0;
        for (int d = 0; d < dimensions; d++) {
            widest = Math.max(widest, high[d] - low[d]);
        }
        int degree = dimensions == 0 ? 0 : (int) Math.min(HIGHEST, Math.ceil(dimensions == 1 ? 5 + 6 * widest : 3 + 5 * widest));
        while (degree > 1 && count(dimensions, degree) > MOST) {
            degree--;
        }
        line = new double[dimensions][];
        for (int d = 0; d < dimensions; d++) {
            line[d] = leja(low[d], high[d], degree + 1);
        }
        List<int[]> all = new ArrayList<>();
        collect(all, new int[dimensions], 0, degree);
        index = all.toArray(new int[0][]);
        derivative = derivatives();
    }

    int size() {
        return index.length;
    }

    private static double count(int dimensions, int degree) {
        double count = 1;
        for (int i = 1; i <= degree; i++) {
            count = count * (dimensions + i) / i;
        }
        return count;
    }

    private static void collect(List<int[]> all, int[] current, int dimension, int left) {
        if (dimension == current.length) {
            all.add(current.clone());
            return;
        }
        for (int i = 0; i <= left; i++) {
            current[dimension] = i;
            collect(all, current, dimension + 1, left - i);
        }
        current[dimension] = 0;
    }

    private static double[] leja(double low, double high, int count) {
        double[] points = new double[count];
        for (int n = 1; n < count; n++) {
            double best = -1;
            for (int i = 0; i <= 2000; i++) {
                double candidate = (low + high) / 2 - (high - low) / 2 * Math.cos(Math.PI * i / 2000);
                double product = 1;
                for (int j = 0; j < n; j++) {
                    product *= Math.abs(candidate - points[j]) / (high - low);
                }
                if (product > best) {
                    best = product;
                    points[n] = candidate;
                }
            }
        }
        return points;
    }

    /** Newton's polynomial of a number of points, and its slope. */
    private static double[] newton(double[] points, int degree, double at) {
        double value = 1;
        double slope = 0;
        for (int j = 0; j < degree; j++) {
            slope = slope * (at - points[j]) + value;
            value *= at - points[j];
        }
        return new double[] {value, slope};
    }

    private double[][][] derivatives() {
        int n = index.length;
        int dimensions = line.length;
        double[][] values = new double[n][n];
        double[][][] slopes = new double[dimensions][n][n];
        for (int node = 0; node < n; node++) {
            for (int basis = 0; basis < n; basis++) {
                double[] value = new double[dimensions];
                double[] slope = new double[dimensions];
                double scale = 1;
                double product = 1;
                for (int d = 0; d < dimensions; d++) {
                    double[] own = newton(line[d], index[basis][d], line[d][index[node][d]]);
                    scale = newton(line[d], index[basis][d], line[d][index[basis][d]])[0];
                    value[d] = own[0] / scale;
                    slope[d] = own[1] / scale;
                    product *= value[d];
                }
                values[node][basis] = product;
                for (int d = 0; d < dimensions; d++) {
                    double partial = slope[d];
                    for (int other = 0; other < dimensions; other++) {
                        partial *= other == d ? 1 : value[other];
                    }
                    slopes[d][node][basis] = partial;
                }
            }
        }
        double[][] inverse = inverse(values);
        double[][][] result = new double[dimensions][n][n];
        for (int d = 0; d < dimensions; d++) {
            for (int i = 0; i < n; i++) {
                for (int k = 0; k < n; k++) {
                    double slope = slopes[d][i][k];
                    if (slope != 0) {
                        for (int j = 0; j < n; j++) {
                            result[d][i][j] += slope * inverse[k][j];
                        }
                    }
                }
            }
        }
        return result;
    }

    private static double[][] inverse(double[][] matrix) {
        return new LUDecomposition(new Array2DRowRealMatrix(matrix)).getSolver().getInverse().getData();
    }
}
