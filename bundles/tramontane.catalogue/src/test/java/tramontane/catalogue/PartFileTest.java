package tramontane.catalogue;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tramontane.model.AirMover;
import tramontane.model.Problem;
import tramontane.model.Value;
import tramontane.model.file.Limits;
import tramontane.model.file.TreeFile;

/** Single parts and families. */
class PartFileTest {

    private static final String CURVES = "\"curves\": [{\"speed\": \"3000 rpm\", \"flow\": \"0 50 100 m³/h\", \"pressure\": \"60 40 0 Pa\"}]";

    @TempDir
    Path folder;

    @ParameterizedTest
    @CsvSource(delimiter = '|', quoteCharacter = '`', textBlock = """
            {"id": "a", "width": 1}                                        | [{"id": "a", "width": 1}]
            {"format": 1, "notes": "n", "id": "a"}                         | [{"notes": "n", "id": "a"}]
            {"format": 1, "notes": "n", "parts": [{"id": "a"}]}            | [{"id": "a"}]
            {"maker": "m", "parts": [{"id": "a"}, {"id": "b"}]}            | [{"maker": "m", "id": "a"}, {"maker": "m", "id": "b"}]
            {"width": 1, "parts": [{"id": "a", "width": 2}]}               | [{"width": 2, "id": "a"}]
            {"s": {"x": 1, "y": {"z": 1}}, "parts": [{"s": {"y": {"t": 2}}}]} | [{"s": {"x": 1, "y": {"z": 1, "t": 2}}}]
            {"s": {"x": 1}, "parts": [{"s": 3}]}                           | [{"s": 3}]
            {"s": 3, "parts": [{"s": {"x": 1}}]}                           | [{"s": {"x": 1}}]
            {"c": [1, 2], "parts": [{"c": [3]}]}                           | [{"c": [3]}]
            {"parts": [{"notes": "its own"}]}                              | [{"notes": "its own"}]
            {"parts": []}                                                  | []
            {"parts": {"id": "a"}}                                         | []
            {"parts": [1, {"id": "b"}]}                                    | [{"id": "b"}]
            """)
    void whatAFamilySaysHoldsForEachOfItsParts(String file, String parts) {
        assertEquals(tree("{\"parts\": " + parts + "}").get("parts").orElseThrow(),
                new Value.Items(List.copyOf(PartFile.parts(tree(file)))));
    }

    @Test
    void partsComeBackAsTheyWereSaved() throws IOException {
        List<AirMover> parts = read("{\"maker\": \"Garbin\", \"sections\": {\"lab\": {\"rig\": 3}}, \"parts\": [{\"id\": \"a\", \"width\": \"92 mm\", "
                + CURVES + "}, {\"id\": \"b\", " + CURVES + "}]}").parts();
        assertEquals(List.of("a", "b"), parts.stream().map(AirMover::id).toList());
        Path several = folder.resolve("several.json");
        PartFile.save(several, parts);
        assertEquals(new PartFile.Read(parts, List.of()), PartFile.read(several));
        assertTrue(Files.readString(several).startsWith("{\n  \"format\": 1,\n  \"parts\": ["), Files.readString(several));

        Path one = folder.resolve("one.json");
        PartFile.save(one, parts.subList(0, 1));
        assertEquals(new PartFile.Read(parts.subList(0, 1), List.of()), PartFile.read(one));
        assertTrue(Files.readString(one).startsWith("{\n  \"id\": \"a\","), Files.readString(one));

        Path none = folder.resolve("none.json");
        PartFile.save(none, List.of());
        assertEquals(new PartFile.Read(List.of(), List.of()), PartFile.read(none));
    }

    /** {@code X} stands for sound curves, {@code sound} for how many parts are read in spite of the problem. */
    @ParameterizedTest
    @CsvSource(delimiter = '|', quoteCharacter = '`', textBlock = """
            {"id": "a"}                                              | 0 | curves: is missing
            {"id": "a", "width": "3 kg", X}                          | 0 | width: "3 kg" is not a length
            {"id": "a", "width": 0, X}                               | 0 | width: 0 is out of range
            {"id": "a", "wdith": 1, X}                               | 1 | wdith: is not a field of an air mover
            {"id": "a", "id": "b", X}                                | 0 | id: is given twice
            {"id": "a", "ingress": "very", X}                        | 1 | ingress: is "very"; expected a code
            {"parts": [{X}, {"id": "b", X}]}                         | 1 | parts[0].id: is missing
            {"parts": [{"id": "a", "id": "c", X}, {"id": "b", X}]}   | 1 | parts[0].id: is given twice
            {"parts": [{"id": "b", X}, 7]}                           | 1 | parts[1]: is 7; expected an air mover
            {"width": "3 kg", "parts": [{"id": "a", X}, {"id": "b", X}, {"id": "c", "width": 1, X}]} | 1 | width: "3 kg" is not a length
            {"width": 1, "width": 2, "parts": [{"id": "a", X}]}      | 0 | width: is given twice
            {"parts": {"id": "a", X}}                                | 0 | parts: is an object; expected a list of air movers
            {"format": 2, "id": "a", X}                              | 0 | format: is 2; this version reads catalogue files of format 1
            [{"id": "a", X}]                                         | 0 | the file holds a list; expected an object
            {"id": "a", "curves": [{"flow": [0, 1], "pressure": [1]}]} | 0 | curves[0].pressure: has 1 number
            {"id": "a", "curves": [{"flow": [0, 1], "pressure": [1, 0.5, 0]}]} | 0 | curves[0].pressure: has 3 numbers; expected 2, one for each flow
            {"id": "a", "fixedLoss": 3, "ratedPower": 2, X}          | 0 | fixedLoss: is more than the whole electrical input
            {"parts": [{"id": "a", "lowestTemperature": 300, "highestTemperature": 290, X}]} | 0 | parts[0].highestTemperature: is not above
            """)
    void whatIsWrongIsNamedOnceWithItsPlace(String file, int sound, String sentence) throws IOException {
        PartFile.Read read = read(file.replace("X", CURVES));
        assertEquals(sound, read.parts().size());
        assertEquals(1, read.problems().size(), () -> read.problems().toString());
        assertTrue(read.problems().getFirst().sentence().startsWith(sentence), () -> read.problems().getFirst().sentence());
    }

    @Test
    void aFileThatIsNotThereIsAProblem() {
        PartFile.Read read = PartFile.read(folder.resolve("nothing.json"));
        assertEquals(List.of(Problem.error("", "nothing.json cannot be read: there is no such file or folder")), read.problems());
        assertEquals(List.of(), read.parts());
    }

    private PartFile.Read read(String text) throws IOException {
        return PartFile.read(Files.writeString(folder.resolve("parts.json"), text));
    }

    private static Value.Tree tree(String text) {
        return TreeFile.parse(text.getBytes(java.nio.charset.StandardCharsets.UTF_8), Limits.STANDARD).tree().orElseThrow();
    }
}
