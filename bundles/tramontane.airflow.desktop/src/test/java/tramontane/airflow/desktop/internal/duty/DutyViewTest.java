package tramontane.airflow.desktop.internal.duty;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.BooleanSupplier;
import org.eclipse.swt.SWT;
import org.eclipse.swt.layout.FillLayout;
import org.eclipse.swt.widgets.Combo;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.Display;
import org.eclipse.swt.widgets.Event;
import org.eclipse.swt.widgets.Shell;
import org.eclipse.swt.widgets.Table;
import org.eclipse.swt.widgets.Text;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import tramontane.analysis.Chart;
import tramontane.analysis.Evaluation;
import tramontane.desktop.Command;
import tramontane.desktop.Palette;
import tramontane.desktop.Results;

/** The view with real widgets; left out where there is no display. */
class DutyViewTest {

    private static final Evaluation OBSERVATORY = Evaluated.of(Evaluated.sample(Path.of("../../product/samples/observatory.tramontane.json")));
    private static final Evaluation CABINET = Evaluated.of(Evaluated.sample(Path.of("../../product/samples/cabinet.tramontane.json")));

    private static Display display;
    private Shell shell;
    private DemoDesk desk;
    private DutyView view;

    @BeforeAll
    static void connect() {
        assumeTrue(System.getenv("DISPLAY") != null || System.getenv("WAYLAND_DISPLAY") != null, "there is no display");
        display = Display.getDefault(); // one for all tests of a process
    }

    @BeforeEach
    void open() {
        shell = new Shell(display);
        shell.setLayout(new FillLayout());
        shell.setSize(600, 500);
        desk = new DemoDesk(shell, OBSERVATORY, "nominal", Palette.LIGHT);
        view = new DutyView(shell, desk, Evaluated.PHYSICS);
        view.show(desk.scene());
        shell.open();
        until(() -> view.chart().isPresent());
    }

    @AfterEach
    void close() {
        view.close();
        shell.dispose();
        assertEquals(List.of(), desk.failures);
    }

    private void until(BooleanSupplier there) {
        long end = System.nanoTime() + 20_000_000_000L;
        while (!there.getAsBoolean()) {
            assertTrue(System.nanoTime() < end, "it did not come");
            if (!display.readAndDispatch()) {
                Thread.onSpinWait();
            }
        }
    }

    private <T extends Control> T only(Class<T> type, java.util.function.Predicate<T> which) {
        List<T> found = new ArrayList<>();
        collect(shell, type, found);
        return found.stream().filter(which).findFirst().orElseThrow();
    }

    private static <T extends Control> void collect(Composite in, Class<T> type, List<T> found) {
        for (Control child : in.getChildren()) {
            if (type.isInstance(child)) {
                found.add(type.cast(child));
            }
            if (child instanceof Composite inner) {
                collect(inner, type, found);
            }
        }
    }

    private Control plot() {
        return only(org.eclipse.swtchart.Chart.class, any -> true).getPlotArea().getControl();
    }

    private String reading() {
        return only(Text.class, text -> text.getEditable() || !text.getText().isBlank() && text.isVisible()).getText();
    }

    private void key(int code, char character, int mask) {
        Event event = new Event();
        event.keyCode = code;
        event.character = character;
        event.stateMask = mask;
        plot().notifyListeners(SWT.KeyDown, event);
    }

    private double width() {
        return view.seen().extent().length();
    }

    @Test
    void itShowsTheCaseInFront() {
        assertEquals("fans, nominal", view.chart().orElseThrow().title());
        assertTrue(reading().startsWith("duty point   flow "), this::reading);
        view.show(desk.scene().inFront("hot day"));
        until(() -> view.chart().orElseThrow().title().equals("fans, hot day"));
    }

    @Test
    void keysZoomPanAndReadOff() {
        double all = width();
        key('+', '+', 0);
        assertEquals(all / 1.25, width(), 1e-9);
        double from = view.seen().extent().from();
        key(SWT.ARROW_RIGHT, '\0', 0);
        assertEquals(from + 0.1 * all / 1.25, view.seen().extent().from(), 1e-9);
        key('0', '0', 0);
        assertEquals(all, width(), 1e-9);
        key(SWT.ARROW_RIGHT, '\0', SWT.MOD1);
        assertTrue(reading().startsWith("flow ") && reading().contains("fans, "), this::reading);
        key(SWT.ESC, SWT.ESC, 0);
        assertTrue(reading().startsWith("duty point"), this::reading);
    }

    @Test
    void theZoomStaysWhileTheSceneChangesUntilFit() {
        double all = width();
        key('+', '+', 0);
        view.show(desk.scene().inFront("hot day"));
        until(() -> view.chart().orElseThrow().title().equals("fans, hot day"));
        assertEquals(all / 1.25, width(), 1e-9);
        view.handlers().get(Command.FIT).run();
        assertTrue(width() > all / 1.2);
    }

    @Test
    void theWheelZoomsAboutTheMouse() {
        double all = width();
        Event event = new Event();
        event.count = 3;
        event.x = 0;
        event.y = plot().getSize().y - 1;
        plot().notifyListeners(SWT.MouseWheel, event);
        assertEquals(all / 1.25, width(), 1e-9);
        assertEquals(view.chart().orElseThrow().extent().from(), view.seen().extent().from(), 1e-9);
    }

    @Test
    void theTableSaysTheSame() {
        view.commands().stream().filter(command -> command.id().equals("duty.table")).findFirst().orElseThrow().run().accept(desk);
        Table table = only(Table.class, any -> true);
        assertTrue(table.isVisible());
        assertEquals("duty point", table.getItem(0).getText(0));
        assertTrue(table.getItemCount() > 10);
        assertEquals(table.getColumnCount(), 3 + view.chart().orElseThrow().series().size());
    }

    @Test
    void whatIsOfAnEarlierStateIsGreyed() {
        assertFalse(view.stale());
        view.show(DemoDesk.scene(OBSERVATORY.design(), new Results(Optional.empty(), Optional.of(OBSERVATORY), true), "nominal", Palette.LIGHT));
        assertTrue(view.stale());
        assertTrue(view.chart().isPresent());
        view.show(desk.scene());
        until(() -> !view.stale());
    }

    @Test
    void whatIsShownIsChangedAndKept() {
        view.commands().stream().filter(command -> command.id().equals("duty.speeds")).findFirst().orElseThrow().run().accept(desk);
        until(() -> view.chart().orElseThrow().series().stream().anyMatch(series -> series.name().startsWith("at 80 %")));
        assertTrue(desk.memory("").get("shown").orElseThrow().contains("speeds"));
    }

    @Test
    void oneBankNeedsNoChoice() {
        assertFalse(only(Combo.class, any -> true).isVisible());
    }

    @Test
    void anotherDesignIsSeenAsAWhole() {
        key('+', '+', 0);
        view.show(new tramontane.desktop.Scene(new tramontane.desktop.Document("other", Optional.empty(), CABINET.design(), false, Optional.empty(),
                Optional.empty(), List.of()), new Results(Optional.of(CABINET), Optional.empty(), false), "nominal", Optional.empty(),
                Optional.empty(), desk.scene().units(), Palette.DARK));
        until(() -> view.chart().orElseThrow().extent().to() > 0.2);
        assertEquals(view.chart().orElseThrow().extent(), view.seen().extent());
        assertEquals(view.chart().orElseThrow().extent(Chart.Side.LEFT), view.seen().extent(Chart.Side.LEFT));
    }

    @Test
    void withoutABankItSaysWhatToDo() {
        view.show(DemoDesk.scene(tramontane.model.Design.EMPTY, Results.NONE, "", Palette.LIGHT));
        assertTrue(view.chart().isEmpty());
        assertTrue(reading().contains("no bank"), this::reading);
    }
}
