package tramontane.airflow.internal;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.TreeSet;
import java.util.function.BooleanSupplier;
import tramontane.airflow.NetworkLoad;
import tramontane.airflow.NetworkSolution;
import tramontane.airflow.NetworkSolver;
import tramontane.analysis.FlowLaw;

/**
 * All crossings of one bank's curve with its system curve, for a curve that does not fall all the way.
 *
 * <p>The bank's flow is imposed, the rest of the network solved with every other bank on its own curve; what the bank gives
 * more than that asks of it changes its sign at a crossing. The rest has one answer at each flow, and what it asks rises with
 * flow, so that far outside the measured flows there is at most one crossing on either side. Nearer the curve is scanned in
 * steps much shorter than the distance of measured points; two crossings that lie closer together than a step may be missed.
 */
public final class DutySearch {

    private static final int STEPS = 24;
    private static final int MOST_STEPS = 200;

    private final NetworkSolver solver;
    private final NetworkLoad load;
    private final NetworkSolver.Settings settings;
    private final int branch;
    private final BankLaw law;
    private final double viscosity;
    private final BooleanSupplier stop;
    private final FlowLaw.Drop drop = new FlowLaw.Drop();
    private Optional<NetworkSolution> last = Optional.empty();
    private Optional<NetworkSolution> failed = Optional.empty();

    /**
     * A crossing.
     *
     * @param solution solution with the bank's flow at the crossing
     * @param pressure what the bank gives there, Pa
     * @param stable   whether it is stable
     */
    public record Crossing(NetworkSolution solution, double pressure, boolean stable) {
    }

    /**
     * What was found.
     *
     * @param crossings by rising flow
     * @param reached   the one first met from rest: number in the list
     * @param failed    a solution that has no answer, which ended the search
     */
    public record Found(List<Crossing> crossings, int reached, Optional<NetworkSolution> failed) {
    }

    private DutySearch(NetworkSolver solver, NetworkLoad load, NetworkSolver.Settings settings, int branch, BankLaw law,
            double viscosity, BooleanSupplier stop) {
        this.solver = solver;
        this.load = load;
        this.settings = settings;
        this.branch = branch;
        this.law = law;
        this.viscosity = viscosity;
        this.stop = stop;
    }

    /**
     * Searches.
     *
     * @param branch    the bank's branch
     * @param law       its law
     * @param density   density at its inlet, kg/m³, to turn measured flows into mass flows
     * @param viscosity viscosity at its inlet, Pa s
     */
    public static Found search(NetworkSolver solver, NetworkLoad load, NetworkSolver.Settings settings, int branch, BankLaw law,
            double density, double viscosity, BooleanSupplier stop) {
        return new DutySearch(solver, load, settings, branch, law, viscosity, stop).search(density);
    }

    private Found search(double density) {
        double[] at = places(density);
        double[] excess = new double[at.length];
        List<Double> roots = new ArrayList<>();
        for (int i = 0; i < at.length && failed.isEmpty(); i++) {
            excess[i] = excess(at[i]);
            if (i > 0 && excess[i] == 0) {
                roots.add(at[i]);
            } else if (i > 0 && excess[i - 1] != 0 && excess[i - 1] > 0 != excess[i] > 0) {
                roots.add(root(at[i - 1], excess[i - 1], at[i], excess[i]));
            }
        }
        if (failed.isEmpty()) {
            bound(at[0], excess[0], -1).ifPresent(roots::addFirst);
            bound(at[at.length - 1], excess[at.length - 1], 1).ifPresent(roots::add);
        }
        double rest = failed.isEmpty() ? excess(0) : 0;
        List<Crossing> crossings = new ArrayList<>();
        int reached = -1;
        for (int i = 0; i < roots.size() && failed.isEmpty(); i++) {
            double flow = roots.get(i);
            double nudge = 1e-6 * at[at.length - 1];
            boolean stable = excess(flow - nudge) > excess(flow + nudge);
            excess(flow);
            if (failed.isEmpty()) {
                crossings.add(new Crossing(last.orElseThrow(), -drop.pressure(), stable));
            }
            // from rest the flow grows while the bank gives more than is asked, and turns back where it gives less
            if (rest >= 0 && flow >= 0 && reached < 0 || rest < 0 && flow < 0) {
                reached = i;
            }
        }
        return new Found(crossings, reached, failed);
    }

    /** Mass flows at which to look: the measured ones, and steps between them. */
    private double[] places(double density) {
        MoverCharacteristic mover = law.mover().orElseThrow();
        TreeSet<Double> places = new TreeSet<>();
        places.add(0.0);
        for (int k = 1; k <= STEPS; k++) {
            // a curve that rises from rest goes on falling a little way backwards
            places.add(-2 * mover.lastFlow() * law.width() * density * k / STEPS);
        }
        double before = 0;
        for (int i = 0; i < mover.points(); i++) {
            double flow = mover.flow(i) * law.width() * density;
            for (int k = 1; k <= STEPS; k++) {
                places.add(before + (flow - before) * k / STEPS);
            }
            before = flow;
        }
        return places.stream().mapToDouble(Double::doubleValue).toArray();
    }

    /** A crossing outside the measured flows, in one direction. */
    private Optional<Double> bound(double end, double excess, int direction) {
        if (excess * direction <= 0) {
            return Optional.empty();
        }
        double step = direction * Math.max(Math.abs(end), 1e-6);
        double near = end;
        double nearExcess = excess;
        for (int i = 0; i < MOST_STEPS && failed.isEmpty(); i++) {
            double far = near + step;
            double farExcess = excess(far);
            if (farExcess == 0 || farExcess > 0 != nearExcess > 0) {
                if (failed.isPresent()) {
                    return Optional.empty();
                }
                return Optional.of(direction > 0 ? root(near, nearExcess, far, farExcess)
                        : root(far, farExcess, near, nearExcess));
            }
            near = far;
            nearExcess = farExcess;
            step *= 2;
        }
        return Optional.empty();
    }

    /** Regula falsi with the Illinois rule, then as far as doubles go. */
    private double root(double from, double fromExcess, double to, double toExcess) {
        double low = from;
        double lowExcess = fromExcess;
        double high = to;
        double highExcess = toExcess;
        int side = 0;
        for (int i = 0; i < MOST_STEPS && failed.isEmpty(); i++) {
            if (high - low <= 1e-14 * Math.max(Math.abs(low), Math.abs(high))) {
                break;
            }
            double guess = low + (high - low) * lowExcess / (lowExcess - highExcess);
            if (!(guess > low && guess < high)) {
                guess = low + (high - low) / 2;
            }
            if (!(guess > low && guess < high)) {
                break;
            }
            double excess = excess(guess);
            if (excess == 0) {
                return guess;
            }
            if (excess > 0 == lowExcess > 0) {
                low = guess;
                lowExcess = excess;
                highExcess = side < 0 ? highExcess / 2 : highExcess;
                side = -1;
            } else {
                high = guess;
                highExcess = excess;
                lowExcess = side > 0 ? lowExcess / 2 : lowExcess;
                side = 1;
            }
        }
        return Math.abs(lowExcess) < Math.abs(highExcess) ? low : high;
    }

    /** What the bank gives more than is asked of it at a mass flow, Pa. */
    private double excess(double massFlow) {
        NetworkSolution solution = solver.solve(load.imposing(branch, massFlow), settings, last, stop);
        if (!solution.converged()) {
            failed = Optional.of(solution);
            return 0;
        }
        last = Optional.of(solution);
        law.at(solution.flow(branch), solution.density(branch), viscosity, drop);
        return solution.drop(branch) - drop.pressure();
    }
}
