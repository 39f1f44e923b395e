package tramontane.drive.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tramontane.drive.AlarmWindow;

/** Thresholds that tell failed from healthy movers. The part turns at 3000 rpm and gives two pulses per turn. */
class WatchAnalysisTest {

    private static final double RPM = Math.PI / 30;
    private static final String PART = "'supply': {'current': 'DC', 'voltage': '24 V'}, 'control': {'kind': 'duty', 'tolerance': '10 %'},"
            + " 'signal': {'kind': 'speed', 'pulses': 2}";
    private static final String CONDITIONS = "{'id': 'full'}, {'id': 'slow', 'speed': 0.5}";

    private static Boxes.Told<AlarmWindow> watch(String bank) {
        return Boxes.watch(Boxes.Box.of(PART, "'watch': 'speed'" + bank).withConditions(CONDITIONS).design());
    }

    private static AlarmWindow.Bank window(Boxes.Told<AlarmWindow> told) {
        return told.data().bank("fans").orElseThrow();
    }

    /** Lowest healthy 0.9 · 1500; in 0.5 s a count is off by 1/(2 · 0.5 s) = 60 rpm; threshold within 5 %. */
    @Test
    void theWindowHoldsAllTolerances() {
        Boxes.Told<AlarmWindow> told = watch(", 'alarm': {'speed': '800 rpm', 'tolerance': '5 %', 'gate': '0.5 s', 'delay': '2 s'}");
        assertEquals(1350, window(told).lowest() / RPM, 1e-9);
        assertEquals(60 / 0.95, window(told).from() / RPM, 1e-9);
        assertEquals((1350 - 60) / 1.05, window(told).to() / RPM, 1e-9);
        assertEquals(1350 / 30.0, told.figure("drive.watch.pulses", "fans"), 1e-9); // two pulses a turn
        assertTrue(window(told).holds());
        assertEquals(List.of(), told.sentences());
        assertEquals(List.of("drive.watch.lowest", "drive.watch.failed", "drive.watch.pulses", "drive.watch.from", "drive.watch.to"),
                told.steps().stream().map(step -> step.figure()).toList());
    }

    @ParameterizedTest
    @CsvSource(delimiter = ';', quoteCharacter = '"', value = {
        "1300 rpm; may go off while all is well: a healthy mover may turn at no more than 1350 rpm (condition slow)",
        "50 rpm; may miss a failed mover"})
    void aThresholdOutsideIsNamed(String threshold, String sentence) {
        List<String> all = watch(", 'alarm': {'speed': '" + threshold + "', 'tolerance': '5 %', 'gate': '0.5 s'}").sentences();
        assertEquals(1, all.size());
        assertTrue(all.getFirst().startsWith("not met: the alarm of bank fans (F) at " + threshold.replace("50 rpm", "50.0 rpm")
                .replace("1350.0", "1350"))
                && all.getFirst().contains(sentence), all.getFirst());
    }

    /** In 20 ms a count is off by 1500 rpm: more than the mover turns. */
    @Test
    void anImpossibleThresholdIsFound() {
        Boxes.Told<AlarmWindow> told = watch(", 'alarm': {'speed': '800 rpm', 'gate': '20 ms'}");
        assertFalse(window(told).possible());
        assertEquals("not met: no alarm threshold tells failed movers of bank fans (F) from healthy ones: healthy ones turn at no less than 1350 rpm"
                + " (condition slow), failed ones stand, a count is off by up to 1500 rpm | count for longer, or measure the distance of pulses",
                told.sentences().getFirst());
    }

    /** The threshold follows what is asked for: between nothing and 0.9 of it, less 2 % of tolerance. */
    @Test
    void aShareOfWhatIsAskedFor() {
        Boxes.Told<AlarmWindow> told = watch(", 'alarm': {'share': '70 %'}");
        assertEquals(0, window(told).from(), 0);
        assertEquals(0.9 / 1.02, window(told).to(), 1e-12);
        assertEquals(List.of(), told.sentences());
        assertTrue(watch(", 'alarm': {'share': '95 %'}").sentences().getFirst().startsWith(
                "not met: the alarm of bank fans (F) at 95.0 % may go off while all is well"));
    }

    @Test
    void withoutAThresholdOneIsAdvised() {
        assertEquals(List.of("note: an alarm of bank fans (F) may be set between 0 rpm and 1350 rpm | set it to 675 rpm"), watch("").sentences());
    }

    /** The lowest setting of a law counts though no condition goes there: 0.2 · 3000 · 0.9. */
    @Test
    void lawsGoLowerThanConditions() {
        String law = ", 'controlLaws': [{'id': 'law', 'sensor': 'box', 'temperature': '30 50 °C', 'speed': '%s 100 %%'}]";
        Boxes.Told<AlarmWindow> told = Boxes.watch(Boxes.Box.of(PART, "'watch': 'speed'").withConditions("{'id': 'full'}")
                .with(law.formatted("20")).design());
        assertEquals(540, window(told).lowest() / RPM, 1e-9);
        List<String> off = Boxes.watch(Boxes.Box.of(PART.replace("'tolerance'", "'below': 'holds, off at zero', 'tolerance'"), "'watch': 'speed'")
                .withConditions("{'id': 'full'}").with(law.formatted("0")).design()).sentences();
        assertEquals("caution: control law law lets healthy movers of bank fans (F) stand, and then they set the alarm off | mute the alarm while they are"
                + " set to stand, or raise the lowest setting", off.getFirst());
    }

    /** A failed mover that air turns: its speed goes with its flow as at free delivery. */
    @Test
    void aFailedMoverMayTurn() {
        Boxes.Box box = Boxes.Box.of(PART, "'watch': 'speed'").withConditions(
                "{'id': 'full'}, {'id': 'failed', 'failed': [{'bank': 'fans', 'position': 1, 'state': 'freewheeling'}]}");
        Boxes.Told<AlarmWindow> told = Boxes.watch(box.design());
        double flow = Math.abs(Boxes.points(box.design()).get("failed").bank("fans").orElseThrow().movers().getFirst().flow());
        assertTrue(flow > 0.001);
        assertEquals(3000 * flow / 0.05, window(told).failed() / RPM, 1e-9);
        assertEquals(window(told).failed(), window(told).from(), 0);
        Boxes.Told<AlarmWindow> low = Boxes.watch(Boxes.Box.of(PART, "'watch': 'speed', 'alarm': {'speed': '10 rpm'}")
                .withConditions(box.conditions()).design());
        assertTrue(low.sentences().getFirst().contains("may miss a failed mover, which air turns at up to"), low.sentences().toString());
    }

    @ParameterizedTest
    @CsvSource(delimiter = ';', quoteCharacter = '"', value = {"300 rpm; none",
            "1400 rpm; not met: the locked-rotor signal of bank fans (F) comes below 1400 rpm,"
        + " and healthy movers may turn at no more than 1350 rpm (condition slow)"})
    void aLockedRotorSignal(String below, String sentence) {
        List<String> all = Boxes.watch(Boxes.Box.of(PART.replace("'kind': 'speed', 'pulses': 2", "'kind': 'locked rotor', 'lockedBelow': '"
                + below + "'"),
                "'watch': 'locked rotor'").withConditions(CONDITIONS).design()).sentences();
        assertEquals(sentence, all.isEmpty() ? "none" : all.getFirst().split(" \\| ")[0]);
    }

    @Test
    void anAlarmWaitsUntilTheyRun() {
        Boxes.Box box = Boxes.Box.of(PART.replace("'24 V'", "'24 V', 'startTime': '4 s'"),
                "'watch': 'speed', 'alarm': {'speed': '600 rpm', 'delay': '3 s'}");
        assertEquals(List.of("not met: the alarm of bank fans (F) waits 3.00 s, but the movers take 4.00 s to run up: it goes off at every start | let it wait for"
                + " more than 4.00 s, or mute it while they start"), Boxes.watch(box.design()).sentences());
    }

    /** Two movers, 5 s apart: the last one starts after 5 s and runs 4 s later. */
    @Test
    void anAlarmWaitsForTheLastOfThem() {
        String bank = "'watch': 'speed', 'interval': '5 s', 'alarm': {'speed': '600 rpm', 'delay': '%s'}";
        String part = PART.replace("'24 V'", "'24 V', 'startTime': '4 s'");
        assertTrue(Boxes.watch(Boxes.Box.of(part, bank.formatted("8 s")).design()).sentences().getFirst().contains("has run up only after 9.00 s"));
        assertEquals(List.of(), Boxes.watch(Boxes.Box.of(part, bank.formatted("9.5 s")).design()).sentences());
    }

    @Test
    void nobodyWatchesAPartThatTellsNothing() {
        assertEquals(List.of(), Boxes.watch(Boxes.Box.of("'supply': {'current': 'DC'}", "'watch': 'speed'").design()).data().banks());
        assertEquals(List.of(), Boxes.watch(Boxes.Box.of(PART, "").design()).data().banks());
    }

    /** What the window promises: no healthy mover below a threshold in it, no failed one above, whatever the errors. */
    @Property
    void insideTheWindowNothingIsMistaken(@ForAll @DoubleRange(min = 0, max = 0.3) double speedTolerance, @ForAll @DoubleRange(min = 0,
            max = 0.3) double tolerance,
            @ForAll @DoubleRange(min = 0.05, max = 5) double gate, @ForAll @DoubleRange(min = 0.01, max = 0.99) double within,
            @ForAll @DoubleRange(min = -1, max = 1) double error) {
        Boxes.Told<AlarmWindow> told = Boxes.watch(Boxes.Box.of(PART.replace("10 %", speedTolerance + ""),
                "'watch': 'speed', 'alarm': {'speed': '1 rpm',"
                + " 'tolerance': " + tolerance + ", 'gate': '" + gate + " s'}").withConditions(CONDITIONS).design());
        AlarmWindow.Bank window = window(told);
        if (window.possible()) {
            double threshold = (window.from() + within * (window.to() - window.from())) * (1 + error * tolerance);
            long healthy = (long) Math.floor(2 * gate * 1500 * (1 - speedTolerance) / 60); // whole pulses in the gate time
            assertTrue(healthy / (2 * gate) * 60 * RPM > threshold - 1e-9, () -> healthy + " pulses against " + threshold);
            assertTrue(0 < threshold);
        }
    }
}
