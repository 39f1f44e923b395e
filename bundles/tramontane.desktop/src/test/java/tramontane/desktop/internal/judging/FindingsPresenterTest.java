package tramontane.desktop.internal.judging;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static tramontane.desktop.internal.judging.Samples.DESIGN;
import static tramontane.desktop.internal.judging.Samples.column;
import static tramontane.desktop.internal.judging.Samples.complete;
import static tramontane.desktop.internal.judging.Samples.evaluation;
import static tramontane.desktop.internal.judging.Samples.scene;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.Test;
import tramontane.analysis.Amount;
import tramontane.analysis.Finding;
import tramontane.analysis.Severity;
import tramontane.desktop.Results;
import tramontane.desktop.Scene;
import tramontane.model.Problem;
import tramontane.model.edit.Subject;
import tramontane.physics.units.QuantityKind;
import tramontane.physics.units.UnitSystem;

class FindingsPresenterTest {

    private static final String FIRST = "any one failed: fans 1 locked";
    private static final String SECOND = "any one failed: fans 2 locked";

    private static Finding drop(String caseId, double pascal) {
        return Finding.caution("slot", "costs ", new Amount(pascal, QuantityKind.PRESSURE)).remedy("widen it").in(caseId);
    }

    private static final List<Finding> FOUND = List.of(Finding.note("grille", "is coarse").in("hot"), drop("mild", 5), drop("hot", 9), drop(FIRST, 9),
            drop(SECOND, 9), Finding.error("", "an analysis failed").in("hot"), Finding.of(Severity.MET, "fans", "is fine"),
            Finding.caution("fans", "stalls").in("mild"));

    private static Scene scene1(String front, Problem... problems) {
        return scene(DESIGN, complete(evaluation(DESIGN, List.of(), FOUND, List.of())), front, UnitSystem.METRIC, problems);
    }

    private static Findings all(String front, Problem... problems) {
        return FindingsPresenter.of(scene1(front, problems), Findings.Filter.NONE);
    }

    @Test
    void theWorstComeFirstThenByPlaceInTheDesignAndWhatHoldsIsNotListed() {
        Findings findings = all("hot", Problem.error("airPath.passages[1].gap", "is too small"));
        assertEquals(List.of("mistake", "error", "caution", "caution", "note"), column(findings.sheet(), 0));
        assertEquals(List.of("slot, gap", "", "slot", "fans", "grille"), column(findings.sheet(), 2));
        assertEquals(Map.of(Findings.Level.ERRORS, 2, Findings.Level.CAUTIONS, 2, Findings.Level.NOTES, 1), findings.counts());
    }

    @Test
    void whatIsSaidInSeveralConditionsStandsInOneRow() {
        Findings findings = all("hot");
        assertEquals("Costs 9.00 Pa.", findings.sheet().rows().get(1).cells().get(1).text());
        assertEquals("all conditions; numbers of hot", findings.sheet().rows().get(1).cells().get(3).text());
    }

    @Test
    void theNumbersOfTheCaseInFrontStandForTheOthers() {
        assertEquals("Costs 5.00 Pa.", all("mild").sheet().rows().get(1).cells().get(1).text());
        assertEquals(all("hot").sheet().rows().get(1).key(), all("mild").sheet().rows().get(1).key());
    }

    @Test
    void aRowLeadsToItsThingAndCase() {
        Findings findings = all(SECOND, Problem.error("airPath.passages[1].gap", "is too small"));
        assertEquals(Optional.of(Subject.passage("slot")), findings.targets().get(findings.sheet().rows().getFirst().key()).subject());
        Findings.Target drop = findings.targets().get(findings.sheet().rows().get(2).key());
        assertEquals(Optional.of(Subject.passage("slot")), drop.subject());
        assertEquals(Optional.of(SECOND), drop.front());
    }

    @Test
    void theFilterLeavesOutLevelsOtherCasesAndOtherWords() {
        Scene scene = scene1("hot");
        assertEquals(List.of("error", "note"), column(FindingsPresenter.of(scene,
                new Findings.Filter(Set.of(Findings.Level.CAUTIONS), false, "")).sheet(), 0));
        assertEquals(List.of("", "slot", "grille"), column(FindingsPresenter.of(scene, new Findings.Filter(Set.of(), true, "")).sheet(), 2));
        assertEquals(List.of("slot"), column(FindingsPresenter.of(scene, new Findings.Filter(Set.of(), false, "WIDEN pa")).sheet(), 2));
        assertEquals("Nothing of 4 findings passes the filter.", FindingsPresenter.of(scene, new Findings.Filter(Set.of(), false, "zebra")).empty());
    }

    @Test
    void anEmptyListSaysWhy() {
        assertEquals("Computing…", FindingsPresenter.of(scene(DESIGN, new Results(Optional.empty(), Optional.empty(), true), "hot", UnitSystem.METRIC),
                Findings.Filter.NONE).empty());
        assertEquals("Nothing to report.", FindingsPresenter.of(scene(DESIGN, complete(evaluation(DESIGN, List.of(), List.of(), List.of())), "hot",
                UnitSystem.METRIC), Findings.Filter.NONE).empty());
        assertTrue(FindingsPresenter.of(scene(DESIGN, Results.NONE, "hot", UnitSystem.METRIC), Findings.Filter.NONE).empty().startsWith("Nothing was computed"));
    }

    @Test
    void aMistakeThatIsSomethingMissingNamesIt() {
        Findings findings = all("hot", Problem.missing("airPath.passages[2].mover", "; expected a part"));
        assertEquals("Mover is missing; expected a part.", findings.sheet().rows().getFirst().cells().get(1).text());
    }
}
