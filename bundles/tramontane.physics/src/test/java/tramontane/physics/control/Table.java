package tramontane.physics.control;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;

/** Reads the tables beside the tests. */
final class Table {

    private Table() {
    }

    static List<String[]> rows(String name) {
        try (InputStream in = Table.class.getResourceAsStream(name)) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8).lines().filter(line -> !line.startsWith("#"))
                    .map(line -> line.split(";", -1)).toList();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    static double[] numbers(String text) {
        return Arrays.stream(text.trim().split(" ")).filter(word -> !word.isEmpty()).mapToDouble(Table::number).toArray();
    }

    static double number(String text) {
        return switch (text) {
            case "inf" -> Double.POSITIVE_INFINITY;
            case "nan" -> Double.NaN;
            default -> Double.parseDouble(text);
        };
    }
}
