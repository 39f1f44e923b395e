package tramontane.model;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Predicate;

/**
 * Finds names in an object that nothing in the design answers to.
 *
 * <p>Which members hold names is known from the {@link Form} alone, so it works for the design, for the parameters of a
 * passage kind and for sections alike. Values that cannot be read are passed over; {@link FormReader} reports them.
 */
public final class References {

    /** So many names are listed as expected; the rest is counted. */
    private static final int MOST_LISTED = 8;

    private final Design design;
    private final Predicate<Shape.Target> wanted;
    private final List<Problem> problems = new ArrayList<>();
    private final Map<Shape.Target, Set<String>> known = new EnumMap<>(Shape.Target.class);

    private References(Design design, Predicate<Shape.Target> wanted) {
        this.design = design;
        this.wanted = wanted;
    }

    /**
     * Checks the references of an object.
     *
     * @param form   its fields
     * @param tree   the object as written
     * @param design the design whose things it may name
     * @param place  where it stands, for example {@code airPath.passages[3]}; empty for the whole file
     * @return an error for each name that is not known
     */
    public static List<Problem> check(Form form, Value.Tree tree, Design design, String place) {
        return check(form, tree, design, place, target -> true);
    }

    static List<Problem> check(Form form, Value.Tree tree, Design design, String place, Predicate<Shape.Target> wanted) {
        References references = new References(design, wanted);
        references.object(form, tree, place);
        return List.copyOf(references.problems);
    }

    /** The names that a reference may give, in the design's order. */
    static Set<String> names(Design design, Shape.Target target) {
        Set<String> names = new LinkedHashSet<>();
        switch (target) {
            case BAY -> bays(design, names);
            case PASSAGE -> design.airPath().passages().forEach(passage -> names.add(passage.id()));
            case BANK -> design.airPath().banks().forEach(bank -> names.add(bank.id()));
            case MOVER -> design.airMovers().forEach(mover -> names.add(mover.id()));
            case HEAT_SOURCE -> design.heatSources().forEach(source -> names.add(source.id()));
            case CONDITION -> design.workingConditions().forEach(condition -> names.add(condition.id()));
            case CONTROL_LAW -> design.controlLaws().forEach(law -> names.add(law.id()));
            case PLACE -> {
                bays(design, names);
                design.airPath().passages().forEach(passage -> names.add(passage.id()));
            }
        }
        names.remove(""); // an id that is still missing
        return names;
    }

    private static void bays(Design design, Set<String> names) {
        names.add(Bay.OUTSIDE);
        design.airPath().bays().forEach(bay -> names.add(bay.id()));
    }

    private void object(Form form, Value.Tree tree, String place) {
        for (Field field : form.fields()) {
            tree.get(field.name()).ifPresent(value -> value(field.shape(), value, Problem.place(place, field.name())));
        }
    }

    private void value(Shape shape, Value value, String place) {
        switch (shape) {
            case Shape.Reference(Shape.Target target) when value instanceof Value.Text(String name) -> name(name, target, place);
            case Shape.References(Shape.Target target) when value instanceof Value.Items(List<Value> values) -> {
                for (int i = 0; i < values.size(); i++) {
                    value(new Shape.Reference(target), values.get(i), place + "[" + i + "]");
                }
            }
            case Shape.AmountsByName byName when value instanceof Value.Tree tree -> tree.members().keySet()
                    .forEach(name -> name(name, byName.target(), Problem.place(place, name)));
            case Shape.Part(Form form) when value instanceof Value.Tree tree -> object(form, tree, place);
            case Shape.Parts(Form form, String shorthand) when value instanceof Value.Items(List<Value> values) -> {
                for (int i = 0; i < values.size(); i++) {
                    String at = place + "[" + i + "]";
                    if (values.get(i) instanceof Value.Tree tree) {
                        object(form, tree, at);
                    } else if (form.field(shorthand).isPresent()) {
                        value(form.field(shorthand).get().shape(), values.get(i), at);
                    }
                }
            }
            default -> {
                // holds no name, or something that the form does not allow
            }
        }
    }

    private void name(String name, Shape.Target target, String place) {
        if (name.isBlank() || !wanted.test(target)) {
            return;
        }
        Set<String> names = known(target);
        if (!names.contains(name)) {
            boolean otherKind = target == Shape.Target.BANK && known(Shape.Target.PASSAGE).contains(name);
            problems.add(Problem.error(place, FormReader.quote(name) + (otherKind ? " is a passage, but not a bank" : " is not "
                    + FormReader.article(FormReader.name(target)) + " of this design") + expected(names, target)
                    + Spelling.hint(name, names)));
        }
    }

    private Set<String> known(Shape.Target target) {
        return known.computeIfAbsent(target, each -> names(design, each));
    }

    private static String expected(Set<String> names, Shape.Target target) {
        if (names.isEmpty()) {
            return "; it has no " + FormReader.name(target) + " yet";
        }
        List<String> listed = new ArrayList<>(names.stream().limit(MOST_LISTED).toList());
        String last = names.size() > MOST_LISTED ? "one of " + (names.size() - MOST_LISTED) + " others" : listed.removeLast();
        return "; expected " + (listed.isEmpty() ? last : String.join(", ", listed) + " or " + last);
    }
}
