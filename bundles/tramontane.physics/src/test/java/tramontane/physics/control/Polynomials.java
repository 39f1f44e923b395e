package tramontane.physics.control;

/** Polynomials, highest power first. */
final class Polynomials {

    private Polynomials() {
    }

    static double[] times(double[] a, double[] b) {
        double[] product = new double[a.length + b.length - 1];
        for (int i = 0; i < a.length; i++) {
            for (int j = 0; j < b.length; j++) {
                product[i + j] += a[i] * b[j];
            }
        }
        return product;
    }

    static double[] scaled(double[] a, double factor) {
        double[] scaled = new double[a.length];
        for (int i = 0; i < a.length; i++) {
            scaled[i] = factor * a[i];
        }
        return scaled;
    }

    static double[] sum(double[] a, double[] b) {
        int n = Math.max(a.length, b.length);
        double[] sum = new double[n];
        for (int i = 0; i < n; i++) {
            sum[n - 1 - i] = (i < a.length ? a[a.length - 1 - i] : 0) + (i < b.length ? b[b.length - 1 - i] : 0);
        }
        return sum;
    }

    /** Numerator over denominator, of lower degree, as states: controller canonical form. */
    static StateSpace companion(double[] numerator, double[] denominator) {
        int n = denominator.length - 1;
        double[][] a = new double[n][n];
        double[] b = new double[n];
        double[] c = new double[n];
        for (int i = 0; i < n; i++) {
            a[n - 1][i] = -denominator[n - i] / denominator[0];
            if (i + 1 < n) {
                a[i][i + 1] = 1;
            }
            c[i] = i < numerator.length ? numerator[numerator.length - 1 - i] / denominator[0] : 0;
        }
        b[n - 1] = 1;
        return new StateSpace(a, b, c, 0);
    }
}
