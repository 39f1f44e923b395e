package tramontane.selection.internal;

import java.util.List;
import tramontane.analysis.Sentence;
import tramontane.selection.Candidate;

/** Says in words why candidates win. */
final class Explaining {

    private Explaining() {
    }

    static List<Sentence> of(Screen screen, List<Candidate> listed, List<Candidate> meeting) {
        return List.of();
    }
}
