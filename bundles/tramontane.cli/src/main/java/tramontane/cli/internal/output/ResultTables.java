package tramontane.cli.internal.output;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import tramontane.analysis.Engine;
import tramontane.analysis.Evaluation;
import tramontane.analysis.Figure;
import tramontane.analysis.FigureKind;
import tramontane.analysis.OperatingPoint;
import tramontane.analysis.Overview;
import tramontane.analysis.Table;
import tramontane.model.Bay;
import tramontane.model.Design;
import tramontane.model.HeatSource;
import tramontane.model.Passage;
import tramontane.physics.units.QuantityKind;

/**
 * The tables of duty points, of flows, those that an analysis lays out itself, and of all other figures of any analysis.
 *
 * <p>Figures of an analysis that nobody here knows are grouped by what their places are: those of banks in one table, those of
 * bays in another. What the duty points show already is not shown again, nor what an analysis says that its own tables
 * show.
 */
final class ResultTables {

    private final Results results;
    private final List<Results.Shown> cases;
    private final Set<Seen> seen = new HashSet<>();
    private final Set<Laid> laid = new HashSet<>();
    private final List<Grid.Sheet> sheets = new ArrayList<>();

    private record Seen(String place, String condition, QuantityKind quantity, double value) {
    }

    /** A figure that an analysis's own table shows in a case; in all where the case is empty. */
    private record Laid(String figure, String condition) {
    }

    private record Group(String analysis, Places places, boolean allConditions) {
    }

    /** What the places of a figure are. */
    private enum Places {
        BANKS("bank", "banks"), PASSAGES("passage", "passages"), BAYS("bay", "bays"), HEAT_SOURCES("heat source",
                "heat sources"), WHOLE("", "whole design"), OTHERS("place", "");

        private final String one;
        private final String many;

        Places(String one, String many) {
            this.one = one;
            this.many = many;
        }
    }

    private ResultTables(Results results) {
        this.results = results;
        this.cases = results.shown();
    }

    static List<Grid.Sheet> of(Results results) {
        ResultTables tables = new ResultTables(results);
        tables.dutyPoints();
        tables.flows();
        tables.overviews();
        tables.figures();
        return List.copyOf(tables.sheets);
    }

    private void dutyPoints() {
        Grid grid = new Grid();
        for (Results.Shown shown : cases) {
            results.point(shown.id()).ifPresent(point -> point.banks().forEach(bank -> dutyPoint(grid, shown.id(), bank)));
        }
        boolean failed = cases.stream().flatMap(shown -> results.point(shown.id()).stream())
                .flatMap(point -> point.banks().stream()).flatMap(bank -> bank.movers().stream())
                .anyMatch(mover -> !mover.running());
        if (failed) {
            for (Results.Shown shown : cases) {
                results.point(shown.id()).ifPresent(point -> point.banks().forEach(bank -> running(grid, shown.id(), bank)));
            }
        }
        sheets.addAll(grid.sheets("Duty points", "bank", cases, true));
    }

    private void dutyPoint(Grid grid, String condition, OperatingPoint.BankPoint bank) {
        put(grid, "flow", QuantityKind.FLOW, bank.bank(), condition, bank.flow());
        put(grid, "pressure", QuantityKind.PRESSURE, bank.bank(), condition, bank.pressure());
        put(grid, "speed", QuantityKind.ROTATIONAL_SPEED, bank.bank(), condition, bank.speed());
        bank.power().ifPresent(power -> put(grid, "power", QuantityKind.POWER, bank.bank(), condition, power));
        grid.put("stable", bank.bank(), condition, new Table.Words(bank.stable() ? "yes" : "no"));
    }

    private static void running(Grid grid, String condition, OperatingPoint.BankPoint bank) {
        long running = bank.movers().stream().filter(OperatingPoint.MoverPoint::running).count();
        grid.put("running", bank.bank(), condition, new Table.Words(running + " of " + bank.movers().size()));
    }

    private void flows() {
        Grid flows = new Grid();
        Grid drops = new Grid();
        boolean backwards = false;
        Grid both = cases.size() == 1 ? flows : drops;
        for (Results.Shown shown : cases) {
            for (OperatingPoint.PassageFlow passage : results.point(shown.id()).map(OperatingPoint::passages)
                    .orElse(List.of())) {
                put(flows, "flow", QuantityKind.FLOW, passage.passage(), shown.id(), passage.flow());
                put(both, "pressure drop", QuantityKind.PRESSURE, passage.passage(), shown.id(), passage.drop());
                backwards = backwards || passage.flow() < 0;
            }
        }
        String title = backwards ? "Passages (negative: from its second bay to its first)" : "Passages";
        sheets.addAll(flows.sheets(title, "passage", cases, false));
        if (both != flows) {
            sheets.addAll(drops.sheets("Passages", "passage", cases, false));
        }
    }

    private void put(Grid grid, String label, QuantityKind quantity, String place, String condition, double value) {
        grid.put(label, quantity, place, condition, value);
        seen.add(new Seen(place, condition, quantity, value));
    }

    private void overviews() {
        Set<String> shownIds = shownIds();
        Evaluation evaluation = results.evaluation();
        // what is said of the whole design speaks of conditions that nobody asked for, where only some were
        boolean all = evaluation.cases().stream().map(Engine.Case::declared).distinct().count()
                >= evaluation.design().workingConditions().size();
        for (Evaluation.Outcome outcome : evaluation.outcomes()) {
            for (Overview overview : outcome.result().overviews()) {
                Table table = overview.table();
                if (shownIds.contains(outcome.condition()) && (all || !outcome.condition().isEmpty()) && !table.rows().isEmpty()) {
                    overview.figures().forEach(figure -> laid.add(new Laid(figure, outcome.condition())));
                    boolean named = !outcome.condition().isEmpty() && results.evaluation().cases().size() > 1;
                    int keys = (int) table.columns().stream().limit(2).takeWhile(column -> !column.numeric()).count();
                    sheets.add(new Grid.Sheet(named ? new Table(table.title() + ", " + outcome.condition(), table.columns(),
                            table.rows()) : table, keys));
                }
            }
        }
    }

    private boolean isLaidOut(Figure figure) {
        return laid.contains(new Laid(figure.kind().id(), "")) || laid.contains(new Laid(figure.kind().id(), figure.condition()));
    }

    /** The cases that are shown, and that of the design as a whole. */
    private Set<String> shownIds() {
        Set<String> ids = new HashSet<>(List.of(""));
        cases.forEach(shown -> ids.add(shown.id()));
        return ids;
    }

    private void figures() {
        Set<String> shownIds = shownIds();
        Map<FigureKind, List<Figure>> byKind = new LinkedHashMap<>();
        Map<FigureKind, String> givers = new HashMap<>();
        for (Evaluation.Outcome outcome : results.evaluation().outcomes()) {
            for (Figure figure : outcome.result().figures()) {
                if (shownIds.contains(figure.condition()) && !isLaidOut(figure)) {
                    byKind.computeIfAbsent(figure.kind(), kind -> new ArrayList<>()).add(figure);
                    givers.putIfAbsent(figure.kind(), outcome.analysis());
                }
            }
        }
        Map<Group, Grid> grids = new LinkedHashMap<>();
        byKind.forEach((kind, figures) -> {
            boolean shown = figures.stream().allMatch(this::alreadyShown);
            if (!shown || figures.stream().anyMatch(figure -> figure.lower().isPresent() || figure.upper().isPresent())) {
                boolean allConditions = figures.stream().allMatch(figure -> figure.condition().isEmpty());
                Grid grid = grids.computeIfAbsent(new Group(givers.get(kind), places(figures), allConditions),
                        group -> new Grid());
                for (Figure figure : figures) {
                    if (!shown) {
                        grid.put(figure);
                    }
                    grid.putBounds(figure);
                }
            }
        });
        List<Results.Shown> whole = List.of(new Results.Shown("", "", 1));
        grids.forEach((group, grid) -> sheets.addAll(
                grid.sheets(title(group), group.places().one, group.allConditions() ? whole : cases, false)));
    }

    private Places places(List<Figure> figures) {
        Set<String> ids = figures.stream().map(Figure::place).collect(Collectors.toSet());
        Design design = results.evaluation().design();
        List<String> bays = Stream.concat(design.airPath().bays().stream().map(Bay::id), Stream.of(Bay.OUTSIDE)).toList();
        return ids.equals(Set.of("")) ? Places.WHOLE
                : design.airPath().banks().stream().map(Passage::id).toList().containsAll(ids) ? Places.BANKS
                : design.airPath().passages().stream().map(Passage::id).toList().containsAll(ids) ? Places.PASSAGES
                : bays.containsAll(ids) ? Places.BAYS
                : design.heatSources().stream().map(HeatSource::id).toList().containsAll(ids) ? Places.HEAT_SOURCES
                : Places.OTHERS;
    }

    private boolean alreadyShown(Figure figure) {
        return seen.contains(new Seen(figure.place(), figure.condition(), figure.kind().quantity(), figure.value()));
    }

    private String title(Group group) {
        String label = results.label(group.analysis());
        String title = label.isEmpty() ? label : Character.toUpperCase(label.charAt(0)) + label.substring(1);
        return group.places().many.isEmpty() ? title : title + ", " + group.places().many;
    }
}
