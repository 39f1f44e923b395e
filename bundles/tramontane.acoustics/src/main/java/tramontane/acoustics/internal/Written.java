package tramontane.acoustics.internal;

import java.util.List;
import java.util.Optional;
import tramontane.model.Value;

/** Collects members of a section as they are written; what is empty is left out. */
final class Written {

    private Value.Tree tree = Value.Tree.EMPTY;

    Written number(String name, Optional<Double> value) {
        value.ifPresent(number -> tree = tree.with(name, Value.Num.of(number)));
        return this;
    }

    Written number(String name, double value) {
        return number(name, Optional.of(value));
    }

    Written numbers(String name, List<Double> values) {
        if (!values.isEmpty()) {
            tree = tree.with(name, new Value.Items(values.stream().<Value>map(Value.Num::of).toList()));
        }
        return this;
    }

    Written text(String name, String value) {
        return text(name, value.isEmpty() ? Optional.empty() : Optional.of(value));
    }

    Written text(String name, Optional<String> value) {
        value.ifPresent(text -> tree = tree.with(name, new Value.Text(text)));
        return this;
    }

    Written flag(String name, boolean on) {
        if (on) {
            tree = tree.with(name, new Value.Flag(true));
        }
        return this;
    }

    Written part(String name, Value.Tree part) {
        if (!part.members().isEmpty()) {
            tree = tree.with(name, part);
        }
        return this;
    }

    Written parts(String name, List<Value.Tree> parts) {
        if (!parts.isEmpty()) {
            tree = tree.with(name, new Value.Items(List.copyOf(parts)));
        }
        return this;
    }

    Value.Tree tree() {
        return tree;
    }
}
