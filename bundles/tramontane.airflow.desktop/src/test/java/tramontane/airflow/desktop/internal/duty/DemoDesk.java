package tramontane.airflow.desktop.internal.duty;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.function.Consumer;
import java.util.function.UnaryOperator;
import org.eclipse.swt.graphics.Font;
import org.eclipse.swt.graphics.Image;
import org.eclipse.swt.widgets.Shell;
import tramontane.analysis.Engine;
import tramontane.analysis.Evaluation;
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

/** A window of one view, for demos and tests with a display. */
final class DemoDesk implements Desk {

    private final Shell shell;
    private final Map<String, String> kept = new HashMap<>();
    final List<String> said = new ArrayList<>();
    final List<Throwable> failures = new ArrayList<>();
    Scene scene;

    DemoDesk(Shell shell, Evaluation evaluation, String front, Palette palette) {
        this.shell = shell;
        scene = scene(evaluation.design(), new Results(Optional.of(evaluation), Optional.empty(), false), front, palette);
    }

    static Scene scene(Design design, Results results, String front, Palette palette) {
        return new Scene(new Document("demo", Optional.empty(), design, false, Optional.empty(), Optional.empty(), List.of()), results, front,
                Optional.empty(), Optional.empty(), UnitSystem.METRIC, palette);
    }

    @Override
    public Scene scene() {
        return scene;
    }

    @Override
    public void edit(String what, UnaryOperator<Design> change) {
        throw new UnsupportedOperationException("a chart changes nothing");
    }

    @Override
    public boolean edit(Edit edit) {
        throw new UnsupportedOperationException("a chart changes nothing");
    }

    @Override
    public void select(Optional<Subject> subject) {
        scene = new Scene(scene.document(), scene.results(), scene.front(), subject, scene.asked(), scene.units(), scene.palette());
    }

    @Override
    public void front(String caseId) {
        scene = scene.inFront(caseId);
    }

    @Override
    public void units(UnitSystem units) {
        scene = new Scene(scene.document(), scene.results(), scene.front(), scene.selection(), scene.asked(), units, scene.palette());
    }

    @Override
    public void explain(FigureKey figure) {
        said.add(figure.toString());
    }

    @Override
    public void open(String viewId) {
        said.add(viewId);
    }

    @Override
    public void run(String commandId) {
        said.add(commandId);
    }

    @Override
    public void openFile(Path file) {
        said.add(file.toString());
    }

    @Override
    public void say(String sentence) {
        said.add(sentence);
    }

    @Override
    public void failed(String sentence, Throwable cause) {
        failures.add(cause);
    }

    @Override
    public Jobs jobs() {
        return new Jobs() {
            @Override
            public <T> Job start(String label, Work<T> work, Consumer<T> then) {
                return quietly(work, then);
            }

            @Override
            public <T> Job quietly(Work<T> work, Consumer<T> then) {
                AtomicBoolean cancelled = new AtomicBoolean();
                CompletableFuture.runAsync(() -> {
                    try {
                        T came = work.run(new Engine.Watch() {
                            @Override
                            public boolean cancelled() {
                                return cancelled.get();
                            }

                            @Override
                            public void progress(double fraction, String message) {
                                // nobody looks
                            }
                        });
                        if (!shell.isDisposed()) {
                            shell.getDisplay().asyncExec(() -> {
                                if (!cancelled.get()) {
                                    then.accept(came);
                                }
                            });
                        }
                    } catch (Exception e) {
                        failures.add(e);
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
                        cancelled.set(true);
                    }
                };
            }

            @Override
            public List<Job> list() {
                return List.of();
            }
        };
    }

    @Override
    public Engine engine() {
        throw new UnsupportedOperationException("a chart computes nothing");
    }

    @Override
    public Image image(Icon icon, org.eclipse.swt.graphics.Color colour) {
        return image(icon);
    }

    @Override
    public Image image(Icon icon) {
        throw new UnsupportedOperationException("a chart has no pictures");
    }

    @Override
    public Font digits() {
        return shell.getDisplay().getSystemFont();
    }

    @Override
    public Font bold() {
        return shell.getDisplay().getSystemFont();
    }

    @Override
    public Memory memory(String viewId) {
        return new Memory() {
            @Override
            public Optional<String> get(String name) {
                return Optional.ofNullable(kept.get(name));
            }

            @Override
            public void put(String name, String text) {
                kept.put(name, text);
            }
        };
    }

    @Override
    public Path home() {
        return Path.of("target");
    }

    @Override
    public Shell shell() {
        return shell;
    }
}
