package tramontane.reliability.statistics;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.function.DoublePredicate;
import java.util.function.Function;
import tramontane.reliability.statistics.FailureCriteria.Criterion;

/**
 * What was read of one unit in a life test, from time to time.
 *
 * @param readings at least one, at rising times
 */
public record Readings(List<Reading> readings) {

    /** Rounding of read values must not turn a change of just the limit into a failure. */
    private static final double ROUNDING = 1e-9;

    /**
     * One look at the unit.
     *
     * @param time    on test, not below zero; in the unit of the life data
     * @param ran     whether it turned; what else was read of one that did not is of no account
     * @param speed   rad/s, above zero; empty where not measured
     * @param current A, above zero; empty where not measured
     * @param level   A-weighted sound level, dB; empty where not measured
     */
    public record Reading(double time, boolean ran, OptionalDouble speed, OptionalDouble current, OptionalDouble level) {

        /** Refuses impossible values. */
        public Reading {
            if (!(time >= 0) || Double.isInfinite(time)) {
                throw new IllegalArgumentException("a unit is read at a finite time that is not below zero, got " + time);
            }
            if (ran) {
                speed.ifPresent(value -> Requires.positive("speed of a unit that runs", value));
                current.ifPresent(value -> Requires.positive("current of a unit that runs", value));
                level.ifPresent(value -> {
                    if (!Double.isFinite(value)) {
                        throw new IllegalArgumentException("sound level must be finite, got " + value);
                    }
                });
            }
        }

        /** A unit that ran, nothing measured. */
        public static Reading running(double time) {
            return new Reading(time, true, OptionalDouble.empty(), OptionalDouble.empty(), OptionalDouble.empty());
        }

        /** A unit that did not run. */
        public static Reading stopped(double time) {
            return new Reading(time, false, OptionalDouble.empty(), OptionalDouble.empty(), OptionalDouble.empty());
        }

        /** The same with a speed, rad/s. */
        public Reading withSpeed(double value) {
            return new Reading(time, ran, OptionalDouble.of(value), current, level);
        }

        /** The same with a current, A. */
        public Reading withCurrent(double value) {
            return new Reading(time, ran, speed, OptionalDouble.of(value), level);
        }

        /** The same with an A-weighted sound level, dB. */
        public Reading withLevel(double value) {
            return new Reading(time, ran, speed, current, OptionalDouble.of(value));
        }
    }

    /**
     * What became of the unit.
     *
     * @param observation to be taken into the life data
     * @param criteria    what it failed by, first of all; several where the same reading showed them, none where it survived
     */
    public record Verdict(Observation observation, List<Criterion> criteria) {

        /** Copies the list. */
        public Verdict {
            criteria = List.copyOf(criteria);
        }
    }

    /** Refuses none, and times that do not rise. */
    public Readings {
        readings = List.copyOf(readings);
        if (readings.isEmpty()) {
            throw new IllegalArgumentException("a unit is read at least once, got no reading");
        }
        for (int i = 1; i < readings.size(); i++) {
            if (!(readings.get(i).time() > readings.get(i - 1).time())) {
                throw new IllegalArgumentException(
                    "readings are at rising times, got " + readings.get(i).time() + " after " + readings.get(i - 1).time());
            }
        }
    }

    /** These readings. */
    public static Readings of(Reading... readings) {
        return new Readings(List.of(readings));
    }

    /**
     * What became of the unit.
     *
     * <p>Each quantity is compared with its own first reading; that one counts as good. The unit failed between the last reading that was
     * good in what it then failed by, and the first bad one: where a quantity was not measured for some readings, the interval is as much
     * longer. It failed before the first reading (left-censored) if it did not run then, and it survived the last one (right-censored) if
     * nothing was bad till then. What recovers later has failed all the same.
     *
     * @throws IllegalArgumentException where it did not run at time zero: it had no life to observe and belongs to the faults of making
     */
    public Verdict judge(FailureCriteria criteria) {
        Failure best = Failure.NONE;
        List<Criterion> first = new ArrayList<>();
        for (Criterion each : Criterion.values()) {
            Failure failure = failure(each, criteria);
            if (failure.bad() > best.bad() || !failure.happened()) {
                continue;
            }
            if (failure.bad() < best.bad()) {
                first.clear();
                best = failure;
            }
            // Of several that one reading shows, the one seen good longest ago decides how early the failure may have been.
            best = new Failure(Math.min(best.good(), failure.good()), best.bad());
            first.add(each);
        }
        if (!best.happened()) {
            return new Verdict(Observation.survivor(readings.getLast().time()), List.of());
        }
        if (best.bad() == 0) {
            throw new IllegalArgumentException("the unit did not run at time 0, so it has no life to observe");
        }
        return new Verdict(Observation.between(best.good(), best.bad()), first);
    }

    private Failure failure(Criterion criterion, FailureCriteria criteria) {
        return switch (criterion) {
            case NOT_RUNNING -> {
                double good = 0;
                for (Reading each : readings) {
                    if (!each.ran()) {
                        yield new Failure(good, each.time());
                    }
                    good = each.time();
                }
                yield Failure.NONE;
            }
            case SPEED -> failure(Reading::speed, first -> now -> 1 - now / first > criteria.speedFall() + ROUNDING);
            case CURRENT -> failure(Reading::current, first -> now -> now / first - 1 > criteria.currentRise() + ROUNDING);
            case LEVEL -> failure(Reading::level, first -> now -> now - first > criteria.levelRise() + ROUNDING);
        };
    }

    private Failure failure(Function<Reading, OptionalDouble> quantity, Function<Double, DoublePredicate> bad) {
        List<Reading> measured = readings.stream().filter(each -> each.ran() && quantity.apply(each).isPresent()).toList();
        if (measured.isEmpty()) {
            return Failure.NONE;
        }
        double reference = quantity.apply(measured.getFirst()).getAsDouble();
        double good = measured.getFirst().time();
        for (Reading each : measured) {
            if (bad.apply(reference).test(quantity.apply(each).getAsDouble())) {
                return new Failure(good, each.time());
            }
            good = each.time();
        }
        return Failure.NONE;
    }

    /** Failed between two readings; never, where the second is infinite. */
    private record Failure(double good, double bad) {

        static final Failure NONE = new Failure(Double.POSITIVE_INFINITY, Double.POSITIVE_INFINITY);

        boolean happened() {
            return bad < Double.POSITIVE_INFINITY;
        }
    }
}
