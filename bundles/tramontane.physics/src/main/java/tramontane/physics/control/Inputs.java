package tramontane.physics.control;

/** Refuses numbers that mean nothing. */
final class Inputs {

    private Inputs() {
    }

    static double finite(String what, double value) {
        if (!(Math.abs(value) < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException(what + " must be finite, got " + value);
        }
        return value;
    }

    static double notNegative(String what, double value) {
        if (!(value >= 0 && value < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException(what + " must not be below zero and must be finite, got " + value);
        }
        return value;
    }

    static double positive(String what, double value) {
        if (!(value > 0 && value < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException(what + " must be above zero and finite, got " + value);
        }
        return value;
    }

    static double[] finite(String what, double[] values) {
        for (double value : values) {
            finite(what, value);
        }
        return values.clone();
    }
}
