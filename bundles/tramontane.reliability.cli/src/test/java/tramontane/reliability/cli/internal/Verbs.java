package tramontane.reliability.cli.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import tramontane.cli.terminal.Ending;

/** Runs verbs in memory. */
final class Verbs {

    /** Failures of ten of twenty units, the others removed at 500 h; NIST/SEMATECH e-Handbook of Statistical Methods, 8.4.1.2. */
    static final String HANDBOOK = "54 187 216 240 244 335 361 373 375 386 500+ 500+ 500+ 500+ 500+ 500+ 500+ 500+ 500+ 500+ h";

    private Verbs() {
    }

    /** What was printed, and how it ended. */
    record Ran(int code, String printed, String written, String errors) {
        JsonObject json() {
            assertEquals(0, code);
            return JsonParser.parseString(written).getAsJsonObject();
        }
    }

    static Ran run(String input, String... arguments) throws Ending {
        return run(new FakeEngine(), input, arguments);
    }

    static Ran run(FakeEngine engine, String input, String... arguments) throws Ending {
        MemoryConsole console = new MemoryConsole(100);
        int code = new Life(Optional.empty(), engine, new ByteArrayInputStream(input.getBytes(StandardCharsets.UTF_8)))
                .run(List.of(arguments),
                console);
        return new Ran(code, console.printed(), console.written(), console.errors());
    }

    static String refused(int code, String input, String... arguments) {
        Ending ending = assertThrows(Ending.class, () -> run(input, arguments));
        assertEquals(code, ending.code());
        return ending.getMessage();
    }

    static JsonObject json(String input, String... arguments) throws Ending {
        List<String> all = new ArrayList<>(Arrays.asList(arguments));
        all.addAll(List.of("--format", "json"));
        return run(input, all.toArray(String[]::new)).json();
    }

    static double number(JsonObject json, String... path) {
        JsonObject at = json;
        for (int i = 0; i < path.length - 1; i++) {
            at = at.getAsJsonObject(path[i]);
        }
        return at.get(path[path.length - 1]).getAsDouble();
    }
}
