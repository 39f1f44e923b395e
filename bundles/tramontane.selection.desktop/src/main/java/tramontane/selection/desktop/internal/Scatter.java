package tramontane.selection.desktop.internal;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import tramontane.analysis.Amount;
import tramontane.analysis.Better;
import tramontane.analysis.Chart;
import tramontane.physics.units.QuantityKind;

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
     * The chart: the Pareto set as discs, the rest as rings, so that they differ by shape; the edge of the two figures as a dashed
     * line; what is selected named.
     */
    Chart chart() {
        if (x.isEmpty() || y.isEmpty()) {
            return Chart.of("", new Chart.Axis("", QuantityKind.NUMBER), new Chart.Axis("", QuantityKind.NUMBER));
        }
        Chart chart = Chart.of("", axis(x.get()), axis(y.get()));
        if (edge.size() > 1) {
            chart = chart.with(new Chart.Series("best trade-off of these two", Chart.Role.BESIDE, new Chart.Look(Chart.Style.DASHED, 6, true), points(edge)));
        }
        for (Point point : points) {
            if (!point.front() && !point.selected()) {
                chart = chart.with(new Chart.Mark("", point.x(), point.y(), Chart.Shape.RING, 0));
            }
        }
        for (Point point : points) {
            if (point.front() && !point.selected()) {
                chart = chart.with(new Chart.Mark("", point.x(), point.y(), Chart.Shape.DISC, 1));
            }
        }
        for (Point point : points) {
            if (point.selected()) {
                chart = chart.with(new Chart.Mark(point.rank().map(rank -> rank + " ").orElse("") + point.key().words(), point.x(), point.y(),
                        point.front() ? Chart.Shape.DISC : Chart.Shape.RING, 3));
            }
        }
        return chart;
    }

    private static Chart.Axis axis(Column column) {
        return new Chart.Axis(column.label(), column.kind().orElseThrow());
    }

    private static Chart.Points points(List<Point> points) {
        return Chart.Points.of(points.stream().mapToDouble(Point::x).toArray(), points.stream().mapToDouble(Point::y).toArray());
    }

    /** What the signs mean, and what is not drawn. */
    String words() {
        if (points.isEmpty()) {
            return "";
        }
        return "filled: in the Pareto set of all criteria; ring: not" + (silent == 0 ? "" : "; " + silent + (silent == 1 ? " has" : " have")
                + " no value of one of the two");
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
