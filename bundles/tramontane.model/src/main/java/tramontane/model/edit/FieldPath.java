package tramontane.model.edit;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import tramontane.model.Problem;
import tramontane.model.Value;

/**
 * Which field of an object: {@code curves[0].flow}, {@code sections.drive.wire.length}.
 *
 * @param steps names of members and places in lists, from outside to inside; empty for the object itself
 */
public record FieldPath(List<Step> steps) {

    /** The object itself. */
    public static final FieldPath WHOLE = new FieldPath(List.of());

    /** One step inwards. */
    public sealed interface Step {
    }

    /** To the member of a name. */
    public record Member(String name) implements Step {
        public Member {
            Objects.requireNonNull(name);
        }
    }

    /** To a place in a list, counted from 0; the place behind the last one is where an item is added. */
    public record Item(int index) implements Step {
        public Item {
            if (index < 0) {
                throw new IllegalArgumentException("places in lists are counted from 0, got " + index);
            }
        }
    }

    public FieldPath {
        steps = List.copyOf(steps);
    }

    /**
     * A path of names and places in lists.
     *
     * @param steps each a {@code String} or an {@code Integer}
     */
    public static FieldPath of(Object... steps) {
        FieldPath path = WHOLE;
        for (Object step : steps) {
            path = switch (step) {
                case String name -> path.member(name);
                case Integer index -> path.item(index);
                default -> throw new IllegalArgumentException("a path is made of names and places, got " + step);
            };
        }
        return path;
    }

    /** The path to a member of what this one leads to. */
    public FieldPath member(String name) {
        return with(new Member(name));
    }

    /** The path to an item of the list that this one leads to. */
    public FieldPath item(int index) {
        return with(new Item(index));
    }

    private FieldPath with(Step step) {
        List<Step> longer = new ArrayList<>(steps);
        longer.add(step);
        return new FieldPath(longer);
    }

    /** Whether it leads to the object itself. */
    public boolean isWhole() {
        return steps.isEmpty();
    }

    /** The path without its last step. */
    public FieldPath parent() {
        return new FieldPath(steps.subList(0, steps.size() - 1));
    }

    /** Whether another path leads to the same field or to something within it. */
    public boolean holds(FieldPath other) {
        return other.steps.size() >= steps.size() && other.steps.subList(0, steps.size()).equals(steps);
    }

    /** What stands there in an object, if anything. */
    public Optional<Value> in(Value.Tree object) {
        Optional<Value> value = Optional.of(object);
        for (Step step : steps) {
            value = value.flatMap(outer -> inner(outer, step));
        }
        return value;
    }

    private static Optional<Value> inner(Value outer, Step step) {
        return switch (step) {
            case Member(String name) when outer instanceof Value.Tree tree -> tree.get(name);
            case Item(int index) when outer instanceof Value.Items(List<Value> items) && index < items.size() -> Optional.of(items.get(index));
            default -> Optional.empty();
        };
    }

    /**
     * The place in messages, as a {@link Problem} gives it.
     *
     * @param place where the object stands; empty for the whole file
     */
    public String place(String place) {
        String result = place;
        for (Step step : steps) {
            result = switch (step) {
                case Member(String name) -> Problem.place(result, name);
                case Item(int index) -> result + "[" + index + "]";
            };
        }
        return result;
    }

    @Override
    public String toString() {
        return place("");
    }
}
