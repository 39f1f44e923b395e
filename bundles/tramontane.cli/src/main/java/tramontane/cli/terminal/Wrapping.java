package tramontane.cli.terminal;

import java.util.ArrayList;
import java.util.List;

/** Breaks texts into lines. */
public final class Wrapping {

    /** A space at which no line is broken; it comes out as a usual one. */
    public static final char FAST = '\u00a0';

    private Wrapping() {
    }

    /**
     * The lines of a text, each at most so wide, broken between words where that is possible.
     *
     * @param text  one line
     * @param width at least 1
     * @return at least one line
     */
    public static List<String> lines(String text, int width) {
        List<String> lines = new ArrayList<>();
        StringBuilder line = new StringBuilder();
        for (String word : text.split(" ", -1)) {
            String rest = word;
            if (!line.isEmpty() && width(line) + 1 + width(rest) > width) {
                lines.add(line.toString());
                line.setLength(0);
            }
            while (width(rest) > width) {
                int end = rest.offsetByCodePoints(0, width);
                lines.add(rest.substring(0, end));
                rest = rest.substring(end);
            }
            line.append(line.isEmpty() ? "" : " ").append(rest);
        }
        if (!line.isEmpty() || lines.isEmpty()) {
            lines.add(line.toString());
        }
        lines.replaceAll(each -> each.replace(FAST, ' '));
        return lines;
    }

    /**
     * A text behind a heading, its further lines set in as deep as the heading is wide.
     *
     * @param lead  what stands before the first line, spaces included
     * @param text  one line
     * @param width of the whole
     */
    public static List<String> hanging(String lead, String text, int width) {
        List<String> result = new ArrayList<>();
        String indent = " ".repeat(width(lead));
        for (String line : lines(text, Math.max(20, width - width(lead)))) {
            result.add((result.isEmpty() ? lead : indent) + line);
        }
        return result;
    }

    /** How many columns a text takes. */
    public static int width(CharSequence text) {
        return Character.codePointCount(text, 0, text.length());
    }
}
