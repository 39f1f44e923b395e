package tramontane.airflow;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.BooleanSupplier;
import tramontane.airflow.internal.Bank;
import tramontane.airflow.internal.BankLaw;
import tramontane.airflow.internal.BankTrace;
import tramontane.airflow.internal.DutySearch;
import tramontane.airflow.internal.JointSearch;
import tramontane.airflow.internal.MoverCharacteristic;
import tramontane.airflow.internal.Segment;
import tramontane.analysis.Chart;
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
    /** Difference of flows over the largest measured one up to which two states are one. */
    private static final double SAME = 1e-6;
    /** The same for air that creeps: where a curve nearly touches what is asked, it takes for ever to come to rest. */
    private static final double CREEPS = 1e-2;
    private static final int MOST_STEPS = 5000;

    /** Movers side by side, their curves with a dip, of which all uneven shares are looked for; with more only the one reached. */
    private static final int MOST_APART = 16;

    private final AirPathModel model;
    private final List<AirPathModel.Part> parts;
    private final List<FlowLaw> laws = new ArrayList<>();
    private final double[] speeds;
    private final Map<String, Double> pressure;
    private final Map<String, Double> area;
    private final Optional<Layout> even;
    private Optional<Layout> apart = Optional.empty();
    /** That of another speed, if there is one. */
    private final Optional<Layout> likeApart;
    private final List<Finding> obstacles;

    AirPathSolver(AirPathModel model, List<AirPathModel.Part> parts, Map<String, Double> given,
            Map<String, Double> pressure, Map<String, Double> area) {
        this(model, parts, speeds(model, parts, given), Map.copyOf(pressure), Map.copyOf(area), Optional.empty());
    }

    /** With what holds at other speeds too taken from one that has no obstacles. */
    private AirPathSolver(AirPathModel model, List<AirPathModel.Part> parts, double[] speeds, Map<String, Double> pressure,
            Map<String, Double> area, Optional<AirPathSolver> like) {
        this.model = model;
        this.parts = parts;
        this.speeds = speeds;
        this.pressure = pressure;
        this.area = area;
        List<Finding> faults = new ArrayList<>(model.obstacles());
        for (int e = 0; e < parts.size(); e++) {
            AirPathModel.Part part = parts.get(e);
            if (like.isPresent() && like.get().speeds[e] == speeds[e]) {
                laws.add(like.get().laws.get(e));
            } else if (part.bank().isPresent()) {
                bank(part.bank().get(), speeds[e], faults).ifPresent(laws::add);
            } else {
                String id = part.passage().id();
                laws.add(scaled(part.law().orElseThrow(), pressure.getOrDefault(id, 1.0), area.getOrDefault(id, 1.0)));
            }
        }
        obstacles = List.copyOf(faults);
        even = faults.isEmpty() ? Optional.of(Layout.of(model, parts, laws, false, like.flatMap(other -> other.even)))
                : Optional.empty();
        likeApart = like.flatMap(other -> other.apart.or(() -> other.likeApart));
    }

    /**
     * The same air path, with the same factors, at other speeds; for much less work than {@link AirPathModel#at}, since only the
     * banks whose speed changes are made anew. This one may go on being used.
     *
     * @param given speed of each bank's running movers, rad/s, by bank id; the rated speed times the condition's setting for one
     *              that is missing
     */
    public AirPathSolver withSpeeds(Map<String, Double> given) {
        double[] other = speeds(model, parts, given);
        return Arrays.equals(other, speeds) ? this : new AirPathSolver(model, parts, other, pressure, area,
                obstacles.isEmpty() ? Optional.of(this) : Optional.empty());
    }

    /** The speed of each part; of no meaning for one that is no bank. */
    private static double[] speeds(AirPathModel model, List<AirPathModel.Part> parts, Map<String, Double> given) {
        double[] speeds = new double[parts.size()];
        for (int e = 0; e < speeds.length; e++) {
            if (parts.get(e).bank().isPresent()) {
                Bank bank = parts.get(e).bank().get();
                speeds[e] = given.getOrDefault(bank.id(), bank.ratedSpeed() * model.setting(bank));
                if (!(speeds[e] >= 0 && speeds[e] < Double.POSITIVE_INFINITY)) {
                    throw new IllegalArgumentException("speed of bank " + bank.id() + " must be a number not below zero, got "
                            + speeds[e]);
                }
            }
        }
        return speeds;
    }

    private static FlowLaw scaled(FlowLaw law, double factor, double area) {
        return factor == 1 && area == 1 ? law : (flow, density, viscosity, drop) -> {
            law.at(flow / area, density, viscosity, drop);
            drop.set(factor * drop.pressure(), factor * drop.slope() / area);
        };
    }

    private Optional<BankLaw> bank(Bank bank, double speed, List<Finding> faults) {
        Optional<String> fault = bank.fault(speed);
        if (fault.isPresent()) {
            faults.add(AirPathModel.obstacle(bank.id(), "bank " + bank.id() + " cannot be computed: " + fault.get(),
                    "complete the part's data"));
            return Optional.empty();
        }
        return Optional.of(bank.law(speed, pressure.getOrDefault(bank.id(), 1.0)));
    }

    /** The network in which like columns need not share evenly. */
    private Layout columns() {
        if (apart.isEmpty()) {
            apart = Optional.of(Layout.of(model, parts, laws, true, likeApart));
        }
        return apart.get();
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
        if (even.isEmpty()) {
            return AirPathSolution.none(obstacles);
        }
        Layout layout = even.get();
        NetworkLoad load = load(temperatures);
        if (!layout.dips().isEmpty()) {
            return new Work(load, settings, temperatures, stop).search(Optional.empty());
        }
        NetworkSolution solution = layout.solver().solve(load, settings, start.filter(layout::fits), stop);
        return solution.converged() ? new AirPathSolution(Optional.of(point(layout, solution, load.air(), temperatures, true)),
                List.of(), -1, "", List.of(), Optional.of(solution)) : AirPathSolution.none(unsolved(solution));
    }

    /**
     * Solves for the state alone that air comes to from standstill: for who does not ask which other states there are.
     *
     * @param temperatures temperature of each bay in the order of {@link AirPathModel#bays}, K
     * @param stop         asked now and then whether the answer is no longer wanted
     * @return without states
     */
    public AirPathSolution reached(double[] temperatures, BooleanSupplier stop) {
        if (even.isEmpty() || even.get().dips().isEmpty()) {
            return solve(temperatures, NetworkSolver.Settings.STANDARD, Optional.empty(), stop);
        }
        return new Work(load(temperatures), NetworkSolver.Settings.STANDARD, temperatures, stop).reached()
                .orElseGet(() -> solve(temperatures, NetworkSolver.Settings.STANDARD, Optional.empty(), stop));
    }

    /**
     * Solves for a small change of factors, temperatures or speeds, starting from where everything worked before. With banks
     * whose curves do not fall all the way it stays on the stretch of the curve on which it was, or goes where the air would
     * settle from there.
     *
     * @param temperatures temperature of each bay in the order of {@link AirPathModel#bays}, K
     * @param before       the solution of the same air path before the change
     * @param stop         asked now and then whether the answer is no longer wanted
     * @return without states; not complete where a bank has left its stretch of the curve
     */
    public AirPathSolution near(double[] temperatures, AirPathSolution before, BooleanSupplier stop) {
        return changed(temperatures, before, stop, false);
    }

    /**
     * Solves for a small change as {@link #near} does, but from standstill: where a changed curve stalls on the way up, the air
     * may not come to where it was before.
     *
     * @param temperatures temperature of each bay in the order of {@link AirPathModel#bays}, K
     * @param before       the solution of the same air path before the change
     * @param stop         asked now and then whether the answer is no longer wanted
     * @return without states; not complete where a bank has come to another stretch of its curve
     */
    public AirPathSolution fromRest(double[] temperatures, AirPathSolution before, BooleanSupplier stop) {
        return changed(temperatures, before, stop, true);
    }

    /**
     * Solves as {@link #solve} does, with all states, but for air that has come here from a state at other temperatures or
     * speeds: the state reached is that which {@link #near} comes to from there, not that first met from standstill.
     *
     * @param temperatures temperature of each bay in the order of {@link AirPathModel#bays}, K
     * @param before       the solution of the same air path before the change
     * @param stop         asked now and then whether the answer is no longer wanted
     */
    public AirPathSolution follow(double[] temperatures, AirPathSolution before, BooleanSupplier stop) {
        AirPathSolution there = near(temperatures, before, stop);
        if (there.network().isEmpty()) {
            return solve(temperatures, NetworkSolver.Settings.STANDARD, Optional.empty(), stop);
        }
        return even.orElseThrow().dips().isEmpty() ? there
                : new Work(load(temperatures), NetworkSolver.Settings.STANDARD, temperatures, stop).search(there.network());
    }

    private AirPathSolution changed(double[] temperatures, AirPathSolution before, BooleanSupplier stop, boolean fromRest) {
        if (even.isEmpty() || before.network().isEmpty()) {
            return AirPathSolution.none(obstacles);
        }
        NetworkSolution start = before.network().get();
        boolean together = even.get().fits(start);
        Layout layout = together ? even.get() : columns();
        if (!layout.fits(start)) {
            // curves that have got a dip at other speeds, or lost it
            return solve(temperatures, NetworkSolver.Settings.STANDARD, Optional.empty(), stop);
        }
        if (layout.dips().isEmpty()) {
            return solve(temperatures, NetworkSolver.Settings.STANDARD, Optional.of(start), stop);
        }
        return new Work(load(temperatures), NetworkSolver.Settings.STANDARD, temperatures, stop)
                .near(layout, start, fromRest && together);
    }

    private NetworkLoad load(double[] temperatures) {
        AirState outside = model.outside();
        double[] density = new double[temperatures.length];
        double[] viscosity = new double[temperatures.length];
        for (int i = 0; i < temperatures.length; i++) {
            AirState air = temperatures[i] == outside.temperature() ? outside : outside.heatedTo(temperatures[i]);
            density[i] = air.density();
            viscosity[i] = air.viscosity();
        }
        return NetworkLoad.of(NetworkAir.of(density, viscosity, outside.density(), outside.viscosity()));
    }

    /** The search for states of banks whose curves do not fall all the way. */
    private final class Work {

        private final NetworkLoad load;
        private final NetworkSolver.Settings settings;
        private final double[] temperatures;
        private final BooleanSupplier stop;
        private final List<Layout> layouts = new ArrayList<>();
        private final List<NetworkSolution> solutions = new ArrayList<>();
        private final List<JointState> states = new ArrayList<>();
        private String limit = "";

        Work(NetworkLoad load, NetworkSolver.Settings settings, double[] temperatures, BooleanSupplier stop) {
            this.load = load;
            this.settings = settings;
            this.temperatures = temperatures;
            this.stop = stop;
        }

        /**
         * Looks for all states.
         *
         * @param come the one that the air has come to; empty for that first met from standstill
         */
        AirPathSolution search(Optional<NetworkSolution> come) {
            Layout layout = even.orElseThrow();
            int reached;
            if (layout.dips().size() == 1) {
                DutySearch.Found found = crossings(layout);
                if (found.failed().isPresent()) {
                    return AirPathSolution.none(unsolved(found.failed().get()));
                }
                if (found.reached() < 0) {
                    String id = parts.get(layout.dips().getFirst().part()).passage().id();
                    return AirPathSolution.none(AirPathModel.obstacle(id, "bank " + id + " has no duty point: its curve never "
                            + "meets what the air path asks for", "check its curve and the passages next to it"));
                }
                found.crossings().forEach(crossing -> add(layout, crossing.solution(), crossing.stable()
                        && sharesEvenly(layout, crossing.solution())));
                reached = found.reached();
            } else {
                together(layout, false);
                NetworkSolution fromRest = settle(layout, new double[layout.dips().size()]);
                reached = fromRest.converged() ? place(layout, fromRest) : creepsTo(layout, fromRest);
                if (reached < 0) {
                    return AirPathSolution.none(unsolved(fromRest));
                }
            }
            if (mayShareUnevenly(layout)) {
                Layout columns = columns();
                if (movers(layout) <= MOST_APART) {
                    together(columns, true);
                } else {
                    limit = "with more than " + MOST_APART + " movers it takes like ones to share evenly";
                }
                if (!sharesEvenly(layout, solutions.get(reached))) {
                    NetworkSolution fromRest = settleApart(columns);
                    reached = fromRest.converged() ? place(columns, fromRest) : creepsTo(columns, fromRest);
                    if (reached < 0) {
                        return AirPathSolution.none(unsolved(fromRest));
                    }
                }
            }
            if (come.isPresent()) {
                reached = place(layout.fits(come.get()) ? layout : columns(), come.get());
            }
            if (stop.getAsBoolean()) {
                return AirPathSolution.none(List.of());
            }
            return new AirPathSolution(Optional.of(point(layouts.get(reached), solutions.get(reached), load.air(), temperatures,
                    states.get(reached).stable())), states, reached, limit, List.of(), Optional.of(solutions.get(reached)));
        }

        /** The state from standstill alone; empty where it only creeps there, so that all must be looked at. */
        Optional<AirPathSolution> reached() {
            Layout layout = even.orElseThrow();
            NetworkSolution solution = settle(layout, new double[layout.dips().size()]);
            if (solution.converged() && mayShareUnevenly(layout) && !sharesEvenly(layout, solution)) {
                layout = columns();
                solution = settleApart(layout);
            }
            return solution.converged() ? Optional.of(new AirPathSolution(Optional.of(point(layout, solution, load.air(), temperatures, true)),
                    List.of(), -1, "", List.of(), Optional.of(solution))) : Optional.empty();
        }

        private static int movers(Layout layout) {
            return layout.dips().stream().mapToInt(dip -> dip.law().law().width()).sum();
        }

        private static boolean mayShareUnevenly(Layout layout) {
            return movers(layout) > layout.dips().size();
        }

        /** Where like columns settle from rest, but not all alike to the last digit, as nothing real is. */
        private NetworkSolution settleApart(Layout columns) {
            double[] start = new double[columns.dips().size()];
            for (int i = 0; i < start.length; i++) {
                start[i] = 1e-6 * i * columns.dips().get(i).law().largestFlow();
            }
            return settle(columns, start);
        }

        AirPathSolution near(Layout layout, NetworkSolution start, boolean fromRest) {
            List<List<Segment>> stretches = new ArrayList<>();
            int[] on = new int[layout.dips().size()];
            boolean falling = true;
            for (int i = 0; i < on.length; i++) {
                Layout.Dip dip = layout.dips().get(i);
                stretches.add(Segment.of(dip.law().law(), density(dip), viscosity(dip)));
                on[i] = stretch(stretches.get(i), dip, start);
                falling &= stretches.get(i).get(on[i]).falling();
            }
            NetworkSolution solution = start;
            boolean stays = falling && !fromRest;
            if (stays) {
                for (int i = 0; i < on.length; i++) {
                    layout.dips().get(i).law().within(stretches.get(i).get(on[i]));
                }
                solution = layout.solver().solve(load, settings, Optional.of(start), stop);
                for (int i = 0; i < on.length; i++) {
                    Layout.Dip dip = layout.dips().get(i);
                    stays &= solution.converged() && stretches.get(i).get(on[i]).holds(solution.flow(dip.branch()),
                            dip.law().largestFlow());
                }
            }
            if (!stays) {
                solution = settle(layout, fromRest ? new double[on.length]
                        : layout.dips().stream().mapToDouble(dip -> start.flow(dip.branch())).toArray());
            }
            if (!solution.converged()) {
                return AirPathSolution.none(unsolved(solution));
            }
            boolean left = false;
            for (int i = 0; i < on.length; i++) {
                left |= stretch(stretches.get(i), layout.dips().get(i), solution) != on[i];
            }
            return new AirPathSolution(Optional.of(point(layout, solution, load.air(), temperatures, true)), List.of(), -1,
                    left ? "it left its stretch" : "", List.of(), Optional.of(solution));
        }

        private int stretch(List<Segment> stretches, Layout.Dip dip, NetworkSolution solution) {
            for (int i = 0; i < stretches.size(); i++) {
                if (stretches.get(i).holds(solution.flow(dip.branch()), dip.law().largestFlow())) {
                    return i;
                }
            }
            throw new IllegalStateException("no stretch holds flow " + solution.flow(dip.branch()));
        }

        private DutySearch.Found crossings(Layout layout) {
            Layout.Dip dip = layout.dips().getFirst();
            return DutySearch.search(layout.solver(), load, settings, dip.branch(), dip.law().law(), density(dip),
                    viscosity(dip), stop);
        }

        private void together(Layout layout, boolean uneven) {
            JointSearch.Found found = JointSearch.search(layout.network(), layout.solver(), load, settings, layout.dips().stream()
                    .map(dip -> new JointSearch.Dip(dip.branch(), dip.law(), dip.like(), density(dip), viscosity(dip))).toList(),
                    stop);
            limit = limit.isEmpty() ? found.limit() : limit;
            for (JointSearch.State state : found.states()) {
                if (!uneven || uneven(layout, state.solution())) {
                    add(layout, state.solution(), state.stable() && sharesEvenly(layout, state.solution()));
                }
            }
        }

        private double density(Layout.Dip dip) {
            return load.air().density(parts.get(dip.part()).from());
        }

        private double viscosity(Layout.Dip dip) {
            return load.air().viscosity(parts.get(dip.part()).from());
        }

        /** Whether like columns that are taken to share evenly would go on doing so: not where each gives more the more it moves. */
        private boolean sharesEvenly(Layout layout, NetworkSolution solution) {
            FlowLaw.Drop drop = new FlowLaw.Drop();
            for (Layout.Dip dip : layout.dips()) {
                dip.law().law().at(solution.flow(dip.branch()), solution.density(dip.branch()), viscosity(dip), drop);
                if (dip.law().law().width() > 1 && !(drop.slope() > 0)) {
                    return false;
                }
            }
            return true;
        }

        /** Whether like columns have different flows. */
        private boolean uneven(Layout layout, NetworkSolution solution) {
            for (Layout.Dip a : layout.dips()) {
                for (Layout.Dip b : layout.dips()) {
                    if (a.like() == b.like() && Math.abs(solution.flow(a.branch()) - solution.flow(b.branch()))
                            > SAME * a.law().largestFlow()) {
                        return true;
                    }
                }
            }
            return false;
        }

        private void add(Layout layout, NetworkSolution solution, boolean stable) {
            layouts.add(layout);
            solutions.add(solution);
            states.add(new JointState(layout.dips().stream().map(Layout.Dip::part).distinct().map(e -> new DutyPoint(
                    parts.get(e).passage().id(), layout.flow(e, solution, load.air()), -layout.drop(e, solution))).toList(), stable,
                    !uneven(layout, solution)));
        }

        /** The number of the state that a solution is, likes having changed places perhaps; a new one if the search missed it. */
        private int place(Layout layout, NetworkSolution solution) {
            for (int i = 0; i < states.size(); i++) {
                if (layouts.get(i) == layout ? same(layout, solutions.get(i), solution)
                        : states.get(i).even() && !uneven(layout, solution) && sameInAll(states.get(i), layout, solution)) {
                    return i;
                }
            }
            add(layout, solution, true);
            return states.size() - 1;
        }

        /** Whether each bank as a whole has the same flow, however its columns are laid out. */
        private boolean sameInAll(JointState state, Layout layout, NetworkSolution solution) {
            for (DutyPoint point : state.points()) {
                for (Layout.Dip dip : layout.dips()) {
                    if (parts.get(dip.part()).passage().id().equals(point.bank()) && Math.abs(point.flow()
                            - layout.flow(dip.part(), solution, load.air())) > SAME * dip.law().largestFlow()) {
                        return false;
                    }
                }
            }
            return true;
        }

        /** The stable state that air creeps towards which has not come to rest in all steps; -1 where none is near. */
        private int creepsTo(Layout layout, NetworkSolution last) {
            for (int i = 0; i < states.size(); i++) {
                if (states.get(i).stable() && layouts.get(i) == layout && same(layout, solutions.get(i), last, CREEPS)) {
                    return i;
                }
            }
            return -1;
        }

        private boolean same(Layout layout, NetworkSolution one, NetworkSolution other) {
            return same(layout, one, other, SAME);
        }

        private boolean same(Layout layout, NetworkSolution one, NetworkSolution other, double tolerance) {
            boolean[] taken = new boolean[layout.dips().size()];
            for (Layout.Dip dip : layout.dips()) {
                boolean met = false;
                for (int k = 0; k < taken.length && !met; k++) {
                    Layout.Dip match = layout.dips().get(k);
                    met = !taken[k] && match.like() == dip.like() && Math.abs(one.flow(dip.branch())
                            - other.flow(match.branch())) <= tolerance * dip.law().largestFlow();
                    taken[k] |= met;
                }
                if (!met) {
                    return false;
                }
            }
            return true;
        }

        /** Where the air settles that starts with given flows of the banks, m³/s. */
        private NetworkSolution settle(Layout layout, double[] start) {
            double largest = 0;
            for (int i = 0; i < start.length; i++) {
                Layout.Dip dip = layout.dips().get(i);
                dip.law().ease(density(dip), viscosity(dip), start[i]);
                largest = Math.max(largest, dip.law().largestFlow());
            }
            Optional<NetworkSolution> last = Optional.empty();
            for (int i = 0; i < MOST_STEPS; i++) {
                NetworkSolution solution = layout.solver().solve(load, settings, last, stop);
                if (!solution.converged()) {
                    return solution;
                }
                double moved = 0;
                for (Layout.Dip dip : layout.dips()) {
                    moved = Math.max(moved, dip.law().moveTo(solution.flow(dip.branch())));
                }
                if (moved <= SETTLED * largest) {
                    return solution;
                }
                last = Optional.of(solution);
            }
            return last.orElseThrow().unsettled(parts.get(layout.dips().getFirst().part()).passage().id());
        }
    }

    private static Finding unsolved(NetworkSolution solution) {
        String why = solution.why().orElse("");
        if (why.startsWith("gets air put in")) {
            return AirPathModel.obstacle(solution.place(), "the flows could not be computed: bay " + solution.place()
                    + " has no way for air but through banks", "add the way by which its air comes or goes");
        }
        return AirPathModel.obstacle(solution.place(), "the flows could not be computed: the air path " + why
                + (solution.place().isEmpty() ? "" : ", worst at " + solution.place()), "check the parameters there");
    }

    private OperatingPoint point(Layout layout, NetworkSolution solution, NetworkAir air, double[] temperatures, boolean stable) {
        List<OperatingPoint.BankPoint> banks = new ArrayList<>();
        List<OperatingPoint.PassageFlow> passages = new ArrayList<>();
        double largest = 0;
        for (int e = 0; e < parts.size(); e++) {
            largest = Math.max(largest, Math.abs(layout.massFlow(e, solution)));
        }
        for (int e = 0; e < parts.size(); e++) {
            // below what the balance closes to, a flow is a dead end's rounding
            boolean none = Math.abs(layout.massFlow(e, solution)) <= Math.max(LEAST_FLOW, NO_FLOW * largest);
            double massFlow = none ? 0 : layout.massFlow(e, solution);
            boolean bank = laws.get(e) instanceof BankLaw;
            passages.add(new OperatingPoint.PassageFlow(parts.get(e).passage().id(), massFlow,
                    massFlow / layout.density(e, solution, air), none && !bank ? 0 : layout.drop(e, solution)));
            if (laws.get(e) instanceof BankLaw law) {
                banks.add(bankPoint(layout, e, massFlow, solution, air, temperatures, stable || law.increasing()));
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

    private OperatingPoint.BankPoint bankPoint(Layout layout, int e, double massFlow, NetworkSolution solution, NetworkAir air,
            double[] temperatures, boolean stable) {
        AirPathModel.Part part = parts.get(e);
        Bank bank = part.bank().orElseThrow();
        BankLaw law = (BankLaw) laws.get(e);
        int inlet = massFlow >= 0 ? part.from() : part.to();
        double density = layout.density(e, solution, air);
        double temperature = inlet == Network.OUTSIDE ? model.outside().temperature() : temperatures[inlet];
        List<OperatingPoint.MoverPoint> movers = new ArrayList<>();
        boolean stated = law.mover().isPresent();
        double power = 0;
        FlowLaw.Drop drop = new FlowLaw.Drop();
        for (int position = 1; position <= bank.positions(); position++) {
            Layout.Column column = layout.column(e, (position - 1) / bank.series(), solution, air);
            boolean running = bank.standing(position, speeds[e]).isEmpty();
            OptionalDouble input = OptionalDouble.empty();
            double stage = running ? law.stage(position) : 1;
            if (running) {
                MoverCharacteristic mover = law.mover().orElseThrow();
                mover.at(column.flow(), column.density(), column.viscosity(), drop);
                input = mover.power(column.flow(), column.density());
                stated &= input.isPresent();
                power += input.orElse(0);
            } else {
                law.standing(position).orElseThrow().at(column.flow(), column.density(), column.viscosity(), drop);
            }
            // at the inlet density of the bank, so that columns add up; only one that runs against it has other air
            double flow = column.density() == density ? column.flow() : column.flow() * column.density() / density;
            movers.add(new OperatingPoint.MoverPoint(position, running, flow, -stage * drop.pressure(), running ? speeds[e] : 0, input));
        }
        boolean any = law.mover().isPresent();
        double pressure = any || massFlow != 0 ? -layout.drop(e, solution) : 0;
        return new OperatingPoint.BankPoint(bank.id(), massFlow / density, massFlow, pressure,
                any ? speeds[e] : 0, stated ? OptionalDouble.of(power) : OptionalDouble.empty(), temperature, density,
                stable, movers, model.setting(bank));
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
        for (int e = 0; e < laws.size(); e++) {
            if (laws.get(e) instanceof BankLaw law && law.defined() && parts.get(e).passage().id().equals(bank)) {
                FlowLaw.Drop drop = new FlowLaw.Drop();
                law.at(flow, density, viscosity, drop);
                return OptionalDouble.of(-drop.pressure());
            }
        }
        return OptionalDouble.empty();
    }

    /**
     * The curve of a bank at its speed, for a drawing: as its failed movers and its fitting leave it.
     *
     * @param bank      its id
     * @param density   at its inlet, kg/m³
     * @param viscosity dynamic viscosity there, Pa s
     * @param from      least flow, m³/s
     * @param to        largest flow, m³/s, above the least
     * @return empty for a bank that the air path does not have or that cannot be computed
     */
    public Optional<BankCurve> bankCurve(String bank, double density, double viscosity, double from, double to) {
        return law(bank).map(law -> BankTrace.of(law, density, viscosity, from, to));
    }

    /**
     * The piece of a bank's curve on which a duty point lies whose columns do not share the flow evenly.
     *
     * @param point     the duty point, one of this air path at these speeds
     * @param viscosity dynamic viscosity at its inlet, Pa s
     * @param from      least flow, m³/s
     * @param to        largest flow, m³/s, above the least
     * @return empty where like columns share evenly, so that the point lies on {@link #bankCurve}
     */
    public Optional<BankCurve> unevenCurve(OperatingPoint.BankPoint point, double viscosity, double from, double to) {
        Optional<BankLaw> law = law(point.bank()).filter(each -> !each.increasing() && each.width() > 1);
        double[] flows = law.isPresent() ? columnFlows(point) : new double[0];
        return law.filter(each -> !even(each.parts(false), flows, each))
                .map(each -> BankTrace.along(each, flows, point.density(), viscosity, from, to));
    }

    /**
     * The largest flow that the curves of a bank's movers were measured at, brought to its speed, all columns together.
     *
     * @param bank its id
     * @return m³/s; empty where none of its movers runs, and for a bank that the air path does not have or that cannot be computed
     */
    public OptionalDouble largestFlow(String bank) {
        return law(bank).flatMap(law -> law.mover().map(mover -> OptionalDouble.of(mover.lastFlow() * law.width())))
                .orElse(OptionalDouble.empty());
    }

    private Optional<BankLaw> law(String bank) {
        for (int e = 0; e < parts.size() && even.isPresent(); e++) {
            if (laws.get(e) instanceof BankLaw law && parts.get(e).passage().id().equals(bank)) {
                return Optional.of(law);
            }
        }
        return Optional.empty();
    }

    /** Volume flow of each column at the density of the bank's inlet, m³/s. */
    private double[] columnFlows(OperatingPoint.BankPoint point) {
        int series = model.series(point.bank());
        double[] flows = new double[point.movers().size() / series];
        for (int c = 0; c < flows.length; c++) {
            flows[c] = point.movers().get(c * series).flow();
        }
        return flows;
    }

    /** Whether the columns of each part of a bank that has a dip have the same flow. */
    private static boolean even(BankLaw.Parts split, double[] flows, BankLaw law) {
        double least = law.mover().map(mover -> SAME * mover.lastFlow()).orElse(0.0);
        double[] first = new double[split.laws().size()];
        Arrays.fill(first, Double.NaN);
        for (int c = 0; c < flows.length; c++) {
            int part = split.partOf()[c];
            if (!split.laws().get(part).increasing()) {
                if (Math.abs(flows[c] - first[part]) > least) {
                    return false;
                }
                first[part] = flows[c];
            }
        }
        return true;
    }

    /**
     * The system curve that a bank sees: its flow imposed, the rest of the network solved with every other bank on its own curve,
     * on that stretch of it on which it is where everything works.
     *
     * @param bank  its id
     * @param point where everything works at these speeds: gives the temperatures of the bays, and the stretches of the other
     *              banks' curves
     * @param flows actual volume flows at the bank's inlet, m³/s, rising
     * @param stop  asked now and then whether the answer is no longer wanted
     * @return the pressure, Pa, that is asked of the bank at each flow; where the rest has no answer at some of them, or another
     *         bank would leave its stretch, the flows about that of the bank at its point as far as it has; none for a bank that
     *         the air path does not have, that cannot be computed, or where the answer is no longer wanted
     */
    public Chart.Points systemCurve(String bank, OperatingPoint point, double[] flows, BooleanSupplier stop) {
        Optional<OperatingPoint.BankPoint> own = point.bank(bank);
        if (law(bank).isEmpty() || own.isEmpty()) {
            return Chart.Points.of(new double[0], new double[0]);
        }
        int e = 0;
        while (!parts.get(e).passage().id().equals(bank)) {
            e++;
        }
        return new Asked(e, point, stop).at(flows, own.get().flow());
    }

    /** What the rest of the network asks of one bank. */
    private final class Asked {

        private final int bank;
        private final Layout layout;
        private final NetworkLoad load;
        private final BooleanSupplier stop;
        /** The stretch of each other bank's curve; empty for the bank's own. */
        private final List<Optional<Segment>> stretches = new ArrayList<>();

        Asked(int bank, OperatingPoint point, BooleanSupplier stop) {
            this.bank = bank;
            this.stop = stop;
            load = load(model.bays().stream().mapToDouble(bay -> point.bay(bay.id()).orElseThrow().temperature()).toArray());
            boolean uneven = even.orElseThrow().dips().stream().anyMatch(dip -> dip.part() != bank && !even(
                    even.orElseThrow().banks().get(dip.part()), columnFlows(other(point, dip.part())), (BankLaw) laws.get(dip.part())));
            layout = uneven ? columns() : even.orElseThrow();
            for (Layout.Dip dip : layout.dips()) {
                if (dip.part() == bank) {
                    stretches.add(Optional.empty());
                    continue;
                }
                int number = dip.branch() - layout.branchesOf()[dip.part()][0];
                double[] flows = columnFlows(other(point, dip.part()));
                double flow = 0;
                for (int c = 0; c < flows.length; c++) {
                    flow += layout.banks().get(dip.part()).partOf()[c] == number ? flows[c] : 0;
                }
                int inlet = parts.get(dip.part()).from();
                Segment stretch = Segment.nearest(Segment.of(dip.law().law(), load.air().density(inlet), load.air().viscosity(inlet)), flow);
                dip.law().within(stretch);
                stretches.add(Optional.of(stretch));
            }
        }

        private OperatingPoint.BankPoint other(OperatingPoint point, int part) {
            return point.bank(parts.get(part).passage().id()).orElseThrow();
        }

        /** From the bank's own flow outwards, so that each solution starts near its own. */
        Chart.Points at(double[] flows, double own) {
            double[] pressures = new double[flows.length];
            int middle = 0;
            while (middle < flows.length - 1 && flows[middle] < own) {
                middle++;
            }
            int to = middle;
            Optional<NetworkSolution> last = Optional.empty();
            for (; to < flows.length; to++) {
                last = solve(flows[to], last);
                if (last.isEmpty()) {
                    break;
                }
                pressures[to] = -layout.drop(bank, last.get());
            }
            int from = middle;
            last = Optional.empty();
            for (; from > 0; from--) {
                last = solve(flows[from - 1], last);
                if (last.isEmpty()) {
                    break;
                }
                pressures[from - 1] = -layout.drop(bank, last.get());
            }
            return stop.getAsBoolean() ? Chart.Points.of(new double[0], new double[0])
                    : Chart.Points.of(Arrays.copyOfRange(flows, from, to), Arrays.copyOfRange(pressures, from, to));
        }

        private Optional<NetworkSolution> solve(double flow, Optional<NetworkSolution> start) {
            AirPathModel.Part part = parts.get(bank);
            double massFlow = flow * load.air().density(flow >= 0 ? part.from() : part.to());
            NetworkLoad imposed = load;
            for (int branch : layout.branchesOf()[bank]) {
                imposed = imposed.imposing(branch, branch == layout.branchesOf()[bank][0] ? massFlow : 0);
            }
            NetworkSolution solution = layout.solver().solve(imposed, NetworkSolver.Settings.STANDARD, start, stop);
            boolean holds = solution.converged();
            for (int i = 0; i < stretches.size() && holds; i++) {
                Layout.Dip dip = layout.dips().get(i);
                holds = stretches.get(i).map(stretch -> stretch.holds(solution.flow(dip.branch()), dip.law().largestFlow())).orElse(true);
            }
            return holds ? Optional.of(solution) : Optional.empty();
        }
    }
}
