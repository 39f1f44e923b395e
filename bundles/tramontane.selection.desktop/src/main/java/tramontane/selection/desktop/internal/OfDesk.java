package tramontane.selection.desktop.internal;

import java.util.function.Consumer;
import java.util.function.Supplier;
import java.util.function.UnaryOperator;
import org.eclipse.swt.widgets.Display;
import tramontane.analysis.Engine;
import tramontane.desktop.Desk;
import tramontane.desktop.Jobs;
import tramontane.model.Design;

/** The window for presenters. */
final class OfDesk implements Desktop {

    private final Desk desk;
    private final Display display;

    OfDesk(Desk desk, Display display) {
        this.desk = desk;
        this.display = display;
    }

    @Override
    public Runnable start(String label, Consumer<Engine.Watch> work) {
        Jobs.Job job = desk.jobs().start(label, watch -> {
            work.accept(watch);
            return label;
        }, done -> { });
        return job::cancel;
    }

    @Override
    public <T> void quietly(Supplier<T> work, Consumer<T> then) {
        desk.jobs().quietly(watch -> work.get(), then);
    }

    @Override
    public void later(Runnable work) {
        if (!display.isDisposed()) {
            display.asyncExec(work);
        }
    }

    @Override
    public void edit(String what, UnaryOperator<Design> change) {
        desk.edit(what, change);
    }

    @Override
    public void say(String sentence) {
        desk.say(sentence);
    }
}
