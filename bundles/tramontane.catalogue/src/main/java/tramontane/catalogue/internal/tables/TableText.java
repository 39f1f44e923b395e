package tramontane.catalogue.internal.tables;

import java.io.IOException;
import java.io.StringReader;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.List;
import java.util.Optional;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;
import tramontane.model.Problem;

/** From bytes to rows of cells: encoding, separator, quotation marks (RFC 4180). */
final class TableText {

    /** Most bytes of a table, 64 MB as for other files; one that is larger is not read. */
    private static final int MOST_BYTES = 64 << 20;

    private static final Charset WINDOWS = Charset.forName("windows-1252");

    private TableText() {
    }

    /**
     * A row.
     *
     * @param line the line of the file it begins in, from 1
     */
    record Row(int line, List<String> cells) {
        Row {
            cells = List.copyOf(cells);
        }

        boolean isBlank() {
            return cells.stream().allMatch(String::isBlank);
        }
    }

    /**
     * The text that bytes are.
     *
     * @param encoding {@code auto}, {@code UTF-8} or {@code windows-1252}
     * @return empty where it is no text; {@code problems} then has an error
     */
    static Optional<String> decode(String name, byte[] content, String encoding, List<Problem> problems) {
        if (content.length > MOST_BYTES) {
            problems.add(Problem.error(name, "has " + content.length + " bytes; expected " + MOST_BYTES + " at most"));
            return Optional.empty();
        }
        if (content.length > 3 && content[0] == 'P' && content[1] == 'K' && content[2] == 3 && content[3] == 4) {
            problems.add(Problem.error(name, "is a workbook or an archive; expected a table as text: save it as CSV first"));
            return Optional.empty();
        }
        Optional<String> text = text(name, content, encoding, problems);
        Optional<Integer> nul = text.map(each -> each.indexOf('\0')).filter(at -> at >= 0);
        if (nul.isPresent()) {
            problems.add(Problem.error(line(name, 1 + (int) text.get().substring(0, nul.get()).chars().filter(c -> c == '\n').count()),
                    "has a NUL character; expected a table as text, in UTF-8 or windows-1252"));
            return Optional.empty();
        }
        return text;
    }

    private static Optional<String> text(String name, byte[] content, String encoding, List<Problem> problems) {
        int first = content.length > 0 ? content[0] & 0xff : 0;
        int second = content.length > 1 ? content[1] & 0xff : 0;
        if (first == 0xff && second == 0xfe || first == 0xfe && second == 0xff) {
            return Optional.of(new String(content, StandardCharsets.UTF_16));
        }
        if (encoding.equals("windows-1252")) {
            return Optional.of(new String(content, WINDOWS));
        }
        try {
            String text = StandardCharsets.UTF_8.newDecoder().decode(ByteBuffer.wrap(content)).toString();
            return Optional.of(text.startsWith("\uFEFF") ? text.substring(1) : text);
        } catch (CharacterCodingException e) {
            if (encoding.equals("UTF-8")) {
                problems.add(Problem.error(name, "is not UTF-8, as the settings say; expected it, or \"encoding\" windows-1252"));
                return Optional.empty();
            }
            problems.add(Problem.caution(name, "is not UTF-8; read as windows-1252, so look at letters with accents and at units"));
            return Optional.of(new String(content, WINDOWS));
        }
    }

    /** What stands between the cells of a table: of semicolon, tab and comma the one that is most in its first line. */
    static char separator(String text, int skipped) {
        int[] counts = new int[3];
        boolean isQuoted = false;
        boolean isBlank = true;
        for (int at = startOfLine(text, skipped); at < text.length(); at++) {
            char c = text.charAt(at);
            if (c == '"') {
                isQuoted = !isQuoted;
            } else if (!isQuoted && c == '\n' && !isBlank) {
                break;
            } else if (!isQuoted && ";\t,".indexOf(c) >= 0) {
                counts[";\t,".indexOf(c)]++;
            }
            isBlank &= Character.isWhitespace(c);
        }
        int best = counts[0] >= counts[1] ? 0 : 1;
        return ";\t,".charAt(counts[best] >= Math.max(counts[2], 1) ? best : 2);
    }

    private static int startOfLine(String text, int skipped) {
        int at = 0;
        for (int i = 0; i < skipped && at >= 0; i++) {
            at = text.indexOf('\n', at) + 1;
            if (at == 0) {
                return text.length();
            }
        }
        return at;
    }

    /**
     * The rows of a table, blank ones left out.
     *
     * @param skipped lines before the heading
     */
    static List<Row> rows(String name, String text, char separator, int skipped, List<Problem> problems) {
        CSVFormat format = CSVFormat.RFC4180.builder().setDelimiter(separator).setIgnoreSurroundingSpaces(true).get();
        List<Row> rows = new ArrayList<>();
        long line = skipped + 1L;
        try (CSVParser parser = CSVParser.parse(new StringReader(text.substring(startOfLine(text, skipped))), format)) {
            Iterator<CSVRecord> records = parser.iterator();
            while (records.hasNext()) {
                CSVRecord record = records.next();
                Row row = new Row((int) line, record.toList());
                if (!row.isBlank()) {
                    rows.add(row);
                }
                line = skipped + 1L + parser.getCurrentLineNumber();
            }
        } catch (UncheckedIOException | IOException e) {
            problems.add(Problem.error(line(name, (int) line), String.valueOf(e.getMessage()).contains("EOF")
                    ? "has a quotation mark that is never closed; expected another one behind the text"
                    : "has something behind a closing quotation mark; expected the next cell there, and quotation marks within a text doubled"));
        }
        return rows;
    }

    /** A place in a file. */
    static String line(String name, int line) {
        return name + ", line " + line;
    }
}
