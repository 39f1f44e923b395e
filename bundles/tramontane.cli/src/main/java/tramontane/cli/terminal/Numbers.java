package tramontane.cli.terminal;

import tramontane.physics.units.QuantityKind;
import tramontane.physics.units.UnitSystem;
import tramontane.physics.units.Units;

/** Quantities with as many digits as an engineer reads. */
public final class Numbers {

    private static final int MOST_DIGITS = 12;
    /** Lengths from here on are shown in m or ft, m. */
    private static final double LONG = 10;
    /** NIST Special Publication 811 (2008), Appendix B.8, m. */
    private static final double FOOT = 0.3048;

    private Numbers() {
    }

    /**
     * A number and its unit apart.
     *
     * @param number the digits
     * @param unit   the unit; empty for none
     */
    public record Parts(String number, String unit) {
    }

    /** Number and unit with three significant digits, four from 1000 on. */
    public static String text(double si, QuantityKind kind, UnitSystem units) {
        if (kind.equals(QuantityKind.LENGTH) && Math.abs(si) >= LONG && units.base() != UnitSystem.SI) {
            // an altitude is not read in millimetres or inches
            return units.base() == UnitSystem.US ? text(si / FOOT, QuantityKind.NUMBER, units) + " ft"
                    : text(si, kind, UnitSystem.SI);
        }
        return Units.format(si, kind, units, digits(si, kind, units));
    }

    /**
     * The same, with as many digits more as it takes not to look like the limit that it misses: "not met 80.0 m³/h" under
     * "at least 80.0 m³/h" helps nobody.
     */
    public static String unlike(double si, double limit, QuantityKind kind, UnitSystem units) {
        int digits = digits(si, kind, units);
        String text = Units.format(si, kind, units, digits);
        while (si != limit && digits < MOST_DIGITS && text.equals(Units.format(limit, kind, units, digits))) {
            digits++;
            text = Units.format(si, kind, units, digits);
        }
        return text;
    }

    /** Number and unit so that {@link Wrapping} does not part them. */
    public static String together(String text) {
        return text.replace(' ', Wrapping.FAST);
    }

    /** The same in two. */
    public static Parts parts(double si, QuantityKind kind, UnitSystem units) {
        String text = text(si, kind, units);
        int space = text.indexOf(' ');
        if (space > 0) {
            return new Parts(text.substring(0, space), text.substring(space + 1));
        }
        return text.endsWith("°") ? new Parts(text.substring(0, text.length() - 1), "°") : new Parts(text, "");
    }

    private static int digits(double si, QuantityKind kind, UnitSystem units) {
        double shown = Math.abs(Units.toDisplay(si, kind, units));
        boolean kelvin = kind.equals(QuantityKind.TEMPERATURE) && units == UnitSystem.SI;
        return shown >= 1000 || kelvin ? 4 : 3;
    }
}
