package tramontane.thermal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.Test;
import tramontane.analysis.Cases;
import tramontane.analysis.OperatingPoint;
import tramontane.analysis.SpeedLaw;
import tramontane.model.Condition;
import tramontane.model.Design;

class ThermalModelTest {

    private static final String MOVER = "'airMovers': [{'id': 'F', 'curves': [{'speed': '3000 rpm',"
            + "'flow': '0 0.01 0.02 0.03 0.04 0.05 m³/s', 'pressure': '80 78 70 54 30 0 Pa', 'power': '6 6.5 7 7.2 7 6.4 W'}]}],";

    private static final String IN = "{'id': 'in', 'kind': 'measured resistance', 'from': 'outside', 'to': 'box', 'quadratic': 20000},";

    private static final String DRAWN = "{'id': 'fan', 'kind': 'bank', 'from': 'box', 'to': 'outside', 'mover': 'F'}";

    /** A box with a way in and what else is said. */
    private static Design box(String passages, String sources, String more) {
        return Designs.design("{'format': 1,", MOVER, "'airPath': {'bays': ['box'], 'passages': [", IN, passages, "]},",
                "'heatSources': [" + sources + "]" + (more.isEmpty() ? "" : "," + more) + "}");
    }

    private static String source(String id, double watts, String into, String chain) {
        return "{'id': '" + id + "', 'power': '" + watts + " W', 'into': [" + into + "], 'chain': [" + chain + "]}";
    }

    private static final String CHAIN = "{'kind': 'junction to case', 'resistance': '0.2 K/W'}, {'kind': 'resistance', 'resistance': '0.3 K/W'}";

    private static double heatCarried(Design design, ThermalState state, double massFlow) {
        return massFlow * Designs.model(design).path().outside().specificHeat();
    }

    @Test
    void aBoxIsAsWarmAsItsHeatOverItsFlow() {
        Design design = box(DRAWN, source("cpu", 100, "'box'", CHAIN), "");
        ThermalState state = Designs.settled(design);
        OperatingPoint.BankPoint fan = state.point().banks().getFirst();
        double rise = state.temperatures().getFirst() - 293.15;
        assertEquals(100, heatCarried(design, state, fan.massFlow()) * rise, 1e-7);
        assertEquals(state.temperatures().getFirst() + 50, state.part("cpu").orElseThrow().junction().getAsDouble(), 1e-9);
        assertEquals(100 + fan.power().orElseThrow(), state.balance().toAir(), 1e-9 * 107);
        assertEquals(state.temperatures().getFirst(), fan.temperature(), 1e-8, "the fan draws the air of the box");
        assertTrue(state.steps() < 15, "steps " + state.steps());
    }

    @Test
    void aSpeedLawFollowsTheAirThatItsMoverDraws() {
        Design design = box(DRAWN, source("cpu", 100, "'box'", CHAIN), "");
        SpeedLaw thermistor = supply -> Optional.of(200 + 5 * (supply.temperature() - 293.15));
        Condition condition = Cases.of(design, Set.of()).list().getFirst().concrete();
        ThermalState state = ThermalModel.of(design, condition, Designs.PASSAGES, Designs.LINKS, List.of(thermistor)).settle(() -> false)
                .state().orElseThrow();
        double rise = state.temperatures().getFirst() - 293.15;
        assertTrue(rise > 3, "rise " + rise);
        assertEquals(200 + 5 * rise, state.point().banks().getFirst().speed(), 1e-6);
        assertEquals(state.temperatures().getFirst(), state.feeds().get("fan").temperature(), 1e-8);
    }

    @Test
    void whatABlowingFanTakesUpWarmsTheBox() {
        String blown = "{'id': 'fan', 'kind': 'bank', 'from': 'outside', 'to': 'middle', 'mover': 'F'},"
                + "{'id': 'hole', 'kind': 'measured resistance', 'from': 'middle', 'to': 'outside', 'quadratic': 20000}";
        Design design = Designs.design("{'format': 1,", MOVER, "'airPath': {'bays': ['middle'], 'passages': [", blown,
                "]}, 'heatSources': [" + source("cpu", 100, "'middle'", CHAIN) + "]}");
        ThermalState state = Designs.settled(design);
        OperatingPoint.BankPoint fan = state.point().banks().getFirst();
        assertEquals(100 + fan.power().orElseThrow(), heatCarried(design, state, fan.massFlow())
                * (state.temperatures().getFirst() - 293.15), 1e-7);
        assertEquals(293.15, fan.temperature(), 0, "and its own air is that outside");
    }

    @Test
    void sharesGoToTheirPlaces() {
        String cards = "{'id': 'cards', 'kind': 'measured resistance', 'from': 'box', 'to': 'rear', 'quadratic': 5000},"
                + "{'id': 'fan', 'kind': 'bank', 'from': 'rear', 'to': 'outside', 'mover': 'F'}";
        Design design = Designs.design("{'format': 1,", MOVER, "'airPath': {'bays': ['box', 'rear'], 'passages': [", IN, cards, "]},",
                "'heatSources': [" + source("cpu", 100, "{'place': 'cards', 'share': '70 %'}, {'place': 'box'}",
                        CHAIN.replace("'0.3 K/W'", "'0.3 K/W', 'reference': 'mean air'")) + ","
                        + source("gpu", 0, "'cards'", CHAIN) + "]}");
        ThermalState state = Designs.settled(design);
        double capacity = heatCarried(design, state, state.point().banks().getFirst().massFlow());
        assertEquals(30, capacity * (state.temperatures().get(0) - 293.15), 1e-7);
        assertEquals(70, capacity * (state.temperatures().get(1) - state.temperatures().get(0)), 1e-7);
        PartState cpu = state.part("cpu").orElseThrow();
        assertEquals(state.temperatures().get(0) + 35 / capacity, cpu.air(), 1e-7, "the mean of the air along the cards");
        assertEquals(state.temperatures().get(0) + 35 / capacity, state.part("gpu").orElseThrow().air(), 1e-7,
                "a sink whose resistance counts from the air that comes to it sees what others give off, not its own");
        assertEquals(cpu.air() + 0.7 * 50, cpu.junction().getAsDouble(), 1e-9, "its chain carries what goes to its first place");
    }

    /** Three rows of 20, 30 and 50 W in a passage, the last with a wake factor of 1.5; beside them 10 W spread over it. */
    @Test
    void laterRowsStandInWarmerAir() {
        String row = "{'id': '%s', 'power': '%s W', 'into': ['cards'], 'row': %d %s}";
        String cards = "{'id': 'cards', 'kind': 'measured resistance', 'from': 'box', 'to': 'rear', 'quadratic': 5000},"
                + "{'id': 'fan', 'kind': 'bank', 'from': 'rear', 'to': 'outside', 'mover': 'F'}";
        Design design = Designs.design("{'format': 1,", MOVER, "'airPath': {'bays': ['box', 'rear'], 'passages': [", IN, cards, "]},",
                "'heatSources': [" + String.format(row, "a", "20", 1, "") + "," + String.format(row, "b", "30", 2, "") + ","
                        + String.format(row, "c", "50", 3, ", 'wake': 1.5") + ", {'id': 'd', 'power': '10 W', 'into': ['cards']}]}");
        ThermalState state = Designs.settled(design);
        double capacity = heatCarried(design, state, state.point().banks().getFirst().massFlow());
        double comes = state.temperatures().getFirst();
        assertEquals(comes + (10 + 5) / capacity, state.part("a").orElseThrow().air(), 1e-7, "half of its own, half of what is spread");
        assertEquals(comes + (20 + 15 + 5) / capacity, state.part("b").orElseThrow().air(), 1e-7);
        assertEquals(comes + (1.5 * 50 + 25 + 5) / capacity, state.part("c").orElseThrow().air(), 1e-7);
        assertEquals(comes + 110 / 2.0 / capacity, state.part("d").orElseThrow().air(), 1e-7);
        assertEquals(comes + 110 / capacity, state.temperatures().get(1), 1e-7, "all of it leaves");
    }

    @Test
    void airThatAFailedMoverLetsBackIsWarm() {
        String two = "{'id': 'fans', 'kind': 'bank', 'from': 'box', 'to': 'front', 'mover': 'F', 'across': 2},"
                + "{'id': 'out', 'kind': 'measured resistance', 'from': 'front', 'to': 'outside', 'quadratic': 20000}";
        String mover = MOVER.replace("'id': 'F',", "'id': 'F', 'openArea': '30 cm²',");
        Design design = Designs.design("{'format': 1,", mover, "'airPath': {'bays': ['box', 'front'], 'passages': [", IN, two, "]},",
                "'heatSources': [" + source("cpu", 100, "'box'", CHAIN) + "],",
                "'conditions': [{'id': 'failed', 'failed': [{'bank': 'fans', 'position': 2, 'state': 'locked'}]}]}");
        ThermalState state = Designs.settled(design);
        OperatingPoint.BankPoint fans = state.point().banks().getFirst();
        double cp = Designs.model(design).path().outside().specificHeat();
        double forward = fans.movers().get(0).flow() * fans.density() * cp;
        double back = -fans.movers().get(1).flow() * fans.density() * cp;
        assertTrue(back > 0.05 * forward, "air comes back through the failed one: " + back + " of " + forward);
        double box = state.temperatures().get(0) - 293.15;
        double front = state.temperatures().get(1) - 293.15;
        assertEquals(forward * box, (forward - back) * 0 + back * front + 100, 1e-6, "it warms the box");
        assertEquals(100 + fans.movers().get(0).power().orElseThrow(), (forward - back) * front, 1e-6);
        assertEquals(0, state.balance().error(), 1e-9 * 107);
    }

    /** A warm shaft of 2 m between two openings: (ρo - ρi) g h = K ρ v²/2 over both, ASHRAE Fundamentals, ch. ventilation. */
    @Test
    void buoyancyAloneMovesAir() {
        Design design = Designs.design("{'format': 1, 'airPath': {'bays': [{'id': 'shaft', 'height': '1 m'}, {'id': 'top', 'height': '2 m'}],",
                "'passages': [{'id': 'low', 'kind': 'measured resistance', 'from': 'outside', 'to': 'shaft', 'quadratic': 30000},",
                "{'id': 'middle', 'kind': 'measured resistance', 'from': 'shaft', 'to': 'top', 'quadratic': 30000},",
                "{'id': 'high', 'kind': 'measured resistance', 'from': 'top', 'to': 'outside', 'quadratic': 30000}]},",
                "'heatSources': [" + source("coil", 60, "'shaft'", "") + "]}");
        ThermalState state = Designs.settled(design);
        double flow = state.point().passages().getFirst().massFlow();
        assertTrue(flow > 1e-4, "flow " + flow);
        assertEquals(60, heatCarried(design, state, flow) * (state.temperatures().getFirst() - 293.15), 1e-6);
        double outside = state.point().bay("outside").orElseThrow().density();
        double inside = state.point().bay("shaft").orElseThrow().density();
        double head = (outside - inside) * 9.80665 * 2;
        double drop = 30000 / 1.2 * (flow * flow / outside + 2 * flow * flow / inside);
        assertEquals(head, drop, 0.51 * head, "the column of warm air is between 1 m and 2 m high, as bays mix");
        assertEquals(0, state.balance().error(), 1e-9 * 60);
    }

    @Test
    void heatWithoutFlowIsNamed() {
        Design design = Designs.design("{'format': 1,", MOVER, "'airPath': {'bays': ['box', 'dead'], 'passages': [", IN,
                "{'id': 'slit', 'kind': 'measured resistance', 'from': 'box', 'to': 'dead', 'quadratic': 1e6},", DRAWN, "]},",
                "'heatSources': [" + source("cpu", 100, "'dead'", CHAIN) + "]}");
        ThermalState state = Designs.settled(design);
        assertEquals(List.of("dead"), state.balance().unbounded());
        assertTrue(state.part("cpu").orElseThrow().fault().isPresent());
    }

    private static String law(String sensor, String temperature, String speed, String more) {
        return "'controlLaws': [{'id': 'quiet', 'sensor': '" + sensor + "', 'temperature': '" + temperature + "', 'speed': '" + speed + "'" + more + "}]";
    }

    @Test
    void aControlLawSettlesWhereItsSensorAsksForTheSpeedThatItHas() {
        for (String sensor : List.of("box", "cpu", "in", "fan")) {
            Design design = box(DRAWN, source("cpu", 150, "'box'", CHAIN), law(sensor, sensor.equals("cpu") ? "80 120 °C" : "20 40 °C", "30 100 %", ""));
            ThermalState state = Designs.settled(design);
            double read = switch (sensor) {
                case "cpu" -> state.part("cpu").orElseThrow().junction().getAsDouble();
                case "in" -> 293.15;
                default -> state.temperatures().getFirst();
            };
            double low = sensor.equals("cpu") ? 353.15 : 293.15;
            double asks = 0.3 + 0.7 * Math.max(0, read - low) / (sensor.equals("cpu") ? 40 : 20);
            assertEquals(asks, state.feeds().get("fan").setting(), 1e-8, sensor);
            assertEquals(asks * 3000 * Math.PI / 30, state.point().banks().getFirst().speed(), 1e-5, sensor);
        }
    }

    @Test
    void aConditionThatStatesItsSpeedIsNotControlled() {
        Design design = box(DRAWN, source("cpu", 150, "'box'", CHAIN), law("box", "20 40 °C", "30 100 %", "")
                + ", 'conditions': [{'id': 'test', 'speed': '90 %'}]");
        ThermalState state = Designs.settled(design);
        assertEquals(0.9, state.feeds().get("fan").setting(), 0);
        assertTrue(Designs.model(design).controls().idle());
    }

    @Test
    void aSwitchThatCoolsItsSensorBelowWhereItGoesOffHunts() {
        // the rise within 0.1 K lies within the hysteresis: a switch on at 30.1 °C, off at 28 °C
        Design design = box(DRAWN, source("cpu", 250, "'box'", CHAIN), law("box", "20 30 30.1 60 °C", "30 30 100 100 %", ", 'hysteresis': '2 K'"));
        Loop loop = Designs.model(design).settle(() -> false);
        assertTrue(loop.state().isEmpty());
        assertEquals(Optional.of("quiet"), loop.law());
        List<Double> settings = loop.cycle().stream().map(state -> state.drive().settings().get("fan")).toList();
        assertEquals(List.of(0.3, 1.0), settings);
        assertTrue(loop.cycle().get(0).temperatures().getFirst() > 303.25, "at low speed it is warmer than where it goes on");
        assertTrue(loop.cycle().get(1).temperatures().getFirst() < 301.15, "at high speed it is colder than where it goes off");
    }

    @Test
    void aSwitchThatStaysOnSettles() {
        Design design = box(DRAWN, source("cpu", 250, "'box'", CHAIN), law("box", "20 30 30.1 60 °C", "60 60 100 100 %", ", 'hysteresis': '5 K'"));
        ThermalState state = Designs.settled(design);
        double setting = state.feeds().get("fan").setting();
        double box = state.temperatures().getFirst();
        assertTrue(setting == 0.6 && box <= 303.25 || setting == 1 && box >= 303.15 - 5, setting + " at " + box);
    }

    @Test
    void twoLawsSettleTogether() {
        String two = "{'id': 'a', 'kind': 'bank', 'from': 'box', 'to': 'outside', 'mover': 'F'},"
                + "{'id': 'b', 'kind': 'bank', 'from': 'outside', 'to': 'box', 'mover': 'F'}";
        Design design = box(two, source("cpu", 200, "'box'", CHAIN), "'controlLaws': ["
                + "{'id': 'la', 'sensor': 'box', 'banks': ['a'], 'temperature': '20 30 °C', 'speed': '40 100 %'},"
                + "{'id': 'lb', 'sensor': 'cpu', 'banks': ['b'], 'temperature': '100 140 °C', 'speed': '20 100 %'}]");
        ThermalState state = Designs.settled(design);
        double box = state.temperatures().getFirst() - 293.15;
        double cpu = state.part("cpu").orElseThrow().junction().getAsDouble() - 373.15;
        assertEquals(Math.min(1, 0.4 + 0.06 * box), state.feeds().get("a").setting(), 1e-8);
        assertEquals(Math.max(0.2, Math.min(1, 0.2 + 0.02 * cpu)), state.feeds().get("b").setting(), 1e-8);
    }

    @Test
    void temperaturesFallWithSpeedAndRiseWithHeat() {
        Design design = box(DRAWN, source("cpu", 150, "'box'", CHAIN), "");
        ThermalModel model = Designs.model(design);
        double before = Double.POSITIVE_INFINITY;
        for (double speed : new double[] {0.3, 0.6, 1, 1.5}) {
            double now = model.at(new Drive(Map.of(), speed, Map.of()), Optional.empty(), () -> false).state().orElseThrow()
                    .temperatures().getFirst();
            assertTrue(now < before, "at speed " + speed);
            before = now;
        }
        double cold = Designs.settled(box(DRAWN, source("cpu", 100, "'box'", CHAIN), "")).temperatures().getFirst();
        assertTrue(Designs.settled(design).temperatures().getFirst() > cold);
        assertFalse(cold <= 293.15);
    }

    @Test
    void flowsThatAreGivenAreTakenAsTheyAre() {
        Design design = box(DRAWN, source("cpu", 150, "'box'", CHAIN), "");
        ThermalModel model = Designs.model(design);
        ThermalState state = model.settle(() -> false).state().orElseThrow();
        ThermalState again = model.at(state.point());
        assertEquals(state.temperatures().getFirst(), again.temperatures().getFirst(), 1e-9);
        assertEquals(state.part("cpu").orElseThrow().junction().getAsDouble(), again.part("cpu").orElseThrow().junction().getAsDouble(), 1e-9);
    }

    @Test
    void aPartInAirThatHardlyMovesHasNoTemperature() {
        Design design = Designs.design("{'format': 1,", MOVER, "'airPath': {'bays': ['box'], 'passages': [", IN,
                "{'id': 'slit', 'kind': 'measured resistance', 'from': 'outside', 'to': 'box', 'quadratic': 1e13},", DRAWN, "]},",
                "'heatSources': [" + source("cpu", 20, "'slit'", "") + "]}");
        PartState cpu = Designs.settled(design).part("cpu").orElseThrow();
        assertEquals(Optional.of("the air at it would be more than 400 K warmer than outside"), cpu.fault());
        assertTrue(cpu.junction().isEmpty());
    }
}
