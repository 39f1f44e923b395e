package tramontane.physics;

import java.util.function.DoubleUnaryOperator;

/**
 * The root of a function between two places where it differs in sign: regula falsi that halves the weight of an end that stays (the
 * Illinois form: M. Dowell, P. Jarratt, BIT 11 (1971) 168-174), halved itself every third step so that it always ends.
 *
 * @param at    where it ended
 * @param value the function there; NaN where the function gave no number, which ends the search
 */
public record RootSearch(double at, double value) {

    /** Steps that halving alone needs from the largest to the smallest number, times three. */
    private static final int MOST_STEPS = 6500;

    /**
     * Looks for the root.
     *
     * @param function continuous, of one sign at {@code a} and of the other at {@code b}
     * @param a        one end
     * @param b        the other
     * @param atA      the function at {@code a}
     * @param atB      the function at {@code b}
     * @param narrow   distance of the ends at which it stops
     * @param small    size of the function at which it stops
     */
    public static RootSearch between(DoubleUnaryOperator function, double a, double b, double atA, double atB, double narrow, double small) {
        if (!(atA <= 0 && atB >= 0 || atA >= 0 && atB <= 0)) {
            throw new IllegalArgumentException("a root needs two signs, got " + atA + " at " + a + " and " + atB + " at " + b);
        }
        if (Math.abs(atA) <= small || Math.abs(atB) <= small) {
            return Math.abs(atA) <= Math.abs(atB) ? new RootSearch(a, atA) : new RootSearch(b, atB);
        }
        double low = a;
        double high = b;
        double below = atA;
        double above = atB;
        int stays = 0;
        RootSearch last = new RootSearch(a, atA);
        for (int step = 0; step < MOST_STEPS && Math.abs(high - low) > narrow; step++) {
            double next = step % 3 == 2 ? 0.5 * (low + high) : (low * above - high * below) / (above - below);
            if (!(next > Math.min(low, high) && next < Math.max(low, high))) {
                next = 0.5 * (low + high);
            }
            double value = function.applyAsDouble(next);
            last = new RootSearch(next, value);
            if (Double.isNaN(value) || Math.abs(value) <= small || next == low || next == high) {
                return last;
            }
            if (value > 0 == below > 0) {
                low = next;
                below = value;
                above = stays < 0 ? 0.5 * above : above;
                stays = -1;
            } else {
                high = next;
                above = value;
                below = stays > 0 ? 0.5 * below : below;
                stays = 1;
            }
        }
        return last;
    }
}
