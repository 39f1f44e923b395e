package tramontane.drive.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tramontane.analysis.SectionType;
import tramontane.drive.BankDrive;
import tramontane.drive.Control;
import tramontane.drive.Current;
import tramontane.drive.LawDrive;
import tramontane.drive.MoverDrive;
import tramontane.drive.Signal;
import tramontane.drive.Supplies;
import tramontane.drive.SupplyLevels;
import tramontane.model.FormReader;
import tramontane.model.Problem;
import tramontane.model.Value;
import tramontane.model.Values;
import tramontane.model.file.Limits;
import tramontane.model.file.TreeFile;

/** What is written of the drive of parts, banks, laws, conditions and designs. */
class DriveSectionsTest {

    private static Value.Tree tree(String json) {
        return TreeFile.parse(json.replace('\'', '"').getBytes(StandardCharsets.UTF_8), Limits.STANDARD).tree().orElseThrow();
    }

    private static <T> T read(SectionType<T> type, String json) {
        List<Problem> problems = new ArrayList<>();
        Values values = FormReader.read(type.form(), tree(json), "drive", problems);
        problems.addAll(type.check(values, "drive"));
        assertEquals(List.of(), problems.stream().map(Problem::sentence).toList());
        return type.decode(values);
    }

    private static <T> void comesBack(SectionType<T> type, T section) {
        List<Problem> problems = new ArrayList<>();
        assertEquals(section, type.decode(FormReader.read(type.form(), type.encode(section), "drive", problems)));
        assertEquals(List.of(), problems);
    }

    @Test
    void aPart() {
        MoverDrive part = read(new MoverDriveSection(), "{'wires': 4, 'supply': {'current': 'DC', 'voltage': '-48 V', 'lowest': '36 V', 'highest': '60 V',"
                + " 'rated': '250 mA', 'locked': '0.9 A', 'inrush': '4 A', 'inrushTime': '2 ms', 'start': '0.8 A', 'startTime': '3 s', 'powerFactor': 0.9,"
                + " 'protection': 'electronic', 'retry': '5 s', 'frequency': '50 60 Hz'}, 'control': {'kind': 'duty', 'setting': '30 100 %',"
                + " 'speed': '1000 3000 rpm', 'tolerance': '8 %', 'lowestSpeed': '900 rpm', 'startSetting': '25 %', 'stopSetting': '20 %', 'startVoltage': '20 V',"
                + " 'stallVoltage': '12 V', 'below': 'runs down', 'leastFrequency': '1 kHz', 'mostFrequency': '30 kHz', 'unsignalled': 'stops'},"
                + " 'signal': {'kind': 'speed', 'pulses': 3}, 'restart': '600 rpm'}");
        assertEquals(4, part.wires().orElseThrow());
        assertEquals(-48, part.supply().voltage().orElseThrow());
        assertEquals(0.25, part.supply().rated().orElseThrow());
        assertEquals(List.of(0.3, 1.0), part.control().settings());
        assertEquals(Control.DUTY, part.control().kind());
        assertEquals(MoverDrive.Below.RUNS_DOWN, part.control().below());
        assertEquals(3, part.signal().pulses());
        assertTrue(part.control().stopsUnsignalled());
        comesBack(new MoverDriveSection(), part);
        comesBack(new MoverDriveSection(), read(new MoverDriveSection(), "{}"));
        comesBack(new MoverDriveSection(), read(new MoverDriveSection(), "{'supply': {'current': 'three-phase AC'}, 'control': {'kind': 'voltage',"
                + " 'poles': 4, 'breakdown': 2.5}, 'signal': {'kind': 'locked rotor', 'lockedBelow': '300 rpm'}}"));
        comesBack(new MoverDriveSection(), read(new MoverDriveSection(),
                "{'control': {'kind': 'thermistor', 'temperature': '30 40 °C', 'speed': '900 2000 rpm'}}"));
    }

    @Test
    void nothingSaidIsNothingControlled() {
        MoverDrive part = read(new MoverDriveSection(), "{}");
        assertEquals(Control.NONE, part.control().kind());
        assertEquals(Signal.NONE, part.signal().kind());
        assertEquals(Current.DC, part.supply().current());
    }

    @Test
    void aBank() {
        BankDrive bank = read(new BankDriveSection(), "{'supply': 'main', 'wiring': 'one for all', 'wire': {'area': '0.75 mm²', 'conductor': 'solid or stranded',"
                + " 'length': '4 m', 'temperature': '60 °C'}, 'resistor': '10 ohm', 'control': 'voltage', 'modulation': '25 kHz', 'watch': 'speed',"
                + " 'alarm': {'share': '70 %', 'tolerance': '3 %', 'gate': '1 s', 'delay': '5 s'}, 'interval': '2 s', 'kick': '60 %', 'kickTime': '1 s'}");
        assertTrue(bank.shared());
        assertEquals(0.75e-6, bank.wire().orElseThrow().area().orElseThrow(), 1e-18);
        assertEquals(0.7, bank.alarm().orElseThrow().share().orElseThrow());
        comesBack(new BankDriveSection(), bank);
        comesBack(new BankDriveSection(), read(new BankDriveSection(), "{}"));
        comesBack(new BankDriveSection(), read(new BankDriveSection(), "{'wire': {'gauge': 22, 'length': 1}, 'alarm': {'speed': '800 rpm'}}"));
        assertEquals(BankDrive.NONE, read(new BankDriveSection(), "{}"));
    }

    @Test
    void theRest() {
        LawDrive law = read(new LawDriveSection(), "{'sensorLag': '10 s', 'interval': '2 s', 'sensorTolerance': '1 K', 'moverLag': '1 s', 'resolution': '1 %',"
                + " 'aim': 'noise', 'reserve': '3 K', 'gainMargin': 3, 'lowest': '30 %'}");
        comesBack(new LawDriveSection(), law);
        assertEquals(LawDrive.NONE, read(new LawDriveSection(), "{}"));
        Supplies supplies = read(new SuppliesSection(), "{'supplies': [{'id': 'a', 'current': 'AC', 'voltage': '230 V', 'below': '15 %', 'above': '10 %',"
                + " 'frequency': '50 Hz', 'most': '2 A', 'peak': '9 A', 'peakTime': '10 ms', 'efficiency': '90 %', 'fuse': {'rated': '2 A', 'kind': 'time-lag',"
                + " 'melting': '5 A² s'}, 'place': 'box', 'derateFrom': '50 °C', 'derate': 0.025}, {'id': 'b', 'current': 'DC', 'voltage': '12 V'}],"
                + " 'price': 0.3, 'currency': 'EUR'}");
        assertEquals(0.9, supplies.source("a").orElseThrow().efficiency());
        assertTrue(supplies.source("a").orElseThrow().fuse().orElseThrow().slow());
        comesBack(new SuppliesSection(), supplies);
        comesBack(new SuppliesSection(), read(new SuppliesSection(), "{}"));
        SupplyLevels levels = read(new SupplyLevelsSection(), "{'supplies': [{'supply': 'a', 'voltage': '200 V', 'frequency': '60 Hz'}, {'supply': 'b'}]}");
        assertEquals(200, levels.of("a").orElseThrow().voltage().orElseThrow());
        comesBack(new SupplyLevelsSection(), levels);
    }

    @ParameterizedTest
    @CsvSource(delimiter = ';', quoteCharacter = '"', value = {
        "{'supply': {'current': 'DC', 'voltage': 0}}; drive.supply.voltage: is 0 V; expected its rated voltage",
        "{'supply': {'current': 'DC', 'lowest': 30, 'highest': 20}}; drive.supply: has a lowest voltage above the highest; expected them the other way round",
        "{'supply': {'current': 'DC', 'voltage': 12, 'lowest': 20}}; drive.supply.voltage: lies outside of its own lowest and highest voltage; expected it between them",
        "{'control': {'kind': 'speed grades'}}; drive.control.speed: is missing; expected the speed of each grade",
        "{'control': {'kind': 'thermistor'}}; drive.control.temperature: is missing; expected temperatures with a speed at each",
        "{'control': {'kind': 'duty', 'setting': '0 1', 'speed': '1 rpm'}}; drive.control.speed: has 1 value for 2 settings; expected one for each",
        "{'control': {'kind': 'duty', 'setting': '0 1', 'speed': '9 8 rpm'}}; drive.control.speed: falls; expected speeds that rise or stay",
        "{'control': {'kind': 'duty', 'stopSetting': 0.4, 'startSetting': 0.3}}; drive.control.stopSetting: lies above the start setting; expected it below",
        "{'wires': 2, 'control': {'kind': 'duty'}, 'signal': {'kind': 'speed'}}; drive.wires: is 2, but a supply with control by duty and a speed signal takes 4;"
            + " expected as many, or less control and signal"})
    void aPartThatContradictsItself(String json, String sentence, String rest) {
        List<Problem> problems = new ArrayList<>();
        Values values = FormReader.read(new MoverDriveSection().form(), tree(json), "drive", problems);
        problems.addAll(new MoverDriveSection().check(values, "drive"));
        assertEquals(sentence + "; " + rest, problems.getFirst().sentence());
    }

    @Test
    void namesOfSuppliesAreLookedUp() {
        Boxes.Box box = Boxes.Box.of("", "'supply': 'mian'");
        Value.Tree bank = tree("{'supply': 'mian'}");
        List<Problem> none = new ArrayList<>();
        Values values = FormReader.read(new BankDriveSection().form(), bank, "drive", none);
        assertEquals("drive.supply: \"mian\" is no supply of the design; expected one in the drive section of the design",
                new BankDriveSection().check(values, box.design(), "drive").getFirst().sentence());
        Boxes.Box two = box.withSupplies("'supplies': [{'id': 'main', 'current': 'DC', 'voltage': '24 V'}, {'id': 'spare', 'current': 'DC', 'voltage': '24 V'}]");
        assertEquals("drive.supply: \"mian\" is no supply of the design (did you mean \"main\"?); expected one of main, spare",
                new BankDriveSection().check(values, two.design(), "drive").getFirst().sentence());
        Values levels = FormReader.read(new SupplyLevelsSection().form(), tree("{'supplies': [{'supply': 'main'}, {'supply': 'other'}]}"),
                "drive", none);
        assertEquals(List.of("drive.supplies[1].supply: \"other\" is no supply of the design; expected one of main, spare"),
                new SupplyLevelsSection().check(levels, two.design(), "drive").stream().map(Problem::sentence).toList());
    }
}
