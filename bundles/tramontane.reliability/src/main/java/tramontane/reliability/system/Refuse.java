package tramontane.reliability.system;

/** What numbers are refused with. */
final class Refuse {

    private Refuse() {
    }

    static double positive(String name, double value) {
        if (!(value > 0) || Double.isInfinite(value)) {
            throw new IllegalArgumentException(name + " must be above zero and finite, got " + value);
        }
        return value;
    }

    static double notNegative(String name, double value) {
        if (!(value >= 0) || Double.isInfinite(value)) {
            throw new IllegalArgumentException(name + " must be finite and not below zero, got " + value);
        }
        return value;
    }

    static double within(String name, double value) {
        if (!(value > 0) || !(value < 1)) {
            throw new IllegalArgumentException(name + " must lie between 0 and 1, got " + value);
        }
        return value;
    }

    static double share(String name, double value) {
        if (!(value >= 0) || !(value <= 1)) {
            throw new IllegalArgumentException(name + " must be from 0 to 1, got " + value);
        }
        return value;
    }

    static int atLeast(int least, String name, int value) {
        if (value < least) {
            throw new IllegalArgumentException(name + " must be at least " + least + ", got " + value);
        }
        return value;
    }
}
