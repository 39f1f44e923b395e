package tramontane.model;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.IntFunction;
import java.util.stream.Collectors;
import tramontane.physics.units.QuantityKind;
import tramontane.physics.units.UnitException;
import tramontane.physics.units.UnitSystem;
import tramontane.physics.units.Units;

/**
 * Reads an object by its {@link Form} and collects everything that is wrong with it.
 *
 * <p>A field that cannot be read is left out of the result and reported, so that reading goes on and finds the rest.
 */
public final class FormReader {

    /** Members that any object may carry and no form lists. */
    private static final Set<String> EVERYWHERE = Set.of(Noun.SECTIONS, "notes", "layout", "$schema");

    private final List<Problem> problems;

    private FormReader(List<Problem> problems) {
        this.problems = problems;
    }

    /**
     * Reads an object.
     *
     * @param form     what is expected
     * @param tree     what stands there
     * @param place    where it stands, for example {@code airPath.passages[3]}; empty for the whole file
     * @param problems receives what is wrong
     * @return what could be read
     */
    public static Values read(Form form, Value.Tree tree, String place, List<Problem> problems) {
        return new FormReader(problems).object(form, tree, place);
    }

    /** The quantity that a value stands for, if it is one of that kind. */
    public static Optional<Quantity> quantity(Value value, QuantityKind kind) {
        try {
            return switch (value) {
                case Value.Num num when Double.isFinite(num.number()) -> Optional.of(new Quantity(noNegativeZero(num), value));
                case Value.Text text -> Optional.of(new Quantity(Units.parse(text.text(), kind), value));
                default -> Optional.empty();
            };
        } catch (UnitException e) {
            return Optional.empty();
        }
    }

    private Values object(Form form, Value.Tree tree, String place) {
        Map<String, Object> read = new LinkedHashMap<>();
        Set<String> unread = new HashSet<>();
        for (Field field : form.fields()) {
            String at = Problem.place(place, field.name());
            Optional<Value> written = tree.get(field.name());
            if (written.isPresent()) {
                int before = problems.size();
                Optional<Object> value = read(field, written.get(), at);
                value.ifPresent(some -> read.put(field.name(), some));
                if (value.isEmpty() && problems.size() > before) {
                    unread.add(field.name());
                }
            } else if (field.required()) {
                problems.add(Problem.missing(at, "; expected " + expected(field.shape())));
            }
        }
        LinkedHashMap<String, Value> rest = new LinkedHashMap<>();
        tree.members().forEach((name, value) -> {
            if (form.field(name).isEmpty()) {
                rest.put(name, value);
                if (!EVERYWHERE.contains(name) && !form.open()) {
                    problems.add(Problem.caution(Problem.place(place, name), "is not a field of " + article(form.name())
                            + " that anything loaded here knows; it is kept, but not used"
                            + Spelling.hint(name, form.fields().stream().map(Field::name).toList())));
                }
                if (name.equals(Noun.SECTIONS) && !(value instanceof Value.Tree)) {
                    problems.add(Problem.error(Problem.place(place, name), "is " + describe(value)
                            + "; expected an object { … } with one member per section"));
                }
            }
        });
        return new Values(form, read, unread, new Value.Tree(rest));
    }

    private Optional<Object> read(Field field, Value value, String place) {
        // a text that nobody must give may be blank: a title that is still to be written is no mistake
        boolean free = field.shape() instanceof Shape.Words
                || field.shape() instanceof Shape.Reference(Shape.Target target) && target == Shape.Target.ANYWHERE;
        if (free && !field.required() && value instanceof Value.Text(String text)) {
            return text.isBlank() && field.standard().isPresent() ? Optional.empty() : Optional.of(text);
        }
        if (field.required() && field.shape() instanceof Shape.Parts && value instanceof Value.Items(List<Value> items)
                && items.isEmpty()) {
            problems.add(Problem.missing(place, ": the list is empty; expected " + expected(field.shape())));
        }
        return shape(field.shape(), value, place);
    }

    private Optional<Object> shape(Shape shape, Value value, String place) {
        return switch (shape) {
            case Shape.Anything() -> Optional.of(value);
            case Shape.Words() -> words(value, place, shape);
            case Shape.Reference reference -> words(value, place, shape);
            case Shape.References(Shape.Target target) -> references(target, value, place);
            case Shape.Choice(List<String> allowed) -> value instanceof Value.Text text && allowed.contains(text.text())
                    ? Optional.of(text.text()) : refuse(value, place, shape, value instanceof Value.Text(String word)
                            ? Spelling.hint(word, allowed) : "");
            case Shape.YesNo() -> value instanceof Value.Flag flag ? Optional.of(flag.on()) : refuse(value, place, shape);
            case Shape.Whole(int least, int most) -> value instanceof Value.Num num && isWhole(num, least, most)
                    ? Optional.of((int) num.number()) : refuse(value, place, shape);
            case Shape.WholeOr(int least, String word) -> value instanceof Value.Text text && text.text().equals(word)
                    ? Optional.of(word) : value instanceof Value.Num num && isWhole(num, least, Integer.MAX_VALUE)
                    ? Optional.of((int) num.number()) : refuse(value, place, shape);
            case Shape.Amount(QuantityKind kind, Range range) -> amount(value, kind, range, place).map(Object.class::cast);
            case Shape.AnyAmount() -> anyAmount(value, place);
            case Shape.Amounts amounts -> amounts(amounts, value, place);
            case Shape.Part(Form form) -> value instanceof Value.Tree tree
                    ? Optional.of(object(form, tree, place)) : refuse(value, place, shape);
            case Shape.Parts(Form form, String shorthand) -> parts(form, shorthand, value, place);
            case Shape.AmountsByName byName -> byName(byName, value, place);
        };
    }

    private Optional<Object> words(Value value, String place, Shape shape) {
        if (value instanceof Value.Text(String text) && text.isBlank()) {
            problems.add(Problem.missing(place, ": the text is blank; expected " + expected(shape)));
            return Optional.empty();
        }
        return value instanceof Value.Text(String text) ? Optional.of(text) : refuse(value, place, shape);
    }

    private Optional<Object> references(Shape.Target target, Value value, String place) {
        if (!(value instanceof Value.Items items)) {
            return refuse(value, place, new Shape.References(target));
        }
        List<String> names = new ArrayList<>();
        for (int i = 0; i < items.values().size(); i++) {
            // an empty name in the place of an unreadable one, so that the others keep their places
            names.add((String) words(items.values().get(i), place + "[" + i + "]", new Shape.Reference(target)).orElse(""));
        }
        return Optional.of(names);
    }

    private Optional<Quantity> amount(Value value, QuantityKind kind, Range range, String place) {
        double si;
        switch (value) {
            case Value.Num num -> si = noNegativeZero(num);
            case Value.Text text -> {
                try {
                    si = Units.parse(text.text(), kind);
                } catch (UnitException e) {
                    problems.add(Problem.error(place, e.getMessage()));
                    return Optional.empty();
                }
            }
            default -> {
                refuse(value, place, new Shape.Amount(kind, range));
                return Optional.empty();
            }
        }
        if (outOfReach(value)) {
            problems.add(Problem.error(place, describe(value) + " is outside the range 1e-307 to 1e308; expected "
                    + expected(new Shape.Amount(kind, range))));
            return Optional.empty();
        }
        if (!range.contains(si)) {
            problems.add(Problem.error(place, describe(value) + " is out of range; expected "
                    + expected(new Shape.Amount(kind, range))));
            return Optional.empty();
        }
        return Optional.of(new Quantity(si, value));
    }

    private Optional<Object> anyAmount(Value value, String place) {
        if (value instanceof Value.Num num && !outOfReach(num)) {
            return Optional.of(new Quantity(noNegativeZero(num), value));
        }
        if (value instanceof Value.Text text) {
            try {
                return Optional.of(new Quantity(Units.parseAny(text.text()).si(), value));
            } catch (UnitException e) {
                problems.add(Problem.error(place, e.getMessage() + (e.getMessage().contains("expected") ? ""
                        : "; expected " + expected(new Shape.AnyAmount()))));
                return Optional.empty();
            }
        }
        return refuse(value, place, new Shape.AnyAmount());
    }

    private Optional<Object> amounts(Shape.Amounts shape, Value value, String place) {
        List<Double> si = new ArrayList<>();
        IntFunction<String> nth = numbersOf(value);
        boolean sound = true;
        switch (value) {
            case Value.Items items -> {
                for (int i = 0; i < items.values().size(); i++) {
                    Value item = items.values().get(i);
                    double plain = item instanceof Value.Num num ? num.number() : 0;
                    if (plain != 0 && Double.isFinite(plain) && shape.range().contains(plain)) {
                        si.add(plain); // the usual case in long lists, without words that nobody reads
                        continue;
                    }
                    Optional<Quantity> one = amount(item, shape.kind(), shape.range(), place + "[" + i + "]");
                    sound &= one.isPresent();
                    si.add(one.map(Quantity::si).orElse(Double.NaN));
                }
            }
            case Value.Num num -> {
                Optional<Quantity> one = amount(num, shape.kind(), shape.range(), place);
                sound = one.isPresent();
                si.add(one.map(Quantity::si).orElse(Double.NaN));
            }
            case Value.Text text -> {
                double[] numbers;
                try {
                    numbers = Units.parseList(text.text(), shape.kind());
                } catch (UnitException e) {
                    problems.add(Problem.error(place, e.getMessage()));
                    return Optional.empty();
                }
                for (int i = 0; i < numbers.length; i++) {
                    if (!shape.range().contains(numbers[i])) {
                        problems.add(Problem.error(place, "number " + (i + 1) + ", " + nth.apply(i)
                                + ", is out of range; expected each " + shape.kind().name()
                                + bounds(shape.range(), shape.kind())));
                        sound = false;
                    }
                    si.add(numbers[i]);
                }
            }
            default -> {
                return refuse(value, place, shape);
            }
        }
        if (si.isEmpty() && shape.least() > 0) {
            problems.add(Problem.missing(place, ": the list is empty; expected at least " + shape.least()
                    + (shape.least() == 1 ? " number" : " numbers")));
            return Optional.empty();
        }
        if (si.size() < shape.least()) {
            problems.add(Problem.error(place, "has " + si.size() + (si.size() == 1 ? " number" : " numbers")
                    + "; expected at least " + shape.least()));
            return Optional.empty();
        }
        if (shape.increasing()) {
            for (int i = 1; i < si.size(); i++) {
                if (si.get(i) <= si.get(i - 1)) {
                    problems.add(Problem.error(place, "number " + (i + 1) + ", " + nth.apply(i) + ", "
                            + (si.get(i).equals(si.get(i - 1)) ? "repeats the one before it"
                            : "is smaller than the one before it, " + nth.apply(i - 1))
                            + "; expected each larger than the one before"));
                    sound = false;
                }
            }
        }
        return sound ? Optional.of(new Quantities(si, value)) : Optional.empty();
    }

    private Optional<Object> parts(Form form, String shorthand, Value value, String place) {
        if (!(value instanceof Value.Items items)) {
            return refuse(value, place, new Shape.Parts(form, shorthand));
        }
        List<Values> parts = new ArrayList<>();
        for (int i = 0; i < items.values().size(); i++) {
            String at = place + "[" + i + "]";
            switch (items.values().get(i)) {
                case Value.Tree tree -> parts.add(object(form, tree, at));
                case Value other when !shorthand.isEmpty() && !(other instanceof Value.Items) -> parts.add(
                        bare(form, shorthand, other, at));
                case Value other -> {
                    refuse(other, at, new Shape.Part(form), shorthand.isEmpty() ? "" : " or only its " + shorthand);
                    // an empty object in the place of an unreadable one, so that the others keep their places
                    parts.add(Values.unreadable(form));
                }
            }
        }
        return Optional.of(parts);
    }

    /** An object that is written as the bare value of one of its fields; what is wrong with that is wrong with the whole. */
    private Values bare(Form form, String shorthand, Value value, String place) {
        List<Problem> found = new ArrayList<>();
        Values values = new FormReader(found).object(form, Value.Tree.EMPTY.with(shorthand, value), place);
        for (Problem problem : found) {
            problems.add(problem.place().equals(Problem.place(place, shorthand))
                    ? new Problem(problem.severity(), place, problem.message(), problem.isMissing()) : problem);
        }
        return values;
    }

    private Optional<Object> byName(Shape.AmountsByName shape, Value value, String place) {
        if (!(value instanceof Value.Tree tree)) {
            return refuse(value, place, shape);
        }
        Map<String, Quantity> byName = new LinkedHashMap<>();
        tree.members().forEach((name, written) -> amount(written, shape.kind(), shape.range(), Problem.place(place, name))
                .ifPresent(quantity -> byName.put(name, quantity)));
        return Optional.of(byName);
    }

    private Optional<Object> refuse(Value value, String place, Shape shape) {
        return refuse(value, place, shape, "");
    }

    private Optional<Object> refuse(Value value, String place, Shape shape, String hint) {
        problems.add(Problem.error(place, "is " + describe(value) + "; expected " + expected(shape) + hint));
        return Optional.empty();
    }

    /** Whether a number is beyond the range of a double: too large, or no zero and yet read as zero. */
    private static boolean outOfReach(Value value) {
        if (!(value instanceof Value.Num num)) {
            return false;
        }
        double number = num.number();
        return Double.isInfinite(number) || number == 0 && num.literal().chars()
                .takeWhile(c -> c != 'e' && c != 'E').anyMatch(c -> c >= '1' && c <= '9');
    }

    private static boolean isWhole(Value.Num num, int least, int most) {
        double number = num.number();
        return number == Math.rint(number) && number >= least && number <= most && !outOfReach(num);
    }

    private static double noNegativeZero(Value.Num num) {
        return num.number() + 0.0;
    }

    /** Tells single numbers of several as their author wrote them; a text is taken apart once, when that is first needed. */
    private static IntFunction<String> numbersOf(Value written) {
        List<String> words = new ArrayList<>();
        return index -> {
            if (written instanceof Value.Items(List<Value> values)) {
                return describe(values.get(index));
            }
            if (written instanceof Value.Text(String text) && words.isEmpty()) {
                words.addAll(List.of(text.strip().split("[\\s\\p{Z}]+")));
            }
            return index < words.size() ? shorten(words.get(index)) : describe(written);
        };
    }

    /** A value in a sentence: short, in one line whatever it holds. */
    public static String describe(Value value) {
        return switch (value) {
            case Value.Text(String text) -> quote(text);
            case Value.Num(String literal) -> shorten(literal);
            case Value.Flag(boolean on) -> on ? "true" : "false";
            case Value.Nothing() -> "null";
            case Value.Items(List<Value> values) -> values.isEmpty() ? "an empty list" : "a list";
            case Value.Tree tree -> "an object";
        };
    }

    private static String shorten(String text) {
        return text.length() <= 60 ? text : text.substring(0, 57) + "…";
    }

    /** A text between quotation marks, short and in one line whatever it holds. */
    static String quote(String text) {
        StringBuilder quoted = new StringBuilder("\"");
        shorten(text).codePoints().forEach(c -> quoted.appendCodePoint(
                Character.isISOControl(c) || Character.getType(c) == Character.SURROGATE ? '?' : c));
        return quoted.append('"').toString();
    }

    /** What a shape allows, as it stands behind "expected": {@code a length above 0, as a number in m or a text with its unit}. */
    public static String expected(Shape shape) {
        return switch (shape) {
            case Shape.Anything() -> "a value";
            case Shape.Words() -> "a text";
            case Shape.Reference(Shape.Target target) -> target == Shape.Target.ANYWHERE ? "a text"
                    : "the id of " + article(name(target));
            case Shape.References(Shape.Target target) -> "a list of ids, each of " + article(name(target));
            case Shape.Choice(List<String> words) -> "one of " + words.stream().map(word -> '"' + word + '"')
                    .collect(Collectors.joining(", "));
            case Shape.YesNo() -> "true or false";
            case Shape.Whole(int least, int most) -> most == Integer.MAX_VALUE
                    ? "a whole number of at least " + least : "a whole number from " + least + " to " + most;
            case Shape.WholeOr(int least, String word) -> "a whole number of at least " + least + " or \"" + word + '"';
            case Shape.Amount(QuantityKind kind, Range range) -> article(kind.name()) + bounds(range, kind)
                    + (!kind.dimensionless() ? ", as a number in " + kind.siUnit() + " or a text with its unit"
                    : kind.equals(QuantityKind.FRACTION) || kind.equals(QuantityKind.PROBABILITY) ? ", as a number or a text in %" : ", as a number");
            case Shape.AnyAmount() -> "a number in SI units or a text with its unit";
            case Shape.Amounts amounts -> "a list of numbers" + (amounts.kind().dimensionless() ? ""
                    : " in " + amounts.kind().siUnit()) + ", or one text of numbers with a unit at its end";
            case Shape.Part(Form form) -> article(form.name()) + ", an object { … }";
            case Shape.Parts(Form form, String shorthand) -> "a list of objects, each " + article(form.name())
                    + (shorthand.isEmpty() ? "" : " or only its " + shorthand);
            case Shape.AmountsByName byName -> "an object { … } with one " + byName.kind().name() + " per "
                    + name(byName.target()) + " id";
        };
    }

    private static String bounds(Range range, QuantityKind kind) {
        boolean low = !Double.isInfinite(range.least());
        boolean high = !Double.isInfinite(range.most());
        if (low && high && range.leastIncluded()) {
            return " from " + bound(range.least(), kind) + " to " + bound(range.most(), kind);
        }
        return (low ? (range.leastIncluded() ? " of at least " : " above ") + bound(range.least(), kind) : "")
                + (high ? (low ? " and" : " of") + " at most " + bound(range.most(), kind) : "");
    }

    /** An end of a range as people write it: a temperature in °C, a long time in h, anything else in SI. */
    private static String bound(double si, QuantityKind kind) {
        if (si == 0) {
            return "0";
        }
        if (kind.equals(QuantityKind.TEMPERATURE) || kind.equals(QuantityKind.TIME)) {
            return Units.format(si, kind, UnitSystem.METRIC, 6).replaceFirst("(\\.\\d*?)0+(?= )", "$1").replaceFirst("\\.(?= )", "");
        }
        String number = si == Math.rint(si) && Math.abs(si) < 1e9 ? Long.toString((long) si) : Value.Num.of(si).literal();
        return kind.dimensionless() ? number : number + " " + kind.siUnit();
    }

    /** What a reference names: {@code bay or passage}. */
    public static String name(Shape.Target target) {
        return switch (target) {
            case BAY -> "bay";
            case PASSAGE -> "passage";
            case BANK -> "bank";
            case MOVER -> "air mover";
            case HEAT_SOURCE -> "heat source";
            case CONDITION -> "condition";
            case PLACE -> "bay or passage";
            case CONTROL_LAW -> "control law";
            case SENSOR -> "bay, passage or heat source";
            case ANYWHERE -> "place";
        };
    }

    static String article(String noun) {
        return ("aeiou".indexOf(Character.toLowerCase(noun.charAt(0))) >= 0 ? "an " : "a ") + noun;
    }
}
