package tramontane.cli.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tramontane.analysis.Evaluation;
import tramontane.analysis.Exporter;
import tramontane.analysis.Finding;
import tramontane.analysis.OperatingPoint;
import tramontane.model.Design;
import tramontane.model.Field;
import tramontane.model.Form;
import tramontane.model.Problem;
import tramontane.model.Range;
import tramontane.model.Shape;
import tramontane.model.Values;
import tramontane.physics.units.QuantityKind;

class ExportTest {

    /** Writes its settings, or what it is told to. */
    private record Table(String id, Form settings, Set<Class<?>> reads, Exported told) implements Exporter {

        @Override
        public String label() {
            return "control law as a table";
        }

        @Override
        public String ending() {
            return "csv";
        }

        @Override
        public Exported write(Design design, Evaluation evaluation, Values values) {
            return told != null ? told : Exported.of(design.name() + "," + values.si("step") + "," + values.whole("columns") + ","
                    + values.text("mark") + "," + values.on("heading") + "," + String.join("+", values.names("cases"))
                    + values.ifText("first").orElse("") + "\r\n");
        }
    }

    private static final Form SETTINGS = Form.of("table", "How the table is laid out.",
            Field.amount("step", "step", QuantityKind.TEMPERATURE_DIFFERENCE, Range.POSITIVE, "Between two lines.").standard("5 K"),
            Field.whole("columns", "columns", 1, 9, "How many columns.").mandatory(),
            Field.words("mark", "mark", "What stands between them."),
            Field.yesNo("heading", "heading", "Whether there is a first line."),
            Field.references("cases", "cases", Shape.Target.CONDITION, "Conditions to list."),
            Field.reference("first", "first", Shape.Target.CONDITION, "Condition to begin with."));
    private static final Form NONE = Form.of("settings", "There is nothing to set.");

    @TempDir
    private Path folder;
    private Path file;
    private final MemoryConsole console = new MemoryConsole();
    private FakeEngine engine = engine(null);

    @BeforeEach
    void writeDesign() throws IOException {
        file = Files.writeString(folder.resolve("box.tramontane.json"),
                "{\"format\": 1, \"name\": \"Box\", \"conditions\": [{\"id\": \"cold\"}, {\"id\": \"hot\"}]}");
    }

    private static FakeEngine engine(Exporter.Exported told) {
        return FakeEngine.giving(Toys.cabinet()).withExporters(new Table("control-law", SETTINGS, Set.of(OperatingPoint.class), told),
                new Table("plain", NONE, Set.of(), told));
    }

    private int export(String... more) {
        List<String> line = new ArrayList<>(List.of("export", file.toString()));
        line.addAll(Arrays.asList(more));
        return TestSurroundings.with(engine).program().run(line, console);
    }

    @Test
    void writesToStandardOutputWhatTheExporterGives() {
        assertEquals(0, export("--as", "control-law", "--set", "columns=3"));
        assertEquals("Box,5.0,3,,false,\r\n", console.written());
        assertEquals("", console.printed());
        assertEquals("", console.errors());
    }

    @Test
    void onlyWhatTheExporterReadsIsComputed() {
        assertEquals(0, export("--as=control-law", "--set=columns=3", "--time-limit", "90 s"));
        assertEquals(Set.of("airflow"), engine.requests.getFirst().analyses());
        assertEquals(Set.of(), engine.requests.getFirst().conditions());
        assertEquals(Duration.ofSeconds(90), engine.requests.getFirst().timeLimit());
        engine = engine(Exporter.Exported.of("all"));
        assertEquals(0, export("--as", "plain"));
        assertEquals(Set.of(), engine.requests.getFirst().analyses());
    }

    @Test
    void settingsAreReadAsTheirFieldsAreWrittenInFiles() {
        assertEquals(0, export("--as", "control-law", "--set", "columns=3", "--set", "step=0.5 K", "--set", "mark=a=1, 2",
                "--set", "heading=true", "--set", "cases=cold, hot", "--set", "first=cold"));
        assertEquals("Box,0.5,3,a=1, 2,true,cold+hotcold\r\n", console.written());
        assertEquals(0, export("--as", "control-law", "--set", "columns=3", "--set", "step=2", "--set", "mark=7"));
        assertTrue(console.written().endsWith("Box,2.0,3,7,false,\r\n"), console.written());
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', quoteCharacter = '^', value = {
        "--as|contrl-law||--as contrl-law: there is no such exporter; did you mean control-law? (loaded are control-law, plain)",
        "--as|banana||--as banana: there is no such exporter; loaded are control-law, plain.",
        "--as|control-law|columns|--set \"columns\" has no name and value; write NAME=VALUE.",
        "--as|control-law|colums=3|--set colums: exporter control-law has no such setting; did you mean columns?",
        "--as|control-law|x=3|--set x: exporter control-law has no such setting; it has step, columns, mark, heading, cases, first.",
        "--as|plain|x=3|--set x: exporter plain has no such setting; there is nothing to set.",
        "--as|control-law|columns=10|--set columns: is 10; expected a whole number from 1 to 9.",
        "--as|control-law||--set columns: is missing; expected a whole number from 1 to 9."})
    void mistakesOnTheCommandLine(String option, String id, String setting, String sentence) {
        assertEquals(2, setting == null ? export(option, id) : export(option, id, "--set", setting));
        assertEquals(sentence + "\n", console.errors());
        assertEquals("", console.written());
        assertEquals(List.of(), engine.requests);
    }

    @Test
    void everyWrongSettingIsSaidAtOnceAndNothingIsSetTwice() {
        assertEquals(2, export("--as", "control-law", "--set", "columns=3 K", "--set", "step=-1 K", "--set", "heading=yes"));
        assertEquals(3, console.errors().lines().count(), console.errors());
        assertEquals(2, export("--as", "control-law", "--set", "columns=3", "--set", "columns=4"));
        assertTrue(console.errors().endsWith("--set columns: it is set twice.\n"), console.errors());
        assertEquals(List.of(), engine.requests);
    }

    @Test
    void aSettingThatNamesWhatTheDesignHasNotIsRefused() {
        assertEquals(2, export("--as", "control-law", "--set", "columns=3", "--set", "first=warm"));
        assertTrue(console.errors().startsWith("--set first: \"warm\" is not a condition of this design"), console.errors());
        assertEquals(List.of(), engine.requests);
    }

    @Test
    void writesAFileAllOrNothing() throws IOException {
        Path target = folder.resolve("out.csv");
        assertEquals(0, export("--as", "control-law", "--set", "columns=3", "--output", target.toString()));
        assertEquals("Box,5.0,3,,false,\r\n", Files.readString(target));
        assertEquals("", console.written());
        assertEquals("Written to " + target + ".\n", console.errors());
        engine = engine(Exporter.Exported.nothing(Problem.error("", "there is no control law")));
        assertEquals(4, export("--as", "plain", "--output", target.toString()));
        assertEquals("Box,5.0,3,,false,\r\n", Files.readString(target));
        try (Stream<Path> left = Files.list(folder)) {
            assertEquals(2, left.count());
        }
        assertEquals(2, export("--as", "plain", "--output", file.toString()));
        assertTrue(console.errors().endsWith("this is the design itself, which is not written over.\n"), console.errors());
    }

    @Test
    void saysWhyThereIsNothing() {
        Evaluation cabinet = Toys.cabinet();
        engine = FakeEngine.giving(new Evaluation(cabinet.design(), cabinet.cases(), cabinet.outcomes(), List.of(
                Finding.error("fans", "have no curve").in("hot"), Finding.caution("", "is near the limit")), List.of(), false))
                .withExporters(new Table("plain", NONE, Set.of(), Exporter.Exported.nothing(
                        Problem.error("controlLaws", "there is no operating point to export"))));
        assertEquals(4, export("--as", "plain", "--quiet"));
        assertEquals("""
                FILE: fans: have no curve (in hot)
                FILE: controlLaws: there is no operating point to export
                Nothing was written.
                """.replace("FILE", file.toString()), console.errors());
        assertEquals("", console.written());
    }

    @Test
    void cautionsGoBesideTheTextUnlessNobodyWantsThem() {
        engine = engine(new Exporter.Exported("text", List.of(Problem.caution("fans", "are taken for equal"))));
        assertEquals(0, export("--as", "plain"));
        assertEquals("text", console.written());
        assertEquals(file + ": caution: fans: are taken for equal\n", console.errors());
        assertEquals(0, export("--as", "plain", "--quiet"));
        assertEquals(file + ": caution: fans: are taken for equal\n", console.errors());
    }

    @Test
    void aFileWithMistakesIsNotSolved() throws IOException {
        Files.writeString(file, "{\"format\": 1, \"name\": 7}");
        assertEquals(2, export("--as", "plain"));
        assertTrue(console.errors().endsWith("1 error; nothing was solved and the file is untouched.\n"), console.errors());
        assertEquals(List.of(), engine.requests);
    }

    @Test
    void aloneItListsTheExportersAndWhatCanBeSet() {
        assertEquals(0, TestSurroundings.with(engine).run(console, "export"));
        assertTrue(console.printed().startsWith("""
                Exporters
                id           what it writes          ending
                -----------  ----------------------  ------
                control-law  control law as a table  csv
                plain        control law as a table  csv

                Settings
                exporter     name     what it is                      standard
                -----------  -------  ------------------------------  -----------
                control-law  step     Between two lines.              "5 K"
                control-law  columns  How many columns.               must be set
                """), console.printed());
        assertEquals("", console.errors());
    }

    @Test
    void withAFileButNoExporterTheListIsAnError() {
        assertEquals(2, export());
        assertTrue(console.errors().startsWith("export: --as is missing. See \"tramontane help export\".\nExporters\n"),
                console.errors());
        assertEquals("", console.printed());
        engine = FakeEngine.giving(Toys.cabinet());
        assertEquals(0, TestSurroundings.with(engine).run(console, "export"));
        assertEquals("No exporter is loaded.\n", console.printed());
    }

    @Test
    void anExporterWithoutAFileIsAnError() {
        assertEquals(2, TestSurroundings.with(engine).run(console, "export", "--as", "plain"));
        assertEquals("export: FILE is missing. See \"tramontane help export\".\n", console.errors());
    }

    @Test
    void aStopEndsItWithoutAWord() {
        Evaluation cabinet = Toys.cabinet();
        engine = FakeEngine.giving(new Evaluation(cabinet.design(), cabinet.cases(), List.of(), List.of(), List.of(), true))
                .withExporters(new Table("plain", NONE, Set.of(), Exporter.Exported.of("text")));
        assertEquals(130, export("--as", "plain"));
        assertEquals("", console.written());
    }
}
