package tramontane.selection.internal;

import java.util.Optional;
import java.util.stream.Stream;
import tramontane.analysis.Amount;
import tramontane.analysis.Sentence;
import tramontane.physics.units.QuantityKind;
import tramontane.physics.units.UnitSystem;
import tramontane.physics.units.Units;

/** Says by how much a figure misses a limit where both read the same: "12.0 K where at most 12.0 K is required" helps nobody. */
final class Off {

    /** To how many digits sentences show quantities. */
    private static final int DIGITS = 3;
    /** Share of a limit within which the eye takes one for the other. */
    private static final double CLOSE = 0.005;

    private Off() {
    }

    /** How far a value is from the limits of an ask; nothing where it keeps them, or where that can be read. */
    static Sentence where(double value, Ask ask) {
        Optional<Double> limit = ask.least().filter(least -> value < least).or(() -> ask.most().filter(most -> value > most));
        return limit.map(missed -> where(value, missed, ask.kind().quantity())).orElse(Sentence.EMPTY);
    }

    /**
     * How far two values are apart, as {@code , 0.3 % off} or, of temperatures, {@code , 0.04 K off};
     * nothing where they read differently in all units and are not close.
     *
     * @param value SI
     * @param limit SI
     */
    static Sentence where(double value, double limit, QuantityKind quantity) {
        double off = Math.abs(value - limit);
        boolean close = off < CLOSE * Math.abs(limit) && !quantity.equals(QuantityKind.TEMPERATURE) && !quantity.equals(QuantityKind.LEVEL);
        if (value == limit || !close && Stream.of(UnitSystem.SI, UnitSystem.METRIC, UnitSystem.US).noneMatch(units ->
                Units.format(value, quantity, units, DIGITS).equals(Units.format(limit, quantity, units, DIGITS)))) {
            return Sentence.EMPTY;
        }
        if (quantity.equals(QuantityKind.LEVEL)) {
            return Sentence.of(", less than 0.1 dB off"); // which are shown to a tenth
        }
        boolean kelvin = quantity.equals(QuantityKind.TEMPERATURE) || quantity.equals(QuantityKind.TEMPERATURE_DIFFERENCE);
        return Sentence.of(", ", kelvin ? new Amount(off, QuantityKind.TEMPERATURE_DIFFERENCE) : limit == 0
                ? new Amount(off, quantity) : new Amount(off / Math.abs(limit), QuantityKind.FRACTION), " off");
    }
}
