package tramontane.physics.electric;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ElectricityTest {

    /** By hand: 12 W at 24 V; 23 W at 230 V and 0.8; 1039.23 W at 400 V, 0.75 and three phases is 2 A. */
    @ParameterizedTest
    @CsvSource({"12,24,1,1,0.5", "23,230,0.8,1,0.125", "1039.2304845413264,400,0.75,1.7320508075688772,2"})
    void currents(double power, double voltage, double factor, double phases, double amps) {
        assertEquals(amps, Electricity.current(power, voltage, factor, phases), 1e-12);
    }

    @Test
    void noVoltageIsRefused() {
        assertThrows(IllegalArgumentException.class, () -> Electricity.current(1, 0, 1, 1));
        assertThrows(IllegalArgumentException.class, () -> Electricity.current(1, 12, 0, 1));
        assertThrows(IllegalArgumentException.class, () -> Electricity.current(Double.NaN, 12, 1, 1));
    }

    /** Tacho of two pulses per revolution, as in the 4-wire specification: 83.333 Hz is 2500 rpm, 100 Hz 3000 rpm; three pulses, 250 Hz: 5000. */
    @ParameterizedTest
    @CsvSource({"2500,2,83.33333333333333", "3000,2,100", "5000,3,250"})
    void tacho(double rpm, int pulses, double hertz) {
        assertEquals(hertz, Electricity.pulses(rpm * Math.PI / 30, pulses), 1e-9);
        assertEquals(rpm * Math.PI / 30, Electricity.speed(hertz, pulses), 1e-9);
    }

    /** Integrals by hand. */
    @Test
    void meltingIntegrals() {
        assertEquals(0.1, Fuse.decaying(10, 2e-3), 1e-15);
        assertEquals(8, Fuse.standing(2, 2), 1e-15);
    }
}
