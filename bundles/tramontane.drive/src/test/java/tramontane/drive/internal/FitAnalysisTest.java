package tramontane.drive.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tramontane.drive.Control;

/** What does not go together is said with the part and the way out. */
class FitAnalysisTest {

    private static final String DC24 = "'supply': {'current': 'DC', 'voltage': '24 V'}";
    private static final String FOUR = "'wires': 4, " + DC24 + ", 'control': {'kind': 'duty', 'startSetting': '30 %', 'stopSetting': '20 %'},"
            + " 'signal': {'kind': 'speed'}";
    private static final String LAW = ", 'controlLaws': [{'id': 'fan law', 'sensor': 'box', 'temperature': '30 50 °C', 'speed': '%s'}]";

    private static String supply(String current, String voltage, String more) {
        return "'supplies': [{'id': 'main', 'current': '" + current + "', 'voltage': '" + voltage + "'" + more + "}]";
    }

    private static List<String> fit(Boxes.Box box) {
        return Boxes.fit(box.design()).sentences();
    }

    @Test
    void whatGoesTogetherIsNotSpokenOf() {
        assertEquals(List.of(), fit(Boxes.Box.of(FOUR, "'supply': 'main', 'control': 'duty', 'watch': 'speed', 'modulation': '25 kHz'")
                .withSupplies(supply("DC", "24 V", ", 'below': '5 %', 'above': '5 %'")).with(LAW.formatted("30 100 %"))));
    }

    @ParameterizedTest
    @CsvSource(delimiter = ';', quoteCharacter = '"', value = {
        "AC; 24 V; not met: bank fans (F) takes DC, but supply main gives AC | take a part for AC, or a supply that gives DC",
        "three-phase AC; 400 V; not met: bank fans (F) takes DC, but supply main gives three-phase AC | take a part for three-phase AC, or a supply that gives DC"})
    void anotherKindOfCurrent(String current, String voltage, String sentence) {
        assertEquals(sentence, fit(Boxes.Box.of(FOUR, "'supply': 'main'").withSupplies(supply(current, voltage, ", 'frequency': '50 Hz'")))
                .getFirst());
    }

    @Test
    void onePhaseOfThree() {
        assertTrue(fit(Boxes.Box.of("'supply': {'current': 'AC', 'voltage': '230 V', 'frequency': '50 60 Hz'}", "'supply': 'main'")
                .withSupplies(supply("three-phase AC", "400 V", ", 'frequency': '50 Hz'"))).getFirst()
                .endsWith("| feed it between one phase and neutral, and state that as a supply of its own"));
    }

    /** Ends of the supply's tolerance against those of the part. */
    @ParameterizedTest
    @CsvSource(delimiter = ';', quoteCharacter = '"', value = {
        "'lowest': '20 V', 'highest': '28 V'; 20 %; not met: supply main may give 28.8 V, more than the 28.0 V that F of bank fans stands",
        "'lowest': '20 V', 'highest': '30 V'; 20 %; not met: supply main may give no more than 19.2 V, less than the 20.0 V that F of bank fans needs",
        "'rated': '1 A'; 12 %; caution: supply main may give 26.9 V, more than the 26.4 V that F of bank fans is assumed to stand",
        "'lowest': '19 V', 'highest': '30 V'; 20 %; none"})
    void theRangeOfTheSupply(String range, String tolerance, String sentence) {
        List<String> all = fit(Boxes.Box.of("'supply': {'current': 'DC', 'voltage': '24 V', " + range + "}", "'supply': 'main'")
                .withSupplies(supply("DC", "24 V", ", 'below': '" + tolerance + "', 'above': '" + tolerance + "'")));
        assertEquals(sentence, all.isEmpty() ? "none" : all.getFirst().split(" \\| ")[0]);
    }

    @Test
    void anotherFrequency() {
        String part = "'supply': {'current': 'AC', 'voltage': '115 V', 'frequency': '50 60 Hz'}";
        assertTrue(fit(Boxes.Box.of(part, "'supply': 'main'").withSupplies(supply("AC", "115 V", ", 'frequency': '400 Hz'"))).getFirst()
                .startsWith("not met: bank fans (F) is rated for 60.0 Hz, but supply main gives 400 Hz | take a part for 400 Hz"));
        assertEquals(List.of("caution: supply main works at a voltage that can kill | disconnect before any work, earth what is touchable, guard the"
                + " blades; local codes and licensed electricians have the last word"), fit(Boxes.Box.of(part, "'supply': 'main'")
                .withSupplies(supply("AC", "115 V", ", 'frequency': '61 Hz'"))));
    }

    @ParameterizedTest
    @CsvSource({"48 V, 0", "60 V, 0", "75 V, 1"})
    void mainsAndWhatIsLikeIt(String voltage, long times) {
        assertEquals(times, fit(Boxes.Box.of("'supply': {'current': 'DC', 'voltage': '" + voltage + "'}", "")).stream()
                .filter(each -> each.contains("can kill")).count());
    }

    @Test
    void anEarthedPositivePoleMattersToSignals() {
        String supply = supply("DC", "-48 V", "");
        String part = FOUR.replace("24 V", "48 V");
        assertEquals("caution: the positive pole of supply main is earthed, so that signals of bank fans (F) refer to its negative wire, at -48.0 V |"
                + " let control and tacho wires pass an isolator, or take a part whose signals are isolated",
                fit(Boxes.Box.of(part, "'supply': 'main'").withSupplies(supply)).getFirst());
        assertEquals(List.of(), fit(Boxes.Box.of(DC24.replace("24 V", "48 V"), "'supply': 'main'").withSupplies(supply)));
    }

    /** Control wanted on a two-wire part. */
    @Test
    void aTwoWirePartHasNoWireForControl() {
        Boxes.Box two = Boxes.Box.of("'wires': 2, " + DC24, "'control': 'duty'");
        assertEquals(List.of("not met: bank fans (F) is to be controlled by duty, but the part has 2 wires: its supply alone; missing is a wire for duty"
                + " | take a part with a wire for duty (3 wires or more), or control this one by a lowered voltage"), fit(two));
        assertEquals(Control.NONE, Boxes.fit(two.design()).data().bank("fans").orElseThrow().control());
        assertEquals(List.of("not met: control law fan law sets the speed of bank fans (F), but the part has its supply alone; missing is a wire for duty"
                + " | take a part with a wire for duty (3 wires or more), or control this one by a lowered voltage"),
                fit(Boxes.Box.of(DC24, "").with(LAW.formatted("30 100 %"))));
        assertEquals(List.of("not met: condition slow sets the speed of bank fans (F), but the part has its supply alone; missing is a wire for duty"
                + " | take a part with a wire for duty (3 wires or more), or control this one by a lowered voltage"),
                fit(Boxes.Box.of(DC24, "").withConditions("{'id': 'slow', 'speed': 0.5}")));
        assertEquals("caution: bank fans (F) is to be controlled by voltage, and nothing says from which voltage it starts",
                fit(Boxes.Box.of(DC24, "'control': 'voltage'")).getFirst().split(" \\| ")[0]);
    }

    @Test
    void aSensorInTheHubIsItsOwnMaster() {
        assertTrue(fit(Boxes.Box.of(DC24 + ", 'control': {'kind': 'thermistor', 'temperature': '30 40 °C', 'speed': '1000 3000 rpm'}", "")
                .with(LAW.formatted("30 100 %"))).getFirst().startsWith("not met: control law fan law sets the speed of bank fans (F), but it follows"
                + " the sensor in its hub | take a part with a wire for duty"));
    }

    @ParameterizedTest
    @CsvSource(delimiter = ';', quoteCharacter = '"', value = {
        "nothing; speed; missing is a tacho wire; 3", "nothing; locked rotor; missing is a wire for a locked-rotor or tacho signal; 3",
        "locked rotor; speed; missing is a tacho wire; 3", "locked rotor; locked rotor; ; 0", "speed; locked rotor; ; 0", "speed; speed; ; 0"})
    void whatIsToBeWatched(String told, String wanted, String missing, int wires) {
        String signal = told.equals("nothing") ? "" : ", 'signal': {'kind': '" + told + "', 'lockedBelow': '300 rpm'}";
        List<String> all = fit(Boxes.Box.of(DC24 + signal, "'watch': '" + wanted + "'"));
        if (wires == 0) {
            assertEquals(List.of(), all);
        } else {
            assertEquals(1, all.size());
            assertTrue(all.getFirst().contains(missing + " | take a part with " + wires + " wires"), all.getFirst());
        }
    }

    @Test
    void aPulsedSupplyTakesTheTachoAway() {
        List<String> all = fit(Boxes.Box.of(DC24 + ", 'control': {'kind': 'pulsed supply', 'startVoltage': '10 V'}, 'signal': {'kind': 'speed'}",
                "'watch': 'speed', 'modulation': '100 Hz'"));
        assertTrue(all.getFirst().startsWith("caution: the supply of bank fans (F) is pulsed at 100 Hz, which may be heard"), all.toString());
        assertTrue(all.getLast().startsWith("not met: the signal of bank fans (F) cannot be read while its supply is pulsed"), all.toString());
    }

    /** 25 kHz nominal, 21 to 28 kHz (4-wire specification), where the part says nothing else. */
    @ParameterizedTest
    @CsvSource(delimiter = ';', quoteCharacter = '"', value = {
        "25 kHz; ; none", "21 kHz; ; none", "28 kHz; ; none",
        "10 kHz; ; caution: the controller of bank fans (F) modulates at 10 kHz, below the 21 kHz that 4-wire parts commonly take | set it to 25 kHz",
        "30 kHz; ; caution: the controller of bank fans (F) modulates at 30 kHz, above the 28 kHz that 4-wire parts commonly take | set it to 25 kHz",
        "30 kHz; , 'leastFrequency': '1 kHz', 'mostFrequency': '20 kHz'; not met: the controller of bank fans (F) modulates at 30 kHz, above the 20 kHz"
            + " that the part takes | set it to 20 kHz",
        "30 kHz; , 'leastFrequency': '1 kHz'; none"})
    void theFrequencyOfModulation(String given, String range, String sentence) {
        List<String> all = fit(Boxes.Box.of(DC24 + ", 'control': {'kind': 'duty'" + (range == null ? "" : range) + "}", "'modulation': '"
                + given + "'"));
        assertEquals(sentence, all.isEmpty() ? "none" : all.getFirst());
    }

    /** A lowest duty below the start threshold. */
    @ParameterizedTest
    @CsvSource(delimiter = ';', quoteCharacter = '"', value = {
        "30 100 %; ; none",
        "25 100 %; ; not met: control law fan law goes down to 25.0 %, below the 30.0 % from which bank fans (F) starts | raise its lowest setting to"
            + " 30.0 %, or give a start pulse (kick)",
        "25 100 %; 'kick': '50 %', 'kickTime': '1 s'; none",
        "15 100 %; 'kick': '50 %', 'kickTime': '1 s'; not met: control law fan law goes down to 15.0 %, below the 20.0 % at which bank fans (F) stops | raise its"
            + " lowest setting to 20.0 %",
        "0 100 %; ; caution: control law fan law goes down to 0 %, below the 30.0 % from which bank fans (F) starts | raise its lowest setting to 30.0 %, or"
            + " let it step from nothing to that"})
    void theLowestSettingOfALaw(String settings, String bank, String sentence) {
        List<String> all = fit(Boxes.Box.of(FOUR, bank == null ? "" : bank).with(LAW.formatted(settings)));
        assertEquals(sentence, all.isEmpty() ? "none" : all.getFirst());
    }

    /** 12 V of what may be no more than 21.6 V: 55.6 %. */
    @Test
    void theLowestVoltageOfALaw() {
        List<String> all = fit(Boxes.Box.of(DC24 + ", 'control': {'kind': 'voltage', 'startVoltage': '12 V'}", "'supply': 'main'")
                .withSupplies(supply("DC", "24 V", ", 'below': '10 %'")).with(LAW.formatted("50 100 %")));
        assertEquals(List.of("not met: control law fan law goes down to 50.0 %, below the 55.6 % from which bank fans (F) starts | raise its lowest setting"
                + " to 55.6 %, or give a start pulse (kick)"), all);
    }

    /** At rest 1 A leaves 4 V on 4 Ω: 16 of 24 V must be sent; where a condition has 20 V, 80 %. */
    @ParameterizedTest
    @CsvSource({"'', 66.7", "'{''id'': ''low'', ''supplyVoltage'': ''20 V''}', 80.0"})
    void theStartCountsTheDropAtRest(String conditions, String setting) {
        List<String> all = fit(Boxes.Box.of("'supply': {'current': 'DC', 'voltage': '24 V', 'start': '1 A'}, 'control': {'kind': 'voltage', 'startVoltage': '12 V'}",
                "'resistor': '4 ohm'").withConditions(conditions == null ? "" : conditions).with(LAW.formatted("50 100 %")));
        assertTrue(all.getFirst().contains("below the " + setting + " % from which bank fans (F) starts"), all.toString());
    }

    @Test
    void aPartThatStopsWithoutASignal() {
        assertTrue(fit(Boxes.Box.of(FOUR.replace("'stopSetting': '20 %'", "'stopSetting': '20 %', 'unsignalled': 'stops'"), "")).getFirst()
                .startsWith(
                "caution: bank fans (F) stops when its control wire breaks"));
    }

    /** A law that falls with temperature. */
    @Test
    void aLawThatFalls() {
        assertEquals(List.of("not met: control law fan law of bank fans (F) falls from 100 % at 30.0 °C to 60.0 % at 50.0 °C: the warmer its sensor, the less"
                + " air | let the setting rise with temperature, or stay"), fit(Boxes.Box.of(FOUR, "").with(LAW.formatted("100 60 %"))));
    }

    @Test
    void aStartPulse() {
        assertEquals(List.of("not met: the start pulse of bank fans (F), 25.0 %, is below the 30.0 % from which it starts | raise it",
                "caution: the start pulse of bank fans (F) lasts 1.00 s, shorter than the 3.00 s that the part takes to run up | let it last as long"),
                fit(Boxes.Box.of(FOUR.replace("'24 V'", "'24 V', 'startTime': '3 s'"), "'kick': '25 %', 'kickTime': '1 s'")));
    }

    @Test
    void otherThings() {
        assertEquals(List.of("not judged: nothing says how the movers of bank fans (F) are driven | give the part F a drive section"),
                fit(Boxes.Box.of("", "'watch': 'speed'")));
        assertEquals(List.of("not judged: IEC 60228 has no flexible conductor of 0.6 mm², so that what the wire of bank fans (F) loses is left out |"
                + " take 0.5 mm² or 0.75 mm²"), fit(Boxes.Box.of(FOUR, "'wire': {'area': '0.6 mm²', 'length': '1 m'}")));
        assertTrue(fit(Boxes.Box.of("'supply': {'current': 'DC', 'voltage': '24 V', 'protection': 'none'}", "")).getFirst().startsWith(
                "caution: nothing protects the motors of bank fans (F) when a rotor is held"));
        assertTrue(fit(Boxes.Box.of("'supply': {'current': 'AC', 'voltage': '24 V'}", "").withPart(Boxes.PART + ", 'motor': 'DC regulated'"))
                .getFirst()
                .startsWith("caution: bank fans (F) has a motor of the type DC regulated, but its drive section takes AC"));
        assertTrue(fit(Boxes.Box.of("'supply': {'current': 'AC', 'voltage': '24 V'}", "'control': 'frequency'").withPart(Boxes.PART
                + ", 'motor': 'EC'"))
                .getFirst().startsWith("not met: bank fans (F) makes its own DC from the mains, so that a changed frequency does not slow it down"));
        for (Boxes.Box box : List.of(Boxes.Box.of(DC24, "'control': 'frequency'"), Boxes.Box.of(DC24 + ", 'control': {'kind': 'frequency'}", ""))) {
            assertEquals("not met: bank fans (F) is to be controlled by frequency, but takes DC | control it by voltage", fit(box).getFirst());
        }
    }

    @Test
    void theTableSaysWhatEachHas() {
        Boxes.Told<?> told = Boxes.fit(Boxes.Box.of(FOUR, "'watch': 'speed', 'control': 'duty'").design());
        assertEquals(1, told.result().overviews().getFirst().table().rows().size());
        assertTrue(told.result().overviews().getFirst().table().rows().getFirst().toString().contains("control by duty, speed"));
    }
}
