package tramontane.cli.internal.output;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import tramontane.analysis.Figure;
import tramontane.analysis.Amount;
import tramontane.analysis.Table;
import tramontane.physics.units.QuantityKind;

/** Some quantities at places in cases, laid out as the numbers of each suggest. */
final class Grid {

    /** From so many quantities on, places and cases stand beneath each other and the quantities side by side. */
    private static final int MANY = 3;
    /** More conditions than this do not go side by side. */
    private static final int MOST_COLUMNS = 8;

    private final Map<String, Series> series = new LinkedHashMap<>();
    private final Set<String> places = new LinkedHashSet<>();

    /**
     * A table and how many columns at its left say what a row is about.
     *
     * @param table the table
     * @param keys  0 to 2
     */
    record Sheet(Table table, int keys) {
    }

    private record At(String place, String condition) {
    }

    private record Series(String label, Map<At, Table.Cell> cells) {
    }

    /** Puts a quantity. */
    Grid put(String label, QuantityKind quantity, String place, String condition, double si) {
        return put(label, place, condition, new Amount(si, quantity));
    }

    /** Puts a word. */
    Grid put(String label, String place, String condition, Table.Cell cell) {
        return put(label, label, place, condition, cell);
    }

    private Grid put(String key, String label, String place, String condition, Table.Cell cell) {
        series.computeIfAbsent(key, name -> new Series(label, new LinkedHashMap<>()))
                .cells().put(new At(place, condition), cell);
        places.add(place);
        return this;
    }

    /** Puts a figure under its label. */
    void put(Figure figure) {
        put(figure, "", new Amount(figure.value(), figure.kind().quantity()));
    }

    /** Puts the bounds of a figure, where it has them. */
    void putBounds(Figure figure) {
        if (figure.lower().isPresent() || figure.upper().isPresent()) {
            put(figure, ", bounds", new Table.Range(new Amount(figure.lower().orElse(figure.value()), figure.kind().quantity()),
                    new Amount(figure.upper().orElse(figure.value()), figure.kind().quantity())));
        }
    }

    private void put(Figure figure, String suffix, Table.Cell cell) {
        // by id: two kinds may have one label
        put(figure.kind().id() + suffix, figure.kind().label() + suffix, figure.place(), figure.condition(), cell);
    }

    /**
     * The tables.
     *
     * @param title what they show
     * @param what  heading of the column of places; empty if there is only the design as a whole
     * @param cases the cases to show, in order
     * @param list  whether places and cases go beneath each other however few quantities there are
     */
    List<Sheet> sheets(String title, String what, List<Results.Shown> cases, boolean list) {
        List<Series> filled = series.values().stream().filter(each -> cases.stream()
                .anyMatch(shown -> places.stream().anyMatch(place -> each.cells().containsKey(new At(place, shown.id())))))
                .toList();
        if (filled.isEmpty()) {
            return List.of();
        }
        if (cases.size() == 1) {
            return List.of(new Sheet(single(title, what, filled, cases.getFirst()), what.isEmpty() ? 0 : 1));
        }
        if (what.isEmpty()) {
            return List.of(new Sheet(list(title, what, filled, cases), 1));
        }
        boolean bounds = filled.stream().flatMap(each -> each.cells().values().stream()).anyMatch(Table.Range.class::isInstance);
        if (list || bounds || filled.size() >= MANY) {
            return List.of(new Sheet(list(title, what, filled, cases), 2));
        }
        return filled.stream().map(each -> new Sheet(matrix(title.equalsIgnoreCase(each.label()) ? title
                : title + ": " + each.label(), what, each, cases), 1)).toList();
    }

    private Table single(String title, String what, List<Series> filled, Results.Shown only) {
        List<Table.Column> columns = new ArrayList<>();
        if (!what.isEmpty()) {
            columns.add(new Table.Column(what, false));
        }
        filled.forEach(each -> columns.add(new Table.Column(each.label(), numeric(each))));
        List<List<Table.Cell>> rows = new ArrayList<>();
        for (String place : places) {
            row(place, only, filled).ifPresent(cells -> {
                if (!what.isEmpty()) {
                    cells.addFirst(name(place));
                }
                rows.add(cells);
            });
        }
        return new Table(title, columns, rows);
    }

    private Table list(String title, String what, List<Series> filled, List<Results.Shown> cases) {
        List<Table.Column> columns = new ArrayList<>();
        if (!what.isEmpty()) {
            columns.add(new Table.Column(what, false));
        }
        columns.add(new Table.Column("condition", false));
        filled.forEach(each -> columns.add(new Table.Column(each.label(), numeric(each))));
        List<List<Table.Cell>> rows = new ArrayList<>();
        for (String place : places) {
            for (Results.Shown shown : cases) {
                row(place, shown, filled).ifPresent(cells -> {
                    cells.addFirst(new Table.Words(shown.id()));
                    if (!what.isEmpty()) {
                        cells.addFirst(name(place));
                    }
                    rows.add(cells);
                });
            }
        }
        return new Table(title, columns, rows);
    }

    /** Whether conditions go beneath each other rather than side by side, against so many other things. */
    static boolean beneath(int conditions, int others) {
        return conditions > MOST_COLUMNS && conditions > others;
    }

    private Table matrix(String title, String what, Series each, List<Results.Shown> cases) {
        List<Table.Column> columns = new ArrayList<>();
        List<List<Table.Cell>> rows = new ArrayList<>();
        if (beneath(cases.size(), places.size())) {
            columns.add(new Table.Column("condition", false));
            places.forEach(place -> columns.add(new Table.Column(name(place).text(), numeric(each))));
            for (Results.Shown shown : cases) {
                List<Table.Cell> cells = new ArrayList<>(List.of(new Table.Words(shown.id())));
                places.forEach(place -> cells.add(each.cells().getOrDefault(new At(place, shown.id()), new Table.Empty())));
                rows.add(cells);
            }
        } else {
            columns.add(new Table.Column(what, false));
            cases.forEach(shown -> columns.add(new Table.Column(shown.id(), numeric(each))));
            for (String place : places) {
                List<Table.Cell> cells = new ArrayList<>(List.of(name(place)));
                cases.forEach(shown -> cells.add(each.cells().getOrDefault(new At(place, shown.id()), new Table.Empty())));
                rows.add(cells);
            }
        }
        return new Table(title, columns, rows);
    }

    private static Optional<List<Table.Cell>> row(String place, Results.Shown shown, List<Series> filled) {
        List<Table.Cell> cells = new ArrayList<>();
        for (Series each : filled) {
            cells.add(each.cells().getOrDefault(new At(place, shown.id()), new Table.Empty()));
        }
        return cells.stream().allMatch(Table.Empty.class::isInstance) ? Optional.empty() : Optional.of(cells);
    }

    private static boolean numeric(Series each) {
        return each.cells().values().stream().anyMatch(cell -> cell instanceof Amount || cell instanceof Table.Range);
    }

    private static Table.Words name(String place) {
        return new Table.Words(place.isEmpty() ? "whole design" : place);
    }
}
