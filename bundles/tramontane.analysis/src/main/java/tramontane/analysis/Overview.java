package tramontane.analysis;

import java.util.List;
import java.util.Objects;

/**
 * A table that an analysis lays out itself, where figures by place would say less.
 *
 * @param table   the table; its first column says what a row is about unless it is one of numbers. Its title stands alone:
 *                whoever shows several conditions puts the condition behind it
 * @param figures ids of the figures that it shows, so that nobody need show them again
 */
public record Overview(Table table, List<String> figures) {

    public Overview {
        Objects.requireNonNull(table);
        figures = List.copyOf(figures);
    }
}
