package tramontane.reliability.system;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.stream.Stream;

/** Rows of the tables that stand beside the tests. */
final class Golden {

    private Golden() {
    }

    /** The rows without comments and heading; a quoted first column may hold commas. */
    static Stream<List<String>> rows(String name) {
        try (InputStream in = Golden.class.getResourceAsStream(name)) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8).lines().filter(line -> !line.startsWith("#")).skip(1)
                    .map(Golden::cells).toList().stream();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static List<String> cells(String line) {
        int quote = line.lastIndexOf('"');
        List<String> rest = List.of(line.substring(quote < 0 ? 0 : quote + 2).split(","));
        return quote < 0 ? rest : Stream.concat(Stream.of(line.substring(1, quote)), rest.stream()).toList();
    }
}
