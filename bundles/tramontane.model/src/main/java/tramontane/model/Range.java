package tramontane.model;

/**
 * The values that make sense for a quantity, in SI units.
 *
 * @param least         lower end; negative infinity for none
 * @param leastIncluded whether the lower end itself is allowed
 * @param most          upper end, allowed itself; infinity for none
 */
public record Range(double least, boolean leastIncluded, double most) {

    /** Every finite number. */
    public static final Range ANY = new Range(Double.NEGATIVE_INFINITY, false, Double.POSITIVE_INFINITY);
    /** Above zero. */
    public static final Range POSITIVE = new Range(0, false, Double.POSITIVE_INFINITY);
    /** Zero or above. */
    public static final Range NOT_NEGATIVE = new Range(0, true, Double.POSITIVE_INFINITY);
    /** Zero to one, both included. */
    public static final Range SHARE = new Range(0, true, 1);
    /** Above zero, up to one. */
    public static final Range PART_OF_ONE = new Range(0, false, 1);

    /** Between two ends, both included. */
    public static Range between(double least, double most) {
        return new Range(least, true, most);
    }

    /** Above one end, which is excluded. */
    public static Range above(double least) {
        return new Range(least, false, Double.POSITIVE_INFINITY);
    }

    /** At least one end, which is included. */
    public static Range atLeast(double least) {
        return new Range(least, true, Double.POSITIVE_INFINITY);
    }

    /** Whether the value lies in the range. */
    public boolean contains(double value) {
        return (leastIncluded ? value >= least : value > least) && value <= most;
    }
}
