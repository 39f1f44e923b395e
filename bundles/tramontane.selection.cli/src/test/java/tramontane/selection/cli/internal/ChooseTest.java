package tramontane.selection.cli.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.CancellationException;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import tramontane.analysis.Finding;
import tramontane.cli.terminal.Ending;
import tramontane.model.AirMover;
import tramontane.model.Design;
import tramontane.model.Problem;
import tramontane.model.Value;
import tramontane.model.file.DesignFile;
import tramontane.selection.Merit;
import tramontane.selection.Space;
import tramontane.selection.Task;

class ChooseTest {

    @TempDir
    private Path folder;

    private final FakeEngine engine = new FakeEngine();
    private final FakeSelector selector = new FakeSelector();
    private final MemoryConsole console = new MemoryConsole(100);
    private String file;
    private Choose choose;

    @BeforeEach
    void layOut() throws IOException {
        Path samples = Files.createDirectory(folder.resolve("samples"));
        Files.writeString(samples.resolve("shipped.tramontane.json"), Shelf.QUICK);
        file = Files.writeString(folder.resolve("quick.tramontane.json"), Shelf.QUICK).toString();
        choose = new Choose(Shelf.folders(folder.resolve("parts")), Optional.of(samples), engine, selector);
    }

    private Task task(String... arguments) throws Ending {
        choose.run(List.of(arguments), console);
        return selector.tasks.getLast();
    }

    private static List<String> ids(Task task) {
        return task.parts().stream().map(AirMover::id).toList();
    }

    private String refused(String... arguments) {
        String sentence = assertThrows(Ending.class, () -> choose.run(List.of(arguments), console)).getMessage();
        assertEquals(List.of(), selector.tasks);
        return sentence;
    }

    @Test
    void aWishHoldsWhereNoOptionIsGiven() throws Ending {
        Task task = task(file);
        assertEquals("fans", task.bank());
        assertEquals(new Space(Optional.of(0.3), Optional.of(0.15), Optional.empty(), 3, 2, 6), task.space());
        assertEquals(Map.of("cost", 3.0), task.weights());
        assertEquals(List.of("Garbin 110", "Garbin 120", "Garbin 92"), ids(task)); // not the small one, nor that which has ended
        assertEquals(List.of(20, 5, 0.2, false), List.of(task.listed(), task.misses(), task.lowest(), task.exactly()));
    }

    @Test
    void optionsComeBeforeTheWish() throws Ending {
        Task task = task(file, "--opening", "17cmx90x60mm", "--side-by-side", "2", "--in-series", "1", "--movers", "2", "--weight", "power=2", "--weight",
                "airflow.bank.flow=0.5", "--lowest", "40%", "--top", "3", "--misses", "0", "--exactly", "--ended", "--where", "width < 115 mm");
        assertEquals(new Space(Optional.of(0.17), Optional.of(0.09), Optional.of(0.06), 2, 1, 2), task.space());
        assertEquals(Map.of("power", 2.0, "airflow.bank.flow", 0.5), task.weights());
        assertEquals(List.of("Garbin 110", "Garbin 80", "Garbin 92"), ids(task)); // the wish's filter holds as well
        assertEquals(List.of(3, 0, 0.4, true), List.of(task.listed(), task.misses(), task.lowest(), task.exactly()));
    }

    @Test
    void aDutyNeedsNoDesign() throws Ending {
        Task task = task("--flow", "0.08m3/s", "--pressure", "60Pa", "--temperature", "40°C", "--altitude", "2000m");
        assertEquals("movers", task.bank());
        assertEquals(Optional.of(new Value.Text("0.08 m3/s")), task.design().airPath().passages().getFirst().parameters().get("flow"));
        assertEquals(313.15, task.design().conditions().getFirst().temperature(), 1e-9);
        assertEquals(2000, task.design().conditions().getFirst().altitudeMetres(), 1e-9);
        assertEquals(Space.ANY, task.space());
        assertEquals(4, ids(task).size());
    }

    @Test
    void thePartsOfALaterFolderTakeThePlaceOfEarlierOnes() throws Exception {
        Path own = Files.createDirectory(folder.resolve("own"));
        Shelf.part(own, "Garbin 92", 93, "current", "");
        Shelf.part(own, "Mine", 60, "current", "");
        Task stacked = task(file, "--catalogue", own.toString());
        assertEquals(List.of("Garbin 110", "Garbin 120", "Garbin 92", "Mine"), ids(stacked));
        assertEquals(0.093, stacked.parts().get(2).width().orElseThrow().si(), 1e-12);
        assertEquals(List.of("Garbin 92", "Mine"), ids(task(file, "--only", "--catalogue", own.toString())));
    }

    @Test
    void theTextAnswersInTheOrderOfTheEngineersQuestions() throws Ending {
        int code = choose.run(List.of(file), console);
        assertEquals(0, code);
        String text = console.printed();
        int from = 0;
        for (String part : List.of("Quick look (" + file + "), bank fans", "5 parts in the catalogue; 3 pass the filter and are still to be had; 3 fit the room.",
                "8 arrangements: 3 may do by the reduced design, 3 were solved exactly, 2 meet everything; 1 comes\nbehind",
                "What the rest of the design asks of the bank", "flow at least 288 m³/h", "The best, by the weights", "1 *", "Garbin 110", "Garbin 120",
                "Tightest requirement of all: flow at fans in nominal, just met.", "Ranked by\nprice alone.", "the Pareto set, 1 in all",
                "Where a cell is empty, the part does not say", "A fixed speed", "Can be ordered for the last time only: rank 1.", "Why\n  the first takes least power",
                "Nearest misses\n  1. Garbin 92, single: it gives 180 m³/h where 288 m³/h are needed\n    it would do at 160 % of its speed",
                "What fails, and for what\n  2 arrangements: it gives 180 m³/h where 288 m³/h are needed", "Next: --put 1 --output FILE", "Mains voltage")) {
            int at = text.indexOf(part, from);
            assertTrue(at >= 0, () -> part + " is not there, or not in its place:\n" + text);
            from = at;
        }
        assertFalse(text.contains("All that fails"), text);
    }

    @ParameterizedTest
    @ValueSource(ints = {80, 100, 120})
    void noLineIsTooLong(int width) throws Ending {
        MemoryConsole narrow = new MemoryConsole(width);
        choose.run(List.of("--flow", "0.08m3/s", "--pressure", "60Pa", "--rejected", "--compare", "1,2"), narrow);
        narrow.printed().lines().forEach(line -> assertTrue(line.codePointCount(0, line.length()) <= width, line));
        assertTrue(narrow.printed().contains("Side by side"), narrow.printed());
        assertTrue(narrow.printed().contains("All that fails"), narrow.printed());
    }

    @Test
    void meritHalvesWithEachStep() throws Ending {
        choose.run(List.of("--flow", "0.08m3/s", "--pressure", "60Pa", "--ended", "--format", "csv"), console);
        List<String> rows = console.written().lines().toList();
        assertTrue(rows.getFirst().startsWith("rank,part,across,along,series,turned,setting [1],speed [rad/s],merit,pareto,power [W],cost [EUR],reason"), rows::toString);
        assertTrue(rows.get(1).startsWith("1,Garbin 110,2,1,1,false,0.9,300.0,100,true,10.0,9.0,"), rows::toString);
        // of the second less is known, so that its mean is of other things
        assertTrue(rows.get(2).startsWith("2,Garbin 120,2,1,1,false,0.8,300.0,,false,20.0,,"), rows::toString);
        assertTrue(rows.get(3).contains(",25,false,30.0,3.0,"), rows::toString);
    }

    @Test
    void rejectedOnesFollowInTheTable() throws Ending {
        choose.run(List.of(file, "--format", "csv", "--rejected", "--units", "metric"), console);
        List<String> rows = console.written().lines().toList();
        List<String> leftOut = rows.stream().filter(row -> row.contains("the filter leaves it out: ")).toList();
        assertFalse(leftOut.isEmpty(), rows::toString);
        assertTrue(leftOut.stream().anyMatch(row -> row.contains("status is ended")), leftOut::toString);
        assertEquals(1 + 2 + leftOut.size() + 2, rows.size());
        assertEquals(",Garbin 92,1,1,1,false,,,,,,,it gives 180 m³/h where 288 m³/h are needed", rows.getLast());
    }

    @Test
    void programsReadSi() throws Ending {
        choose.run(List.of(file, "--format", "json", "--units", "us"), console);
        JsonObject json = JsonParser.parseString(console.written()).getAsJsonObject();
        assertEquals(List.of("format", "design", "bank", "counts", "needs", "criteria", "candidates", "pareto", "behind", "nearest", "rejected", "why",
                "findings", "problems"), List.copyOf(json.keySet()));
        assertEquals(0.08, json.getAsJsonArray("needs").get(0).getAsJsonObject().get("flow").getAsDouble());
        JsonObject first = json.getAsJsonArray("candidates").get(0).getAsJsonObject();
        assertEquals("Garbin 110", first.get("part").getAsString());
        assertEquals(10, first.getAsJsonObject("values").get("power").getAsDouble());
        assertEquals("EUR", json.getAsJsonArray("criteria").get(1).getAsJsonObject().get("unit").getAsString());
        assertEquals(0, json.getAsJsonArray("rejected").size());
        assertEquals(1.6, json.getAsJsonArray("nearest").get(0).getAsJsonObject().get("timesSpeed").getAsDouble());
    }

    @Test
    void whatIsPutIntoTheDesignKeepsAllElse() throws Exception {
        Path out = folder.resolve("out.tramontane.json");
        assertEquals(0, choose.run(List.of(file, "--put", "2", "--output", out.toString()), console));
        Design design = DesignFile.read(out).design().orElseThrow();
        assertEquals(List.of("Garbin 120"), design.airMovers().stream().map(AirMover::id).toList());
        Value.Tree bank = design.airPath().passage("fans").orElseThrow().parameters();
        assertEquals(Optional.of(new Value.Text("80 %")), bank.get("speed"));
        assertTrue(bank.tree("sections").isPresent());
        assertEquals(Optional.of(Value.Tree.EMPTY.with("shelf", new Value.Num("7"))), design.more().get("lab"));
        assertEquals(Shelf.QUICK, Files.readString(Path.of(file)));
        assertTrue(console.errors().contains("The design with Garbin 120, 2 side by side is written to "), console.errors());
    }

    @Test
    void aNearMissIsPutWhereItIsAskedFor() throws Exception {
        selector.none = true;
        Path out = folder.resolve("miss.tramontane.json");
        assertEquals("--put 1: no candidate meets everything. --put miss:1 puts the nearest miss.", assertThrows(Ending.class,
                () -> choose.run(List.of(file, "--put", "1", "--output", out.toString()), console)).getMessage());
        assertTrue(console.printed().contains("Next: --put miss:1 --output FILE writes the design with the nearest miss"), console.printed());
        assertEquals("--put miss:2: there is 1 near miss only.", assertThrows(Ending.class,
                () -> choose.run(List.of(file, "--put", "miss:2", "--output", out.toString()), console)).getMessage());
        assertFalse(Files.exists(out));
        assertEquals(1, choose.run(List.of(file, "--put", "miss:1", "--misses", "0", "--output", out.toString()), console));
        Value.Tree bank = DesignFile.read(out).design().orElseThrow().airPath().passage("fans").orElseThrow().parameters();
        assertEquals(List.of(Optional.of(new Value.Text("Garbin 92")), Optional.of(new Value.Text("75 %"))), List.of(bank.get("mover"), bank.get("speed")));
        assertTrue(console.errors().contains("The design with Garbin 92, single is written to "), console.errors());
        assertTrue(console.errors().contains("caution: Garbin 92, single does not meet everything: it gives 180 m³/h where 288 m³/h are needed.\n"), console.errors());
    }

    @Test
    void whatCouldNotBeJudgedIsNamed() throws Ending {
        selector.silent = true;
        choose.run(List.of(file), console);
        String text = console.printed().replaceAll("\\s+", " ");
        assertTrue(text.contains("2 meet everything that could be judged; 1 comes"), text);
        assertTrue(text.contains("Not judged of rank 1: flow at grille in hot day, cold day; there is no such figure at grille."), text);
    }

    @Test
    void belowTheTableStandsWhichFigureAColumnIs() throws Ending {
        choose.run(List.of(file), console);
        assertTrue(console.printed().contains("\npower: input of the bank, the most in any condition.\n"), console.printed());
    }

    @Test
    void aDesignThatWeighsNothingIsRefused() throws Exception {
        Files.writeString(Path.of(file), Shelf.QUICK.replace("\"weight\": 3", "\"weight\": 0"));
        assertTrue(refused(file).startsWith("Section selection of bank fans: no criterion has a weight above 0"));
        assertEquals(Map.of("power", 1.0, "cost", 0.0), task(file, "--weight", "power=1", "--weight", "cost=0").weights());
    }

    @Test
    void noFileIsWrittenOverUntold() throws Exception {
        Path out = Files.writeString(folder.resolve("other.json"), "kept");
        assertTrue(refused(file, "--put", "1", "--output", out.toString()).contains("--replace writes over it"));
        assertTrue(refused(file, "--put", "1", "--output", file).contains("this is the design itself"));
        assertTrue(refused("shipped", "--put", "1", "--in-place").contains("is a sample"));
        assertTrue(refused("--flow", "1m3/s", "--pressure", "1Pa", "--put", "1", "--in-place").contains("there is no design file"));
        assertEquals("kept", Files.readString(out));
        choose.run(List.of(file, "--put", "1", "--output", out.toString(), "--replace"), console);
        assertTrue(Files.readString(out).contains("Garbin 110"));
        choose.run(List.of(file, "--put", "1", "--in-place", "--quiet"), console);
        assertTrue(Files.readString(Path.of(file)).contains("Garbin 110"));
    }

    @Test
    void aRankThatThereIsNotWritesNothing() {
        Path out = folder.resolve("out.json");
        assertEquals("--put 3: there are 2 candidates only.", assertThrows(Ending.class,
                () -> choose.run(List.of(file, "--put", "3", "--output", out.toString()), console)).getMessage());
        assertFalse(Files.exists(out));
    }

    @Test
    void theExitCodeTellsHowItCameOut() throws Ending {
        selector.none = true;
        assertEquals(1, choose.run(List.of(file), console));
        assertTrue(console.printed().contains("None meets everything."), console.printed());
        selector.findings = List.of(Finding.error("", "nothing loaded knows banks"));
        assertEquals(4, choose.run(List.of(file), console));
        assertTrue(console.printed().contains("  error    nothing loaded knows banks"), console.printed());
    }

    @Test
    void ctrlCEndsIt() {
        selector.cancelled = true;
        assertThrows(CancellationException.class, () -> choose.run(List.of(file), console));
        assertEquals("", console.printed());
    }

    @Test
    void theProgressNamesTheBestSoFar() throws Ending {
        choose.run(List.of(file), console);
        assertEquals("judging candidates; 1 found, best so far Garbin 110", console.progress.get(1));
        assertEquals("judging candidates; 2 found, best so far Garbin 110", console.progress.get(2));
    }

    @Test
    void aDesignWithMistakesIsRefused() throws Ending {
        engine.problems.add(Problem.error("airMovers[0].curves", "blame of the part that stands in"));
        assertEquals(0, choose.run(List.of(file), console));
        engine.problems.add(Problem.error("conditions[0]", "is wrong"));
        assertEquals(2, choose.run(List.of(file), console));
        assertTrue(console.errors().contains("conditions[0]: is wrong"), console.errors());
        assertTrue(console.errors().contains("1 error and "), console.errors());
        assertTrue(console.errors().endsWith("; nothing was chosen and the file is untouched.\n"), console.errors());
    }

    @Test
    void damagedFilesOfTheCatalogueAreTold() throws Exception {
        Files.writeString(folder.resolve("parts").resolve("bad.json"), "{");
        assertEquals(0, choose.run(List.of(file), console));
        assertTrue(console.errors().startsWith("caution: the catalogue has 1 error, the first: "), console.errors());
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            --opening 30        | no opening
            --opening 30x-4mm   | above zero
            --opening 30x40kg   | is not a length
            --weight noize=2    | did you mean noise?
            --weight power      | NAME=NUMBER
            --weight power=-1   | no number from 0 on
            --weight noise=0    | no criterion has a weight above 0
            --put miss:x        | "x" is no whole number from 1
            --lowest 0%         | above 0 %
            --top 0             | no whole number from 1
            --bank fan          | did you mean fans?
            --where wdth<3mm    | did you mean "width"?
            --where width>9m    | None of 5 parts
            --catalogue nix     | there is no such folder
            --only              | needs at least one --catalogue
            --put 1             | needs --output FILE or --in-place
            --output x.json     | writes the candidate that --put RANK names
            --compare 1,x       | "x" is no whole number
            --format xml        | text, json, csv
            --flow 1m3/s        | a FILE says itself
            --altitude 3m       | goes with --flow""")
    void mistakesAreNamed(String arguments, String sentence) {
        String[] words = (file + " " + arguments).split(" ");
        String said = refused(words);
        assertTrue(said.contains(sentence), said);
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            --flow 1m3/s                                      | --pressure is missing
            --flow 0m3/s --pressure 1Pa                       | above zero
            --flow 1kg --pressure 1Pa                         | flow
            --flow 1m3/s --pressure 1Pa --temperature 900°C   | out of range
            --flow 1m3/s --pressure 1Pa --altitude 20km       | out of range""")
    void dutiesAreChecked(String arguments, String sentence) {
        String said = refused(arguments.split(" "));
        assertTrue(said.contains(sentence), said);
    }

    @Test
    void theHelpTellsWhatMeritMeans() {
        assertTrue(choose.help().contains(Merit.MEANING.substring(0, 40)), choose.help());
    }
}
