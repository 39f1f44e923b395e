package tramontane.desktop.internal.layout;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Predicate;
import org.eclipse.swt.SWT;
import org.eclipse.swt.custom.CTabFolder;
import org.eclipse.swt.custom.CTabFolder2Adapter;
import org.eclipse.swt.custom.CTabFolderEvent;
import org.eclipse.swt.custom.CTabItem;
import org.eclipse.swt.dnd.DND;
import org.eclipse.swt.dnd.DragSource;
import org.eclipse.swt.dnd.DragSourceAdapter;
import org.eclipse.swt.dnd.DragSourceEvent;
import org.eclipse.swt.dnd.DropTarget;
import org.eclipse.swt.dnd.DropTargetAdapter;
import org.eclipse.swt.dnd.DropTargetEvent;
import org.eclipse.swt.dnd.TextTransfer;
import org.eclipse.swt.graphics.Image;
import org.eclipse.swt.graphics.Point;
import org.eclipse.swt.graphics.Rectangle;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.Sash;
import tramontane.desktop.Palette;
import tramontane.desktop.internal.layout.Arrangement.Halves;
import tramontane.desktop.internal.layout.Arrangement.Pane;
import tramontane.desktop.internal.layout.Arrangement.Side;
import tramontane.desktop.internal.layout.Arrangement.Stack;

/** Draws an {@link Arrangement}: stacks of tabs with sashes between. It decides nothing; what the hand does goes to its {@link Hand}. */
public final class Panes {

    /** Begins what is dragged from one stack to another, so that no other text is taken for it. */
    private static final String DRAGGED = "tramontane-view:";
    private static final int GAP = 5;

    /** What the hand wants. */
    public interface Hand {
        /** A view is to come to the front of its stack. */
        void front(String view);

        /** A view is to be closed. */
        void close(String view);

        /** A view is to go elsewhere. */
        void move(String view, String stack, Side side);

        /** A sash was moved. */
        void share(Halves halves, double share);

        /** A view is to fill the window, or to fill it no more. */
        void fill(String view);

        /** The menu of a view's tab is wanted, at a place on the screen. */
        void menu(String view, Point where);
    }

    /** How a view looks on its tab, and what is behind it. */
    public interface Content {
        /** The text of its tab. */
        String label(String view);

        /** The picture of its tab. */
        Image image(String view);

        /** Its frame in a parent: built anew, or moved there. */
        Control frame(String view, Composite parent);

        /** The control at the right end of the tabs while a view is in front; disposed of by whoever made it. */
        Optional<Control> tools(String view, CTabFolder parent);
    }

    private final Composite area;
    private final Hand hand;
    private final Content content;
    private final Map<String, CTabFolder> folders = new LinkedHashMap<>();
    private final List<Bar> bars = new ArrayList<>();
    private Predicate<String> known = view -> true;
    private Arrangement shown;
    private Palette palette;
    private boolean drawing;

    /** One sash and the halves it stands between. */
    private record Bar(Sash sash, Halves halves) {
    }

    /** An empty area in a parent. */
    public Panes(Composite parent, Hand hand, Content content, Palette palette) {
        area = new Composite(parent, SWT.NONE);
        this.hand = hand;
        this.content = content;
        this.palette = palette;
        area.addListener(SWT.Resize, event -> layOut());
    }

    /** The widget. */
    public Composite control() {
        return area;
    }

    /** Takes other colours. */
    public void recolour(Palette other) {
        palette = other;
        area.setBackground(other.background());
        folders.values().forEach(this::colour);
        bars.forEach(bar -> bar.sash().setBackground(other.background()));
    }

    private void colour(CTabFolder folder) {
        folder.setBackground(palette.background());
        folder.setForeground(palette.muted());
        folder.setSelectionBackground(palette.surface());
        folder.setSelectionForeground(palette.text());
    }

    /**
     * Draws an arrangement; frames that stay where they are are not touched.
     *
     * @param arrangement what to draw
     * @param there       which views can be shown now; the others keep their place unseen
     */
    public void show(Arrangement arrangement, Predicate<String> there) {
        shown = arrangement;
        known = there;
        drawing = true;
        area.setRedraw(false);
        try {
            Map<String, Stack> wanted = new LinkedHashMap<>();
            arrangement.stacks().stream().filter(stack -> !visible(stack).isEmpty()).forEach(stack -> wanted.put(stack.name(), stack));
            wanted.keySet().forEach(name -> folders.computeIfAbsent(name, this::folder));
            wanted.forEach(this::fill);
            List.copyOf(folders.keySet()).stream().filter(name -> !wanted.containsKey(name)).forEach(name -> {
                // its frames have gone elsewhere or are closed
                CTabFolder folder = folders.remove(name);
                setTools(folder, null);
                folder.dispose();
            });
            bars.forEach(bar -> bar.sash().dispose());
            bars.clear();
            sashes(arrangement.root());
        } finally {
            area.setRedraw(true);
            drawing = false;
        }
        layOut();
    }

    private List<String> visible(Stack stack) {
        return stack.views().stream().filter(known).toList();
    }

    private CTabFolder folder(String name) {
        CTabFolder folder = new CTabFolder(area, SWT.TOP | SWT.CLOSE | SWT.FLAT);
        folder.setData("tramontane.stack", name);
        folder.setUnselectedCloseVisible(false);
        folder.marginWidth = 0;
        folder.marginHeight = 0;
        colour(folder);
        folder.addListener(SWT.Selection, event -> {
            if (!drawing && event.item != null) {
                hand.front(view(event.item));
            }
        });
        folder.addCTabFolder2Listener(new CTabFolder2Adapter() {
            @Override
            public void close(CTabFolderEvent event) {
                event.doit = false;
                hand.close(view(event.item));
            }
        });
        folder.addListener(SWT.MouseDoubleClick, event -> {
            CTabItem item = folder.getItem(new Point(event.x, event.y));
            if (item != null) {
                hand.fill(view(item));
            }
        });
        folder.addListener(SWT.MenuDetect, event -> {
            CTabItem item = folder.getItem(folder.toControl(event.x, event.y));
            CTabItem meant = item != null ? item : folder.getSelection();
            if (meant != null && folder.toControl(event.x, event.y).y < folder.getTabHeight() + 2) {
                event.doit = false;
                hand.menu(view(meant), new Point(event.x, event.y));
            }
        });
        dragging(folder, name);
        return folder;
    }

    private static String view(org.eclipse.swt.widgets.Widget item) {
        return (String) item.getData("tramontane.view");
    }

    private void dragging(CTabFolder folder, String name) {
        DragSource source = new DragSource(folder, DND.DROP_MOVE);
        source.setTransfer(TextTransfer.getInstance());
        source.addDragListener(new DragSourceAdapter() {
            private String dragged = "";

            @Override
            public void dragStart(DragSourceEvent event) {
                CTabItem item = folder.getItem(new Point(event.x, event.y));
                event.doit = item != null;
                dragged = item == null ? "" : view(item);
            }

            @Override
            public void dragSetData(DragSourceEvent event) {
                event.data = DRAGGED + dragged;
            }
        });
        DropTarget target = new DropTarget(folder, DND.DROP_MOVE);
        target.setTransfer(TextTransfer.getInstance());
        target.addDropListener(new DropTargetAdapter() {
            @Override
            public void drop(DropTargetEvent event) {
                if (event.data instanceof String text && text.startsWith(DRAGGED)) {
                    String view = text.substring(DRAGGED.length());
                    Side side = side(folder, folder.toControl(event.x, event.y));
                    folder.getDisplay().asyncExec(() -> hand.move(view, name, side));
                }
            }
        });
    }

    /** The outer fifths of a stack stand for beside it. */
    private static Side side(CTabFolder folder, Point at) {
        Point size = folder.getSize();
        if (at.y < folder.getTabHeight() + 2) {
            return Side.WITHIN;
        }
        double x = at.x / (double) size.x;
        double y = at.y / (double) size.y;
        return x < 0.2 ? Side.LEFT : x > 0.8 ? Side.RIGHT : y > 0.75 ? Side.BELOW : y < 0.25 ? Side.ABOVE : Side.WITHIN;
    }

    private void fill(String name, Stack stack) {
        CTabFolder folder = folders.get(name);
        List<String> views = visible(stack);
        Map<String, CTabItem> items = new HashMap<>();
        for (CTabItem item : folder.getItems()) {
            items.put(view(item), item);
        }
        List<String> before = List.of(folder.getItems()).stream().map(Panes::view).toList();
        if (!before.equals(views)) {
            for (CTabItem item : folder.getItems()) {
                item.setControl(null);
                item.dispose();
            }
            for (String view : views) {
                CTabItem item = new CTabItem(folder, SWT.NONE);
                item.setData("tramontane.view", view);
                item.setText(content.label(view));
                item.setImage(content.image(view));
                item.setControl(content.frame(view, folder));
                items.put(view, item);
            }
        }
        String front = views.contains(stack.front()) ? stack.front() : views.getFirst();
        CTabItem item = items.get(front);
        if (folder.getSelection() != item) {
            folder.setSelection(item);
        }
        if (!front.equals(folder.getData("tramontane.tools"))) {
            folder.setData("tramontane.tools", front);
            setTools(folder, content.tools(front, folder).orElse(null));
        }
    }

    private static void setTools(CTabFolder folder, Control tools) {
        Control old = folder.getTopRight();
        folder.setTopRight(tools, SWT.RIGHT);
        if (old != null && old != tools && !old.isDisposed()) {
            old.dispose();
        }
    }

    /** The tools of a view anew, if it is in front of its stack: it has others now. */
    public void tools(String view) {
        folders.values().stream().filter(folder -> folder.getSelection() != null && view(folder.getSelection()).equals(view))
                .forEach(folder -> setTools(folder, content.tools(view, folder).orElse(null)));
    }

    /** The tabs' pictures and tools anew, after colours have changed. */
    public void refresh() {
        for (CTabFolder folder : folders.values()) {
            for (CTabItem item : folder.getItems()) {
                item.setImage(content.image(view(item)));
                item.setText(content.label(view(item)));
            }
            if (folder.getSelection() != null) {
                setTools(folder, content.tools(view(folder.getSelection()), folder).orElse(null));
            }
        }
    }

    private void sashes(Pane pane) {
        if (pane instanceof Halves halves) {
            if (shows(halves.first()) && shows(halves.second())) {
                Sash sash = new Sash(area, (halves.across() ? SWT.VERTICAL : SWT.HORIZONTAL) | SWT.SMOOTH);
                sash.setBackground(palette.background());
                bars.add(new Bar(sash, halves));
                sash.addListener(SWT.Selection, event -> moved(sash, halves, event.x, event.y, event.detail == SWT.DRAG));
            }
            sashes(halves.first());
            sashes(halves.second());
        }
    }

    private void moved(Sash sash, Halves halves, int x, int y, boolean dragged) {
        Rectangle whole = (Rectangle) sash.getData();
        if (whole == null || dragged) {
            return; // smooth sashes tell of each step as dragged and of the last one without
        }
        double share = halves.across() ? (x - whole.x + GAP / 2.0) / whole.width : (y - whole.y + GAP / 2.0) / whole.height;
        hand.share(halves, share);
    }

    private boolean shows(Pane pane) {
        return switch (pane) {
            case Stack stack -> !visible(stack).isEmpty();
            case Halves halves -> shows(halves.first()) || shows(halves.second());
        };
    }

    private void layOut() {
        if (shown == null || area.isDisposed()) {
            return;
        }
        Rectangle all = area.getClientArea();
        Optional<String> full = shown.full().filter(known).flatMap(shown::holding).map(Stack::name).filter(folders::containsKey);
        if (full.isPresent()) {
            bars.forEach(bar -> bar.sash().setVisible(false));
            folders.forEach((name, folder) -> folder.setVisible(name.equals(full.get())));
            folders.get(full.get()).setBounds(all);
            return;
        }
        folders.values().forEach(folder -> folder.setVisible(true));
        bars.forEach(bar -> bar.sash().setVisible(true));
        place(shown.root(), all);
    }

    private void place(Pane pane, Rectangle where) {
        switch (pane) {
            case Stack stack -> {
                CTabFolder folder = folders.get(stack.name());
                if (folder != null) {
                    folder.setBounds(where);
                }
            }
            case Halves halves -> {
                boolean first = shows(halves.first());
                boolean second = shows(halves.second());
                if (!first || !second) {
                    place(first ? halves.first() : halves.second(), where);
                    return;
                }
                int whole = halves.across() ? where.width : where.height;
                int part = Math.max(0, (int) Math.round(whole * halves.share() - GAP / 2.0));
                int rest = Math.max(0, whole - part - GAP);
                Sash sash = bars.stream().filter(bar -> bar.halves() == halves).findFirst().orElseThrow().sash();
                sash.setData(where);
                if (halves.across()) {
                    place(halves.first(), new Rectangle(where.x, where.y, part, where.height));
                    sash.setBounds(where.x + part, where.y, GAP, where.height);
                    place(halves.second(), new Rectangle(where.x + part + GAP, where.y, rest, where.height));
                } else {
                    place(halves.first(), new Rectangle(where.x, where.y, where.width, part));
                    sash.setBounds(where.x, where.y + part, where.width, GAP);
                    place(halves.second(), new Rectangle(where.x, where.y + part + GAP, where.width, rest));
                }
            }
        }
    }

    /** The view in front of the stack that a control lies in. */
    public Optional<String> viewOf(Control control) {
        for (Control each = control; each != null && !each.isDisposed(); each = each.getParent()) {
            if (each instanceof CTabFolder folder && folder.getParent() == area && folder.getSelection() != null) {
                return Optional.of(view(folder.getSelection()));
            }
        }
        return Optional.empty();
    }
}
