package tramontane.thermal.internal.links;

import tramontane.analysis.Amount;
import tramontane.physics.units.QuantityKind;

/** Amounts for sentences, from SI values. */
final class Amounts {

    private Amounts() {
    }

    static Amount flow(double si) {
        return new Amount(si, QuantityKind.FLOW);
    }

    static Amount velocity(double si) {
        return new Amount(si, QuantityKind.VELOCITY);
    }

    static Amount number(double si) {
        return new Amount(si, QuantityKind.NUMBER);
    }

    static Amount pressure(double si) {
        return new Amount(si, QuantityKind.PRESSURE);
    }
}
