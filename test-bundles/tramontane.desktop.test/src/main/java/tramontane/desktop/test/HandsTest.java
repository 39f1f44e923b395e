package tramontane.desktop.test;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import org.eclipse.swt.SWT;
import org.eclipse.swt.dnd.DND;
import org.eclipse.swt.dnd.DragSource;
import org.eclipse.swt.dnd.DragSourceEvent;
import org.eclipse.swt.dnd.DragSourceListener;
import org.eclipse.swt.dnd.DropTarget;
import org.eclipse.swt.dnd.DropTargetAdapter;
import org.eclipse.swt.dnd.DropTargetEvent;
import org.eclipse.swt.dnd.TextTransfer;
import org.eclipse.swt.dnd.Transfer;
import org.eclipse.swt.events.MouseEvent;
import org.eclipse.swt.events.MouseListener;
import org.eclipse.swt.events.SelectionListener;
import org.eclipse.swt.graphics.ImageData;
import org.eclipse.swt.graphics.Point;
import org.eclipse.swt.graphics.RGB;
import org.eclipse.swt.layout.GridData;
import org.eclipse.swt.layout.GridLayout;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Canvas;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.Menu;
import org.eclipse.swt.widgets.MenuItem;
import org.eclipse.swt.widgets.Shell;
import org.eclipse.swt.widgets.Table;
import org.eclipse.swt.widgets.TableItem;
import org.eclipse.swt.widgets.Text;
import org.eclipse.swt.widgets.ToolBar;
import org.eclipse.swt.widgets.ToolItem;
import org.eclipse.swt.widgets.Tree;
import org.eclipse.swt.widgets.TreeItem;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.api.io.TempDir;

@ExtendWith(Screen.class)
class HandsTest {
    private final List<String> told = new ArrayList<>();
    private Shell shell;

    @BeforeEach
    void plainShell() {
        shell = new Shell(Screen.display());
        shell.setText("plain");
        shell.setLayout(new GridLayout());
        shell.setSize(500, 400);
    }

    private static <T extends Control> T fill(T control) {
        GridData all = new GridData(SWT.FILL, SWT.FILL, true, true);
        all.heightHint = 50;
        control.setLayoutData(all);
        return control;
    }

    private static <T extends org.eclipse.swt.widgets.Widget> T named(String id, T widget) {
        widget.setData(Hands.ID, id);
        return widget;
    }

    private Button button(Composite parent, String text) {
        Button button = new Button(parent, SWT.PUSH);
        button.setText(text);
        button.addSelectionListener(SelectionListener.widgetSelectedAdapter(event -> told.add(text)));
        return button;
    }

    @Test
    void aClickSelectsTheButtonThatIsMeant() {
        button(shell, "First");
        button(shell, "&Second");
        Hands hands = Hands.open(shell);
        hands.click("Second");
        hands.until("a button is selected", () -> !told.isEmpty());
        assertEquals(List.of("&Second"), told);
    }

    @Test
    void anIdGoesBeforeAText() {
        button(shell, "apply");
        Button meant = named("apply", button(shell, "something else"));
        assertSame(meant, Hands.open(shell).find("apply"));
    }

    @Test
    void whatIsNotThereIsMissedWithAPicture() {
        button(shell, "First");
        Hands hands = Hands.open(shell);
        String message = assertThrows(AssertionError.class, () -> hands.click("Third")).getMessage();
        assertTrue(message.startsWith("there is no Widget \"Third\" in shell \"plain\"; see "), message);
        assertTrue(Files.isRegularFile(Path.of(message.substring(message.indexOf("; see ") + 6))), message);
    }

    @Test
    void aHiddenButtonCannotBeClicked() {
        button(shell, "First");
        button(shell, "hidden").setVisible(false);
        Hands hands = Hands.open(shell);
        assertThrows(AssertionError.class, () -> hands.click("hidden"));
    }

    @Test
    void aTextIsTypedWithCapitalsDigitsSignsAndWhatTheKeyboardDoesNotHave() {
        Text text = named("flow", new Text(shell, SWT.BORDER));
        text.setLayoutData(new GridData(300, SWT.DEFAULT));
        Hands hands = Hands.open(shell);
        hands.click("flow");
        String typed = "Bank 2: 0.08 m³/s, 60 % (ΔT ≤ 5 °C) {a_b}";
        hands.type(typed);
        hands.until("all of it arrived", () -> text.getText().length() >= typed.length());
        assertEquals(typed, text.getText());
    }

    @Test
    void keysComeWithTheirModifiers() {
        Text text = new Text(shell, SWT.BORDER);
        text.setLayoutData(new GridData(300, SWT.DEFAULT));
        text.setText("old");
        text.addListener(SWT.KeyDown, event -> {
            if (event.keyCode == SWT.F2 || event.keyCode == 'z') {
                told.add((event.keyCode == SWT.F2 ? "F2 " : "z ") + event.stateMask);
            }
        });
        Hands hands = Hands.open(shell);
        hands.click(text);
        hands.press(SWT.MOD1, 'a');
        hands.type("new");
        hands.until("the old text went", () -> text.getText().equals("new"));
        hands.press(0, SWT.F2);
        hands.press(SWT.SHIFT, SWT.F2);
        hands.press(SWT.MOD1 | SWT.SHIFT, 'z');
        hands.until("three keys came", () -> told.size() == 3);
        assertEquals(List.of("F2 0", "F2 " + SWT.SHIFT, "z " + (SWT.MOD1 | SWT.SHIFT)), told);
    }

    @Test
    void aDoubleClickAndAClickWithControlAreWhatTheyAre() {
        Canvas canvas = fill(new Canvas(shell, SWT.BORDER));
        canvas.addMouseListener(new MouseListener() {
            @Override
            public void mouseDoubleClick(MouseEvent event) {
                told.add("double");
            }

            @Override
            public void mouseDown(MouseEvent event) {
                told.add("down " + event.button + " " + event.stateMask);
            }

            @Override
            public void mouseUp(MouseEvent event) {
                // not looked at
            }
        });
        Hands hands = Hands.open(shell);
        hands.doubleClick(canvas);
        hands.until("it is a double click", () -> told.contains("double"));
        told.clear();
        hands.click(canvas, 3, 1, SWT.MOD1);
        hands.until("it is told", () -> !told.isEmpty());
        assertEquals("down 3 " + SWT.MOD1, told.getFirst());
    }

    @Test
    void aDragMovesWithTheButtonHeld() {
        Canvas canvas = fill(new Canvas(shell, SWT.BORDER));
        List<Point> held = new ArrayList<>();
        Point[] up = {null};
        canvas.addListener(SWT.MouseMove, event -> {
            if ((event.stateMask & SWT.BUTTON1) != 0) {
                held.add(new Point(event.x, event.y));
            }
        });
        canvas.addListener(SWT.MouseUp, event -> up[0] = new Point(event.x, event.y));
        Hands hands = Hands.open(shell);
        hands.drag(canvas, new Point(20, 30), canvas, new Point(220, 130));
        hands.until("the button is up", () -> up[0] != null);
        assertEquals(new Point(220, 130), up[0]);
        assertTrue(held.size() >= 5, () -> held.size() + " moves");
        assertTrue(held.contains(new Point(120, 80)), held::toString);
    }

    @Test
    void whatIsDraggedIsDropped() {
        shell.setLayout(new GridLayout(2, true));
        Canvas from = fill(new Canvas(shell, SWT.BORDER));
        Canvas to = fill(new Canvas(shell, SWT.BORDER));
        DragSource source = new DragSource(from, DND.DROP_MOVE);
        source.setTransfer(new Transfer[] {TextTransfer.getInstance()});
        source.addDragListener(new DragSourceListener() {
            @Override
            public void dragStart(DragSourceEvent event) {
                event.doit = true;
            }

            @Override
            public void dragSetData(DragSourceEvent event) {
                event.data = "a filter";
            }

            @Override
            public void dragFinished(DragSourceEvent event) {
                told.add("finished");
            }
        });
        DropTarget target = new DropTarget(to, DND.DROP_MOVE);
        target.setTransfer(new Transfer[] {TextTransfer.getInstance()});
        target.addDropListener(new DropTargetAdapter() {
            @Override
            public void drop(DropTargetEvent event) {
                told.add("dropped " + event.data);
            }
        });
        Hands hands = Hands.open(shell);
        hands.drag(from, new Point(50, 50), to, new Point(50, 80));
        hands.until("it is dropped", () -> told.contains("finished"));
        assertEquals(List.of("dropped a filter", "finished"), told);
    }

    @Test
    void itemsOfTablesTreesAndToolbarsAreClicked() {
        ToolBar bar = new ToolBar(shell, SWT.FLAT);
        ToolItem run = new ToolItem(bar, SWT.PUSH);
        run.setText("run");
        run.addSelectionListener(SelectionListener.widgetSelectedAdapter(event -> told.add("run")));
        Table table = fill(new Table(shell, SWT.BORDER | SWT.MULTI));
        for (int row = 0; row < 100; row++) {
            new TableItem(table, SWT.NONE).setText("row " + row);
        }
        Tree tree = fill(new Tree(shell, SWT.BORDER));
        TreeItem path = new TreeItem(tree, SWT.NONE);
        path.setText("air path");
        TreeItem filter = new TreeItem(path, SWT.NONE);
        filter.setText("filter");
        path.setExpanded(true);
        Hands hands = Hands.open(shell);
        hands.click("run");
        hands.until("the tool is selected", () -> told.contains("run"));
        hands.click("row 90");
        hands.until("the row is selected", () -> table.getSelectionIndex() == 90);
        hands.click(hands.find("row 88"), 1, 1, SWT.MOD1);
        hands.until("both rows are selected", () -> table.getSelectionCount() == 2);
        hands.click("filter");
        hands.until("the filter is selected", () -> tree.getSelectionCount() == 1 && tree.getSelection()[0] == filter);
    }

    @Test
    void menusAreChosenFrom() {
        Menu bar = new Menu(shell, SWT.BAR);
        shell.setMenuBar(bar);
        for (String top : List.of("&Design", "&Edit")) {
            MenuItem head = new MenuItem(bar, SWT.CASCADE);
            head.setText(top);
            Menu menu = new Menu(head);
            head.setMenu(menu);
            for (String name : List.of("first", "off", "third\tCtrl+T")) {
                MenuItem item = new MenuItem(menu, SWT.PUSH);
                item.setText(name);
                item.setEnabled(!name.equals("off"));
                item.addSelectionListener(SelectionListener.widgetSelectedAdapter(event -> told.add(top + " " + name)));
            }
        }
        button(shell, "something to hold the focus");
        Hands hands = Hands.open(shell);
        hands.choose("Edit", "third");
        hands.until("it is chosen", () -> !told.isEmpty());
        assertEquals(List.of("&Edit third\tCtrl+T"), told);
    }

    @Test
    void waitingEndsWithAPictureOfWhatThereWas() {
        button(shell, "First");
        Hands hands = Hands.open(shell);
        String message = assertThrows(AssertionError.class,
                () -> hands.until("pigs fly", Duration.ofMillis(50), () -> false)).getMessage();
        assertTrue(message.startsWith("after 50 ms it is not so that pigs fly; see "), message);
        Path file = Path.of(message.substring(message.indexOf("; see ") + 6));
        assertTrue(Files.isRegularFile(file), message);
    }

    @Test
    void aPictureShowsWhatIsThere(@TempDir Path folder) {
        shell.setLayout(null);
        Canvas canvas = new Canvas(shell, SWT.NONE);
        canvas.setBounds(20, 10, 101, 37);
        canvas.addPaintListener(event -> {
            event.gc.setBackground(Screen.display().getSystemColor(SWT.COLOR_RED));
            event.gc.fillRectangle(0, 0, 40, 37);
            event.gc.setBackground(Screen.display().getSystemColor(SWT.COLOR_BLUE));
            event.gc.fillRectangle(40, 0, 61, 37);
        });
        Hands hands = Hands.open(shell);
        ImageData picture = new ImageData(hands.screenshot(canvas, folder.resolve("two.png")).toString());
        assertEquals(List.of(101, 37), List.of(picture.width, picture.height));
        for (int y = 0; y < 37; y++) {
            for (int x : new int[] {0, 39, 40, 100}) {
                assertEquals(x < 40 ? new RGB(255, 0, 0) : new RGB(0, 0, 255), picture.palette.getRGB(picture.getPixel(x, y)), x + ", " + y);
            }
        }
    }

    @Test
    void aDialogThatKeepsTheListenerIsAnswered() {
        Button ask = button(shell, "ask");
        ask.addSelectionListener(SelectionListener.widgetSelectedAdapter(event -> {
            Shell question = new Shell(shell, SWT.DIALOG_TRIM | SWT.APPLICATION_MODAL);
            question.setText("Question");
            question.setLayout(new GridLayout());
            button(question, "Yes").addSelectionListener(SelectionListener.widgetSelectedAdapter(yes -> question.close()));
            question.setSize(200, 100);
            question.open();
            while (!question.isDisposed()) {
                if (!question.getDisplay().readAndDispatch()) {
                    question.getDisplay().sleep();
                }
            }
            told.add("answered");
        }));
        Hands hands = Hands.open(shell);
        hands.then("Question", dialog -> dialog.click("Yes"));
        hands.click("ask");
        hands.until("it is answered", () -> told.contains("answered"));
        assertTrue(told.contains("Yes"), told::toString);
        assertFalse(shell.isDisposed());
    }
}
