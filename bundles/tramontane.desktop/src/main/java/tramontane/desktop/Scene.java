package tramontane.desktop;

import java.util.Optional;
import tramontane.model.edit.Subject;
import tramontane.physics.units.UnitSystem;

/**
 * All that a window shows, at one moment.
 *
 * @param document  the design in front
 * @param results   what the last run gave for it, or for it as it was a moment ago
 * @param front     id of the case in front ({@code hot day}, {@code any one failed: fans 2 locked}); a view that is pinned to another
 *                  case is handed that one. Empty where there is none yet
 * @param selection what is selected
 * @param asked     the figure that somebody asked where it comes from
 * @param units     the units in which everything is shown
 * @param palette   the colours
 */
public record Scene(Document document, Results results, String front, Optional<Subject> selection, Optional<FigureKey> asked,
        UnitSystem units, Palette palette) {

    /** The condition, as declared in the design, that the case in front stands for. */
    public String condition() {
        return results.cases().stream().filter(each -> each.concrete().id().equals(front)).map(each -> each.declared())
                .findFirst().orElse(front);
    }

    /** This scene with another case in front. */
    public Scene inFront(String caseId) {
        return new Scene(document, results, caseId, selection, asked, units, palette);
    }
}
