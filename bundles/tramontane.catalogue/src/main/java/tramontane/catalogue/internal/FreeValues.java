package tramontane.catalogue.internal;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import tramontane.physics.units.AnyQuantity;
import tramontane.physics.units.QuantityKind;
import tramontane.physics.units.UnitException;
import tramontane.physics.units.Units;

/** Values that no form describes: a text that reads as a quantity counts as one, too. Belongs to one thread. */
final class FreeValues {

    private static final int REMEMBERED = 20_000;

    private final Map<String, Optional<AnyQuantity>> read = new HashMap<>();

    void text(PartRow.Builder row, FieldColumn field, String text) {
        Optional<AnyQuantity> quantity = quantity(text);
        quantity.ifPresent(known -> field.narrow(known.kinds()));
        row.set(field.number(), quantity.map(AnyQuantity::si).orElse(Double.NaN), text);
    }

    void number(PartRow.Builder row, FieldColumn field, double number) {
        if (Double.isFinite(number)) {
            field.bare();
            row.set(field.number(), number + 0.0);
        } else {
            row.unset(field.number());
        }
    }

    private Optional<AnyQuantity> quantity(String text) {
        if (text.isEmpty() || text.length() > 40 || text.charAt(0) != '-' && (text.charAt(0) < '0' || text.charAt(0) > '9')) {
            return Optional.empty();
        }
        Optional<AnyQuantity> known = read.get(text);
        if (known == null) {
            known = parse(text);
            if (read.size() < REMEMBERED) {
                read.put(text, known);
            }
        }
        return known;
    }

    private static Optional<AnyQuantity> parse(String text) {
        try {
            AnyQuantity quantity = Units.parseAny(text);
            List<QuantityKind> kinds = quantity.kinds();
            // a bare number in a text may be a name or a code
            return kinds.contains(QuantityKind.NUMBER) ? Optional.empty() : Optional.of(quantity);
        } catch (UnitException e) {
            return Optional.empty();
        }
    }
}
