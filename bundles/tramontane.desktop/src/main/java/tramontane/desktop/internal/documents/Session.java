package tramontane.desktop.internal.documents;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import java.util.function.UnaryOperator;
import tramontane.analysis.Engine;
import tramontane.analysis.Evaluation;
import tramontane.desktop.FigureKey;
import tramontane.desktop.Results;
import tramontane.model.Design;
import tramontane.model.Problem;
import tramontane.model.edit.Subject;

/**
 * The designs that are open and the one in front; what a window does to them. Without widgets and files; on one thread.
 *
 * <p>There is always one design in front: where the last one is closed, an empty one takes its place.
 */
public final class Session {

    /** What is told of changes. */
    public interface Listener {
        /** Something of the design in front has changed, or another one is in front. */
        void changed();

        /** The design in front is another state, or another design: it wants to be computed. */
        void computeAnew();
    }

    private final Listener listener;
    private final List<OpenDesign> open = new ArrayList<>();
    private int front;

    /** A session with an empty design. */
    public Session(Listener listener) {
        this.listener = listener;
        open.add(empty());
    }

    private static OpenDesign empty() {
        return OpenDesign.of(UUID.randomUUID().toString(), Optional.empty(), Design.EMPTY, Optional.of(Design.EMPTY));
    }

    /** The open designs in the order they were opened. */
    public List<OpenDesign> open() {
        return List.copyOf(open);
    }

    /** The one in front. */
    public OpenDesign front() {
        return open.get(front);
    }

    /** The open design that is kept in a file. */
    public Optional<OpenDesign> of(Path file) {
        return open.stream().filter(each -> each.file().map(file::equals).orElse(false)).findFirst();
    }

    /**
     * Opens a design and brings it to the front. An empty, nameless one that was never touched gives way.
     *
     * @param file   where it is kept; empty for one that never was
     * @param design the design
     * @param saved  what the file holds
     */
    public void open(Optional<Path> file, Design design, Optional<Design> saved) {
        if (open.size() == 1 && front().file().isEmpty() && !front().changed()) {
            open.clear();
        }
        open.add(OpenDesign.of(UUID.randomUUID().toString(), file, design, saved));
        front = open.size() - 1;
        listener.computeAnew();
        listener.changed();
    }

    /** Opens an empty design. */
    public void openEmpty() {
        open.add(empty());
        front = open.size() - 1;
        listener.computeAnew();
        listener.changed();
    }

    /** Brings a design to the front. */
    public void show(String key) {
        for (int i = 0; i < open.size(); i++) {
            if (open.get(i).key().equals(key) && i != front) {
                front = i;
                listener.computeAnew();
                listener.changed();
            }
        }
    }

    /** Closes a design, saved or not. */
    public void close(String key) {
        String shown = front().key();
        open.removeIf(each -> each.key().equals(key));
        if (open.isEmpty()) {
            open.add(empty());
        }
        front = Math.min(front, open.size() - 1);
        for (int i = 0; i < open.size(); i++) {
            if (open.get(i).key().equals(shown)) {
                front = i;
            }
        }
        if (!front().key().equals(shown)) {
            listener.computeAnew();
        }
        listener.changed();
    }

    /**
     * Changes the design in front, as one step that can be taken back.
     *
     * @return whether anything changed
     */
    public boolean edit(String what, Design changed) {
        return move(history -> history.with(what, changed));
    }

    /** Takes the last step back. */
    public boolean undo() {
        return move(History::undo);
    }

    /** Does the last step again that was taken back. */
    public boolean redo() {
        return move(History::redo);
    }

    private boolean move(UnaryOperator<History> step) {
        OpenDesign before = front();
        History after = step.apply(before.history());
        if (after == before.history()) {
            return false;
        }
        // the case in front may have gone with its condition
        String shown = condition(before);
        boolean gone = after.design().workingConditions().stream().noneMatch(condition -> condition.id().equals(shown));
        OpenDesign moved = before.with(after);
        open.set(front, gone ? moved.withFront(after.design().workingConditions().getFirst().id()) : moved);
        listener.computeAnew();
        listener.changed();
        return true;
    }

    private static String condition(OpenDesign design) {
        return design.results().cases().stream().filter(each -> each.concrete().id().equals(design.front()))
                .map(each -> each.declared()).findFirst().orElse(design.front());
    }

    /** Selects something, or nothing. */
    public void select(Optional<Subject> subject) {
        if (!front().selection().equals(subject)) {
            open.set(front, front().withSelection(subject));
            listener.changed();
        }
    }

    /** Brings a case to the front; a condition that stands for several cases brings its first. */
    public void front(String caseId) {
        List<Engine.Case> cases = front().results().cases();
        String shown = cases.stream().anyMatch(each -> each.concrete().id().equals(caseId)) ? caseId
                : cases.stream().filter(each -> each.declared().equals(caseId)).map(each -> each.concrete().id()).findFirst().orElse(caseId);
        if (!front().front().equals(shown)) {
            open.set(front, front().withFront(shown));
            listener.changed();
        }
    }

    /** Asks where a figure comes from. */
    public void ask(Optional<FigureKey> figure) {
        if (!front().asked().equals(figure)) {
            open.set(front, front().withAsked(figure));
            listener.changed();
        }
    }

    /** The design in front was saved. */
    public void saved(String key, Path file, Design what) {
        update(key, design -> design.savedAs(file, what));
    }

    /**
     * The file of an open design was found to hold something else than before.
     *
     * @param holds what; empty where it is gone or cannot be read
     */
    public void found(String key, Optional<Design> holds) {
        update(key, design -> design.withSaved(holds));
    }

    /** What is wrong with a design, as long as it is still the one that was looked at. */
    public void checked(String key, Design of, List<Problem> problems) {
        update(key, design -> design.design() == of ? design.withProblems(problems) : design);
    }

    /**
     * What was computed.
     *
     * @param key        of the design
     * @param evaluation what came out; of another state of the design than the one that holds now it is dropped
     * @param last       whether that is all
     */
    public void computed(String key, Evaluation evaluation, boolean last) {
        update(key, design -> {
            boolean known = design.results().now().filter(now -> now.design() == evaluation.design()).isPresent();
            if (design.design() != evaluation.design() || !last && known) {
                return design; // of another state, or a part of what is known as a whole
            }
            Results results = last ? new Results(Optional.of(evaluation), Optional.empty(), false)
                    : new Results(Optional.of(evaluation), design.results().before().or(() -> design.results().now()
                            .filter(now -> now.design() != evaluation.design())), true, design.results().late());
            return shown(design.with(results));
        });
    }

    /** The run of a design takes so long that what is known of an earlier state is to be shown as stale. */
    public void late(String key, Design of) {
        update(key, design -> design.design() != of || design.results().complete() || design.results().late() ? design
                : design.with(new Results(design.results().now(), design.results().before(), design.results().running(), true)));
    }

    /** A run ended without anything to show: the design has errors, or it was stopped. */
    public void notComputed(String key, Design of) {
        update(key, design -> design.design() != of ? design
                : design.with(new Results(design.results().now(), design.results().before(), false)));
    }

    /** With a case in front that there is. */
    private static OpenDesign shown(OpenDesign design) {
        List<Engine.Case> cases = design.results().cases();
        if (cases.isEmpty() || cases.stream().anyMatch(each -> each.concrete().id().equals(design.front()))) {
            return design;
        }
        // while a part is known only, the case in front may be among the rest
        return cases.stream().filter(each -> each.declared().equals(design.front())).findFirst()
                .or(() -> design.results().complete() ? Optional.of(cases.getFirst()) : Optional.empty())
                .map(each -> design.withFront(each.concrete().id())).orElse(design);
    }

    private void update(String key, UnaryOperator<OpenDesign> change) {
        for (int i = 0; i < open.size(); i++) {
            OpenDesign before = open.get(i);
            if (before.key().equals(key)) {
                OpenDesign after = change.apply(before);
                if (after != before) {
                    open.set(i, after);
                    listener.changed();
                }
            }
        }
    }
}
