package tramontane.catalogue.internal.tables;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import tramontane.model.Value;

/**
 * What one row says of a part.
 *
 * @param id    the part's number
 * @param line  the line it begins in
 * @param cells its cells, blank ones left out
 * @param bad   keys of fields whose cells could not be read, which is reported
 */
record PartRow(String id, int line, List<Cell> cells, Set<String> bad) {

    PartRow {
        cells = List.copyOf(cells);
        bad = Set.copyOf(bad);
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
