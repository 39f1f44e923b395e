package tramontane.analysis;

import java.util.Objects;
import java.util.OptionalDouble;

/**
 * One named quantity of a result.
 *
 * @param kind      what it is
 * @param place     where: the id of a bay, passage, bank or heat source; empty for the design as a whole
 * @param condition the condition's id; empty for a figure of all conditions. The engine fills it in.
 * @param value     the value in SI units, finite
 * @param lower     lower bound where known
 * @param upper     upper bound where known
 */
public record Figure(FigureKind kind, String place, String condition, double value, OptionalDouble lower,
        OptionalDouble upper) {

    public Figure {
        Objects.requireNonNull(kind);
        Objects.requireNonNull(place);
        Objects.requireNonNull(condition);
        if (!Double.isFinite(value)) {
            throw new IllegalArgumentException("figure " + kind.id() + (place.isEmpty() ? "" : " at " + place)
                    + " must be finite, got " + value);
        }
        if (lower.isPresent() && !(lower.getAsDouble() <= value) || upper.isPresent() && !(upper.getAsDouble() >= value)) {
            throw new IllegalArgumentException("figure " + kind.id() + " at " + place + ": " + value
                    + " must lie between its bounds " + lower + " and " + upper);
        }
    }

    /** A figure without bounds. */
    public static Figure of(FigureKind kind, String place, double value) {
        return new Figure(kind, place, "", value, OptionalDouble.empty(), OptionalDouble.empty());
    }

    /** This figure with bounds. */
    public Figure within(double lowest, double highest) {
        return new Figure(kind, place, condition, value, OptionalDouble.of(lowest), OptionalDouble.of(highest));
    }

    /** This figure in a condition. */
    public Figure in(String conditionId) {
        return new Figure(kind, place, conditionId, value, lower, upper);
    }
}
