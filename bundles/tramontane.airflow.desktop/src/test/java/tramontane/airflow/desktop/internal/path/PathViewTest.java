package tramontane.airflow.desktop.internal.path;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.lang.reflect.Proxy;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.Predicate;
import org.eclipse.swt.SWT;
import org.eclipse.swt.graphics.GC;
import org.eclipse.swt.graphics.Image;
import org.eclipse.swt.graphics.ImageData;
import org.eclipse.swt.layout.FillLayout;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.Display;
import org.eclipse.swt.widgets.Event;
import org.eclipse.swt.widgets.Shell;
import org.eclipse.swt.widgets.Table;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledIfEnvironmentVariable;
import tramontane.analysis.Evaluation;
import tramontane.desktop.Desk;
import tramontane.desktop.Document;
import tramontane.desktop.Jobs;
import tramontane.desktop.Memory;
import tramontane.desktop.Palette;
import tramontane.desktop.Results;
import tramontane.desktop.Scene;
import tramontane.model.Design;
import tramontane.model.edit.Edit;
import tramontane.model.edit.Subject;
import tramontane.physics.units.UnitSystem;

/** The view in a window of its own, where there is a display. */
@EnabledIfEnvironmentVariable(named = "DISPLAY", matches = ".+")
class PathViewTest {

    private final Display display = Display.getDefault();
    private final Shell shell = new Shell(display);
    private final List<Edit> edits = new ArrayList<>();
    private final Map<String, String> kept = new HashMap<>();
    private Scene scene = scene(Samples.design("observatory"), Optional.of(Samples.evaluation("observatory")), Palette.LIGHT);
    private PathView view;

    private static Scene scene(Design design, Optional<Evaluation> evaluation, Palette palette) {
        return new Scene(new Document("1", Optional.empty(), design, false, Optional.empty(), Optional.empty(), List.of()),
                new Results(evaluation, Optional.empty(), false), "hot day", Optional.empty(), Optional.empty(), UnitSystem.METRIC, palette);
    }

    @BeforeEach
    void open() {
        shell.setLayout(new FillLayout());
        shell.setSize(1100, 700);
        view = new PathView(shell, desk());
        shell.open();
        view.show(scene);
        until(canvas -> texts().size() == 8);
    }

    @AfterEach
    void close() {
        view.close();
        shell.dispose();
    }

    /** A window that keeps what it is told. */
    private Desk desk() {
        Memory memory = (Memory) Proxy.newProxyInstance(Memory.class.getClassLoader(), new Class<?>[] {Memory.class}, (self, method, given) -> {
            if (method.getName().equals("put")) {
                kept.put((String) given[0], (String) given[1]);
                return null;
            }
            return Optional.ofNullable(kept.get(given[0]));
        });
        Jobs jobs = (Jobs) Proxy.newProxyInstance(Jobs.class.getClassLoader(), new Class<?>[] {Jobs.class}, (self, method, given) -> {
            Object made = ((Jobs.Work<?>) given[0]).run(null);
            display.asyncExec(() -> take((Consumer<?>) given[1], made));
            return Proxy.newProxyInstance(Jobs.class.getClassLoader(), new Class<?>[] {Jobs.Job.class}, (job, asked, nothing) -> null);
        });
        return (Desk) Proxy.newProxyInstance(Desk.class.getClassLoader(), new Class<?>[] {Desk.class}, (self, method, given) -> switch (method.getName()) {
            case "scene" -> scene;
            case "memory" -> memory;
            case "jobs" -> jobs;
            case "engine" -> Samples.engine();
            case "digits", "bold" -> display.getSystemFont();
            case "select" -> {
                @SuppressWarnings("unchecked")
                Optional<Subject> subject = (Optional<Subject>) given[0];
                scene = new Scene(scene.document(), scene.results(), scene.front(), subject, Optional.empty(), scene.units(), scene.palette());
                view.show(scene);
                yield null;
            }
            case "edit" -> {
                edits.add((Edit) given[0]);
                scene = scene(((Edit) given[0]).design().orElseThrow(), scene.results().now(), scene.palette());
                view.show(scene);
                yield true;
            }
            default -> null;
        });
    }

    @SuppressWarnings("unchecked")
    private static <T> void take(Consumer<?> then, T made) {
        ((Consumer<T>) then).accept(made);
    }

    private Control find(Composite parent, String id) {
        for (Control child : parent.getChildren()) {
            if (id.equals(child.getData("tramontane.id"))) {
                return child;
            }
            if (child instanceof Composite inner && find(inner, id) != null) {
                return find(inner, id);
            }
        }
        return null;
    }

    private List<String> texts() {
        return java.util.Arrays.stream(((Table) find(shell, "airpath.table")).getItems()).map(item -> item.getText(0)).toList();
    }

    private void until(Predicate<Display> reached) {
        long end = System.nanoTime() + 20_000_000_000L;
        while (!reached.test(display) && System.nanoTime() < end) {
            if (!display.readAndDispatch()) {
                Thread.onSpinWait();
            }
        }
        assertTrue(reached.test(display));
        while (display.readAndDispatch()) {
            continue;
        }
    }

    private void press(int key, int mask) {
        Event event = new Event();
        event.keyCode = key;
        event.stateMask = mask;
        find(shell, "airpath.picture").notifyListeners(SWT.KeyDown, event);
    }

    @Test
    void arrowKeysSelectForTheWholeWindowAndTheTableFollows() {
        press(SWT.HOME, 0);
        assertEquals(Optional.of(Subject.OUTSIDE), scene.selection());
        press(SWT.ARROW_RIGHT, 0);
        assertEquals(Optional.of(Subject.passage("grille")), scene.selection());
        assertEquals(0, ((Table) find(shell, "airpath.table")).getSelectionIndex());
        press(SWT.ARROW_RIGHT, 0);
        press(SWT.ARROW_RIGHT, SWT.ALT);
        assertEquals("move inlet", edits.getLast().what());
        assertTrue(PathGraph.pin(scene.document().design(), "inlet").isPresent());
        press(SWT.ESC, 0);
        assertTrue(scene.selection().isEmpty());
    }

    @Test
    void thePictureIsDrawnInEveryColour() {
        for (Palette palette : List.of(Palette.LIGHT, Palette.DARK)) {
            scene = scene(scene.document().design(), scene.results().now(), palette);
            view.show(scene);
            Control canvas = find(shell, "airpath.picture");
            Image image = new Image(display, canvas.getSize().x, canvas.getSize().y);
            GC gc = new GC(image);
            Event event = new Event();
            event.gc = gc;
            canvas.notifyListeners(SWT.Paint, event);
            gc.dispose();
            ImageData data = image.getImageData();
            image.dispose();
            java.util.Set<Integer> colours = new java.util.HashSet<>();
            for (int x = 0; x < data.width; x += 3) {
                for (int y = 0; y < data.height; y += 3) {
                    colours.add(data.getPixel(x, y));
                }
            }
            assertTrue(colours.size() > 40, palette.dark() + ": " + colours.size());
        }
    }

    @Test
    void nothingToDrawOffersToAddABay() {
        scene = scene(Design.EMPTY, Optional.empty(), Palette.LIGHT);
        view.show(scene);
        assertTrue(find(shell, "airpath.add").isVisible());
        find(shell, "airpath.add").notifyListeners(SWT.Selection, new Event());
        assertEquals(1, scene.document().design().airPath().bays().size());
        assertFalse(find(shell, "airpath.add").isVisible());
    }
}
