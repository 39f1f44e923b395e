package tramontane.selection.internal;

import java.util.List;
import tramontane.analysis.Table;
import tramontane.selection.Candidate;
import tramontane.selection.Task;

/** Candidates side by side. */
final class Comparing {

    private Comparing() {
    }

    static List<Table> of(Task task, List<Candidate> candidates) {
        return List.of();
    }
}
