package tramontane.thermal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tramontane.model.ControlLaw;
import tramontane.model.Quantities;
import tramontane.model.Quantity;
import tramontane.model.Value;

class LawCurveTest {

    private static LawCurve curve(double hysteresis, double[] temperature, double... speed) {
        return LawCurve.of(new ControlLaw("law", "box", List.of(), Quantities.of(temperature), Quantities.of(speed),
                Optional.of(Quantity.of(hysteresis)), Optional.empty(), Optional.empty(), Value.Tree.EMPTY));
    }

    /** A slope from 300 to 310 K, held to 320 K, a switch within 1 K, held, a switch at 330 K, a slope to full at 350 K. */
    private static LawCurve stepped(double hysteresis) {
        return curve(hysteresis, new double[] {300, 310, 320, 321, 330, 330.5, 350}, 0.2, 0.3, 0.3, 0.5, 0.5, 0.7, 1);
    }

    @ParameterizedTest
    @CsvSource({"0, 1", "0.4, 1", "0.5, 2", "0.9, 2", "1, 3", "5, 3", "10, 4", "19, 4", "20, 5"})
    void aRiseWithinTheHysteresisIsASwitch(double hysteresis, int stages) {
        assertEquals(stages, stepped(hysteresis).stages());
    }

    @ParameterizedTest
    @CsvSource({"0, 290, 0.2", "0, 305, 0.25", "0, 315, 0.3", "0, 320.5, 0.3", "0, 400, 0.3", //
        "1, 290, 0.5", "1, 320, 0.5", "1, 325, 0.5", "1, 330.2, 0.5", "1, 400, 0.5", //
        "2, 290, 0.7", "2, 330.5, 0.7", "2, 340.25, 0.85", "2, 350, 1", "2, 400, 1"})
    void aStageKeepsToItsPartOfTheCurve(int stage, double sensor, double setting) {
        assertEquals(setting, stepped(1).setting(stage, sensor), 1e-12);
    }

    @ParameterizedTest
    @CsvSource({"0, 320.9, 0", "0, 321, 0", "0, 321.1, 1", "0, 400, 1", //
        "1, 330.5, 1", "1, 330.6, 2", "1, 319.1, 1", "1, 319, 1", "1, 318.9, 0", "1, 200, 0", //
        "2, 329, 2", "2, 328.9, 1", "2, 400, 2"})
    void aSwitchGoesOnAboveItsUpperEndAndOffBelowItsLowerEndLessTheHysteresis(int stage, double sensor, int next) {
        assertEquals(next, stepped(1).next(stage, sensor));
    }

    @ParameterizedTest
    @CsvSource({"0, 0.2, 0.3", "1, 0.5, 0.5", "2, 0.7, 1"})
    void aStageHasItsOwnRange(int stage, double lowest, double highest) {
        assertEquals(lowest, stepped(1).lowest(stage), 0);
        assertEquals(highest, stepped(1).highest(stage), 0);
    }

    @ParameterizedTest
    @CsvSource({"0, 290, 0", "0, 305, 0.01", "0, 310, 0.01", "0, 315, 0", "0, 320.5, 0", //
        "1, 320.5, 0", "1, 325, 0", "2, 330.4, 0", "2, 330.5, 0.015384615384615385", "2, 340, 0.015384615384615385", "2, 351, 0"})
    void theSlopeIsThatOfTheStage(int stage, double sensor, double slope) {
        assertEquals(slope, stepped(1).slope(stage, sensor), 1e-12);
    }

    @Test
    void aSwitchHasTwoEnds() {
        assertEquals(List.of(new LawCurve.Switch(321, 318, 0.3, 0.5), new LawCurve.Switch(330.5, 328, 0.5, 0.7)), stepped(2).switches());
        assertEquals(2, stepped(2).hysteresis(), 0);
    }

    @Property
    void theSlopeIsThatOfTheSetting(@ForAll @DoubleRange(min = 290, max = 360) double sensor,
            @ForAll @DoubleRange(min = 0, max = 3) double hysteresis) {
        LawCurve curve = stepped(hysteresis);
        double step = 1e-6;
        for (int stage = 0; stage < curve.stages(); stage++) {
            double right = (curve.setting(stage, sensor + step) - curve.setting(stage, sensor)) / step;
            double left = (curve.setting(stage, sensor) - curve.setting(stage, sensor - step)) / step;
            double slope = curve.slope(stage, sensor);
            assertTrue(Math.abs(slope - right) < 1e-6 || Math.abs(slope - left) < 1e-6, slope + " is neither " + left + " nor " + right);
        }
    }

    @Test
    void aLawWithoutPointsHasNoCurve() {
        assertThrows(IllegalArgumentException.class, () -> curve(0, new double[0]));
        assertThrows(IllegalArgumentException.class, () -> curve(0, new double[] {300, 310}, 0.5));
    }

    @Test
    void onePointIsASetting() {
        LawCurve one = curve(0, new double[] {300}, 0.6);
        assertEquals(1, one.stages());
        assertEquals(0.6, one.setting(0, 250), 0);
        assertEquals(0.6, one.setting(0, 350), 0);
        assertEquals(0.6, one.lowest(0), 0);
    }

    @Test
    void aFallIsNoSwitch() {
        assertEquals(1, curve(5, new double[] {300, 301, 310}, 1, 0.5, 0.2).stages());
    }

    @Test
    void withoutSwitchesTheStageIsTheWayUp() {
        LawCurve plain = curve(2, new double[] {300, 320}, 0.2, 1);
        assertEquals(0.6, plain.setting(0, 310), 1e-12);
        assertEquals(0.6, plain.up(310), 1e-12);
        assertEquals(0.6, plain.down(308), 1e-12, "the way down lies below by the hysteresis");
        assertEquals(0, plain.next(0, 1000));
    }

    @Property
    void noStageLeavesItsRange(@ForAll @DoubleRange(min = 250, max = 400) double sensor,
            @ForAll @DoubleRange(min = 0, max = 30) double hysteresis) {
        LawCurve curve = stepped(hysteresis);
        for (int stage = 0; stage < curve.stages(); stage++) {
            double setting = curve.setting(stage, sensor);
            assertTrue(setting >= curve.lowest(stage) && setting <= curve.highest(stage));
            int next = curve.next(stage, sensor);
            assertTrue(next >= 0 && next < curve.stages() && Math.abs(next - stage) <= 1);
            assertTrue(next <= stage || curve.next(next, sensor) >= next, "what goes on does not go off at once");
        }
    }
}
