package tramontane.airflow;

import java.util.Arrays;
import java.util.Optional;
import java.util.function.BooleanSupplier;
import tramontane.airflow.internal.SparseCholesky;
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
 * <p>Where the two bays of a branch hold unlike air, its drop less its buoyancy may jump where the flow turns. If it jumps up, the
 * jump is made steep instead of sudden and solved with the rest. If it jumps down, either direction may hold itself up; the
 * direction is then found by turns, from that of the first solution on.
 *
 * <p>A law that does not rise everywhere ({@link FlowLaw#increasing}) is refused unless its flow is imposed.
 *
 * <p>An instance keeps what depends on the network alone and the memory to work in, so that solving often is cheap. It gives
 * the same answer however often it was used, and belongs to one thread.
 */
public final class NetworkSolver {

    /** Standard gravity, m/s² (ISO 80000-3). */
    public static final double GRAVITY = 9.80665;
    /** Steps that may go a little too far, which is quicker mostly; later ones may not, which cannot go round in a circle. */
    private static final int EASY_STEPS = 30;
    /** Slopes of the content that are smaller than this, over the pressures they are made of, are rounding. */
    private static final double ROUNDING = 1e-13;
    /** Mass flow over which a branch that turns changes from one bay's air to the other's, kg/s: too small to matter. */
    private static final double TURNING = 1e-7;
    /** Mass flow and pressure that errors are measured by where all flows and pressures are smaller, kg/s and Pa. */
    private static final double LEAST_FLOW = 1e-6;
    private static final double LEAST_PRESSURE = 1e-3;
    /** Largest difference between a branch's drop and that between its bays, over the largest pressure. */
    private static final double PRESSURE_TOLERANCE = 1e-9;
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
    private final SparseCholesky matrix;

    private final Air[] air;
    /** Air in a branch that goes forwards, and backwards. */
    private final double[] fromDensity;
    private final double[] toDensity;
    private final double[] fromViscosity;
    private final double[] toViscosity;
    private final double[] fromBuoyancy;
    private final double[] toBuoyancy;
    private final double[] density;
    private final double[] viscosity;
    private final double[] buoyancy;
    /** Share of the from bay's air in a branch. */
    private final double[] share;
    private final double[] shareStep;
    private final double[] shareMove;
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

    /** How the air in a branch depends on its flow. */
    private enum Air {
        /** Both bays hold the same. */
        SAME,
        /** It follows the flow. */
        FOLLOWS,
        /** It is held while the rest is solved. */
        HELD
    }

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

    /** What depends on which bays the branches join, and the heights of those. */
    private record Joints(int[] from, int[] to, double[] rise, int[] inner) {

        static Joints of(Network network) {
            int branches = network.branches().size();
            int[] from = new int[branches];
            int[] to = new int[branches];
            double[] rise = new double[branches];
            int[] joining = new int[branches];
            int joins = 0;
            for (int e = 0; e < branches; e++) {
                Network.Branch branch = network.branches().get(e);
                from[e] = branch.from();
                to[e] = branch.to();
                if (from[e] != Network.OUTSIDE && to[e] != Network.OUTSIDE) {
                    rise[e] = network.bays().get(to[e]).height() - network.bays().get(from[e]).height();
                    if (from[e] != to[e]) {
                        joining[joins++] = e;
                    }
                }
            }
            return new Joints(from, to, rise, Arrays.copyOf(joining, joins));
        }

        SparseCholesky matrix(int bays) {
            int[] a = new int[inner.length];
            int[] b = new int[inner.length];
            for (int k = 0; k < inner.length; k++) {
                a[k] = from[inner[k]];
                b[k] = to[inner[k]];
            }
            return SparseCholesky.of(bays, a, b);
        }
    }

    private NetworkSolver(Network network, Joints joints, SparseCholesky matrix) {
        this.network = network;
        this.matrix = matrix;
        bays = network.bays().size();
        branches = network.branches().size();
        from = joints.from();
        to = joints.to();
        rise = joints.rise();
        inner = joints.inner();
        law = network.branches().stream().map(Network.Branch::law).toArray(FlowLaw[]::new);
        air = new Air[branches];
        fromDensity = new double[branches];
        toDensity = new double[branches];
        fromViscosity = new double[branches];
        toViscosity = new double[branches];
        fromBuoyancy = new double[branches];
        toBuoyancy = new double[branches];
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
        offDiagonal = new double[inner.length];
        root = new int[bays];
        anchored = new boolean[bays];
    }

    /** A solver for a network. */
    public static NetworkSolver of(Network network) {
        Joints joints = Joints.of(network);
        return new NetworkSolver(network, joints, joints.matrix(network.bays().size()));
    }

    /**
     * A solver for a network that differs in its flow laws only, for much less work: what this one found out of how the bays are
     * joined holds there too. Memory to work in it has of its own.
     *
     * @param other the same bays, joined by as many branches in the same order
     */
    public NetworkSolver with(Network other) {
        if (!joins(other)) {
            throw new IllegalArgumentException("a network of " + other.bays().size() + " bays and " + other.branches().size()
                    + " branches is not joined as one of " + bays + " bays and " + branches + " branches");
        }
        return new NetworkSolver(other, new Joints(from, to, rise, inner), matrix.another());
    }

    /** Whether another network joins the same bays by as many branches in the same order. */
    boolean joins(Network other) {
        boolean same = other.branches().size() == branches && other.bays().equals(network.bays());
        for (int e = 0; e < branches && same; e++) {
            same = other.branches().get(e).from() == from[e] && other.branches().get(e).to() == to[e];
        }
        return same;
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
        boolean held = take(load.air());
        int iterations = 0;
        for (int round = 0; round < settings.maxDirections(); round++) {
            hold();
            Ended ended = newton(settings, cold && round == 0, iterations, stop);
            iterations = ended.iterations;
            if (!ended.why.isEmpty()) {
                return solution(ended.why, ended.place, iterations);
            }
            if (!held || settled()) {
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

    /** Takes over the air on both sides of each branch; tells whether that of any branch is held while the rest is solved. */
    private boolean take(NetworkAir given) {
        double outside = given.density(Network.OUTSIDE);
        boolean held = false;
        for (int e = 0; e < branches; e++) {
            fromDensity[e] = given.density(from[e]);
            toDensity[e] = given.density(to[e]);
            fromViscosity[e] = given.viscosity(from[e]);
            toViscosity[e] = given.viscosity(to[e]);
            fromBuoyancy[e] = (outside - fromDensity[e]) * GRAVITY * rise[e];
            toBuoyancy[e] = (outside - toDensity[e]) * GRAVITY * rise[e];
            boolean same = fromDensity[e] == toDensity[e] && fromViscosity[e] == toViscosity[e];
            air[e] = same || this.given[e] ? Air.SAME : jump(e) >= 0 ? Air.FOLLOWS : Air.HELD;
            if (this.given[e]) {
                share[e] = flow[e] >= 0 ? 1 : 0;
            }
            held |= air[e] == Air.HELD;
        }
        return held;
    }

    /** How much the drop less the buoyancy of a branch rises where its flow turns from backwards to forwards, Pa. */
    private double jump(int e) {
        law[e].at(0, fromDensity[e], fromViscosity[e], out);
        double forwards = out.pressure() - fromBuoyancy[e];
        law[e].at(0, toDensity[e], toViscosity[e], out);
        return forwards - (out.pressure() - toBuoyancy[e]);
    }

    /** Sets the air in the branches whose air does not follow their flow. */
    private void hold() {
        for (int e = 0; e < branches; e++) {
            density[e] = share[e] * fromDensity[e] + (1 - share[e]) * toDensity[e];
            viscosity[e] = share[e] * fromViscosity[e] + (1 - share[e]) * toViscosity[e];
            buoyancy[e] = share[e] * fromBuoyancy[e] + (1 - share[e]) * toBuoyancy[e];
        }
    }

    /**
     * Turns each held branch to the air of the bay it now gets its air from. Should several turn one another round and round,
     * their steps get smaller until the mixture in them stands still.
     */
    private boolean settled() {
        boolean settled = true;
        for (int e = 0; e < branches; e++) {
            double away = (flow[e] > 0 ? 1 : 0) - share[e];
            if (air[e] != Air.HELD || away == 0 || Math.abs(flow[e]) <= TURNING) {
                continue;
            }
            settled = false;
            if (away * shareMove[e] < 0) {
                shareStep[e] /= 2;
            }
            shareMove[e] = away;
            share[e] += Math.max(-shareStep[e], Math.min(shareStep[e], away));
        }
        return settled;
    }

    /** Solves with the held air as it stands. */
    private Ended newton(Settings settings, boolean cold, int before, BooleanSupplier stop) {
        boolean sound = cold ? chords() : evaluate(flow);
        if (!sound) {
            return new Ended(before, "has a flow law that does not rise at its present flow", name(unsound));
        }
        boolean balanced = false;
        boolean stuck = false;
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
            // From flows that do not balance yet only the full step leads to flows that do; and a search among changes near
            // rounding would follow that, so it is left out there too, unless full steps lead nowhere.
            if (!balanced || moved <= 1e-6 * largest(flow) && !stuck) {
                add(1);
                sound = evaluate(trial);
            } else {
                length = search(iteration <= EASY_STEPS ? 0.5 : 0);
                sound = length > 0;
            }
            if (!sound) {
                return new Ended(before + iteration, "has a flow law that does not rise at its present flow", name(unsound));
            }
            System.arraycopy(trial, 0, flow, 0, branches);
            double relative = moved / Math.max(LEAST_FLOW, largest(flow));
            double unmet = unmet();
            double error = Math.max(relative / settings.tolerance(), unmet / PRESSURE_TOLERANCE);
            // the second case: as small as rounding lets it become
            if (balanced && length == 1 && (error <= 1 || relative <= 1e-7 && unmet <= 1e-6 && error >= last / 4)
                    && imbalance() <= MASS_TOLERANCE * Math.max(LEAST_FLOW, largest(flow))) {
                return new Ended(before + iteration, "", "");
            }
            stuck = balanced && unmet > 1e-6 && error >= last / 2;
            balanced = true;
            last = error;
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
            boolean evaluated = false;
            for (int i = 0; i < 6 && drive > 0; i++) {
                law[e].at(through / density[e], density[e], viscosity[e], out);
                double ratio = drive / (out.pressure() - rest);
                if (!(ratio > 0) || ratio > 0.5 && ratio < 2) {
                    evaluated = through >= put;
                    break;
                }
                // exact for a square law
                through *= Math.sqrt(Math.min(ratio, 1e12));
            }
            if (!evaluated) {
                through = Math.max(through, put);
                law[e].at(through / density[e], density[e], viscosity[e], out);
            }
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
            if (air[e] == Air.FOLLOWS) {
                follow(e, at[e]);
            } else {
                law[e].at(at[e] / density[e], density[e], viscosity[e], out);
                drop[e] = out.pressure();
                slope[e] = out.slope() / density[e];
            }
            if (!(slope[e] > 0 && slope[e] < Double.POSITIVE_INFINITY) || !Double.isFinite(drop[e])) {
                unsound = e;
                return false;
            }
        }
        return true;
    }

    /** Drop, slope and air of a branch whose air follows its flow. */
    private void follow(int e, double massFlow) {
        // cubic from all air of one bay to all of the other
        double t = Math.max(0, Math.min(1, 0.5 + massFlow / (2 * TURNING)));
        double forwards = t * t * (3 - 2 * t);
        double turning = 6 * t * (1 - t) / (2 * TURNING);
        double pressure = 0;
        double rising = 0;
        if (forwards > 0) {
            law[e].at(massFlow / fromDensity[e], fromDensity[e], fromViscosity[e], out);
            pressure += forwards * out.pressure();
            rising += forwards * out.slope() / fromDensity[e] + turning * (out.pressure() - fromBuoyancy[e]);
        }
        if (forwards < 1) {
            law[e].at(massFlow / toDensity[e], toDensity[e], toViscosity[e], out);
            pressure += (1 - forwards) * out.pressure();
            rising += (1 - forwards) * out.slope() / toDensity[e] - turning * (out.pressure() - toBuoyancy[e]);
        }
        drop[e] = pressure;
        slope[e] = rising;
        share[e] = forwards;
        density[e] = forwards * fromDensity[e] + (1 - forwards) * toDensity[e];
        buoyancy[e] = forwards * fromBuoyancy[e] + (1 - forwards) * toBuoyancy[e];
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
            // rounding alone can make it so where resistances differ by fifteen orders; the next step makes up for this one
            for (int i = 0; i < bays; i++) {
                diagonal[i] *= 1 + 1e-12;
            }
            if (!matrix.factor(diagonal, offDiagonal)) {
                return false;
            }
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
     *
     * @param over how steeply the content may rise again there, over its slope at the start; with 0 it has surely fallen
     */
    private double search(double over) {
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
            double noise = 0;
            for (int e = 0; e < branches; e++) {
                if (!given[e]) {
                    along += change[e] * (drop[e] - buoyancy[e] - pressureAt(from[e]) + pressureAt(to[e]));
                    noise += Math.abs(change[e]) * (Math.abs(drop[e]) + Math.abs(buoyancy[e]));
                }
            }
            if (along <= Math.max(-over * start, ROUNDING * noise) && (along >= start / 2 || !bracketed)) {
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

    /** Largest misfit of a branch over the largest pressure. */
    private double unmet() {
        double largest = 0;
        double scale = Math.max(LEAST_PRESSURE, largest(pressure));
        for (int e = 0; e < branches; e++) {
            if (!given[e]) {
                largest = Math.max(largest, Math.abs(misfit(e)));
                scale = Math.max(scale, Math.max(Math.abs(drop[e]), Math.abs(buoyancy[e])));
            }
        }
        return largest / scale;
    }

    /** Leaves in {@link #step} by how much more air comes into each bay than goes out; gives the largest, kg/s. */
    private double imbalance() {
        System.arraycopy(inflow, 0, step, 0, bays);
        for (int e = 0; e < branches; e++) {
            if (from[e] != Network.OUTSIDE) {
                step[from[e]] -= flow[e];
            }
            if (to[e] != Network.OUTSIDE) {
                step[to[e]] += flow[e];
            }
        }
        return largest(step);
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
        for (int e = 0; e < branches; e++) {
            double between = pressureAt(from[e]) - pressureAt(to[e]) + buoyancy[e];
            drops[e] = given[e] ? between : drop[e];
            worst = given[e] ? worst : Math.max(worst, Math.abs(between - drop[e]));
        }
        double imbalance = imbalance();
        String reason = why;
        String where = place;
        if (why.isEmpty() && imbalance > MASS_TOLERANCE * Math.max(LEAST_FLOW, largest(flow))) {
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
