package tramontane.cli.internal.output;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.BiFunction;
import tramontane.analysis.Figure;
import tramontane.analysis.FigureKind;
import tramontane.analysis.Severity;
import tramontane.analysis.Table;
import tramontane.analysis.Verdict;
import tramontane.cli.terminal.Numbers;
import tramontane.model.Quantity;
import tramontane.model.Requirement;
import tramontane.model.Value;
import tramontane.physics.units.QuantityKind;
import tramontane.physics.units.UnitException;
import tramontane.physics.units.UnitSystem;
import tramontane.physics.units.Units;

/** The requirements against the conditions. */
final class Requirements {

    private final Results results;
    private final UnitSystem units;

    Requirements(Results results, UnitSystem units) {
        this.results = results;
        this.units = units;
    }

    /** A row for each requirement, a column for each condition, or turned over; what is not required stays empty. */
    Optional<Grid.Sheet> sheet() {
        Set<Requirement> judged = new LinkedHashSet<>();
        results.evaluation().verdicts().forEach(verdict -> judged.add(verdict.requirement()));
        if (judged.isEmpty()) {
            return Optional.empty();
        }
        List<Requirement> requirements = List.copyOf(judged);
        List<String> conditions = results.conditions();
        List<String> names = requirements.stream().map(each -> words(each, judged)).toList();
        List<String> cases = conditions.stream().map(id -> id.isEmpty() ? "all conditions" : id).toList();
        Table table = Grid.beneath(conditions.size(), requirements.size())
                ? table("condition", cases, names, (row, column) -> cell(requirements.get(column), conditions.get(row)))
                : table("requirement", names, cases, (row, column) -> cell(requirements.get(row), conditions.get(column)));
        return Optional.of(new Grid.Sheet(table, 1));
    }

    private static Table table(String corner, List<String> rows, List<String> columns,
            BiFunction<Integer, Integer, Table.Cell> cells) {
        List<Table.Column> headings = new ArrayList<>(List.of(new Table.Column(corner, false)));
        columns.forEach(label -> headings.add(new Table.Column(label, false)));
        List<List<Table.Cell>> lines = new ArrayList<>();
        for (int row = 0; row < rows.size(); row++) {
            List<Table.Cell> line = new ArrayList<>(List.of(new Table.Words(rows.get(row))));
            for (int column = 0; column < columns.size(); column++) {
                line.add(cells.apply(row, column));
            }
            lines.add(line);
        }
        return new Table("Requirements", headings, lines);
    }

    private Table.Cell cell(Requirement requirement, String condition) {
        return results.evaluation().verdicts().stream().filter(verdict -> verdict.requirement().equals(requirement)
                && verdict.condition().equals(condition)).findFirst().map(this::cell).orElse(new Table.Empty());
    }

    /** A verdict that is not met, not judged or met with caution as a sentence of its own. */
    String sentence(Verdict verdict) {
        Requirement requirement = verdict.requirement();
        Optional<FigureKind> kind = results.kind(requirement.figure());
        String subject = kind.map(FigureKind::label).orElse(requirement.figure());
        if (verdict.severity() == Severity.NOT_JUDGED || verdict.figure().isEmpty()) {
            String place = requirement.place();
            return verdict.reason().contains(requirement.figure()) ? verdict.reason() : subject + (place.equals(Requirement.WORST) || place.isEmpty() ? ""
                    : " at " + place) + ": " + verdict.reason();
        }
        Figure figure = verdict.figure().get();
        List<String> limits = limits(requirement, kind);
        String bounds = verdict.severity() != Severity.CAUTION ? "" : figure.lower().isPresent() || figure.upper().isPresent()
                ? "; it may be " + bounds(figure) : "; " + verdict.reason();
        return subject + (figure.place().isEmpty() ? "" : " at " + figure.place()) + ": " + number(verdict, figure)
                + (limits.isEmpty() ? "" : " where " + String.join(" and ", limits) + " is required") + bounds;
    }

    private String bounds(Figure figure) {
        QuantityKind kind = figure.kind().quantity();
        String least = figure.lower().isPresent() ? Numbers.text(figure.lower().getAsDouble(), kind, units) : "";
        String most = figure.upper().isPresent() ? Numbers.text(figure.upper().getAsDouble(), kind, units) : "";
        return Numbers.together(least.isEmpty() ? "up to " + most : most.isEmpty() ? "down to " + least : least + " to " + most);
    }

    private Table.Cell cell(Verdict verdict) {
        String word = verdict.severity().word();
        return new Table.Words(verdict.figure().filter(figure -> verdict.severity() != Severity.NOT_JUDGED)
                .map(figure -> word + " " + value(verdict, figure)).orElse(word));
    }

    /** The value, and where it is from unless row and column say so. */
    private String value(Verdict verdict, Figure figure) {
        Requirement requirement = verdict.requirement();
        String text = number(verdict, figure);
        List<String> where = new ArrayList<>();
        if (requirement.place().equals(Requirement.WORST) && !figure.place().isEmpty()) {
            where.add(figure.place());
        }
        if (!figure.condition().isEmpty() && !figure.condition().equals(verdict.condition())) {
            where.add(Results.detail(verdict.condition(), figure.condition()));
        }
        return where.isEmpty() ? text : text + " (" + String.join("; ", where) + ")";
    }

    /** The value, with more digits if it misses a limit by a hair. */
    private String number(Verdict verdict, Figure figure) {
        double value = figure.value();
        QuantityKind kind = figure.kind().quantity();
        Requirement requirement = verdict.requirement();
        double missed = requirement.atLeast().map(limit -> si(limit, kind)).filter(limit -> value < limit)
                .or(() -> requirement.atMost().map(limit -> si(limit, kind)).filter(limit -> value > limit)).orElse(value);
        return Numbers.together(Numbers.unlike(value, missed, kind, units));
    }

    private String words(Requirement requirement, Set<Requirement> all) {
        Optional<FigureKind> kind = results.kind(requirement.figure());
        String label = kind.map(FigureKind::label).orElse(requirement.figure());
        boolean ambiguous = all.stream().map(Requirement::figure).distinct()
                .filter(id -> results.kind(id).map(FigureKind::label).orElse(id).equals(label)).count() > 1;
        String place = requirement.place();
        return (ambiguous ? label + " (" + requirement.figure() + ")" : label)
                + (!place.equals(Requirement.WORST) ? ", " + place : results.hasPlaces(requirement.figure()) ? ", worst place" : "")
                + (requirement.atLeast().isEmpty() && requirement.atMost().isEmpty() ? ""
                : ": " + String.join(", ", limits(requirement, kind)));
    }

    private List<String> limits(Requirement requirement, Optional<FigureKind> kind) {
        List<String> limits = new ArrayList<>();
        requirement.atLeast().ifPresent(limit -> limits.add("at least " + limit(limit, kind)));
        requirement.atMost().ifPresent(limit -> limits.add("at most " + limit(limit, kind)));
        return limits;
    }

    /** Read again now that its kind is known; where it does not fit, the engine has said so. */
    private static double si(Quantity limit, QuantityKind kind) {
        try {
            return limit.written() instanceof Value.Text text ? Units.parse(text.text(), kind) : limit.si();
        } catch (UnitException other) {
            return limit.si();
        }
    }

    private static boolean fits(Quantity limit, QuantityKind kind) {
        try {
            return !(limit.written() instanceof Value.Text text) || Double.isFinite(Units.parse(text.text(), kind));
        } catch (UnitException other) {
            return false;
        }
    }

    private String limit(Quantity limit, Optional<FigureKind> kind) {
        return kind.filter(known -> fits(limit, known.quantity())).map(known -> Numbers.together(
                Numbers.text(si(limit, known.quantity()), known.quantity(), units))).orElseGet(() -> switch (limit.written()) {
            case Value.Text text -> text.text();
            case Value.Num num -> num.literal();
            default -> Double.toString(limit.si());
        });
    }
}
