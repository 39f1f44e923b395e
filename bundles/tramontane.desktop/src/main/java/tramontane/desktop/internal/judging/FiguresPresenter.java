package tramontane.desktop.internal.judging;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import tramontane.analysis.Amount;
import tramontane.analysis.Evaluation;
import tramontane.analysis.Figure;
import tramontane.analysis.FigureKind;
import tramontane.analysis.Overview;
import tramontane.analysis.Table;
import tramontane.desktop.FigureKey;
import tramontane.desktop.FigureText;
import tramontane.desktop.Results.Known;
import tramontane.desktop.Scene;
import tramontane.desktop.Sheet;
import tramontane.model.Design;
import tramontane.physics.units.UnitSystem;

/** Lays figures out by place and case, and the tables that analyses lay out themselves. */
final class FiguresPresenter {

    static final String FIGURE = "figure";
    static final String PLACE = "place";
    static final String UNIT = "unit";
    private static final String CASE = "case ";
    private static final String UP = "▲ ";
    private static final String DOWN = "▼ ";

    private Design design;
    private Places places;

    /** The same figure at the same place. */
    private record Line(FigureKind kind, String place, Map<String, Known<Figure>> byCase) {
    }

    /** A table of an analysis, of this state of the design or an earlier one. */
    private record Laid(Table table, boolean stale) {
    }

    /**
     * The figures of a scene.
     *
     * @param kinds  the figures that anything loaded can give, in the order to show them
     * @param wanted what is to be seen
     */
    Figures of(Scene scene, List<FigureKind> kinds, Figures.Wanted wanted) {
        Map<String, Laid> laid = laid(scene);
        List<String> titles = new ArrayList<>(List.of(Figures.ALL));
        titles.addAll(laid.keySet());
        Laid one = laid.get(wanted.table());
        return one == null ? all(scene, kinds, wanted, titles) : overview(scene, one, wanted, titles);
    }

    /** Tables that analyses lay out themselves, of the case in front and of the design as a whole. */
    private static Map<String, Laid> laid(Scene scene) {
        Map<String, Laid> laid = new LinkedHashMap<>();
        Set<List<String>> again = new HashSet<>();
        scene.results().now().ifPresent(now -> now.outcomes().forEach(outcome -> {
            again.add(List.of(outcome.analysis(), outcome.condition()));
            add(laid, outcome, scene, false);
        }));
        scene.results().before().ifPresent(before -> before.outcomes().stream()
                .filter(outcome -> !again.contains(List.of(outcome.analysis(), outcome.condition()))).forEach(outcome -> add(laid, outcome, scene, scene.results().late())));
        return laid;
    }

    private static void add(Map<String, Laid> laid, Evaluation.Outcome outcome, Scene scene, boolean stale) {
        if (outcome.condition().isEmpty() || outcome.condition().equals(scene.front())) {
            for (Overview overview : outcome.result().overviews()) {
                String title = overview.table().title();
                for (int n = 2; laid.containsKey(title); n++) {
                    title = overview.table().title() + " (" + n + ")";
                }
                laid.put(title, new Laid(overview.table(), stale));
            }
        }
    }

    private Figures overview(Scene scene, Laid laid, Figures.Wanted wanted, List<String> titles) {
        List<Sheet.Column> columns = new ArrayList<>();
        Table table = laid.table();
        for (int i = 0; i < table.columns().size(); i++) {
            Table.Column each = table.columns().get(i);
            String key = table.title() + " " + i;
            columns.add(new Sheet.Column(key, (wanted.by().equals(key) ? wanted.down() ? DOWN : UP : "") + each.label(), each.numeric(), false,
                    each.label()));
        }
        List<Integer> order = new ArrayList<>();
        for (int i = 0; i < table.rows().size(); i++) {
            order.add(i);
        }
        for (int i = 0; i < columns.size(); i++) {
            if (columns.get(i).key().equals(wanted.by())) {
                int at = i;
                Comparator<Integer> by = Comparator.comparing((Integer row) -> value(table.rows().get(row).get(at)))
                        .thenComparing(row -> text(table.rows().get(row).get(at), scene.units()));
                order.sort(wanted.down() ? by.reversed() : by);
            }
        }
        List<Sheet.Row> rows = new ArrayList<>();
        for (int index : order) {
            List<Sheet.Cell> cells = table.rows().get(index).stream().map(cell -> Sheet.Cell.of(text(cell, scene.units())).stale(laid.stale())).toList();
            if (says(cells.stream().map(Sheet.Cell::text).reduce("", (a, b) -> a + " " + b), wanted.text())) {
                rows.add(new Sheet.Row(List.of(table.title(), index), cells));
            }
        }
        return new Figures(new Sheet(columns, rows), Map.of(), titles, table.rows().size(), empty(scene, rows.size(), table.rows().size()));
    }

    private static double value(Table.Cell cell) {
        return switch (cell) {
            case Amount amount -> amount.si();
            case Table.Range range -> range.from().si();
            case Table.Words words -> Double.MAX_VALUE;
            case Table.Empty empty -> Double.POSITIVE_INFINITY;
        };
    }

    private static String text(Table.Cell cell, UnitSystem units) {
        return switch (cell) {
            case Amount amount -> FigureText.brief(amount.si(), amount.quantity(), units);
            case Table.Range range -> FigureText.brief(range.from().si(), range.from().quantity(), units) + " to "
                    + FigureText.brief(range.to().si(), range.to().quantity(), units);
            case Table.Words words -> words.text();
            case Table.Empty empty -> "";
        };
    }

    private Figures all(Scene scene, List<FigureKind> kinds, Figures.Wanted wanted, List<String> titles) {
        if (scene.document().design() != design) {
            design = scene.document().design();
            places = Places.of(design);
        }
        Map<List<String>, Line> lines = new LinkedHashMap<>();
        Map<FigureKey, Figure> figures = new HashMap<>();
        Set<String> cases = new LinkedHashSet<>();
        scene.results().cases().forEach(each -> cases.add(each.concrete().id()));
        boolean whole = false;
        for (Known<Figure> each : scene.results().figures()) {
            Figure figure = each.value();
            lines.computeIfAbsent(List.of(figure.kind().id(), figure.place()), key -> new Line(figure.kind(), figure.place(), new HashMap<>()))
                    .byCase().putIfAbsent(figure.condition(), each);
            figures.putIfAbsent(FigureKey.of(figure), figure);
            whole |= figure.condition().isEmpty();
        }
        List<String> conditions = new ArrayList<>(cases);
        if (whole) {
            conditions.add("");
        }
        Map<String, Integer> ranks = new HashMap<>();
        kinds.forEach(kind -> ranks.putIfAbsent(kind.id(), ranks.size()));
        List<Line> order = new ArrayList<>(lines.values());
        // not as they come in, so that no row moves while new ones take the place of stale ones
        order.sort(Comparator.comparing((Line line) -> ranks.getOrDefault(line.kind().id(), Integer.MAX_VALUE)).thenComparing(line -> line.kind().id())
                .thenComparing(line -> places.rank(line.place())).thenComparing(Line::place));
        comparator(wanted.by()).ifPresent(by -> order.sort(wanted.down() ? by.reversed() : by));
        List<Sheet.Row> rows = new ArrayList<>();
        for (Line line : order) {
            if (says(line.kind().label() + " " + line.place() + " " + line.kind().id(), wanted.text())) {
                rows.add(row(line, conditions, scene.units()));
            }
        }
        return new Figures(new Sheet(columns(scene, conditions, wanted), rows), figures, titles, lines.size(), empty(scene, rows.size(), lines.size()));
    }

    private static String empty(Scene scene, int shown, int all) {
        return shown > 0 ? "" : all > 0 ? "Nothing of " + all + (all == 1 ? " row" : " rows") + " has these words."
                : scene.results().running() ? "Computing…" : "Nothing was computed yet. All figures of all conditions are listed here.";
    }

    private static List<Sheet.Column> columns(Scene scene, List<String> conditions, Figures.Wanted wanted) {
        List<Sheet.Column> columns = new ArrayList<>();
        for (String each : List.of(FIGURE, PLACE, UNIT)) {
            columns.add(new Sheet.Column(each, (wanted.by().equals(each) ? wanted.down() ? DOWN : UP : "") + each, false, false, ""));
        }
        for (String each : conditions) {
            String key = CASE + each;
            columns.add(new Sheet.Column(key, (wanted.by().equals(key) ? wanted.down() ? DOWN : UP : "") + (each.isEmpty() ? "whole design" : each),
                    true, !each.isEmpty() && each.equals(scene.front()), each));
        }
        return columns;
    }

    private static Optional<Comparator<Line>> comparator(String by) {
        return switch (by) {
            case "" -> Optional.empty();
            case FIGURE -> Optional.of(Comparator.comparing(line -> line.kind().label()));
            case PLACE -> Optional.of(Comparator.comparing(Line::place));
            case UNIT -> Optional.of(Comparator.comparing(line -> line.kind().quantity().name()));
            default -> !by.startsWith(CASE) ? Optional.empty() : Optional.of(Comparator
                    // numbers of different quantities do not compare
                    .comparing((Line line) -> line.kind().quantity().name())
                    .thenComparing(line -> Optional.ofNullable(line.byCase().get(by.substring(CASE.length()))).map(known -> known.value().value())
                            .orElse(Double.POSITIVE_INFINITY)));
        };
    }

    private static Sheet.Row row(Line line, List<String> conditions, UnitSystem units) {
        List<String> texts = conditions.stream().map(each -> Optional.ofNullable(line.byCase().get(each))
                .map(known -> FigureText.brief(known.value(), units)).orElse("")).toList();
        Set<String> shown = new HashSet<>();
        texts.stream().filter(text -> !text.isEmpty()).forEach(text -> shown.add(unit(text)));
        // a time may be in minutes here and in hours there
        boolean alike = shown.size() == 1;
        boolean stale = line.byCase().values().stream().allMatch(Known::stale);
        String label = line.kind().label();
        List<Sheet.Cell> cells = new ArrayList<>(Stream.of(label, line.place(), alike ? shown.iterator().next() : "")
                .map(text -> Sheet.Cell.of(text).stale(stale)).toList());
        for (int i = 0; i < conditions.size(); i++) {
            Known<Figure> known = line.byCase().get(conditions.get(i));
            String text = texts.get(i);
            cells.add(known == null ? Sheet.Cell.EMPTY : Sheet.Cell.of(alike ? text.substring(0, text.length() - unit(text).length()).strip() : text)
                    .stale(known.stale()).figure(FigureKey.of(known.value())));
        }
        return new Sheet.Row(List.of(line.kind().id(), line.place()), cells);
    }

    private static String unit(String text) {
        int space = text.indexOf(' ');
        return space > 0 ? text.substring(space + 1) : text.endsWith("°") ? "°" : "";
    }

    private static boolean says(String words, String text) {
        String all = words.toLowerCase(Locale.ROOT);
        for (String word : text.toLowerCase(Locale.ROOT).strip().split("\\s+")) {
            if (!all.contains(word)) {
                return false;
            }
        }
        return true;
    }
}
