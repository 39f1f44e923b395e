package tramontane.acoustics.cli.internal;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.BiFunction;
import tramontane.acoustics.NoiseState;
import tramontane.analysis.Cases;
import tramontane.analysis.Engine;
import tramontane.analysis.Evaluation;
import tramontane.analysis.Exporter;
import tramontane.analysis.Finding;
import tramontane.analysis.LinkKind;
import tramontane.analysis.PassageKind;
import tramontane.analysis.Result;
import tramontane.analysis.SectionType;
import tramontane.analysis.Trace;
import tramontane.model.Design;
import tramontane.model.Problem;

/** An engine that finds wrong what a test says, and whose noise a test makes up. */
final class FakeEngine implements Engine {

    final List<Problem> problems = new ArrayList<>();
    final List<Finding> findings = new ArrayList<>();
    final List<Request> requests = new ArrayList<>();
    BiFunction<String, String, Optional<NoiseState>> noise = (design, condition) -> Optional.empty();
    Set<String> givers = Set.of("acoustics");

    @Override
    public List<Problem> check(Design design) {
        return problems;
    }

    @Override
    public Evaluation evaluate(Request request, Watch watch) {
        requests.add(request);
        List<Case> cases = Cases.of(request.design(), request.conditions()).list();
        Map<String, NoiseState> states = new LinkedHashMap<>();
        cases.forEach(each -> noise.apply(request.design().name(), each.concrete().id())
                .ifPresent(state -> states.put(each.concrete().id(), state)));
        List<Evaluation.Outcome> outcomes = new ArrayList<>();
        states.forEach((id, state) -> outcomes.add(new Evaluation.Outcome("acoustics", id, Evaluation.Status.COMPUTED, Result.of(state))));
        return new Evaluation(request.design(), cases, outcomes, findings, List.of(), watch.cancelled());
    }

    @Override
    public List<Trace.Step> trace(Design design, String condition, String figure, String place) {
        return List.of();
    }

    @Override
    public List<Loaded> analyses() {
        return List.of();
    }

    @Override
    public Map<String, PassageKind> passageKinds() {
        return Map.of();
    }

    @Override
    public Map<String, LinkKind> linkKinds() {
        return Map.of();
    }

    @Override
    public List<SectionType<?>> sectionTypes() {
        return List.of();
    }

    @Override
    public List<Exporter> exporters() {
        return List.of();
    }

    @Override
    public Set<String> givers(Set<Class<?>> types) {
        return types.equals(Set.of(NoiseState.class)) ? givers : Set.of();
    }
}
