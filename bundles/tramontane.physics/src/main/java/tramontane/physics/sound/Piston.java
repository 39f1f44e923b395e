package tramontane.physics.sound;

import static tramontane.physics.sound.Inputs.positive;

/**
 * A flat circular piston in an endless wall, as the simplest model of an opening from which sound comes in one phase.
 *
 * <p>L. E. Kinsler, A. R. Frey, A. B. Coppens, J. V. Sanders, Fundamentals of Acoustics, 4th edition, chapter 7 (formulas from
 * memory): far field intensity over that on the axis |2 J1(x)/x|², x = ka sin θ; directivity on the axis (ka)²/(1 − J1(2ka)/(ka)).
 * Exact for an endless wall at distances well beyond a and ka²/2. k = 2πf/c, a is the radius.
 */
public final class Piston {

    private Piston() {
    }

    /**
     * Directivity factor Q in a direction; 2 in all for a piston that is small against the wavelength.
     *
     * @param frequency Hz, positive
     * @param radius    m, positive
     * @param angle     to the axis, rad, 0 to π/2
     * @param speed     of sound, m/s, positive
     */
    public static double factor(double frequency, double radius, double angle, double speed) {
        double ka = 2 * Math.PI * positive("frequency", frequency) * positive("radius", radius) / positive("speed of sound", speed);
        return onAxis(ka) * pattern(ka, angle);
    }

    /** @param ka wave number times radius, positive
     *  @return directivity factor on the axis */
    public static double onAxis(double ka) {
        double square = positive("ka", ka) * ka;
        if (ka < 0.05) {
            // the difference below would lose its digits
            return 1 / (0.5 - square / 12 * (1 - square / 12 * (1 - square / 20)));
        }
        return square / (1 - j1(2 * ka) / ka);
    }

    /** @param ka    wave number times radius, positive
     *  @param angle to the axis, rad, 0 to π/2
     *  @return intensity over that on the axis */
    public static double pattern(double ka, double angle) {
        if (!(angle >= 0 && angle <= Math.PI / 2)) {
            throw new IllegalArgumentException("angle must be 0 to π/2, got " + angle);
        }
        double x = positive("ka", ka) * Math.sin(angle);
        if (x < 1e-4) {
            return 1 - x * x / 4;
        }
        double amplitude = 2 * j1(x) / x;
        return amplitude * amplitude;
    }

    /**
     * Bessel function J1. Up to 25 by recurrence from above (Miller's algorithm), beyond by Hankel's asymptotic series (Abramowitz and
     * Stegun, 9.1.27, 9.1.46, 9.2.5).
     *
     * @param x not negative
     */
    static double j1(double x) {
        if (x == 0) {
            return 0;
        }
        return x <= 25 ? byRecurrence(x) : asymptotic(x);
    }

    private static double byRecurrence(double x) {
        double above = 0;
        double here = 1e-300;
        double sum = 0;
        double first = 0;
        // 25 orders beyond the turning point n = x leave less than rounding
        for (int n = 2 * (int) ((x + 30) / 2 + 5); n > 0; n--) {
            double below = 2 * n / x * here - above;
            above = here;
            here = below;
            if (n == 2) {
                first = here;
            }
            // now at order n − 1
            if ((n - 1) % 2 == 0) {
                sum += n == 1 ? here : 2 * here;
            }
            if (Math.abs(here) > 1e200) {
                above *= 1e-200;
                here *= 1e-200;
                sum *= 1e-200;
                first *= 1e-200;
            }
        }
        return first / sum;
    }

    private static double asymptotic(double x) {
        double term = 1;
        double p = 1;
        double q = 0;
        for (int k = 1; k <= 20; k++) {
            double odd = 2 * k - 1;
            term *= (4 - odd * odd) / (k * 8 * x);
            switch (k % 4) {
                case 1 -> q += term;
                case 2 -> p -= term;
                case 3 -> q -= term;
                default -> p += term;
            }
        }
        double phase = x - 0.75 * Math.PI;
        return Math.sqrt(2 / (Math.PI * x)) * (p * Math.cos(phase) - q * Math.sin(phase));
    }
}
