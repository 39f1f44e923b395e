package tramontane.airflow;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.sun.management.ThreadMXBean;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.lang.management.ManagementFactory;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.TreeMap;
import java.util.stream.Stream;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import tramontane.analysis.FlowLaw;

class NetworkSolverTest {

    private static final int OUT = Network.OUTSIDE;

    private static Network network(int bays, Network.Branch... branches) {
        List<Network.Bay> list = new ArrayList<>();
        for (int i = 0; i < bays; i++) {
            list.add(new Network.Bay("bay " + i, 0));
        }
        return new Network(list, List.of(branches));
    }

    private static Network.Branch branch(int from, int to, FlowLaw law) {
        return new Network.Branch(from + "-" + to, from, to, law);
    }

    private static NetworkLoad unit(int bays) {
        return NetworkLoad.of(NetworkAir.uniform(bays, 1, 1.8e-5));
    }

    private static NetworkSolution solved(Network network, NetworkLoad load) {
        NetworkSolution solution = NetworkSolver.solve(network, load, NetworkSolver.Settings.STANDARD);
        assertEquals(Optional.empty(), solution.why());
        return solution;
    }

    private static void flows(double[] expected, NetworkSolution solution, double relative) {
        for (int e = 0; e < expected.length; e++) {
            assertEquals(expected[e], solution.massFlow(e), Math.abs(expected[e]) * relative, "flow " + e);
        }
    }

    /** The loop network by which H. Cross's method is taught; exact rational solution, node 4 is the outside. */
    @Test
    void solvesTheAntisymmetricBridge() {
        Network bridge = network(3, branch(0, 1, Laws.square(1)), branch(0, 2, Laws.square(5)), branch(1, 2, Laws.square(1)),
                branch(1, OUT, Laws.square(5)), branch(2, OUT, Laws.square(1)));
        NetworkSolution solution = solved(bridge, unit(3).withInflow(10));
        flows(new double[] {20 / 3.0, 10 / 3.0, 10 / 3.0, 10 / 3.0, 20 / 3.0}, solution, 1e-12);
        assertEquals(100, solution.pressure(0), 1e-10);
        assertEquals(500 / 9.0, solution.pressure(1), 1e-10);
        assertEquals(400 / 9.0, solution.pressure(2), 1e-10);
    }

    /** Air network of a mine district with a diagonal almost at rest; solution by 30-digit root finding (mpmath). */
    @Test
    void solvesANetworkWithADiagonalAlmostAtRest() {
        Network mine = network(3, branch(0, 1, Laws.square(0.4)), branch(0, 2, Laws.square(0.6)), branch(1, 2, Laws.square(0.1)),
                branch(1, OUT, Laws.square(0.5)), branch(2, OUT, Laws.square(0.7)));
        NetworkSolution solution = solved(mine, unit(3).withInflow(47));
        flows(new double[] {25.8736325253, 21.1263674747, 0.4012179609, 25.4724145643, 21.5275854357}, solution, 2e-10);
        assertEquals(592.19990, solution.pressure(0), 1e-5);
        assertEquals(324.42195, solution.pressure(1), 1e-5);
        assertEquals(324.40585, solution.pressure(2), 1e-5);
    }

    /** Two loops of five pipes, h = K q²; solution by 30-digit root finding (mpmath). Bays C, A, D; B is the outside. */
    @Test
    void solvesTwoLoops() {
        Network loops = network(3, branch(0, 1, Laws.square(200)), branch(1, 2, Laws.square(2500)),
                branch(0, 2, Laws.square(500)), branch(1, OUT, Laws.square(800)), branch(2, OUT, Laws.square(300)));
        NetworkSolution solution = solved(loops, unit(3).withInflow(0.5));
        flows(new double[] {0.2746690584, 0.0641822352, 0.2253309416, 0.2104868231, 0.2895131769}, solution, 1e-9);
        assertEquals(50.53238, solution.pressure(0), 5e-6);
        assertEquals(35.44376, solution.pressure(1), 5e-6);
        assertEquals(25.14536, solution.pressure(2), 5e-6);
    }

    /** Two loops of six pipes with the exponent 1.852 of Hazen and Williams; solution by SciPy. Bays A, B, D, E; C outside. */
    @Test
    void solvesLoopsOfAnotherExponent() {
        double n = 1.852;
        Network pipes = network(4, branch(0, 1, Laws.power(666.1401, n)), branch(1, OUT, Laws.power(1645.7916, n)),
                branch(0, 2, Laws.power(1908.7729, n)), branch(2, OUT, Laws.power(9299.0190, n)),
                branch(1, 3, Laws.power(7283.3351, n)), branch(3, OUT, Laws.power(7283.3351, n)));
        NetworkSolution solution = solved(pipes, unit(4).withInflow(0.090, 0, -0.025, -0.010));
        // given to seven digits, as are the resistances
        flows(new double[] {53.22658e-3, 37.60879e-3, 36.77342e-3, 11.77342e-3, 15.61780e-3, 5.61780e-3}, solution, 1e-6);
    }

    /** 1/√R = Σ 1/√Rᵢ, exact. */
    @Test
    void splitsFlowBetweenParallelPassages() {
        Network two = network(1, branch(0, OUT, Laws.square(4e4)), branch(0, OUT, Laws.square(9e4)));
        NetworkSolution solution = solved(two, unit(1).withInflow(0.03));
        flows(new double[] {0.018, 0.012}, solution, 1e-12);
        assertEquals(14400 * 0.03 * 0.03, solution.pressure(0), 1e-10);
        Network three = network(1, branch(0, OUT, Laws.square(4e4)), branch(0, OUT, Laws.square(9e4)),
                branch(0, OUT, Laws.square(1.6e5)));
        assertEquals(8520.710059 * 0.03 * 0.03, solved(three, unit(1).withInflow(0.03)).pressure(0), 1e-9);
    }

    /** Fan 120 (1 - (q/0.05)^1.5), 5e3 q² in series with 800 q + 2e4 q² beside 1.2e5 q²; solution by SciPy root finding. */
    @Test
    void solvesAFanOnMixedResistances() {
        Network mixed = network(2, branch(OUT, 0, Laws.mover(120, 0.05, 1.5)), branch(0, 1, Laws.square(5e3)),
                branch(1, OUT, Laws.mixed(800, 2e4, 1e-7, 0)), branch(1, OUT, Laws.square(1.2e5)));
        NetworkSolution solution = solved(mixed, unit(2));
        assertEquals(29.5748134641, solution.pressure(1), 1e-9);
        flows(new double[] {0.0390433842, 0.0390433842, 0.0233444422, 0.0156989420}, solution, 5e-9);
        assertEquals(37.1967427, solution.pressure(0), 5e-8);
    }

    /** Ideal movers 80 (1 - (q/0.06)²) on K q²; closed form: single, two in parallel, two in series. */
    @ParameterizedTest
    @CsvSource({"2e4, 0.043529, 37.8947, 0.055950, 62.6087, 0.049827, 49.6552",
        "5e4, 0.033282, 55.3846, 0.037947, 72.0000, 0.041160, 84.7059",
        "2e5, 0.018974, 72.0000, 0.019728, 77.8378, 0.025584, 130.9091"})
    void combinesIdealMovers(double k, double q, double p, double parallelQ, double parallelP, double seriesQ, double seriesP) {
        FlowLaw mover = Laws.mover(80, 0.06, 2);
        NetworkSolution single = solved(network(1, branch(OUT, 0, mover), branch(0, OUT, Laws.square(k))), unit(1));
        assertEquals(q, single.massFlow(0), 1e-5 * q + 5e-7);
        assertEquals(p, single.pressure(0), 1e-5 * p);
        NetworkSolution parallel = solved(network(1, branch(OUT, 0, mover), branch(OUT, 0, mover),
                branch(0, OUT, Laws.square(k))), unit(1));
        assertEquals(parallelQ, parallel.massFlow(2), 1e-5 * parallelQ + 5e-7);
        assertEquals(parallelP, parallel.pressure(0), 1e-5 * parallelP);
        NetworkSolution series = solved(network(2, branch(OUT, 0, mover), branch(0, 1, mover),
                branch(1, OUT, Laws.square(k))), unit(2));
        assertEquals(seriesQ, series.massFlow(2), 1e-5 * seriesQ + 5e-7);
        assertEquals(seriesP, series.pressure(1), 1e-5 * seriesP);
        assertTrue(parallel.massFlow(2) < 2 * single.massFlow(0));
    }

    /** 80 (1 - (q/0.06)²) = 400 q + 3e4 q², closed form. */
    @Test
    void findsTheDutyPointOnAFilterAndASquareResistance() {
        NetworkSolution solution = solved(network(1, branch(OUT, 0, Laws.mover(80, 0.06, 2)),
                branch(0, OUT, Laws.mixed(400, 3e4, 1e-7, 0))), unit(1));
        assertEquals(0.0354968216, solution.massFlow(0), 1e-8 * 0.0354968216);
        assertEquals(51.9994590, solution.pressure(0), 1e-8 * 51.9994590);
    }

    /** Solved by SciPy; see random_networks.py. */
    record Golden(int bays, List<Network.Branch> branches, List<Double> flows, double[] pressures) {
        @Override
        public String toString() {
            return bays + " bays, " + branches.size() + " branches";
        }
    }

    static Stream<Golden> randomNetworks() {
        Map<Integer, List<String[]>> rows = new TreeMap<>();
        try (BufferedReader reader = new BufferedReader(new InputStreamReader(
                NetworkSolverTest.class.getResourceAsStream("random_networks.csv"), StandardCharsets.UTF_8))) {
            reader.lines().filter(line -> Character.isDigit(line.charAt(0))).map(line -> line.split(","))
                    .forEach(row -> rows.computeIfAbsent(Integer.valueOf(row[0]), key -> new ArrayList<>()).add(row));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return rows.values().stream().map(NetworkSolverTest::golden);
    }

    private static Golden golden(List<String[]> rows) {
        List<Network.Branch> branches = new ArrayList<>();
        List<Double> flows = new ArrayList<>();
        int bays = 1 + rows.stream().mapToInt(row -> Math.max(Integer.parseInt(row[1]), Integer.parseInt(row[2]))).max().orElse(-1);
        double[] pressures = new double[bays];
        for (String[] row : rows) {
            int from = Integer.parseInt(row[1]);
            int to = Integer.parseInt(row[2]);
            branches.add(branch(from, to, Laws.mixed(Double.parseDouble(row[3]), Double.parseDouble(row[4]), 1e-5,
                    Double.parseDouble(row[5]))));
            flows.add(Double.valueOf(row[6]));
            if (from >= 0) {
                pressures[from] = Double.parseDouble(row[7]);
            }
            if (to >= 0) {
                pressures[to] = Double.parseDouble(row[8]);
            }
        }
        return new Golden(bays, branches, flows, pressures);
    }

    @Test
    void theTableOfRandomNetworksIsThere() {
        assertEquals(10, randomNetworks().count());
    }

    @ParameterizedTest
    @MethodSource("randomNetworks")
    void agreesWithARootFinderOnRandomNetworks(Golden golden) {
        Network network = network(golden.bays(), golden.branches().toArray(Network.Branch[]::new));
        NetworkSolution solution = solved(network, unit(golden.bays()));
        double largest = golden.flows().stream().mapToDouble(Math::abs).max().orElseThrow();
        for (int e = 0; e < golden.flows().size(); e++) {
            assertEquals(golden.flows().get(e), solution.massFlow(e), 1e-10 * largest, "flow " + e);
        }
        for (int i = 0; i < golden.bays(); i++) {
            assertEquals(golden.pressures()[i], solution.pressure(i), 1e-8, "pressure " + i);
        }
        assertTrue(solution.massResidual() <= 1e-12 * largest);
    }

    // properties on random networks

    private record Drawn(Network network, Random random) {
    }

    private static Drawn draw(int bays, long seed) {
        Random random = new Random(seed);
        List<Network.Branch> branches = new ArrayList<>();
        for (int i = 0; i < bays; i++) {
            branches.add(branch(i, random.nextInt(i + 1) - 1, passage(random)));
        }
        for (int k = 0; k < bays + 2; k++) {
            branches.add(branch(random.nextInt(bays + 1) - 1, random.nextInt(bays + 1) - 1, passage(random)));
        }
        for (int k = 0; k < 2 + bays / 5; k++) {
            branches.add(branch(OUT, random.nextInt(bays), Laws.mixed(100 + 1000 * random.nextDouble(),
                    1e4 * Math.exp(random.nextGaussian()), 1e-5, 100 * random.nextDouble())));
        }
        return new Drawn(network(bays, branches.toArray(Network.Branch[]::new)), random);
    }

    private static FlowLaw passage(Random random) {
        double linear = random.nextBoolean() ? 0 : 50 * Math.exp(2 * random.nextGaussian());
        return Laws.mixed(linear, 1e4 * Math.exp(3 * random.nextGaussian()), 1e-6, 0);
    }

    private static double largest(NetworkSolution solution) {
        double largest = 0;
        for (int e = 0; e < solution.branches(); e++) {
            largest = Math.max(largest, Math.abs(solution.massFlow(e)));
        }
        return largest;
    }

    @Property(tries = 200)
    void balancesMassInEveryBay(@ForAll @IntRange(min = 1, max = 40) int bays, @ForAll long seed) {
        Drawn drawn = draw(bays, seed);
        NetworkSolution solution = solved(drawn.network(), unit(bays));
        double[] balance = new double[bays];
        for (int e = 0; e < solution.branches(); e++) {
            Network.Branch branch = drawn.network().branches().get(e);
            if (branch.from() >= 0) {
                balance[branch.from()] -= solution.massFlow(e);
            }
            if (branch.to() >= 0) {
                balance[branch.to()] += solution.massFlow(e);
            }
        }
        for (double each : balance) {
            assertEquals(0, each, 1e-12 * largest(solution));
        }
    }

    @Property(tries = 200)
    void everyBranchKeepsItsLaw(@ForAll @IntRange(min = 1, max = 40) int bays, @ForAll long seed) {
        Drawn drawn = draw(bays, seed);
        NetworkSolution solution = solved(drawn.network(), unit(bays));
        FlowLaw.Drop drop = new FlowLaw.Drop();
        for (int e = 0; e < solution.branches(); e++) {
            Network.Branch branch = drawn.network().branches().get(e);
            branch.law().at(solution.massFlow(e), 1, 1.8e-5, drop);
            assertEquals(solution.pressure(branch.from()) - solution.pressure(branch.to()), drop.pressure(),
                    1e-7 * (1 + Math.abs(drop.pressure())));
        }
    }

    @Property(tries = 100)
    void aBranchDefinedBackwardsTurnsTheSignOnly(@ForAll @IntRange(min = 1, max = 30) int bays, @ForAll long seed) {
        Drawn drawn = draw(bays, seed);
        NetworkSolution plain = solved(drawn.network(), unit(bays));
        List<Network.Branch> turned = drawn.network().branches().stream()
                .map(each -> branch(each.to(), each.from(), Laws.backwards(each.law()))).toList();
        NetworkSolution other = solved(new Network(drawn.network().bays(), turned), unit(bays));
        for (int e = 0; e < plain.branches(); e++) {
            assertEquals(plain.massFlow(e), -other.massFlow(e), 1e-9 * largest(plain));
        }
    }

    @Property(tries = 100)
    void scalingAllDropsScalesPressuresAndLeavesFlows(@ForAll @IntRange(min = 1, max = 30) int bays, @ForAll long seed) {
        Drawn drawn = draw(bays, seed);
        double factor = Math.exp(2 * drawn.random().nextGaussian());
        NetworkSolution plain = solved(drawn.network(), unit(bays));
        NetworkSolution scaled = solved(new Network(drawn.network().bays(), drawn.network().branches().stream()
                .map(each -> branch(each.from(), each.to(), Laws.times(factor, each.law()))).toList()), unit(bays));
        for (int e = 0; e < plain.branches(); e++) {
            assertEquals(plain.massFlow(e), scaled.massFlow(e), 1e-9 * largest(plain));
        }
        for (int i = 0; i < bays; i++) {
            assertEquals(factor * plain.pressure(i), scaled.pressure(i), 1e-7 * factor);
        }
    }

    @Property(tries = 100)
    void raisingOneResistanceNeverRaisesItsFlow(@ForAll @IntRange(min = 1, max = 20) int bays, @ForAll long seed) {
        Drawn drawn = draw(bays, seed);
        NetworkSolution plain = solved(drawn.network(), unit(bays));
        int which = drawn.random().nextInt(2 * bays + 2);
        List<Network.Branch> branches = new ArrayList<>(drawn.network().branches());
        Network.Branch raised = branches.get(which);
        branches.set(which, branch(raised.from(), raised.to(), Laws.times(3, raised.law())));
        NetworkSolution other = solved(new Network(drawn.network().bays(), branches), unit(bays));
        assertTrue(Math.abs(other.massFlow(which)) <= Math.abs(plain.massFlow(which)) + 1e-9 * largest(plain));
    }

    @Property(tries = 100)
    void otherLawsOnASolverGiveWhatANewOneGives(@ForAll @IntRange(min = 1, max = 30) int bays, @ForAll long seed) {
        Drawn drawn = draw(bays, seed);
        NetworkSolver solver = NetworkSolver.of(drawn.network());
        NetworkSolution before = solver.solve(unit(bays), NetworkSolver.Settings.STANDARD);
        Network other = new Network(drawn.network().bays(), drawn.network().branches().stream()
                .map(each -> branch(each.from(), each.to(), Laws.times(0.5 + drawn.random().nextDouble(), each.law()))).toList());
        NetworkSolution fresh = NetworkSolver.of(other).solve(unit(bays), NetworkSolver.Settings.STANDARD);
        NetworkSolution made = solver.with(other).solve(unit(bays), NetworkSolver.Settings.STANDARD);
        NetworkSolution after = solver.solve(unit(bays), NetworkSolver.Settings.STANDARD);
        for (int e = 0; e < before.branches(); e++) {
            assertEquals(fresh.massFlow(e), made.massFlow(e));
            assertEquals(fresh.drop(e), made.drop(e));
            assertEquals(before.massFlow(e), after.massFlow(e));
        }
    }

    @Test
    void aSolverIsOfNoUseForANetworkJoinedInAnotherWay() {
        NetworkSolver solver = NetworkSolver.of(network(2, branch(OUT, 0, Laws.square(1)), branch(0, 1, Laws.square(1)),
                branch(1, OUT, Laws.square(1))));
        assertThrows(IllegalArgumentException.class, () -> solver.with(network(2, branch(OUT, 0, Laws.square(1)),
                branch(1, 0, Laws.square(1)), branch(1, OUT, Laws.square(1)))));
        assertThrows(IllegalArgumentException.class, () -> solver.with(network(2, branch(OUT, 0, Laws.square(1)))));
    }

    @Property(tries = 100)
    void aWarmStartGivesTheSame(@ForAll @IntRange(min = 1, max = 30) int bays, @ForAll long seed) {
        Drawn drawn = draw(bays, seed);
        NetworkSolver solver = NetworkSolver.of(drawn.network());
        NetworkLoad load = unit(bays);
        NetworkSolution plain = solver.solve(load, NetworkSolver.Settings.STANDARD);
        double[] inflow = new double[bays];
        Arrays.setAll(inflow, i -> 0.01 * drawn.random().nextGaussian());
        NetworkSolution other = solver.solve(load.withInflow(inflow), NetworkSolver.Settings.STANDARD);
        assertTrue(other.converged());
        NetworkSolution back = solver.solve(load, NetworkSolver.Settings.STANDARD, Optional.of(other), () -> false);
        assertEquals(Optional.empty(), back.why());
        for (int e = 0; e < plain.branches(); e++) {
            assertEquals(plain.massFlow(e), back.massFlow(e), 1e-9 * largest(plain));
        }
        // and the same bits from a cold start, however often the solver was used
        NetworkSolution again = solver.solve(load, NetworkSolver.Settings.STANDARD);
        for (int e = 0; e < plain.branches(); e++) {
            assertEquals(plain.massFlow(e), again.massFlow(e));
        }
    }

    @Property(tries = 50)
    void imposingAFlowThatItHasAnywayChangesNothing(@ForAll @IntRange(min = 1, max = 20) int bays, @ForAll long seed) {
        Drawn drawn = draw(bays, seed);
        NetworkSolution plain = solved(drawn.network(), unit(bays));
        int bank = plain.branches() - 1;
        NetworkSolution imposed = solved(drawn.network(), unit(bays).imposing(bank, plain.massFlow(bank)));
        for (int e = 0; e < plain.branches(); e++) {
            assertEquals(plain.massFlow(e), imposed.massFlow(e), 1e-8 * largest(plain));
        }
        assertEquals(plain.drop(bank), imposed.drop(bank), 1e-6);
    }

    /** Along a square system curve the duty point follows the fan laws: Q ∝ n, Δp ∝ n² ρ (AMCA 210). */
    @Property(tries = 100)
    void aSquareSystemFollowsTheFanLaws(@ForAll @IntRange(min = 1, max = 20) int bays, @ForAll long seed) {
        Random random = new Random(seed);
        double speed = 0.3 + random.nextDouble();
        List<Network.Branch> full = new ArrayList<>();
        List<Network.Branch> slow = new ArrayList<>();
        for (int i = 0; i < bays; i++) {
            double r = 1e4 * Math.exp(random.nextGaussian());
            double p = 50 + 100 * random.nextDouble();
            int other = random.nextInt(i + 1) - 1;
            full.add(branch(i, other, Laws.square(r)));
            slow.add(full.getLast());
            full.add(branch(OUT, i, Laws.mover(p, 0.05, 2)));
            slow.add(branch(OUT, i, Laws.mover(p * speed * speed, 0.05 * speed, 2)));
        }
        NetworkSolution atFull = solved(network(bays, full.toArray(Network.Branch[]::new)), unit(bays));
        NetworkSolution atSlow = solved(network(bays, slow.toArray(Network.Branch[]::new)), unit(bays));
        for (int e = 0; e < atFull.branches(); e++) {
            assertEquals(speed * atFull.massFlow(e), atSlow.massFlow(e), 1e-8 * largest(atFull));
        }
        for (int i = 0; i < bays; i++) {
            assertEquals(speed * speed * atFull.pressure(i), atSlow.pressure(i), 1e-6);
        }
    }

    @Test
    void resistancesInSeriesAddUp() {
        Network series = network(2, branch(OUT, 0, Laws.mover(100, 0.05, 2)), branch(0, 1, Laws.square(1e4)),
                branch(1, OUT, Laws.square(2e4)));
        Network single = network(1, branch(OUT, 0, Laws.mover(100, 0.05, 2)), branch(0, OUT, Laws.square(3e4)));
        assertEquals(solved(single, unit(1)).massFlow(0), solved(series, unit(2)).massFlow(0), 1e-12);
    }

    // stack effect and direction

    /**
     * A chimney: warm air from the lower bay rises to the upper one. The drop of all openings together is Δρ g h, and each
     * takes what its share of the resistance is at the density in it.
     */
    @Test
    void warmAirRises() {
        FlowLaw opening = (flow, density, viscosity, drop) -> {
            double c = 1e3 * density;
            double size = Math.sqrt(flow * flow + 1e-16);
            drop.set(c * flow * size, c * (size + flow * flow / size));
        };
        Network chimney = new Network(List.of(new Network.Bay("lower", 0), new Network.Bay("upper", 0.5)),
                List.of(branch(OUT, 0, opening), branch(0, 1, opening), branch(1, OUT, opening)));
        NetworkAir air = NetworkAir.of(new double[] {1.0, 1.0}, new double[] {2e-5, 2e-5}, 1.2, 1.8e-5);
        NetworkSolution solution = solved(chimney, NetworkLoad.of(air));
        double drive = 0.2 * 9.80665 * 0.5;
        // Δp = 1e3 m²/ρ each: one opening with outside air, two with warm air
        double expected = Math.sqrt(drive / 1e3 / (1 / 1.2 + 2 / 1.0));
        assertEquals(expected, solution.massFlow(0), 1e-9);
        assertEquals(-expected * expected * 1e3 / 1.2, solution.pressure(0), 1e-9);
        assertEquals(expected / 1.2, solution.flow(0), 1e-9);
        assertEquals(expected / 1.0, solution.flow(2), 1e-9);
    }

    @Test
    void coldAirSinksAndTheDirectionIsFound() {
        FlowLaw opening = Laws.square(1e3);
        Network shaft = new Network(List.of(new Network.Bay("lower", 0), new Network.Bay("upper", 0.5)),
                List.of(branch(OUT, 0, opening), branch(0, 1, opening), branch(1, OUT, opening)));
        NetworkAir air = NetworkAir.of(new double[] {1.4, 1.4}, new double[] {2e-5, 2e-5}, 1.2, 1.8e-5);
        NetworkSolution solution = solved(shaft, NetworkLoad.of(air));
        double drive = 0.2 * 9.80665 * 0.5;
        double expected = -Math.sqrt(drive / 1e3 / (2 / (1.4 * 1.4) + 1 / (1.2 * 1.2)));
        assertEquals(expected, solution.massFlow(1), 1e-9);
        assertEquals(1.2, solution.density(2));
        assertEquals(1.4, solution.density(0));
    }

    /** Two bays of unlike air joined by a shaft that is driven to the lower one by neither: it stands still, mixed. */
    @Test
    void settlesWhereNeitherDirectionHolds() {
        FlowLaw opening = Laws.square(1e3);
        // upward the shaft holds heavy air of the lower bay, downward light air of the upper one: both are pushed back
        Network shaft = new Network(List.of(new Network.Bay("lower", 0), new Network.Bay("upper", 0.5)),
                List.of(branch(OUT, 0, opening), branch(0, 1, opening), branch(1, OUT, opening)));
        NetworkAir air = NetworkAir.of(new double[] {1.4, 1.0}, new double[] {2e-5, 2e-5}, 1.2, 1.8e-5);
        NetworkSolution solution = solved(shaft, NetworkLoad.of(air));
        assertEquals(0, solution.massFlow(1), 1e-6);
        assertEquals(1.2, solution.density(1), 1e-3);
    }

    // large networks

    /** Neighbours of a square joined by losses of all sizes, a few open to the outside, a bank at each of two corners. */
    private static Network grid(int side, long seed) {
        Random random = new Random(seed);
        List<Network.Branch> branches = new ArrayList<>();
        for (int i = 0; i < side * side; i++) {
            if (i % side > 0) {
                branches.add(branch(i - 1, i, Laws.mixed(1, 1e4 * Math.exp(random.nextGaussian()), 1e-5, 0)));
            }
            if (i >= side) {
                branches.add(branch(i - side, i, Laws.mixed(1, 1e4 * Math.exp(random.nextGaussian()), 1e-5, 0)));
            }
            if (random.nextInt(50) == 0) {
                branches.add(branch(i, OUT, Laws.mixed(1, 1e4, 1e-5, 0)));
            }
        }
        branches.add(branch(OUT, 0, Laws.mover(120, 0.06, 2)));
        branches.add(branch(side * side - 1, OUT, Laws.mover(100, 0.05, 2)));
        return network(side * side, branches.toArray(Network.Branch[]::new));
    }

    @ParameterizedTest
    @CsvSource({"10", "40", "150"})
    void fulfilsTheEquationsOfALargeNetwork(int side) {
        Network network = grid(side, side);
        NetworkSolution solution = solved(network, unit(side * side));
        double[] balance = new double[side * side];
        FlowLaw.Drop drop = new FlowLaw.Drop();
        for (int e = 0; e < solution.branches(); e++) {
            Network.Branch branch = network.branches().get(e);
            branch.law().at(solution.massFlow(e), 1, 1.8e-5, drop);
            assertEquals(solution.pressure(branch.from()) - solution.pressure(branch.to()), drop.pressure(), 1e-7);
            if (branch.from() != OUT) {
                balance[branch.from()] -= solution.massFlow(e);
            }
            if (branch.to() != OUT) {
                balance[branch.to()] += solution.massFlow(e);
            }
        }
        for (double each : balance) {
            assertEquals(0, each, 1e-9 * largest(solution));
        }
        assertTrue(largest(solution) > 0.01);
    }

    /** More steps need no more memory. */
    @Test
    void stepsAllocateNothing() {
        Network network = grid(8, 8);
        NetworkSolver solver = NetworkSolver.of(network);
        NetworkSolver.Settings rough = new NetworkSolver.Settings(1e-1, 200, 200);
        NetworkLoad load = unit(64);
        int[] steps = new int[2];
        long few = allocated(() -> steps[0] = solver.solve(load, rough).iterations());
        long many = allocated(() -> steps[1] = solver.solve(load, NetworkSolver.Settings.STANDARD).iterations());
        assertTrue(steps[0] < steps[1], () -> Arrays.toString(steps));
        assertEquals(few, many);
    }

    /** Least of several runs, since compiling and loading classes may add to some. */
    private static long allocated(Runnable task) {
        ThreadMXBean threads = (ThreadMXBean) ManagementFactory.getThreadMXBean();
        long least = Long.MAX_VALUE;
        for (int i = 0; i < 50; i++) {
            long before = threads.getCurrentThreadAllocatedBytes();
            task.run();
            least = Math.min(least, threads.getCurrentThreadAllocatedBytes() - before);
        }
        return least;
    }

    // closed and odd networks

    @Test
    void aDeadEndHasNoFlow() {
        Network network = network(2, branch(OUT, 0, Laws.mover(80, 0.06, 2)), branch(0, OUT, Laws.square(5e4)),
                branch(0, 1, Laws.mixed(0, 1e4, 1e-5, 0)));
        NetworkSolution solution = solved(network, unit(2));
        assertEquals(0, solution.massFlow(2), 1e-12);
        assertEquals(solution.pressure(0), solution.pressure(1), 1e-9);
    }

    @Test
    void airGoesRoundInAClosedBox() {
        Network closed = network(3, branch(0, 1, Laws.mover(80, 0.06, 2)), branch(1, 0, Laws.square(5e4)),
                branch(OUT, 2, Laws.square(1e3)));
        NetworkSolution solution = solved(closed, unit(3));
        assertEquals(0.033282, solution.massFlow(0), 1e-6);
        assertEquals(55.3846, solution.pressure(1) - solution.pressure(0), 1e-4);
        assertEquals(0, solution.massFlow(2), 1e-12);
    }

    /** A mover without a way back puts all bays under its pressure and moves nothing. */
    @Test
    void aCommonPressureChangesNoFlow() {
        List<Network.Branch> loop = List.of(branch(0, 1, Laws.mover(80, 0.06, 2)), branch(1, 2, Laws.square(5e4)),
                branch(2, 0, Laws.square(2e4)), branch(1, 0, Laws.mixed(300, 1e5, 1e-6, 0)));
        NetworkSolution plain = solved(new Network(network(3).bays(), loop), unit(3));
        List<Network.Branch> more = new ArrayList<>(loop);
        more.add(branch(OUT, 0, Laws.mixed(1000, 1e4, 1e-6, 50)));
        NetworkSolution raised = solved(new Network(network(3).bays(), more), unit(3));
        for (int e = 0; e < loop.size(); e++) {
            assertEquals(plain.massFlow(e), raised.massFlow(e), 1e-12);
        }
        for (int i = 0; i < 3; i++) {
            assertEquals(50 + plain.pressure(i) - plain.pressure(0), raised.pressure(i), 1e-8);
        }
    }

    @Test
    void nothingDrivesNothingFlows() {
        NetworkSolution solution = solved(network(1, branch(OUT, 0, Laws.mixed(1, 1, 1e-5, 0)),
                branch(0, OUT, Laws.mixed(1, 1, 1e-5, 0))), unit(1));
        assertEquals(0, solution.massFlow(0));
        assertEquals(0, solution.pressure(0));
    }

    @Test
    void anEmptyNetworkIsSolved() {
        assertTrue(solved(network(0), unit(0)).converged());
    }

    @Test
    void aMoverInFreeAirGivesItsFreeDelivery() {
        assertEquals(0.06, solved(network(0, branch(OUT, OUT, Laws.mover(80, 0.06, 2))), unit(0)).massFlow(0), 1e-12);
    }

    @Test
    void refusesToPutAirIntoAClosedBay() {
        NetworkSolution solution = NetworkSolver.solve(network(1), unit(1).withInflow(0.1), NetworkSolver.Settings.STANDARD);
        assertFalse(solution.converged());
        assertEquals("bay 0", solution.place());
    }

    @Test
    void refusesALawThatMayHaveSeveralDutyPoints() {
        FlowLaw dips = new FlowLaw() {
            @Override
            public void at(double flow, double density, double viscosity, Drop drop) {
                drop.set(flow * flow * flow - flow, 3 * flow * flow - 1);
            }

            @Override
            public boolean increasing() {
                return false;
            }
        };
        Network network = network(1, branch(OUT, 0, dips), branch(0, OUT, Laws.square(1)));
        NetworkSolution solution = NetworkSolver.solve(network, unit(1), NetworkSolver.Settings.STANDARD);
        assertFalse(solution.converged());
        assertEquals("-1-0", solution.place());
        assertTrue(NetworkSolver.solve(network, unit(1).imposing(0, 2), NetworkSolver.Settings.STANDARD).converged());
    }

    @Test
    void saysWhereALawBreaksItsPromise() {
        FlowLaw falling = (flow, density, viscosity, drop) -> drop.set(-flow, -1);
        NetworkSolution solution = NetworkSolver.solve(network(1, branch(OUT, 0, falling),
                branch(0, OUT, Laws.mover(80, 0.06, 2))), unit(1), NetworkSolver.Settings.STANDARD);
        assertFalse(solution.converged());
        assertEquals("-1-0", solution.place());
    }

    @Test
    void saysWhenItDidNotSettle() {
        NetworkSolution solution = NetworkSolver.solve(network(1, branch(OUT, 0, Laws.mover(80, 0.06, 2)),
                branch(0, OUT, Laws.square(5e4))), unit(1), new NetworkSolver.Settings(1e-12, 2, 1));
        assertFalse(solution.converged());
        assertTrue(solution.why().orElseThrow().contains("did not settle in 2 steps"));
    }
}
