package tramontane.model.file;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import tramontane.model.Problem;
import tramontane.model.Value;

/** Files that hold one object of values, whatever it means. */
public final class TreeFile {

    private TreeFile() {
    }

    /**
     * What a file holds.
     *
     * @param tree     the object; of a name given twice the first value; empty where the file is no object at all
     * @param problems everything that is wrong with the file
     */
    public record Read(Optional<Value.Tree> tree, List<Problem> problems) {
        public Read {
            problems = List.copyOf(problems);
        }
    }

    /** Reads a file; a file that cannot be read is a problem, too. */
    public static Read read(Path file, Limits limits) {
        try {
            return parse(SafeFile.read(file, limits.bytes()), limits);
        } catch (IOException e) {
            return new Read(Optional.empty(), List.of(Problem.error("", e.getMessage())));
        }
    }

    /** Reads the bytes of a file. */
    public static Read parse(byte[] bytes, Limits limits) {
        if (bytes.length > limits.bytes()) {
            return new Read(Optional.empty(), List.of(Problem.error("", "the file has " + bytes.length + " bytes; expected "
                    + limits.bytes() + " at most")));
        }
        ProblemList problems = new ProblemList(limits.problems());
        Optional<Value.Tree> tree = JsonTree.read(bytes, limits, problems);
        return new Read(tree, problems.all());
    }

    /** The text of a file, readable by people; the same values give the same text. */
    public static String write(Value.Tree tree) {
        return JsonText.of(tree);
    }

    /**
     * Saves a file: written beside, flushed, moved over in one step, so that there is always a whole file, old or new. Links
     * stay links, permissions stay.
     *
     * @throws IOException with a sentence for the person who saves
     */
    public static void save(Value.Tree tree, Path file) throws IOException {
        byte[] bytes = write(tree).getBytes(StandardCharsets.UTF_8);
        SafeFile.replace(file, out -> out.write(bytes));
    }
}
