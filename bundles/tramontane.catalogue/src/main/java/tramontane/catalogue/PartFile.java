package tramontane.catalogue;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.SequencedSet;
import tramontane.catalogue.internal.PartTrees;
import tramontane.model.AirMover;
import tramontane.model.Problem;
import tramontane.model.Value;
import tramontane.model.file.Limits;
import tramontane.model.file.TreeFile;

/**
 * One file of a catalogue: a single air mover as in a design, or a family, whose members beside {@code parts} hold for each of
 * its parts.
 *
 * <pre>{@code
 * {"format": 1, "maker": "Garbin", "depth": "38 mm", "parts": [
 *   {"id": "Garbin 120-38", "curves": [ … ]},
 *   {"id": "Garbin 120-25", "depth": "25 mm", "curves": [ … ]}]}
 * }</pre>
 */
public final class PartFile {

    /** The version of the format that is written. */
    public static final int FORMAT = PartTrees.FORMAT;

    private PartFile() {
    }

    /**
     * What a file holds.
     *
     * @param parts    the parts without errors
     * @param problems everything that is wrong, cautions included, each with its place in the file
     */
    public record Read(List<AirMover> parts, List<Problem> problems) {
        public Read {
            parts = List.copyOf(parts);
            problems = List.copyOf(problems);
        }
    }

    /**
     * The parts of a file as if each stood alone: what a family says is merged into each of its parts, object by object; where
     * both say something the part wins.
     *
     * @param file the object that a file holds
     * @return no parts where {@code parts} is no list; what is no object in that list is left out
     */
    public static List<Value.Tree> parts(Value.Tree file) {
        return PartTrees.parts(file);
    }

    /** Reads a file; a file that cannot be read is a problem, too. */
    public static Read read(Path file) {
        TreeFile.Read read = TreeFile.read(file, Limits.STANDARD);
        PartTrees trees = PartTrees.of(read);
        SequencedSet<Problem> problems = new LinkedHashSet<>(trees.problems());
        List<AirMover> movers = new ArrayList<>();
        for (int i = 0; i < trees.size(); i++) {
            PartTrees.Part part = trees.part(i, List.of());
            problems.addAll(part.problems());
            part.mover().ifPresent(movers::add);
        }
        return new Read(movers, List.copyOf(problems));
    }

    /**
     * Saves parts as one file: a single part as its own object, several as a family that shares nothing. There is always a whole
     * file, old or new.
     *
     * @throws IOException with a sentence for the person who saves
     */
    public static void save(Path file, List<AirMover> parts) throws IOException {
        TreeFile.save(parts.size() == 1 ? parts.getFirst().tree() : Value.Tree.EMPTY.with(PartTrees.FORMAT_MEMBER, Value.Num.of(FORMAT))
                .with(PartTrees.PARTS, new Value.Items(parts.stream().map(part -> (Value) part.tree()).toList())), file);
    }
}
