package tramontane.analysis;

import java.util.List;

/**
 * A table that an analysis lays out itself, where figures by place would say less.
 *
 * @param table   the table
 * @param figures ids of the figures that it shows, so that nobody need show them again
 */
public record Overview(Table table, List<String> figures) {

    public Overview {
        figures = List.copyOf(figures);
    }
}
