package tramontane.acoustics.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tramontane.acoustics.Banded;
import tramontane.acoustics.BayNoise;
import tramontane.acoustics.Face;
import tramontane.acoustics.NoiseScene;
import tramontane.acoustics.PassageNoise;
import tramontane.analysis.SectionType;
import tramontane.model.Design;
import tramontane.model.Equipment;
import tramontane.model.Field;
import tramontane.model.Form;
import tramontane.model.FormReader;
import tramontane.model.Problem;
import tramontane.model.Quantity;
import tramontane.model.Shape;
import tramontane.model.Value;
import tramontane.model.Values;
import tramontane.model.file.Limits;
import tramontane.model.file.TreeFile;

/** What is written of the noise of passages, bays and designs. */
class NoiseSectionsTest {

    private static final List<SectionType<?>> TYPES = List.of(new PassageNoiseSection(), new BayNoiseSection(), new NoiseSceneSection());

    private static Value.Tree tree(String json) {
        return TreeFile.parse(json.replace('\'', '"').getBytes(StandardCharsets.UTF_8), Limits.STANDARD).tree().orElseThrow();
    }

    private static List<String> problems(SectionType<?> type, String json, Design design) {
        List<Problem> problems = new ArrayList<>();
        Values values = FormReader.read(type.form(), tree(json), "noise", problems);
        problems.addAll(type.check(values, design, "noise"));
        return problems.stream().map(Problem::sentence).toList();
    }

    private static <T> T read(SectionType<T> type, String json) {
        assertEquals(List.of(), problems(type, json, Design.EMPTY));
        T section = type.decode(FormReader.read(type.form(), tree(json), "", new ArrayList<>()));
        List<Problem> problems = new ArrayList<>();
        assertEquals(section, type.decode(FormReader.read(type.form(), type.encode(section), "", problems)));
        assertEquals(List.of(), problems);
        return section;
    }

    @Test
    void aPassage() {
        PassageNoise noise = read(new PassageNoiseSection(), "{'insertionLoss': '3 5 9 12 dB', 'bands': 'thirds', 'lowestBand':"
                + " '500 Hz', 'tolerance': '1 dB',"
                + " 'area': '120 cm²', 'face': 'rear', 'directivity': 'all round', 'inletObstacle': '20 mm', 'outletObstacle': 0.03}");
        assertEquals(new PassageNoise(Optional.of(new Banded(false, 500, List.of(3.0, 5.0, 9.0, 12.0))), 1, Optional.of(0.012),
                Optional.of(Face.REAR), false, Optional.of(0.02), Optional.of(0.03)), noise);
        assertEquals(PassageNoise.NONE, read(new PassageNoiseSection(), "{}"));
        assertEquals(Optional.of(Banded.always(6)), read(new PassageNoiseSection(), "{'insertionLoss': 6}").insertionLoss());
        assertEquals(9, read(new PassageNoiseSection(), "{'insertionLoss': [1, 2, 3, 4, 5, 6, 7, 8, 9], 'lowestBand': '63.1"
                + " Hz'}").insertionLoss()
                .orElseThrow().thirds(0)[29]);
        for (Face face : Face.values()) {
            assertEquals(Optional.of(face), read(new PassageNoiseSection(), "{'face': '" + face.word() + "'}").face());
        }
    }

    @Test
    void aBay() {
        assertEquals(new BayNoise(0.5, Banded.always(0.8)), read(new BayNoiseSection(), "{'area': '0.5 m²', 'absorption': '80 %'}"));
        assertEquals(new BayNoise(1, new Banded(true, 125, List.of(0.1, 0.3, 0.7))),
                read(new BayNoiseSection(), "{'area': 1, 'absorption': [0.1, 0.3, 0.7], 'lowestBand': '125 Hz'}"));
    }

    @Test
    void aScene() {
        NoiseScene scene = read(new NoiseSceneSection(), "{'space': {'kind': 'room', 'length': '5 m', 'width': '4 m', 'height': '3 m',"
                + " 'reverberationTime': '0.9 0.7 s', 'lowestBand': '1 kHz'}, 'stands': 'on a table', 'height': '0.8 m', 'positions': ["
                + "{'id': 'desk', 'kind': 'operator seated'}, {'id': 'door', 'x': '1 m', 'y': '2 m', 'z': '1.5 m'}, {'id': 'near',"
                + " 'distance': '1 m'}],"
                + " 'background': {'levels': '30 25 20 dB'}, 'declaration': {'production': '1.2 dB'}}");
        assertEquals(new NoiseScene.Space(NoiseScene.Around.ROOM, Optional.of(5.0), Optional.of(4.0), Optional.of(3.0), Optional.empty(),
                Optional.of(new Banded(true, 1000, List.of(0.9, 0.7)))), scene.space());
        assertEquals(60, scene.space().volume().orElseThrow(), 1e-12);
        assertEquals(94, scene.space().surface().orElseThrow(), 1e-12);
        assertEquals(0.8, scene.underside());
        assertEquals(List.of("desk", "door", "near"), scene.positions().stream().map(NoiseScene.Position::id).toList());
        assertEquals(new NoiseScene.Position("door", NoiseScene.Listener.POINT, 1, Optional.of(2.0), Optional.of(1.5), Optional.empty()),
                scene.positions().get(1));
        assertEquals(Optional.of(new NoiseScene.Declaration(1.5, 1.2)), scene.declaration());
        assertEquals(NoiseScene.NONE, read(new NoiseSceneSection(), "{}"));
        assertEquals(Optional.of(31.0), read(new NoiseSceneSection(), "{'background': {'weighted': '31"
                + " dB'}}").background().orElseThrow().weighted());
        read(new NoiseSceneSection(), "{'space': {'kind': 'room', 'length': 5, 'width': 4, 'height': 3, 'absorption': '10 %'}}");
    }

    @Test
    void howHighItStands() {
        assertEquals(0, read(new NoiseSceneSection(), "{}").underside());
        assertEquals(0.75, read(new NoiseSceneSection(), "{'stands': 'on a table'}").underside());
        assertTrue(read(new NoiseSceneSection(), "{'stands': 'in a rack'}").undersideAssumed());
        assertTrue(read(new NoiseSceneSection(), "{'stands': 'on a wall'}").undersideAssumed());
        assertFalse(read(new NoiseSceneSection(), "{'stands': 'on a wall', 'height': '1.4 m'}").undersideAssumed());
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', quoteCharacter = '`', value = {
        "{'tolerance': 1} | noise.tolerance: is not used; expected beside an insertionLoss",
        "{'insertionLoss': 3, 'bands': 'thirds'} | noise.bands: is not used; expected beside a list of insertionLoss with a value"
            + " for each band",
        "{'lowestBand': '125 Hz'} | noise.lowestBand: is not used; expected beside a list of insertionLoss with a value for each band",
        "{'insertionLoss': [3, 4], 'lowestBand': '100 Hz'} | noise.lowestBand: is no middle frequency of an octave; expected one of"
            + " 31.5, 63, 125, 250, 500, 1000, 2000, 4000, 8000, 16000 Hz",
        "{'insertionLoss': [3, 4], 'bands': 'thirds', 'lowestBand': '112 Hz'} | noise.lowestBand: is no middle frequency of a"
            + " third-octave; expected one"
            + " of 25, 31.5, 40, 50, 63, 80, 100, 125, 160, 200, 250, 315, 400, 500, 630, 800, 1000, 1250, 1600, 2000, 2500, 3150,"
            + " 4000, 5000, 6300, 8000,"
            + " 10000, 12500, 16000, 20000 Hz",
        "{'insertionLoss': [3, 4, 5], 'lowestBand': '8 kHz'} | noise.insertionLoss: has 3 values from the octave of 8000 Hz, beyond"
            + " that of 16000 Hz;"
            + " expected at most 2",
        "{'insertionLoss': -1} | noise.insertionLoss: -1 is out of range; expected a level from 0 to 100 dB, as a number in dB or a"
            + " text with its unit",
        "{'face': 'side'} | noise.face: is `side`; expected one of `front`, `rear`, `left`, `right`, `top`, `bottom`"})
    void whatDoesNotFitTogetherOfAPassage(String json, String sentence) {
        assertEquals(List.of(sentence.replace('`', '"')), problems(new PassageNoiseSection(), json, Design.EMPTY));
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', quoteCharacter = '`', value = {
        "{'area': 1} | noise.absorption: is missing; expected a list of numbers, or one text of numbers with a unit at its end",
        "{'absorption': 1} | noise.area: is missing; expected an area above 0, as a number in m² or a text with its unit",
        "{'area': 1, 'absorption': [0.1, 0.2], 'lowestBand': '70 Hz'} | noise.lowestBand: is no middle frequency of an octave;"
            + " expected one of 31.5, 63, 125,"
            + " 250, 500, 1000, 2000, 4000, 8000, 16000 Hz"})
    void whatDoesNotFitTogetherOfABay(String json, String sentence) {
        assertEquals(List.of(sentence), problems(new BayNoiseSection(), json, Design.EMPTY));
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', quoteCharacter = '`', value = {
        "{'space': {'length': 4}} | noise.space.length: is not used; expected where kind is room",
        "{'space': {'kind': 'room', 'width': 4, 'height': 3, 'absorption': 0.1}} | noise.space.length: is missing; expected the"
            + " length of the room",
        "{'space': {'kind': 'room', 'length': 4, 'width': 4, 'height': 3}} | noise.space.absorption: is missing; expected the mean"
            + " absorption of the room,"
            + " or its reverberationTime instead",
        "{'space': {'kind': 'room', 'length': 4, 'width': 4, 'height': 3, 'absorption': 0.1, 'reverberationTime': 1}} |"
            + " noise.space: has absorption and"
            + " reverberationTime; expected one of them",
        "{'space': {'kind': 'room', 'length': 5, 'width': 4, 'height': 3, 'reverberationTime': 0.1}} |"
            + " noise.space.reverberationTime: is shorter than where"
            + " all sides take up all sound, 103 ms; expected longer times",
        "{'space': {'kind': 'room', 'length': 5, 'width': 4, 'height': 3, 'absorption': [0.1, 0.1], 'lowestBand': 20000}} |"
            + " noise.space.lowestBand: is no"
            + " middle frequency of an octave; expected one of 31.5, 63, 125, 250, 500, 1000, 2000, 4000, 8000, 16000 Hz",
        "{'positions': [{'id': 'a', 'distance': 1}, {'id': 'a', 'distance': 2}]} | noise.positions[1].id: `a` is there twice;"
            + " expected each name once",
        "{'positions': [{'id': 'a', 'kind': 'bystanders', 'distance': 1}]} | noise.positions[0].distance: is not used; expected"
            + " where kind is point",
        "{'positions': [{'id': 'a', 'x': 1, 'distance': 1}]} | noise.positions[0]: has a distance and coordinates; expected one of both",
        "{'positions': [{'id': 'a'}]} | noise.positions[0].distance: is missing; expected the distance of the point, or x, y and z instead",
        "{'positions': [{'id': 'a', 'y': 1}]} | noise.positions[0].z: is missing; expected all coordinates of the point, or its distance",
        "{'positions': [{'id': 'a', 'y': '-100 mm', 'z': '100 mm'}]} | noise.positions[0]: lies inside of the equipment; expected a"
            + " point outside of it",
        "{'background': {'levels': '20 30 dB(A)'}} | noise.background.levels: are A-weighted; expected levels without weighting",
        "{'space': {'kind': 'room', 'length': 4, 'width': 3, 'height': 0.3, 'absorption': 0.1}} | noise.space.height: is less than the height of"
            + " the top of the equipment above the floor, 0.4 m; expected a room that holds it",
        "{'space': {'kind': 'room', 'length': 4, 'width': 0.3, 'height': 3, 'absorption': 0.1}, 'positions': [{'id': 'a', 'x': 0.3, 'y': 1,"
            + " 'z': 1}]} | noise.space: is 4.0 m by 0.3 m large, too small for the equipment, 0.4 m wide and 0.4 m deep; expected a"
            + " room that holds it",
        "{'space': {'kind': 'room', 'length': 4, 'width': 3, 'height': 3, 'absorption': 0.1}, 'positions': [{'id': 'a', 'y': 1, 'z': 3.2}]} |"
            + " noise.positions[0]: lies above the ceiling, which is 3.0 m high; expected a point in the room",
        "{'space': {'kind': 'room', 'length': 4, 'width': 3, 'height': 3, 'absorption': 0.1}, 'positions': [{'id': 'a', 'distance': '3.5 m'},"
            + " {'id': 'b', 'distance': '3.7 m'}]} | noise.positions[1]: lies outside of the room, 4.0 m by 3.0 m large, wherever along its"
            + " walls the equipment stands; expected a point in the room",
        "{'space': {'kind': 'room', 'length': 4, 'width': 3, 'height': 3, 'absorption': 0.1}, 'positions': [{'id': 'a', 'x': -3, 'y': 3,"
            + " 'z': 1}]} | noise.positions[0]: lies outside of the room, 4.0 m by 3.0 m large, wherever along its"
            + " walls the equipment stands; expected a point in the room",
        "{'background': {}} | noise.background.weighted: is missing; expected the A-weighted level, or levels of bands instead",
        "{'background': {'weighted': 30, 'levels': [20, 30]}} | noise.background: has levels and weighted; expected one of them",
        "{'background': {'levels': [20, 30], 'lowestBand': 50}} | noise.background.lowestBand: is no middle frequency of an octave;"
            + " expected one of 31.5, 63,"
            + " 125, 250, 500, 1000, 2000, 4000, 8000, 16000 Hz",
        "{'declaration': {}} | noise.declaration.production: is missing; expected a level from 0 to 20 dB, as a number in dB or a"
            + " text with its unit"})
    void whatDoesNotFitTogetherOfAScene(String json, String sentence) {
        Quantity size = Quantity.of(0.4);
        Design design = Design.EMPTY.withEquipment(new Equipment("", Optional.of(size), Optional.of(size), Optional.of(size),
                Optional.empty(),
                "", Value.Tree.EMPTY));
        assertEquals(List.of(sentence.replace('`', '"')), problems(new NoiseSceneSection(), json, design));
    }

    /** What is written wrongly is said once, and not called missing besides. */
    @ParameterizedTest
    @CsvSource(delimiter = '|', quoteCharacter = '`', value = {
        "{'background': {'levels': '20 30 Hz'}}",
        "{'background': {'levels': [20, 30], 'lowestBand': '1 K'}}",
        "{'background': {'weighted': '30 Hz'}}",
        "{'positions': [{'id': 'a', 'y': 1, 'z': '-1 m'}]}",
        "{'positions': [{'id': 'a', 'x': '1 K', 'y': '-100 mm', 'z': '100 mm'}]}",
        "{'positions': [{'id': 'a', 'distance': '-1 m'}]}",
        "{'positions': [{'id': 'a', 'kind': 'pilot'}]}",
        "{'positions': [{'id': 'a', 'kind': 'pilot', 'distance': 1}]}",
        "{'positions': [5]}",
        "{'height': '1 K', 'positions': [{'id': 'a', 'y': '-100 mm', 'z': '100 mm'}]}",
        "{'space': {'kind': 'room', 'length': 4, 'width': 3, 'height': 3, 'absorption': '0 %'}}",
        "{'space': {'kind': 'room', 'length': 4, 'width': 3, 'height': 3, 'absorption': '10'}}",
        "{'space': {'kind': 'room', 'length': 4, 'width': 3, 'height': '3 K', 'absorption': 0.1}}",
        "{'space': {'kind': 'hall', 'length': 4, 'absorption': 0.1}}",
        "{'space': 5}"})
    void aMistakeOfASceneIsSaidOnce(String json) {
        Quantity size = Quantity.of(0.4);
        Design design = Design.EMPTY.withEquipment(new Equipment("", Optional.of(size), Optional.of(size), Optional.of(size), Optional.empty(), "",
                Value.Tree.EMPTY));
        List<String> problems = problems(new NoiseSceneSection(), json, design);
        assertEquals(1, problems.size(), problems.toString());
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', quoteCharacter = '`', value = {
        "{'insertionLoss': '3 K', 'tolerance': 1}", "{'insertionLoss': '3 4 K', 'bands': 'thirds'}",
        "{'insertionLoss': [3, 4, 5, 6, 7, 8, 9, 10, 11, 12], 'bands': 'third'}"})
    void aMistakeOfAPassageIsSaidOnce(String json) {
        List<String> problems = problems(new PassageNoiseSection(), json, Design.EMPTY);
        assertEquals(1, problems.size(), problems.toString());
    }

    /** What is wrong is said, and read nonetheless: an analysis decodes what has no error of its own. */
    @Test
    void whatDoesNotFitTogetherCanBeRead() {
        List<String> halves = List.of("{'space': {'kind': 'room'}}", "{'positions': [{'id': 'a'}]}", "{'background': {}}",
                "{'background': {'levels': [20, 30], 'lowestBand': 50}}");
        for (String json : halves) {
            NoiseScene scene = new NoiseSceneSection().decode(FormReader.read(new NoiseSceneSection().form(), tree(json), "",
                    new ArrayList<>()));
            assertEquals(scene, new NoiseSceneSection().decode(FormReader.read(new NoiseSceneSection().form(),
                    new NoiseSceneSection().encode(scene), "", new ArrayList<>())));
        }
    }

    @Test
    void eachIsCarriedByOneKindOfThing() {
        assertEquals(List.of(Set.of(SectionType.Owner.PASSAGE), Set.of(SectionType.Owner.BAY), Set.of(SectionType.Owner.DESIGN)),
                TYPES.stream().map(SectionType::owners).toList());
        assertTrue(TYPES.stream().allMatch(type -> type.form().name().equals("noise")));
    }

    @Test
    void labelsAndHelpAreSentences() {
        TYPES.forEach(type -> sentences(type.form()));
    }

    private static void sentences(Form form) {
        assertTrue(form.help().endsWith("."), form.help());
        for (Field field : form.fields()) {
            assertTrue(field.help().endsWith(".") && Character.isUpperCase(field.help().charAt(0)), field.help());
            assertTrue(Character.isLowerCase(field.label().charAt(0)) || field.label().startsWith("A-"), field.label());
            switch (field.shape()) {
                case Shape.Part(Form part) -> sentences(part);
                case Shape.Parts(Form part, String shorthand) -> sentences(part);
                default -> assertFalse(field.name().isBlank());
            }
        }
    }
}
