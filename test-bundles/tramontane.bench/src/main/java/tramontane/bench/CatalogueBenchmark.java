package tramontane.bench;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.TearDown;
import tramontane.analysis.SectionType;
import tramontane.catalogue.Catalogue;
import tramontane.catalogue.PartFilter;
import tramontane.drive.internal.MoverDriveSection;

/** A catalogue of 50,000 parts: reading it, filtering it, making parts of it. */
@State(Scope.Thread)
public class CatalogueBenchmark {

    static final int PARTS = 50_000;

    private static final List<SectionType<?>> SECTIONS = List.of(new MoverDriveSection());

    /** What is asked of the parts. */
    private static final String FILTER = "width <= 120 mm and freeDelivery >= 100 m³/h and not type = cross-flow and (bearing in ball, fluid-film "
            + "or family ~ \"series 7\") and drive.supply.lowest <= 16 V and bestEfficiency > 5 %";

    /** {@code families} of 100 parts to a file, or {@code singles}. */
    @Param("families")
    public String design;
    /** Of no meaning here. */
    @Param("0")
    public int number;

    private Path folder;
    private Catalogue catalogue;
    private PartFilter filter;
    private int next;

    /** Writes the files and reads them once. */
    @Setup
    public void build() throws IOException {
        folder = Files.createTempDirectory("catalogue");
        write(folder, design);
        catalogue = read(folder);
        filter = PartFilter.parse(FILTER, catalogue).filter().orElseThrow();
        if (catalogue.size() != PARTS || !catalogue.problems().isEmpty() || catalogue.select(filter).length < 100) {
            throw new IllegalStateException("not the catalogue that is to be measured: " + catalogue.size() + " parts, "
                    + catalogue.select(filter).length + " selected, " + catalogue.problems());
        }
    }

    static void write(Path folder, String design) throws IOException {
        InventedParts.write(folder, design.equals("families") ? PARTS / 100 : PARTS, design.equals("families") ? 100 : 1);
    }

    static Catalogue read(Path folder) {
        return Catalogue.read(List.of(folder), SECTIONS);
    }

    /** Removes the files. */
    @TearDown
    public void remove() throws IOException {
        remove(folder);
    }

    static void remove(Path folder) throws IOException {
        try (Stream<Path> all = Files.walk(folder)) {
            for (Path each : all.sorted(Comparator.reverseOrder()).toList()) {
                Files.delete(each);
            }
        }
    }

    /** Reads all parts. */
    @Benchmark
    public Catalogue load() {
        return read(folder);
    }

    /** Selects parts by six conditions. */
    @Benchmark
    public int[] filter() {
        return catalogue.select(filter);
    }

    /** Makes one part. */
    @Benchmark
    public Object part() {
        next = (next + 7919) % PARTS;
        return catalogue.part(next);
    }

    /**
     * Reads a catalogue once, in a machine just started, and says how long that took, in ms, and what memory it holds, in MB.
     *
     * @param arguments the folder
     */
    public static void main(String[] arguments) {
        long start = System.nanoTime();
        Catalogue read = read(Path.of(arguments[0]));
        long end = System.nanoTime();
        System.gc();
        long used = Runtime.getRuntime().totalMemory() - Runtime.getRuntime().freeMemory();
        if (read.size() != PARTS || !read.problems().isEmpty()) {
            throw new IllegalStateException("not the catalogue that is to be measured: " + read.size() + " parts, " + read.problems());
        }
        System.out.println((end - start) / 1e6 + " " + used / 1e6);
    }
}
