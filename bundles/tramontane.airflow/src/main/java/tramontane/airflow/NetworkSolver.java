package tramontane.airflow;

import java.util.Arrays;
import java.util.Optional;
import java.util.function.BooleanSupplier;
import tramontane.airflow.internal.SparseLdl;
import tramontane.analysis.FlowLaw;

/**
 * Solves a network: mass flows that balance in every bay, and pressures that agree with every branch's flow law.
 *
 * <p>Newton's method on flows and pressures together, with the flows eliminated so that each step is one symmetric positive
 * definite system in the pressures: E. Todini, S. Pilati, "A gradient method for the solution of looped pipe networks", in
 * Computer Applications in Water Supply, vol. 1 (1988) 1-20. For laws that rise with flow the flows also minimise the
 * network's content, which is convex (W. Millar, "Some general theorems for non-linear systems possessing resistance",
 * Phil. Mag. 42 (1951) 1150-1160); a search along each step for where the content stops falling makes the method converge
 * from anywhere.
 *
 * <p>The drop of a branch is Δp = p(from) - p(to) + (ρ(outside) - ρ) g (z(to) - z(from)), pressures counted above the air
 * outside at the bay's own height, ρ the density of the air that enters the branch. A branch to the outside ends at the
 * height of its bay.
 *
 * <p>A law that does not rise everywhere ({@link FlowLaw#increasing}) is refused unless its flow is imposed.
 *
 * <p>An instance keeps what depends on the network alone and the memory to work in, so that solving often is cheap. It gives
 * the same answer however often it was used, and belongs to one thread.
 */
public final class NetworkSolver {

    /** Standard gravity, m/s² (ISO 80000-3). */
    private static final double GRAVITY = 9.80665;
    /** Smallest share of the largest flow that decides the direction from which a branch gets its air. */
    private static final double STILL = 1e-9;
    /** Largest error of a mass balance over the largest flow. */
    private static final double MASS_TOLERANCE = 1e-9;

    private final Network network;
    private final int bays;
    private final int branches;
    private final int[] from;
    private final int[] to;
    private final FlowLaw[] law;
    private final double[] rise;
    /** Branches that join two different bays, in the order of the matrix entries they make. */
    private final int[] inner;
    private final SparseLdl matrix;

    private final double[] density;
    private final double[] viscosity;
    /** Share of the from bay's air in a branch: 1 or 0 once the direction is known. */
    private final double[] share;
    private final double[] shareStep;
    private final double[] shareMove;
    private final double[] buoyancy;
    private final boolean[] given;
    private final double[] flow;
    private final double[] trial;
    private final double[] change;
    private final double[] drop;
    private final double[] slope;
    private final double[] conductance;
    private final double[] pressure;
    private final double[] step;
    private final double[] inflow;
    private final double[] diagonal;
    private final double[] offDiagonal;
    private final int[] root;
    private final boolean[] anchored;
    private final FlowLaw.Drop out = new FlowLaw.Drop();
    private int unsound;

    /**
     * When to stop.
     *
     * @param tolerance     largest last change of a flow over the largest flow
     * @param maxIterations steps of Newton's method for one set of densities
     * @param maxDirections rounds in which branches may change the bay that they get their air from
     */
    public record Settings(double tolerance, int maxIterations, int maxDirections) {

        /** Good for every network of fans. */
        public static final Settings STANDARD = new Settings(1e-10, 200, 200);

        public Settings {
            if (!(tolerance > 0 && tolerance < 1) || maxIterations < 1 || maxDirections < 1) {
                throw new IllegalArgumentException("tolerance " + tolerance + ", iterations " + maxIterations + ", directions "
                        + maxDirections + "; expected above zero");
            }
        }
    }

    private NetworkSolver(Network network) {
        this.network = network;
        bays = network.bays().size();
        branches = network.branches().size();
        from = new int[branches];
        to = new int[branches];
        law = new FlowLaw[branches];
        rise = new double[branches];
        int[] joining = new int[branches];
        int joins = 0;
        for (int e = 0; e < branches; e++) {
            Network.Branch branch = network.branches().get(e);
            from[e] = branch.from();
            to[e] = branch.to();
            law[e] = branch.law();
            if (from[e] != Network.OUTSIDE && to[e] != Network.OUTSIDE) {
                rise[e] = network.bays().get(to[e]).height() - network.bays().get(from[e]).height();
                if (from[e] != to[e]) {
                    joining[joins++] = e;
                }
            }
        }
        inner = Arrays.copyOf(joining, joins);
        int[] a = new int[joins];
        int[] b = new int[joins];
        for (int k = 0; k < joins; k++) {
            a[k] = from[inner[k]];
            b[k] = to[inner[k]];
        }
        matrix = SparseLdl.of(bays, a, b);
        density = new double[branches];
        viscosity = new double[branches];
        share = new double[branches];
        shareStep = new double[branches];
        shareMove = new double[branches];
        buoyancy = new double[branches];
        given = new boolean[branches];
        flow = new double[branches];
        trial = new double[branches];
        change = new double[branches];
        drop = new double[branches];
        slope = new double[branches];
        conductance = new double[branches];
        pressure = new double[bays];
        step = new double[bays];
        inflow = new double[bays];
        diagonal = new double[bays];
        offDiagonal = new double[joins];
        root = new int[bays];
        anchored = new boolean[bays];
    }

    /** A solver for a network. */
    public static NetworkSolver of(Network network) {
        return new NetworkSolver(network);
    }

    /** Solves a network once, from a cold start. */
    public static NetworkSolution solve(Network network, NetworkLoad load, Settings settings) {
        return of(network).solve(load, settings);
    }

    /** Solves from a cold start. */
    public NetworkSolution solve(NetworkLoad load, Settings settings) {
        return solve(load, settings, Optional.empty(), () -> false);
    }

    /**
     * Solves.
     *
     * @param load     what it is solved for
     * @param settings when to stop
     * @param start    a solution of the same network to start from, for a similar load
     * @param stop     asked now and then whether the answer is no longer wanted; the solution then says so
     */
    public NetworkSolution solve(NetworkLoad load, Settings settings, Optional<NetworkSolution> start, BooleanSupplier stop) {
        if (load.air().bays() != bays) {
            throw new IllegalArgumentException("air of " + load.air().bays() + " bays for a network of " + bays);
        }
        for (int e = 0; e < branches; e++) {
            given[e] = load.imposes(e);
            if (!given[e] && !law[e].increasing()) {
                return failed("has a curve that does not fall all the way, so that there may be several duty points", name(e), 0);
            }
        }
        for (int i = 0; i < bays; i++) {
            inflow[i] = load.inflow(i);
        }
        int closed = anchor(load);
        if (closed >= 0) {
            return failed("gets air put in or taken out, but has no other way for air",
                    network.bays().get(closed).id(), 0);
        }
        boolean cold = start.isEmpty();
        for (int e = 0; e < branches; e++) {
            share[e] = cold || start.get().massFlow(e) >= 0 ? 1 : 0;
            shareStep[e] = 1;
            shareMove[e] = 0;
            flow[e] = given[e] ? load.imposedFlow(e) : cold ? 0 : start.get().massFlow(e);
        }
        for (int i = 0; i < bays; i++) {
            pressure[i] = cold ? 0 : start.get().pressure(i);
        }
        int iterations = 0;
        for (int round = 0; round < settings.maxDirections(); round++) {
            boolean mixed = mix(load.air());
            Ended ended = newton(settings, cold && round == 0, iterations, stop);
            iterations = ended.iterations;
            if (!ended.why.isEmpty()) {
                return solution(ended.why, ended.place, iterations);
            }
            if (!mixed || settled(load.air())) {
                return solution("", "", iterations);
            }
        }
        int worst = 0;
        for (int e = 0; e < branches; e++) {
            worst = shareStep[e] < shareStep[worst] ? e : worst;
        }
        return solution("changes its direction of flow again and again", name(worst), iterations);
    }

    private record Ended(int iterations, String why, String place) {
    }

    private String name(int branch) {
        return network.branches().get(branch).id();
    }

    /**
     * Finds bays that no chain of branches joins to the outside, and gives one of each group a pressure of its own: flows in a
     * closed group are well defined, its pressure level is not.
     *
     * @return a bay of a closed group whose inflow does not add up to zero; -1 if there is none
     */
    private int anchor(NetworkLoad load) {
        for (int i = 0; i < bays; i++) {
            root[i] = i;
        }
        Arrays.fill(anchored, false);
        for (int e = 0; e < branches; e++) {
            if (given[e]) {
                continue;
            }
            if (from[e] == Network.OUTSIDE || to[e] == Network.OUTSIDE) {
                int bay = Math.max(from[e], to[e]);
                if (bay != Network.OUTSIDE) {
                    anchored[find(bay)] = true;
                }
            } else {
                int a = find(from[e]);
                int b = find(to[e]);
                int low = Math.min(a, b);
                anchored[low] = anchored[a] || anchored[b];
                root[Math.max(a, b)] = low;
            }
        }
        // from here on: whether a root needs a pressure of its own
        double scale = 0;
        Arrays.fill(step, 0);
        for (int i = 0; i < bays; i++) {
            step[find(i)] += inflow[i];
            scale += Math.abs(inflow[i]);
        }
        for (int e = 0; e < branches; e++) {
            if (given[e]) {
                scale += Math.abs(load.imposedFlow(e));
                if (from[e] != Network.OUTSIDE) {
                    step[find(from[e])] -= load.imposedFlow(e);
                }
                if (to[e] != Network.OUTSIDE) {
                    step[find(to[e])] += load.imposedFlow(e);
                }
            }
        }
        int closed = -1;
        for (int i = 0; i < bays; i++) {
            if (root[i] == i) {
                anchored[i] = !anchored[i];
                if (anchored[i] && Math.abs(step[i]) > 1e-12 * scale && closed < 0) {
                    closed = i;
                }
            } else {
                anchored[i] = false;
            }
        }
        return closed;
    }

    private int find(int bay) {
        int i = bay;
        while (root[i] != i) {
            root[i] = root[root[i]];
            i = root[i];
        }
        return i;
    }

    /** Sets the air in each branch; tells whether it depends on the direction of any flow. */
    private boolean mix(NetworkAir air) {
        boolean mixed = false;
        double outside = air.density(Network.OUTSIDE);
        for (int e = 0; e < branches; e++) {
            double a = air.density(from[e]);
            double b = air.density(to[e]);
            double va = air.viscosity(from[e]);
            double vb = air.viscosity(to[e]);
            boolean same = a == b && va == vb;
            mixed |= !same;
            density[e] = same ? a : share[e] * a + (1 - share[e]) * b;
            viscosity[e] = same ? va : share[e] * va + (1 - share[e]) * vb;
            buoyancy[e] = (outside - density[e]) * GRAVITY * rise[e];
        }
        return mixed;
    }

    /**
     * Moves each branch towards the air of the bay it now gets its air from. A branch that turns round and round has no flow
     * with either air; its steps get smaller until the mixture in it stands still.
     */
    private boolean settled(NetworkAir air) {
        double still = STILL * largest(flow);
        boolean settled = true;
        for (int e = 0; e < branches; e++) {
            if (air.density(from[e]) == air.density(to[e]) && air.viscosity(from[e]) == air.viscosity(to[e])
                    || Math.abs(flow[e]) <= still) {
                continue;
            }
            double away = (flow[e] > 0 ? 1 : 0) - share[e];
            if (away != 0) {
                settled = false;
                if (away * shareMove[e] < 0) {
                    shareStep[e] /= 2;
                }
                shareMove[e] = away;
                share[e] += Math.max(-shareStep[e], Math.min(shareStep[e], away));
            }
        }
        return settled;
    }

    /** Solves for the densities as they stand. */
    private Ended newton(Settings settings, boolean cold, int before, BooleanSupplier stop) {
        boolean sound = cold ? chords() : evaluate(flow);
        if (!sound) {
            return new Ended(before, "has a flow law that does not rise at its present flow", name(unsound));
        }
        boolean balanced = false;
        double last = Double.POSITIVE_INFINITY;
        for (int iteration = 1; iteration <= settings.maxIterations(); iteration++) {
            if (stop.getAsBoolean()) {
                return new Ended(before + iteration, "was not wanted any more", "");
            }
            if (!direction()) {
                return new Ended(before + iteration, "has passages whose resistances differ too much to be told apart",
                        network.bays().isEmpty() ? "" : network.bays().get(0).id());
            }
            double moved = largest(change);
            double length = 1;
            // from flows that do not balance yet, only the full step leads to flows that do
            if (!balanced || moved <= 1e-6 * largest(flow)) {
                add(1);
                sound = evaluate(trial);
            } else {
                length = search();
                sound = length > 0;
            }
            if (!sound) {
                return new Ended(before + iteration, "has a flow law that does not rise at its present flow", name(unsound));
            }
            System.arraycopy(trial, 0, flow, 0, branches);
            double relative = moved == 0 ? 0 : moved / largest(flow);
            // the second case: as small as rounding lets it become
            if (balanced && length == 1 && (relative <= settings.tolerance() || relative <= 1e-7 && relative >= last / 4)) {
                return new Ended(before + iteration, "", "");
            }
            balanced = true;
            last = relative;
        }
        return new Ended(before + settings.maxIterations(), "did not settle in " + settings.maxIterations() + " steps",
                worstBranch());
    }

    /**
     * Straight lines for a cold start: from the drop at rest to that at the flow that the strongest bank, or the largest
     * inflow, could drive through the branch alone.
     */
    private boolean chords() {
        if (!evaluate(flow)) {
            return false;
        }
        double drive = 0;
        double put = 0;
        for (int e = 0; e < branches; e++) {
            if (given[e]) {
                put += Math.abs(flow[e]);
            } else {
                drive = Math.max(drive, Math.abs(drop[e] - buoyancy[e]));
            }
        }
        for (int i = 0; i < bays; i++) {
            put += Math.abs(inflow[i]) / 2;
        }
        for (int e = 0; e < branches; e++) {
            if (given[e]) {
                continue;
            }
            double rest = drop[e];
            double through = put > 0 ? put : 0.01;
            for (int i = 0; i < 6 && drive > 0; i++) {
                law[e].at(through / density[e], density[e], viscosity[e], out);
                double ratio = drive / (out.pressure() - rest);
                if (!(ratio > 0) || ratio > 0.5 && ratio < 2) {
                    break;
                }
                // exact for a square law
                through *= Math.sqrt(Math.min(ratio, 1e12));
            }
            through = Math.max(through, put);
            law[e].at(through / density[e], density[e], viscosity[e], out);
            double chord = (out.pressure() - rest) / through;
            if (chord > 0 && chord < Double.POSITIVE_INFINITY) {
                slope[e] = chord;
            }
        }
        return true;
    }

    /** Drops and slopes at given flows; false where a slope is not positive. */
    private boolean evaluate(double[] at) {
        for (int e = 0; e < branches; e++) {
            if (given[e]) {
                continue;
            }
            law[e].at(at[e] / density[e], density[e], viscosity[e], out);
            drop[e] = out.pressure();
            slope[e] = out.slope() / density[e];
            if (!(slope[e] > 0 && slope[e] < Double.POSITIVE_INFINITY) || !Double.isFinite(drop[e])) {
                unsound = e;
                return false;
            }
        }
        return true;
    }

    private double pressureAt(int bay) {
        return bay == Network.OUTSIDE ? 0 : pressure[bay];
    }

    /**
     * The full step of Newton's method: new pressures, and the change of each flow. Written for changes, so that the mass
     * balance closes to rounding.
     */
    private boolean direction() {
        System.arraycopy(inflow, 0, step, 0, bays);
        Arrays.fill(diagonal, 0);
        double sum = 0;
        int used = 0;
        for (int e = 0; e < branches; e++) {
            int a = from[e];
            int b = to[e];
            double through = flow[e];
            if (given[e]) {
                conductance[e] = 0;
                change[e] = 0;
            } else {
                conductance[e] = 1 / slope[e];
                sum += conductance[e];
                used++;
                change[e] = conductance[e] * (pressureAt(a) - pressureAt(b) + buoyancy[e] - drop[e]);
                through += change[e];
            }
            if (a == b) {
                continue;
            }
            if (a != Network.OUTSIDE) {
                step[a] -= through;
                diagonal[a] += conductance[e];
            }
            if (b != Network.OUTSIDE) {
                step[b] += through;
                diagonal[b] += conductance[e];
            }
        }
        for (int k = 0; k < inner.length; k++) {
            offDiagonal[k] = -conductance[inner[k]];
        }
        double pin = used == 0 ? 1 : sum / used;
        for (int i = 0; i < bays; i++) {
            if (anchored[i]) {
                diagonal[i] += pin;
            }
        }
        if (!matrix.factor(diagonal, offDiagonal)) {
            return false;
        }
        matrix.solve(step);
        for (int e = 0; e < branches; e++) {
            if (from[e] != to[e]) {
                double push = (from[e] == Network.OUTSIDE ? 0 : step[from[e]]) - (to[e] == Network.OUTSIDE ? 0 : step[to[e]]);
                change[e] += conductance[e] * push;
            }
        }
        for (int i = 0; i < bays; i++) {
            pressure[i] += step[i];
        }
        return true;
    }

    private void add(double length) {
        for (int e = 0; e < branches; e++) {
            trial[e] = flow[e] + length * change[e];
        }
    }

    /**
     * How far to go along the step: to where the slope of the content along it has fallen to half or less. Leaves flows, drops
     * and slopes there. Zero where a law is unsound.
     */
    private double search() {
        double start = 0;
        for (int e = 0; e < branches; e++) {
            start -= given[e] ? 0 : slope[e] * change[e] * change[e];
        }
        double low = 0;
        double lowSlope = start;
        double high = 1;
        double highSlope = 0;
        double length = 1;
        boolean bracketed = false;
        for (int i = 0; i < 60; i++) {
            add(length);
            if (!evaluate(trial)) {
                return 0;
            }
            double along = 0;
            for (int e = 0; e < branches; e++) {
                if (!given[e]) {
                    along += change[e] * (drop[e] - buoyancy[e] - pressureAt(from[e]) + pressureAt(to[e]));
                }
            }
            if (along <= -start / 2 && (along >= start / 2 || !bracketed)) {
                return length;
            }
            if (along > 0) {
                high = length;
                highSlope = along;
                bracketed = true;
            } else {
                low = length;
                lowSlope = along;
            }
            double guess = low + (high - low) * lowSlope / (lowSlope - highSlope);
            // keep away from the ends, so that the bracket shrinks
            double margin = 0.05 * (high - low);
            length = Math.max(low + margin, Math.min(high - margin, guess));
        }
        return length;
    }

    private static double largest(double[] values) {
        double largest = 0;
        for (double value : values) {
            largest = Math.max(largest, Math.abs(value));
        }
        return largest;
    }

    private double misfit(int branch) {
        return pressureAt(from[branch]) - pressureAt(to[branch]) + buoyancy[branch] - drop[branch];
    }

    private String worstBranch() {
        int worst = 0;
        for (int e = 0; e < branches; e++) {
            worst = !given[e] && (given[worst] || Math.abs(misfit(e)) > Math.abs(misfit(worst))) ? e : worst;
        }
        return branches == 0 ? "" : name(worst);
    }

    private NetworkSolution failed(String why, String place, int iterations) {
        return new NetworkSolution(new double[bays], new double[branches], filledWithOne(branches), new double[branches],
                Double.NaN, Double.NaN, iterations, why, place);
    }

    private static double[] filledWithOne(int length) {
        double[] ones = new double[length];
        Arrays.fill(ones, 1);
        return ones;
    }

    private NetworkSolution solution(String why, String place, int iterations) {
        double[] drops = new double[branches];
        double worst = 0;
        System.arraycopy(inflow, 0, step, 0, bays);
        for (int e = 0; e < branches; e++) {
            double between = pressureAt(from[e]) - pressureAt(to[e]) + buoyancy[e];
            drops[e] = given[e] ? between : drop[e];
            worst = given[e] ? worst : Math.max(worst, Math.abs(between - drop[e]));
            if (from[e] != Network.OUTSIDE) {
                step[from[e]] -= flow[e];
            }
            if (to[e] != Network.OUTSIDE) {
                step[to[e]] += flow[e];
            }
        }
        double imbalance = largest(step);
        String reason = why;
        String where = place;
        if (why.isEmpty() && imbalance > MASS_TOLERANCE * largest(flow)) {
            int bay = 0;
            for (int i = 0; i < bays; i++) {
                bay = Math.abs(step[i]) > Math.abs(step[bay]) ? i : bay;
            }
            reason = "has a mass balance that is off by " + imbalance + " kg/s";
            where = network.bays().get(bay).id();
        }
        return new NetworkSolution(pressure.clone(), flow.clone(), density.clone(), drops, imbalance, worst, iterations, reason,
                where);
    }
}
