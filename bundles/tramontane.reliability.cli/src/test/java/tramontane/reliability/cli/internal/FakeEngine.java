package tramontane.reliability.cli.internal;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
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
import tramontane.reliability.LifeState;
import tramontane.reliability.MissionLife;
import tramontane.reliability.SystemLife;
import tramontane.reliability.internal.MoverLifeSection;
import tramontane.reliability.internal.ServiceLifeSection;

/** An engine whose lives a test makes up. */
final class FakeEngine implements Engine {

    final List<Problem> problems = new ArrayList<>();
    final List<Finding> findings = new ArrayList<>();
    final Map<String, LifeState> states = new LinkedHashMap<>();
    Optional<SystemLife> system = Optional.empty();
    Optional<MissionLife> mission = Optional.empty();
    Set<String> givers = Set.of("reliability");

    @Override
    public List<Problem> check(Design design) {
        return problems;
    }

    @Override
    public Evaluation evaluate(Request request, Watch watch) {
        List<Evaluation.Outcome> outcomes = new ArrayList<>();
        states.forEach((id, state) -> outcomes.add(new Evaluation.Outcome("reliability", id, Evaluation.Status.COMPUTED,
                Result.of(state))));
        system.ifPresent(life -> outcomes.add(new Evaluation.Outcome("system", "", Evaluation.Status.COMPUTED, Result.of(life))));
        mission.ifPresent(life -> outcomes.add(new Evaluation.Outcome("mission", "", Evaluation.Status.COMPUTED, Result.of(life))));
        return new Evaluation(request.design(), Cases.of(request.design(), request.conditions()).list(), outcomes, findings, List.of(),
                watch.cancelled());
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
        return List.of(new MoverLifeSection(), new ServiceLifeSection());
    }

    @Override
    public List<Exporter> exporters() {
        return List.of();
    }

    @Override
    public Set<String> givers(Set<Class<?>> types) {
        return givers;
    }
}
