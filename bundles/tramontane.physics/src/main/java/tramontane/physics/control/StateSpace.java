package tramontane.physics.control;

/**
 * A linear system with one input and one output: ẋ = A x + b u, y = c·x + d u.
 *
 * <p>For heated bodies x are temperatures over those of an operating point, u the change of the fan's setting, y that of the sensed
 * temperature. May have no state at all; then it is the factor d.
 *
 * <p>A is brought to upper Hessenberg form H = Qᵀ A Q once; each frequency then costs n² operations instead of n³: A. J. Laub,
 * Efficient multivariable frequency response computations, IEEE Trans. Automatic Control 26 (1981) 407-408 (from memory).
 * Immutable.
 */
public final class StateSpace {

    private final int n;
    private final double d;
    private final double[][] hessenberg;
    private final double[] input;
    private final double[] output;
    private final double staticGain;
    private final double slowest;
    private final double fastest;

    /**
     * Takes the matrices; they are copied.
     *
     * @param a n rows of n, 1/s
     * @param b n, unit of state per second and unit of input
     * @param c n, unit of output per unit of state
     * @param d unit of output per unit of input
     * @throws IllegalArgumentException where sizes differ, a number is not finite, or A has no inverse, which means that it drifts
     */
    public StateSpace(double[][] a, double[] b, double[] c, double d) {
        n = a.length;
        if (b.length != n || c.length != n) {
            throw new IllegalArgumentException(n + " rows, " + b.length + " inputs and " + c.length + " outputs; expected equal numbers");
        }
        this.d = Inputs.finite("d", d);
        input = Inputs.finite("b", b);
        output = Inputs.finite("c", c);
        hessenberg = copy(a);
        Factors factors = new Factors(copy(a));
        if (factors.singular()) {
            throw new IllegalArgumentException("the matrix of " + n + " states has no inverse: a state drifts without end");
        }
        double[] still = factors.solve(input);
        double gain = d;
        for (int i = 0; i < n; i++) {
            gain -= output[i] * still[i];
        }
        staticGain = gain;
        slowest = n == 0 ? 0 : normOfInverse(factors, n);
        fastest = n == 0 ? 0 : 1 / norm(hessenberg);
        reduce();
    }

    /**
     * A plant near an operating point, by central differences of 0.01 in each state (K) and 1e-4 in the setting.
     *
     * @param plant   what answers; asked a little to either side
     * @param setting the setting that acts
     * @param state   its state there, K
     */
    public static StateSpace near(LoopSimulation.Plant plant, double setting, double[] state) {
        int n = plant.size();
        double[][] a = new double[n][n];
        double[] b = new double[n];
        double[] c = new double[n];
        double[] up = new double[n];
        double[] down = new double[n];
        double[] x = state.clone();
        for (int j = 0; j < n; j++) {
            double above = state[j] + 0.01;
            double below = state[j] - 0.01;
            x[j] = above;
            plant.rates(setting, x, up);
            double sensedUp = plant.sensed(setting, x);
            x[j] = below;
            plant.rates(setting, x, down);
            double sensedDown = plant.sensed(setting, x);
            x[j] = state[j];
            for (int i = 0; i < n; i++) {
                a[i][j] = (up[i] - down[i]) / (above - below);
            }
            c[j] = (sensedUp - sensedDown) / (above - below);
        }
        double more = setting + 1e-4;
        double less = setting - 1e-4;
        plant.rates(more, x, up);
        plant.rates(less, x, down);
        for (int i = 0; i < n; i++) {
            b[i] = (up[i] - down[i]) / (more - less);
        }
        return new StateSpace(a, b, c, (plant.sensed(more, x) - plant.sensed(less, x)) / (more - less));
    }

    /** How many states. */
    public int size() {
        return n;
    }

    /** What the output moves by in the end, per unit of input: d - c A⁻¹ b. */
    public double staticGain() {
        return staticGain;
    }

    /** What the output does at once, per unit of input: d. */
    public double directGain() {
        return d;
    }

    /** No time constant is longer than this, s: the norm of A⁻¹. Often some times the longest. Zero without states. */
    public double slowest() {
        return slowest;
    }

    /** No time constant is shorter than this, s: one over the norm of A. Often half the shortest. Zero without states. */
    public double fastest() {
        return fastest;
    }

    /**
     * The answer to a sine: c (jωI - A)⁻¹ b + d.
     *
     * @param omega angular frequency, rad/s, not negative
     */
    public Response at(double omega) {
        Inputs.notNegative("angular frequency", omega);
        if (omega == 0) {
            return new Response(staticGain, 0);
        }
        double[][] re = new double[n][];
        double[] im = new double[n * n];
        double[] xr = input.clone();
        double[] xi = new double[n];
        for (int i = 0; i < n; i++) {
            re[i] = new double[n];
            for (int j = Math.max(0, i - 1); j < n; j++) {
                re[i][j] = -hessenberg[i][j];
            }
            im[i * n + i] = omega;
        }
        eliminate(re, im, xr, xi);
        double real = d;
        double imaginary = 0;
        for (int i = n - 1; i >= 0; i--) {
            double sr = xr[i];
            double si = xi[i];
            double[] row = re[i];
            int at = i * n;
            for (int j = i + 1; j < n; j++) {
                sr -= row[j] * xr[j] - im[at + j] * xi[j];
                si -= row[j] * xi[j] + im[at + j] * xr[j];
            }
            double pr = row[i];
            double pi = im[at + i];
            double size = pr * pr + pi * pi;
            xr[i] = (sr * pr + si * pi) / size;
            xi[i] = (si * pr - sr * pi) / size;
            real += output[i] * xr[i];
            imaginary += output[i] * xi[i];
        }
        return new Response(real, imaginary);
    }

    /** Clears what is below the diagonal of a complex Hessenberg matrix, neighbouring rows exchanged for the larger pivot. */
    private void eliminate(double[][] re, double[] im, double[] xr, double[] xi) {
        for (int k = 0; k + 1 < n; k++) {
            double[] upper = re[k];
            double[] lower = re[k + 1];
            int u = k * n;
            int l = u + n;
            if (Math.abs(lower[k]) + Math.abs(im[l + k]) > Math.abs(upper[k]) + Math.abs(im[u + k])) {
                re[k] = lower;
                re[k + 1] = upper;
                upper = re[k];
                lower = re[k + 1];
                for (int j = k; j < n; j++) {
                    double keep = im[u + j];
                    im[u + j] = im[l + j];
                    im[l + j] = keep;
                }
                double keep = xr[k];
                xr[k] = xr[k + 1];
                xr[k + 1] = keep;
                keep = xi[k];
                xi[k] = xi[k + 1];
                xi[k + 1] = keep;
            }
            double size = upper[k] * upper[k] + im[u + k] * im[u + k];
            double fr = (lower[k] * upper[k] + im[l + k] * im[u + k]) / size;
            double fi = (im[l + k] * upper[k] - lower[k] * im[u + k]) / size;
            if (fr == 0 && fi == 0) {
                continue;
            }
            for (int j = k + 1; j < n; j++) {
                lower[j] -= fr * upper[j] - fi * im[u + j];
                im[l + j] -= fr * im[u + j] + fi * upper[j];
            }
            xr[k + 1] -= fr * xr[k] - fi * xi[k];
            xi[k + 1] -= fr * xi[k] + fi * xr[k];
        }
    }

    /** Householder reflections from both sides; input and output turn with them. */
    private void reduce() {
        double[] v = new double[n];
        for (int k = 0; k + 2 < n; k++) {
            double size = 0;
            for (int i = k + 1; i < n; i++) {
                size = Math.hypot(size, hessenberg[i][k]);
            }
            double below = 0;
            for (int i = k + 2; i < n; i++) {
                below = Math.max(below, Math.abs(hessenberg[i][k]));
            }
            if (below == 0) {
                continue;
            }
            double head = hessenberg[k + 1][k];
            double turned = head > 0 ? -size : size;
            double length = 0;
            for (int i = k + 1; i < n; i++) {
                v[i] = (hessenberg[i][k] - (i == k + 1 ? turned : 0)) / size;
                length += v[i] * v[i];
            }
            for (int j = k; j < n; j++) {
                double sum = 0;
                for (int i = k + 1; i < n; i++) {
                    sum += v[i] * hessenberg[i][j];
                }
                sum *= 2 / length;
                for (int i = k + 1; i < n; i++) {
                    hessenberg[i][j] -= sum * v[i];
                }
            }
            for (int i = 0; i < n; i++) {
                reflect(hessenberg[i], v, k + 1, length);
            }
            reflect(input, v, k + 1, length);
            reflect(output, v, k + 1, length);
            for (int i = k + 2; i < n; i++) {
                hessenberg[i][k] = 0;
            }
        }
    }

    private static void reflect(double[] row, double[] v, int from, double length) {
        double sum = 0;
        for (int j = from; j < row.length; j++) {
            sum += row[j] * v[j];
        }
        sum *= 2 / length;
        for (int j = from; j < row.length; j++) {
            row[j] -= sum * v[j];
        }
    }

    /** The smaller of the largest row sum and the largest column sum; no eigenvalue is larger. */
    private static double norm(double[][] matrix) {
        double ofRows = 0;
        double[] columns = new double[matrix.length];
        for (double[] row : matrix) {
            double sum = 0;
            for (int j = 0; j < row.length; j++) {
                sum += Math.abs(row[j]);
                columns[j] += Math.abs(row[j]);
            }
            ofRows = Math.max(ofRows, sum);
        }
        double ofColumns = 0;
        for (double column : columns) {
            ofColumns = Math.max(ofColumns, column);
        }
        return Math.min(ofRows, ofColumns);
    }

    private static double normOfInverse(Factors factors, int n) {
        double[][] turned = new double[n][];
        for (int j = 0; j < n; j++) {
            double[] unit = new double[n];
            unit[j] = 1;
            turned[j] = factors.solve(unit);
        }
        return norm(turned);
    }

    private static double[][] copy(double[][] a) {
        double[][] copy = new double[a.length][];
        for (int i = 0; i < a.length; i++) {
            if (a[i].length != a.length) {
                throw new IllegalArgumentException(a.length + " rows but " + a[i].length + " numbers in row " + i + "; expected a square");
            }
            copy[i] = Inputs.finite("A", a[i]);
        }
        return copy;
    }
}
