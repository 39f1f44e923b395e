package tramontane.cli.terminal;

/** Comma-separated values: RFC 4180, lines ended by CR LF. */
public final class CsvRows {

    private final StringBuilder text = new StringBuilder();

    /** Adds a row; the first is the header. */
    public CsvRows row(String... fields) {
        for (int i = 0; i < fields.length; i++) {
            text.append(i == 0 ? "" : ",").append(quoted(fields[i]));
        }
        text.append("\r\n");
        return this;
    }

    private static String quoted(String field) {
        boolean plain = field.chars().noneMatch(c -> c == ',' || c == '"' || c == '\r' || c == '\n');
        return plain && field.equals(field.strip()) ? field : '"' + field.replace("\"", "\"\"") + '"';
    }

    /** All rows. */
    @Override
    public String toString() {
        return text.toString();
    }
}
