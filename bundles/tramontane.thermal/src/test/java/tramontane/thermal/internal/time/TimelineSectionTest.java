package tramontane.thermal.internal.time;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import tramontane.analysis.Sections;
import tramontane.model.Condition;
import tramontane.model.Design;
import tramontane.model.FailedMover;
import tramontane.model.Problem;
import tramontane.model.Value;
import tramontane.model.Values;
import tramontane.physics.units.UnitSystem;
import tramontane.thermal.Designs;

class TimelineSectionTest {

    private static final TimelineSection TYPE = new TimelineSection();

    private static Condition condition(String timeline) {
        Design design = Designs.design("{'format': 1, 'conditions': [{'id': 'c', 'heatFactor': '80 %', 'sections': {'timeline': {" + timeline + "}}}]}");
        return design.conditions().getFirst();
    }

    private static List<Problem> problems(String timeline) {
        List<Problem> problems = new ArrayList<>();
        Optional<Values> values = Sections.read(TYPE, condition(timeline).section("timeline").orElseThrow(), "timeline", problems);
        values.ifPresent(read -> problems.addAll(TYPE.check(read, "timeline")));
        return problems;
    }

    static Stream<Arguments> wrong() {
        String day = "'duration': '1 h', 'steps': [%s]";
        return Stream.of(
                Arguments.of("", "timeline.duration: is missing"),
                Arguments.of("'duration': 0", "out of range; expected a time above 0"),
                Arguments.of("'duration': '5 m³'", "timeline.duration: "),
                Arguments.of("'duration': '1 h', 'start': 'warm'", "expected one of \"cold\", \"settled\""),
                Arguments.of("'duration': '1 h', 'start': 'settled', 'startTemperature': '5 °C'", "startTemperature: is given although it starts settled"),
                Arguments.of(day.formatted("{'speed': '50 %'}"), "timeline.steps[0].at: is missing"),
                Arguments.of(day.formatted("{'at': '1 h', 'speed': '50 %'}"), "timeline.steps[0].at: is not before the end of the timeline"),
                Arguments.of(day.formatted("{'at': 0, 'speed': '50 %'}"), "timeline.steps[0].at: 0 is out of range"),
                Arguments.of(day.formatted("{'at': '10 min', 'speed': '50 %'}, {'at': '600 s', 'heatFactor': 2}"),
                        "timeline.steps[1].at: is not later than the step before it"),
                Arguments.of(day.formatted("{'at': '10 min'}"), "timeline.steps[0]: changes nothing"),
                Arguments.of(day.formatted("{'at': '10 min', 'failed': [{'bank': 'fans'}]}"), "timeline.steps[0].failed[0]: does not say which mover fails"),
                Arguments.of(day.formatted("{'at': '10 min', 'failed': [{'position': 1}]}"), "timeline.steps[0].failed[0]: does not say which mover fails"),
                Arguments.of(day.formatted("{'at': '10 min', 'failed': [{'bank': 'fans', 'position': 'any one'}]}"), "does not say which mover fails"),
                Arguments.of(day.formatted("{'at': '10 min', 'failed': [{'bank': 'fans', 'position': 1}, {'bank': 'fans', 'position': 1, 'state': 'removed'}]}"),
                        "timeline.steps[0].failed[1]: names mover 1 of fans again"),
                Arguments.of(day.formatted("{'at': '10 min', 'speed': '500 %'}"), "timeline.steps[0].speed: "),
                Arguments.of(day.formatted("{'at': '10 min', 'clogging': 0.5}"), "timeline.steps[0].clogging: "),
                Arguments.of(day.formatted("{'at': '10 min', 'altitude': '3 km'}"), "timeline.steps[0].altitude: is not a field"));
    }

    @ParameterizedTest(name = "[{0}]")
    @MethodSource("wrong")
    void saysWhatIsWrongAndWhere(String timeline, String expected) {
        List<String> sentences = problems(timeline).stream().map(Problem::sentence).toList();
        assertTrue(sentences.stream().anyMatch(sentence -> sentence.contains(expected)), sentences.toString());
    }

    @Test
    void eachStepChangesTheConditionBeforeIt() {
        String timeline = "'duration': '1 h', 'steps': [{'at': '10 min', 'heatFactor': 1.5, 'failed': [{'bank': 'fans', 'position': 2}]},"
                + " {'at': '20 min', 'outsideTemperature': '40 °C', 'heatFactors': {'cpu': 0.5}}, {'at': '30 min', 'failed': [], 'speed': '60 %',"
                + " 'clogging': 2, 'supplyVoltage': '10 V'}]";
        assertEquals(List.of(), problems(timeline));
        Condition before = condition(timeline);
        TimelineSection.Timeline read = Sections.decode(TYPE, before).orElseThrow();
        Condition first = read.steps().get(0).after(before);
        assertEquals(1.5, first.heatFactor().orElseThrow().si());
        assertEquals(List.of(new FailedMover(Optional.of("fans"), Optional.of(2), FailedMover.State.LOCKED)), first.failed());
        Condition second = read.steps().get(1).after(first);
        assertEquals(1.5, second.heatFactor().orElseThrow().si(), "it stays");
        assertEquals(1, second.failed().size());
        assertEquals(0.5, second.heatFactors().get("cpu").si());
        assertEquals(313.15, second.temperature(), 1e-9);
        Condition third = read.steps().get(2).after(second);
        assertEquals(List.of(), third.failed());
        assertEquals(0.6, third.speedSetting(), 1e-12);
        assertEquals(2, third.cloggingFactor());
        assertEquals(10, third.supplyVoltage().orElseThrow().si());
        assertEquals("fans 2 fails, heat goes to 150 %", read.steps().get(0).words(before).in(UnitSystem.METRIC));
        assertEquals("heat of cpu goes to 50.0 %, outside comes to 40.0 °C", read.steps().get(1).words(first).in(UnitSystem.METRIC));
        assertEquals("fans 2 runs again, speed is set to 60.0 %, filters clog to 2.00, supply goes to 10.0 V",
                read.steps().get(2).words(second).in(UnitSystem.METRIC));
    }

    @Test
    void isWrittenAsItWasRead() {
        Value.Tree written = (Value.Tree) condition("'duration': '1 h', 'start': 'settled', 'steps': [{'at': '10 min', 'heatFactor': '150 %',"
                + " 'heatFactors': {'cpu': '90 %'}, 'failed': [{'bank': 'fans', 'position': 2, 'state': 'removed'}]}]").section("timeline").orElseThrow();
        TimelineSection.Timeline read = TYPE.decode(Sections.read(TYPE, written, "", new ArrayList<>()).orElseThrow());
        assertEquals(written, TYPE.encode(read));
        assertFalse(read.steps().isEmpty());
    }
}
