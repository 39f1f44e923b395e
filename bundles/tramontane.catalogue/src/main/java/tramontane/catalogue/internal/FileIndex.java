package tramontane.catalogue.internal;

import java.util.Arrays;
import tramontane.model.file.Limits;

/**
 * Where in the bytes of a file its parts stand. Goes through the whole file once and refuses what is not JSON in UTF-8 (RFC 8259)
 * or beyond the limits, so that whoever reads the parts need not look at that any more.
 */
final class FileIndex {

    /** A little below what the thorough reader allows. */
    private static final int DEEPEST = Limits.STANDARD.depth() - 8;

    private static final int LONGEST_NUMBER = 1000;

    private final byte[] bytes;
    private int at;
    private int values;
    private boolean family;
    private boolean escaped;
    private int[] bounds = new int[2];
    private int count;
    private int[] shared = new int[16];
    private int sharedCount;

    private FileIndex(byte[] bytes) {
        this.bytes = bytes;
    }

    /**
     * Finds the parts of a file.
     *
     * @throws Odd where it is not sound, or written in an unusual way
     */
    static FileIndex of(byte[] bytes) throws Odd {
        FileIndex index = new FileIndex(bytes);
        index.whole();
        return index;
    }

    /** Whether the file is a family. */
    boolean family() {
        return family;
    }

    /** How many parts there are. */
    int size() {
        return count;
    }

    /** Where a part begins, with its brace. */
    int start(int part) {
        return bounds[2 * part];
    }

    /** Behind the last byte of a part. */
    int end(int part) {
        return bounds[2 * part + 1];
    }

    /** First bytes of the names, and bytes behind the values, of the members that hold for each part, by turns. */
    int[] shared() {
        return Arrays.copyOf(shared, sharedCount);
    }

    private void whole() throws Odd {
        at = bytes.length >= 3 && bytes[0] == (byte) 0xEF && bytes[1] == (byte) 0xBB && bytes[2] == (byte) 0xBF ? 3 : 0;
        space();
        int start = at;
        expect('{');
        values = 1;
        boolean formatSeen = false;
        boolean notesSeen = false;
        boolean longNotes = false;
        space();
        if (peek() == '}') {
            throw Odd.FOUND;
        }
        while (true) {
            int name = at;
            string();
            int nameEnd = at - 1;
            if (escaped) {
                throw Odd.FOUND; // it may be one of those that mean something here
            }
            colon();
            int value = at;
            if (is(name + 1, nameEnd, PartTrees.PARTS)) {
                if (family) {
                    throw Odd.FOUND;
                }
                parts();
            } else {
                value(1);
                boolean format = is(name + 1, nameEnd, PartTrees.FORMAT_MEMBER);
                boolean notes = is(name + 1, nameEnd, PartTrees.NOTES);
                if (format && (formatSeen || at != value + 1 || bytes[value] != '0' + PartTrees.FORMAT) || notes && notesSeen) {
                    throw Odd.FOUND;
                }
                formatSeen |= format;
                notesSeen |= notes;
                longNotes |= notes && (bytes[value] == '{' || bytes[value] == '[');
                if (!format && !notes) {
                    share(name, at);
                }
            }
            space();
            int next = peek();
            at++;
            if (next == '}') {
                break;
            }
            if (next != ',') {
                throw Odd.FOUND;
            }
            space();
        }
        int end = at;
        space();
        if (at != bytes.length) {
            throw Odd.FOUND;
        }
        if (family && (count == 0 || longNotes)) {
            throw Odd.FOUND; // nobody would look at what stands beside the parts
        }
        if (!family) {
            bounds[0] = start;
            bounds[1] = end;
            count = 1;
            sharedCount = 0;
        }
    }

    private void parts() throws Odd {
        family = true;
        values++;
        expect('[');
        space();
        if (peek() == ']') {
            at++;
            return;
        }
        while (true) {
            if (peek() != '{') {
                throw Odd.FOUND;
            }
            int start = at;
            value(2);
            if (2 * count == bounds.length) {
                bounds = Arrays.copyOf(bounds, Math.max(16, 2 * bounds.length));
            }
            bounds[2 * count] = start;
            bounds[2 * count++ + 1] = at;
            space();
            int next = peek();
            at++;
            if (next == ']') {
                return;
            }
            if (next != ',') {
                throw Odd.FOUND;
            }
            space();
        }
    }

    private void share(int start, int end) {
        if (sharedCount == shared.length) {
            shared = Arrays.copyOf(shared, 2 * shared.length);
        }
        shared[sharedCount++] = start;
        shared[sharedCount++] = end;
    }

    private boolean is(int from, int to, String word) {
        if (to - from != word.length()) {
            return false;
        }
        for (int i = 0; i < word.length(); i++) {
            if (bytes[from + i] != word.charAt(i)) {
                return false;
            }
        }
        return true;
    }

    private int peek() {
        return at < bytes.length ? bytes[at] : 0;
    }

    private void expect(char wanted) throws Odd {
        if (peek() != wanted) {
            throw Odd.FOUND;
        }
        at++;
    }

    private void space() {
        int i = at;
        while (i < bytes.length && (bytes[i] == ' ' || bytes[i] == '\n' || bytes[i] == '\r' || bytes[i] == '\t')) {
            i++;
        }
        at = i;
    }

    private void colon() throws Odd {
        space();
        expect(':');
        space();
    }

    private void value(int depth) throws Odd {
        if (++values > Limits.STANDARD.values()) {
            throw Odd.FOUND;
        }
        switch (peek()) {
            case '{' -> object(depth + 1);
            case '[' -> list(depth + 1);
            case '"' -> string();
            case 't' -> word("true");
            case 'f' -> word("false");
            case 'n' -> word("null");
            default -> number();
        }
    }

    private void object(int depth) throws Odd {
        if (depth > DEEPEST) {
            throw Odd.FOUND;
        }
        at++;
        space();
        if (peek() == '}') {
            at++;
            return;
        }
        while (true) {
            string();
            colon();
            value(depth);
            space();
            int next = peek();
            at++;
            if (next == '}') {
                return;
            }
            if (next != ',') {
                throw Odd.FOUND;
            }
            space();
        }
    }

    private void list(int depth) throws Odd {
        if (depth > DEEPEST) {
            throw Odd.FOUND;
        }
        at++;
        space();
        if (peek() == ']') {
            at++;
            return;
        }
        while (true) {
            value(depth);
            space();
            int next = peek();
            at++;
            if (next == ']') {
                return;
            }
            if (next != ',') {
                throw Odd.FOUND;
            }
            space();
        }
    }

    private void word(String word) throws Odd {
        if (at + word.length() > bytes.length || !is(at, at + word.length(), word)) {
            throw Odd.FOUND;
        }
        at += word.length();
    }

    private void number() throws Odd {
        int start = at;
        if (peek() == '-') {
            at++;
        }
        int first = peek();
        digits();
        if (first == '0' && bytes[at - 1] >= '0' && bytes[at - 1] <= '9' && at - start > (bytes[start] == '-' ? 2 : 1)) {
            throw Odd.FOUND;
        }
        if (peek() == '.') {
            at++;
            digits();
        }
        if (peek() == 'e' || peek() == 'E') {
            at++;
            if (peek() == '-' || peek() == '+') {
                at++;
            }
            digits();
        }
        if (at - start > LONGEST_NUMBER) {
            throw Odd.FOUND;
        }
    }

    private void digits() throws Odd {
        int start = at;
        while (at < bytes.length && bytes[at] >= '0' && bytes[at] <= '9') {
            at++;
        }
        if (at == start) {
            throw Odd.FOUND;
        }
    }

    /** A text with its quotation marks. */
    private void string() throws Odd {
        expect('"');
        escaped = false;
        int i = at;
        while (i < bytes.length) {
            int c = bytes[i++];
            if (c == '"') {
                at = i;
                return;
            }
            if (c < 0) {
                i = beyondAscii(c & 0xFF, i);
            } else if (c == '\\') {
                escaped = true;
                i = escape(i);
            } else if (c < ' ') {
                throw Odd.FOUND;
            }
        }
        throw Odd.FOUND;
    }

    private int escape(int i) throws Odd {
        int c = i < bytes.length ? bytes[i] : 0;
        if (c != 'u') {
            if ("\"\\/bfnrt".indexOf(c) < 0) {
                throw Odd.FOUND;
            }
            return i + 1;
        }
        for (int k = 1; k <= 4; k++) {
            if (i + k >= bytes.length || Character.digit(bytes[i + k], 16) < 0) {
                throw Odd.FOUND;
            }
        }
        return i + 5;
    }

    /** The rest of a character of several bytes: RFC 3629, section 4. */
    private int beyondAscii(int lead, int i) throws Odd {
        int second = i < bytes.length ? bytes[i] & 0xFF : 0;
        int length;
        if (lead >= 0xC2 && lead <= 0xDF) {
            length = 1;
        } else if (lead >= 0xE0 && lead <= 0xEF && (lead != 0xE0 || second >= 0xA0) && (lead != 0xED || second <= 0x9F)) {
            length = 2;
        } else if (lead >= 0xF0 && lead <= 0xF4 && (lead != 0xF0 || second >= 0x90) && (lead != 0xF4 || second <= 0x8F)) {
            length = 3;
        } else {
            throw Odd.FOUND;
        }
        for (int k = 0; k < length; k++) {
            if (i + k >= bytes.length || (bytes[i + k] & 0xC0) != 0x80) {
                throw Odd.FOUND;
            }
        }
        return i + length;
    }
}
