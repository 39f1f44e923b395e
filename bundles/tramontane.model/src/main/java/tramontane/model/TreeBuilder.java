package tramontane.model;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Collects the members of an object in the order in which they are written; what is empty is left out. */
final class TreeBuilder {

    private final LinkedHashMap<String, Value> members = new LinkedHashMap<>();

    TreeBuilder text(String name, String text) {
        if (!text.isEmpty()) {
            members.put(name, new Value.Text(text));
        }
        return this;
    }

    TreeBuilder text(String name, Optional<String> text) {
        text.ifPresent(given -> members.put(name, new Value.Text(given)));
        return this;
    }

    TreeBuilder quantity(String name, Quantity quantity) {
        members.put(name, quantity.written());
        return this;
    }

    TreeBuilder quantity(String name, Optional<Quantity> quantity) {
        quantity.ifPresent(given -> members.put(name, given.written()));
        return this;
    }

    TreeBuilder quantities(String name, Quantities quantities) {
        members.put(name, quantities.written());
        return this;
    }

    TreeBuilder quantities(String name, Optional<Quantities> quantities) {
        quantities.ifPresent(given -> members.put(name, given.written()));
        return this;
    }

    TreeBuilder byName(String name, Map<String, Quantity> quantities) {
        if (!quantities.isEmpty()) {
            LinkedHashMap<String, Value> written = new LinkedHashMap<>();
            quantities.forEach((key, quantity) -> written.put(key, quantity.written()));
            members.put(name, new Value.Tree(written));
        }
        return this;
    }

    TreeBuilder names(String name, List<String> names) {
        return items(name, names.stream().map(each -> (Value) new Value.Text(each)).toList());
    }

    TreeBuilder items(String name, List<? extends Value> values) {
        if (!values.isEmpty()) {
            members.put(name, new Value.Items(List.copyOf(values)));
        }
        return this;
    }

    TreeBuilder value(String name, Value value) {
        members.put(name, value);
        return this;
    }

    TreeBuilder value(String name, Optional<Value> value) {
        value.ifPresent(given -> members.put(name, given));
        return this;
    }

    TreeBuilder tree(String name, Value.Tree tree) {
        if (!tree.isEmpty()) {
            members.put(name, tree);
        }
        return this;
    }

    /** The members collected, then those unknown ones whose names are not taken. */
    Value.Tree build(Value.Tree more) {
        LinkedHashMap<String, Value> all = new LinkedHashMap<>(members);
        more.members().forEach(all::putIfAbsent);
        return new Value.Tree(all);
    }
}
