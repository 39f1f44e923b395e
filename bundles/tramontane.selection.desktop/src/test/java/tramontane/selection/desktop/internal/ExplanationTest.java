package tramontane.selection.desktop.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import tramontane.analysis.Amount;
import tramontane.analysis.Evaluation;
import tramontane.analysis.Severity;
import tramontane.analysis.Table;
import tramontane.analysis.Verdict;
import tramontane.model.Quantity;
import tramontane.model.Requirement;
import tramontane.model.Value;
import tramontane.physics.units.UnitSystem;
import tramontane.selection.Candidate;
import tramontane.selection.Criterion;
import tramontane.selection.Merit;
import tramontane.selection.Selection;

class ExplanationTest {

    private static Explanation of(int row) {
        Listing listing = Listing.of(Given.done(), Given.duty(), Optional.of(Given.catalogue()), Listing.BY_RANK, "", true, UnitSystem.METRIC);
        return Explanation.of(listing.rows().get(row), Given.done());
    }

    private static String text(Explanation explanation, String heading) {
        return String.join(" ", section(explanation, heading).sentences().stream().map(sentence -> sentence.in(UnitSystem.METRIC)).toList());
    }

    private static Section section(Explanation explanation, String heading) {
        return explanation.sections().stream().filter(section -> section.heading().equals(heading)).findFirst().orElseThrow();
    }

    @Test
    void itSaysWhereOneStandsAndWhoIsBetterInEverything() {
        Explanation second = of(1);
        assertEquals("Garbin 92, single, rank 2", second.title());
        assertEquals("It is number 2 by the weights, with merit 42 where the first, Garbin 40, single, has 100. Garbin 40, single is as good in every criterion and better in one.",
                text(second, "Why it stands there"));
        assertEquals("It comes first by the weights. No other is as good in everything and better in something: it is in the Pareto set.", text(of(0), "Why it stands there"));
        assertTrue(text(of(2), "Why it stands there").contains("comes behind"), text(of(2), "Why it stands there"));
    }

    @Test
    void itNamesWhatCouldNotBeJudged() {
        Candidate known = Given.candidates().getFirst();
        Verdict verdict = new Verdict(new Requirement("lab.level", "desk", Optional.empty(), Optional.of(Quantity.of(40)), List.of(), Value.Tree.EMPTY), "hot day",
                Severity.NOT_JUDGED, Optional.empty(), 0, "nothing loaded gives a figure lab.level");
        Candidate silent = new Candidate(known.part(), known.arrangement(), known.setting(), known.speed(), known.adjustable(), known.values(), known.steps(),
                known.unknown(), known.front(), known.tightest(), 1, known.design(), Optional.of(new Evaluation(known.design(), List.of(), List.of(), List.of(),
                List.of(verdict), false)));
        Choosing choosing = Given.done();
        Selection done = choosing.selection().orElseThrow();
        Selection.Counts counts = done.counts();
        Choosing changed = new Choosing(choosing.status(), choosing.task(), choosing.fraction(), choosing.message(), choosing.judged(), choosing.may(), List.of(silent),
                Optional.of(new Selection(done.needs(), done.criteria(), List.of(silent), done.front(), done.passed(), done.rejected(), done.nearest(),
                        new Selection.Counts(counts.parts(), counts.fitting(), counts.arranged(), counts.may(), counts.exact(), 1, 1), done.why(), done.findings(), false)), "");
        assertTrue(changed.words().endsWith("3 judged exactly, 1 meets everything that could be judged"), changed.words());
        Listing listing = Listing.of(changed, Given.duty(), Optional.of(Given.catalogue()), Listing.BY_RANK, "", true, UnitSystem.METRIC);
        String said = text(Explanation.of(listing.rows().getFirst(), changed), "What limits it");
        assertTrue(said.endsWith("1 requirement could not be judged: lab.level at desk in hot day (nothing loaded gives a figure lab.level)."), said);
    }

    @Test
    void itSaysWhatLimitsIt() {
        assertTrue(text(of(0), "What limits it").startsWith("Flow at movers in nominal is 289 m³/h where at least 288 m³/h is required: just met."), text(of(0), "What limits it"));
        assertTrue(text(of(1), "What limits it").contains("12.0 % to spare"));
        assertEquals("the first takes least", text(of(0), "Why it wins"));
    }

    /** 100 times the shares of all criteria is the merit: 2^-Σ w Δsteps / Σ w. */
    @Test
    void theMeritsOfTheCriteriaMultiplyToTheMerit() {
        List<Candidate> all = Given.candidates();
        Map<String, Double> weights = Map.of(Criterion.POWER, 1.0, Criterion.COST, 1.0);
        double product = 1;
        for (Criterion criterion : Given.CRITERIA) {
            product *= Explanation.meritAlone(weights, Given.CRITERIA, criterion, all.get(1).values().get(criterion.id()), all.get(0).values().get(criterion.id())) / 100;
        }
        assertEquals(Merit.of(all.get(0), all.get(1)).getAsLong(), 100 * product, 0.5);
        Table table = section(of(1), "Why it stands there").table().orElseThrow();
        assertEquals(2.0, ((Amount) table.rows().getFirst().get(4)).si(), 1e-12, "twice the power of the first");
    }

    @Test
    void whatWasLeftOutSaysWhyAndWhatWouldHaveToChange() {
        assertTrue(text(of(3), "Why it is not in the list").contains("from 70.0 % of its speed on"));
        assertTrue(text(of(4), "Why it is left out").startsWith("it gives 180 m³/h where 288 m³/h are needed it would do with 60.0 % more speed"));
    }
}
