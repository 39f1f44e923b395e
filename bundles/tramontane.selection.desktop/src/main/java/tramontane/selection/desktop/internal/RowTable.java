package tramontane.selection.desktop.internal;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.HashSet;
import java.util.function.Consumer;
import java.util.function.Function;
import org.eclipse.swt.SWT;
import org.eclipse.swt.graphics.Color;
import org.eclipse.swt.graphics.GC;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Table;
import org.eclipse.swt.widgets.TableColumn;
import org.eclipse.swt.widgets.TableItem;
import tramontane.desktop.Desk;
import tramontane.desktop.Memory;

/**
 * A table of many rows that keeps what is selected by key and the row at its top, whatever comes in. Columns of numbers are set right in
 * digits of one width.
 *
 * @param <R> rows
 */
final class RowTable<R> {

    private static final int PADDING = 18;
    private static final int WIDEST = 320;
    private static final int LOOKED_AT = 200;

    /** How rows are read. */
    interface Reader<R> {

        Object key(R row);

        String text(R row, Column column);

        /** Whether a number stands in a cell, to be set in digits of one width. */
        default boolean isNumber(R row, Column column) {
            return column.numeric();
        }

        /** Whether a cell stands out in bold; a word says so as well. */
        default boolean isBold(R row, Column column) {
            return false;
        }

        /** A colour of its own; what it means is said by a word as well. */
        default Optional<Color> colour(R row) {
            return Optional.empty();
        }
    }

    private final Table table;
    private final Desk desk;
    private final Memory memory;
    private final Reader<R> reader;
    private List<Column> columns = List.of();
    private List<R> rows = List.of();
    private boolean quiet;
    private boolean fitted;

    RowTable(Composite parent, int style, Desk desk, String view, Reader<R> reader) {
        this.desk = desk;
        this.reader = reader;
        memory = desk.memory(view);
        table = new Table(parent, SWT.VIRTUAL | SWT.FULL_SELECTION | style);
        table.setHeaderVisible(true);
        table.addListener(SWT.SetData, event -> fill((TableItem) event.item, event.index));
    }

    Table control() {
        return table;
    }

    List<R> rows() {
        return rows;
    }

    private void fill(TableItem item, int index) {
        if (index >= rows.size()) {
            return;
        }
        R row = rows.get(index);
        for (int i = 0; i < columns.size(); i++) {
            Column column = columns.get(i);
            item.setText(i, reader.text(row, column));
            item.setFont(i, reader.isBold(row, column) ? desk.bold() : reader.isNumber(row, column) ? desk.digits() : null);
        }
        item.setForeground(reader.colour(row).orElse(null));
    }

    /** The columns; headings that are pressed are handed on. */
    void columns(List<Column> changed, Consumer<String> pressed) {
        if (changed.equals(columns)) {
            return;
        }
        boolean same = changed.stream().map(Column::id).toList().equals(columns.stream().map(Column::id).toList());
        columns = List.copyOf(changed);
        if (same) {
            for (int i = 0; i < columns.size(); i++) {
                table.getColumn(i).setText(columns.get(i).label());
                table.getColumn(i).setToolTipText(columns.get(i).help());
            }
            return;
        }
        table.setRedraw(false);
        table.setSortColumn(null);
        Arrays.stream(table.getColumns()).forEach(TableColumn::dispose);
        for (Column column : columns) {
            TableColumn made = new TableColumn(table, column.numeric() ? SWT.RIGHT : SWT.LEFT);
            made.setText(column.label());
            made.setToolTipText(column.help());
            made.setMoveable(true);
            made.setData(column.id());
            made.addListener(SWT.Selection, event -> pressed.accept(column.id()));
            made.addListener(SWT.Resize, event -> {
                if (!quiet && fitted) {
                    memory.put("width." + column.id(), Integer.toString(made.getWidth()));
                }
            });
        }
        fitted = false; // once the rows are there
        table.setRedraw(true);
    }

    /** Which heading carries the arrow. */
    void sorted(Order order) {
        for (TableColumn column : table.getColumns()) {
            if (order.column().equals(column.getData())) {
                table.setSortColumn(column);
                table.setSortDirection(order.descending() ? SWT.DOWN : SWT.UP);
                return;
            }
        }
        table.setSortColumn(null);
    }

    /** Other rows. The row at the top stays at the top, unless the table is at its beginning. */
    void rows(List<R> changed, List<?> selected) {
        boolean fresh = rows.isEmpty();
        int top = table.getTopIndex();
        Optional<Object> anchor = top > 0 && top < rows.size() ? Optional.of(reader.key(rows.get(top))) : Optional.empty();
        rows = List.copyOf(changed);
        quiet = true;
        try {
            table.setRedraw(false);
            table.setItemCount(rows.size());
            table.clearAll();
            select(selected);
            if (fresh && !rows.isEmpty()) {
                fitted = false;
            }
            fit();
            if (!rows.isEmpty()) {
                int there = anchor.map(this::index).orElse(0);
                table.setTopIndex(there >= 0 ? there : Math.min(top, rows.size() - 1));
            }
        } finally {
            table.setRedraw(true);
            quiet = false;
        }
    }

    /** Draws the rows anew, as units or colours have changed. */
    void refresh() {
        table.clearAll();
    }

    private int index(Object key) {
        for (int i = 0; i < rows.size(); i++) {
            if (reader.key(rows.get(i)).equals(key)) {
                return i;
            }
        }
        return -1;
    }

    /** Selects rows by key without telling anybody. */
    void select(List<?> keys) {
        Set<Object> wanted = new HashSet<>(keys);
        int[] indices = new int[rows.size()];
        int count = 0;
        for (int i = 0; i < rows.size() && count < wanted.size(); i++) {
            if (wanted.contains(reader.key(rows.get(i)))) {
                indices[count++] = i;
            }
        }
        int[] some = Arrays.copyOf(indices, count);
        int[] now = table.getSelectionIndices();
        Arrays.sort(now);
        if (!Arrays.equals(now, some)) {
            int top = table.getTopIndex();
            table.deselectAll();
            table.select(some);
            if (top < rows.size()) {
                table.setTopIndex(top);
            }
        }
    }

    <K> List<K> selected(Function<R, K> key) {
        List<K> keys = new ArrayList<>();
        for (int index : table.getSelectionIndices()) {
            if (index < rows.size()) {
                keys.add(key.apply(rows.get(index)));
            }
        }
        return keys;
    }

    /** Widths that hold what is in the columns, once there is something, unless somebody has set them. */
    private void fit() {
        if (fitted || columns.size() != table.getColumnCount()) {
            return;
        }
        boolean before = quiet;
        quiet = true;
        GC gc = new GC(table);
        try {
            for (int i = 0; i < columns.size(); i++) {
                Column column = columns.get(i);
                gc.setFont(table.getFont());
                int widest = gc.textExtent(column.label()).x + PADDING + 12;
                gc.setFont(column.numeric() ? desk.digits() : table.getFont());
                for (int row = 0; row < Math.min(LOOKED_AT, rows.size()); row++) {
                    widest = Math.max(widest, gc.textExtent(reader.text(rows.get(row), column)).x + PADDING);
                }
                table.getColumn(i).setWidth(memory.get("width." + column.id()).map(RowTable::number).filter(width -> width > 0).orElse(Math.min(WIDEST, widest)));
            }
        } finally {
            gc.dispose();
            quiet = before;
        }
        fitted = !rows.isEmpty();
    }

    private static int number(String text) {
        try {
            return Integer.parseInt(text);
        } catch (NumberFormatException broken) {
            return 0;
        }
    }

    /** What is selected as lines with tabs, with the headings. */
    String copied() {
        StringBuilder text = new StringBuilder(String.join("\t", columns.stream().map(Column::label).toList()));
        for (R row : this.<R>selected(each -> each)) {
            text.append('\n').append(String.join("\t", columns.stream().map(column -> reader.text(row, column)).toList()));
        }
        return text.toString();
    }
}
