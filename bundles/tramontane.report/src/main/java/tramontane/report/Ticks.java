package tramontane.report;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;

/**
 * Where the marks of an axis stand: at whole multiples of 1, 2 or 5 times a power of ten.
 *
 * @param values their places, rising, each within the axis
 * @param labels what is written at each of them, all with as many decimals
 * @param step   their distance
 */
public record Ticks(List<Double> values, List<String> labels, double step) {

    /** Ends of an axis that miss a tick by rounding have it. */
    private static final double ROUNDING = 1e-9;
    /** Powers of ten of the largest value from which and below which an exponent is written. */
    private static final int LARGE = 7;
    private static final int SMALL = -4;
    private static final int MOST = 1000;

    public Ticks {
        values = List.copyOf(values);
        labels = List.copyOf(labels);
    }

    /**
     * Ticks of an axis.
     *
     * @param from its lower end, as shown to the reader
     * @param to   its upper end, above the lower one
     * @param most how many there may be, 2 or more
     * @return at least one tick, unless the axis is shorter than its numbers are exact
     */
    public static Ticks of(double from, double to, int most) {
        if (!(from < to) || !Double.isFinite(to - from) || most < 2) {
            throw new IllegalArgumentException("no ticks on an axis from " + from + " to " + to + " with at most " + most);
        }
        int power = (int) Math.floor(Math.log10((to - from) / most));
        for (int next = power; ; next++) {
            for (int unit : new int[] {1, 2, 5}) {
                BigDecimal step = BigDecimal.valueOf(unit).scaleByPowerOfTen(next);
                double size = step.doubleValue();
                double first = Math.ceil(from / size - ROUNDING);
                double last = Math.floor(to / size + ROUNDING);
                if (last - first + 1 <= most) {
                    return at(first, last, step, Math.max(Math.abs(from), Math.abs(to)));
                }
            }
        }
    }

    private static Ticks at(double first, double last, BigDecimal step, double largest) {
        List<Double> values = new ArrayList<>();
        List<String> labels = new ArrayList<>();
        int magnitude = (int) Math.floor(Math.log10(largest) + ROUNDING);
        int shift = magnitude >= LARGE || magnitude < SMALL ? magnitude : 0;
        int decimals = Math.max(0, step.stripTrailingZeros().scale() + shift);
        for (double i = first; i <= last && values.size() < MOST; i++) {
            BigDecimal value = new BigDecimal(i).multiply(step);
            values.add(value.doubleValue());
            String number = value.movePointLeft(shift).setScale(decimals, java.math.RoundingMode.HALF_EVEN).toPlainString();
            labels.add(number.replace('-', '−') + (shift == 0 || value.signum() == 0 ? "" : "e" + shift));
        }
        return new Ticks(values, labels, step.doubleValue());
    }
}
