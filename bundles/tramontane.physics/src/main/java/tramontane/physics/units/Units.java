package tramontane.physics.units;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Text to SI and SI to text; the only place of the program that knows a unit other than SI.
 *
 * <p>Written is a number with a decimal point ({@code 12}, {@code -0.5}, {@code 1e-3}), then a unit; the space
 * between is optional. Typographic minus and narrow or non-breaking spaces are understood. Not a number, infinity
 * and hexadecimal are not. Upper and lower case matter, since mW is not MW.
 */
public final class Units {

    /** Of a probability near 1. */
    private static final int MOST_DECIMALS = 12;

    private static final int LONGEST_TEXT = 200_000;
    private static final int LONGEST_QUOTE = 40;

    private Units() {
    }

    /**
     * Reads one quantity.
     *
     * @param text number and unit as written
     * @param kind what is expected
     * @return value in SI
     * @throws UnitException if the text is something else; the message says what was expected
     */
    public static double parse(String text, QuantityKind kind) {
        QuantityText read = read(text, kind);
        String unit = read.unit();
        double number = read.numbers()[0];
        if (read.count() == 2 && unit.isEmpty() && kind.dimensionless() && read.numbers()[1] == 1) {
            return number; // "0.5 1": the unit one, written out
        }
        if (read.count() > 1) {
            throw new UnitException(quote(text) + " has more than one number; expected " + expected(kind));
        }
        return toSi(number, unit(text, unit, kind), text);
    }

    /**
     * Reads several numbers with one unit at the end, for example {@code 0 20 40 60 cfm}.
     *
     * @param text the numbers, separated by spaces, and the unit
     * @param kind what is expected
     * @return values in SI, at least one
     * @throws UnitException if the text is something else; the message says what was expected
     */
    public static double[] parseList(String text, QuantityKind kind) {
        QuantityText read = read(text, kind);
        Unit unit = unit(text, read.unit(), kind);
        double[] values = read.numbers();
        for (int i = 0; i < values.length; i++) {
            values[i] = toSi(values[i], unit, text);
        }
        return values;
    }

    /**
     * Reads one quantity whose kind is not known yet, among the standard kinds.
     *
     * @param text number and unit as written
     * @return the value and every kind it may be of
     * @throws UnitException if no kind has this unit
     */
    public static AnyQuantity parseAny(String text) {
        return parseAny(text, List.of());
    }

    /**
     * Reads one quantity whose kind is not known yet.
     *
     * @param text    number and unit as written
     * @param further kinds to consider beside the standard ones
     * @return the value and every kind it may be of
     * @throws UnitException if no kind has this unit
     */
    public static AnyQuantity parseAny(String text, List<QuantityKind> further) {
        checkLength(text);
        QuantityText read = QuantityText.read(text);
        if (read.count() != 1) {
            throw new UnitException(quote(text) + " is not a quantity; expected one number with a unit");
        }
        List<QuantityKind> kinds = new ArrayList<>();
        Unit unit = null;
        List<QuantityKind> candidates = new ArrayList<>(QuantityKind.standard());
        candidates.addAll(further);
        for (QuantityKind kind : candidates) {
            Optional<Unit> found = UnitTable.of(kind).find(read.unit());
            if (found.isPresent() && !kinds.contains(kind)) {
                kinds.add(kind);
                unit = unit == null ? found.get() : unit;
            }
        }
        if (unit == null) {
            throw new UnitException(quote(text) + " has a unit that is not known: " + quote(read.unit()));
        }
        return new AnyQuantity(toSi(read.numbers()[0], unit, text), unit, kinds);
    }

    /**
     * The units a kind can be written in, the preferred one first.
     *
     * @param kind kind of quantity
     * @return its units; the one with an empty symbol is the plain number
     */
    public static List<Unit> of(QuantityKind kind) {
        return UnitTable.of(kind).units();
    }

    /**
     * The unit of a kind on axes, in tables and in text fields.
     *
     * @param kind   kind of quantity
     * @param system habit of the reader
     * @return the unit; K for a temperature difference and rpm for a rotational speed in each of the three
     */
    public static Unit display(QuantityKind kind, UnitSystem system) {
        Unit chosen = system.chosen().get(kind);
        return chosen == null ? UnitTable.of(kind).shown(system) : chosen;
    }

    /**
     * Turns SI into the unit of {@link #display}.
     *
     * @param si     value in SI
     * @param kind   kind of quantity
     * @param system habit of the reader
     * @return value in the unit shown
     */
    public static double toDisplay(double si, QuantityKind kind, UnitSystem system) {
        return display(kind, system).fromSi(si);
    }

    /**
     * Turns a number in the unit of {@link #display} into SI.
     *
     * @param shown  value in the unit shown
     * @param kind   kind of quantity
     * @param system habit of the reader
     * @return value in SI
     */
    public static double fromDisplay(double shown, QuantityKind kind, UnitSystem system) {
        return display(kind, system).toSi(shown);
    }

    /**
     * Writes a quantity for reading, for example {@code 288 m³/h}; {@link #parse} understands it.
     *
     * <p>Zeros at the end count as digits. A temperature in °C or °F and a level in dB get digits less two behind the point,
     * since their zero is arbitrary, and a count has none. A probability above a half gets as many digits as its distance from 1 needs to be
     * read to digits less one, twelve decimals at most. A time outside {@link UnitSystem#SI} for which no unit was chosen
     * is in s below 120 s, in min below 120 min, then in h. An exponent appears below 1e-4 and from 1e7.
     *
     * @param si                value in SI, finite
     * @param kind              kind of quantity
     * @param system            habit of the reader
     * @param significantDigits 1 to 15, usually 2 to 4
     * @return number and unit
     */
    public static String format(double si, QuantityKind kind, UnitSystem system, int significantDigits) {
        if (!Double.isFinite(si) || significantDigits < 1 || significantDigits > 15) {
            throw new IllegalArgumentException(
                    "cannot write " + si + " as a " + kind.name() + " with " + significantDigits + " digits");
        }
        Unit unit = display(kind, system);
        if (kind.equals(QuantityKind.TIME) && system.base() != UnitSystem.SI && !system.chosen().containsKey(kind)) {
            double size = Math.abs(si);
            String symbol = size < 120 ? "s" : size < 7200 ? "min" : "h";
            unit = UnitTable.of(kind).find(symbol).orElseThrow();
        }
        String number = kind.equals(QuantityKind.PROBABILITY) && si > 0.5 && si < 1 ? nearly(si, unit.fromSi(1), significantDigits)
                : number(unit.fromSi(si), significantDigits, unit.shift() != 0 || kind.equals(QuantityKind.LEVEL),
                kind.equals(QuantityKind.COUNT));
        if (unit.symbol().isEmpty()) {
            return number;
        }
        // not "+": linking the first one costs milliseconds on the start path
        return (unit.symbol().equals("°") ? number : number.concat(" ")).concat(unit.symbol());
    }

    private static String number(double value, int digits, boolean arbitraryZero, boolean count) {
        if (value == 0) {
            return "0";
        }
        BigDecimal exact = BigDecimal.valueOf(value);
        if (count && exact.stripTrailingZeros().scale() <= 0 && Math.abs(value) < 1e15) {
            return exact.setScale(0, RoundingMode.UNNECESSARY).toPlainString();
        }
        if (arbitraryZero) {
            int decimals = Math.max(0, Math.min(digits - 2, digits - 1 - magnitude(exact)));
            BigDecimal rounded = exact.setScale(decimals, RoundingMode.HALF_UP);
            return rounded.signum() == 0 ? "0" : rounded.toPlainString();
        }
        BigDecimal rounded = round(exact, digits);
        int magnitude = magnitude(rounded);
        if (magnitude < -4 || magnitude > 6) {
            return rounded.movePointLeft(magnitude).setScale(digits - 1, RoundingMode.UNNECESSARY).toPlainString()
                    + "e" + magnitude;
        }
        return (rounded.scale() < 0 ? rounded.setScale(0, RoundingMode.UNNECESSARY) : rounded).toPlainString();
    }

    private static String nearly(double share, double whole, int digits) {
        BigDecimal exact = BigDecimal.valueOf(share).multiply(BigDecimal.valueOf(whole));
        BigDecimal rest = BigDecimal.valueOf(whole).subtract(exact);
        int decimals = Math.clamp(Math.max(digits - 1 - magnitude(exact), Math.max(digits - 2, 0) - magnitude(rest)), 0, MOST_DECIMALS);
        BigDecimal rounded = exact.setScale(decimals, RoundingMode.HALF_UP);
        return rounded.compareTo(BigDecimal.valueOf(whole)) == 0 ? number(whole, digits, false, false) : rounded.toPlainString();
    }

    private static BigDecimal round(BigDecimal value, int digits) {
        BigDecimal rounded = value.setScale(digits - 1 - magnitude(value), RoundingMode.HALF_UP);
        // 9.996 to three digits is 10.00 and has gained one
        return rounded.precision() > digits ? rounded.setScale(rounded.scale() - 1, RoundingMode.HALF_UP) : rounded;
    }

    /** Power of ten of the first digit. */
    private static int magnitude(BigDecimal value) {
        return value.precision() - value.scale() - 1;
    }

    private static QuantityText read(String text, QuantityKind kind) {
        checkLength(text);
        if (text.isBlank()) {
            throw new UnitException(article(kind.name()) + " is missing; expected " + expected(kind));
        }
        QuantityText read = QuantityText.read(text);
        if (read.count() == 0) {
            throw new UnitException(quote(text) + " does not begin with a number; expected " + expected(kind));
        }
        return read;
    }

    private static void checkLength(String text) {
        if (text.length() > LONGEST_TEXT) {
            throw new UnitException(quote(text) + " is too long for a quantity: " + text.length() + " characters");
        }
    }

    private static Unit unit(String text, String written, QuantityKind kind) {
        Optional<Unit> unit = UnitTable.of(kind).find(written);
        if (unit.isPresent()) {
            return unit.get();
        }
        if (written.isEmpty()) {
            throw new UnitException(quote(text) + " has no unit; expected " + expected(kind));
        }
        if (kind.equals(QuantityKind.TEMPERATURE_DIFFERENCE)
                && UnitTable.of(QuantityKind.TEMPERATURE).find(written).isPresent()) {
            throw new UnitException(quote(text) + " is a temperature; a difference is written in K");
        }
        throw new UnitException(quote(text) + " is not " + article(kind.name()) + "; expected " + expected(kind));
    }

    private static double toSi(double number, Unit unit, String text) {
        double si = unit.toSi(number);
        if (!Double.isFinite(si)) {
            throw new UnitException(quote(text) + " has a number outside the range 1e-307 to 1e308");
        }
        return si == 0 ? 0.0 : si; // no negative zero
    }

    private static String expected(QuantityKind kind) {
        StringBuilder symbols = new StringBuilder();
        boolean plain = UnitTable.of(kind).find("").isPresent();
        int count = 0;
        for (Unit unit : of(kind)) {
            if (!unit.symbol().isEmpty()) {
                symbols.append(count++ == 0 ? "" : ", ").append(unit.symbol());
            }
        }
        if (count == 0) {
            return "a number without unit";
        }
        return plain ? "a number, alone or with " + symbols
                : count == 1 ? "a number with " + symbols : "a number with one of " + symbols;
    }

    private static String article(String name) {
        return ("aeiou".indexOf(name.charAt(0)) >= 0 ? "an " : "a ") + name;
    }

    /** The text between quotation marks, short and in one line whatever it holds. */
    static String quote(String text) {
        StringBuilder quoted = new StringBuilder("\"");
        for (int i = 0; i < text.length(); i++) {
            if (i == LONGEST_QUOTE) {
                quoted.append('…');
                break;
            }
            char c = text.charAt(i);
            quoted.append(Character.isISOControl(c) || Character.isSurrogate(c) ? '?' : c);
        }
        return quoted.append('"').toString();
    }
}
