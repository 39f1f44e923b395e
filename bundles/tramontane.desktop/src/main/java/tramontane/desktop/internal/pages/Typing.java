package tramontane.desktop.internal.pages;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import tramontane.model.Field;
import tramontane.model.Form;
import tramontane.model.FormReader;
import tramontane.model.Problem;
import tramontane.model.Range;
import tramontane.model.Shape;
import tramontane.model.Value;
import tramontane.physics.units.QuantityKind;
import tramontane.physics.units.UnitException;
import tramontane.physics.units.UnitSystem;
import tramontane.physics.units.Units;

/** What a typed text means in a field. */
final class Typing {

    /** A number with a comma in it. */
    private static final Pattern COMMA = Pattern.compile("(?<![\\d.,])([-+−]?)(\\d*),(\\d+)(?![\\d.,])");

    /** The words of a field that is on, off or open. */
    static final List<String> YES_NO = List.of("yes", "no");

    private Typing() {
    }

    /** What came of a text. */
    sealed interface Typed {
    }

    /** A value; empty for "not given". */
    record Read(Optional<Value> value) implements Typed {
    }

    /** Nothing that fits, and what was expected. */
    record Wrong(String sentence) implements Typed {
    }

    /**
     * Reads a text.
     *
     * @param text  as typed; blank for "not given"; a plain number is one in the unit beside the field
     * @param shape what may stand in the field
     * @param unit  the symbol of the unit beside the field
     * @param units the units of the reader, for what was expected
     */
    static Typed read(String text, Shape shape, String unit, UnitSystem units) {
        String stripped = text.strip();
        if (stripped.isEmpty()) {
            return new Read(Optional.empty());
        }
        try {
            Value value = switch (shape) {
                case Shape.Amount(QuantityKind kind, Range range) -> amount(stripped, kind, range, unit, units);
                case Shape.AnyAmount() -> any(stripped);
                case Shape.Amounts amounts -> amounts(stripped, amounts, unit, units);
                case Shape.YesNo() -> new Value.Flag(yes(stripped));
                case Shape.Whole whole -> whole(stripped);
                case Shape.WholeOr(int least, String word) -> stripped.equals(word) ? new Value.Text(word) : whole(stripped);
                case Shape.References references -> new Value.Items(List.of(stripped.split("\\s*,\\s*")).stream()
                        .<Value>map(Value.Text::new).toList());
                default -> new Value.Text(stripped);
            };
            List<Problem> problems = new ArrayList<>();
            FormReader.read(Form.of("field", "", Field.of("it", "it", shape, "")), Value.Tree.EMPTY.with("it", value), "", problems);
            return problems.isEmpty() ? new Read(Optional.of(value)) : new Wrong(problems.getFirst().message());
        } catch (UnitException | Refusal wrong) {
            return new Wrong(wrong.getMessage());
        }
    }

    /** A text that cannot be read, with the words for it. */
    private static final class Refusal extends RuntimeException {
        private static final long serialVersionUID = 1L;

        Refusal(String sentence) {
            super(sentence, null, false, false);
        }
    }

    private static boolean yes(String text) {
        return switch (text) {
            case "yes" -> true;
            case "no" -> false;
            default -> throw new Refusal("\"" + text + "\" is neither yes nor no");
        };
    }

    private static Value whole(String text) {
        if (text.length() > 9 || !text.matches("[-+]?\\d+")) {
            return new Value.Text(text);
        }
        return Value.Num.of(Integer.parseInt(text));
    }

    private static Value amount(String text, QuantityKind kind, Range range, String unit, UnitSystem units) {
        Value value = quantity(text, kind, unit);
        double si = FormReader.quantity(value, kind).orElseThrow(() -> new Refusal("\"" + text + "\" is not understood")).si();
        if (!range.contains(si)) {
            throw new Refusal(FormReader.describe(value) + " is out of range; expected " + Shown.range(range, kind, units));
        }
        return value;
    }

    /** A text with its unit, or a plain number where there is none. */
    static Value quantity(String text, QuantityKind kind, String unit) {
        String point = decimalPoint(text).replace('−', '-');
        boolean plain = point.matches("[-+]?(\\d+\\.?\\d*|\\.\\d+)([eE][-+]?\\d+)?");
        if (!plain) {
            Units.parse(point, kind);
            return new Value.Text(point);
        }
        if (!unit.isEmpty()) {
            Units.parse(point + " " + unit, kind);
            return new Value.Text(unit.equals("°") ? point + unit : point + " " + unit);
        }
        Units.parse(point, kind);
        return Value.Num.numberEnd(point, 0) == point.length() ? new Value.Num(point) : Value.Num.of(Double.parseDouble(point));
    }

    private static Value any(String text) {
        String point = decimalPoint(text).replace('−', '-');
        return Value.Num.numberEnd(point, 0) == point.length() ? new Value.Num(point) : new Value.Text(point);
    }

    private static Value amounts(String text, Shape.Amounts shape, String unit, UnitSystem units) {
        // "0, 20, 40" and "0; 20; 40" are lists, "0,5" is a number
        String spaced = decimalPoint(text.replaceAll("[,;]\\s+|;", " ")).replace('−', '-');
        boolean plain = spaced.matches("[-+.\\deE\\s]+");
        String written = plain && !unit.isEmpty() ? spaced + " " + unit : spaced;
        for (double si : Units.parseList(written, shape.kind())) {
            if (!shape.range().contains(si)) {
                throw new Refusal(Shown.of(si, shape.kind(), units).together() + " is out of range; expected each "
                        + Shown.range(shape.range(), shape.kind(), units));
            }
        }
        if (plain && unit.isEmpty()) {
            return new Value.Items(List.of(spaced.split("\\s+")).stream().<Value>map(each -> Value.Num.of(Double.parseDouble(each))).toList());
        }
        return new Value.Text(written);
    }

    /** Commas that can only mean a decimal point become one; what may as well divide thousands is refused. */
    static String decimalPoint(String text) {
        Matcher matcher = COMMA.matcher(text);
        StringBuilder changed = new StringBuilder();
        while (matcher.find()) {
            String whole = matcher.group(2);
            String part = matcher.group(3);
            if (part.length() == 3 && !whole.isEmpty() && !whole.startsWith("0") && whole.length() <= 3) {
                throw new Refusal("\"" + matcher.group() + "\" may mean " + whole + "." + part + " or " + whole + part
                        + "; expected one of these");
            }
            matcher.appendReplacement(changed, Matcher.quoteReplacement(matcher.group(1) + (whole.isEmpty() ? "0" : whole) + "." + part));
        }
        return matcher.appendTail(changed).toString();
    }
}
