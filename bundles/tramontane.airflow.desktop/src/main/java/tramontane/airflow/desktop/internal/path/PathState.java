package tramontane.airflow.desktop.internal.path;

import java.util.List;
import java.util.Optional;
import tramontane.model.Design;
import tramontane.physics.units.UnitSystem;

/**
 * All that the view shows.
 *
 * @param design   the design that is drawn
 * @param values   the air in it
 * @param by       what colours say
 * @param units    in which numbers are shown
 * @param picture  the picture; empty until it was laid out for the first time
 * @param rows     the same as a table
 * @param selected what is selected
 * @param linking  the bay from which a new passage is being drawn, while one is
 */
record PathState(Design design, AirValues values, ColourBy by, UnitSystem units, Optional<PathPicture> picture, List<PathRow> rows,
        Optional<PathTarget> selected, Optional<PathTarget> linking) {

    /** Nothing. */
    static final PathState NOTHING = new PathState(Design.EMPTY, AirValues.NONE, ColourBy.TEMPERATURE, UnitSystem.METRIC, Optional.empty(),
            List.of(), Optional.empty(), Optional.empty());

    PathState {
        rows = List.copyOf(rows);
    }

    /** Whether there is nothing to draw. */
    boolean empty() {
        return design.airPath().bays().isEmpty() && design.airPath().passages().isEmpty();
    }

    PathState coloured(ColourBy other) {
        return new PathState(design, values, other, units, picture, rows, selected, linking);
    }

    PathState drawn(Design drawn, AirValues air, UnitSystem shown, PathPicture made) {
        return new PathState(drawn, air, by, shown, Optional.of(made), PathRow.of(drawn, air, shown), selected, linking);
    }

    PathState selecting(Optional<PathTarget> target) {
        return new PathState(design, values, by, units, picture, rows, target, linking);
    }

    PathState linking(Optional<PathTarget> from) {
        return new PathState(design, values, by, units, picture, rows, selected, from);
    }
}
