package tramontane.analysis;

import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.DoubleStream;
import java.util.stream.Stream;
import tramontane.physics.units.QuantityKind;

/**
 * A chart without a display; the desktop and reports draw the same.
 *
 * <p>Everything in it is in SI units; whoever draws it turns values into those of the reader. Colours are numbers, so that what
 * belongs together looks alike whatever the palette: a drawer has {@value #COLOURS} for series, and takes the number modulo
 * that. Nothing in it may be told by colour alone: series have names, and marks differ by shape and by word.
 *
 * <pre>{@code
 * Chart.of("fans, hot day", new Axis("flow", QuantityKind.FLOW), new Axis("static pressure", QuantityKind.PRESSURE))
 *         .with(new Series("bank", Role.CURVE, Look.line(0), Points.of(flows, pressures)))
 *         .with(new Mark("duty point", flow, pressure, Shape.DISC, 0));
 * }</pre>
 *
 * @param title   what it shows
 * @param x       the axis below
 * @param y       the axis on the left
 * @param right   the axis on the right; empty where nothing is measured on it
 * @param series  lines and points, those behind first
 * @param bands   areas between two curves, behind all series
 * @param regions stretches of the axis below that mean something, behind everything
 * @param marks   single points, in front of everything
 */
public record Chart(String title, Axis x, Axis y, Optional<Axis> right, List<Series> series, List<Band> bands,
        List<Region> regions, List<Mark> marks) {

    /** How many colours a drawer has for series. */
    public static final int COLOURS = 8;

    /** Room above the highest and beyond the last value of an automatic axis, over its extent. */
    private static final double ROOM = 0.05;
    private static final double ROUNDING = 1e-9;

    /** Refuses what is measured on an axis on the right that is not there. */
    public Chart {
        Objects.requireNonNull(title);
        Objects.requireNonNull(x);
        Objects.requireNonNull(y);
        Objects.requireNonNull(right);
        series = List.copyOf(series);
        bands = List.copyOf(bands);
        regions = List.copyOf(regions);
        marks = List.copyOf(marks);
        if (right.isEmpty() && (series.stream().anyMatch(each -> each.side() == Side.RIGHT)
                || marks.stream().anyMatch(each -> each.side() == Side.RIGHT))) {
            throw new IllegalArgumentException("chart " + title + " has no axis on the right, but something is measured on it");
        }
    }

    /** An empty chart with two axes. */
    public static Chart of(String title, Axis x, Axis y) {
        return new Chart(title, x, y, Optional.empty(), List.of(), List.of(), List.of(), List.of());
    }

    /** This chart with an axis on the right. */
    public Chart withRight(Axis axis) {
        return new Chart(title, x, y, Optional.of(axis), series, bands, regions, marks);
    }

    /** This chart with one more series, in front of those before. */
    public Chart with(Series one) {
        return new Chart(title, x, y, right, more(series, one), bands, regions, marks);
    }

    /** This chart with one more band. */
    public Chart with(Band one) {
        return new Chart(title, x, y, right, series, more(bands, one), regions, marks);
    }

    /** This chart with one more region. */
    public Chart with(Region one) {
        return new Chart(title, x, y, right, series, bands, more(regions, one), marks);
    }

    /** This chart with one more mark, in front of those before. */
    public Chart with(Mark one) {
        return new Chart(title, x, y, right, series, bands, regions, more(marks, one));
    }

    /** This chart with its axes below and on the left showing a part of it, as one that was zoomed in. */
    public Chart within(Extent ofX, Extent ofY) {
        return new Chart(title, x.showing(ofX), y.showing(ofY), right, series, bands, regions, marks);
    }

    private static <T> List<T> more(List<T> list, T one) {
        return Stream.concat(list.stream(), Stream.of(one)).toList();
    }

    /** The axis that something is measured on upwards. */
    public Axis axis(Side side) {
        return side == Side.LEFT ? y : right.orElseThrow();
    }

    /** What the axis below shows: its stated extent, or one that holds everything. */
    public Extent extent() {
        return x.extent().orElseGet(() -> around(DoubleStream.concat(points().flatMapToDouble(Points::xs), DoubleStream.concat(
                marks.stream().mapToDouble(Mark::x), regions.stream().flatMapToDouble(Region::ends))), marks.stream().mapToDouble(Mark::x)));
    }

    /** What an axis upwards shows: its stated extent, or one that holds everything on it. */
    public Extent extent(Side side) {
        return axis(side).extent().orElseGet(() -> around(DoubleStream.concat(Stream.concat(
                series.stream().filter(each -> each.side() == side).map(Series::points),
                side == Side.LEFT ? bands.stream().flatMap(band -> Stream.of(band.lower(), band.upper())) : Stream.of())
                .flatMapToDouble(Points::ys), marksAt(side)), marksAt(side)));
    }

    private Stream<Points> points() {
        return Stream.concat(series.stream().map(Series::points), bands.stream().flatMap(band -> Stream.of(band.lower(), band.upper())));
    }

    private DoubleStream marksAt(Side side) {
        return marks.stream().filter(mark -> mark.side() == side).mapToDouble(Mark::y);
    }

    private static Extent around(DoubleStream values, DoubleStream marked) {
        double[] all = values.toArray();
        double low = Arrays.stream(all).min().orElse(0);
        double high = Arrays.stream(all).max().orElse(1);
        double room = high > low ? ROOM * (high - low) : Math.max(Math.abs(high) / 2, Double.MIN_NORMAL);
        double[] signs = marked.toArray();
        // values that start at nothing, but for rounding, have their axis start there, too; unless a sign would be cut in half
        double nothing = ROUNDING * (high - low);
        boolean starts = Math.abs(low) <= nothing && high > 0 && Arrays.stream(signs).noneMatch(sign -> sign < low + room / 2);
        boolean ends = Math.abs(high) <= nothing && low < 0 && Arrays.stream(signs).noneMatch(sign -> sign > high - room / 2);
        return new Extent(starts ? 0 : low - room, ends ? 0 : high + room);
    }

    /**
     * An axis.
     *
     * @param label    what is measured, lower case, without unit
     * @param quantity its kind
     * @param extent   what of it is shown; empty for all that there is
     */
    public record Axis(String label, QuantityKind quantity, Optional<Extent> extent) {
        public Axis {
            Objects.requireNonNull(label);
            Objects.requireNonNull(quantity);
            Objects.requireNonNull(extent);
        }

        /** An axis that shows all that there is. */
        public Axis(String label, QuantityKind quantity) {
            this(label, quantity, Optional.empty());
        }

        /** The same axis showing another stretch. */
        public Axis showing(Extent other) {
            return new Axis(label, quantity, Optional.of(other));
        }
    }

    /**
     * A stretch of an axis, SI units.
     *
     * @param from its lower end
     * @param to   its upper end, above the lower one
     */
    public record Extent(double from, double to) {
        public Extent {
            if (!(from < to) || !Double.isFinite(from) || !Double.isFinite(to) || !Double.isFinite(to - from)) {
                throw new IllegalArgumentException("an axis goes from a lower to a higher finite value, got " + from + " to " + to);
            }
        }

        /** How long it is. */
        public double length() {
            return to - from;
        }

        /** Whether it holds a value. */
        public boolean holds(double value) {
            return value >= from && value <= to;
        }
    }

    /** The axis upwards that something is measured on. */
    public enum Side {
        /** The one on the left. */
        LEFT,
        /** The one on the right. */
        RIGHT
    }

    /** What a series stands for; drawers and readers take it to say what a value read off is. */
    public enum Role {
        /** What a part gives. */
        CURVE,
        /** What is asked of it. */
        SYSTEM,
        /** Single things, each a point of its own. */
        SCATTER,
        /** Something else that depends on the same, as an efficiency. */
        BESIDE
    }

    /** How a series is drawn. */
    public enum Style {
        /** A line through its points. */
        LINE,
        /** A line of dashes. */
        DASHED,
        /** A line of dots. */
        DOTTED,
        /** A sign at each point. */
        MARKS,
        /** A line, and a sign at each point. */
        BOTH
    }

    /**
     * How a series looks.
     *
     * @param style  its line
     * @param colour number of its colour, from 0; the same for what belongs together
     * @param faint  whether it stands back behind the others
     * @param sign   the sign at its points, where it has signs
     */
    public record Look(Style style, int colour, boolean faint, Shape sign) {
        public Look {
            Objects.requireNonNull(style);
            Objects.requireNonNull(sign);
            requireColour(colour);
        }

        /** A look whose signs are discs. */
        public Look(Style style, int colour, boolean faint) {
            this(style, colour, faint, Shape.DISC);
        }

        /** A plain line. */
        public static Look line(int colour) {
            return new Look(Style.LINE, colour, false);
        }

        /** Signs without a line. */
        public static Look marks(int colour) {
            return new Look(Style.MARKS, colour, false);
        }

        /** Signs of a shape without a line. */
        public static Look marks(int colour, Shape sign) {
            return new Look(Style.MARKS, colour, false, sign);
        }

        /** Whether there is a line. */
        public boolean lined() {
            return style != Style.MARKS;
        }

        /** Whether there are signs. */
        public boolean marked() {
            return style == Style.MARKS || style == Style.BOTH;
        }
    }

    /**
     * Points that belong together.
     *
     * @param name   what it is, as the legend says it
     * @param role   what it stands for
     * @param look   how it is drawn
     * @param side   the axis that it is measured on upwards
     * @param points its points
     * @param digits how many significant digits a value read off is good for, 1 to 15
     * @param words  what each point is; empty where points have no names of their own
     */
    public record Series(String name, Role role, Look look, Side side, Points points, int digits, List<String> words) {
        public Series {
            words = List.copyOf(words);
            if (!words.isEmpty() && words.size() != points.size()) {
                throw new IllegalArgumentException("series " + name + " has names for none or for all of its " + points.size() + " points, got "
                        + words.size());
            }
            Objects.requireNonNull(name);
            Objects.requireNonNull(role);
            Objects.requireNonNull(look);
            Objects.requireNonNull(side);
            Objects.requireNonNull(points);
            if (digits < 1 || digits > 15) {
                throw new IllegalArgumentException("series " + name + " is read to 1 to 15 digits, got " + digits);
            }
        }

        /** A series whose points have no names of their own. */
        public Series(String name, Role role, Look look, Side side, Points points, int digits) {
            this(name, role, look, side, points, digits, List.of());
        }

        /** Single things on the left axis, each with its name. */
        public static Series things(String name, Look look, Points points, List<String> words) {
            return new Series(name, Role.SCATTER, look, Side.LEFT, points, 3, words);
        }

        /** What a point is: the name of the series, and its own. */
        public String words(int point) {
            return words.isEmpty() ? name : name.isEmpty() ? words.get(point) : name + ": " + words.get(point);
        }

        /** A series on the left axis that is read to three digits. */
        public Series(String name, Role role, Look look, Points points) {
            this(name, role, look, Side.LEFT, points, 3);
        }

        /** Its value at a place of the axis below, SI; empty outside of it, and for single things. */
        public OptionalDouble at(double x) {
            return role == Role.SCATTER ? OptionalDouble.empty() : points.at(x);
        }
    }

    /**
     * The area between two curves on the left axis, as a tolerance makes it.
     *
     * @param name   what it is, as the legend says it
     * @param lower  its lower edge, two points or more
     * @param upper  its upper edge, two points or more
     * @param colour number of its colour, from 0
     */
    public record Band(String name, Points lower, Points upper, int colour) {
        public Band {
            Objects.requireNonNull(name);
            requireColour(colour);
            if (lower.size() < 2 || upper.size() < 2) {
                throw new IllegalArgumentException("band " + name + " needs edges of two points or more, got " + lower.size() + " and "
                        + upper.size());
            }
        }
    }

    /**
     * A stretch of the axis below that means something.
     *
     * @param label what it is
     * @param from  where it begins; empty where it has no beginning
     * @param to    where it ends; empty where it has no end
     */
    public record Region(String label, OptionalDouble from, OptionalDouble to) {
        public Region {
            Objects.requireNonNull(label);
            ends(from, to).forEach(end -> requireFinite("an end of region " + label, end));
            if (from.isPresent() && to.isPresent() && !(from.getAsDouble() < to.getAsDouble())) {
                throw new IllegalArgumentException("region " + label + " goes from " + from.getAsDouble() + " to " + to.getAsDouble());
            }
        }

        private static DoubleStream ends(OptionalDouble from, OptionalDouble to) {
            return DoubleStream.concat(from.stream(), to.stream());
        }

        /** The ends that it has. */
        public DoubleStream ends() {
            return ends(from, to);
        }
    }

    /** The sign of a mark. */
    public enum Shape {
        /** A filled disc: what counts. */
        DISC,
        /** A ring: what may be, but does not last. */
        RING,
        /** A diamond. */
        DIAMOND,
        /** A filled square. */
        SQUARE,
        /** A triangle on its side. */
        TRIANGLE,
        /** Two crossing strokes. */
        CROSS
    }

    /**
     * A single point with a word beside it.
     *
     * @param label  the word; marks of different shape have different ones
     * @param x      SI
     * @param y      SI
     * @param shape  its sign
     * @param colour number of its colour, from 0
     * @param side   the axis that it is measured on upwards
     */
    public record Mark(String label, double x, double y, Shape shape, int colour, Side side) {
        public Mark {
            Objects.requireNonNull(label);
            Objects.requireNonNull(shape);
            Objects.requireNonNull(side);
            requireColour(colour);
            requireFinite("mark " + label, x);
            requireFinite("mark " + label, y);
        }

        /** A mark on the left axis. */
        public Mark(String label, double x, double y, Shape shape, int colour) {
            this(label, x, y, shape, colour, Side.LEFT);
        }
    }

    /** Points of a plane, in order, SI units. */
    public static final class Points {

        private final double[] x;
        private final double[] y;
        private final boolean rising;

        private Points(double[] x, double[] y) {
            this.x = x;
            this.y = y;
            boolean rises = true;
            for (int i = 1; i < x.length; i++) {
                rises &= x[i] >= x[i - 1];
            }
            rising = rises;
        }

        /**
         * Points.
         *
         * @param x finite values
         * @param y finite values, as many
         */
        public static Points of(double[] x, double[] y) {
            if (x.length != y.length) {
                throw new IllegalArgumentException("points need as many values one way as the other, got " + x.length + " and " + y.length);
            }
            for (int i = 0; i < x.length; i++) {
                requireFinite("point " + i, x[i]);
                requireFinite("point " + i, y[i]);
            }
            return new Points(x.clone(), y.clone());
        }

        /** How many. */
        public int size() {
            return x.length;
        }

        /** Of one of them, counted from 0, where it lies along the axis below. */
        public double x(int i) {
            return x[i];
        }

        /** Of one of them, counted from 0, where it lies along the axis upwards. */
        public double y(int i) {
            return y[i];
        }

        /** All of the axis below. */
        public DoubleStream xs() {
            return Arrays.stream(x);
        }

        /** All of the axis upwards. */
        public DoubleStream ys() {
            return Arrays.stream(y);
        }

        /** Whether no point lies left of the one before. */
        public boolean rising() {
            return rising;
        }

        /**
         * The value on the straight lines between the points; of a line that folds back the first along it.
         *
         * @param at where, on the axis below
         * @return empty outside of them
         */
        public OptionalDouble at(double at) {
            if (rising && x.length > 0 && (at < x[0] || at > x[x.length - 1])) {
                return OptionalDouble.empty();
            }
            if (x.length == 1 && at == x[0]) {
                return OptionalDouble.of(y[0]);
            }
            int i = rising ? piece(at) : 1;
            for (; i < x.length; i++) {
                if (Math.min(x[i - 1], x[i]) <= at && at <= Math.max(x[i - 1], x[i])) {
                    double part = x[i] == x[i - 1] ? 0 : (at - x[i - 1]) / (x[i] - x[i - 1]);
                    return OptionalDouble.of(y[i - 1] + part * (y[i] - y[i - 1]));
                }
            }
            return OptionalDouble.empty();
        }

        private int piece(double at) {
            int found = Arrays.binarySearch(x, at);
            return Math.max(1, found >= 0 ? found : -found - 1);
        }

        @Override
        public boolean equals(Object other) {
            return other instanceof Points points && Arrays.equals(x, points.x) && Arrays.equals(y, points.y);
        }

        @Override
        public int hashCode() {
            return 31 * Arrays.hashCode(x) + Arrays.hashCode(y);
        }

        @Override
        public String toString() {
            return x.length + " points";
        }
    }

    private static void requireColour(int colour) {
        if (colour < 0) {
            throw new IllegalArgumentException("colours are counted from 0, got " + colour);
        }
    }

    private static void requireFinite(String what, double value) {
        if (!Double.isFinite(value)) {
            throw new IllegalArgumentException(what + " must lie at a finite place, got " + value);
        }
    }
}
