package tramontane.analysis;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import tramontane.model.FormReader;
import tramontane.model.Noun;
import tramontane.model.Problem;
import tramontane.model.Value;
import tramontane.model.Values;

/** Reads sections by their types; how an analysis gets at what belongs to it. */
public final class Sections {

    private static final String VERSION = "version";

    private Sections() {
    }

    /**
     * The section of one type that a noun carries, decoded.
     *
     * @param <T>  what it decodes to
     * @param type its type
     * @param noun what carries it
     * @return empty where there is none, or where it has errors
     */
    public static <T> Optional<T> decode(SectionType<T> type, Noun noun) {
        List<Problem> problems = new ArrayList<>();
        return noun.section(type.form().name()).flatMap(written -> read(type, written, "", problems))
                .filter(values -> problems.stream().noneMatch(Problem::isError)).map(type::decode);
    }

    /**
     * Reads a section, brought to its type's version first.
     *
     * @param type     its type
     * @param written  what stands in the file
     * @param place    where it stands
     * @param problems receives what is wrong
     * @return what could be read; empty where it is no section or of a version that the type does not know
     */
    public static Optional<Values> read(SectionType<?> type, Value written, String place, List<Problem> problems) {
        return current(type, written, place, problems)
                .map(tree -> FormReader.read(type.form(), tree.without(VERSION), place, problems));
    }

    /**
     * A section as its type writes it now: older versions migrated one version at a time.
     *
     * @param type     its type
     * @param written  what stands in the file
     * @param place    where it stands
     * @param problems receives what is wrong
     */
    public static Optional<Value.Tree> current(SectionType<?> type, Value written, String place, List<Problem> problems) {
        if (!(written instanceof Value.Tree tree)) {
            problems.add(Problem.error(place, "is not an object; expected a section " + type.form().name()));
            return Optional.empty();
        }
        int version = 1;
        if (tree.get(VERSION).isPresent()) {
            if (!(tree.get(VERSION).get() instanceof Value.Num num) || num.number() < 1
                    || num.number() != Math.rint(num.number())) {
                problems.add(Problem.error(place + "." + VERSION, "is not a version; expected a whole number from 1 to "
                        + type.version()));
                return Optional.empty();
            }
            if (num.number() > type.version()) {
                problems.add(Problem.caution(place + "." + VERSION, "is " + num.literal() + ", but what is loaded here knows "
                        + type.form().name() + " up to version " + type.version() + " only; it is kept, but not used"));
                return Optional.empty();
            }
            version = (int) num.number();
        }
        for (int from = version; from < type.version(); from++) {
            tree = type.migrate(tree, from);
        }
        return Optional.of(tree);
    }
}
