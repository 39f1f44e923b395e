package tramontane.selection.desktop.internal;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import tramontane.analysis.Amount;
import tramontane.analysis.Better;
import tramontane.analysis.Chart;

/**
 * Candidates as points of a plane of two figures.
 *
 * @param x      the figure along the axis below; empty where there is nothing to draw
 * @param y      the figure along the axis on the left
 * @param points those of which both are known
 * @param edge   of these the ones that no other is better than by these two figures, from left to right; empty where a figure has no
 *               better way
 * @param silent how many candidates there are of which one of the two is not known
 */
record Scatter(Optional<Column> x, Optional<Column> y, List<Point> points, List<Point> edge, int silent) {

    /** The series of those in the Pareto set of all criteria. */
    static final String IN_FRONT = "Pareto set";
    /** The series of the others. */
    static final String BEHIND = "not in the Pareto set";

    private static final int SELECTED = 3;
    private static final int EDGE = 6;

    static final Scatter EMPTY = new Scatter(Optional.empty(), Optional.empty(), List.of(), List.of(), 0);

    Scatter {
        points = List.copyOf(points);
        edge = List.copyOf(edge);
    }

    /**
     * One candidate.
     *
     * @param key      which
     * @param x        SI
     * @param y        SI
     * @param front    whether it is in the Pareto set of all criteria
     * @param selected whether it is selected
     * @param rank     its place in the list
     */
    record Point(Key key, double x, double y, boolean front, boolean selected, Optional<Integer> rank) {

        String words() {
            return rank.map(place -> place + " ").orElse("") + key.words();
        }
    }

    /** The columns that can be axes: those of which any two rows know a value. */
    static List<Column> axes(Listing listing) {
        return listing.columns().stream().filter(Column::isAxis).filter(column -> !column.id().equals(Listing.RANK))
                .filter(column -> listing.rows().stream().filter(row -> row.cell(column.id()) instanceof Amount).limit(2).count() == 2).toList();
    }

    /**
     * The points of a table.
     *
     * @param listing  the table
     * @param x        id of a column; the first criterion where there is none of that id
     * @param y        id of a column; the second one likewise
     * @param selected what is selected
     */
    static Scatter of(Listing listing, String x, String y, List<Key> selected) {
        List<Column> axes = axes(listing);
        List<Column> better = axes.stream().filter(column -> column.better() != Better.NEITHER).toList();
        List<Column> first = better.size() >= 2 ? better : axes;
        if (first.size() < 2) {
            return EMPTY;
        }
        Column below = axes.stream().filter(column -> column.id().equals(x)).findFirst().orElse(first.get(0));
        Column left = axes.stream().filter(column -> column.id().equals(y)).findFirst()
                .orElse(first.stream().filter(column -> !column.id().equals(below.id())).findFirst().orElse(first.get(1)));
        List<Point> points = new ArrayList<>();
        int silent = 0;
        for (Row row : listing.rows()) {
            if (row.cell(below.id()) instanceof Amount a && row.cell(left.id()) instanceof Amount b) {
                points.add(new Point(row.key(), a.si(), b.si(), row.isOnFront(), selected.contains(row.key()), row.rank()));
            } else if (row.candidate().isPresent()) {
                silent++;
            }
        }
        return new Scatter(Optional.of(below), Optional.of(left), points, edge(points, below.better(), left.better()), silent);
    }

    /**
     * The chart: the Pareto set as discs, the rest as rings, so that they differ by shape and by the word in the legend; the edge of
     * the two figures as a dashed line; what is selected named. Empty where there is nothing to draw.
     */
    Optional<Chart> chart() {
        if (points.isEmpty()) {
            return Optional.empty();
        }
        Chart chart = Chart.of("", axis(x.orElseThrow()), axis(y.orElseThrow()));
        if (edge.size() > 1) {
            // each is a candidate of its own: there is nothing to read off between two of them
            chart = chart.with(new Chart.Series("best trade-off of these two", Chart.Role.SCATTER, new Chart.Look(Chart.Style.DASHED, EDGE, true), Chart.Side.LEFT,
                    points(edge), 3, names(edge)));
        }
        for (boolean front : new boolean[] {false, true}) {
            List<Point> some = shown(front);
            if (!some.isEmpty()) {
                chart = chart.with(Chart.Series.things(front ? IN_FRONT : BEHIND, Chart.Look.marks(front ? 1 : 0, shape(front)), points(some), names(some)));
            }
        }
        for (Point point : points) {
            if (point.selected()) {
                chart = chart.with(new Chart.Mark(point.words(), point.x(), point.y(), shape(point.front()), SELECTED));
            }
        }
        return Optional.of(chart);
    }

    /** The candidate behind a point of the chart; empty for a point of another chart. */
    Optional<Key> key(Chart.Series series, int point) {
        List<Point> some = series.name().equals(IN_FRONT) ? shown(true) : series.name().equals(BEHIND) ? shown(false) : List.of();
        return point < some.size() ? Optional.of(some.get(point).key()) : Optional.empty();
    }

    private List<Point> shown(boolean front) {
        return points.stream().filter(point -> point.front() == front).toList();
    }

    private static Chart.Shape shape(boolean front) {
        return front ? Chart.Shape.DISC : Chart.Shape.RING;
    }

    private static List<String> names(List<Point> points) {
        return points.stream().map(Point::words).toList();
    }

    private static Chart.Axis axis(Column column) {
        return new Chart.Axis(column.label(), column.kind().orElseThrow());
    }

    private static Chart.Points points(List<Point> points) {
        return Chart.Points.of(points.stream().mapToDouble(Point::x).toArray(), points.stream().mapToDouble(Point::y).toArray());
    }

    /** What is not drawn. */
    String words() {
        return points.isEmpty() || silent == 0 ? "" : silent + (silent == 1 ? " candidate has" : " candidates have") + " no value of one of the two";
    }

    private static List<Point> edge(List<Point> points, Better x, Better y) {
        if (x == Better.NEITHER || y == Better.NEITHER) {
            return List.of();
        }
        List<Point> sorted = new ArrayList<>(points);
        sorted.sort(Comparator.<Point>comparingDouble(point -> Trade.badness(x, point.x())).thenComparingDouble(point -> Trade.badness(y, point.y())));
        List<Point> edge = new ArrayList<>();
        double best = Double.POSITIVE_INFINITY;
        for (Point point : sorted) {
            if (Trade.badness(y, point.y()) < best) {
                edge.add(point);
                best = Trade.badness(y, point.y());
            }
        }
        edge.sort(Comparator.comparingDouble(Point::x));
        return edge;
    }
}
