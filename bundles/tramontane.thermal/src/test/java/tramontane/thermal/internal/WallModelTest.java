package tramontane.thermal.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Named;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import tramontane.physics.AirState;
import tramontane.thermal.AirBalance;
import tramontane.thermal.Golden;
import tramontane.thermal.ThermalState;

/**
 * Walls against a solution by SciPy from the published relations, walls.csv; walls.py beside it says which. Temperatures may differ
 * by 1e-6 K.
 */
class WallModelTest {

    private static final double KELVIN = 1e-6;

    private static double number(String[] line, int field) {
        return Double.parseDouble(line[field]);
    }

    private static EnclosureSection.Wall wall(String[] line) {
        return new EnclosureSection.Wall(number(line, 1), EnclosureSection.Facing.named(line[2]), number(line, 3), number(line, 4),
                number(line, 5), number(line, 6), number(line, 7));
    }

    private static AirState outside(String[] line) {
        return new AirState(number(line, 2), number(line, 1), number(line, 3));
    }

    private static Stream<Named<List<String[]>>> blocks(String word, int named) {
        return Golden.blocks("walls.csv", 14, "case", "cabinet").stream().filter(lines -> lines.getFirst()[0].equals(word))
                .map(lines -> Named.of(String.join(" ", lines.get(named)), lines));
    }

    static Stream<Named<List<String[]>>> walls() {
        return blocks("case", 1);
    }

    static Stream<Named<List<String[]>>> cabinets() {
        return blocks("cabinet", 0);
    }

    @Test
    void thereAreThirtySixAndSix() {
        assertEquals(36, walls().count());
        assertEquals(6, cabinets().count());
    }

    @ParameterizedTest
    @MethodSource("walls")
    void facesAreAsWarmAsByTheRelations(List<String[]> lines) {
        String[] known = lines.get(1);
        WallModel model = new WallModel(wall(known), outside(lines.getFirst()), number(lines.getFirst(), 4));
        double inside = number(known, 8);
        double velocity = number(known, 9);
        ThermalState.WallState state = model.state("box", inside, velocity);
        assertEquals(number(known, 11), state.inner(), KELVIN);
        assertEquals(number(known, 12), state.outer(), KELVIN);
        assertEquals(number(known, 10), state.heat(), 1e-6 * (1 + Math.abs(number(known, 10))));
        assertEquals(state.heat(), model.heat(inside, velocity), 0);
        assertEquals((model.heat(inside + 0.01, velocity) - model.heat(inside - 0.01, velocity)) / 0.02, model.slope(inside, velocity),
                1e-3 * model.slope(inside, velocity), "its slope");
    }

    @ParameterizedTest
    @MethodSource("cabinets")
    void aSealedCabinetIsAsWarmAsItsWallsNeed(List<String[]> lines) {
        String[] known = lines.getFirst();
        List<WallModel> walls = lines.subList(1, lines.size()).stream()
                .map(line -> new WallModel(wall(line), outside(known), number(known, 4))).toList();
        int[] asked = new int[1];
        AirBalance.Rises rises = new AirBalance(1, new int[0], new int[0]).solve(new double[0], new double[0],
                new double[] {number(known, 5)}, (bay, rise, loss) -> {
                    asked[0]++;
                    loss.set(walls.stream().mapToDouble(wall -> wall.heat(number(known, 1) + rise, 0)).sum(),
                            walls.stream().mapToDouble(wall -> wall.slope(number(known, 1) + rise, 0)).sum());
                });
        assertEquals(number(known, 6), number(known, 1) + rises.at(0), KELVIN);
        assertTrue(rises.converged(), "walls and air agree");
        assertTrue(asked[0] <= 30, "walls were asked " + asked[0] + " times");
        assertEquals(number(known, 5), rises.toWalls(), 1e-9 * Math.max(1, number(known, 5)));
    }
}
