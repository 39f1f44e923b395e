package tramontane.selection.cli.internal;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import tramontane.analysis.Amount;
import tramontane.analysis.Better;
import tramontane.analysis.Evaluation;
import tramontane.analysis.Figure;
import tramontane.analysis.Finding;
import tramontane.analysis.Sentence;
import tramontane.analysis.Severity;
import tramontane.analysis.Table;
import tramontane.analysis.Verdict;
import tramontane.model.AirMover;
import tramontane.model.Quantity;
import tramontane.model.Requirement;
import tramontane.model.Value;
import tramontane.physics.units.QuantityKind;
import tramontane.selection.Arrangement;
import tramontane.selection.Candidate;
import tramontane.selection.Criterion;
import tramontane.selection.Need;
import tramontane.selection.Passed;
import tramontane.selection.Placement;
import tramontane.selection.Rejected;
import tramontane.selection.Selection;
import tramontane.selection.Selector;
import tramontane.selection.Task;
import tramontane.selection.Watch;

/** Ranks the parts in their order, whatever they can do; turns the last one down. */
final class FakeSelector implements Selector {

    static final List<Criterion> CRITERIA = List.of(new Criterion(Criterion.POWER, "power", QuantityKind.POWER, Better.LOWER, "input of the bank, the most in any condition"),
            new Criterion(Criterion.COST, "price", QuantityKind.NUMBER, Better.LOWER));

    final List<Task> tasks = new ArrayList<>();
    boolean none;
    /** Whether something that is required of the first cannot be judged. */
    boolean silent;
    boolean cancelled;
    List<Finding> findings = List.of();

    @Override
    public Selection choose(Task task, Watch watch) {
        tasks.add(task);
        watch.progress(0.5, "judging candidates");
        List<Candidate> ranked = new ArrayList<>();
        int last = task.parts().size() - 1;
        for (int i = 0; i < (none ? 0 : last); i++) {
            Candidate candidate = candidate(task, task.parts().get(i), i);
            candidate = silent && i == 0 ? unjudged(candidate) : candidate;
            ranked.add(candidate);
            watch.found(candidate);
        }
        Rejected rejected = new Rejected(task.parts().get(last).id(), Optional.of(Arrangement.SINGLE), Sentence.of("it gives ",
                new Amount(0.05, QuantityKind.FLOW), " where ", new Amount(0.08, QuantityKind.FLOW), " are needed"), OptionalDouble.of(1.6), true,
                Sentence.of("it would do at ", new Amount(1.6, QuantityKind.FRACTION), " of its speed"), OptionalDouble.of(0.75));
        return new Selection(List.of(new Need("nominal", Sentence.of("flow at least ", new Amount(0.08, QuantityKind.FLOW)), OptionalDouble.of(0.08),
                OptionalDouble.of(60), Optional.empty())), CRITERIA, ranked.stream().limit(task.listed()).toList(), ranked.stream().limit(1).toList(),
                List.of(new Passed("late", Arrangement.SINGLE, 0.7)), List.of(rejected, rejected), task.misses() > 0 ? List.of(rejected) : List.of(),
                new Selection.Counts(task.parts().size(), task.parts().size(), 8, 3, 3, ranked.size(), silent ? 1 : 0), List.of(Sentence.of("the first takes least power")),
                findings, cancelled);
    }

    private static Candidate candidate(Task task, AirMover part, int i) {
        Map<String, Double> values = new LinkedHashMap<>(Map.of(Criterion.POWER, 10.0 * (i + 1)));
        part.datasheet().price().ifPresent(price -> values.put(Criterion.COST, price.si()));
        Requirement requirement = new Requirement("airflow.bank.flow", task.bank(), Optional.of(Quantity.of(0.08)), Optional.empty(), List.of(), Value.Tree.EMPTY);
        Verdict verdict = new Verdict(requirement, "nominal", Severity.MET, Optional.of(Figure.of(FakeEngine.FLOW, task.bank(), 0.0801).in("nominal")), 0.0001, "");
        Arrangement arrangement = new Arrangement(2, 1, 1, false);
        return new Candidate(part, arrangement, 0.9 - 0.1 * i, 300, i != 1, values, i, part.datasheet().price().isEmpty() ? 1 : 0, i == 0,
                Optional.of(verdict), 0, Placement.of(task.design(), task.bank(), part, arrangement, 0.9 - 0.1 * i), Optional.empty());
    }

    /** The same with a flow at the grille that could not be computed on a hot day and a cold one. */
    private static Candidate unjudged(Candidate candidate) {
        Requirement requirement = new Requirement("airflow.bank.flow", "grille", Optional.of(Quantity.of(0.01)), Optional.empty(), List.of(), Value.Tree.EMPTY);
        List<Verdict> verdicts = Stream.of("hot day", "cold day").map(condition -> new Verdict(requirement, condition, Severity.NOT_JUDGED, Optional.empty(), 0,
                "there is no such figure at grille")).toList();
        return new Candidate(candidate.part(), candidate.arrangement(), candidate.setting(), candidate.speed(), candidate.adjustable(), candidate.values(),
                candidate.steps(), candidate.unknown(), candidate.front(), candidate.tightest(), 2, candidate.design(), Optional.of(new Evaluation(candidate.design(),
                List.of(), List.of(), List.of(), verdicts, false)));
    }

    @Override
    public List<Table> compare(Task task, List<Candidate> candidates) {
        List<Table.Column> columns = new ArrayList<>(List.of(new Table.Column("what", false)));
        List<Table.Cell> row = new ArrayList<>(List.of(new Table.Words("power")));
        candidates.forEach(candidate -> {
            columns.add(new Table.Column(candidate.part().id(), true));
            row.add(new Amount(candidate.values().get(Criterion.POWER), QuantityKind.POWER));
        });
        return List.of(new Table("Side by side", columns, List.of(row)));
    }
}
