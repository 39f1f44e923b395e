package tramontane.physics.electric;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;

class InductionMotorTest {

    private static final double RPM = Math.PI / 30;
    private static final InductionMotor FAN = new InductionMotor(1, 2700 * RPM, 230, 50, 1.2, 1.8);

    @Test
    void ratedSupplyGivesRatedSpeed() {
        InductionMotor.Running running = FAN.running(230, 50, 1.2);
        assertEquals(2700 * RPM, running.speed(), 1e-9);
        assertFalse(running.pulledOut());
    }

    /** 2π f/p: two poles at 50 Hz 3000 rpm, four at 60 Hz 1800 rpm. */
    @Test
    void synchronousSpeeds() {
        assertEquals(3000 * RPM, InductionMotor.synchronous(50, 1), 1e-9);
        assertEquals(1800 * RPM, InductionMotor.synchronous(60, 2), 1e-9);
    }

    /** s_b = s_r (b + √(b² - 1)) by hand: 0.1 (1.8 + √2.24) = 0.329666. */
    @Test
    void breakdownSlip() {
        assertEquals(0.1 * (1.8 + Math.sqrt(2.24)), FAN.breakdownSlip(), 1e-12);
    }

    /** Where it settles, Kloss's torque is that of the fan. */
    @Property
    void torquesBalance(@ForAll @DoubleRange(min = 60, max = 260) double volts, @ForAll @DoubleRange(min = 30, max = 70) double hertz,
            @ForAll @DoubleRange(min = 0.6, max = 1.4) double density) {
        double speed = FAN.running(volts, hertz, density).speed();
        double slip = 1 - speed / InductionMotor.synchronous(hertz, 1);
        double breaks = FAN.breakdownSlip() * 50 / hertz;
        double torque = 2 * 1.8 * Math.pow(volts / 230 * 50 / hertz, 2) / (slip / breaks + breaks / slip);
        double load = density / 1.2 * Math.pow(speed / (2700 * RPM), 2);
        assertEquals(load, torque, 1e-9 * load);
    }

    @Property
    void moreVoltageOrThinnerAirIsFaster(@ForAll @DoubleRange(min = 60, max = 250) double volts,
            @ForAll @DoubleRange(min = 0.6, max = 1.3) double density) {
        double speed = FAN.running(volts, 50, density).speed();
        assertTrue(FAN.running(volts * 1.01, 50, density).speed() > speed);
        assertTrue(FAN.running(volts, 50, density * 0.99).speed() > speed);
        assertTrue(speed < InductionMotor.synchronous(50, 1));
    }

    @Test
    void lowVoltagePullsItOutAndNoneStopsIt() {
        assertTrue(FAN.running(90, 50, 1.2).pulledOut());
        assertEquals(0, FAN.running(0, 50, 1.2).speed());
    }

    @Test
    void refusesWhatIsNone() {
        assertThrows(IllegalArgumentException.class, () -> new InductionMotor(1, 3000 * RPM, 230, 50, 1.2, 2));
        assertThrows(IllegalArgumentException.class, () -> new InductionMotor(1, 2700 * RPM, 230, 50, 1.2, 1));
    }
}
