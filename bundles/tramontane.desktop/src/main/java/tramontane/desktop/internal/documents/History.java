package tramontane.desktop.internal.documents;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import tramontane.model.Design;

/**
 * The states of a design, one after another, with what led from each to the next. Immutable; designs share what did not change, so
 * that a thousand states cost little more than one.
 *
 * @param states the states, oldest first, at least one
 * @param steps  what led to each state from the one before; one fewer than states
 * @param at     index of the state that holds now
 */
public record History(List<Design> states, List<String> steps, int at) {

    /** How many steps can be taken back. */
    public static final int MOST = 1000;

    public History {
        states = List.copyOf(states);
        steps = List.copyOf(steps);
        if (steps.size() != states.size() - 1 || at < 0 || at >= states.size()) {
            throw new IllegalArgumentException("a history of " + states.size() + " states with " + steps.size() + " steps, at " + at);
        }
    }

    /** A history that begins here. */
    public static History of(Design design) {
        return new History(List.of(design), List.of(), 0);
    }

    /** The design as it is now. */
    public Design design() {
        return states.get(at);
    }

    /** One step on; what could have been done again is gone. The same where nothing changes. */
    public History with(String step, Design changed) {
        if (changed.equals(design())) {
            return this;
        }
        int first = Math.max(0, at + 1 - MOST);
        List<Design> kept = new ArrayList<>(states.subList(first, at + 1));
        List<String> said = new ArrayList<>(steps.subList(first, at));
        kept.add(changed);
        said.add(step);
        return new History(kept, said, kept.size() - 1);
    }

    /** What undo would take back. */
    public Optional<String> undone() {
        return at == 0 ? Optional.empty() : Optional.of(steps.get(at - 1));
    }

    /** What redo would do again. */
    public Optional<String> redone() {
        return at == steps.size() ? Optional.empty() : Optional.of(steps.get(at));
    }

    /** One step back; the same at the beginning. */
    public History undo() {
        return at == 0 ? this : new History(states, steps, at - 1);
    }

    /** One step on again; the same at the end. */
    public History redo() {
        return at == steps.size() ? this : new History(states, steps, at + 1);
    }
}
