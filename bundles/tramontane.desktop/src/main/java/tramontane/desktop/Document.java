package tramontane.desktop;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import tramontane.model.Design;
import tramontane.model.Problem;

/**
 * A design that is open.
 *
 * @param key      tells open designs apart, for as long as the program runs
 * @param file     where it is kept; empty before it was first saved
 * @param design   as it is now
 * @param changed  whether it differs from what the file holds
 * @param undo     what undo would take back ("rename grille"); empty where there is nothing
 * @param redo     what redo would do again
 * @param problems what is wrong with it, as far as checked; with errors nothing is computed
 */
public record Document(String key, Optional<Path> file, Design design, boolean changed, Optional<String> undo, Optional<String> redo,
        List<Problem> problems) {

    public Document {
        problems = List.copyOf(problems);
    }

    /** What people call it: the file's name without its ending, else the design's name, else "unnamed". */
    public String label() {
        return file.map(path -> path.getFileName().toString().replaceFirst("\\.tramontane\\.json$", ""))
                .orElse(design.name().isBlank() ? "unnamed" : design.name());
    }
}
