package tramontane.reliability.statistics;

/**
 * What was seen of one unit, or of several alike.
 *
 * <p>It failed at a time ({@code from = to}), still lived when it left the test (right-censored, {@code to} infinite), had failed when
 * first looked at (left-censored, {@code from} 0), or failed between two looks (interval).
 *
 * @param from  it was known to live until then; not below zero, finite
 * @param to    it was known to have failed by then; not before {@code from}, above zero
 * @param count how many such units, at least 1
 */
public record Observation(double from, double to, int count) {

    /** Refuses times below zero, ends before their beginning, failures at zero, and counts below 1. */
    public Observation {
        if (!(from >= 0) || Double.isInfinite(from)) {
            throw new IllegalArgumentException("a unit lives until a finite time that is not below zero, got " + from);
        }
        if (!(to >= from) || to == 0) {
            throw new IllegalArgumentException("a unit fails above zero and not before the time until which it lived, " + from + ", got " + to);
        }
        if (count < 1) {
            throw new IllegalArgumentException("at least 1 unit is observed, got " + count);
        }
    }

    /** A unit that failed at a time. */
    public static Observation failure(double time) {
        return new Observation(time, time, 1);
    }

    /** A unit that still lived at a time. */
    public static Observation survivor(double time) {
        return new Observation(time, Double.POSITIVE_INFINITY, 1);
    }

    /** A unit that had failed by a time. */
    public static Observation failedBefore(double time) {
        return new Observation(0, time, 1);
    }

    /** A unit that failed between two times. */
    public static Observation between(double from, double to) {
        return new Observation(from, to, 1);
    }

    /** As many units. */
    public Observation times(int units) {
        return new Observation(from, to, units);
    }

    /** Whether the moment of failure is known. */
    public boolean exact() {
        return from == to;
    }

    /** Whether it still lived when last seen. */
    public boolean survived() {
        return Double.isInfinite(to);
    }
}
