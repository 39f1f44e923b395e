package tramontane.reliability.statistics;

/** What numbers are refused with. */
final class Requires {

    private Requires() {
    }

    static void positive(String name, double value) {
        if (!(value > 0) || Double.isInfinite(value)) {
            throw new IllegalArgumentException(name + " must be above zero and finite, got " + value);
        }
    }

    static void share(String name, double value) {
        if (!(value > 0) || !(value < 1)) {
            throw new IllegalArgumentException(name + " must lie between 0 and 1, got " + value);
        }
    }
}
