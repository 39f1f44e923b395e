package tramontane.analysis;

import java.util.List;
import java.util.Optional;
import tramontane.model.Condition;
import tramontane.model.Design;

/** A run of which data and the values of figures alone are wanted; see {@link Run#briefly}. */
record BriefRun(Run run) implements Run, Trace {

    @Override
    public boolean cancelled() {
        return run.cancelled();
    }

    @Override
    public void progress(double fraction, String message) {
        // that of the whole says how far it is
    }

    @Override
    public boolean brief() {
        return true;
    }

    @Override
    public Trace trace() {
        return this;
    }

    @Override
    public <R> Optional<R> ask(Design design, Condition condition, Class<R> type) {
        return run.ask(design, condition, type);
    }

    @Override
    public List<Figure> figures(Design design, Condition condition, String id) {
        return run.figures(design, condition, id);
    }

    @Override
    public boolean recording() {
        return false;
    }

    @Override
    public void step(Step step) {
        // nobody listens
    }
}
