package tramontane.airflow.internal;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
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
 * steps much shorter than the distance of measured points, and where it nearly touches between two steps more closely.
 */
public final class DutySearch {

    private static final int MOST_STEPS = 200;

    private final NetworkSolver solver;
    private final NetworkLoad load;
    private final NetworkSolver.Settings settings;
    private final int[] branches;
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

    private DutySearch(NetworkSolver solver, NetworkLoad load, NetworkSolver.Settings settings, int[] branches,
            BankLaw law, double viscosity, BooleanSupplier stop) {
        this.solver = solver;
        this.load = load;
        this.settings = settings;
        this.branches = branches;
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
        return new DutySearch(solver, load, settings, new int[] {branch}, law, viscosity, stop).search(density);
    }

    /**
     * Mass flows at which the bank gives what is asked of it, between places to look at.
     *
     * @param branches the bank's branch, or those of several like banks beside each other which move the same each
     * @param at       mass flows of one by rising flow, kg/s
     * @return the network at each of them; one solution that has not converged where one has no answer
     */
    static List<NetworkSolution> between(NetworkSolver solver, NetworkLoad load, NetworkSolver.Settings settings,
            int[] branches, BankLaw law, double viscosity, BooleanSupplier stop, double[] at) {
        DutySearch search = new DutySearch(solver, load, settings, branches, law, viscosity, stop);
        double[] excess = search.excess(at);
        List<NetworkSolution> solutions = new ArrayList<>();
        for (double root : search.roots(at, excess)) {
            search.excess(root);
            search.last.ifPresent(solutions::add);
        }
        return search.failed.map(List::of).orElse(solutions);
    }

    private double[] excess(double[] at) {
        double[] excess = new double[at.length];
        for (int i = 0; i < at.length && failed.isEmpty(); i++) {
            excess[i] = excess(at[i]);
        }
        return excess;
    }

    /** Crossings between places, by rising flow. */
    private List<Double> roots(double[] at, double[] excess) {
        List<Double> roots = new ArrayList<>();
        for (int i = 0; i < at.length && failed.isEmpty(); i++) {
            if (excess[i] == 0) {
                roots.add(at[i]);
            } else if (i > 0 && excess[i - 1] != 0 && excess[i - 1] > 0 != excess[i] > 0) {
                roots.add(root(at[i - 1], excess[i - 1], at[i], excess[i]));
            } else if (i > 1 && excess[i - 1] != 0 && excess[i - 2] > 0 == excess[i] > 0 && excess[i - 1] > 0 == excess[i] > 0
                    && Math.abs(excess[i - 1]) <= Math.min(Math.abs(excess[i - 2]), Math.abs(excess[i]))) {
                roots.addAll(touching(at[i - 2], at[i - 1], excess[i - 1], at[i]));
            }
        }
        return roots;
    }

    /** Two crossings close together, between three places of which the middle one comes nearest to one; golden section. */
    private List<Double> touching(double from, double middle, double middleExcess, double to) {
        double low = from;
        double high = to;
        double best = middle;
        double bestExcess = middleExcess;
        boolean positive = middleExcess > 0;
        for (int i = 0; i < MOST_STEPS && high - low > 1e-9 * Math.abs(to - from) && failed.isEmpty(); i++) {
            boolean right = high - best > best - low;
            double guess = best + 0.381966 * ((right ? high : low) - best);
            double excess = excess(guess);
            if (excess == 0 || excess > 0 != positive) {
                // a grid of places beside it sees the outer signs
                double left = from;
                double leftExcess = excess(left);
                double far = to;
                double farExcess = excess(far);
                return failed.isPresent() ? List.of()
                        : List.of(root(left, leftExcess, guess, excess), root(guess, excess, far, farExcess));
            }
            if (Math.abs(excess) < Math.abs(bestExcess)) {
                if (right) {
                    low = best;
                } else {
                    high = best;
                }
                best = guess;
                bestExcess = excess;
            } else if (right) {
                high = guess;
            } else {
                low = guess;
            }
        }
        return List.of();
    }

    private Found search(double density) {
        double[] at = Segment.places(law);
        for (int i = 0; i < at.length; i++) {
            at[i] *= density;
        }
        double[] excess = excess(at);
        List<Double> roots = new ArrayList<>(roots(at, excess));
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
        NetworkLoad imposed = load;
        for (int branch : branches) {
            imposed = imposed.imposing(branch, massFlow);
        }
        NetworkSolution solution = solver.solve(imposed, settings, last, stop);
        if (!solution.converged()) {
            failed = Optional.of(solution);
            return 0;
        }
        last = Optional.of(solution);
        law.at(solution.flow(branches[0]), solution.density(branches[0]), viscosity, drop);
        return solution.drop(branches[0]) - drop.pressure();
    }
}
