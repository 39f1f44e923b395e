package tramontane.model.file;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Random;
import tramontane.model.Bay;
import tramontane.model.Design;
import tramontane.model.FailedMover;
import tramontane.model.Field;
import tramontane.model.Form;
import tramontane.model.Noun;
import tramontane.model.Range;
import tramontane.model.Shape;
import tramontane.model.Value;
import tramontane.physics.units.QuantityKind;
import tramontane.physics.units.Unit;
import tramontane.physics.units.UnitException;
import tramontane.physics.units.Units;

/**
 * Makes random trees that a form takes without errors: every field in every way of writing, and members that no form knows.
 * Names in them refer to nothing in particular.
 */
final class RandomFiles {

    private final Random random;

    RandomFiles(Random random) {
        this.random = random;
    }

    /** A tree that a design can be read from. */
    Value.Tree design() {
        return object(Design.FORM, 0);
    }

    /** Any value. */
    Value any(int depth) {
        return switch (random.nextInt(depth > 3 ? 5 : 7)) {
            case 0 -> new Value.Text(text(random.nextInt(20)));
            case 1, 2 -> new Value.Num(literal());
            case 3 -> new Value.Flag(random.nextBoolean());
            case 4 -> new Value.Nothing();
            case 5 -> {
                List<Value> items = new ArrayList<>();
                for (int i = random.nextInt(8); i > 0; i--) {
                    items.add(any(depth + 1));
                }
                yield new Value.Items(items);
            }
            default -> anyTree(depth);
        };
    }

    private Value.Tree anyTree(int depth) {
        LinkedHashMap<String, Value> members = new LinkedHashMap<>();
        for (int i = random.nextInt(6); i > 0; i--) {
            members.put(text(random.nextInt(12)), any(depth + 1));
        }
        return new Value.Tree(members);
    }

    private Value.Tree object(Form form, int depth) {
        // what stands in a file by default would be written out, so it is there from the beginning
        boolean whole = form.equals(FailedMover.FORM);
        LinkedHashMap<String, Value> members = new LinkedHashMap<>();
        for (Field field : form.fields()) {
            if (whole || field.required() || random.nextInt(3) > 0) {
                members.put(field.name(), value(field.shape(), depth));
            }
        }
        // a bay that is nothing but an id is written short, an object without members not at all
        int strange = form.equals(Bay.FORM) || members.isEmpty() || random.nextBoolean() ? 1 + random.nextInt(3) : 0;
        for (int i = 0; i < strange; i++) {
            String name = text(random.nextInt(12));
            if (form.field(name).isEmpty()) {
                members.put("x" + name, any(0));
            }
        }
        if (random.nextInt(4) == 0) {
            members.put(Noun.SECTIONS, anyTree(0));
        }
        return new Value.Tree(members);
    }

    private Value value(Shape shape, int depth) {
        return switch (shape) {
            case Shape.Words() -> name();
            case Shape.Reference reference -> name();
            case Shape.Choice(List<String> words) -> new Value.Text(words.get(random.nextInt(words.size())));
            case Shape.YesNo() -> new Value.Flag(random.nextBoolean());
            case Shape.Whole(int least, int most) -> Value.Num.of(most < least + 100 ? least + random.nextInt(most - least + 1)
                    : least + random.nextInt(100));
            case Shape.WholeOr(int least, String word) -> random.nextBoolean() ? new Value.Text(word)
                    : Value.Num.of(least + random.nextInt(9));
            case Shape.Amount(QuantityKind kind, Range range) -> amount(kind, inside(range));
            case Shape.AnyAmount() -> amount(QuantityKind.POWER, random.nextGaussian());
            case Shape.Amounts amounts -> amounts(amounts);
            case Shape.References references -> list(() -> name(), 1);
            case Shape.Part(Form form) -> object(form, depth + 1);
            case Shape.Parts(Form form, String shorthand) -> list(() -> shorthand.isEmpty() || random.nextBoolean()
                    ? form.field(shorthand).isEmpty() ? object(form, depth + 1)
                            : object(form, depth + 1).with("strange", any(0))
                    : value(form.field(shorthand).orElseThrow().shape(), depth), 1);
            case Shape.AmountsByName(QuantityKind kind, Range range, Shape.Target target) -> {
                LinkedHashMap<String, Value> members = new LinkedHashMap<>();
                for (int i = random.nextInt(3); i >= 0; i--) {
                    members.put(name().text(), amount(kind, inside(range)));
                }
                yield new Value.Tree(members);
            }
            case Shape.Anything() -> any(0);
        };
    }

    private Value.Items list(java.util.function.Supplier<Value> item, int least) {
        List<Value> items = new ArrayList<>();
        for (int i = least + random.nextInt(3); i > 0; i--) {
            items.add(item.get());
        }
        return new Value.Items(items);
    }

    private Value amounts(Shape.Amounts shape) {
        int count = shape.least() + random.nextInt(20);
        double[] si = random.doubles(count, 0.01, 0.99).sorted().distinct().toArray();
        if (random.nextBoolean()) {
            return new Value.Items(java.util.Arrays.stream(si).mapToObj(each -> (Value) Value.Num.of(each)).toList());
        }
        Unit unit = Units.of(shape.kind()).getFirst();
        StringBuilder text = new StringBuilder();
        for (double each : si) {
            text.append(unit.fromSi(each)).append(' ');
        }
        return new Value.Text(text + unit.symbol());
    }

    private Value amount(QuantityKind kind, double si) {
        List<Unit> units = Units.of(kind);
        Unit unit = units.get(random.nextInt(units.size()));
        String text = unit.fromSi(si) + " ".repeat(random.nextInt(3)) + unit.symbol();
        try {
            Units.parse(text, kind);
        } catch (UnitException e) {
            return Value.Num.of(si); // a unit of a lab's own kind
        }
        return random.nextBoolean() ? new Value.Text(text)
                : random.nextBoolean() ? Value.Num.of(si) : new Value.Num(String.format(java.util.Locale.ROOT, "%.17E", si));
    }

    private double inside(Range range) {
        double least = Double.isInfinite(range.least()) ? -100 : range.least();
        double most = Double.isInfinite(range.most()) ? least + 1000 : range.most();
        return least + (0.01 + 0.98 * random.nextDouble()) * (most - least);
    }

    private Value.Text name() {
        return new Value.Text("n" + text(random.nextInt(10)));
    }

    /** Text with everything in it that a string may hold, halves of surrogate pairs among it. */
    private String text(int length) {
        StringBuilder text = new StringBuilder();
        for (int i = 0; i < length; i++) {
            switch (random.nextInt(8)) {
                case 0 -> text.append((char) random.nextInt(0x10000));
                case 1 -> text.append("\"\\/\n\r\t\u0000\u007f\u2028\ud83c".charAt(random.nextInt(10)));
                case 2 -> text.appendCodePoint(0x1F300 + random.nextInt(256));
                default -> text.append((char) (' ' + random.nextInt(95)));
            }
        }
        return text.toString();
    }

    /** A number as JSON writes it, often one that no double holds. */
    private String literal() {
        StringBuilder literal = new StringBuilder(random.nextBoolean() ? "-" : "");
        literal.append(random.nextBoolean() ? "0" : "" + (1 + random.nextInt(1 << 30)));
        if (random.nextBoolean()) {
            literal.append('.').append(random.nextInt(1000));
        }
        if (random.nextInt(3) == 0) {
            literal.append(random.nextBoolean() ? 'e' : 'E').append(new String[] {"", "-", "+"}[random.nextInt(3)])
                    .append(random.nextInt());
        }
        return literal.toString().replaceFirst("([eE][-+]?)-+", "$1");
    }
}
