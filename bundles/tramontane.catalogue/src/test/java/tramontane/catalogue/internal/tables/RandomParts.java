package tramontane.catalogue.internal.tables;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.stream.Collectors;
import tramontane.model.AirMover;
import tramontane.model.Field;
import tramontane.model.Form;
import tramontane.model.FormReader;
import tramontane.model.Problem;
import tramontane.model.Range;
import tramontane.model.Shape;
import tramontane.model.Value;
import tramontane.physics.units.QuantityKind;
import tramontane.physics.units.Unit;
import tramontane.physics.units.Units;

/** Makes random parts that have no errors: every field in every way of writing, sections that are known or not, strange members. */
final class RandomParts {

    private static final List<String> PIECES = List.of("\"", "\n", "\r\n", "\r", ",", ";", "\t", "'", "=", "+", "-", "@", " ", "ä", "Ω", "風",
            "🌀", "\u0001", "\u00a0", "a", "B", "7", "0", ".", "[", "]", "(", ")", "{", "}", "\\", "#", "true", "null", "1e5", "\uFEFF", "\u2028",
            "＝", "\u0000");

    private final Random random;
    private final boolean onlyWithUnits;

    /** @param onlyWithUnits whether every quantity is written as a number, a space and a unit */
    RandomParts(Random random, boolean onlyWithUnits) {
        this.random = random;
        this.onlyWithUnits = onlyWithUnits;
    }

    List<AirMover> parts() {
        List<AirMover> parts = new ArrayList<>();
        for (int i = random.nextInt(5); i >= 0; i--) {
            Value.Tree tree = object(AirMover.FORM).with("id", new Value.Text(text() + i));
            if (random.nextBoolean()) {
                Value.Tree sections = Value.Tree.EMPTY;
                sections = random.nextBoolean() ? sections.with("winding", object(Tables.MOTOR.form())) : sections;
                sections = random.nextBoolean() ? sections.with(text(), any(0)) : sections;
                sections = random.nextBoolean() ? sections.with("odd", anyTree(0)) : sections;
                tree = tree.with("sections", sections);
            }
            tree = random.nextInt(3) == 0 ? tree.with("notes", any(0)) : tree;
            List<Problem> problems = new ArrayList<>();
            parts.add(AirMover.from(FormReader.read(AirMover.FORM, tree, "", problems)));
            if (problems.stream().anyMatch(Problem::isError)) {
                throw new IllegalStateException("a random part is wrong: " + problems);
            }
        }
        return parts;
    }

    private Value.Tree object(Form form) {
        LinkedHashMap<String, Value> members = new LinkedHashMap<>();
        for (Field field : form.fields()) {
            if ((field.required() || random.nextInt(3) > 0) && !field.name().endsWith("Temperature") && !field.name().equals("power")) {
                members.put(field.name(), value(field.shape(), 0));
            }
        }
        if (form.field("flow").isPresent()) {
            int points = 2 + random.nextInt(6);
            members.put("flow", amounts(QuantityKind.FLOW, points));
            members.put("pressure", amounts(QuantityKind.PRESSURE, points));
            if (random.nextBoolean()) {
                members.put("power", amounts(QuantityKind.POWER, points));
            }
        }
        for (int i = random.nextInt(6) - 3; i > 0; i--) {
            String name = text();
            if (form.field(name).isEmpty() && !name.equals("sections")) {
                members.put(name, any(0));
            }
        }
        return new Value.Tree(members);
    }

    private Value value(Shape shape, int depth) {
        return switch (shape) {
            case Shape.Words() -> new Value.Text(text());
            case Shape.Choice(List<String> words) -> new Value.Text(words.get(random.nextInt(words.size())));
            case Shape.YesNo() -> new Value.Flag(random.nextBoolean());
            case Shape.Whole(int least, int most) -> Value.Num.of(least + random.nextInt(most - least + 1));
            case Shape.Amount(QuantityKind kind, Range range) -> amount(kind, Math.min(range.most(), 1) * (0.01 + 0.4 * random.nextDouble()));
            case Shape.Amounts amounts -> amounts(amounts.kind(), amounts.least() + random.nextInt(5));
            case Shape.Part(Form form) -> object(form);
            case Shape.Parts(Form form, String shorthand) -> {
                List<Value> items = new ArrayList<>();
                for (int i = random.nextInt(3); i >= 0; i--) {
                    items.add(object(form));
                }
                yield new Value.Items(items);
            }
            default -> throw new IllegalStateException("no such field in a part: " + shape);
        };
    }

    private Value amount(QuantityKind kind, double si) {
        List<Unit> units = Units.of(kind).stream().filter(unit -> !unit.symbol().isEmpty()).toList();
        if (units.isEmpty() || !onlyWithUnits && random.nextInt(3) == 0) {
            return Value.Num.of(si);
        }
        Unit unit = units.get(random.nextInt(units.size()));
        String apart = onlyWithUnits || Character.isDigit(unit.symbol().charAt(0)) || random.nextBoolean() ? " " : random.nextBoolean() ? "" : "\u00a0";
        return new Value.Text(Value.Num.of(unit.fromSi(si)).literal() + apart + unit.symbol());
    }

    private Value amounts(QuantityKind kind, int count) {
        double[] si = random.doubles(count, 0.01, 0.99).sorted().toArray();
        for (int i = 1; i < count; i++) {
            si[i] = Math.max(si[i], si[i - 1] + 0.001);
        }
        Unit unit = Units.of(kind).getFirst();
        if (onlyWithUnits || random.nextBoolean()) {
            return new Value.Text(Arrays.stream(si).mapToObj(each -> Value.Num.of(unit.fromSi(each)).literal()).collect(Collectors.joining(" "))
                    + " " + unit.symbol());
        }
        return new Value.Items(Arrays.stream(si).mapToObj(each -> amount(kind, each)).toList());
    }

    private String text() {
        StringBuilder text = new StringBuilder();
        for (int i = random.nextInt(5); i >= 0; i--) {
            text.append(random.nextBoolean() ? PIECES.get(random.nextInt(PIECES.size())) : Character.toString('a' + random.nextInt(26)));
        }
        // a mandatory text is not blank
        return text.toString().isBlank() ? text + "x" : text.toString();
    }

    private Value any(int depth) {
        return switch (random.nextInt(depth > 3 ? 5 : 7)) {
            case 0, 1 -> new Value.Text(random.nextInt(4) == 0 ? "" : text());
            case 2 -> new Value.Num(List.of("-5", "1.50", "1e999", "0.10").get(random.nextInt(4)));
            case 3 -> new Value.Flag(random.nextBoolean());
            case 4 -> new Value.Nothing();
            case 5 -> {
                List<Value> items = new ArrayList<>();
                for (int i = random.nextInt(4); i > 0; i--) {
                    items.add(any(depth + 1));
                }
                yield new Value.Items(items);
            }
            default -> anyTree(depth);
        };
    }

    private Value.Tree anyTree(int depth) {
        LinkedHashMap<String, Value> members = new LinkedHashMap<>();
        for (int i = random.nextInt(4); i > 0; i--) {
            members.put(random.nextInt(5) == 0 ? "" : text(), any(depth + 1));
        }
        return new Value.Tree(members);
    }

    /** A part with all its quantities in SI, however they were written. */
    static Value inSi(AirMover part) {
        Value.Tree tree = (Value.Tree) inSi(new Shape.Part(AirMover.FORM), part.tree());
        if (tree.tree("sections").flatMap(sections -> sections.tree("winding")).isPresent()) {
            Value.Tree sections = tree.tree("sections").get();
            tree = tree.with("sections", sections.with("winding",
                    inSi(new Shape.Part(Tables.MOTOR.form()), sections.tree("winding").get())));
        }
        return tree;
    }

    private static Value inSi(Shape shape, Value value) {
        return switch (shape) {
            case Shape.Amount(QuantityKind kind, Range range) -> FormReader.quantity(value, kind)
                    .map(quantity -> (Value) Value.Num.of(quantity.si())).orElse(value);
            case Shape.Amounts amounts -> switch (value) {
                case Value.Text(String text) -> new Value.Items(Arrays.stream(Units.parseList(text, amounts.kind()))
                        .mapToObj(each -> (Value) Value.Num.of(each)).toList());
                case Value.Items(List<Value> items) -> new Value.Items(items.stream()
                        .map(item -> inSi(new Shape.Amount(amounts.kind(), Range.ANY), item)).toList());
                default -> value;
            };
            case Shape.Part(Form form) when value instanceof Value.Tree tree -> {
                Map<String, Value> members = new LinkedHashMap<>();
                tree.members().forEach((name, each) -> members.put(name, form.field(name)
                        .map(field -> inSi(field.shape(), each)).orElse(each)));
                yield Value.Tree.of(members);
            }
            case Shape.Parts(Form form, String shorthand) when value instanceof Value.Items(List<Value> items) ->
                    new Value.Items(items.stream().map(item -> inSi(new Shape.Part(form), item)).toList());
            default -> value;
        };
    }
}
