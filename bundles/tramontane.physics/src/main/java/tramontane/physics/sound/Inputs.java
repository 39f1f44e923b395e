package tramontane.physics.sound;

/** Refuses numbers that mean nothing. */
final class Inputs {

    private Inputs() {
    }

    static double positive(String what, double value) {
        if (!(value > 0 && value < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException(what + " must be above zero and finite, got " + value);
        }
        return value;
    }
}
