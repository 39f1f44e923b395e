package tramontane.reliability.statistics;

import java.util.Arrays;

/**
 * Newton's method with step control for the maximum of a {@link Likelihood}.
 *
 * <p>A step that does not raise the likelihood enough is halved; where the matrix of second derivatives is not negative definite (only
 * possible where a mean life is held) its diagonal is strengthened. Ends when the squared Newton decrement, twice the expected gain, is
 * below {@link #DECREMENT}; that step is made in full then, so that parameters are exact to about {@code DECREMENT} of their standard
 * error.
 */
final class Newton {

    static final int ITERATIONS = 200;
    static final double DECREMENT = 1e-9;
    /** A τ that is this many times larger or smaller than the spread of the data allows means that there is no maximum. */
    private static final double EXTREME = 1e10;
    /** Where rounding stops the rise first, this many times is enough. */
    private static final double FAR = 1e6;
    /** The decrement below which rounding, not the likelihood, may stop the rise. */
    private static final double ROUNDING = 1e-6;

    enum End {
        CONVERGED, RUNS_AWAY, VANISHES, NOT_CONVERGED
    }

    /**
     * @param place      where it ended, with value and derivatives
     * @param iterations steps made
     * @param end        how
     */
    record Maximum(Likelihood.Place place, int iterations, End end) {
    }

    private Newton() {
    }

    /**
     * @param start theta to start from
     * @param range how far apart logarithms of times are, to tell a τ without bounds
     */
    static Maximum maximise(Likelihood likelihood, double[] start, double range) {
        int dimension = likelihood.dimension();
        Likelihood.Place here = new Likelihood.Place(dimension);
        Likelihood.Place next = new Likelihood.Place(dimension);
        System.arraycopy(start, 0, here.theta, 0, dimension);
        likelihood.evaluate(here);
        int tau = likelihood.tauFree() ? dimension - 1 : -1;
        double[] step = new double[dimension];
        double[][] factor = new double[dimension][dimension];
        for (int iteration = 0; iteration < ITERATIONS; iteration++) {
            if (tau >= 0 && here.theta[tau] * range > EXTREME) {
                return new Maximum(here, iteration, End.RUNS_AWAY);
            }
            if (tau >= 0 && here.theta[tau] * range < 1 / EXTREME) {
                return new Maximum(here, iteration, End.VANISHES);
            }
            if (!direction(here, factor, step)) {
                return new Maximum(here, iteration, stuck(here, tau, range));
            }
            double decrement = 0;
            for (int j = 0; j < dimension; j++) {
                decrement += step[j] * here.gradient[j];
            }
            boolean last = decrement < DECREMENT;
            double length = 1;
            if (tau >= 0 && step[tau] < -0.9 * here.theta[tau]) {
                length = -0.9 * here.theta[tau] / step[tau];
            }
            boolean risen = false;
            for (int halving = 0; halving < 60 && !risen; halving++) {
                for (int j = 0; j < dimension; j++) {
                    next.theta[j] = here.theta[j] + length * step[j];
                }
                likelihood.evaluate(next);
                double gain = next.value - here.value;
                risen = gain >= 0.01 * length * decrement || last && gain > -1e-9 * (1 + Math.abs(here.value));
                length /= 2;
            }
            if (!risen) {
                return new Maximum(here, iteration, decrement < ROUNDING ? End.CONVERGED : stuck(here, tau, range));
            }
            Likelihood.Place swap = here;
            here = next;
            next = swap;
            if (last) {
                return new Maximum(here, iteration + 1, End.CONVERGED);
            }
        }
        return new Maximum(here, ITERATIONS, stuck(here, tau, range));
    }

    private static End stuck(Likelihood.Place at, int tau, double range) {
        return tau >= 0 && at.theta[tau] * range > FAR ? End.RUNS_AWAY : End.NOT_CONVERGED;
    }

    private static boolean direction(Likelihood.Place at, double[][] factor, double[] step) {
        if (!Double.isFinite(at.value)) {
            return false;
        }
        double strengthening = 0;
        for (int attempt = 0; attempt < 40; attempt++) {
            if (factorised(at.hessian, strengthening, factor)) {
                solve(factor, at.gradient, step);
                double sum = 0;
                for (double each : step) {
                    sum += each;
                }
                if (Double.isFinite(sum)) {
                    return true;
                }
            }
            strengthening = strengthening == 0 ? 1e-8 : strengthening * 10;
        }
        return false;
    }

    /** Cholesky factor of minus the matrix, its diagonal strengthened by a share of its size. */
    private static boolean factorised(double[][] hessian, double strengthening, double[][] factor) {
        int n = hessian.length;
        for (int j = 0; j < n; j++) {
            double size = Math.abs(hessian[j][j]);
            double pivot = -hessian[j][j] + strengthening * (size == 0 ? 1 : size);
            for (int k = 0; k < j; k++) {
                pivot -= factor[j][k] * factor[j][k];
            }
            if (!(pivot > 1e-14 * size) || Double.isInfinite(pivot)) {
                return false;
            }
            factor[j][j] = Math.sqrt(pivot);
            for (int i = j + 1; i < n; i++) {
                double sum = -hessian[i][j];
                for (int k = 0; k < j; k++) {
                    sum -= factor[i][k] * factor[j][k];
                }
                factor[i][j] = sum / factor[j][j];
            }
        }
        return true;
    }

    private static void solve(double[][] factor, double[] right, double[] into) {
        int n = right.length;
        for (int i = 0; i < n; i++) {
            double sum = right[i];
            for (int k = 0; k < i; k++) {
                sum -= factor[i][k] * into[k];
            }
            into[i] = sum / factor[i][i];
        }
        for (int i = n - 1; i >= 0; i--) {
            double sum = into[i];
            for (int k = i + 1; k < n; k++) {
                sum -= factor[k][i] * into[k];
            }
            into[i] = sum / factor[i][i];
        }
    }

    /** Inverse of minus the matrix of second derivatives, or an empty array where it is singular beside what its size should be. */
    static double[][] covariance(double[][] hessian, double[] size, double least) {
        int n = hessian.length;
        double[][] factor = new double[n][n];
        if (!factorised(hessian, 0, factor)) {
            return new double[0][];
        }
        for (int j = 0; j < n; j++) {
            if (!(factor[j][j] * factor[j][j] > least * size[j])) {
                return new double[0][];
            }
        }
        double[][] inverse = new double[n][n];
        double[] unit = new double[n];
        for (int j = 0; j < n; j++) {
            Arrays.fill(unit, 0);
            unit[j] = 1;
            solve(factor, unit, inverse[j]);
        }
        return inverse;
    }
}
