package tramontane.airflow.desktop.internal.path;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tramontane.model.Design;
import tramontane.model.FailedMover;
import tramontane.model.Passage;
import tramontane.model.edit.Edit;
import tramontane.model.edit.Edits;
import tramontane.model.edit.Subject;
import tramontane.physics.units.UnitSystem;

class PathPresenterTest {

    private static final String LOCKED = "any one failed: fans 1 locked";

    private final PathPresenter presenter = new PathPresenter(Measure.COMMON, () -> new Edits(Samples.engine().forms()));
    private final Design observatory = Samples.design("observatory");

    @BeforeEach
    void shown() {
        show(observatory, Samples.values("observatory", "hot day"));
    }

    private void show(Design design, AirValues values) {
        presenter.show(design, values, UnitSystem.METRIC);
        presenter.wanted().ifPresent(graph -> presenter.placed(graph, LayeredPlacement.free(graph)));
    }

    private static PathTarget target(String text) {
        return text.equals("source") ? PathTarget.SOURCE : text.equals("sink") ? PathTarget.SINK
                : text.matches("\\d+") ? new PathTarget.Joint(Integer.parseInt(text)) : new PathTarget.Chamber(text);
    }

    @ParameterizedTest
    @CsvSource({"source, ALONG, 0", "0, ALONG, inlet", "inlet, ALONG, 1", "1, ALONG, front", "rear, ALONG, 6", "6, ALONG, outlet", "7, ALONG, sink",
        "sink, BACK, 7", "outlet, BACK, 6", "5, BACK, source", "5, ALONG, rear", "2, DOWN, 3", "3, DOWN, 4", "4, UP, 3", "3, UP, 2"})
    void arrowsGoAlongTheFlowAndToWhatLiesBeside(String from, PathPresenter.Way way, String to) {
        presenter.select(Optional.of(target(from)));
        assertEquals(Optional.of(target(to)), presenter.next(way));
    }

    @Test
    void everythingIsFoundWhereItIsDrawn() {
        PathPicture picture = presenter.state().picture().orElseThrow();
        picture.bays().forEach(bay -> assertEquals(Optional.of(new PathTarget.Chamber(bay.id())), presenter.hit(bay.box().middle())));
        picture.joints().stream().filter(joint -> !joint.bank()).forEach(joint -> assertEquals(Optional.of(new PathTarget.Joint(joint.passage())),
                presenter.hit(joint.collar().middle())));
        picture.joints().forEach(joint -> joint.lines().forEach(line -> assertEquals(Optional.of(new PathTarget.Joint(joint.passage())),
                presenter.hit(line.box().middle()))));
        picture.joints().get(6).cells().forEach(cell -> assertEquals(Optional.of(new PathTarget.Position(6, cell.position())),
                presenter.hit(cell.box().middle())));
        Curve gap = picture.ribbons().get(5).halves().getFirst().spine().getFirst();
        assertEquals(Optional.of(new PathTarget.Joint(5)), presenter.hit(gap.at(0.5).plus(0, 3)));
        assertEquals(Optional.of(PathTarget.SOURCE), presenter.hit(picture.source().box().middle().plus(-10, picture.source().box().height() / 2 - 4)));
        assertEquals(Optional.empty(), presenter.hit(new Spot(-5000, -5000)));
    }

    @Test
    void hoveringTellsAllDigitsAndBounds() {
        String card = presenter.hover(new PathTarget.Joint(2));
        assertTrue(card.startsWith("card cage, card cage from front to rear\nflow "), card);
        assertTrue(card.contains(", between ") && card.contains(" m³/h") && card.contains("velocity "), card);
        assertTrue(presenter.hover(new PathTarget.Chamber("rear")).contains("pressure above outside \u2212"));
        show(observatory, Samples.values("observatory", LOCKED));
        assertTrue(presenter.hover(new PathTarget.Position(6, 1)).startsWith("fans no. 1, locked"));
        assertTrue(presenter.hover(new PathTarget.Position(6, 2)).startsWith("fans no. 2, running"));
        show(observatory, Samples.values("observatory", LOCKED).stale(true));
        assertTrue(presenter.hover(new PathTarget.Chamber("rear")).endsWith("values of the design before the last change"));
    }

    @Test
    void theTableSaysTheSame() {
        List<PathRow> rows = presenter.state().rows();
        assertEquals(observatory.airPath().passages().stream().map(Passage::id).toList(), rows.stream().map(row -> row.cells().getFirst()).toList());
        assertEquals(List.of("fans", "bank", "rear", "outlet"), rows.get(6).cells().subList(0, 4));
        assertTrue(rows.get(6).cells().get(4).endsWith(" m³/h") && rows.get(6).cells().get(5).startsWith("\u2212"));
        assertTrue(rows.get(2).spoken().contains("velocity ") && rows.get(2).spoken().contains("temperature 35.0 °C"), rows.get(2).spoken());
        show(observatory, AirValues.NONE);
        assertTrue(presenter.state().rows().stream().allMatch(row -> row.cells().subList(4, 8).stream().allMatch(String::isEmpty)));
    }

    @Test
    void newValuesNeedNoLayoutAndNewBaysDo() {
        PathPicture before = presenter.state().picture().orElseThrow();
        presenter.show(observatory, Samples.values("observatory", "nominal"), UnitSystem.US);
        assertTrue(presenter.wanted().isEmpty());
        assertEquals(before.bays().get(0).box(), presenter.state().picture().orElseThrow().bays().get(0).box());
        Design more = presenter.addBay().design().orElseThrow();
        presenter.show(more, AirValues.NONE, UnitSystem.METRIC);
        PathGraph wanted = presenter.wanted().orElseThrow();
        assertEquals(4, presenter.state().picture().orElseThrow().bays().size(), "the last picture stays until the layout is there");
        presenter.placed(PathGraph.of(Design.EMPTY, Measure.COMMON), Placement.NONE);
        assertTrue(presenter.wanted().isPresent(), "a layout of something else is dropped");
        presenter.placed(wanted, LayeredPlacement.free(wanted));
        assertEquals(5, presenter.state().picture().orElseThrow().bays().size());
    }

    @Test
    void anEditKeepsTheOneBeforeItThoughThatIsNotDrawnYet() {
        Design one = presenter.addBay().design().orElseThrow();
        presenter.show(one, AirValues.NONE, UnitSystem.METRIC);
        assertEquals(6, presenter.addBay().design().orElseThrow().airPath().bays().size());
        assertEquals(5, presenter.move("rear", new Spot(1, 2)).design().orElseThrow().airPath().bays().size());
    }

    @Test
    void aBayThatWasPutSomewhereNeedsNoNewLayout() {
        Box box = presenter.box(new PathTarget.Chamber("rear")).orElseThrow();
        Edit edit = presenter.move("rear", box.middle().plus(40.4, -60.2));
        assertEquals("move rear", edit.what());
        presenter.show(edit.design().orElseThrow(), AirValues.NONE, UnitSystem.METRIC);
        assertTrue(presenter.wanted().isEmpty());
        Spot middle = presenter.box(new PathTarget.Chamber("rear")).orElseThrow().middle();
        assertEquals(0, middle.distance(box.middle().plus(40.4, -60.2)), 0.8);
        assertEquals(observatory, presenter.release("rear").design().orElseThrow());
        assertEquals(observatory, presenter.releaseAll().design().orElseThrow());
    }

    @Test
    void connectingAddsAPassageOfTheKind() {
        Edit edit = presenter.connect(new PathTarget.Chamber("front"), PathTarget.SINK, "gap");
        Passage added = edit.design().orElseThrow().airPath().passages().getLast();
        assertEquals(List.of("gap", "front", "outside"), List.of(added.kind(), added.from(), added.to()));
        assertEquals(Optional.of(Subject.passage(added.id())), edit.subject());
        Passage bank = presenter.connect(PathTarget.SOURCE, new PathTarget.Chamber("rear"), "bank").design().orElseThrow().airPath().passages().getLast();
        assertEquals(Optional.of("Levante 80-25 D24"), bank.parameters().text("mover"));
        assertTrue(presenter.connect(new PathTarget.Joint(0), PathTarget.SINK, "gap").isRefused());
    }

    @Test
    void whileAPassageIsDrawnArrowsGoFromBayToBay() {
        presenter.select(Optional.of(new PathTarget.Chamber("inlet")));
        presenter.linkFrom(presenter.state().selected());
        for (String bay : List.of("front", "rear", "outlet", "sink")) {
            PathTarget next = presenter.next(PathPresenter.Way.ALONG).orElseThrow();
            assertEquals(target(bay), next);
            presenter.select(Optional.of(next));
        }
        assertEquals(Optional.of(new PathTarget.Chamber("outlet")), presenter.next(PathPresenter.Way.BACK));
    }

    @Test
    void whatIsSelectedIsRenamedAndDeleted() {
        presenter.select(Optional.of(new PathTarget.Chamber("front")));
        Design renamed = presenter.rename("forward").design().orElseThrow();
        assertEquals("forward", renamed.airPath().passage("filter").orElseThrow().to());
        Design pinned = PathEdits.move(observatory, "front", new Spot(10, 20));
        show(pinned, AirValues.NONE);
        Design both = presenter.rename("forward").design().orElseThrow();
        assertEquals(Optional.of(new Spot(10, 20)), PathGraph.pin(both, "forward"));
        presenter.select(Optional.of(new PathTarget.Position(6, 2)));
        assertFalse(presenter.remove().design().orElseThrow().airPath().passage("fans").isPresent());
        presenter.select(Optional.of(PathTarget.SINK));
        assertTrue(presenter.remove().isRefused());
        presenter.select(Optional.empty());
        assertTrue(presenter.rename("x").isRefused());
    }

    @Test
    void theSelectionOfTheWindowIsFollowed() {
        presenter.follow(Optional.of(Subject.passage("filter")));
        assertEquals(Optional.of(new PathTarget.Joint(1)), presenter.state().selected());
        presenter.follow(Optional.of(Subject.heatSource("camera cards")));
        assertTrue(presenter.state().selected().isEmpty());
        presenter.select(Optional.of(PathTarget.SINK));
        presenter.follow(Optional.of(Subject.OUTSIDE));
        assertEquals(Optional.of(PathTarget.SINK), presenter.state().selected(), "the side that was chosen stays");
        presenter.select(Optional.of(new PathTarget.Position(6, 2)));
        presenter.follow(Optional.of(Subject.passage("fans")));
        assertEquals(Optional.of(new PathTarget.Position(6, 2)), presenter.state().selected());
    }

    @Test
    void whatIsGoneIsNotSelectedAnyMore() {
        presenter.select(Optional.of(new PathTarget.Chamber("outlet")));
        presenter.linkFrom(Optional.of(new PathTarget.Chamber("outlet")));
        show(presenter.remove().design().orElseThrow().withAirPath(tramontane.model.AirPath.EMPTY), AirValues.NONE);
        assertTrue(presenter.state().selected().isEmpty());
        assertTrue(presenter.state().linking().isEmpty());
        assertTrue(presenter.state().empty());
    }

    @Test
    void coloursChangeAtOnce() {
        assertEquals("air temperature, °C", presenter.state().picture().orElseThrow().legend().orElseThrow().title());
        presenter.colourBy(ColourBy.PRESSURE);
        assertEquals("pressure above outside, Pa", presenter.state().picture().orElseThrow().legend().orElseThrow().title());
    }

    @Test
    void aMoverFailsInTheConditionInFrontAloneAndWorksAgain() {
        presenter.select(Optional.of(target("6")));
        PathTarget.Position second = presenter.positions().get(1);
        assertEquals(2, presenter.positions().size());
        Edit edit = presenter.fail("hot day", second, Optional.of(FailedMover.State.REMOVED));
        assertEquals("fans no. 2 removed in hot day", edit.what());
        Design failed = edit.design().orElseThrow();
        assertEquals(List.of(new FailedMover(Optional.of("fans"), Optional.of(2), FailedMover.State.REMOVED)), failed.conditions().get(1).failed());
        assertEquals(observatory.conditions().getFirst(), failed.conditions().getFirst());
        show(failed, Samples.values("observatory", "hot day"));
        assertEquals(observatory, presenter.fail("hot day", second, Optional.empty()).design().orElseThrow());
        presenter.select(Optional.of(target("0")));
        assertEquals(List.of(), presenter.positions(), "a grille has no movers");
    }
}
