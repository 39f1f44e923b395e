package tramontane.desktop.internal.judging;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static tramontane.desktop.internal.judging.Samples.DESIGN;
import static tramontane.desktop.internal.judging.Samples.FLOW;
import static tramontane.desktop.internal.judging.Samples.JUNCTION;
import static tramontane.desktop.internal.judging.Samples.KINDS;
import static tramontane.desktop.internal.judging.Samples.complete;
import static tramontane.desktop.internal.judging.Samples.evaluation;
import static tramontane.desktop.internal.judging.Samples.figure;
import static tramontane.desktop.internal.judging.Samples.scene;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import tramontane.analysis.Derivation;
import tramontane.analysis.Relation;
import tramontane.analysis.Trace;
import tramontane.desktop.FigureKey;
import tramontane.model.edit.Subject;
import tramontane.physics.units.QuantityKind;
import tramontane.physics.units.UnitSystem;

class OriginPresenterTest {

    private static final Relation CHAIN = new Relation("chain", "T = T air + q R", "a book, eq. (1)", "heat goes one way");
    private static final Relation AIR = new Relation("air", "T air = T + q/(m cp)", "another book", "");
    private static final FigureKey KEY = new FigureKey(JUNCTION.id(), "cpu", "hot");

    private static final List<Trace.Step> STEPS = List.of(
            new Trace.Step("air at it", "cpu", AIR, 310, List.of(
                    new Trace.Term("flow through fans", QuantityKind.FLOW, 0.02, FLOW.id()),
                    new Trace.Term("junction", QuantityKind.TEMPERATURE, 350, JUNCTION.id()))),
            new Trace.Step(JUNCTION.id(), "cpu", CHAIN, 350, List.of(
                    new Trace.Term("air temperature", QuantityKind.TEMPERATURE, 310, "air at it"),
                    new Trace.Term("heat q", QuantityKind.POWER, 35, "heat source cpu, condition hot"))));

    private static final Derivation DERIVATION = Derivation.of(STEPS, KINDS);
    private static final OriginPresenter PRESENTER = new OriginPresenter(scene(DESIGN, complete(evaluation(DESIGN, List.of(
            figure(JUNCTION, "cpu", "hot", 350), figure(FLOW, "fans", "hot", 0.02), figure(FLOW, "grille", "hot", 0.03)), List.of(), List.of())), "hot",
            UnitSystem.METRIC), "hot", KINDS);

    @Test
    void theRootIsTheFigureAndOpensToWhatWentIn() {
        Origin root = PRESENTER.root(KEY, DERIVATION);
        assertEquals("junction temperature at cpu", root.label());
        assertEquals("76.9 °C", root.value());
        List<Origin> beneath = PRESENTER.beneath(root);
        assertEquals(List.of("air temperature", "heat q"), beneath.stream().map(Origin::label).toList());
        assertEquals(List.of("36.9 °C", "35.0 W"), beneath.stream().map(Origin::value).toList());
        assertTrue(beneath.get(0).opens());
        assertFalse(beneath.get(1).opens());
        assertEquals(Optional.of(Subject.heatSource("cpu")), beneath.get(1).subject());
    }

    @Test
    void valuesInAgreementWithEachOtherAreEnteredOnce() {
        Origin air = PRESENTER.beneath(PRESENTER.root(KEY, DERIVATION)).getFirst();
        Origin junction = PRESENTER.beneath(air).get(1);
        assertTrue(junction.again());
        assertFalse(junction.opens());
        assertEquals("told above", junction.from());
    }

    @Test
    void aFigureOfAnotherAnalysisIsFoundByThePlaceInItsNameAndOpensOnceItIsTold() {
        Origin flow = PRESENTER.beneath(PRESENTER.beneath(PRESENTER.root(KEY, DERIVATION)).getFirst()).getFirst();
        FigureKey key = new FigureKey(FLOW.id(), "fans", "hot");
        assertEquals(Optional.of(key), flow.elsewhere());
        assertEquals(Optional.of(Subject.passage("fans")), flow.subject());
        assertTrue(flow.opens());
        Derivation other = Derivation.of(List.of(new Trace.Step(FLOW.id(), "fans", AIR, 0.02, List.of(
                new Trace.Term("speed", QuantityKind.NUMBER, 1, "condition hot")))), KINDS);
        Origin told = flow.told(other, PRESENTER.root(key, other).steps());
        assertEquals(List.of("speed"), PRESENTER.beneath(told).stream().map(Origin::label).toList());
        assertEquals(Optional.of(Subject.condition("hot")), PRESENTER.beneath(told).getFirst().subject());
        assertFalse(flow.told(Derivation.NOTHING, List.of()).opens());
        assertTrue(flow.told(DERIVATION, STEPS.subList(1, 2)).again());
        assertFalse(flow.told(DERIVATION, STEPS.subList(1, 2)).opens());
    }

    @Test
    void aValueTellsItsFormulaWhereItHoldsAndWhereItIsPublished() {
        Origin.Told told = PRESENTER.told(PRESENTER.root(KEY, DERIVATION));
        assertEquals("junction temperature at cpu = 76.9 °C", told.heading());
        assertEquals("T = T air + q R", told.formula());
        assertEquals(List.of("By chain.", "Holds: Heat goes one way.", "Source: A book, eq. (1)."), told.lines());
    }

    @Test
    void aFigureThatNothingExplainsSaysSo() {
        Origin root = PRESENTER.root(KEY, Derivation.NOTHING);
        assertFalse(root.opens());
        assertEquals(List.of("The analysis does not say how it came to this figure."), PRESENTER.told(root).lines());
    }

    @Test
    void allStepsAsText() {
        assertEquals("""
                junction temperature at cpu in hot: 76.9 °C   (thermal.junction.temperature)

                1.  air at it at cpu = 36.9 °C
                    by    air: T air = T + q/(m cp)
                    with  flow through fans = 72.0 m³/h   from airflow.bank.flow
                          junction = 76.9 °C   from thermal.junction.temperature
                    [another book]
                2.  junction temperature at cpu = 76.9 °C
                    by    chain: T = T air + q R
                    with  air temperature = 36.9 °C   from air at it
                          heat q = 35.0 W   from heat source cpu, condition hot
                    holds heat goes one way
                    [a book, eq. (1)]
                """, PRESENTER.text(KEY, DERIVATION));
    }
}
