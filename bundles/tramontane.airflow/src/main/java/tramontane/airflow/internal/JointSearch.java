package tramontane.airflow.internal;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.BooleanSupplier;
import tramontane.airflow.Network;
import tramontane.airflow.NetworkLoad;
import tramontane.airflow.NetworkSolution;
import tramontane.airflow.NetworkSolver;
import tramontane.analysis.FlowLaw;

/**
 * Joint states of several banks whose curves do not fall all the way: all their duty points at once.
 *
 * <p>Each curve is cut into stretches on which it falls or rises. With every bank on a stretch on which its curve falls there
 * is one answer at most, and it is found for certain. With one bank, or likes beside each other, on a stretch on which the curve
 * rises, its flow is imposed and scanned. With more such banks Newton's method starts from several places on each stretch, and may miss states. Banks
 * that are alike may change places; such states count once.
 */
public final class JointSearch {

    /** Combinations of stretches that are looked at. */
    static final int MOST_COMBINATIONS = 300;
    private static final String TOO_MANY = "it looked at " + MOST_COMBINATIONS + " combinations of stretches of the curves only";
    private static final String SOME_STARTS = "with many movers on rising parts of their curves it started from some places only";
    private static final String TIED = "it leaves out that several banks one behind another, with no leak between, all work on"
            + " rising parts of their curves";
    private static final String UNSOLVED = "some combinations of stretches of the curves had no answer";
    private static final int SCAN = 16;
    private static final double[] STARTS = {1.0 / 6, 0.5, 5.0 / 6};
    private static final int MOST_STARTS = 27;
    private static final int MOST_STEPS = 40;

    private final Network network;
    private final NetworkSolver solver;
    private final NetworkLoad load;
    private final NetworkSolver.Settings settings;
    private final List<Dip> dips;
    private final BooleanSupplier stop;
    private final List<List<Segment>> segments = new ArrayList<>();
    private final List<State> states = new ArrayList<>();
    private final double scale;
    private final FlowLaw.Drop drop = new FlowLaw.Drop();
    private String limit = "";

    /**
     * One of the banks, or a part of one.
     *
     * @param branch    its branch
     * @param law       the law of that branch
     * @param like      the same number for branches that may change places
     * @param density   at its inlet, kg/m³
     * @param viscosity at its inlet, Pa s
     */
    public record Dip(int branch, DipLaw law, int like, double density, double viscosity) {
    }

    /**
     * A joint state.
     *
     * @param solution the network in it
     * @param stable   whether it is statically stable
     */
    public record State(NetworkSolution solution, boolean stable) {
    }

    /**
     * What was found.
     *
     * @param states by rising flow of the first bank, then the second, and so on
     * @param limit  what kept the search from finding all for certain; empty if nothing did
     */
    public record Found(List<State> states, String limit) {
    }

    private JointSearch(Network network, NetworkSolver solver, NetworkLoad load, NetworkSolver.Settings settings, List<Dip> dips,
            BooleanSupplier stop) {
        this.network = network;
        this.solver = solver;
        this.load = load;
        this.settings = settings;
        this.dips = dips;
        this.stop = stop;
        double largest = 0;
        for (Dip dip : dips) {
            segments.add(Segment.of(dip.law().law(), dip.density(), dip.viscosity()));
            largest = Math.max(largest, dip.law().largestFlow() * dip.density());
        }
        scale = largest;
    }

    /**
     * Searches.
     *
     * @param network the network, with a {@link DipLaw} at each of the banks' branches
     * @param solver  a solver of it
     */
    public static Found search(Network network, NetworkSolver solver, NetworkLoad load, NetworkSolver.Settings settings, List<Dip> dips,
            BooleanSupplier stop) {
        JointSearch search = new JointSearch(network, solver, load, settings, dips, stop);
        for (int[] combination : search.combinations()) {
            if (stop.getAsBoolean()) {
                return new Found(List.of(), "it was stopped");
            }
            search.look(combination);
        }
        List<State> sorted = search.states.stream().sorted(search.byFlow()).toList();
        return new Found(sorted, search.limit);
    }

    private Comparator<State> byFlow() {
        Comparator<State> order = Comparator.comparingDouble(state -> state.solution().massFlow(dips.getFirst().branch()));
        for (int k = 1; k < dips.size(); k++) {
            int branch = dips.get(k).branch();
            order = order.thenComparingDouble(state -> state.solution().massFlow(branch));
        }
        return order;
    }

    /** A stretch for each bank; those with few rising ones first. */
    private List<int[]> combinations() {
        List<int[]> all = new ArrayList<>();
        for (int rising = 0; rising <= dips.size() && !limit.equals(TOO_MANY); rising++) {
            choose(new int[dips.size()], 0, rising, all);
        }
        return all;
    }

    private void choose(int[] chosen, int k, int rising, List<int[]> all) {
        if (k == dips.size()) {
            if (rising == 0) {
                if (all.size() < MOST_COMBINATIONS) {
                    all.add(chosen.clone());
                } else {
                    limit = TOO_MANY;
                }
            }
            return;
        }
        int least = 0;
        for (int j = 0; j < k; j++) {
            least = dips.get(j).like() == dips.get(k).like() ? Math.max(least, chosen[j]) : least;
        }
        for (int i = least; i < segments.get(k).size() && !limit.equals(TOO_MANY); i++) {
            int used = segments.get(k).get(i).falling() ? 0 : 1;
            if (used <= rising) {
                chosen[k] = i;
                choose(chosen, k + 1, rising - used, all);
            }
        }
    }

    private void limited(String why) {
        limit = limit.isEmpty() ? why : limit;
    }

    private void look(int[] combination) {
        List<int[]> rising = new ArrayList<>();
        for (int k = 0; k < dips.size(); k++) {
            Segment segment = segments.get(k).get(combination[k]);
            if (segment.falling()) {
                dips.get(k).law().within(segment);
            } else {
                join(rising, combination, k);
            }
        }
        if (rising.isEmpty()) {
            NetworkSolution solution = solver.solve(load, settings, Optional.empty(), stop);
            if (solution.converged()) {
                keep(combination, solution);
            } else {
                limited(UNSOLVED);
            }
        } else if (rising.size() == 1) {
            scan(combination, rising.getFirst());
        } else {
            newton(combination, rising);
        }
    }

    /** Likes on one stretch have one flow, since they have one pressure: they move together. */
    private void join(List<int[]> rising, int[] combination, int k) {
        for (int i = 0; i < rising.size(); i++) {
            int[] group = rising.get(i);
            if (dips.get(group[0]).like() == dips.get(k).like() && combination[group[0]] == combination[k]) {
                int[] more = Arrays.copyOf(group, group.length + 1);
                more[group.length] = k;
                rising.set(i, more);
                return;
            }
        }
        rising.add(new int[] {k});
    }

    private void scan(int[] combination, int[] group) {
        Dip dip = dips.get(group[0]);
        Segment segment = segments.get(group[0]).get(combination[group[0]]);
        double[] at = new double[SCAN + 1];
        for (int i = 0; i <= SCAN; i++) {
            at[i] = (segment.from() + (segment.to() - segment.from()) * i / SCAN) * dip.density();
        }
        int[] branches = Arrays.stream(group).map(k -> dips.get(k).branch()).toArray();
        for (NetworkSolution solution : DutySearch.between(solver, load, settings, branches, dip.law().law(),
                dip.viscosity(), stop, at)) {
            if (solution.converged()) {
                keep(combination, solution);
            } else {
                limited(UNSOLVED);
            }
        }
    }

    private void newton(int[] combination, List<int[]> rising) {
        int starts = 1;
        for (int i = 0; i < rising.size(); i++) {
            starts *= STARTS.length;
        }
        if (starts > MOST_STARTS) {
            starts = MOST_STARTS;
            limited(SOME_STARTS);
        }
        for (int start = 0; start < starts && !stop.getAsBoolean(); start++) {
            double[] flow = new double[rising.size()];
            int rest = start;
            for (int i = 0; i < flow.length; i++) {
                int k = rising.get(i)[0];
                Segment segment = segments.get(k).get(combination[k]);
                flow[i] = (segment.from() + (segment.to() - segment.from()) * STARTS[rest % STARTS.length])
                        * dips.get(k).density();
                rest /= STARTS.length;
            }
            newton(combination, rising, flow);
        }
    }

    private void newton(int[] combination, List<int[]> rising, double[] start) {
        double[] flow = start;
        double[] excess = new double[flow.length];
        Optional<NetworkSolution> at = excess(rising, flow, excess);
        for (int step = 0; step < MOST_STEPS && at.isPresent(); step++) {
            double[][] slope = slopes(rising, flow);
            double[] change = slope == null ? null : Dense.solve(slope, negative(excess));
            if (change == null) {
                return;
            }
            double length = 1;
            double before = norm(excess);
            double[] next = null;
            Optional<NetworkSolution> found = Optional.empty();
            double[] nextExcess = new double[flow.length];
            for (int i = 0; i < 12 && next == null; i++, length /= 2) {
                double[] trial = flow.clone();
                for (int k = 0; k < trial.length; k++) {
                    trial[k] += length * change[k];
                }
                found = excess(rising, trial, nextExcess);
                if (found.isPresent() && (norm(nextExcess) < before || norm(change) <= 1e-9 * scale)) {
                    next = trial;
                }
            }
            if (next == null) {
                return;
            }
            flow = next;
            excess = nextExcess.clone();
            at = found;
            if (norm(change) <= 1e-11 * scale) {
                keep(combination, at.get());
                return;
            }
        }
    }

    /** What each bank of some groups gives more than is asked of it at imposed mass flows, Pa. */
    private Optional<NetworkSolution> excess(List<int[]> which, double[] flow, double[] excess) {
        NetworkLoad imposed = load;
        for (int i = 0; i < flow.length; i++) {
            for (int k : which.get(i)) {
                imposed = imposed.imposing(dips.get(k).branch(), flow[i]);
            }
        }
        NetworkSolution solution = solver.solve(imposed, settings, Optional.empty(), stop);
        if (!solution.converged()) {
            limited(TIED);
            return Optional.empty();
        }
        for (int i = 0; i < flow.length; i++) {
            Dip dip = dips.get(which.get(i)[0]);
            dip.law().law().at(solution.flow(dip.branch()), solution.density(dip.branch()), dip.viscosity(), drop);
            excess[i] = solution.drop(dip.branch()) - drop.pressure();
        }
        return Optional.of(solution);
    }

    /** Slopes of what banks give more than is asked of them by their mass flows; null where the network has no answer. */
    private double[][] slopes(List<int[]> which, double[] flow) {
        int n = flow.length;
        double[][] slope = new double[n][n];
        double step = 1e-5 * scale;
        double[] low = new double[n];
        double[] high = new double[n];
        for (int j = 0; j < n; j++) {
            double[] moved = flow.clone();
            moved[j] = flow[j] - step;
            boolean sound = excess(which, moved, low).isPresent();
            moved[j] = flow[j] + step;
            if (!sound || excess(which, moved, high).isEmpty()) {
                return null;
            }
            for (int i = 0; i < n; i++) {
                slope[i][j] = (high[i] - low[i]) / (2 * step);
            }
        }
        return slope;
    }

    private void keep(int[] combination, NetworkSolution solution) {
        boolean rises = false;
        for (int k = 0; k < dips.size(); k++) {
            Segment segment = segments.get(k).get(combination[k]);
            rises |= !segment.falling();
            if (!segment.holds(solution.flow(dips.get(k).branch()), scale / dips.get(k).density())) {
                return;
            }
        }
        for (State known : states) {
            if (same(known.solution(), solution)) {
                return;
            }
        }
        states.add(new State(solution, !rises || stable(solution)));
    }

    /** Whether two states are one, likes having changed places perhaps. */
    private boolean same(NetworkSolution a, NetworkSolution b) {
        boolean[] taken = new boolean[dips.size()];
        for (Dip dip : dips) {
            boolean met = false;
            for (int k = 0; k < dips.size() && !met; k++) {
                if (!taken[k] && dips.get(k).like() == dip.like()
                        && Math.abs(a.massFlow(dip.branch()) - b.massFlow(dips.get(k).branch())) <= 1e-7 * scale) {
                    taken[k] = true;
                    met = true;
                }
            }
            if (!met) {
                return false;
            }
        }
        return true;
    }

    /**
     * Whether every small change of flow dies away: the network's content has a minimum there.
     *
     * <p>Its curvature among flows that balance has as many negative directions as branches have falling drops, less those of
     * the nodal matrix (inertia of a saddle-point matrix: M. Benzi, G. H. Golub, J. Liesen, "Numerical solution of saddle point
     * problems", Acta Numerica 14 (2005), section 3.4).
     */
    private boolean stable(NetworkSolution solution) {
        int n = solution.bays();
        double[][] nodal = new double[n][n];
        int[] piece = new int[n];
        boolean[] open = new boolean[n];
        Arrays.setAll(piece, i -> i);
        int falling = 0;
        double sum = 0;
        for (int e = 0; e < network.branches().size(); e++) {
            Network.Branch branch = network.branches().get(e);
            int a = branch.from();
            int b = branch.to();
            double viscosity = load.air().viscosity(solution.massFlow(e) >= 0 ? a : b);
            FlowLaw law = branch.law() instanceof DipLaw dip ? dip.law() : branch.law();
            law.at(solution.flow(e), solution.density(e), viscosity, drop);
            double conductance = solution.density(e) / drop.slope();
            falling += conductance < 0 ? 1 : 0;
            sum += Math.abs(conductance);
            if (a == b) {
                continue;
            }
            for (int i : new int[] {a, b}) {
                if (i != Network.OUTSIDE) {
                    nodal[i][i] += conductance;
                }
            }
            if (a != Network.OUTSIDE && b != Network.OUTSIDE) {
                nodal[a][b] -= conductance;
                nodal[b][a] -= conductance;
                join(piece, open, a, b);
            } else {
                open[root(piece, Math.max(a, b))] = true;
            }
        }
        for (int i = 0; i < n; i++) {
            if (piece[i] == i && !open[i]) {
                // the pressure level of a closed piece is free; held, it changes no direction
                nodal[i][i] += sum / network.branches().size();
            }
        }
        return Dense.negatives(nodal) == falling;
    }

    private static int root(int[] piece, int i) {
        int at = i;
        while (piece[at] != at) {
            at = piece[at];
        }
        return at;
    }

    private static void join(int[] piece, boolean[] open, int a, int b) {
        int first = root(piece, a);
        int second = root(piece, b);
        if (first != second) {
            piece[second] = first;
            open[first] |= open[second];
        }
    }

    private static double[] negative(double[] values) {
        double[] turned = values.clone();
        for (int i = 0; i < turned.length; i++) {
            turned[i] = -turned[i];
        }
        return turned;
    }

    private static double norm(double[] values) {
        double largest = 0;
        for (double value : values) {
            largest = Math.max(largest, Math.abs(value));
        }
        return largest;
    }
}
