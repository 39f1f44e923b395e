package tramontane.cli.terminal;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.function.UnaryOperator;
import java.util.stream.Stream;
import tramontane.analysis.Amount;
import tramontane.analysis.Table;
import tramontane.physics.units.UnitSystem;

/**
 * Tables in characters of equal width.
 *
 * <p>A column of quantities in one unit has the unit in its heading, a table of one unit in its title, otherwise the unit
 * stands in each cell. What is too wide is cut into several tables, the first columns repeated in each.
 */
public final class TextTable {

    private static final String GAP = "  ";
    private static final int WIDEST_CELL = 30;
    private static final int NARROWEST_WORDS = 14;
    private static final int USUAL_HEADING = 14;

    private final List<String> headings = new ArrayList<>();
    private final List<List<String>> cells = new ArrayList<>();
    private final Table table;
    private final int keys;
    private final int width;
    private String title;

    private TextTable(Table table, int keys, int width) {
        this.table = table;
        this.keys = keys;
        this.width = width;
        this.title = table.title();
    }

    /**
     * The lines of a table, the title first.
     *
     * @param table the table
     * @param keys  how many columns at its left say what a row is about; of two, the first is left out where it repeats
     * @param width columns that a line may have
     * @param units how quantities are shown
     * @param shown how the reader's terminal spells a text
     */
    public static List<String> lines(Table table, int keys, int width, UnitSystem units, UnaryOperator<String> shown) {
        TextTable text = new TextTable(table, keys, width);
        text.fill(units, shown);
        return text.draw();
    }

    private void fill(UnitSystem units, UnaryOperator<String> shown) {
        List<Optional<String>> unitOfColumn = new ArrayList<>();
        for (int column = 0; column < table.columns().size(); column++) {
            unitOfColumn.add(unit(column, units));
        }
        List<String> named = unitOfColumn.stream().flatMap(Optional::stream).distinct().toList();
        long numeric = unitOfColumn.stream().filter(Optional::isPresent).count();
        boolean inTitle = named.size() == 1 && keys > 0 && numeric > 1 && numeric == table.columns().size() - keys;
        title = shown.apply(title + (inTitle ? bracket(named.getFirst()) : ""));
        for (int column = 0; column < table.columns().size(); column++) {
            String unit = unitOfColumn.get(column).orElse("");
            headings.add(shown.apply(table.columns().get(column).label() + (inTitle ? "" : bracket(unit))));
        }
        for (List<Table.Cell> row : table.rows()) {
            List<String> texts = new ArrayList<>();
            for (int column = 0; column < row.size(); column++) {
                texts.add(shown.apply(text(row.get(column), unitOfColumn.get(column).isPresent(), units)));
            }
            cells.add(texts);
        }
        if (keys == 2) {
            blankRepeated();
        }
    }

    private void blankRepeated() {
        String above = "";
        for (List<String> row : cells) {
            String here = row.getFirst();
            if (here.equals(above)) {
                row.set(0, "");
            }
            above = here;
        }
    }

    private static String bracket(String unit) {
        return unit.isEmpty() ? "" : " [" + unit + "]";
    }

    /** The unit that every quantity of a column has; empty where there are none or several. */
    private Optional<String> unit(int column, UnitSystem units) {
        List<String> all = table.rows().stream().map(row -> row.get(column)).flatMap(cell -> switch (cell) {
            case Amount amount -> Stream.of(amount);
            case Table.Range range -> Stream.of(range.from(), range.to());
            case Table.Words words -> Stream.<Amount>of();
            case Table.Empty empty -> Stream.<Amount>of();
        }).map(amount -> Numbers.parts(amount.si(), amount.quantity(), units).unit())
                .distinct().toList();
        return all.size() == 1 ? Optional.of(all.getFirst()) : Optional.empty();
    }

    private static String text(Table.Cell cell, boolean unitAbove, UnitSystem units) {
        return switch (cell) {
            case Table.Words words -> words.text();
            case Table.Range range -> text(range.from(), unitAbove, units) + " to " + text(range.to(), unitAbove, units);
            case Amount amount -> unitAbove ? Numbers.parts(amount.si(), amount.quantity(), units).number()
                    : Numbers.together(Numbers.text(amount.si(), amount.quantity(), units));
            case Table.Empty empty -> "";
        };
    }

    private List<String> draw() {
        int[] widths = widths();
        List<String> lines = new ArrayList<>();
        int from = Math.min(keys, widths.length);
        int parts = 0;
        do {
            int to = fitting(widths, from);
            boolean whole = from == keys && to == widths.length;
            parts++;
            if (parts > 1) {
                lines.add("");
            }
            lines.addAll(Wrapping.lines(whole ? title : title + ", " + part(from, to), width));
            lines.addAll(part(widths, columns(from, to)));
            from = to;
        } while (from < widths.length);
        return lines;
    }

    /** The width of each column: what it needs if all fit, made narrower from the widest on if that makes all fit. */
    private int[] widths() {
        int[] widths = new int[headings.size()];
        int[] least = new int[headings.size()];
        for (int column = 0; column < widths.length; column++) {
            widths[column] = columnWidth(column, width);
            boolean numeric = table.columns().get(column).numeric();
            least[column] = Math.min(widths[column], Math.max(numeric ? 1 : NARROWEST_WORDS, longestWord(column)));
        }
        while (Arrays.stream(widths).sum() + GAP.length() * (widths.length - 1) > width) {
            int widest = -1;
            for (int column = 0; column < widths.length; column++) {
                if (widths[column] > least[column] && (widest < 0 || widths[column] > widths[widest])) {
                    widest = column;
                }
            }
            if (widest < 0) {
                return cutWidths();
            }
            widths[widest]--;
        }
        for (int column = 0; column < widths.length; column++) {
            widths[column] = broken(column, widths[column]);
        }
        return widths;
    }

    /** What a column really needs once its texts are broken to a width. */
    private int broken(int column, int room) {
        return Stream.concat(Stream.of(headings.get(column)), cells.stream().map(row -> row.get(column)))
                .flatMap(text -> Wrapping.lines(text, room).stream()).mapToInt(Wrapping::width).max().orElse(room);
    }

    private int[] cutWidths() {
        int[] widths = new int[headings.size()];
        for (int column = 0; column < widths.length; column++) {
            widths[column] = columnWidth(column, column < keys ? widestKey() : widestCell());
        }
        return widths;
    }

    private int longestWord(int column) {
        return Stream.concat(Stream.of(headings.get(column)), cells.stream().map(row -> row.get(column)))
                .flatMap(text -> Arrays.stream(text.split(" "))).mapToInt(Wrapping::width).max().orElse(0);
    }

    private String part(int from, int to) {
        int all = headings.size() - keys;
        int first = from - keys + 1;
        int last = to - keys;
        return (first == last ? "column " + first : "columns " + first + " to " + last) + " of " + all;
    }

    private int columnWidth(int column, int widest) {
        int cell = cells.stream().mapToInt(row -> Wrapping.width(row.get(column))).max().orElse(0);
        String heading = headings.get(column);
        int word = Arrays.stream(heading.split(" ")).mapToInt(Wrapping::width).max().orElse(0);
        int room = Math.clamp(Math.max(cell, Math.max(word, Math.min(Wrapping.width(heading), USUAL_HEADING))), 1, widest);
        return Math.max(1, broken(column, room));
    }

    private int widestCell() {
        return Math.clamp(width / 2, 1, WIDEST_CELL);
    }

    /** Two fifths of the width for all key columns together, and always room for one cell beside them. */
    private int widestKey() {
        int wanted = Math.max(WIDEST_CELL, width * 2 / 5) / keys + 4;
        return Math.max(1, Math.min(wanted, (width - widestCell()) / keys - GAP.length()));
    }

    /** The first column that does not fit any more behind the key columns; at least one is always taken. */
    private int fitting(int[] widths, int from) {
        int used = 0;
        for (int column = 0; column < keys && column < widths.length; column++) {
            used += widths[column] + GAP.length();
        }
        int to = from;
        while (to < widths.length && (to == from || used + widths[to] <= width)) {
            used += widths[to] + GAP.length();
            to++;
        }
        return to;
    }

    private List<Integer> columns(int from, int to) {
        List<Integer> columns = new ArrayList<>();
        for (int column = 0; column < Math.min(keys, headings.size()); column++) {
            columns.add(column);
        }
        for (int column = from; column < to; column++) {
            columns.add(column);
        }
        return columns;
    }

    private List<String> part(int[] widths, List<Integer> columns) {
        List<String> lines = new ArrayList<>(row(headings, widths, columns, true));
        StringBuilder rule = new StringBuilder();
        for (int column : columns) {
            rule.append(rule.isEmpty() ? "" : GAP).append("-".repeat(widths[column]));
        }
        lines.add(rule.toString());
        for (List<String> texts : cells) {
            lines.addAll(row(texts, widths, columns, false));
        }
        return lines;
    }

    private List<String> row(List<String> texts, int[] widths, List<Integer> columns, boolean heading) {
        List<List<String>> wrapped = columns.stream()
                .map(column -> Wrapping.lines(texts.get(column), widths[column])).toList();
        int height = wrapped.stream().mapToInt(List::size).max().orElse(0);
        List<String> lines = new ArrayList<>();
        for (int line = 0; line < height; line++) {
            StringBuilder drawn = new StringBuilder();
            for (int i = 0; i < columns.size(); i++) {
                int column = columns.get(i);
                // headings stand on the rule, cells hang from the top
                int at = heading ? line - height + wrapped.get(i).size() : line;
                String text = at >= 0 && at < wrapped.get(i).size() ? wrapped.get(i).get(at) : "";
                String space = " ".repeat(widths[column] - Wrapping.width(text));
                drawn.append(i == 0 ? "" : GAP)
                        .append(table.columns().get(column).numeric() ? space + text : text + space);
            }
            lines.add(drawn.toString().stripTrailing());
        }
        return lines;
    }
}
