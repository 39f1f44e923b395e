package tramontane.cli.internal.output;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import tramontane.analysis.Figure;
import tramontane.analysis.FigureKind;
import tramontane.analysis.Severity;
import tramontane.analysis.Table;
import tramontane.analysis.Verdict;
import tramontane.model.Quantity;
import tramontane.model.Requirement;
import tramontane.model.Value;
import tramontane.physics.units.UnitSystem;

/** The requirements against the conditions. */
final class Requirements {

    private final Results results;
    private final UnitSystem units;

    Requirements(Results results, UnitSystem units) {
        this.results = results;
        this.units = units;
    }

    /** A row for each requirement, a column for each condition; what is not required stays empty. */
    Optional<Grid.Sheet> sheet() {
        Set<Requirement> judged = new LinkedHashSet<>();
        results.evaluation().verdicts().forEach(verdict -> judged.add(verdict.requirement()));
        if (judged.isEmpty()) {
            return Optional.empty();
        }
        List<String> conditions = results.conditions();
        List<Table.Column> columns = new ArrayList<>(List.of(new Table.Column("requirement", false)));
        conditions.forEach(id -> columns.add(new Table.Column(id.isEmpty() ? "all conditions" : id, false)));
        List<List<Table.Cell>> rows = new ArrayList<>();
        for (Requirement requirement : judged) {
            List<Table.Cell> cells = new ArrayList<>(List.of(new Table.Words(words(requirement, judged))));
            for (String condition : conditions) {
                cells.add(results.evaluation().verdicts().stream().filter(verdict -> verdict.requirement().equals(requirement)
                        && verdict.condition().equals(condition)).findFirst().<Table.Cell>map(this::cell)
                        .orElse(new Table.Empty()));
            }
            rows.add(cells);
        }
        return Optional.of(new Grid.Sheet(new Table("Requirements", columns, rows), 1));
    }

    private Table.Cell cell(Verdict verdict) {
        String word = verdict.severity().word();
        return new Table.Words(verdict.figure().filter(figure -> verdict.severity() != Severity.NOT_JUDGED)
                .map(figure -> word + " " + value(verdict, figure)).orElse(word));
    }

    /** The value, and where it is from unless row and column say so. */
    private String value(Verdict verdict, Figure figure) {
        Requirement requirement = verdict.requirement();
        double value = figure.value();
        Optional<Quantity> missed = requirement.atLeast().filter(limit -> value < limit.si())
                .or(() -> requirement.atMost().filter(limit -> value > limit.si()));
        String text = Numbers.unlike(value, missed.map(Quantity::si).orElse(value), figure.kind().quantity(), units);
        List<String> where = new ArrayList<>();
        if (requirement.place().equals(Requirement.WORST) && !figure.place().isEmpty()) {
            where.add(figure.place());
        }
        if (!figure.condition().isEmpty() && !figure.condition().equals(verdict.condition())) {
            where.add(Results.detail(verdict.condition(), figure.condition()));
        }
        return where.isEmpty() ? text : text + " (" + String.join("; ", where) + ")";
    }

    private String words(Requirement requirement, Set<Requirement> all) {
        Optional<FigureKind> kind = results.kind(requirement.figure());
        String label = kind.map(FigureKind::label).orElse(requirement.figure());
        boolean ambiguous = all.stream().map(Requirement::figure).distinct()
                .filter(id -> results.kind(id).map(FigureKind::label).orElse(id).equals(label)).count() > 1;
        String place = requirement.place();
        return (ambiguous ? label + " (" + requirement.figure() + ")" : label)
                + (place.equals(Requirement.WORST) ? ", worst place" : place.isEmpty() ? "" : ", " + place)
                + limits(requirement, kind);
    }

    private String limits(Requirement requirement, Optional<FigureKind> kind) {
        List<String> limits = new ArrayList<>();
        requirement.atLeast().ifPresent(limit -> limits.add("at least " + limit(limit, kind)));
        requirement.atMost().ifPresent(limit -> limits.add("at most " + limit(limit, kind)));
        return limits.isEmpty() ? "" : ": " + String.join(", ", limits);
    }

    private String limit(Quantity limit, Optional<FigureKind> kind) {
        return kind.map(known -> Numbers.text(limit.si(), known.quantity(), units)).orElseGet(() -> switch (limit.written()) {
            case Value.Text text -> text.text();
            case Value.Num num -> num.literal();
            default -> Double.toString(limit.si());
        });
    }
}
