package tramontane.model.file;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import tramontane.model.AirMover;
import tramontane.model.AirPath;
import tramontane.model.Bay;
import tramontane.model.Condition;
import tramontane.model.Design;
import tramontane.model.FormReader;
import tramontane.model.Passage;
import tramontane.model.Problem;
import tramontane.model.Value;

class DesignFileTest {

    /** A design with every part of the model in it, sound, with some members that nobody knows. */
    static String rack() {
        try (var in = DesignFileTest.class.getResourceAsStream("rack.tramontane.json")) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new IllegalStateException(e);
        }
    }

    private static Design design(String json) {
        Loaded loaded = DesignFile.parse(json);
        return loaded.design().orElseThrow(() -> new AssertionError(loaded.problems()));
    }

    private static List<String> sentences(Loaded loaded) {
        return loaded.allProblems().stream().filter(Problem::isError).map(Problem::sentence).toList();
    }

    private static Value.Tree tree(String json) {
        TreeFile.Read read = TreeFile.parse(json.getBytes(StandardCharsets.UTF_8), Limits.STANDARD);
        assertEquals(List.of(), read.problems());
        return read.tree().orElseThrow();
    }

    @Test
    void aSoundFileGivesADesignAndCautionsForWhatNobodyKnows() {
        Loaded loaded = DesignFile.parse(rack());
        assertEquals(loaded.design(), loaded.draft());
        assertEquals(List.of("airMovers[0].origins[0].by", "heatSources[0].into[0].why", "conditions[1].failed[0].cause", "mission[0].season", "unknown to all"),
                loaded.allProblems().stream().map(Problem::place).toList());
        assertTrue(loaded.allProblems().stream().noneMatch(Problem::isError));
        Design design = loaded.design().orElseThrow();
        assertEquals(0.0188779, design.airMovers().getFirst().curves().getFirst().flow().si().get(2), 1e-7);
    }

    @Test
    void whatIsSavedIsWhatWasRead() {
        Design first = design(rack());
        String saved = DesignFile.write(first);
        Design second = design(saved);
        assertEquals(first, second);
        assertEquals(saved, DesignFile.write(second));
        // nothing is gained or lost, neither members nor literals, and the bare position was written out
        assertEquals(tree(rack()), tree(saved));
    }

    @Test
    void unknownMembersKeepTheirOrderAndLiterals() {
        String saved = DesignFile.write(design(rack()));
        assertTrue(saved.contains("\"odd\": {\"b\": 1, \"a\": [1E+2, -0, null, true]}"), saved);
        assertTrue(saved.contains("\"unknown to all\": [[], {}, \"x\\u0000y\ud83c\udf2c\", 1e999999999]"), saved);
        assertTrue(saved.contains("\"pressure\": [120, 1.10e2, \"90 Pa\", 50, 0]"), saved);
        assertTrue(saved.contains("\"power\": \"5 6 7 8 8.50 W\""), saved);
    }

    @Test
    void halfASurrogatePairIsKept() {
        String json = "{\"format\": 1, \"notes\": \"\\ud83c and \\udf2c\"}";
        String saved = DesignFile.write(design(json));
        assertTrue(saved.contains("\"notes\": \"\\ud83c and \\udf2c\""), saved);
    }

    @Test
    void linesAreShortWherePossibleAndObjectsOfAListHaveOneEach() {
        String saved = DesignFile.write(design("""
                {"format":1,"conditions":[{"id":"a"},{"id":"b"}],"airMovers":[{"id":"F","maker":"M","curves":[{"flow":
                [0.001,0.002,0.003,0.004,0.005,0.006,0.007,0.008,0.009,0.010,0.011,0.012,0.013,0.014,0.015],"pressure":
                [15,14,13,12,11,10,9,8,7,6,5,4,3,2,1]}]}],"airPath":{"bays":["box"]}}"""));
        assertEquals("""
                {
                  "format": 1,
                  "airMovers": [
                    {
                      "id": "F",
                      "maker": "M",
                      "curves": [
                        {
                          "flow": [
                            0.001, 0.002, 0.003, 0.004, 0.005, 0.006, 0.007, 0.008, 0.009, 0.010, 0.011, 0.012,
                            0.013, 0.014, 0.015
                          ],
                          "pressure": [15, 14, 13, 12, 11, 10, 9, 8, 7, 6, 5, 4, 3, 2, 1]
                        }
                      ]
                    }
                  ],
                  "airPath": {"bays": ["box"]},
                  "conditions": [
                    {"id": "a"},
                    {"id": "b"}
                  ]
                }
                """, saved);
        assertTrue(DesignFile.write(design(rack())).lines().allMatch(line -> line.length() <= 100));
    }

    @Test
    void aBlankTitleIsNoMistake() {
        Design design = Design.EMPTY.withName(" ");
        assertEquals(design, design(DesignFile.write(design)));
    }

    @Test
    void aHalfFinishedDesignCanBeSavedAndOpenedAgain() {
        Design design = Design.EMPTY
                .withAirPath(new AirPath(List.of(Bay.of("")), List.of(new Passage("", "", " ", "", Value.Tree.EMPTY)), Value.Tree.EMPTY))
                .withAirMovers(List.of(AirMover.from(FormReader.read(AirMover.FORM, Value.Tree.EMPTY, "", new ArrayList<>()))))
                .withConditions(List.of(Condition.named("")));
        Loaded loaded = DesignFile.parse(DesignFile.write(design));
        assertEquals(List.of("airMovers[0].id: is missing; expected a text",
                "airMovers[0].curves: is missing; expected a list of objects, each a curve",
                "airPath.bays[0]: is missing: the text is blank; expected a text",
                "airPath.passages[0].id: is missing; expected a text",
                "airPath.passages[0].kind: is missing; expected a text",
                "airPath.passages[0].from: is missing: the text is blank; expected the id of a bay",
                "airPath.passages[0].to: is missing; expected the id of a bay",
                "conditions[0].id: is missing; expected a text"), sentences(loaded));
        assertEquals(Optional.empty(), loaded.design());
        assertEquals(DesignFile.write(design).replace("\"from\": \" \"", ""),
                DesignFile.write(loaded.editable().orElseThrow()));
        assertEquals(Optional.empty(), DesignFile.parse("{\"format\": 1, \"name\": 3}").editable());
    }

    @Test
    void byteOrderMarkIsAccepted() {
        assertEquals(design(rack()), design("\uFEFF" + rack()));
    }

    @Test
    void bytesThatAreNotUtf8AreNamedWithTheirPlace() {
        byte[] bytes = "{\"format\": 1,\n\"name\": \"Gerät\"}".getBytes(StandardCharsets.ISO_8859_1);
        Loaded loaded = DesignFile.parse(bytes, Limits.STANDARD);
        assertEquals(List.of("line 2, column 13: byte E4 is not UTF-8; expected a file saved as UTF-8"), sentences(loaded));
        byte[] cut = "{\"format\": 1, \"name\": \"ä".getBytes(StandardCharsets.UTF_8);
        assertEquals(List.of("line 1, column 24: byte C3 is not UTF-8; expected a file saved as UTF-8"),
                sentences(DesignFile.parse(java.util.Arrays.copyOf(cut, cut.length - 1), Limits.STANDARD)));
    }

    @Test
    void everyNameGivenTwiceIsReportedWithItsPlaceAndTheRestIsStillRead() {
        Loaded loaded = DesignFile.parse("""
                {"format": 1, "name": "a", "name": "b", "name": "c",
                 "conditions": [{"id": "cold"}, {"id": "hot", "speed": 1, "speed": 2, "altitude": "high"}]}""");
        assertEquals(List.of("conditions[1].speed: is given twice; expected it once",
                "name: is given twice; expected it once",
                "conditions[1].altitude: \"high\" does not begin with a number; expected a number with one of m, mm, cm, µm, km, in, ft"),
                sentences(loaded));
        assertTrue(loaded.design().isEmpty());
        assertEquals("a", loaded.draft().orElseThrow().name());
    }

    @ParameterizedTest
    @ValueSource(ints = {201, 10_000, 1_000_000})
    void deepNestingIsRefusedWithItsPlace(int depth) {
        for (String open : List.of("[", "{\"a\":")) {
            String json = "{\"format\": 1,\n \"odd\": " + open.repeat(depth);
            Loaded loaded = DesignFile.parse(json);
            int column = 9 + 199 * open.length();
            assertEquals(List.of("line 2, column " + column
                    + ": objects and lists stand more than 200 deep within one another; expected 200 at most"), sentences(loaded));
            assertTrue(loaded.draft().isEmpty());
        }
    }

    @Test
    void nestingUpToTheLimitIsReadAndWrittenBack() {
        String json = "{\"format\": 1, \"odd\": " + "[".repeat(199) + "]".repeat(199) + "}";
        Design design = design(json);
        assertEquals(design, design(DesignFile.write(design)));
        String objects = "{\"format\": 1, \"odd\": " + "{\"a\": ".repeat(199) + "1" + "}".repeat(199) + "}";
        assertEquals(design(objects), design(DesignFile.write(design(objects))));
    }

    @Test
    void valuesThatCouldNotBeReadAgainAreNotWritten() {
        Value deep = new Value.Nothing();
        for (int i = 0; i < 300; i++) {
            deep = new Value.Items(List.of(deep));
        }
        Design design = Design.EMPTY.withMore(Value.Tree.EMPTY.with("odd", deep));
        assertThrows(IllegalArgumentException.class, () -> DesignFile.write(design));
    }

    @Test
    void tooManyValuesAreRefused() {
        Limits limits = new Limits(1000, 10, 5, 10);
        byte[] json = "{\"format\": 1, \"odd\": [1, 2, 3, 4]}".getBytes(StandardCharsets.UTF_8);
        assertEquals(List.of("the file holds more than 5 values; expected fewer"), sentences(DesignFile.parse(json, limits)));
    }

    @Test
    void problemsBeyondTheLimitAreCounted() {
        byte[] json = "{\"format\": 1, \"conditions\": [1, 2, 3, 4, 5]}".getBytes(StandardCharsets.UTF_8);
        Loaded loaded = DesignFile.parse(json, new Limits(1000, 10, 100, 2));
        assertEquals(List.of("conditions[0]: is 1; expected a condition, an object { … }",
                "conditions[1]: is 2; expected a condition, an object { … }",
                "and 3 more problems, which are not listed"),
                sentences(loaded));
        assertTrue(loaded.design().isEmpty());
    }

    @Test
    void olderFormatsAreBroughtUpOneVersionAtATime() {
        List<Migration> migrations = List.of(
                new Migration(Design.FORMAT - 2, tree -> tree.with("name", new Value.Text(tree.text("title").orElse("") + "+"))
                        .without("title")),
                new Migration(Design.FORMAT - 1, tree -> tree.with("name", new Value.Text(tree.text("name").orElse("") + "*"))));
        String json = "{\"format\": %d, \"title\": \"Rack\", \"notes\": 1.0}";
        Loaded loaded = parse(json.formatted(Design.FORMAT - 2), migrations);
        assertEquals(List.of(), loaded.problems());
        assertEquals("Rack+*", loaded.design().orElseThrow().name());
        assertTrue(DesignFile.write(loaded.design().orElseThrow()).startsWith("{\n  \"format\": " + Design.FORMAT + ",\n"));
        assertEquals("*", parse(json.formatted(Design.FORMAT - 1), migrations).draft().orElseThrow().name());
        assertEquals("", parse(json.formatted(Design.FORMAT), migrations).draft().orElseThrow().name());
        assertEquals(List.of("format: is -3; expected \"format\": 1 at the beginning of the file"),
                parse(json.formatted(-3), migrations).problems().stream().filter(Problem::isError).map(Problem::sentence).toList());
    }

    @Test
    void aMigrationThatFailsIsAProblem() {
        List<Migration> migrations = List.of(new Migration(Design.FORMAT - 1, tree -> tree.with("x",
                tree.get("not there").orElseThrow())));
        assertEquals(List.of("format: the file cannot be brought from format 0 to 1: it is not as format 0 was"),
                sentences(parse("{\"format\": 0}", migrations)));
    }

    @Test
    void migrationsMustFormAChain() {
        assertThrows(IllegalArgumentException.class,
                () -> parse("{}", List.of(new Migration(Design.FORMAT, tree -> tree))));
    }

    private static Loaded parse(String json, List<Migration> migrations) {
        return DesignFile.parse(json.getBytes(StandardCharsets.UTF_8), Limits.STANDARD, migrations);
    }

    @Test
    void aNewerFormatIsNotGuessedAt() {
        Loaded loaded = DesignFile.parse("{\"format\": 7, \"conditions\": 3}");
        assertEquals(List.of("format: the file was written by a newer version (format 7); this one reads up to 1"),
                sentences(loaded));
        assertEquals(Optional.empty(), loaded.draft());
    }

    @Test
    void withoutAFormatTheRestIsReadAsTheNewest() {
        Loaded loaded = DesignFile.parse("{\"name\": 3}");
        assertEquals(List.of("format: is missing; expected \"format\": 1 at the beginning of the file",
                "name: is 3; expected a text"), loaded.problems().stream().map(Problem::sentence).toList());
        assertTrue(loaded.draft().isPresent());
        assertFalse(loaded.design().isPresent());
    }

    @Test
    void whatOnlyFollowsFromSomethingUnreadableCanBeTold() {
        Loaded loaded = DesignFile.parse("""
                {"format": 1, "airPath": {"bays": {"box": 1}, "passages": [
                  {"id": "hole", "kind": "opening", "from": "outside", "to": "box"}]}}""");
        assertEquals(List.of("airPath.passages[0].to"), loaded.consequences().stream().map(Problem::place).toList());
        assertEquals(List.of("airPath.bays"), loaded.allProblems().stream().filter(Problem::isError).map(Problem::place).toList());
    }
}
