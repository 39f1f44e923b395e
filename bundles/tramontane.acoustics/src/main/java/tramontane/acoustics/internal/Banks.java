package tramontane.acoustics.internal;

import tramontane.model.FormReader;
import tramontane.model.Passage;
import tramontane.model.Quantity;
import tramontane.model.Value;
import tramontane.physics.units.QuantityKind;

/** What banks say of themselves. */
final class Banks {

    private Banks() {
    }

    /** The id of its part. */
    static String mover(Passage bank) {
        return bank.parameters().get("mover").filter(Value.Text.class::isInstance).map(value -> ((Value.Text) value).text()).orElse("");
    }

    /** Free distance in front of its movers, m; infinite where it says nothing. */
    static double inletClearance(Passage bank) {
        return bank.parameters().get("inletClearance").flatMap(value -> FormReader.quantity(value, QuantityKind.LENGTH)).map(Quantity::si)
                .orElse(Double.POSITIVE_INFINITY);
    }
}
