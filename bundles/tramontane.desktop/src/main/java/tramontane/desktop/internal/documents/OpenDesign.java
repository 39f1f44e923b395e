package tramontane.desktop.internal.documents;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import tramontane.desktop.Document;
import tramontane.desktop.FigureKey;
import tramontane.desktop.Results;
import tramontane.model.Design;
import tramontane.model.Problem;
import tramontane.model.edit.Subject;

/**
 * A design that is open, with all that the window knows of it. Immutable.
 *
 * @param key       tells open designs apart
 * @param file      where it is kept
 * @param history   its states
 * @param saved     what the file holds; empty where there is none, or where it holds something that cannot be read
 * @param problems  what is wrong with it, as far as checked
 * @param results   what is known of it
 * @param front     id of the case in front
 * @param selection what is selected
 * @param asked     the figure whose origin is asked for
 */
public record OpenDesign(String key, Optional<Path> file, History history, Optional<Design> saved, List<Problem> problems,
        Results results, String front, Optional<Subject> selection, Optional<FigureKey> asked) {

    public OpenDesign {
        problems = List.copyOf(problems);
    }

    /** A design that was just opened. */
    public static OpenDesign of(String key, Optional<Path> file, Design design, Optional<Design> saved) {
        return new OpenDesign(key, file, History.of(design), saved, List.of(), Results.NONE,
                design.workingConditions().getFirst().id(), Optional.empty(), Optional.empty());
    }

    /** The design as it is now. */
    public Design design() {
        return history.design();
    }

    /** Whether it differs from what its file holds. */
    public boolean changed() {
        return !saved.map(design()::equals).orElse(false);
    }

    /** What views see of it. */
    public Document document() {
        return new Document(key, file, design(), changed(), history.undone(), history.redone(), problems);
    }

    OpenDesign with(History other) {
        boolean same = other.design().equals(design());
        return new OpenDesign(key, file, other, saved, problems, same ? results : outdated(results), front, selection, asked);
    }

    /** What was computed of the design as it was before its last change. */
    private static Results outdated(Results results) {
        // a run of a part does not replace what is known of the whole
        return new Results(Optional.empty(), results.before().or(results::now), true, false);
    }

    OpenDesign with(Results other) {
        return new OpenDesign(key, file, history, saved, problems, other, front, selection, asked);
    }

    OpenDesign withProblems(List<Problem> found) {
        return new OpenDesign(key, file, history, saved, found, results, front, selection, asked);
    }

    OpenDesign withFront(String caseId) {
        return new OpenDesign(key, file, history, saved, problems, results, caseId, selection, asked);
    }

    OpenDesign withSelection(Optional<Subject> subject) {
        return new OpenDesign(key, file, history, saved, problems, results, front, subject, asked);
    }

    OpenDesign withAsked(Optional<FigureKey> figure) {
        return new OpenDesign(key, file, history, saved, problems, results, front, selection, figure);
    }

    OpenDesign savedAs(Path path, Design what) {
        return new OpenDesign(key, Optional.of(path), history, Optional.of(what), problems, results, front, selection, asked);
    }

    OpenDesign withSaved(Optional<Design> what) {
        return new OpenDesign(key, file, history, what, problems, results, front, selection, asked);
    }
}
