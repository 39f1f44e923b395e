package tramontane.bench;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;
import tramontane.catalogue.PartFile;
import tramontane.invented.InventedCatalogue;
import tramontane.model.AirMover;

/**
 * Runs a choice of 10,000 parts with the built product, as a user does, from a machine just started, and writes its table. Not in JMH:
 * the whole command counts.
 */
public final class SelectionTable {

    private static final int PARTS = 10_000;
    private static final int FAMILY = 100;
    private static final int RUNS = 5;
    private static final long SEED = 7;

    private SelectionTable() {
    }

    /**
     * Runs it.
     *
     * @param arguments file to write to; the command of the product; the design
     */
    public static void main(String[] arguments) throws IOException, InterruptedException {
        Path folder = Files.createTempDirectory("catalogue");
        try {
            List<AirMover> parts = InventedCatalogue.parts(PARTS, SEED);
            for (int i = 0; i < PARTS; i += FAMILY) {
                PartFile.save(folder.resolve("family" + i + ".json"), parts.subList(i, i + FAMILY));
            }
            double[] times = new double[RUNS];
            String counts = "";
            for (int i = 0; i < RUNS; i++) {
                long begun = System.nanoTime();
                Process process = new ProcessBuilder(arguments[1], "choose", arguments[2], "--catalogue", folder.toString(), "--only", "--quiet",
                        "--ended").redirectError(ProcessBuilder.Redirect.INHERIT).start();
                String said = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
                if (process.waitFor() != 0) {
                    throw new IOException("the choice did not work: " + said);
                }
                times[i] = (System.nanoTime() - begun) / 1e9;
                counts = said.lines().filter(line -> line.contains("parts in the catalogue") || line.contains("may do by")).reduce("",
                        (a, b) -> a + " " + b).strip();
            }
            Arrays.sort(times);
            String text = """
                    # How long a choice takes

                    Written by `test-bundles/tramontane.bench/run selection`; do not edit. Seconds of the whole command \
                    `tramontane choose observatory` with %,d invented parts, any supply, 170 × 90 × 60 mm of room, up to 12 arrangements, four \
                    conditions, %d times, each in a machine just started. %s

                    | what | time | target |
                    |---|--:|--:|
                    | median | %.1f | 10 |
                    | fastest | %.1f | 10 |
                    | slowest | %.1f | 10 |
                    """.formatted(PARTS, RUNS, counts, times[RUNS / 2], times[0], times[RUNS - 1]);
            Files.writeString(Path.of(arguments[0]), text);
            System.out.print(text);
        } finally {
            try (Stream<Path> files = Files.walk(folder)) {
                for (Path file : files.sorted(Comparator.reverseOrder()).toList()) {
                    Files.delete(file);
                }
            }
        }
    }
}
