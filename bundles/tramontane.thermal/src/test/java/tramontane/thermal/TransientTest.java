package tramontane.thermal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import tramontane.analysis.Sentence;
import tramontane.model.Design;

class TransientTest {

    private static final String AIR = "'airMovers': [{'id': 'F', 'width': '80 mm', 'height': '80 mm', 'curves': [{'speed': '3000 rpm',"
            + "'flow': '0 0.01 0.02 0.03 0.04 0.05 m³/s', 'pressure': '80 78 70 54 30 0 Pa'}]}],"
            + "'airPath': {'bays': ['box'], 'passages': ["
            + "{'id': 'in', 'kind': 'measured resistance', 'from': 'outside', 'to': 'box', 'quadratic': 20000},"
            + "{'id': 'fans', 'kind': 'bank', 'from': 'box', 'to': 'outside', 'mover': 'F', 'across': 2}]},";
    /** A sink whose resistance follows the flow, in the air as it comes from outside: one node whose course is an exponential. */
    private static final String SINK = "'heatSources': [{'id': 'lump', 'power': '60 W', 'into': ['in'], 'limit': '%s', 'chain': ["
            + "{'kind': 'measured sink', 'flow': '0.005 0.01 0.02 0.04 0.08 m³/s', 'resistance': '2 1.4 0.9 0.6 0.4 K/W', 'heatCapacity': '150 J/K'}]}]";

    /** A body in a passage with the air outside at it: one node, whose temperature is known in closed form. */
    private static final Design ONE = Designs.design("{'format': 1,", AIR,
            "'conditions': [{'id': 'warm', 'outsideTemperature': '25 °C'}, {'id': 'less', 'outsideTemperature': '25 °C', 'heatFactor': 0.25}],",
            "'heatSources': [{'id': 'lump', 'power': '20 W', 'into': ['in'], 'limit': '45 °C', 'chain': ["
                    + "{'kind': 'resistance', 'resistance': '2 K/W', 'heatCapacity': '150 J/K'}]}]}");

    static History follow(List<Transient.Step> steps, Transient.Start start, double duration) {
        Transient outcome = Transient.of(steps, start, duration, () -> false);
        assertEquals(List.of(), outcome.obstacles());
        return outcome.history().orElseThrow();
    }

    /** The cases of a design, one after another from given times on. */
    static List<Transient.Step> steps(Design design, double... times) {
        List<Transient.Step> steps = new ArrayList<>();
        for (int i = 0; i < times.length; i++) {
            steps.add(new Transient.Step(times[i], Designs.model(design, i), Sentence.of("step " + i)));
        }
        return steps;
    }

    private static double at(History history, String source, double time) {
        return value(history, history.junctions().get(source), time);
    }

    private static double value(History history, List<Double> series, double time) {
        for (int i = history.times().size() - 1; i >= 0; i--) {
            if (history.times().get(i) == time) {
                return series.get(i);
            }
        }
        throw new AssertionError("no time " + time + " among " + history.times());
    }

    /**
     * T = Ta + P R + (T0 - Ta - P R) exp(-t/(R C)) for 2 K/W, 150 J/K, 20 W from 25 °C; F. P. Incropera, D. P. DeWitt, Fundamentals
     * of Heat and Mass Transfer, eq. (5.25), computed to seven digits.
     */
    static Stream<Arguments> exponential() {
        return Stream.of(Arguments.of(60.0, 32.250770), Arguments.of(150.0, 40.738774), Arguments.of(300.0, 50.284822),
                Arguments.of(600.0, 59.586589), Arguments.of(900.0, 63.008517), Arguments.of(1800.0, 64.900850));
    }

    @ParameterizedTest
    @MethodSource("exponential")
    void oneNodeIsTheExponential(double time, double celsius) {
        History history = follow(steps(ONE, 0), Transient.Start.COLD, time);
        assertEquals(celsius + 273.15, at(history, "lump", time), 5.1e-7, "the table has six decimals");
        assertEquals(25 + 40 * (1 - Math.exp(-time / 300)) + 273.15, at(history, "lump", time), 1e-9);
        assertEquals(40.0 / 300 * Math.exp(-time / 300), history.parts().getFirst().rate(), 1e-9, "K/s");
        assertEquals(338.15, history.parts().getFirst().steady().orElseThrow(), 1e-9);
    }

    @Test
    void aSequenceOfHeatStepsIsThatOfTheExponential() {
        List<Transient.Step> steps = List.of(new Transient.Step(0, Designs.model(ONE, 0), Sentence.of("start")),
                new Transient.Step(300, Designs.model(ONE, 1), Sentence.of("less")), new Transient.Step(600, Designs.model(ONE, 0), Sentence.of("full")));
        History history = follow(steps, Transient.Start.COLD, 1200);
        assertEquals(50.284822 + 273.15, at(history, "lump", 300), 5.1e-7);
        assertEquals(40.622972 + 273.15, at(history, "lump", 600), 5.1e-7);
        assertEquals(61.700928 + 273.15, at(history, "lump", 1200), 5.1e-7);
        History.Course lump = history.first().orElseThrow();
        assertEquals(300 * Math.log(2), lump.reached().orElseThrow(), 1e-8, "half of the 40 K are passed at ln 2 time constants");
        assertEquals("start", history.before(lump.reached().get()).orElseThrow().what().toString());
        assertEquals(61.700928 + 273.15, lump.peak(), 5.1e-7);
        assertEquals(1200, lump.peakTime());
    }

    @Test
    void twoNodesAreThoseOfTheirTwoExponentials() {
        Design design = Designs.design("{'format': 1,", AIR, "'conditions': [{'id': 'full', 'heatFactor': 1}, {'id': 'off', 'heatFactor': 0}],",
                "'heatSources': [{'id': 'lump', 'power': '20 W', 'into': ['in'], 'chain': [",
                "{'kind': 'junction to case', 'resistance': '1 K/W', 'heatCapacity': '100 J/K'},",
                "{'kind': 'resistance', 'resistance': '2 K/W', 'heatCapacity': '300 J/K'}]}]}");
        History history = follow(steps(design, 0, 120), Transient.Start.COLD, 1000);
        History.Course lump = history.part("lump").orElseThrow();
        assertEquals(120, lump.peakTime(), 1e-9, "the junction is hottest when the heat goes off");
        // from 0: y' = M y + b with M = [[-1/100, 1/100], [1/300, -(1/300 + 1/600)]], b = [20/100, 0]
        double trace = -1.0 / 100 - 1.0 / 300 - 1.0 / 600;
        double determinant = 1.0 / 100 * (1.0 / 300 + 1.0 / 600) - 1.0 / 100 / 300;
        double root = Math.sqrt(trace * trace / 4 - determinant);
        double fast = trace / 2 - root;
        double slow = trace / 2 + root;
        // y1 = 60 + p e^(fast t) + q e^(slow t), y1(0) = 0, y1'(0) = 0.2
        double q = (0.2 + 60 * fast) / (slow - fast);
        double p = -60 - q;
        assertEquals(293.15 + 60 + p * Math.exp(fast * 120) + q * Math.exp(slow * 120), lump.peak(), 1e-6);
    }

    @Test
    void aFailureIsFoundToTheExponential() {
        String failing = "'conditions': [{'id': 'both'}, {'id': 'one', 'failed': [{'bank': 'fans', 'position': 2}]}],";
        Design design = Designs.design("{'format': 1,", AIR, failing, SINK.formatted("90 °C"), "}");
        double before = Designs.model(design, 0).settle(() -> false).state().orElseThrow().parts().getFirst().junction().getAsDouble();
        double after = Designs.model(design, 1).settle(() -> false).state().orElseThrow().parts().getFirst().junction().getAsDouble();
        double time = (after - 293.15) / 60 * 150; // R C
        Design limited = Designs.design("{'format': 1,", AIR, failing, SINK.formatted(before + 0.5 * (after - before) + " K"), "}");
        History history = follow(steps(limited, 0, 600), Transient.Start.SETTLED, 3600);
        assertEquals(before, at(history, "lump", 0), 1e-6);
        assertEquals(after, history.parts().getFirst().end(), 0.01);
        double reached = history.first().orElseThrow().reached().orElseThrow();
        assertEquals(600 + time * Math.log(2), reached, 0.005 * time * Math.log(2),
                "the air that the fan draws warms as the lump gives off more, so the flow is not quite constant");
        assertEquals("step 1", history.before(reached).orElseThrow().what().toString());
    }

    @Test
    void aSwitchGoesToAndFroWithThePeriodOfTwoExponentials() {
        String law = "'controlLaws': [{'id': 'fans', 'sensor': 'lump', 'temperature': '60 60.5 °C', 'speed': '30 100 %', 'hysteresis': '4 K'}],";
        Design fixed = Designs.design("{'format': 1,", AIR, "'conditions': [{'id': 'slow', 'speed': '30 %'}, {'id': 'fast', 'speed': '100 %'}],",
                SINK.formatted("90 °C"), "}");
        double hot = Designs.model(fixed, 0).settle(() -> false).state().orElseThrow().parts().getFirst().junction().getAsDouble();
        double cold = Designs.model(fixed, 1).settle(() -> false).state().orElseThrow().parts().getFirst().junction().getAsDouble();
        double on = 273.15 + 60.5;
        double off = 273.15 + 56;
        assertTrue(hot > on && cold < off, hot + " and " + cold);
        double period = (hot - 293.15) / 60 * 150 * Math.log((hot - off) / (hot - on)) + (cold - 293.15) / 60 * 150 * Math.log((on - cold) / (off - cold));
        Design design = Designs.design("{'format': 1,", law, AIR, SINK.formatted("90 °C"), "}");
        History history = follow(steps(design, 0), Transient.Start.COLD, 7200);
        History.Cycle cycle = history.cycles().getFirst();
        assertEquals(period, cycle.period(), 0.01 * period, "flow is not quite constant as the box warms");
        assertEquals(0.3, cycle.low(), 1e-6);
        assertEquals(1, cycle.high(), 1e-6);
        assertEquals("fans", cycle.law());
        assertTrue(history.remarks().contains(History.Remark.NO_REST), "the steady state hunts, too: " + history.remarks());
        assertTrue(history.parts().getFirst().peak() < on + 0.01 && history.parts().getFirst().peak() > on - 0.01,
                "the top is where it is switched on: " + history.parts().getFirst().peak());
    }

    @Test
    void aSettingRisesNoFasterThanItsLimit() {
        String law = "'controlLaws': [{'id': 'fans', 'sensor': 'lump', 'temperature': '30 40 °C', 'speed': '30 100 %', 'riseLimit': 0.002}],";
        Design design = Designs.design("{'format': 1,", law, AIR, SINK.formatted("90 °C"), "}");
        History history = follow(steps(design, 0), Transient.Start.COLD, 1800);
        List<Double> settings = history.settings().get("fans");
        double fastest = 0;
        for (int i = 1; i < settings.size(); i++) {
            double passed = history.times().get(i) - history.times().get(i - 1);
            fastest = Math.max(fastest, passed > 0 ? (settings.get(i) - settings.get(i - 1)) / passed : 0);
        }
        assertEquals(0.002, fastest, 2e-5, "it rises at its limit for a while, and never faster");
        assertEquals(1, settings.getLast(), 1e-9);
    }

    @Test
    void aLawStartsFansThatStand() {
        String law = "'controlLaws': [{'id': 'fans', 'sensor': 'lump', 'temperature': '40 90 °C', 'speed': '0 100 %'}],";
        Design design = Designs.design("{'format': 1,", law, AIR, SINK.formatted("90 °C"), "}");
        History history = follow(steps(design, 0), Transient.Start.COLD, 5000);
        assertEquals(0, history.settings().get("fans").getFirst());
        double end = history.parts().getFirst().end();
        assertEquals((end - 313.15) / 50, history.settings().get("fans").getLast(), 1e-4, "where law and sink agree");
        // while air stands the lump gives off no heat, so it takes P t = C (40 - 20) to where the fans start
        double before = history.junctions().get("lump").get(history.settings().get("fans").lastIndexOf(0.0));
        double until = history.times().get(history.settings().get("fans").lastIndexOf(0.0));
        assertEquals(293.15 + 60 * until / 150, before, 1e-6);
        assertEquals(150 * 20 / 60.0, until, 5000 / 500.0, "up to the times that are kept");
    }

    @Test
    void theWayDownLiesBelowTheWayUpByTheHysteresis() {
        String law = "'controlLaws': [{'id': 'fans', 'sensor': 'lump', 'temperature': '30 90 °C', 'speed': '20 100 %', 'hysteresis': '5 K'}],";
        Design design = Designs.design("{'format': 1,", law, AIR, "'conditions': [{'id': 'full'}, {'id': 'less', 'heatFactor': 0.3}],",
                SINK.formatted("90 °C"), "}");
        History history = follow(steps(design, 0, 2000), Transient.Start.COLD, 4000);
        double warm = value(history, history.junctions().get("lump"), 2000);
        assertEquals(0.2 + 0.8 * (warm - 303.15) / 60, value(history, history.settings().get("fans"), 2000), 2e-3, "on the way up");
        double cool = history.parts().getFirst().end();
        assertEquals(0.2 + 0.8 * (cool + 5 - 303.15) / 60, history.settings().get("fans").getLast(), 2e-3, "on the way down");
    }

    @Test
    void bodiesThatHangCloselyTogetherKeepTheirHeat() {
        // each alone would follow the other within 0.1 s, too quick to be followed; together they take 2 K/W times 200 J/K
        Design design = Designs.design("{'format': 1,", AIR, "'heatSources': [{'id': 'lump', 'power': '20 W', 'into': ['in'], 'chain': [",
                "{'kind': 'junction to case', 'resistance': '0.001 K/W', 'heatCapacity': '100 J/K'},",
                "{'kind': 'resistance', 'resistance': '2 K/W', 'heatCapacity': '100 J/K'}]}]}");
        History history = follow(steps(design, 0), Transient.Start.COLD, 1200);
        assertEquals(List.of("the hot side of resistance of lump"), history.settled(), "that next to the air follows a little quicker");
        assertEquals(293.15 + 0.02 + 40 * (1 - Math.exp(-1200 / 400.0)), history.parts().getFirst().end(), 0.01);
        assertEquals(293.15 + 40.02, history.parts().getFirst().steady().orElseThrow(), 1e-9);
    }

    @Test
    void whatIsTakenAsSettledHardlyChangesTheRest() {
        // a closed box: the air couples part and chassis, and what either holds must not be lost
        Design design = Designs.design("{'format': 1, 'airPath': {'bays': [{'id': 'box', 'sections': {'enclosure': {'chassisHeatCapacity': 4000,",
                "'chassisConductance': 100, 'walls': [{'area': '1 m²'}]}}}], 'passages': [",
                "{'id': 'leak', 'kind': 'opening', 'from': 'outside', 'to': 'box', 'area': '1 mm²'}]},",
                "'heatSources': [{'id': 'lump', 'power': '30 W', 'into': ['box'], 'chain': [",
                "{'kind': 'resistance', 'resistance': '0.04 K/W', 'reference': 'mean air', 'heatCapacity': '900 J/K'}]}]}");
        History exact = follow(steps(design, 0), Transient.Start.COLD, 2000);
        ThermalModel model = Designs.model(design);
        History settled = follow(List.of(new Transient.Step(0, model, Sentence.of("start")), new Transient.Step(2000, model, Sentence.of("as before"))),
                Transient.Start.COLD, 120_000);
        assertEquals(List.of(), exact.settled());
        assertEquals(List.of("the hot side of resistance of lump"), settled.settled(), "36 s against 60 s");
        assertEquals(exact.parts().getFirst().end(), at(settled, "lump", 2000), 2 * 60 * exact.parts().getFirst().rate(),
                "early or late by no more than twice the 60 s; were its heat lost, by some 460 s");
    }

    @Test
    void whatIsStatedWronglyByAProgramIsRefused() {
        ThermalModel model = Designs.model(ONE);
        List<Transient.Step> late = List.of(new Transient.Step(1, model, Sentence.of("late")));
        List<Transient.Step> beyond = List.of(new Transient.Step(0, model, Sentence.of("a")), new Transient.Step(100, model, Sentence.of("b")));
        assertThrows(IllegalArgumentException.class, () -> Transient.of(List.of(), Transient.Start.COLD, 10, () -> false));
        assertThrows(IllegalArgumentException.class, () -> Transient.of(late, Transient.Start.COLD, 10, () -> false));
        assertThrows(IllegalArgumentException.class, () -> Transient.of(beyond, Transient.Start.COLD, 100, () -> false));
        assertThrows(IllegalArgumentException.class, () -> Transient.of(beyond.subList(0, 1), Transient.Start.COLD, Double.NaN, () -> false));
    }

    @Test
    void nobodyWaitsForWhatIsNoLongerWanted() {
        Transient outcome = Transient.of(steps(ONE, 0), Transient.Start.COLD, 1000, () -> true);
        assertEquals(Optional.empty(), outcome.history());
        assertEquals(List.of(), outcome.obstacles());
    }
}
