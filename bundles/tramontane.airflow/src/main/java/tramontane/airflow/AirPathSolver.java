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

    private final AirPathModel model;
    private final List<AirPathModel.Part> parts;
    private final BankLaw[] bankLaws;
    /** Banks that are solved as two branches; the second is {@link #second}. */
    private final List<Optional<BankLaw.Split>> splits = new ArrayList<>();
    private final int[] second;
    private final double[] speeds;
    private final Optional<NetworkSolver> solver;
    private final List<Finding> obstacles;

    AirPathSolver(AirPathModel model, List<AirPathModel.Part> parts, Map<String, Double> given) {
        this.model = model;
        this.parts = parts;
        bankLaws = new BankLaw[parts.size()];
        second = new int[parts.size()];
        speeds = new double[parts.size()];
        List<Finding> faults = new ArrayList<>(model.obstacles());
        List<String> dips = new ArrayList<>();
        List<Network.Branch> branches = new ArrayList<>();
        for (int e = 0; e < parts.size(); e++) {
            AirPathModel.Part part = parts.get(e);
            Optional<FlowLaw> law = part.law();
            if (part.bank().isPresent()) {
                law = bank(e, part.bank().get(), given, faults, dips).map(FlowLaw.class::cast);
            }
            Optional<BankLaw.Split> split = Optional.ofNullable(bankLaws[e]).flatMap(BankLaw::split);
            splits.add(split);
            law.ifPresent(each -> branches.add(new Network.Branch(part.passage().id(), part.from(), part.to(),
                    split.<FlowLaw>map(BankLaw.Split::dipping).orElse(each))));
        }
        for (int e = 0; e < parts.size(); e++) {
            if (splits.get(e).isPresent()) {
                second[e] = branches.size();
                AirPathModel.Part part = parts.get(e);
                branches.add(new Network.Branch(part.passage().id(), part.from(), part.to(), splits.get(e).get().rest()));
            }
        }
        if (dips.size() > 1) {
            faults.add(AirPathModel.obstacle(dips.getFirst(), "the curves of the banks " + String.join(", ", dips)
                    + " do not fall all the way, so that there may be several duty points; that can be computed for one such "
                    + "bank in a design only", "put like movers into one bank, or use curves without a dip"));
        }
        obstacles = List.copyOf(faults);
        solver = faults.isEmpty() ? Optional.of(NetworkSolver.of(new Network(model.bays().stream()
                .map(bay -> new Network.Bay(bay.id(), AirPathModel.height(bay))).toList(), branches))) : Optional.empty();
    }

    private Optional<BankLaw> bank(int e, Bank bank, Map<String, Double> given, List<Finding> faults, List<String> dips) {
        speeds[e] = given.getOrDefault(bank.id(), bank.ratedSpeed() * model.condition().speedSetting());
        if (!(speeds[e] >= 0 && speeds[e] < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException("speed of bank " + bank.id() + " must be a number not below zero, got " + speeds[e]);
        }
        Optional<String> fault = bank.fault(speeds[e]);
        if (fault.isPresent()) {
            faults.add(AirPathModel.obstacle(bank.id(), "bank " + bank.id() + " cannot be computed: " + fault.get(),
                    "complete the part's data"));
            return Optional.empty();
        }
        BankLaw law = bank.law(speeds[e]);
        if (!law.defined() && law.split().isEmpty()) {
            faults.add(AirPathModel.obstacle(bank.id(), "bank " + bank.id() + " cannot be computed: its movers' curve does not "
                    + "fall all the way, and with movers failed in series its columns may share the flow in several ways",
                    "use a curve without a dip"));
        } else if (!law.increasing()) {
            dips.add(bank.id());
        }
        bankLaws[e] = law;
        return Optional.of(law);
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
            return new AirPathSolution(Optional.empty(), List.of(), obstacles, Optional.empty());
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
        for (int e = 0; e < bankLaws.length; e++) {
            if (bankLaws[e] != null && !bankLaws[e].increasing()) {
                return search(e, load, settings, temperatures, stop);
            }
        }
        NetworkSolution solution = solver.get().solve(load, settings, start, stop);
        return solution.converged()
                ? new AirPathSolution(Optional.of(point(solution, air, temperatures, true)), List.of(), List.of(), Optional.of(solution))
                : AirPathSolution.none(unsolved(solution));
    }

    private AirPathSolution search(int bank, NetworkLoad load, NetworkSolver.Settings settings, double[] temperatures,
            BooleanSupplier stop) {
        String id = parts.get(bank).passage().id();
        int inlet = parts.get(bank).from();
        BankLaw law = splits.get(bank).map(BankLaw.Split::dipping).orElse(bankLaws[bank]);
        DutySearch.Found found = DutySearch.search(solver.orElseThrow(), load, settings, bank, law,
                load.air().density(inlet), load.air().viscosity(inlet), stop);
        if (found.failed().isPresent()) {
            return AirPathSolution.none(unsolved(found.failed().get()));
        }
        if (found.reached() < 0) {
            return AirPathSolution.none(AirPathModel.obstacle(id, "bank " + id + " has no duty point: its curve never meets "
                    + "what the air path asks for", "check its curve and the passages next to it"));
        }
        List<DutyPoint> crossings = found.crossings().stream().map(crossing -> new DutyPoint(id,
                massFlow(bank, crossing.solution()) / crossing.solution().density(bank), crossing.pressure(), crossing.stable())).toList();
        NetworkSolution solution = found.crossings().get(found.reached()).solution();
        boolean stable = crossings.get(found.reached()).stable();
        return new AirPathSolution(Optional.of(point(solution, load.air(), temperatures, stable)), crossings, List.of(),
                Optional.of(solution));
    }

    private static Finding unsolved(NetworkSolution solution) {
        return AirPathModel.obstacle(solution.place(), "the flows could not be computed: the air path "
                + solution.why().orElse("") + (solution.place().isEmpty() ? "" : ", worst at " + solution.place()),
                "check the parameters there");
    }

    private OperatingPoint point(NetworkSolution solution, NetworkAir air, double[] temperatures, boolean stable) {
        List<OperatingPoint.BankPoint> banks = new ArrayList<>();
        List<OperatingPoint.PassageFlow> passages = new ArrayList<>();
        for (int e = 0; e < parts.size(); e++) {
            double massFlow = massFlow(e, solution);
            passages.add(new OperatingPoint.PassageFlow(parts.get(e).passage().id(), massFlow, massFlow / solution.density(e),
                    solution.drop(e)));
            if (bankLaws[e] != null) {
                banks.add(bankPoint(e, solution, air, temperatures, stable || bankLaws[e].increasing()));
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
        return solution.massFlow(e) + (splits.get(e).isPresent() ? solution.massFlow(second[e]) : 0);
    }

    private double columnFlow(int e, int column, NetworkSolution solution, double viscosity) {
        double density = solution.density(e);
        return splits.get(e).map(split -> split.columnFlow(column, solution.flow(e), solution.massFlow(second[e]) / density,
                density, viscosity)).orElseGet(() -> bankLaws[e].columnFlow(column, solution.flow(e), density, viscosity));
    }

    private OperatingPoint.BankPoint bankPoint(int e, NetworkSolution solution, NetworkAir air, double[] temperatures,
            boolean stable) {
        AirPathModel.Part part = parts.get(e);
        Bank bank = part.bank().orElseThrow();
        BankLaw law = bankLaws[e];
        double massFlow = massFlow(e, solution);
        int inlet = massFlow >= 0 ? part.from() : part.to();
        double density = solution.density(e);
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
            if (running) {
                MoverCharacteristic mover = law.mover().orElseThrow();
                mover.at(flow, density, viscosity, drop);
                input = mover.power(flow, density);
                stated &= input.isPresent();
                power += input.orElse(0);
            } else {
                law.standing(position).orElseThrow().at(flow, density, viscosity, drop);
            }
            movers.add(new OperatingPoint.MoverPoint(position, running, flow, -drop.pressure(), running ? speeds[e] : 0, input));
        }
        boolean any = law.mover().isPresent();
        return new OperatingPoint.BankPoint(bank.id(), massFlow / density, massFlow, -solution.drop(e),
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
