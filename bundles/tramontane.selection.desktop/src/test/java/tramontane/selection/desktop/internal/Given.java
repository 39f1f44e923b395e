package tramontane.selection.desktop.internal;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import tramontane.analysis.Amount;
import tramontane.analysis.Better;
import tramontane.analysis.Engine;
import tramontane.analysis.Figure;
import tramontane.analysis.FigureKind;
import tramontane.analysis.Finding;
import tramontane.analysis.Sentence;
import tramontane.analysis.Severity;
import tramontane.analysis.Table;
import tramontane.analysis.Verdict;
import tramontane.catalogue.Catalogue;
import tramontane.engine.internal.WiredEngine;
import tramontane.model.AirMover;
import tramontane.model.Condition;
import tramontane.model.Datasheet;
import tramontane.model.Design;
import tramontane.model.MoverCurve;
import tramontane.model.Quantities;
import tramontane.model.Quantity;
import tramontane.model.Requirement;
import tramontane.model.Value;
import tramontane.model.file.DesignFile;
import tramontane.physics.units.QuantityKind;
import tramontane.selection.Arrangement;
import tramontane.selection.Candidate;
import tramontane.selection.Criterion;
import tramontane.selection.Duty;
import tramontane.selection.Passed;
import tramontane.selection.Placement;
import tramontane.selection.Rejected;
import tramontane.selection.Selection;
import tramontane.selection.Selector;
import tramontane.selection.Space;
import tramontane.selection.Task;
import tramontane.selection.Watch;
import tramontane.selection.WishSection;
import tramontane.selection.internal.SelectorComponent;

/** Small designs, parts and answers for tests; every part is invented. */
final class Given {

    static final WiredEngine.Wired WIRED = WiredEngine.with(new WishSection());
    static final Engine ENGINE = WIRED.engine();
    static final Selector REAL = new SelectorComponent(ENGINE, WIRED.laws(), List.of());

    static final Criterion POWER = new Criterion(Criterion.POWER, "power", QuantityKind.POWER, Better.LOWER);
    static final Criterion COST = new Criterion(Criterion.COST, "price", QuantityKind.NUMBER, Better.LOWER);
    static final List<Criterion> CRITERIA = List.of(POWER, COST);
    static final FigureKind FLOW = new FigureKind("airflow.bank.flow", "flow", QuantityKind.FLOW, Better.HIGHER, "Flow of a bank.");

    private Given() {
    }

    static Design sample(String name) {
        return DesignFile.read(Path.of("../../product/samples/" + name + ".tramontane.json")).design().orElseThrow();
    }

    /** The catalogue that comes with the program. */
    static Catalogue shipped() {
        return Catalogue.read(List.of(Path.of("../../product/catalogue")), ENGINE.sectionTypes());
    }

    static AirMover part(String id, String maker, double width, Optional<Double> price) {
        MoverCurve curve = new MoverCurve(Optional.of(Quantity.of(300)), Optional.empty(), Optional.empty(), Optional.empty(), Quantities.of(0, 0.03, 0.06),
                Quantities.of(80, 60, 0), Optional.empty(), Optional.empty(), Value.Tree.EMPTY);
        AirMover plain = new AirMover(id, maker, Optional.of("axial"), Optional.of(Quantity.of(width)), Optional.of(Quantity.of(width)), Optional.of(Quantity.of(0.025)),
                Optional.empty(), Optional.of(Quantity.of(300)), Optional.empty(), List.of(curve), Value.Tree.EMPTY);
        Datasheet sheet = new Datasheet(Optional.empty(), Optional.of(Datasheet.CURRENT), Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty(),
                Optional.empty(), price.map(Quantity::of), price.map(each -> "EUR"), List.of());
        return new AirMover(plain.id(), plain.maker(), plain.type(), plain.width(), plain.height(), plain.depth(), plain.rotorDiameter(), plain.openArea(),
                plain.ratedSpeed(), plain.motor(), plain.noLoadSpeed(), plain.category(), plain.lockedLoss(), plain.freewheelingLoss(), plain.ratedPower(),
                plain.fixedLoss(), sheet, plain.curves(), plain.more());
    }

    static List<AirMover> parts() {
        return List.of(part("Garbin 40", "Garbin", 0.04, Optional.of(3.0)), part("Garbin 92", "Garbin", 0.092, Optional.of(8.5)),
                part("Garbin 120", "Garbin", 0.12, Optional.empty()), part("Suvel 120", "Suvel", 0.12, Optional.of(20.0)));
    }

    static Catalogue catalogue() {
        return Catalogue.of(parts(), ENGINE.sectionTypes());
    }

    static Design duty() {
        return Duty.design(Quantity.of(0.08), Quantity.of(60), Condition.NOMINAL);
    }

    static Task task() {
        return Task.of(duty(), Duty.BANK, parts(), Space.ANY).withWeights(Map.of(Criterion.POWER, 1.0, Criterion.COST, 1.0));
    }

    /** A candidate of a part with these values; its flow has a share to spare. */
    static Candidate candidate(AirMover part, int movers, double power, boolean front, double spare) {
        Arrangement arrangement = new Arrangement(movers, 1, 1, false);
        Map<String, Double> values = new LinkedHashMap<>(Map.of(Criterion.POWER, power));
        part.datasheet().price().ifPresent(price -> values.put(Criterion.COST, movers * price.si()));
        double steps = (POWER.steps(power) + (values.containsKey(Criterion.COST) ? COST.steps(values.get(Criterion.COST)) : 0)) / 2;
        Requirement requirement = new Requirement(FLOW.id(), Duty.BANK, Optional.of(Quantity.of(0.08)), Optional.empty(), List.of(), Value.Tree.EMPTY);
        Verdict verdict = new Verdict(requirement, "nominal", Severity.MET, Optional.of(Figure.of(FLOW, Duty.BANK, 0.08 * (1 + spare)).in("nominal")), 0.08 * spare, "");
        return new Candidate(part, arrangement, 0.9, 300 * power / 10, true, values, steps, values.containsKey(Criterion.COST) ? 0 : 1, front, Optional.of(verdict), 0,
                Placement.of(duty(), Duty.BANK, part, arrangement, 0.9), Optional.empty());
    }

    /** Three candidates, best first: 10 W and 3, 20 W and 8.5, 5 W and unknown. */
    static List<Candidate> candidates() {
        List<AirMover> parts = parts();
        return List.of(candidate(parts.get(0), 1, 10, true, 0.002), candidate(parts.get(1), 1, 20, false, 0.12), candidate(parts.get(2), 1, 5, true, 0.05));
    }

    static Rejected rejected() {
        return new Rejected("Suvel 120", Optional.of(Arrangement.SINGLE), Sentence.of("it gives ", new Amount(0.05, QuantityKind.FLOW), " where ",
                new Amount(0.08, QuantityKind.FLOW), " are needed"), OptionalDouble.of(1.6), true, Sentence.of("it would do with ", new Amount(0.6, QuantityKind.FRACTION), " more speed"));
    }

    static Selection selection(List<Candidate> ranked, boolean cancelled, Finding... findings) {
        return new Selection(List.of(), CRITERIA, ranked, ranked.stream().filter(Candidate::front).toList(), List.of(new Passed("Suvel 120", new Arrangement(2, 1, 1, false), 0.7)),
                List.of(rejected()), List.of(), new Selection.Counts(4, 4, 8, 4, 3, ranked.size(), 0), List.of(Sentence.of("the first takes least")), List.of(findings), cancelled);
    }

    static Choosing done() {
        return Choosing.started(task()).ended(selection(candidates(), false));
    }

    /** Finds three candidates and gives them as the answer; a stop is heeded after the first. */
    static final class Fake implements Selector {

        final List<Task> tasks = new ArrayList<>();
        Runnable afterFirst = () -> { };
        Optional<RuntimeException> fault = Optional.empty();
        Finding[] findings = {};

        @Override
        public Selection choose(Task task, Watch watch) {
            tasks.add(task);
            fault.ifPresent(each -> {
                throw each;
            });
            watch.progress(0.4, "judging candidates");
            List<Candidate> found = new ArrayList<>();
            // in another order than that of the list
            for (Candidate candidate : candidates().reversed()) {
                if (watch.cancelled()) {
                    return selection(found.stream().sorted(Candidate.BEST_FIRST).toList(), true);
                }
                found.add(candidate);
                watch.found(candidate);
                watch.judged(found.size(), 4);
                if (found.size() == 1) {
                    afterFirst.run();
                }
            }
            return selection(findings.length > 0 ? List.of() : candidates(), false, findings);
        }

        @Override
        public List<Table> compare(Task task, List<Candidate> candidates) {
            return List.of(new Table("Side by side", List.of(new Table.Column("what", false)), List.of(List.of(new Table.Words(candidates.size() + " candidates")))));
        }
    }
}
