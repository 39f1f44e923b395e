package tramontane.model;

import java.math.BigDecimal;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.SequencedMap;

/**
 * A value tree as written in a file: ordered, with numbers and units as their author wrote them.
 *
 * <p>What no loaded bundle understands is held in this form and so survives load, edit and save untouched.
 */
public sealed interface Value {

    /** Text, which may also be a quantity with its unit ("35 cfm"). */
    record Text(String text) implements Value {
        public Text {
            Objects.requireNonNull(text);
        }
    }

    /** A number, kept as the literal that was written ({@code 1.50} stays {@code 1.50}). */
    record Num(String literal) implements Value {
        public Num {
            new BigDecimal(literal);
        }

        /** The shortest literal that reads back as this finite number. */
        public static Num of(double number) {
            if (!Double.isFinite(number)) {
                throw new IllegalArgumentException("a file holds finite numbers only, got " + number);
            }
            String text = Double.toString(number);
            return new Num(text.endsWith(".0") ? text.substring(0, text.length() - 2) : text);
        }

        /** The number; infinite where the literal is beyond the range of a double. */
        public double number() {
            return Double.parseDouble(literal);
        }
    }

    /** True or false. */
    record Flag(boolean on) implements Value {
    }

    /** An explicit null. */
    record Nothing() implements Value {
    }

    /** A list of values. */
    record Items(List<Value> values) implements Value {
        public Items {
            values = List.copyOf(values);
        }
    }

    /** Named values in the order they were written. */
    record Tree(SequencedMap<String, Value> members) implements Value {

        /** No members. */
        public static final Tree EMPTY = new Tree(new LinkedHashMap<>());

        public Tree {
            members = Collections.unmodifiableSequencedMap(new LinkedHashMap<>(members));
            members.forEach((name, value) -> {
                Objects.requireNonNull(name);
                Objects.requireNonNull(value);
            });
        }

        /** The member of that name, if written. */
        public Optional<Value> get(String name) {
            return Optional.ofNullable(members.get(name));
        }

        /** The member of that name where it is a tree itself. */
        public Optional<Tree> tree(String name) {
            return members.get(name) instanceof Tree tree ? Optional.of(tree) : Optional.empty();
        }

        /** The text member of that name. */
        public Optional<String> text(String name) {
            return members.get(name) instanceof Text text ? Optional.of(text.text()) : Optional.empty();
        }

        /** This tree with a member set; a new name goes last. */
        public Tree with(String name, Value value) {
            LinkedHashMap<String, Value> changed = new LinkedHashMap<>(members);
            changed.put(name, value);
            return new Tree(changed);
        }

        /** This tree with all members of another set. */
        public Tree with(Tree other) {
            LinkedHashMap<String, Value> changed = new LinkedHashMap<>(members);
            changed.putAll(other.members);
            return new Tree(changed);
        }

        /** This tree without a member. */
        public Tree without(String name) {
            if (!members.containsKey(name)) {
                return this;
            }
            LinkedHashMap<String, Value> changed = new LinkedHashMap<>(members);
            changed.remove(name);
            return new Tree(changed);
        }

        /** True without members. */
        public boolean isEmpty() {
            return members.isEmpty();
        }

        /** A tree of these members, in the map's own order. */
        public static Tree of(Map<String, Value> members) {
            return new Tree(new LinkedHashMap<>(members));
        }
    }
}
