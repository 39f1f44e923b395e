package tramontane.thermal.internal;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import tramontane.analysis.Cases;
import tramontane.analysis.Figure;
import tramontane.analysis.Finding;
import tramontane.analysis.Input;
import tramontane.analysis.OperatingPoint;
import tramontane.analysis.Result;
import tramontane.analysis.Run;
import tramontane.analysis.SpeedLaw;
import tramontane.analysis.Trace;
import tramontane.model.Condition;
import tramontane.model.Design;
import tramontane.physics.units.UnitSystem;
import tramontane.thermal.Budget;
import tramontane.thermal.Designs;
import tramontane.thermal.Temperatures;
import tramontane.thermal.ThermalModels;

/** Runs the analyses of this bundle one after another, as the engine would. */
final class Runs {

    private static final List<Map.Entry<Map<String, Object>, SpeedLaw>> SPEEDS = Designs.SPEEDS.stream()
            .map(law -> Map.entry(Map.<String, Object>of("service.ranking", 0, "service.id", 1L), law)).toList();

    private Runs() {
    }

    /** Flows, temperatures, and what was said on the way, in one case. */
    record Told(Result<OperatingPoint> flow, Optional<Result<Temperatures>> thermal, List<Trace.Step> flowSteps, List<Trace.Step> steps) {

        Result<Temperatures> temperatures() {
            return thermal.orElseThrow(() -> new AssertionError(Runs.sentences(flow)));
        }

        double figure(String id, String place) {
            return temperatures().figures().stream().filter(figure -> figure.kind().id().equals(id) && figure.place().equals(place))
                    .mapToDouble(Figure::value).findFirst().orElseThrow(() -> new AssertionError("no figure " + id + " at " + place));
        }

        boolean has(String id, String place) {
            return temperatures().figures().stream().anyMatch(figure -> figure.kind().id().equals(id) && figure.place().equals(place));
        }

        List<String> sentences() {
            return Runs.sentences(temperatures());
        }
    }

    /** Everything that a result says, in metric units: severity, message, remedy, source. */
    static List<String> sentences(Result<?> result) {
        return result.findings().stream().map(Runs::sentence).toList();
    }

    static String sentence(Finding finding) {
        return finding.severity().word() + ": " + finding.message().in(UnitSystem.METRIC)
                + (finding.remedy().isEmpty() ? "" : " | " + finding.remedy().in(UnitSystem.METRIC))
                + (finding.source().isEmpty() ? "" : " [" + finding.source() + "]");
    }

    /** The first case of a design. */
    static Told run(Design design) {
        return run(design, 0);
    }

    static Told run(Design design, int number) {
        Condition condition = Cases.of(design, java.util.Set.of()).list().get(number).concrete();
        List<Trace.Step> flowSteps = new ArrayList<>();
        List<Trace.Step> steps = new ArrayList<>();
        CoupledAnalysis coupled = new CoupledAnalysis(new ThermalModels(Designs.PASSAGES, Designs.LINKS, SPEEDS));
        Result<OperatingPoint> flow = coupled.run(new Given(coupled.reads(design), Optional.of(condition), Map.of()), Run.alone(Trace.into(flowSteps)));
        ThermalAnalysis thermal = new ThermalAnalysis(new ThermalModels(Designs.PASSAGES, Designs.LINKS, SPEEDS));
        Optional<Result<Temperatures>> temperatures = flow.data().map(point -> thermal.run(new Given(thermal.reads(design),
                Optional.of(condition), Map.of("", point)), Run.alone(Trace.into(steps))));
        return new Told(flow, temperatures, flowSteps, steps);
    }

    /** The budget over all cases of a design. */
    static Result<Budget> budget(Design design) {
        Map<String, Object> all = new LinkedHashMap<>();
        List<tramontane.analysis.Engine.Case> cases = Cases.of(design, java.util.Set.of()).list();
        for (int i = 0; i < cases.size(); i++) {
            String id = cases.get(i).concrete().id();
            run(design, i).thermal().flatMap(Result::data).ifPresent(data -> all.put(id, data));
        }
        BudgetAnalysis budget = new BudgetAnalysis();
        return budget.run(new Given(budget.reads(design), Optional.empty(), all), Run.alone(Trace.SILENT));
    }

    private record Given(Design design, Optional<Condition> one, Map<String, Object> data) implements Input {

        @Override
        public Condition condition() {
            return one.orElseThrow(IllegalStateException::new);
        }

        @Override
        public <R> R result(Class<R> type) {
            return type.cast(data.get(""));
        }

        @Override
        public <R> Map<String, R> results(Class<R> type) {
            Map<String, R> results = new LinkedHashMap<>();
            data.forEach((id, each) -> results.put(id, type.cast(each)));
            return results;
        }

        @Override
        public List<Figure> figures(String id) {
            return List.of();
        }
    }
}
