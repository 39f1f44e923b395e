package tramontane.desktop.internal.views;

import java.util.Arrays;
import java.util.function.Consumer;
import java.util.function.Function;
import org.eclipse.swt.SWT;
import org.eclipse.swt.custom.ControlEditor;
import org.eclipse.swt.custom.TableCursor;
import org.eclipse.swt.dnd.Clipboard;
import org.eclipse.swt.dnd.TextTransfer;
import org.eclipse.swt.graphics.Font;
import org.eclipse.swt.graphics.GC;
import org.eclipse.swt.layout.FillLayout;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Event;
import org.eclipse.swt.widgets.Table;
import org.eclipse.swt.widgets.TableColumn;
import org.eclipse.swt.widgets.TableItem;
import org.eclipse.swt.widgets.Text;
import tramontane.desktop.Desk;
import tramontane.desktop.Palette;
import tramontane.desktop.internal.pages.CurveTable;

/** Lists of numbers that belong together, to be edited cell by cell. What cannot be taken over yet stays in it. */
final class CurveGrid extends Composite {

    private static final int MOST_ROWS = 12;
    private static final int ROOM = 16;

    private final Table table;
    private final Font digits;
    private final Font bold;
    private final TableCursor cursor;
    private final ControlEditor editor;
    private final Function<CurveTable, String> take;
    private final Consumer<String> say;
    private CurveTable shown;

    /**
     * @param take takes a changed table over and gives why it cannot be; empty text where it was
     * @param say  shows why a cell or the table cannot stand; empty text for nothing
     */
    CurveGrid(Composite parent, Desk desk, Palette palette, CurveTable first, Function<CurveTable, String> take,
            Consumer<String> say) {
        super(parent, SWT.NONE);
        this.take = take;
        this.say = say;
        setLayout(new FillLayout());
        table = new Table(this, SWT.FULL_SELECTION | SWT.V_SCROLL | SWT.H_SCROLL | SWT.BORDER);
        table.setHeaderVisible(true);
        table.setLinesVisible(true);
        digits = desk.digits();
        bold = desk.bold();
        for (Composite each : new Composite[] {this, table}) {
            each.setBackground(palette.surface());
            each.setForeground(palette.text());
        }
        table.setHeaderBackground(palette.background());
        table.setHeaderForeground(palette.text());
        for (CurveTable.Column column : first.columns()) {
            TableColumn head = new TableColumn(table, SWT.RIGHT);
            head.setToolTipText(column.label());
        }
        cursor = new TableCursor(table, SWT.NONE);
        cursor.setBackground(palette.accent());
        cursor.setForeground(palette.surface());
        cursor.setFont(digits);
        editor = new ControlEditor(cursor);
        editor.grabHorizontal = true;
        editor.grabVertical = true;
        cursor.addListener(SWT.DefaultSelection, event -> edit(""));
        cursor.addListener(SWT.MouseDown, event -> edit(""));
        cursor.addListener(SWT.KeyDown, this::key);
        table.addListener(SWT.Resize, event -> widths());
        shown = first;
        fill();
    }

    /** Shows a table. */
    void show(CurveTable other) {
        if (!other.equals(shown)) {
            shown = other;
            fill();
        }
    }

    private void fill() {
        table.setRedraw(false);
        int rows = shown.rows() + 1;
        if (table.getItemCount() != rows) {
            table.setItemCount(rows);
        }
        for (int column = 0; column < shown.columns().size(); column++) {
            CurveTable.Column each = shown.columns().get(column);
            String head = each.label() + (each.unit().isEmpty() ? "" : " [" + each.unit() + "]");
            if (!table.getColumn(column).getText().equals(head)) {
                table.getColumn(column).setText(head);
            }
            for (int row = 0; row < rows; row++) {
                TableItem item = table.getItem(row);
                item.setFont(digits);
                String text = shown.cell(row, column);
                if (!item.getText(column).equals(text)) {
                    item.setText(column, text);
                }
            }
        }
        table.setRedraw(true);
        cursor.redraw();
    }

    private void widths() {
        int[] widths = new int[table.getColumnCount()];
        GC gc = new GC(table);
        try {
            gc.setFont(bold); // as some platforms set headings
            for (int i = 0; i < widths.length; i++) {
                widths[i] = gc.textExtent(table.getColumn(i).getText()).x + ROOM;
            }
        } finally {
            gc.dispose();
        }
        int left = Math.max(0, table.getClientArea().width - Arrays.stream(widths).sum());
        for (int i = 0; i < widths.length; i++) {
            int width = widths[i] + left / widths.length;
            if (table.getColumn(i).getWidth() != width) {
                table.getColumn(i).setWidth(width);
            }
        }
    }

    /** Rows that are to be seen without scrolling. */
    int height() {
        return table.getHeaderHeight() + table.getItemHeight() * Math.min(MOST_ROWS, shown.rows() + 1) + 4;
    }

    private void key(Event event) {
        boolean plain = (event.stateMask & (SWT.MOD1 | SWT.MOD3)) == 0;
        if (event.keyCode == SWT.F2) {
            edit("");
        } else if (event.keyCode == SWT.DEL && (event.stateMask & SWT.MOD1) != 0) {
            if (row() < shown.rows()) {
                changed(shown.without(row()));
            }
        } else if (event.keyCode == SWT.DEL || event.keyCode == SWT.BS) {
            type("");
        } else if ((event.stateMask & SWT.MOD1) != 0 && event.keyCode == 'v') {
            paste();
        } else if (plain && (Character.isDigit(event.character) || event.character == '-' || event.character == '.')) {
            edit(Character.toString(event.character));
        } else {
            return;
        }
        event.doit = false;
    }

    private int row() {
        return cursor.getRow() == null ? 0 : table.indexOf(cursor.getRow());
    }

    private void edit(String begun) {
        int column = cursor.getColumn();
        if (cursor.getRow() == null || !shown.columns().get(column).isEditable()) {
            return;
        }
        Text text = new Text(cursor, SWT.RIGHT);
        text.setFont(digits);
        text.setText(begun.isEmpty() ? shown.cell(row(), column) : begun);
        if (begun.isEmpty()) {
            text.selectAll();
        } else {
            text.setSelection(begun.length());
        }
        text.addListener(SWT.KeyDown, event -> {
            if (event.keyCode == SWT.ESC) {
                event.doit = false;
                end(text);
            } else if (event.keyCode == SWT.CR || event.keyCode == SWT.KEYPAD_CR) {
                event.doit = false;
                if (type(text.getText())) {
                    end(text);
                    go(row() + 1, column);
                }
            }
        });
        text.addListener(SWT.Traverse, event -> {
            if (event.detail == SWT.TRAVERSE_TAB_NEXT || event.detail == SWT.TRAVERSE_TAB_PREVIOUS) {
                event.doit = false;
                int next = column + (event.detail == SWT.TRAVERSE_TAB_NEXT ? 1 : -1);
                if (type(text.getText())) {
                    end(text);
                    boolean over = next >= shown.columns().size() || !shown.columns().get(Math.max(0, next)).isEditable();
                    go(over ? row() + 1 : row(), over ? 0 : Math.max(0, next));
                }
            }
        });
        text.addListener(SWT.FocusOut, event -> {
            if (!text.isDisposed() && type(text.getText())) {
                end(text);
            }
        });
        editor.setEditor(text);
        text.setFocus();
    }

    private void end(Text text) {
        if (!text.isDisposed()) {
            boolean had = text.isFocusControl();
            text.setData(Boolean.TRUE);
            editor.setEditor(null);
            text.dispose();
            if (had) {
                cursor.setFocus();
            }
        }
    }

    private void go(int row, int column) {
        if (row < table.getItemCount()) {
            table.setSelection(row);
            cursor.setSelection(row, column);
        }
        cursor.setFocus();
    }

    /** Types into the cell of the cursor; false where the text must stay there. */
    private boolean type(String text) {
        CurveTable.Edited edited = shown.type(row(), cursor.getColumn(), text);
        if (edited.table().isEmpty()) {
            say.accept(edited.problem());
            return false;
        }
        changed(edited.table().get());
        return true;
    }

    private void paste() {
        Clipboard clipboard = new Clipboard(getDisplay());
        try {
            if (clipboard.getContents(TextTransfer.getInstance()) instanceof String text) {
                CurveTable.Edited edited = shown.paste(row(), cursor.getColumn(), text);
                if (edited.table().isPresent()) {
                    changed(edited.table().get());
                } else {
                    say.accept(edited.problem());
                }
            }
        } finally {
            clipboard.dispose();
        }
    }

    private void changed(CurveTable other) {
        if (other.equals(shown)) {
            say.accept("");
            return;
        }
        shown = other;
        String problem = take.apply(other);
        fill();
        say.accept(problem);
    }
}
