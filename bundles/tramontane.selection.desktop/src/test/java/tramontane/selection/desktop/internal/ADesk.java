package tramontane.selection.desktop.internal;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import java.util.function.Consumer;
import java.util.function.UnaryOperator;
import org.eclipse.swt.SWT;
import org.eclipse.swt.graphics.Font;
import org.eclipse.swt.graphics.Image;
import org.eclipse.swt.widgets.Display;
import org.eclipse.swt.widgets.Shell;
import tramontane.analysis.Engine;
import tramontane.desktop.Desk;
import tramontane.desktop.Document;
import tramontane.desktop.FigureKey;
import tramontane.desktop.Icon;
import tramontane.desktop.Jobs;
import tramontane.desktop.Memory;
import tramontane.desktop.Palette;
import tramontane.desktop.Results;
import tramontane.desktop.Scene;
import tramontane.model.Design;
import tramontane.model.edit.Edit;
import tramontane.model.edit.Subject;
import tramontane.physics.units.UnitSystem;

/** What views ask of a window, as little as these need. */
final class ADesk implements Desk, Jobs {

    private final Display display;
    private final Shell shell;
    private final Path home;

    final Font digits;
    final Font bold;
    final List<String> steps = new ArrayList<>();
    private final Map<String, Map<String, String>> kept = new HashMap<>();
    Design design;
    Palette palette = Palette.LIGHT;

    ADesk(Shell shell, Path home, Design design) {
        display = shell.getDisplay();
        this.shell = shell;
        this.home = home;
        this.design = design;
        digits = new Font(display, "Monospace", 10, SWT.NORMAL);
        bold = new Font(display, "Sans", 10, SWT.BOLD);
    }

    void dispose() {
        digits.dispose();
        bold.dispose();
    }

    @Override
    public Scene scene() {
        return new Scene(new Document("a", Optional.empty(), design, false, Optional.empty(), Optional.empty(), List.of()), Results.NONE, "nominal", Optional.empty(),
                Optional.empty(), UnitSystem.METRIC, palette);
    }

    @Override
    public void edit(String what, UnaryOperator<Design> change) {
        steps.add(what);
        design = change.apply(design);
    }

    @Override
    public boolean edit(Edit edit) {
        return false;
    }

    @Override
    public void select(Optional<Subject> subject) {
        throw new AssertionError("nothing is selected here");
    }

    @Override
    public void front(String caseId) {
        throw new AssertionError("no case is brought to the front here");
    }

    @Override
    public void units(UnitSystem units) {
        throw new AssertionError("no units are switched here");
    }

    @Override
    public void explain(FigureKey figure) {
        throw new AssertionError("no figure is asked about here");
    }

    @Override
    public void open(String viewId) {
        throw new AssertionError("no view is opened here");
    }

    @Override
    public void run(String commandId) {
        throw new AssertionError("no command is run here");
    }

    @Override
    public void openFile(Path file) {
        throw new AssertionError("no file is opened here");
    }

    @Override
    public void say(String sentence) {
        // nobody reads it
    }

    @Override
    public void failed(String sentence, Throwable cause) {
        throw new AssertionError(sentence, cause);
    }

    @Override
    public Jobs jobs() {
        return this;
    }

    @Override
    public Engine engine() {
        return Given.ENGINE;
    }

    @Override
    public Image image(Icon icon, org.eclipse.swt.graphics.Color colour) {
        return image(icon);
    }

    @Override
    public Image image(Icon icon) {
        throw new AssertionError("the window draws the icons");
    }

    @Override
    public Font digits() {
        return digits;
    }

    @Override
    public Font bold() {
        return bold;
    }

    @Override
    public Memory memory(String viewId) {
        Map<String, String> mine = kept.computeIfAbsent(viewId, id -> new HashMap<>());
        return new Memory() {
            @Override
            public Optional<String> get(String name) {
                return Optional.ofNullable(mine.get(name));
            }

            @Override
            public void put(String name, String text) {
                mine.put(name, text);
            }
        };
    }

    @Override
    public Path home() {
        return home;
    }

    @Override
    public Shell shell() {
        return shell;
    }

    @Override
    public <T> Job start(String label, Work<T> work, Consumer<T> then) {
        return quietly(work, then);
    }

    @Override
    public <T> Job quietly(Work<T> work, Consumer<T> then) {
        CompletableFuture.runAsync(() -> {
            try {
                T made = work.run(tramontane.selection.Watch.NONE);
                display.asyncExec(() -> then.accept(made));
            } catch (Exception e) {
                throw new IllegalStateException(e);
            }
        });
        return new Job() {
            @Override
            public String label() {
                return "";
            }

            @Override
            public double fraction() {
                return -1;
            }

            @Override
            public String message() {
                return "";
            }

            @Override
            public State state() {
                return State.RUNNING;
            }

            @Override
            public void cancel() {
                // nothing here takes long
            }
        };
    }

    @Override
    public List<Job> list() {
        return List.of();
    }
}
