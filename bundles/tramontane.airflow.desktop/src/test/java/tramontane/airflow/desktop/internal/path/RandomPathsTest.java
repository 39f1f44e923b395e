package tramontane.airflow.desktop.internal.path;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.Example;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import tramontane.model.Bay;
import tramontane.model.Design;
import tramontane.model.Passage;
import tramontane.physics.units.UnitSystem;

class RandomPathsTest {

    @Provide
    Arbitrary<Design> designs() {
        Arbitrary<List<String>> bays = Arbitraries.of("a", "b", "c", "d", "e", "a bay of a rather long name that is cut", "").list().ofMaxSize(8);
        Arbitrary<String> ends = Arbitraries.of("a", "b", "c", "d", "e", "missing", "", Bay.OUTSIDE, Bay.OUTSIDE, Bay.OUTSIDE);
        Arbitrary<Passage> passage = Combinators.combine(Arbitraries.of("p", "q", "r", "s", "t", "u", ""), Arbitraries.of("gap", Passage.BANK, "grille", "?"),
                ends, ends).as(RandomPaths::passage);
        return Combinators.combine(bays, passage.list().ofMaxSize(20)).as(RandomPaths::of);
    }

    @Property(tries = 150)
    void allBaysAndPassagesAreDrawnWhateverTheyAre(@ForAll("designs") Design design, @ForAll long seed, @ForAll ColourBy by) {
        PathPicture picture = Samples.picture(design, RandomPaths.values(design, seed), by);
        design.airPath().bays().forEach(bay -> assertTrue(picture.bays().stream().anyMatch(shape -> shape.id().equals(bay.id()))));
        assertEquals(design.airPath().passages().size(), picture.ribbons().size());
        assertEquals(design.airPath().passages().size(), picture.joints().size());
        picture.ribbons().forEach(ribbon -> assertTrue(ribbon.width() > 0 && ribbon.width() <= PathGraph.FULL && !ribbon.halves().isEmpty()
                && ribbon.halves().stream().noneMatch(half -> half.spine().isEmpty())));
        List<Box> boxes = new ArrayList<>(picture.bays().stream().map(PathPicture.BayShape::box).toList());
        picture.joints().forEach(joint -> boxes.add(joint.box()));
        for (int i = 0; i < boxes.size(); i++) {
            for (int j = i + 1; j < boxes.size(); j++) {
                assertTrue(!boxes.get(i).overlaps(boxes.get(j)), boxes.get(i) + " lies on " + boxes.get(j));
            }
        }
        picture.bays().forEach(bay -> assertTrue(bay.box().x() >= picture.source().box().right() && bay.box().right() <= picture.sink().box().x()));
    }

    @Property(tries = 60)
    void theSameGivesTheSameAndValuesMoveNothing(@ForAll("designs") Design design, @ForAll long one, @ForAll long other) {
        PathPicture first = Samples.picture(design, RandomPaths.values(design, one), ColourBy.PRESSURE);
        assertEquals(first, Samples.picture(design, RandomPaths.values(design, one), ColourBy.PRESSURE));
        PathPicture second = Samples.picture(design, RandomPaths.values(design, other), ColourBy.PRESSURE);
        assertEquals(first.bays().stream().map(PathPicture.BayShape::box).toList(), second.bays().stream().map(PathPicture.BayShape::box).toList());
        IntStream.range(0, first.joints().size()).forEach(i -> assertEquals(first.joints().get(i).collar().middle().x(),
                second.joints().get(i).collar().middle().x(), 1e-9));
    }

    @Property(tries = 60)
    void baysPutAnywhereAreThereAndBreakNothing(@ForAll("designs") Design design, @ForAll("spots") Spot spot) {
        if (design.airPath().bays().isEmpty() || design.airPath().bays().getFirst().id().isEmpty()) {
            return;
        }
        String bay = design.airPath().bays().getFirst().id();
        PathPicture picture = Samples.picture(PathEdits.move(design, bay, spot), RandomPaths.values(design, 1), ColourBy.TEMPERATURE);
        Box box = picture.bays().stream().filter(shape -> shape.id().equals(bay)).findFirst().orElseThrow().box();
        assertEquals(0, box.middle().distance(spot), 1);
        assertEquals(design.airPath().passages().size(), picture.ribbons().size());
        assertTrue(picture.source().box().right() < box.x() && picture.sink().box().x() > box.right());
    }

    @Provide
    Arbitrary<Spot> spots() {
        Arbitrary<Integer> place = Arbitraries.integers().between(-2000, 4000);
        return Combinators.combine(place, place).as((x, y) -> new Spot(x, y));
    }

    @Example
    void threeHundredBaysAreLaidOut() {
        Design design = RandomPaths.large(300);
        PathGraph graph = PathGraph.of(design, Measure.COMMON);
        Placement placement = LayeredPlacement.free(graph);
        assertTrue(placement.fits(graph));
        AirValues values = RandomPaths.values(design, 3);
        PathPicture picture = PathPicture.of(design, graph, placement, values, ColourBy.TEMPERATURE, UnitSystem.METRIC, Measure.COMMON);
        assertEquals(300, picture.bays().size());
    }
}
