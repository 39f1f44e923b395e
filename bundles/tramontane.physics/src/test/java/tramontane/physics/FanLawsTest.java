package tramontane.physics;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class FanLawsTest {

    private static final FanLaws.Point BASE = new FanLaws.Point(0.05, 80, 9);

    /** Worked by hand from the conversion rules of AMCA 210: 2800 rpm, 0.120 m, 1.2 kg/m³. */
    @ParameterizedTest
    @CsvSource({
        "2100, 0.120, 1.2,      0.0375,       45.0,        3.796875",
        "2800, 0.140, 1.2,      0.0793981481, 108.8888889, 19.4525463",
        "2800, 0.120, 0.909122, 0.05,         60.6081333,  6.818415",
        "3500, 0.092, 1.0,      0.0281643519, 61.2268519,  3.8799328",
    })
    void scalesAPoint(double speed, double diameter, double density, double flow, double pressure, double power) {
        FanLaws.Point point = FanLaws.scale(BASE, speed / 2800, diameter / 0.120, density / 1.2);
        // half a unit of the last printed digit
        assertEquals(flow, point.flow(), 5e-9 * flow);
        assertEquals(pressure, point.pressure(), 5e-9 * pressure);
        assertEquals(power, point.power(), 1.5e-8 * power);
    }

    @Test
    void refusesRatiosWithoutMeaning() {
        assertThrows(IllegalArgumentException.class, () -> FanLaws.scale(BASE, -1, 1, 1));
        assertThrows(IllegalArgumentException.class, () -> FanLaws.scale(BASE, 1, 0, 1));
        assertThrows(IllegalArgumentException.class, () -> FanLaws.scale(BASE, 1, 1, Double.NaN));
    }

    @Property
    void efficiencyStays(@ForAll @DoubleRange(min = 0.1, max = 3) double speed,
            @ForAll @DoubleRange(min = 0.1, max = 3) double diameter,
            @ForAll @DoubleRange(min = 0.1, max = 3) double density) {
        FanLaws.Point point = FanLaws.scale(BASE, speed, diameter, density);
        assertEquals(BASE.flow() * BASE.pressure() / BASE.power(), point.flow() * point.pressure() / point.power(),
                1e-12);
    }

    /** Along Δp = b Q² the laws of speed move a point along the curve; a linear part breaks that. */
    @Property
    void onlyASquareLawIsFollowedWithSpeed(@ForAll @DoubleRange(min = 0.2, max = 0.9) double speed) {
        FanLaws.Point point = FanLaws.scale(BASE, speed, 1, 1);
        double square = 80 / (0.05 * 0.05);
        assertEquals(square * point.flow() * point.flow(), point.pressure(), 1e-10);
        double mixed = 800 * point.flow() + (80 - 40) / (0.05 * 0.05) * point.flow() * point.flow();
        assertEquals(1, Math.signum(mixed - point.pressure()));
    }
}
