package tramontane.desktop.chart;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import tramontane.analysis.Chart;
import tramontane.analysis.Chart.Extent;
import tramontane.physics.units.QuantityKind;
import tramontane.physics.units.UnitSystem;
import tramontane.physics.units.Units;

/**
 * What is seen of a chart: the chart, the part of it that is zoomed in on, and where values are read off. Immutable; every gesture
 * makes another.
 *
 * <p>A window once chosen stays while charts come and go, until {@link #fit}.
 *
 * @param chart  the chart; empty while there is none
 * @param window the part that is seen; empty for all
 * @param cursor place on the axis below at which values are read off, SI; empty where none are
 */
public record ChartState(Optional<Chart> chart, Optional<Window> window, OptionalDouble cursor) {

    /** No chart yet. */
    public static final ChartState EMPTY = new ChartState(Optional.empty(), Optional.empty(), OptionalDouble.empty());

    /** How much one step zooms, for keys and commands. */
    public static final double STEP = 1.25;
    /** How far one key pans, over what is seen. */
    public static final double PAN = 0.1;

    /** Least and most of an axis that can be seen, over what an automatic axis shows. */
    private static final double CLOSEST = 1e-4;
    private static final double FARTHEST = 20;
    /** Steps of the cursor over what is seen. */
    private static final int STEPS = 100;

    public ChartState {
        Objects.requireNonNull(chart);
        Objects.requireNonNull(window);
        Objects.requireNonNull(cursor);
    }

    /**
     * A part of a chart.
     *
     * @param x of the axis below
     * @param y of the axis on the left, and as a share of it that on the right
     */
    public record Window(Extent x, Extent y) {
    }

    /**
     * A value read off.
     *
     * @param name     of what
     * @param si       the value
     * @param quantity its kind
     * @param digits   how many are worth reading
     */
    public record Reading(String name, double si, QuantityKind quantity, int digits) {

        /** The value with its unit. */
        public String in(UnitSystem units) {
            return Units.format(si, quantity, units, digits);
        }
    }

    /** Another chart; window and cursor stay. */
    public ChartState with(Optional<Chart> other) {
        return new ChartState(other, window, cursor);
    }

    /** The chart as it is seen. */
    public Optional<Chart> seen() {
        return chart.map(whole -> window.map(part -> zoomed(whole, part)).orElse(whole));
    }

    private static Chart zoomed(Chart whole, Window part) {
        Chart zoomed = whole.within(part.x(), part.y());
        if (whole.right().isEmpty()) {
            return zoomed;
        }
        // the right axis keeps in step with the left one, so that one gesture moves everything alike
        Extent left = whole.extent(Chart.Side.LEFT);
        Extent right = whole.extent(Chart.Side.RIGHT);
        double from = right.from() + (part.y().from() - left.from()) / left.length() * right.length();
        return zoomed.withRight(whole.right().get().showing(new Extent(from, from + part.y().length() / left.length() * right.length())));
    }

    private Optional<Window> now() {
        return seen().map(chart -> new Window(chart.extent(), chart.extent(Chart.Side.LEFT)));
    }

    /** Everything is seen again. */
    public ChartState fit() {
        return new ChartState(chart, Optional.empty(), cursor);
    }

    /** Another part is seen. */
    public ChartState zoom(Window part) {
        return chart.isPresent() && allowed(part.x(), whole().x()) && allowed(part.y(), whole().y())
                ? new ChartState(chart, Optional.of(part), cursor) : this;
    }

    private Window whole() {
        return fit().now().orElseThrow();
    }

    private static boolean allowed(Extent part, Extent whole) {
        return part.length() >= CLOSEST * whole.length() && part.length() <= FARTHEST * whole.length();
    }

    /**
     * Zooms about a place that stays where it is.
     *
     * @param factor above 1 to see less, closer
     * @param x      where the place is seen, share of the width from the left
     * @param y      where the place is seen, share of the height from below
     */
    public ChartState zoom(double factor, double x, double y) {
        return now().map(part -> zoom(new Window(about(part.x(), factor, x), about(part.y(), factor, y)))).orElse(this);
    }

    private static Extent about(Extent part, double factor, double share) {
        double place = part.from() + share * part.length();
        return new Extent(place - share * part.length() / factor, place + (1 - share) * part.length() / factor);
    }

    /**
     * Moves what is seen.
     *
     * @param x to the right, share of the width
     * @param y up, share of the height
     */
    public ChartState pan(double x, double y) {
        return now().map(part -> zoom(new Window(moved(part.x(), x), moved(part.y(), y)))).orElse(this);
    }

    private static Extent moved(Extent part, double share) {
        return new Extent(part.from() + share * part.length(), part.to() + share * part.length());
    }

    /**
     * Sees what lies in a rectangle; shares of what is seen now, from the left and from below.
     *
     * @param x1 one side
     * @param y1 one side
     * @param x2 the other side
     * @param y2 the other side
     */
    public ChartState zoomTo(double x1, double y1, double x2, double y2) {
        if (x1 == x2 || y1 == y2) {
            return this;
        }
        return now().map(part -> zoom(new Window(between(part.x(), x1, x2), between(part.y(), y1, y2)))).orElse(this);
    }

    private static Extent between(Extent part, double one, double other) {
        return new Extent(part.from() + Math.min(one, other) * part.length(), part.from() + Math.max(one, other) * part.length());
    }

    /** Reads values off at a place on the axis below, SI. */
    public ChartState at(double place) {
        return new ChartState(chart, window, OptionalDouble.of(place));
    }

    /** Reads no values off. */
    public ChartState withoutCursor() {
        return new ChartState(chart, window, OptionalDouble.empty());
    }

    /**
     * Moves the cursor.
     *
     * @param steps hundredths of what is seen, to the right; without a cursor it starts at the first mark, or in the middle
     */
    public ChartState step(int steps) {
        return seen().map(chart -> {
            Extent extent = chart.extent();
            double next = cursor.isPresent() ? cursor.getAsDouble() + steps * extent.length() / STEPS : start(chart, extent);
            return at(Math.clamp(next, extent.from(), extent.to()));
        }).orElse(this);
    }

    private static double start(Chart chart, Extent extent) {
        return chart.marks().reversed().stream().mapToDouble(Chart.Mark::x).filter(extent::holds).findFirst()
                .orElse(extent.from() + extent.length() / 2);
    }

    /** Moves the cursor to the next mark to the right, or to the left. */
    public ChartState toMark(boolean right) {
        double[] places = seen().map(chart -> chart.marks().stream().mapToDouble(Chart.Mark::x).filter(chart.extent()::holds).distinct().sorted().toArray())
                .orElse(new double[0]);
        double now = cursor.orElse(right ? Double.NEGATIVE_INFINITY : Double.POSITIVE_INFINITY);
        OptionalDouble next = right ? Arrays.stream(places).filter(place -> place > now).findFirst()
                : Arrays.stream(places).filter(place -> place < now).max();
        return next.isPresent() ? at(next.getAsDouble()) : this;
    }

    /** What is read off at the cursor: the place itself, then the value of each curve that has one there, those that stand back last. */
    public List<Reading> readings() {
        List<Reading> readings = new ArrayList<>();
        if (chart.isEmpty() || cursor.isEmpty()) {
            return readings;
        }
        readings.add(new Reading(chart.get().x().label(), cursor.getAsDouble(), chart.get().x().quantity(), 3));
        for (boolean faint : new boolean[] {false, true}) {
            for (Chart.Series series : chart.get().series()) {
                OptionalDouble value = series.at(cursor.getAsDouble());
                if (series.look().faint() == faint && value.isPresent()) {
                    readings.add(new Reading(series.name(), value.getAsDouble(), chart.get().axis(series.side()).quantity(), series.digits()));
                }
            }
        }
        return readings;
    }

    /** Where the foremost mark is, in one line; empty where there is none: what is read off as long as nobody points. */
    public String foremost(UnitSystem units) {
        return chart.filter(each -> !each.marks().isEmpty()).map(each -> {
            Chart.Mark mark = each.marks().getLast();
            return mark.label() + "   " + each.x().label() + " " + Units.format(mark.x(), each.x().quantity(), units, 3) + "   "
                    + each.axis(mark.side()).label() + " " + Units.format(mark.y(), each.axis(mark.side()).quantity(), units, 3);
        }).orElse("");
    }

    /** What a point of a series is and where it lies, in one line. */
    public String reading(Chart.Series series, int point, UnitSystem units) {
        Chart.Axis below = chart.orElseThrow().x();
        Chart.Axis up = chart.get().axis(series.side());
        return series.words(point) + "   " + below.label() + " " + Units.format(series.points().x(point), below.quantity(), units, 3) + "   "
                + up.label() + " " + Units.format(series.points().y(point), up.quantity(), units, series.digits());
    }

    /** What is read off at the cursor, in one line. */
    public String reading(UnitSystem units) {
        return String.join("   ", readings().stream().map(reading -> reading.name() + " " + reading.in(units)).toList());
    }
}
