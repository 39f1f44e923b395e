package tramontane.reliability.system;

import java.util.ArrayList;
import java.util.List;

import tramontane.reliability.statistics.LifeDistribution;

/**
 * How long a system keeps its limits when nothing is repaired. All units are new at time zero.
 *
 * <p>Units age by cumulative exposure (W. Nelson, "Accelerated Testing", 1990): in a state with ageing 1.3, an hour counts 1.3 hours of
 * state 0, and the failure rate is 1.3 times that of the age reached. Units of one group share an age. Failures are otherwise independent.
 *
 * <p>Where nothing ages faster the failed share is exact to about 1e-9 of itself. Where something does, ages are followed by polynomials
 * in the logarithm of age over time, of a degree that falls with the number of groups that age differently ({@link #AGES}); against nested
 * quadrature, up to three such groups and ageing up to 4, errors stay below 1e-6 of the failed share, with four
 * below 1e-5. Where failure rates of states that
 * exist at the same time differ too much, as with ageing of 8 and a shape of 6 or ageing of 32 and a shape of 3, an
 * {@link IllegalStateException} says so.
 *
 * @param graph what failures lead to; what follows on a down state is not looked at
 * @param lives distribution of each kind of unit, under the conditions of state 0
 */
public record SystemSurvival(FailureGraph graph, List<LifeDistribution> lives) {

    /** How ages are held, for reports. */
    public static final String AGES = "ages of groups that share load by polynomials in log(age/time): degree 6 to 10 for one group, "
            + "4 to 10 for two, 4 or 5 for three, 4 for four, 3 for five, 2 for six to ten, 1 for more";

    /** Refuses a list that leaves a kind of unit out. */
    public SystemSurvival {
        lives = List.copyOf(lives);
        if (lives.size() < graph.kinds()) {
            throw new IllegalArgumentException("the graph speaks of " + graph.kinds() + " kinds of units, there are lives of "
                    + lives.size());
        }
    }

    /**
     * One point of a course.
     *
     * @param time     since all units were new
     * @param failed   probability that the system has been down by then; all digits hold where it is small
     * @param survival the rest; all digits hold where it is small
     */
    public record Point(double time, double failed, double survival) {
    }

    /** Alike units of which some must run, and which don't age faster when others fail. */
    public static SystemSurvival of(int needed, int units, LifeDistribution life) {
        return new SystemSurvival(FailureGraph.needed(needed, units), List.of(life));
    }

    /**
     * The course from time zero to a horizon, evenly divided.
     *
     * @param horizon above zero
     * @param steps   1 or more; there is one point more
     */
    public List<Point> course(double horizon, int steps) {
        Refuse.positive("horizon", horizon);
        Refuse.atLeast(1, "steps", steps);
        List<Double> times = new ArrayList<>();
        for (int i = 0; i <= steps; i++) {
            times.add(i == steps ? horizon : horizon * i / steps);
        }
        return at(times);
    }

    /**
     * Points at given times.
     *
     * @param times not below zero, none before the one in front of it
     */
    public List<Point> at(List<Double> times) {
        List<Point> points = new ArrayList<>();
        Ageing ageing = new Ageing(graph, lives);
        boolean begun = false;
        double last = 0;
        double failed = 0;
        double survival = 1;
        for (double time : times) {
            if (Refuse.notNegative("time", time) < last) {
                throw new IllegalArgumentException("times must not fall: " + time + " stands behind " + last);
            }
            if (ageing.ends() && time > 0) {
                begun = begun || ageing.beginBefore(time);
                if (begun) {
                    ageing.goTo(time);
                    failed = Math.max(failed, ageing.failed());
                    survival = Math.min(survival, ageing.survival());
                }
            }
            last = time;
            points.add(new Point(time, failed, survival));
        }
        return List.copyOf(points);
    }

    /** Probability that the system has been down by a time, not below zero. */
    public double failed(double time) {
        return at(List.of(time)).get(0).failed();
    }

    /** Probability that the system has never been down by a time, not below zero. */
    public double survival(double time) {
        return at(List.of(time)).get(0).survival();
    }

    /**
     * The time by which the system has been down with a probability: L10 for 0.1. Infinite where nothing brings it down.
     *
     * @param failed between 0 and 1
     */
    public double life(double failed) {
        Refuse.within("failed", failed);
        Ageing ageing = new Ageing(graph, lives);
        if (!ageing.ends()) {
            return Double.POSITIVE_INFINITY;
        }
        ageing.begin(failed);
        return ageing.timeOfFailed(failed);
    }

    /** Mean time to the first time down, MTTF. Infinite where nothing brings the system down. */
    public double mean() {
        Ageing ageing = new Ageing(graph, lives);
        if (!ageing.ends()) {
            return Double.POSITIVE_INFINITY;
        }
        ageing.begin(1);
        while (!ageing.nothingLeft() && ageing.time() < 1e200) {
            ageing.goOn();
        }
        return ageing.upTime();
    }

    /**
     * Mean share of an interval in which a system is down that stays down once it is: the mean of {@link #failed} over it.
     *
     * @param interval above zero, begun with all units new
     */
    public double meanFailed(double interval) {
        Refuse.positive("interval", interval);
        Ageing ageing = new Ageing(graph, lives);
        if (!ageing.ends() || !ageing.beginBefore(interval)) {
            return 0;
        }
        ageing.goTo(interval);
        double before = ageing.nothingLeft() ? ageing.time() : interval;
        return (ageing.downTime() + interval - before) / interval;
    }

    /**
     * Probability that the system is down at some time of a mission, where all units are exchanged for new ones at even intervals.
     *
     * @param mission  not below zero
     * @param interval between exchanges, above zero; from the mission on there is none
     */
    public double failed(double mission, double interval) {
        Refuse.notNegative("mission", mission);
        Refuse.positive("interval", interval);
        double whole = Math.floor(mission / interval * (1 + 1e-14));
        if (whole == 0) {
            return failed(mission);
        }
        double rest = Math.max(0, mission - whole * interval);
        List<Point> points = at(List.of(rest, interval));
        return -Math.expm1(logarithm(points.get(0)) + whole * logarithm(points.get(1)));
    }

    /** The rest of {@link #failed(double, double)}: {@code R(interval)^k R(rest)}. */
    public double survival(double mission, double interval) {
        return 1 - failed(mission, interval);
    }

    private static double logarithm(Point point) {
        return point.failed() < 0.5 ? Math.log1p(-point.failed()) : Math.log(point.survival());
    }
}
