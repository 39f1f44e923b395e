package tramontane.thermal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Named;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Random networks of 3 to 200 bays against a dense solution by NumPy, air_balances.csv; air_balances.py beside it says how they
 * are made. Rises may differ by 1e-10 of themselves: rounding, grown by air that goes round thirty times.
 */
class AirBalancesTest {

    private record Case(AirBalance balance, double[] capacity, double[] wayHeat, double[] bayHeat, double[] conductance,
            double[] rise, double toAir, double toWalls) {

        static Case of(List<String[]> lines) {
            List<String[]> ways = lines.stream().filter(line -> line[0].equals("way")).toList();
            List<String[]> bays = lines.stream().filter(line -> line[0].equals("bay")).toList();
            String[] total = lines.getLast();
            return new Case(new AirBalance(bays.size(), ways.stream().mapToInt(way -> Integer.parseInt(way[1])).toArray(),
                    ways.stream().mapToInt(way -> Integer.parseInt(way[2])).toArray()), numbers(ways, 3), numbers(ways, 4),
                    numbers(bays, 1), numbers(bays, 2), numbers(bays, 3), Double.parseDouble(total[1]), Double.parseDouble(total[2]));
        }

        private static double[] numbers(List<String[]> lines, int field) {
            return lines.stream().mapToDouble(line -> Double.parseDouble(line[field])).toArray();
        }

        AirBalance.Rises solved() {
            return balance.solve(capacity, wayHeat, bayHeat,
                    (bay, rise, loss) -> loss.set(conductance[bay] * rise, conductance[bay]));
        }

        double heat() {
            return java.util.Arrays.stream(wayHeat).sum() + java.util.Arrays.stream(bayHeat).sum();
        }
    }

    static Stream<Named<Case>> cases() {
        return Golden.blocks("air_balances.csv", 5, "network").stream()
                .map(lines -> Named.of("network " + lines.getFirst()[1] + " of " + lines.getFirst()[2] + " bays", Case.of(lines)));
    }

    @Test
    void thereAreForty() {
        assertEquals(40, cases().count());
        assertEquals(200, cases().mapToInt(each -> each.getPayload().rise().length).max().orElseThrow());
    }

    @ParameterizedTest
    @MethodSource("cases")
    void risesAreThoseOfADenseSolution(Case network) {
        AirBalance.Rises rises = network.solved();
        for (int i = 0; i < network.rise().length; i++) {
            assertEquals(network.rise()[i], rises.at(i), 1e-10 * network.rise()[i], "bay " + i);
        }
        assertTrue(rises.converged());
        assertTrue(rises.unbounded().isEmpty());
    }

    @ParameterizedTest
    @MethodSource("cases")
    void heatGoesWhereItGoesInADenseSolution(Case network) {
        AirBalance.Rises rises = network.solved();
        assertEquals(network.toAir(), rises.toAir(), 1e-10 * network.heat());
        assertEquals(network.toWalls(), rises.toWalls(), 1e-10 * network.heat());
        assertEquals(0, rises.error(), 1e-9 * network.heat());
    }
}
