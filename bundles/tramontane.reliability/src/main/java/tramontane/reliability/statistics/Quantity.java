package tramontane.reliability.statistics;

/** What bounds are asked for. */
public sealed interface Quantity {

    /** The scale: η of a Weibull, median of a lognormal, mean of an exponential distribution. */
    record Scale() implements Quantity {
    }

    /** The shape: β of a Weibull, σ of a lognormal distribution. */
    record Shape() implements Quantity {
    }

    /**
     * The time by which a share has failed, L10 for 0.1.
     *
     * @param failed above 0, below 1
     */
    record Life(double failed) implements Quantity {

        /** Refuses shares that do not lie between 0 and 1. */
        public Life {
            Requires.share("share failed", failed);
        }
    }

    /**
     * The share that lives longer than a time.
     *
     * @param time above zero
     */
    record Survival(double time) implements Quantity {

        /** Refuses times that are not above zero and finite. */
        public Survival {
            Requires.positive("time", time);
        }
    }

    /** Mean life. */
    record Mean() implements Quantity {
    }

    /** The scale. */
    static Quantity scale() {
        return new Scale();
    }

    /** The shape. */
    static Quantity shape() {
        return new Shape();
    }

    /** The time by which a share has failed. */
    static Quantity life(double failed) {
        return new Life(failed);
    }

    /** The share that lives longer than a time. */
    static Quantity survival(double time) {
        return new Survival(time);
    }

    /** Mean life. */
    static Quantity mean() {
        return new Mean();
    }
}
