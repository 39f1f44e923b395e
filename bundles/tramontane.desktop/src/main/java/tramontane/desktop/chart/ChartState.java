package tramontane.desktop.chart;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import tramontane.analysis.Chart;
import tramontane.analysis.Chart.Extent;
import tramontane.physics.units.UnitSystem;

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
     * @param axis     the axis that it is measured on
     * @param digits   how many are worth reading
     */
    public record Reading(String name, double si, Chart.Axis axis, int digits) {

        /** The value with its unit. */
        public String in(UnitSystem units) {
            return axis.format(si, units, digits);
        }
    }

    /** Another chart; window and cursor stay. */
    public ChartState with(Optional<Chart> other) {
        return new ChartState(other, window, cursor);
    }

    /** The chart as it is seen. */
    public Optional<Chart> seen() {
        return chart.map(whole -> window.flatMap(part -> zoomed(whole, part)).orElse(whole));
    }

    /** A part of a chart; empty where its scales cannot show that, as where the window was chosen on another chart. */
    private static Optional<Chart> zoomed(Chart whole, Window part) {
        if (!whole.x().scale().shows(part.x()) || !whole.y().scale().shows(part.y())) {
            return Optional.empty();
        }
        Chart zoomed = whole.within(part.x(), part.y());
        if (whole.right().isEmpty()) {
            return Optional.of(zoomed);
        }
        // the right axis keeps in step with the left one, so that one gesture moves everything alike
        Extent left = whole.extent(Chart.Side.LEFT);
        Chart.Scale scale = whole.y().scale();
        Chart.Axis right = whole.right().get();
        return right.scale().part(whole.extent(Chart.Side.RIGHT), scale.share(left, part.y().from()), scale.share(left, part.y().to()))
                .map(extent -> zoomed.withRight(right.showing(extent)));
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
        return chart.isPresent() && allowed(part.x(), whole().x(), chart.get().x().scale())
                && allowed(part.y(), whole().y(), chart.get().y().scale()) && zoomed(chart.get(), part).isPresent()
                ? new ChartState(chart, Optional.of(part), cursor) : this;
    }

    private Window whole() {
        return fit().now().orElseThrow();
    }

    private static boolean allowed(Extent part, Extent whole, Chart.Scale scale) {
        double length = scale.share(whole, part.to()) - scale.share(whole, part.from());
        return length >= CLOSEST && length <= FARTHEST;
    }

    /**
     * Zooms about a place that stays where it is.
     *
     * @param factor above 1 to see less, closer
     * @param x      where the place is seen, share of the width from the left
     * @param y      where the place is seen, share of the height from below
     */
    public ChartState zoom(double factor, double x, double y) {
        return part(x - x / factor, x + (1 - x) / factor, y - y / factor, y + (1 - y) / factor);
    }

    /** Sees what lies between shares of what is seen now; the same as now where a scale cannot show that. */
    private ChartState part(double x1, double x2, double y1, double y2) {
        return seen().flatMap(now -> now.x().scale().part(now.extent(), x1, x2)
                .flatMap(x -> now.y().scale().part(now.extent(Chart.Side.LEFT), y1, y2).map(y -> zoom(new Window(x, y))))).orElse(this);
    }

    /**
     * Moves what is seen.
     *
     * @param x to the right, share of the width
     * @param y up, share of the height
     */
    public ChartState pan(double x, double y) {
        return part(x, 1 + x, y, 1 + y);
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
        return part(Math.min(x1, x2), Math.max(x1, x2), Math.min(y1, y2), Math.max(y1, y2));
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
            Chart.Scale scale = chart.x().scale();
            double next = cursor.isPresent() ? scale.at(extent, scale.share(extent, Math.clamp(cursor.getAsDouble(), extent.from(), extent.to()))
                    + steps / (double) STEPS) : start(chart, extent);
            return at(Math.clamp(next, extent.from(), extent.to()));
        }).orElse(this);
    }

    private static double start(Chart chart, Extent extent) {
        return chart.marks().reversed().stream().mapToDouble(Chart.Mark::x).filter(extent::holds).findFirst()
                .orElseGet(() -> chart.x().scale().at(extent, 0.5));
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
        readings.add(new Reading(chart.get().x().label(), cursor.getAsDouble(), chart.get().x(), 3));
        for (boolean faint : new boolean[] {false, true}) {
            for (Chart.Series series : chart.get().series()) {
                OptionalDouble value = chart.get().at(series, cursor.getAsDouble());
                if (series.look().faint() == faint && value.isPresent()) {
                    readings.add(new Reading(series.name(), value.getAsDouble(), chart.get().axis(series.side()), series.digits()));
                }
            }
        }
        return readings;
    }

    /** Where the foremost mark is, in one line; empty where there is none: what is read off as long as nobody points. */
    public String foremost(UnitSystem units) {
        return chart.filter(each -> !each.marks().isEmpty()).map(each -> {
            Chart.Mark mark = each.marks().getLast();
            return mark.label() + "   " + each.x().label() + " " + each.x().format(mark.x(), units, 3) + "   "
                    + each.axis(mark.side()).label() + " " + each.axis(mark.side()).format(mark.y(), units, 3);
        }).orElse("");
    }

    /** What a point of a series is and where it lies, in one line. */
    public String reading(Chart.Series series, int point, UnitSystem units) {
        Chart.Axis below = chart.orElseThrow().x();
        Chart.Axis up = chart.get().axis(series.side());
        return series.words(point) + "   " + below.label() + " " + below.format(series.points().x(point), units, 3) + "   "
                + up.label() + " " + up.format(series.points().y(point), units, series.digits());
    }

    /** What is read off at the cursor, in one line. */
    public String reading(UnitSystem units) {
        return String.join("   ", readings().stream().map(reading -> reading.name() + " " + reading.in(units)).toList());
    }
}
