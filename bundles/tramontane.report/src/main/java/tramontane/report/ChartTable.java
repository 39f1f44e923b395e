package tramontane.report;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import tramontane.analysis.Amount;
import tramontane.analysis.Chart;
import tramontane.analysis.Table;
import tramontane.physics.units.UnitSystem;

/**
 * What a chart says, for those who cannot see it or want numbers: its marks, then the values of all curves at round places of the
 * axis below, then single things.
 */
public final class ChartTable {

    private static final int MOST_ROWS = 24;
    private static final int DIGITS = 3;

    private ChartTable() {
    }

    /**
     * The table of a chart, of that part of it which its axes show.
     *
     * @param chart the chart
     * @param units those of the reader, in which the places are round
     */
    public static Table of(Chart chart, UnitSystem units) {
        // what matters most comes first: the foremost mark, and curves that do not stand back
        List<Chart.Series> curves = Stream.of(false, true).flatMap(faint -> chart.series().stream()
                .filter(series -> series.role() != Chart.Role.SCATTER && series.look().faint() == faint)).toList();
        List<Table.Column> columns = new ArrayList<>(List.of(new Table.Column("", false), new Table.Column(chart.x().label(), true)));
        boolean marked = !chart.marks().isEmpty() || curves.size() < chart.series().size();
        if (marked) {
            columns.add(new Table.Column(chart.y().label(), true));
        }
        curves.forEach(series -> columns.add(new Table.Column(series.name(), true)));
        List<List<Table.Cell>> rows = new ArrayList<>();
        for (Chart.Mark mark : chart.marks().reversed()) {
            rows.add(single(mark.label(), mark.x(), mark.y(), chart, mark.side(), curves.size(), units));
        }
        for (double x : places(chart, units, curves)) {
            List<Table.Cell> row = new ArrayList<>(List.of(new Table.Empty(), cell(x, chart.x(), units)));
            if (marked) {
                row.add(new Table.Empty());
            }
            curves.forEach(series -> row.add(cell(chart.at(series, x), chart, series, units)));
            if (row.stream().filter(cell -> !(cell instanceof Table.Empty)).count() > 1) {
                rows.add(row);
            }
        }
        chart.series().stream().filter(series -> series.role() == Chart.Role.SCATTER).forEach(series -> {
            for (int i = 0; i < series.points().size(); i++) {
                rows.add(single(series.words(i), series.points().x(i), series.points().y(i), chart, series.side(), curves.size(), units));
            }
        });
        return new Table(chart.title(), columns, rows);
    }

    private static double[] places(Chart chart, UnitSystem units, List<Chart.Series> curves) {
        if (curves.isEmpty()) {
            return new double[0];
        }
        return Ticks.listed(chart.x(), chart.extent(), units, MOST_ROWS).values().stream().mapToDouble(shown -> chart.x().si(shown, units)).toArray();
    }

    private static List<Table.Cell> single(String name, double x, double y, Chart chart, Chart.Side side, int curves, UnitSystem units) {
        return Stream.concat(Stream.of(new Table.Words(name), cell(x, chart.x(), units), cell(y, chart.axis(side), units)),
                Stream.<Table.Cell>generate(Table.Empty::new).limit(curves)).toList();
    }

    private static Table.Cell cell(OptionalDouble value, Chart chart, Chart.Series series, UnitSystem units) {
        return value.isPresent() ? cell(value.getAsDouble(), chart.axis(series.side()), units) : new Table.Empty();
    }

    /** An amount, which whoever shows the table writes in units of the reader; in words where its axis has a unit of its own. */
    private static Table.Cell cell(double value, Chart.Axis axis, UnitSystem units) {
        return axis.unit().isPresent() ? new Table.Words(axis.format(value, units, DIGITS)) : new Amount(value, axis.quantity());
    }
}
