package tramontane.airflow.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.IntToDoubleFunction;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Named;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import tramontane.airflow.AirPathModel;
import tramontane.airflow.AirPathSolution;
import tramontane.airflow.AirPathSolver;
import tramontane.airflow.DutyPoint;
import tramontane.airflow.JointState;
import tramontane.airflow.Network;
import tramontane.airflow.NetworkAir;
import tramontane.airflow.NetworkLoad;
import tramontane.airflow.NetworkSolution;
import tramontane.airflow.NetworkSolver;
import tramontane.analysis.FlowLaw;
import tramontane.analysis.OperatingPoint;
import tramontane.model.AirMover;
import tramontane.model.AirPath;
import tramontane.model.Condition;
import tramontane.model.Design;
import tramontane.model.FailedMover;
import tramontane.model.MoverCurve;
import tramontane.model.Passage;
import tramontane.model.Quantities;
import tramontane.model.Quantity;
import tramontane.model.Value;
import tramontane.physics.AirState;

/**
 * Whole air paths of 5 to 200 bays against an independent solution by SciPy, flow_networks.csv, and small ones with two dipping
 * banks, joint_networks.csv; flow_networks.py beside them says by which formulas and how closely.
 *
 * <p>Flows may differ by 1e-8 of the largest flow and pressures by 1e-8 of the largest pressure: what the solver promises,
 * 1e-10 of a last change and 1e-9 of a misfit, times ten for passages that ask for little pressure.
 */
class FlowNetworksTest {

    private static final double TOLERANCE = 1e-8;
    /** The same of joint states, over their largest flow: where curves nearly touch, a small misfit moves a state far. */
    private static final double JOINT_TOLERANCE = 1e-7;

    private record Bay(double height, double temperature, double density, double viscosity, double[] pressure) {
    }

    private record Opening(int from, int to, String kind, double[] values, double[] massFlow) {
    }

    private record Fans(int from, int to, AirMover mover, int across, int along, int series, double speed,
            Map<Integer, FailedMover.State> failed, double[][] columnFlow) {

        double massFlow(int warm) {
            return Arrays.stream(columnFlow[warm]).sum();
        }
    }

    private record Crossing(int bank, double massFlow, double pressure, boolean stable, boolean reached) {
    }

    /** A joint state of the banks that dip: their mass flows. */
    private record Joint(boolean stable, boolean even, double[] massFlow) {
    }

    /**
     * An air path with its solution where every bay is as cold as the air outside, and where each has its own temperature; or
     * with all its joint states in air as cold as outside.
     */
    private record Golden(String name, double[] outside, double clogging, double density, double viscosity, List<Bay> bays,
            List<Opening> passages, List<Fans> banks, List<List<Crossing>> crossings, List<Joint> states) {

        boolean hasFlaps() {
            return passages.stream().anyMatch(passage -> passage.kind().equals("flap"));
        }

        double largestFlow(int warm) {
            return Math.max(passages.stream().mapToDouble(each -> Math.abs(each.massFlow()[warm])).max().orElse(0),
                    banks.stream().mapToDouble(each -> Math.abs(each.massFlow(warm))).max().orElse(0));
        }

        double highestPressure(int warm) {
            return bays.stream().mapToDouble(each -> Math.abs(each.pressure()[warm])).max().orElse(0);
        }

        double[] temperatures(int warm) {
            return bays.stream().mapToDouble(each -> warm == 1 ? each.temperature() : outside[0]).toArray();
        }
    }

    private static final List<Golden> TABLE = read("flow_networks.csv");
    private static final List<Golden> JOINT = read("joint_networks.csv");

    private static List<Golden> read(String name) {
        List<Golden> table = new ArrayList<>();
        Map<String, AirMover> movers = new HashMap<>();
        try (BufferedReader reader = new BufferedReader(new InputStreamReader(
                FlowNetworksTest.class.getResourceAsStream("/tramontane/airflow/" + name), StandardCharsets.UTF_8))) {
            for (String line : reader.lines().toList()) {
                String[] cells = line.split(",", -1);
                switch (cells[0]) {
                    case "network" -> {
                        movers.clear();
                        table.add(new Golden(cells[1], doubles(cells, 3, 6), number(cells[6]), number(cells[7]), number(cells[8]),
                                new ArrayList<>(), new ArrayList<>(), new ArrayList<>(),
                                List.of(new ArrayList<>(), new ArrayList<>()), new ArrayList<>()));
                    }
                    case "mover" -> movers.put(cells[1], mover(cells));
                    case "curve" -> movers.computeIfPresent(cells[1], (id, mover) -> withCurve(mover, cells));
                    case "bay" -> table.getLast().bays().add(new Bay(number(cells[1]), number(cells[2]), number(cells[3]),
                            number(cells[4]), doubles(cells, 5, cells.length)));
                    case "passage" -> table.getLast().passages().add(new Opening(Integer.parseInt(cells[1]),
                            Integer.parseInt(cells[2]), cells[3], doubles(cells[4]),
                            doubles(cells, 5, cells.length)));
                    case "bank" -> table.getLast().banks().add(new Fans(Integer.parseInt(cells[1]), Integer.parseInt(cells[2]),
                            movers.get(cells[3]), Integer.parseInt(cells[4]), Integer.parseInt(cells[5]),
                            Integer.parseInt(cells[6]), number(cells[7]), failed(cells[8]),
                            Arrays.stream(cells, 9, cells.length).map(FlowNetworksTest::doubles).toArray(double[][]::new)));
                    case "crossing" -> table.getLast().crossings().get(cells[1].equals("warm") ? 1 : 0).add(new Crossing(
                            Integer.parseInt(cells[2]), number(cells[3]), number(cells[4]), cells[5].equals("1"),
                            cells[6].equals("1")));
                    case "state" -> table.getLast().states().add(new Joint(cells[1].equals("1"), cells[2].equals("1"),
                            Arrays.stream(cells, 3, cells.length).mapToDouble(each -> Arrays.stream(doubles(each)).sum())
                                    .toArray()));
                    default -> assertTrue(line.startsWith("#"), line);
                }
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return List.copyOf(table);
    }

    private static double number(String cell) {
        return Double.parseDouble(cell);
    }

    private static double[] doubles(String cell) {
        return Stream.of(cell.split(" ")).mapToDouble(Double::parseDouble).toArray();
    }

    private static double[] doubles(String[] cells, int from, int to) {
        return Arrays.stream(cells, from, to).mapToDouble(Double::parseDouble).toArray();
    }

    private static AirMover mover(String[] cells) {
        return new AirMover(cells[1], "", Optional.empty(), Optional.of(Quantity.of(number(cells[3]))),
                Optional.of(Quantity.of(number(cells[4]))), Optional.empty(),
                cells[2].isEmpty() ? Optional.empty() : Optional.of(Quantity.of(number(cells[2]))), Optional.empty(),
                Optional.empty(), List.of(), Value.Tree.EMPTY);
    }

    private static AirMover withCurve(AirMover mover, String[] cells) {
        List<MoverCurve> curves = new ArrayList<>(mover.curves());
        curves.add(Cases.curve(number(cells[2]), number(cells[3]), doubles(cells[4]), doubles(cells[5]), new double[0]));
        return new AirMover(mover.id(), mover.maker(), mover.type(), mover.width(), mover.height(), mover.depth(),
                mover.openArea(), mover.ratedSpeed(), mover.category(), curves, mover.more());
    }

    private static Map<Integer, FailedMover.State> failed(String cell) {
        Map<Integer, FailedMover.State> failed = new HashMap<>();
        for (String each : cell.isEmpty() ? new String[0] : cell.split(" ")) {
            String[] parts = each.split(":");
            failed.put(Integer.valueOf(parts[0]), Arrays.stream(FailedMover.State.values())
                    .filter(state -> state.word().equals(parts[1])).findFirst().orElseThrow());
        }
        return failed;
    }

    private static Stream<Named<Golden>> named(Stream<Golden> table) {
        return table.map(golden -> Named.of(golden.name(), golden));
    }

    static Stream<Named<Golden>> table() {
        return named(TABLE.stream());
    }

    static Stream<Named<Golden>> joint() {
        return named(JOINT.stream());
    }

    static Stream<Named<Golden>> withFlaps() {
        return named(TABLE.stream().filter(Golden::hasFlaps));
    }

    static Stream<Named<Golden>> withoutFlaps() {
        return named(TABLE.stream().filter(golden -> !golden.hasFlaps()));
    }

    static Stream<Named<Golden>> dipping() {
        return named(TABLE.stream().filter(golden -> !golden.crossings().get(0).isEmpty()));
    }

    static Stream<Named<Golden>> falling() {
        return named(TABLE.stream().filter(golden -> golden.crossings().get(0).isEmpty()));
    }

    @Test
    void theTableHasWhatItSays() {
        assertEquals(40, TABLE.size());
        assertTrue(withFlaps().count() >= 8);
        assertTrue(dipping().count() >= 10);
        assertTrue(dipping().filter(each -> each.getPayload().crossings().get(0).size() > 1).count() >= 8);
        assertTrue(TABLE.stream().filter(each -> each.banks().stream().anyMatch(bank -> !bank.failed().isEmpty())).count() >= 10);
        assertTrue(TABLE.stream().filter(each -> each.bays().stream().anyMatch(bay -> bay.height() > 0)).count() >= 4);
        assertEquals(5, TABLE.stream().mapToInt(each -> each.bays().size()).min().orElseThrow());
        assertEquals(200, TABLE.stream().mapToInt(each -> each.bays().size()).max().orElseThrow());
    }

    @Test
    void theTableOfJointStatesHasWhatItSays() {
        assertEquals(3, JOINT.size());
        for (Golden golden : JOINT) {
            assertTrue(golden.states().size() >= 5, golden.name());
            assertTrue(golden.states().stream().anyMatch(Joint::stable), golden.name());
            assertTrue(golden.states().stream().anyMatch(state -> !state.stable()), golden.name());
            boolean columns = golden.banks().subList(0, 2).stream().anyMatch(bank -> bank.across() > 1);
            assertEquals(columns, golden.states().stream().anyMatch(state -> !state.even()), golden.name());
        }
        assertEquals(2, JOINT.stream().filter(golden -> golden.states().stream().anyMatch(state -> !state.even())).count());
    }

    // as a design

    private static String bay(int number) {
        return number == Network.OUTSIDE ? "outside" : "bay " + number;
    }

    private static Condition condition(Golden golden) {
        List<FailedMover> failed = new ArrayList<>();
        for (int b = 0; b < golden.banks().size(); b++) {
            String id = "bank " + b;
            golden.banks().get(b).failed().forEach((position, state) -> failed.add(Cases.failed(id, position, state)));
        }
        return new Condition("golden", Optional.of(Quantity.of(golden.outside()[0])), Optional.empty(),
                Optional.of(Quantity.of(golden.outside()[1])), Optional.of(Quantity.of(golden.outside()[2])), Optional.empty(),
                Map.of(), Optional.of(Quantity.of(golden.clogging())), Optional.empty(), Optional.empty(), Optional.empty(),
                failed, Value.Tree.EMPTY);
    }

    private static String kind(Opening opening) {
        return switch (opening.kind()) {
            case "grille" -> "grille";
            case "measured" -> "measured resistance";
            default -> "opening";
        };
    }

    private static Object[] members(Opening opening) {
        double[] v = opening.values();
        return switch (opening.kind()) {
            case "opening" -> new Object[] {"area", v[0], "lossCoefficient", v[1]};
            case "rectangle" -> new Object[] {"width", v[0], "height", v[1], "lossCoefficient", v[2]};
            case "round" -> new Object[] {"diameter", v[0], "dischargeCoefficient", v[1]};
            case "grille" -> new Object[] {"width", v[0], "height", v[1], "openRatio", v[2], "lossCoefficient", v[3]};
            case "measured" -> new Object[] {"linear", v[0], "quadratic", v[1], "density", v[2], "filter", v[3] == 1};
            default -> throw new IllegalArgumentException(opening.kind());
        };
    }

    private static Design design(Golden golden) {
        List<Passage> passages = new ArrayList<>();
        for (int e = 0; e < golden.passages().size(); e++) {
            Opening opening = golden.passages().get(e);
            passages.add(Cases.passage("passage " + e, kind(opening), bay(opening.from()), bay(opening.to()), members(opening)));
        }
        for (int b = 0; b < golden.banks().size(); b++) {
            Fans fans = golden.banks().get(b);
            passages.add(Cases.passage("bank " + b, Passage.BANK, bay(fans.from()), bay(fans.to()), "mover", fans.mover().id(),
                    "across", fans.across(), "along", fans.along(), "series", fans.series()));
        }
        List<tramontane.model.Bay> bays = new ArrayList<>();
        for (int i = 0; i < golden.bays().size(); i++) {
            bays.add(new tramontane.model.Bay(bay(i), Optional.of(Quantity.of(golden.bays().get(i).height())), Value.Tree.EMPTY));
        }
        return Design.EMPTY.withAirMovers(golden.banks().stream().map(Fans::mover).distinct().toList())
                .withAirPath(new AirPath(bays, passages, Value.Tree.EMPTY));
    }

    private static AirPathSolver solver(Golden golden) {
        AirPathModel model = AirPathModel.of(design(golden), condition(golden), Cases.KINDS);
        assertEquals(List.of(), model.obstacles());
        Map<String, Double> speeds = new HashMap<>();
        for (int b = 0; b < golden.banks().size(); b++) {
            speeds.put("bank " + b, golden.banks().get(b).speed());
        }
        return model.at(speeds);
    }

    private static OperatingPoint point(AirPathSolution solution) {
        assertEquals(List.of(), solution.obstacles());
        return solution.point().orElseThrow();
    }

    private static void agrees(Golden golden, int warm, OperatingPoint point) {
        String where = golden.name() + (warm == 1 ? " warm: " : " cold: ");
        double largest = TOLERANCE * golden.largestFlow(warm);
        double highest = TOLERANCE * golden.highestPressure(warm);
        for (int i = 0; i < golden.bays().size(); i++) {
            OperatingPoint.BayState state = point.bays().get(i);
            double density = warm == 1 ? golden.bays().get(i).density() : golden.density();
            assertEquals(density, state.density(), 1e-13, where + "density of bay " + i);
            assertEquals(golden.bays().get(i).pressure()[warm], state.pressure(), highest, where + "pressure of bay " + i);
        }
        for (int e = 0; e < golden.passages().size(); e++) {
            assertEquals(golden.passages().get(e).massFlow()[warm], point.passages().get(e).massFlow(), largest,
                    where + "flow of passage " + e);
        }
        for (int b = 0; b < golden.banks().size(); b++) {
            Fans fans = golden.banks().get(b);
            OperatingPoint.BankPoint bank = point.banks().get(b);
            assertEquals(fans.massFlow(warm), bank.massFlow(), largest, where + "flow of bank " + b);
            for (OperatingPoint.MoverPoint mover : bank.movers()) {
                double column = fans.columnFlow()[warm][(mover.position() - 1) / fans.series()];
                assertEquals(column, mover.flow() * bank.density(), largest, where + "flow of mover " + mover.position());
            }
        }
    }

    @ParameterizedTest
    @MethodSource("withoutFlaps")
    void agreesCold(Golden golden) {
        agrees(golden, 0, point(solver(golden).solve(golden.temperatures(0))));
    }

    @ParameterizedTest
    @MethodSource("withoutFlaps")
    void agreesWarm(Golden golden) {
        agrees(golden, 1, point(solver(golden).solve(golden.temperatures(1))));
    }

    @ParameterizedTest
    @MethodSource("withoutFlaps")
    void agreesWarmFromTheColdSolution(Golden golden) {
        AirPathSolver solver = solver(golden);
        AirPathSolution cold = solver.solve(golden.temperatures(0));
        agrees(golden, 1, point(solver.solve(golden.temperatures(1), NetworkSolver.Settings.STANDARD, cold.network(),
                () -> false)));
    }

    // duty points

    /**
     * Whether like columns side by side would part at a crossing, even where the bank as a whole is stable there: each of them
     * moves more the more it moves. PCHIP rises just where a measured point lies higher than the one before.
     */
    private static boolean parts(Golden golden, int warm, Crossing crossing) {
        Fans fans = golden.banks().get(crossing.bank());
        int columns = fans.across() * fans.along();
        MoverCurve curve = fans.mover().curves().getFirst();
        double[] flow = curve.flow().toArray();
        double[] pressure = curve.pressure().toArray();
        double measured = flow(golden, warm, crossing) / columns * curve.speed().orElseThrow().si() / fans.speed();
        return columns > 1 && IntStream.range(1, flow.length)
                .anyMatch(i -> flow[i - 1] < measured && measured < flow[i] && pressure[i - 1] < pressure[i]);
    }

    private static double flow(Golden golden, int warm, Crossing crossing) {
        Fans fans = golden.banks().get(crossing.bank());
        int inlet = crossing.massFlow() >= 0 ? fans.from() : fans.to();
        double density = inlet == Network.OUTSIDE || warm == 0 ? golden.density() : golden.bays().get(inlet).density();
        return crossing.massFlow() / density;
    }

    /** The crossing at which the air comes to rest if like columns share evenly. */
    private static Crossing reached(Golden golden, int warm) {
        return golden.crossings().get(warm).stream().filter(Crossing::reached).findFirst().orElseThrow();
    }

    @ParameterizedTest
    @MethodSource("dipping")
    void findsEveryCrossing(Golden golden) {
        AirPathSolver solver = solver(golden);
        for (int warm = 0; warm < 2; warm++) {
            List<Crossing> expected = golden.crossings().get(warm);
            AirPathSolution solution = solver.solve(golden.temperatures(warm));
            String where = golden.name() + (warm == 1 ? " warm" : " cold");
            assertTrue(solution.complete(), where);
            List<JointState> even = solution.states().stream().filter(JointState::even).toList();
            assertEquals(expected.size(), even.size(), where);
            double largest = TOLERANCE * golden.largestFlow(warm);
            double highest = TOLERANCE * expected.stream().mapToDouble(each -> Math.abs(each.pressure())).max().orElseThrow();
            for (int i = 0; i < expected.size(); i++) {
                Crossing crossing = expected.get(i);
                assertEquals(1, even.get(i).points().size(), where);
                DutyPoint found = even.get(i).points().getFirst();
                double density = crossing.massFlow() / flow(golden, warm, crossing);
                assertEquals("bank " + crossing.bank(), found.bank());
                assertEquals(crossing.massFlow(), found.flow() * density, largest, where + ", flow of crossing " + i);
                assertEquals(crossing.pressure(), found.pressure(), highest, where + ", pressure of crossing " + i);
                assertEquals(crossing.stable() && !parts(golden, warm, crossing), even.get(i).stable(), where + ", crossing " + i);
            }
            Crossing reached = reached(golden, warm);
            JointState state = solution.states().get(solution.reached());
            assertTrue(state.stable(), where);
            assertTrue(point(solution).banks().get(reached.bank()).stable(), where);
            assertEquals(!parts(golden, warm, reached), state.even(), where);
            if (state.even()) {
                assertEquals(reached.massFlow(), point(solution).banks().get(reached.bank()).massFlow(), largest, where);
            }
        }
    }

    @ParameterizedTest
    @MethodSource("joint")
    void findsEveryJointState(Golden golden) {
        AirPathSolution solution = solver(golden).solve(golden.temperatures(0));
        assertEquals(List.of(), solution.obstacles());
        assertTrue(solution.complete());
        assertEquals(golden.states().size(), solution.states().size(), () -> golden.name() + ": " + solution.states());
        double largest = golden.states().stream().flatMapToDouble(state -> Arrays.stream(state.massFlow())).map(Math::abs).max()
                .orElseThrow();
        List<JointState> left = new ArrayList<>(solution.states());
        for (Joint expected : golden.states()) {
            List<JointState> met = left.stream().filter(state -> IntStream.range(0, expected.massFlow().length).allMatch(b ->
                    Math.abs(massFlow(golden, state, b) - expected.massFlow()[b]) <= JOINT_TOLERANCE * largest)).toList();
            String where = golden.name() + ", " + Arrays.toString(expected.massFlow()) + " kg/s among " + left;
            assertEquals(1, met.size(), where);
            assertEquals(expected.even(), met.getFirst().even(), where);
            assertEquals(expected.stable(), met.getFirst().stable(), where);
            left.remove(met.getFirst());
        }
        assertTrue(solution.states().get(solution.reached()).stable());
    }

    private static double massFlow(Golden golden, JointState state, int bank) {
        DutyPoint point = state.points().get(bank);
        assertEquals("bank " + bank, point.bank());
        return golden.density() * point.flow();
    }

    // as a bare network

    private static FlowLaw law(Opening opening, Condition condition) {
        double[] v = opening.values();
        if (!opening.kind().equals("flap")) {
            return Cases.law(Cases.KINDS.stream().filter(each -> each.form().name().equals(kind(opening))).findFirst()
                    .orElseThrow(), condition, members(opening));
        }
        double leak = v[2] * v[0];
        return new FlapLaw(new LocalLoss(v[1], v[0], LocalLoss.roundDiameter(v[0]), v[0]),
                new LocalLoss(v[3], leak, LocalLoss.roundDiameter(leak), leak), v[4]);
    }

    private static NetworkSolver networkSolver(Golden golden) {
        Condition condition = condition(golden);
        List<Network.Bay> bays = new ArrayList<>();
        for (int i = 0; i < golden.bays().size(); i++) {
            bays.add(new Network.Bay(bay(i), golden.bays().get(i).height()));
        }
        List<Network.Branch> branches = new ArrayList<>();
        for (Opening opening : golden.passages()) {
            branches.add(new Network.Branch("passage " + branches.size(), opening.from(), opening.to(), law(opening, condition)));
        }
        for (int b = 0; b < golden.banks().size(); b++) {
            Fans fans = golden.banks().get(b);
            Bank bank = Cases.bank("bank " + b, fans.mover(), fans.across() * fans.along(), fans.series(), fans.failed());
            branches.add(new Network.Branch(bank.id(), fans.from(), fans.to(), bank.law(fans.speed())));
        }
        return NetworkSolver.of(new Network(bays, branches));
    }

    private static NetworkLoad load(Golden golden, int warm) {
        IntToDoubleFunction density = i -> warm == 1 ? golden.bays().get(i).density() : golden.density();
        IntToDoubleFunction viscosity = i -> warm == 1 ? golden.bays().get(i).viscosity() : golden.viscosity();
        int bays = golden.bays().size();
        return NetworkLoad.of(NetworkAir.of(IntStream.range(0, bays).mapToDouble(density).toArray(),
                IntStream.range(0, bays).mapToDouble(viscosity).toArray(), golden.density(), golden.viscosity()));
    }

    private static void agrees(Golden golden, int warm, NetworkSolution solution) {
        assertEquals(Optional.empty(), solution.why());
        String where = golden.name() + (warm == 1 ? " warm: " : " cold: ");
        double largest = TOLERANCE * golden.largestFlow(warm);
        for (int i = 0; i < golden.bays().size(); i++) {
            assertEquals(golden.bays().get(i).pressure()[warm], solution.pressure(i), TOLERANCE * golden.highestPressure(warm),
                    where + "pressure of bay " + i);
        }
        int passages = golden.passages().size();
        for (int e = 0; e < solution.branches(); e++) {
            double expected = e < passages ? golden.passages().get(e).massFlow()[warm]
                    : golden.banks().get(e - passages).massFlow(warm);
            assertEquals(expected, solution.massFlow(e), largest, where + "flow of branch " + e);
        }
    }

    @ParameterizedTest
    @MethodSource("falling")
    void agreesAsABareNetwork(Golden golden) {
        NetworkSolver solver = networkSolver(golden);
        NetworkSolution cold = solver.solve(load(golden, 0), NetworkSolver.Settings.STANDARD);
        agrees(golden, 0, cold);
        agrees(golden, 1, solver.solve(load(golden, 1), NetworkSolver.Settings.STANDARD));
        agrees(golden, 1, solver.solve(load(golden, 1), NetworkSolver.Settings.STANDARD, Optional.of(cold), () -> false));
    }

    @ParameterizedTest
    @MethodSource("table")
    void ourAirIsTheirs(Golden golden) {
        AirState outside = new AirState(golden.outside()[1], golden.outside()[0], golden.outside()[2]);
        assertEquals(golden.density(), outside.density(), 1e-13);
        assertEquals(golden.viscosity(), outside.viscosity(), 1e-18);
        for (Bay bay : golden.bays()) {
            assertEquals(bay.density(), outside.heatedTo(bay.temperature()).density(), 1e-13);
            assertEquals(bay.viscosity(), outside.heatedTo(bay.temperature()).viscosity(), 1e-18);
        }
    }
}
