package tramontane.thermal.internal.links;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import tramontane.analysis.LinkKind;
import tramontane.model.Problem;

/** Sentences on parameters that do not fit together. They look at what is written: what cannot be read is said elsewhere. */
final class Checks {

    private Checks() {
    }

    /** Whether any of some fields is written, readable or not. */
    static boolean writes(LinkKind.Setting setting, String... fields) {
        return !written(setting, List.of(fields)).isEmpty();
    }

    /**
     * Exactly one way of saying something.
     *
     * @param ways each a list of fields that belong together, no field in two of them
     * @param what what they say: {@code its size}
     */
    static List<Problem> oneOf(LinkKind.Setting setting, String place, String what, List<List<String>> ways) {
        List<List<String>> begun = ways.stream().filter(way -> !written(setting, way).isEmpty()).toList();
        if (begun.isEmpty()) {
            return List.of(Problem.missing(Problem.place(place, ways.getFirst().getFirst()), ", so that " + what
                    + " is not known; expected "
                    + ways.stream().map(way -> String.join(" and ", way)).collect(Collectors.joining(", or "))));
        }
        if (begun.size() > 1) {
            return List.of(Problem.error(place, "says " + what + " more than once, by " + begun.stream()
                    .map(way -> String.join(" and ", written(setting, way))).collect(Collectors.joining(" and by "))
                    + "; expected one of them"));
        }
        return together(setting, place, begun.getFirst());
    }

    /** At most one way of saying something. */
    static List<Problem> atMostOne(LinkKind.Setting setting, String place, String what, List<List<String>> ways) {
        return ways.stream().allMatch(way -> written(setting, way).isEmpty()) ? List.of() : oneOf(setting, place, what, ways);
    }

    /** Fields that say something with each other only: all or none. */
    static List<Problem> together(LinkKind.Setting setting, String place, List<String> fields) {
        List<String> written = written(setting, fields);
        return written.isEmpty() ? List.of() : fields.stream().filter(field -> !written.contains(field)).map(field -> Problem.missing(
                Problem.place(place, field), "; expected with " + String.join(" and ", written))).toList();
    }

    /** Cautions for fields that say nothing here; {@code because} goes on from "is not used". */
    static List<Problem> unused(LinkKind.Setting setting, String place, String because, String... fields) {
        List<Problem> problems = new ArrayList<>();
        Stream.of(fields).filter(field -> writes(setting, field)).forEach(field -> problems.add(
                Problem.caution(Problem.place(place, field), "is not used " + because)));
        return problems;
    }

    /** A length in a sentence. */
    static String millimetres(double si) {
        return (float) (1000 * si) + " mm";
    }

    private static List<String> written(LinkKind.Setting setting, List<String> fields) {
        return fields.stream().filter(field -> setting.link().parameters().get(field).isPresent()).toList();
    }
}
