package tramontane.reliability.statistics;

import java.util.Optional;

/**
 * What came of trying to fit: the fit, or why there is none.
 *
 * @param <T> what a fit is
 */
public sealed interface Outcome<T> {

    /**
     * The likelihood has a maximum, and here it is.
     *
     * @param fit the fit
     * @param <T> what a fit is
     */
    record Found<T>(T fit) implements Outcome<T> {
    }

    /**
     * There is no fit.
     *
     * @param reason   of what kind the obstacle is
     * @param sentence for the engineer
     * @param <T>      what a fit would be
     */
    record NotFound<T>(Reason reason, String sentence) implements Outcome<T> {
    }

    /** Why there is no fit. */
    enum Reason {
        /** No unit failed. */
        NO_FAILURE,
        /** Every unit had failed when first looked at. */
        ALL_FAILED_BEFORE,
        /** All that was seen agrees with one single time of failure: the spread would be zero. */
        NO_SPREAD,
        /** Later looks found no more failed than earlier ones: the spread would be infinite. */
        INFINITE_SPREAD,
        /** Nothing was seen of what shall be estimated, for example an effect of temperature with one temperature only. */
        NOT_DETERMINED,
        /** The maximum was not found within the limit of iterations. */
        NOT_CONVERGED
    }

    /** The fit, if there is one. */
    default Optional<T> found() {
        return this instanceof Found<T>(T fit) ? Optional.of(fit) : Optional.empty();
    }

    /**
     * The fit.
     *
     * @throws IllegalStateException with the sentence where there is none
     */
    default T orElseThrow() {
        return switch (this) {
            case Found<T>(T fit) -> fit;
            case NotFound<T>(Reason reason, String sentence) -> throw new IllegalStateException(sentence);
        };
    }
}
