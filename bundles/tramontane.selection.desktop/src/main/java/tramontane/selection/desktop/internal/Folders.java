package tramontane.selection.desktop.internal;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.UnaryOperator;
import java.util.stream.Stream;

/**
 * The folders that parts are read from, as the command line reads them: the catalogue that comes with the program, and that of the
 * user, whose parts take the place of shipped ones with the same id.
 *
 * @param shipped the catalogue that comes with the program; empty where there is none
 * @param own     that of the user, which need not exist yet
 */
record Folders(Optional<Path> shipped, Path own) {

    /**
     * The folders of this installation.
     *
     * @param property a property of the framework by its name, null where it is not set
     * @param home     where the user's own files are kept
     */
    static Folders of(UnaryOperator<String> property, Path home) {
        Optional<Path> shipped = Optional.ofNullable(property.apply("tramontane.catalogue")).map(Path::of)
                .or(() -> Optional.ofNullable(property.apply("tramontane.install")).map(install -> Path.of(install, "catalogue")));
        return new Folders(shipped, home.resolve("catalogue"));
    }

    /** Those that exist, in the order in which they are read. */
    List<Path> readable() {
        return Stream.concat(shipped.stream(), Stream.of(own)).filter(Files::isDirectory).toList();
    }

    /** What tells whether files have changed: size and time of each. */
    Map<Path, List<Long>> stamp() {
        Map<Path, List<Long>> stamp = new TreeMap<>();
        for (Path folder : readable()) {
            try (Stream<Path> files = Files.walk(folder)) {
                for (Path file : files.filter(path -> path.toString().endsWith(".json")).toList()) {
                    stamp.put(file, stampOf(file));
                }
            } catch (IOException | UncheckedIOException vanishing) {
                stamp.put(folder, List.of()); // what cannot be walked now is looked at again the next time
            }
        }
        return stamp;
    }

    private static List<Long> stampOf(Path file) {
        try {
            return new ArrayList<>(List.of(Files.size(file), Files.getLastModifiedTime(file).toMillis()));
        } catch (IOException gone) {
            return List.of();
        }
    }
}
