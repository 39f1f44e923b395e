package tramontane.analysis;

import java.util.Objects;

/**
 * One sentence for the engineer.
 *
 * <pre>{@code
 * Finding.caution("fans", "works at ", new Amount(flow, QuantityKind.FLOW), ", left of its pressure peak")
 *         .remedy("lower the resistance").source("common practice");
 * }</pre>
 *
 * @param severity  how it is meant
 * @param message   the sentence, with figure and limit in it where there are any
 * @param place     the id of a bay, passage, bank or heat source; empty for the design as a whole
 * @param condition the condition's id; empty for all. The engine fills it in.
 * @param remedy    what to do about it; empty where nothing needs doing
 * @param source    where the rule behind it stands: a standard, a handbook, or "common practice"; empty where none is needed
 */
public record Finding(Severity severity, Sentence message, String place, String condition, Sentence remedy, String source) {

    public Finding {
        Objects.requireNonNull(severity);
        Objects.requireNonNull(message);
        Objects.requireNonNull(place);
        Objects.requireNonNull(condition);
        Objects.requireNonNull(remedy);
        Objects.requireNonNull(source);
    }

    /**
     * A finding of any severity.
     *
     * @param severity how it is meant
     * @param place    where; empty for the design as a whole
     * @param message  texts and {@link Amount}s
     */
    public static Finding of(Severity severity, String place, Object... message) {
        return new Finding(severity, Sentence.of(message), place, "", Sentence.EMPTY, "");
    }

    /** Worth knowing; the message is made of texts and {@link Amount}s. */
    public static Finding note(String place, Object... message) {
        return of(Severity.NOTE, place, message);
    }

    /** Look at it; the message is made of texts and {@link Amount}s. */
    public static Finding caution(String place, Object... message) {
        return of(Severity.CAUTION, place, message);
    }

    /** It failed; the message is made of texts and {@link Amount}s. */
    public static Finding error(String place, Object... message) {
        return of(Severity.ERROR, place, message);
    }

    /** This finding with what to do about it, of texts and {@link Amount}s. */
    public Finding remedy(Object... todo) {
        return new Finding(severity, message, place, condition, Sentence.of(todo), source);
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
