package tramontane.model.file;

import java.util.Optional;
import tramontane.model.Problem;
import tramontane.model.Value;

/**
 * Says what is wrong with a text that is not JSON, and where, in words for the person who wrote it.
 *
 * <p>Runs only after a text was refused. Follows RFC 8259 token by token and stops at the first mistake; keeps its own
 * stack, so that no nesting is too deep for it.
 */
final class JsonMistake {

    /** What may come next. */
    private enum Next {
        VALUE("a value"),
        VALUE_OR_END("a value or a closing bracket"),
        NAME("a name in double quotes"),
        NAME_OR_END("a name in double quotes or a closing brace"),
        COLON("a colon"),
        COMMA_OR_BRACKET("a comma or a closing bracket"),
        COMMA_OR_BRACE("a comma or a closing brace"),
        NOTHING("nothing more");

        private final String words;

        Next(String words) {
            this.words = words;
        }
    }

    private final String text;
    private final int[] opened;
    private int level;
    private int at;
    private Problem mistake;

    private JsonMistake(String text, int depth) {
        this.text = text;
        this.opened = new int[depth];
    }

    /** The first mistake of a text, if it has one. */
    static Optional<Problem> in(String text, int depth) {
        JsonMistake search = new JsonMistake(text, depth);
        Next next = Next.VALUE;
        while (next != null && search.mistake == null) {
            search.skipSpace();
            next = search.at < text.length() ? search.token(next) : search.end(next);
        }
        return Optional.ofNullable(search.mistake);
    }

    /** Line and column of a position, both counted from 1. */
    static String place(CharSequence text, int position) {
        int line = 1;
        int start = 0;
        for (int i = 0; i < position; i++) {
            if (text.charAt(i) == '\n') {
                line++;
                start = i + 1;
            }
        }
        return "line " + line + ", column " + (Character.codePointCount(text, start, position) + 1);
    }

    private Next end(Next next) {
        if (next == Next.NOTHING) {
            return null;
        }
        if (text.isBlank()) {
            mistake = Problem.error("", "the file is empty; expected an object { … }");
            return null;
        }
        String where = level == 0 ? "" : " inside the " + (text.charAt(opened[level - 1]) == '{' ? "object" : "list")
                + " that begins in " + place(text, opened[level - 1]);
        return wrong(at, "the file ends" + where + "; expected " + next.words);
    }

    private Next token(Next next) {
        char c = text.charAt(at);
        switch (next) {
            case VALUE, VALUE_OR_END:
                if (next == Next.VALUE_OR_END && c == ']') {
                    return close();
                }
                return value(next, c);
            case NAME, NAME_OR_END:
                if (next == Next.NAME_OR_END && c == '}') {
                    return close();
                }
                if (c == '"') {
                    return string() ? Next.COLON : null;
                }
                return c == '}' ? wrong(at, "nothing follows the comma before this brace; take the comma out or add a member")
                        : expected(next);
            case COLON:
                at++;
                return c == ':' ? Next.VALUE : backAndExpect(next);
            case COMMA_OR_BRACKET, COMMA_OR_BRACE:
                boolean list = next == Next.COMMA_OR_BRACKET;
                if (c == (list ? ']' : '}')) {
                    return close();
                }
                at++;
                return c == ',' ? list ? Next.VALUE : Next.NAME : backAndExpect(next);
            default:
                return expected(next);
        }
    }

    private Next backAndExpect(Next next) {
        at--;
        return expected(next);
    }

    private Next value(Next next, char c) {
        if (c == '{' || c == '[') {
            if (level == opened.length) {
                return wrong(at, "objects and lists stand more than " + opened.length
                        + " deep within one another; expected " + opened.length + " at most");
            }
            opened[level++] = at++;
            return c == '{' ? Next.NAME_OR_END : Next.VALUE_OR_END;
        }
        if (c == '"') {
            return string() ? after() : null;
        }
        if (c == ']' && level > 0 && next == Next.VALUE && text.charAt(opened[level - 1]) == '[') {
            return wrong(at, "nothing follows the comma before this bracket; take the comma out or add a value");
        }
        String word = word();
        if (word.equals("true") || word.equals("false") || word.equals("null")) {
            at += word.length();
            return after();
        }
        if (word.isEmpty() || word.equals("-") || word.equals("+")) {
            return expected(next);
        }
        int numberEnd = Value.Num.numberEnd(word, 0);
        if (numberEnd == word.length()) {
            if (numberEnd > Value.Num.LONGEST) {
                return wrong(at, "a number has " + numberEnd + " characters; expected " + Value.Num.LONGEST + " at most");
            }
            at += numberEnd;
            return after();
        }
        if (word.matches("[-+]?(NaN|nan|Inf|inf|Infinity|infinity)")) {
            return wrong(at, word + " is not a number that a file may hold; expected a finite number");
        }
        if (Character.isDigit(word.charAt(0)) || "+-.".indexOf(word.charAt(0)) >= 0) {
            return wrong(at, quoted(word) + " is not a number; expected one like 12, -0.5 or 1e-3");
        }
        return wrong(at, quoted(word) + " is not a value; expected a number, true, false, null, or a text in double quotes");
    }

    /** What stands up to the next space, comma, bracket or quotation mark. */
    private String word() {
        int end = at;
        while (end < text.length() && ",:]}[{\" \t\r\n".indexOf(text.charAt(end)) < 0) {
            end++;
        }
        return text.substring(at, end);
    }

    private boolean string() {
        int start = at++;
        while (at < text.length()) {
            char c = text.charAt(at);
            if (c == '"') {
                at++;
                return true;
            }
            if (c == '\n' || c == '\r') {
                break;
            }
            if (c < ' ') {
                wrong(at, "a text holds a control character (code " + (int) c + "); expected it written as \\"
                        + (c == '\t' ? "t" : String.format("u%04x", (int) c)));
                return false;
            }
            if (c == '\\' && !escape()) {
                wrong(at, quoted(text.substring(at, Math.min(text.length(), at + 2)))
                        + " means nothing in a text; expected \\\\ for a backslash");
                return false;
            }
            at++;
        }
        wrong(start, "the text that begins here is not closed in its line; expected a double quote at its end");
        return false;
    }

    /** Moves to the last character of an escape, if it is one. */
    private boolean escape() {
        char c = at + 1 < text.length() ? text.charAt(at + 1) : ' ';
        if (c == 'u' && at + 5 < text.length() && text.substring(at + 2, at + 6).matches("[0-9a-fA-F]{4}")) {
            at += 5;
            return true;
        }
        if ("\"\\/bfnrt".indexOf(c) < 0) {
            return false;
        }
        at++;
        return true;
    }

    private Next close() {
        at++;
        level--;
        return after();
    }

    private Next after() {
        return level == 0 ? Next.NOTHING
                : text.charAt(opened[level - 1]) == '{' ? Next.COMMA_OR_BRACE : Next.COMMA_OR_BRACKET;
    }

    private Next expected(Next next) {
        char c = text.charAt(at);
        if (c == '/' || c == '#') {
            return wrong(at, "a comment is not possible in JSON; expected " + next.words
                    + "; remarks go into a member named notes");
        }
        String word = word();
        String found = c == '"' ? "the text " + quoted(text.substring(at + 1, textEnd()))
                : word.isEmpty() ? String.valueOf(c) : quoted(word);
        boolean decimal = at > 1 && text.charAt(at - 1) == ',' && Character.isDigit(text.charAt(at - 2)) && Character.isDigit(c);
        return wrong(at, "expected " + next.words + ", found " + found
                + (decimal ? "; decimals are written with a point" : ""));
    }

    private int textEnd() {
        int end = at + 1;
        while (end < text.length() && "\"\r\n".indexOf(text.charAt(end)) < 0) {
            end++;
        }
        return end;
    }

    private Next wrong(int position, String message) {
        mistake = Problem.error(place(text, position), message);
        return null;
    }

    private static String quoted(String word) {
        StringBuilder quoted = new StringBuilder("\"");
        word.codePoints().limit(30).forEach(c -> quoted.appendCodePoint(
                Character.isISOControl(c) || Character.getType(c) == Character.SURROGATE ? '?' : c));
        return quoted.append(word.length() > 30 ? "…\"" : "\"").toString();
    }

    private void skipSpace() {
        while (at < text.length() && " \t\r\n".indexOf(text.charAt(at)) >= 0) {
            at++;
        }
    }
}
