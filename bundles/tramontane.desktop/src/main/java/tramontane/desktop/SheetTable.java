package tramontane.desktop;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.function.BiConsumer;
import java.util.function.BiFunction;
import java.util.function.Consumer;
import org.eclipse.swt.SWT;
import org.eclipse.swt.dnd.Clipboard;
import org.eclipse.swt.dnd.TextTransfer;
import org.eclipse.swt.dnd.Transfer;
import org.eclipse.swt.graphics.Color;
import org.eclipse.swt.graphics.GC;
import org.eclipse.swt.graphics.Image;
import org.eclipse.swt.graphics.Point;
import org.eclipse.swt.graphics.Rectangle;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Event;
import org.eclipse.swt.widgets.Table;
import org.eclipse.swt.widgets.TableColumn;
import org.eclipse.swt.widgets.TableItem;
import tramontane.desktop.internal.icons.Images;
import tramontane.desktop.internal.icons.Marks;

/**
 * A table that shows a {@link Sheet} and keeps its place while that changes: rows that stay are the same rows, only cells that differ are
 * set, selection and scroll position follow the rows' keys. Arrow keys go from cell to cell. Ctrl+click on a figure asks where it comes
 * from. Rows are made as they come into sight, so that many cost no more than few.
 */
public final class SheetTable {

    private static final int WIDEST = 420;
    private static final int NARROWEST = 48;
    /** Room beside a text within its cell. */
    private static final int ROOM = 14;
    private static final int MARK = 20;
    private static final int EDGE = 4;
    private static final int FILLER = 16;
    /** How far the background of a selected row and of the column in front moves from the surface to the accent. */
    private static final double SELECTED = 0.22;
    private static final double FRONT = 0.07;

    private static final Icon IN_FRONT = Icon.read(SheetTable.class, "/tramontane/desktop/icons/front.svg");

    private final Desk desk;
    private final Optional<Memory> memory;
    private final Table table;
    private final Map<Color, Images> images = new HashMap<>();
    private final Map<String, Integer> longest = new HashMap<>();
    private final Set<String> chosenWidths = new HashSet<>();
    private final BitSet filled = new BitSet();
    private Sheet sheet = Sheet.EMPTY;
    private Palette palette;
    private Color selected;
    private Color front;
    private int column;
    private boolean sizing;
    private String hovered = "";
    private BiConsumer<Sheet.Row, Integer> opened = (row, at) -> { };
    private BiConsumer<Sheet.Row, Integer> pressed = (row, at) -> { };
    private BiConsumer<Sheet.Row, Integer> moved = (row, at) -> { };
    private BiFunction<Sheet.Row, Integer, String> hover = (row, at) -> row.cells().get(at).text();
    private Consumer<Sheet.Column> headed = head -> { };

    /**
     * An empty table.
     *
     * @param parent where it stands
     * @param desk   the window
     * @param style  {@link SWT#SINGLE} or {@link SWT#MULTI}
     * @param memory where the widths of columns are kept that somebody has chosen; empty to forget them
     */
    public SheetTable(Composite parent, Desk desk, int style, Optional<Memory> memory) {
        this.desk = desk;
        this.memory = memory;
        palette = desk.scene().palette();
        table = new Table(parent, SWT.VIRTUAL | SWT.FULL_SELECTION | style);
        table.setHeaderVisible(true);
        table.addListener(SWT.SetData, event -> fill((TableItem) event.item, event.index));
        table.addListener(SWT.EraseItem, this::erase);
        table.addListener(SWT.PaintItem, this::paint);
        table.addListener(SWT.Selection, event -> row(table.indexOf((TableItem) event.item)).ifPresent(row -> {
            table.redraw();
            moved.accept(row, column);
        }));
        table.addListener(SWT.DefaultSelection, event -> selection().ifPresent(row -> opened.accept(row, column)));
        table.addListener(SWT.KeyDown, this::key);
        table.addListener(SWT.MouseDown, this::press);
        table.addListener(SWT.MouseUp, this::release);
        table.addListener(SWT.MouseMove, this::hover);
        table.addListener(SWT.FocusIn, event -> table.redraw());
        table.addListener(SWT.FocusOut, event -> table.redraw());
        table.addListener(SWT.Dispose, event -> images.values().forEach(Images::dispose));
        colour();
    }

    /** The widget. */
    public Table control() {
        return table;
    }

    /** What is shown. */
    public Sheet sheet() {
        return sheet;
    }

    /** Does something with the cell on which somebody presses Enter or clicks twice; columns are counted from 0. */
    public SheetTable onOpen(BiConsumer<Sheet.Row, Integer> listener) {
        opened = listener;
        return this;
    }

    /** Does something with the cell that is clicked. */
    public SheetTable onPress(BiConsumer<Sheet.Row, Integer> listener) {
        pressed = listener;
        return this;
    }

    /** Does something with the cell to which keys or a click have moved. */
    public SheetTable onMove(BiConsumer<Sheet.Row, Integer> listener) {
        moved = listener;
        return this;
    }

    /** What hovering over a cell tells; asked when the pointer comes there. */
    public SheetTable onHover(BiFunction<Sheet.Row, Integer, String> text) {
        hover = text;
        return this;
    }

    /** Does something when a heading is clicked. */
    public SheetTable onHead(Consumer<Sheet.Column> listener) {
        headed = listener;
        return this;
    }

    /**
     * Shows a sheet.
     *
     * @param next    what to show
     * @param colours the colours
     */
    public void show(Sheet next, Palette colours) {
        boolean recoloured = colours != palette;
        if (recoloured) {
            palette = colours;
            images.values().forEach(Images::dispose);
            images.clear();
            colour();
        }
        Sheet before = sheet;
        sheet = next;
        boolean sameColumns = keys(before).equals(keys(next));
        boolean sameRows = before.rows().size() == next.rows().size();
        for (int i = 0; sameRows && i < next.rows().size(); i++) {
            sameRows = before.rows().get(i).key().equals(next.rows().get(i).key());
        }
        if (sameColumns && sameRows && !recoloured) {
            heads(before);
            change(before);
        } else {
            renew(before, sameColumns);
        }
        widths();
    }

    private static List<String> keys(Sheet sheet) {
        return sheet.columns().stream().map(Sheet.Column::key).toList();
    }

    /** Sets what differs in rows that have been made; the others are asked for when they come into sight. */
    private void change(Sheet before) {
        boolean changed = false;
        for (int i = filled.nextSetBit(0); i >= 0; i = filled.nextSetBit(i + 1)) {
            List<Sheet.Cell> old = before.rows().get(i).cells();
            List<Sheet.Cell> cells = sheet.rows().get(i).cells();
            if (old.equals(cells)) {
                continue;
            }
            changed = true;
            TableItem item = table.getItem(i);
            for (int at = 0; at < cells.size(); at++) {
                if (!old.get(at).equals(cells.get(at))) {
                    set(item, at, cells.get(at));
                }
            }
        }
        if (changed) {
            // rows that are drawn anew one by one are drawn over what stood there
            table.redraw();
        }
    }

    private void renew(Sheet before, boolean sameColumns) {
        Set<Object> chosen = new HashSet<>();
        for (int index : table.getSelectionIndices()) {
            if (index < before.rows().size()) {
                chosen.add(before.rows().get(index).key());
            }
        }
        int topIndex = table.getTopIndex();
        Optional<Object> top = topIndex > 0 && topIndex < before.rows().size() ? Optional.of(before.rows().get(topIndex).key()) : Optional.empty();
        String columnKey = column < before.columns().size() ? before.columns().get(column).key() : "";
        table.setRedraw(false);
        try {
            table.deselectAll();
            filled.clear();
            if (!sameColumns) {
                table.setItemCount(0);
                columns(before);
            } else {
                heads(before);
            }
            table.setItemCount(sheet.rows().size());
            table.clearAll();
            List<Integer> selection = new ArrayList<>();
            for (int i = 0; i < sheet.rows().size(); i++) {
                Object key = sheet.rows().get(i).key();
                if (chosen.contains(key)) {
                    selection.add(i);
                }
                if (top.isPresent() && top.get().equals(key)) {
                    table.setTopIndex(i);
                }
            }
            if (!selection.isEmpty()) {
                table.select(selection.stream().mapToInt(Integer::intValue).toArray());
            }
            column = Math.max(0, keys(sheet).indexOf(columnKey));
        } finally {
            table.setRedraw(true);
        }
    }

    /** Columns that stay keep their widths. */
    private void columns(Sheet before) {
        Map<String, Integer> widths = new LinkedHashMap<>();
        for (int i = 0; i < before.columns().size(); i++) {
            widths.put(before.columns().get(i).key(), table.getColumn(i).getWidth());
        }
        sizing = true;
        for (TableColumn old : table.getColumns()) {
            old.dispose();
        }
        longest.keySet().retainAll(keys(sheet));
        for (int i = 0; i < sheet.columns().size(); i++) {
            Sheet.Column each = sheet.columns().get(i);
            TableColumn made = new TableColumn(table, each.digits() ? SWT.RIGHT : SWT.LEFT);
            int at = i;
            head(made, each);
            Optional<Integer> remembered = memory.flatMap(kept -> kept.get("width." + each.key())).flatMap(SheetTable::width);
            remembered.ifPresent(width -> chosenWidths.add(each.key()));
            made.setWidth(remembered.orElse(widths.getOrDefault(each.key(), NARROWEST)));
            made.addListener(SWT.Selection, event -> headed.accept(sheet.columns().get(at)));
            made.addListener(SWT.Resize, event -> {
                if (!sizing && at < sheet.columns().size()) {
                    String key = sheet.columns().get(at).key();
                    chosenWidths.add(key);
                    memory.ifPresent(kept -> kept.put("width." + key, Integer.toString(made.getWidth())));
                }
            });
        }
        // GTK stretches the last column, which must not be one of numbers set right
        TableColumn filler = new TableColumn(table, SWT.LEFT);
        filler.setResizable(false);
        filler.setWidth(FILLER);
        sizing = false;
    }

    private static Optional<Integer> width(String text) {
        try {
            return Optional.of(Integer.parseInt(text)).filter(width -> width > 10 && width < 4000);
        } catch (NumberFormatException other) {
            return Optional.empty();
        }
    }

    private void heads(Sheet before) {
        for (int i = 0; i < sheet.columns().size(); i++) {
            if (!sheet.columns().get(i).equals(before.columns().get(i))) {
                head(table.getColumn(i), sheet.columns().get(i));
                if (sheet.columns().get(i).front() && !before.columns().get(i).front()) {
                    TableColumn shown = table.getColumn(i);
                    // where columns change their widths with it, the table knows its place only afterwards
                    table.getDisplay().asyncExec(() -> {
                        if (!shown.isDisposed()) {
                            table.showColumn(shown);
                        }
                    });
                }
                table.redraw();
            }
        }
    }

    private void head(TableColumn made, Sheet.Column each) {
        made.setText(each.label());
        made.setImage(each.front() ? image(palette.accent(), IN_FRONT) : null);
        made.setToolTipText(each.hover().isEmpty() ? null : each.hover());
    }

    private Image image(Color colour, Icon icon) {
        return images.computeIfAbsent(colour, ink -> new Images(table.getDisplay(), ink)).of(icon);
    }

    private void colour() {
        table.setBackground(palette.surface());
        table.setForeground(palette.text());
        table.setHeaderBackground(palette.background());
        table.setHeaderForeground(palette.text());
        selected = between(palette.surface(), palette.accent(), SELECTED);
        front = between(palette.surface(), palette.accent(), FRONT);
    }

    private static Color between(Color from, Color to, double share) {
        return new Color((int) Math.round(from.getRed() + share * (to.getRed() - from.getRed())),
                (int) Math.round(from.getGreen() + share * (to.getGreen() - from.getGreen())),
                (int) Math.round(from.getBlue() + share * (to.getBlue() - from.getBlue())));
    }

    private void fill(TableItem item, int index) {
        if (index < sheet.rows().size()) {
            List<Sheet.Cell> cells = sheet.rows().get(index).cells();
            for (int at = 0; at < cells.size(); at++) {
                set(item, at, cells.get(at));
            }
            filled.set(index);
        }
    }

    private void set(TableItem item, int at, Sheet.Cell cell) {
        item.setText(at, cell.text());
        item.setForeground(at, cell.stale() ? palette.stale() : null);
        item.setFont(at, cell.strong() ? desk.bold() : sheet.columns().get(at).digits() ? desk.digits() : null);
    }

    /** Columns grow with the longest text they have held and never shrink, so that nothing moves to and fro. */
    private void widths() {
        GC gc = null;
        try {
            for (int at = 0; at < sheet.columns().size(); at++) {
                Sheet.Column each = sheet.columns().get(at);
                String text = "";
                boolean mark = false;
                boolean bold = false;
                for (Sheet.Row row : sheet.rows()) {
                    Sheet.Cell cell = row.cells().get(at);
                    text = cell.text().length() > text.length() ? cell.text() : text;
                    bold |= cell.strong();
                    mark |= cell.mark().isPresent();
                }
                int length = Math.max(text.length(), each.label().length()) + (mark ? 1 : 0);
                if (chosenWidths.contains(each.key()) || longest.getOrDefault(each.key(), -1) >= length) {
                    continue;
                }
                longest.put(each.key(), length);
                gc = gc == null ? new GC(table) : gc;
                gc.setFont(desk.bold());
                int head = gc.textExtent(each.label()).x + MARK;
                gc.setFont(bold ? desk.bold() : each.digits() ? desk.digits() : table.getFont());
                int width = Math.clamp(Math.max(head, gc.textExtent(text).x + (mark ? MARK : 0)) + ROOM, NARROWEST, WIDEST);
                if (width > table.getColumn(at).getWidth()) {
                    sizing = true;
                    table.getColumn(at).setWidth(width);
                    sizing = false;
                }
            }
        } finally {
            if (gc != null) {
                gc.dispose();
            }
        }
    }

    // --- drawing -----------------------------------------------------------------------------------------------------------

    private void erase(Event event) {
        boolean chosen = (event.detail & SWT.SELECTED) != 0;
        boolean marked = event.index < sheet.columns().size() && sheet.columns().get(event.index).front();
        event.detail &= ~(SWT.SELECTED | SWT.HOT);
        if (chosen || marked) {
            event.gc.setBackground(chosen ? selected : front);
            event.gc.fillRectangle(event.x, event.y, event.width, event.height);
            event.detail &= ~SWT.BACKGROUND;
        }
        Optional<Sheet.Cell> cell = cell(event);
        event.gc.setForeground(cell.filter(Sheet.Cell::stale).isPresent() ? palette.stale() : palette.text());
        // on GTK only one column of a table can have images of the item, so that a mark and its text are drawn here
        if (cell.flatMap(Sheet.Cell::mark).isPresent()) {
            event.detail &= ~SWT.FOREGROUND;
        }
    }

    private Optional<Sheet.Cell> cell(Event event) {
        return row(table.indexOf((TableItem) event.item)).map(Sheet.Row::cells).filter(cells -> event.index < cells.size())
                .map(cells -> cells.get(event.index));
    }

    private void paint(Event event) {
        cell(event).filter(cell -> cell.mark().isPresent()).ifPresent(cell -> {
            Rectangle bounds = ((TableItem) event.item).getBounds(event.index);
            Image mark = desk.image(Marks.of(cell.mark().get()), cell.stale() ? palette.stale() : palette.of(cell.mark().get()));
            event.gc.drawImage(mark, bounds.x + EDGE, bounds.y + (bounds.height - Marks.SIDE) / 2);
            event.gc.setFont(cell.strong() ? desk.bold() : table.getFont());
            event.gc.setForeground(cell.stale() ? palette.stale() : palette.text());
            int height = event.gc.getFontMetrics().getHeight();
            event.gc.drawText(cell.text(), bounds.x + EDGE + MARK, bounds.y + (bounds.height - height) / 2, SWT.DRAW_TRANSPARENT);
        });
        frame(event);
    }

    private void frame(Event event) {
        if (event.index == column && table.isSelected(table.indexOf((TableItem) event.item))) {
            Rectangle cell = ((TableItem) event.item).getBounds(event.index);
            event.gc.setForeground(table.isFocusControl() ? palette.accent() : palette.line());
            event.gc.setLineWidth(table.isFocusControl() ? 2 : 1);
            event.gc.drawRectangle(cell.x + 1, cell.y + 1, cell.width - 3, cell.height - 3);
        }
    }

    // --- keys and mouse ----------------------------------------------------------------------------------------------------

    private void key(Event event) {
        if ((event.stateMask & SWT.MODIFIER_MASK) != 0) {
            return;
        }
        int to = event.keyCode == SWT.ARROW_LEFT ? column - 1 : event.keyCode == SWT.ARROW_RIGHT ? column + 1 : -1;
        if (event.keyCode == SWT.ARROW_LEFT || event.keyCode == SWT.ARROW_RIGHT) {
            event.doit = false;
            if (to >= 0 && to < sheet.columns().size()) {
                column = to;
                table.showColumn(table.getColumn(to));
                table.redraw();
                selection().ifPresent(row -> moved.accept(row, column));
            }
        }
    }

    private record Place(int row, int column) {
    }

    private Optional<Place> at(int x, int y) {
        TableItem item = table.getItem(new Point(x, y));
        if (item != null) {
            for (int i = 0; i < sheet.columns().size(); i++) {
                if (item.getBounds(i).contains(x, y)) {
                    return Optional.of(new Place(table.indexOf(item), i));
                }
            }
        }
        return Optional.empty();
    }

    private void press(Event event) {
        if (event.button == 1 || event.button == 3) {
            at(event.x, event.y).ifPresent(place -> {
                column = place.column();
                table.redraw();
            });
        }
    }

    private void release(Event event) {
        if (event.button == 1) {
            at(event.x, event.y).filter(place -> place.row() < sheet.rows().size()).ifPresent(place -> {
                Sheet.Row row = sheet.rows().get(place.row());
                if ((event.stateMask & SWT.MOD1) != 0) {
                    row.cells().get(place.column()).figure().ifPresent(desk::explain);
                } else if ((event.stateMask & SWT.MOD2) == 0) {
                    pressed.accept(row, place.column());
                }
            });
        }
    }

    private void hover(Event event) {
        String text = at(event.x, event.y).filter(place -> place.row() < sheet.rows().size())
                .map(place -> hover.apply(sheet.rows().get(place.row()), place.column())).orElse("");
        if (!text.equals(hovered)) {
            hovered = text;
            // an ampersand would be taken for a mnemonic
            table.setToolTipText(text.isEmpty() ? null : text.replace("&", "&&"));
        }
    }

    // --- what is chosen ----------------------------------------------------------------------------------------------------

    private Optional<Sheet.Row> row(int index) {
        return index >= 0 && index < sheet.rows().size() ? Optional.of(sheet.rows().get(index)) : Optional.empty();
    }

    /** The first selected row. */
    public Optional<Sheet.Row> selection() {
        return row(table.getSelectionIndex());
    }

    /** The column of the cell that keys act on, counted from 0. */
    public int column() {
        return column;
    }

    /** The figure in the cell that keys act on. */
    public Optional<FigureKey> figure() {
        return selection().filter(row -> column < row.cells().size()).flatMap(row -> row.cells().get(column).figure());
    }

    /** Selects a row by its key; does nothing where it is not there. */
    public void select(Object key, int at) {
        for (int i = 0; i < sheet.rows().size(); i++) {
            if (sheet.rows().get(i).key().equals(key)) {
                column = Math.clamp(at, 0, Math.max(0, sheet.columns().size() - 1));
                table.setSelection(i);
                table.redraw();
            }
        }
    }

    /** Copies the selected rows, or all where none or only one is selected, as tab-separated text with headings. */
    public void copy() {
        int[] indices = table.getSelectionIndices();
        List<Sheet.Row> rows = new ArrayList<>();
        for (int index : indices) {
            row(index).ifPresent(rows::add);
        }
        copy(rows.size() > 1 ? sheet.tabbed(rows) : sheet.tabbed());
    }

    /** Puts text on the clipboard. */
    public void copy(String text) {
        Objects.requireNonNull(text);
        Clipboard clipboard = new Clipboard(table.getDisplay());
        try {
            clipboard.setContents(new Object[] {text}, new Transfer[] {TextTransfer.getInstance()});
        } finally {
            clipboard.dispose();
        }
    }
}
