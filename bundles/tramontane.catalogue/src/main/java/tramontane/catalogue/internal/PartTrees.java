package tramontane.catalogue.internal;

import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import tramontane.analysis.SectionType;
import tramontane.analysis.Sections;
import tramontane.model.AirMover;
import tramontane.model.Consistency;
import tramontane.model.FormReader;
import tramontane.model.Noun;
import tramontane.model.Problem;
import tramontane.model.Value;
import tramontane.model.Values;
import tramontane.model.file.TreeFile;

/** The parts of a file as values: what a family shares, what each of its parts says, what is wrong with it. */
public final class PartTrees {

    /** The version of the format that is read. */
    public static final int FORMAT = 1;

    /** The member that makes a file a family. */
    public static final String PARTS = "parts";

    /** The member that holds the version. */
    public static final String FORMAT_MEMBER = "format";

    /** The member that speaks of the file, not of each part. */
    public static final String NOTES = "notes";

    /** Members of a family that do not go to its parts. */
    private static final Set<String> OF_THE_FILE = Set.of(FORMAT_MEMBER, NOTES, PARTS);

    private final boolean family;
    private final Value.Tree shared;
    private final List<Value> items;
    private final List<Problem> problems;

    private PartTrees(boolean family, Value.Tree shared, List<Value> items, List<Problem> problems) {
        this.family = family;
        this.shared = shared;
        this.items = items;
        this.problems = problems;
    }

    /**
     * One part of a file.
     *
     * @param mover    the part; empty where it has errors
     * @param tree     what it says, with what its family says
     * @param problems what is wrong with it, each with its place in the file
     */
    public record Part(Optional<AirMover> mover, Value.Tree tree, List<Problem> problems) {
    }

    /** The parts of a file that was read; none where nothing of it is to be used. */
    public static PartTrees of(TreeFile.Read read) {
        List<Problem> problems = new ArrayList<>(read.problems());
        read.tree().ifPresent(file -> problems.addAll(whole(file)));
        boolean usable = read.tree().filter(file -> problems.stream().noneMatch(problem -> fatal(problem, file))).isPresent();
        Value.Tree file = usable ? read.tree().orElseThrow() : Value.Tree.EMPTY;
        return switch (file.get(PARTS).orElse(null)) {
            case Value.Items(List<Value> items) -> new PartTrees(true, shared(file), items, problems);
            case null, default -> new PartTrees(false, Value.Tree.EMPTY, usable ? List.of(file.without(FORMAT_MEMBER)) : List.of(),
                    problems);
        };
    }

    /** The parts of a file as if each stood alone; what is no object is left out. */
    public static List<Value.Tree> parts(Value.Tree file) {
        if (file.get(PARTS).isEmpty()) {
            return List.of(file.without(FORMAT_MEMBER));
        }
        Value.Tree shared = shared(file);
        return file.get(PARTS).orElseThrow() instanceof Value.Items(List<Value> items) ? items.stream()
                .flatMap(item -> item instanceof Value.Tree own ? Stream.of(merge(shared, own)) : Stream.empty()).toList() : List.of();
    }

    /** Whether the file holds a list of parts. */
    public boolean family() {
        return family;
    }

    /** How many parts there are, those with errors counted. */
    public int size() {
        return items.size();
    }

    /** What is wrong with the file as a whole, and names that are given twice anywhere in it. */
    public List<Problem> problems() {
        return List.copyOf(problems);
    }

    /** What the family says. */
    public Value.Tree shared() {
        return shared;
    }

    /** Where a part stands. */
    public String place(int index) {
        return family ? PARTS + "[" + index + "]" : "";
    }

    /**
     * Reads a part.
     *
     * @param sections the types of sections that are known; sections of others are not looked at
     */
    public Part part(int index, Collection<SectionType<?>> sections) {
        String place = place(index);
        Part part = part(shared, items.get(index), place, sections);
        // a name given twice is known from reading the file alone
        boolean twice = problems.stream().anyMatch(problem -> problem.isError() && within(problem.place(), place));
        return twice ? new Part(Optional.empty(), part.tree(), part.problems()) : part;
    }

    /** The members of a family that hold for each of its parts. */
    private static Value.Tree shared(Value.Tree file) {
        Value.Tree shared = file;
        for (String member : OF_THE_FILE) {
            shared = shared.without(member);
        }
        return shared;
    }

    /** Whether a place lies within an object. */
    private static boolean within(String place, String object) {
        return place.startsWith(object) && (object.isEmpty() || place.length() == object.length()
                || place.charAt(object.length()) == '.');
    }

    /** What is wrong with a file beside its parts. */
    private static List<Problem> whole(Value.Tree file) {
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

    /**
     * Reads one part.
     *
     * @param shared what its family says
     * @param item   what stands in the list of the family, or the single part
     * @param place  where that stands
     */
    public static Part part(Value.Tree shared, Value item, String place, Collection<SectionType<?>> sections) {
        if (!(item instanceof Value.Tree own)) {
            return new Part(Optional.empty(), Value.Tree.EMPTY, List.of(Problem.error(place, "is " + FormReader.describe(item)
                    + "; expected an air mover, an object { … }")));
        }
        List<Problem> problems = new ArrayList<>();
        Value.Tree merged = merge(shared, own);
        Values values = FormReader.read(AirMover.FORM, merged, place, problems);
        AirMover mover = AirMover.from(values);
        if (problems.stream().noneMatch(Problem::isError)) {
            problems.addAll(Consistency.check(mover, place));
        }
        for (SectionType<?> type : sections) {
            String at = Problem.place(Problem.place(place, Noun.SECTIONS), type.form().name());
            mover.section(type.form().name()).ifPresent(section -> section(type, section, at, problems));
        }
        return new Part(Optional.of(mover).filter(read -> problems.stream().noneMatch(Problem::isError)), merged,
                problems.stream().map(problem -> atItsPlace(problem, place, shared, own)).toList());
    }

    private static void section(SectionType<?> type, Value section, String place, List<Problem> problems) {
        try {
            Sections.read(type, section, place, problems);
        } catch (RuntimeException e) {
            // the code of an extension, on whatever stands in the file
            problems.add(Problem.error(place, "cannot be brought to its present version: it is not as its version says"));
        }
    }

    /** A problem with what the family says is told once, of the family. */
    private static Problem atItsPlace(Problem problem, String place, Value.Tree shared, Value.Tree own) {
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
    private static Value.Tree merge(Value.Tree shared, Value.Tree own) {
        if (shared.isEmpty()) {
            return own;
        }
        LinkedHashMap<String, Value> members = new LinkedHashMap<>(shared.members());
        own.members().forEach((name, value) -> members.merge(name, value, (below, above) ->
                below instanceof Value.Tree lower && above instanceof Value.Tree upper ? merge(lower, upper) : above));
        return new Value.Tree(members);
    }
}
