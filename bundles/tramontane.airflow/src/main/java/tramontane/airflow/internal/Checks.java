package tramontane.airflow.internal;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import tramontane.model.Problem;
import tramontane.model.Values;

/** Sentences on parameters that do not fit together. */
final class Checks {

    private Checks() {
    }

    /**
     * Exactly one way of saying something.
     *
     * @param ways each a list of fields that belong together
     * @param what what they say: {@code its size}
     */
    static List<Problem> oneOf(Values values, String place, String what, List<List<String>> ways) {
        List<Problem> problems = new ArrayList<>();
        List<List<String>> begun = ways.stream().filter(way -> way.stream().anyMatch(values::has)).toList();
        if (begun.isEmpty()) {
            problems.add(Problem.error(place, "does not say " + what + "; expected " + list(ways)));
        } else if (begun.size() > 1) {
            problems.add(Problem.error(place, "says " + what + " more than once, by " + begun.stream()
                    .map(way -> String.join(" and ", way.stream().filter(values::has).toList()))
                    .collect(Collectors.joining(" and by ")) + "; expected one of them"));
        } else {
            begun.getFirst().stream().filter(field -> !values.has(field)).forEach(field -> problems.add(Problem.missing(
                    Problem.place(place, field), "; expected with " + begun.getFirst().stream().filter(values::has)
                            .collect(Collectors.joining(" and ")))));
        }
        return problems;
    }

    /** At most one of some fields. */
    static List<Problem> atMostOne(Values values, String place, String... fields) {
        List<String> given = Stream.of(fields).filter(values::has).toList();
        return given.size() < 2 ? List.of() : List.of(Problem.error(place, "has " + String.join(" and ", given)
                + ", which say the same; expected one of them"));
    }

    private static String list(List<List<String>> ways) {
        return ways.stream().map(way -> String.join(" and ", way)).collect(Collectors.joining(", or "));
    }
}
