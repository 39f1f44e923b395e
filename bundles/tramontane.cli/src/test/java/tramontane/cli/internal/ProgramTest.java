package tramontane.cli.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.nio.file.Files;
import java.nio.file.Path;
import java.io.IOException;
import java.util.List;
import java.util.Set;
import java.util.concurrent.CancellationException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import tramontane.cli.Console;
import tramontane.cli.ExitCode;
import tramontane.cli.Verb;
import tramontane.cli.terminal.Syntax;
import tramontane.cli.terminal.TerminalVerb;
import tramontane.cli.terminal.VerbGroup;

class ProgramTest {

    private final MemoryConsole console = new MemoryConsole();

    /** A verb of a stranger. */
    private record Stranger(String name, Exception thrown) implements Verb {

        @Override
        public String summary() {
            return "Do something of my own.";
        }

        @Override
        public String help() {
            return "Usage: tramontane " + name + " WORDS";
        }

        @Override
        public int run(List<String> arguments, Console console) throws Exception {
            if (thrown != null) {
                throw thrown;
            }
            console.out().println(arguments);
            return ExitCode.NOT_MET;
        }
    }

    @Test
    void theHelpListsEveryVerbAndTheExitCodes() {
        assertEquals(0, TestSurroundings.empty().withVerbs(new Stranger("own", null)).run(console, "--help"));
        for (String word : List.of("Usage: tramontane VERB", "solve", "validate", "trace", "export", "modules", "schema",
                "own       Do something of my own.", "Examples:", "Exit codes:", "130")) {
            assertTrue(console.printed().contains(word), word + "\n" + console.printed());
        }
        assertTrue(console.printed().lines().allMatch(line -> line.length() <= 100), console.printed());
        assertEquals("", console.errors());
    }

    @Test
    void withoutAVerbTheHelpIsAnError() {
        assertEquals(2, TestSurroundings.empty().run(console));
        assertTrue(console.errors().startsWith("Tramontane computes"), console.errors());
        assertEquals("", console.printed());
    }

    @Test
    void saysItsVersion() {
        assertEquals(0, TestSurroundings.empty().run(console, "--version"));
        assertEquals("tramontane 1.2.3\n", console.printed());
    }

    @ParameterizedTest
    @ValueSource(strings = {"solve", "validate", "trace", "export", "modules", "schema"})
    void everyVerbHelpsInTwoWays(String verb) {
        assertEquals(0, TestSurroundings.empty().run(console, "help", verb));
        String help = console.printed();
        assertTrue(help.contains("Usage: tramontane " + verb), help);
        assertTrue(help.lines().allMatch(line -> line.length() <= 80), help);
        assertTrue(!help.contains("%"), help);
        MemoryConsole other = new MemoryConsole();
        assertEquals(0, TestSurroundings.empty().run(other, verb, "--help"));
        assertEquals(help, other.printed());
    }

    @Test
    void aStrangersVerbRunsAndHelps() {
        TestSurroundings surroundings = TestSurroundings.empty().withVerbs(new Stranger("own", null));
        assertEquals(1, surroundings.run(console, "own", "a", "--format", "x"));
        assertEquals("[a, --format, x]\n", console.printed());
        assertEquals(0, surroundings.run(console, "own", "--help"));
        assertTrue(console.printed().endsWith("Do something of my own.\n\nUsage: tramontane own WORDS\n"), console.printed());
    }

    @Test
    void ourVerbComesFirst() {
        TestSurroundings surroundings = TestSurroundings.empty().withVerbs(new Stranger("modules", null));
        assertEquals(0, surroundings.run(console, "modules"));
        assertEquals("Everything that is installed runs.\n", console.printed());
    }

    @Test
    void aStrangersVerbMayStopOrBreak() {
        assertEquals(130, TestSurroundings.empty().withVerbs(new Stranger("own", new CancellationException()))
                .run(console, "own"));
        assertEquals(3, TestSurroundings.empty().withVerbs(new Stranger("own", new IOException("no disk\nat all")))
                .run(console, "own"));
        assertEquals("""
                Stopped.
                This is a fault in the program or in an extension: IOException: no disk. Run again with --debug to see where.
                """, console.errors());
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', quoteCharacter = '^', value = {
        "slove x                       | \"slove\" is not a verb; did you mean solve?",
        "banana                        | \"banana\" is not a verb; the verbs are solve, validate, trace, export, modules, schema, help.",
        "--format json                 | There is no option --format before the verb. See \"tramontane --help\".",
        "solve                         | solve: FILE is missing. See \"tramontane help solve\".",
        "trace                         | trace: FILE and FIGURE are missing. See \"tramontane help trace\".",
        "solve a b                     | solve: \"b\" is an argument too many. See \"tramontane help solve\".",
        "solve a --fromat json         | solve: there is no option --fromat; did you mean --format? See \"tramontane help solve\".",
        "solve a --format              | solve: --format needs a value, FORMAT. See \"tramontane help solve\".",
        "solve a --format xml          | --format \"xml\" is not known; it is one of text, json, csv.",
        "modules --format csv          | --format \"csv\" is not known; it is one of text, json.",
        "solve a --units uk            | --units \"uk\" is not known; it is one of si, metric, us.",
        "solve a --max-size big        | --max-size \"big\" is not a size; write a whole number with kB, MB or GB, for example 64MB.",
        "solve a --max-size 0          | --max-size \"0\" is not a size; write a whole number with kB, MB or GB, for example 64MB.",
        "solve a --time-limit 5kg      | --time-limit \"5kg\" is not a time; expected a number with one of s, ms, min, h, d, year.",
        "solve a --time-limit 0s       | --time-limit \"0s\" must be at least 1 ms and at most 68 years.",
        "solve a --format text --format json | solve: --format is given twice. See \"tramontane help solve\"."})
    void mistakesOnTheCommandLine(String line, String sentence) {
        FakeEngine engine = FakeEngine.giving(Toys.cabinet());
        assertEquals(2, TestSurroundings.with(engine).run(console, line.split(" ")));
        assertEquals(sentence + "\n", console.errors());
        assertEquals("", console.printed());
        assertEquals(List.of(), engine.requests);
    }

    @Test
    void filesThatAreNotThere(@TempDir Path folder) {
        TestSurroundings surroundings = TestSurroundings.with(FakeEngine.giving(Toys.cabinet()));
        assertEquals(2, surroundings.run(console, "solve", folder.toString()));
        assertEquals(2, surroundings.run(console, "solve", folder.resolve("none").toString()));
        assertEquals(folder + ": this is a folder; a design file was expected.\n"
                + folder.resolve("none") + ": there is no such file.\n", console.errors());
    }

    @Test
    void outputsThatCannotBeWritten(@TempDir Path folder) throws IOException {
        Path file = Files.writeString(folder.resolve("a.tramontane.json"), "{\"format\": 1}");
        FakeEngine engine = FakeEngine.giving(Toys.cabinet());
        TestSurroundings surroundings = TestSurroundings.with(engine);
        assertEquals(2, surroundings.run(console, "solve", file.toString(), "--output", folder.toString()));
        assertEquals(2, surroundings.run(console, "solve", file.toString(), "--output", folder + "/x/y"));
        assertEquals("--output " + folder + ": this is a folder; name a file in it.\n"
                + "--output " + folder + "/x/y: the folder " + folder + "/x does not exist.\n", console.errors());
        assertEquals(List.of(), engine.requests);
    }

    @Test
    void schemaIsPrintedForPrograms() {
        assertEquals(0, TestSurroundings.with(FakeEngine.giving(Toys.cabinet())).run(console, "schema"));
        JsonObject schema = JsonParser.parseString(console.written()).getAsJsonObject();
        assertTrue(schema.get("$schema").getAsString().startsWith("https://json-schema.org/"), console.written());
        assertTrue(schema.getAsJsonObject("properties").has("airPath"), console.written());
        assertTrue(console.written().contains("A heat pipe between two plates."), console.written());
    }

    @Test
    void theSchemaDescribesASectionByWhatCarriesIt() {
        assertEquals(0, TestSurroundings.with(FakeEngine.giving(Toys.cabinet())).run(console, "schema"));
        JsonObject schema = JsonParser.parseString(console.written()).getAsJsonObject();
        assertEquals(Set.of("poles"), section(schema, "form-air-mover"));
        assertEquals(Set.of("supply"), section(schema, "form-condition"));
        assertFalse(schema.getAsJsonObject("$defs").getAsJsonObject("form-bay").getAsJsonObject("properties").has("sections"));
        assertFalse(schema.getAsJsonObject("properties").has("sections"));
    }

    /** The fields of section drive that such a thing may carry. */
    private static Set<String> section(JsonObject schema, String owner) {
        JsonObject definitions = schema.getAsJsonObject("$defs");
        String reference = definitions.getAsJsonObject(owner).getAsJsonObject("properties").getAsJsonObject("sections")
                .getAsJsonObject("properties").getAsJsonObject("drive").get("$ref").getAsString();
        return definitions.getAsJsonObject(reference.substring("#/$defs/".length())).getAsJsonObject("properties").keySet();
    }

    /** A verb of verbs, as a stranger makes one. */
    private static final class Shelf extends VerbGroup {

        Shelf() {
            super("shelf", "All about shelves.", List.of(new TerminalVerb("shelf count", "Count what stands there.") {
                @Override
                protected Syntax syntax() {
                    return new Syntax(name()).parameter("WHAT", "What to count.");
                }

                @Override
                protected int run(Syntax.Given given, Console console) {
                    console.out().println("counted " + given.parameter(0));
                    return ExitCode.FINE;
                }
            }));
        }
    }

    @Test
    void verbsOfAVerbAreRunAndHelpedByTwoWords() {
        TestSurroundings with = TestSurroundings.empty().withVerbs(new Shelf());
        assertEquals(0, with.run(console, "shelf", "count", "fans"));
        assertEquals(0, with.run(console, "help", "shelf"));
        assertEquals(0, with.run(console, "help", "shelf", "count"));
        assertEquals(0, with.run(console, "shelf", "count", "--help"));
        assertEquals(0, with.run(console, "shelf", "--help"));
        String text = console.printed();
        assertTrue(text.startsWith("counted fans\nAll about shelves.\n\nUsage: tramontane shelf VERB"), text);
        assertEquals(3, text.split("Usage: tramontane shelf count", -1).length, text);
        assertEquals(3, text.split("Usage: tramontane shelf VERB", -1).length, text);
        assertEquals(2, with.run(console, "help", "shelf", "cuont"));
        assertEquals(2, with.run(console, "shelf"));
        assertTrue(console.errors().startsWith("shelf: \"cuont\" is not one of its verbs; did you mean count?\nUsage: tramontane shelf VERB"), console.errors());
    }
}
