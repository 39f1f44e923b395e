package tramontane.airflow.desktop.internal.path;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import tramontane.analysis.Engine;
import tramontane.model.Bay;
import tramontane.model.Design;
import tramontane.model.Passage;

class PathPictureTest {

    static Stream<Arguments> cases() {
        return Samples.NAMES.stream().flatMap(name -> Samples.evaluation(name).cases().stream()
                .map(Engine.Case::concrete).map(condition -> Arguments.of(name, condition.id())));
    }

    @ParameterizedTest
    @MethodSource("cases")
    void labelsOverlapNeitherBoxesNorEachOther(String name, String caseId) {
        PathPicture picture = Samples.picture(Samples.design(name), Samples.values(name, caseId), ColourBy.TEMPERATURE);
        assertTrue(picture.solved());
        Map<String, Box> boxes = new LinkedHashMap<>();
        picture.bays().forEach(bay -> boxes.put("bay " + bay.id(), bay.box()));
        boxes.put("source", picture.source().box());
        boxes.put("sink", picture.sink().box());
        picture.joints().forEach(joint -> {
            boxes.put("collar " + joint.passage(), joint.collar());
            for (int i = 0; i < joint.lines().size(); i++) {
                boxes.put("line " + i + " of " + joint.passage() + " " + joint.lines().get(i).text(), joint.lines().get(i).box());
            }
        });
        assertApart(boxes);
        picture.bays().forEach(bay -> bay.lines().forEach(line -> assertTrue(inside(bay.box(), line.box()), bay.id())));
    }

    @ParameterizedTest
    @MethodSource("cases")
    void ribbonsRunClearOfForeignBoxesAndLabels(String name, String caseId) {
        PathPicture picture = Samples.picture(Samples.design(name), Samples.values(name, caseId), ColourBy.TEMPERATURE);
        List<Passage> passages = Samples.design(name).airPath().passages();
        for (PathPicture.Ribbon ribbon : picture.ribbons()) {
            for (PathPicture.Half half : ribbon.halves()) {
                for (Curve curve : half.spine()) {
                    for (int i = 1; i < 20; i++) {
                        Box slice = Box.around(curve.at(i / 20.0), 0.5, ribbon.width());
                        picture.bays().forEach(bay -> assertFalse(slice.overlaps(bay.box()),
                                passages.get(ribbon.passage()).id() + " runs across bay " + bay.id()));
                        picture.joints().stream().filter(joint -> joint.passage() != ribbon.passage()).forEach(joint -> joint.lines()
                                .forEach(line -> assertFalse(slice.overlaps(line.box()),
                                        passages.get(ribbon.passage()).id() + " runs across \"" + line.text() + "\"")));
                    }
                }
            }
        }
    }

    @ParameterizedTest
    @MethodSource("cases")
    void whatComesIntoABayIsAsWideAsWhatLeavesIt(String name, String caseId) {
        Design design = Samples.design(name);
        PathPicture picture = Samples.picture(design, Samples.values(name, caseId), ColourBy.PRESSURE);
        Map<String, Double> balance = new LinkedHashMap<>();
        double widest = 0;
        for (PathPicture.Ribbon ribbon : picture.ribbons()) {
            Passage passage = design.airPath().passages().get(ribbon.passage());
            double signed = ribbon.reverse() ? -ribbon.width() : ribbon.width();
            balance.merge(passage.from(), -signed, Double::sum);
            balance.merge(passage.to(), signed, Double::sum);
            widest = Math.max(widest, ribbon.width());
        }
        balance.forEach((bay, rest) -> assertEquals(0, rest, 2 * PathSketch.THINNEST, bay));
        assertTrue(widest > PathGraph.FULL / 8 && widest <= PathGraph.FULL + 1e-9);
    }

    @Test
    void reverseFlowIsMarkedInWordsHeadsAndHatches() {
        String caseId = "any one failed: fans 1 locked";
        AirValues values = Samples.values("observatory", caseId);
        Map<String, AirValues.PassageAir> turned = new LinkedHashMap<>(values.passages());
        AirValues.PassageAir gap = turned.get("cable gap");
        turned.put("cable gap", new AirValues.PassageAir(-gap.massFlow(), -gap.flow(), -gap.drop(), gap.velocity(), gap.flowSaid(), gap.dropSaid()));
        Design design = Samples.design("observatory");
        PathPicture before = Samples.picture(design, values, ColourBy.TEMPERATURE);
        PathPicture after = Samples.picture(design, new AirValues(caseId, turned, values.bays(), values.banks(), values.failed(), false),
                ColourBy.TEMPERATURE);
        assertFalse(before.ribbons().get(5).reverse());
        assertTrue(before.ribbons().get(5).hatches().isEmpty());
        PathPicture.Ribbon ribbon = after.ribbons().get(5);
        assertTrue(ribbon.reverse());
        assertFalse(ribbon.hatches().isEmpty());
        assertTrue(ribbon.marks().stream().allMatch(mark -> mark.direction().x() < 0));
        assertTrue(after.joints().get(5).lines().stream().anyMatch(line -> line.text().equals("reverse") && line.tone() == PathPicture.Tone.CAUTION));
        assertEquals(before.joints().get(5).box(), after.joints().get(5).box(), "it stands where it stood");
    }

    @Test
    void aFailedPositionShowsItsState() {
        String caseId = "any one failed: fans 1 locked";
        PathPicture picture = Samples.picture(Samples.design("observatory"), Samples.values("observatory", caseId), ColourBy.TEMPERATURE);
        List<PathPicture.Cell> cells = picture.joints().get(6).cells();
        assertEquals(2, cells.size());
        assertTrue(cells.get(0).failed().isPresent());
        assertTrue(cells.get(1).failed().isEmpty());
        assertTrue(picture.joints().get(6).lines().stream().anyMatch(line -> line.text().contains("no. 1 locked")));
    }

    @Test
    void nothingSolvedIsThinAndWithoutNumbers() {
        PathPicture picture = Samples.picture(Samples.design("cabinet"), AirValues.NONE, ColourBy.TEMPERATURE);
        assertFalse(picture.solved());
        assertTrue(picture.legend().isEmpty());
        assertTrue(picture.ribbons().stream().allMatch(ribbon -> ribbon.width() == PathSketch.UNKNOWN && !ribbon.known() && ribbon.marks().isEmpty()));
        Stream.concat(picture.bays().stream().flatMap(bay -> bay.lines().stream()), Stream.concat(picture.source().lines().stream(),
                picture.sink().lines().stream())).forEach(line -> assertEquals(Measure.Face.NAME, line.face()));
    }

    @Test
    void aLoopAPassageToNowhereAndOneThatEndsWhereItBeginsAreDrawn() {
        Design design = Samples.parse("""
                {'format': 1, 'airPath': {'bays': ['a', 'b', 'lonely'], 'passages': [
                  {'id': 'in', 'kind': 'grille', 'from': 'outside', 'to': 'a'},
                  {'id': 'on', 'kind': 'opening', 'from': 'a', 'to': 'b'},
                  {'id': 'back', 'kind': 'gap', 'from': 'b', 'to': 'a'},
                  {'id': 'self', 'kind': 'gap', 'from': 'b', 'to': 'b'},
                  {'id': 'lost', 'kind': 'gap', 'from': 'b', 'to': 'nowhere'},
                  {'id': 'out', 'kind': 'grille', 'from': 'b', 'to': 'outside'}]}}""");
        PathPicture picture = Samples.picture(design, AirValues.NONE, ColourBy.TEMPERATURE);
        assertEquals(6, picture.ribbons().size());
        assertEquals(List.of("a", "b", "lonely", "nowhere"), picture.bays().stream().map(PathPicture.BayShape::id).toList());
        assertTrue(picture.bays().get(3).missing());
        Curve back = picture.ribbons().get(2).halves().getFirst().spine().getFirst();
        assertTrue(back.end().x() < back.start().x(), "what closes a loop runs back");
        assertTrue(picture.source().box().right() < picture.bays().get(0).box().x());
        assertTrue(picture.sink().box().x() > picture.bays().stream().mapToDouble(bay -> bay.box().right()).max().orElseThrow());
    }

    @Test
    void aDraggedBayStaysWhereItWasPutAndNothingLiesUnderIt() {
        Design design = Samples.design("observatory");
        Box before = Samples.picture(design, AirValues.NONE, ColourBy.TEMPERATURE).bays().get(2).box();
        Spot put = before.middle().plus(-260, 180);
        Design moved = PathEdits.move(design, "rear", put);
        PathPicture picture = Samples.picture(moved, AirValues.NONE, ColourBy.TEMPERATURE);
        assertEquals(put.x(), picture.bays().get(2).box().middle().x(), 0.5);
        assertEquals(put.y(), picture.bays().get(2).box().middle().y(), 0.5);
        Map<String, Box> boxes = new LinkedHashMap<>();
        picture.bays().forEach(bay -> boxes.put(bay.id(), bay.box()));
        picture.joints().forEach(joint -> boxes.put("joint " + joint.passage(), joint.box()));
        assertApart(boxes);
        assertEquals(design, PathEdits.release(moved, "rear"));
    }

    @Test
    void valuesMoveNoBoxAndNoJoint() {
        Design design = Samples.design("cabinet");
        PathPicture one = Samples.picture(design, Samples.values("cabinet", "nominal"), ColourBy.TEMPERATURE);
        PathPicture other = Samples.picture(design, Samples.values("cabinet", "night, slow"), ColourBy.PRESSURE);
        PathPicture none = Samples.picture(design, AirValues.NONE, ColourBy.PRESSURE);
        for (PathPicture picture : List.of(other, none)) {
            assertEquals(one.bays().stream().map(PathPicture.BayShape::box).toList(), picture.bays().stream().map(PathPicture.BayShape::box).toList());
            assertEquals(one.source().box().x(), picture.source().box().x());
        }
        assertTrue(one.bays().stream().noneMatch(bay -> bay.id().equals(Bay.OUTSIDE)));
    }

    private static void assertApart(Map<String, Box> boxes) {
        List<String> names = new ArrayList<>(boxes.keySet());
        for (int i = 0; i < names.size(); i++) {
            for (int j = i + 1; j < names.size(); j++) {
                assertFalse(boxes.get(names.get(i)).overlaps(boxes.get(names.get(j))),
                        names.get(i) + " " + boxes.get(names.get(i)) + " lies on " + names.get(j) + " " + boxes.get(names.get(j)));
            }
        }
    }

    private static boolean inside(Box outer, Box inner) {
        return inner.x() >= outer.x() && inner.y() >= outer.y() && inner.right() <= outer.right() && inner.bottom() <= outer.bottom();
    }
}
