package tramontane.desktop.chart;

import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.UnaryOperator;
import org.eclipse.swt.SWT;
import org.eclipse.swt.accessibility.ACC;
import org.eclipse.swt.accessibility.AccessibleAdapter;
import org.eclipse.swt.accessibility.AccessibleControlAdapter;
import org.eclipse.swt.accessibility.AccessibleControlEvent;
import org.eclipse.swt.accessibility.AccessibleEvent;
import org.eclipse.swt.custom.StackLayout;
import org.eclipse.swt.dnd.Clipboard;
import org.eclipse.swt.dnd.ImageTransfer;
import org.eclipse.swt.dnd.TextTransfer;
import org.eclipse.swt.dnd.Transfer;
import org.eclipse.swt.graphics.GC;
import org.eclipse.swt.graphics.Image;
import org.eclipse.swt.graphics.ImageData;
import org.eclipse.swt.graphics.ImageLoader;
import org.eclipse.swt.graphics.Rectangle;
import org.eclipse.swt.layout.GridData;
import org.eclipse.swt.layout.GridLayout;
import org.eclipse.swt.widgets.Canvas;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.Display;
import org.eclipse.swt.widgets.Event;
import org.eclipse.swt.widgets.FileDialog;
import org.eclipse.swt.widgets.Layout;
import org.eclipse.swt.widgets.Menu;
import org.eclipse.swt.widgets.Table;
import org.eclipse.swt.widgets.TableColumn;
import org.eclipse.swt.widgets.TableItem;
import org.eclipse.swt.widgets.Text;
import org.eclipse.swt.graphics.Point;
import org.eclipse.swtchart.ICustomPaintListener;
import org.eclipse.swtchart.Range;
import tramontane.analysis.Amount;
import tramontane.analysis.Chart;
import tramontane.desktop.Command;
import tramontane.desktop.Desk;
import tramontane.desktop.Palette;
import tramontane.physics.units.UnitSystem;
import tramontane.physics.units.Units;
import tramontane.report.ChartColours;
import tramontane.report.ChartCsv;
import tramontane.report.ChartDrawing;
import tramontane.report.ChartSvg;
import tramontane.report.ChartTable;
import tramontane.report.Drawing;

/**
 * A chart in the window.
 *
 * <p>Wheel, + and - zoom; dragging and arrows pan; dragging with Shift zooms to a rectangle; a double click or 0 shows all.
 * Values are read off at the mouse, at the last click, or at a cursor that Ctrl with the arrows moves; Home and End go from mark
 * to mark. {@link #table} shows the same as a table.
 *
 * <p>The plot area and its axes are SWTChart's; what is in it is painted from a laid out {@link Drawing}, since SWTChart draws
 * lines between whole pixels and its ticks at other than round places.
 */
public final class ChartCanvas {

    private static final int READING_LINES = 2;
    /** Below this height one line is read off only, for the chart's sake. */
    private static final int LOW = 240;
    private static final int DRAG = 4;
    private static final int LEAST_COPY_WIDTH = 560;
    private static final int LEAST_COPY_HEIGHT = 380;
    /** Points of a saved picture for each pixel at 100 %. */
    private static final int PICTURE_POINTS = 2;
    private static final int HIT = 8;

    private final Desk desk;
    private final Composite box;
    private final Composite pages;
    private final StackLayout stack = new StackLayout();
    private final Canvas area;
    private final org.eclipse.swtchart.Chart plot;
    private final Text empty;
    private final Text reading;
    private final Table table;
    private final ChartPainter painter;

    private ChartState state = ChartState.EMPTY;
    private String why = "";
    private UnitSystem units = UnitSystem.METRIC;
    private Palette palette;
    private boolean stale;
    private boolean asTable;
    private Optional<Drawing> drawing = Optional.empty();
    private Optional<Double> hover = Optional.empty();
    /** The point with a name under the mouse. */
    private Optional<Picked> near = Optional.empty();
    private Optional<Point> pressed = Optional.empty();
    private Optional<Point> dragged = Optional.empty();
    private boolean band;
    private ChartState atPress = ChartState.EMPTY;
    private Consumer<Picked> picked = point -> { };

    /**
     * A point of a series that was clicked on.
     *
     * @param series its series
     * @param point  its number in it
     */
    public record Picked(Chart.Series series, int point) {
    }

    /**
     * Builds the widgets.
     *
     * @param parent where; the canvas is one more child of it
     * @param desk   the window
     */
    public ChartCanvas(Composite parent, Desk desk) {
        this.desk = desk;
        palette = desk.scene().palette();
        box = new Composite(parent, SWT.NONE);
        GridLayout rows = new GridLayout();
        rows.marginWidth = 0;
        rows.marginHeight = 0;
        rows.verticalSpacing = 0;
        box.setLayout(rows);
        painter = new ChartPainter(box.getDisplay());
        pages = new Composite(box, SWT.NONE);
        pages.setLayout(stack);
        pages.setLayoutData(new GridData(SWT.FILL, SWT.FILL, true, true));
        area = new Canvas(pages, SWT.DOUBLE_BUFFERED);
        area.setLayout(new PlotLayout());
        plot = new org.eclipse.swtchart.Chart(area, SWT.NONE);
        plot.getTitle().setVisible(false);
        plot.getLegend().setVisible(false);
        Arrays.stream(plot.getAxisSet().getAxes()).forEach(axis -> {
            axis.getTitle().setVisible(false);
            axis.getTick().setVisible(false);
            axis.getGrid().setVisible(false);
            axis.setDrawAxisLine(false);
        });
        plot.setLayout(new WholeLayout(plot));
        plot.getPlotArea().addCustomPaintListener(new ICustomPaintListener() {
            @Override
            public void paintControl(org.eclipse.swt.events.PaintEvent event) {
                paintPlot(event.gc);
            }

            @Override
            public boolean drawBehindSeries() {
                return false;
            }
        });
        empty = new Text(pages, SWT.WRAP | SWT.READ_ONLY | SWT.MULTI | SWT.CENTER);
        table = new Table(pages, SWT.FULL_SELECTION | SWT.MULTI | SWT.V_SCROLL | SWT.H_SCROLL);
        table.setHeaderVisible(true);
        table.setLinesVisible(true);
        table.setFont(desk.digits());
        reading = new Text(box, SWT.WRAP | SWT.READ_ONLY | SWT.MULTI);
        GridData line = new GridData(SWT.FILL, SWT.END, true, false);
        line.heightHint = READING_LINES * reading.getLineHeight();
        box.addListener(SWT.Resize, event -> {
            int lines = box.getClientArea().height < LOW ? 1 : READING_LINES;
            if (line.heightHint != lines * reading.getLineHeight()) {
                line.heightHint = lines * reading.getLineHeight();
                box.layout();
            }
        });
        line.horizontalIndent = 12;
        reading.setLayoutData(line);
        reading.getAccessible().addAccessibleListener(named(() -> "values read off"));
        stack.topControl = empty;
        area.addListener(SWT.Paint, event -> paintAround(event.gc));
        area.addListener(SWT.Resize, event -> arrange());
        listen(plotControl());
        box.addListener(SWT.Dispose, event -> painter.dispose());
        colour();
    }

    private static AccessibleAdapter named(java.util.function.Supplier<String> name) {
        return new AccessibleAdapter() {
            @Override
            public void getName(AccessibleEvent event) {
                event.result = name.get();
            }
        };
    }

    /** The widget. */
    public Composite control() {
        return box;
    }

    /** What is seen now. */
    public ChartState state() {
        return state;
    }

    /** The widget that takes the focus: the plot, the table, or the words that say why there is none. */
    public boolean focus() {
        return asTable && state.chart().isPresent() ? table.setFocus() : state.chart().isPresent() ? plotControl().setFocus() : empty.setFocus();
    }

    /** Sets the context menu of everything in it. */
    public void menu(Menu menu) {
        plotControl().setMenu(menu);
        area.setMenu(menu);
        plot.setMenu(menu);
        table.setMenu(menu);
    }

    /** Has someone told of the point that was clicked on, of a series with signs. */
    public void picked(Consumer<Picked> told) {
        picked = told;
    }

    /**
     * Shows a chart. What was zoomed in on stays.
     *
     * @param chart   the chart; empty for none
     * @param instead what is said where there is none
     * @param system  units of the reader
     * @param colours the colours
     * @param old     whether it belongs to an earlier state of the design, and is greyed
     */
    public void show(Optional<Chart> chart, String instead, UnitSystem system, Palette colours, boolean old) {
        boolean recoloured = palette != colours;
        if (state.chart().equals(chart) && why.equals(instead) && units.equals(system) && !recoloured && stale == old) {
            return;
        }
        state = state.with(chart);
        near = Optional.empty();
        why = instead;
        units = system;
        palette = colours;
        stale = old;
        if (recoloured) {
            colour();
        }
        refresh();
    }

    /** Does something with what is seen: zoom, pan, read off. */
    public void change(UnaryOperator<ChartState> how) {
        ChartState next = how.apply(state);
        if (!next.equals(state)) {
            boolean sameView = next.window().equals(state.window());
            state = next;
            if (sameView) {
                read();
                plotControl().redraw();
            } else {
                refresh();
            }
        }
    }

    /** Whether it is shown as a table. */
    public boolean isTable() {
        return asTable;
    }

    /** Shows it as a table, or as a chart. */
    public void table(boolean on) {
        asTable = on;
        refresh();
        focus();
    }

    /** What it does for commands of the window. */
    public Map<String, Runnable> handlers() {
        Map<String, Runnable> handlers = new LinkedHashMap<>();
        if (state.chart().isPresent()) {
            handlers.put(Command.FIT, () -> change(ChartState::fit));
            handlers.put(Command.ZOOM_IN, () -> change(seen -> seen.zoom(ChartState.STEP, 0.5, 0.5)));
            handlers.put(Command.ZOOM_OUT, () -> change(seen -> seen.zoom(1 / ChartState.STEP, 0.5, 0.5)));
            handlers.put(Command.COPY, this::copy);
        }
        return handlers;
    }

    private Control plotControl() {
        return plot.getPlotArea().getControl();
    }

    private void colour() {
        for (Control each : List.of(box, pages, area, plot, empty, reading, table)) {
            each.setBackground(palette.surface());
            each.setForeground(palette.text());
        }
        plot.getPlotArea().setBackground(palette.surface());
        reading.setForeground(palette.text());
        empty.setForeground(palette.muted());
        table.setHeaderBackground(palette.background());
        table.setHeaderForeground(palette.text());
    }

    private void refresh() {
        empty.setText("\n\n" + why);
        Control top = state.chart().isEmpty() ? empty : asTable ? table : area;
        boolean handOver = stack.topControl != top && holdsFocus();
        if (stack.topControl != top) {
            stack.topControl = top;
            pages.layout();
        }
        arrange();
        if (handOver) {
            focus();
        }
        read();
        if (asTable) {
            fill();
        }
    }

    private boolean holdsFocus() {
        for (Control each = box.getDisplay().getFocusControl(); each != null; each = each.getParent()) {
            if (each == pages) {
                return true;
            }
        }
        return false;
    }

    private void arrange() {
        Rectangle size = area.getClientArea();
        double wide = size.width / painter.scale();
        double high = size.height / painter.scale();
        if (state.chart().isEmpty() || wide < ChartDrawing.LEAST || high < ChartDrawing.LEAST) {
            drawing = Optional.empty();
            plot.setVisible(false);
            area.redraw();
            return;
        }
        Chart seen = state.seen().orElseThrow();
        GC gc = new GC(area);
        drawing = Optional.of(ChartDrawing.of(seen, units, wide, high, colours(), painter.widths(gc)));
        gc.dispose();
        range(plot.getAxisSet().getXAxis(0), seen.x(), seen.extent());
        range(plot.getAxisSet().getYAxis(0), seen.y(), seen.extent(Chart.Side.LEFT));
        plot.setVisible(true);
        area.layout();
        area.redraw();
        plotControl().redraw();
    }

    private void range(org.eclipse.swtchart.IAxis axis, Chart.Axis of, Chart.Extent extent) {
        axis.setRange(new Range(of.shown(extent.from(), units), of.shown(extent.to(), units)));
    }

    private ChartColours colours() {
        return ChartPainter.colours(palette, stale);
    }

    private boolean inside(Drawing.Item item) {
        Drawing.Box plotBox = drawing.orElseThrow().plot();
        return switch (item) {
            case Drawing.Line line -> line.clip();
            case Drawing.Area shade -> shade.clip();
            case Drawing.Sign sign -> plotBox.holds(sign.x(), sign.y());
            case Drawing.Words words -> plotBox.holds(words.x(), words.y());
        };
    }

    private void paintAround(GC gc) {
        drawing.ifPresentOrElse(laid -> painter.paint(gc, laid, item -> !inside(item), 0, 0), () -> {
            gc.setForeground(palette.muted());
            gc.drawText("The chart needs more room.", 12, 4, true);
        });
    }

    private void paintPlot(GC gc) {
        if (drawing.isEmpty()) {
            return;
        }
        Drawing laid = drawing.get();
        Rectangle bounds = plotControl().getBounds();
        painter.paint(gc, laid, this::inside, laid.plot().left(), laid.plot().top());
        gc.setAntialias(SWT.OFF);
        gc.setLineWidth(1);
        gc.setForeground(plotControl().isFocusControl() ? palette.accent() : palette.line());
        gc.drawRectangle(0, 0, bounds.width - 1, bounds.height - 1);
        Optional<Double> at = hover.or(() -> state.cursor().isPresent() ? Optional.of(state.cursor().getAsDouble()) : Optional.empty());
        at.ifPresent(place -> cursor(gc, place, bounds));
        if (band && pressed.isPresent() && dragged.isPresent()) {
            Point one = pressed.get();
            Point other = dragged.get();
            gc.setForeground(palette.accent());
            gc.setBackground(palette.accent());
            int left = Math.min(one.x, other.x);
            int top = Math.min(one.y, other.y);
            gc.setAlpha(40);
            gc.fillRectangle(left, top, Math.abs(one.x - other.x), Math.abs(one.y - other.y));
            gc.setAlpha(255);
            gc.drawRectangle(left, top, Math.abs(one.x - other.x), Math.abs(one.y - other.y));
        }
    }

    /** The line at which values are read off, with a dot on each curve. */
    private void cursor(GC gc, double place, Rectangle bounds) {
        Chart seen = state.seen().orElseThrow();
        if (!seen.extent().holds(place)) {
            return;
        }
        int x = (int) Math.round(seen.x().scale().share(seen.extent(), place) * (bounds.width - 1));
        gc.setForeground(palette.accent());
        gc.drawLine(x, 0, x, bounds.height);
        gc.setAntialias(SWT.ON);
        for (Chart.Series series : seen.series()) {
            seen.at(series, place).ifPresent(value -> {
                double up = seen.axis(series.side()).scale().share(seen.extent(series.side()), value);
                int y = (int) Math.round((1 - up) * (bounds.height - 1));
                gc.setBackground(stale ? palette.stale() : palette.series(series.look().colour()));
                gc.fillOval(x - 3, y - 3, 7, 7);
            });
        }
    }

    private void read() {
        ChartState shown = hover.map(state::at).orElse(state);
        String text = state.chart().isEmpty() ? "" : near.isPresent() ? state.reading(near.get().series(), near.get().point(), units) : shown.cursor().isPresent() ? shown.reading(units)
                : state.foremost(units);
        if (!reading.getText().equals(text)) {
            reading.setText(text);
            reading.setToolTipText(text.replace("   ", "\n"));
        }
        reading.setForeground(stale ? palette.stale() : palette.text());
    }

    private void fill() {
        table.setRedraw(false);
        int topIndex = table.getTopIndex();
        tramontane.analysis.Table shown = state.seen().map(seen -> ChartTable.of(seen, units)).orElseThrow();
        while (table.getColumnCount() > shown.columns().size()) {
            table.getColumn(table.getColumnCount() - 1).dispose();
        }
        while (table.getColumnCount() < shown.columns().size()) {
            new TableColumn(table, SWT.NONE);
        }
        table.setItemCount(shown.rows().size());
        for (int r = 0; r < shown.rows().size(); r++) {
            TableItem item = table.getItem(r);
            item.setForeground(stale ? palette.stale() : palette.text());
            for (int c = 0; c < shown.columns().size(); c++) {
                item.setText(c, cell(shown.rows().get(r).get(c)));
            }
        }
        for (int c = 0; c < shown.columns().size(); c++) {
            TableColumn column = table.getColumn(c);
            column.setText(shown.columns().get(c).label());
            column.setAlignment(shown.columns().get(c).numeric() ? SWT.RIGHT : SWT.LEFT);
            column.pack();
        }
        table.setTopIndex(topIndex);
        table.setRedraw(true);
    }

    private String cell(tramontane.analysis.Table.Cell cell) {
        return switch (cell) {
            case Amount amount -> Units.format(amount.si(), amount.quantity(), units, 3);
            case tramontane.analysis.Table.Words words -> words.text();
            case tramontane.analysis.Table.Range range -> cell(range.from()) + " to " + cell(range.to());
            case tramontane.analysis.Table.Empty nothing -> "";
        };
    }

    private void listen(Control control) {
        control.addListener(SWT.MouseWheel, event -> {
            event.doit = false;
            change(seen -> seen.zoom(event.count > 0 ? ChartState.STEP : 1 / ChartState.STEP, acrossAt(event.x), upAt(event.y)));
            hover(event);
        });
        control.addListener(SWT.MouseDown, event -> {
            control.setFocus();
            if (event.button == 1) {
                pressed = Optional.of(new Point(event.x, event.y));
                dragged = Optional.empty();
                band = (event.stateMask & SWT.SHIFT) != 0;
                atPress = state;
            }
        });
        control.addListener(SWT.MouseMove, this::moved);
        control.addListener(SWT.MouseUp, this::released);
        control.addListener(SWT.MouseDoubleClick, event -> {
            if (event.button == 1) {
                change(ChartState::fit);
            }
        });
        control.addListener(SWT.MouseExit, event -> {
            leave();
            read();
            control.redraw();
        });
        control.addListener(SWT.FocusIn, event -> control.redraw());
        control.addListener(SWT.FocusOut, event -> control.redraw());
        control.addListener(SWT.Traverse, event -> event.doit = event.detail == SWT.TRAVERSE_TAB_NEXT || event.detail == SWT.TRAVERSE_TAB_PREVIOUS
                || event.detail == SWT.TRAVERSE_ESCAPE && state.cursor().isEmpty() && pressed.isEmpty());
        control.addListener(SWT.KeyDown, event -> event.doit = !key(event));
        control.getAccessible().addAccessibleListener(new AccessibleAdapter() {
            @Override
            public void getName(AccessibleEvent event) {
                event.result = state.chart().map(Chart::title).orElse("chart");
            }

            @Override
            public void getDescription(AccessibleEvent event) {
                event.result = state.seen().map(seen -> ChartSvg.description(seen, units)).orElse(why);
            }
        });
        control.getAccessible().addAccessibleControlListener(new AccessibleControlAdapter() {
            @Override
            public void getRole(AccessibleControlEvent event) {
                event.detail = ACC.ROLE_GRAPHIC;
            }

            @Override
            public void getValue(AccessibleControlEvent event) {
                event.result = state.reading(units);
            }
        });
    }

    private double acrossAt(int x) {
        return x / (double) Math.max(1, plotControl().getSize().x - 1);
    }

    private double upAt(int y) {
        return 1 - y / (double) Math.max(1, plotControl().getSize().y - 1);
    }

    private void hover(Event event) {
        state.seen().ifPresent(seen -> {
            hover = Optional.of(Math.clamp(seen.x().scale().at(seen.extent(), acrossAt(event.x)), seen.extent().from(), seen.extent().to()));
            near = hit(event).filter(picked -> !picked.series().words().isEmpty());
            read();
            plotControl().redraw();
        });
    }

    private void leave() {
        hover = Optional.empty();
        near = Optional.empty();
    }

    private void moved(Event event) {
        if (pressed.isEmpty()) {
            hover(event);
            return;
        }
        Point from = pressed.get();
        if (dragged.isEmpty() && Math.hypot(event.x - from.x, event.y - from.y) < DRAG) {
            return;
        }
        dragged = Optional.of(new Point(event.x, event.y));
        leave();
        if (band) {
            plotControl().redraw();
        } else {
            change(seen -> atPress.pan(acrossAt(from.x) - acrossAt(event.x), upAt(from.y) - upAt(event.y)));
        }
    }

    private void released(Event event) {
        Optional<Point> from = pressed;
        Optional<Point> to = dragged;
        boolean zooming = band;
        pressed = Optional.empty();
        dragged = Optional.empty();
        band = false;
        if (from.isEmpty() || event.button != 1) {
            return;
        }
        if (to.isPresent()) {
            if (zooming) {
                change(seen -> seen.zoomTo(acrossAt(from.get().x), upAt(from.get().y), acrossAt(to.get().x), upAt(to.get().y)));
            }
            plotControl().redraw();
        } else if (state.chart().isPresent() && event.count < 2) {
            hover(event);
            hover.ifPresent(place -> change(seen -> seen.at(place)));
            hit(event).ifPresent(picked);
        }
    }

    /** The nearest point with a sign at the mouse. */
    private Optional<Picked> hit(Event event) {
        Chart seen = state.seen().orElseThrow();
        Point size = plotControl().getSize();
        Optional<Picked> best = Optional.empty();
        double nearest = HIT;
        for (Chart.Series series : seen.series()) {
            for (int i = 0; i < series.points().size() && series.look().marked(); i++) {
                double x = seen.x().scale().share(seen.extent(), series.points().x(i)) * size.x;
                double y = (1 - seen.axis(series.side()).scale().share(seen.extent(series.side()), series.points().y(i))) * size.y;
                if (Math.hypot(x - event.x, y - event.y) < nearest) {
                    nearest = Math.hypot(x - event.x, y - event.y);
                    best = Optional.of(new Picked(series, i));
                }
            }
        }
        return best;
    }

    private boolean key(Event event) {
        boolean control = (event.stateMask & SWT.MOD1) != 0;
        if ((event.stateMask & (SWT.MOD3 | SWT.MOD4)) != 0 || state.chart().isEmpty()) {
            return false;
        }
        UnaryOperator<ChartState> how = switch (event.keyCode) {
            case SWT.ARROW_LEFT -> control ? seen -> seen.step(-1) : seen -> seen.pan(-ChartState.PAN, 0);
            case SWT.ARROW_RIGHT -> control ? seen -> seen.step(1) : seen -> seen.pan(ChartState.PAN, 0);
            case SWT.ARROW_UP -> control ? null : seen -> seen.pan(0, ChartState.PAN);
            case SWT.ARROW_DOWN -> control ? null : seen -> seen.pan(0, -ChartState.PAN);
            case SWT.HOME -> control ? null : seen -> seen.toMark(false);
            case SWT.END -> control ? null : seen -> seen.toMark(true);
            case SWT.KEYPAD_ADD -> control ? null : seen -> seen.zoom(ChartState.STEP, 0.5, 0.5);
            case SWT.KEYPAD_SUBTRACT -> control ? null : seen -> seen.zoom(1 / ChartState.STEP, 0.5, 0.5);
            case SWT.KEYPAD_0 -> control ? null : ChartState::fit;
            default -> control ? null : switch (event.character) {
                case '+', '=' -> seen -> seen.zoom(ChartState.STEP, 0.5, 0.5);
                case '-' -> seen -> seen.zoom(1 / ChartState.STEP, 0.5, 0.5);
                case '0' -> ChartState::fit;
                case SWT.ESC -> state.cursor().isPresent() ? ChartState::withoutCursor : null;
                default -> null;
            };
        };
        if (how == null) {
            return false;
        }
        leave();
        change(how);
        return true;
    }

    /** Copies the picture, and its numbers for whoever takes text; of a table what is selected in it. */
    public void copy() {
        if (state.chart().isEmpty()) {
            return;
        }
        Clipboard clipboard = new Clipboard(box.getDisplay());
        try {
            if (asTable) {
                clipboard.setContents(new Object[] {rows()}, new Transfer[] {TextTransfer.getInstance()});
            } else {
                Point size = pictureSize();
                clipboard.setContents(new Object[] {picture(size.x, size.y), ChartCsv.of(state.seen().orElseThrow(), units)},
                        new Transfer[] {ImageTransfer.getInstance(), TextTransfer.getInstance()});
            }
            desk.say(asTable ? "Table copied." : "Chart copied.");
        } finally {
            clipboard.dispose();
        }
    }

    private String rows() {
        StringBuilder text = new StringBuilder();
        TableItem[] items = table.getSelectionCount() > 0 ? table.getSelection() : table.getItems();
        text.append(String.join("\t", Arrays.stream(table.getColumns()).map(TableColumn::getText).toList())).append('\n');
        for (TableItem item : items) {
            for (int c = 0; c < table.getColumnCount(); c++) {
                text.append(c == 0 ? "" : "\t").append(item.getText(c));
            }
            text.append('\n');
        }
        return text.toString();
    }

    private Point pictureSize() {
        Point size = area.getSize();
        return new Point(Math.max(LEAST_COPY_WIDTH, (int) (size.x / painter.scale())), Math.max(LEAST_COPY_HEIGHT, (int) (size.y / painter.scale())));
    }

    private ImageData picture(int width, int height) {
        return picture(box.getDisplay(), state.seen().orElseThrow(), units, colours(), width, height);
    }

    /**
     * A chart drawn anew with two points for each pixel, whatever the zoom of the screen. Asking an image that draws itself for
     * another zoom would enlarge the points that it has.
     */
    static ImageData picture(Display display, Chart seen, UnitSystem units, ChartColours colours, int width, int height) {
        ChartPainter painter = new ChartPainter(display, PICTURE_POINTS);
        int wide = (int) Math.round(width * painter.scale());
        int high = (int) Math.round(height * painter.scale());
        Image image = new Image(display, wide, high);
        try {
            GC gc = new GC(image);
            Drawing drawing = ChartDrawing.of(seen, units, width, height, colours, painter.widths(gc));
            gc.setBackground(ChartPainter.colour(drawing.background()));
            gc.fillRectangle(0, 0, wide, high);
            painter.paint(gc, drawing, item -> true, 0, 0);
            gc.dispose();
            return image.getImageData(100);
        } finally {
            image.dispose();
            painter.dispose();
        }
    }

    /**
     * Asks for a file and saves the chart as it is seen.
     *
     * @param name what the file is called if nobody says otherwise, without ending
     */
    public void save(String name) {
        if (state.chart().isEmpty()) {
            return;
        }
        FileDialog dialog = new FileDialog(box.getShell(), SWT.SAVE);
        dialog.setText("Save chart");
        dialog.setFilterExtensions(Arrays.stream(ChartFile.values()).map(each -> "*" + each.ending()).toArray(String[]::new));
        dialog.setFilterNames(Arrays.stream(ChartFile.values()).map(ChartFile::label).toArray(String[]::new));
        dialog.setFileName(ChartFile.name(name) + ChartFile.SVG.ending());
        dialog.setOverwrite(true);
        String chosen = dialog.open();
        if (chosen != null) {
            ChartFile kind = ChartFile.of(chosen).orElse(ChartFile.values()[Math.max(0, dialog.getFilterIndex())]);
            save(Path.of(ChartFile.of(chosen).isPresent() ? chosen : chosen + kind.ending()), kind);
        }
    }

    /** Saves the chart as it is seen; what takes time is done off the UI thread. */
    void save(Path file, ChartFile kind) {
        Chart seen = state.seen().orElseThrow();
        Point size = pictureSize();
        UnitSystem system = units;
        ChartColours colours = colours();
        Optional<ImageData> picture = kind == ChartFile.PNG ? Optional.of(picture(size.x, size.y)) : Optional.empty();
        desk.jobs().quietly(watch -> {
            ChartFile.write(file, switch (kind) {
                case SVG -> ChartSvg.of(seen, system, size.x, size.y, colours).getBytes(StandardCharsets.UTF_8);
                case CSV -> ChartCsv.of(seen, system).getBytes(StandardCharsets.UTF_8);
                case PNG -> png(picture.orElseThrow());
            });
            return file;
        }, saved -> desk.say("Chart saved as " + saved + "."));
    }

    static byte[] png(ImageData picture) {
        ImageLoader loader = new ImageLoader();
        loader.data = new ImageData[] {picture};
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        loader.save(bytes, SWT.IMAGE_PNG);
        return bytes.toByteArray();
    }

    /** Puts SWTChart where the drawing has its plot. */
    private final class PlotLayout extends Layout {
        @Override
        protected Point computeSize(Composite composite, int wide, int high, boolean flush) {
            return new Point(wide == SWT.DEFAULT ? 320 : wide, high == SWT.DEFAULT ? 240 : high);
        }

        @Override
        protected void layout(Composite composite, boolean flush) {
            drawing.ifPresent(laid -> {
                double scale = painter.scale();
                int left = (int) Math.round(laid.plot().left() * scale);
                int top = (int) Math.round(laid.plot().top() * scale);
                plot.setBounds(left, top, (int) Math.round(laid.plot().right() * scale) - left + 1, (int) Math.round(laid.plot().bottom() * scale) - top + 1);
            });
        }
    }

    /** Gives the whole of SWTChart to its plot area. */
    private static final class WholeLayout extends Layout {

        private final org.eclipse.swtchart.Chart chart;

        WholeLayout(org.eclipse.swtchart.Chart chart) {
            this.chart = chart;
        }

        @Override
        protected Point computeSize(Composite composite, int wide, int high, boolean flush) {
            return new Point(Math.max(1, wide), Math.max(1, high));
        }

        @Override
        protected void layout(Composite composite, boolean flush) {
            Rectangle size = chart.getClientArea();
            chart.getPlotArea().getControl().setBounds(0, 0, size.width, size.height);
        }
    }
}
