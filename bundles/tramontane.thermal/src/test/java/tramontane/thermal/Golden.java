package tramontane.thermal;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;

/** Tables made by scripts beside them: lines of a word and fields, in blocks that begin with one word. */
public final class Golden {

    private Golden() {
    }

    /**
     * The blocks of a table.
     *
     * @param file  its name
     * @param most  most fields of a line; the last takes all commas that are left
     * @param begin first words of lines that begin a block
     */
    public static List<List<String[]>> blocks(String file, int most, String... begin) {
        List<List<String[]>> blocks = new ArrayList<>();
        try (BufferedReader in = new BufferedReader(new InputStreamReader(
                Golden.class.getResourceAsStream("/tramontane/thermal/" + file), StandardCharsets.UTF_8))) {
            for (String line = in.readLine(); line != null; line = in.readLine()) {
                if (line.startsWith("#")) {
                    continue;
                }
                String[] fields = line.split(",", most);
                if (List.of(begin).contains(fields[0])) {
                    blocks.add(new ArrayList<>());
                }
                blocks.getLast().add(fields);
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return blocks;
    }
}
