package tramontane.desktop;

import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.Collectors;
import tramontane.analysis.Severity;

/**
 * What a table shows, without widgets; {@link SheetTable} draws it.
 *
 * @param columns its columns
 * @param rows    its rows, each with one cell per column
 */
public record Sheet(List<Column> columns, List<Row> rows) {

    /** Nothing to show. */
    public static final Sheet EMPTY = new Sheet(List.of(), List.of());

    public Sheet {
        columns = List.copyOf(columns);
        rows = List.copyOf(rows);
        for (Row row : rows) {
            if (row.cells().size() != columns.size()) {
                throw new IllegalArgumentException("row " + row.key() + " has " + row.cells().size() + " cells for " + columns.size()
                        + " columns");
            }
        }
    }

    /**
     * A column.
     *
     * @param key    tells columns apart, whatever their heading
     * @param label  its heading
     * @param digits whether it holds numbers: digits of one width, set right
     * @param front  whether it belongs to the case in front, and is marked so
     * @param hover  what hovering over its heading tells; empty for nothing
     */
    public record Column(String key, String label, boolean digits, boolean front, String hover) {

        /** A column of words. */
        public static Column words(String label) {
            return new Column(label, label, false, false, "");
        }

        /** A column of numbers. */
        public static Column numbers(String label) {
            return new Column(label, label, true, false, "");
        }
    }

    /**
     * A row.
     *
     * @param key   tells rows apart, and stays the same while what the row is about does
     * @param cells its cells
     */
    public record Row(Object key, List<Cell> cells) {
        public Row {
            Objects.requireNonNull(key);
            cells = List.copyOf(cells);
        }
    }

    /**
     * A cell.
     *
     * @param text   what stands in it
     * @param mark   the severity whose mark stands before the text
     * @param strong whether it is set in bold
     * @param stale  whether it belongs to an earlier state of the design
     * @param figure the figure it shows, for who asks where it comes from
     */
    public record Cell(String text, Optional<Severity> mark, boolean strong, boolean stale, Optional<FigureKey> figure) {

        /** An empty cell. */
        public static final Cell EMPTY = of("");

        /** Plain text. */
        public static Cell of(String text) {
            return new Cell(text, Optional.empty(), false, false, Optional.empty());
        }

        /** This cell with the mark of a severity. */
        public Cell mark(Severity severity) {
            return new Cell(text, Optional.of(severity), strong, stale, figure);
        }

        /** This cell in bold. */
        public Cell bold() {
            return new Cell(text, mark, true, stale, figure);
        }

        /** This cell, of an earlier state of the design or not. */
        public Cell stale(boolean earlier) {
            return new Cell(text, mark, strong, earlier, figure);
        }

        /** This cell as that of a figure. */
        public Cell figure(FigureKey key) {
            return new Cell(text, mark, strong, stale, Optional.of(key));
        }
    }

    /** All rows as tab-separated text with the headings, a line each. */
    public String tabbed() {
        return tabbed(rows);
    }

    /** Some rows as tab-separated text with the headings, a line each. */
    public String tabbed(Collection<Row> some) {
        List<String> lines = new ArrayList<>();
        lines.add(columns.stream().map(column -> plain(column.label())).collect(Collectors.joining("\t")));
        some.forEach(row -> lines.add(row.cells().stream().map(cell -> plain(cell.text())).collect(Collectors.joining("\t"))));
        return String.join("\n", lines) + "\n";
    }

    private static String plain(String text) {
        return text.replaceAll("[\\t\\r\\n]+", " ");
    }
}
