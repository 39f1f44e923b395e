package tramontane.thermal.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tramontane.model.Design;
import tramontane.thermal.Designs;
import tramontane.thermal.Loop;
import tramontane.thermal.ThermalState;

class ControlsTest {

    private static String law(String id, String sensor, String banks, String temperature, String speed, String more) {
        return "{'id': '" + id + "', 'sensor': '" + sensor + "', 'banks': [" + banks + "], 'temperature': '" + temperature
                + " K', 'speed': '" + speed + "'" + more + "}";
    }

    /** Heat in the box and in the cards behind it, drawn by one fan. */
    private static Design cabinet(double watts, String laws, String more) {
        return EdgesTest.design("'box', 'rear'", EdgesTest.square("in", "outside", "box", 20000) + ","
                + EdgesTest.square("cards", "box", "rear", 5000) + "," + EdgesTest.bank("fan", "rear", "outside", ""),
                "{'id': 'cpu', 'power': " + watts + ", 'into': ['box'], 'chain': [{'kind': 'resistance', 'resistance': 0.3}]},"
                        + "{'id': 'card', 'power': 60, 'into': ['cards']}", ", 'controlLaws': [" + laws + "]" + more);
    }

    /** 0.3 at 290 K to 1 at 390 K, whatever it reads. */
    @ParameterizedTest
    @CsvSource({"outside", "in", "box", "cards", "rear", "fan", "cpu", "card"})
    void aLawReadsWhatItNames(String sensor) {
        ThermalState state = Designs.settled(cabinet(150, law("law", sensor, "", "290 390", "0.3 1", ""), ""));
        double box = state.temperatures().get(0);
        double rear = state.temperatures().get(1);
        double read = switch (sensor) {
            case "outside", "in" -> 293.15;
            case "box" -> box;
            case "cards", "card" -> (box + rear) / 2; // no other heat there: the mean along the way
            case "cpu" -> box + 45;
            default -> rear;
        };
        assertEquals(0.3 + 0.7 * (read - 290) / 100, state.feeds().get("fan").setting(), 2e-9, sensor);
    }

    @Test
    void ofSeveralLawsTheOneCountsThatAsksForMost() {
        String both = law("low", "box", "'fan'", "290 390", "0.3 1", "") + "," + law("high", "cpu", "'fan'", "290 390", "0.3 1", "");
        ThermalState state = Designs.settled(cabinet(150, both, ""));
        assertEquals(0.3 + 0.7 * (state.temperatures().getFirst() + 45 - 290) / 100, state.feeds().get("fan").setting(), 2e-9);
        ThermalState alone = Designs.settled(cabinet(150, law("high", "cpu", "'fan'", "290 390", "0.3 1", ""), ""));
        assertEquals(alone.feeds().get("fan").setting(), state.feeds().get("fan").setting(), 2e-9);
        assertEquals("control laws low, high", state.feeds().get("fan").from());
    }

    @Test
    void aConditionThatStatesASpeedIsNotControlled() {
        Design design = cabinet(150, law("law", "box", "", "290 390", "0.3 1", ""), ", 'conditions': [{'id': 'test', 'speed': 0.7}]");
        assertEquals(0.7, Designs.settled(design).feeds().get("fan").setting(), 0);
        assertTrue(Designs.model(design).controls().laws().isEmpty());
    }

    @Test
    void aBankThatNoLawDrivesRunsAsTheConditionSays() {
        Design design = EdgesTest.design("'box'", EdgesTest.bank("a", "outside", "box", "") + "," + EdgesTest.square("mid", "box", "outside", 9000)
                + "," + EdgesTest.bank("b", "box", "outside", ""), "{'id': 'cpu', 'power': 150, 'into': ['box']}",
                ", 'controlLaws': [" + law("law", "box", "'a'", "290 310", "0.3 1", "") + "]");
        ThermalState state = Designs.settled(design);
        assertEquals(1, state.feeds().get("b").setting(), 0);
        assertEquals(0.3 + 0.7 * (state.temperatures().getFirst() - 290) / 20, state.feeds().get("a").setting(), 2e-9);
    }

    /** On at 301, 303 and 305 K, off 3 K below where the rise begins; the setting that it comes to from cold. */
    @ParameterizedTest
    @CsvSource({"10, 0.2", "60, 0.2", "110, 0.4", "200, 0.7", "500, 1"})
    void switchesGoOnOneAfterAnother(double watts, double setting) {
        String steps = law("steps", "box", "", "300 301 302 303 304 305", "0.2 0.4 0.4 0.7 0.7 1", ", 'hysteresis': '9 K'");
        ThermalState state = Designs.settled(cabinet(watts, steps, ""));
        double box = state.temperatures().getFirst();
        assertEquals(setting, state.feeds().get("fan").setting(), 0, "at " + box);
        int on = List.of(0.2, 0.4, 0.7, 1.0).indexOf(setting);
        assertTrue(on == 3 || box <= 301 + 2 * on, "it does not ask for the next one: " + box);
        assertTrue(on == 0 || box >= 298 + 2 * on - 9, "nor does the last one go off: " + box);
    }

    @Test
    void aSwitchThatGoesOffAgainHunts() {
        Design design = cabinet(200, law("onoff", "box", "", "301 302", "0.2 1", ", 'hysteresis': '1.5 K'"), "");
        Loop loop = Designs.model(design).settle(() -> false);
        assertEquals(Optional.empty(), loop.state());
        assertEquals(Optional.of("onoff"), loop.law());
        assertEquals(2, loop.cycle().size());
        ThermalState slow = loop.cycle().get(0);
        ThermalState fast = loop.cycle().get(1);
        assertEquals(0.2, slow.drive().settings().get("fan"), 0);
        assertEquals(1, fast.drive().settings().get("fan"), 0);
        assertTrue(slow.temperatures().getFirst() > 302);
        assertTrue(fast.temperatures().getFirst() < 301 - 1.5);
        for (ThermalState each : loop.cycle()) {
            assertEquals(0, each.balance().error(), 1e-9 * 260, "each of them is a state of the air");
        }
    }

    @Test
    void aHysteresisWideEnoughKeepsItOn() {
        ThermalState state = Designs.settled(cabinet(200, law("onoff", "box", "", "301 302", "0.2 1", ", 'hysteresis': '20 K'"), ""));
        assertEquals(1, state.feeds().get("fan").setting(), 0);
        assertTrue(state.temperatures().getFirst() < 301, "below where it went on");
    }

    @Test
    void aSteepRiseWithoutHysteresisSettlesOnTheRise() {
        ThermalState state = Designs.settled(cabinet(200, law("steep", "box", "", "301 301.01", "0.2 1", ""), ""));
        double setting = state.feeds().get("fan").setting();
        double box = state.temperatures().getFirst();
        assertTrue(box > 301 && box < 301.01, "at " + box);
        assertEquals(0.2 + 80 * (box - 301), setting, 1e-6);
    }

    @Test
    void aHuntingLawIsNamedAmongOthers() {
        String both = law("calm", "cpu", "", "290 500", "0.1 0.2", "") + "," + law("onoff", "box", "", "301 302", "0.2 1", ", 'hysteresis': '1.5 K'");
        Loop loop = Designs.model(cabinet(200, both, "")).settle(() -> false);
        assertEquals(Optional.of("onoff"), loop.law());
        assertEquals(2, loop.cycle().size());
    }

    @Test
    void aLawThatFallsWithTemperatureSettlesToo() {
        ThermalState state = Designs.settled(cabinet(100, law("odd", "box", "", "290 310", "1 0.5", ""), ""));
        assertEquals(1 - 0.5 * (state.temperatures().getFirst() - 290) / 20, state.feeds().get("fan").setting(), 2e-9);
    }

    @Test
    void aLawAtRestLetsTheAirRiseByItself() {
        Design design = EdgesTest.design("{'id': 'low', 'height': 0}, {'id': 'high', 'height': 2}", EdgesTest.square("in", "outside", "low", 9000)
                + "," + EdgesTest.square("up", "low", "high", 9000) + "," + EdgesTest.bank("fan", "high", "outside", ""),
                "{'id': 'cpu', 'power': 40, 'into': ['low']}", ", 'controlLaws': [" + law("law", "high", "", "310 330", "0 1", "") + "]");
        ThermalState state = Designs.settled(design);
        double high = state.temperatures().get(1);
        assertEquals(Math.max(0, (high - 310) / 20), state.feeds().get("fan").setting(), 2e-9);
        assertTrue(state.point().banks().getFirst().massFlow() > 0);
    }

    @ParameterizedTest
    @CsvSource(delimiter = ';', value = {
        "nook; control law law reads nook, whose temperature cannot be told; let it read a bay or passage with air, or a heat source with a place",
        "slit; control law law reads slit, whose temperature cannot be told; let it read a bay or passage with air, or a heat source with a place"})
    void aLawWhoseSensorHasNoTemperatureIsAnObstacle(String sensor, String message, String remedy) {
        Design design = EdgesTest.design("'box', 'nook'", EdgesTest.square("in", "outside", "box", 20000) + "," + EdgesTest.square("slit", "box", "nook", 1e6)
                + "," + EdgesTest.bank("fan", "box", "outside", ""), "{'id': 'cpu', 'power': 40, 'into': ['nook']}",
                ", 'controlLaws': [" + law("law", sensor, "", "290 310", "0.5 1", "") + "]");
        Loop loop = Designs.model(design).settle(() -> false);
        assertEquals(message, loop.obstacles().getFirst().message().toString());
        assertEquals(remedy, loop.obstacles().getFirst().remedy().toString());
    }
}
