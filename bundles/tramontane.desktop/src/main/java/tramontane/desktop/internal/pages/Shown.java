package tramontane.desktop.internal.pages;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import tramontane.model.FormReader;
import tramontane.model.Quantity;
import tramontane.model.Range;
import tramontane.model.Value;
import tramontane.physics.units.QuantityKind;
import tramontane.physics.units.Unit;
import tramontane.physics.units.UnitException;
import tramontane.physics.units.UnitSystem;
import tramontane.physics.units.Units;

/**
 * A number as a field shows it.
 *
 * @param number the number
 * @param unit   its unit's symbol; empty for none
 */
record Shown(String number, String unit) {

    private static final int DIGITS = 4;
    private static final int ALL_DIGITS = 7;
    /** Characters of a number up to which it is shown as it is written. */
    private static final int SHORT = 8;

    /** A value in the units of the reader, to four digits without zeros at their end. */
    static Shown of(double si, QuantityKind kind, UnitSystem units) {
        return split(Units.format(si, kind, units, DIGITS));
    }

    /** A quantity in the units of the reader; as it is written where it is written in that unit. */
    static Shown of(Quantity quantity, QuantityKind kind, UnitSystem units) {
        Shown shown = of(quantity.si(), kind, units);
        Shown written = written(quantity.written(), kind);
        boolean same = written.unit().equals(shown.unit()) && written.number().length() <= SHORT && !written.number().contains("e");
        return same ? written : shown;
    }

    /** What stands in the file, number and unit apart; a plain number is one in SI. */
    static Shown written(Value value, QuantityKind kind) {
        return switch (value) {
            case Value.Num(String literal) -> new Shown(literal, kind.dimensionless() ? "" : kind.siUnit());
            case Value.Text(String text) -> {
                Shown apart = apart(text.strip());
                String plain = apart.unit();
                yield new Shown(apart.number(), unit(plain, kind).map(Unit::symbol).orElse(plain));
            }
            default -> new Shown(FormReader.describe(value), "");
        };
    }

    /** Every number of a list in the unit of the reader that suits the largest. */
    static List<String> numbers(List<Double> si, QuantityKind kind, String unit) {
        List<String> numbers = new ArrayList<>();
        Optional<Unit> shown = unit(unit, kind);
        for (double each : si) {
            numbers.add(shown.map(known -> trimmed(plain(known.fromSi(each)))).orElse(Double.toString(each)));
        }
        return numbers;
    }

    /** A number to four digits, or all of it where it has no more than a few. */
    static String plain(double number) {
        return Units.format(number, QuantityKind.NUMBER, UnitSystem.SI, DIGITS);
    }

    /** The unit of a symbol. */
    static Optional<Unit> unit(String symbol, QuantityKind kind) {
        Optional<Unit> exact = Units.of(kind).stream().filter(unit -> unit.symbol().equals(symbol)).findFirst();
        if (exact.isPresent()) {
            return exact;
        }
        try { // another spelling of one of them
            double one = Units.parse("1 " + symbol, kind);
            double two = Units.parse("2 " + symbol, kind);
            return Units.of(kind).stream().filter(unit -> unit.toSi(1) == one && unit.toSi(2) == two).findFirst();
        } catch (UnitException e) {
            return Optional.empty();
        }
    }

    /** All digits, with the unit. */
    static String full(double si, QuantityKind kind, UnitSystem units) {
        Shown shown = split(Units.format(si, kind, units, ALL_DIGITS));
        return shown.together();
    }

    /** Number and unit as one text. */
    String together() {
        return unit.isEmpty() ? number : unit.equals("°") ? number + unit : number + " " + unit;
    }

    /** The values that are allowed: {@code 0 to 100 %}; empty for all. */
    static String range(Range range, QuantityKind kind, UnitSystem units) {
        boolean low = !Double.isInfinite(range.least());
        boolean high = !Double.isInfinite(range.most());
        Optional<Shown> least = low ? Optional.of(of(range.least(), kind, units)) : Optional.empty();
        Optional<Shown> most = high ? Optional.of(of(range.most(), kind, units)) : Optional.empty();
        if (low && high) {
            boolean same = least.get().unit().equals(most.get().unit());
            String first = same || least.get().number().equals("0") ? least.get().number() : least.get().together();
            return range.leastIncluded() ? first + " to " + most.get().together() : "above " + first + ", up to " + most.get().together();
        }
        return low ? (range.leastIncluded() ? "at least " : "above ") + (least.get().number().equals("0") ? "0" : least.get().together())
                : high ? "at most " + most.get().together() : "";
    }

    private static Shown split(String text) {
        Shown apart = apart(text);
        return new Shown(trimmed(apart.number()), apart.unit());
    }

    private static Shown apart(String text) {
        int end = 0;
        while (end < text.length() && ("+-−.0123456789".indexOf(text.charAt(end)) >= 0 || "eE".indexOf(text.charAt(end)) >= 0
                && end + 1 < text.length() && "+-0123456789".indexOf(text.charAt(end + 1)) >= 0)) {
            end++;
        }
        return new Shown(text.substring(0, end), text.substring(end).strip());
    }

    private static String trimmed(String number) {
        int exponent = number.indexOf('e');
        String digits = exponent < 0 ? number : number.substring(0, exponent);
        String short0 = digits.contains(".") ? digits.replaceFirst("0+$", "").replaceFirst("\\.$", "") : digits;
        return exponent < 0 ? short0 : short0 + number.substring(exponent);
    }
}
