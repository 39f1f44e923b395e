package tramontane.analysis;

import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.DoubleStream;
import java.util.stream.Stream;
import tramontane.physics.units.QuantityKind;
import tramontane.physics.units.Unit;
import tramontane.physics.units.UnitSystem;
import tramontane.physics.units.Units;

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
    /** Room on either side of a single value, in the space of a scale that is not linear. */
    private static final double ALONE = 0.5;

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
        return x.extent().orElseGet(() -> around(x.scale(), DoubleStream.concat(points().flatMapToDouble(Points::xs), DoubleStream.concat(
                marks.stream().mapToDouble(Mark::x), regions.stream().flatMapToDouble(Region::ends))), marks.stream().mapToDouble(Mark::x)));
    }

    /** What an axis upwards shows: its stated extent, or one that holds everything on it. */
    public Extent extent(Side side) {
        return axis(side).extent().orElseGet(() -> around(axis(side).scale(), DoubleStream.concat(Stream.concat(
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

    /**
     * What is read off a series at a place of the axis below, SI, as it is drawn: on straight lines in the scales of its axes.
     *
     * @param series one of this chart
     * @param place  SI
     * @return empty outside of it, for single things, and where a scale cannot show it
     */
    public OptionalDouble at(Series series, double place) {
        return series.role() == Role.SCATTER ? OptionalDouble.empty() : series.points().at(place, x.scale(), axis(series.side()).scale());
    }

    private static Extent around(Scale scale, DoubleStream values, DoubleStream marked) {
        double[] shown = values.filter(scale::shows).toArray();
        double[] all = Arrays.stream(shown).map(scale::to).toArray();
        if (all.length == 0 && scale != Scale.LINEAR) {
            return scale.whole();
        }
        double low = Arrays.stream(all).min().orElse(0);
        double high = Arrays.stream(all).max().orElse(1);
        double room = high > low ? ROOM * (high - low) : scale == Scale.LINEAR ? Math.max(Math.abs(high) / 2, Double.MIN_NORMAL) : ALONE;
        double[] signs = marked.filter(scale::shows).map(scale::to).toArray();
        // values that start at nothing, but for rounding, have their axis start there, too; unless a sign would be cut in half
        double nothing = ROUNDING * (high - low);
        boolean starts = scale.starts() && Math.abs(low) <= nothing && high > 0 && Arrays.stream(signs).noneMatch(sign -> sign < low + room / 2);
        boolean ends = scale == Scale.LINEAR && Math.abs(high) <= nothing && low < 0 && Arrays.stream(signs).noneMatch(sign -> sign > high - room / 2);
        if (scale == Scale.LINEAR) {
            return new Extent(starts ? 0 : low - room, ends ? 0 : high + room);
        }
        // there may be no number a little nearer to the end of a scale
        double from = scale.from(starts ? 0 : low - room);
        double to = scale.from(high + room);
        return new Extent(scale.shows(from) ? from : Arrays.stream(shown).min().orElseThrow(),
                scale.shows(to) ? to : Arrays.stream(shown).max().orElseThrow());
    }

    /**
     * An axis.
     *
     * @param label    what is measured, lower case, without unit
     * @param quantity its kind
     * @param extent   what of it is shown; empty for all that there is
     * @param scale    where its values lie
     * @param unit     the unit in which it is shown whatever the reader's; empty for that of the reader
     */
    public record Axis(String label, QuantityKind quantity, Optional<Extent> extent, Scale scale, Optional<Unit> unit) {

        /** Refuses an extent that the scale cannot show, a scale of shares for something else, and a unit of another kind. */
        public Axis {
            Objects.requireNonNull(label);
            Objects.requireNonNull(quantity);
            Objects.requireNonNull(scale);
            extent.filter(each -> !scale.shows(each)).ifPresent(each -> {
                throw new IllegalArgumentException("axis " + label + " cannot show " + each.from() + " to " + each.to() + " on a scale " + scale);
            });
            if (scale.ofShares() && !quantity.dimensionless()) {
                throw new IllegalArgumentException("axis " + label + " shows a " + quantity.name() + ", no share, on a scale " + scale);
            }
            unit.filter(each -> !Units.of(quantity).contains(each)).ifPresent(each -> {
                throw new IllegalArgumentException("axis " + label + " shows a " + quantity.name() + ", which has no unit " + each.symbol());
            });
        }

        /** A linear axis. */
        public Axis(String label, QuantityKind quantity, Optional<Extent> extent) {
            this(label, quantity, extent, Scale.LINEAR, Optional.empty());
        }

        /** A linear axis that shows all that there is. */
        public Axis(String label, QuantityKind quantity) {
            this(label, quantity, Optional.empty());
        }

        /** An axis that shows all that there is. */
        public Axis(String label, QuantityKind quantity, Scale scale) {
            this(label, quantity, Optional.empty(), scale, Optional.empty());
        }

        /** The same axis showing another stretch. */
        public Axis showing(Extent other) {
            return new Axis(label, quantity, Optional.of(other), scale, unit);
        }

        /** The same axis in a unit of its own, which wins over that of the reader. */
        public Axis in(Unit own) {
            return new Axis(label, quantity, extent, scale, Optional.of(own));
        }

        /** Units for what is measured on this axis: those of the reader, but for its own. */
        public UnitSystem units(UnitSystem reader) {
            return unit.map(own -> reader.with(quantity, own)).orElse(reader);
        }

        /** Of a value, SI, in the unit in which this axis is shown. */
        public double shown(double si, UnitSystem reader) {
            return Units.toDisplay(si, quantity, units(reader));
        }

        /** In SI, of a value in the unit in which this axis is shown. */
        public double si(double shown, UnitSystem reader) {
            return Units.fromDisplay(shown, quantity, units(reader));
        }

        /** A value, SI, with its unit as {@link Units#format} writes it. */
        public String format(double si, UnitSystem reader, int digits) {
            return Units.format(si, quantity, units(reader), digits);
        }
    }

    /**
     * Where values lie along an axis. A scale of shares makes a straight line of the distribution that it is named for; for one of
     * life, time is {@link #LOG} beside {@link #WEIBULL} and {@link #NORMAL}, and {@link #LINEAR} beside {@link #EXPONENTIAL}.
     *
     * <p>Source: NIST/SEMATECH e-Handbook of Statistical Methods, 8.2.2.1 (probability plots).
     */
    public enum Scale {
        /** Evenly. Shows any value. */
        LINEAR {
            @Override
            public double to(double value) {
                return value;
            }

            @Override
            public double from(double position) {
                return position;
            }
        },
        /** By their logarithm to base ten. Shows values above zero. */
        LOG {
            @Override
            public double to(double value) {
                return value > 0 ? Math.log10(value) : Double.NEGATIVE_INFINITY;
            }

            @Override
            public double from(double position) {
                return Math.pow(10, position);
            }
        },
        /** Shares by {@code ln(-ln(1 - F))}. Shows 0 to 1, both left out. */
        WEIBULL {
            @Override
            public double to(double value) {
                return value <= 0 ? Double.NEGATIVE_INFINITY : value >= 1 ? Double.POSITIVE_INFINITY : Math.log(-Math.log1p(-value));
            }

            @Override
            public double from(double position) {
                return -Math.expm1(-Math.exp(position));
            }
        },
        /** Shares by the quantile of the normal distribution, which makes a line of the lognormal one. Shows 0 to 1, both left out. */
        NORMAL {
            @Override
            public double to(double value) {
                return value <= 0 ? Double.NEGATIVE_INFINITY : value >= 1 ? Double.POSITIVE_INFINITY : Normal.quantile(value);
            }

            @Override
            public double from(double position) {
                return Normal.share(position);
            }
        },
        /** Shares by {@code -ln(1 - F)}. Shows 0 to 1, the latter left out. */
        EXPONENTIAL {
            @Override
            public double to(double value) {
                return value < 0 ? Double.NEGATIVE_INFINITY : value >= 1 ? Double.POSITIVE_INFINITY : -Math.log1p(-value);
            }

            @Override
            public double from(double position) {
                return -Math.expm1(-position);
            }
        };

        /**
         * Where a value lies; rises with it.
         *
         * @param value SI, not NaN
         * @return infinite, and never NaN, for what lies beyond the values that it can show
         */
        public abstract double to(double value);

        /**
         * The value that lies at a position. Far out it may round to one that cannot be shown.
         *
         * @param position finite
         */
        public abstract double from(double position);

        /** Whether it can show a value. */
        public boolean shows(double value) {
            return Double.isFinite(to(value));
        }

        /** Whether it can show a stretch, and tell its ends apart. */
        public boolean shows(Extent extent) {
            return shows(extent.from()) && shows(extent.to()) && to(extent.from()) < to(extent.to());
        }

        /** Whether it is for shares, 0 to 1. */
        public boolean ofShares() {
            return this == WEIBULL || this == NORMAL || this == EXPONENTIAL;
        }

        /** Whether zero is a place of its own on it, where an axis may start. */
        boolean starts() {
            return this == LINEAR || this == EXPONENTIAL;
        }

        /** What is shown where there is nothing to show. */
        Extent whole() {
            return this == LINEAR ? new Extent(0, 1) : this == LOG ? new Extent(1, 10) : new Extent(0.01, 0.99);
        }

        /**
         * How far along a stretch a value lies.
         *
         * @param extent a stretch that this scale shows
         * @param value  SI
         * @return 0 at its lower end, 1 at its upper end, outside of these beyond it; infinite for what cannot be shown
         */
        public double share(Extent extent, double value) {
            double from = to(extent.from());
            return (to(value) - from) / (to(extent.to()) - from);
        }

        /**
         * The value that lies so far along a stretch.
         *
         * @param extent a stretch that this scale shows
         * @param share  0 at its lower end, 1 at its upper end
         */
        public double at(Extent extent, double share) {
            double from = to(extent.from());
            return from(from + share * (to(extent.to()) - from));
        }

        /**
         * A part of a stretch, or one around it.
         *
         * @param extent a stretch that this scale shows
         * @param from   where it begins, as in {@link #at}
         * @param to     where it ends, above that
         * @return empty where this scale cannot show it
         */
        public Optional<Extent> part(Extent extent, double from, double to) {
            double low = at(extent, from);
            double high = at(extent, to);
            return low < high && Double.isFinite(high - low) ? Optional.of(new Extent(low, high)).filter(this::shows) : Optional.empty();
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
            return at(at, Scale.LINEAR, Scale.LINEAR);
        }

        /**
         * The value on lines between the points that are straight where the axes have these scales; of a line that folds back the
         * first along it.
         *
         * @param at     where, on the axis below
         * @param across scale of the axis below
         * @param up     scale of the axis upwards
         * @return empty outside of them, and where a scale cannot show an end of the line
         */
        public OptionalDouble at(double at, Scale across, Scale up) {
            if (rising && x.length > 0 && (at < x[0] || at > x[x.length - 1]) || !across.shows(at)) {
                return OptionalDouble.empty();
            }
            if (x.length == 1 && at == x[0]) {
                return up.shows(y[0]) ? OptionalDouble.of(y[0]) : OptionalDouble.empty();
            }
            int i = rising ? piece(at) : 1;
            for (; i < x.length; i++) {
                if (Math.min(x[i - 1], x[i]) <= at && at <= Math.max(x[i - 1], x[i])) {
                    return between(i, at, across, up);
                }
            }
            return OptionalDouble.empty();
        }

        private OptionalDouble between(int i, double at, Scale across, Scale up) {
            double whole = across.to(x[i]) - across.to(x[i - 1]);
            double part = x[i] == x[i - 1] ? 0 : at == x[i] ? 1 : (across.to(at) - across.to(x[i - 1])) / whole;
            if (part == 0 || part == 1) {
                double end = y[part == 0 ? i - 1 : i];
                return up.shows(end) ? OptionalDouble.of(end) : OptionalDouble.empty();
            }
            boolean drawn = Double.isFinite(whole) && up.shows(y[i - 1]) && up.shows(y[i]);
            return drawn ? OptionalDouble.of(up.from(up.to(y[i - 1]) + part * (up.to(y[i]) - up.to(y[i - 1])))) : OptionalDouble.empty();
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
