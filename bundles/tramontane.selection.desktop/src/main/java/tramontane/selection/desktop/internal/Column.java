package tramontane.selection.desktop.internal;

import java.util.Optional;
import tramontane.analysis.Better;
import tramontane.physics.units.QuantityKind;

/**
 * A column of a table.
 *
 * @param id      what it is known by
 * @param label   its heading
 * @param numeric whether numbers stand in it, set right
 * @param kind    what they measure, where they all measure the same
 * @param better  which way is better
 * @param help    one sentence for the hover
 */
record Column(String id, String label, boolean numeric, Optional<QuantityKind> kind, Better better, String help) {

    static Column words(String id, String label, String help) {
        return new Column(id, label, false, Optional.empty(), Better.NEITHER, help);
    }

    static Column amounts(String id, String label, QuantityKind kind, Better better, String help) {
        return new Column(id, label, true, Optional.of(kind), better, help);
    }

    /** Whether points can be drawn by it. */
    boolean isAxis() {
        return kind.isPresent();
    }
}
