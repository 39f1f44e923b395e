package tramontane.model;

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

    /**
     * A number, kept as the literal that was written ({@code 1.50} stays {@code 1.50}).
     *
     * @param literal a number as JSON writes it (RFC 8259, section 6), at most {@link #LONGEST} characters; its exponent
     *                may be as large as its author likes, since nothing is ever expanded
     */
    record Num(String literal) implements Value {

        /** Most characters of a literal: more than any double needs, and what a reader of files takes in one piece. */
        public static final int LONGEST = 1000;

        /** Refuses what is not a number as JSON writes it. */
        public Num {
            if (literal.isEmpty() || literal.length() > LONGEST || numberEnd(literal, 0) != literal.length()) {
                throw new NumberFormatException("not a number as JSON writes it: "
                        + (literal.length() > 60 ? literal.substring(0, 60) + "…" : literal));
            }
        }

        /** The shortest literal that reads back as this finite number. */
        public static Num of(double number) {
            if (!Double.isFinite(number)) {
                throw new IllegalArgumentException("a file holds finite numbers only, got " + number);
            }
            String text = Double.toString(number);
            return new Num(text.endsWith(".0") ? text.substring(0, text.length() - 2) : text);
        }

        /** The number; infinite or zero where the literal is beyond the range of a double. */
        public double number() {
            return Double.parseDouble(literal);
        }

        /**
         * Where the number that begins at a place of a text ends.
         *
         * @return the end of the longest number as JSON writes it, or {@code from} where there is none
         */
        public static int numberEnd(CharSequence text, int from) {
            int whole = from < text.length() && text.charAt(from) == '-' ? from + 1 : from;
            int end = digits(text, whole);
            if (end == whole || text.charAt(whole) == '0' && end > whole + 1) {
                return from;
            }
            if (end < text.length() && text.charAt(end) == '.') {
                int decimals = digits(text, end + 1);
                if (decimals == end + 1) {
                    return end;
                }
                end = decimals;
            }
            if (end < text.length() && (text.charAt(end) == 'e' || text.charAt(end) == 'E')) {
                int exponent = end + 1;
                if (exponent < text.length() && (text.charAt(exponent) == '-' || text.charAt(exponent) == '+')) {
                    exponent++;
                }
                int exponentEnd = digits(text, exponent);
                end = exponentEnd == exponent ? end : exponentEnd;
            }
            return end;
        }

        private static int digits(CharSequence text, int from) {
            int at = from;
            while (at < text.length() && text.charAt(at) >= '0' && text.charAt(at) <= '9') {
                at++;
            }
            return at;
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
