package tramontane.model;

import java.util.List;
import java.util.Optional;

/**
 * Collects members of a section as they are written, for {@code SectionType.encode}; what is empty is left out.
 *
 * <pre>{@code
 * new Written().number("load", dust.load()).text("kind", dust.kind()).tree();
 * }</pre>
 */
public final class Written {

    private Value.Tree tree = Value.Tree.EMPTY;

    /** A number in SI units, if there is one. */
    public Written number(String name, Optional<Double> value) {
        value.ifPresent(number -> tree = tree.with(name, Value.Num.of(number)));
        return this;
    }

    /** A number in SI units. */
    public Written number(String name, double value) {
        return number(name, Optional.of(value));
    }

    /** A whole number, if there is one. */
    public Written whole(String name, Optional<Integer> value) {
        return number(name, value.map(Integer::doubleValue));
    }

    /** Numbers in SI units, if there are any. */
    public Written numbers(String name, List<Double> values) {
        if (!values.isEmpty()) {
            tree = tree.with(name, new Value.Items(values.stream().<Value>map(Value.Num::of).toList()));
        }
        return this;
    }

    /** A text that is not empty. */
    public Written text(String name, String value) {
        return text(name, value.isEmpty() ? Optional.empty() : Optional.of(value));
    }

    /** A text, if there is one. */
    public Written text(String name, Optional<String> value) {
        value.ifPresent(text -> tree = tree.with(name, new Value.Text(text)));
        return this;
    }

    /** Texts, if there are any. */
    public Written texts(String name, List<String> texts) {
        if (!texts.isEmpty()) {
            tree = tree.with(name, new Value.Items(texts.stream().<Value>map(Value.Text::new).toList()));
        }
        return this;
    }

    /** A yes; a no is left out. */
    public Written flag(String name, boolean on) {
        if (on) {
            tree = tree.with(name, new Value.Flag(true));
        }
        return this;
    }

    /** An object that is not empty. */
    public Written part(String name, Value.Tree part) {
        if (!part.members().isEmpty()) {
            tree = tree.with(name, part);
        }
        return this;
    }

    /** A list of objects, if there are any. */
    public Written parts(String name, List<Value.Tree> parts) {
        if (!parts.isEmpty()) {
            tree = tree.with(name, new Value.Items(List.copyOf(parts)));
        }
        return this;
    }

    /** What was collected. */
    public Value.Tree tree() {
        return tree;
    }
}
