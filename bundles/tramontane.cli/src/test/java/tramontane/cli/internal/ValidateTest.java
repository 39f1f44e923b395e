package tramontane.cli.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.google.gson.JsonParser;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tramontane.model.Problem;

class ValidateTest {

    @TempDir
    private Path folder;
    private final MemoryConsole console = new MemoryConsole();

    private int validate(List<Problem> problems, String json, String... options) throws IOException {
        Path file = Files.writeString(folder.resolve("a"), json);
        FakeEngine engine = new FakeEngine(problems, (request, watch) -> Toys.cabinet(), List.of());
        List<String> line = new java.util.ArrayList<>(List.of("validate", file.toString()));
        line.addAll(List.of(options));
        int code = TestSurroundings.with(engine).program().run(line, console);
        assertEquals(List.of(), engine.requests, "it only checks");
        return code;
    }

    @Test
    void aGoodFile() throws IOException {
        assertEquals(0, validate(List.of(), "{\"format\": 1}"));
        assertEquals(folder.resolve("a") + ": no errors.\n", console.printed());
    }

    @Test
    void cautionsAreNoErrors() throws IOException {
        assertEquals(0, validate(List.of(Problem.caution("x", "is odd"), Problem.caution("y", "is odd")), "{\"format\": 1}"));
        assertTrue(console.printed().endsWith("2 cautions.\n"), console.printed());
    }

    @Test
    void errorsAreTheResult() throws IOException {
        assertEquals(2, validate(List.of(Problem.error("airPath", "is empty")), "{\"format\": 1}"));
        assertEquals(folder.resolve("a") + ": airPath: is empty\n1 error.\n", console.printed());
        assertEquals("", console.errors());
    }

    @Test
    void asJsonAndCsv() throws IOException {
        List<Problem> problems = List.of(Problem.error("airPath", "is \"empty\", or nearly"));
        assertEquals(2, validate(problems, "{\"format\": 1, \"name\": \"A\"}", "--format=json"));
        assertEquals("A", JsonParser.parseString(console.written()).getAsJsonObject().get("design").getAsString());
        MemoryConsole before = console;
        int length = before.written().length();
        assertEquals(2, validate(problems, "{\"format\": 1}", "--format=csv"));
        assertEquals("severity,place,message\r\nerror,airPath,\"is \"\"empty\"\", or nearly\"\r\n",
                console.written().substring(length));
    }

    @Test
    void aFileWithThousandsOfMistakesIsNamedByTheFirst() throws IOException {
        List<Problem> problems = java.util.stream.IntStream.range(0, 500)
                .mapToObj(i -> Problem.error("x[" + i + "]", "is wrong")).toList();
        assertEquals(2, validate(problems, "{\"format\": 1}"));
        List<String> lines = console.printed().lines().toList();
        assertEquals(202, lines.size());
        assertTrue(lines.get(199).endsWith(": x[199]: is wrong"), lines.get(199));
        assertTrue(lines.get(200).endsWith(": and 300 more, not shown here; --format json gives all."), lines.get(200));
        assertEquals("500 errors.", lines.get(201));
    }
}
