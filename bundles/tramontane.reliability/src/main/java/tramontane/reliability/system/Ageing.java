package tramontane.reliability.system;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

import tramontane.reliability.statistics.LifeDistribution;

/**
 * The way of a system without repair through its states, exact but for truncation.
 *
 * <p>In every state stands a measure over the ages of the groups, held by what it gives for polynomials in the logarithms of age over
 * time: signed weights at {@link AgeNodes}. The equations of that measure (loss at the hazard of the age, arrival in the next state,
 * drift of the age) are linear, and are integrated over a power of time in which cumulative hazards are nearly straight lines, by the
 * pair of Dormand and Prince (J. Comp. Appl. Math. 6, 1980) with the step chosen by relative error. The failed share is summed as
 * such, so it is right where it is small.
 */
final class Ageing {

    private static final double[][] STAGES = {
        {},
        {1.0 / 5},
        {3.0 / 40, 9.0 / 40},
        {44.0 / 45, -56.0 / 15, 32.0 / 9},
        {19372.0 / 6561, -25360.0 / 2187, 64448.0 / 6561, -212.0 / 729},
        {9017.0 / 3168, -355.0 / 33, 46732.0 / 5247, 49.0 / 176, -5103.0 / 18656},
        {35.0 / 384, 0, 500.0 / 1113, 125.0 / 192, -2187.0 / 6784, 11.0 / 84},
    };
    private static final double[] AT = {0, 1.0 / 5, 3.0 / 10, 4.0 / 5, 8.0 / 9, 1, 1};
    private static final double[] ERROR = {71.0 / 57600, 0, -71.0 / 16695, 71.0 / 1920, -17253.0 / 339200, 22.0 / 525, -1.0 / 40};
    private static final int MOST_STEPS = 20_000;
    private static final double NOTHING_LEFT = 1e-13;

    private final List<LifeDistribution> lives;
    private final AgeNodes nodes;
    private final int size;
    private final Up[] ups;
    /** Pairs of kind and dimension (-1: age is time) whose hazards are needed. */
    private final List<int[]> clocks = new ArrayList<>();
    private final double[][] hazards;
    private final boolean ends;
    private final double tolerance;

    private int steps;
    private double power;
    private double time;
    private double origin;
    private double position;
    /** Position from which on all digits shall hold. */
    private double first;
    private int[] depth = {};
    /** States left by all that will ever be in them; they would only shorten the steps. */
    private boolean[] left = {};
    private boolean[] running = {};
    private double step;
    private double[] values;
    private double[] slopes;
    private final double[][] stages = new double[7][];
    private double[] trial;

    /** One up state: where its weights begin, how its ages drift, what fails. */
    private record Up(int from, double[][] drift, int[][] failures, double[] factors) {
    }

    Ageing(FailureGraph graph, List<LifeDistribution> lives) {
        this.lives = lives;
        List<FailureGraph.State> states = graph.states();
        List<Integer> up = graph.reachable().stream().filter(state -> states.get(state).up()).toList();
        int groups = up.stream().flatMap(state -> states.get(state).failures().stream()).mapToInt(f -> f.group() + 1).max().orElse(0);
        double[][] ageing = new double[up.size()][groups];
        for (int i = 0; i < ageing.length; i++) {
            for (FailureGraph.Failure failure : states.get(up.get(i)).failures()) {
                ageing[i][failure.group()] = Math.log(failure.ageing());
            }
        }
        int[] dimension = new int[groups];
        double[][] distinct = distinct(ageing, needed(states, up, groups), dimension);
        double[] low = new double[distinct.length];
        double[] high = new double[distinct.length];
        for (int d = 0; d < distinct.length; d++) {
            low[d] = Math.min(0, Arrays.stream(distinct[d]).min().orElse(0));
            high[d] = Math.max(0, Arrays.stream(distinct[d]).max().orElse(0));
        }
        nodes = new AgeNodes(low, high);
        size = nodes.size();
        tolerance = distinct.length == 0 ? 1e-11 : 1e-8;
        ups = new Up[up.size()];
        boolean down = false;
        for (int i = 0; i < ups.length; i++) {
            List<FailureGraph.Failure> failures = states.get(up.get(i)).failures();
            int[][] targets = new int[failures.size()][];
            double[] factors = new double[failures.size()];
            for (int k = 0; k < targets.length; k++) {
                FailureGraph.Failure failure = failures.get(k);
                int to = up.indexOf(failure.to());
                down |= to < 0;
                targets[k] = new int[] {to < 0 ? -1 : to * size, clock(failure.kind(), dimension[failure.group()])};
                factors[k] = failure.units() * failure.ageing();
            }
            ups[i] = new Up(i * size, drift(distinct, i), targets, factors);
        }
        hazards = new double[clocks.size()][size];
        ends = down;
    }

    /** Which up states have units of a group that may still fail, there or later. */
    private static boolean[][] needed(List<FailureGraph.State> states, List<Integer> up, int groups) {
        boolean[][] needed = new boolean[up.size()][groups];
        for (int i = up.size() - 1; i >= 0; i--) {
            for (FailureGraph.Failure failure : states.get(up.get(i)).failures()) {
                needed[i][failure.group()] = true;
                int to = up.indexOf(failure.to());
                for (int g = 0; to >= 0 && g < groups; g++) {
                    needed[i][g] |= needed[to][g];
                }
            }
        }
        return needed;
    }

    /** The courses of ageing that differ from time and from each other, by state; tells every group which one is its own, or -1. */
    private static double[][] distinct(double[][] ageing, boolean[][] needed, int[] dimension) {
        List<double[]> found = new ArrayList<>();
        List<boolean[]> fixed = new ArrayList<>();
        for (int g = 0; g < dimension.length; g++) {
            dimension[g] = -1;
            boolean plain = true;
            for (double[] state : ageing) {
                plain &= state[g] == 0;
            }
            for (int d = 0; !plain && dimension[g] < 0 && d < found.size(); d++) {
                boolean same = true;
                for (int i = 0; i < ageing.length; i++) {
                    same &= !needed[i][g] || !fixed.get(d)[i] || found.get(d)[i] == ageing[i][g];
                }
                if (same) {
                    dimension[g] = d;
                }
            }
            if (!plain && dimension[g] < 0) {
                dimension[g] = found.size();
                found.add(new double[ageing.length]);
                fixed.add(new boolean[ageing.length]);
            }
            for (int i = 0; !plain && i < ageing.length; i++) {
                if (needed[i][g]) {
                    found.get(dimension[g])[i] = ageing[i][g];
                    fixed.get(dimension[g])[i] = true;
                }
            }
        }
        return found.toArray(new double[0][]);
    }

    private int clock(int kind, int dimension) {
        for (int i = 0; i < clocks.size(); i++) {
            if (clocks.get(i)[0] == kind && clocks.get(i)[1] == dimension) {
                return i;
            }
        }
        clocks.add(new int[] {kind, dimension});
        return clocks.size() - 1;
    }

    /** Rate of change of the weights (column) by the weights (row) from the drift of ages, per logarithm of time; state 0 has none. */
    private double[][] drift(double[][] courses, int state) {
        double[][] drift = new double[size][size];
        boolean any = false;
        for (int d = 0; d < courses.length && state > 0; d++) {
            double factor = Math.exp(courses[d][state]);
            any = true;
            for (int k = 0; k < size; k++) {
                double speed = factor * Math.exp(-nodes.line[d][nodes.index[k][d]]) - 1;
                for (int j = 0; j < size; j++) {
                    drift[k][j] += speed * nodes.derivative[d][k][j];
                }
            }
        }
        return any ? drift : new double[0][];
    }

    /** Whether the system can go down at all. */
    boolean ends() {
        return ends;
    }

    double time() {
        return time;
    }

    /** Probability of having been down. */
    double failed() {
        double failed = values[values.length - 3];
        return failed < 0.5 ? Math.max(0, failed) : Math.min(1, Math.max(0.5, 1 - survival()));
    }

    /** Probability of never having been down. */
    double survival() {
        double failed = values[values.length - 3];
        return failed < 0.5 ? 1 - Math.max(0, failed) : Math.min(0.5, Math.max(0, up(values)));
    }

    /** Time integral of {@link #survival()}. */
    double upTime() {
        return values[values.length - 2];
    }

    /** Time integral of {@link #failed()}. */
    double downTime() {
        return values[values.length - 1];
    }

    boolean nothingLeft() {
        return survival() < NOTHING_LEFT;
    }

    private double up(double[] at) {
        double sum = 0;
        for (int i = 0; i < at.length - 3; i++) {
            sum += at[i];
        }
        return sum;
    }

    /** Expected number of first failures by a time if failed units were put right at once, from the hazards at that time. */
    private double expected(double at) {
        double sum = 0;
        for (int k = 0; k < ups[0].factors.length; k++) {
            sum += ups[0].factors[k] * at * lives.get(clocks.get(ups[0].failures[k][1])[0]).hazard(at);
        }
        return sum;
    }

    private double slope(double at) {
        double ratio = expected(at * 1.001) / expected(at / 1.001);
        return ratio > 0 && ratio < Double.POSITIVE_INFINITY ? Math.min(60, Math.max(0.05, Math.log(ratio) / (2 * Math.log(1.001)))) : 60;
    }

    /** A time before which about so many failures of the first unit are to be expected. */
    private double timeOf(double failures) {
        double at = Double.POSITIVE_INFINITY;
        for (int[] failure : ups[0].failures) {
            at = Math.min(at, lives.get(clocks.get(failure[1])[0]).life(0.5));
        }
        for (int i = 0; i < 200; i++) {
            double off = Math.log(failures / expected(at));
            if (Math.abs(off) < 0.3) {
                break;
            }
            at *= Math.exp(Math.max(-3, Math.min(3, off / slope(at))));
        }
        return at;
    }

    /** Begins so that what is asked behind the time at which so many failures of units are expected has all its digits. */
    void begin(double failures) {
        start(timeOf(1e-7 * failures), timeOf(failures));
    }

    /** Begins so that what is asked at a time has all its digits; false where nothing is to be expected by then. */
    boolean beginBefore(double time) {
        double expected = expected(time);
        if (!(expected > 1e-30)) {
            return false;
        }
        double begin = timeOf(1e-7 * Math.min(1, expected));
        start(Math.min(begin, time), expected < 1 ? time : Math.min(time, timeOf(1)));
        return true;
    }

    private void start(double at, double exact) {
        time = at;
        origin = at;
        values = new double[ups.length * size + 3];
        slopes = new double[values.length];
        trial = new double[values.length];
        for (int i = 0; i < 7; i++) {
            stages[i] = new double[values.length];
        }
        depth = new int[ups.length + 1];
        left = new boolean[ups.length];
        running = new boolean[clocks.size()];
        Arrays.fill(running, true);
        values[0] = 1;
        double gone = 0;
        for (int i = 0; i < ups.length; i++) {
            Up up = ups[i];
            for (int k = 0; k < up.factors.length; k++) {
                LifeDistribution life = lives.get(clocks.get(up.failures[k][1])[0]);
                double share = life.hazard(at) > 0 ? values[up.from] * up.factors[k] * Share.early(life, at) / (depth[i] + 1) : 0;
                int to = up.failures[k][0] < 0 ? ups.length : up.failures[k][0] / size;
                depth[to] = depth[to] == 0 ? depth[i] + 1 : Math.min(depth[to], depth[i] + 1);
                if (up.failures[k][0] < 0) {
                    values[values.length - 3] += share;
                } else {
                    values[up.failures[k][0]] += share;
                }
                gone += i == 0 ? share : 0;
            }
        }
        values[0] = Math.exp(-gone);
        values[values.length - 2] = at;
        values[values.length - 1] = values[values.length - 3] * at / (1 + slope(at));
        power = Math.min(6, Math.max(0.3, slope(at)));
        position = 1;
        step = 0.2;
        first = Math.pow(exact / at, power);
        slope(position, values, slopes);
    }

    private double timeAt(double place) {
        return origin * Math.pow(place, 1 / power);
    }

    /** Rate of change per step of position. */
    private void slope(double place, double[] at, double[] rate) {
        double now = timeAt(place);
        for (int i = 0; i < hazards.length; i++) {
            if (running[i]) {
                fill(hazards[i], clocks.get(i), now);
            }
        }
        Arrays.fill(rate, 0);
        double down = 0;
        for (Up up : ups) {
            int from = up.from;
            if (left[from / size]) {
                continue;
            }
            int used = from == 0 ? 1 : size;
            for (int k = 0; k < up.drift.length; k++) {
                double[] row = up.drift[k];
                double weight = at[from + k];
                for (int j = 0; weight != 0 && j < row.length; j++) {
                    rate[from + j] += weight * row[j];
                }
            }
            for (int f = 0; f < up.factors.length; f++) {
                double factor = up.factors[f] * now;
                int to = up.failures[f][0];
                double[] hazard = hazards[up.failures[f][1]];
                for (int k = 0; k < used; k++) {
                    double flow = factor * hazard[k] * at[from + k];
                    rate[from + k] -= flow;
                    if (to < 0) {
                        down += flow;
                    } else {
                        rate[to + k] += flow;
                    }
                }
            }
        }
        int last = rate.length - 1;
        double gone = at[last - 2];
        rate[last - 2] = down;
        rate[last - 1] = now * (gone < 0.5 ? 1 - gone : up(at));
        rate[last] = now * gone;
        double scale = 1 / (power * place);
        for (int i = 0; i <= last; i++) {
            rate[i] *= scale;
        }
    }

    private void fill(double[] hazard, int[] clock, double now) {
        LifeDistribution life = lives.get(clock[0]);
        if (clock[1] < 0) {
            Arrays.fill(hazard, finite(life, now));
            return;
        }
        double[] line = nodes.line[clock[1]];
        double[] along = new double[line.length];
        for (int i = 0; i < line.length; i++) {
            along[i] = finite(life, now * Math.exp(line[i]));
        }
        for (int k = 0; k < size; k++) {
            hazard[k] = along[nodes.index[k][clock[1]]];
        }
    }

    private static double finite(LifeDistribution life, double age) {
        double hazard = life.hazard(age);
        if (!(hazard >= 0) || Double.isInfinite(hazard)) {
            throw new IllegalArgumentException("failure rate at " + age + " is " + hazard + " of " + life);
        }
        return hazard;
    }

    /** Goes on to a time, which is not before the present one; or until nothing is left. */
    void goTo(double until) {
        double target = Math.pow(until / origin, power);
        while (position < target && !nothingLeft()) {
            double wanted = step;
            step = Math.min(step, target - position);
            attempt(target);
            if (position >= target) {
                step = Math.max(step, wanted);
            }
        }
        if (!nothingLeft()) {
            time = until;
        }
    }

    /** One step as long as the wanted error lets it be. */
    void goOn() {
        attempt(Double.POSITIVE_INFINITY);
    }

    private void attempt(double target) {
        for (int tries = 0;; tries++) {
            if (++steps > MOST_STEPS || tries > 60 || !(step > 0)) {
                throw new IllegalStateException("failure rates of the states differ too much to be followed, from time " + time);
            }
            double error = tryStep(step);
            double change = Math.min(4, Math.max(0.2, 0.9 * Math.pow(Math.max(error, 1e-12), -0.2)));
            if (error <= 1) {
                position = position + step >= target ? target : position + step;
                time = timeAt(position);
                double[] swap = values;
                values = trial;
                trial = swap;
                System.arraycopy(stages[6], 0, slopes, 0, slopes.length);
                step *= change;
                leave();
                return;
            }
            step *= Double.isNaN(error) ? 0.2 : Math.min(change, 0.9);
        }
    }

    private void leave() {
        boolean[] fed = new boolean[ups.length];
        boolean any = false;
        double least = tolerance * Math.min(Math.max(0, values[values.length - 3]), Math.abs(up(values)));
        for (int i = 0; i < ups.length; i++) {
            if (!left[i] && !fed[i]) {
                double mass = 0;
                for (int k = i * size; k < (i + 1) * size; k++) {
                    mass += Math.abs(values[k]);
                }
                if (mass < least) {
                    left[i] = true;
                    any = true;
                    Arrays.fill(values, i * size, (i + 1) * size, 0);
                }
            }
            for (int f = 0; !left[i] && f < ups[i].failures.length; f++) {
                int to = ups[i].failures[f][0];
                if (to >= 0) {
                    fed[to / size] = true;
                }
            }
        }
        if (any) {
            Arrays.fill(running, false);
            for (int i = 0; i < ups.length; i++) {
                for (int f = 0; !left[i] && f < ups[i].failures.length; f++) {
                    running[ups[i].failures[f][1]] = true;
                }
            }
            slope(position, values, slopes);
        }
    }

    /** The share failed a part of a step further than now, without going there. */
    double failedAfter(double length) {
        tryStep(length);
        double[] swap = values;
        values = trial;
        double failed = failed();
        trial = values;
        values = swap;
        return failed;
    }

    private double tryStep(double length) {
        System.arraycopy(slopes, 0, stages[0], 0, slopes.length);
        for (int stage = 1; stage < 7; stage++) {
            double[] factors = STAGES[stage];
            System.arraycopy(values, 0, trial, 0, trial.length);
            for (int s = 0; s < stage; s++) {
                double factor = factors[s] * length;
                if (factor != 0) {
                    double[] source = stages[s];
                    for (int i = 0; i < trial.length; i++) {
                        trial[i] += factor * source[i];
                    }
                }
            }
            slope(position + AT[stage] * length, trial, stages[stage]);
        }
        double early = Math.max(1, first / position);
        double floor = Math.min(Math.max(0, values[values.length - 3]), Math.abs(up(values))) + 1e-250;
        double worst = 0;
        for (int from = 0; from < values.length - 3; from += size) {
            double error = 0;
            double mass = 0;
            for (int i = from; i < from + size; i++) {
                error += Math.abs(error(i));
                mass += Math.abs(trial[i]);
            }
            worst = worse(worst, length * error / (tolerance(early, depth[from / size]) * (mass + floor)));
        }
        for (int i = values.length - 3; i < values.length; i++) {
            double allowed = tolerance(early, i == values.length - 2 ? 0 : depth[ups.length]) * (Math.abs(trial[i]) + 1e-250);
            worst = worse(worst, length * Math.abs(error(i)) / allowed);
        }
        return worst;
    }

    /** What is wrong before the first time asked for is soon outweighed by what follows, the sooner the more failures it takes. */
    private double tolerance(double early, int failures) {
        return early == 1 ? tolerance : Math.min(0.01, tolerance * Math.pow(early, failures));
    }

    private static double worse(double worst, double error) {
        return Double.isNaN(error) ? Double.NaN : Math.max(worst, error);
    }

    private double error(int i) {
        double sum = 0;
        for (int stage = 0; stage < 7; stage++) {
            sum += ERROR[stage] * stages[stage][i];
        }
        return sum;
    }

    /** Goes on until a share has failed, and gives the time; infinite where that is not to be expected. */
    double timeOfFailed(double share) {
        while (true) {
            double beforePosition = position;
            double[] beforeValues = values.clone();
            double[] beforeSlopes = slopes.clone();
            goOn();
            if (failed() >= share || nothingLeft()) {
                double length = position - beforePosition;
                position = beforePosition;
                values = beforeValues;
                slopes = beforeSlopes;
                return timeAt(beforePosition + part(share, length));
            }
            if (time > 1e200) {
                return Double.POSITIVE_INFINITY;
            }
        }
    }

    private double part(double share, double length) {
        double low = 0;
        double high = length;
        double atLow = failed() - share;
        double atHigh = failedAfter(length) - share;
        if (atHigh <= 0) {
            return length;
        }
        for (int i = 0; i < 100 && high - low > 1e-13 * (position + high); i++) {
            double middle = (low * atHigh - high * atLow) / (atHigh - atLow);
            if (!(middle > low) || !(middle < high) || i % 3 == 2) {
                middle = (low + high) / 2;
            }
            double at = failedAfter(middle) - share;
            if (at < 0) {
                low = middle;
                atLow = at;
            } else {
                high = middle;
                atHigh = at;
            }
        }
        return (low + high) / 2;
    }
}
