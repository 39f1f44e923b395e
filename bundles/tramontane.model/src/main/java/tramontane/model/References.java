package tramontane.model;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.BiFunction;
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
        rename(form, tree, place, (each, written) -> each, (name, target, at) -> {
            references.name(name, target, at);
            return Optional.of(name);
        });
        return List.copyOf(references.problems);
    }

    /** The names that a reference may give, in the design's order; for {@link Shape.Target#ANYWHERE} those that are known without results. */
    public static Set<String> names(Design design, Shape.Target target) {
        Set<String> names = new LinkedHashSet<>();
        switch (target) {
            case BAY -> bays(design, names);
            case PASSAGE -> design.airPath().passages().forEach(passage -> names.add(passage.id()));
            case BANK -> design.airPath().banks().forEach(bank -> names.add(bank.id()));
            case MOVER -> design.airMovers().forEach(mover -> names.add(mover.id()));
            case HEAT_SOURCE -> design.heatSources().forEach(source -> names.add(source.id()));
            case CONDITION -> design.workingConditions().forEach(condition -> names.add(condition.id()));
            case CONTROL_LAW -> design.controlLaws().forEach(law -> names.add(law.id()));
            case PLACE, SENSOR, ANYWHERE -> {
                bays(design, names);
                design.airPath().passages().forEach(passage -> names.add(passage.id()));
                if (target != Shape.Target.PLACE) {
                    design.heatSources().forEach(source -> names.add(source.id()));
                }
                if (target == Shape.Target.ANYWHERE) {
                    design.controlLaws().forEach(law -> names.add(law.id()));
                }
            }
        }
        names.remove(""); // an id that is still missing
        return names;
    }

    private static void bays(Design design, Set<String> names) {
        names.add(Bay.OUTSIDE);
        design.airPath().bays().forEach(bay -> names.add(bay.id()));
    }

    /** Gives other names in the place of those that an object refers to. */
    @FunctionalInterface
    public interface Renaming {

        /**
         * What stands in the place of a name.
         *
         * @param name   the name as written
         * @param target what it may name
         * @param place  where it stands, for example {@code heatSources[2].into[0]}
         * @return the name that is to stand there; empty to take it out, which is done where others stand beside it
         */
        Optional<String> of(String name, Shape.Target target, String place);
    }

    /**
     * An object with other names in the place of those that it refers to.
     *
     * @param form     its fields
     * @param tree     the object as written
     * @param place    where it stands; empty for the whole file
     * @param whole    the fields of an object with those that its kind and its sections bring, by its form and as it is written
     * @param renaming gives the names
     * @return the object, the same one where nothing is renamed
     */
    public static Value.Tree rename(Form form, Value.Tree tree, String place, BiFunction<Form, Value.Tree, Form> whole,
            Renaming renaming) {
        return new Walk(whole, renaming).object(form, tree, place);
    }

    /** One way through all that may hold a name. */
    private record Walk(BiFunction<Form, Value.Tree, Form> whole, Renaming renaming) {

        Value.Tree object(Form form, Value.Tree tree, String place) {
            Value.Tree changed = tree;
            for (Field field : whole.apply(form, tree).fields()) {
                Optional<Value> written = tree.get(field.name());
                if (written.isPresent() && holdsNames(field.shape())) {
                    Value value = value(field.shape(), written.get(), Problem.place(place, field.name()));
                    changed = value == written.get() ? changed : changed.with(field.name(), value);
                }
            }
            return changed;
        }

        private static boolean holdsNames(Shape shape) {
            return shape instanceof Shape.Reference || shape instanceof Shape.References || shape instanceof Shape.AmountsByName
                    || shape instanceof Shape.Part || shape instanceof Shape.Parts;
        }

        private Value value(Shape shape, Value value, String place) {
            return switch (shape) {
                case Shape.Reference(Shape.Target target) when value instanceof Value.Text(String name) ->
                        renaming.of(name, target, place).filter(changed -> !changed.equals(name)).<Value>map(Value.Text::new).orElse(value);
                case Shape.References(Shape.Target target) when value instanceof Value.Items items -> names(target, items, place);
                case Shape.AmountsByName byName when value instanceof Value.Tree tree -> byName(byName.target(), tree, place);
                case Shape.Part(Form form) when value instanceof Value.Tree tree -> object(form, tree, place);
                case Shape.Parts(Form form, String shorthand) when value instanceof Value.Items items -> each(items, (item, i) -> {
                    String at = place + "[" + i + "]";
                    return item instanceof Value.Tree tree ? object(form, tree, at)
                            : form.field(shorthand).map(field -> value(field.shape(), item, at)).orElse(item);
                });
                // holds no name, or something that the form does not allow
                default -> value;
            };
        }

        private Value names(Shape.Target target, Value.Items items, String place) {
            List<Value> changed = new ArrayList<>();
            for (int i = 0; i < items.values().size(); i++) {
                Value item = items.values().get(i);
                if (item instanceof Value.Text(String name)) {
                    renaming.of(name, target, place + "[" + i + "]")
                            .ifPresent(other -> changed.add(other.equals(name) ? item : new Value.Text(other)));
                } else {
                    changed.add(item);
                }
            }
            // an empty list may mean all, so the last name stays
            return changed.isEmpty() || changed.equals(items.values()) ? items : new Value.Items(changed);
        }

        private Value byName(Shape.Target target, Value.Tree tree, String place) {
            LinkedHashMap<String, Value> changed = new LinkedHashMap<>();
            tree.members().forEach((name, value) -> renaming.of(name, target, Problem.place(place, name))
                    // where the other name is there already, one of the two would be lost
                    .ifPresent(other -> changed.put(tree.members().containsKey(other) ? name : other, value)));
            return List.copyOf(changed.keySet()).equals(List.copyOf(tree.members().keySet())) ? tree : new Value.Tree(changed);
        }

        private static Value each(Value.Items items, BiFunction<Value, Integer, Value> change) {
            boolean same = true;
            List<Value> changed = new ArrayList<>();
            for (int i = 0; i < items.values().size(); i++) {
                Value value = change.apply(items.values().get(i), i);
                same &= value == items.values().get(i);
                changed.add(value);
            }
            return same ? items : new Value.Items(changed);
        }
    }

    private void name(String name, Shape.Target target, String place) {
        if (name.isBlank() || target == Shape.Target.ANYWHERE || !wanted.test(target)) {
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
