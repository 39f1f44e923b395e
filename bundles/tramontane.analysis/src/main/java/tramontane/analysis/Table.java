package tramontane.analysis;

import java.util.List;

/**
 * A table without a display; the command line, the desktop and reports draw the same.
 *
 * @param title   what it shows
 * @param columns its columns
 * @param rows    its rows, each with one cell per column
 */
public record Table(String title, List<Column> columns, List<List<Cell>> rows) {

    public Table {
        columns = List.copyOf(columns);
        rows = rows.stream().<List<Cell>>map(List::copyOf).toList();
        for (List<Cell> row : rows) {
            if (row.size() != columns.size()) {
                throw new IllegalArgumentException("table " + title + " has " + columns.size()
                        + " columns, but a row of " + row.size() + " cells");
            }
        }
    }

    /**
     * A column.
     *
     * @param label   its heading
     * @param numeric whether its cells are numbers, to be set right-aligned
     */
    public record Column(String label, boolean numeric) {
    }

    /** What stands in a cell: {@link Words}, an {@link Amount}, a {@link Range}, or nothing. */
    public sealed interface Cell permits Amount, Range, Words, Empty {
    }

    /** From one amount to another of the same kind. */
    public record Range(Amount from, Amount to) implements Cell {
    }

    /** Words. */
    public record Words(String text) implements Cell {
    }

    /** Nothing to show. */
    public record Empty() implements Cell {
    }
}
