package tramontane.analysis;

import java.util.Objects;

/**
 * One sentence for the engineer.
 *
 * @param severity  how it is meant
 * @param message   the sentence, with figure and limit in words where there are any
 * @param place     the id of a bay, passage, bank or heat source; empty for the design as a whole
 * @param condition the condition's id; empty for all. The engine fills it in.
 * @param remedy    what to do about it; empty where nothing needs doing
 * @param source    where the rule behind it stands: a standard, a handbook, or "common practice"; empty where none is needed
 */
public record Finding(Severity severity, String message, String place, String condition, String remedy, String source) {

    public Finding {
        Objects.requireNonNull(severity);
        Objects.requireNonNull(message);
        Objects.requireNonNull(place);
        Objects.requireNonNull(condition);
        Objects.requireNonNull(remedy);
        Objects.requireNonNull(source);
    }

    /** Worth knowing. */
    public static Finding note(String place, String message) {
        return new Finding(Severity.NOTE, message, place, "", "", "");
    }

    /** Look at it. */
    public static Finding caution(String place, String message) {
        return new Finding(Severity.CAUTION, message, place, "", "", "");
    }

    /** It failed. */
    public static Finding error(String place, String message) {
        return new Finding(Severity.ERROR, message, place, "", "", "");
    }

    /** This finding with what to do about it. */
    public Finding remedy(String todo) {
        return new Finding(severity, message, place, condition, todo, source);
    }

    /** This finding with where its rule stands. */
    public Finding source(String reference) {
        return new Finding(severity, message, place, condition, remedy, reference);
    }

    /** This finding in a condition. */
    public Finding in(String conditionId) {
        return new Finding(severity, message, place, conditionId, remedy, source);
    }
}
