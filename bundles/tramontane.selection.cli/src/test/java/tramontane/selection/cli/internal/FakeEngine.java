package tramontane.selection.cli.internal;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import tramontane.analysis.Better;
import tramontane.analysis.Engine;
import tramontane.analysis.Evaluation;
import tramontane.analysis.Exporter;
import tramontane.analysis.FigureKind;
import tramontane.analysis.LinkKind;
import tramontane.analysis.PassageKind;
import tramontane.analysis.Scope;
import tramontane.analysis.SectionType;
import tramontane.analysis.Trace;
import tramontane.model.Design;
import tramontane.model.Problem;
import tramontane.physics.units.QuantityKind;
import tramontane.selection.WishSection;

/** An engine that finds wrong what a test says, and computes nothing. */
final class FakeEngine implements Engine {

    static final FigureKind FLOW = new FigureKind("airflow.bank.flow", "flow", QuantityKind.FLOW, Better.HIGHER, "Flow of a bank.");

    final List<Problem> problems = new ArrayList<>();
    final List<Design> checked = new ArrayList<>();

    @Override
    public List<Problem> check(Design design) {
        checked.add(design);
        return problems;
    }

    @Override
    public Evaluation evaluate(Request request, Watch watch) {
        throw new AssertionError("nothing is to be evaluated here");
    }

    @Override
    public List<Trace.Step> trace(Design design, String condition, String figure, String place) {
        return List.of();
    }

    @Override
    public List<Loaded> analyses() {
        return List.of(new Loaded("airflow", "air flow", "toy 1", Scope.CONDITION, List.of(FLOW), Optional.empty()));
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
        return List.of(new WishSection());
    }

    @Override
    public List<Exporter> exporters() {
        return List.of();
    }

    @Override
    public Set<String> givers(Set<Class<?>> types) {
        return Set.of();
    }
}
