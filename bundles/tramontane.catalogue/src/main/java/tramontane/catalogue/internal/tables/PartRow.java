package tramontane.catalogue.internal.tables;

import java.util.List;
import java.util.Optional;
import tramontane.model.Value;

/**
 * What one row says of a part.
 *
 * @param id    the part's number
 * @param line  the line it begins in
 * @param cells its cells, blank ones left out
 */
record PartRow(String id, int line, List<Cell> cells) {

    PartRow {
        cells = List.copyOf(cells);
    }

    /**
     * A cell.
     *
     * @param path  the field
     * @param place line and column, for messages
     * @param value the value as it stands in a file
     * @param list  its numbers where it holds several
     */
    record Cell(FieldPath path, String place, Value value, Optional<Numbers.Written> list) {
    }
}
