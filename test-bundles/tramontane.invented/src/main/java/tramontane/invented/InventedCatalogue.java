package tramontane.invented;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import tramontane.catalogue.PartFile;
import tramontane.model.AirMover;
import tramontane.model.FormReader;
import tramontane.model.Problem;
import tramontane.model.Value;
import tramontane.model.file.TreeFile;

/**
 * Invented parts of invented makers, with physics that make their trade-offs real; for the shipped catalogue, tests and benchmarks.
 *
 * <p>The same count and seed give the same parts, on every machine; fewer parts of one seed are the first of more.
 */
public final class InventedCatalogue {

    /** The seed of the shipped catalogue: the first whose parts cover all kinds that a reader may look for (see its test). */
    public static final long SEED = 157;

    /** How many parts are shipped. */
    public static final int SHIPPED = 200;

    private static final String NOTES = "Invented: no such maker, family or part exists. Figures follow from dimensionless coefficients of each"
            + " type of rotor.";

    private InventedCatalogue() {
    }

    /**
     * Parts with ids of their own.
     *
     * @param count how many
     * @param seed  which ones
     */
    public static List<AirMover> parts(int count, long seed) {
        return families(count, seed).values().stream().flatMap(List::stream).map(InventedCatalogue::read).toList();
    }

    /** The files of a catalogue by name: one for each family. */
    static Map<String, Value.Tree> files(int count, long seed) {
        Map<String, Value.Tree> files = new LinkedHashMap<>();
        families(count, seed).forEach((name, parts) -> {
            Value.Tree common = Members.common(parts).without("id"); // the id of an only part is its own
            files.put(name + ".json", Value.Tree.EMPTY.with("format", Value.Num.of(PartFile.FORMAT)).with("notes", new Value.Text(NOTES))
                    .with(common).with("parts", new Value.Items(parts.stream().map(part -> (Value) Members.without(part, common)).toList())));
        });
        return files;
    }

    /** Parts as they stand in files, each by itself, by the name of their family's file. */
    static Map<String, List<Value.Tree>> families(int count, long seed) {
        Map<String, List<Value.Tree>> families = new LinkedHashMap<>();
        int made = 0;
        for (int number = 0; made < count; number++) {
            Family family = new Family(number, seed);
            List<Value.Tree> parts = family.parts();
            List<Value.Tree> taken = new ArrayList<>(parts.subList(0, Math.min(parts.size(), count - made)));
            families.put(family.file(), taken);
            made += taken.size();
        }
        return families;
    }

    /** Reads a part as from a file, so that it cannot differ from what is shipped. */
    private static AirMover read(Value.Tree tree) {
        List<Problem> problems = new ArrayList<>();
        AirMover mover = AirMover.from(FormReader.read(AirMover.FORM, tree, "", problems));
        if (!problems.isEmpty()) {
            throw new IllegalStateException("invented part cannot be read: " + problems);
        }
        return mover;
    }

    /**
     * Writes the shipped catalogue.
     *
     * @param arguments the folder
     */
    public static void main(String... arguments) throws IOException {
        Path folder = Path.of(arguments[0]);
        Files.createDirectories(folder);
        for (Map.Entry<String, Value.Tree> file : files(SHIPPED, SEED).entrySet()) {
            TreeFile.save(file.getValue(), folder.resolve(file.getKey()));
        }
    }
}
