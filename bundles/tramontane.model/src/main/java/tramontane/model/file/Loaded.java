package tramontane.model.file;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import tramontane.model.Consistency;
import tramontane.model.Design;
import tramontane.model.Problem;

/**
 * What reading a design file gave.
 *
 * @param design   the design, where the file has no errors; it may still not fit together, see {@link Consistency}
 * @param draft    what could be read in spite of errors; the design itself where there are none; empty where the file is not
 *                 JSON or of a newer format. Saving a draft that is no design would lose what could not be read
 * @param problems what is wrong with the file, cautions included
 */
public record Loaded(Optional<Design> design, Optional<Design> draft, List<Problem> problems) {

    public Loaded {
        problems = List.copyOf(problems);
    }

    /**
     * The design, or the draft where its only errors are that something is not given yet. Saving it loses nothing, so it can
     * be opened and worked on.
     */
    public Optional<Design> editable() {
        return draft.filter(read -> problems.stream().allMatch(problem -> !problem.isError() || problem.isMissing()));
    }

    /**
     * What a check of the draft finds wrong only because something else could not be read; whoever reports both leaves it out.
     */
    public Set<Problem> consequences() {
        Set<Problem> consequences = new HashSet<>();
        draft.ifPresent(read -> {
            consequences.addAll(Consistency.check(read));
            Consistency.check(read, problems).forEach(consequences::remove);
        });
        return Set.copyOf(consequences);
    }

    /** The problems of the file and then whatever does not fit together in what could be read. */
    public List<Problem> allProblems() {
        List<Problem> all = new ArrayList<>(problems);
        draft.ifPresent(read -> all.addAll(Consistency.check(read, problems)));
        return List.copyOf(all);
    }
}
