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
import static tramontane.desktop.internal.judging.Samples.scene;
import static tramontane.desktop.internal.judging.Samples.text;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import tramontane.analysis.Amount;
import tramontane.analysis.Better;
import tramontane.analysis.Evaluation;
import tramontane.analysis.Figure;
import tramontane.analysis.FigureKind;
import tramontane.analysis.Overview;
import tramontane.analysis.Result;
import tramontane.analysis.Table;
import tramontane.desktop.FigureKey;
import tramontane.desktop.Results;
import tramontane.desktop.Scene;
import tramontane.desktop.Sheet;
import tramontane.physics.units.QuantityKind;
import tramontane.physics.units.UnitSystem;

class FiguresPresenterTest {

    private static final FigureKind STAY = new FigureKind("lab.stay", "stay", QuantityKind.TIME, Better.LOWER, "How long air stays.");
    private static final List<Figure> FIGURES = List.of(figure(STAY, "rear", "mild", 60), figure(STAY, "rear", "hot", 600),
            figure(JUNCTION, "cpu", "hot", 350), figure(FLOW, "fans", "hot", 0.02), figure(FLOW, "grille", "hot", 0.03),
            figure(FLOW, "fans", "mild", 0.01), figure(ENERGY, "", "", 3.6e6));

    private static Scene computed(Results results) {
        return scene(DESIGN, results, "hot", UnitSystem.METRIC);
    }

    private static Figures figures(Figures.Wanted wanted) {
        return new FiguresPresenter().of(computed(complete(evaluation(DESIGN, FIGURES, List.of(), List.of()))), KINDS, wanted);
    }

    @Test
    void rowsFollowTheAnalysesAndPlacesInTheDesignAndCasesAreColumns() {
        Sheet sheet = figures(Figures.Wanted.ALL_OF_THEM).sheet();
        assertEquals(List.of("flow", "flow", "junction temperature", "energy in a year", "stay"), column(sheet, 0));
        assertEquals(List.of("grille", "fans", "cpu", "", "rear"), column(sheet, 1));
        assertEquals("72.0", text(sheet, 1, "hot"));
        assertEquals("36.0", text(sheet, 1, "mild"));
        assertEquals("m³/h", text(sheet, 1, "unit"));
        assertEquals("", text(sheet, 0, "mild"));
        assertEquals("1.00", text(sheet, 3, "whole design"));
        assertEquals(Optional.of(new FigureKey(FLOW.id(), "fans", "hot")), cell(sheet, 1, "hot").figure());
    }

    @Test
    void unitsStayWithTheNumbersWhereTheyDifferWithinARow() {
        Sheet sheet = figures(Figures.Wanted.ALL_OF_THEM).sheet();
        assertEquals("60.0 s", text(sheet, 4, "mild"));
        assertEquals("10.0 min", text(sheet, 4, "hot"));
        assertEquals("", text(sheet, 4, "unit"));
    }

    @Test
    void noRowMovesWhileNewFiguresTakeThePlaceOfStaleOnes() {
        Evaluation before = evaluation(DESIGN, FIGURES, List.of(), List.of());
        Evaluation now = evaluation(DESIGN, List.of(figure(JUNCTION, "cpu", "hot", 360)), List.of(), List.of());
        Sheet sheet = new FiguresPresenter().of(computed(new Results(Optional.of(now), Optional.of(before), true)), KINDS, Figures.Wanted.ALL_OF_THEM).sheet();
        assertEquals(column(figures(Figures.Wanted.ALL_OF_THEM).sheet(), 1), column(sheet, 1));
        assertFalse(cell(sheet, 2, "hot").stale());
        assertTrue(cell(sheet, 1, "hot").stale());
    }

    @Test
    void sortedByAColumnThenTheOtherWayThenNotAtAll() {
        Figures.Wanted once = Figures.Wanted.ALL_OF_THEM.sorted(FiguresPresenter.PLACE);
        assertEquals(List.of("", "cpu", "fans", "grille", "rear"), column(figures(once).sheet(), 1));
        assertEquals("▲ place", figures(once).sheet().columns().get(1).label());
        Figures.Wanted twice = once.sorted(FiguresPresenter.PLACE);
        assertEquals(List.of("rear", "grille", "fans", "cpu", ""), column(figures(twice).sheet(), 1));
        assertEquals(Figures.Wanted.ALL_OF_THEM, twice.sorted(FiguresPresenter.PLACE));
    }

    @Test
    void wordsAreLookedForInFigureAndPlace() {
        Figures found = figures(new Figures.Wanted(Figures.ALL, "FLOW fan", "", false));
        assertEquals(List.of("fans"), column(found.sheet(), 1));
        assertEquals(5, found.all());
        assertEquals("Nothing of 5 rows has these words.", figures(new Figures.Wanted(Figures.ALL, "zebra", "", false)).empty());
    }

    @Test
    void tablesOfAnalysesCanBeChosenForTheCaseInFront() {
        Table table = new Table("Heat budget", List.of(new Table.Column("source", false), new Table.Column("power", true), new Table.Column("range", true)),
                List.of(List.of(new Table.Words("cpu"), new Amount(35, QuantityKind.POWER), new Table.Range(new Amount(1, QuantityKind.POWER),
                        new Amount(2, QuantityKind.POWER))), List.of(new Table.Words("all"), new Amount(5, QuantityKind.POWER), new Table.Empty())));
        Evaluation evaluation = new Evaluation(DESIGN, Samples.CASES, List.of(
                new Evaluation.Outcome("thermal", "hot", Evaluation.Status.COMPUTED, Result.of(1.0).with(new Overview(table, List.of()))),
                new Evaluation.Outcome("thermal", "mild", Evaluation.Status.COMPUTED, Result.of(1.0).with(new Overview(table, List.of())))),
                List.of(), List.of(), false);
        Figures figures = new FiguresPresenter().of(computed(complete(evaluation)), KINDS, new Figures.Wanted("Heat budget", "", "Heat budget 1", false));
        assertEquals(List.of(Figures.ALL, "Heat budget"), figures.tables());
        assertEquals("source\t▲ power\trange\nall\t5.00 W\t\ncpu\t35.0 W\t1.00 W to 2.00 W\n", figures.sheet().tabbed());
    }
}
