package tramontane.physics;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class FanNoiseTest {

    /** Worked by hand from 50 lg n + 70 lg D + 20 lg ρ. */
    @ParameterizedTest
    @CsvSource({
        "0.5, 1,    1,            -15.0515",
        "0.8, 1,    1,             -4.8455",
        "2,   1,    1,             15.0515",
        "1,   0.5,  1,            -21.0721",
        "1,   1.25, 1,              6.7837",
        "1,   1,    0.7576016667,  -2.4112",
        "0.8, 1.25, 1,              1.9382",
    })
    void followsTheHandbookExponents(double speed, double diameter, double density, double difference) {
        assertEquals(difference, FanNoise.difference(speed, diameter, density), 1e-4); // printed with four decimals
    }

    @Property
    void theLawOfExponentsIsThatOfTheSpecificLevel(@ForAll @DoubleRange(min = 0.1, max = 3) double speed,
            @ForAll @DoubleRange(min = 0.1, max = 3) double diameter, @ForAll @DoubleRange(min = 0.1, max = 3) double density) {
        FanLaws.Point first = new FanLaws.Point(0.05, 80, 9);
        FanLaws.Point other = FanLaws.scale(first, speed, diameter, density);
        assertEquals(FanNoise.difference(speed, diameter, density),
                FanNoise.level(37, other.flow(), other.pressure()) - FanNoise.level(37, first.flow(), first.pressure()), 1e-10);
    }

    /** Like points with equal flow: the larger one is slower, has less pressure and is quieter. */
    @Property
    void atEqualFlowEightyDecibelsPerDecadeOfDiameter(@ForAll @DoubleRange(min = 0.2, max = 5) double diameter) {
        double speed = FanNoise.speedAtEqualFlow(diameter);
        assertEquals(1, FanLaws.flowRatio(speed, diameter), 1e-12);
        assertEquals(Math.pow(diameter, -4), FanLaws.pressureRatio(speed, diameter, 1), 1e-9 * Math.pow(diameter, -4));
        assertEquals(-80 * Math.log10(diameter), FanNoise.difference(speed, diameter, 1), 1e-10);
    }

    @Test
    void refusesWhatHasNoLevel() {
        assertThrows(IllegalArgumentException.class, () -> FanNoise.difference(0, 1, 1));
        assertThrows(IllegalArgumentException.class, () -> FanNoise.difference(1, 1, Double.POSITIVE_INFINITY));
        assertThrows(IllegalArgumentException.class, () -> FanNoise.level(37, 0, 10));
        assertThrows(IllegalArgumentException.class, () -> FanNoise.level(Double.NaN, 0.1, 10));
    }
}
