package tramontane.thermal.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import tramontane.model.Design;
import tramontane.thermal.Designs;
import tramontane.thermal.Loop;
import tramontane.thermal.PartState;
import tramontane.thermal.ThermalState;

/** Air that stands, comes back or goes nowhere, and designs with hardly anything in them. */
class EdgesTest {

    static final String MOVER = "'airMovers': [{'id': 'F', 'openArea': '30 cm²', 'curves': [{'speed': '3000 rpm',"
            + "'flow': '0 0.01 0.02 0.03 0.04 0.05 m³/s', 'pressure': '80 78 70 54 30 0 Pa', 'power': '6 6.5 7 7.2 7 6.4 W'}]}],";

    static String square(String id, String from, String to, double quadratic) {
        return "{'id': '" + id + "', 'kind': 'measured resistance', 'from': '" + from + "', 'to': '" + to + "', 'quadratic': " + quadratic + "}";
    }

    static String square(String id, String from, String to, double quadratic, String more) {
        return square(id, from, to, quadratic).replace("}", ", " + more + "}");
    }

    static String bank(String id, String from, String to, String more) {
        return "{'id': '" + id + "', 'kind': 'bank', 'from': '" + from + "', 'to': '" + to + "', 'mover': 'F'" + more + "}";
    }

    static Design design(String bays, String passages, String sources, String more) {
        return Designs.design("{'format': 1,", MOVER, "'airPath': {'bays': [" + bays + "], 'passages': [" + passages + "]},",
                "'heatSources': [" + sources + "]" + more + "}");
    }

    @Test
    void airThatComesToABayAndItsHeatMakeItsTemperature() {
        Design design = design("'box', 'nook'", square("in", "outside", "box", 20000) + "," + square("slit", "nook", "box", 1e6) + ","
                + bank("fan", "box", "outside", ""), "{'id': 'cpu', 'power': '40 W', 'into': ['box'], 'row': 1},"
                + "{'id': 'led', 'power': '10 W', 'into': ['slit']}", "");
        ThermalState state = Designs.settled(design);
        PartState cpu = state.part("cpu").orElseThrow();
        double capacity = state.point().passage("in").orElseThrow().massFlow() * Designs.model(design).path().outside().specificHeat();
        // half of what goes into the standing air of the slit comes to either end; in the nook it has no way out
        assertEquals(List.of("nook"), state.balance().unbounded());
        assertEquals(45, capacity * (state.temperatures().getFirst() - 293.15), 1e-6);
        assertEquals(5, capacity * (cpu.arriving() - 293.15), 1e-6, "beside a bay without bound");
        assertEquals(25, capacity * (cpu.air() - 293.15), 1e-6);
    }

    @Test
    void exhaustIsTheMeanOfWhatLeavesAlsoWhereAFailedMoverLetsAirBack() {
        Design design = design("'box'", square("in", "outside", "box", 20000) + "," + bank("fans", "box", "outside", ", 'across': 2"),
                "{'id': 'cpu', 'power': '100 W', 'into': ['box']}",
                ", 'conditions': [{'id': 'failed', 'failed': [{'bank': 'fans', 'position': 2, 'state': 'locked'}]}]");
        Runs.Told told = Runs.run(design);
        var fans = told.flow().data().orElseThrow().banks().getFirst();
        double forward = fans.movers().getFirst().flow() * fans.density();
        double cp = Designs.model(design).path().outside().specificHeat();
        assertTrue(fans.movers().get(1).flow() < -0.1 * fans.movers().getFirst().flow());
        double box = told.figure("thermal.air.temperature", "box");
        assertEquals(box + fans.power().orElseThrow() / (forward * cp), told.figure("thermal.exhaust.temperature", ""), 1e-6);
    }

    @Test
    void boundsHoldForAPartWhoseAirStandsOnlyAsStated() {
        // a bridge in balance: no air goes through its middle until a tolerance takes it out of balance
        Design design = design("'a', 'b', 'c', 'd'", square("in", "outside", "a", 20000) + "," + square("1", "a", "b", 20000, "'tolerance': '20 %'") + ","
                + square("2", "a", "c", 20000) + "," + square("3", "b", "d", 20000) + "," + square("4", "c", "d", 20000) + ","
                + square("middle", "b", "c", 20000) + "," + bank("fan", "d", "outside", ""),
                "{'id': 'led', 'power': '1 W', 'into': ['middle'], 'chain': [{'kind': 'resistance', 'resistance': '1 K/W', 'reference': 'mean air'}]}", "");
        ThermalState state = Designs.settled(design);
        assertEquals(Optional.of("no air goes by it"), state.part("led").orElseThrow().fault());
        Bounds bounds = Bounds.of(Designs.model(design), state, () -> false);
        assertTrue(Double.isNaN(bounds.junction().get("led").low()));
        assertTrue(bounds.bays().get(3).high() >= state.temperatures().get(3));
    }

    @Test
    void aSourceWithoutHeatInStandingAirIsAsWarmAsItsBay() {
        Design design = design("'box', 'nook'", square("in", "outside", "box", 20000) + "," + square("slit", "box", "nook", 1e6) + ","
                + bank("fan", "box", "outside", ""), "{'id': 'cpu', 'power': '40 W', 'into': ['box']},"
                + "{'id': 'off', 'power': '0 W', 'into': ['slit'], 'chain': [{'kind': 'resistance', 'resistance': '1 K/W'}]},"
                + "{'id': 'none', 'power': '50 W', 'into': [{'place': 'box', 'share': 1}, {'place': 'slit'}]}", "");
        ThermalState state = Designs.settled(design);
        assertEquals(state.temperatures().getFirst(), state.part("off").orElseThrow().junction().orElseThrow(), 1e-9);
    }

    @Test
    void aDesignWithoutHeatSourcesIsWarmedByItsMovers() {
        Design design = design("'box'", bank("fan", "outside", "box", "") + "," + square("out", "box", "outside", 20000), "", "");
        ThermalState state = Designs.settled(design);
        assertEquals(state.point().banks().getFirst().power().orElseThrow(), state.balance().toAir(), 1e-9);
        assertTrue(state.temperatures().getFirst() > 293.15);
        assertTrue(Runs.run(design).temperatures().figures().isEmpty(), "but nobody asked for temperatures");
    }

    @Test
    void aDesignWithoutBaysOrWithoutPassagesIsNoMistake() {
        Design through = design("", bank("fan", "outside", "outside", ""), "{'id': 'cpu', 'power': '40 W', 'into': ['fan']}", "");
        ThermalState state = Designs.settled(through);
        assertEquals(40 + state.point().banks().getFirst().power().orElseThrow(), state.balance().toAir(), 1e-9);
        Design nothing = design("'box'", "", "{'id': 'cpu', 'power': '40 W', 'into': ['box']}", "");
        Loop loop = Designs.model(nothing).settle(() -> false);
        assertTrue(loop.state().isEmpty());
        assertEquals("the design has no air path", loop.obstacles().getFirst().message().toString());
    }

    @Test
    void banksAtRestLetAirRise() {
        Design design = design("{'id': 'low', 'height': '0 m'}, {'id': 'high', 'height': '2 m'}", square("in", "outside", "low", 9000) + ","
                + square("up", "low", "high", 9000) + "," + bank("fan", "high", "outside", ""), "{'id': 'cpu', 'power': '40 W', 'into': ['low']}",
                ", 'conditions': [{'id': 'off', 'speed': 0}]");
        Runs.Told told = Runs.run(design);
        assertTrue(told.flow().data().orElseThrow().banks().getFirst().massFlow() > 1e-4);
        assertEquals(40, told.figure("thermal.heat.total", ""), 1e-9);
        assertTrue(told.sentences().stream().noneMatch(each -> each.contains("movers")), told.sentences().toString());
    }

    /** By hand: mass flow over the density of the bay's own air and its flow area. */
    @Test
    void airGoesAlongAWallAtTheVelocityThatItHasInItsBay() {
        Design design = design("{'id': 'box', 'sections': {'enclosure': {'flowArea': '100 cm²', 'walls': [{'area': '1 m²'}]}}}",
                square("in", "outside", "box", 2e6) + "," + bank("fan", "box", "outside", ""), "{'id': 'cpu', 'power': '400 W', 'into': ['box']}", "");
        ThermalState state = Designs.settled(design);
        double box = state.temperatures().getFirst();
        assertTrue(box > 330, "hot enough to matter: " + box);
        var outside = Designs.model(design).path().outside();
        double velocity = state.point().passage("in").orElseThrow().massFlow() / outside.heatedTo(box).density() / 0.01;
        WallModel wall = new WallModel(new EnclosureSection.Wall(1, EnclosureSection.Facing.SIDE, 1, 0, 0.9, 0.7, 0), outside, 0);
        assertEquals(wall.heat(box, velocity), state.walls().getFirst().heat(), 1e-6);
        assertEquals(wall.heat(box, velocity), state.balance().toWalls(), 1e-6);
        assertEquals(400 + state.balance().movers(), state.balance().toAir() + state.balance().toWalls(), 1e-6);
    }

    /** Air goes round within; all heat, the fan's own too, leaves through the walls. */
    @Test
    void aSealedCabinetLosesAllThroughItsWalls() {
        String walls = "'sections': {'enclosure': {'walls': [{'area': '0.5 m²'}, {'area': '0.2 m²', 'facing': 'up', 'sunlit': 0.3}]}}";
        Design design = design("{'id': 'front', " + walls + "}, {'id': 'rear', " + walls + "}", bank("fan", "front", "rear", "") + ","
                + square("back", "rear", "front", 20000), "{'id': 'cpu', 'power': '60 W', 'into': ['rear']}",
                ", 'conditions': [{'id': 'sunny', 'sections': {'sun': {'irradiance': 900}}}]");
        ThermalState state = Designs.settled(design);
        assertTrue(state.balance().unbounded().isEmpty());
        assertEquals(0, state.balance().toAir(), 0);
        assertEquals(60 + state.balance().movers(), state.balance().toWalls(), 1e-7);
        assertEquals(state.balance().toWalls(), state.walls().stream().mapToDouble(ThermalState.WallState::heat).sum(), 1e-7);
        assertTrue(state.temperatures().get(1) > state.temperatures().get(0) && state.temperatures().get(0) > 295);
        Runs.Told told = Runs.run(design);
        assertTrue(!told.has("thermal.exhaust.temperature", ""), "nothing leaves");
        assertEquals(state.balance().toWalls(), told.figure("thermal.heat.walls", ""), 1e-7);
    }
}
