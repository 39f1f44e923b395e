package tramontane.engine.internal;

import java.util.Set;
import tramontane.analysis.Finding;

/**
 * Why a run fails whatever it returns.
 *
 * @param why  the finding
 * @param ring the runs that ask each other in a circle; empty where it asked too deep
 */
record Doom(Finding why, Set<Key> ring) {

    Doom {
        ring = Set.copyOf(ring);
    }

    /** Whether it would be the same wherever the run was asked for. */
    boolean holdsEverywhere() {
        return !ring.isEmpty();
    }
}
