package tramontane.analysis;

import java.util.Objects;
import tramontane.physics.units.QuantityKind;

/**
 * A quantity to be shown in the units that the reader chose: in a table's cell, or within a sentence.
 *
 * @param si       the value in SI units, finite
 * @param quantity its kind
 */
public record Amount(double si, QuantityKind quantity) implements Table.Cell {

    public Amount {
        Objects.requireNonNull(quantity);
        if (!Double.isFinite(si)) {
            throw new IllegalArgumentException("a " + quantity.name() + " to be shown must be finite, got " + si);
        }
    }
}
