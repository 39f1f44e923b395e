package tramontane.drive.internal;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import tramontane.airflow.internal.AirflowAnalysis;
import tramontane.airflow.internal.BankKind;
import tramontane.airflow.internal.FlapKind;
import tramontane.airflow.internal.MeasuredResistanceKind;
import tramontane.airflow.internal.OpeningKind;
import tramontane.airflow.internal.SupplySpeedLaw;
import tramontane.analysis.Analysis;
import tramontane.analysis.Cases;
import tramontane.analysis.Engine;
import tramontane.analysis.Figure;
import tramontane.analysis.Finding;
import tramontane.analysis.Input;
import tramontane.analysis.OperatingPoint;
import tramontane.analysis.PassageKind;
import tramontane.analysis.Result;
import tramontane.analysis.Run;
import tramontane.analysis.SpeedLaw;
import tramontane.analysis.Trace;
import tramontane.drive.AlarmWindow;
import tramontane.drive.ComputedLaws;
import tramontane.drive.DriveFit;
import tramontane.drive.DriveState;
import tramontane.drive.LoopState;
import tramontane.model.Condition;
import tramontane.model.Design;
import tramontane.model.Problem;
import tramontane.model.file.DesignFile;
import tramontane.model.file.Loaded;
import tramontane.physics.units.UnitSystem;
import tramontane.thermal.ThermalModels;
import tramontane.thermal.internal.links.JunctionToCaseKind;
import tramontane.thermal.internal.links.ResistanceKind;

/** A box with one bank, written as a file, and what runs it without an engine. */
final class Boxes {

    static final List<PassageKind> PASSAGES = List.of(new OpeningKind(), new FlapKind(), new MeasuredResistanceKind(), new BankKind());
    static final List<Map.Entry<Map<String, Object>, SpeedLaw>> SPEEDS = List.of(
            Map.entry(Map.<String, Object>of("service.ranking", 10, "service.id", 2L), new DriveSpeed()),
            Map.entry(Map.<String, Object>of("service.ranking", 0, "service.id", 1L), new SupplySpeedLaw()));

    /** A mover of 24 V and 3000 rpm that moves 0.05 m³/s free, of 6 W at every flow. */
    static final String PART = "'id': 'F', 'width': '0.12 m', 'height': '0.12 m', 'openArea': '0.008 m²', 'ratedSpeed': '3000 rpm',"
            + " 'curves': [{'flow': '0 0.02 0.05 m³/s', 'pressure': '100 60 0 Pa', 'power': '6 6 6 W'}]";

    private Boxes() {
    }

    /** Two movers side by side in a box. */
    record Box(String part, String mover, String bank, String supplies, String conditions, String more) {

        static Box of(String mover, String bank) {
            return new Box(PART, mover, bank, "", "", "");
        }

        Box withPart(String other) {
            return new Box(other, mover, bank, supplies, conditions, more);
        }

        Box withSupplies(String other) {
            return new Box(part, mover, bank, other, conditions, more);
        }

        Box withConditions(String other) {
            return new Box(part, mover, bank, supplies, other, more);
        }

        /** Further members of the design, each with a comma before it. */
        Box with(String other) {
            return new Box(part, mover, bank, supplies, conditions, other);
        }

        Design design() {
            return read("{'format': 1, 'airMovers': [{" + part + (mover.isEmpty() ? "" : ", 'sections': {'drive': {" + mover + "}}") + "}],"
                    + " 'airPath': {'bays': ['box'], 'passages': [{'id': 'fans', 'kind': 'bank', 'from': 'outside', 'to': 'box', 'mover': 'F',"
                    + " 'across': 2" + (bank.isEmpty() ? "" : ", 'sections': {'drive': {" + bank + "}}") + "},"
                    + " {'id': 'outlet', 'kind': 'opening', 'from': 'box', 'to': 'outside', 'area': '0.02 m²'}]}"
                    + (supplies.isEmpty() ? "" : ", 'sections': {'drive': {" + supplies + "}}")
                    + (conditions.isEmpty() ? "" : ", 'conditions': [" + conditions + "]") + more + "}");
        }
    }

    /** A design as a file, with single quotes for double ones. */
    static Design read(String json) {
        Loaded loaded = DesignFile.parse(json.replace('\'', '"'));
        List<Problem> errors = loaded.problems().stream().filter(Problem::isError).toList();
        if (!errors.isEmpty()) {
            throw new AssertionError(errors.toString());
        }
        return loaded.design().orElseThrow();
    }

    /** The operating points of all cases. */
    static Map<String, OperatingPoint> points(Design design) {
        AirflowAnalysis airflow = new AirflowAnalysis(PASSAGES, SPEEDS);
        Map<String, OperatingPoint> points = new LinkedHashMap<>();
        for (Engine.Case each : Cases.of(design, Set.of()).list()) {
            Result<OperatingPoint> flow = airflow.run(new Given(airflow.reads(design), Optional.of(each.concrete()), Map.of()),
                    Run.alone(Trace.SILENT));
            points.put(each.concrete().id(), flow.data().orElseThrow(() -> new AssertionError(flow.findings().stream().map(Boxes::sentence)
                    .toList().toString())));
        }
        return points;
    }

    /** The drive in the first case. */
    static Told<DriveState> drive(Design design) {
        return drive(design, 0);
    }

    static Told<DriveState> drive(Design design, int number) {
        Condition condition = Cases.of(design, Set.of()).list().get(number).concrete();
        return run(new DriveAnalysis(), design, Optional.of(condition), Map.of("", points(design).get(condition.id())));
    }

    static Told<DriveFit> fit(Design design) {
        return run(new FitAnalysis(), design, Optional.empty(), Map.of());
    }

    static Told<AlarmWindow> watch(Design design) {
        return run(new WatchAnalysis(), design, Optional.empty(), new LinkedHashMap<>(points(design)));
    }

    /** Thermal models with what a box is made of. */
    static final ThermalModels THERMAL = new ThermalModels(PASSAGES, List.of(new ResistanceKind(), new JunctionToCaseKind()), SPEEDS);

    static Told<LoopState> loops(Design design) {
        return run(new LoopAnalysis(THERMAL), design, Optional.of(Cases.of(design, Set.of()).list().getFirst().concrete()), Map.of());
    }

    static Told<ComputedLaws> laws(Design design) {
        return run(new LawAnalysis(THERMAL), design, Optional.empty(), Map.of());
    }

    static <T> Told<T> run(Analysis<T> analysis, Design design, Optional<Condition> condition, Map<String, ?> data) {
        List<Trace.Step> steps = new ArrayList<>();
        return run(analysis, design, condition, data, Run.alone(Trace.into(steps)), steps);
    }

    static <T> Told<T> run(Analysis<T> analysis, Design design, Optional<Condition> condition, Map<String, ?> data, Run run, List<Trace.Step> steps) {
        return new Told<>(analysis.run(new Given(analysis.reads(design), condition, new LinkedHashMap<>(data)), run), steps);
    }

    /** A result, and where its figures come from. */
    record Told<T>(Result<T> result, List<Trace.Step> steps) {

        T data() {
            return result.data().orElseThrow(() -> new AssertionError(sentences().toString()));
        }

        double figure(String id, String place) {
            return result.figures().stream().filter(figure -> figure.kind().id().equals(id) && figure.place().equals(place))
                    .mapToDouble(Figure::value).findFirst().orElseThrow(() -> new AssertionError("no figure " + id + " at " + place));
        }

        boolean has(String id, String place) {
            return result.figures().stream().anyMatch(figure -> figure.kind().id().equals(id) && figure.place().equals(place));
        }

        /** Severity, message and remedy of each finding, in metric units. */
        List<String> sentences() {
            return result.findings().stream().map(Boxes::sentence).toList();
        }
    }

    static String sentence(Finding finding) {
        return finding.severity().word() + ": " + finding.message().in(UnitSystem.METRIC)
                + (finding.remedy().isEmpty() ? "" : " | " + finding.remedy().in(UnitSystem.METRIC));
    }

    /** What an analysis is handed. */
    record Given(Design design, Optional<Condition> one, Map<String, Object> data) implements Input {

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
