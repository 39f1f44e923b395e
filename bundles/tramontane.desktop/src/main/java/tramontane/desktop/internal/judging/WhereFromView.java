package tramontane.desktop.internal.judging;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.eclipse.swt.SWT;
import org.eclipse.swt.custom.SashForm;
import org.eclipse.swt.custom.StyleRange;
import org.eclipse.swt.custom.StyledText;
import org.eclipse.swt.dnd.Clipboard;
import org.eclipse.swt.dnd.TextTransfer;
import org.eclipse.swt.dnd.Transfer;
import org.eclipse.swt.graphics.Point;
import org.eclipse.swt.layout.FillLayout;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.Event;
import org.eclipse.swt.widgets.Tree;
import org.eclipse.swt.widgets.TreeColumn;
import org.eclipse.swt.widgets.TreeItem;
import tramontane.analysis.Derivation;
import tramontane.analysis.FigureKind;
import tramontane.desktop.Command;
import tramontane.desktop.Desk;
import tramontane.desktop.FigureKey;
import tramontane.desktop.Icon;
import tramontane.desktop.Jobs;
import tramontane.desktop.Palette;
import tramontane.desktop.Scene;
import tramontane.desktop.View;
import tramontane.model.Design;
import tramontane.model.Problem;
import tramontane.physics.units.UnitSystem;

/** Draws where a figure comes from: a tree of values, with the formula of the selected one beneath or beside. */
final class WhereFromView implements View {

    private static final String ASK = "Ctrl+click any number to see where it comes from.";
    private static final Icon BACK = Icon.read(WhereFromView.class, "/tramontane/desktop/icons/back.svg");
    private static final int MARGIN = 8;
    private static final int NARROWEST = 150;
    private static final int WIDEST = 420;

    private final Desk desk;
    private final EmptyOr page;
    private final SashForm sash;
    private final Tree tree;
    private final StyledText told;
    private final Deque<FigureKey> earlier = new ArrayDeque<>();
    private Optional<FigureKey> asked = Optional.empty();
    private Optional<FigureKey> drawn = Optional.empty();
    private Derivation derivation = Derivation.NOTHING;
    private Design traced;
    private UnitSystem units;
    private Optional<Jobs.Job> job = Optional.empty();
    private OriginPresenter presenter;
    private Palette palette;
    private Scene last;
    private int fitted;

    WhereFromView(Composite parent, Desk desk) {
        this.desk = desk;
        page = new EmptyOr(parent);
        page.content().setLayout(new FillLayout());
        sash = new SashForm(page.content(), SWT.VERTICAL | SWT.SMOOTH);
        tree = new Tree(sash, SWT.SINGLE | SWT.FULL_SELECTION);
        tree.setData("tramontane.id", "whereFrom");
        tree.setHeaderVisible(true);
        column("value", SWT.LEFT, 230);
        column("amount", SWT.RIGHT, 130);
        column("from", SWT.LEFT, 260);
        tree.addListener(SWT.Expand, event -> open((TreeItem) event.item));
        tree.addListener(SWT.Selection, event -> tell());
        tree.addListener(SWT.DefaultSelection, event -> go((TreeItem) event.item));
        tree.addListener(SWT.MouseUp, this::press);
        told = new StyledText(sash, SWT.READ_ONLY | SWT.WRAP | SWT.V_SCROLL);
        told.setData("tramontane.id", "whereFrom.told");
        told.setMargins(MARGIN, MARGIN, MARGIN, MARGIN);
        told.setLineSpacing(2);
        told.setCaret(null);
        sash.setWeights(3, 2);
        sash.addListener(SWT.Resize, event -> turn());
        tree.addListener(SWT.Resize, event -> turn());
    }

    private void column(String label, int style, int width) {
        TreeColumn column = new TreeColumn(tree, style);
        column.setText(label);
        column.setWidth(width);
    }

    /** Beside each other where there is more room that way. */
    private void turn() {
        Point size = sash.getSize();
        int wanted = size.x > 2 * size.y ? SWT.HORIZONTAL : SWT.VERTICAL;
        if (sash.getOrientation() != wanted) {
            sash.setOrientation(wanted);
        }
        int room = tree.getClientArea().width - tree.getColumn(1).getWidth();
        if (room > 0 && room != fitted) {
            fitted = room;
            tree.getColumn(0).setWidth(Math.clamp(room * 3L / 5, NARROWEST, WIDEST));
            tree.getColumn(2).setWidth(Math.max(NARROWEST, room - tree.getColumn(0).getWidth()));
        }
    }

    @Override
    public Control control() {
        return page.control();
    }

    @Override
    public boolean focus() {
        return tree.setFocus();
    }

    @Override
    public void close() {
        job.ifPresent(Jobs.Job::cancel);
    }

    @Override
    public void show(Scene scene) {
        last = scene;
        if (scene.palette() != palette) {
            palette = scene.palette();
            page.colour(palette);
            sash.setBackground(palette.background());
            for (Control each : new Control[] {tree, told}) {
                each.setBackground(palette.surface());
                each.setForeground(palette.text());
            }
            tree.setHeaderBackground(palette.background());
            tree.setHeaderForeground(palette.text());
        }
        if (!scene.asked().equals(asked)) {
            asked.filter(before -> earlier.isEmpty() || !earlier.peek().equals(before)).filter(before -> scene.asked().isPresent())
                    .ifPresent(earlier::push);
            asked = scene.asked();
            job.ifPresent(Jobs.Job::cancel);
            job = Optional.empty();
            traced = null;
        }
        boolean mistakes = scene.document().problems().stream().anyMatch(Problem::isError);
        if (asked.isEmpty()) {
            page.say(ASK);
            return;
        }
        boolean other = traced != scene.document().design();
        boolean busy = job.filter(each -> each.state() == Jobs.State.RUNNING).isPresent();
        // while one edit follows the other, the last one is enough
        if (other && !mistakes && !busy && (traced == null || !scene.results().running())) {
            trace(asked.get(), scene.document().design());
        }
        boolean there = drawn.equals(asked);
        page.say(there ? "" : mistakes ? "The design has mistakes, so that nothing can be computed; the findings list them." : "Looking where it comes from…");
        tree.setForeground(other ? palette.stale() : palette.text());
        if (there && (scene.units() != units || presenter == null)) {
            draw();
        }
    }

    private void trace(FigureKey key, Design design) {
        List<FigureKind> kinds = Kinds.of(desk);
        job = Optional.of(desk.jobs().quietly(watch -> Derivation.of(desk.engine().trace(design, key.condition(), key.id(), key.place()), kinds),
                found -> {
                    if (!tree.isDisposed() && asked.equals(Optional.of(key))) {
                        job = Optional.empty();
                        traced = design;
                        derivation = found;
                        boolean same = drawn.equals(asked);
                        drawn = asked;
                        if (!same) {
                            tree.removeAll();
                        }
                        draw();
                        page.say("");
                        // the design may have gone on meanwhile
                        show(last);
                    }
                }));
    }

    // --- the tree ----------------------------------------------------------------------------------------------------------

    /** Fills the tree anew, open where it was open. */
    private void draw() {
        FigureKey key = drawn.orElseThrow();
        units = last.units();
        presenter = new OriginPresenter(last, key.condition(), Kinds.of(desk));
        Set<List<String>> open = new HashSet<>();
        for (TreeItem item : tree.getItems()) {
            openPaths(item, open);
        }
        boolean first = tree.getItemCount() == 0;
        List<String> chosen = tree.getSelectionCount() > 0 ? path(tree.getSelection()[0]) : List.of();
        tree.setRedraw(false);
        try {
            tree.removeAll();
            TreeItem root = new TreeItem(tree, SWT.NONE);
            fill(root, presenter.root(key, derivation));
            reopen(root, open, chosen);
            if (first || tree.getSelectionCount() == 0) {
                expand(root);
                tree.setSelection(root);
            }
        } finally {
            tree.setRedraw(true);
        }
        tell();
    }

    private static List<String> path(TreeItem item) {
        List<String> path = new ArrayList<>();
        for (TreeItem each = item; each != null; each = each.getParentItem()) {
            path.addFirst((each.getParentItem() == null ? 0 : each.getParentItem().indexOf(each)) + " " + each.getText());
        }
        return path;
    }

    private static void openPaths(TreeItem item, Set<List<String>> open) {
        if (item.getExpanded()) {
            open.add(path(item));
            for (TreeItem child : item.getItems()) {
                openPaths(child, open);
            }
        }
    }

    private void reopen(TreeItem item, Set<List<String>> open, List<String> chosen) {
        List<String> path = path(item);
        if (path.equals(chosen)) {
            tree.setSelection(item);
        }
        if (open.contains(path)) {
            expand(item);
            for (TreeItem child : item.getItems()) {
                if (child.getData() instanceof Origin) {
                    reopen(child, open, chosen);
                }
            }
        }
    }

    private void fill(TreeItem item, Origin origin) {
        item.setData(origin);
        item.setText(new String[] {origin.label(), origin.value(), origin.from()});
        item.setFont(1, desk.digits());
        if (origin.opens() && item.getItemCount() == 0) {
            new TreeItem(item, SWT.NONE).setText("…");
        }
    }

    private void expand(TreeItem item) {
        open(item);
        item.setExpanded(true);
    }

    /** Fills what is beneath an item, once; what another analysis gives is looked up first. */
    private void open(TreeItem item) {
        if (!(item.getData() instanceof Origin origin) || item.getItemCount() == 0 || item.getItem(0).getData() != null) {
            return;
        }
        if (origin.steps().isEmpty() && origin.elsewhere().isPresent() && traced != null) {
            FigureKey key = origin.elsewhere().get();
            Design design = traced;
            List<FigureKind> kinds = Kinds.of(desk);
            desk.jobs().quietly(watch -> Derivation.of(desk.engine().trace(design, key.condition(), key.id(), key.place()), kinds), found -> {
                if (!item.isDisposed() && design == traced) {
                    Origin root = presenter.root(key, found);
                    item.removeAll();
                    Origin known = origin.told(found, root.steps());
                    fill(item, known);
                    if (known.opens()) {
                        beneath(item);
                        item.setExpanded(true);
                    }
                    tell();
                }
            });
        } else {
            beneath(item);
        }
    }

    private void beneath(TreeItem item) {
        tree.setRedraw(false);
        item.removeAll();
        presenter.beneath((Origin) item.getData()).forEach(each -> fill(new TreeItem(item, SWT.NONE), each));
        tree.setRedraw(true);
    }

    // --- what is selected --------------------------------------------------------------------------------------------------

    private void tell() {
        if (tree.getSelectionCount() == 0 || !(tree.getSelection()[0].getData() instanceof Origin origin)) {
            return;
        }
        Origin.Told words = presenter.told(origin);
        StringBuilder text = new StringBuilder(words.heading());
        if (!words.formula().isEmpty()) {
            text.append("\n").append(words.formula());
        }
        words.lines().forEach(line -> text.append("\n").append(line));
        if (!text.toString().equals(told.getText())) {
            told.setText(text.toString());
            told.setStyleRange(new StyleRange(0, words.heading().length(), null, null, SWT.BOLD));
            if (!words.formula().isEmpty()) {
                StyleRange formula = new StyleRange(words.heading().length() + 1, words.formula().length(), null, null);
                formula.font = desk.digits();
                told.setStyleRange(formula);
            }
        }
    }

    private void go(TreeItem item) {
        if (item.getData() instanceof Origin origin) {
            origin.subject().ifPresentOrElse(subject -> desk.select(Optional.of(subject)), () -> item.setExpanded(!item.getExpanded()));
        }
    }

    private void press(Event event) {
        TreeItem item = tree.getItem(new Point(event.x, event.y));
        if (event.button == 1 && (event.stateMask & SWT.MOD1) != 0 && item != null && item.getData() instanceof Origin origin) {
            origin.elsewhere().ifPresent(desk::explain);
        }
    }

    @Override
    public List<Command> commands() {
        return List.of(Command.of("tramontane.whereFrom.back", "Back", "Asks about the figure again that was asked about before.", at -> {
            FigureKey before = earlier.pop();
            asked = Optional.of(before);
            traced = null;
            at.explain(before);
        }).keys("Alt+Left").icon(BACK).when(scene -> !earlier.isEmpty()));
    }

    @Override
    public Map<String, Runnable> handlers() {
        return drawn.isEmpty() || presenter == null ? Map.of() : Map.of(Command.COPY, () -> {
            if (told.isFocusControl() && told.getSelectionCount() > 0) {
                told.copy();
                return;
            }
            Clipboard clipboard = new Clipboard(tree.getDisplay());
            try {
                clipboard.setContents(new Object[] {presenter.text(drawn.get(), derivation)}, new Transfer[] {TextTransfer.getInstance()});
            } finally {
                clipboard.dispose();
            }
        });
    }
}
