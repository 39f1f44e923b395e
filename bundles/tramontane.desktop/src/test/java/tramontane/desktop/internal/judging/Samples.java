package tramontane.desktop.internal.judging;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import tramontane.analysis.Better;
import tramontane.analysis.Engine;
import tramontane.analysis.Evaluation;
import tramontane.analysis.Figure;
import tramontane.analysis.FigureKind;
import tramontane.analysis.Finding;
import tramontane.analysis.Judgement;
import tramontane.analysis.Result;
import tramontane.analysis.Severity;
import tramontane.analysis.Verdict;
import tramontane.desktop.Document;
import tramontane.desktop.Palette;
import tramontane.desktop.Results;
import tramontane.desktop.Scene;
import tramontane.desktop.Sheet;
import tramontane.model.Condition;
import tramontane.model.Design;
import tramontane.model.Problem;
import tramontane.model.Requirement;
import tramontane.model.file.DesignFile;
import tramontane.physics.units.QuantityKind;
import tramontane.physics.units.UnitSystem;

/** A small design, and what might have been computed of it. */
final class Samples {

    static final FigureKind FLOW = new FigureKind("airflow.bank.flow", "flow", QuantityKind.FLOW, Better.HIGHER, "Flow at the inlet of a bank.");
    static final FigureKind JUNCTION = new FigureKind("thermal.junction.temperature", "junction temperature", QuantityKind.TEMPERATURE, Better.LOWER,
            "Temperature of a part.");
    static final FigureKind ENERGY = new FigureKind("drive.energy.year", "energy in a year", QuantityKind.ENERGY, Better.LOWER, "Over the mission.");
    static final List<FigureKind> KINDS = List.of(FLOW, JUNCTION, ENERGY);

    static final String BOX = """
            {"format": 1, "name": "box",
             "airPath": {"bays": ["front", "rear"], "passages": [
               {"id": "grille", "kind": "grille", "from": "outside", "to": "front"},
               {"id": "slot", "kind": "slot", "from": "front", "to": "rear"},
               {"id": "fans", "kind": "bank", "from": "rear", "to": "outside", "mover": "M"}]},
             "heatSources": [{"id": "cpu", "power": "35 W", "into": ["front"], "limit": "85 °C"}],
             "conditions": [{"id": "mild"}, {"id": "hot"},
               {"id": "any one failed", "failed": [{"bank": "fans", "position": "any one", "state": "locked"}]}],
             "requirements": [
               {"figure": "airflow.bank.flow", "place": "fans", "atLeast": "72 m³/h", "conditions": ["hot", "any one failed"]},
               {"figure": "drive.energy.year", "atMost": "10 kWh"}]}
            """;

    static final Design DESIGN = design(BOX);
    static final List<Engine.Case> CASES = List.of(alone("mild"), alone("hot"),
            new Engine.Case("any one failed", Condition.named("any one failed: fans 1 locked")),
            new Engine.Case("any one failed", Condition.named("any one failed: fans 2 locked")));

    private Samples() {
    }

    static Design design(String json) {
        return DesignFile.parse(json).editable().orElseThrow();
    }

    private static Engine.Case alone(String condition) {
        return new Engine.Case(condition, Condition.named(condition));
    }

    static Figure figure(FigureKind kind, String place, String caseId, double value) {
        return new Figure(kind, place, caseId, value, OptionalDouble.empty(), OptionalDouble.empty());
    }

    static Requirement requirement(Design design, int index) {
        return Judgement.requirements(design, KINDS).get(index);
    }

    static Verdict verdict(Requirement requirement, String condition, Severity severity, Figure figure, double margin) {
        return new Verdict(requirement, condition, severity, Optional.of(figure), margin, "holds at " + figure.place());
    }

    /** Some figures, findings and verdicts of a design, as a run of the whole would give them. */
    static Evaluation evaluation(Design design, List<Figure> figures, List<Finding> findings, List<Verdict> verdicts) {
        List<Evaluation.Outcome> outcomes = new ArrayList<>();
        for (String caseId : List.of("mild", "hot", "any one failed: fans 1 locked", "any one failed: fans 2 locked", "")) {
            outcomes.add(new Evaluation.Outcome(caseId.isEmpty() ? "drive" : "airflow", caseId, Evaluation.Status.COMPUTED, Result.of(1.0)
                    .with(figures.stream().filter(figure -> figure.condition().equals(caseId)).toArray(Figure[]::new))
                    .with(findings.stream().filter(finding -> finding.condition().equals(caseId)).toArray(Finding[]::new))));
        }
        return new Evaluation(design, CASES, outcomes, findings, verdicts, false);
    }

    static Scene scene(Design design, Results results, String front, UnitSystem units, Problem... problems) {
        Document document = new Document("1", Optional.empty(), design, false, Optional.empty(), Optional.empty(), List.of(problems));
        return new Scene(document, results, front, Optional.empty(), Optional.empty(), units, Palette.LIGHT);
    }

    static Results complete(Evaluation evaluation) {
        return new Results(Optional.of(evaluation), Optional.empty(), false);
    }

    static String text(Sheet sheet, int row, String column) {
        return cell(sheet, row, column).text();
    }

    static Sheet.Cell cell(Sheet sheet, int row, String column) {
        List<String> labels = sheet.columns().stream().map(Sheet.Column::label).toList();
        return sheet.rows().get(row).cells().get(labels.indexOf(column));
    }

    static List<String> column(Sheet sheet, int column) {
        return sheet.rows().stream().map(row -> row.cells().get(column).text()).toList();
    }
}
