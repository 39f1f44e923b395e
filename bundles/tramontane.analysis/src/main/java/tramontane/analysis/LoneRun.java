package tramontane.analysis;

import java.util.List;
import java.util.Optional;
import tramontane.model.Condition;
import tramontane.model.Design;

/** A run without an engine; see {@link Run#alone}. */
record LoneRun(Trace trace) implements Run {

    @Override
    public boolean cancelled() {
        return false;
    }

    @Override
    public void progress(double fraction, String message) {
        // nobody watches
    }

    @Override
    public <R> Optional<R> ask(Design design, Condition condition, Class<R> type) {
        return Optional.empty();
    }

    @Override
    public List<Figure> figures(Design design, Condition condition, String id) {
        return List.of();
    }
}
