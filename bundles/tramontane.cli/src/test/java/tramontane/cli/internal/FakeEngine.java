package tramontane.cli.internal;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.BiFunction;
import tramontane.analysis.Engine;
import tramontane.analysis.Evaluation;
import tramontane.analysis.Exporter;
import tramontane.analysis.LinkKind;
import tramontane.analysis.OperatingPoint;
import tramontane.analysis.PassageKind;
import tramontane.analysis.SectionType;
import tramontane.analysis.Trace;
import tramontane.model.Design;
import tramontane.model.Problem;

/** An engine that gives what a test says. */
final class FakeEngine implements Engine {

    private final List<Problem> problems;
    private final BiFunction<Request, Watch, Evaluation> evaluation;
    private final List<Trace.Step> steps;
    private List<Exporter> exporters = List.of();
    final List<Request> requests = new ArrayList<>();
    final List<String> traced = new ArrayList<>();

    FakeEngine(List<Problem> problems, BiFunction<Request, Watch, Evaluation> evaluation, List<Trace.Step> steps) {
        this.problems = problems;
        this.evaluation = evaluation;
        this.steps = steps;
    }

    static FakeEngine giving(Evaluation evaluation) {
        return new FakeEngine(List.of(), (request, watch) -> evaluation, List.of());
    }

    FakeEngine withExporters(Exporter... loaded) {
        exporters = List.of(loaded);
        return this;
    }

    @Override
    public List<Problem> check(Design design) {
        return problems;
    }

    @Override
    public Evaluation evaluate(Request request, Watch watch) {
        requests.add(request);
        return evaluation.apply(request, watch);
    }

    @Override
    public List<Trace.Step> trace(Design design, String condition, String figure, String place) {
        traced.add(condition + "/" + figure + "/" + place);
        return steps;
    }

    @Override
    public List<Loaded> analyses() {
        return Toys.ANALYSES;
    }

    @Override
    public Map<String, PassageKind> passageKinds() {
        return Map.of();
    }

    @Override
    public Map<String, LinkKind> linkKinds() {
        return Toys.LINK_KINDS;
    }

    @Override
    public List<SectionType<?>> sectionTypes() {
        return Toys.SECTION_TYPES;
    }

    @Override
    public List<Exporter> exporters() {
        return exporters;
    }

    @Override
    public Set<String> givers(Set<Class<?>> types) {
        return types.contains(OperatingPoint.class) ? Set.of("airflow") : Set.of();
    }
}
