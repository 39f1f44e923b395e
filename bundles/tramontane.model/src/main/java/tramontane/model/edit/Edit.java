package tramontane.model.edit;

import java.util.Optional;
import tramontane.model.Design;

/**
 * A change of a design, or why there is none.
 *
 * @param what    what was done, for undo: {@code rename grille}
 * @param design  the changed design; empty where the edit was refused
 * @param subject what to select afterwards; empty to leave the selection
 * @param message why it was refused, or what to know about it; empty where there is nothing to say
 */
public record Edit(String what, Optional<Design> design, Optional<Subject> subject, String message) {

    /** A change. */
    public static Edit of(String what, Design changed) {
        return new Edit(what, Optional.of(changed), Optional.empty(), "");
    }

    /** A refusal. */
    public static Edit refused(String what, String why) {
        return new Edit(what, Optional.empty(), Optional.empty(), why);
    }

    /** This edit with something to select afterwards. */
    public Edit selecting(Subject after) {
        return new Edit(what, design, Optional.of(after), message);
    }
}
