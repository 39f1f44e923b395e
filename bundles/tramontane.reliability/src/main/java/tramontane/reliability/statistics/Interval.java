package tramontane.reliability.statistics;

/**
 * Two confidence bounds.
 *
 * @param lower not above {@code upper}
 * @param upper infinite where nothing bounds it
 */
public record Interval(double lower, double upper) {

    /** Refuses bounds that are no numbers or in the wrong order. */
    public Interval {
        if (!(lower <= upper)) {
            throw new IllegalArgumentException("a lower bound is not above the upper one, got " + lower + " and " + upper);
        }
    }

    /** Whether a value lies between the bounds or on one. */
    public boolean contains(double value) {
        return lower <= value && value <= upper;
    }

    /** Both bounds multiplied by a factor above zero. */
    public Interval scaled(double factor) {
        return new Interval(lower * factor, upper * factor);
    }
}
