package tramontane.desktop;

import tramontane.analysis.Figure;
import tramontane.physics.units.QuantityKind;
import tramontane.physics.units.UnitSystem;
import tramontane.physics.units.Units;

/** How figures are written in the window. Pure functions. */
public final class FigureText {

    /** Digits of a number that is read at a glance. */
    public static final int DIGITS = 3;

    private static final int ALL_DIGITS = 7;

    private FigureText() {
    }

    /** A value with its unit, to three significant digits. */
    public static String brief(double si, QuantityKind kind, UnitSystem units) {
        return Units.format(si, kind, units, DIGITS);
    }

    /** A figure with its unit, to three significant digits. */
    public static String brief(Figure figure, UnitSystem units) {
        return brief(figure.value(), figure.kind().quantity(), units);
    }

    /** What hovering over a figure tells: its name, all digits, bounds, the other units. */
    public static String full(Figure figure, UnitSystem units) {
        QuantityKind kind = figure.kind().quantity();
        StringBuilder text = new StringBuilder(figure.kind().label());
        if (!figure.place().isEmpty()) {
            text.append(" of ").append(figure.place());
        }
        if (!figure.condition().isEmpty()) {
            text.append(", ").append(figure.condition());
        }
        text.append('\n').append(Units.format(figure.value(), kind, units, ALL_DIGITS));
        if (figure.lower().isPresent() || figure.upper().isPresent()) {
            text.append("\nbetween ").append(figure.lower().isPresent() ? brief(figure.lower().getAsDouble(), kind, units) : "unknown")
                    .append(" and ").append(figure.upper().isPresent() ? brief(figure.upper().getAsDouble(), kind, units) : "unknown");
        }
        for (UnitSystem other : UnitSystem.values()) {
            String shown = Units.format(figure.value(), kind, other, ALL_DIGITS);
            if (!other.equals(units) && text.indexOf(shown) < 0) {
                text.append('\n').append(shown);
            }
        }
        return text.append('\n').append(figure.kind().help()).toString();
    }
}
