package tramontane.physics.electric;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.Scale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class DcMotorTest {

    private static double speed(double load, double voltage) {
        return DcMotor.speed(300, 390, load, voltage);
    }

    @Test
    void turnsAsMeasuredWhereItWasMeasured() {
        assertEquals(300, speed(1, 1), 1e-12 * 300);
        assertEquals(0, speed(1, 0));
    }

    /** At 0.7 of the load and 1.2 of the voltage n/n₁ = 26/21: 0.7 · 3/13 · (26/21)² = 26/105 = 1.2 - 20/21. */
    @Test
    void followsVoltageAndLoad() {
        assertEquals(300.0 * 26 / 21, speed(0.7, 1.2), 1e-12 * 400);
    }

    /** The published characteristic itself, put in other words: torque at speed n is the stall torque times (v - n/n₀). */
    @Property
    void torqueIsThatOfTheRotor(@ForAll @DoubleRange(min = 0.01, max = 3) @Scale(9) double voltage,
            @ForAll @DoubleRange(min = 0.05, max = 3) @Scale(9) double load,
            @ForAll @DoubleRange(min = 1.01, max = 3) @Scale(9) double noLoad) {
        double n = DcMotor.speed(300, 300 * noLoad, load, voltage);
        double stall = 1 / (1 - 1 / noLoad);
        assertEquals(load * (n / 300) * (n / 300), stall * (voltage - n / (300 * noLoad)), 1e-12 * stall * voltage);
        assertTrue(n > 0 && n < 300 * noLoad * voltage);
    }

    @Property
    void turnsFasterUnderLessLoadAndAtMoreVoltage(@ForAll @DoubleRange(min = 0.05, max = 3) @Scale(9) double voltage,
            @ForAll @DoubleRange(min = 0.05, max = 3) @Scale(9) double load,
            @ForAll @DoubleRange(min = 1.001, max = 2) @Scale(9) double more) {
        assertTrue(speed(load * more, voltage) < speed(load, voltage));
        assertTrue(speed(load, voltage * more) > speed(load, voltage));
    }

    @ParameterizedTest
    @CsvSource({"0.5", "1", "1.25"})
    void withoutLoadItTurnsAtItsNoLoadSpeed(double voltage) {
        assertEquals(390 * voltage, speed(0, voltage), 1e-12 * 390);
        assertEquals(390 * voltage, speed(1e-9, voltage), 1e-8 * 390);
    }

    @ParameterizedTest
    @CsvSource({"0, 390, 1, 1", "300, 300, 1, 1", "300, 200, 1, 1", "300, 390, -1, 1", "300, 390, 1, -1", "300, 390, NaN, 1",
        "300, Infinity, 1, 1", "300, 390, 1, Infinity"})
    void refusesWhatIsNoMotor(double loaded, double noLoad, double load, double voltage) {
        assertThrows(IllegalArgumentException.class, () -> DcMotor.speed(loaded, noLoad, load, voltage));
    }
}
