package tramontane.report;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.function.DoubleUnaryOperator;
import java.util.stream.IntStream;
import tramontane.analysis.Chart;
import tramontane.analysis.Chart.Axis;
import tramontane.analysis.Chart.Extent;
import tramontane.analysis.Chart.Points;
import tramontane.analysis.Chart.Side;
import tramontane.physics.units.UnitSystem;
import tramontane.physics.units.Units;

/**
 * Lays a chart out on a canvas: title on top, legend below, axes with readable ticks, and the word of each mark beside it where
 * there is room. Nothing overlaps; a word that finds no room stands in the legend alone.
 */
public final class ChartDrawing {

    /** Least width and height of a canvas. */
    public static final double LEAST = 160;

    private static final double MARGIN = 12;
    private static final double GAP = 6;
    private static final double TITLE = 15;
    private static final double NAME = 12;
    private static final double NUMBER = 11;
    private static final double SIGN = 5;
    private static final double POINT = 3;
    private static final double THING = 4;
    private static final double SWATCH = 24;
    private static final double CURVE = 2;
    private static final double FAINT = 1;
    private static final double BAND_OPACITY = 0.18;
    private static final double REGION_OPACITY = 0.15;
    private static final double TICK_HEIGHT = 36;
    /** What a tick upwards takes where ticks are not even. */
    private static final double TICK_ROOM = 20;
    /** Lines that a word may cover rather than stand farther away from its sign. */
    private static final int FARTHER = 2;
    /** Part of the height that the legend may take. */
    private static final double LEGEND = 0.2;

    private final Chart chart;
    private final UnitSystem units;
    private final double width;
    private final double height;
    private final ChartColours colours;
    private final TextWidth text;
    private final List<Drawing.Item> items = new ArrayList<>();
    /** Marks that stand in the legend. */
    private final Set<Chart.Mark> listed;
    /** Signs of series that are seen; a word covers one only where there is no other place for it. */
    private final List<Drawing.Box> signs = new ArrayList<>();
    /** Marks that are seen, but have no word beside them. */
    private final List<Chart.Mark> wordless = new ArrayList<>();
    private Drawing.Box plot;

    private ChartDrawing(Chart chart, UnitSystem units, double width, double height, ChartColours colours, TextWidth text,
            Set<Chart.Mark> listed) {
        this.listed = Set.copyOf(listed);
        this.chart = chart;
        this.units = units;
        this.width = width;
        this.height = height;
        this.colours = colours;
        this.text = text;
    }

    /**
     * Lays out.
     *
     * @param chart   the chart
     * @param units   those of the reader
     * @param width   of the canvas, pixels, {@link #LEAST} or more
     * @param height  of the canvas, pixels, {@link #LEAST} or more
     * @param colours the colours
     * @param text    how wide words are
     */
    public static Drawing of(Chart chart, UnitSystem units, double width, double height, ChartColours colours, TextWidth text) {
        if (!(width >= LEAST && height >= LEAST) || !Double.isFinite(width) || !Double.isFinite(height)) {
            throw new IllegalArgumentException("a chart needs " + LEAST + " pixels each way, got " + width + " by " + height);
        }
        Set<Chart.Mark> listed = new LinkedHashSet<>();
        while (true) {
            ChartDrawing attempt = new ChartDrawing(chart, units, width, height, colours, text, listed);
            Drawing drawing = attempt.draw();
            // with more in the legend the plot is lower, and there may be no room for another word
            if (!listed.addAll(attempt.wordless)) {
                return drawing;
            }
        }
    }

    /** What stands at an axis: its label, and the unit in which it is shown. */
    public static String name(Axis axis, UnitSystem units) {
        String unit = Units.display(axis.quantity(), axis.units(units)).symbol();
        return unit.isEmpty() ? axis.label() : axis.label() + " (" + unit + ")";
    }

    /** An extent in the unit in which its axis is shown. */
    private Extent shown(Axis axis, Extent si) {
        return new Extent(axis.shown(si.from(), units), axis.shown(si.to(), units));
    }

    /** A name with what an entry of the legend shows before it. */
    private record Entry(String name, Object what) {
    }

    private Drawing draw() {
        double top = MARGIN;
        if (!chart.title().isEmpty()) {
            top += TITLE;
            items.add(new Drawing.Words(fitted(chart.title(), TITLE, true, width - 2 * MARGIN), MARGIN, top, TITLE, true,
                    Drawing.Anchor.START, false, colours.text(), false));
            top += GAP;
        }
        top += NUMBER / 2;
        double bottom = legend(height - MARGIN);
        bottom -= NAME + GAP + NUMBER + GAP;
        Ticks left = upwards(chart.y(), chart.extent(Side.LEFT), bottom - top);
        double from = MARGIN + NAME + GAP + widest(left) + GAP;
        double to = width - MARGIN;
        Ticks right = null;
        if (chart.right().isPresent()) {
            right = upwards(chart.right().get(), chart.extent(Side.RIGHT), bottom - top);
            to -= NAME + GAP + widest(right) + GAP;
        }
        // whole pixels, so that the frame is sharp and another widget can take its place
        plot = new Drawing.Box(Math.ceil(from), Math.ceil(top), Math.max(Math.floor(to), Math.ceil(from) + 1),
                Math.max(Math.floor(bottom), Math.ceil(top) + 1));
        Ticks below = below();
        List<Drawing.Item> front = new ArrayList<>();
        grid(below, left);
        curves();
        axes(below, left, right, front);
        items.addAll(front);
        marks();
        return new Drawing(width, height, colours.background(), plot, items);
    }

    private Ticks upwards(Axis axis, Extent extent, double length) {
        return axis.scale() == Chart.Scale.LINEAR ? ticks(axis, extent, Math.max(2, (int) (length / TICK_HEIGHT) + 1))
                : Ticks.along(axis, extent, units, Math.max(1, length), label -> TICK_ROOM);
    }

    private Ticks ticks(Axis axis, Extent extent, int most) {
        Extent shown = shown(axis, extent);
        return Ticks.of(shown.from(), shown.to(), most);
    }

    private double widest(Ticks ticks) {
        return ticks.labels().stream().mapToDouble(label -> text.of(label, NUMBER, false)).max().orElse(0);
    }

    /** As many ticks below as do not run into each other. */
    private Ticks below() {
        if (chart.x().scale() != Chart.Scale.LINEAR) {
            return Ticks.along(chart.x(), chart.extent(), units, plot.width(), label -> text.of(label, NUMBER, false) + 2 * GAP);
        }
        for (int most = 12; ; most--) {
            Ticks ticks = ticks(chart.x(), chart.extent(), Math.max(2, most));
            double apart = ticks.step() * plot.width() / shown(chart.x(), chart.extent()).length();
            if (most <= 2 || widest(ticks) + 2 * GAP <= apart) {
                return ticks;
            }
        }
    }

    private DoubleUnaryOperator across() {
        Extent extent = chart.extent();
        return si -> plot.left() + chart.x().scale().share(extent, si) * plot.width();
    }

    private DoubleUnaryOperator upwards(Side side) {
        Extent extent = chart.extent(side);
        return si -> plot.bottom() - chart.axis(side).scale().share(extent, si) * plot.height();
    }

    private double place(Axis axis, double shown, DoubleUnaryOperator along) {
        return along.applyAsDouble(axis.si(shown, units));
    }

    private void grid(Ticks below, Ticks left) {
        for (Chart.Region region : chart.regions()) {
            double from = clamp(region.from().isPresent() ? across().applyAsDouble(region.from().getAsDouble()) : plot.left());
            double to = clamp(region.to().isPresent() ? across().applyAsDouble(region.to().getAsDouble()) : plot.right());
            if (to > from) {
                items.add(new Drawing.Area(corners(from, plot.top(), to, plot.bottom()), colours.region(), REGION_OPACITY, true));
                for (double end : region.ends().map(across()).filter(end -> end > plot.left() && end < plot.right()).toArray()) {
                    items.add(new Drawing.Line(segment(end, plot.top(), end, plot.bottom()), colours.region(), 1, List.of(2.0, 3.0), true));
                }
            }
        }
        for (double tick : below.values()) {
            double x = place(chart.x(), tick, across());
            items.add(new Drawing.Line(segment(x, plot.top(), x, plot.bottom()), colours.grid(), 1, List.of(), true));
        }
        for (double tick : left.values()) {
            double y = place(chart.y(), tick, upwards(Side.LEFT));
            items.add(new Drawing.Line(segment(plot.left(), y, plot.right(), y), colours.grid(), 1, List.of(), true));
        }
    }

    private double clamp(double x) {
        return Math.clamp(x, plot.left(), plot.right());
    }

    private void curves() {
        for (Chart.Band band : chart.bands()) {
            Points lower = edge(band.lower());
            Points upper = edge(band.upper());
            if (lower.size() > 1 && upper.size() > 1) {
                items.add(new Drawing.Area(outline(lower, upper), colours.series(band.colour()), BAND_OPACITY, true));
            }
        }
        for (Chart.Series series : chart.series()) {
            int colour = colours.series(series.look().colour());
            if (series.look().lined()) {
                pieces(series).forEach(drawn -> items.add(new Drawing.Line(drawn, colour, series.look().faint() ? FAINT : CURVE,
                        dashes(series.look().style()), true)));
            }
            if (series.look().marked()) {
                Points placed = placed(seen(series.points(), series.side()), series.side());
                for (int i = 0; i < placed.size(); i++) {
                    if (plot.holds(placed.x(i), placed.y(i))) {
                        double radius = radius(series.look());
                        items.add(new Drawing.Sign(placed.x(i), placed.y(i), radius, series.look().sign(), colour));
                        signs.add(new Drawing.Box(placed.x(i) - radius, placed.y(i) - radius, placed.x(i) + radius, placed.y(i) + radius));
                    }
                }
            }
        }
    }

    /** Signs on a line stand back behind it; those that stand alone are larger, so that their shapes can be told. */
    private static double radius(Chart.Look look) {
        return look.lined() ? POINT : THING;
    }

    static List<Double> dashes(Chart.Style style) {
        return switch (style) {
            case DASHED -> List.of(7.0, 4.0);
            case DOTTED -> List.of(2.0, 3.0);
            case LINE, MARKS, BOTH -> List.of();
        };
    }

    /** Points on the canvas; far outside of it they are brought nearer, as renderers draw large numbers wrongly. */
    private Points placed(Points points, Side side) {
        return Points.of(points.xs().map(across()).map(each -> Math.clamp(each, -1e5, 1e5)).toArray(),
                points.ys().map(upwards(side)).map(each -> Math.clamp(each, -1e5, 1e5)).toArray());
    }

    private boolean seen(double x, double y, Side side) {
        return chart.x().scale().shows(x) && chart.axis(side).scale().shows(y);
    }

    /** Points that the scales can show. */
    private Points seen(Points points, Side side) {
        return some(points, IntStream.range(0, points.size()).filter(i -> seen(points.x(i), points.y(i), side)).toArray());
    }

    private static Points some(Points points, int... which) {
        return Points.of(Arrays.stream(which).mapToDouble(points::x).toArray(), Arrays.stream(which).mapToDouble(points::y).toArray());
    }

    /** The edge of a band on the canvas; where the scale upwards cannot show it, it lies beyond the canvas. */
    private Points edge(Points points) {
        return drawn(some(points, IntStream.range(0, points.size()).filter(i -> chart.x().scale().shows(points.x(i))).toArray()), Side.LEFT);
    }

    /** The lines of a series on the canvas; one ends where the scales cannot show how it goes on. */
    private List<Points> pieces(Chart.Series series) {
        Points points = series.points();
        List<Points> pieces = new ArrayList<>();
        for (int from = 0; from < points.size(); ) {
            int to = from;
            while (to < points.size() && seen(points.x(to), points.y(to), series.side())) {
                to++;
            }
            if (to - from > 1) {
                pieces.add(drawn(some(points, IntStream.range(from, to).toArray()), series.side()));
            }
            from = to + 1;
        }
        return pieces.stream().filter(piece -> piece.size() > 1).toList();
    }

    /** The points of a line on the canvas, without those that change nothing of it. */
    private Points drawn(Points points, Side side) {
        Points placed = placed(points, side);
        double[] x = placed.xs().toArray();
        double[] y = placed.ys().toArray();
        int[] kept = Decimation.of(x, y, 0.5);
        return Points.of(Arrays.stream(kept).mapToDouble(i -> x[i]).toArray(), Arrays.stream(kept).mapToDouble(i -> y[i]).toArray());
    }

    private static Points outline(Points lower, Points upper) {
        int n = lower.size();
        int m = upper.size();
        double[] x = new double[n + m];
        double[] y = new double[n + m];
        for (int i = 0; i < n; i++) {
            x[i] = lower.x(i);
            y[i] = lower.y(i);
        }
        for (int i = 0; i < m; i++) {
            x[n + i] = upper.x(m - 1 - i);
            y[n + i] = upper.y(m - 1 - i);
        }
        return Points.of(x, y);
    }

    private void axes(Ticks below, Ticks left, Ticks right, List<Drawing.Item> front) {
        front.add(new Drawing.Line(Points.of(new double[] {plot.left(), plot.right(), plot.right(), plot.left(), plot.left()},
                new double[] {plot.top(), plot.top(), plot.bottom(), plot.bottom(), plot.top()}), colours.line(), 1, List.of(), false));
        double line = plot.bottom() + GAP + NUMBER;
        double last = Double.NEGATIVE_INFINITY;
        for (int i = 0; i < below.values().size(); i++) {
            double x = place(chart.x(), below.values().get(i), across());
            double half = text.of(below.labels().get(i), NUMBER, false) / 2;
            if (x - half > last && x + half <= width) {
                front.add(words(below.labels().get(i), x, line, Drawing.Anchor.MIDDLE));
                last = x + half;
            }
        }
        front.add(new Drawing.Words(fitted(name(chart.x(), units), NAME, false, plot.width()), (plot.left() + plot.right()) / 2,
                line + GAP + NAME - 2, NAME, false, Drawing.Anchor.MIDDLE, false, colours.text(), false));
        upward(chart.y(), left, Side.LEFT, front);
        if (right != null) {
            upward(chart.right().orElseThrow(), right, Side.RIGHT, front);
        }
    }

    private void upward(Axis axis, Ticks ticks, Side side, List<Drawing.Item> front) {
        boolean onLeft = side == Side.LEFT;
        double x = onLeft ? plot.left() - GAP : plot.right() + GAP;
        for (int i = 0; i < ticks.values().size(); i++) {
            double y = place(axis, ticks.values().get(i), upwards(side));
            front.add(words(ticks.labels().get(i), x, y + NUMBER / 3, onLeft ? Drawing.Anchor.END : Drawing.Anchor.START));
            if (!onLeft) {
                front.add(new Drawing.Line(segment(plot.right(), y, plot.right() + GAP / 2, y), colours.line(), 1, List.of(), false));
            }
        }
        front.add(new Drawing.Words(fitted(name(axis, units), NAME, false, plot.height()), onLeft ? MARGIN + NAME - 2 : width - MARGIN,
                (plot.top() + plot.bottom()) / 2, NAME, false, Drawing.Anchor.MIDDLE, true, colours.text(), false));
    }

    private Drawing.Words words(String label, double x, double y, Drawing.Anchor anchor) {
        return new Drawing.Words(label, x, y, NUMBER, false, anchor, false, colours.muted(), false);
    }

    /** Signs, and beside them their words where these cover nothing else. */
    private void marks() {
        List<Drawing.Box> taken = new ArrayList<>();
        List<Chart.Mark> seen = new ArrayList<>();
        for (Chart.Mark mark : chart.marks()) {
            double x = across().applyAsDouble(mark.x());
            double y = upwards(mark.side()).applyAsDouble(mark.y());
            if (plot.holds(x, y)) {
                taken.add(new Drawing.Box(x - SIGN, y - SIGN, x + SIGN, y + SIGN));
                seen.add(mark);
            }
        }
        List<Points> lines = chart.series().stream().flatMap(series -> pieces(series).stream()).toList();
        for (Chart.Mark mark : seen) {
            double x = across().applyAsDouble(mark.x());
            double y = upwards(mark.side()).applyAsDouble(mark.y());
            items.add(new Drawing.Sign(x, y, SIGN, mark.shape(), colours.series(mark.colour())));
        }
        // the foremost has the first choice
        for (Chart.Mark mark : seen.reversed()) {
            double x = across().applyAsDouble(mark.x());
            double y = upwards(mark.side()).applyAsDouble(mark.y());
            Drawing.Box best = null;
            int fewest = Integer.MAX_VALUE;
            List<Drawing.Box> places = beside(x, y, text.of(mark.label(), NUMBER, false));
            for (int i = 0; i < places.size(); i++) {
                Drawing.Box box = places.get(i);
                if (plot.holds(box) && taken.stream().noneMatch(box::overlaps)) {
                    int crossed = crossed(box, lines) + (int) signs.stream().filter(box::overlaps).count() + (i < places.size() / 2 ? 0 : FARTHER);
                    if (crossed < fewest) {
                        fewest = crossed;
                        best = box;
                    }
                }
            }
            if (best == null) {
                wordless.add(mark);
            } else if (!mark.label().isEmpty()) {
                taken.add(best);
                items.add(new Drawing.Words(mark.label(), best.left(), best.bottom() - NUMBER / 4, NUMBER, false, Drawing.Anchor.START,
                        false, colours.text(), true));
            }
        }
    }

    private static List<Drawing.Box> beside(double x, double y, double wide) {
        List<Drawing.Box> boxes = new ArrayList<>();
        double high = NUMBER * 1.3;
        for (double away : new double[] {SIGN + 4, SIGN + 16}) {
            for (double[] to : new double[][] {{1, -1}, {1, 1}, {-1, -1}, {-1, 1}, {1, 0}, {-1, 0}, {0, -1}, {0, 1}}) {
                double left = to[0] > 0 ? x + away : to[0] < 0 ? x - away - wide : x - wide / 2;
                double top = to[1] < 0 ? y - away - high : to[1] > 0 ? y + away : y - high / 2;
                boxes.add(new Drawing.Box(left, top, left + wide, top + high));
            }
        }
        return boxes;
    }

    /** How many lines run through a box. */
    private static int crossed(Drawing.Box box, List<Points> lines) {
        int count = 0;
        for (Points line : lines) {
            boolean cut = false;
            for (int i = 1; i < line.size() && !cut; i++) {
                cut = cuts(box, line.x(i - 1), line.y(i - 1), line.x(i), line.y(i));
            }
            count += cut ? 1 : 0;
        }
        return count;
    }

    /** Whether a straight line goes through a box (Liang and Barsky 1984). */
    static boolean cuts(Drawing.Box box, double x1, double y1, double x2, double y2) {
        double from = 0;
        double to = 1;
        double[] against = {x1 - x2, x2 - x1, y1 - y2, y2 - y1};
        double[] room = {x1 - box.left(), box.right() - x1, y1 - box.top(), box.bottom() - y1};
        for (int i = 0; i < 4; i++) {
            if (against[i] == 0) {
                if (room[i] < 0) {
                    return false;
                }
            } else if (against[i] < 0) {
                from = Math.max(from, room[i] / against[i]);
            } else {
                to = Math.min(to, room[i] / against[i]);
            }
        }
        return from <= to;
    }

    /** The legend, from the bottom up; returns where it begins. */
    private double legend(double bottom) {
        List<Entry> entries = List.copyOf(entries());
        int most = Math.max(1, (int) (LEGEND * height / (NAME + GAP)));
        List<List<Entry>> rows = rows(entries);
        for (int left = entries.size() - 1; rows.size() > most && left >= 0; left--) {
            List<Entry> fewer = new ArrayList<>(entries.subList(0, left));
            fewer.add(new Entry("and " + (entries.size() - left) + " more", More.MORE));
            rows = rows(fewer);
        }
        double top = bottom - rows.size() * (NAME + GAP);
        for (int r = 0; r < rows.size(); r++) {
            double x = MARGIN;
            double line = top + (r + 1) * (NAME + GAP) - GAP / 2;
            for (Entry entry : rows.get(r)) {
                swatch(entry.what(), x, line - NAME * 0.35);
                String name = fitted(entry.name(), NAME, false, width - MARGIN - x - SWATCH - GAP);
                items.add(new Drawing.Words(name, x + SWATCH + GAP, line, NAME, false, Drawing.Anchor.START, false, colours.text(), false));
                x += SWATCH + GAP + text.of(name, NAME, false) + 2 * GAP;
            }
        }
        return rows.isEmpty() ? bottom : top - GAP;
    }

    private List<List<Entry>> rows(List<Entry> entries) {
        List<List<Entry>> rows = new ArrayList<>();
        double room = width - 2 * MARGIN;
        double used = Double.POSITIVE_INFINITY;
        for (Entry entry : entries) {
            double needs = SWATCH + GAP + text.of(entry.name(), NAME, false) + 2 * GAP;
            if (used + needs > room + 2 * GAP) {
                rows.add(new ArrayList<>());
                used = 0;
            }
            rows.getLast().add(entry);
            used += needs;
        }
        return rows;
    }

    /** What stands for entries that have no room. */
    private enum More {
        MORE
    }

    /** What matters most comes first. */
    private LinkedHashSet<Entry> entries() {
        LinkedHashSet<Entry> entries = new LinkedHashSet<>();
        listed(entries, false);
        chart.marks().reversed().stream().filter(listed::contains)
                .forEach(mark -> entries.add(new Entry(mark.label(), new Sign(mark.shape(), mark.colour()))));
        chart.bands().stream().filter(band -> !band.name().isEmpty())
                .forEach(band -> entries.add(new Entry(band.name(), new Filled(colours.series(band.colour()), 2 * BAND_OPACITY))));
        chart.regions().stream().filter(region -> !region.label().isEmpty())
                .forEach(region -> entries.add(new Entry(region.label(), new Filled(colours.region(), 2 * REGION_OPACITY))));
        listed(entries, true);
        return entries;
    }

    private void listed(LinkedHashSet<Entry> entries, boolean faint) {
        chart.series().stream().filter(series -> !series.name().isEmpty() && series.look().faint() == faint)
                .forEach(series -> entries.add(new Entry(series.name(), series.look())));
    }

    private record Filled(int colour, double opacity) {
    }

    private record Sign(Chart.Shape shape, int colour) {
    }

    private void swatch(Object what, double x, double y) {
        switch (what) {
            case Chart.Look look -> {
                if (look.lined()) {
                    items.add(new Drawing.Line(segment(x, y, x + SWATCH, y), colours.series(look.colour()),
                            look.faint() ? FAINT : CURVE, dashes(look.style()), false));
                }
                if (look.marked()) {
                    items.add(new Drawing.Sign(x + SWATCH / 2, y, radius(look), look.sign(), colours.series(look.colour())));
                }
            }
            case Filled filled -> items.add(new Drawing.Area(corners(x, y - SIGN, x + SWATCH, y + SIGN), filled.colour(), filled.opacity(), false));
            case More more -> items.add(new Drawing.Words("…", x + SWATCH / 2, y, NAME, false, Drawing.Anchor.MIDDLE, false, colours.muted(), false));
            case Sign sign -> items.add(new Drawing.Sign(x + SWATCH / 2, y, SIGN, sign.shape(), colours.series(sign.colour())));
            default -> throw new IllegalStateException("no swatch of " + what);
        }
    }

    /** A text that fits a width, with an ellipsis where it is cut. */
    private String fitted(String words, double size, boolean bold, double room) {
        if (text.of(words, size, bold) <= room) {
            return words;
        }
        int end = words.length();
        while (end > 0 && text.of(words.substring(0, end) + "…", size, bold) > room) {
            end--;
        }
        return words.substring(0, end).stripTrailing() + "…";
    }

    private static Points segment(double x1, double y1, double x2, double y2) {
        return Points.of(new double[] {x1, x2}, new double[] {y1, y2});
    }

    private static Points corners(double left, double top, double right, double bottom) {
        return Points.of(new double[] {left, right, right, left}, new double[] {top, top, bottom, bottom});
    }
}
