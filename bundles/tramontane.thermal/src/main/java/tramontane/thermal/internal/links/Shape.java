package tramontane.thermal.internal.links;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import tramontane.analysis.LinkKind;
import tramontane.model.Form;
import tramontane.model.Problem;
import tramontane.model.Values;

/**
 * Sizes that a link gives, or else the passage that its source stands on.
 *
 * @param own    what the link gives
 * @param place  what the passage gives; nothing where it is of another kind
 * @param names  what the passage calls a size, by what the link calls it
 */
record Shape(Values own, Values place, Map<String, String> names) {

    /**
     * Sizes of a link.
     *
     * @param kind  the kind of passage whose sizes are those of the link too
     * @param form  the sizes in that kind of passage, an open form
     * @param names what the passage calls a size, by what the link calls it
     */
    static Shape of(Values values, LinkKind.Setting setting, String kind, Form form, Map<String, String> names) {
        return new Shape(values, Place.of(setting).parameters(kind, form), names);
    }

    boolean has(String field) {
        return own.has(field) || place.has(names.get(field));
    }

    double si(String field) {
        return own.has(field) ? own.si(field) : place.si(names.get(field));
    }

    int whole(String field) {
        return own.has(field) ? own.whole(field) : place.whole(names.get(field));
    }

    /** Whether all of some sizes are known, readable and in range. */
    boolean hasAll(List<String> fields) {
        return fields.stream().allMatch(this::has);
    }

    /** What is missing: sizes that neither the link nor a passage of a kind writes. */
    static List<Problem> missing(LinkKind.Setting setting, String at, String kind, Map<String, String> names, List<String> fields) {
        Place place = Place.of(setting);
        List<Problem> problems = new ArrayList<>();
        for (String field : fields) {
            if (!Checks.writes(setting, field) && !place.states(kind, names.get(field))) {
                problems.add(Problem.missing(Problem.place(at, field), place.is(kind)
                        ? "; expected here or in " + place.name() : "; expected unless it stands on a passage of kind " + kind));
            }
        }
        return problems;
    }
}
