package tramontane.drive.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Optional;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tramontane.analysis.SpeedLaw;
import tramontane.drive.Feeding;
import tramontane.model.Condition;
import tramontane.model.Design;
import tramontane.model.Passage;
import tramontane.model.Quantity;
import tramontane.physics.electric.Cable;

/** Speeds by supply and control. Rated: 24 V, 3000 rpm; results in rpm. */
class FedSpeedTest {

    private static final double RPM = Math.PI / 30;
    private static final String DC = "'supply': {'current': 'DC', 'voltage': '24 V', 'rated': '0.25 A'}";

    private static Feeding fed(Boxes.Box box, double setting, double volts, double density, double temperature) {
        Design design = box.design();
        Passage bank = design.airPath().passages().getFirst();
        Condition condition = volts > 0 ? Condition.NOMINAL.withSupplyVoltage(Quantity.of(volts)) : Condition.NOMINAL;
        return FedSpeed.of(new SpeedLaw.Supply(design, bank, design.airMovers().getFirst(), condition, setting, density, temperature),
                new Decoding()).orElseThrow();
    }

    private static double rpm(String control, double setting) {
        return fed(Boxes.Box.of(DC + ", 'control': {" + control + "}", ""), setting, 0, 1.2, 293.15).speed() / RPM;
    }

    @Test
    void aPartThatSaysNothingOfItsDriveIsLeftToOthers() {
        Design design = Boxes.Box.of("", "").design();
        assertEquals(Optional.empty(), new DriveSpeed().speed(new SpeedLaw.Supply(design, design.airPath().passages().getFirst(),
                design.airMovers().getFirst(), Condition.NOMINAL, 1, 1.2, 293.15)));
    }

    @ParameterizedTest
    @CsvSource({"1, 3000", "0.4, 3000", "0, 3000"})
    void withoutControlTheSettingDoesNotReachIt(double setting, double speed) {
        assertEquals(speed, rpm("'kind': 'none'", setting), 1e-9);
    }

    /** Speed over its highest follows duty (4-wire specification); the lowest speed is held, or it stands below the stop threshold. */
    @ParameterizedTest
    @CsvSource({"1, 3000", "0.5, 1500", "0.3, 900", "0.1, 900", "0, 900"})
    void dutyWithoutACurveIsProportionalDownToTheLowestSpeed(double setting, double speed) {
        assertEquals(speed, rpm("'kind': 'duty', 'lowestSpeed': '900 rpm'", setting), 1e-9);
    }

    @ParameterizedTest
    @CsvSource({"1, 3000", "0.65, 2000", "0.3, 1000", "0.25, 1000", "0.2, 0", "0.1, 0", "0, 0"})
    void dutyByCurveStandsBelowItsThresholds(double setting, double speed) {
        assertEquals(speed, rpm("'kind': 'duty', 'setting': '30 65 100 %', 'speed': '1000 2000 3000 rpm', 'startSetting': '25 %', 'stopSetting': '15 %'",
                setting), 1e-9);
    }

    @ParameterizedTest
    @CsvSource({"0.2, holds, 1000", "0, holds, 1000", "0.2, 'holds, off at zero', 1000", "0, 'holds, off at zero', 0", "0.15, runs down, 500",
            "0, runs down, 0"})
    void belowItsCurveItDoesAsThePartSays(double setting, String below, double speed) {
        assertEquals(speed, rpm("'kind': 'duty', 'setting': '30 100 %', 'speed': '1000 3000 rpm', 'below': '" + below + "'", setting), 1e-9);
    }

    /** The slowest grade that is no slower than asked for. */
    @ParameterizedTest
    @CsvSource({"1, 3000", "0.7, 3000", "0.6667, 3000", "0.666, 2000", "0.5, 2000", "0.4, 1200", "0.01, 1200", "0, 0"})
    void gradesAreTakenFromAbove(double setting, double speed) {
        assertEquals(speed, rpm("'kind': 'speed grades', 'speed': '1200 2000 3000 rpm'", setting), 1e-9);
    }

    @ParameterizedTest
    @CsvSource({"293.15, 1200", "303.15, 1200", "308.15, 2100", "313.15, 3000", "333.15, 3000"})
    void aThermistorFollowsTheAirWhateverIsSet(double temperature, double speed) {
        Feeding fed = fed(Boxes.Box.of(DC + ", 'control': {'kind': 'thermistor', 'temperature': '30 40 °C', 'speed': '1200 3000 rpm'}", ""),
                0.1, 0, 1.2,
                temperature);
        assertEquals(speed, fed.speed() / RPM, 1e-9);
    }

    /** Torque with ρ n² (fan laws): at a quarter of the torque half of the speed, and faster in thin air. */
    @ParameterizedTest
    @CsvSource({"1, 1.2, 3000", "0.25, 1.2, 1500", "0.25, 0.3, 3000", "1, 0.3, 6000"})
    void aHeldTorque(double setting, double density, double speed) {
        assertEquals(speed, fed(Boxes.Box.of(DC + ", 'control': {'kind': 'torque'}", ""), setting, 0, density, 293.15).speed() / RPM, 1e-9);
    }

    /** Starts from 12 V, stalls below 7 V: a setting from rest between both does not start it, a pulse does. */
    @ParameterizedTest
    @CsvSource({"1, '', 3000, NOT", "0.5, '', 1500, NOT", "0.45, '', 0, DOES_NOT_START", "0.25, '', 0, STALLS", "0, '', 0, OFF",
        "0.45, '''kick'': ''60 %'', ''kickTime'': ''1 s''', 1350, NOT", "0.45, '''kick'': ''40 %'', ''kickTime'': ''1 s''', 0, DOES_NOT_START",
        "0.25, '''kick'': ''60 %'', ''kickTime'': ''1 s''', 0, STALLS"})
    void aLoweredVoltage(double setting, String bank, double speed, Feeding.Standing standing) {
        Feeding fed = fed(Boxes.Box.of(DC + ", 'control': {'kind': 'voltage', 'startVoltage': '12 V', 'stallVoltage': '7 V'}", bank), setting,
                0, 1.2, 293.15);
        assertEquals(speed, fed.speed() / RPM, 1e-9);
        assertEquals(standing, fed.standing());
    }

    @ParameterizedTest
    @CsvSource({"duty, 0.5, 3000", "voltage, 0.5, 1500", "none, 0.5, 3000", "bus, 0.5, 3000", "pulsed supply, 0.25, 750"})
    void whatABankWantsOfATwoWirePart(String wanted, double setting, double speed) {
        assertEquals(speed, fed(Boxes.Box.of(DC, "'control': '" + wanted + "'"), setting, 0, 1.2, 293.15).speed() / RPM, 1e-9);
    }

    @Test
    void aConditionLowersTheVoltageOfAnUnregulatedPart() {
        Boxes.Box box = Boxes.Box.of(DC, "").withPart(Boxes.PART + ", 'motor': 'DC unregulated'");
        assertEquals(1500, fed(box, 1, 12, 1.2, 293.15).speed() / RPM, 1e-9);
        assertEquals(3000, fed(Boxes.Box.of(DC, ""), 1, 12, 1.2, 293.15).speed() / RPM, 1e-9);
    }

    /** By hand: U = 24 - I R, I = 0.25 (U/24)², so that U is the root of 0.25/576 R U² + U - 24. */
    @ParameterizedTest
    @CsvSource({"10", "48", "200"})
    void aSeriesResistorAndTheCurrentAgree(double resistor) {
        double a = 0.25 / 576 * resistor;
        double volts = (-1 + Math.sqrt(1 + 4 * a * 24)) / (2 * a);
        Feeding fed = fed(Boxes.Box.of(DC + ", 'control': {'kind': 'voltage'}", "'resistor': '" + resistor + " ohm'"), 1, 0, 1.2, 293.15);
        assertEquals(volts, fed.terminals().orElseThrow(), 1e-10);
        assertEquals(3000 * volts / 24, fed.speed() / RPM, 1e-7);
        assertEquals(0.25 * volts * volts / 576, fed.current().orElseThrow(), 1e-12);
    }

    /** 0.5 mm² flexible: 39.0 Ω/km at 20 °C (IEC 60228 table 3), 10 m there and back: 0.78 Ω; both movers over one pair: 1.56 Ω each. */
    @ParameterizedTest
    @CsvSource({"each its own, 0.78", "one for all, 1.56"})
    void wiresLoseByIec60228(String wiring, double ohms) {
        double a = 0.25 / 576 * ohms;
        double volts = (-1 + Math.sqrt(1 + 4 * a * 24)) / (2 * a);
        Feeding fed = fed(Boxes.Box.of(DC + ", 'control': {'kind': 'voltage'}", "'wiring': '" + wiring
                + "', 'wire': {'area': '0.5 mm²', 'length': '10 m', 'temperature': '20 °C'}"), 1, 0, 1.2, 293.15);
        assertEquals(volts, fed.terminals().orElseThrow(), 1e-9);
        assertEquals(39.0e-3, Cable.of(0.5e-6, Cable.Conductor.FLEXIBLE).orElseThrow().resistance(293.15), 1e-12);
    }

    /** A thread that carries nothing: the mover stands, and nobody is told of a speed. */
    @Test
    void aHopelessWireCarriesNoRegulatedMotor() {
        Feeding fed = fed(Boxes.Box.of(DC, "'wire': {'gauge': 40, 'length': '2000 m'}"), 1, 0, 1.2, 293.15);
        assertEquals(0, fed.speed(), 0);
        assertEquals(Feeding.Standing.STALLS, fed.standing());
    }

    /** Synchronous speed of a four-pole motor at 50 Hz is 1500 rpm, at 60 Hz 1800 (120 f/p); a fan loads it to a little less. */
    @Test
    void anInductionMotorFollowsFrequencyAndVoltage() {
        String ac = "'supply': {'current': 'AC', 'voltage': '230 V', 'frequency': '50 Hz'}, 'control': {'kind': 'voltage', 'poles': 4}";
        Boxes.Box box = Boxes.Box.of(ac, "").withPart(Boxes.PART.replace("3000 rpm", "1400 rpm"));
        assertEquals(1400, fed(box, 1, 0, 1.2, 293.15).speed() / RPM, 1e-6);
        double half = fed(box, 0.6, 0, 1.2, 293.15).speed() / RPM;
        assertTrue(half > 700 && half < 1350, () -> half + " rpm");
        Boxes.Box variable = Boxes.Box.of(ac.replace("'voltage', 'poles'", "'frequency', 'poles'"), "").withPart(box.part());
        double slow = fed(variable, 0.5, 0, 1.2, 293.15).speed() / RPM;
        assertTrue(slow > 700 && slow < 750, () -> slow + " rpm");
    }

    /** A supply that gives nothing, or far too little, turns nothing; below its range a regulated motor slows down first. */
    @ParameterizedTest
    @CsvSource({"24, 3000, NOT", "20, 3000, NOT", "15, 2250, NOT", "9, 0, STALLS"})
    void aRegulatedMotorNeedsItsVoltage(double volts, double speed, Feeding.Standing standing) {
        Feeding fed = fed(Boxes.Box.of("'supply': {'current': 'DC', 'voltage': '24 V', 'lowest': '20 V', 'rated': '0.25 A'}", ""), 1, volts,
                1.2, 293.15);
        assertEquals(speed, fed.speed() / RPM, 1e-9);
        assertEquals(standing, fed.standing());
        Design dead = Boxes.Box.of(DC, "'supply': 'main'").withSupplies("'supplies': [{'id': 'main', 'current': 'DC', 'voltage': '24 V'}]")
                .withConditions(
                "{'id': 'dead', 'sections': {'drive': {'supplies': [{'supply': 'main', 'voltage': '0 V'}]}}}").design();
        Feeding none = FedSpeed.of(new SpeedLaw.Supply(dead, dead.airPath().passages().getFirst(), dead.airMovers().getFirst(),
                dead.conditions().getFirst(), 1,
                1.2, 293.15), new Decoding()).orElseThrow();
        assertEquals(Feeding.Standing.OFF, none.standing());
        assertEquals(0, none.speed(), 0);
    }

    /** 1 A at rest through 12 Ω leaves 12 of 24 V: too little for 14 V, enough for 11 V, whatever is left once it turns. */
    @ParameterizedTest
    @CsvSource({"14, DOES_NOT_START", "11, NOT"})
    void aResistorMustLetItStart(double start, Feeding.Standing standing) {
        Feeding fed = fed(Boxes.Box.of("'supply': {'current': 'DC', 'voltage': '24 V', 'rated': '0.25 A', 'start': '1 A'}, 'control': {'kind': 'voltage',"
                + " 'startVoltage': '" + start + " V'}", "'resistor': '12 ohm'"), 1, 0, 1.2, 293.15);
        assertTrue(fed.terminals().orElseThrow() > 20);
        assertEquals(standing, fed.standing());
    }

    /** At constant volts per hertz the thresholds of the motor fall with the frequency. */
    @Test
    void lessFrequencyNeedsLessVoltage() {
        Boxes.Box box = Boxes.Box.of("'supply': {'current': 'AC', 'voltage': '230 V', 'lowest': '200 V', 'frequency': '50 Hz'}, 'control': {'kind': 'frequency',"
                + " 'startVoltage': '120 V', 'stallVoltage': '100 V'}", "");
        assertEquals(1500, fed(box, 0.5, 0, 1.2, 293.15).speed() / RPM, 1e-9);
        assertEquals(Feeding.Standing.NOT, fed(box, 0.3, 0, 1.2, 293.15).standing());
    }

    @Property
    void theSpeedNeverFallsWithTheSetting(@ForAll @DoubleRange(min = 0, max = 1) double low, @ForAll @DoubleRange(min = 0, max = 1) double high) {
        for (String control : new String[] {"'kind': 'duty', 'lowestSpeed': '900 rpm', 'stopSetting': '10 %', 'startSetting': '20 %'",
            "'kind': 'voltage', 'startVoltage': '9 V', 'stallVoltage': '7 V'", "'kind': 'speed grades', 'speed': '1200 2000 3000 rpm'",
            "'kind': 'torque'", "'kind': 'bus'", "'kind': 'pulsed supply'",
                    "'kind': 'control voltage', 'setting': '20 90 %', 'speed': '500 3000 rpm'"}) {
            assertTrue(rpm(control, Math.min(low, high)) <= rpm(control, Math.max(low, high)) * (1 + 1e-12), control);
        }
    }
}
