package tramontane.desktop.internal.judging;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static tramontane.desktop.internal.judging.Samples.DESIGN;
import static tramontane.desktop.internal.judging.Samples.ENERGY;
import static tramontane.desktop.internal.judging.Samples.FLOW;
import static tramontane.desktop.internal.judging.Samples.JUNCTION;
import static tramontane.desktop.internal.judging.Samples.KINDS;
import static tramontane.desktop.internal.judging.Samples.cell;
import static tramontane.desktop.internal.judging.Samples.column;
import static tramontane.desktop.internal.judging.Samples.complete;
import static tramontane.desktop.internal.judging.Samples.evaluation;
import static tramontane.desktop.internal.judging.Samples.figure;
import static tramontane.desktop.internal.judging.Samples.requirement;
import static tramontane.desktop.internal.judging.Samples.scene;
import static tramontane.desktop.internal.judging.Samples.text;
import static tramontane.desktop.internal.judging.Samples.verdict;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import tramontane.analysis.Evaluation;
import tramontane.analysis.Figure;
import tramontane.analysis.Finding;
import tramontane.analysis.Severity;
import tramontane.analysis.Verdict;
import tramontane.desktop.FigureKey;
import tramontane.desktop.Results;
import tramontane.model.Design;
import tramontane.model.Problem;
import tramontane.model.edit.Subject;
import tramontane.physics.units.UnitSystem;

class MatrixPresenterTest {

    private static final Figure HOT_FLOW = figure(FLOW, "fans", "hot", 80 / 3600.0);
    private static final Figure FAILED_FLOW = figure(FLOW, "fans", "any one failed: fans 2 locked", 71.9999 / 3600.0);
    private static final Figure HOT_CPU = figure(JUNCTION, "cpu", "hot", 273.15 + 84).within(273.15 + 80, 273.15 + 88);

    private static Evaluation judged(Design design) {
        List<Verdict> verdicts = List.of(verdict(requirement(design, 0), "hot", Severity.MET, HOT_FLOW, 8 / 3600.0),
                verdict(requirement(design, 0), "any one failed", Severity.NOT_MET, FAILED_FLOW, -1e-4 / 3600),
                verdict(requirement(design, 1), "", Severity.MET, figure(ENERGY, "", "", 30e6), 6e6),
                verdict(requirement(design, 2), "mild", Severity.MET, figure(JUNCTION, "cpu", "mild", 320), 30),
                verdict(requirement(design, 2), "hot", Severity.CAUTION, HOT_CPU, 1));
        return evaluation(design, List.of(HOT_FLOW), List.of(
                Finding.caution("fans", "is short of air").remedy("add a fan").in("any one failed: fans 2 locked"),
                Finding.caution("cpu", "is hot").remedy("add a sink").in("hot"), Finding.note("cpu", "is large").remedy("look").in("hot")), verdicts);
    }

    private static Matrix matrix(Results results, String front, Problem... problems) {
        return MatrixPresenter.of(scene(DESIGN, results, front, UnitSystem.METRIC, problems), KINDS);
    }

    @Test
    void rowsStandInTheOrderOfTheDesignWithLimitsOfHeatSourcesBehind() {
        Matrix matrix = matrix(complete(judged(DESIGN)), "hot");
        assertEquals(List.of("all", "flow, fans", "energy in a year", "junction temperature, cpu"), column(matrix.sheet(), 0));
        assertEquals(List.of("", "≥ 72.0 m³/h", "≤ 10.0 kWh", "≤ 85.0 °C"), column(matrix.sheet(), 1));
    }

    @Test
    void columnsAreConditionsAsDeclaredWithTheOneInFrontMarked() {
        Matrix matrix = matrix(complete(judged(DESIGN)), "any one failed: fans 2 locked");
        assertEquals(List.of("requirement", "limit", "whole design", "mild", "hot", "any one failed"),
                matrix.sheet().columns().stream().map(column -> column.label()).toList());
        assertEquals(List.of("any one failed"), matrix.sheet().columns().stream().filter(column -> column.front()).map(column -> column.label()).toList());
    }

    @Test
    void aCellHasTheWordAndTheFigureThatDecidedAndADashWhereNothingIsRequired() {
        Matrix matrix = matrix(complete(judged(DESIGN)), "hot");
        assertEquals("met  80.0 m³/h", text(matrix.sheet(), 1, "hot"));
        assertEquals(Optional.of(FigureKey.of(HOT_FLOW)), cell(matrix.sheet(), 1, "hot").figure());
        assertEquals(Optional.of(Severity.MET), cell(matrix.sheet(), 1, "hot").mark());
        assertEquals("—", text(matrix.sheet(), 1, "mild"));
        assertEquals("—", text(matrix.sheet(), 1, "whole design"));
        assertEquals("met  8.33 kWh", text(matrix.sheet(), 2, "whole design"));
        assertEquals("—", text(matrix.sheet(), 2, "hot"));
    }

    @Test
    void aFigureThatMissesByAHairHasTheDigitsThatShowIt() {
        assertEquals("not met  71.9999 m³/h", text(matrix(complete(judged(DESIGN)), "hot").sheet(), 1, "any one failed"));
    }

    @Test
    void theFirstRowShowsTheWorstOfEachConditionAndOfHowMany() {
        Matrix matrix = matrix(complete(judged(DESIGN)), "hot");
        assertEquals("met", text(matrix.sheet(), 0, "mild"));
        assertEquals("caution  1 of 2", text(matrix.sheet(), 0, "hot"));
        assertEquals("not met  1 of 2", text(matrix.sheet(), 0, "any one failed"));
    }

    @Test
    void theReasonTellsMarginBoundsRemedyAndTheCaseThatDecided() {
        Matrix matrix = matrix(complete(judged(DESIGN)), "hot");
        Matrix.Reason cpu = matrix.reason(matrix.sheet().rows().get(3), 4).orElseThrow();
        assertEquals("junction temperature at cpu in hot", cpu.title());
        assertEquals(List.of("84.0 °C where at most 85.0 °C is required: 1.00 K inside the limit.", "It may be 80.0 °C to 88.0 °C.", "It holds at cpu.",
                "To do: Add a sink."), cpu.lines());
        assertEquals(Optional.of(Subject.heatSource("cpu")), cpu.subject());
        assertEquals(Optional.of("hot"), cpu.front());
        Matrix.Reason fans = matrix.reason(matrix.sheet().rows().get(1), 5).orElseThrow();
        assertEquals(Optional.of("any one failed: fans 2 locked"), fans.front());
        assertEquals(Optional.of(Subject.passage("fans")), fans.subject());
        assertTrue(fans.lines().contains("To do: Add a fan."), fans.lines().toString());
        assertTrue(fans.lines().getFirst().endsWith("beyond the limit."), fans.lines().toString());
    }

    @Test
    void rowsStayAndStaleOnesAreMarkedWhileAPartOfTheResultsIsNew() {
        Design changed = Samples.design(Samples.BOX.replace("72 m³/h", "90 m³/h"));
        Evaluation now = evaluation(changed, List.of(), List.of(), List.of(
                verdict(requirement(changed, 2), "hot", Severity.NOT_MET, figure(JUNCTION, "cpu", "hot", 400), -40)));
        Results part = new Results(Optional.of(now), Optional.of(judged(DESIGN)), true);
        Matrix matrix = MatrixPresenter.of(scene(changed, part, "hot", UnitSystem.METRIC), KINDS);
        assertEquals(column(matrix(complete(judged(DESIGN)), "hot").sheet(), 0), column(matrix.sheet(), 0));
        assertEquals("≥ 90.0 m³/h", text(matrix.sheet(), 1, "limit"));
        assertTrue(cell(matrix.sheet(), 1, "hot").stale(), "the limit was changed");
        assertTrue(cell(matrix.sheet(), 3, "mild").stale());
        assertFalse(cell(matrix.sheet(), 3, "hot").stale());
        assertTrue(cell(matrix.sheet(), 0, "hot").stale());
    }

    @Test
    void withMistakesInTheDesignNothingIsJudgedAndTheReasonSaysSo() {
        Matrix matrix = matrix(Results.NONE, "hot", Problem.error("airPath", "is empty"));
        assertEquals("not judged", text(matrix.sheet(), 3, "hot"));
        assertEquals("not judged  3 of 3", text(matrix.sheet(), 0, "hot"));
        assertTrue(matrix.reason(matrix.sheet().rows().get(3), 3).orElseThrow().lines().getFirst().contains("has mistakes"));
    }

    @Test
    void whatIsBeingComputedIsNotTakenForNotJudged() {
        Matrix matrix = matrix(new Results(Optional.empty(), Optional.empty(), true), "hot");
        assertEquals("…", text(matrix.sheet(), 3, "hot"));
        assertEquals("…", text(matrix.sheet(), 0, "hot"));
    }

    @Test
    void whatIsMissingIsNotTakenForMetInTheFirstRow() {
        Evaluation part = evaluation(DESIGN, List.of(), List.of(), List.of(verdict(requirement(DESIGN, 2), "hot", Severity.MET, HOT_CPU, 1)));
        Matrix coming = matrix(new Results(Optional.of(part), Optional.empty(), true), "hot");
        assertEquals("met", text(coming.sheet(), 0, "hot"));
        assertTrue(cell(coming.sheet(), 0, "hot").stale());
        assertEquals(List.of("1 of 3 hold; the others are being computed."), coming.reason(coming.sheet().rows().getFirst(), 3).orElseThrow().lines());
        assertEquals("not judged  2 of 3", text(matrix(complete(part), "hot").sheet(), 0, "hot"));
    }

    @Test
    void anEmptyMatrixSaysWhatWouldFillIt() {
        Design bare = Samples.design("{\"format\": 1, \"name\": \"bare\"}");
        Matrix matrix = MatrixPresenter.of(scene(bare, Results.NONE, "nominal", UnitSystem.METRIC), KINDS);
        assertTrue(matrix.empty().contains("Add a requirement"));
        assertEquals(0, matrix.sheet().rows().size());
    }

    @Test
    void limitsAndFiguresFollowTheUnits() {
        Matrix matrix = MatrixPresenter.of(scene(DESIGN, complete(judged(DESIGN)), "hot", UnitSystem.US), KINDS);
        assertEquals("≥ 42.4 cfm", text(matrix.sheet(), 1, "limit"));
        assertEquals("caution  183 °F", text(matrix.sheet(), 3, "hot"));
    }
}
