package tramontane.reliability.statistics;

/**
 * An estimate between its confidence bounds.
 *
 * @param estimate the most likely value
 * @param lower    lower bound; 0 (or minus infinity, for what may be negative) where the data do not bound it from below
 * @param upper    upper bound; infinite where the data do not bound it from above
 */
public record Bounds(double estimate, double lower, double upper) {

    /** Refuses bounds that are no numbers or in the wrong order. */
    public Bounds {
        if (!(lower <= upper)) {
            throw new IllegalArgumentException("a lower bound is not above the upper one, got " + lower + " and " + upper);
        }
    }

    /** What is known, not estimated. */
    static Bounds known(double value) {
        return new Bounds(value, value, value);
    }

    /** How bounds are found. */
    public enum Method {
        /**
         * Wald bounds from the observed Fisher information: on the logarithm of scale, shape, life and mean life; on the standardised time
         * {@code (ln t - μ)/σ} for survival. Quick; too narrow for few failures.
         */
        FISHER,
        /** All values whose profile likelihood is near enough the maximum, by chi-square. Better for few failures. */
        LIKELIHOOD_RATIO
    }
}
