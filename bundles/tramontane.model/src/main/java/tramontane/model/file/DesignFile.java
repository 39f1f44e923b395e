package tramontane.model.file;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import tramontane.model.Design;
import tramontane.model.FormReader;
import tramontane.model.Problem;
import tramontane.model.Value;
import tramontane.model.Values;

/**
 * Design files: {@code NAME.tramontane.json}.
 *
 * <p>Reading never throws for what a file holds and changes nothing; a design that is read, saved and read again is equal,
 * its quantities as their author wrote them and its unknown members as they were.
 */
public final class DesignFile {

    /** How the names of design files end. */
    public static final String ENDING = ".tramontane.json";

    private static final String FORMAT = "format";

    /** From every older version of the format to the next, in order; version 1 has no older one. */
    private static final List<Migration> MIGRATIONS = List.of();

    private DesignFile() {
    }

    /** Reads a file within the standard limits. */
    public static Loaded read(Path file) {
        return read(file, Limits.STANDARD);
    }

    /** Reads a file; a file that is missing or cannot be read is a problem, too. */
    public static Loaded read(Path file, Limits limits) {
        return load(TreeFile.read(file, limits), limits, MIGRATIONS);
    }

    /** Reads the text of a file within the standard limits. */
    public static Loaded parse(String json) {
        // half a surrogate pair would become a question mark unnoticed: such a text never came from a file
        return parse(json.getBytes(StandardCharsets.UTF_8), Limits.STANDARD);
    }

    /** Reads the bytes of a file. */
    public static Loaded parse(byte[] json, Limits limits) {
        return parse(json, limits, MIGRATIONS);
    }

    static Loaded parse(byte[] json, Limits limits, List<Migration> migrations) {
        for (int i = 0; i < migrations.size(); i++) {
            if (migrations.get(i).from() != Design.FORMAT - migrations.size() + i) {
                throw new IllegalArgumentException("migrations must lead to format " + Design.FORMAT
                        + " one version at a time, got one from " + migrations.get(i).from());
            }
        }
        return load(TreeFile.parse(json, limits), limits, migrations);
    }

    /** The text of a design's file; the same design gives the same text. */
    public static String write(Design design) {
        return TreeFile.write(design.tree());
    }

    /**
     * Saves a design as {@link TreeFile#save} does: there is always a whole file, old or new.
     *
     * @throws IOException with a sentence for the person who saves
     */
    public static void save(Design design, Path file) throws IOException {
        TreeFile.save(design.tree(), file);
    }

    private static Loaded load(TreeFile.Read read, Limits limits, List<Migration> migrations) {
        ProblemList problems = new ProblemList(limits.problems());
        problems.addAll(read.problems());
        Optional<Value.Tree> current = read.tree().flatMap(tree -> current(tree, migrations, problems));
        Optional<Design> draft = current.map(tree -> {
            Values values = FormReader.read(Design.FORM, tree, "", problems);
            return Design.from(values);
        });
        List<Problem> all = problems.all();
        return new Loaded(draft.filter(design -> all.stream().noneMatch(Problem::isError)), draft, all);
    }

    /** The tree in the format of this program; without a version that can be understood, as if it were in it already. */
    private static Optional<Value.Tree> current(Value.Tree tree, List<Migration> migrations, List<Problem> problems) {
        int oldest = Design.FORMAT - migrations.size();
        Value.Tree changed = tree;
        switch (tree.get(FORMAT).orElse(null)) {
            case null -> problems.add(Problem.missing(FORMAT, "; expected " + writeFormat()));
            case Value.Num num when num.number() > Design.FORMAT && num.number() < Integer.MAX_VALUE
                    && num.number() == Math.rint(num.number()) -> {
                problems.add(Problem.error(FORMAT, "the file was written by a newer version (format " + FormReader.describe(num)
                        + "); this one reads up to " + Design.FORMAT));
                return Optional.empty();
            }
            case Value.Num num when num.number() >= oldest && num.number() <= Design.FORMAT
                    && num.number() == Math.rint(num.number()) -> {
                for (int from = (int) num.number(); from < Design.FORMAT; from++) {
                    try {
                        changed = migrations.get(from - oldest).change().apply(changed);
                    } catch (RuntimeException e) {
                        // the file may hold anything at the places that a migration looks at
                        problems.add(Problem.error(FORMAT, "the file cannot be brought from format " + from + " to "
                                + (from + 1) + ": it is not as format " + from + " was"));
                        return Optional.empty();
                    }
                }
            }
            case Value other -> problems.add(Problem.error(FORMAT, "is " + FormReader.describe(other) + "; expected "
                    + writeFormat()));
        }
        return Optional.of(changed.with(FORMAT, Value.Num.of(Design.FORMAT)));
    }

    private static String writeFormat() {
        return "\"format\": " + Design.FORMAT + " at the beginning of the file";
    }
}
