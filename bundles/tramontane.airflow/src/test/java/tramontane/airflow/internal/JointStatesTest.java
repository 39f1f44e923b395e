package tramontane.airflow.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import tramontane.airflow.AirPathModel;
import tramontane.airflow.AirPathSolution;
import tramontane.airflow.AirPathSolver;
import tramontane.airflow.DutyPoint;
import tramontane.airflow.JointState;
import tramontane.analysis.FlowLaw;
import tramontane.analysis.OperatingPoint;
import tramontane.model.AirMover;
import tramontane.model.Design;
import tramontane.model.Passage;
import tramontane.model.Value;

/**
 * Joint states of movers with a dip that blow side by side into one square resistance c (q₁ + q₂ + …)², against a search by
 * hand: at each pressure every mover has one flow on each stretch of its curve; where what they move together asks for just that
 * pressure, there is a state.
 */
class JointStatesTest {

    private static final AirMover DEEP = Cases.part(Cases.curve(Cases.SPEED, 1.2,
            new double[] {0, 0.01, 0.015, 0.025, 0.04, 0.05}, new double[] {80, 60, 18, 60, 40, 0}, new double[0]));
    private static final double[] TURNS = {-0.2, 0.015, 0.025, 0.2};
    private static final double DENSITY = AirPathModel.of(Design.EMPTY, Cases.standardAir(), List.of()).outside().density();

    private static final MoverCharacteristic CURVE = MoverCharacteristic.of(DEEP, Cases.SPEED);

    private static double pressure(double flow) {
        FlowLaw.Drop drop = new FlowLaw.Drop();
        CURVE.at(flow, DENSITY, 1.8e-5, drop);
        return -drop.pressure();
    }

    /** Flow on a stretch at a pressure; NaN where the stretch does not reach it. */
    private static double flow(int stretch, double pressure) {
        double low = TURNS[stretch];
        double high = TURNS[stretch + 1];
        boolean falling = stretch != 1;
        if ((pressure(low) - pressure) * (pressure(high) - pressure) > 0) {
            return Double.NaN;
        }
        for (int i = 0; i < 50; i++) {
            double middle = (low + high) / 2;
            if (pressure(middle) > pressure == falling) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return low;
    }

    /** Total flows of all states with the given number of movers on each stretch. */
    private static List<Double> byHand(double c, int[] movers) {
        List<Double> flows = new ArrayList<>();
        double before = Double.NaN;
        double beforeTotal = 0;
        int n = 2000;
        for (int i = 0; i <= n; i++) {
            double pressure = 0.001 + 79.8 * i / n;
            double total = 0;
            for (int stretch = 0; stretch < 3; stretch++) {
                total += movers[stretch] == 0 ? 0 : movers[stretch] * flow(stretch, pressure);
            }
            double excess = pressure - c * total * total;
            if (excess > 0 != before > 0 && !Double.isNaN(before) && !Double.isNaN(excess)) {
                flows.add(beforeTotal + (total - beforeTotal) * before / (before - excess));
            }
            before = excess;
            beforeTotal = total;
        }
        return flows;
    }

    private static AirPathSolution solve(Passage... passages) {
        Design design = Cases.design(DEEP, List.of("box"), passages);
        return AirPathModel.of(design, Cases.standardAir(), Cases.KINDS).at(Map.of()).solve(new double[] {293.15});
    }

    private static double total(JointState state) {
        return state.points().stream().mapToDouble(DutyPoint::flow).sum();
    }

    private static void same(List<Double> expected, List<Double> found) {
        expected.sort(Comparator.naturalOrder());
        assertEquals(expected.size(), found.size(), () -> expected + " by hand, found " + found);
        for (int i = 0; i < expected.size(); i++) {
            assertEquals(expected.get(i), found.get(i), 2e-6);
        }
    }

    /** The state from rest that is looked for alone is the one that the search for all states judges. */
    @ParameterizedTest
    @ValueSource(doubles = {500, 3000, 8000, 15000, 18000, 21250, 25000, 30000, 60000, 200000, 1e6})
    void theStateFromRestIsTheOneJudged(double c) {
        for (Passage[] banks : new Passage[][] {{Cases.bank("fans", "outside", "box")}, {Cases.bank("fans", "outside", "box", "across", 3)},
                {Cases.bank("fans", "outside", "box", "across", 2, "series", 2)},
                {Cases.bank("left", "outside", "box", "across", 2), Cases.bank("right", "outside", "box")}}) {
            List<Passage> passages = new ArrayList<>(List.of(banks));
            passages.add(Cases.square("vent", "box", "outside", c));
            AirPathSolver solver = AirPathModel.of(Cases.design(DEEP, List.of("box"), passages.toArray(Passage[]::new)), Cases.standardAir(),
                    Cases.KINDS).at(Map.of());
            AirPathSolution all = solver.solve(new double[] {293.15});
            AirPathSolution alone = solver.reached(new double[] {293.15}, () -> false);
            for (int b = 0; b < all.point().orElseThrow().banks().size(); b++) {
                assertEquals(all.point().get().banks().get(b).flow(), alone.point().orElseThrow().banks().get(b).flow(), 1e-8, passages.toString());
                assertEquals(all.point().get().banks().get(b).movers().stream().map(mover -> Math.round(mover.flow() * 1e7)).sorted().toList(),
                        alone.point().get().banks().get(b).movers().stream().map(mover -> Math.round(mover.flow() * 1e7)).sorted().toList());
            }
        }
    }

    @ParameterizedTest
    @ValueSource(doubles = {3000, 8000, 15000, 21250, 30000, 60000, 200000})
    void twoBanksSideBySideHaveTheStatesFoundByHand(double c) {
        AirPathSolution solution = solve(Cases.bank("left", "outside", "box"), Cases.bank("right", "outside", "box"),
                Cases.square("vent", "box", "outside", c));
        List<Double> expected = new ArrayList<>();
        for (int a = 0; a < 3; a++) {
            for (int b = 0; b < 3; b++) {
                int[] movers = new int[3];
                movers[a]++;
                movers[b]++;
                expected.addAll(byHand(c * DENSITY / 1.2, movers));
            }
        }
        same(expected, solution.states().stream().map(JointStatesTest::total).sorted().toList());
        assertTrue(solution.complete());
        for (JointState state : solution.states()) {
            assertEquals(returns(state, c * DENSITY / 1.2), state.stable(), state::toString);
        }
    }

    /** Whether the air comes back to a state when disturbed, each column having the same inertia; Euler's method. */
    private static boolean returns(JointState state, double c) {
        double[] at = state.points().stream().mapToDouble(DutyPoint::flow).toArray();
        double[] flow = {at[0] + 1e-6, at[1] - 0.7e-6};
        double step = 1e-7;
        for (int i = 0; i < 40000; i++) {
            double asked = c * (flow[0] + flow[1]) * Math.abs(flow[0] + flow[1]);
            double first = pressure(flow[0]) - asked;
            double second = pressure(flow[1]) - asked;
            flow[0] += step * first;
            flow[1] += step * second;
        }
        return Math.hypot(flow[0] - at[0], flow[1] - at[1]) < 0.9e-6;
    }

    @ParameterizedTest
    @CsvSource({"2, 21250", "2, 60000", "3, 9500", "3, 3000", "4, 5300"})
    void theColumnsOfOneBankHaveTheStatesFoundByHand(int columns, double c) {
        AirPathSolution solution = solve(Cases.bank("fans", "outside", "box", "across", columns),
                Cases.square("vent", "box", "outside", c));
        List<Double> even = new ArrayList<>();
        List<Double> uneven = new ArrayList<>();
        for (int a = 0; a <= columns; a++) {
            for (int b = 0; a + b <= columns; b++) {
                int[] movers = {a, b, columns - a - b};
                boolean alike = a == columns || b == columns || movers[2] == columns;
                (alike ? even : uneven).addAll(byHand(c * DENSITY / 1.2, movers));
            }
        }
        same(even, solution.states().stream().filter(JointState::even).map(JointStatesTest::total).sorted().toList());
        same(uneven, solution.states().stream().filter(state -> !state.even()).map(JointStatesTest::total).sorted().toList());
        assertTrue(solution.complete());
        assertTrue(solution.states().get(solution.reached()).stable());
    }

    /**
     * Where the bank's common flow would come to rest on the rising part (a booster behind it and a steep vent make it so), the
     * movers part, and one moves more than the other.
     */
    @Test
    void moversThatWouldRestOnTheRisingPartShareUnevenly() {
        AirMover booster = new AirMover("B", "", Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty(),
                Optional.empty(), Optional.empty(), Optional.empty(), Cases.part(Cases.curve(Cases.SPEED, 1.2,
                        new double[] {0, 1}, new double[] {60, 0}, new double[0])).curves(), Value.Tree.EMPTY);
        Design design = Cases.design(DEEP, List.of("box", "duct"), Cases.bank("fans", "outside", "box", "across", 2),
                new Passage("booster", "bank", "box", "duct", Cases.tree("mover", "B")),
                Cases.square("vent", "duct", "outside", 3.3e5 / 4)).withAirMovers(List.of(DEEP, booster));
        AirPathSolution solution = AirPathModel.of(design, Cases.standardAir(), Cases.KINDS).at(Map.of())
                .solve(new double[] {293.15, 293.15});
        JointState even = solution.states().stream().filter(JointState::even).findFirst().orElseThrow();
        assertFalse(even.stable());
        JointState reached = solution.states().get(solution.reached());
        assertTrue(reached.stable());
        assertFalse(reached.even());
        List<OperatingPoint.MoverPoint> movers = solution.point().orElseThrow().banks().getFirst().movers();
        assertTrue(Math.abs(movers.get(0).flow() - movers.get(1).flow()) > 0.002, movers::toString);
        assertEquals(movers.get(0).pressure(), movers.get(1).pressure(), 1e-6);
    }
}
