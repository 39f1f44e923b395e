package tramontane.physics.units;

import java.util.List;

/**
 * A quantity read before its kind was known.
 *
 * @param si    value in SI
 * @param unit  the unit as shown; empty symbol for a plain number
 * @param kinds every kind that has this unit, at least one
 */
public record AnyQuantity(double si, Unit unit, List<QuantityKind> kinds) {

    /** Copies the list. */
    public AnyQuantity {
        kinds = List.copyOf(kinds);
    }

    /** @param kind a kind of quantity
     *  @return whether the text can be one of that kind */
    public boolean fits(QuantityKind kind) {
        return kinds.contains(kind);
    }
}
