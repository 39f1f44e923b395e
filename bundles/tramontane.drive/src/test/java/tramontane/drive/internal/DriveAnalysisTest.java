package tramontane.drive.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tramontane.drive.DriveState;

/** Currents, voltages and loads of supplies. Two movers of 6 W at 24 V and 3000 rpm. */
class DriveAnalysisTest {

    private static final String DC = "'supply': {'current': 'DC', 'voltage': '24 V', 'rated': '0.25 A', 'locked': '1 A', 'inrush': '5 A', 'inrushTime': '2 ms',"
            + " 'start': '0.8 A', 'startTime': '3 s'}";
    private static final String SIGNAL = ", 'signal': {'kind': 'speed'}";

    /** Power of a mover at rated speed, W: 6 W in air of 1.2 kg/m³. */
    private static final double POWER = 6 * Boxes.points(Boxes.Box.of("", "").design()).values().iterator().next().bank("fans").orElseThrow()
            .density() / 1.2;
    private static final double AMPS = POWER / 24;

    private static String main(String more) {
        return "'supplies': [{'id': 'main', 'current': 'DC', 'voltage': '24 V'" + more + "}]";
    }

    /** P/U of a data sheet point, and the tacho of 4-wire fans: two pulses a turn (4-wire specification). */
    @Test
    void currentAndTachoAtRatedSpeed() {
        Boxes.Told<DriveState> told = Boxes.drive(Boxes.Box.of(DC + SIGNAL, "'supply': 'main'")
                .withSupplies(main(", 'efficiency': '80 %', 'most': '2 A'")).design());
        assertEquals(AMPS, told.figure("drive.bank.current", "fans"), 1e-12);
        assertEquals(100, told.figure("drive.bank.pulses", "fans"), 1e-9);
        assertEquals(24, told.figure("drive.bank.voltage", "fans"), 0);
        assertEquals(2 * AMPS, told.figure("drive.supply.current", "main"), 1e-12);
        assertEquals(AMPS, told.figure("drive.supply.load", "main"), 1e-12);
        assertEquals(2 * POWER / 0.8, told.figure("drive.supply.power", "main"), 1e-9);
        assertEquals(2 * POWER / 0.8, told.figure("drive.power", ""), 1e-9);
        assertEquals(List.of(), told.sentences());
    }

    /** The cube of the speed (fan laws, ISO 5801): at half speed an eighth of the power, and of the current of a motor that holds its speed. */
    @ParameterizedTest
    @CsvSource({"1, 12", "0.5, 1.5", "0.25, 0.1875"})
    void powerWithTheCubeOfTheSpeed(double setting, double power) {
        Boxes.Told<DriveState> told = Boxes.drive(Boxes.Box.of(DC + ", 'control': {'kind': 'duty'}", "")
                .withConditions("{'id': 'c', 'speed': " + setting
                + ", 'pressure': '101325 Pa', 'outsideTemperature': '20 °C'}").design());
        double density = Boxes.points(Boxes.Box.of("", "").withConditions("{'id': 'c', 'pressure': '101325 Pa', 'outsideTemperature': '20 °C'}").design())
                .get("c").bank("fans").orElseThrow().density();
        assertEquals(power * density / 1.2, told.figure("drive.power", ""), 1e-9 * power);
        assertEquals(power / 2 / 24 * density / 1.2, told.figure("drive.bank.current", "fans"), 1e-9 * power);
    }

    /** I = P/(U cosφ); between three phases P/(√3 U cosφ). */
    @ParameterizedTest
    @CsvSource({"AC, 230 V, 0.9, 1", "three-phase AC, 400 V, 0.5, 1.7320508075688772"})
    void alternatingCurrent(String current, String voltage, double factor, double phases) {
        Boxes.Told<DriveState> told = Boxes.drive(Boxes.Box.of("'supply': {'current': '" + current + "', 'voltage': '" + voltage
                + "', 'frequency': '50 Hz',"
                + " 'powerFactor': " + factor + "}", "").design());
        assertEquals(POWER / (phases * Double.parseDouble(voltage.replace(" V", "")) * factor), told.figure("drive.bank.current", "fans"), 1e-12);
    }

    /** 6 W behind 100 m of 0.5 mm² flexible (39.0 Ω/km at 20 °C, IEC 60228): U = (24 + √(24² - 4 R 6))/2, R = 7.8 Ω. */
    @Test
    void aLongWire() {
        Boxes.Told<DriveState> told = Boxes.drive(Boxes.Box.of(DC, "'wire': {'area': '0.5 mm²', 'length': '100 m', 'temperature': '20 °C'}")
                .design());
        double volts = (24 + Math.sqrt(24 * 24 - 4 * 7.8 * POWER)) / 2;
        assertEquals(volts, told.figure("drive.bank.voltage", "fans"), 1e-9);
        assertEquals(POWER / volts, told.figure("drive.bank.current", "fans"), 1e-12);
        assertEquals((24 - volts) / 24, told.figure("drive.bank.drop", "fans"), 1e-12);
        assertTrue(told.sentences().stream().anyMatch(each -> each.startsWith("caution: the wire of bank fans loses 8.92 % of the voltage | take 1.78 times")),
                told.sentences().toString());
    }

    /** All at once 2 × 0.8 A; two seconds apart both still run up; four seconds apart one runs at 0.25 A while the other starts. */
    @ParameterizedTest
    @CsvSource({"0 s, 1.6, 10", "2 s, 1.6, 5", "4 s, 0.8, 5"})
    void allAtOnceOrOneAfterAnother(String interval, double starting, double inrush) {
        double other = interval.startsWith("0") ? 0 : AMPS; // of the one that runs already
        Boxes.Told<DriveState> told = Boxes.drive(Boxes.Box.of(DC, "'supply': 'main', 'interval': '" + interval + "'").withSupplies(main(""))
                .design());
        assertEquals(starting + (starting == 0.8 ? other : 0), told.figure("drive.supply.starting", "main"), 1e-12);
        assertEquals(inrush + other, told.figure("drive.supply.inrush", "main"), 1e-12);
    }

    @ParameterizedTest
    @CsvSource(delimiter = ';', quoteCharacter = '"', value = {
        "'most': '0.4 A'; not met: supply main is to give 0.500 A, more than the 0.400 A that it gives for long | take a larger supply, or split the movers",
        "'most': '0.6 A', 'peak': '2 A'; caution: supply main gives 0.500 A, 83.3 % of the 0.600 A that it gives for long | leave a fifth of it free",
        "'most': '1 A', 'peak': '2 A'; none",
        "'most': '1 A', 'peak': '2 A', 'derateFrom': '-10 °C', 'derate': 0.02; not met: supply main is to give 0.500 A, more than the 0.400 A that are left at 20.0 °C"
            + " | take a larger supply, or put it where it is cooler"})
    void whatASupplyGives(String most, String sentence) {
        Boxes.Told<DriveState> told = Boxes.drive(Boxes.Box.of(DC, "'supply': 'main'").withSupplies(main(", " + most)).design());
        assertEquals(sentence, told.sentences().isEmpty() ? "none" : told.sentences().getFirst());
    }

    @Test
    void startingTogetherMayBeTooMuch() {
        List<String> all = Boxes.drive(Boxes.Box.of(DC, "'supply': 'main'").withSupplies(main(", 'most': '1 A', 'peak': '1.2 A'")).design())
                .sentences();
        assertTrue(all.getFirst().startsWith("not met: supply main is to give 1.60 A while its movers start, more than the 1.20 A that it gives for a short time"
                + " | start them one after another, with an interval of at least 3.00 s"), all.toString());
        assertEquals(List.of(), Boxes.drive(Boxes.Box.of(DC, "'supply': 'main', 'interval': '3 s'")
                .withSupplies(main(", 'most': '1 A', 'peak': '1.2 A'"))
                .design()).sentences());
    }

    /** 10 A dying away within 2 ms: I² τ/2 = 0.1 A² s. */
    @ParameterizedTest
    @CsvSource({"'melting': '0.05 A² s', not met", "'melting': '0.2 A² s', caution", "'melting': '1 A² s', none"})
    void anInrushMeltsAFuse(String melting, String severity) {
        List<String> all = Boxes.drive(Boxes.Box.of(DC, "'supply': 'main'")
                .withSupplies(main(", 'fuse': {'rated': '2 A', 'kind': 'time-lag', " + melting + "}"))
                .design()).sentences().stream().filter(each -> each.contains("melts")).toList();
        assertEquals(severity, all.isEmpty() ? "none" : all.getFirst().split(":")[0], all.toString());
    }

    @Test
    void aLockedRotorTakesMore() {
        Boxes.Told<DriveState> told = Boxes.drive(Boxes.Box.of(DC, "'supply': 'main'").withSupplies(main("")).withConditions(
                "{'id': 'held', 'failed': [{'bank': 'fans', 'position': 1, 'state': 'locked'}]}").design());
        assertEquals(1 + told.figure("drive.bank.current", "fans"), told.figure("drive.supply.current", "main"), 1e-12);
        assertEquals(1, told.data().bank("fans").orElseThrow().locked());
    }

    @Test
    void aFailedMoverThatTurnsBackwardsMustStartAgain() {
        String conditions = "{'id': 'failed', 'failed': [{'bank': 'fans', 'position': 1, 'state': 'freewheeling'}]}";
        String open = Boxes.drive(Boxes.Box.of(DC, "").withConditions(conditions).design()).sentences().getFirst();
        assertTrue(open.startsWith("caution: air blows back through a failed mover of bank fans, which turns backwards at about ") && open.contains(
                "nothing says whether F starts against that"), open);
        String weak = Boxes.drive(Boxes.Box.of(DC + ", 'restart': '10 rpm'", "").withConditions(conditions).design()).sentences().getFirst();
        assertTrue(weak.startsWith("caution: air blows back") && weak.contains("F starts only up to 10.0 rpm"), weak);
        String strong = Boxes.drive(Boxes.Box.of(DC + ", 'restart': '3000 rpm'", "").withConditions(conditions).design()).sentences().getFirst();
        assertTrue(strong.startsWith("note: "), strong);
    }

    @ParameterizedTest
    @CsvSource(delimiter = ';', quoteCharacter = '"', value = {
        "30 V; 'highest': '28 V'; not met: the movers of bank fans (F) get 30.0 V, more than the 28.0 V that they stand",
        "16 V; 'lowest': '20 V'; not met: the movers of bank fans (F) get 16.0 V, less than the 20.0 V that they need to run",
        "30 V; 'rated': '1 A'; caution: the movers of bank fans (F) get 30.0 V, and nothing says that they stand more than 26.4 V",
        "48 V; 'rated': '1 A'; not met: the movers of bank fans (F) get 48.0 V, and nothing says that they stand more than 26.4 V",
        "9 V; 'rated': '1 A'; not met: the movers of bank fans (F) get 9.00 V, and nothing says that they run below 21.6 V",
        "5 V; 'rated': '1 A'; not met: the movers of bank fans (F) stand: they get 5.00 V, too little to run",
        "0 V; 'rated': '1 A'; not met: the movers of bank fans (F) stand: their supply gives nothing"})
    void aVoltageOutOfRange(String volts, String range, String sentence) {
        List<String> all = Boxes.drive(Boxes.Box.of("'supply': {'current': 'DC', 'voltage': '24 V', " + range + "}", "").withConditions(
                "{'id': 'c', 'supplyVoltage': '" + volts + "'}").design()).sentences();
        assertEquals(sentence, all.getFirst().split(" \\| ")[0]);
    }

    /** 12 Ω before each: what the mover takes at U costs U_sent/U times as much. */
    @Test
    void whatAResistorLosesIsPaidFor() {
        Boxes.Told<DriveState> told = Boxes.drive(Boxes.Box.of(DC + ", 'control': {'kind': 'voltage'}",
                "'supply': 'main', 'resistor': '12 ohm'").withSupplies(
                main(", 'efficiency': '80 %'")).design());
        double volts = told.figure("drive.bank.voltage", "fans");
        double amps = told.figure("drive.bank.current", "fans");
        assertEquals(24 - 12 * amps, volts, 1e-9);
        assertEquals(2 * 24 * amps / 0.8, told.figure("drive.power", ""), 1e-9);
        assertEquals(2 * 24 * amps / 0.8, told.figure("drive.supply.power", "main"), 1e-9);
    }

    /** Pulses of 48 V are 48 V to the electronics; the supply gives its current a quarter of the time. */
    @Test
    void pulsesComeWithAllOfTheVoltage() {
        Boxes.Told<DriveState> told = Boxes.drive(Boxes.Box.of("'supply': {'current': 'DC', 'voltage': '12 V', 'highest': '13.8 V'}, 'control': {'kind': 'pulsed supply'}",
                "'supply': 'main'").withSupplies(main("").replace("24 V", "48 V")).withConditions("{'id': 'c', 'speed': 0.25}").design());
        assertTrue(told.sentences().getFirst().startsWith("not met: the movers of bank fans (F) get pulses of 48.0 V, more than the 13.8 V that they stand"),
                told.sentences().toString());
        assertEquals(0.25 * 2 * told.figure("drive.bank.current", "fans"), told.figure("drive.supply.current", "main"), 1e-12);
        assertEquals(told.figure("drive.power", ""), 48 * told.figure("drive.supply.current", "main"), 1e-9);
    }

    @ParameterizedTest
    @CsvSource({"'60 Hz', 1", "'50 Hz', 0", "'51 Hz', 0"})
    void theFrequencyOfACondition(String frequency, int times) {
        assertEquals(times, Boxes.drive(Boxes.Box.of("'supply': {'current': 'AC', 'voltage': '24 V', 'frequency': '50 Hz'}", "").withConditions(
                "{'id': 'c', 'supplyFrequency': '" + frequency + "'}").design()).sentences().stream()
                        .filter(each -> each.contains("not rated")).count());
    }

    /** 1.6 A for 3 s: 5.3 times 0.3 A opens any fuse, 2.29 times 0.7 A may, 0.8 times 2 A does not (gates of IEC 60127-2, from memory). */
    @ParameterizedTest
    @CsvSource({"0.3 A, time-lag, not met", "0.5 A, quick-acting, not met", "0.7 A, time-lag, caution", "2 A, quick-acting, none"})
    void theStartMayOpenAFuse(String rated, String kind, String severity) {
        List<String> all = Boxes.drive(Boxes.Box.of(DC, "'supply': 'main'").withSupplies(main(", 'fuse': {'rated': '" + rated + "', 'kind': '"
                + kind + "'}"))
                .design()).sentences().stream().filter(each -> each.contains("while the movers start")).toList();
        assertEquals(severity, all.isEmpty() ? "none" : all.getFirst().split(":")[0], all.toString());
    }

    /** At half speed an eighth of the power; all out it is 0.5 A at 24 V, and more at the lower end of a regulated motor's supply. */
    @Test
    void allOutIsLookedAtWhereverTheLawRests() {
        Boxes.Told<DriveState> told = Boxes.drive(Boxes.Box.of(DC + ", 'control': {'kind': 'duty'}", "'supply': 'main'")
                .withSupplies(main(", 'below': '20 %',"
                + " 'most': '0.55 A', 'fuse': {'rated': '0.7 A', 'kind': 'time-lag'}")).withConditions("{'id': 'c', 'speed': 0.5}").design());
        assertEquals(2 * AMPS / 8, told.figure("drive.supply.current", "main"), 2e-5);
        assertEquals(2 * AMPS / 0.8, told.figure("drive.supply.fullest", "main"), 2e-4);
        assertTrue(told.sentences().stream().anyMatch(each -> each.startsWith("caution: supply main is to give 0.62")
                && each.contains("all movers at full speed")),
                told.sentences().toString());
        assertTrue(told.sentences().stream().anyMatch(each -> each.startsWith("caution: the fuse of supply main carries 0.62")),
                told.sentences().toString());
        assertTrue(told.sentences().stream().anyMatch(each -> each.startsWith("caution: the power of bank fans (F) at 50.0 % of the speed it was measured at")),
                told.sentences().toString());
    }

    /** P/P_1 = (n/n_1)² at one frequency: what the rotor slips by heats it. */
    @Test
    void aSlowInductionMotorWarmsItself() {
        String ac = "'supply': {'current': 'AC', 'voltage': '230 V', 'frequency': '50 Hz'}, 'control': {'kind': 'voltage', 'poles': 4}";
        Boxes.Told<DriveState> told = Boxes.drive(Boxes.Box.of(ac, "").withPart(Boxes.PART.replace("3000 rpm", "1400 rpm")).withConditions(
                "{'id': 'c', 'speed': 0.4}").design());
        double speed = Boxes.points(Boxes.Box.of(ac, "").withPart(Boxes.PART.replace("3000 rpm", "1400 rpm"))
                .withConditions("{'id': 'c', 'speed': 0.4}").design())
                .get("c").bank("fans").orElseThrow().speed() / (1400 * Math.PI / 30);
        assertEquals(2 * POWER * speed * speed, told.figure("drive.power", ""), 2e-3 * POWER);
        assertTrue(told.sentences().stream().anyMatch(each -> each.contains("beyond breakdown: they run warm")), told.sentences().toString());
    }

    @Test
    void whatDoesNotStartByItselfIsSaid() {
        assertEquals("not met: the movers of bank fans (F) do not start from rest: 12.0 V are sent, and they need 14.0 V | raise the lowest setting, or give a"
                + " start pulse (kick) of at least 58.3 %", Boxes.drive(Boxes.Box.of(DC
                        + ", 'control': {'kind': 'voltage', 'startVoltage': '14 V'}", "")
                .withConditions("{'id': 'c', 'speed': 0.5}").design()).sentences().getFirst());
    }

    @Test
    void whatDoesNotStartBehindAResistorIsSaid() {
        List<String> all = Boxes.drive(Boxes.Box.of("'supply': {'current': 'DC', 'voltage': '24 V', 'rated': '0.25 A', 'start': '1 A'}, 'control': {'kind': 'voltage',"
                + " 'startVoltage': '14 V'}", "'resistor': '12 ohm'").design()).sentences();
        assertEquals("not met: the movers of bank fans (F) do not start from rest: 24.0 V are sent, and too little is left while they stand: they need 14.0 V | take"
                + " a smaller resistor", all.getFirst());
    }

    /** A held rotor takes its current whatever the others do; movers that get too little to start are held by themselves. */
    @Test
    void whatDoesNotTurnTakesItsLockedCurrent() {
        Boxes.Told<DriveState> held = Boxes.drive(Boxes.Box.of(DC + ", 'control': {'kind': 'duty'}", "'supply': 'main'")
                .withSupplies(main("")).withConditions(
                "{'id': 'held', 'speed': 0.5, 'failed': [{'bank': 'fans', 'position': 1, 'state': 'locked'}]}").design());
        double full = held.figure("drive.bank.current", "fans") * 8;
        assertEquals(1 + full, held.figure("drive.supply.fullest", "main"), 1e-9);
        Boxes.Told<DriveState> stuck = Boxes.drive(Boxes.Box.of(DC + ", 'control': {'kind': 'voltage', 'startVoltage': '23 V'}",
                "'supply': 'main', 'resistor': '12 ohm'")
                .withSupplies(main("")).design());
        assertEquals(0, stuck.data().bank("fans").orElseThrow().running());
        assertEquals(2, stuck.figure("drive.supply.current", "main"), 1e-12);
        Boxes.Told<DriveState> off = Boxes.drive(Boxes.Box.of(DC + ", 'control': {'kind': 'duty', 'startSetting': '30 %'}",
                "'supply': 'main'").withSupplies(
                main("")).withConditions("{'id': 'c', 'speed': 0.2}").design());
        assertEquals(0, off.figure("drive.supply.current", "main"), 0);
    }

    @Test
    void whatStandsIsSaid() {
        List<String> all = Boxes.drive(Boxes.Box.of(DC + ", 'control': {'kind': 'duty', 'startSetting': '30 %'}", "").withConditions(
                "{'id': 'c', 'speed': 0.2}").design()).sentences();
        assertEquals("not met: the movers of bank fans (F) do not start from rest: they are set to 20.0 %, and need 30.0 % | raise the lowest setting to 30.0 %,"
                + " or give a start pulse (kick) of as much", all.getFirst().replace("20.0 % and", "20.0 %, and"));
        Boxes.Told<DriveState> told = Boxes.drive(Boxes.Box.of(DC + ", 'control': {'kind': 'duty', 'startSetting': '30 %'}", "").withConditions(
                "{'id': 'c', 'speed': 0.2}").design());
        assertEquals(0, told.data().bank("fans").orElseThrow().running());
        assertFalse(told.has("drive.bank.current", "fans"));
    }

    @Test
    void everyFigureSaysWhereItComesFrom() {
        Boxes.Told<DriveState> told = Boxes.drive(Boxes.Box.of(DC + SIGNAL, "'supply': 'main', 'wire': {'area': '0.5 mm²', 'length': '1 m'}")
                .withSupplies(
                main(", 'most': '2 A', 'efficiency': '80 %'")).design());
        Set<String> figures = new TreeSet<>(told.result().figures().stream().map(figure -> figure.kind().id()).toList());
        Set<String> steps = new TreeSet<>(told.steps().stream().map(step -> step.figure()).toList());
        assertEquals(new TreeSet<>(Figures.ALL.stream().map(kind -> kind.id()).toList()), figures);
        assertEquals(figures, steps);
    }

    /** Staggering never makes the starting current higher, and it never falls below what runs. */
    @Property
    void staggeringHelpsOrDoesNothing(@ForAll @DoubleRange(min = 0.1, max = 10) double interval, @ForAll @IntRange(min = 1, max = 20) int tenths) {
        String part = DC.replace("'3 s'", "'" + tenths / 2.0 + " s'");
        double together = Boxes.drive(Boxes.Box.of(part, "'supply': 'main'").withSupplies(main("")).design()).figure("drive.supply.starting", "main");
        Boxes.Told<DriveState> told = Boxes.drive(Boxes.Box.of(part, "'supply': 'main', 'interval': '" + interval + " s'")
                .withSupplies(main("")).design());
        double staggered = told.figure("drive.supply.starting", "main");
        assertTrue(staggered <= together + 1e-12);
        assertTrue(staggered >= told.figure("drive.supply.current", "main"));
    }
}
