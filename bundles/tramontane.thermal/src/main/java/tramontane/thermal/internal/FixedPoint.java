package tramontane.thermal.internal;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.function.BooleanSupplier;
import java.util.function.UnaryOperator;

/**
 * Finds x = g(x) by Anderson's mixing: D. G. Anderson, "Iterative procedures for nonlinear integral equations", J. ACM 12 (1965)
 * 547-560. Converges where plain repetition creeps or swings, as where buoyancy alone moves the air.
 *
 * @param point     the last g(x)
 * @param converged whether g no longer moves it
 * @param steps     how often g was asked
 * @param last      what g gave last, newest last, for whoever wants to show how it goes round
 */
public record FixedPoint(double[] point, boolean converged, int steps, List<double[]> last) {

    private static final int DEPTH = 4;
    private static final int REMEMBERED = 8;
    /** Growth of the residual from which what was learnt is forgotten. */
    private static final double WORSE = 2;

    /**
     * Looks for the fixed point.
     *
     * @param map       g; its answer is a new array
     * @param start     first x
     * @param tolerance largest change of a member at which it ends
     * @param most      how often g may be asked
     * @param stop      asked each time whether the answer is no longer wanted
     */
    public static FixedPoint of(UnaryOperator<double[]> map, double[] start, double tolerance, int most, BooleanSupplier stop) {
        int n = start.length;
        double[] x = start.clone();
        List<double[]> moves = new ArrayList<>();
        List<double[]> changes = new ArrayList<>();
        Deque<double[]> last = new ArrayDeque<>();
        double[] beforeX = null;
        double[] beforeF = null;
        double beforeNorm = Double.POSITIVE_INFINITY;
        double damping = 1;
        double[] g = x;
        int asked = 0;
        for (int step = 1; step <= most && !stop.getAsBoolean(); step++) {
            asked = step;
            g = map.apply(x.clone());
            last.addLast(g);
            if (last.size() > REMEMBERED) {
                last.removeFirst();
            }
            double[] f = new double[n];
            double norm = 0;
            for (int i = 0; i < n; i++) {
                f[i] = g[i] - x[i];
                norm = Math.max(norm, Math.abs(f[i]));
            }
            if (norm <= tolerance) {
                return new FixedPoint(g, true, step, List.copyOf(last));
            }
            if (norm > WORSE * beforeNorm) {
                moves.clear();
                changes.clear();
                damping = Math.max(0.1, 0.5 * damping);
            } else if (beforeX != null) {
                double[] move = new double[n];
                double[] change = new double[n];
                for (int i = 0; i < n; i++) {
                    move[i] = x[i] - beforeX[i];
                    change[i] = f[i] - beforeF[i];
                }
                moves.add(move);
                changes.add(change);
                if (moves.size() > DEPTH) {
                    moves.removeFirst();
                    changes.removeFirst();
                }
            }
            beforeX = x;
            beforeF = f;
            beforeNorm = norm;
            x = mixed(x, f, moves, changes, damping);
        }
        return new FixedPoint(g, false, asked, List.copyOf(last));
    }

    /** The next x: where what was learnt of g says that it no longer moves. */
    private static double[] mixed(double[] x, double[] f, List<double[]> moves, List<double[]> changes, double damping) {
        int n = x.length;
        int m = changes.size();
        double[] weights = new double[m];
        if (m > 0) {
            double[] matrix = new double[m * m];
            double trace = 0;
            for (int a = 0; a < m; a++) {
                for (int b = 0; b < m; b++) {
                    matrix[a * m + b] = dot(changes.get(a), changes.get(b));
                }
                weights[a] = dot(changes.get(a), f);
                trace += matrix[a * m + a];
            }
            for (int a = 0; a < m; a++) {
                matrix[a * m + a] += 1e-14 * trace + Double.MIN_NORMAL; // like moves teach nothing new
            }
            Elimination.solve(matrix, weights);
        }
        double[] next = new double[n];
        for (int i = 0; i < n; i++) {
            double value = x[i] + damping * f[i];
            for (int a = 0; a < m; a++) {
                value -= weights[a] * (moves.get(a)[i] + damping * changes.get(a)[i]);
            }
            next[i] = value;
        }
        return next;
    }

    private static double dot(double[] a, double[] b) {
        double sum = 0;
        for (int i = 0; i < a.length; i++) {
            sum += a[i] * b[i];
        }
        return sum;
    }
}
