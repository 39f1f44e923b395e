package tramontane.reliability.system;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

import tramontane.reliability.statistics.LifeDistribution;

/**
 * A system whose failed units are repaired: a Markov chain in continuous time over a failure graph.
 *
 * <p>Failure rates are constant: of a unit that is renewed again and again, the long-run rate 1/MTTF, times the ageing of the state.
 * That is exact for exponential lives only; with wear it is right over many lives and too dark for a system that is new.
 *
 * <p>Units that run go on failing while the system is down, as far as the graph goes. At its edge, in states without failures, units
 * that still run are taken not to fail before a repair. A repair undoes one of the failures that led to a state, any with the same
 * chance. Therefore all ways into a state must count the same number of failures.
 *
 * <p>No digits are lost where a probability is small: nothing here subtracts (W. K. Grassmann, M. I. Taksar, D. P. Heyman, "Regenerative
 * Analysis and Steady State Distributions for Markov Chains", Operations Research 33, 1985).
 *
 * @param graph what failures lead to, beyond the first down state
 * @param rates failures per time of a unit of each kind, not below zero
 * @param rate  repairs per time of one crew, 1 / mean time of repair, above zero
 * @param crews how many failed units are repaired at the same time, 1 or more, or {@link #EACH}
 */
public record Repair(FailureGraph graph, List<Double> rates, double rate, int crews) {

    /** A crew for each failed unit. */
    public static final int EACH = Integer.MAX_VALUE;

    /** Refuses what can't be. */
    public Repair {
        rates = List.copyOf(rates);
        rates.forEach(failure -> Refuse.notNegative("failure rate", failure));
        Refuse.positive("repair rate", rate);
        Refuse.atLeast(1, "crews", crews);
        if (rates.size() < graph.kinds()) {
            throw new IllegalArgumentException("the graph speaks of " + graph.kinds() + " kinds of units, there are rates of "
                    + rates.size());
        }
        depths(graph);
    }

    /**
     * The chain of units of given lives, each counted with its long-run rate 1/MTTF.
     *
     * @param lives  of each kind of unit
     * @param repair mean time of a repair, above zero
     * @param crews  1 or more, or {@link #EACH}
     */
    public static Repair of(FailureGraph graph, List<LifeDistribution> lives, double repair, int crews) {
        return new Repair(graph, lives.stream().map(life -> 1 / life.mean()).toList(), 1 / Refuse.positive("repair", repair), crews);
    }

    private static int[] depths(FailureGraph graph) {
        int[] depths = new int[graph.states().size()];
        Arrays.fill(depths, -1);
        depths[0] = 0;
        for (int state : graph.reachable()) {
            for (FailureGraph.Failure failure : graph.states().get(state).failures()) {
                int depth = depths[state] + 1;
                if (depths[failure.to()] >= 0 && depths[failure.to()] != depth) {
                    throw new IllegalArgumentException("state " + failure.to() + " is entered by failure number " + depths[failure.to()]
                            + " and by failure number " + depth + "; for repair a state must stand for one number of failed units");
                }
                depths[failure.to()] = depth;
            }
        }
        return depths;
    }

    /** Rates between the states that can be reached, in the order of {@link FailureGraph#reachable()}. */
    private double[][] chain(List<Integer> order) {
        int n = order.size();
        int[] depths = depths(graph);
        double[][] chain = new double[n][n];
        double[] ways = new double[n];
        ways[0] = 1;
        double[][] entries = new double[n][n];
        for (int i = 0; i < n; i++) {
            double sum = Arrays.stream(entries[i]).sum();
            if (i > 0) {
                ways[i] = sum / depths[order.get(i)];
                for (int j = 0; j < i; j++) {
                    chain[i][j] = rate * Math.min(crews, depths[order.get(i)]) * entries[i][j] / sum;
                }
            }
            for (FailureGraph.Failure failure : graph.states().get(order.get(i)).failures()) {
                int to = order.indexOf(failure.to());
                chain[i][to] += failure.units() * failure.ageing() * rates.get(failure.kind());
                entries[to][i] += ways[i] * failure.units();
            }
        }
        return chain;
    }

    private boolean up(int state) {
        return graph.states().get(state).up();
    }

    /** Shares of time in the long run; the rates are used up. */
    private static double[] steady(double[][] rates) {
        int n = rates.length;
        for (int last = n - 1; last > 0; last--) {
            double out = 0;
            for (int j = 0; j < last; j++) {
                out += rates[last][j];
            }
            for (int i = 0; i < last; i++) {
                rates[i][last] /= out;
                double into = rates[i][last];
                for (int j = 0; into != 0 && j < last; j++) {
                    if (j != i) {
                        rates[i][j] += into * rates[last][j];
                    }
                }
            }
        }
        double[] shares = new double[n];
        shares[0] = 1;
        double sum = 1;
        for (int j = 1; j < n; j++) {
            for (int i = 0; i < j; i++) {
                shares[j] += shares[i] * rates[i][j];
            }
            sum += shares[j];
        }
        for (int j = 0; j < n; j++) {
            shares[j] /= sum;
        }
        return shares;
    }

    /** Long-run share of time in which the system is down. */
    public double unavailability() {
        return sum(false);
    }

    /** Long-run share of time in which all limits are kept. */
    public double availability() {
        return sum(true);
    }

    private double sum(boolean up) {
        List<Integer> order = graph.reachable();
        double[] shares = steady(chain(order));
        double sum = 0;
        for (int i = shares.length - 1; i >= 0; i--) {
            sum += up(order.get(i)) == up ? shares[i] : 0;
        }
        return sum;
    }

    /**
     * Expected time down within a period in the long run.
     *
     * @param period for example 8760 h, above zero
     */
    public double downTime(double period) {
        return unavailability() * Refuse.positive("period", period);
    }

    /** Expected failures of units per time in the long run: the demand for spares of one system. */
    public double failureRate() {
        return rate(false);
    }

    /** How often per time the system goes down in the long run. */
    public double downRate() {
        return rate(true);
    }

    private double rate(boolean goingDown) {
        List<Integer> order = graph.reachable();
        double[] shares = steady(chain(order));
        double sum = 0;
        for (int i = shares.length - 1; i >= 0; i--) {
            for (FailureGraph.Failure failure : graph.states().get(order.get(i)).failures()) {
                if (!goingDown || up(order.get(i)) && !up(failure.to())) {
                    sum += shares[i] * failure.units() * failure.ageing() * rates.get(failure.kind());
                }
            }
        }
        return sum;
    }

    /** The up states, with all down states as one more at the end. */
    private double[][] untilDown() {
        List<Integer> order = graph.reachable();
        double[][] chain = chain(order);
        List<Integer> ups = new ArrayList<>();
        for (int i = 0; i < order.size(); i++) {
            if (up(order.get(i))) {
                ups.add(i);
            }
        }
        double[][] rates = new double[ups.size() + 1][ups.size() + 1];
        for (int i = 0; i < ups.size(); i++) {
            for (int j = 0; j < order.size(); j++) {
                int to = ups.indexOf(j);
                rates[i][to < 0 ? ups.size() : to] += chain[ups.get(i)][j];
            }
        }
        return rates;
    }

    /** Mean time from all units running to the first time down, MTTF. Infinite where nothing brings the system down. */
    public double mean() {
        double[][] chain = untilDown();
        int down = chain.length - 1;
        // With a way back to state 0 at rate 1, the mean time down is 1 and the ratio of the shares is the mean time up.
        chain[down][0] = 1;
        double[] shares = steady(chain);
        double up = 0;
        for (int i = 0; i < down; i++) {
            up += shares[i];
        }
        return shares[down] == 0 ? Double.POSITIVE_INFINITY : up / shares[down];
    }

    /**
     * Probability that the system has been down by a time, begun with all units running.
     *
     * @param time not below zero
     */
    public double failed(double time) {
        return course(time, 1).get(1).failed();
    }

    /** Probability that the system has never been down by a time, begun with all units running. */
    public double survival(double time) {
        return course(time, 1).get(1).survival();
    }

    /**
     * The course from time zero to a horizon, evenly divided. By Taylor series of a uniformised step, squared until it is long enough: all
     * terms are positive, and stiff rates cost only more squarings.
     *
     * @param horizon not below zero
     * @param steps   1 or more; there is one point more
     */
    public List<SystemSurvival.Point> course(double horizon, int steps) {
        Refuse.notNegative("horizon", horizon);
        Refuse.atLeast(1, "steps", steps);
        double[][] step = step(untilDown(), horizon / steps);
        int down = step.length - 1;
        double[] now = new double[down + 1];
        now[0] = 1;
        List<SystemSurvival.Point> points = new ArrayList<>();
        for (int k = 0; k <= steps; k++) {
            double survival = 0;
            for (int i = 0; i < down; i++) {
                survival += now[i];
            }
            points.add(new SystemSurvival.Point(k == steps ? horizon : horizon * k / steps, Math.min(1, now[down]), Math.min(1, survival)));
            double[] next = new double[down + 1];
            for (int i = 0; i <= down; i++) {
                for (int j = 0; j <= down; j++) {
                    next[j] += now[i] * step[i][j];
                }
            }
            now = next;
        }
        return List.copyOf(points);
    }

    private static double[][] step(double[][] rates, double time) {
        int n = rates.length;
        double fastest = 0;
        for (double[] row : rates) {
            fastest = Math.max(fastest, Arrays.stream(row).sum());
        }
        int squarings = Math.max(0, (int) Math.ceil(Math.log(Math.max(1, fastest * time)) / Math.log(2)));
        double length = fastest * time * Math.pow(0.5, squarings);
        double[][] jump = new double[n][n];
        for (int i = 0; i < n; i++) {
            double sum = Arrays.stream(rates[i]).sum();
            for (int j = 0; j < n && fastest > 0; j++) {
                jump[i][j] = rates[i][j] / fastest;
            }
            jump[i][i] += fastest > 0 ? (fastest - sum) / fastest : 1;
        }
        double[][] power = new double[n][n];
        double[][] result = new double[n][n];
        for (int i = 0; i < n; i++) {
            power[i][i] = Math.exp(-length);
            result[i][i] = power[i][i];
        }
        // A path to down may need as many jumps as there are states, and its probability shall have all its digits.
        for (int k = 1; k < 25 + n; k++) {
            power = product(power, jump);
            for (int i = 0; i < n; i++) {
                for (int j = 0; j < n; j++) {
                    power[i][j] *= length / k;
                    result[i][j] += power[i][j];
                }
            }
        }
        whole(result);
        for (int s = 0; s < squarings; s++) {
            result = product(result, result);
            whole(result);
        }
        return result;
    }

    /** Rows of probabilities add up to 1; without this, rounding would double with each squaring. */
    private static void whole(double[][] rows) {
        for (double[] row : rows) {
            double sum = Arrays.stream(row).sum();
            for (int j = 0; j < row.length; j++) {
                row[j] /= sum;
            }
        }
    }

    private static double[][] product(double[][] left, double[][] right) {
        int n = left.length;
        double[][] product = new double[n][n];
        for (int i = 0; i < n; i++) {
            for (int k = 0; k < n; k++) {
                double factor = left[i][k];
                for (int j = 0; factor != 0 && j < n; j++) {
                    product[i][j] += factor * right[k][j];
                }
            }
        }
        return product;
    }
}
