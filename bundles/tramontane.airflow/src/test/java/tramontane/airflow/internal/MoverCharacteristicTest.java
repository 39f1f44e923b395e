package tramontane.airflow.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Optional;
import java.util.OptionalDouble;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.Scale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tramontane.analysis.FlowLaw;
import tramontane.model.AirMover;
import tramontane.model.MoverCurve;
import tramontane.model.Quantities;
import tramontane.model.Value;

class MoverCharacteristicTest {

    private static double rise(FlowLaw law, double flow, double density) {
        FlowLaw.Drop drop = new FlowLaw.Drop();
        law.at(flow, density, 1.8e-5, drop);
        return -drop.pressure();
    }

    private static double slope(FlowLaw law, double flow) {
        FlowLaw.Drop drop = new FlowLaw.Drop();
        law.at(flow, 1.2, 1.8e-5, drop);
        return -drop.slope();
    }

    @Test
    void goesThroughTheMeasuredPoints() {
        MoverCharacteristic mover = MoverCharacteristic.of(Cases.mover(), Cases.SPEED);
        for (int i = 0; i < Cases.FLOW.length; i++) {
            assertEquals(Cases.PRESSURE[i], rise(mover, Cases.FLOW[i], 1.2), 1e-12);
            assertEquals(Cases.POWER[i], mover.power(Cases.FLOW[i], 1.2).orElseThrow(), 1e-12);
        }
    }

    /** Q ∝ n, Δp ∝ n² ρ, P ∝ n³ ρ; base point 0.05 m³/s, 80 Pa, 9 W at 2800 rpm and 1.2 kg/m³. */
    @ParameterizedTest
    @CsvSource({"2100, 1.2, 0.0375, 45.0, 3.796875", "2800, 0.909122, 0.05, 60.6081333, 6.818415",
        "3500, 1.0, 0.0625, 104.1666667, 14.6484375"})
    void followsTheFanLaws(double rpm, double density, double flow, double pressure, double power) {
        double base = 2800 * Math.PI / 30;
        AirMover part = Cases.part(Cases.curve(base, 1.2, new double[] {0, 0.05, 0.08}, new double[] {100, 80, 0},
                new double[] {8, 9, 8.5}));
        MoverCharacteristic mover = MoverCharacteristic.of(part, rpm * Math.PI / 30);
        assertEquals(pressure, rise(mover, flow, density), 1e-9 * pressure + 5e-8);
        assertEquals(power, mover.power(flow, density).orElseThrow(), 1e-9 * power);
    }

    @Test
    void takesTheCurveWhoseSpeedIsNearest() {
        AirMover part = Cases.part(Cases.curve(100, 1.2, new double[] {0, 0.1}, new double[] {10, 0}, new double[0]),
                Cases.curve(200, 1.2, new double[] {0, 0.2}, new double[] {41, 0}, new double[0]));
        assertEquals(10, rise(MoverCharacteristic.of(part, 100), 0, 1.2), 1e-12);
        assertEquals(41, rise(MoverCharacteristic.of(part, 200), 0, 1.2), 1e-12);
        assertEquals(10 * 1.2 * 1.2, rise(MoverCharacteristic.of(part, 120), 0, 1.2), 1e-12);
        assertEquals(41 * 0.9 * 0.9, rise(MoverCharacteristic.of(part, 180), 0, 1.2), 1e-12);
        assertEquals(100, MoverCharacteristic.of(part, 120).measuredSpeed());
    }

    @Test
    void aCurveOfAnotherStatedDensityIsBroughtToTheAir() {
        AirMover part = Cases.part(Cases.curve(100, 1.0, new double[] {0, 0.1}, new double[] {10, 0}, new double[0]));
        assertEquals(12, rise(MoverCharacteristic.of(part, 100), 0, 1.2), 1e-12);
    }

    @Property
    void fallsEverywhere(@ForAll @DoubleRange(min = -1, max = 1) @Scale(15) double a, @ForAll @DoubleRange(min = -1, max = 1) @Scale(15) double b,
            @ForAll @DoubleRange(min = 10, max = 900) @Scale(15) double speed) {
        MoverCharacteristic mover = MoverCharacteristic.of(Cases.mover(), speed);
        assertTrue(mover.increasing());
        if (b - a > 1e-6) {
            assertTrue(rise(mover, a, 1.2) > rise(mover, b, 1.2));
        }
    }

    @Property
    void isSmoothAcrossItsEnds(@ForAll @DoubleRange(min = 1e-12, max = 1e-7) @Scale(15) double step) {
        MoverCharacteristic mover = MoverCharacteristic.of(Cases.mover(), Cases.SPEED);
        for (double end : new double[] {0, 0.05}) {
            double at = rise(mover, end, 1.2);
            assertEquals(at + slope(mover, end) * step, rise(mover, end + step, 1.2),
                    2e-3 * step + 1e6 * step * step + 1e-12);
            assertEquals(slope(mover, end - step), slope(mover, end + step), 1e6 * step + 1e-9);
        }
    }

    @Test
    void isAResistanceBeyondItsEnds() {
        MoverCharacteristic mover = MoverCharacteristic.of(Cases.mover(), Cases.SPEED);
        assertTrue(rise(mover, -0.05, 1.2) > 2 * 80 - 1e-9);
        assertTrue(rise(mover, 0.10, 1.2) < -80);
        // at least a square law far out
        assertTrue(rise(mover, -1.0, 1.2) / rise(mover, -0.5, 1.2) > 3.5);
        assertTrue(rise(mover, 1.0, 1.2) / rise(mover, 0.5, 1.2) > 3.5);
    }

    @Test
    void powerStaysAtItsEnds() {
        MoverCharacteristic mover = MoverCharacteristic.of(Cases.mover(), Cases.SPEED);
        assertEquals(OptionalDouble.of(6), mover.power(-0.01, 1.2));
        assertEquals(OptionalDouble.of(6.4), mover.power(0.09, 1.2));
        assertEquals(OptionalDouble.empty(), MoverCharacteristic.of(Cases.dipping(), Cases.SPEED).power(0.01, 1.2));
    }

    @Test
    void aLevelPieceStillFallsALittle() {
        AirMover part = Cases.part(Cases.curve(100, 1.2, new double[] {0, 0.1, 0.2, 0.3}, new double[] {50, 50, 30, 0}, new double[0]));
        MoverCharacteristic mover = MoverCharacteristic.of(part, 100);
        assertTrue(mover.increasing());
        for (double flow = -0.1; flow < 0.4; flow += 0.001) {
            assertTrue(slope(mover, flow) < 0);
        }
        assertEquals(50, rise(mover, 0.05, 1.2), 50e-6);
    }

    @Test
    void aDipIsSeen() {
        assertFalse(MoverCharacteristic.of(Cases.dipping(), Cases.SPEED).increasing());
    }

    @Test
    void saysWhatAPartLacks() {
        assertEquals(Optional.empty(), MoverCharacteristic.fault(Cases.mover()));
        assertEquals(Optional.of("has no curve"), MoverCharacteristic.fault(Cases.part()));
        MoverCurve speedless = new MoverCurve(Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty(),
                Quantities.of(0, 1), Quantities.of(5, 0), Optional.empty(), Optional.empty(), Value.Tree.EMPTY);
        assertEquals(Optional.of("states no speed, neither a rated one nor at a curve"),
                MoverCharacteristic.fault(Cases.part(speedless)));
        assertEquals(Optional.of("has 2 flows and 3 pressures in its curve"), MoverCharacteristic.fault(
                Cases.part(Cases.curve(1, 1.2, new double[] {0, 1}, new double[] {5, 3, 0}, new double[0]))));
        assertEquals(Optional.of("gives no pressure at any flow in its curve"), MoverCharacteristic.fault(
                Cases.part(Cases.curve(1, 1.2, new double[] {0, 1}, new double[] {0, -1}, new double[0]))));
    }
}
