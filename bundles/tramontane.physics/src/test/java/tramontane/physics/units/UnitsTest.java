package tramontane.physics.units;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class UnitsTest {

    private static final QuantityKind COATING = new QuantityKind("coating", "g/m²");

    private static QuantityKind kind(String name) {
        return QuantityKind.named(name).orElseThrow();
    }

    /** NIST SP 811 (2008), B.8, all printed digits; SI Brochure for the rest. */
    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            1 ft                    | length                    | 0.3048
            1 in                    | length                    | 0.0254
            12.5 mm                 | length                    | 0.0125
            3 um                    | length                    | 3e-6
            1 lb                    | mass                      | 0.45359237
            1 lb/ft3                | density                   | 16.01846337396014
            1 psi                   | pressure                  | 6894.757293168361
            1 inH2O                 | pressure                  | 249.08891
            1 inWG                  | pressure                  | 249.08891
            1 mmH2O                 | pressure                  | 9.80665
            2 mbar                  | pressure                  | 200
            2 hPa                   | pressure                  | 200
            1.01325 bar             | pressure                  | 101325
            1 cfm                   | flow                      | 4.719474432e-4
            1 ft^3/min              | flow                      | 4.719474432e-4
            36 m3/h                 | flow                      | 0.01
            36 m^3/h                | flow                      | 0.01
            36 m³/h                 | flow                      | 0.01
            10 L/s                  | flow                      | 0.01
            600 l/min               | flow                      | 0.01
            1 BTU/h                 | power                     | 0.2930710701722222
            50 mW                   | power                     | 0.05
            25 °C                   | temperature               | 298.15
            25 degC                 | temperature               | 298.15
            25C                     | temperature               | 298.15
            77 °F                   | temperature               | 298.15
            -40 F                   | temperature               | 233.15
            12 K                    | temperature difference    | 12
            2 cm²                   | area                      | 2e-4
            1 in2                   | area                      | 6.4516e-4
            1 ft2                   | area                      | 0.09290304
            1 in3                   | volume                    | 1.6387064e-5
            1 l                     | volume                    | 1e-3
            15 gn                   | acceleration              | 147.09975
            0.5 eV                  | activation energy         | 8.01088317e-20
            96.48533212331 kJ/mol   | activation energy         | 1.602176634e-19
            100 fpm                 | velocity                  | 0.508
            30 rpm                  | rotational speed          | 3.141592653589793
            30 1/min                | rotational speed          | 3.141592653589793
            5 rad/s                 | rotational speed          | 5
            180 °                   | angle                     | 3.141592653589793
            180 deg                 | angle                     | 3.141592653589793
            80 %                    | fraction                  | 0.8
            0.8                     | fraction                  | 0.8
            0.8 1                   | fraction                  | 0.8
            1 year                  | time                      | 31536000
            2 a                     | time                      | 63072000
            5 min                   | time                      | 300
            2 d                     | time                      | 172800
            1 kWh                   | energy                    | 3.6e6
            45.5 dB(A)              | level                     | 45.5
            45.5 dBA                | level                     | 45.5
            0.4 °C/W                | thermal resistance        | 0.4
            205 W/(m K)             | conductivity              | 205
            205 W/(m·K)             | conductivity              | 205
            205 W/mK                | conductivity              | 205
            10 W/(m^2 K)            | heat transfer coefficient | 10
            18.1 mPa s              | viscosity                 | 0.0181
            3 kohm                  | electrical resistance     | 3000
            3 Ω                     | electrical resistance     | 3
            400 Pa s/m3             | linear resistance         | 400
            3e4 Pa s2/m6            | quadratic resistance      | 30000
            +1.5E+2 Pa              | pressure                  | 150
            .5 Pa                   | pressure                  | 0.5
            5. Pa                   | pressure                  | 5
            5Pa                     | pressure                  | 5
            3                       | count                     | 3
            """)
    void readsNumberAndUnit(String text, String kind, double si) {
        assertEquals(si, Units.parse(text, kind(kind)), 4 * Math.ulp(si));
    }

    @Test
    void readsTypographicMinusAndSpaces() {
        assertEquals(-5, Units.parse("\u22125\u202FPa", QuantityKind.PRESSURE));
        assertEquals(5, Units.parse("\u00A05\u2009Pa\u00A0", QuantityKind.PRESSURE));
        assertEquals(5, Units.parse("5 Pa\u00B7s", QuantityKind.VISCOSITY));
        assertEquals(5e-6, Units.parse("5 \u03BCm", QuantityKind.LENGTH), 1e-21);
        assertEquals(0.001, Units.parse("1e\u22123 Pa", QuantityKind.PRESSURE));
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            35 cm     | flow | "35 cm" is not a flow; expected a number with one of m³/s, m³/h, l/s, l/min, cfm
            12 °C     | temperature difference | "12 °C" is a temperature; a difference is written in K
            12 F      | temperature difference | "12 F" is a temperature; a difference is written in K
            12 m      | temperature difference | "12 m" is not a temperature difference; expected a number with K
            35        | flow | "35" has no unit; expected a number with one of m³/s, m³/h, l/s, l/min, cfm
            50 Hz     | rotational speed | "50 Hz" is not a rotational speed; expected a number with one of rpm, 1/min, rad/s
            50 rps    | rotational speed | "50 rps" is not a rotational speed; expected a number with one of rpm, 1/min, rad/s
            5 5 Pa    | pressure | "5 5 Pa" has more than one number; expected a number with one of Pa, hPa, kPa, mbar, bar, mmH2O, inH2O, psi
            5 K       | energy | "5 K" is not an energy; expected a number with one of J, kJ, Wh, kWh
            5 K       | count | "5 K" is not a count; expected a number without unit
            5 K       | fraction | "5 K" is not a fraction; expected a number, alone or with %
            m         | current | "m" does not begin with a number; expected a number with one of A, mA
            1,5 m     | length | "1,5 m" is not understood; decimals are written with one point, several numbers with spaces between
            1.5.2 m   | length | "1.5.2 m" is not understood; decimals are written with one point, several numbers with spaces between
            1e999 K   | temperature | "1e999 K" has a number outside the range 1e-307 to 1e308
            1e-999 K  | temperature | "1e-999 K" has a number outside the range 1e-307 to 1e308
            1e308 kPa | pressure | "1e308 kPa" has a number outside the range 1e-307 to 1e308
            """)
    void saysWhatWasExpected(String text, String kind, String message) {
        assertEquals(message,
                assertThrows(UnitException.class, () -> Units.parse(text, kind(kind))).getMessage());
    }

    @ParameterizedTest
    @ValueSource(strings = {"NaN Pa", "Infinity Pa", "-Infinity Pa", "0x10 Pa", "0x1p3 Pa", "1e Pa", "--5 Pa", "5-3 Pa",
        "5 pA", "5 MPA", "5 P a", ". Pa", "+ Pa", "٣ Pa", "5f Pa", "5 Pa Pa", "Pa 5", "5 Pa\u0000", "1_000 Pa",
        "5 Pa 5", "5 / Pa", "1 1 1", "💨", "\n", ""})
    void refusesWhatIsNoPressure(String text) {
        assertThrows(UnitException.class, () -> Units.parse(text, QuantityKind.PRESSURE));
        assertThrows(UnitException.class, () -> Units.parseList(text, QuantityKind.PRESSURE));
    }

    @Test
    void staysShortAndQuickWithLongText() {
        for (String part : List.of("9", "a", " ", "1 ", "(", "e", "-", "m³")) {
            String text = part.repeat(10_000);
            String message = assertThrows(UnitException.class, () -> Units.parse(text, QuantityKind.FLOW)).getMessage();
            assertTrue(message.length() < 200, message);
            assertThrows(UnitException.class, () -> Units.parseAny(text + "$"));
        }
        assertThrows(UnitException.class, () -> Units.parseList("1 ".repeat(200_000) + "Pa", QuantityKind.PRESSURE));
    }

    @Test
    void quotesControlCharactersHarmlessly() {
        String message = assertThrows(UnitException.class,
                () -> Units.parse("5 \u001b[31m\n", QuantityKind.FLOW)).getMessage();
        assertTrue(message.startsWith("\"5 ?[31m?\""), message);
    }

    @Test
    void readsListsWithOneUnitAtTheEnd() {
        assertArrayEquals(new double[] {0, 0.1, -0.2, 1e-3},
                Units.parseList(" 0 100  -200\t1 mm", QuantityKind.LENGTH), 1e-15);
        assertArrayEquals(new double[] {0.1, 0.2}, Units.parseList("1e-1 2e-1", QuantityKind.FRACTION));
        assertArrayEquals(new double[] {0, 0.5, 1}, Units.parseList("0 50 100%", QuantityKind.FRACTION));
        assertArrayEquals(new double[] {0, 0.5, 1}, Units.parseList("0 0.5 1", QuantityKind.FRACTION));
        assertArrayEquals(new double[] {Math.PI, 2 * Math.PI},
                Units.parseList("30 60 1/min", QuantityKind.ROTATIONAL_SPEED), 1e-15);
        assertEquals(5000, Units.parseList("7 ".repeat(5000) + "cfm", QuantityKind.FLOW).length);
    }

    @ParameterizedTest
    @ValueSource(strings = {"0 20 40", "0 20 cfm 40 cfm", "0, 20, 40 cfm", "0 NaN cfm", "cfm", "0;20 cfm", "0 1e400 cfm"})
    void refusesBrokenLists(String text) {
        assertThrows(UnitException.class, () -> Units.parseList(text, QuantityKind.FLOW));
    }

    @Test
    void findsEveryKindOfAUnit() {
        assertEquals(List.of(QuantityKind.TEMPERATURE, QuantityKind.TEMPERATURE_DIFFERENCE),
                Units.parseAny("85 K").kinds());
        assertEquals(List.of(QuantityKind.TEMPERATURE), Units.parseAny("85 °C").kinds());
        assertEquals(358.15, Units.parseAny("85 °C").si());
        assertEquals(List.of(QuantityKind.FRACTION, QuantityKind.PROBABILITY, QuantityKind.COUNT, QuantityKind.NUMBER),
                Units.parseAny("3").kinds());
        assertTrue(Units.parseAny("35 cfm").fits(QuantityKind.FLOW));
        assertFalse(Units.parseAny("35 cfm").fits(QuantityKind.MASS_FLOW));
        assertEquals("\"5 parsec\" has a unit that is not known: \"parsec\"",
                assertThrows(UnitException.class, () -> Units.parseAny("5 parsec")).getMessage());
        assertEquals(List.of(COATING), Units.parseAny("5 g/m2", List.of(COATING)).kinds());
    }

    @Test
    void everySpellingMeansTheSameInEveryKindThatHasIt() {
        for (QuantityKind kind : QuantityKind.standard()) {
            for (Unit unit : Units.of(kind)) {
                AnyQuantity any = Units.parseAny("7 " + unit.symbol());
                assertTrue(any.fits(kind), kind + " " + unit);
                for (QuantityKind other : any.kinds()) {
                    assertEquals(any.si(), Units.parse("7 " + unit.symbol(), other), kind + " " + other);
                }
            }
        }
    }

    @Test
    void everyStandardKindHasItsSiUnitAndAUniqueName() {
        for (QuantityKind kind : QuantityKind.standard()) {
            assertEquals(7, Units.parse(kind.dimensionless() ? "7" : "7 " + kind.siUnit(), kind), kind.name());
            assertEquals(kind, QuantityKind.named(kind.name()).orElseThrow());
        }
    }

    @Test
    void takesKindsMadeElsewhere() {
        assertEquals(5, Units.parse("5", COATING));
        assertEquals(5, Units.parse("5 g/m^2", COATING));
        assertEquals("5.00 g/m²", Units.format(5, COATING, UnitSystem.US, 3));
        assertEquals("\"5 lb\" is not a coating; expected a number, alone or with g/m²",
                assertThrows(UnitException.class, () -> Units.parse("5 lb", COATING)).getMessage());
        assertThrows(IllegalArgumentException.class, () -> new QuantityKind(" ", "m"));
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            0.08         | flow                   | METRIC | 3 | 288 m³/h
            0.08         | flow                   | SI     | 3 | 0.0800 m³/s
            4.719474432e-4 | flow                 | US     | 3 | 1.00 cfm
            249.08891    | pressure               | US     | 2 | 1.0 inH2O
            80           | pressure               | METRIC | 3 | 80.0 Pa
            -80          | pressure               | METRIC | 2 | -80 Pa
            0            | pressure               | METRIC | 3 | 0 Pa
            -0.0         | pressure               | METRIC | 3 | 0 Pa
            9.996        | pressure               | METRIC | 3 | 10.0 Pa
            101325       | pressure               | METRIC | 4 | 101300 Pa
            101325       | pressure               | METRIC | 6 | 101325 Pa
            1.5e8        | pressure               | METRIC | 3 | 1.50e8 Pa
            0.00012      | pressure               | METRIC | 2 | 0.00012 Pa
            0.000012     | pressure               | METRIC | 2 | 1.2e-5 Pa
            318.45       | temperature            | METRIC | 3 | 45.3 °C
            278.15       | temperature            | METRIC | 3 | 5.0 °C
            398.55       | temperature            | METRIC | 3 | 125 °C
            398.55       | temperature            | METRIC | 2 | 125 °C
            273.149      | temperature            | METRIC | 3 | 0 °C
            298.15       | temperature            | US     | 3 | 77.0 °F
            298.15       | temperature            | SI     | 4 | 298.2 K
            12.34        | temperature difference | US     | 3 | 12.3 K
            293.2153143  | rotational speed       | SI     | 3 | 2800 rpm
            0.8          | fraction               | METRIC | 3 | 80.0 %
            0.8          | fraction               | SI     | 2 | 0.80
            0.0254       | length                 | US     | 2 | 1.0 in
            1.5707963268 | angle                  | METRIC | 3 | 90.0°
            3            | count                  | METRIC | 3 | 3
            12345        | count                  | METRIC | 3 | 12345
            90           | time                   | METRIC | 2 | 90 s
            600          | time                   | METRIC | 2 | 10 min
            2.52e8       | time                   | METRIC | 2 | 70000 h
            600          | time                   | SI     | 3 | 600 s
            45.34        | level                  | METRIC | 3 | 45.3 dB
            """)
    void writesForReading(double si, String kind, String units, int digits, String expected) {
        UnitSystem system = UnitSystem.parse(units).orElseThrow();
        assertEquals(expected, Units.format(si, kind(kind), system, digits));
    }

    @Test
    void refusesToWriteWhatIsNoNumber() {
        assertThrows(IllegalArgumentException.class,
                () -> Units.format(Double.NaN, QuantityKind.FLOW, UnitSystem.SI, 3));
        assertThrows(IllegalArgumentException.class,
                () -> Units.format(1, QuantityKind.FLOW, UnitSystem.SI, 0));
    }

    @Test
    void differenceIsShownInKelvinOnlyAndSpeedInRpmOnly() {
        for (UnitSystem system : UnitSystem.values()) {
            assertEquals("K", Units.display(QuantityKind.TEMPERATURE_DIFFERENCE, system).symbol());
            assertEquals("rpm", Units.display(QuantityKind.ROTATIONAL_SPEED, system).symbol());
        }
    }

    @Test
    void singleKindsCanBeShownOtherwise() {
        Unit litres = Units.of(QuantityKind.FLOW).stream().filter(unit -> unit.symbol().equals("l/s")).findFirst().orElseThrow();
        UnitSystem own = UnitSystem.METRIC.with(QuantityKind.FLOW, litres);
        assertEquals("20.0 l/s", Units.format(0.02, QuantityKind.FLOW, own, 3));
        assertEquals("20.0 °C", Units.format(293.15, QuantityKind.TEMPERATURE, own, 3));
        assertEquals(UnitSystem.METRIC, own.base());
        assertEquals("METRIC; flow l/s", own.text());
        assertEquals(Optional.of(own), UnitSystem.parse(own.text()));
        assertEquals(Optional.of(UnitSystem.US), UnitSystem.parse("US; flow furlong"));
        assertEquals(Optional.empty(), UnitSystem.parse("cubits"));
        assertSame(UnitSystem.METRIC, own.with(QuantityKind.FLOW, Units.display(QuantityKind.FLOW, UnitSystem.METRIC)));
        assertThrows(IllegalArgumentException.class, () -> UnitSystem.SI.with(QuantityKind.PRESSURE, litres));
    }

    @ParameterizedTest
    @CsvSource({"0.9, 90.0 %", "0.95984158, 96.0 %", "0.9985, 99.85 %", "0.99987, 99.987 %", "0.999999871, 99.999987 %", "1, 100 %", "0.5, 50.0 %",
        "0.0123456, 1.23 %", "0.999999999999999, 100 %", "0.7, 70.0 %", "0, 0 %"})
    void aProbabilityKeepsWhatIsLeftToOne(double share, String shown) {
        assertEquals(shown, Units.format(share, QuantityKind.PROBABILITY, UnitSystem.METRIC, 3));
    }
}
