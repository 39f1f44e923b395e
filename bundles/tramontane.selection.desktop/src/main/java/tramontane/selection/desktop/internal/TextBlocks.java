package tramontane.selection.desktop.internal;

import java.util.ArrayList;
import java.util.List;
import tramontane.analysis.Table;
import tramontane.physics.units.UnitSystem;

/**
 * An explanation as text that can be read, selected and copied: headings, sentences, tables in columns of one width.
 *
 * @param text   the whole text
 * @param styles how stretches of it are set
 */
record TextBlocks(String text, List<Style> styles) {

    /** How a stretch is set. */
    enum Kind {
        /** Above everything. */
        TITLE,
        /** Above a section. */
        HEADING,
        /** The heads of a table. */
        HEAD,
        /** The rows of a table. */
        TABLE
    }

    /**
     * A stretch.
     *
     * @param kind   how it is set
     * @param from   first character
     * @param length characters
     */
    record Style(Kind kind, int from, int length) {
    }

    TextBlocks {
        styles = List.copyOf(styles);
    }

    static TextBlocks of(String title, List<Section> sections, UnitSystem units) {
        StringBuilder text = new StringBuilder();
        List<Style> styles = new ArrayList<>();
        line(text, styles, Kind.TITLE, title);
        for (Section section : sections) {
            text.append('\n');
            line(text, styles, Kind.HEADING, section.heading());
            section.sentences().forEach(sentence -> text.append(Candidates.capital(sentence.in(units))).append('\n'));
            section.table().ifPresent(table -> table(text, styles, table, units));
        }
        return new TextBlocks(text.toString().stripTrailing(), styles.stream().filter(style -> style.from() + style.length() <= text.toString().stripTrailing().length()).toList());
    }

    private static void line(StringBuilder text, List<Style> styles, Kind kind, String line) {
        styles.add(new Style(kind, text.length(), line.length()));
        text.append(line).append('\n');
    }

    private static void table(StringBuilder text, List<Style> styles, Table table, UnitSystem units) {
        int columns = table.columns().size();
        int[] widths = new int[columns];
        List<List<String>> rows = table.rows().stream().map(row -> row.stream().map(cell -> Row.text(cell, units)).toList()).toList();
        for (int i = 0; i < columns; i++) {
            int column = i;
            widths[i] = Math.max(table.columns().get(i).label().length(), rows.stream().mapToInt(row -> row.get(column).length()).max().orElse(0));
        }
        line(text, styles, Kind.HEAD, row(table, table.columns().stream().map(Table.Column::label).toList(), widths));
        rows.forEach(row -> line(text, styles, Kind.TABLE, row(table, row, widths)));
    }

    private static String row(Table table, List<String> cells, int[] widths) {
        StringBuilder line = new StringBuilder();
        for (int i = 0; i < widths.length; i++) {
            String pad = " ".repeat(widths[i] - cells.get(i).length());
            line.append(i == 0 ? "" : "  ").append(table.columns().get(i).numeric() ? pad + cells.get(i) : cells.get(i) + pad);
        }
        return line.toString().stripTrailing();
    }
}
