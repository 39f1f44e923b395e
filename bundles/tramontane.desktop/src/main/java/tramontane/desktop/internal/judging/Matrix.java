package tramontane.desktop.internal.judging;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Supplier;
import tramontane.analysis.Severity;
import tramontane.desktop.FigureKey;
import tramontane.desktop.Sheet;
import tramontane.model.edit.Subject;

/**
 * The requirements matrix.
 *
 * @param sheet      the table
 * @param conditions the condition of each column that has one, by the column's key; empty text for the design as a whole
 * @param reasons    why, by row and column; put into words when somebody asks
 * @param empty      what is said instead of an empty table
 */
record Matrix(Sheet sheet, Map<String, String> conditions, Map<Place, Supplier<Reason>> reasons, String empty) {

    /** A cell. */
    record Place(Object row, String column) {
    }

    /**
     * Why a cell says what it says.
     *
     * @param title    what is judged, and where
     * @param severity how it came out; empty where nothing is judged
     * @param lines    sentences, the most important first
     * @param figure   the figure that decided
     * @param subject  the thing it is about
     * @param front    the case that decided; else the condition
     * @param hover    the figure with all there is to tell
     */
    record Reason(String title, Optional<Severity> severity, List<String> lines, Optional<FigureKey> figure, Optional<Subject> subject,
            Optional<String> front, String hover) {
        Reason {
            lines = List.copyOf(lines);
        }
    }

    Optional<Reason> reason(Sheet.Row row, int column) {
        return column < sheet.columns().size() ? reason(new Place(row.key(), sheet.columns().get(column).key())) : Optional.empty();
    }

    Optional<Reason> reason(Place place) {
        return Optional.ofNullable(reasons.get(place)).map(Supplier::get);
    }
}
