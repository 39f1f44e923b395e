package tramontane.report;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.ToDoubleFunction;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;
import tramontane.analysis.Chart.Axis;
import tramontane.analysis.Chart.Extent;
import tramontane.analysis.Chart.Scale;
import tramontane.physics.units.UnitSystem;

/**
 * Where the marks of an axis stand, round as they are shown to the reader: on a linear scale at whole multiples of 1, 2 or 5 times a
 * power of ten, on a logarithmic one at these powers and at 2 and 5 between them, on one of shares at those in use.
 *
 * @param values their places in the unit shown, rising, each within the axis
 * @param labels what is written at each of them; on a linear scale all with as many decimals
 * @param step   their distance on a linear scale; 0 on any other
 */
public record Ticks(List<Double> values, List<String> labels, double step) {

    /** Ends of an axis that miss a tick by rounding have it. */
    private static final double ROUNDING = 1e-9;
    /** Powers of ten of the largest value from which and below which an exponent is written. */
    private static final int LARGE = 7;
    private static final int SMALL = -4;
    private static final int MOST = 1000;
    /** From this power of ten on, and below its negative, marks of a logarithmic axis have an exponent if one of them must. */
    private static final int LONG = 4;
    /** Most marks of a linear axis below. */
    private static final int MANY = 12;
    /** Fewer marks of a scale's own do not tell where one is, and others are taken. */
    private static final int FEW = 3;
    /** Percent failed by the characteristic life. */
    private static final double CHARACTERISTIC = 63.2;
    /** Percent, those that matter most first; where it is the characteristic life, 63.2 comes even before them. */
    private static final double[] SHARES = {0, 10, 50, 90, 1, 99, CHARACTERISTIC, 5, 95, 0.1, 99.9, 20, 80, 30, 70, 2, 0.5, 0.01, 99.99, 0.001, 1e-4, 1e-5, 1e-6};

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
            String number = value.movePointLeft(shift).setScale(decimals, RoundingMode.HALF_EVEN).toPlainString();
            labels.add(number.replace('-', '−') + (shift == 0 || value.signum() == 0 ? "" : "e" + shift));
        }
        return new Ticks(values, labels, step.doubleValue());
    }

    /**
     * As many ticks of an axis of any scale as have room.
     *
     * @param axis   the axis
     * @param extent what of it is seen, SI
     * @param units  those of the reader
     * @param length how long the axis is drawn
     * @param room   how much of that length a label takes, with the gap to the next
     * @return ticks whose labels do not run into each other; none where two have no room and no single one is round
     */
    public static Ticks along(Axis axis, Extent extent, UnitSystem units, double length, ToDoubleFunction<String> room) {
        return new Layout(axis, extent, units, length, room, false).ticks();
    }

    /**
     * Round places of an axis of any scale, as a table lists them.
     *
     * @param most how many there may be, 2 or more
     */
    static Ticks listed(Axis axis, Extent extent, UnitSystem units, int most) {
        return axis.scale() == Scale.LINEAR ? of(axis.shown(extent.from(), units), axis.shown(extent.to(), units), most)
                : new Layout(axis, extent, units, most - 1, label -> 1, true).ticks();
    }

    /** An axis that wants ticks; for a list, in which only their count matters, at any digit where it is logarithmic. */
    private record Layout(Axis axis, Extent extent, UnitSystem units, double length, ToDoubleFunction<String> room, boolean list) {

        private Ticks ticks() {
            return switch (axis.scale()) {
                case LINEAR -> even();
                case LOG -> decades();
                case WEIBULL, NORMAL, EXPONENTIAL -> shares();
            };
        }

        private double from() {
            return axis.shown(extent.from(), units);
        }

        private double to() {
            return axis.shown(extent.to(), units);
        }

        private double place(double shown) {
            return axis.scale().share(extent, axis.si(shown, units)) * length;
        }

        private boolean holds(double shown) {
            double slack = ROUNDING * length;
            double place = place(shown);
            return place >= -slack && place <= length + slack;
        }

        private boolean apart(double one, String label, double other, String otherLabel) {
            return list || Math.abs(place(one) - place(other)) >= (room.applyAsDouble(label) + room.applyAsDouble(otherLabel)) / 2;
        }

        private boolean fits(Ticks ticks) {
            return (!list || ticks.values().size() <= length + 1) && IntStream.range(1, ticks.values().size()).allMatch(i -> apart(ticks.values().get(i - 1), ticks.labels().get(i - 1),
                    ticks.values().get(i), ticks.labels().get(i)));
        }

        /** Multiples of one step, the most that fit. */
        private Ticks even() {
            Ticks ticks = held(MANY);
            for (int most = MANY - 1; most >= 2 && !fits(ticks); most--) {
                ticks = held(most);
            }
            return fits(ticks) ? ticks : first(ticks);
        }

        /** Without those that the scale cannot show. */
        private Ticks held(int most) {
            Ticks all = Ticks.of(from(), to(), most);
            int[] which = IntStream.range(0, all.values().size()).filter(i -> holds(all.values().get(i))).toArray();
            return new Ticks(IntStream.of(which).mapToObj(all.values()::get).toList(), IntStream.of(which).mapToObj(all.labels()::get).toList(), all.step());
        }

        private static Ticks first(Ticks ticks) {
            return new Ticks(ticks.values().subList(0, 1), ticks.labels().subList(0, 1), ticks.step());
        }

        /** The same where the scale is another. */
        private Ticks uneven() {
            Ticks even = even();
            return new Ticks(even.values(), even.labels(), 0);
        }

        private Ticks decades() {
            if (!(from() > 0)) {
                return uneven();
            }
            List<Ticks> choice = new ArrayList<>();
            if (list) {
                choice.add(powers(1, 1, 2, 3, 4, 5, 6, 7, 8, 9));
            }
            choice.add(powers(1, 1, 2, 5));
            for (int apart = 1; apart == 1 || choice.getLast().values().size() > 1; apart++) {
                choice.add(powers(apart, 1));
            }
            Optional<Ticks> best = choice.stream().filter(ticks -> ticks.values().size() >= FEW && fits(ticks)).findFirst();
            if (best.isPresent()) {
                return best.get();
            }
            Ticks even = uneven();
            Ticks few = choice.stream().filter(this::fits).max(Comparator.comparingInt(ticks -> ticks.values().size())).orElse(even);
            // a power of ten or two say more of a logarithmic axis than as many other numbers
            return even.values().size() > few.values().size() ? even : few;
        }

        /** Some multiples of each power of ten whose exponent is a multiple of a number. */
        private Ticks powers(int apart, int... multiples) {
            int first = Math.floorDiv((int) Math.floor(Math.log10(from())), apart) * apart;
            int last = (int) Math.ceil(Math.log10(to()));
            List<BigDecimal> places = new ArrayList<>();
            for (int power = first; power <= last && places.size() < MOST; power += apart) {
                for (int multiple : multiples) {
                    BigDecimal place = BigDecimal.valueOf(multiple).scaleByPowerOfTen(power);
                    if (holds(place.doubleValue())) {
                        places.add(place);
                    }
                }
            }
            boolean far = places.stream().mapToInt(Layout::magnitude).anyMatch(power -> power >= LARGE || power < SMALL);
            return new Ticks(places.stream().map(BigDecimal::doubleValue).toList(), places.stream().map(place -> far
                    && Math.abs(magnitude(place)) >= LONG ? place.unscaledValue() + "e" + magnitude(place) : place.toPlainString()).toList(), 0);
        }

        private static int magnitude(BigDecimal place) {
            return place.precision() - place.scale() - 1;
        }

        private Ticks shares() {
            List<Double> values = new ArrayList<>();
            List<String> labels = new ArrayList<>();
            double[] first = axis.scale() == Scale.NORMAL ? new double[0] : new double[] {CHARACTERISTIC};
            for (double percent : DoubleStream.concat(DoubleStream.of(first), DoubleStream.of(SHARES)).toArray()) {
                BigDecimal shown = BigDecimal.valueOf(percent).multiply(BigDecimal.valueOf(axis.shown(0.01, units)));
                double value = shown.doubleValue();
                String label = shown.signum() == 0 ? "0" : shown.stripTrailingZeros().toPlainString();
                if (axis.scale().shows(axis.si(value, units)) && holds(value)
                        && IntStream.range(0, values.size()).allMatch(i -> apart(value, label, values.get(i), labels.get(i)))) {
                    int at = (int) values.stream().filter(each -> each < value).count();
                    values.add(at, value);
                    labels.add(at, label);
                }
            }
            Ticks own = new Ticks(values, labels, 0);
            if (values.size() >= FEW) {
                return own;
            }
            Ticks even = uneven();
            return even.values().size() > values.size() ? even : own;
        }
    }
}
