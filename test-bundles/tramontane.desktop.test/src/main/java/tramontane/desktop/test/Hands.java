package tramontane.desktop.test;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Deque;
import java.util.List;
import java.util.Optional;
import java.util.function.BooleanSupplier;
import java.util.function.Consumer;
import java.util.function.Supplier;
import org.eclipse.swt.SWT;
import org.eclipse.swt.custom.CTabFolder;
import org.eclipse.swt.custom.CTabItem;
import org.eclipse.swt.graphics.ImageLoader;
import org.eclipse.swt.graphics.ImageData;
import org.eclipse.swt.graphics.Point;
import org.eclipse.swt.graphics.Rectangle;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.Display;
import org.eclipse.swt.widgets.Group;
import org.eclipse.swt.widgets.Item;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Link;
import org.eclipse.swt.widgets.Listener;
import org.eclipse.swt.widgets.Menu;
import org.eclipse.swt.widgets.MenuItem;
import org.eclipse.swt.widgets.Shell;
import org.eclipse.swt.widgets.TabFolder;
import org.eclipse.swt.widgets.TabItem;
import org.eclipse.swt.widgets.Table;
import org.eclipse.swt.widgets.TableItem;
import org.eclipse.swt.widgets.ToolBar;
import org.eclipse.swt.widgets.ToolItem;
import org.eclipse.swt.widgets.Tree;
import org.eclipse.swt.widgets.TreeItem;
import org.eclipse.swt.widgets.Widget;

/**
 * What a person does in a shell: looks for something, clicks, types, drags, chooses from menus, waits. Pointer and keys are those of
 * the display, so whatever is in the way gets in the way.
 *
 * <p>Widgets are named by the text under the data key {@value #ID} or else by what is written on them, mnemonics and a trailing colon
 * left out. All methods are called on the thread of the display and handle its events while they wait. A listener that opens a dialog
 * and waits for it keeps whoever clicked: say before, with {@link #then}, what happens in that dialog.
 */
public final class Hands {
    /** Data key of widgets that tests look for. */
    public static final String ID = "tramontane.id";

    private static final Duration PATIENCE = Duration.ofSeconds(10);
    private static final Duration FRAME = Duration.ofMillis(25);
    private static final int STEPS = 12;
    private static Optional<Fingers> fingers = Optional.empty();

    private final Shell shell;
    private final Display display;

    /** Hands on a shell that is open. */
    public Hands(Shell shell) {
        this.shell = shell;
        display = shell.getDisplay();
    }

    /** Opens a shell and waits until it has the focus. */
    public static Hands open(Shell shell) {
        Hands hands = new Hands(shell);
        // Out of the way, so that nothing is under the pointer that was not meant.
        hands.fingers().move(new Point(0, 0));
        shell.open();
        hands.toFront();
        return hands;
    }

    private synchronized Fingers fingers() {
        if (fingers.isEmpty()) {
            fingers = Optional.of(Fingers.on(display));
        }
        return fingers.get();
    }

    /** The shell that these hands work in. */
    public Shell shell() {
        return shell;
    }

    /** Brings the shell to the front and waits until it has the focus. */
    public void toFront() {
        shell.forceActive();
        until("shell \"" + shell.getText() + "\" has the focus", () -> display.getActiveShell() == shell);
        steady(shell::getBounds);
    }

    // --- Looking ----------------------------------------------------------------------------------------------------

    /** The widget of that name nearest to the shell. */
    public Widget find(String name) {
        return find(name, Widget.class);
    }

    /** The widget of that name and kind nearest to the shell. */
    public <T extends Widget> T find(String name, Class<T> type) {
        return look(name, type).orElseThrow(() -> new AssertionError("there is no " + type.getSimpleName() + " \"" + name + "\" in shell \""
                + shell.getText() + "\"; " + picture()));
    }

    /** The same, which may be missing. */
    public <T extends Widget> Optional<T> look(String name, Class<T> type) {
        List<Widget> all = widgets();
        return all.stream().filter(widget -> name.equals(widget.getData(ID))).filter(type::isInstance).map(type::cast).findFirst()
                .or(() -> all.stream().filter(widget -> name.equals(plain(words(widget)))).filter(type::isInstance).map(type::cast)
                        .findFirst());
    }

    /** Every widget of the shell, those nearer to it first. */
    public List<Widget> widgets() {
        List<Widget> found = new ArrayList<>();
        Deque<Widget> next = new ArrayDeque<>(List.of(shell));
        while (!next.isEmpty()) {
            Widget widget = next.poll();
            if (!widget.isDisposed()) {
                found.add(widget);
                next.addAll(inside(widget));
            }
        }
        return found;
    }

    private static List<Widget> inside(Widget widget) {
        List<Widget> found = new ArrayList<>();
        switch (widget) {
            case ToolBar bar -> found.addAll(List.of(bar.getItems()));
            case Table table -> {
                found.addAll(List.of(table.getColumns()));
                // Items of a virtual table are made by looking at them.
                found.addAll((table.getStyle() & SWT.VIRTUAL) == 0 ? List.of(table.getItems()) : List.of());
            }
            case Tree tree -> {
                found.addAll(List.of(tree.getColumns()));
                found.addAll((tree.getStyle() & SWT.VIRTUAL) == 0 ? List.of(tree.getItems()) : List.of());
            }
            case TreeItem item -> found.addAll(List.of(item.getItems()));
            case TabFolder folder -> found.addAll(List.of(folder.getItems()));
            case CTabFolder folder -> found.addAll(List.of(folder.getItems()));
            case Menu menu -> found.addAll(List.of(menu.getItems()));
            case MenuItem item -> Optional.ofNullable(item.getMenu()).ifPresent(found::add);
            default -> { }
        }
        if (widget instanceof Composite composite) {
            found.addAll(List.of(composite.getChildren()));
        }
        if (widget instanceof Shell top) {
            Optional.ofNullable(top.getMenuBar()).ifPresent(found::add);
        } else if (widget instanceof Control control) {
            Optional.ofNullable(control.getMenu()).ifPresent(found::add);
        }
        return found;
    }

    private static String words(Widget widget) {
        return switch (widget) {
            case Item item -> item.getText();
            case Button button -> button.getText();
            case Label label -> label.getText();
            case Link link -> link.getText();
            case Group group -> group.getText();
            default -> "";
        };
    }

    private static String plain(String text) {
        String whole = text.split("\t", 2)[0].replace("&&", "\u0000").replace("&", "").replace('\u0000', '&').strip();
        return whole.endsWith(":") ? whole.substring(0, whole.length() - 1) : whole;
    }

    // --- The pointer ------------------------------------------------------------------------------------------------

    /** Clicks the middle of a widget with the left button. */
    public void click(Widget widget) {
        click(widget, 1, 1, 0);
    }

    /** Clicks the widget of that name. */
    public void click(String name) {
        click(find(name));
    }

    /** Clicks twice, quickly. */
    public void doubleClick(Widget widget) {
        click(widget, 1, 2, 0);
    }

    /** Clicks with the right button, which opens a context menu. */
    public void contextClick(Widget widget) {
        click(widget, 3, 1, 0);
    }

    /**
     * Clicks the middle of a widget.
     *
     * @param button    number of the button, 1 for the left one
     * @param times     how often
     * @param modifiers keys that are held meanwhile, such as {@code SWT.MOD1 | SWT.SHIFT}
     */
    public void click(Widget widget, int button, int times, int modifiers) {
        Rectangle area = shown(widget);
        clickAt(new Point(area.x + area.width / 2, area.y + area.height / 2), button, times, modifiers);
    }

    /** Clicks a place in a control, in points from its upper left corner. */
    public void click(Control control, Point place) {
        clickAt(steady(() -> visible(control).toDisplay(place)), 1, 1, 0);
    }

    private void clickAt(Point place, int button, int times, int modifiers) {
        moveTo(place);
        hold(modifiers, true);
        for (int i = 0; i < times; i++) {
            fingers().button(button, true);
            settle();
            fingers().button(button, false);
        }
        hold(modifiers, false);
        settle();
    }

    /** Moves the pointer over a place in a control, to hover there. */
    public void move(Control control, Point place) {
        moveTo(steady(() -> visible(control).toDisplay(place)));
    }

    private void moveTo(Point place) {
        fingers().move(place);
        frame();
    }

    /** Handles events for as long as a frame lasts: movements are told and lists scroll once in a frame only. */
    private void frame() {
        long end = System.nanoTime() + FRAME.toNanos();
        settle();
        while (System.nanoTime() < end) {
            if (!display.readAndDispatch()) {
                rest();
            }
        }
    }

    /** What a place comes to when the window manager, the layout and what scrolls are done with it. */
    private <T> T steady(Supplier<T> place) {
        T before = place.get();
        for (int frames = 0; frames < 100; frames++) {
            frame();
            T now = place.get();
            if (now.equals(before)) {
                return now;
            }
            before = now;
        }
        throw new AssertionError("it does not come to rest; " + picture());
    }

    /** Drags from a place in one control to a place in another, or in the same, with the left button. */
    public void drag(Control from, Point start, Control to, Point end) {
        Point first = steady(() -> visible(from).toDisplay(start));
        Point last = visible(to).toDisplay(end);
        moveTo(first);
        fingers().button(1, true);
        settle();
        for (int i = 1; i <= STEPS; i++) {
            moveTo(new Point(first.x + (last.x - first.x) * i / STEPS, first.y + (last.y - first.y) * i / STEPS));
        }
        fingers().button(1, false);
        settle();
    }

    private Control visible(Control control) {
        if (!control.isVisible()) {
            throw new AssertionError(control + " cannot be seen; " + picture());
        }
        return control;
    }

    /** Where a widget stands on the display, in points; of a shell what is inside its frame, which belongs to the system. */
    public Rectangle area(Widget widget) {
        return switch (widget) {
            case Shell top -> display.map(visible(top), null, top.getClientArea());
            case Control control -> display.map(visible(control).getParent(), null, control.getBounds());
            case ToolItem item -> display.map(visible(item.getParent()), null, item.getBounds());
            case TabItem item -> display.map(visible(item.getParent()), null, item.getBounds());
            case CTabItem item -> display.map(visible(item.getParent()), null, item.getBounds());
            case TableItem item -> cell(item.getParent(), item.getParent().getColumnCount() == 0 ? item.getBounds() : item.getBounds(0));
            case TreeItem item -> cell(item.getParent(), item.getParent().getColumnCount() == 0 ? item.getBounds() : item.getBounds(0));
            default -> throw new IllegalArgumentException("nobody knows where " + widget + " stands; choose menu items with choose");
        };
    }

    /** Where a widget stands once it has been scrolled to. */
    private Rectangle shown(Widget widget) {
        for (int i = 0; i < 20; i++) {
            switch (widget) {
                case TableItem item -> item.getParent().showItem(item);
                case TreeItem item -> item.getParent().showItem(item);
                default -> { }
            }
            Rectangle area = steady(() -> area(widget));
            if (!area.isEmpty()) {
                return area;
            }
        }
        throw new AssertionError(widget + " cannot be scrolled to; " + picture());
    }

    private Rectangle cell(Composite parent, Rectangle bounds) {
        return display.map(visible(parent), null, bounds.intersection(parent.getClientArea()));
    }

    // --- Keys -------------------------------------------------------------------------------------------------------

    /** Types a text to whatever has the focus. */
    public void type(String text) {
        focus();
        text.codePoints().forEach(this::stroke);
    }

    /**
     * Presses a key.
     *
     * @param modifiers keys that are held meanwhile: SWT.MOD1, SWT.CTRL, SWT.SHIFT, SWT.ALT, or 0
     * @param key       a constant of SWT such as {@code SWT.F2}, or a character
     */
    public void press(int modifiers, int key) {
        focus();
        hold(modifiers, true);
        stroke((key & SWT.KEYCODE_BIT) != 0 || modifiers == 0 ? key : Character.toLowerCase(key));
        hold(modifiers, false);
        settle();
    }

    /**
     * Down, a moment, up: a key that comes and goes in the same moment is told to a text field twice. What it does is not waited for in
     * between: a key that is held down repeats itself.
     */
    private void stroke(int key) {
        for (boolean down : new boolean[] {true, false}) {
            if ((key & SWT.KEYCODE_BIT) == 0) {
                fingers().character(key, down);
            } else {
                fingers().key(key, down);
            }
            fingers().sync();
            rest();
        }
        settle();
    }

    private void focus() {
        if (display.getActiveShell() == null) {
            throw new AssertionError("nothing has the focus, so nothing can be typed; " + picture());
        }
    }

    private void hold(int modifiers, boolean down) {
        for (int modifier : new int[] {SWT.CTRL, SWT.ALT, SWT.COMMAND, SWT.SHIFT}) {
            if ((modifiers & modifier) != 0) {
                fingers().key(modifier, down);
            }
        }
    }

    // --- Menus and dialogs ------------------------------------------------------------------------------------------

    /** Chooses from the menu bar by keys, as {@code choose("Design", "Save as")}. */
    public void choose(String... path) {
        Menu bar = Optional.ofNullable(shell.getMenuBar()).orElseThrow(() -> new AssertionError("the shell has no menu bar"));
        List<MenuItem> items = new ArrayList<>();
        Menu menu = bar;
        for (String name : path) {
            items.add(Arrays.stream(menu.getItems()).filter(item -> name.equals(plain(item.getText()))).findFirst()
                    .orElseThrow(() -> new AssertionError("there is no menu item \"" + name + "\" in " + String.join(" > ", path))));
            menu = items.getLast().getMenu();
        }
        Widget[] armed = {null};
        Listener note = event -> armed[0] = event.widget;
        display.addFilter(SWT.Arm, note);
        try {
            stroke(SWT.F10);
            for (int i = 0; i < items.size(); i++) {
                MenuItem target = items.get(i);
                int key = i == 0 ? SWT.ARROW_RIGHT : SWT.ARROW_DOWN;
                for (int turns = 0; armed[0] != target; turns++) {
                    if (turns > 100) {
                        throw new AssertionError("menu item \"" + target.getText() + "\" cannot be reached; " + picture());
                    }
                    stroke(key);
                }
                if (i > 0 && i < items.size() - 1) {
                    stroke(SWT.ARROW_RIGHT);
                }
            }
        } finally {
            display.removeFilter(SWT.Arm, note);
        }
        stroke(SWT.CR);
    }

    /** As soon as another shell of that title is open, does something with it; begins at once and does not wait. */
    public void then(String title, Consumer<Hands> acts) {
        long end = System.nanoTime() + PATIENCE.toNanos();
        display.timerExec(20, new Runnable() {
            @Override
            public void run() {
                Optional<Shell> found = Arrays.stream(display.getShells())
                        .filter(each -> each != shell && each.isVisible() && each.getText().equals(title)).findFirst();
                if (found.isEmpty() && System.nanoTime() < end) {
                    display.timerExec(20, this);
                    return;
                }
                try {
                    Hands there = new Hands(found.orElseThrow(() -> new AssertionError("no shell \"" + title + "\" opened; " + picture())));
                    there.toFront();
                    acts.accept(there);
                } catch (AssertionError | RuntimeException wrong) {
                    Screen.fault(wrong);
                    found.filter(each -> !each.isDisposed()).ifPresent(Shell::close);
                }
            }
        });
    }

    // --- Waiting ----------------------------------------------------------------------------------------------------

    /** Handles events until there are none. */
    public void settle() {
        if (Thread.interrupted()) {
            throw new AssertionError("the test takes too long; " + picture());
        }
        fingers().sync();
        while (!display.isDisposed() && display.readAndDispatch()) {
            // until nothing is left to do
        }
    }

    /** Handles events until a condition holds, for ten seconds at most. */
    public void until(String what, BooleanSupplier condition) {
        until(what, PATIENCE, condition);
    }

    /**
     * Handles events until a condition holds.
     *
     * @param what  the condition in words, for the message if it never holds
     * @param limit how long at most
     */
    public void until(String what, Duration limit, BooleanSupplier condition) {
        long end = System.nanoTime() + limit.toNanos();
        while (!condition.getAsBoolean()) {
            if (System.nanoTime() > end) {
                throw new AssertionError("after " + limit.toMillis() + " ms it is not so that " + what + "; " + picture());
            }
            if (!display.readAndDispatch()) {
                rest();
            }
        }
    }

    private static void rest() {
        try {
            Thread.sleep(2);
        } catch (InterruptedException interrupted) {
            Thread.currentThread().interrupt();
            throw new AssertionError(interrupted);
        }
    }

    // --- Pictures ---------------------------------------------------------------------------------------------------

    /** Takes a picture of what can be seen of a control, at the display's full resolution, and writes it as PNG. */
    public Path screenshot(Control control, Path file) {
        settle();
        Rectangle area = steady(() -> area(control));
        return write(area, file);
    }

    private Path write(Rectangle area, Path file) {
        Rectangle seen = area.intersection(display.getBounds());
        try {
            Files.createDirectories(file.toAbsolutePath().getParent());
            ImageLoader loader = new ImageLoader();
            loader.data = new ImageData[] {fingers().look(seen)};
            loader.save(file.toString(), SWT.IMAGE_PNG);
            return file;
        } catch (IOException failed) {
            throw new UncheckedIOException(failed);
        }
    }

    /** Takes a picture of all that is on the display and gives words that say where it is. */
    private String picture() {
        try {
            Path file = Screen.pictures().resolve("failed-" + System.nanoTime() + ".png").toAbsolutePath();
            return "see " + write(display.getBounds(), file);
        } catch (RuntimeException none) {
            return "no picture could be taken: " + none;
        }
    }
}
