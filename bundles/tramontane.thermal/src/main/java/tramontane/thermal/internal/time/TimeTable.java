package tramontane.thermal.internal.time;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.TreeSet;
import tramontane.analysis.Amount;
import tramontane.analysis.Overview;
import tramontane.analysis.Table;
import tramontane.physics.units.QuantityKind;
import tramontane.thermal.History;

/** The course of temperatures as a table: a row for each time. */
final class TimeTable {

    private static final int ROWS = 10;
    private static final int MOST_EVENTS = 12;
    private static final int MOST_PARTS = 8;
    private static final int MOST_BANKS = 3;

    private TimeTable() {
    }

    static List<Overview> of(History history) {
        if (history.parts().isEmpty()) {
            return List.of();
        }
        List<History.Course> parts = history.parts().stream().sorted(Comparator
                .comparingDouble((History.Course part) -> part.reached().orElse(Double.POSITIVE_INFINITY))
                .thenComparingDouble(part -> part.limit().map(limit -> limit - part.peak()).orElse(Double.POSITIVE_INFINITY))
                .thenComparingDouble(part -> -part.peak())).limit(MOST_PARTS).toList();
        List<String> banks = history.flows().keySet().stream().limit(MOST_BANKS).toList();
        List<String> driven = banks.stream().filter(bank -> history.settings().get(bank).stream().distinct().count() > 1).toList();
        List<Table.Column> columns = new ArrayList<>(List.of(new Table.Column("time", true)));
        parts.forEach(part -> columns.add(new Table.Column(part.source(), true)));
        banks.forEach(bank -> {
            columns.add(new Table.Column(bank + " flow", true));
            if (driven.contains(bank)) {
                columns.add(new Table.Column(bank + " setting", true));
            }
        });
        List<List<Table.Cell>> rows = new ArrayList<>();
        for (double time : times(history)) {
            List<Table.Cell> row = new ArrayList<>(List.of(new Amount(time, QuantityKind.TIME)));
            parts.forEach(part -> row.add(cell(at(history.times(), history.junctions().get(part.source()), time), QuantityKind.TEMPERATURE)));
            banks.forEach(bank -> {
                row.add(cell(at(history.times(), history.flows().get(bank), time), QuantityKind.FLOW));
                if (driven.contains(bank)) {
                    row.add(cell(at(history.times(), history.settings().get(bank), time), QuantityKind.FRACTION));
                }
            });
            rows.add(row);
        }
        return List.of(new Overview(new Table("Temperatures in time", columns, rows), List.of()));
    }

    private static Table.Cell cell(double value, QuantityKind kind) {
        return Double.isFinite(value) ? new Amount(value, kind) : new Table.Empty();
    }

    private static TreeSet<Double> times(History history) {
        TreeSet<Double> times = new TreeSet<>();
        for (int i = 0; i <= ROWS; i++) {
            times.add(i * history.duration() / ROWS);
        }
        history.events().stream().limit(MOST_EVENTS).forEach(event -> times.add(event.at()));
        return times;
    }

    /** The value at a time, straight between those that are kept; behind a jump where it falls on one. */
    static double at(List<Double> times, List<Double> values, double time) {
        int i = times.size() - 1;
        while (i > 0 && times.get(i) > time) {
            i--;
        }
        if (i == times.size() - 1 || times.get(i) == time) {
            return values.get(i);
        }
        double part = (time - times.get(i)) / (times.get(i + 1) - times.get(i));
        return values.get(i) + part * (values.get(i + 1) - values.get(i));
    }
}
