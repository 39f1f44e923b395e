package tramontane.model;

import java.util.Objects;

/**
 * What is wrong at one place of a design.
 *
 * @param severity an error keeps the design from being judged; a caution does not
 * @param place    where, in the file's own terms: {@code airPath.passages[3].freeArea}; empty for the file as a whole
 * @param message  what stands there and what was expected, one sentence without the place
 */
public record Problem(Severity severity, String place, String message) {

    /** How bad. */
    public enum Severity {
        /** The design cannot be judged. */
        ERROR,
        /** The design can be judged; the engineer should look. */
        CAUTION
    }

    public Problem {
        Objects.requireNonNull(severity);
        Objects.requireNonNull(place);
        Objects.requireNonNull(message);
    }

    /** An error. */
    public static Problem error(String place, String message) {
        return new Problem(Severity.ERROR, place, message);
    }

    /** A caution. */
    public static Problem caution(String place, String message) {
        return new Problem(Severity.CAUTION, place, message);
    }

    /** Whether it is an error. */
    public boolean isError() {
        return severity == Severity.ERROR;
    }

    /** Place and message as one sentence. */
    public String sentence() {
        return place.isEmpty() ? message : place + ": " + message;
    }
}
