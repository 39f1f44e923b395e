package tramontane.physics.units;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * The units of each kind of quantity.
 *
 * <p>Factors: NIST Special Publication 811 (2008), Appendix B.8, where they follow from the exact definitions
 * 1 in = 25.4 mm, 1 lb = 0.453 592 37 kg, g = 9.806 65 m/s² and 1 Btu(IT) = 1055.055 852 62 J.
 *
 * <p>Plain loops and arrays on purpose: this class is loaded on the start path.
 */
final class UnitTable {

    private static final double INCH = 0.0254;
    private static final double FOOT = 0.3048;
    private static final double POUND = 0.45359237;
    private static final double GRAVITY = 9.80665;
    private static final double CUBIC_FOOT = 0.028316846592;
    private static final double BTU = 1055.05585262;
    /** SI Brochure, 9th edition (2019), exact. */
    private static final double ELECTRON_VOLT = 1.602176634e-19;
    /** SI Brochure, 9th edition (2019), exact, 1/mol. */
    private static final double AVOGADRO = 6.02214076e23;

    private static final Map<QuantityKind, UnitTable> TABLES = new HashMap<>(96);

    private final List<Unit> units = new ArrayList<>(8);
    private final Map<String, Unit> bySpelling = new HashMap<>(24);
    private final Unit[] shown = new Unit[3];

    static {
        on(QuantityKind.FLOW).unit("m³/s", 1, 1).unit("m³/h", 1, 3600).unit("l/s", 1, 1000, "L/s")
                .unit("l/min", 1, 60000, "L/min").unit("cfm", CUBIC_FOOT, 60, "CFM", "ft3/min")
                .show("m³/s", "m³/h", "cfm");
        on(QuantityKind.MASS_FLOW).unit("kg/s", 1, 1).unit("g/s", 1, 1000).unit("kg/h", 1, 3600)
                .unit("lb/min", POUND, 60).unit("lb/h", POUND, 3600).show("kg/s", "g/s", "lb/min");
        on(QuantityKind.PRESSURE).unit("Pa", 1, 1).unit("hPa", 100, 1).unit("kPa", 1000, 1).unit("mbar", 100, 1)
                .unit("bar", 100000, 1).unit("mmH2O", GRAVITY, 1, "mm H2O", "mmWG", "mm WG")
                .unit("inH2O", 249.08891, 1, "in H2O", "inWG", "in WG", "inwg", "in wg")
                .unit("psi", POUND * GRAVITY, INCH * INCH).show("Pa", "Pa", "inH2O");
        on(QuantityKind.TEMPERATURE).unit("K", 1, 1).shifted("°C", 273.15, 1, 1, "degC", "C")
                .shifted("°F", 459.67, 5, 9, "degF", "F").show("K", "°C", "°F");
        on(QuantityKind.TEMPERATURE_DIFFERENCE).unit("K", 1, 1).show("K", "K", "K");
        on(QuantityKind.LENGTH).unit("m", 1, 1).unit("mm", 1, 1000).unit("cm", 1, 100).unit("µm", 1, 1e6)
                .unit("km", 1000, 1).unit("in", INCH, 1).unit("ft", FOOT, 1).show("m", "mm", "in");
        on(QuantityKind.AREA).unit("m²", 1, 1).unit("cm²", 1, 1e4).unit("mm²", 1, 1e6).unit("in²", INCH * INCH, 1)
                .unit("ft²", FOOT * FOOT, 1).show("m²", "cm²", "in²");
        on(QuantityKind.VOLUME).unit("m³", 1, 1).unit("l", 1, 1000, "L").unit("cm³", 1, 1e6).unit("mm³", 1, 1e9)
                .unit("in³", 16.387064e-6, 1).unit("ft³", CUBIC_FOOT, 1).show("m³", "l", "in³");
        on(QuantityKind.VELOCITY).unit("m/s", 1, 1).unit("km/h", 1, 3.6).unit("ft/min", FOOT, 60, "fpm")
                .unit("ft/s", FOOT, 1).show("m/s", "m/s", "ft/min");
        on(QuantityKind.ROTATIONAL_SPEED).unit("rpm", Math.PI, 30, "RPM").unit("1/min", Math.PI, 30, "min-1")
                .unit("rad/s", 1, 1).show("rpm", "rpm", "rpm");
        on(QuantityKind.POWER).unit("W", 1, 1).unit("mW", 1, 1000).unit("kW", 1000, 1)
                .unit("BTU/h", BTU, 3600, "Btu/h").show("W", "W", "W");
        on(QuantityKind.ENERGY).unit("J", 1, 1).unit("kJ", 1000, 1).unit("Wh", 3600, 1, "W h")
                .unit("kWh", 3.6e6, 1, "kW h").show("J", "kWh", "kWh");
        on(QuantityKind.VOLTAGE).unit("V", 1, 1).unit("mV", 1, 1000).unit("kV", 1000, 1).show("V", "V", "V");
        on(QuantityKind.CURRENT).unit("A", 1, 1).unit("mA", 1, 1000).show("A", "A", "A");
        on(QuantityKind.RESISTANCE).unit("Ω", 1, 1).unit("mΩ", 1, 1000).unit("kΩ", 1000, 1).show("Ω", "Ω", "Ω");
        on(QuantityKind.FREQUENCY).unit("Hz", 1, 1).unit("kHz", 1000, 1).show("Hz", "Hz", "Hz");
        on(QuantityKind.TIME).unit("s", 1, 1).unit("ms", 1, 1000).unit("min", 60, 1).unit("h", 3600, 1)
                .unit("d", 86400, 1).unit("year", 8760 * 3600.0, 1, "a", "years").show("s", "h", "h");
        on(QuantityKind.MASS).unit("kg", 1, 1).unit("g", 1, 1000).unit("lb", POUND, 1).show("kg", "kg", "lb");
        on(QuantityKind.DENSITY).unit("kg/m³", 1, 1).unit("g/cm³", 1000, 1).unit("lb/ft³", POUND, CUBIC_FOOT)
                .show("kg/m³", "kg/m³", "lb/ft³");
        on(QuantityKind.VISCOSITY).unit("Pa s", 1, 1, "Pas").unit("mPa s", 1, 1000, "mPas")
                .show("Pa s", "Pa s", "Pa s");
        on(QuantityKind.FRACTION).unit("", 1, 1, "1").unit("%", 1, 100).show("", "%", "%");
        on(QuantityKind.PROBABILITY).unit("", 1, 1, "1").unit("%", 1, 100).show("", "%", "%");
        on(QuantityKind.ANGLE).unit("rad", 1, 1).unit("°", Math.PI, 180, "deg").show("rad", "°", "°");
        on(QuantityKind.THERMAL_RESISTANCE).unit("K/W", 1, 1, "°C/W", "degC/W", "C/W").show("K/W", "K/W", "K/W");
        on(QuantityKind.CONDUCTIVITY).unit("W/(m K)", 1, 1, "W/mK", "W/m K", "W/(mK)")
                .show("W/(m K)", "W/(m K)", "W/(m K)");
        on(QuantityKind.HEAT_TRANSFER).unit("W/(m² K)", 1, 1, "W/m2K", "W/m2 K", "W/(m2K)")
                .show("W/(m² K)", "W/(m² K)", "W/(m² K)");
        on(QuantityKind.HEAT_CAPACITY).unit("J/K", 1, 1).unit("kJ/K", 1000, 1).show("J/K", "J/K", "J/K");
        on(QuantityKind.LEVEL).unit("dB", 1, 1).unit("dB(A)", 1, 1, "dBA").unit("B", 10, 1).show("dB", "dB", "dB");
        on(QuantityKind.TORQUE).unit("N m", 1, 1, "Nm").unit("mN m", 1, 1000, "mNm").show("N m", "mN m", "mN m");
        on(QuantityKind.FORCE).unit("N", 1, 1).unit("mN", 1, 1000).unit("kN", 1000, 1)
                .unit("lbf", POUND * GRAVITY, 1).show("N", "N", "lbf");
        on(QuantityKind.ACCELERATION).unit("m/s²", 1, 1).unit("gn", GRAVITY, 1).show("m/s²", "gn", "gn");
        on(QuantityKind.ACTIVATION_ENERGY).unit("J", 1, 1).unit("eV", ELECTRON_VOLT, 1).unit("kJ/mol", 1000, AVOGADRO)
                .show("J", "eV", "eV");
        on(QuantityKind.COUNT).unit("", 1, 1, "1").show("", "", "");
        on(QuantityKind.LINEAR_RESISTANCE).unit("Pa s/m³", 1, 1, "Pa/(m3/s)").show("Pa s/m³", "Pa s/m³", "Pa s/m³");
        on(QuantityKind.QUADRATIC_RESISTANCE).unit("Pa s²/m⁶", 1, 1, "Pa/(m3/s)2")
                .show("Pa s²/m⁶", "Pa s²/m⁶", "Pa s²/m⁶");
        on(QuantityKind.NUMBER).unit("", 1, 1, "1").show("", "", "");
    }

    /** The table of a kind; for a kind made elsewhere one with its SI unit, which may also be left out. */
    static UnitTable of(QuantityKind kind) {
        UnitTable known = TABLES.get(kind);
        if (known != null) {
            return known;
        }
        UnitTable own = new UnitTable();
        String symbol = kind.dimensionless() ? "" : kind.siUnit();
        own.unit(symbol, 1, 1, "1".equals(kind.siUnit()) ? "1" : "").show(symbol, symbol, symbol);
        return own;
    }

    List<Unit> units() {
        return List.copyOf(units);
    }

    Unit shown(UnitSystem system) {
        return shown[system.ordinal()];
    }

    /** @param text unit as written; empty for none */
    Optional<Unit> find(String text) {
        return Optional.ofNullable(bySpelling.get(plain(text)));
    }

    /**
     * One spelling for all: superscripts, caret, raised dot, the two micro signs, ohm signs and degree look-alikes
     * become plain; spaces are single and none stand beside a slash or inside a bracket.
     */
    private static String plain(String text) {
        StringBuilder plain = new StringBuilder(text.length() + 4);
        boolean space = false;
        for (int i = 0; i < text.length(); i++) {
            char c = text.charAt(i);
            if (QuantityText.isSpace(c) || c == '·' || c == '⋅' || c == '*') {
                space = true;
                continue;
            }
            if (c == '^') {
                continue;
            }
            if (space && !plain.isEmpty() && c != '/' && c != ')') {
                char before = plain.charAt(plain.length() - 1);
                if (before != '/' && before != '(') {
                    plain.append(' ');
                }
            }
            space = false;
            switch (c) {
                case '²', '₂' -> plain.append('2');
                case '³' -> plain.append('3');
                case '⁶' -> plain.append('6');
                case 'µ', 'μ' -> plain.append('u');
                case 'Ω', '\u2126' -> plain.append("ohm");
                case 'º', '˚' -> plain.append('°');
                default -> plain.append(c);
            }
        }
        return plain.toString();
    }

    private static UnitTable on(QuantityKind kind) {
        UnitTable table = new UnitTable();
        TABLES.put(kind, table);
        return table;
    }

    private UnitTable unit(String symbol, double numerator, double denominator, String... otherSpellings) {
        return shifted(symbol, 0, numerator, denominator, otherSpellings);
    }

    private UnitTable shifted(String symbol, double shift, double numerator, double denominator,
            String... otherSpellings) {
        Unit unit = new Unit(symbol, shift, numerator, denominator);
        units.add(unit);
        bySpelling.put(plain(symbol), unit);
        for (String spelling : otherSpellings) {
            bySpelling.put(plain(spelling), unit);
        }
        return this;
    }

    private void show(String si, String metric, String us) {
        shown[UnitSystem.SI.ordinal()] = bySpelling.get(plain(si));
        shown[UnitSystem.METRIC.ordinal()] = bySpelling.get(plain(metric));
        shown[UnitSystem.US.ordinal()] = bySpelling.get(plain(us));
    }
}
