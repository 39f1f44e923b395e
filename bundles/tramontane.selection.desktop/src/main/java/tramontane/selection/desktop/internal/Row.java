package tramontane.selection.desktop.internal;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import tramontane.analysis.Amount;
import tramontane.analysis.Table;
import tramontane.desktop.FigureText;
import tramontane.physics.units.UnitSystem;
import tramontane.selection.Candidate;
import tramontane.selection.Passed;
import tramontane.selection.Rejected;

/**
 * A row of the table of candidates.
 *
 * @param key       what it is known by
 * @param rank      its place in the list, from 1; empty for what is not in it
 * @param candidate what was found; empty for what was left out
 * @param rejected  why it does not do
 * @param passed    why it was not judged exactly
 * @param cells     what stands in it, by column; nothing in those that are not named
 */
record Row(Key key, Optional<Integer> rank, Optional<Candidate> candidate, Optional<Rejected> rejected, Optional<Passed> passed,
        Map<String, Table.Cell> cells) {

    private static final Table.Cell NOTHING = new Table.Empty();

    Row {
        cells = Collections.unmodifiableMap(new LinkedHashMap<>(cells));
    }

    Table.Cell cell(String column) {
        return cells.getOrDefault(column, NOTHING);
    }

    String text(String column, UnitSystem units) {
        return text(cell(column), units);
    }

    /** Whether none is as good in everything and better in something. */
    boolean isOnFront() {
        return candidate.filter(Candidate::front).isPresent();
    }

    /** All its words, for searching. */
    String words() {
        return cells.values().stream().filter(Table.Words.class::isInstance).map(cell -> ((Table.Words) cell).text())
                .collect(Collectors.joining(" ")).toLowerCase(Locale.ROOT);
    }

    /** What is read in a cell, three digits and the unit. */
    static String text(Table.Cell cell, UnitSystem units) {
        return switch (cell) {
            case Amount amount -> FigureText.brief(amount.si(), amount.quantity(), units);
            case Table.Range range -> text(range.from(), units) + " to " + text(range.to(), units);
            case Table.Words words -> words.text();
            case Table.Empty nothing -> "";
        };
    }
}
