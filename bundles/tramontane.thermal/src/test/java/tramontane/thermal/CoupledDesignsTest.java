package tramontane.thermal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Named;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import tramontane.analysis.OperatingPoint;
import tramontane.model.Design;

/**
 * Small designs whose flows, temperatures and speeds are solved by SciPy as one system of equations, coupled_designs.txt;
 * coupled_designs.py beside it says by which formulas. Flows may differ by 1e-7 of themselves and temperatures by 1e-6 K.
 */
class CoupledDesignsTest {

    private static final double FLOW = 1e-7;
    private static final double KELVIN = 1e-6;

    private record Case(List<String[]> lines) {
        List<String[]> of(String word) {
            return lines.stream().filter(line -> line[0].equals(word)).map(line -> line.length > 2 ? (line[1] + "," + line[2]).split(",") : line)
                    .toList();
        }

        Design design() {
            return Designs.design(lines.get(1)[1] + "," + lines.get(1)[2]);
        }
    }

    static Stream<Named<Case>> cases() {
        return Golden.blocks("coupled_designs.txt", 3, "design").stream()
                .map(lines -> Named.of(String.join(",", lines.getFirst()).substring(7), new Case(lines)));
    }

    @Test
    void thereAreFourteen() {
        assertEquals(14, cases().count());
    }

    @ParameterizedTest
    @MethodSource("cases")
    void theLoopComesToTheSolutionOfTheWholeSystem(Case known) {
        ThermalState state = Designs.settled(known.design());
        List<String> bays = known.design().airPath().bays().stream().map(bay -> bay.id()).toList();
        for (String[] flow : known.of("flow")) {
            double expected = Double.parseDouble(flow[1]);
            assertEquals(expected, state.point().passage(flow[0]).orElseThrow().massFlow(), FLOW * Math.abs(expected), "flow " + flow[0]);
        }
        for (String[] bay : known.of("bay")) {
            assertEquals(Double.parseDouble(bay[1]), state.temperatures().get(bays.indexOf(bay[0])), KELVIN, "temperature of " + bay[0]);
            assertEquals(Double.parseDouble(bay[1]), state.point().bay(bay[0]).orElseThrow().temperature(), KELVIN, bay[0]);
            assertEquals(Double.parseDouble(bay[2]), state.point().bay(bay[0]).orElseThrow().pressure(), 1e-6, "pressure of " + bay[0]);
        }
        for (String[] bank : known.of("bank")) {
            OperatingPoint.BankPoint there = state.point().bank(bank[0]).orElseThrow();
            assertEquals(Double.parseDouble(bank[1]), there.speed(), FLOW * there.speed(), "speed of " + bank[0]);
            assertEquals(Double.parseDouble(bank[2]), state.feeds().get(bank[0]).setting(), FLOW, "setting of " + bank[0]);
            assertEquals(Double.parseDouble(bank[3]), there.power().orElseThrow(), 3 * FLOW * there.power().getAsDouble(), "input of " + bank[0]);
        }
        for (String[] part : known.of("part")) {
            assertEquals(Double.parseDouble(part[1]), state.part(part[0]).orElseThrow().junction().orElseThrow(), KELVIN, part[0]);
        }
        double heat = state.balance().sources() + state.balance().movers();
        assertEquals(0, state.balance().error(), 1e-9 * heat);
        assertTrue(state.balance().unbounded().isEmpty());
    }
}
