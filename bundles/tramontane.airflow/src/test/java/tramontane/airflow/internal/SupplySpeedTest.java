package tramontane.airflow.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tramontane.airflow.SupplySpeed;
import tramontane.analysis.Figure;
import tramontane.analysis.SpeedLaw;
import tramontane.analysis.Trace;
import tramontane.model.AirMover;
import tramontane.model.Quantity;
import tramontane.physics.units.QuantityKind;

class SupplySpeedTest {

    private static final AirMover VOLTAGES = Cases.part(
            Movers.curve("speed", 200, "voltage", "12 V", "flow", "0 0.03 m³/s", "pressure", "30 0 Pa"),
            Movers.curve("speed", 360, "voltage", "24 V", "flow", "0 0.06 m³/s", "pressure", "100 0 Pa"),
            // the same part at half its setting
            Movers.curve("speed", 180, "voltage", "24 V", "flow", "0 0.03 m³/s", "pressure", "25 0 Pa"));
    private static final AirMover MAINS = Cases.part(
            Movers.curve("speed", 280, "voltage", "230 V", "frequency", "50 Hz", "flow", "0 0.05 m³/s", "pressure", "80 0 Pa"),
            Movers.curve("speed", 330, "voltage", "230 V", "frequency", "60 Hz", "flow", "0 0.06 m³/s", "pressure", "120 0 Pa"));
    /** n₁ 300 rad/s at 24 V and 1.2 kg/m³, n₀ 390 rad/s. */
    private static final AirMover MOTOR = motor(Cases.part(
            Movers.curve("speed", 300, "voltage", "24 V", "flow", "0 0.05 m³/s", "pressure", "80 0 Pa")));

    private static AirMover motor(AirMover part) {
        return Movers.with(part, "motor", "DC unregulated", "noLoadSpeed", 390);
    }

    private static Optional<Double> speed(AirMover mover, Double voltage, Double frequency, double setting, double density) {
        return SupplySpeed.speed(Cases.supply(mover, Movers.supply(Optional.ofNullable(voltage),
                Optional.ofNullable(frequency)), setting, density));
    }

    /** Linear between 12 V and 24 V, in proportion outside. */
    @ParameterizedTest
    @CsvSource({"12, 1, 200", "24, 1, 360", "18, 1, 280", "15, 1, 240", "6, 1, 100", "0, 1, 0", "30, 1, 450", "18, 0.5, 140"})
    void speedGoesWithVoltageBetweenTheCurves(double voltage, double setting, double speed) {
        assertEquals(speed, speed(VOLTAGES, voltage, null, setting, 1.2).orElseThrow(), 1e-12 * speed);
        // thin air is nothing to a motor of which only that is known
        assertEquals(speed, speed(VOLTAGES, voltage, null, setting, 0.7).orElseThrow(), 1e-12 * speed);
    }

    @ParameterizedTest
    @CsvSource({"50, 1, 280", "60, 1, 330", "60, 0.7, 231", "400, 1, 330"})
    void speedIsThatOfTheFrequency(double frequency, double setting, double speed) {
        assertEquals(speed, speed(MAINS, null, frequency, setting, 1.2).orElseThrow(), 1e-12 * speed);
        assertEquals(speed, speed(MAINS, 230.0, frequency, setting, 1.2).orElseThrow(), 1e-12 * speed);
    }

    @Test
    void doesNotKnowWhatNoDataSay() {
        assertEquals(Optional.empty(), speed(VOLTAGES, null, null, 1, 1.2));
        assertEquals(Optional.empty(), speed(Cases.mover(), 24.0, 50.0, 1, 1.2));
        assertEquals(Optional.empty(), speed(Cases.part(), 24.0, 50.0, 1, 1.2));
        // one voltage alone says nothing, nor a motor without its no-load speed, nor one that is below the speed of the curve
        AirMover one = Cases.part(Movers.curve("speed", 300, "voltage", "24 V", "flow", "0 0.05 m³/s", "pressure", "80 0 Pa"));
        assertEquals(Optional.empty(), speed(one, 12.0, null, 1, 1.2));
        assertEquals(Optional.empty(), speed(Movers.with(one, "motor", "DC unregulated"), 12.0, null, 1, 1.2));
        assertEquals(Optional.empty(), speed(Movers.with(one, "motor", "DC unregulated", "noLoadSpeed", 300), 12.0, null, 1, 0.8));
        assertEquals(Optional.empty(), speed(Movers.with(one, "motor", "EC", "noLoadSpeed", 390), 12.0, null, 1, 0.8));
    }

    @Test
    void withoutAFrequencyTheCurvesThatAreTakenGiveTheSpeed() {
        AirMover rated = Movers.with(MAINS, "ratedSpeed", 330);
        for (Double voltage : new Double[] {null, 230.0}) {
            assertEquals(Optional.of(280.0), speed(MAINS, voltage, null, 1, 1.2));
            assertEquals(Optional.of(280.0), speed(rated, voltage, null, 1, 1.2));
        }
    }

    // a DC motor

    @Test
    void aMotorTurnsAtItsRatedSpeedInWhateverOrderItsCurvesAre() {
        var slow = Movers.curve("speed", 150, "voltage", "12 V", "flow", "0 0.02 m³/s", "pressure", "20 0 Pa");
        var fast = Movers.curve("speed", 300, "voltage", "24 V", "flow", "0 0.05 m³/s", "pressure", "80 0 Pa");
        for (AirMover part : new AirMover[] {Cases.part(slow, fast), Cases.part(fast, slow), Cases.part(fast)}) {
            AirMover rated = Movers.with(motor(part), "ratedSpeed", 300);
            assertEquals(300, speed(rated, null, null, 1, 1.2).orElseThrow(), 1e-10);
            assertEquals(300, speed(rated, 24.0, null, 1, 1.2).orElseThrow(), 1e-10);
            assertEquals(390, speed(rated, null, null, 1, 1e-9).orElseThrow(), 1e-5);
            assertEquals(195, speed(rated, 12.0, null, 1, 1e-9).orElseThrow(), 1e-5);
        }
        AirMover above = Movers.with(motor(Cases.part(fast)), "ratedSpeed", 340);
        assertEquals(340, speed(above, null, null, 1, 1.2).orElseThrow(), 1e-10);
    }

    @Test
    void aMotorTurnsAsMeasuredWhereItWasMeasured() {
        assertEquals(300, speed(MOTOR, null, null, 1, 1.2).orElseThrow(), 1e-10);
        assertEquals(300, speed(MOTOR, 24.0, null, 1, 1.2).orElseThrow(), 1e-10);
        assertEquals(150, speed(MOTOR, 24.0, null, 0.5, 1.2).orElseThrow(), 1e-10);
        assertEquals(0, speed(MOTOR, 0.0, null, 1, 1.2).orElseThrow());
    }

    /** n/n₁ = 26/21 at 0.7 of the density and 1.2 of the voltage, see the test of the motor. */
    @Test
    void aMotorFollowsVoltageAndAir() {
        assertEquals(300.0 * 26 / 21, speed(MOTOR, 28.8, null, 1, 0.84).orElseThrow(), 1e-10);
    }

    @ParameterizedTest
    @CsvSource({"24", "12", "30"})
    void withoutLoadAMotorTurnsAtItsNoLoadSpeed(double voltage) {
        double limit = 390 * voltage / 24;
        assertEquals(limit, speed(MOTOR, voltage, null, 1, 1e-9).orElseThrow(), 1e-8 * limit);
    }

    @Test
    void aMotorMeasuredAtSeveralVoltagesFollowsTheAirAtEach() {
        AirMover part = Movers.with(VOLTAGES, "motor", "DC unregulated", "noLoadSpeed", 250);
        for (double voltage : new double[] {12, 18, 24}) {
            assertEquals(speed(VOLTAGES, voltage, null, 1, 1.2).orElseThrow(), speed(part, voltage, null, 1, 1.2).orElseThrow(), 1e-10);
            assertEquals(250 * voltage / 12, speed(part, voltage, null, 1, 1e-9).orElseThrow(), 1e-5);
        }
    }

    /** What a law does that knows the drop of a wire. */
    @Test
    void anotherLawMayAskForTheSpeedAtAVoltageOfItsOwn() {
        SpeedLaw.Supply supply = Cases.supply(VOLTAGES, Movers.supply(Optional.of(24.0), Optional.empty()), 0.5, 1.2);
        SpeedLaw.Supply lower = supply.withSetting(1).withCondition(supply.condition().withSupplyVoltage(Quantity.of(18)));
        assertEquals(280, SupplySpeed.speed(lower).orElseThrow(), 1e-10);
        assertEquals(180, SupplySpeed.speed(supply).orElseThrow(), 1e-10);
    }

    @Test
    void theLawSaysTheSameAndWhereItComesFrom() {
        for (AirMover part : new AirMover[] {VOLTAGES, MAINS, MOTOR, Cases.mover()}) {
            SpeedLaw.Supply supply = Cases.supply(part, Movers.supply(Optional.of(20.0), Optional.of(60.0)), 0.5, 0.9);
            assertEquals(SupplySpeed.speed(supply), new SupplySpeedLaw().speed(supply));
            assertEquals(SupplySpeed.origin(supply), new SupplySpeedLaw().origin(supply));
            assertEquals(SupplySpeed.speed(supply).isPresent(), SupplySpeed.origin(supply).isPresent());
        }
        SpeedLaw.Origin origin = SupplySpeed.origin(Cases.supply(MOTOR, Movers.supply(Optional.of(12.0), Optional.empty()), 1, 0.9))
                .orElseThrow();
        assertEquals(Relations.DC_MOTOR, origin.relation());
        assertTrue(origin.inputs().contains(new Trace.Term("density at the inlet ρ", QuantityKind.DENSITY, 0.9, SpeedLaw.INLET)),
                origin.inputs().toString());
    }

    @Test
    void decidesTheSpeedOfABank() {
        var design = Cases.design(MAINS, java.util.List.of("box"), Cases.bank("fans", "outside", "box"),
                Cases.square("vent", "box", "outside", 1e9));
        for (double[] each : new double[][] {{50, 280, 80}, {60, 330, 120}}) {
            var result = Cases.run(design, Movers.supply(Optional.of(230.0), Optional.of(each[0])), new SupplySpeedLaw());
            assertEquals(each[1], figure(result.figures(), "airflow.bank.speed"));
            // almost shut off: the pressure is that of the curve of this frequency
            assertEquals(each[2], figure(result.figures(), "airflow.bank.pressure"), 0.01 * each[2]);
            assertTrue(result.findings().stream().noneMatch(finding -> finding.message().toString().contains("supply")),
                    result.findings().toString());
        }
    }

    private static double figure(java.util.List<Figure> figures, String id) {
        return figures.stream().filter(each -> each.kind().id().equals(id)).findFirst().orElseThrow().value();
    }
}
