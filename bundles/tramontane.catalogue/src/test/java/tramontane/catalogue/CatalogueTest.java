package tramontane.catalogue;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tramontane.model.AirMover;
import tramontane.model.Problem;
import tramontane.physics.units.QuantityKind;

/** Catalogues of folders. */
class CatalogueTest {

    static final String CURVES = "\"curves\": [{\"speed\": \"3000 rpm\", \"flow\": \"0 50 100 m³/h\", \"pressure\": \"60 40 0 Pa\"}]";

    @TempDir
    Path root;

    private Path house;
    private Path lab;

    @BeforeEach
    void makeFolders() throws IOException {
        house = Files.createDirectories(root.resolve("house"));
        lab = Files.createDirectories(root.resolve("lab"));
    }

    private static void put(Path folder, String name, String text) throws IOException {
        Path file = folder.resolve(name);
        Files.createDirectories(file.getParent());
        Files.writeString(file, text.replace("X", CURVES));
    }

    private Catalogue read(Path... folders) {
        return Catalogue.read(List.of(folders), List.of(new MotorSection(1)));
    }

    private static List<String> ids(Catalogue catalogue) {
        return IntStream.range(0, catalogue.size()).mapToObj(catalogue::id).toList();
    }

    private static List<String> problems(Catalogue catalogue) {
        return catalogue.problems().stream().map(Problem::sentence).toList();
    }

    @Test
    void partsStandInTheOrderOfTheirIds() throws IOException {
        put(house, "z.json", "{\"id\": \"b\", X}");
        put(house, "a.json", "{\"parts\": [{\"id\": \"c\", X}, {\"id\": \"a\", X}]}");
        put(house, "deep/er/one.json", "{\"id\": \"B\", X}");
        put(house, ".hidden.json", "{");
        put(house, ".git/config.json", "{");
        put(house, "rack.tramontane.json", "{");
        put(house, "readme.txt", "{");
        Catalogue catalogue = read(house);
        assertEquals(List.of("B", "a", "b", "c"), ids(catalogue));
        assertEquals(List.of(), catalogue.problems());
        assertEquals(house.resolve("a.json"), catalogue.file(1));
        assertEquals(house.resolve("deep/er/one.json"), catalogue.file(0));
        assertEquals(OptionalInt.of(3), catalogue.index("c"));
        assertEquals(OptionalInt.empty(), catalogue.index("d"));
        assertEquals("c", catalogue.part("c").orElseThrow().id());
        assertEquals(Optional.empty(), catalogue.part("d"));
        assertEquals("a", catalogue.part(1).id());
    }

    @Test
    void aLaterFolderOverridesWholeParts() throws IOException {
        put(house, "a.json", "{\"id\": \"a\", \"width\": \"92 mm\", \"mass\": \"1 kg\", X}");
        put(house, "b.json", "{\"id\": \"b\", X}");
        put(lab, "z.json", "{\"parts\": [{\"id\": \"a\", \"width\": \"80 mm\", X}]}");
        Catalogue catalogue = read(house, lab);
        assertEquals(List.of("a", "b"), ids(catalogue));
        assertEquals(0.08, catalogue.number(0, "width"));
        assertTrue(Double.isNaN(catalogue.number(0, "mass")));
        assertEquals(Optional.empty(), catalogue.part(0).datasheet().mass());
        assertEquals(lab.resolve("z.json"), catalogue.file(0));
        assertEquals(0.092, read(lab, house).number(0, "width"));
        assertEquals(List.of(), catalogue.problems());
    }

    @Test
    void anUnsoundPartOverridesNothing() throws IOException {
        put(house, "a.json", "{\"id\": \"a\", X}");
        put(lab, "a.json", "{\"id\": \"a\", \"width\": -1, X}");
        Catalogue catalogue = read(house, lab);
        assertEquals(house.resolve("a.json"), catalogue.file(0));
        assertEquals(List.of("lab/a.json, width: -1 is out of range; expected a length above 0, as a number in m or a text with its unit"),
                problems(catalogue));
    }

    @Test
    void ofTwoFilesWithOneIdTheFirstCounts() throws IOException {
        put(house, "b.json", "{\"id\": \"a\", \"width\": 2, X}");
        put(house, "a/z.json", "{\"id\": \"a\", \"width\": 1, X}");
        put(house, "c.json", "{\"parts\": [{\"id\": \"c\", X}, {\"id\": \"c\", X}, {\"id\": \"a\", X}]}");
        Catalogue catalogue = read(house);
        assertEquals(1, catalogue.number(0, "width"));
        assertEquals(List.of("b.json, id: \"a\" is the id of a part in a/z.json already, which counts; expected an id that no other part has",
                "c.json, parts[1].id: \"c\" is the id of an earlier part of this file already, which counts; expected an id that no other part "
                        + "has",
                "c.json, parts[2].id: \"a\" is the id of a part in a/z.json already, which counts; expected an id that no other part has"),
                problems(catalogue));
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', quoteCharacter = '`', textBlock = """
            `{"id": "b", X`                          | bad.json, line 1, column
            `{"parts": [{"id": "b", X}, {"id": "c"`  | bad.json, line 1, column
            `[{"id": "b", X}]`                       | bad.json: the file holds a list; expected an object
            `"b"`                                    | bad.json: the file holds a text; expected an object
            ``                                       | bad.json: the file is empty; expected an object
            `  `                                     | bad.json: the file is empty; expected an object
            `{"id": "b", X} more`                    | bad.json, line 1, column
            `{"id": "b", "parts": 3, X}`             | bad.json, parts: is 3; expected a list of air movers
            `{"format": 9, "id": "b", X}`            | bad.json, format: is 9; this version reads
            `{"id": "b"}`                            | bad.json, curves: is missing; expected a list
            `{X}`                                    | bad.json, id: is missing; expected a text
            `{"id": " ", X}`                         | bad.json, id: is missing: the text is blank
            `{"id": "b", "mass": "3 mm", X}`         | bad.json, mass: "3 mm" is not a mass
            `{"id": "b", "category": "E", X}`        | bad.json, category: is "E"; expected one of
            `{"id": "b", "curves": []}`              | bad.json, curves: is missing: the list is empty
            `{"id": "b", "curves": [{"flow": "0 1 m³/s", "pressure": "2 1 0 Pa"}]}` | bad.json, curves[0].pressure: has 3 numbers; expected 2
            `{"id": "b", "curves": [{"flow": "1 1 m³/s", "pressure": "2 1 Pa"}]}`   | bad.json, curves[0].flow: number 2, 1, repeats
            `{"id": "b", "sections": {"motor": {"maker": "m", "wires": 1}}, X}`     | bad.json, sections.motor.wires: is 1; expected a whole number
            `{"id": "b", "sections": {"motor": {"wires": 2}}, X}`                   | bad.json, sections.motor.maker: is missing
            `{"id": "b", "sections": {"motor": {"maker": "m", "supply": {}}}, X}`   | bad.json, sections.motor.supply.current: is missing
            `{"id": "b", "sections": {"motor": []}, X}`                             | bad.json, sections.motor: is not an object
            `{"id": "b", "sections": [], X}`                                        | bad.json, sections: is an empty list; expected an object
            `{"sections": {"motor": {"wires": 1}}, "parts": [{"id": "b", "sections": {"motor": {"maker": "m"}}, X}]}` | bad.json, sections.motor.wires: is 1
            `{"parts": [{"id": "b", "lowestTemperature": 300, "highestTemperature": 299, X}]}` | bad.json, parts[0].highestTemperature: is not above
            """)
    void whatIsDamagedIsNamedAndTheRestIsRead(String text, String sentence) throws IOException {
        put(house, "a.json", "{\"id\": \"a\", X}");
        put(house, "bad.json", text == null ? "" : text);
        put(house, "z.json", "{\"id\": \"z\", X}");
        Catalogue catalogue = read(house);
        assertEquals(List.of("a", "z"), ids(catalogue));
        assertEquals(1, catalogue.problems().size(), () -> catalogue.problems().toString());
        assertTrue(problems(catalogue).getFirst().startsWith(sentence), () -> problems(catalogue).getFirst());
        assertTrue(catalogue.problems().getFirst().isError());
    }

    @Test
    void otherEncodingsAreNamed() throws IOException {
        Files.write(house.resolve("latin.json"), ("{\"id\": \"a\", " + CURVES + "}").getBytes(StandardCharsets.ISO_8859_1));
        Files.write(house.resolve("wide.json"), ("{\"id\": \"b\", " + CURVES + "}").getBytes(StandardCharsets.UTF_16));
        byte[] text = ("\uFEFF{\"id\": \"c\", " + CURVES + "}").getBytes(StandardCharsets.UTF_8);
        Files.write(house.resolve("mark.json"), text);
        Catalogue catalogue = read(house);
        assertEquals(List.of("c"), ids(catalogue));
        assertEquals("c", catalogue.part(0).id());
        assertEquals(List.of("latin.json, line 1, column 65: byte B3 is not UTF-8; expected a file saved as UTF-8",
                "wide.json, line 1, column 1: byte FE is not UTF-8; expected a file saved as UTF-8"), problems(catalogue));
    }

    @Test
    void foldersThatAreNoneAreNamed() throws IOException {
        put(lab, "a.json", "{\"id\": \"a\", X}");
        Path missing = root.resolve("missing");
        Path file = lab.resolve("a.json");
        Catalogue catalogue = read(missing, lab, file);
        assertEquals(List.of("a"), ids(catalogue));
        assertEquals(List.of(missing + ": there is no such folder", file + ": is no folder; expected a folder of catalogue files"),
                problems(catalogue));
        assertEquals(0, read().size());
    }

    @Test
    void whatCannotBeReadIsNamed() throws IOException {
        put(house, "a.json", "{\"id\": \"a\", X}");
        Files.createSymbolicLink(house.resolve("gone.json"), house.resolve("nothing"));
        Files.createSymbolicLink(Files.createDirectory(house.resolve("ring")).resolve("back"), house);
        Files.createDirectory(house.resolve("folder.json"));
        put(house, "folder.json/b.json", "{\"id\": \"b\", X}");
        Catalogue catalogue = read(house);
        assertEquals(List.of("a", "b"), ids(catalogue));
        assertEquals(List.of("ring/back: cannot be read: its links lead in a ring",
                "gone.json: gone.json cannot be read: there is no such file or folder"), problems(catalogue));
    }

    @Test
    void foldersAndFilesWithoutPermissionAreNamed() throws IOException {
        put(house, "a.json", "{\"id\": \"a\", X}");
        put(house, "locked/b.json", "{\"id\": \"b\", X}");
        put(house, "c.json", "{\"id\": \"c\", X}");
        Files.setPosixFilePermissions(house.resolve("locked"), PosixFilePermissions.fromString("---------"));
        Files.setPosixFilePermissions(house.resolve("c.json"), PosixFilePermissions.fromString("---------"));
        try {
            Assumptions.assumeFalse(Files.isReadable(house.resolve("c.json")), "this user may read everything");
            Catalogue catalogue = read(house);
            assertEquals(List.of("a"), ids(catalogue));
            assertEquals(List.of("locked: cannot be read: permission is missing", "c.json: c.json cannot be read: permission is missing"),
                    problems(catalogue));
        } finally {
            Files.setPosixFilePermissions(house.resolve("locked"), PosixFilePermissions.fromString("rwx------"));
        }
    }

    @Test
    void aFileThatIsTooLargeIsNamed() throws IOException {
        put(house, "a.json", "{\"id\": \"a\", X}");
        try (var channel = Files.newByteChannel(house.resolve("large.json"), java.nio.file.StandardOpenOption.CREATE,
                java.nio.file.StandardOpenOption.WRITE)) {
            channel.position(64L << 20);
            channel.write(java.nio.ByteBuffer.wrap(new byte[1]));
        }
        Catalogue catalogue = read(house);
        assertEquals(List.of("a"), ids(catalogue));
        assertEquals(List.of("large.json: large.json has 67108865 bytes; expected 67108864 at most"), problems(catalogue));
    }

    @Test
    void cautionsAreKeptWithTheirParts() throws IOException {
        put(house, "a.json", "{\"parts\": [{\"id\": \"a\", \"wdith\": \"3 mm\", X}, {\"id\": \"b\", \"ingress\": \"wet\", X}, {\"id\": \"c\", X}]}");
        Catalogue catalogue = read(house);
        assertEquals(List.of("a", "b", "c"), ids(catalogue));
        assertEquals(List.of("a.json, parts[0].wdith: is not a field of an air mover that anything loaded here knows; it is kept, but not used (did "
                + "you mean \"width\"?)", "a.json, parts[1].ingress: is \"wet\"; expected a code of IEC 60529, such as IP20 or IP54"),
                problems(catalogue));
        assertFalse(catalogue.problems().stream().anyMatch(Problem::isError));
        assertEquals(0.003, catalogue.number(0, "wdith"));
    }

    @Test
    void valuesComeFromFamilyPartSectionsAndCurves() throws IOException {
        put(house, "a.json", """
                {"maker": "Garbin", "depth": "38 mm", "bearing": "ball", "mass": "1 kg", "x-rig": {"stand": "3", "drift": "2 mm", "mean": 1.5},
                 "sections": {"motor": {"maker": "Ponente", "wires": 4, "supply": {"current": "DC", "voltage": "24 V"}},
                              "lab": {"hours": "5 h", "seal": "felt", "checked": true, "list": [1, {"a": 2}], "deep": {"er": "7 Pa"}}},
                 "parts": [{"id": "a", "width": "92 mm", X},
                           {"id": "b", "depth": "1 in", "sections": {"motor": {"supply": {"voltage": "12 V"}}, "lab": {"hours": "1 d"}}, X}]}""");
        Catalogue catalogue = read(house);
        assertEquals(2, catalogue.size(), () -> problems(catalogue).toString());
        assertEquals("x-rig", catalogue.problems().getFirst().place().substring("a.json, ".length()), "a caution, once");
        assertEquals(1, catalogue.problems().size());
        assertEquals(0.038, catalogue.number(0, "depth"));
        assertEquals(0.0254, catalogue.number(1, "depth"));
        assertEquals(0.092, catalogue.number(0, "width"));
        assertTrue(Double.isNaN(catalogue.number(1, "width")));
        assertEquals(Optional.of("ball"), catalogue.text(1, "bearing"));
        assertEquals(4, catalogue.number(1, "motor.wires"));
        assertEquals(24, catalogue.number(0, "motor.supply.voltage"));
        assertEquals(12, catalogue.number(1, "sections.motor.supply.voltage"));
        assertEquals(Optional.of("DC"), catalogue.text(1, "motor.supply.current"));
        assertEquals(18000, catalogue.number(0, "lab.hours"));
        assertEquals(86400, catalogue.number(1, "lab.hours"));
        assertEquals(Optional.of("5 h"), catalogue.text(0, "lab.hours"));
        assertEquals(Optional.of("true"), catalogue.text(0, "lab.checked"));
        assertEquals(7, catalogue.number(0, "lab.deep.er"));
        assertEquals(1.5, catalogue.number(0, "x-rig.mean"));
        assertEquals(100 / 3600.0, catalogue.number(0, "freeDelivery"), 1e-15);
        assertEquals(60, catalogue.number(0, "shutOff"));
        assertTrue(Double.isNaN(catalogue.number(0, "bestEfficiency")));
        assertTrue(Double.isNaN(catalogue.number(0, "nothing")));
        assertEquals(Optional.empty(), catalogue.text(0, "nothing"));

        assertEquals(new CatalogueField("width", "frame width", Optional.of(QuantityKind.LENGTH), false), catalogue.field("width").orElseThrow());
        assertEquals(new CatalogueField("sections.motor.supply.voltage", "rated voltage", Optional.of(QuantityKind.VOLTAGE), false),
                catalogue.field("motor.supply.voltage").orElseThrow());
        assertEquals(new CatalogueField("freeDelivery", "free delivery", Optional.of(QuantityKind.FLOW), true),
                catalogue.field("freeDelivery").orElseThrow());
        assertEquals(new CatalogueField("sections.lab.hours", "hours", Optional.of(QuantityKind.TIME), false),
                catalogue.field("lab.hours").orElseThrow());
        assertEquals(Optional.empty(), catalogue.field("lab.seal").orElseThrow().kind());
        assertEquals(Optional.of(QuantityKind.NUMBER), catalogue.field("x-rig.mean").orElseThrow().kind());
        assertEquals(Optional.empty(), catalogue.field("lab.list"), "a list is no field");
        assertEquals(catalogue.fields().size(), catalogue.fields().stream().map(CatalogueField::path).distinct().count());
    }

    @Test
    void partsAreThoseOfTheirFiles() throws IOException {
        put(house, "family.json", "{\"format\": 1, \"notes\": \"n\", \"maker\": \"m\", \"layout\": {\"x\": 1}, \"sections\": {\"lab\": {\"a\": {\"b\": 1}}}, "
                + "\"parts\": [{\"id\": \"a\", \"notes\": \"o\\n\", \"sections\": {\"lab\": {\"a\": {\"c\": 2}}}, X}, {\"id\": \"b\", \"odd\": 1, X}]}");
        put(house, "single.json", "{\"id\": \"c\", \"format\": 1, \"width\": \"92 mm\", X}");
        put(house, "unusual.json", "{\"format\": 1.0, \"id\": \"d\", \"width\": \"92 mm\", X}");
        Catalogue catalogue = read(house);
        List<AirMover> expected = List.of("family", "single", "unusual").stream().flatMap(name ->
                PartFile.read(house.resolve(name + ".json")).parts().stream()).toList();
        assertEquals(4, expected.size());
        assertEquals(expected, IntStream.range(0, catalogue.size()).mapToObj(catalogue::part).toList());
        put(house, "single.json", "changed");
        assertEquals("c", catalogue.part(2).id(), "a file that changes does not change the catalogue");
    }

    @Test
    void aCatalogueOfPartsSaysTheSameAsOneOfFiles() throws IOException {
        put(house, "a.json", "{\"maker\": \"m\", \"sections\": {\"motor\": {\"maker\": \"p\", \"reversible\": false}, \"lab\": {\"t\": \"300 K\"}}, \"parts\": "
                + "[{\"id\": \"b\", \"width\": \"1 in\", X}, {\"id\": \"a\", \"ratedPower\": 5, X}]}");
        Catalogue read = read(house);
        Catalogue made = Catalogue.of(List.of(read.part(1), read.part(0), read.part(1)), List.of(new MotorSection(1)));
        assertEquals(List.of("parts[2]: \"b\" is the id of parts[0] already, which counts; expected an id that no other part has"), problems(made));
        assertEquals(ids(read), ids(made));
        assertEquals(read.fields(), made.fields());
        for (CatalogueField field : read.fields()) {
            for (int i = 0; i < 2; i++) {
                assertEquals(read.number(i, field.path()), made.number(i, field.path()), field.path());
                assertEquals(read.text(i, field.path()), made.text(i, field.path()), field.path());
            }
        }
        assertEquals(read.part(0), made.part(0));
        assertEquals(Path.of(""), made.file(0));
    }

    @Test
    void sectionsAreBroughtToTheirPresentVersion() throws IOException {
        put(house, "a.json", "{\"parts\": [{\"id\": \"a\", \"sections\": {\"motor\": {\"builder\": \"old\"}}, X}, "
                + "{\"id\": \"b\", \"sections\": {\"motor\": {\"version\": 2, \"maker\": \"new\"}}, X}, "
                + "{\"id\": \"c\", \"sections\": {\"motor\": {\"version\": 3, \"maker\": \"newer\"}}, X}]}");
        Catalogue catalogue = Catalogue.read(List.of(house), List.of(new MotorSection(2)));
        assertEquals(Optional.of("old"), catalogue.text(0, "motor.maker"));
        assertEquals(Optional.of("new"), catalogue.text(1, "motor.maker"));
        assertEquals(Optional.empty(), catalogue.text(2, "motor.maker"));
        assertEquals(List.of("a.json, parts[2].sections.motor.version: is 3, but what is loaded here knows motor up to version 2 only; it is kept, "
                + "but not used"), problems(catalogue));
    }

    @Test
    void manyDifferentMembersDoNotFillTheMemory() throws IOException {
        StringBuilder text = new StringBuilder("{\"id\": \"a\", \"sections\": {\"lab\": {");
        for (int i = 0; i < 30_000; i++) {
            text.append(i > 0 ? "," : "").append("\"m").append(i).append("\": ").append(i);
        }
        put(house, "a.json", text + "}}, X}");
        Catalogue catalogue = read(house);
        assertEquals(List.of("a"), ids(catalogue));
        assertTrue(catalogue.fields().size() <= 2000, () -> catalogue.fields().size() + " fields");
        assertEquals(5, catalogue.number(0, "lab.m5"));
    }

    @Test
    void manyFilesAreReadOnce() throws IOException {
        for (int i = 0; i < 300; i++) {
            put(house, "f" + i % 7 + "/p" + i + ".json", "{\"id\": \"p" + i + "\", \"width\": \"" + (i + 1) + " mm\", X}");
        }
        Catalogue catalogue = read(house);
        assertEquals(300, catalogue.size());
        assertArrayEquals(IntStream.range(0, 300).mapToDouble(i -> (i + 1) / 1000.0).toArray(),
                IntStream.range(0, 300).mapToDouble(i -> catalogue.number(catalogue.index("p" + i).orElseThrow(), "width")).toArray());
    }
}
