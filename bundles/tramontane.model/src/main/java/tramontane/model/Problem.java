package tramontane.model;

import java.util.Objects;

/**
 * What is wrong at one place of a design.
 *
 * @param severity  an error keeps the design from being judged; a caution does not
 * @param place     where, in the file's own terms: {@code airPath.passages[3].freeArea}; empty for the file as a whole
 * @param message   what stands there and what was expected, one sentence without the place
 * @param isMissing whether it is an error only because something is not given yet, as in a half-finished design
 */
public record Problem(Severity severity, String place, String message, boolean isMissing) {

    /** How bad. */
    public enum Severity {
        /** The design cannot be judged. */
        ERROR,
        /** The design can be judged; the engineer should look. */
        CAUTION
    }

    /** Longest name of a member in a place; the rest of a longer one tells nobody more. */
    private static final int LONGEST_NAME = 80;

    public Problem {
        Objects.requireNonNull(severity);
        Objects.requireNonNull(place);
        Objects.requireNonNull(message);
    }

    /** An error. */
    public static Problem error(String place, String message) {
        return new Problem(Severity.ERROR, place, message, false);
    }

    /** A caution. */
    public static Problem caution(String place, String message) {
        return new Problem(Severity.CAUTION, place, message, false);
    }

    /**
     * An error because something must be given and is not.
     *
     * @param place where it would stand
     * @param what  what goes behind "is missing", with its stop: {@code ; expected a length}
     */
    public static Problem missing(String place, String what) {
        return new Problem(Severity.ERROR, place, "is missing" + what, true);
    }

    /**
     * The place of a member.
     *
     * @param place where its object stands; empty for the whole file
     * @param name  the member's name
     */
    public static String place(String place, String name) {
        String shown = name.length() <= LONGEST_NAME ? name : name.substring(0, LONGEST_NAME) + "…";
        return place.isEmpty() ? shown : place + "." + shown;
    }

    /** Whether it is an error. */
    public boolean isError() {
        return severity == Severity.ERROR;
    }

    /** Place and message as one sentence in one line, whatever names the file gives. */
    public String sentence() {
        String sentence = place.isEmpty() ? message : place + ": " + message;
        return sentence.chars().anyMatch(Character::isISOControl) ? sentence.replaceAll("\\p{Cc}", "?") : sentence;
    }
}
