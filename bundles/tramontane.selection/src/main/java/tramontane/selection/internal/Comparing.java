package tramontane.selection.internal;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;
import tramontane.analysis.Amount;
import tramontane.analysis.Better;
import tramontane.analysis.Evaluation;
import tramontane.analysis.Figure;
import tramontane.analysis.FigureKind;
import tramontane.analysis.Severity;
import tramontane.analysis.Table;
import tramontane.analysis.Verdict;
import tramontane.model.Requirement;
import tramontane.physics.units.QuantityKind;
import tramontane.physics.units.UnitSystem;
import tramontane.selection.Candidate;
import tramontane.selection.Criterion;
import tramontane.selection.Task;

/** Candidates side by side. */
final class Comparing {

    private static final String BANK = "airflow.bank.";

    private final Task task;
    private final List<Candidate> candidates;
    private final List<Criterion> criteria;

    private Comparing(Task task, List<Candidate> candidates, List<Criterion> criteria) {
        this.task = task;
        this.candidates = candidates;
        this.criteria = criteria;
    }

    /**
     * Tables with one column per candidate.
     *
     * @param task       where they come from
     * @param candidates listed ones
     * @param criteria   what they were ranked by
     */
    static List<Table> of(Task task, List<Candidate> candidates, List<Criterion> criteria) {
        Comparing comparing = new Comparing(task, candidates, criteria);
        List<Table> all = new ArrayList<>(List.of(comparing.byCriteria(), comparing.required()));
        comparing.reserved().ifPresent(all::add);
        all.add(comparing.duties());
        return all;
    }

    private List<Table.Column> columns(String... first) {
        List<Table.Column> columns = new ArrayList<>();
        for (String label : first) {
            columns.add(new Table.Column(label, false));
        }
        candidates.forEach(candidate -> columns.add(new Table.Column(candidate.words(), true)));
        return columns;
    }

    private Table byCriteria() {
        List<List<Table.Cell>> rows = new ArrayList<>();
        rows.add(row(candidate -> Optional.of(new Amount(candidate.setting(), QuantityKind.FRACTION)), "speed setting"));
        rows.add(row(candidate -> Optional.of(new Amount(candidate.speed(), QuantityKind.ROTATIONAL_SPEED)), "speed"));
        for (Criterion criterion : criteria) {
            rows.add(row(candidate -> Optional.ofNullable(candidate.values().get(criterion.id())).map(value -> new Amount(value, criterion.quantity())),
                    criterion.label() + (criterion.id().equals(Criterion.COST) ? currency() : "")));
        }
        return new Table("By what counts", columns(""), rows);
    }

    private String currency() {
        return candidates.stream().flatMap(candidate -> candidate.part().datasheet().currency().stream()).distinct().limit(1)
                .map(code -> ", " + code).collect(Collectors.joining());
    }

    private List<Table.Cell> row(Function<Candidate, Optional<Amount>> cell, String... first) {
        List<Table.Cell> row = new ArrayList<>();
        for (String label : first) {
            row.add(new Table.Words(label));
        }
        candidates.forEach(candidate -> row.add(cell.apply(candidate).<Table.Cell>map(amount -> amount).orElse(new Table.Empty())));
        return row;
    }

    private record Asked(Requirement requirement, String condition) {
    }

    private Map<Asked, FigureKind> asked() {
        Map<Asked, FigureKind> asked = new LinkedHashMap<>();
        candidates.forEach(candidate -> candidate.verdicts().forEach(verdict -> verdict.figure().ifPresent(figure ->
                asked.putIfAbsent(new Asked(verdict.requirement(), verdict.condition()), figure.kind()))));
        return asked;
    }

    private static Optional<Verdict> verdict(Candidate candidate, Asked asked) {
        return candidate.verdicts().stream().filter(verdict -> verdict.requirement().equals(asked.requirement())
                && verdict.condition().equals(asked.condition())).findFirst();
    }

    private static Figure worse(Figure one, Figure other) {
        return one.kind().better() == Better.LOWER ? one.value() >= other.value() ? one : other : one.value() <= other.value() ? one : other;
    }

    private Table required() {
        List<List<Table.Cell>> rows = new ArrayList<>();
        asked().forEach((asked, kind) -> rows.add(row(candidate -> verdict(candidate, asked).flatMap(Verdict::figure).map(figure ->
                new Amount(figure.value(), kind.quantity())), words(asked, kind), asked.condition())));
        return new Table("What is required", columns("requirement", "condition"), rows);
    }

    private static String words(Asked asked, FigureKind kind) {
        return Ask.of(asked.requirement(), kind).map(ask -> ask.words().in(UnitSystem.METRIC))
                .orElse(asked.requirement().figure());
    }

    /** What is met with caution only, or not judged. */
    private Optional<Table> reserved() {
        Set<List<String>> places = new LinkedHashSet<>();
        Map<List<String>, Map<Candidate, String>> said = new LinkedHashMap<>();
        for (Candidate candidate : candidates) {
            for (Verdict verdict : candidate.verdicts()) {
                if (verdict.severity() != Severity.MET) {
                    List<String> place = List.of(verdict.requirement().figure() + (verdict.requirement().place().equals(Requirement.WORST) ? ""
                            : " at " + verdict.requirement().place()), verdict.condition());
                    places.add(place);
                    said.computeIfAbsent(place, key -> new LinkedHashMap<>()).put(candidate, verdict.severity().word());
                }
            }
        }
        List<List<Table.Cell>> rows = new ArrayList<>();
        for (List<String> place : places) {
            List<Table.Cell> row = new ArrayList<>(List.of(new Table.Words(place.get(0)), new Table.Words(place.get(1))));
            candidates.forEach(candidate -> row.add(new Table.Words(said.get(place).getOrDefault(candidate, Severity.MET.word()))));
            rows.add(row);
        }
        return rows.isEmpty() ? Optional.empty() : Optional.of(new Table("Met with caution, or not judged", columns("requirement", "condition").stream()
                .map(column -> new Table.Column(column.label(), false)).toList(), rows));
    }

    /** Where they work in every condition; in one that stands for several cases, in the worst of them. */
    private Table duties() {
        Map<List<String>, Map<Candidate, Figure>> figures = new LinkedHashMap<>();
        for (Candidate candidate : candidates) {
            Map<String, String> declared = new HashMap<>();
            candidate.evaluation().map(Evaluation::cases).orElse(List.of()).forEach(each -> declared.put(each.concrete().id(), each.declared()));
            for (Figure figure : candidate.evaluation().map(Evaluation::figures).orElse(List.of())) {
                if (figure.kind().id().startsWith(BANK) && figure.place().equals(task.bank())) {
                    figures.computeIfAbsent(List.of(figure.kind().label(), declared.getOrDefault(figure.condition(), figure.condition())),
                            key -> new LinkedHashMap<>()).merge(candidate, figure, Comparing::worse);
                }
            }
        }
        List<List<Table.Cell>> rows = new ArrayList<>();
        List<String> labels = figures.keySet().stream().map(List::getFirst).distinct().toList();
        figures.entrySet().stream().sorted((a, b) -> labels.indexOf(a.getKey().getFirst()) - labels.indexOf(b.getKey().getFirst()))
                .forEach(entry -> rows.add(row(candidate -> Optional.ofNullable(entry.getValue().get(candidate)).map(figure ->
                        new Amount(figure.value(), figure.kind().quantity())), entry.getKey().get(0), entry.getKey().get(1))));
        return new Table("Where they work", columns("figure", "condition"), rows);
    }
}
