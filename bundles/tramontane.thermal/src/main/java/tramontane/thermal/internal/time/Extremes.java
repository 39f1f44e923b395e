package tramontane.thermal.internal.time;

import java.util.Arrays;

/** Highest temperatures so far, and when limits were first passed. */
final class Extremes {

    private final double[] limit;
    private double[] peak;
    private double[] peakTime;
    private double[] reached;

    /**
     * None yet.
     *
     * @param limit of each part, K; infinite where it has none
     */
    Extremes(double[] limit) {
        this.limit = limit;
        peak = new double[limit.length];
        peakTime = new double[limit.length];
        reached = new double[limit.length];
        Arrays.fill(peak, Double.NEGATIVE_INFINITY);
        Arrays.fill(reached, Double.NaN);
    }

    private Extremes(Extremes other) {
        limit = other.limit;
        peak = other.peak.clone();
        peakTime = other.peakTime.clone();
        reached = other.reached.clone();
    }

    /** The same, to be put back with {@link #back}. */
    Extremes copy() {
        return new Extremes(this);
    }

    /** Forgets what came since a copy was made. */
    void back(Extremes copy) {
        peak = copy.peak.clone();
        peakTime = copy.peakTime.clone();
        reached = copy.reached.clone();
    }

    /** Takes the values at one time. */
    void at(double time, double[] junction) {
        for (int k = 0; k < peak.length; k++) {
            top(k, time, junction[k]);
            if (junction[k] > limit[k] && Double.isNaN(reached[k])) {
                reached[k] = time;
            }
        }
    }

    private void top(int k, double time, double value) {
        if (value > peak[k]) {
            peak[k] = value;
            peakTime[k] = time;
        }
    }

    /** Gives a part's temperature at a time of a step. */
    @FunctionalInterface
    interface Between {
        double junction(int part, double time);
    }

    /**
     * Takes a step by its beginning, middle and end. A top in between is that of the parabola through them; the time at which a
     * limit is passed is found on the step itself.
     */
    void step(double from, double to, double[] first, double[] middle, double[] last, Between between) {
        double half = 0.5 * (to - from);
        for (int k = 0; k < peak.length; k++) {
            double bend = first[k] - 2 * middle[k] + last[k];
            double slope = 0.5 * (last[k] - first[k]);
            if (bend < 0 && Math.abs(slope) < -bend) {
                top(k, from + half * (1 - slope / bend), middle[k] - slope * slope / (2 * bend));
            }
            if (Double.isNaN(reached[k]) && (middle[k] > limit[k] || last[k] > limit[k])) {
                reached[k] = passes(k, from, middle[k] > limit[k] ? from + half : to, between);
            }
        }
        at(from + half, middle);
        at(to, last);
    }

    /** Regula falsi in the Illinois form, halved now and then: below the limit at the beginning, above it at the end. */
    private double passes(int k, double from, double to, Between between) {
        double a = from;
        double b = to;
        double fa = between.junction(k, a) - limit[k];
        double fb = between.junction(k, b) - limit[k];
        int same = 0;
        for (int i = 0; i < 100 && b - a > 1e-12 * (Math.abs(b) + to - from); i++) {
            double next = i % 4 == 3 || !(fa < 0) || !(fb > 0) ? 0.5 * (a + b) : (a * fb - b * fa) / (fb - fa);
            double f = between.junction(k, next) - limit[k];
            if (f > 0) {
                b = next;
                fb = f;
                fa = same > 0 ? 0.5 * fa : fa;
                same = 1;
            } else {
                a = next;
                fa = f;
                fb = same < 0 ? 0.5 * fb : fb;
                same = -1;
            }
        }
        return b;
    }

    double peak(int k) {
        return peak[k];
    }

    double peakTime(int k) {
        return peakTime[k];
    }

    /** When a part first was above its limit, s; NaN where it never was. */
    double reached(int k) {
        return reached[k];
    }
}
