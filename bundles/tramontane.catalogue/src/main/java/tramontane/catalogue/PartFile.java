package tramontane.catalogue;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.SequencedSet;
import java.util.Set;
import java.util.stream.Stream;
import tramontane.model.AirMover;
import tramontane.model.Consistency;
import tramontane.model.FormReader;
import tramontane.model.Problem;
import tramontane.model.Value;
import tramontane.model.Values;
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
    public static final int FORMAT = 1;

    /** The member that makes a file a family. */
    static final String PARTS = "parts";

    /** The member that holds the version. */
    static final String FORMAT_MEMBER = "format";

    /** The member that speaks of the file, not of each part. */
    static final String NOTES = "notes";

    /** Members of a family that do not go to its parts. */
    private static final Set<String> OF_THE_FILE = Set.of(FORMAT_MEMBER, NOTES, PARTS);

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
     * One part of a file.
     *
     * @param mover    the part; empty where it has errors
     * @param problems what is wrong with it, each with its place in the file
     */
    record Part(Optional<AirMover> mover, List<Problem> problems) {
    }

    /**
     * The parts of a file as if each stood alone: what a family says is merged into each of its parts, object by object; where
     * both say something the part wins.
     *
     * @param file the object that a file holds
     * @return no parts where {@code parts} is no list; what is no object in that list is left out
     */
    public static List<Value.Tree> parts(Value.Tree file) {
        if (file.get(PARTS).isEmpty()) {
            return List.of(file.without(FORMAT_MEMBER));
        }
        Value.Tree shared = shared(file);
        return file.get(PARTS).orElseThrow() instanceof Value.Items(List<Value> items) ? items.stream()
                .flatMap(item -> item instanceof Value.Tree own ? Stream.of(merge(shared, own)) : Stream.empty()).toList()
                : List.of();
    }

    /** Reads a file; a file that cannot be read is a problem, too. */
    public static Read read(Path file) {
        TreeFile.Read read = TreeFile.read(file, Limits.STANDARD);
        SequencedSet<Problem> problems = new LinkedHashSet<>(read.problems());
        List<AirMover> movers = new ArrayList<>();
        read.tree().ifPresent(tree -> {
            problems.addAll(whole(tree));
            if (problems.stream().anyMatch(problem -> fatal(problem, tree))) {
                return;
            }
            List<Value> items = items(tree);
            Value.Tree shared = tree.get(PARTS).isPresent() ? shared(tree) : Value.Tree.EMPTY;
            for (int i = 0; i < items.size(); i++) {
                String place = tree.get(PARTS).isPresent() ? PARTS + "[" + i + "]" : "";
                Part part = part(shared, items.get(i), place);
                problems.addAll(part.problems());
                // a name given twice is known from reading the file alone
                part.mover().filter(mover -> read.problems().stream().noneMatch(problem -> problem.isError()
                        && within(problem.place(), place))).ifPresent(movers::add);
            }
        });
        return new Read(movers, List.copyOf(problems));
    }

    /**
     * Saves parts as one file: a single part as its own object, several as a family that shares nothing. There is always a whole
     * file, old or new.
     *
     * @throws IOException with a sentence for the person who saves
     */
    public static void save(Path file, List<AirMover> parts) throws IOException {
        TreeFile.save(parts.size() == 1 ? parts.getFirst().tree() : Value.Tree.EMPTY.with(FORMAT_MEMBER, Value.Num.of(FORMAT))
                .with(PARTS, new Value.Items(parts.stream().map(part -> (Value) part.tree()).toList())), file);
    }

    /** What is wrong with a file beside its parts. */
    static List<Problem> whole(Value.Tree file) {
        List<Problem> problems = new ArrayList<>();
        file.get(FORMAT_MEMBER).filter(format -> !(format instanceof Value.Num num && num.number() == FORMAT)).ifPresent(
                format -> problems.add(Problem.error(FORMAT_MEMBER, "is " + FormReader.describe(format)
                        + "; this version reads catalogue files of format " + FORMAT)));
        file.get(PARTS).filter(parts -> !(parts instanceof Value.Items)).ifPresent(parts -> problems.add(Problem.error(PARTS,
                "is " + FormReader.describe(parts) + "; expected a list of air movers")));
        return problems;
    }

    /** Whether nothing of a file is to be used because of a problem. */
    private static boolean fatal(Problem problem, Value.Tree file) {
        return problem.isError() && (problem.place().isEmpty() || problem.place().equals(FORMAT_MEMBER)
                || file.get(PARTS).isPresent() && !problem.place().startsWith(PARTS + "["));
    }

    /** Whether a place lies within an object. */
    private static boolean within(String place, String object) {
        return place.startsWith(object) && (object.isEmpty() || place.length() == object.length()
                || place.charAt(object.length()) == '.');
    }

    /** What stands in the list of a family; the file itself where it is none. */
    static List<Value> items(Value.Tree file) {
        return switch (file.get(PARTS).orElse(null)) {
            case null -> List.of(file.without(FORMAT_MEMBER));
            case Value.Items(List<Value> items) -> items;
            case Value other -> List.of();
        };
    }

    /** The members of a family that hold for each of its parts. */
    static Value.Tree shared(Value.Tree file) {
        Value.Tree shared = file;
        for (String member : OF_THE_FILE) {
            shared = shared.without(member);
        }
        return shared;
    }

    /**
     * Reads one part.
     *
     * @param shared what its family says
     * @param item   what stands in the list of the family, or the single part
     * @param place  where that stands
     */
    static Part part(Value.Tree shared, Value item, String place) {
        if (!(item instanceof Value.Tree own)) {
            return new Part(Optional.empty(), List.of(Problem.error(place, "is " + FormReader.describe(item)
                    + "; expected an air mover, an object { … }")));
        }
        List<Problem> problems = new ArrayList<>();
        Values values = FormReader.read(AirMover.FORM, merge(shared, own), place, problems);
        AirMover mover = AirMover.from(values);
        if (problems.stream().noneMatch(Problem::isError)) {
            problems.addAll(Consistency.check(mover, place));
        }
        return new Part(Optional.of(mover).filter(read -> problems.stream().noneMatch(Problem::isError)),
                problems.stream().map(problem -> atItsPlace(problem, place, shared, own)).toList());
    }

    /** A problem with what the family says is told once, of the family. */
    static Problem atItsPlace(Problem problem, String place, Value.Tree shared, Value.Tree own) {
        if (place.isEmpty() || !problem.place().startsWith(place + ".")) {
            return problem;
        }
        String member = problem.place().substring(place.length() + 1);
        return !stands(own, member) && stands(shared, member)
                ? new Problem(problem.severity(), member, problem.message(), problem.isMissing()) : problem;
    }

    /** Whether an object says something at a place. */
    private static boolean stands(Value.Tree tree, String place) {
        Value at = tree;
        for (String name : place.split("[.\\[]")) {
            if (!(at instanceof Value.Tree inside)) {
                return true;
            }
            at = inside.get(name).orElse(null);
            if (at == null) {
                return false;
            }
        }
        return true;
    }

    /** One object over another: its members win, objects in both are merged in turn. */
    static Value.Tree merge(Value.Tree shared, Value.Tree own) {
        if (shared.isEmpty()) {
            return own;
        }
        LinkedHashMap<String, Value> members = new LinkedHashMap<>(shared.members());
        own.members().forEach((name, value) -> members.merge(name, value, (below, above) ->
                below instanceof Value.Tree lower && above instanceof Value.Tree upper ? merge(lower, upper) : above));
        return new Value.Tree(members);
    }
}
