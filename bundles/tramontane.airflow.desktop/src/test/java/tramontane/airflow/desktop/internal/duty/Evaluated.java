package tramontane.airflow.desktop.internal.duty;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import tramontane.airflow.internal.AirflowAnalysis;
import tramontane.airflow.internal.AreaChangeKind;
import tramontane.airflow.internal.BankKind;
import tramontane.airflow.internal.BendKind;
import tramontane.airflow.internal.CardCageKind;
import tramontane.airflow.internal.DuctKind;
import tramontane.airflow.internal.FilterKind;
import tramontane.airflow.internal.FingerGuardKind;
import tramontane.airflow.internal.FlapKind;
import tramontane.airflow.internal.GapKind;
import tramontane.airflow.internal.GrilleKind;
import tramontane.airflow.internal.HeatSinkKind;
import tramontane.airflow.internal.MeasuredResistanceKind;
import tramontane.airflow.internal.OpeningKind;
import tramontane.airflow.internal.OrificeKind;
import tramontane.airflow.internal.ScreenKind;
import tramontane.airflow.internal.SupplySpeedLaw;
import tramontane.analysis.Analysis;
import tramontane.analysis.Cases;
import tramontane.analysis.Engine;
import tramontane.analysis.Evaluation;
import tramontane.analysis.Figure;
import tramontane.analysis.Finding;
import tramontane.analysis.Input;
import tramontane.analysis.LinkKind;
import tramontane.analysis.OperatingPoint;
import tramontane.analysis.PassageKind;
import tramontane.analysis.Result;
import tramontane.analysis.Run;
import tramontane.analysis.SpeedLaw;
import tramontane.analysis.Trace;
import tramontane.model.Condition;
import tramontane.model.Design;
import tramontane.model.Problem;
import tramontane.model.file.DesignFile;
import tramontane.thermal.ThermalModels;
import tramontane.thermal.internal.CoupledAnalysis;
import tramontane.thermal.internal.links.BoardKind;
import tramontane.thermal.internal.links.InterfaceKind;
import tramontane.thermal.internal.links.JunctionToCaseKind;
import tramontane.thermal.internal.links.MeasuredSinkKind;
import tramontane.thermal.internal.links.PackageKind;
import tramontane.thermal.internal.links.PinFinsKind;
import tramontane.thermal.internal.links.PlateFinsKind;
import tramontane.thermal.internal.links.ResistanceKind;
import tramontane.thermal.internal.links.SpreadingKind;
import tramontane.thermal.internal.links.SurfaceKind;

/** Designs and what an engine would give of their air flow, heat coupled in. */
final class Evaluated {

    static final List<PassageKind> KINDS = List.of(new OpeningKind(), new OrificeKind(), new GrilleKind(), new ScreenKind(),
            new FingerGuardKind(), new FilterKind(), new DuctKind(), new BendKind(), new AreaChangeKind(), new CardCageKind(),
            new HeatSinkKind(), new GapKind(), new FlapKind(), new MeasuredResistanceKind(), new BankKind());
    static final List<LinkKind> LINKS = List.of(new JunctionToCaseKind(), new ResistanceKind(), new InterfaceKind(),
            new SpreadingKind(), new MeasuredSinkKind(), new PlateFinsKind(), new PinFinsKind(), new BoardKind(), new PackageKind(),
            new SurfaceKind());
    private static final List<Map.Entry<Map<String, Object>, SpeedLaw>> LAWS = List.of(Map.entry(Map.of(), new SupplySpeedLaw()));
    static final DutyChart.Physics PHYSICS = new DutyChart.Physics(KINDS, List.of(new SupplySpeedLaw()));

    private Evaluated() {
    }

    /** The shipped samples. */
    static List<Path> samples() throws IOException {
        try (Stream<Path> files = Files.list(Path.of("../../product/samples"))) {
            return files.filter(file -> file.toString().endsWith(DesignFile.ENDING)).sorted().toList();
        }
    }

    static Design sample(Path file) {
        try {
            return DesignFile.parse(Files.readString(file)).design().orElseThrow();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** A design as a file, with single quotes for double ones. */
    static Design design(String json) {
        var loaded = DesignFile.parse(json.replace('\'', '"'));
        List<Problem> errors = loaded.problems().stream().filter(Problem::isError).toList();
        if (!errors.isEmpty()) {
            throw new AssertionError(errors.toString());
        }
        return loaded.design().orElseThrow();
    }

    static Evaluation of(Design design) {
        Analysis<OperatingPoint> airflow = new AirflowAnalysis(KINDS, LAWS);
        Analysis<OperatingPoint> coupled = new CoupledAnalysis(new ThermalModels(KINDS, LINKS, LAWS));
        List<Engine.Case> cases = Cases.of(design, Set.of()).list();
        List<Evaluation.Outcome> outcomes = new ArrayList<>();
        for (Engine.Case each : cases) {
            Input input = new Handed(design, each.concrete());
            outcomes.add(outcome("airflow", each, airflow.run(input, Run.alone(Trace.SILENT)), !design.heatSources().isEmpty()));
            if (!design.heatSources().isEmpty()) {
                outcomes.add(outcome("thermal.flow", each, coupled.run(input, Run.alone(Trace.SILENT)), false));
            }
        }
        return new Evaluation(design, cases, outcomes, List.of(), List.of(), false);
    }

    private static Evaluation.Outcome outcome(String analysis, Engine.Case each, Result<OperatingPoint> result, boolean overruled) {
        return new Evaluation.Outcome(analysis, each.concrete().id(), result.data().isPresent() ? Evaluation.Status.COMPUTED
                : Evaluation.Status.NOT_COMPUTED, result, overruled);
    }

    private record Handed(Design design, Condition condition) implements Input {
        @Override
        public <R> R result(Class<R> type) {
            throw new IllegalArgumentException("nothing of type " + type);
        }

        @Override
        public <R> Map<String, R> results(Class<R> type) {
            return Map.of();
        }

        @Override
        public List<Figure> figures(String id) {
            return List.of();
        }
    }

    /** What kept a case from being computed. */
    static Optional<Finding> obstacle(Evaluation evaluation) {
        return evaluation.outcomes().stream().filter(outcome -> outcome.status() != Evaluation.Status.COMPUTED)
                .flatMap(outcome -> outcome.result().findings().stream()).findFirst();
    }
}
