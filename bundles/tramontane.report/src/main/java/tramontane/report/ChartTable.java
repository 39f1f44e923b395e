package tramontane.report;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import tramontane.analysis.Amount;
import tramontane.analysis.Chart;
import tramontane.analysis.Table;
import tramontane.physics.units.UnitSystem;
import tramontane.physics.units.Units;

/**
 * What a chart says, for those who cannot see it or want numbers: its marks, then the values of all curves at round places of the
 * axis below, then single things.
 */
public final class ChartTable {

    private static final int MOST_ROWS = 24;

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
            rows.add(single(mark.label(), mark.x(), mark.y(), chart, mark.side(), curves.size()));
        }
        for (double x : places(chart, units, curves)) {
            List<Table.Cell> row = new ArrayList<>(List.of(new Table.Empty(), new Amount(x, chart.x().quantity())));
            if (marked) {
                row.add(new Table.Empty());
            }
            curves.forEach(series -> row.add(cell(series.at(x), chart, series)));
            if (row.stream().filter(Amount.class::isInstance).count() > 1) {
                rows.add(row);
            }
        }
        chart.series().stream().filter(series -> series.role() == Chart.Role.SCATTER).forEach(series -> {
            for (int i = 0; i < series.points().size(); i++) {
                rows.add(single(series.words(i), series.points().x(i), series.points().y(i), chart, series.side(), curves.size()));
            }
        });
        return new Table(chart.title(), columns, rows);
    }

    private static double[] places(Chart chart, UnitSystem units, List<Chart.Series> curves) {
        if (curves.isEmpty()) {
            return new double[0];
        }
        double from = Units.toDisplay(chart.extent().from(), chart.x().quantity(), units);
        double to = Units.toDisplay(chart.extent().to(), chart.x().quantity(), units);
        return Ticks.of(from, to, MOST_ROWS).values().stream().mapToDouble(shown -> Units.fromDisplay(shown, chart.x().quantity(), units)).toArray();
    }

    private static List<Table.Cell> single(String name, double x, double y, Chart chart, Chart.Side side, int curves) {
        return Stream.concat(Stream.of(new Table.Words(name), new Amount(x, chart.x().quantity()), new Amount(y, chart.axis(side).quantity())),
                Stream.<Table.Cell>generate(Table.Empty::new).limit(curves)).toList();
    }

    private static Table.Cell cell(OptionalDouble value, Chart chart, Chart.Series series) {
        return value.isPresent() ? new Amount(value.getAsDouble(), chart.axis(series.side()).quantity()) : new Table.Empty();
    }
}
