package tramontane.desktop.internal.views;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.eclipse.jface.util.LocalSelectionTransfer;
import org.eclipse.jface.viewers.ColumnViewerToolTipSupport;
import org.eclipse.jface.viewers.IElementComparer;
import org.eclipse.jface.viewers.ISelection;
import org.eclipse.jface.viewers.ITreeContentProvider;
import org.eclipse.jface.viewers.StructuredSelection;
import org.eclipse.jface.viewers.StyledCellLabelProvider;
import org.eclipse.jface.viewers.TreeViewer;
import org.eclipse.jface.viewers.ViewerCell;
import org.eclipse.swt.SWT;
import org.eclipse.swt.custom.StyleRange;
import org.eclipse.swt.custom.TreeEditor;
import org.eclipse.swt.dnd.Clipboard;
import org.eclipse.swt.dnd.DND;
import org.eclipse.swt.dnd.DragSourceAdapter;
import org.eclipse.swt.dnd.DragSourceEvent;
import org.eclipse.swt.dnd.DropTargetAdapter;
import org.eclipse.swt.dnd.DropTargetEvent;
import org.eclipse.swt.dnd.TextTransfer;
import org.eclipse.swt.dnd.Transfer;
import org.eclipse.swt.graphics.Color;
import org.eclipse.swt.layout.GridData;
import org.eclipse.swt.layout.GridLayout;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.Event;
import org.eclipse.swt.widgets.Menu;
import org.eclipse.swt.widgets.MenuItem;
import org.eclipse.swt.widgets.Text;
import org.eclipse.swt.widgets.TreeItem;
import org.eclipse.swt.widgets.Widget;
import tramontane.analysis.Severity;
import tramontane.desktop.Command;
import tramontane.desktop.Desk;
import tramontane.desktop.Icon;
import tramontane.desktop.Palette;
import tramontane.desktop.Scene;
import tramontane.desktop.View;
import tramontane.desktop.internal.pages.DesignTree;
import tramontane.desktop.internal.pages.Known;
import tramontane.desktop.internal.pages.TreeNode;
import tramontane.model.Design;
import tramontane.model.edit.Edit;
import tramontane.model.edit.Edits;
import tramontane.model.edit.Subject;

/** The design as a tree. */
final class DesignTreeView implements View {

    private static final String CLOSED = "closed";

    private final Desk desk;
    private final Composite box;
    private final Text search;
    private final TreeViewer viewer;
    private final TreeEditor editor;
    private final Map<String, Icon> icons = new HashMap<>();
    private final Set<String> closed = new HashSet<>();
    private List<TreeNode> nodes = List.of();
    private Known known = Known.NOTHING;
    private Palette palette = Palette.LIGHT;
    private Optional<Scene> last = Optional.empty();
    private boolean drawing;

    DesignTreeView(Composite parent, Desk desk) {
        this.desk = desk;
        desk.memory("tramontane.design").get(CLOSED).ifPresent(text -> closed.addAll(List.of(text.split("\n"))));
        box = new Composite(parent, SWT.NONE);
        GridLayout layout = new GridLayout();
        layout.marginWidth = 0;
        layout.marginHeight = 0;
        layout.verticalSpacing = 0;
        box.setLayout(layout);
        search = new Text(box, SWT.SEARCH | SWT.ICON_SEARCH | SWT.ICON_CANCEL);
        search.setMessage("Search");
        search.setData("tramontane.id", "design:search");
        GridData field = new GridData(SWT.FILL, SWT.TOP, true, false);
        field.horizontalIndent = 4;
        search.setLayoutData(field);
        search.addListener(SWT.Modify, event -> last.ifPresent(this::draw));
        search.addListener(SWT.KeyDown, this::searchKey);
        viewer = new TreeViewer(box, SWT.MULTI | SWT.V_SCROLL | SWT.H_SCROLL | SWT.FULL_SELECTION);
        viewer.getTree().setLayoutData(new GridData(SWT.FILL, SWT.FILL, true, true));
        viewer.getTree().setData("tramontane.id", "design:tree");
        viewer.setUseHashlookup(true);
        viewer.setComparer(new ByKey());
        viewer.setContentProvider(new Content());
        viewer.setLabelProvider(new Labels());
        ColumnViewerToolTipSupport.enableFor(viewer);
        viewer.setInput(this);
        viewer.addSelectionChangedListener(event -> {
            if (!drawing) {
                selected().stream().flatMap(node -> node.subject().stream()).findFirst().ifPresent(subject -> desk.select(Optional.of(subject)));
            }
        });
        viewer.addDoubleClickListener(event -> selected().stream().findFirst().ifPresent(node -> {
            if (node.subject().isPresent()) {
                desk.open("tramontane.properties");
            } else {
                viewer.setExpandedState(node, !viewer.getExpandedState(node));
                opened(node.key(), viewer.getExpandedState(node));
            }
        }));
        viewer.getTree().addListener(SWT.Expand, event -> opened(event.item, true));
        viewer.getTree().addListener(SWT.Collapse, event -> opened(event.item, false));
        editor = new TreeEditor(viewer.getTree());
        editor.horizontalAlignment = SWT.LEFT;
        editor.grabHorizontal = true;
        menu();
        drag();
    }

    /** Lines of one tree and the next are the same by their key. */
    private static final class ByKey implements IElementComparer {
        @Override
        public boolean equals(Object a, Object b) {
            return a instanceof TreeNode one && b instanceof TreeNode other ? one.key().equals(other.key()) : a.equals(b);
        }

        @Override
        public int hashCode(Object element) {
            return element instanceof TreeNode node ? node.key().hashCode() : element.hashCode();
        }
    }

    private final class Content implements ITreeContentProvider {
        @Override
        public Object[] getElements(Object input) {
            return nodes.toArray();
        }

        @Override
        public Object[] getChildren(Object parent) {
            return ((TreeNode) parent).children().toArray();
        }

        @Override
        public Object getParent(Object element) {
            return parents(nodes, (TreeNode) element).orElse(null);
        }

        @Override
        public boolean hasChildren(Object element) {
            return !((TreeNode) element).children().isEmpty();
        }
    }

    private static Optional<TreeNode> parents(List<TreeNode> among, TreeNode of) {
        for (TreeNode node : among) {
            if (node.children().stream().anyMatch(child -> child.key().equals(of.key()))) {
                return Optional.of(node);
            }
            Optional<TreeNode> deeper = parents(node.children(), of);
            if (deeper.isPresent()) {
                return deeper;
            }
        }
        return Optional.empty();
    }

    /** Name, then the word of the worst that is said of it, then muted what is worth knowing. */
    private final class Labels extends StyledCellLabelProvider {
        @Override
        public void update(ViewerCell cell) {
            TreeNode node = (TreeNode) cell.getElement();
            StringBuilder text = new StringBuilder(node.label());
            List<StyleRange> styles = new ArrayList<>();
            node.severity().filter(severity -> severity != Severity.MET && severity != Severity.NOTE).ifPresent(severity -> {
                Color colour = node.stale() ? palette.stale() : palette.of(severity);
                styles.add(new StyleRange(text.length(), severity.word().length() + 4, colour, null));
                text.append("  ").append(mark(severity)).append(' ').append(severity.word());
            });
            if (!node.detail().isEmpty()) {
                styles.add(new StyleRange(text.length(), node.detail().length() + 2, palette.muted(), null));
                text.append("  ").append(node.detail());
            }
            cell.setText(text.toString());
            cell.setStyleRanges(styles.toArray(StyleRange[]::new));
            cell.setImage(desk.image(icon(node.icon())));
        }

        @Override
        public String getToolTipText(Object element) {
            TreeNode node = (TreeNode) element;
            return node.why().isEmpty() ? null : node.severity().map(Severity::word).orElse("") + ": " + node.why() + (node.stale()
                    ? "\nof an earlier state of the design" : "");
        }
    }

    private static char mark(Severity severity) {
        return switch (severity) {
            case ERROR, NOT_MET -> '✗';
            case CAUTION -> '▲';
            default -> '○';
        };
    }

    private Icon icon(String name) {
        return icons.computeIfAbsent(name, each -> Icon.read(DesignTreeView.class, "/tramontane/desktop/icons/" + each + ".svg"));
    }

    // --- showing --------------------------------------------------------------------------------------------------------------

    @Override
    public Control control() {
        return box;
    }

    @Override
    public boolean focus() {
        return viewer.getTree().setFocus();
    }

    @Override
    public void show(Scene scene) {
        boolean recolour = scene.palette() != palette || last.isEmpty();
        boolean another = last.filter(before -> before.document().key().equals(scene.document().key())).isEmpty();
        boolean same = last.isPresent() && !another && before(scene);
        palette = scene.palette();
        if (recolour) {
            for (Control control : List.of(box, viewer.getTree(), search)) {
                control.setBackground(palette.surface());
                control.setForeground(palette.text());
            }
        }
        last = Optional.of(scene);
        if (!same || recolour) {
            known = Known.of(desk.engine());
            draw(scene);
        }
        if (recolour) {
            viewer.refresh(true);
        }
        select(scene);
    }

    /** Whether nothing has changed that the tree shows. */
    private boolean before(Scene scene) {
        Scene before = last.orElseThrow();
        return before.document().design() == scene.document().design() && before.document().problems().equals(scene.document().problems())
                && before.results() == scene.results() && before.front().equals(scene.front()) && before.units().equals(scene.units());
    }

    private void draw(Scene scene) {
        boolean searching = !search.getText().isBlank();
        List<TreeNode> now = DesignTree.of(scene, known, search.getText());
        if (now.equals(nodes)) {
            return;
        }
        List<TreeNode> before = new ArrayList<>();
        List<TreeNode> after = new ArrayList<>();
        flatten(nodes, before);
        flatten(now, after);
        if (before.stream().map(TreeNode::key).toList().equals(after.stream().map(TreeNode::key).toList())) {
            nodes = now;
            List<TreeNode> changed = new ArrayList<>();
            for (int i = 0; i < after.size(); i++) {
                if (!after.get(i).equals(before.get(i))) {
                    changed.add(after.get(i));
                }
            }
            viewer.update(changed.toArray(), null);
            if (!changed.isEmpty()) {
                // rows that are drawn anew one by one are drawn over what stood there
                viewer.getTree().redraw();
            }
            return;
        }
        drawing = true;
        viewer.getTree().setRedraw(false);
        try {
            TreeItem top = viewer.getTree().getTopItem();
            String topKey = top != null && top.getData() instanceof TreeNode node ? node.key() : "";
            nodes = now;
            viewer.refresh(true);
            List<TreeNode> open = new ArrayList<>();
            toOpen(now, open, searching);
            viewer.setExpandedElements(open.toArray());
            if (!searching) {
                item(topKey).ifPresent(viewer.getTree()::setTopItem);
            }
        } finally {
            viewer.getTree().setRedraw(true);
            drawing = false;
        }
    }

    private void toOpen(List<TreeNode> among, List<TreeNode> open, boolean all) {
        for (TreeNode node : among) {
            if (!node.children().isEmpty() && (all || !closed.contains(node.key()))) {
                open.add(node);
            }
            toOpen(node.children(), open, all);
        }
    }

    private Optional<TreeItem> item(String key) {
        return items(viewer.getTree().getItems(), key);
    }

    private static Optional<TreeItem> items(TreeItem[] among, String key) {
        for (TreeItem item : among) {
            if (item.getData() instanceof TreeNode node && node.key().equals(key)) {
                return Optional.of(item);
            }
            Optional<TreeItem> deeper = items(item.getItems(), key);
            if (deeper.isPresent()) {
                return deeper;
            }
        }
        return Optional.empty();
    }

    private void opened(Widget item, boolean open) {
        if (item.getData() instanceof TreeNode node && search.getText().isBlank()) {
            opened(node.key(), open);
        }
    }

    private void opened(String key, boolean open) {
        if (!drawing && (open ? closed.remove(key) : closed.add(key))) {
            desk.memory("tramontane.design").put(CLOSED, String.join("\n", closed));
        }
    }

    private void select(Scene scene) {
        List<TreeNode> now = selected();
        if (scene.selection().isEmpty()) {
            if (now.stream().anyMatch(node -> node.subject().isPresent())) {
                viewer.setSelection(StructuredSelection.EMPTY);
            }
            return;
        }
        if (now.stream().anyMatch(node -> node.subject().equals(scene.selection()))) {
            return;
        }
        List<TreeNode> all = new ArrayList<>();
        flatten(nodes, all);
        all.stream().filter(node -> node.subject().equals(scene.selection())).findFirst().ifPresent(node -> {
            drawing = true;
            try {
                viewer.setSelection(new StructuredSelection(node), true);
            } finally {
                drawing = false;
            }
        });
    }

    private static void flatten(List<TreeNode> among, List<TreeNode> all) {
        among.forEach(node -> {
            all.add(node);
            flatten(node.children(), all);
        });
    }

    private List<TreeNode> selected() {
        return nodesOf(viewer.getSelection());
    }

    private static List<TreeNode> nodesOf(ISelection selection) {
        return selection instanceof StructuredSelection all
                ? Arrays.stream(all.toArray()).map(TreeNode.class::cast).toList() : List.of();
    }

    private List<Subject> subjects() {
        return selected().stream().flatMap(node -> node.subject().stream()).filter(subject -> !subject.isOutside()).distinct().toList();
    }

    private void searchKey(Event event) {
        if (event.keyCode == SWT.ESC) {
            search.setText("");
            viewer.getTree().setFocus();
            last.ifPresent(this::select);
        } else if (event.keyCode == SWT.ARROW_DOWN || event.keyCode == SWT.CR) {
            List<TreeNode> all = new ArrayList<>();
            flatten(nodes, all);
            all.stream().filter(node -> node.subject().isPresent()).findFirst()
                    .ifPresent(node -> viewer.setSelection(new StructuredSelection(node), true));
            viewer.getTree().setFocus();
            event.doit = false;
        }
    }

    // --- doing ----------------------------------------------------------------------------------------------------------------

    private Design design() {
        return desk.scene().document().design();
    }

    private Edits edits() {
        return new Edits(known.forms());
    }

    private Optional<DesignTree.Possible> possible() {
        return selected().stream().findFirst().map(DesignTree.Possible::with);
    }

    @Override
    public Map<String, Runnable> handlers() {
        Map<String, Runnable> handlers = new LinkedHashMap<>();
        List<Subject> subjects = subjects();
        boolean listed = subjects.stream().anyMatch(subject -> subject.kind().isListed());
        handlers.put(Command.FIND, () -> {
            search.setFocus();
            search.selectAll();
        });
        handlers.put(Command.SELECT_ALL, () -> viewer.getTree().selectAll());
        handlers.put(Command.PASTE, this::paste);
        if (listed) {
            handlers.put(Command.COPY, this::copy);
            handlers.put(Command.CUT, () -> {
                copy();
                delete();
            });
            handlers.put(Command.DELETE, this::delete);
            handlers.put(Command.DUPLICATE, () -> desk.edit(edits().duplicate(design(), subjects())));
        }
        if (subjects.size() == 1 && possible().filter(DesignTree.Possible::rename).isPresent()) {
            handlers.put(Command.RENAME, this::rename);
        }
        return handlers;
    }

    @Override
    public List<Command> commands() {
        return List.of(
                Command.of("design.add", "Add…", "Adds something to the design.", d -> addMenu()).icon(icon("add")),
                Command.of("design.up", "Move up", "Moves what is selected up in its list.", d -> move(-1)).keys("Alt+Up")
                        .when(scene -> subjects().stream().anyMatch(subject -> subject.kind().isListed())),
                Command.of("design.down", "Move down", "Moves what is selected down in its list.", d -> move(1)).keys("Alt+Down")
                        .when(scene -> subjects().stream().anyMatch(subject -> subject.kind().isListed())));
    }

    private void copy() {
        edits().copy(design(), subjects()).ifPresent(text -> {
            Clipboard clipboard = new Clipboard(box.getDisplay());
            try {
                clipboard.setContents(new Object[] {text}, new Transfer[] {TextTransfer.getInstance()});
            } finally {
                clipboard.dispose();
            }
        });
    }

    private void paste() {
        Clipboard clipboard = new Clipboard(box.getDisplay());
        String text;
        try {
            text = clipboard.getContents(TextTransfer.getInstance()) instanceof String found ? found : "";
        } finally {
            clipboard.dispose();
        }
        desk.edit(edits().paste(design(), text, subjects().stream().reduce((one, other) -> other)));
    }

    private void delete() {
        desk.edit(edits().remove(design(), subjects().stream().filter(subject -> subject.kind().isListed()).toList()));
    }

    private void move(int by) {
        subjects().stream().findFirst().filter(subject -> subject.kind().isListed()).ifPresent(subject -> subject.index(design())
                .ifPresent(index -> desk.edit(edits().move(design(), subject, index + by))));
    }

    private void rename() {
        if (viewer.getTree().getSelectionCount() != 1) {
            return;
        }
        TreeItem item = viewer.getTree().getSelection()[0];
        Subject subject = ((TreeNode) item.getData()).subject().orElseThrow();
        String old = subject.kind() == Subject.Kind.DESIGN ? design().name() : subject.kind() == Subject.Kind.EQUIPMENT ? design().equipment().name()
                : subject.id();
        Text field = new Text(viewer.getTree(), SWT.BORDER);
        field.setData("tramontane.id", "design:rename");
        field.setText(old);
        field.selectAll();
        editor.minimumWidth = 120;
        editor.setEditor(field, item);
        field.addListener(SWT.KeyDown, event -> {
            if (event.keyCode == SWT.ESC) {
                event.doit = false;
                end(field);
            } else if (event.keyCode == SWT.CR || event.keyCode == SWT.KEYPAD_CR) {
                event.doit = false;
                renamed(field, subject, true);
            }
        });
        field.addListener(SWT.FocusOut, event -> renamed(field, subject, false));
        field.setFocus();
    }

    private void renamed(Text field, Subject subject, boolean stay) {
        if (field.isDisposed() || Boolean.TRUE.equals(field.getData())) {
            return;
        }
        Edit edit = edits().rename(design(), subject, field.getText());
        if (edit.isRefused() && stay) {
            desk.edit(edit); // says why, and the text stays
            return;
        }
        field.setData(Boolean.TRUE);
        end(field);
        desk.edit(edit);
    }

    private void end(Text field) {
        field.setData(Boolean.TRUE);
        boolean had = field.isFocusControl();
        editor.setEditor(null);
        field.dispose();
        if (had) {
            viewer.getTree().setFocus();
        }
    }

    private void add(DesignTree.Addition addition) {
        Optional<Subject> after = subjects().stream().filter(subject -> subject.kind() == addition.kind()).findFirst();
        if (desk.edit(edits().add(design(), addition.kind(), addition.tree(), after))) {
            viewer.getTree().setFocus();
            if (addition.kind().isNamed() && subjects().size() == 1) {
                rename();
            }
        }
    }

    private void addMenu() {
        Menu menu = new Menu(box.getShell(), SWT.POP_UP);
        additions(menu);
        menu.addListener(SWT.Hide, event -> box.getDisplay().asyncExec(menu::dispose));
        menu.setVisible(true);
    }

    private void additions(Menu menu) {
        Map<String, List<DesignTree.Addition>> groups = DesignTree.additions(design(), known, subjects().stream().findFirst()
                .or(() -> selected().stream().flatMap(node -> node.subject().stream()).findFirst()))
                .stream().collect(Collectors.groupingBy(DesignTree.Addition::group, LinkedHashMap::new, Collectors.toList()));
        groups.forEach((group, each) -> {
            if (each.size() == 1 && each.getFirst().label().equals(group)) {
                item(menu, group, "", () -> add(each.getFirst()));
            } else {
                MenuItem cascade = new MenuItem(menu, SWT.CASCADE);
                cascade.setText(group);
                Menu inner = new Menu(menu);
                cascade.setMenu(inner);
                each.forEach(addition -> item(inner, addition.label(), "", () -> add(addition)));
            }
        });
    }

    private static MenuItem item(Menu menu, String label, String keys, Runnable run) {
        MenuItem item = new MenuItem(menu, SWT.PUSH);
        item.setText(label + (keys.isEmpty() ? "" : "\t" + keys));
        item.addListener(SWT.Selection, event -> run.run());
        return item;
    }

    private void menu() {
        Menu menu = new Menu(viewer.getTree());
        viewer.getTree().setMenu(menu);
        menu.addListener(SWT.Show, event -> {
            for (MenuItem old : menu.getItems()) {
                old.dispose();
            }
            MenuItem add = new MenuItem(menu, SWT.CASCADE);
            add.setText("Add");
            Menu inner = new Menu(menu);
            add.setMenu(inner);
            additions(inner);
            new MenuItem(menu, SWT.SEPARATOR);
            Map<String, Runnable> handlers = handlers();
            handled(menu, handlers, Command.RENAME, "Rename", "F2");
            handled(menu, handlers, Command.DUPLICATE, "Duplicate", "Ctrl+D");
            handled(menu, handlers, Command.DELETE, "Delete", "Del");
            new MenuItem(menu, SWT.SEPARATOR);
            handled(menu, handlers, Command.CUT, "Cut", "Ctrl+X");
            handled(menu, handlers, Command.COPY, "Copy", "Ctrl+C");
            handled(menu, handlers, Command.PASTE, "Paste", "Ctrl+V");
            new MenuItem(menu, SWT.SEPARATOR);
            boolean listed = subjects().stream().anyMatch(subject -> subject.kind().isListed());
            item(menu, "Move up", "Alt+Up", () -> move(-1)).setEnabled(listed);
            item(menu, "Move down", "Alt+Down", () -> move(1)).setEnabled(listed);
        });
    }

    private static void handled(Menu menu, Map<String, Runnable> handlers, String id, String label, String keys) {
        Runnable handler = handlers.get(id);
        item(menu, label, keys, handler == null ? () -> { } : handler).setEnabled(handler != null);
    }

    private void drag() {
        Transfer[] transfers = {LocalSelectionTransfer.getTransfer()};
        viewer.addDragSupport(DND.DROP_MOVE, transfers, new DragSourceAdapter() {
            @Override
            public void dragStart(DragSourceEvent event) {
                event.doit = subjects().size() == 1 && subjects().getFirst().kind().isListed();
                LocalSelectionTransfer.getTransfer().setSelection(viewer.getSelection());
            }

            @Override
            public void dragFinished(DragSourceEvent event) {
                LocalSelectionTransfer.getTransfer().setSelection(null);
            }
        });
        viewer.addDropSupport(DND.DROP_MOVE, transfers, new DropTargetAdapter() {
            @Override
            public void dragOver(DropTargetEvent event) {
                boolean fits = target(event).isPresent();
                event.detail = fits ? DND.DROP_MOVE : DND.DROP_NONE;
                event.feedback = DND.FEEDBACK_SCROLL | DND.FEEDBACK_EXPAND
                        | (fits ? below(event) ? DND.FEEDBACK_INSERT_AFTER : DND.FEEDBACK_INSERT_BEFORE : DND.FEEDBACK_NONE);
            }

            @Override
            public void drop(DropTargetEvent event) {
                Optional<Subject> moved = moved();
                Optional<Subject> target = target(event);
                if (moved.isPresent() && target.isPresent()) {
                    int from = moved.get().index(design()).orElse(0);
                    int to = target.get().index(design()).orElse(0) + (below(event) ? 1 : 0);
                    desk.edit(edits().move(design(), moved.get(), from < to ? to - 1 : to));
                }
            }
        });
    }

    private Optional<Subject> moved() {
        return nodesOf(LocalSelectionTransfer.getTransfer().getSelection()).stream().flatMap(node -> node.subject().stream()).findFirst();
    }

    /** What something is dragged onto, where it can be moved there. */
    private Optional<Subject> target(DropTargetEvent event) {
        Optional<Subject> onto = event.item != null && event.item.getData() instanceof TreeNode node ? node.subject() : Optional.empty();
        return onto.filter(subject -> !subject.isOutside() && moved().filter(each -> each.kind() == subject.kind() && !each.equals(subject)).isPresent());
    }

    private boolean below(DropTargetEvent event) {
        if (!(event.item instanceof TreeItem item)) {
            return false;
        }
        int y = viewer.getTree().toControl(event.x, event.y).y - item.getBounds().y;
        return y > item.getBounds().height / 2;
    }
}
