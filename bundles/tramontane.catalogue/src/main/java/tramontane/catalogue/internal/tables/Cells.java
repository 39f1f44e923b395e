package tramontane.catalogue.internal.tables;

import java.util.regex.Pattern;
import tramontane.model.Value;

/**
 * Texts and values of any kind as cells and back, so that no cell is taken for a formula by a spreadsheet.
 *
 * <p>A text that would begin a formula has an apostrophe put before it, which reading takes away again (common practice against
 * formula injection: OWASP, "CSV Injection"). A text that a cell would not keep, such as a blank one, is written as JSON does,
 * in quotation marks.
 */
final class Cells {

    /** What a spreadsheet may take for a formula, and what is already guarded. */
    private static final Pattern FORMULA = Pattern.compile("'*[=+\\-@\\t\\r＝＋－＠].*", Pattern.DOTALL);
    private static final Pattern GUARDED = Pattern.compile("'+[=+\\-@\\t\\r＝＋－＠].*", Pattern.DOTALL);

    private Cells() {
    }

    /** The text that a cell holds. */
    static String text(String cell) {
        String text = cell.strip();
        if (text.length() > 1 && text.startsWith("\"") && text.endsWith("\"")
                && Json.read(text).orElse(null) instanceof Value.Text(String quoted)) {
            return quoted;
        }
        return GUARDED.matcher(text).matches() ? text.substring(1) : text;
    }

    /** A cell that holds a text. */
    static String ofText(String text) {
        if (!text.strip().equals(text) || text.isEmpty() || text.startsWith("\"") || text.startsWith("\uFEFF")
                || text.chars().anyMatch(c -> Character.isISOControl(c) && c != '\n' && c != '\r' && c != '\t')) {
            return Json.write(new Value.Text(text));
        }
        return FORMULA.matcher(text).matches() ? "'" + text : text;
    }

    /** What a cell holds of which nothing is known: number, true, false, null, JSON, else text. */
    static Value any(String cell) {
        String text = cell.strip();
        return looksLikeJson(text) ? Json.read(text).orElseGet(() -> new Value.Text(text(text))) : new Value.Text(text(text));
    }

    /** A cell from which {@link #any} reads the same value. */
    static String ofAny(Value value) {
        return value instanceof Value.Text(String text) && !looksLikeJson(text) ? ofText(text) : Json.write(value);
    }

    private static boolean looksLikeJson(String text) {
        return text.startsWith("\"") || text.startsWith("{") || text.startsWith("[") || text.equals("true") || text.equals("false")
                || text.equals("null") || !text.isEmpty() && text.length() <= Value.Num.LONGEST
                        && Value.Num.numberEnd(text, 0) == text.length();
    }
}
