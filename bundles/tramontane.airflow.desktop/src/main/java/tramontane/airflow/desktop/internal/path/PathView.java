package tramontane.airflow.desktop.internal.path;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.eclipse.swt.SWT;
import org.eclipse.swt.accessibility.ACC;
import org.eclipse.swt.accessibility.AccessibleAdapter;
import org.eclipse.swt.accessibility.AccessibleControlAdapter;
import org.eclipse.swt.accessibility.AccessibleControlEvent;
import org.eclipse.swt.accessibility.AccessibleEvent;
import org.eclipse.swt.custom.SashForm;
import org.eclipse.swt.custom.StackLayout;
import org.eclipse.swt.graphics.GC;
import org.eclipse.swt.graphics.Path;
import org.eclipse.swt.graphics.Point;
import org.eclipse.swt.graphics.Rectangle;
import org.eclipse.swt.layout.GridData;
import org.eclipse.swt.layout.GridLayout;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Canvas;
import org.eclipse.swt.widgets.Combo;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.Event;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Menu;
import org.eclipse.swt.widgets.MenuItem;
import org.eclipse.swt.widgets.Table;
import org.eclipse.swt.widgets.TableColumn;
import org.eclipse.swt.widgets.TableItem;
import org.eclipse.swt.widgets.Text;
import tramontane.analysis.Evaluation;
import tramontane.analysis.OperatingPoint;
import tramontane.desktop.Command;
import tramontane.desktop.Desk;
import tramontane.desktop.FigureKey;
import tramontane.desktop.Icon;
import tramontane.desktop.Jobs;
import tramontane.desktop.Memory;
import tramontane.desktop.Palette;
import tramontane.desktop.Scene;
import tramontane.desktop.View;
import tramontane.model.FailedMover;
import tramontane.model.Passage;
import tramontane.model.edit.Edit;
import tramontane.model.edit.Edits;
import tramontane.model.edit.Subject;
import tramontane.physics.units.UnitSystem;

/** Shows a {@link PathState}: as a picture, and as a table beside it. */
final class PathView implements View {

    private static final double FACTOR = 1.15;
    private static final double HANDLE = 7;
    private static final int DRAG = 4;
    private static final int STEP = 48;
    private static final int NUDGE = 8;
    private static final int LEGEND = 220;

    private final Desk desk;
    private final Memory memory;
    private final Composite stack;
    private final StackLayout pages = new StackLayout();
    private final Composite drawing;
    private final Composite empty;
    private final Label emptyText;
    private final SashForm sash;
    private final Canvas canvas;
    private final Composite strip;
    private final Combo by;
    private final Canvas legend;
    private final Label note;
    private final Table table;
    private final PathPainter painter;
    private final PathPresenter presenter;
    private Viewport view = new Viewport(0, 0, 1, 1, 1);
    private boolean fitted = true;
    private Optional<PathTarget> hovered = Optional.empty();
    private Optional<PathGraph> layingOut = Optional.empty();
    private Optional<Jobs.Job> job = Optional.empty();
    private Optional<Evaluation> evaluated = Optional.empty();
    private AirValues known = AirValues.NONE;
    private Palette palette = Palette.LIGHT;
    private UnitSystem units = UnitSystem.METRIC;
    private String front = "";
    private List<Object> drawn = List.of();
    private String condition = "";
    private boolean solving;
    private Drag drag = Drag.NONE;
    private Point pressed = new Point(0, 0);
    private Point last = new Point(0, 0);
    private Optional<PathTarget> grabbed = Optional.empty();
    private Optional<Text> naming = Optional.empty();

    /** What the mouse is doing. */
    private enum Drag {
        NONE, PRESSED, PAN, MOVE, LINK
    }

    PathView(Composite parent, Desk desk) {
        this.desk = desk;
        memory = desk.memory(PathViewType.ID);
        stack = new Composite(parent, SWT.NONE);
        stack.setLayout(pages);
        stack.setData("tramontane.id", "airpath");
        drawing = new Composite(stack, SWT.NONE);
        GridLayout rows = new GridLayout(1, false);
        rows.marginWidth = 0;
        rows.marginHeight = 0;
        rows.verticalSpacing = 0;
        drawing.setLayout(rows);
        sash = new SashForm(drawing, SWT.VERTICAL);
        sash.setLayoutData(new GridData(SWT.FILL, SWT.FILL, true, true));
        canvas = new Canvas(sash, SWT.DOUBLE_BUFFERED | SWT.NO_BACKGROUND);
        canvas.setData("tramontane.id", "airpath.picture");
        table = table(sash);
        sash.setWeights(3, 2);
        strip = new Composite(drawing, SWT.NONE);
        strip.setLayoutData(new GridData(SWT.FILL, SWT.CENTER, true, false));
        GridLayout columns = new GridLayout(4, false);
        columns.marginHeight = 4;
        columns.marginWidth = 8;
        columns.horizontalSpacing = 8;
        strip.setLayout(columns);
        new Label(strip, SWT.NONE).setText("&colour by");
        by = new Combo(strip, SWT.READ_ONLY);
        for (ColourBy each : ColourBy.values()) {
            by.add(each.word());
        }
        by.setData("tramontane.id", "airpath.by");
        legend = new Canvas(strip, SWT.DOUBLE_BUFFERED | SWT.NO_FOCUS);
        GridData size = new GridData(SWT.LEFT, SWT.FILL, false, true);
        size.widthHint = LEGEND;
        size.heightHint = 34;
        legend.setLayoutData(size);
        note = new Label(strip, SWT.RIGHT);
        note.setLayoutData(new GridData(SWT.FILL, SWT.CENTER, true, false));
        empty = new Composite(stack, SWT.NONE);
        GridLayout middle = new GridLayout(1, false);
        middle.verticalSpacing = 12;
        empty.setLayout(middle);
        emptyText = new Label(empty, SWT.CENTER);
        emptyText.setText("No bays yet. A bay is a volume of air with one pressure and one temperature.");
        emptyText.setLayoutData(new GridData(SWT.CENTER, SWT.END, true, true));
        Button add = new Button(empty, SWT.PUSH);
        add.setText("&Add bay");
        add.setData("tramontane.id", "airpath.add");
        add.setLayoutData(new GridData(SWT.CENTER, SWT.BEGINNING, true, true));
        add.addListener(SWT.Selection, event -> addBay());
        painter = new PathPainter(canvas);
        presenter = new PathPresenter(painter.measure(), () -> new Edits(desk.engine().forms()));
        canvas.addListener(SWT.Dispose, event -> painter.dispose());
        by.select(memory.get("by").filter(ColourBy.PRESSURE.name()::equals).isPresent() ? 1 : 0);
        presenter.colourBy(ColourBy.values()[by.getSelectionIndex()]);
        by.addListener(SWT.Selection, event -> colourBy(ColourBy.values()[by.getSelectionIndex()]));
        sash.setMaximizedControl(memory.get("table").filter("shown"::equals).isPresent() ? null : canvas);
        pages.topControl = empty;
        listen();
    }

    private Table table(Composite parent) {
        Table made = new Table(parent, SWT.FULL_SELECTION | SWT.SINGLE | SWT.V_SCROLL | SWT.H_SCROLL);
        made.setData("tramontane.id", "airpath.table");
        made.setHeaderVisible(true);
        int[] widths = {150, 130, 110, 110, 160, 100, 100, 110};
        for (int i = 0; i < PathRow.COLUMNS.size(); i++) {
            TableColumn column = new TableColumn(made, i < PathRow.NUMBERS ? SWT.LEFT : SWT.RIGHT);
            column.setText(PathRow.COLUMNS.get(i));
            column.setWidth(widths[i]);
        }
        new TableColumn(made, SWT.LEFT); // takes what room is left, which the toolkit gives to the last column
        made.addListener(SWT.Selection, event -> {
            int row = made.getSelectionIndex();
            if (row >= 0 && row < presenter.state().rows().size()) {
                choose(Optional.of(presenter.state().rows().get(row).target()), false);
            }
        });
        return made;
    }

    private void listen() {
        canvas.addListener(SWT.Paint, event -> paint(event.gc));
        canvas.addListener(SWT.Resize, event -> resized());
        canvas.addListener(SWT.MouseDown, this::down);
        canvas.addListener(SWT.MouseMove, this::moved);
        canvas.addListener(SWT.MouseUp, this::up);
        canvas.addListener(SWT.MouseDoubleClick, event -> rename());
        canvas.addListener(SWT.MouseExit, event -> hover(Optional.empty()));
        canvas.addListener(SWT.MouseVerticalWheel, event -> wheel(event, true));
        canvas.addListener(SWT.MouseHorizontalWheel, event -> wheel(event, false));
        canvas.addListener(SWT.KeyDown, this::key);
        canvas.addListener(SWT.FocusIn, event -> canvas.redraw());
        canvas.addListener(SWT.FocusOut, event -> canvas.redraw());
        canvas.addListener(SWT.Traverse, event -> event.doit = event.detail != SWT.TRAVERSE_RETURN
                && (event.detail != SWT.TRAVERSE_ESCAPE || presenter.state().linking().isEmpty()) && event.detail != SWT.TRAVERSE_ARROW_NEXT
                && event.detail != SWT.TRAVERSE_ARROW_PREVIOUS);
        canvas.addListener(SWT.MenuDetect, this::menu);
        legend.addListener(SWT.Paint, event -> paintLegend(event.gc));
        canvas.getAccessible().addAccessibleListener(new AccessibleAdapter() {
            @Override
            public void getName(AccessibleEvent event) {
                event.result = "Air path";
            }

            @Override
            public void getDescription(AccessibleEvent event) {
                event.result = described();
            }
        });
        canvas.getAccessible().addAccessibleControlListener(new AccessibleControlAdapter() {
            @Override
            public void getRole(AccessibleControlEvent event) {
                event.detail = ACC.ROLE_GRAPHIC;
            }

            @Override
            public void getValue(AccessibleControlEvent event) {
                event.result = described();
            }
        });
    }

    private String described() {
        PathState state = presenter.state();
        return state.selected().map(presenter::spoken).orElseGet(() -> state.design().airPath().bays().size() + " bays, "
                + state.design().airPath().passages().size() + " passages; arrow keys go along the flow; the table says the same");
    }

    // -- what is shown --

    @Override
    public Control control() {
        return stack;
    }

    @Override
    public boolean focus() {
        return pages.topControl == empty ? empty.setFocus() : canvas.setFocus();
    }

    @Override
    public void close() {
        job.ifPresent(Jobs.Job::cancel);
    }

    @Override
    public void show(Scene scene) {
        if (scene.palette() != palette) {
            palette = scene.palette();
            for (Control control : List.of(stack, drawing, sash, strip, legend, note, empty, emptyText)) {
                control.setBackground(palette.background());
                control.setForeground(palette.text());
            }
            for (Control control : strip.getChildren()) {
                if (control instanceof Label) {
                    control.setBackground(palette.background());
                    control.setForeground(palette.muted());
                }
            }
            empty.setBackground(palette.surface());
            emptyText.setBackground(palette.surface());
        }
        units = scene.units();
        front = scene.front();
        condition = scene.condition();
        solving = scene.results().running();
        AirValues values = values(scene);
        presenter.show(scene.document().design(), values, units);
        layOut();
        presenter.follow(scene.selection());
        boolean nothing = scene.document().design().airPath().bays().isEmpty() && scene.document().design().airPath().passages().isEmpty();
        Control top = nothing ? empty : drawing;
        if (pages.topControl != top) {
            pages.topControl = top;
            stack.layout();
        }
        refresh();
    }

    /** The air of the case in front; where the design as it is has not been solved, as it was before. */
    private AirValues values(Scene scene) {
        Optional<Evaluation> now = scene.results().now().filter(each -> each.data(OperatingPoint.class, front).isPresent());
        Optional<Evaluation> chosen = now.or(() -> scene.results().before()
                .filter(each -> scene.results().running() && each.data(OperatingPoint.class, front).isPresent())).or(scene.results()::now);
        boolean same = evaluated.isPresent() && chosen.isPresent() && evaluated.get() == chosen.get() && known.caseId().equals(front);
        if (!same) {
            known = chosen.map(each -> AirValues.of(each, front, desk.engine().passageKinds())).orElse(AirValues.NONE);
            evaluated = chosen;
        }
        return known.stale(scene.results().late() && now.isEmpty() && known.solved());
    }

    private void layOut() {
        Optional<PathGraph> wanted = presenter.wanted();
        if (wanted.isPresent() && !wanted.equals(layingOut)) {
            layingOut = wanted;
            job.ifPresent(Jobs.Job::cancel);
            PathGraph graph = wanted.get();
            job = Optional.of(desk.jobs().quietly(watch -> LayeredPlacement.free(graph), placement -> {
                layingOut = Optional.empty();
                if (!canvas.isDisposed()) {
                    boolean first = presenter.state().picture().isEmpty();
                    presenter.placed(graph, placement);
                    presenter.follow(desk.scene().selection());
                    fitted |= first;
                    layOut();
                    refresh();
                }
            }));
        }
    }

    private void refresh() {
        if (fitted) {
            fit();
        }
        fill();
        PathState state = presenter.state();
        String text = state.picture().isEmpty() ? "laying out" : !state.values().solved() ? solving ? "solving" : "no values yet" : state.values().stale()
                ? "before the last change" : state.values().caseId();
        if (!note.getText().equals(text)) {
            note.setText(text.replace("&", "&&"));
        }
        // most of what happens in the window leaves the picture as it is
        List<Object> seen = List.of(state.picture(), state.selected(), state.linking(), state.by(), palette, units, view);
        if (!seen.equals(drawn)) {
            drawn = seen;
            canvas.redraw();
            legend.redraw();
        }
    }

    private void fill() {
        List<PathRow> rows = presenter.state().rows();
        if (table.getItemCount() != rows.size()) {
            table.setItemCount(rows.size());
        }
        table.setForeground(presenter.state().values().stale() ? palette.stale() : palette.text());
        table.setBackground(palette.surface());
        table.setHeaderBackground(palette.background());
        table.setHeaderForeground(palette.text());
        for (int i = 0; i < rows.size(); i++) {
            TableItem item = table.getItem(i);
            for (int column = 0; column < PathRow.COLUMNS.size(); column++) {
                String text = rows.get(i).cells().get(column);
                if (!item.getText(column).equals(text)) {
                    item.setText(column, text);
                    if (column >= PathRow.NUMBERS) {
                        item.setFont(column, desk.digits());
                    }
                }
            }
        }
        int row = presenter.state().selected().map(PathView::passage).orElse(-1);
        if (row != table.getSelectionIndex()) {
            table.setSelection(row < 0 ? new int[0] : new int[] {row});
            table.showSelection();
        }
    }

    private static int passage(PathTarget target) {
        return switch (target) {
            case PathTarget.Joint(int passage) -> passage;
            case PathTarget.Position(int passage, int position) -> passage;
            case PathTarget.Outside outside -> -1;
            case PathTarget.Chamber chamber -> -1;
        };
    }

    private void resized() {
        Rectangle area = canvas.getClientArea();
        view = view.sized(area.width, area.height);
        if (fitted) {
            fit();
        }
        canvas.redraw();
    }

    private void fit() {
        Rectangle area = canvas.getClientArea();
        fitted = true;
        presenter.state().picture().filter(picture -> area.width > 0 && area.height > 0)
                .ifPresent(picture -> view = Viewport.fit(picture.bounds(), area.width, area.height));
    }

    private void paint(GC gc) {
        Rectangle area = canvas.getClientArea();
        gc.setBackground(palette.surface());
        gc.fillRectangle(area);
        PathState state = presenter.state();
        if (state.picture().isEmpty()) {
            return;
        }
        Optional<PathTarget> ring = drag == Drag.LINK || state.linking().isPresent() ? state.linking() : Optional.empty();
        painter.paint(gc, state.picture().get(), view, palette, new PathPainter.Emphasis(state.selected(), hovered, ring));
        gc.setAntialias(SWT.ON);
        gc.setForeground(palette.accent());
        gc.setLineWidth(2);
        if (drag == Drag.MOVE && grabbed.flatMap(presenter::box).isPresent()) {
            Box box = grabbed.flatMap(presenter::box).get();
            gc.setLineStyle(SWT.LINE_DASH);
            gc.drawRoundRectangle((int) (box.x() * view.zoom() + view.x() + last.x - pressed.x), (int) (box.y() * view.zoom() + view.y() + last.y - pressed.y),
                    (int) (box.width() * view.zoom()), (int) (box.height() * view.zoom()), 24, 24);
            gc.setLineStyle(SWT.LINE_SOLID);
        } else if (drag == Drag.LINK) {
            Path path = new Path(gc.getDevice());
            float reach = Math.max(30, Math.abs(last.x - pressed.x) / 2f);
            path.moveTo(pressed.x, pressed.y);
            path.cubicTo(pressed.x + reach, pressed.y, last.x - reach, last.y, last.x, last.y);
            gc.drawPath(path);
            path.dispose();
        }
        if (drag == Drag.NONE) {
            handle(state).ifPresent(spot -> {
                int x = (int) Math.round(spot.x() * view.zoom() + view.x());
                int y = (int) Math.round(spot.y() * view.zoom() + view.y());
                int r = (int) HANDLE;
                gc.setBackground(palette.surface());
                gc.fillOval(x - r, y - r, 2 * r, 2 * r);
                gc.drawOval(x - r, y - r, 2 * r, 2 * r);
                gc.drawLine(x - 3, y, x + 3, y);
                gc.drawLine(x, y - 3, x, y + 3);
            });
        }
        if (canvas.isFocusControl()) {
            gc.setForeground(palette.accent());
            gc.setLineWidth(1);
            gc.drawRectangle(0, 0, area.width - 1, area.height - 1);
        }
    }

    /** The round handle from which a passage is drawn: at the bay under the mouse, or the one selected. */
    private Optional<Spot> handle(PathState state) {
        return hovered.filter(PathView::starts).or(() -> state.selected().filter(PathView::starts)).flatMap(presenter::box)
                .map(box -> new Spot(box.right(), box.middle().y() + box.height() * 0.5 - 10));
    }

    private static boolean starts(PathTarget target) {
        return target instanceof PathTarget.Chamber || target.equals(PathTarget.SOURCE);
    }

    private void paintLegend(GC gc) {
        Rectangle area = legend.getClientArea();
        gc.setBackground(palette.background());
        gc.fillRectangle(area);
        Optional<PathPicture.Legend> shown = presenter.state().picture().flatMap(PathPicture::legend);
        if (shown.isEmpty()) {
            return;
        }
        int margin = 18;
        int width = area.width - 2 * margin;
        for (int x = 0; x < width; x++) {
            gc.setForeground(palette.scale((x + 0.5) / width));
            gc.drawLine(area.x + margin + x, 3, area.x + margin + x, 13);
        }
        gc.setForeground(palette.line());
        gc.drawRectangle(area.x + margin - 1, 2, width + 1, 12);
        gc.setForeground(palette.muted());
        int until = Integer.MIN_VALUE;
        String unit = shown.get().title().substring(shown.get().title().lastIndexOf(',') + 1);
        List<PathPicture.Tick> ticks = shown.get().ticks();
        for (int i = 0; i < ticks.size(); i++) {
            String label = ticks.get(i).label() + (i == ticks.size() - 1 ? unit : "");
            Point extent = gc.textExtent(label);
            int x = (int) Math.round(area.x + margin + ticks.get(i).at() * width - extent.x / 2.0);
            x = Math.clamp(x, 0, Math.max(0, area.width - extent.x));
            if (x > until) {
                gc.drawText(label, x, 16, SWT.DRAW_TRANSPARENT);
                until = x + extent.x + 4;
            }
        }
    }

    // -- mouse --

    private Spot spot(Event event) {
        return view.spot(event.x, event.y);
    }

    private void down(Event event) {
        canvas.setFocus();
        finishNaming(true);
        pressed = new Point(event.x, event.y);
        last = pressed;
        Optional<PathTarget> target = presenter.hit(spot(event));
        boolean link = event.button == 1 && onHandle(event);
        if (link) {
            grabbed = hovered.filter(PathView::starts).or(() -> presenter.state().selected().filter(PathView::starts));
            presenter.linkFrom(grabbed);
            drag = Drag.LINK;
            canvas.redraw();
            return;
        }
        if (event.button == 1 && presenter.state().linking().isPresent()) {
            presenter.end(spot(event)).ifPresentOrElse(end -> askKind(end, event.x, event.y), this::leaveLinking);
            return;
        }
        grabbed = target;
        if (event.button == 1 && (event.stateMask & SWT.MOD1) != 0) {
            target.ifPresent(this::explain);
            return;
        }
        if (event.button == 1 || event.button == 3) {
            choose(target, false);
        }
        drag = event.button == 1 ? Drag.PRESSED : event.button == 2 ? Drag.PAN : Drag.NONE;
    }

    private boolean onHandle(Event event) {
        return handle(presenter.state()).filter(spot -> Math.hypot(spot.x() * view.zoom() + view.x() - event.x,
                spot.y() * view.zoom() + view.y() - event.y) <= HANDLE + 3).isPresent();
    }

    private void moved(Event event) {
        Point now = new Point(event.x, event.y);
        switch (drag) {
            case NONE -> {
                if (!onHandle(event)) {
                    hover(presenter.hit(spot(event)));
                }
                canvas.setCursor(onHandle(event) ? canvas.getDisplay().getSystemCursor(SWT.CURSOR_CROSS) : null);
            }
            case PRESSED -> {
                if (Math.hypot(now.x - pressed.x, now.y - pressed.y) > DRAG) {
                    boolean bay = grabbed.flatMap(target -> target.subject(presenter.state().design())).filter(subject -> subject.kind() == Subject.Kind.BAY
                            && !subject.isOutside()).isPresent();
                    drag = bay ? Drag.MOVE : Drag.PAN;
                }
            }
            case PAN -> pan(now.x - last.x, now.y - last.y);
            case MOVE, LINK -> hovered = presenter.end(spot(event));
        }
        last = now;
        if (drag != Drag.NONE && drag != Drag.PRESSED) {
            canvas.redraw();
        }
    }

    private void up(Event event) {
        Drag done = drag;
        drag = Drag.NONE;
        if (done == Drag.MOVE && grabbed.orElse(PathTarget.SINK) instanceof PathTarget.Chamber(String id)) {
            presenter.box(new PathTarget.Chamber(id)).ifPresent(box -> desk.edit(presenter.move(id,
                    box.middle().plus((event.x - pressed.x) / view.zoom(), (event.y - pressed.y) / view.zoom()))));
        } else if (done == Drag.LINK) {
            Optional<PathTarget> end = presenter.end(spot(event));
            if (end.isPresent() && !end.equals(grabbed)) {
                askKind(end.get(), event.x, event.y);
            } else {
                leaveLinking();
            }
        }
        canvas.redraw();
    }

    private void wheel(Event event, boolean vertical) {
        if ((event.stateMask & SWT.MOD1) != 0) {
            zoom(Math.pow(FACTOR, event.count / 3.0), event.x, event.y);
        } else if (vertical && (event.stateMask & SWT.SHIFT) == 0) {
            pan(0, event.count * STEP / 3.0);
        } else {
            pan(event.count * STEP / 3.0, 0);
        }
        event.doit = false;
    }

    private void pan(double dx, double dy) {
        fitted = false;
        view = view.panned(dx, dy);
        presenter.state().picture().ifPresent(picture -> view = view.near(picture.bounds()));
        canvas.redraw();
    }

    private void zoom(double factor, double x, double y) {
        fitted = false;
        view = view.zoomed(factor, x, y);
        canvas.redraw();
    }

    private void zoom(double factor) {
        Rectangle area = canvas.getClientArea();
        zoom(factor, area.width / 2.0, area.height / 2.0);
    }

    private void hover(Optional<PathTarget> target) {
        if (!target.equals(hovered)) {
            hovered = target;
            canvas.setToolTipText(target.map(presenter::hover).map(text -> text.replace("&", "&&")).orElse(null));
            canvas.redraw();
        }
    }

    // -- keyboard --

    private void key(Event event) {
        boolean alt = (event.stateMask & SWT.ALT) != 0;
        boolean plain = (event.stateMask & SWT.MODIFIER_MASK) == 0;
        switch (event.keyCode) {
            case SWT.ARROW_RIGHT -> arrow(PathPresenter.Way.ALONG, alt, 1, 0);
            case SWT.ARROW_LEFT -> arrow(PathPresenter.Way.BACK, alt, -1, 0);
            case SWT.ARROW_UP -> arrow(PathPresenter.Way.UP, alt, 0, -1);
            case SWT.ARROW_DOWN -> arrow(PathPresenter.Way.DOWN, alt, 0, 1);
            case SWT.HOME -> choose(Optional.of(PathTarget.SOURCE), true);
            case SWT.END -> choose(Optional.of(PathTarget.SINK), true);
            case SWT.ESC -> {
                if (presenter.state().linking().isPresent()) {
                    leaveLinking();
                } else {
                    choose(Optional.empty(), false);
                }
            }
            case SWT.CR, SWT.KEYPAD_CR -> {
                if (presenter.state().linking().isPresent()) {
                    presenter.state().selected().filter(target -> !(target instanceof PathTarget.Joint) && !(target instanceof PathTarget.Position))
                            .ifPresent(end -> presenter.box(end).ifPresent(box -> askKind(end, (int) (box.middle().x() * view.zoom() + view.x()),
                                    (int) (box.middle().y() * view.zoom() + view.y()))));
                }
            }
            default -> {
                if (plain && event.character == 'c') {
                    connect();
                }
            }
        }
    }

    private void arrow(PathPresenter.Way way, boolean alt, int x, int y) {
        if (alt && presenter.state().selected().orElse(PathTarget.SINK) instanceof PathTarget.Chamber(String id)) {
            presenter.box(new PathTarget.Chamber(id)).ifPresent(box -> desk.edit(presenter.move(id, box.middle().plus(NUDGE * x, NUDGE * y))));
        } else {
            presenter.next(way).ifPresent(target -> choose(Optional.of(target), true));
        }
    }

    private void choose(Optional<PathTarget> target, boolean reveal) {
        presenter.select(target);
        Optional<Subject> subject = presenter.subject();
        if (subject.isPresent() || target.isEmpty()) {
            desk.select(subject);
        }
        if (reveal) {
            target.flatMap(presenter::box).filter(box -> !(target.get() instanceof PathTarget.Outside)).ifPresent(box -> {
                Viewport shown = view.showing(box);
                fitted &= shown.equals(view);
                view = shown;
            });
        }
        fill();
        canvas.getAccessible().sendEvent(ACC.EVENT_DESCRIPTION_CHANGED, null);
        canvas.redraw();
    }

    // -- edits --

    private void addBay() {
        Edit edit = presenter.addBay();
        if (desk.edit(edit)) {
            desk.select(edit.subject());
            canvas.setFocus();
        }
    }

    private void connect() {
        Optional<PathTarget> from = presenter.state().selected().filter(PathView::starts);
        if (from.isEmpty()) {
            desk.say("Select the bay at which the passage starts, or outside at the left");
            return;
        }
        presenter.linkFrom(from);
        desk.say("Go to the bay where the passage ends with the arrow keys or click it, then Enter; Esc leaves");
        canvas.redraw();
    }

    private void leaveLinking() {
        presenter.linkFrom(Optional.empty());
        canvas.redraw();
    }

    /** Asks which kind of passage; a menu, since the drag or key that led here is not done without it. */
    private void askKind(PathTarget end, int x, int y) {
        PathTarget start = presenter.state().linking().orElse(PathTarget.SOURCE);
        Menu menu = new Menu(canvas);
        for (String kind : desk.engine().passageKinds().keySet()) {
            MenuItem item = new MenuItem(menu, SWT.PUSH);
            item.setText(kind.replace("&", "&&"));
            item.addListener(SWT.Selection, event -> {
                Edit edit = presenter.connect(start, end, kind);
                if (desk.edit(edit)) {
                    desk.select(edit.subject());
                }
            });
        }
        menu.addListener(SWT.Hide, event -> canvas.getDisplay().asyncExec(() -> {
            if (!canvas.isDisposed()) {
                leaveLinking();
                menu.dispose();
            }
        }));
        menu.setLocation(canvas.toDisplay(x, y));
        menu.setVisible(true);
    }

    private void menu(Event event) {
        if (event.detail == SWT.MENU_MOUSE) {
            // the menu is asked for before the button is told of
            Point at = canvas.toControl(event.x, event.y);
            Event pointed = new Event();
            pointed.x = at.x;
            pointed.y = at.y;
            choose(presenter.hit(spot(pointed)), false);
        }
        Menu menu = new Menu(canvas);
        Optional<PathTarget> selected = presenter.state().selected();
        item(menu, "Add bay", true, this::addBay);
        item(menu, "Connect from here\tC", selected.filter(PathView::starts).isPresent(), this::connect);
        new MenuItem(menu, SWT.SEPARATOR);
        boolean own = presenter.subject().filter(subject -> !subject.isOutside()).isPresent();
        item(menu, "Rename…\tF2", own, this::rename);
        item(menu, "Delete\tDel", own, () -> desk.edit(presenter.remove()));
        failures(menu);
        new MenuItem(menu, SWT.SEPARATOR);
        selected.ifPresent(target -> item(menu, "Where from", presenter.state().values().solved(), () -> explain(target)));
        boolean pinned = selected.orElse(PathTarget.SINK) instanceof PathTarget.Chamber(String id) && PathGraph.pin(presenter.state().design(), id).isPresent();
        item(menu, "Place automatically", pinned, () -> selected.ifPresent(target -> desk.edit(presenter.release(((PathTarget.Chamber) target).id()))));
        item(menu, "Arrange bays", true, () -> desk.edit(presenter.releaseAll()));
        menu.addListener(SWT.Hide, hidden -> canvas.getDisplay().asyncExec(menu::dispose));
        menu.setLocation(event.x, event.y);
        menu.setVisible(true);
        event.doit = false;
    }

    /** Movers of the selected bank fail in the condition in front, or work again. */
    private void failures(Menu menu) {
        List<PathTarget.Position> positions = presenter.positions();
        if (positions.isEmpty()) {
            return;
        }
        new MenuItem(menu, SWT.SEPARATOR);
        for (PathTarget.Position at : positions) {
            MenuItem head = new MenuItem(menu, SWT.CASCADE);
            head.setText("Mover no. " + at.position() + " in " + condition.replace("&", "&&"));
            head.setData("tramontane.id", "airpath.mover:" + at.position());
            Menu below = new Menu(head);
            head.setMenu(below);
            Optional<FailedMover.State> now = presenter.failed(at);
            state(below, "works", now.isEmpty(), at, Optional.empty());
            for (FailedMover.State how : FailedMover.State.values()) {
                state(below, how.word(), now.equals(Optional.of(how)), at, Optional.of(how));
            }
        }
    }

    private void state(Menu menu, String text, boolean holds, PathTarget.Position at, Optional<FailedMover.State> how) {
        MenuItem item = new MenuItem(menu, SWT.RADIO);
        item.setText(text);
        item.setSelection(holds);
        item.addListener(SWT.Selection, event -> {
            if (item.getSelection() && !holds) {
                desk.edit(presenter.fail(condition, at, how));
            }
        });
    }

    private static void item(Menu menu, String text, boolean enabled, Runnable run) {
        MenuItem item = new MenuItem(menu, SWT.PUSH);
        item.setText(text);
        item.setEnabled(enabled);
        item.addListener(SWT.Selection, event -> run.run());
    }

    private void explain(PathTarget target) {
        List<Passage> passages = presenter.state().design().airPath().passages();
        boolean pressure = presenter.state().by() == ColourBy.PRESSURE;
        switch (target) {
            case PathTarget.Chamber(String id) -> desk.explain(new FigureKey(pressure ? "airflow.bay.pressure" : "thermal.air.temperature", id, front));
            case PathTarget.Joint(int passage) -> desk.explain(new FigureKey("airflow.passage.flow", passages.get(passage).id(), front));
            case PathTarget.Position(int passage, int position) -> desk.explain(new FigureKey("airflow.bank.flow", passages.get(passage).id(), front));
            case PathTarget.Outside outside -> desk.explain(new FigureKey("airflow.total.flow", "", front));
        }
    }

    private void rename() {
        Optional<Subject> subject = presenter.subject().filter(each -> !each.isOutside());
        Optional<Box> box = presenter.state().selected().flatMap(presenter::box);
        if (subject.isEmpty() || box.isEmpty()) {
            return;
        }
        finishNaming(false);
        drag = Drag.NONE;
        Text text = new Text(canvas, SWT.BORDER | SWT.SINGLE);
        text.setData("tramontane.id", "airpath.name");
        text.setText(subject.get().id());
        int width = Math.max(140, (int) (box.get().width() * view.zoom()));
        int height = text.computeSize(SWT.DEFAULT, SWT.DEFAULT).y;
        text.setBounds((int) (box.get().middle().x() * view.zoom() + view.x()) - width / 2, (int) (box.get().middle().y() * view.zoom() + view.y()) - height / 2,
                width, height);
        text.selectAll();
        text.addListener(SWT.DefaultSelection, event -> finishNaming(true));
        text.addListener(SWT.FocusOut, event -> finishNaming(true));
        text.addListener(SWT.Traverse, event -> {
            if (event.detail == SWT.TRAVERSE_ESCAPE) {
                event.doit = false;
                finishNaming(false);
            }
        });
        naming = Optional.of(text);
        text.setFocus();
    }

    private void finishNaming(boolean take) {
        Optional<Text> field = naming;
        naming = Optional.empty();
        field.filter(text -> !text.isDisposed()).ifPresent(text -> {
            String name = text.getText();
            text.dispose();
            if (take && presenter.subject().filter(subject -> !subject.id().equals(name)).isPresent()) {
                desk.edit(presenter.rename(name));
            }
            canvas.setFocus();
        });
    }

    private void colourBy(ColourBy chosen) {
        by.select(chosen.ordinal());
        memory.put("by", chosen.name());
        presenter.colourBy(chosen);
        refresh();
    }

    private void toggleTable() {
        boolean shown = sash.getMaximizedControl() == null;
        sash.setMaximizedControl(shown ? canvas : null);
        memory.put("table", shown ? "hidden" : "shown");
    }

    // -- commands --

    @Override
    public List<Command> commands() {
        return List.of(
                Command.of("airpath.addBay", "Add bay", "Adds a bay behind the selected one.", each -> addBay()).keys("Ctrl+Shift+B")
                        .icon(Icon.read(PathView.class, "addbay.svg")),
                Command.of("airpath.connect", "Connect…", "Begins a passage at the selected bay.", each -> connect())
                        .icon(Icon.read(PathView.class, "connect.svg")),
                Command.of("airpath.fit", "Fit", "Shows all of the picture.", each -> {
                    fit();
                    canvas.redraw();
                }).icon(Icon.read(Icon.class, "icons/fit.svg")),
                Command.of("airpath.table", "Table", "Shows or hides the same as a table.", each -> toggleTable()).keys("Ctrl+Shift+T")
                        .icon(Icon.read(PathView.class, "table.svg")),
                Command.of("airpath.arrange", "Arrange bays", "Puts every bay back where the layout has it.", each -> desk.edit(presenter.releaseAll())));
    }

    @Override
    public Map<String, Runnable> handlers() {
        Map<String, Runnable> handlers = new java.util.HashMap<>(Map.of(Command.ZOOM_IN, () -> zoom(FACTOR * FACTOR), Command.ZOOM_OUT,
                () -> zoom(1 / FACTOR / FACTOR), Command.FIT, () -> {
                    fit();
                    canvas.redraw();
                }));
        if (presenter.subject().filter(subject -> !subject.isOutside()).isPresent()) {
            handlers.put(Command.DELETE, () -> desk.edit(presenter.remove()));
            handlers.put(Command.RENAME, this::rename);
        }
        return handlers;
    }
}
