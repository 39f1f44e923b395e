package tramontane.airflow;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.BooleanSupplier;
import tramontane.airflow.internal.Bank;
import tramontane.airflow.internal.BankLaw;
import tramontane.airflow.internal.DutySearch;
import tramontane.airflow.internal.EasedLaw;
import tramontane.airflow.internal.MoverCharacteristic;
import tramontane.analysis.Finding;
import tramontane.analysis.FlowLaw;
import tramontane.analysis.OperatingPoint;
import tramontane.model.Bay;
import tramontane.physics.AirState;

/**
 * Solves an air path at given speeds for any bay temperatures; made by {@link AirPathModel#at}.
 *
 * <p>It gives the same answer however often it was used, and belongs to one thread.
 */
public final class AirPathSolver {

    /** Flow over the largest one that counts as none: mass balances close to no better. */
    private static final double NO_FLOW = 1e-9;
    /** Mass flow that counts as none whatever the largest, kg/s. */
    private static final double LEAST_FLOW = 1e-12;


    /** Last change of a flow over the largest measured flow with which a bank counts as settled. */
    private static final double SETTLED = 1e-11;
    private static final int MOST_STEPS = 5000;

    private final AirPathModel model;
    private final List<AirPathModel.Part> parts;
    private final BankLaw[] bankLaws;
    private final BankLaw.Parts[] bankParts;
    /** The branches of each passage: one, or one for each part of its bank. */
    private final int[][] branchesOf;
    /** Branches of which there may be several duty points. */
    private final List<Dip> dips = new ArrayList<>();
    private final double[] speeds;
    private final Optional<NetworkSolver> solver;
    private final List<Finding> obstacles;

    /** A branch whose curve does not fall all the way. */
    private record Dip(int part, int branch, BankLaw law, EasedLaw eased) {
    }

    AirPathSolver(AirPathModel model, List<AirPathModel.Part> parts, Map<String, Double> given) {
        this.model = model;
        this.parts = parts;
        bankLaws = new BankLaw[parts.size()];
        bankParts = new BankLaw.Parts[parts.size()];
        branchesOf = new int[parts.size()][];
        speeds = new double[parts.size()];
        List<Finding> faults = new ArrayList<>(model.obstacles());
        List<Network.Branch> branches = new ArrayList<>();
        for (int e = 0; e < parts.size(); e++) {
            AirPathModel.Part part = parts.get(e);
            List<? extends FlowLaw> laws = part.law().map(List::of).orElse(List.of());
            if (part.bank().isPresent()) {
                laws = bank(e, part.bank().get(), given, faults);
            }
            branchesOf[e] = new int[laws.size()];
            for (int k = 0; k < laws.size(); k++) {
                branchesOf[e][k] = branches.size();
                if (laws.get(k) instanceof BankLaw bank && !bank.increasing()) {
                    dips.add(new Dip(e, branches.size(), bank, new EasedLaw(bank)));
                }
                branches.add(new Network.Branch(part.passage().id(), part.from(), part.to(), laws.get(k)));
            }
        }
        if (dips.size() > 1) {
            for (Dip dip : dips) {
                Network.Branch branch = branches.get(dip.branch());
                branches.set(dip.branch(), new Network.Branch(branch.id(), branch.from(), branch.to(), dip.eased()));
            }
        }
        obstacles = List.copyOf(faults);
        solver = faults.isEmpty() ? Optional.of(NetworkSolver.of(new Network(model.bays().stream()
                .map(bay -> new Network.Bay(bay.id(), AirPathModel.height(bay))).toList(), branches))) : Optional.empty();
    }

    private List<BankLaw> bank(int e, Bank bank, Map<String, Double> given, List<Finding> faults) {
        speeds[e] = given.getOrDefault(bank.id(), bank.ratedSpeed() * model.condition().speedSetting());
        if (!(speeds[e] >= 0 && speeds[e] < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException("speed of bank " + bank.id() + " must be a number not below zero, got " + speeds[e]);
        }
        Optional<String> fault = bank.fault(speeds[e]);
        if (fault.isPresent()) {
            faults.add(AirPathModel.obstacle(bank.id(), "bank " + bank.id() + " cannot be computed: " + fault.get(),
                    "complete the part's data"));
            return List.of();
        }
        BankLaw law = bank.law(speeds[e]);
        bankLaws[e] = law;
        bankParts[e] = law.parts();
        return bankParts[e].laws();
    }

    /** Why it cannot be solved; empty if nothing is in the way. */
    public List<Finding> obstacles() {
        return obstacles;
    }

    /** Solves from a cold start. */
    public AirPathSolution solve(double[] temperatures) {
        return solve(temperatures, NetworkSolver.Settings.STANDARD, Optional.empty(), () -> false);
    }

    /**
     * Solves.
     *
     * @param temperatures temperature of each bay in the order of {@link AirPathModel#bays}, K
     * @param settings     when to stop
     * @param start        a solution at other temperatures or speeds to start from; not used where a bank has several duty points
     * @param stop         asked now and then whether the answer is no longer wanted
     */
    public AirPathSolution solve(double[] temperatures, NetworkSolver.Settings settings, Optional<NetworkSolution> start,
            BooleanSupplier stop) {
        if (solver.isEmpty()) {
            return new AirPathSolution(Optional.empty(), List.of(), false, obstacles, Optional.empty());
        }
        AirState outside = model.outside();
        double[] density = new double[temperatures.length];
        double[] viscosity = new double[temperatures.length];
        for (int i = 0; i < temperatures.length; i++) {
            AirState air = temperatures[i] == outside.temperature() ? outside : outside.heatedTo(temperatures[i]);
            density[i] = air.density();
            viscosity[i] = air.viscosity();
        }
        NetworkAir air = NetworkAir.of(density, viscosity, outside.density(), outside.viscosity());
        NetworkLoad load = NetworkLoad.of(air);
        if (dips.size() == 1) {
            return search(dips.getFirst(), load, settings, temperatures, stop);
        }
        if (dips.size() > 1) {
            return follow(load, settings, temperatures, stop);
        }
        NetworkSolution solution = solver.get().solve(load, settings, start, stop);
        return solution.converged() ? new AirPathSolution(Optional.of(point(solution, air, temperatures, true)), List.of(), true,
                List.of(), Optional.of(solution)) : AirPathSolution.none(unsolved(solution));
    }

    /** With one such branch: every crossing of its curve with its system curve. */
    private AirPathSolution search(Dip dip, NetworkLoad load, NetworkSolver.Settings settings, double[] temperatures,
            BooleanSupplier stop) {
        String id = parts.get(dip.part()).passage().id();
        int inlet = parts.get(dip.part()).from();
        DutySearch.Found found = DutySearch.search(solver.orElseThrow(), load, settings, dip.branch(), dip.law(),
                load.air().density(inlet), load.air().viscosity(inlet), stop);
        if (found.failed().isPresent()) {
            return AirPathSolution.none(unsolved(found.failed().get()));
        }
        if (found.reached() < 0) {
            return AirPathSolution.none(AirPathModel.obstacle(id, "bank " + id + " has no duty point: its curve never meets "
                    + "what the air path asks for", "check its curve and the passages next to it"));
        }
        List<DutyPoint> crossings = found.crossings().stream().map(crossing -> new DutyPoint(id,
                flow(dip.part(), crossing.solution()), crossing.pressure(), crossing.stable())).toList();
        NetworkSolution solution = found.crossings().get(found.reached()).solution();
        boolean stable = crossings.get(found.reached()).stable();
        return new AirPathSolution(Optional.of(point(solution, load.air(), temperatures, stable)), crossings, true, List.of(),
                Optional.of(solution));
    }

    /** With several: where the air settles from rest, and for comparison from the largest measured flows. */
    private AirPathSolution follow(NetworkLoad load, NetworkSolver.Settings settings, double[] temperatures, BooleanSupplier stop) {
        NetworkSolution fromRest = settle(0, load, settings, stop);
        NetworkSolution fromFull = fromRest.converged() ? settle(1, load, settings, stop) : fromRest;
        if (!fromFull.converged()) {
            return AirPathSolution.none(unsolved(fromFull));
        }
        List<DutyPoint> points = new ArrayList<>();
        dips.stream().mapToInt(Dip::part).distinct().forEach(e -> {
            for (NetworkSolution each : List.of(fromRest, fromFull)) {
                points.add(new DutyPoint(parts.get(e).passage().id(), flow(e, each), -each.drop(branchesOf[e][0]), true));
            }
        });
        return new AirPathSolution(Optional.of(point(fromRest, load.air(), temperatures, true)), points, false, List.of(),
                Optional.of(fromRest));
    }

    private NetworkSolution settle(double share, NetworkLoad load, NetworkSolver.Settings settings, BooleanSupplier stop) {
        double scale = 0;
        for (Dip dip : dips) {
            int inlet = parts.get(dip.part()).from();
            dip.eased().start(load.air().density(inlet), share * dip.eased().largestFlow());
            scale = Math.max(scale, dip.eased().largestFlow());
        }
        Optional<NetworkSolution> last = Optional.empty();
        for (int i = 0; i < MOST_STEPS; i++) {
            NetworkSolution solution = solver.orElseThrow().solve(load, settings, last, stop);
            if (!solution.converged()) {
                return solution;
            }
            double moved = 0;
            for (Dip dip : dips) {
                moved = Math.max(moved, dip.eased().moveTo(solution.flow(dip.branch())));
            }
            if (moved <= SETTLED * scale) {
                return solution;
            }
            last = Optional.of(solution);
        }
        return last.orElseThrow().unsettled(parts.get(dips.getFirst().part()).passage().id());
    }

    private static Finding unsolved(NetworkSolution solution) {
        return AirPathModel.obstacle(solution.place(), "the flows could not be computed: the air path "
                + solution.why().orElse("") + (solution.place().isEmpty() ? "" : ", worst at " + solution.place()),
                "check the parameters there");
    }

    private OperatingPoint point(NetworkSolution solution, NetworkAir air, double[] temperatures, boolean stable) {
        List<OperatingPoint.BankPoint> banks = new ArrayList<>();
        List<OperatingPoint.PassageFlow> passages = new ArrayList<>();
        double largest = 0;
        for (int e = 0; e < parts.size(); e++) {
            largest = Math.max(largest, Math.abs(massFlow(e, solution)));
        }
        for (int e = 0; e < parts.size(); e++) {
            // below what the balance closes to, a flow is a dead end's rounding
            boolean none = Math.abs(massFlow(e, solution)) <= Math.max(LEAST_FLOW, NO_FLOW * largest);
            double massFlow = none ? 0 : massFlow(e, solution);
            passages.add(new OperatingPoint.PassageFlow(parts.get(e).passage().id(), massFlow,
                    massFlow / solution.density(branchesOf[e][0]),
                    none && bankLaws[e] == null ? 0 : solution.drop(branchesOf[e][0])));
            if (bankLaws[e] != null) {
                banks.add(bankPoint(e, massFlow, solution, air, temperatures, stable || bankLaws[e].increasing()));
            }
        }
        List<OperatingPoint.BayState> bays = new ArrayList<>();
        for (int i = 0; i < temperatures.length; i++) {
            bays.add(new OperatingPoint.BayState(model.bays().get(i).id(), solution.pressure(i), temperatures[i], air.density(i)));
        }
        AirState outside = model.outside();
        bays.add(new OperatingPoint.BayState(Bay.OUTSIDE, 0, outside.temperature(), outside.density()));
        return new OperatingPoint(banks, passages, bays);
    }

    private double massFlow(int e, NetworkSolution solution) {
        double sum = 0;
        for (int branch : branchesOf[e]) {
            sum += solution.massFlow(branch);
        }
        return sum;
    }

    /** Volume flow at the density of the air that comes in, m³/s. */
    private double flow(int e, NetworkSolution solution) {
        return massFlow(e, solution) / solution.density(branchesOf[e][0]);
    }

    private double columnFlow(int e, int column, NetworkSolution solution, double viscosity) {
        BankLaw.Parts inParts = bankParts[e];
        int part = inParts.partOf()[column];
        int branch = branchesOf[e][part];
        return inParts.laws().get(part).columnFlow(inParts.placeInPart()[column], solution.flow(branch), solution.density(branch),
                viscosity);
    }

    private OperatingPoint.BankPoint bankPoint(int e, double massFlow, NetworkSolution solution, NetworkAir air,
            double[] temperatures, boolean stable) {
        AirPathModel.Part part = parts.get(e);
        Bank bank = part.bank().orElseThrow();
        BankLaw law = bankLaws[e];
        int inlet = massFlow >= 0 ? part.from() : part.to();
        double density = solution.density(branchesOf[e][0]);
        double viscosity = air.viscosity(inlet);
        double temperature = inlet == Network.OUTSIDE ? model.outside().temperature() : temperatures[inlet];
        List<OperatingPoint.MoverPoint> movers = new ArrayList<>();
        boolean stated = law.mover().isPresent();
        double power = 0;
        FlowLaw.Drop drop = new FlowLaw.Drop();
        for (int position = 1; position <= bank.positions(); position++) {
            double flow = columnFlow(e, (position - 1) / bank.series(), solution, viscosity);
            boolean running = bank.standing(position, speeds[e]).isEmpty();
            OptionalDouble input = OptionalDouble.empty();
            double stage = running ? law.stage(position) : 1;
            if (running) {
                MoverCharacteristic mover = law.mover().orElseThrow();
                mover.at(flow, density, viscosity, drop);
                input = mover.power(flow, density);
                stated &= input.isPresent();
                power += input.orElse(0);
            } else {
                law.standing(position).orElseThrow().at(flow, density, viscosity, drop);
            }
            movers.add(new OperatingPoint.MoverPoint(position, running, flow, -stage * drop.pressure(), running ? speeds[e] : 0, input));
        }
        boolean any = law.mover().isPresent();
        double pressure = any || massFlow != 0 ? -solution.drop(branchesOf[e][0]) : 0;
        return new OperatingPoint.BankPoint(bank.id(), massFlow / density, massFlow, pressure,
                any ? speeds[e] : 0, stated ? OptionalDouble.of(power) : OptionalDouble.empty(), temperature, density,
                stable, movers);
    }

    /**
     * The pressure that a bank still gives at a flow.
     *
     * @param bank      its id
     * @param flow      volume flow at its inlet, m³/s
     * @param density   density at its inlet, kg/m³
     * @param viscosity dynamic viscosity there, Pa s
     * @return fan static pressure, Pa; empty for a bank that the air path does not have or that cannot be computed
     */
    public OptionalDouble bankPressure(String bank, double flow, double density, double viscosity) {
        for (int e = 0; e < bankLaws.length; e++) {
            if (bankLaws[e] != null && bankLaws[e].defined() && parts.get(e).passage().id().equals(bank)) {
                FlowLaw.Drop drop = new FlowLaw.Drop();
                bankLaws[e].at(flow, density, viscosity, drop);
                return OptionalDouble.of(-drop.pressure());
            }
        }
        return OptionalDouble.empty();
    }
}
