package tramontane.thermal.internal.time;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import tramontane.analysis.Amount;
import tramontane.analysis.Figure;
import tramontane.analysis.FigureKind;
import tramontane.analysis.Input;
import tramontane.analysis.Result;
import tramontane.analysis.Run;
import tramontane.analysis.Table;
import tramontane.analysis.Trace;
import tramontane.model.Condition;
import tramontane.model.Design;
import tramontane.model.HeatSource;
import tramontane.model.Quantity;
import tramontane.model.Value;
import tramontane.physics.units.UnitSystem;
import tramontane.thermal.Designs;
import tramontane.thermal.History;
import tramontane.thermal.ThermalModels;

class TimeAnalysisTest {

    private static final TimeAnalysis ANALYSIS = new TimeAnalysis(new ThermalModels(Designs.PASSAGES, Designs.LINKS,
            Designs.SPEEDS.stream().map(law -> Map.entry(Map.<String, Object>of(), law)).toList()));

    /** A box that two fans draw air through, with a processor and a slower transformer. */
    private static Design box(String timeline, String more) {
        return Designs.design("{'format': 1, 'airMovers': [{'id': 'F', 'width': '80 mm', 'height': '80 mm', 'curves': [{'speed': '3000 rpm',",
                "'flow': '0 0.01 0.02 0.03 0.04 0.05 m³/s', 'pressure': '80 78 70 54 30 0 Pa', 'power': '6 6.5 7 7.2 7 6.4 W'}]}],",
                "'airPath': {'bays': ['box'], 'passages': [",
                "{'id': 'in', 'kind': 'measured resistance', 'from': 'outside', 'to': 'box', 'quadratic': 20000},",
                "{'id': 'fans', 'kind': 'bank', 'from': 'box', 'to': 'outside', 'mover': 'F', 'across': 2}]},", more,
                "'conditions': [{'id': 'hot', 'outsideTemperature': '30 °C'" + timeline + "}],",
                "'heatSources': [{'id': 'processor', 'power': '150 W', 'into': ['box'], 'limit': '85 °C', 'chain': [",
                "{'kind': 'junction to case', 'resistance': '0.05 K/W', 'heatCapacity': '20 J/K'},",
                "{'kind': 'measured sink', 'velocity': '0.5 1 2 4 m/s', 'resistance': '0.5 0.35 0.25 0.18 K/W', 'flowArea': '0.03 m²', 'heatCapacity': '500 J/K'}]},",
                "{'id': 'transformer', 'power': '30 W', 'into': ['box'], 'limit': '110 °C', 'chain': [",
                "{'kind': 'resistance', 'resistance': '1.5 K/W', 'heatCapacity': '1200 J/K'}]}]}");
    }

    private static String timeline(String inside) {
        return ", 'sections': {'timeline': {" + inside + "}}";
    }

    private record Handed(Design design) implements Input {
        @Override
        public Condition condition() {
            return design.conditions().getFirst();
        }

        @Override
        public <R> R result(Class<R> type) {
            throw new IllegalArgumentException(type + " was not asked for");
        }

        @Override
        public <R> Map<String, R> results(Class<R> type) {
            throw new IllegalArgumentException(type + " was not asked for");
        }

        @Override
        public List<Figure> figures(String id) {
            return List.of();
        }
    }

    private static Result<History> run(Design design) {
        return ANALYSIS.run(new Handed(ANALYSIS.reads(design)), Run.alone(Trace.SILENT));
    }

    private static List<String> sentences(Result<History> result) {
        return result.findings().stream().map(finding -> finding.severity().word() + ": " + finding.message().in(UnitSystem.METRIC)).toList();
    }

    private static void says(Result<History> result, String words) {
        assertTrue(sentences(result).stream().anyMatch(sentence -> sentence.matches(words)), words + " in " + sentences(result));
    }

    private static double figure(Result<History> result, FigureKind kind, String place) {
        return result.figures().stream().filter(figure -> figure.kind() == kind && figure.place().equals(place)).findFirst().orElseThrow().value();
    }

    @Test
    void nothingIsSaidWithoutATimeline() {
        assertEquals(Result.of(History.NONE), run(box("", "")));
    }

    @Test
    void aFailureIsFollowedToTheFirstLimit() {
        Result<History> result = run(box(timeline("'duration': '2 h', 'start': 'settled', 'steps': [{'at': '10 min', 'failed': [{'bank': 'fans',"
                + " 'position': 1}]}, {'at': '1 h', 'heatFactor': '120 %'}]"), ""));
        History history = result.data().orElseThrow();
        double reached = history.part("processor").orElseThrow().reached().orElseThrow();
        assertTrue(reached > 600 && reached < 3600, "reached at " + reached);
        assertEquals(reached, figure(result, TimeFigures.LIMIT, "processor"));
        assertEquals(reached, figure(result, TimeFigures.LIMIT, ""));
        assertEquals(7200, figure(result, TimeFigures.LIMIT, "transformer"), "never: the duration");
        assertEquals(history.part("processor").orElseThrow().peak(), figure(result, TimeFigures.PEAK, "processor"));
        assertEquals(history.part("transformer").orElseThrow().end(), figure(result, TimeFigures.END, "transformer"));
        says(result, "caution: processor is the first above its limit of 85.0 °C: [0-9.]+ (s|min) after fans 1 fails at 10.0 min");
        says(result, "note: the hot side of junction to case of processor follows its surroundings within 3.60 s .*");
        assertEquals(List.of("fans 1 fails", "heat goes to 120 %"),
                history.events().stream().skip(1).map(event -> event.what().in(UnitSystem.METRIC)).toList());
    }

    @Test
    void whereNoLimitIsReachedItSaysSo() {
        Result<History> result = run(box(timeline("'duration': '20 min'"), ""));
        assertEquals(1200, figure(result, TimeFigures.LIMIT, ""));
        says(result, "note: no part comes above its limit within 20.0 min; nearest to it comes processor, [0-9.]+ K below it after 20.0 min.*");
        says(result, "note: at the end transformer still rises by [0-9.]+ K per minute and is [0-9.]+ K below where it would come to rest");
    }

    @Test
    void whatWouldComeAboveItsLimitLaterIsACaution() {
        Result<History> result = run(box(timeline("'duration': '3 min'"), "").withConditions(List.of(box(timeline("'duration': '3 min'"), "")
                .conditions().getFirst().withSpeed(Quantity.of(0.4)))));
        says(result, "caution: at the end .* still rises by .* going on so, processor would come above its limit");
    }

    @Test
    void theTableShowsTheWorstFirstAndTheBanks() {
        Result<History> result = run(box(timeline("'duration': '1 h', 'steps': [{'at': '25 min', 'speed': '60 %'}]"), ""));
        Table table = result.overviews().getFirst().table();
        assertEquals(List.of("time", "processor", "transformer", "fans flow", "fans setting"), table.columns().stream().map(Table.Column::label).toList());
        assertEquals(12, table.rows().size(), "eleven even times and that of the step");
        for (List<Table.Cell> row : table.rows()) {
            double time = ((Amount) row.get(0)).si();
            assertEquals(time < 1500 ? 1 : 0.6, ((Amount) row.get(4)).si(), 1e-12, "setting at " + time);
        }
        History history = result.data().orElseThrow();
        assertEquals(history.part("processor").orElseThrow().end(), ((Amount) table.rows().getLast().get(1)).si());
        assertTrue(history.times().size() <= 500, history.times().size() + " times");
    }

    @Test
    void moreTimesThanChartsNeedAreThinned() {
        Result<History> result = run(box(timeline("'duration': '1 h'"), law("box", "36 37 °C", "2 K")));
        History history = result.data().orElseThrow();
        assertTrue(history.times().size() <= 500 && history.times().size() > 300, history.times().size() + " times");
        double longest = 0;
        for (int i = 1; i < history.times().size(); i++) {
            longest = Math.max(longest, history.times().get(i) - history.times().get(i - 1));
        }
        assertTrue(longest < 3600 / 40.0, "a gap of " + longest + " s");
    }

    @Test
    void aLawThatHuntsIsDescribed() {
        Result<History> result = run(box(timeline("'duration': '1 h'"), law("processor", "40 90 °C", "2 K")));
        assertTrue(sentences(result).stream().noneMatch(sentence -> sentence.contains("hunts")), sentences(result).toString());
        Result<History> hunts = run(box(timeline("'duration': '1 h'"), law("box", "36 37 °C", "2 K")));
        says(hunts, "caution: control law fans hunts from [0-9.]+ min on: every [0-9.]+ s it goes from 30.0 % to 100 % speed and back, as fast as"
                + " it is followed: what its sensor reads follows the air at once");
        says(hunts, "note: of what goes to and fro not every turn is followed: .*");
    }

    @Test
    void whatHysteresisHoldsElsewhereIsToldSo() {
        Result<History> result = run(box(timeline("'duration': '10 h', 'startTemperature': '150 °C'"), law("processor", "40 120 °C", "20 K")));
        says(result, "note: at the end all is at rest, but processor is [0-9.]+ K below where it comes to rest when warming up from cold: the hysteresis .*");
    }

    /** Behind a flap that hardly leaks a failed fan leaves a sink next to no air: it would come to rest far above all that is real. */
    private static Design flapped(String timeline) {
        return Designs.design("{'format': 1, 'airMovers': [{'id': 'F', 'width': '80 mm', 'height': '80 mm', 'curves': [{'speed': '3000 rpm',",
                "'flow': '0 0.01 0.02 0.03 0.04 0.05 m³/s', 'pressure': '80 78 70 54 30 0 Pa'}]}],",
                "'airPath': {'bays': [{'id': 'box', 'sections': {'enclosure': {'walls': [{'area': '3 m²'}]}}}, {'id': 'top', 'height': '300 mm'}],",
                "'passages': [",
                "{'id': 'in', 'kind': 'opening', 'from': 'outside', 'to': 'box', 'area': '60 cm²'},",
                "{'id': 'fans', 'kind': 'bank', 'from': 'box', 'to': 'top', 'mover': 'F'},",
                "{'id': 'flap', 'kind': 'flap', 'from': 'top', 'to': 'outside', 'area': '60 cm²', 'lossCoefficient': 3, ",
                "'liftingPressure': '20 Pa', 'leakShare': '1e-5'}]},",
                "'conditions': [{'id': 'hot', 'outsideTemperature': '30 °C'" + timeline + "}],",
                "'heatSources': [{'id': 'processor', 'power': '60 W', 'into': ['box'], 'limit': '85 °C', 'chain': [",
                "{'kind': 'measured sink', 'velocity': '0.5 1 2 4 m/s', 'resistance': '0.5 0.35 0.25 0.18 K/W', 'flowArea': '0.03 m²', ",
                "'heatCapacity': '5000 J/K'}]}]}");
    }

    @Test
    void whatStillRisesFarFromAnAbsurdRestIsNotSaidToRest() {
        Result<History> result = run(flapped(timeline("'duration': '30 min', 'start': 'settled', 'steps': [{'at': '1 min',"
                + " 'failed': [{'bank': 'fans', 'position': 1}]}]")));
        History.Course part = result.data().orElseThrow().part("processor").orElseThrow();
        assertTrue(part.steady().orElseThrow() > 1e4, "far above all that is real: " + part);
        assertEquals(60.0 / 5000, part.rate(), 1e-6, "all its heat stays in it");
        assertTrue(sentences(result).stream().noneMatch(sentence -> sentence.contains("at rest")), sentences(result).toString());
        says(result, "caution: at the end neither air nor walls carry off the heat of processor: it rises by 0.720 K per minute and comes to no rest"
                + " below 1000 °C");
    }

    private static String law(String sensor, String temperature, String hysteresis) {
        return "'controlLaws': [{'id': 'fans', 'sensor': '" + sensor + "', 'temperature': '" + temperature + "', 'speed': '30 100 %', 'hysteresis': '"
                + hysteresis + "'}],";
    }

    @Test
    void aColdStartInWarmMoistAirGetsWet() {
        Result<History> result = run(box(timeline("'duration': '1 h', 'startTemperature': '-10 °C'"), ""));
        says(result, "caution: the surface of .*, at its coldest -10.0 °C, is no warmer than the dew point of the air, 18.4 °C, from 0 s to .*: water settles on"
                + " it; on the surface of .* too");
        History.Wet wet = result.data().orElseThrow().wet().stream().filter(each -> each.place().equals("transformer")).findFirst().orElseThrow();
        History history = result.data().orElseThrow();
        assertEquals(wet.dewPoint(), TimeTable.at(history.times(), history.junctions().get("transformer"), wet.until()), 0.01,
                "the transformer is a bare resistance: its surface is its hot end");
        assertTrue(run(box(timeline("'duration': '1 h'"), "")).data().orElseThrow().wet().isEmpty());
    }

    @Test
    void heatThatNothingCarriesOffIsTold() {
        Result<History> result = run(box(timeline("'duration': '10 min', 'start': 'settled', 'steps': [{'at': '1 min', 'failed': [{'bank': 'fans',"
                + " 'position': 1}, {'bank': 'fans', 'position': 2}]}]"), ""));
        says(result, "caution: processor is the first above its limit of 85.0 °C: [0-9.]+ s after fans 1 and fans 2 fail at 60.0 s.*");
        says(result, "caution: at the end neither air nor walls carry off the heat of processor: it rises by 17.3 K per minute.*");
        // 150 W into 520 J/K
        assertEquals(150.0 / 520, result.data().orElseThrow().part("processor").orElseThrow().rate(), 1e-9);
    }

    static Stream<Arguments> wrong() {
        return Stream.of(
                Arguments.of(box(timeline("'duration': '1 h', 'steps': [{'at': '1 min', 'failed': [{'bank': 'rotors', 'position': 1}]}]"), ""),
                        "the timeline lets mover 1 of rotors fail, which is no bank of the design"),
                Arguments.of(box(timeline("'duration': '1 h', 'steps': [{'at': '1 min', 'failed': [{'bank': 'fans', 'position': 3}]}]"), ""),
                        "the timeline lets mover 3 of fans fail, but that has 2 movers"),
                Arguments.of(box(timeline("'duration': '1 h', 'steps': [{'at': '2 h', 'speed': 1}]"), ""), "the timeline of condition hot cannot be used: steps[0].at: is not before the end"),
                Arguments.of(box(timeline("'duration': -1"), ""), "the timeline of condition hot cannot be used: duration: -1 is out of range"),
                Arguments.of(box(timeline("'duration': '1 h', 'start': 'settled'"), law("box", "36 37 °C", "2 K")), "never comes to rest"),
                Arguments.of(box(timeline("'duration': '1 h'"), law("in", "36 37 °C", "2 K").replace("'sensor': 'in'", "'sensor': 'attic'")),
                        "control law fans reads attic, whose temperature cannot be told"),
                Arguments.of(box(timeline("'duration': '1 h', 'steps': [{'at': '90 s', 'failed': [{'bank': 'fans', 'position': 1}, {'bank': 'fans', 'position': 2}]}]"), "")
                        .withHeatSources(List.of(new HeatSource("bare", Quantity.of(10), List.of(new HeatSource.Share("box", Optional.empty())),
                                Optional.empty(), Value.Tree.EMPTY))), "from 90.0 s on bay box gets heat that neither air nor walls carry off"),
                Arguments.of(box(timeline("'duration': '1 h'"), "").withHeatSources(List.of(new HeatSource("loose", Quantity.of(10), List.of(),
                        Optional.empty(), Value.Tree.EMPTY))), "heat source loose goes nowhere"));
    }

    @ParameterizedTest(name = "[{1}]")
    @MethodSource("wrong")
    void whatCannotBeFollowedIsNotComputed(Design design, String expected) {
        Result<History> result = run(design);
        assertTrue(result.data().isEmpty());
        assertTrue(sentences(result).getFirst().startsWith("not ") && sentences(result).getFirst().contains(expected), sentences(result).toString());
    }

    @Test
    void figuresSayWhereTheyComeFrom() {
        List<Trace.Step> steps = new ArrayList<>();
        Design design = box(timeline("'duration': '1 h', 'steps': [{'at': '10 min', 'heatFactor': 2}]"), "");
        Result<History> result = ANALYSIS.run(new Handed(ANALYSIS.reads(design)), Run.alone(Trace.into(steps)));
        for (Figure figure : result.figures()) {
            Trace.Step step = steps.stream().filter(each -> each.figure().equals(figure.kind().id()) && each.place().equals(figure.place()))
                    .findFirst().orElseThrow(() -> new AssertionError("no step for " + figure));
            assertEquals(figure.value(), step.value());
        }
        assertTrue(steps.stream().anyMatch(step -> step.inputs().stream().anyMatch(term -> term.name().equals("heat from 600.0 s on")
                && term.value() == 300)));
    }

    @Test
    void thePartsOfADesignThatItReadsAreEnough() {
        Design design = box(timeline("'duration': '1 h'"), law("box", "31 40 °C", "1 K"));
        assertEquals(ANALYSIS.run(new Handed(design), Run.alone(Trace.SILENT)), run(design));
    }
}
