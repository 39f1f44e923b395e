package tramontane.selection.desktop.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import tramontane.analysis.Finding;
import tramontane.model.Design;
import tramontane.physics.units.UnitSystem;
import tramontane.selection.Candidate;
import tramontane.selection.Selection;
import tramontane.selection.Watch;

class CandidatesPresenterTest {

    private final Given.Fake selector = new Given.Fake();
    private final AtOnce desktop = new AtOnce();
    private final List<Candidates> shown = new ArrayList<>();
    private final CandidatesPresenter presenter = new CandidatesPresenter(selector, Given.ENGINE, desktop, shown::add);

    @BeforeEach
    void open() {
        presenter.scene("a", Given.duty(), UnitSystem.METRIC);
        presenter.catalogue(Given.catalogue());
    }

    private Candidates state() {
        return presenter.state();
    }

    @Test
    void beforeItStartsItSaysWhatWouldFillIt() {
        Candidates.Empty empty = state().empty().orElseThrow();
        assertEquals(Candidates.Action.CHOOSE, empty.action());
        assertTrue(empty.sentence().startsWith("4 parts pass the filter."), empty.sentence());
        assertTrue(state().canChoose());
        assertEquals(List.of("power", "cost", "size", "mass"), state().asked().weighed().stream().filter(each -> !each.contains(".")).toList(),
                "nothing loaded tells noise or life");
    }

    @Test
    void rowsFillInAndTheListIsTheSelectors() {
        presenter.choose();
        List<Integer> sizes = shown.stream().map(each -> each.listing().rows().size()).distinct().toList();
        assertEquals(List.of(0, 1, 2, 3), sizes);
        assertTrue(shown.stream().anyMatch(each -> each.choosing().isRunning() && each.choosing().words().equals("2 of 4 judged, 2 meet everything")),
                shown.stream().map(each -> each.choosing().words()).distinct().toList().toString());
        assertEquals(Choosing.Status.DONE, state().choosing().status());
        assertEquals("4 parts, 8 arrangements: 4 may do, 3 judged exactly, 3 meet everything", state().choosing().words());
        assertEquals(List.of("Garbin 40", "Garbin 92", "Garbin 120"), state().listing().rows().stream().map(row -> row.key().part()).toList());
        assertEquals(List.of("choosing a mover for movers"), desktop.started);
    }

    @Test
    void theSelectionStaysWithItsRowWhileOthersArrive() {
        List<List<Key>> during = new ArrayList<>();
        selector.afterFirst = () -> presenter.select(List.of(state().listing().rows().getFirst().key()));
        presenter.choose();
        shown.forEach(each -> during.add(each.selected()));
        assertEquals(List.of("Garbin 120"), state().selected().stream().map(Key::part).toList());
        assertEquals(2, state().listing().rows().indexOf(state().selectedRows().getFirst()), "which has moved from first to third");
        assertEquals(2, during.stream().distinct().count());
    }

    @Test
    void stoppedItKeepsWhatWasFound() {
        selector.afterFirst = presenter::stop;
        desktop.hold = true;
        presenter.choose();
        assertTrue(state().choosing().isRunning());
        desktop.letGo();
        assertEquals(Choosing.Status.STOPPED, state().choosing().status());
        assertEquals("stopped: 1 of 4 judged, 1 meets everything so far; there may be better ones", state().choosing().words());
        assertEquals(1, state().listing().rows().size());
        assertTrue(state().canChoose());
    }

    @Test
    void anErrorIsASentence() {
        selector.findings = new Finding[] {Finding.error("", "nothing loaded knows banks of air movers").remedy("load the airflow bundle")};
        presenter.choose();
        assertEquals(Choosing.Status.FAILED, state().choosing().status());
        assertEquals("nothing loaded knows banks of air movers; load the airflow bundle", state().choosing().words());
        assertEquals("Nothing could be chosen", state().empty().orElseThrow().title());
    }

    @Test
    void aFaultIsASentenceToo() {
        selector.fault = Optional.of(new IllegalStateException("the table is full"));
        presenter.choose();
        assertEquals("the choice failed: the table is full", state().choosing().words());
        assertTrue(state().canChoose());
    }

    @Test
    void whatIsTypedWronglyHoldsItBack() {
        presenter.type(Asked.SIDE_BY_SIDE, "none");
        assertFalse(state().canChoose());
        assertEquals("is a whole number from 1 to 100", state().problems().get(Asked.SIDE_BY_SIDE));
        presenter.choose();
        assertEquals(List.of(), selector.tasks);
        presenter.type(Asked.SIDE_BY_SIDE, "3");
        presenter.choose();
        assertEquals(3, selector.tasks.getFirst().space().columns());
    }

    @Test
    void itIsPutIntoTheDesignAsOneStep() {
        presenter.choose();
        presenter.put();
        assertEquals(List.of("select one candidate to put it into the design"), desktop.said);
        presenter.select(List.of(state().listing().rows().get(1).key()));
        desktop.design = Given.duty();
        presenter.put();
        assertEquals(List.of("put Garbin 92, single into movers"), desktop.steps);
        assertEquals(Given.candidates().get(1).design(), desktop.design, "as the command line puts it");
        presenter.scene("a", desktop.design, UnitSystem.METRIC);
        assertFalse(state().isStale(), "what was chosen for this bank still holds");
        assertEquals("is in the design", state().putWords());
        presenter.select(List.of(state().listing().rows().getFirst().key()));
        assertEquals("put into design", state().putWords());
    }

    @Test
    void anyFigureWithABetterWayMayCount() {
        Candidates.Told flow = state().addable().stream().filter(each -> each.figure().id().equals("airflow.bank.flow")).findFirst().orElseThrow();
        assertTrue(state().addable().stream().allMatch(each -> each.figure().better() != tramontane.analysis.Better.NEITHER));
        assertTrue(state().addable().size() > 20, "of all analyses: " + state().addable().size());
        presenter.weigh(flow.figure().id(), true);
        assertEquals("1", state().asked().text(Asked.weight("airflow.bank.flow")));
        presenter.type(Asked.weight("airflow.bank.flow"), "2");
        presenter.choose();
        assertEquals(2.0, selector.tasks.getFirst().weights().get("airflow.bank.flow"));
        presenter.weigh(flow.figure().id(), false);
        assertFalse(state().asked().weighed().contains("airflow.bank.flow"));
        List<String> names = state().addable().stream().map(each -> state().label(each.figure().id())).toList();
        assertEquals(names.size(), names.stream().distinct().count(), "told apart by their names: " + names);
    }

    @Test
    void whatIsAskedIsKeptAsOneStepAndWhatWasChosenStillHolds() {
        desktop.design = Given.duty();
        presenter.choose();
        assertFalse(state().canKeep(), "nothing differs");
        presenter.keep();
        assertEquals(List.of("the design says the same already"), desktop.said);
        presenter.type(Asked.SIDE_BY_SIDE, "1");
        presenter.type(Asked.LISTED, "7");
        presenter.weigh("airflow.bank.flow", true);
        assertTrue(state().canKeep());
        presenter.keep();
        assertEquals(List.of("keep settings of the choice for movers"), desktop.steps);
        presenter.scene("a", desktop.design, UnitSystem.METRIC);
        assertFalse(state().canKeep());
        assertFalse(state().isStale(), "a wish changes nothing of what was judged");
        assertEquals("7", state().asked().text(Asked.LISTED));
        presenter.scene("b", desktop.design, UnitSystem.METRIC);
        assertEquals("1", state().asked().text(Asked.SIDE_BY_SIDE));
        assertEquals("1", state().asked().text(Asked.weight("airflow.bank.flow")));
        presenter.type(Asked.SIDE_BY_SIDE, "none");
        presenter.keep();
        assertEquals(1, desktop.steps.size(), "what cannot be read is not kept");
    }

    @Test
    void aChangeOfTheDesignMakesItStaleAndKeepsItsRows() {
        presenter.choose();
        assertFalse(state().isStale());
        presenter.scene("a", Given.duty().withName("changed"), UnitSystem.METRIC);
        assertTrue(state().isStale());
        assertEquals(3, state().listing().rows().size());
    }

    @Test
    void anotherDesignEndsTheChoiceAndWhatItStillSaysIsNotHeard() {
        desktop.hold = true;
        presenter.choose();
        presenter.scene("b", Given.sample("observatory"), UnitSystem.METRIC);
        assertTrue(desktop.stopped);
        desktop.letGo();
        assertEquals(Choosing.Status.NOT_STARTED, state().choosing().status());
        assertEquals("fans", state().asked().bank());
        assertEquals(0, state().listing().rows().size());
    }

    @Test
    void whatIsTypedStaysWhileTheDesignChangesElsewhere() {
        presenter.type(Asked.WHERE, "width > 50 mm");
        presenter.scene("a", Given.duty().withName("changed"), UnitSystem.METRIC);
        assertEquals("width > 50 mm", state().asked().text(Asked.WHERE));
        assertEquals(3, state().parts());
    }

    @Test
    void eachEmptyViewSaysWhatWouldFillIt() {
        presenter.scene("b", Design.EMPTY, UnitSystem.METRIC);
        assertEquals(Candidates.Action.SHOW_DESIGN, state().empty().orElseThrow().action());
        presenter.scene("c", Given.duty(), UnitSystem.METRIC);
        presenter.choose();
        presenter.find("nothing like it");
        assertEquals(Candidates.Action.CLEAR_FIND, state().empty().orElseThrow().action());
        presenter.catalogue(tramontane.catalogue.Catalogue.of(List.of(), Given.ENGINE.sectionTypes()));
        assertEquals(Candidates.Action.OPEN_FOLDER, state().empty().orElseThrow().action());
    }

    @Test
    void candidatesKeepTheirColumnsInAComparison() {
        presenter.choose();
        List<Key> keys = state().listing().rows().stream().map(Row::key).toList();
        presenter.select(List.of(keys.get(2)));
        presenter.select(List.of(keys.get(0), keys.get(2)));
        assertEquals(List.of("Garbin 120", "Garbin 40"), state().comparison().heads());
        presenter.compareInFull();
        assertEquals(List.of("Side by side"), state().inFull().orElseThrow().tables().stream().map(tramontane.analysis.Table::title).toList());
    }

    /** The real selector on a sample and the shipped catalogue: what the window shows and puts is what the command line gives. */
    @Test
    void aSampleIsChosenAsOnTheCommandLine() {
        Design quick = Given.sample("quick");
        CandidatesPresenter real = new CandidatesPresenter(Given.REAL, Given.ENGINE, desktop, shown::add);
        real.catalogue(Given.shipped());
        real.scene("q", quick, UnitSystem.METRIC);
        real.type(Asked.WHERE, "family ~ e1 or family ~ n1 or width in 140..172 mm");
        real.choose();
        Candidates end = real.state();
        assertEquals(Choosing.Status.DONE, end.choosing().status(), end.choosing().words());
        Selection again = Given.REAL.choose(end.choosing().task().orElseThrow(), Watch.NONE);
        assertFalse(again.ranked().isEmpty());
        assertEquals(again.ranked().stream().map(Candidate::words).toList(), end.listing().rows().stream().filter(row -> row.rank().isPresent()).map(row -> row.key().words()).toList());
        assertTrue(end.listing().columns().stream().anyMatch(column -> column.id().equals("airflow.bank.flow")), "the flow that is required is shown");
        end.choosing().selection().orElseThrow().ranked().forEach(candidate -> {
            double least = candidate.evaluation().orElseThrow().figures().stream().filter(figure -> figure.kind().id().equals("airflow.bank.flow") && figure.place().equals(end.bank()))
                    .mapToDouble(tramontane.analysis.Figure::value).min().orElseThrow();
            assertEquals(least, ((tramontane.analysis.Amount) end.listing().row(Key.of(candidate)).orElseThrow().cell("airflow.bank.flow")).si(), "the flow of the bank, not of a gap");
        });
        real.select(List.of(end.listing().rows().getFirst().key()));
        desktop.design = quick;
        real.put();
        String old = quick.airPath().passage(end.bank()).orElseThrow().parameters().text("mover").orElse("");
        Design cli = again.ranked().getFirst().design();
        assertEquals(cli.withAirMovers(cli.airMovers().stream().filter(mover -> !mover.id().equals(old)).toList()), desktop.design);
    }
}
