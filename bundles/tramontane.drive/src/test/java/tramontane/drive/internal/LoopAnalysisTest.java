package tramontane.drive.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tramontane.analysis.Cases;
import tramontane.drive.LoopState;
import tramontane.model.Design;
import tramontane.physics.control.RouthHurwitz;
import tramontane.thermal.LinearPlant;
import tramontane.thermal.ThermalModel;
import tramontane.thermal.ThermalState;

/** Control loops of one warm body in the air of a box: a third-order loop of body, sensor and movers. */
class LoopAnalysisTest {

    static final String PART = "'supply': {'current': 'DC', 'voltage': '24 V', 'startTime': '6 s'}, 'control': {'kind': 'duty'}";
    static final String HEAT = ", 'heatSources': [{'id': 'chip', 'power': '%s', 'into': ['box'], 'limit': '90 °C', 'chain': ["
            + "{'kind': 'junction to case', 'resistance': '0.2 K/W', 'heatCapacity': '60 J/K'}, {'kind': 'resistance', 'resistance': '0.1 K/W'}]}]";

    /** A box with a law on the chip, from 20 % at a temperature to full speed some kelvin above. */
    static Design box(double from, double width, String law, String more) {
        return Boxes.Box.of(PART, "").withConditions("{'id': 'warm', 'outsideTemperature': '25 °C'}").with(HEAT.formatted("120 W")
                + ", 'controlLaws': [{'id': 'law', 'sensor': 'chip', 'temperature': '" + from + " " + (from + width) + " °C', 'speed': '20 100 %'"
                + law + (more.isEmpty() ? "" : ", 'sections': {'drive': {" + more + "}}") + "}]").design();
    }

    private static LoopState.Law law(Design design) {
        Boxes.Told<LoopState> told = Boxes.loops(design);
        return told.data().law("law").orElseThrow(() -> new AssertionError(told.sentences().toString()));
    }

    private static String shown(LoopState.Law law) {
        return "gain margin " + law.gainMargin() + ", swing " + law.swing() + " K, " + law.settingSwing() + ", at " + law.sensor() + " K, "
                + law.setting();
    }

    /** τ of the body at rest, from the thermal model. */
    private static double bodyTime(Design design) {
        ThermalModel model = Boxes.THERMAL.model(design, Cases.of(design, Set.of()).list().getFirst().concrete());
        ThermalState rest = model.settle(() -> false).state().orElseThrow();
        LinearPlant plant = model.plant(design.controlLaws().getFirst(), rest.drive(), Optional.of(rest), () -> false).plant().orElseThrow();
        assertEquals(1, plant.size());
        return -1 / plant.a()[0][0];
    }

    /** Routh and Hurwitz for three lags in a row: k G hunts from (a + b + c)(1/a + 1/b + 1/c) - 1 on. */
    @ParameterizedTest
    @CsvSource({"10 s, 3 s", "2 s, 5 s", "40 s, 1 s"})
    void theGainMarginOfThreeLags(String sensor, String mover) {
        Design design = box(50, 30, "", "'sensorLag': '" + sensor + "', 'moverLag': '" + mover + "'");
        LoopState.Law law = law(design);
        double a = bodyTime(design);
        double b = Double.parseDouble(sensor.replace(" s", ""));
        double c = Double.parseDouble(mover.replace(" s", ""));
        double most = (a + b + c) * (1 / a + 1 / b + 1 / c) - 1;
        assertTrue(law.slope() > 0 && law.plant() < 0, shown(law));
        assertEquals(0.8 / 30, law.slope(), 1e-12);
        double expected = most / (law.slope() * -law.plant());
        assertEquals(expected, law.gainMargin(), 1e-6 * expected);
        for (double factor : new double[] {0.999, 1.001}) {
            double gain = factor * law.gainMargin() * law.slope() * -law.plant();
            assertEquals(factor < 1, RouthHurwitz.stable(a * b * c, a * b + b * c + c * a, a + b + c, 1 + gain));
        }
        assertEquals(2 * Math.PI / Math.sqrt((a + b + c) / (a * b * c)), law.crossing().orElseThrow(), 1e-4 * law.crossing().orElseThrow());
    }

    /** Where the run from cold ends is where the thermal model rests. */
    @Test
    void aFlatLawComesToItsRest() {
        Design design = box(40, 60, "", "'sensorLag': '5 s'");
        LoopState.Law law = law(design);
        assertTrue(law.steady());
        assertEquals(Optional.empty(), law.period());
        assertEquals(298.15, law.response().getFirst().sensor(), 1e-6);
        assertEquals(law.sensor(), law.response().getLast().sensor(), 0.02);
        assertEquals(law.setting(), law.response().getLast().setting(), 1e-3);
        assertEquals(List.of(), Boxes.loops(design).sentences());
        assertTrue(law.response().size() <= 401);
    }

    /** A slope far above the critical one hunts, in the linear loop and in time, and what is advised helps. */
    @Test
    void aSteepLawHuntsAndAFlatterOneDoesNot() {
        String lags = "'sensorLag': '20 s', 'moverLag': '4 s'";
        Boxes.Told<LoopState> steep = Boxes.loops(box(62.5, 0.06, "", lags));
        LoopState.Law law = steep.data().law("law").orElseThrow();
        assertTrue(law.gainMargin() < 1, shown(law));
        assertFalse(law.steady());
        assertTrue(law.settingSwing() > 0.05 && law.settingSwing() <= 0.4, shown(law));
        assertTrue(steep.sentences().getFirst().startsWith("not met: control law law hunts: its sensor swings by ±"), steep.sentences().toString());
        double factor = 2 / law.gainMargin();
        assertTrue(steep.sentences().getFirst().contains("let it rise over "), steep.sentences().toString());
        Design flat = box(62.5, 0.06 * factor * 1.05, "", lags);
        assertTrue(law(flat).steady());
        assertTrue(law(flat).gainMargin() > 1.8, () -> "gain margin " + law(flat).gainMargin());
    }

    @Test
    void littleGainMarginIsCautionedAbout() {
        String lags = "'sensorLag': '20 s', 'moverLag': '4 s'";
        double margin = law(box(55, 20, "", lags)).gainMargin();
        Boxes.Told<LoopState> near = Boxes.loops(box(55, 20, "", lags + ", 'gainMargin': " + margin * 1.2));
        assertTrue(near.sentences().getFirst().startsWith("caution: control law law is close to hunting: its gain margin is "),
                near.sentences().toString());
        assertEquals(List.of(), Boxes.loops(box(55, 20, "", lags + ", 'gainMargin': " + Math.max(1, margin * 0.8))).sentences());
    }

    /** Readings far apart act like dead time. */
    @Test
    void seldomReadingsTakeMargin() {
        double often = law(box(50, 30, "", "'sensorLag': '5 s', 'interval': '1 s'")).gainMargin();
        double seldom = law(box(50, 30, "", "'sensorLag': '5 s', 'interval': '30 s'")).gainMargin();
        assertTrue(seldom < 0.7 * often, () -> seldom + " against " + often);
    }

    /** A rise narrower than the hysteresis is a switch. */
    @Test
    void aSwitchGoesToAndFro() {
        Boxes.Told<LoopState> told = Boxes.loops(box(66, 0.4, ", 'hysteresis': '3 K'", "'sensorLag': '2 s'"));
        LoopState.Law law = told.data().law("law").orElseThrow(() -> new AssertionError(told.sentences().toString()));
        assertFalse(law.steady(), shown(law));
        assertTrue(law.swing() > 1 && law.swing() < 4, shown(law) + told.sentences());
        assertTrue(told.sentences().getFirst().startsWith("caution: control law law goes to and fro"), told.sentences().toString());
        assertTrue(told.has("drive.loop.period", "law"));
    }

    /** Limits of rate slow the run from cold but not its end. */
    @Test
    void aLimitOfRateIsKept() {
        LoopState.Law law = law(box(40, 60, ", 'riseLimit': '0.001 1/s', 'fallLimit': '0.001 1/s'",
                "'sensorLag': '5 s', 'interval': '1 s', 'moverLag': '0.1 s'"));
        for (int i = 1; i < law.response().size(); i++) {
            LoopState.Moment before = law.response().get(i - 1);
            LoopState.Moment now = law.response().get(i);
            assertTrue(Math.abs(now.setting() - before.setting()) <= 0.001 * (now.time() - before.time() + 2) + 1e-6);
        }
        assertEquals(law.setting(), law.response().getLast().setting(), 2e-3);
    }

    @Test
    void withoutALawThereIsNothingToSay() {
        Boxes.Told<LoopState> told = Boxes.loops(Boxes.Box.of(PART, "").with(HEAT.formatted("120 W")).design());
        assertEquals(List.of(), told.data().laws());
        assertEquals(List.of(), told.sentences());
        Boxes.Told<LoopState> stated = Boxes.loops(box(50, 30, "", "").withConditions(List.of(tramontane.model.Condition.named("c")
                .withSpeed(tramontane.model.Quantity.of(0.5)))));
        assertEquals(List.of(), stated.data().laws());
        assertEquals(1000, stated.figure("drive.loop.gainMargin", "law"), 0);
    }

    @Test
    void everyFigureSaysWhereItComesFrom() {
        Boxes.Told<LoopState> told = Boxes.loops(box(66, 0.4, ", 'hysteresis': '3 K'", "'sensorLag': '2 s'"));
        assertEquals(told.result().figures().stream().map(figure -> figure.kind().id()).sorted().toList(),
                told.steps().stream().map(step -> step.figure()).sorted().toList());
    }
}
