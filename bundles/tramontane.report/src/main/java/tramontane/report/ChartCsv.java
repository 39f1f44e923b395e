package tramontane.report;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.DoubleStream;
import java.util.stream.Stream;
import tramontane.analysis.Chart;
import tramontane.physics.units.UnitSystem;
import tramontane.physics.units.Units;

/**
 * The numbers of a chart as comma-separated values (RFC 4180), to be drawn again elsewhere.
 *
 * <p>Each series has two columns, the axis below and its own; one that lies at the same places as that before it has only its
 * own; one whose points have names has a column of these before. The units stand in the heads. Marks and regions follow in columns of their own.
 */
public final class ChartCsv {

    private static final MathContext DIGITS = new MathContext(8);

    private ChartCsv() {
    }

    private record Column(String head, List<String> cells) {
    }

    /**
     * Writes a chart.
     *
     * @param chart the chart
     * @param units those of the reader
     * @return lines ended by CR LF, the first with the heads; numbers to eight digits
     */
    public static String of(Chart chart, UnitSystem units) {
        List<Column> columns = new ArrayList<>();
        String below = head(chart.x(), units);
        Chart.Points last = null;
        for (Chart.Series series : chart.series()) {
            Chart.Axis axis = chart.axis(series.side());
            if (!series.words().isEmpty()) {
                columns.add(new Column(series.name(), series.words()));
                last = null;
            }
            last = series(columns, below, series.name(), axis, series.points(), last, chart.x(), units);
        }
        for (Chart.Band band : chart.bands()) {
            last = series(columns, below, band.name() + ", lower", chart.y(), band.lower(), last, chart.x(), units);
            last = series(columns, below, band.name() + ", upper", chart.y(), band.upper(), last, chart.x(), units);
        }
        if (!chart.marks().isEmpty()) {
            columns.add(new Column("mark", chart.marks().stream().map(Chart.Mark::label).toList()));
            columns.add(column(below, chart.marks().stream().mapToDouble(Chart.Mark::x), chart.x(), units));
            for (Chart.Side side : Chart.Side.values()) {
                if (chart.marks().stream().anyMatch(mark -> mark.side() == side)) {
                    Chart.Axis axis = chart.axis(side);
                    columns.add(new Column(head(axis, units), chart.marks().stream()
                            .map(mark -> mark.side() == side ? number(mark.y(), axis, units) : "").toList()));
                }
            }
        }
        if (!chart.regions().isEmpty()) {
            columns.add(new Column("region", chart.regions().stream().map(Chart.Region::label).toList()));
            columns.add(new Column("from " + below, chart.regions().stream()
                    .map(region -> region.from().isPresent() ? number(region.from().getAsDouble(), chart.x(), units) : "").toList()));
            columns.add(new Column("to " + below, chart.regions().stream()
                    .map(region -> region.to().isPresent() ? number(region.to().getAsDouble(), chart.x(), units) : "").toList()));
        }
        return text(columns);
    }

    private static Chart.Points series(List<Column> columns, String below, String name, Chart.Axis axis, Chart.Points points,
            Chart.Points last, Chart.Axis x, UnitSystem units) {
        if (last == null || !java.util.Arrays.equals(last.xs().toArray(), points.xs().toArray())) {
            columns.add(column(below, points.xs(), x, units));
        }
        columns.add(column(name + ": " + head(axis, units), points.ys(), axis, units));
        return points;
    }

    private static Column column(String head, DoubleStream values, Chart.Axis axis, UnitSystem units) {
        return new Column(head, values.mapToObj(value -> number(value, axis, units)).toList());
    }

    private static String head(Chart.Axis axis, UnitSystem units) {
        String unit = Units.display(axis.quantity(), axis.units(units)).symbol();
        return axis.label() + " [" + (unit.isEmpty() ? "1" : unit) + "]";
    }

    private static String number(double si, Chart.Axis axis, UnitSystem units) {
        BigDecimal rounded = BigDecimal.valueOf(axis.shown(si, units)).round(DIGITS).stripTrailingZeros();
        return rounded.signum() == 0 ? "0" : Math.abs(rounded.precision() - rounded.scale()) > 12 ? rounded.toString() : rounded.toPlainString();
    }

    private static String text(List<Column> columns) {
        StringBuilder text = new StringBuilder();
        row(text, columns.stream().map(Column::head));
        int rows = columns.stream().mapToInt(column -> column.cells().size()).max().orElse(0);
        for (int r = 0; r < rows; r++) {
            int row = r;
            row(text, columns.stream().map(column -> row < column.cells().size() ? column.cells().get(row) : ""));
        }
        return text.toString();
    }

    private static void row(StringBuilder text, Stream<String> cells) {
        text.append(String.join(",", cells.map(ChartCsv::quoted).toList())).append("\r\n");
    }

    private static String quoted(String cell) {
        boolean plain = cell.chars().noneMatch(c -> c == ',' || c == '"' || c == '\r' || c == '\n') && cell.equals(cell.strip());
        return plain ? cell : '"' + cell.replace("\"", "\"\"") + '"';
    }
}
