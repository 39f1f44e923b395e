package tramontane.analysis;

/**
 * The standard normal distribution, as the scale of a chart needs it.
 *
 * <p>Sources: M. Abramowitz, I. A. Stegun, "Handbook of Mathematical Functions" (1964), 26.2.10 (series), 26.2.14 (continued
 * fraction), 26.2.23 (first guess of the quantile).
 */
final class Normal {

    private static final double DENSITY_AT_ZERO = 1 / Math.sqrt(2 * Math.PI);
    /** From here on the continued fraction is the better one. */
    private static final double TAIL = 3;
    private static final int TERMS = 100;
    private static final int STEPS = 3;

    private Normal() {
    }

    private static double density(double z) {
        return DENSITY_AT_ZERO * Math.exp(-z * z / 2);
    }

    /** The share below a place. */
    static double share(double z) {
        return z < -TAIL ? beyond(-z) : z > TAIL ? 1 - beyond(z) : 0.5 + density(z) * series(z);
    }

    private static double series(double z) {
        double term = z;
        double sum = z;
        for (int i = 3; i < 2 * TERMS && sum + term != sum; i += 2) {
            term *= z * z / i;
            sum += term;
        }
        return sum;
    }

    /** The share above a place in the tail. */
    private static double beyond(double z) {
        double fraction = z;
        for (int i = TERMS; i > 0; i--) {
            fraction = z + i / fraction;
        }
        return density(z) / fraction;
    }

    /**
     * The place below which a share lies.
     *
     * @param share 0 to 1, both left out
     */
    static double quantile(double share) {
        if (share > 0.5) {
            return -quantile(1 - share);
        }
        double t = Math.sqrt(-2 * Math.log(share));
        double z = (2.515517 + t * (0.802853 + t * 0.010328)) / (1 + t * (1.432788 + t * (0.189269 + t * 0.001308))) - t;
        for (int i = 0; i < STEPS; i++) {
            // Halley's method; far out the density is nothing, and the guess is as good as any
            double off = (share(z) - share) / density(z);
            z = Double.isFinite(off) ? z - off / (1 + z * off / 2) : z;
        }
        return z;
    }
}
