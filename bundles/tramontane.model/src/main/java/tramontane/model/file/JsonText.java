package tramontane.model.file;

import java.util.Iterator;
import java.util.List;
import java.util.Map;
import tramontane.model.Value;

/**
 * Turns a value tree into JSON that people can read and compare line by line.
 *
 * <p>What fits in a line stays in one, so that a curve is one line per quantity and a passage is one line; longer lists of
 * plain values are filled like a paragraph; two objects never share a line of a list.
 */
final class JsonText {

    private static final int WIDTH = 100;

    private final StringBuilder out = new StringBuilder();

    private JsonText() {
    }

    /** The text of a file, with a line end at its end. */
    static String of(Value.Tree tree) {
        JsonText text = new JsonText();
        text.broken(tree, 0);
        return text.out.append('\n').toString();
    }

    /** @param column where the value begins; one place is left for a comma behind it */
    private void value(Value value, int depth, int column) {
        if (!flat(value, out.length() + WIDTH - 1 - column)) {
            broken(value, depth);
        }
    }

    private void broken(Value value, int depth) {
        if (depth > Limits.STANDARD.depth()) {
            throw new IllegalArgumentException("values nested deeper than " + Limits.STANDARD.depth()
                    + " could not be read again");
        }
        switch (value) {
            case Value.Tree(var members) when !members.isEmpty() -> {
                out.append('{');
                Iterator<Map.Entry<String, Value>> all = members.entrySet().iterator();
                while (all.hasNext()) {
                    Map.Entry<String, Value> member = all.next();
                    int start = line(depth + 1);
                    string(member.getKey());
                    out.append(": ");
                    value(member.getValue(), depth + 1, out.length() - start);
                    out.append(all.hasNext() ? "," : "");
                }
                line(depth);
                out.append('}');
            }
            case Value.Items(List<Value> items) when !items.isEmpty() -> {
                out.append('[');
                boolean filled = items.stream().noneMatch(item -> item instanceof Value.Tree || item instanceof Value.Items);
                int start = 0;
                for (int i = 0; i < items.size(); i++) {
                    boolean follows = false;
                    if (filled && i > 0) {
                        int before = out.length();
                        out.append(' ');
                        follows = flat(items.get(i), start + WIDTH - 1);
                        if (!follows) {
                            out.setLength(before);
                        }
                    }
                    if (!follows) {
                        start = line(depth + 1);
                        value(items.get(i), depth + 1, out.length() - start);
                    }
                    out.append(i + 1 < items.size() ? "," : "");
                }
                line(depth);
                out.append(']');
            }
            default -> flat(value, Integer.MAX_VALUE);
        }
    }

    /** Begins a line and returns where it begins in the text. */
    private int line(int depth) {
        out.append('\n');
        int start = out.length();
        out.repeat(' ', 2 * depth);
        return start;
    }

    /** Writes a value in one line unless the text would become longer than {@code end}; then nothing is written. */
    private boolean flat(Value value, int end) {
        int start = out.length();
        boolean fits = switch (value) {
            case Value.Text(String text) -> text.length() <= end - start && string(text);
            case Value.Num(String literal) -> word(literal);
            case Value.Flag(boolean on) -> word(String.valueOf(on));
            case Value.Nothing() -> word("null");
            case Value.Items(List<Value> items) -> flatItems(items, end);
            case Value.Tree(var members) -> flatMembers(members, end);
        };
        if (fits && out.length() <= end) {
            return true;
        }
        out.setLength(start);
        return false;
    }

    private boolean flatItems(List<Value> items, int end) {
        if (items.size() > 1 && items.stream().limit(2).allMatch(item -> item instanceof Value.Tree)) {
            return false;
        }
        out.append('[');
        for (int i = 0; i < items.size(); i++) {
            out.append(i > 0 ? ", " : "");
            if (!flat(items.get(i), end)) {
                return false;
            }
        }
        out.append(']');
        return true;
    }

    private boolean flatMembers(Map<String, Value> members, int end) {
        out.append('{');
        boolean first = true;
        for (Map.Entry<String, Value> member : members.entrySet()) {
            out.append(first ? "" : ", ");
            first = false;
            if (member.getKey().length() > end - out.length()) {
                return false;
            }
            string(member.getKey());
            out.append(": ");
            if (!flat(member.getValue(), end)) {
                return false;
            }
        }
        out.append('}');
        return true;
    }

    private boolean word(String word) {
        out.append(word);
        return true;
    }

    private boolean string(String text) {
        out.append('"');
        for (int i = 0; i < text.length(); i++) {
            char c = text.charAt(i);
            switch (c) {
                case '"' -> out.append("\\\"");
                case '\\' -> out.append("\\\\");
                case '\n' -> out.append("\\n");
                case '\r' -> out.append("\\r");
                case '\t' -> out.append("\\t");
                default -> {
                    boolean pair = Character.isHighSurrogate(c) && i + 1 < text.length()
                            && Character.isLowSurrogate(text.charAt(i + 1));
                    if (pair) {
                        out.append(c).append(text.charAt(++i));
                    } else if (c < ' ' || Character.isSurrogate(c)) {
                        // half a surrogate pair has no form in UTF-8 and is kept as an escape
                        out.append(String.format("\\u%04x", (int) c));
                    } else {
                        out.append(c);
                    }
                }
            }
        }
        out.append('"');
        return true;
    }
}
