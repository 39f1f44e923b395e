package tramontane.invented;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Optional;
import tramontane.model.Value;

/** Members of an object in the order in which they are written, and numbers as a data sheet prints them. */
final class Members {

    private final LinkedHashMap<String, Value> members = new LinkedHashMap<>();

    Members text(String name, String text) {
        members.put(name, new Value.Text(text));
        return this;
    }

    Members number(String name, String literal) {
        members.put(name, new Value.Num(literal));
        return this;
    }

    Members flag(String name, boolean set) {
        members.put(name, new Value.Flag(set));
        return this;
    }

    Members tree(String name, Members tree) {
        members.put(name, tree.tree());
        return this;
    }

    Members items(String name, List<Value.Tree> items) {
        members.put(name, new Value.Items(List.copyOf(items)));
        return this;
    }

    Value.Tree tree() {
        return new Value.Tree(members);
    }

    /** A number to some significant digits, without a needless zero. */
    static String rounded(double number, int digits) {
        BigDecimal rounded = BigDecimal.valueOf(number).round(new MathContext(digits, RoundingMode.HALF_EVEN)).stripTrailingZeros();
        return rounded.signum() == 0 ? "0" : rounded.toPlainString();
    }

    /** Numbers to some significant digits, with their unit at the end. */
    static String list(double[] numbers, double scale, int digits, String unit) {
        StringBuilder text = new StringBuilder();
        for (double number : numbers) {
            text.append(rounded(number * scale, digits)).append(' ');
        }
        return text.append(unit).toString();
    }

    /**
     * What several objects have in common, objects within them object by object.
     *
     * @param trees one or more
     */
    static Value.Tree common(List<Value.Tree> trees) {
        LinkedHashMap<String, Value> common = new LinkedHashMap<>();
        trees.getFirst().members().forEach((name, value) -> {
            List<Value> others = trees.stream().map(tree -> tree.get(name)).flatMap(Optional::stream).toList();
            if (others.size() == trees.size() && others.stream().allMatch(value::equals)) {
                common.put(name, value);
            } else if (others.size() == trees.size() && others.stream().allMatch(Value.Tree.class::isInstance)) {
                Value.Tree inside = common(others.stream().map(Value.Tree.class::cast).toList());
                if (!inside.isEmpty()) {
                    common.put(name, inside);
                }
            }
        });
        return new Value.Tree(common);
    }

    /** What one object says beside what it has in common with others. */
    static Value.Tree without(Value.Tree tree, Value.Tree common) {
        LinkedHashMap<String, Value> own = new LinkedHashMap<>();
        tree.members().forEach((name, value) -> {
            Optional<Value> shared = common.get(name);
            if (shared.isEmpty()) {
                own.put(name, value);
            } else if (!shared.get().equals(value)) {
                own.put(name, without((Value.Tree) value, (Value.Tree) shared.get()));
            }
        });
        return new Value.Tree(own);
    }
}
