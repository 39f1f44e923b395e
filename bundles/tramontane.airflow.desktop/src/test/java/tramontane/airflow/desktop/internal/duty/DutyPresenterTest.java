package tramontane.airflow.desktop.internal.duty;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.Test;
import tramontane.analysis.Evaluation;
import tramontane.desktop.Results;
import tramontane.model.Design;
import tramontane.model.edit.Subject;

class DutyPresenterTest {

    private static final Design OBSERVATORY = Evaluated.sample(Path.of("../../product/samples/observatory.tramontane.json"));
    private static final Evaluation EVALUATION = Evaluated.of(OBSERVATORY);
    private static final Results RESULTS = new Results(Optional.of(EVALUATION), Optional.empty(), false);
    private static final Evaluation NOTHING = new Evaluation(OBSERVATORY, EVALUATION.cases(), List.of(), List.of(), List.of(), false);

    private static final Design TWO = Evaluated.design("""
            {'format': 1, 'airMovers': [{'id': 'F', 'ratedSpeed': '3000 rpm', 'curves': [{'flow': '0 0.1 m³/s', 'pressure': '100 0 Pa'}]}],
             'airPath': {'bays': ['box'], 'passages': [
               {'id': 'front fan', 'kind': 'bank', 'from': 'outside', 'to': 'box', 'mover': 'F'},
               {'id': 'grille', 'kind': 'opening', 'from': 'box', 'to': 'outside', 'area': '10 cm²'},
               {'id': 'rear fan', 'kind': 'bank', 'from': 'box', 'to': 'outside', 'mover': 'F'}]}}
            """);

    @Test
    void theFirstBankIsShownUntilAnotherIsChosenOrSelected() {
        assertEquals(List.of("front fan", "rear fan"), DutyPresenter.banks(TWO));
        assertEquals(Optional.of("front fan"), DutyPresenter.bank(DutyState.FIRST, TWO));
        DutyState rear = DutyPresenter.selected(DutyState.FIRST, TWO, Optional.of(Subject.passage("rear fan")));
        assertEquals(Optional.of("rear fan"), DutyPresenter.bank(rear, TWO));
        assertSame(rear, DutyPresenter.selected(rear, TWO, Optional.of(Subject.passage("grille"))));
        assertSame(rear, DutyPresenter.selected(rear, TWO, Optional.of(Subject.bay("rear fan"))));
        assertSame(rear, DutyPresenter.selected(rear, TWO, Optional.empty()));
    }

    @Test
    void aBankThatIsGoneGivesWayToTheFirst() {
        assertEquals(Optional.of("fans"), DutyPresenter.bank(DutyState.FIRST.withBank("rear fan"), OBSERVATORY));
        assertEquals(Optional.empty(), DutyPresenter.bank(DutyState.FIRST, Design.EMPTY));
    }

    @Test
    void eachOtherConditionIsShownByItsFirstCase() {
        DutyPresenter.Wanted wanted = DutyPresenter.wanted(DutyState.FIRST, OBSERVATORY, RESULTS, "nominal").orElseThrow();
        assertEquals("fans", wanted.asked().bank());
        assertEquals("nominal", wanted.asked().front());
        assertFalse(wanted.stale());
        String failed = EVALUATION.cases().stream().filter(each -> each.declared().equals("any one failed")).findFirst().orElseThrow().concrete().id();
        assertEquals(Set.of("hot day", "clogged filter", failed), wanted.asked().others());
        assertTrue(EVALUATION.cases().size() > 4, "the condition stands for several cases");
    }

    @Test
    void oneCaseOfAConditionInFrontIsNotShownBesideAnother() {
        String second = EVALUATION.cases().getLast().concrete().id();
        assertEquals(Set.of("nominal", "hot day", "clogged filter"),
                DutyPresenter.wanted(DutyState.FIRST, OBSERVATORY, RESULTS, second).orElseThrow().asked().others());
    }

    @Test
    void conditionsAreLeftOutOneByOneOrAll() {
        DutyState state = DutyState.FIRST.withCondition("hot day", false).withCondition("any one failed", false);
        assertEquals(Set.of("clogged filter"), DutyPresenter.wanted(state, OBSERVATORY, RESULTS, "nominal").orElseThrow().asked().others());
        assertEquals(Set.of("clogged filter", "hot day"), DutyPresenter.wanted(state.withCondition("hot day", true), OBSERVATORY, RESULTS,
                "nominal").orElseThrow().asked().others());
        assertEquals(Set.of(), DutyPresenter.wanted(state.withOthers(false), OBSERVATORY, RESULTS, "nominal").orElseThrow().asked().others());
    }

    @Test
    void whatWasKnownBeforeIsShownAsStaleUntilTheCaseIsComputedAnew() {
        Results half = new Results(Optional.of(NOTHING), Optional.of(EVALUATION), true);
        DutyPresenter.Wanted wanted = DutyPresenter.wanted(DutyState.FIRST, OBSERVATORY, half, "nominal").orElseThrow();
        assertTrue(wanted.stale());
        assertSame(EVALUATION, wanted.evaluation());
    }

    @Test
    void whileNothingIsKnownNothingIsWanted() {
        assertTrue(DutyPresenter.wanted(DutyState.FIRST, OBSERVATORY, new Results(Optional.of(NOTHING), Optional.empty(), true), "nominal").isEmpty());
        assertTrue(DutyPresenter.wanted(DutyState.FIRST, OBSERVATORY, Results.NONE, "nominal").isEmpty());
        // once all is done, the chart itself says why there is none
        assertTrue(DutyPresenter.wanted(DutyState.FIRST, OBSERVATORY, new Results(Optional.of(NOTHING), Optional.empty(), false), "nominal").isPresent());
    }

    @Test
    void theSameChartIsNotMadeTwice() {
        DutyPresenter.Wanted one = DutyPresenter.wanted(DutyState.FIRST, OBSERVATORY, RESULTS, "nominal").orElseThrow();
        DutyPresenter.Wanted again = DutyPresenter.wanted(DutyState.FIRST, OBSERVATORY, RESULTS, "nominal").orElseThrow();
        assertTrue(one.same(again));
        assertFalse(one.same(DutyPresenter.wanted(DutyState.FIRST.withSpeeds(true), OBSERVATORY, RESULTS, "nominal").orElseThrow()));
        assertFalse(one.same(DutyPresenter.wanted(DutyState.FIRST, OBSERVATORY, RESULTS, "hot day").orElseThrow()));
    }

    @Test
    void itSaysWhatWouldFillTheView() {
        assertTrue(DutyPresenter.why(Design.EMPTY, Results.NONE, false).startsWith("The design has no bank"));
        assertTrue(DutyPresenter.why(OBSERVATORY, Results.NONE, true).startsWith("The design has errors"));
        assertEquals("Computing…", DutyPresenter.why(OBSERVATORY, new Results(Optional.empty(), Optional.empty(), true), false));
        assertTrue(DutyPresenter.why(OBSERVATORY, Results.NONE, false).contains("F5"));
    }

    @Test
    void whatIsShownIsKept() {
        DutyState state = DutyState.FIRST.withSpeeds(true).withTolerance(false).withEfficiency(true);
        assertEquals(state, DutyState.parse(state.text()));
        assertEquals(DutyState.FIRST, DutyState.parse(DutyState.FIRST.text()));
        assertFalse(DutyState.parse("").others());
    }

    @Test
    void aSavedChartIsCalledAfterDesignBankAndCase() {
        assertEquals("observatory, fans, hot day", DutyPresenter.fileName("observatory", new DutyChart.Asked("fans", "hot day", Set.of(), false, false, false)));
    }
}
