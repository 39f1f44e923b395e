package tramontane.cli.internal;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import tramontane.model.Design;
import tramontane.model.Problem;

/** Reads a design file. */
@FunctionalInterface
interface DesignReader {

    /**
     * Reads a file.
     *
     * @param file    the file
     * @param maxSize the largest size to read, bytes
     */
    Read read(Path file, long maxSize) throws IOException;

    /**
     * What was read.
     *
     * @param design   the design, if there is no error in the file
     * @param draft    what could be read of it otherwise
     * @param problems what is wrong
     */
    record Read(Optional<Design> design, Optional<Design> draft, List<Problem> problems) {
        public Read {
            problems = List.copyOf(problems);
        }
    }
}
