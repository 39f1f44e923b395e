package tramontane.model.edit;

import java.util.Collection;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import tramontane.model.Design;

/**
 * A change of a design, or why there is none.
 *
 * @param what     what was done, for undo: {@code rename grille}
 * @param design   the changed design, equal to the one before where nothing had to be changed; empty where the edit was refused
 * @param subjects what was made, changed or moved, by the names that hold now; what to select afterwards; empty to leave the
 *                 selection
 * @param message  why it was refused (where, what, and what was expected), or what to know about it (names that lead nowhere
 *                 now); empty where there is nothing to say
 */
public record Edit(String what, Optional<Design> design, List<Subject> subjects, String message) {

    private static final int MOST_NOTES = 3;

    public Edit {
        Objects.requireNonNull(what);
        Objects.requireNonNull(design);
        subjects = List.copyOf(subjects);
        Objects.requireNonNull(message);
    }

    /** A change. */
    public static Edit of(String what, Design changed) {
        return new Edit(what, Optional.of(changed), List.of(), "");
    }

    /** A refusal. */
    public static Edit refused(String what, String why) {
        return new Edit(what, Optional.empty(), List.of(), why);
    }

    /** This edit with something to select afterwards. */
    public Edit selecting(Subject... after) {
        return new Edit(what, design, List.of(after), message);
    }

    /** This edit with what to know about it: the first of these sentences, and how many more there are. */
    Edit noting(Collection<String> sentences) {
        List<String> first = sentences.stream().limit(MOST_NOTES).toList();
        int more = sentences.size() - first.size();
        return new Edit(what, design, subjects, String.join("; ", first) + (more > 0 ? "; and " + more + " more" : ""));
    }

    /** The first thing to select afterwards. */
    public Optional<Subject> subject() {
        return subjects.stream().findFirst();
    }

    /** Whether there is no change. */
    public boolean isRefused() {
        return design.isEmpty();
    }
}
