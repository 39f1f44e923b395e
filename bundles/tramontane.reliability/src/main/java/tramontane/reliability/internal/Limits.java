package tramontane.reliability.internal;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import tramontane.analysis.Cases;
import tramontane.analysis.Engine;
import tramontane.analysis.Evaluation;
import tramontane.analysis.Figure;
import tramontane.analysis.FigureKind;
import tramontane.analysis.Judgement;
import tramontane.analysis.Result;
import tramontane.analysis.Run;
import tramontane.analysis.Scope;
import tramontane.analysis.Severity;
import tramontane.analysis.Verdict;
import tramontane.model.Condition;
import tramontane.model.Design;
import tramontane.model.FailedMover;
import tramontane.model.MissionPhase;
import tramontane.model.Requirement;
import tramontane.physics.units.QuantityKind;

/**
 * What must hold with movers failed: limits of temperatures and flows, asked of whoever gives them.
 *
 * <p>Written requirements count in the conditions that the design names for that, else in those that let movers fail, else in all; there
 * and in every phase of the mission the limits of heat sources count, too.
 */
final class Limits {

    /** Kinds of quantity that tell whether something is cooled. */
    private static final Set<QuantityKind> COUNTED = Set.of(QuantityKind.TEMPERATURE, QuantityKind.TEMPERATURE_DIFFERENCE, QuantityKind.FLOW, QuantityKind.MASS_FLOW);
    private static final String WHAT_IF = "reliability, what if";

    private final Design design;
    private final Run run;
    private final List<Condition> judged;
    private final List<Condition> others;
    private final Set<String> figures = new LinkedHashSet<>();
    private List<Requirement> counted;

    Limits(Scene scene, Run run) {
        this.design = scene.design();
        this.run = run;
        List<Condition> all = design.workingConditions();
        List<Condition> failing = all.stream().filter(condition -> !condition.failed().isEmpty()).toList();
        List<Condition> named = all.stream().filter(condition -> scene.service().conditions().contains(condition.id())).toList();
        judged = !named.isEmpty() ? named : !failing.isEmpty() ? failing : all;
        Set<String> phases = new LinkedHashSet<>(Scene.phases(design).stream().map(MissionPhase::condition).toList());
        others = all.stream().filter(condition -> phases.contains(condition.id()) && !judged.contains(condition)).toList();
        counted = design.requirements().stream().filter(requirement -> !requirement.figure().startsWith("reliability.")
                && judged.stream().anyMatch(condition -> requirement.appliesIn(condition.id()))).toList();
        counted.forEach(requirement -> figures.add(requirement.figure()));
        if (design.heatSources().stream().anyMatch(source -> source.limit().isPresent())) {
            figures.add(Judgement.COMPONENT_TEMPERATURE);
        }
    }

    /** Names of the conditions in which written requirements count. */
    List<String> conditions() {
        return judged.stream().map(Condition::id).toList();
    }

    /**
     * Which limit is passed with these movers failed.
     *
     * @param passed the limit in words; empty where all are kept
     * @param known  whether all could be computed
     * @param any    whether any limit counts
     */
    record Answer(Optional<String> passed, boolean known, boolean any) {
    }

    /** Asks with nothing failed, and leaves out from then on what does not tell whether something is cooled. */
    Answer whole() {
        Map<String, FigureKind> kinds = new LinkedHashMap<>();
        for (Condition condition : judged) {
            for (String id : figures) {
                run.check();
                run.figures(design, condition.with(condition.id(), List.of()), id).stream().findFirst().ifPresent(figure -> kinds.putIfAbsent(id, figure.kind()));
            }
        }
        for (Condition condition : others) {
            if (figures.contains(Judgement.COMPONENT_TEMPERATURE) && !kinds.containsKey(Judgement.COMPONENT_TEMPERATURE)) {
                run.figures(design, condition.with(condition.id(), List.of()), Judgement.COMPONENT_TEMPERATURE).stream().findFirst()
                        .ifPresent(figure -> kinds.putIfAbsent(figure.kind().id(), figure.kind()));
            }
        }
        figures.removeIf(id -> !kinds.containsKey(id) || !COUNTED.contains(kinds.get(id).quantity()));
        counted = counted.stream().filter(requirement -> figures.contains(requirement.figure())).toList();
        return with(List.of());
    }

    /** Asks with movers failed; {@link #whole} first. */
    Answer with(List<FailedMover> failed) {
        if (figures.isEmpty()) {
            return new Answer(Optional.empty(), true, false);
        }
        for (Condition condition : judged) {
            Optional<Answer> bad = in(condition, failed, counted);
            if (bad.isPresent()) {
                return bad.get();
            }
        }
        for (Condition condition : others) {
            Optional<Answer> bad = in(condition, failed, List.of());
            if (bad.isPresent()) {
                return bad.get();
            }
        }
        return new Answer(Optional.empty(), true, true);
    }

    private Optional<Answer> in(Condition declared, List<FailedMover> failed, List<Requirement> requirements) {
        Condition condition = declared.with(declared.id(), failed);
        List<Figure> found = new ArrayList<>();
        Map<String, FigureKind> kinds = new LinkedHashMap<>();
        for (String id : figures) {
            run.check();
            if (id.equals(Judgement.COMPONENT_TEMPERATURE) || requirements.stream().anyMatch(requirement -> requirement.figure().equals(id))) {
                List<Figure> some = run.figures(design, condition, id).stream().filter(figure -> figure.condition().isEmpty() || figure.condition().equals(condition.id())).toList();
                if (some.isEmpty()) {
                    return Optional.of(new Answer(Optional.of("no answer in " + declared.id()), false, true));
                }
                some.forEach(figure -> {
                    kinds.putIfAbsent(id, figure.kind());
                    found.add(figure.in(condition.id()));
                });
            }
        }
        Cases cases = new Cases(List.of(condition.id()), List.of(new Engine.Case(condition.id(), condition)), List.of());
        List<FigureKind> known = List.copyOf(kinds.values());
        List<Evaluation.Outcome> outcomes = List.of(new Evaluation.Outcome(WHAT_IF, condition.id(), Evaluation.Status.COMPUTED,
                new Result<>(Optional.of(WHAT_IF), found, List.of())));
        List<Engine.Loaded> givers = List.of(new Engine.Loaded(WHAT_IF, WHAT_IF, "", Scope.CONDITION, known, Optional.empty()));
        return Judgement.judge(design.withRequirements(requirements), cases, outcomes, givers, known).stream()
                .filter(verdict -> verdict.severity().compareTo(Severity.CAUTION) > 0).max((one, other) -> one.severity().compareTo(other.severity()))
                .map(verdict -> new Answer(Optional.of(words(verdict, kinds, declared.id())), verdict.severity() != Severity.NOT_JUDGED, true));
    }

    private static String words(Verdict verdict, Map<String, FigureKind> kinds, String condition) {
        String place = verdict.figure().map(Figure::place).orElse(verdict.requirement().place());
        String label = kinds.get(verdict.requirement().figure()).label();
        return label + (place.isEmpty() ? "" : " at " + place) + (verdict.severity() == Severity.NOT_JUDGED ? " not known" : "") + ", " + condition;
    }
}
