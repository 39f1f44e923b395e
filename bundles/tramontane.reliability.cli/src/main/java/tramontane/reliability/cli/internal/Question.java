package tramontane.reliability.cli.internal;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import tramontane.physics.units.QuantityKind;
import tramontane.physics.units.Unit;
import tramontane.physics.units.UnitSystem;
import tramontane.reliability.statistics.Acceleration;
import tramontane.reliability.statistics.Bounds;
import tramontane.reliability.statistics.FailureCriteria;
import tramontane.reliability.statistics.Family;

/**
 * What is asked of a life test.
 *
 * @param families   to fit
 * @param ranks      whether a line through median ranks is fitted instead of the likelihood
 * @param method     of bounds
 * @param confidence of bounds
 * @param shape      where it is known
 * @param lives      which lives are asked for
 * @param times      at which survival is asked for, s
 * @param use        where the units shall live; empty for where they were tested
 * @param testedAt   temperature of the test where the table has none, K
 * @param criteria   when a unit of which readings are given has failed
 * @param timeUnit   to show times in
 */
record Question(List<Family> families, boolean ranks, Bounds.Method method, double confidence, OptionalDouble shape, List<Named> lives,
        List<Double> times, Optional<Use> use, OptionalDouble testedAt, FailureCriteria criteria, Unit timeUnit) {

    /**
     * A life by its name.
     *
     * @param failed share that has failed by then; not a number for the mean
     */
    record Named(String name, double failed) {

        boolean mean() {
            return Double.isNaN(failed);
        }
    }

    /**
     * Where the units shall live.
     *
     * @param temperature K
     * @param speed       rad/s, where it matters
     * @param law         of temperature
     * @param factor      per 10 K, or activation energy in J, where it is known beforehand
     */
    record Use(double temperature, OptionalDouble speed, Acceleration.Law law, OptionalDouble factor) {
    }

    /** The same with times shown in the unit that they were written in. */
    Question in(Unit unit) {
        return new Question(families, ranks, method, confidence, shape, lives, times, use, testedAt, criteria, unit);
    }

    /** A time, in the unit of the test whatever its size. */
    String time(double seconds) {
        return Cells.plain(timeUnit.fromSi(seconds)) + " " + timeUnit.symbol();
    }

    /** For tables. */
    UnitSystem units() {
        return UnitSystem.METRIC.with(QuantityKind.TIME, timeUnit);
    }

    String methodWords() {
        return ranks ? "line through median ranks, no bounds" : method == Bounds.Method.FISHER ? "Fisher" : "likelihood ratio";
    }
}
