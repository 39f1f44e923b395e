package tramontane.airflow.internal;

import tramontane.analysis.Amount;
import tramontane.physics.units.QuantityKind;

/** Amounts for sentences, from SI values. */
final class Amounts {

    private Amounts() {
    }

    static Amount flow(double si) {
        return new Amount(si, QuantityKind.FLOW);
    }

    static Amount pressure(double si) {
        return new Amount(si, QuantityKind.PRESSURE);
    }

    static Amount fraction(double si) {
        return new Amount(si, QuantityKind.FRACTION);
    }

    static Amount speed(double si) {
        return new Amount(si, QuantityKind.ROTATIONAL_SPEED);
    }

    static Amount density(double si) {
        return new Amount(si, QuantityKind.DENSITY);
    }

    static Amount length(double si) {
        return new Amount(si, QuantityKind.LENGTH);
    }

    static Amount frequency(double si) {
        return new Amount(si, QuantityKind.FREQUENCY);
    }
}
