package tramontane.desktop.internal.views;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.eclipse.swt.SWT;
import org.eclipse.swt.custom.ScrolledComposite;
import org.eclipse.swt.graphics.Point;
import org.eclipse.swt.layout.GridData;
import org.eclipse.swt.layout.GridLayout;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Combo;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Menu;
import org.eclipse.swt.widgets.MenuItem;
import org.eclipse.swt.widgets.Table;
import org.eclipse.swt.widgets.TableColumn;
import org.eclipse.swt.widgets.TableItem;
import org.eclipse.swt.widgets.Text;
import tramontane.analysis.Severity;
import tramontane.desktop.Desk;
import tramontane.desktop.Icon;
import tramontane.desktop.PageType;
import tramontane.desktop.Palette;
import tramontane.desktop.Scene;
import tramontane.desktop.View;
import tramontane.desktop.internal.pages.CurveTable;
import tramontane.desktop.internal.pages.Known;
import tramontane.desktop.internal.pages.Row;
import tramontane.desktop.internal.pages.Sheet;
import tramontane.desktop.internal.pages.Sheets;
import tramontane.desktop.internal.window.InnerDesk;
import tramontane.model.Design;
import tramontane.model.Shape;
import tramontane.model.Value;
import tramontane.model.edit.FieldPath;
import tramontane.model.edit.Subject;

/** The fields of what is selected. */
final class PropertiesView implements View {

    private static final String NOT_GIVEN = "not given";
    private static final int MARGIN = 16;
    private static final int STEP = 12;
    private static final int NARROWEST_LABEL = 96;
    private static final int WIDEST_LABEL = 176;
    /** Wider fields are no better to read. */
    private static final int WIDEST = 620;
    private static final String RULE = "rule";

    private final Desk desk;
    private final ScrolledComposite scroll;
    private final List<RowWidgets> rows = new ArrayList<>();
    /** Texts that could not be taken over, so that they are still there when the page is shown again. */
    private final Map<List<Object>, String> drafts = new HashMap<>();
    /** Tables that could not be taken over yet. */
    private final Map<List<Object>, CurveTable> tables = new HashMap<>();
    /** Half-typed texts by their fields, on the way from old widgets to new ones. */
    private final Map<Object, String> half = new HashMap<>();
    private final Map<String, Icon> icons = new HashMap<>();
    private List<PageSlot> slots = List.of();
    private final List<Label> labels = new ArrayList<>();
    private Composite page;
    private Label title;
    private Label caption;
    private Label problems;
    private Label figuresTitle;
    private Table figures;
    private Known known = Known.NOTHING;
    private Palette palette;
    private Optional<Sheet> shown = Optional.empty();
    private Optional<Subject> shownBefore = Optional.empty();
    private Optional<Scene> last = Optional.empty();
    private List<Object> built = List.of();
    private boolean updating;

    PropertiesView(Composite parent, Desk desk) {
        this.desk = desk;
        scroll = new ScrolledComposite(parent, SWT.V_SCROLL);
        scroll.setExpandHorizontal(true);
        scroll.setExpandVertical(true);
        scroll.setShowFocusedControl(true);
        scroll.setData("tramontane.id", "properties");
        scroll.addListener(SWT.Resize, event -> fit());
        scroll.getVerticalBar().setIncrement(24);
    }

    /** The widgets of one row. */
    private abstract static class RowWidgets {
        /** Shows a row of the same skeleton; true if it has become higher or lower. */
        abstract boolean show(Row row);

        /** What has been typed and not been taken over or refused yet. */
        Optional<String> half() {
            return Optional.empty();
        }

        /** Where its focus goes. */
        Optional<Control> focus() {
            return Optional.empty();
        }
    }

    @Override
    public Control control() {
        return scroll;
    }

    @Override
    public boolean focus() {
        return rows.stream().flatMap(row -> row.focus().stream()).findFirst().map(Control::setFocus).orElseGet(scroll::forceFocus);
    }

    // --- showing --------------------------------------------------------------------------------------------------------------

    @Override
    public void show(Scene scene) {
        boolean recolour = scene.palette() != palette;
        if (!recolour && last.filter(old -> same(old, scene)).isPresent()) {
            return;
        }
        Optional<Scene> before = last;
        boolean otherDocument = last.filter(old -> old.document().key().equals(scene.document().key())).isEmpty();
        known = Known.of(desk.engine());
        last = Optional.of(scene);
        palette = scene.palette();
        Optional<Sheet> sheet = scene.selection().flatMap(subject -> Sheets.of(scene, known, subject));
        List<Object> skeleton = new ArrayList<>();
        sheet.ifPresent(each -> {
            skeleton.add(each.subject().kind());
            skeleton.add(each.skeleton());
        });
        skeleton.add(sheet.isPresent());
        List<PageType> pages = scene.selection().filter(subject -> sheet.isPresent()).map(subject -> pages(scene, subject)).orElse(List.of());
        skeleton.add(pages);
        boolean otherSubject = otherDocument || !sheet.map(Sheet::subject).equals(shown.map(Sheet::subject));
        updating = true;
        boolean rebuild = recolour || page == null || !skeleton.equals(built);
        if (rebuild) {
            scroll.setRedraw(false);
        }
        try {
            if (otherSubject) {
                keep(before);
            }
            shownBefore = shown.map(Sheet::subject);
            shown = sheet;
            boolean moved = rebuild;
            if (rebuild) {
                built = skeleton;
                rebuild(sheet, pages);
            }
            moved |= update(sheet);
            slots.forEach(slot -> slot.show(scene, scene.selection().orElseThrow()));
            if (moved) {
                fit();
            }
            if (otherSubject) {
                scroll.setOrigin(0, 0);
            }
        } finally {
            if (rebuild) {
                scroll.setRedraw(true);
            }
            updating = false;
        }
    }

    private static boolean same(Scene before, Scene scene) {
        return before.document().design() == scene.document().design() && before.document().problems().equals(scene.document().problems())
                && before.document().key().equals(scene.document().key()) && before.results() == scene.results()
                && before.front().equals(scene.front()) && before.units().equals(scene.units()) && before.selection().equals(scene.selection());
    }

    /** Widgets are about to serve another subject: what is half typed is kept for when its own is shown again. */
    private void keep(Optional<Scene> before) {
        before.ifPresent(scene -> shown.ifPresent(sheet -> rows.forEach(row -> row.half().ifPresent(text -> row.focus().ifPresent(field ->
                drafts.put(List.of(scene.document().key(), sheet.subject(), field.getData("path")), text))))));
    }

    private boolean within(Control control) {
        for (Composite each = control.getParent(); each != null; each = each.getParent()) {
            if (each == scroll) {
                return true;
            }
        }
        return false;
    }

    /** The pages that bundles bring for a subject; one that throws when asked has none. */
    private List<PageType> pages(Scene scene, Subject subject) {
        return ((InnerDesk) desk).pageTypes().stream().filter(type -> {
            try {
                return type.shows(scene.document().design(), subject);
            } catch (RuntimeException | LinkageError thrown) {
                desk.failed("The page " + type.id() + " failed: " + thrown.getMessage(), thrown);
                return false;
            }
        }).toList();
    }

    private void rebuild(Optional<Sheet> sheet, List<PageType> pages) {
        // the field that has the focus gets it back, with its text and caret, if it is still there
        Optional<FieldPath> focused = Optional.empty();
        Point caret = new Point(0, 0);
        Control focus = scroll.getDisplay().getFocusControl();
        if (focus != null && within(focus) && focus.getData("path") instanceof FieldPath path) {
            focused = Optional.of(path);
            caret = focus instanceof Text text ? text.getSelection() : caret;
        }
        Point origin = scroll.getOrigin();
        half.clear();
        if (sheet.map(Sheet::subject).equals(shownBefore)) {
            rows.forEach(row -> row.half().ifPresent(text -> row.focus().ifPresent(field -> half.put(field.getData("path"), text))));
        }
        rows.clear();
        labels.clear();
        Composite old = page;
        page = new Composite(scroll, SWT.NONE);
        GridLayout layout = new GridLayout(2, false);
        layout.marginWidth = MARGIN;
        layout.marginHeight = MARGIN;
        layout.horizontalSpacing = 8;
        layout.verticalSpacing = 6;
        page.setLayout(layout);
        page.addListener(SWT.MouseDown, event -> scroll.forceFocus());
        title = wrapped(2);
        title.setFont(desk.bold());
        caption = wrapped(2);
        problems = wrapped(2);
        List<Row> all = sheet.map(Sheet::rows).orElse(List.of());
        int own = (int) all.stream().takeWhile(row -> row.editor() != Row.Editor.GROUP).count();
        all.subList(0, own).forEach(this::row);
        // what it does stands beneath its own fields, where it can be seen without passing all that analyses want to know
        figuresTitle = wrapped(2);
        ((GridData) figuresTitle.getLayoutData()).verticalIndent = 8;
        figuresTitle.setFont(desk.bold());
        figures = figures();
        slots = pages.stream().map(type -> new PageSlot(type, desk, page)).toList();
        all.subList(own, all.size()).forEach(this::row);
        Page.colour(scroll, palette);
        for (Control each : page.getChildren()) {
            if (each.getData(RULE) != null) {
                each.setBackground(palette.line());
            }
        }
        caption.setForeground(palette.muted());
        problems.setForeground(palette.notMet());
        scroll.setContent(page);
        if (old != null) {
            old.dispose();
        }
        scroll.setOrigin(origin);
        restore(focused, caret);
    }

    private void restore(Optional<FieldPath> focused, Point caret) {
        for (RowWidgets each : rows) {
            Optional<Control> control = each.focus().filter(found -> focused.filter(found.getData("path")::equals).isPresent());
            if (control.isPresent()) {
                control.get().setFocus();
                if (control.get() instanceof Text text) {
                    text.setSelection(caret);
                }
                return;
            }
        }
    }

    private Label wrapped(int columns) {
        Label label = new Label(page, SWT.WRAP);
        GridData data = new GridData(SWT.FILL, SWT.TOP, true, false, columns, 1);
        data.widthHint = 160;
        label.setLayoutData(data);
        return label;
    }

    private boolean update(Optional<Sheet> sheet) {
        boolean moved = set(title, sheet.map(Sheet::title).orElse("Nothing is selected"));
        moved |= set(caption, sheet.map(Sheet::caption).orElse("Select something in the design tree or in a drawing to see and change its properties."));
        moved |= set(problems, sheet.map(each -> String.join("\n", each.problems())).orElse(""));
        List<Row> now = sheet.map(Sheet::rows).orElse(List.of());
        for (int i = 0; i < rows.size() && i < now.size(); i++) {
            moved |= rows.get(i).show(now.get(i));
        }
        List<Sheet.Line> lines = sheet.map(Sheet::figures).orElse(List.of());
        moved |= set(figuresTitle, lines.isEmpty() ? "" : "What it does" + (sheet.get().front().isEmpty() ? "" : " – " + sheet.get().front()));
        return figures(lines) || moved;
    }

    private static boolean set(Label label, String text) {
        GridData data = (GridData) label.getLayoutData();
        boolean hide = text.isEmpty();
        // an ampersand would underline the letter behind it
        String plain = text.replace("&", "&&");
        if (label.getText().equals(plain) && data.exclude == hide) {
            return false;
        }
        label.setText(plain);
        data.exclude = hide;
        label.setVisible(!hide);
        return true;
    }

    private void fit() {
        if (page != null && !page.isDisposed()) {
            int width = scroll.getClientArea().width;
            ((GridLayout) page.getLayout()).marginRight = Math.max(0, width - WIDEST);
            int names = Math.clamp((Math.min(width, WIDEST) - 2 * MARGIN) * 36 / 100, NARROWEST_LABEL, WIDEST_LABEL);
            for (Label label : labels) {
                GridData data = (GridData) label.getLayoutData();
                data.widthHint = names - data.horizontalIndent;
            }
            int wide = Math.max(160, Math.min(width, WIDEST) - 2 * MARGIN);
            int[] columns = {wide * 45 / 100, wide * 30 / 100, wide * 25 / 100 - 2};
            for (int i = 0; i < columns.length; i++) {
                if (figures.getColumn(i).getWidth() != columns[i]) {
                    figures.getColumn(i).setWidth(columns[i]);
                }
            }
            page.layout(true);
            scroll.setMinSize(100, page.computeSize(Math.max(100, width), SWT.DEFAULT).y);
        }
    }

    // --- rows -----------------------------------------------------------------------------------------------------------------

    private void row(Row row) {
        rows.add(switch (row.editor()) {
            case GROUP, PART, LIST, ITEM -> new Heading(row);
            case LINE -> new Line(row);
            case PICK, TYPE_OR_PICK, YES_NO -> new Pick(row);
            case NAMES -> new Names(row);
            case TABLE -> new Curve(row);
            case KEPT -> new Kept(row);
        });
    }

    private Label label(Row row) {
        Label label = new Label(page, SWT.WRAP);
        label.setText(row.label().replace("&", "&&"));
        GridData data = new GridData(SWT.FILL, SWT.TOP, false, false);
        data.horizontalIndent = row.depth() * STEP;
        data.verticalIndent = switch (row.editor()) {
            case LINE, KEPT -> 5;
            default -> 8;
        };
        label.setLayoutData(data);
        labels.add(label);
        return label;
    }

    private static void place(Control control) {
        GridData data = new GridData(SWT.FILL, SWT.TOP, true, false);
        data.widthHint = 120;
        control.setLayoutData(data);
    }

    private Design design() {
        return desk.scene().document().design();
    }

    private Subject subject() {
        return shown.orElseThrow().subject();
    }

    private List<Object> draftKey(Row row) {
        return List.of(last.orElseThrow().document().key(), subject(), row.path());
    }

    /** Takes a change over; gives why it cannot be, empty text where it was. */
    private String take(Sheets.Change change) {
        return switch (change) {
            case Sheets.Wrong(String sentence) -> sentence;
            case Sheets.Unchanged() -> "";
            case Sheets.Changed(var edit) -> {
                boolean follows = !edit.subject().equals(Optional.of(subject()));
                desk.edit(follows ? edit : edit.selecting());
                yield "";
            }
        };
    }

    private String typed(Row row, String text) {
        return take(Sheets.typed(design(), known, subject(), row, text, desk.scene().units()));
    }

    private void done(FieldBox box, String problem) {
        if (!box.isDisposed() && box.message(problem, !problem.isEmpty())) {
            fit();
        }
    }

    /** A typed text with its unit. */
    private final class Line extends RowWidgets {
        private final Label label;
        private final FieldBox box;
        private final Text text;
        private Row row;
        /** What was put into the field last; anything else was typed. */
        private String put = "";

        Line(Row first) {
            row = first;
            label = label(first);
            box = new FieldBox(page, palette, true, parent -> new Text(parent, SWT.SINGLE));
            text = (Text) box.inner();
            text.setData("path", first.path());
            text.setData("tramontane.id", "field:" + first.path());
            place(box);
            text.addListener(SWT.FocusIn, event -> {
                if (!isTyped()) {
                    put(row.written());
                    text.selectAll();
                }
            });
            text.addListener(SWT.FocusOut, event -> commit(true));
            text.addListener(SWT.Modify, event -> {
                box.edited(isTyped());
                box.unit(unit());
            });
            text.addListener(SWT.KeyDown, event -> {
                if (event.keyCode == SWT.CR || event.keyCode == SWT.KEYPAD_CR) {
                    commit(false);
                    if (!text.isDisposed() && !isTyped()) {
                        put(row.written());
                        text.selectAll();
                    }
                } else if (event.keyCode == SWT.ESC) {
                    drafts.remove(draftKey(row));
                    put(row.written());
                    text.selectAll();
                    done(box, row.problem());
                }
            });
            Optional.ofNullable(drafts.get(draftKey(first))).ifPresent(text::setText);
            Optional.ofNullable(half.get(first.path())).ifPresent(typed -> {
                put = typed.equals(first.written()) ? first.text() : first.written();
                text.setText(typed);
            });
        }

        @Override
        Optional<String> half() {
            return isTyped() && !drafts.containsKey(draftKey(row)) ? Optional.of(text.getText()) : Optional.empty();
        }

        private boolean isTyped() {
            return !text.getText().equals(put);
        }

        private void put(String now) {
            put = now;
            if (!text.getText().equals(now)) {
                text.setText(now);
            }
            box.edited(false);
        }

        /** The unit that a plain number is in; none beside a text that has its own. */
        private String unit() {
            return text.getText().matches("[-+−.,;\\d\\seE]*") ? row.unit() : "";
        }

        private void commit(boolean leaving) {
            if (text.isDisposed() || updating) {
                return; // widgets that are being replaced have nothing to say
            }
            if (!isTyped()) {
                if (leaving) {
                    put(row.text());
                }
                return;
            }
            List<Object> key = draftKey(row);
            String typed = text.getText();
            put = typed; // what is shown while the edit goes round is taken over
            String problem = typed(row, typed);
            if (problem.isEmpty()) {
                drafts.remove(key);
                if (!text.isDisposed()) {
                    put(leaving ? row.text() : row.written());
                    done(box, row.problem());
                }
            } else {
                drafts.put(key, typed);
                put = row.written().equals(typed) ? "\u0000" : row.written();
                box.edited(true);
                done(box, problem);
            }
        }

        @Override
        boolean show(Row now) {
            boolean other = !now.path().equals(row.path());
            row = now;
            box.unit(unit());
            text.setMessage(now.standard().isEmpty() ? "" : now.standard());
            String hover = now.hover();
            if (!hover.equals(label.getToolTipText())) {
                label.setToolTipText(hover);
                text.setToolTipText(hover);
            }
            String draft = drafts.get(draftKey(now));
            if (draft != null) {
                put = now.written().equals(draft) ? "\u0000" : now.written();
                if (!text.getText().equals(draft)) {
                    text.setText(draft);
                }
                box.edited(true);
                String problem = Sheets.typed(design(), known, subject(), now, draft, desk.scene().units()) instanceof Sheets.Wrong(String sentence)
                        ? sentence : now.problem();
                return box.message(problem, true);
            }
            boolean carried = half.remove(now.path()) != null;
            if (!carried && (!isTyped() || other)) {
                String next = text.isFocusControl() ? now.written() : now.text();
                if (!text.getText().equals(next)) {
                    Point caret = text.getSelection();
                    put(next);
                    if (text.isFocusControl()) {
                        text.setSelection(caret);
                    }
                } else {
                    put = next;
                }
            }
            return box.message(now.problem(), now.serious());
        }

        @Override
        Optional<Control> focus() {
            return Optional.of(text);
        }
    }

    /** One of some words, typed or not. */
    private final class Pick extends RowWidgets {
        private final Label label;
        private final FieldBox box;
        private final Combo combo;
        private final boolean free;
        private Row row;

        Pick(Row first) {
            row = first;
            free = first.editor() == Row.Editor.TYPE_OR_PICK;
            label = label(first);
            box = new FieldBox(page, palette, false, parent -> new Combo(parent, SWT.DROP_DOWN | (free ? SWT.NONE : SWT.READ_ONLY)));
            combo = (Combo) box.inner();
            combo.setVisibleItemCount(20);
            combo.setData("path", first.path());
            combo.setData("tramontane.id", "field:" + first.path());
            place(box);
            combo.addListener(SWT.Selection, event -> commit());
            // the wheel is for scrolling the page
            combo.addListener(SWT.MouseVerticalWheel, event -> event.doit = combo.isFocusControl());
            if (free) {
                combo.addListener(SWT.FocusOut, event -> commit());
                combo.addListener(SWT.DefaultSelection, event -> commit());
                Optional.ofNullable(drafts.get(draftKey(first))).ifPresent(combo::setText);
            }
        }

        private void commit() {
            if (updating || combo.isDisposed()) {
                return;
            }
            boolean none = !free && !row.required() && combo.getSelectionIndex() == 0;
            String typed = none ? "" : combo.getText();
            if (typed.equals(row.text())) {
                drafts.remove(draftKey(row));
                done(box, row.problem());
                return;
            }
            List<Object> key = draftKey(row);
            String problem = typed(row, typed);
            if (problem.isEmpty()) {
                drafts.remove(key);
                done(box, row.problem());
            } else {
                if (free) {
                    drafts.put(key, typed);
                }
                done(box, problem);
            }
        }

        @Override
        boolean show(Row now) {
            row = now;
            List<String> items = new ArrayList<>();
            if (!free && !now.required()) {
                items.add(NOT_GIVEN + (now.standard().isEmpty() ? "" : ": " + now.standard()));
            }
            items.addAll(now.choices());
            if (!free && !now.text().isEmpty() && !now.choices().contains(now.text())) {
                items.add(now.text());
            }
            if (!List.of(combo.getItems()).equals(items)) {
                combo.setItems(items.toArray(String[]::new));
            }
            if (!now.hover().equals(label.getToolTipText())) {
                label.setToolTipText(now.hover());
                combo.setToolTipText(now.hover());
            }
            String draft = drafts.get(draftKey(now));
            if (free) {
                String text = draft == null ? now.text() : draft;
                if (!combo.getText().equals(text) && (draft != null || !combo.isFocusControl() || !now.given())) {
                    combo.setText(text);
                }
            } else {
                int index = now.text().isEmpty() ? (now.required() ? -1 : 0) : items.indexOf(now.text());
                if (index < 0) {
                    combo.deselectAll();
                } else if (combo.getSelectionIndex() != index) {
                    combo.select(index);
                }
            }
            return draft == null && box.message(now.problem(), now.serious());
        }

        @Override
        Optional<Control> focus() {
            return Optional.of(combo);
        }
    }

    /** Some of some names, in a menu of checks. */
    private final class Names extends RowWidgets {
        private final Label label;
        private final FieldBox box;
        private final Button button;
        private Row row;

        Names(Row first) {
            row = first;
            label = label(first);
            box = new FieldBox(page, palette, false, parent -> new Button(parent, SWT.PUSH | SWT.LEFT));
            button = (Button) box.inner();
            button.setData("path", first.path());
            button.setData("tramontane.id", "field:" + first.path());
            place(box);
            button.addListener(SWT.Selection, event -> open());
        }

        private List<String> chosen() {
            return row.text().isEmpty() ? List.of() : List.of(row.text().split(", "));
        }

        private void open() {
            Menu menu = new Menu(button);
            List<String> all = new ArrayList<>(row.choices());
            chosen().stream().filter(name -> !all.contains(name)).forEach(all::add);
            for (String name : all) {
                MenuItem item = new MenuItem(menu, SWT.CHECK);
                item.setText(name);
                item.setSelection(values().contains(name));
                item.addListener(SWT.Selection, event -> {
                    List<String> now = new ArrayList<>(values());
                    if (!now.remove(name)) {
                        now.add(name);
                    }
                    Optional<Value> value = now.isEmpty() ? Optional.empty()
                            : Optional.of(new Value.Items(now.stream().<Value>map(Value.Text::new).toList()));
                    done(box, take(Sheets.change(design(), known, subject(), row.path(), value)));
                });
            }
            menu.addListener(SWT.Hide, event -> button.getDisplay().asyncExec(menu::dispose));
            menu.setLocation(button.toDisplay(0, button.getSize().y));
            menu.setVisible(true);
        }

        /** The names as they stand in the design, whatever commas are in them. */
        private List<String> values() {
            return subject().tree(design()).flatMap(row.path()::in).map(value -> value instanceof Value.Items(List<Value> items)
                    ? items.stream().map(item -> item instanceof Value.Text(String name) ? name : "").toList() : List.<String>of()).orElse(List.of());
        }

        @Override
        boolean show(Row now) {
            row = now;
            String text = now.text().isEmpty() ? NOT_GIVEN : now.text();
            if (!button.getText().equals(text.replace("&", "&&"))) {
                button.setText(text.replace("&", "&&"));
            }
            label.setToolTipText(now.hover());
            button.setToolTipText(now.hover());
            return box.message(now.problem(), now.serious());
        }

        @Override
        Optional<Control> focus() {
            return Optional.of(button);
        }
    }

    /** A heading of a group, an object, a list or an item, with what can be done with the whole. */
    private final class Heading extends RowWidgets {
        private final Label label;
        private final FieldBox box;
        private final Map<String, Button> buttons = new LinkedHashMap<>();
        private Row row;

        Heading(Row first) {
            row = first;
            boolean group = first.editor() == Row.Editor.GROUP;
            if (group) {
                Composite rule = new Composite(page, SWT.NONE);
                GridData data = new GridData(SWT.FILL, SWT.TOP, true, false, 2, 1);
                data.verticalIndent = 8;
                data.heightHint = 1;
                rule.setLayoutData(data);
                rule.setData(RULE, Boolean.TRUE);
            }
            label = label(first);
            label.setFont(group || first.editor() == Row.Editor.ITEM ? desk.bold() : null);
            if (group) {
                label.setText(first.label().isEmpty() ? "" : Character.toUpperCase(first.label().charAt(0)) + first.label().substring(1));
            }
            box = new FieldBox(page, palette, false, parent -> {
                Composite bar = new Composite(parent, SWT.NONE);
                GridLayout layout = new GridLayout(4, false);
                layout.marginWidth = 0;
                layout.marginHeight = 0;
                layout.horizontalSpacing = 4;
                bar.setLayout(layout);
                return bar;
            });
            place(box);
            Composite bar = (Composite) box.inner();
            switch (first.editor()) {
                case LIST -> button(bar, "Add", "add", this::add);
                case ITEM -> {
                    button(bar, "", "up", () -> take(Sheets.move(design(), known, subject(), row, -1))).setToolTipText("Move up");
                    button(bar, "", "down", () -> take(Sheets.move(design(), known, subject(), row, 1))).setToolTipText("Move down");
                    button(bar, "", "remove", this::remove).setToolTipText("Delete " + first.label());
                }
                default -> {
                    if (first.given()) {
                        button(bar, "Remove", "remove", this::remove).setToolTipText("Take out " + first.label() + " as a whole");
                    } else {
                        button(bar, "Add", "add", this::add);
                    }
                }
            }
        }

        private Button button(Composite bar, String text, String icon, Runnable run) {
            Button button = new Button(bar, SWT.PUSH | SWT.FLAT);
            button.setText(text);
            button.setImage(desk.image(icons.computeIfAbsent(icon, name -> Icon.read(PropertiesView.class, "/tramontane/desktop/icons/" + name + ".svg"))));
            button.setData("tramontane.id", icon + ":" + row.path());
            button.setData("path", row.path().member("\u0000" + icon));
            button.addListener(SWT.Selection, event -> run.run());
            buttons.put(icon, button);
            return button;
        }

        private void add() {
            boolean named = row.shape() instanceof Shape.AmountsByName;
            if (row.choices().isEmpty() || row.editor() != Row.Editor.LIST) {
                if (!named) {
                    done(box, take(Sheets.add(design(), known, subject(), row, "")));
                }
                return;
            }
            Menu menu = new Menu(box);
            for (String choice : row.choices()) {
                MenuItem item = new MenuItem(menu, SWT.PUSH);
                item.setText(choice.replace("&", "&&"));
                item.addListener(SWT.Selection, event -> done(box, take(Sheets.add(design(), known, subject(), row, choice))));
            }
            menu.addListener(SWT.Hide, event -> box.getDisplay().asyncExec(menu::dispose));
            menu.setVisible(true);
        }

        private void remove() {
            String problem = take(Sheets.remove(design(), known, subject(), row));
            done(box, problem);
        }

        @Override
        boolean show(Row now) {
            row = now;
            label.setToolTipText(now.hover());
            boolean named = now.shape() instanceof Shape.AmountsByName;
            enable("add", !named || !now.choices().isEmpty());
            enable("up", now.index() > 0);
            enable("down", now.index() < now.count() - 1);
            return box.message(now.problem(), now.serious());
        }

        private void enable(String name, boolean can) {
            Button button = buttons.get(name);
            if (button != null && button.getEnabled() != can) {
                button.setEnabled(can);
            }
        }
    }

    /** Lists of numbers as a table. */
    private final class Curve extends RowWidgets {
        private final FieldBox box;
        private final CurveGrid grid;
        private Row row;
        private int high;
        private String own = "";

        Curve(Row first) {
            row = first;
            box = new FieldBox(page, palette, false, parent -> new CurveGrid(parent, desk, palette, first.table().orElseThrow(),
                    this::changed, problem -> {
                        own = problem;
                        said(problem);
                    }));
            grid = (CurveGrid) box.inner();
            grid.setData("tramontane.id", "table:" + first.path());
            GridData data = new GridData(SWT.FILL, SWT.TOP, true, false, 2, 1);
            data.horizontalIndent = first.depth() * STEP;
            data.widthHint = 200;
            box.setLayoutData(data);
            high = grid.height();
        }

        private String changed(CurveTable table) {
            List<Object> key = draftKey(row);
            String problem = take(Sheets.table(design(), known, subject(), row, table));
            if (problem.isEmpty()) {
                tables.remove(key);
            } else {
                tables.put(key, table);
            }
            return problem;
        }

        private void said(String problem) {
            done(box, problem.isEmpty() ? row.problem() : problem);
        }

        @Override
        boolean show(Row now) {
            row = now;
            CurveTable draft = tables.get(draftKey(now));
            grid.show(draft == null ? now.table().orElseThrow() : draft);
            own = draft != null && Sheets.table(design(), known, subject(), now, draft) instanceof Sheets.Wrong(String sentence) ? sentence : "";
            int before = high;
            high = grid.height();
            return box.message(own.isEmpty() ? now.problem() : own, !own.isEmpty() || now.serious()) || before != high;
        }
    }

    /** What nobody here understands. */
    private final class Kept extends RowWidgets {
        private final Label label;
        private final Text text;

        Kept(Row first) {
            label = label(first);
            text = new Text(page, SWT.READ_ONLY | SWT.MULTI | SWT.WRAP);
            GridData data = new GridData(SWT.FILL, SWT.TOP, true, false);
            data.widthHint = 120;
            data.verticalIndent = 5;
            text.setLayoutData(data);
        }

        @Override
        boolean show(Row now) {
            label.setToolTipText(now.hover());
            text.setToolTipText(now.hover());
            text.setForeground(palette.muted());
            if (text.getText().equals(now.text())) {
                return false;
            }
            text.setText(now.text());
            return true;
        }
    }

    // --- figures --------------------------------------------------------------------------------------------------------------

    private Table figures() {
        Table table = new Table(page, SWT.FULL_SELECTION | SWT.NO_SCROLL);
        table.setData("tramontane.id", "properties:figures");
        new TableColumn(table, SWT.LEFT);
        new TableColumn(table, SWT.RIGHT);
        new TableColumn(table, SWT.LEFT);
        GridData data = new GridData(SWT.FILL, SWT.TOP, true, false, 2, 1);
        data.widthHint = 160;
        table.setLayoutData(data);
        table.addListener(SWT.DefaultSelection, event -> explain(table.getSelectionIndex()));
        table.addListener(SWT.MouseDown, event -> {
            TableItem item = table.getItem(new Point(event.x, event.y));
            if (item != null && (event.stateMask & SWT.MOD1) != 0) {
                explain(table.indexOf(item));
            }
        });
        table.addListener(SWT.MouseMove, event -> {
            TableItem item = table.getItem(new Point(event.x, event.y));
            String hover = item == null ? null : shown.map(each -> each.figures().get(table.indexOf(item)).hover()).orElse(null);
            if (hover == null ? table.getToolTipText() != null : !hover.equals(table.getToolTipText())) {
                table.setToolTipText(hover);
            }
        });
        Menu menu = new Menu(table);
        MenuItem from = new MenuItem(menu, SWT.PUSH);
        from.setText("Where from");
        from.addListener(SWT.Selection, event -> explain(table.getSelectionIndex()));
        table.setMenu(menu);
        return table;
    }

    private void explain(int index) {
        shown.filter(sheet -> index >= 0 && index < sheet.figures().size()).ifPresent(sheet -> desk.explain(sheet.figures().get(index).key()));
    }

    private boolean figures(List<Sheet.Line> lines) {
        GridData data = (GridData) figures.getLayoutData();
        boolean moved = figures.getItemCount() != lines.size() || data.exclude != lines.isEmpty();
        if (figures.getItemCount() != lines.size()) {
            figures.setItemCount(lines.size());
        }
        data.exclude = lines.isEmpty();
        figures.setVisible(!lines.isEmpty());
        data.heightHint = figures.getItemHeight() * lines.size();
        for (int i = 0; i < lines.size(); i++) {
            Sheet.Line line = lines.get(i);
            TableItem item = figures.getItem(i);
            String word = line.severity().map(Severity::word).orElse("");
            String[] texts = {line.label(), line.text(), word};
            for (int column = 0; column < texts.length; column++) {
                if (!item.getText(column).equals(texts[column])) {
                    item.setText(column, texts[column]);
                }
            }
            item.setForeground(line.stale() ? palette.stale() : palette.text());
            item.setForeground(2, line.stale() ? palette.stale() : line.severity().map(palette::of).orElse(palette.text()));
            item.setFont(1, desk.digits());
        }
        return moved;
    }
}
