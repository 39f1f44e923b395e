package tramontane.cli.terminal;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tramontane.physics.units.QuantityKind;
import tramontane.physics.units.UnitSystem;

class NumbersTest {

    @ParameterizedTest
    @CsvSource({
        "0.0256,    flow,             METRIC, 92.2 m³/h",
        "0.0256,    flow,             US,     54.2 cfm",
        "0.0256,    flow,             SI,     0.0256 m³/s",
        "1.5,       flow,             METRIC, 5400 m³/h",
        "298.5,     rotational speed, METRIC, 2850 rpm",
        "73760,     pressure,         METRIC, 73760 Pa",
        "318.27,    temperature,      METRIC, 45.1 °C",
        "318.27,    temperature,      SI,     318.3 K",
        "0.25,      fraction,         METRIC, 25.0 %",
        "0.092,     length,           METRIC, 92.0 mm",
        "2600,      length,           METRIC, 2600 m",
        "2600,      length,           US,     8530 ft",
        "2600,      length,           SI,     2600 m",
        "7,         count,            METRIC, 7",
        "0,         power,            METRIC, 0 W",
        "-12.34,    pressure,         METRIC, -12.3 Pa"})
    void text(double si, String kind, String system, String text) {
        UnitSystem units = UnitSystem.parse(system).orElseThrow();
        assertEquals(text, Numbers.text(si, QuantityKind.named(kind).orElseThrow(), units));
    }

    @Test
    void aMissIsShownApartFromItsLimit() {
        assertEquals("80.00001 m³/h", Numbers.unlike(80.00001 / 3600, 80.0 / 3600, QuantityKind.FLOW, UnitSystem.METRIC));
        assertEquals("80.0 m³/h", Numbers.unlike(80.0 / 3600, 80.0 / 3600, QuantityKind.FLOW, UnitSystem.METRIC));
        assertEquals("92.0 m³/h", Numbers.unlike(92.0 / 3600, 80.0 / 3600, QuantityKind.FLOW, UnitSystem.METRIC));
    }
}
