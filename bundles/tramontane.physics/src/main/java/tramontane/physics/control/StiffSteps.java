package tramontane.physics.control;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/** Steps of TR-BDF2 for plant, mover and sensor in one; the matrix is kept as long as it serves. */
final class StiffSteps {

    /** Place of the middle stage in the step. */
    static final double GAMMA = 2 - Math.sqrt(2);

    private static final double D = 1 - Math.sqrt(2) / 2;
    private static final double W = Math.sqrt(2) / 4;
    private static final int MOST_ITERATIONS = 10;
    private static final int SLOW = 5;
    private static final double SOLVED = 0.01;
    private static final int MATRICES = 6;

    /** A matrix I - s J with its factors. */
    private record Kept(double s, Factors factors) {
    }

    private final LoopSimulation.Plant plant;
    private final int n;
    private final int all;
    private final int mover;
    private final int shows;
    private final double sensorLag;
    private final double moverLag;
    private final double[] tolerance;
    private final double[] x;
    private final double[] dx;

    private double[] state;
    private double[] next;
    private double error;
    private double[][] jacobian;
    private boolean fresh;
    private boolean slow;
    private final List<Kept> kept = new ArrayList<>();

    StiffSteps(LoopSimulation.Plant plant, double sensorLag, double moverLag, double tolerance, double[] start, double startSensor,
            double startSetting) {
        this.plant = plant;
        this.sensorLag = sensorLag;
        this.moverLag = moverLag;
        n = plant.size();
        mover = n;
        shows = moverLag > 0 ? n + 1 : n;
        all = sensorLag > 0 ? shows + 1 : shows;
        state = Arrays.copyOf(start, all);
        this.tolerance = new double[all];
        Arrays.fill(this.tolerance, tolerance);
        if (moverLag > 0) {
            state[mover] = startSetting;
            this.tolerance[mover] = 0.01 * tolerance;
        }
        if (sensorLag > 0) {
            state[shows] = startSensor;
        }
        next = state;
        x = new double[n];
        dx = new double[n];
    }

    int plantSize() {
        return n;
    }

    double[] state() {
        return state;
    }

    /** The setting that acts now. */
    double actual(double applied) {
        return moverLag > 0 ? state[mover] : applied;
    }

    /** What the sensor shows now. */
    double sensor(double applied) {
        return shown(state, applied);
    }

    /** What the sensor shows after the step that was solved. */
    double nextSensor(double applied) {
        return shown(next, applied);
    }

    /** Error of the step that was solved over the tolerance. */
    double error() {
        return error;
    }

    void accept() {
        state = next;
        fresh = false;
    }

    /** Forgets an old matrix; false where it was made here, so that it is not to blame. */
    boolean renew() {
        if (fresh) {
            return false;
        }
        jacobian = null;
        return true;
    }

    /** Solves a step from the state, with the setting that comes to the mover at its begin, its middle stage and its end. */
    boolean solve(double h, double begins, double middle, double ends) {
        if (all == 0) {
            error = 0;
            next = state;
            return true;
        }
        if (jacobian == null || slow) {
            jacobian = jacobian(begins);
            fresh = true;
            slow = false;
            kept.clear();
        }
        Factors matrix = matrix(D * h);
        if (matrix.singular()) {
            return false;
        }
        double[] rates = new double[all];
        rates(begins, state, rates);
        double[] base = new double[all];
        for (int i = 0; i < all; i++) {
            base[i] = state[i] + D * h * rates[i];
        }
        double[] half = state.clone();
        if (!newton(matrix, D * h, middle, base, half)) {
            return false;
        }
        double[] later = new double[all];
        double[] end = new double[all];
        double[] last = new double[all];
        for (int i = 0; i < all; i++) {
            later[i] = (half[i] - base[i]) / (D * h);
            last[i] = state[i] + h * W * (rates[i] + later[i]);
            end[i] = state[i] + (half[i] - state[i]) / GAMMA;
        }
        if (!newton(matrix, D * h, ends, last, end)) {
            return false;
        }
        double[] off = new double[all];
        for (int i = 0; i < all; i++) {
            double atEnd = (end[i] - last[i]) / (D * h);
            off[i] = h * ((4 * W - 1) / 3 * rates[i] - later[i] / 3 + 2 * D / 3 * atEnd);
        }
        error = size(matrix.solve(off));
        next = end;
        return error < Double.POSITIVE_INFINITY;
    }

    /** y = base + s f(y), from a guess that it improves. */
    private boolean newton(Factors matrix, double s, double applied, double[] base, double[] y) {
        double[] rates = new double[all];
        double before = Double.NaN;
        for (int iteration = 1; iteration <= MOST_ITERATIONS; iteration++) {
            rates(applied, y, rates);
            for (int i = 0; i < all; i++) {
                rates[i] = base[i] + s * rates[i] - y[i];
            }
            double[] move = matrix.solve(rates);
            double moved = size(move);
            for (int i = 0; i < all; i++) {
                y[i] += move[i];
            }
            slow |= iteration > SLOW;
            double ratio = moved / before;
            if (moved == 0 || moved < SOLVED && (moved < 1e-3 * SOLVED || ratio < 1 && moved * ratio / (1 - ratio) < SOLVED)) {
                return true;
            }
            if (!(moved < Double.POSITIVE_INFINITY) || ratio >= 1) {
                return false;
            }
            before = moved;
        }
        return false;
    }

    private double size(double[] values) {
        double size = 0;
        for (int i = 0; i < all; i++) {
            double one = Math.abs(values[i]) / tolerance[i];
            if (!(one <= size)) {
                size = one;
                if (Double.isNaN(one)) {
                    return one;
                }
            }
        }
        return size;
    }

    private double shown(double[] y, double applied) {
        if (sensorLag > 0) {
            return y[shows];
        }
        System.arraycopy(y, 0, x, 0, n);
        return plant.sensed(moverLag > 0 ? y[mover] : applied, x);
    }

    private void rates(double applied, double[] y, double[] rates) {
        System.arraycopy(y, 0, x, 0, n);
        double setting = moverLag > 0 ? y[mover] : applied;
        plant.rates(setting, x, dx);
        System.arraycopy(dx, 0, rates, 0, n);
        if (moverLag > 0) {
            rates[mover] = (applied - y[mover]) / moverLag;
        }
        if (sensorLag > 0) {
            rates[shows] = (plant.sensed(setting, x) - y[shows]) / sensorLag;
        }
    }

    private double[][] jacobian(double applied) {
        double[][] matrix = new double[all][all];
        double[] here = new double[all];
        double[] there = new double[all];
        rates(applied, state, here);
        double[] y = state.clone();
        for (int j = 0; j < all; j++) {
            y[j] = state[j] + 1e-7 * Math.max(1, Math.abs(state[j]));
            rates(applied, y, there);
            double step = y[j] - state[j];
            for (int i = 0; i < all; i++) {
                matrix[i][j] = (there[i] - here[i]) / step;
            }
            y[j] = state[j];
        }
        return matrix;
    }

    private Factors matrix(double s) {
        for (Kept one : kept) {
            if (Math.abs(one.s - s) <= 1e-9 * s) {
                return one.factors;
            }
        }
        double[][] matrix = new double[all][all];
        for (int i = 0; i < all; i++) {
            for (int j = 0; j < all; j++) {
                matrix[i][j] = (i == j ? 1 : 0) - s * jacobian[i][j];
            }
        }
        Kept made = new Kept(s, new Factors(matrix));
        if (kept.size() == MATRICES) {
            kept.remove(0);
        }
        kept.add(made);
        return made.factors;
    }
}
