package tramontane.desktop.internal.judging;

import java.util.List;
import java.util.Map;
import tramontane.analysis.Figure;
import tramontane.desktop.FigureKey;
import tramontane.desktop.Sheet;

/**
 * Tables of figures.
 *
 * @param sheet   the table
 * @param figures the figures in it, by what its cells name
 * @param tables  titles of the tables that can be shown, {@link #ALL} first
 * @param all     how many rows there would be if nothing were looked for
 * @param empty   what is said instead of an empty table
 */
record Figures(Sheet sheet, Map<FigureKey, Figure> figures, List<String> tables, int all, String empty) {

    /** The table of all figures. */
    static final String ALL = "all figures";

    /**
     * What somebody wants to see.
     *
     * @param table title of a table
     * @param text  words that must all occur; empty for all
     * @param by    key of the column that rows are sorted by; empty for the order of the analyses
     * @param down  whether the largest stands first
     */
    record Wanted(String table, String text, String by, boolean down) {

        static final Wanted ALL_OF_THEM = new Wanted(ALL, "", "", false);

        /** Sorted by a column; a second time the other way round, a third time not at all. */
        Wanted sorted(String column) {
            return !by.equals(column) ? new Wanted(table, text, column, false)
                    : !down ? new Wanted(table, text, column, true) : new Wanted(table, text, "", false);
        }
    }
}
