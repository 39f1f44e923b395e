package tramontane.selection.desktop.internal;

import java.util.Optional;
import tramontane.selection.Arrangement;
import tramontane.selection.Candidate;
import tramontane.selection.Passed;
import tramontane.selection.Rejected;

/**
 * What tells rows apart, whatever their order.
 *
 * @param part        the part's id
 * @param arrangement how it is arranged; empty where none fits
 */
record Key(String part, Optional<Arrangement> arrangement) {

    static Key of(Candidate candidate) {
        return new Key(candidate.part().id(), Optional.of(candidate.arrangement()));
    }

    static Key of(Rejected rejected) {
        return new Key(rejected.part(), rejected.arrangement());
    }

    static Key of(Passed passed) {
        return new Key(passed.part(), Optional.of(passed.arrangement()));
    }

    /** {@code P120-38, 2 side by side}. */
    String words() {
        return part + arrangement.map(each -> ", " + each.words()).orElse("");
    }
}
