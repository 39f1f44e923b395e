package tramontane.cli.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
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
import org.junit.jupiter.params.provider.ValueSource;
import tramontane.analysis.Cancelled;
import tramontane.analysis.Evaluation;
import tramontane.analysis.Evaluation.Status;
import tramontane.analysis.Severity;
import tramontane.analysis.Verdict;
import tramontane.model.Design;
import tramontane.model.Problem;

class SolveTest {

    @TempDir
    private Path folder;
    private Path file;
    private final MemoryConsole console = new MemoryConsole();

    @BeforeEach
    void writeDesign() throws IOException {
        file = Files.writeString(folder.resolve("box.tramontane.json"),
                "{\"format\": 1, \"name\": \"Box\", \"conditions\": [{\"id\": \"cold\"}, {\"id\": \"hot\"}]}");
    }

    private int solve(FakeEngine engine, String... more) {
        List<String> line = new ArrayList<>(List.of("solve", file.toString()));
        line.addAll(Arrays.asList(more));
        return TestSurroundings.with(engine).program().run(line, console);
    }

    @Test
    void printsTheReportOnStandardOutputAndNothingElse() {
        int code = solve(FakeEngine.giving(Toys.cabinet()));
        assertTrue(console.printed().startsWith("Control cabinet ("), console.printed());
        assertTrue(console.printed().endsWith("Of 4 verdicts, 1 is not met and 1 is not judged.\n"), console.printed());
        assertEquals("", console.errors());
        assertEquals(1, code);
    }

    @Test
    void limitsOfHeatSourcesReadAsRequirementsInEveryFormat() {
        assertEquals(1, solve(FakeEngine.giving(Toys.hot())));
        assertTrue(console.printed().startsWith("""
                Camera (FILE), 2 conditions

                Requirements
                requirement                                          cold         hot
                ---------------------------------------------------  -----------  ---------------
                junction temperature, camera cards: at most 85.0 °C  met 68.3 °C  not met 86.7 °C
                junction temperature, supply: at most 105 °C         met 76.9 °C  met 96.1 °C
                """.replace("FILE", file.toString())), console.printed());
        assertTrue(console.printed().endsWith("""
                  not met  junction temperature at camera cards: 86.7 °C where at most 85.0 °C is required (in hot)

                Of 4 verdicts, 1 is not met.
                """), console.printed());
        assertEquals(1, solve(FakeEngine.giving(Toys.hot()), "--format", "json"));
        assertEquals("{\"figure\":\"thermal.junction.temperature\",\"place\":\"camera cards\",\"atMost\":358.15,"
                + "\"condition\":\"hot\",\"severity\":\"not met\",\"value\":359.85,\"at\":\"camera cards\",\"case\":\"hot\","
                + "\"margin\":" + (358.15 - 359.85) + ",\"reason\":\"does not hold at camera cards\"}",
                JsonParser.parseString(console.written()).getAsJsonObject().getAsJsonArray("verdicts").get(1).toString());
        int written = console.written().length();
        assertEquals(1, solve(FakeEngine.giving(Toys.hot()), "--format", "csv"));
        assertEquals(5, console.written().substring(written).lines().count());
    }

    @Test
    void asksForAllAnalysesAndConditionsWithinFiveMinutes() {
        FakeEngine engine = FakeEngine.giving(Toys.cabinet());
        solve(engine);
        assertEquals(Set.of(), engine.requests.getFirst().analyses());
        assertEquals(Set.of(), engine.requests.getFirst().conditions());
        assertEquals(Duration.ofMinutes(5), engine.requests.getFirst().timeLimit());
        assertEquals("Box", engine.requests.getFirst().design().name());
    }

    @Test
    void asksForWhatIsNamed() {
        FakeEngine engine = FakeEngine.giving(Toys.cabinet());
        solve(engine, "--analysis", "airflow", "--condition=hot", "--condition", "cold", "--time-limit", "90 s");
        assertEquals(Set.of("airflow"), engine.requests.getFirst().analyses());
        assertEquals(Set.of("hot", "cold"), engine.requests.getFirst().conditions());
        assertEquals(Duration.ofSeconds(90), engine.requests.getFirst().timeLimit());
    }

    @Test
    void refusesUnknownAnalysesAndConditionsBeforeItSolves() {
        FakeEngine engine = FakeEngine.giving(Toys.cabinet());
        assertEquals(2, solve(engine, "--analysis", "airflaw"));
        assertEquals(2, solve(engine, "--condition", "moon"));
        assertEquals("""
                --analysis airflaw: there is no such analysis; did you mean airflow?
                --condition moon: there is no such condition in the design; it has cold, hot.
                """, console.errors());
        assertEquals(List.of(), engine.requests);
    }

    @Test
    void namesEveryMistakeOfTheFileAndOfTheDesignOnceInOrder() throws IOException {
        Files.writeString(file, "{\"format\": 1, \"name\": 7, \"conditions\": [{}]}");
        FakeEngine engine = new FakeEngine(List.of(
                Problem.error("airPath.passages[10].kind", "\"sieve\" is not known"),
                Problem.error("airPath.passages[9].kind", "\"sieve\" is not known"),
                Problem.error("airPath.passages[9].kind", "\"sieve\" is not known"),
                Problem.caution("requirements", "none is stated")), (request, watch) -> Toys.cabinet(), List.of());
        assertEquals(2, solve(engine));
        List<String> lines = console.errors().lines().toList();
        assertEquals(6, lines.size(), console.errors());
        assertEquals(file + ": airPath.passages[9].kind: \"sieve\" is not known", lines.get(0));
        assertEquals(file + ": airPath.passages[10].kind: \"sieve\" is not known", lines.get(1));
        assertTrue(lines.get(2).startsWith(file + ": conditions[0].id: "), lines.get(2));
        assertTrue(lines.get(3).startsWith(file + ": name: "), lines.get(3));
        assertEquals(file + ": caution: requirements: none is stated", lines.get(4));
        assertEquals("4 errors and 1 caution; nothing was solved and the file is untouched.", lines.get(5));
        assertEquals("", console.printed());
        assertEquals(List.of(), engine.requests);
    }

    @Test
    void givesProgramsTheMistakesAsJson() throws IOException {
        Files.writeString(file, "{\"format\": 1, \"name\": \"Box\", \"heat\": 3");
        assertEquals(2, solve(FakeEngine.giving(Toys.cabinet()), "--format", "json"));
        JsonObject root = JsonParser.parseString(console.written()).getAsJsonObject();
        assertEquals("[]", root.get("figures").toString());
        assertEquals("error", root.getAsJsonArray("problems").get(0).getAsJsonObject().get("severity").getAsString());
        assertFalse(console.errors().isEmpty());
    }

    @Test
    void saysCautionsAndSolvesAllTheSame() {
        FakeEngine engine = new FakeEngine(List.of(Problem.caution("mission", "its hours are not those of a year")),
                (request, watch) -> Toys.many(1), List.of());
        // with the findings, where they are kept with the results; beside a table of numbers, on the other stream
        assertEquals(0, solve(engine));
        assertTrue(console.printed().contains("  caution  mission: its hours are not those of a year\n"), console.printed());
        assertEquals("", console.errors());
        assertEquals(0, solve(engine, "--format", "csv"));
        assertEquals(file + ": caution: mission: its hours are not those of a year\n", console.errors());
    }

    @Test
    void keepsQuietIfAsked() {
        FakeEngine engine = new FakeEngine(List.of(Problem.caution("mission", "its hours are not those of a year")),
                (request, watch) -> {
                    watch.progress(0.5, "air flow");
                    return Toys.many(1);
                }, List.of());
        assertEquals(0, solve(engine, "--quiet", "--output", folder.resolve("out.txt").toString()));
        assertEquals("", console.errors());
        assertEquals("", console.printed());
        assertEquals(List.of(), console.progress);
    }

    @Test
    void handsProgressOn() {
        solve(new FakeEngine(List.of(), (request, watch) -> {
            watch.progress(0.5, "air flow");
            return Toys.many(1);
        }, List.of()));
        assertEquals(List.of("air flow"), console.progress);
    }

    @ParameterizedTest
    @ValueSource(strings = {"text", "json", "csv"})
    void writesAFileWholeAndSaysSo(String format) throws IOException {
        Path output = folder.resolve("results");
        assertEquals(1, solve(FakeEngine.giving(Toys.cabinet()), "--format", format, "--output", output.toString()));
        assertTrue(Files.readString(output).contains("kg/m³"), "UTF-8");
        assertEquals("", console.printed() + console.written());
        assertEquals("Of 4 verdicts, 1 is not met and 1 is not judged. Written to " + output + ".\n", console.errors());
        try (Stream<Path> left = Files.list(folder)) {
            assertEquals(2, left.count(), "nothing lies beside");
        }
    }

    @Test
    void neverWritesOverTheDesign() throws IOException {
        String before = Files.readString(file);
        assertEquals(2, solve(FakeEngine.giving(Toys.cabinet()), "--output", file.toString()));
        assertEquals(before, Files.readString(file));
        assertTrue(console.errors().contains("this is the design itself"), console.errors());
    }

    @Test
    void stopsWithoutAFileWhenTheUserStopsIt() throws IOException {
        Path output = Files.writeString(folder.resolve("results"), "old");
        int code = solve(new FakeEngine(List.of(), (request, watch) -> {
            console.stop = true;
            assertTrue(watch.cancelled());
            return new Evaluation(request.design(), List.of(), List.of(), List.of(), List.of(), true);
        }, List.of()), "--output", output.toString());
        assertEquals(130, code);
        assertEquals("Stopped.\n", console.errors());
        assertEquals("", console.printed());
        assertEquals("old", Files.readString(output));
    }

    @Test
    void stopsWhenTheEngineThrowsCancelled() {
        assertEquals(130, solve(new FakeEngine(List.of(), (request, watch) -> {
            throw new Cancelled();
        }, List.of())));
        assertEquals("Stopped.\n", console.errors());
    }

    @Test
    void tellsAFaultInOneSentenceWithoutAStackTrace() {
        TestSurroundings surroundings = TestSurroundings.with(new FakeEngine(List.of(), (request, watch) -> {
            throw new IllegalStateException("the matrix has a hole");
        }, List.of()));
        assertEquals(3, surroundings.run(console, "solve", file.toString()));
        assertEquals("This is a fault in the program or in an extension: IllegalStateException: the matrix has a hole."
                + " Run again with --debug to see where.\n", console.errors());
        assertEquals(1, surroundings.faults().size());
    }

    @Test
    void saysWhereToLookIfThereIsNoEngine() {
        assertEquals(3, TestSurroundings.empty().run(console, "solve", file.toString()));
        assertEquals("The engine is not running, so nothing can be checked or solved; \"tramontane modules\" says why.\n",
                console.errors());
    }

    @Test
    void solvesASampleByItsName() throws IOException {
        Path samples = Files.createDirectory(folder.resolve("samples"));
        Files.writeString(samples.resolve("quick.tramontane.json"), "{\"format\": 1, \"name\": \"Quick\"}");
        FakeEngine engine = FakeEngine.giving(Toys.many(1));
        TestSurroundings surroundings = TestSurroundings.with(engine).withSamples(samples);
        assertEquals(0, surroundings.run(console, "solve", "quick"));
        assertEquals("Quick", engine.requests.getFirst().design().name());
        assertEquals(2, surroundings.run(console, "solve", "slow"));
        assertEquals("slow: there is no such file, and no sample of that name. Samples: quick.\n", console.errors());
    }

    @Test
    void prefersAFileToASample() throws IOException {
        Path samples = Files.createDirectory(folder.resolve("samples"));
        Files.writeString(samples.resolve("box.tramontane.json"), "{\"format\": 1, \"name\": \"Sample\"}");
        FakeEngine engine = FakeEngine.giving(Toys.many(1));
        TestSurroundings.with(engine).withSamples(samples).run(console, "solve", file.toString());
        assertEquals("Box", engine.requests.getFirst().design().name());
    }

    @Test
    void refusesFilesThatAreTooLarge() {
        assertEquals(0, solve(FakeEngine.giving(Toys.many(1)), "--max-size", "1 kB"));
        assertEquals(2, solve(FakeEngine.giving(Toys.many(1)), "--max-size", "10"));
        assertTrue(console.errors().contains("1 error; nothing was solved"), console.errors());
    }

    @ParameterizedTest(name = "{0}, {1}, {2} named {3}: {4}")
    @CsvSource(nullValues = "-", value = {
        "COMPUTED,     MET,        COMPUTED,     -,    0",
        "COMPUTED,     CAUTION,    COMPUTED,     -,    0",
        "COMPUTED,     -,          COMPUTED,     -,    0",
        "COMPUTED,     NOT_MET,    COMPUTED,     -,    1",
        "COMPUTED,     NOT_JUDGED, COMPUTED,     -,    1",
        "COMPUTED,     MET,        NOT_RUN,      -,    0",
        "COMPUTED,     NOT_JUDGED, NOT_RUN,      -,    1",
        "COMPUTED,     MET,        NOT_RUN,      acme, 4",
        "COMPUTED,     MET,        NOT_RUN,      airflow, 0",
        "COMPUTED,     MET,        NOT_COMPUTED, -,    4",
        "COMPUTED,     MET,        FAILED,       -,    4",
        "NOT_COMPUTED, NOT_MET,    NOT_RUN,      -,    4",
        "FAILED,       -,          COMPUTED,     -,    4"})
    void exitCode(Status airflow, Severity severity, Status acme, String named, int code) {
        List<Verdict> verdicts = severity == null ? List.of() : List.of(
                Toys.verdict(Toys.atLeast(Toys.FLOW, "fans", 1), "hot", severity,
                        tramontane.analysis.Figure.of(Toys.FLOW, "fans", 1)));
        Evaluation evaluation = new Evaluation(Design.EMPTY, List.of(Toys.one("hot", "hot")),
                List.of(Toys.outcome("airflow", "hot", airflow), Toys.outcome("acme", "hot", acme)), List.of(), verdicts, false);
        assertEquals(code, Solve.exitCode(evaluation, named == null ? Set.of() : Set.of(named)));
    }

    @Test
    void nothingComputedAtAllIsNotFine() {
        Evaluation evaluation = new Evaluation(Design.EMPTY, List.of(Toys.one("hot", "hot")), List.of(), List.of(), List.of(),
                false);
        assertEquals(4, solve(FakeEngine.giving(evaluation)));
        assertTrue(console.printed().endsWith("Nothing was computed, as no analysis is loaded. No requirement is stated.\n"),
                console.printed());
    }
}
