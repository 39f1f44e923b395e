package tramontane.selection.desktop.internal;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Consumer;
import java.util.function.Supplier;
import java.util.function.UnaryOperator;
import tramontane.analysis.Engine;
import tramontane.model.Design;

/** A window that does everything at once, or holds what was started until the test lets it go. */
final class AtOnce implements Desktop {

    final List<String> said = new ArrayList<>();
    final List<String> steps = new ArrayList<>();
    final List<String> started = new ArrayList<>();
    final List<Runnable> held = new ArrayList<>();
    Design design = Design.EMPTY;
    boolean hold;
    boolean stopped;

    @Override
    public Runnable start(String label, Consumer<Engine.Watch> work) {
        started.add(label);
        Engine.Watch watch = new Engine.Watch() {
            @Override
            public boolean cancelled() {
                return stopped;
            }

            @Override
            public void progress(double fraction, String message) {
                // the state tells
            }
        };
        if (hold) {
            held.add(() -> work.accept(watch));
        } else {
            work.accept(watch);
        }
        return () -> stopped = true;
    }

    void letGo() {
        List<Runnable> all = List.copyOf(held);
        held.clear();
        all.forEach(Runnable::run);
    }

    @Override
    public <T> void quietly(Supplier<T> work, Consumer<T> then) {
        then.accept(work.get());
    }

    @Override
    public void later(Runnable work) {
        work.run();
    }

    @Override
    public void edit(String what, UnaryOperator<Design> change) {
        steps.add(what);
        design = change.apply(design);
    }

    @Override
    public void say(String sentence) {
        said.add(sentence);
    }
}
