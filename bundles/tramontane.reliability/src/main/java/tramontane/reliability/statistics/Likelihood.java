package tramontane.reliability.statistics;

import java.util.Arrays;

/**
 * The logarithm of the likelihood of censored lives in a form that is concave: {@code z = τ u - w·γ + κ} for each time, with τ = 1/σ.
 *
 * <p>{@code u} is the logarithm of a time, less what is held; κ is a constant, or {@code τ (ln(mean) - μ)} where a mean life is held. But
 * for the latter the likelihood is concave in (γ, τ) for every family here, so that a maximum is the only one.
 *
 * <p>Source: J. Burridge, "A Note on Maximum Likelihood Estimation for Regression Models Using Grouped Data", J. R. Stat. Soc. B 43 (1981).
 *
 * @param family    which family
 * @param seen      what was seen of each row
 * @param first     u of the time until which it lived; 0 where that does not matter
 * @param second    u of the time by which it had failed; 0 where that does not matter
 * @param w         row by row, as many as there are free coefficients
 * @param count     units of each row
 * @param direction row by row, in which direction z moves when what is held is moved
 * @param constant  added to the value
 * @param tau       NaN, or the τ that is held
 * @param shift     κ, where no mean is held
 * @param mean      whether a mean life is held
 */
record Likelihood(Family family, Family.Seen[] seen, double[] first, double[] second, double[][] w, double[] count, double[] direction,
        double constant, double tau, double shift, boolean mean) {

    boolean tauFree() {
        return Double.isNaN(tau);
    }

    /** How many coefficients are free, without τ. */
    int coefficients() {
        return w[0].length;
    }

    /** Number of what {@link #evaluate} takes. */
    int dimension() {
        return coefficients() + (tauFree() ? 1 : 0);
    }

    /** Value and derivatives at a place; arrays are used again from one evaluation to the next. */
    static final class Place {
        final double[] theta;
        final double[] gradient;
        final double[][] hessian;
        private final double[] unit = new double[6];
        double value;
        /** Derivative by τ, also where τ is held. */
        double byTau;
        /** Sum over the rows of derivative by z times direction. */
        double along;

        Place(int dimension) {
            theta = new double[dimension];
            gradient = new double[dimension];
            hessian = new double[dimension][dimension];
        }
    }

    void evaluate(Place at) {
        int p = coefficients();
        boolean free = tauFree();
        double t = free ? at.theta[p] : tau;
        double kappa = shift;
        double kappaSlope = 0;
        double kappaCurvature = 0;
        if (mean) {
            double[] log = family.logMean(1 / t);
            kappa = t * log[0];
            kappaSlope = log[0] - log[1] / t;
            kappaCurvature = log[2] / (t * t * t);
        }
        double logTau = Math.log(t);
        double[] h = at.unit;
        double value = constant;
        double byTau = 0;
        double byTauTwice = 0;
        double along = 0;
        Arrays.fill(at.gradient, 0);
        for (double[] row : at.hessian) {
            Arrays.fill(row, 0);
        }
        for (int i = 0; i < count.length; i++) {
            double middle = kappa;
            double[] wi = w[i];
            for (int j = 0; j < p; j++) {
                middle -= wi[j] * at.theta[j];
            }
            Family.Seen what = seen[i];
            boolean narrow = family.contribution(what, t * first[i] + middle, t * second[i] + middle, h);
            double n = count[i];
            value += n * h[0];
            double one = first[i] + kappaSlope;
            double two = second[i] + kappaSlope;
            if (narrow) {
                one = (first[i] + second[i]) / 2 + kappaSlope;
                byTau += n / t;
                byTauTwice -= n / (t * t);
            } else if (what == Family.Seen.FAILED) {
                value += n * logTau;
                byTau += n / t;
                byTauTwice -= n / (t * t);
            }
            double both = n * (h[1] + h[2]);
            along += both * direction[i];
            byTau += n * (h[1] * one + h[2] * two);
            byTauTwice += n * (h[3] * one * one + 2 * h[4] * one * two + h[5] * two * two) + both * kappaCurvature;
            double twice = n * (h[3] + 2 * h[4] + h[5]);
            double mixed = n * (h[3] * one + h[4] * (one + two) + h[5] * two);
            for (int j = 0; j < p; j++) {
                at.gradient[j] -= wi[j] * both;
                for (int k = 0; k <= j; k++) {
                    at.hessian[j][k] += wi[j] * wi[k] * twice;
                }
                if (free) {
                    at.hessian[p][j] -= wi[j] * mixed;
                }
            }
        }
        if (free) {
            at.gradient[p] = byTau;
            at.hessian[p][p] = byTauTwice;
        }
        for (int j = 0; j < at.hessian.length; j++) {
            for (int k = 0; k < j; k++) {
                at.hessian[k][j] = at.hessian[j][k];
            }
        }
        at.value = value;
        at.byTau = byTau;
        at.along = along;
    }
}
