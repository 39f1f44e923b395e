package tramontane.physics.electric;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class CableTest {

    private static final double T20 = 293.15;

    /** IEC 60228, maximum resistance at 20 °C of plain and metal-coated copper conductors, Ω/km. */
    @ParameterizedTest
    @CsvSource({"0.5,SOLID_OR_STRANDED,36.0", "0.5,FLEXIBLE,39.0", "0.5,FLEXIBLE_TINNED,40.1", "1.5,FLEXIBLE,13.3", "2.5,SOLID_OR_STRANDED,7.41",
        "10,FLEXIBLE,1.91", "0.22,FLEXIBLE,96"})
    void resistanceOfTheStandard(double square, Cable.Conductor conductor, double perKilometre) {
        assertEquals(perKilometre * 1e-3, Cable.of(square * 1e-6, conductor).orElseThrow().resistance(T20), 1e-12);
    }

    /** Voltage lost both ways, by hand from the same table: 2 L R' I. */
    @ParameterizedTest
    @CsvSource({"0.5,3,1.2,0.2808", "0.75,5,2.2,0.572", "1.5,10,5,1.33"})
    void dropOfVoltage(double square, double length, double amps, double volts) {
        assertEquals(volts, 2 * length * amps * Cable.of(square * 1e-6, Cable.Conductor.FLEXIBLE).orElseThrow().resistance(T20), 1e-9);
    }

    /** R_t = R_20 (234.5 + t)/254.5: 1.196464 at 70 °C. */
    @Test
    void resistanceRisesWithTemperature() {
        Cable cable = Cable.of(1e-6, Cable.Conductor.FLEXIBLE).orElseThrow();
        assertEquals(1.196464, cable.resistance(T20 + 50) / cable.resistance(T20), 5e-7);
        assertThrows(IllegalArgumentException.class, () -> cable.resistance(10));
    }

    /** Handbook tables of AWG wires (from memory): 18 is 1.024 mm across and 0.823 mm², 20.9 Ω/km; 24 is 0.205 mm², 84.2 Ω/km. */
    @ParameterizedTest
    @CsvSource({"18,0.823,20.95", "24,0.205,84.2", "12,3.31,5.211"})
    void gauges(int number, double square, double perKilometre) {
        Cable cable = Cable.awg(number);
        assertEquals(square, cable.area() * 1e6, 0.005 * square);
        assertEquals(perKilometre, cable.resistance(T20) * 1e3, 0.005 * perKilometre);
    }

    @Test
    void unknownSizesAreSaidToBe() {
        assertEquals(Optional.empty(), Cable.of(0.6e-6, Cable.Conductor.FLEXIBLE));
        assertEquals(Optional.empty(), Cable.of(0.22e-6, Cable.Conductor.SOLID_OR_STRANDED));
        assertEquals(8, Cable.areas(Cable.Conductor.SOLID_OR_STRANDED).size());
        assertTrue(Cable.areas(Cable.Conductor.FLEXIBLE).contains(0.14 * 1e-6));
        assertThrows(IllegalArgumentException.class, () -> Cable.awg(41));
    }
}
