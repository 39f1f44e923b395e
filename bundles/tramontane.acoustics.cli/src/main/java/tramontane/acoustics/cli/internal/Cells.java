package tramontane.acoustics.cli.internal;

import java.util.List;
import java.util.stream.Stream;
import tramontane.analysis.Amount;
import tramontane.analysis.Table;
import tramontane.cli.Console;
import tramontane.cli.terminal.TextTable;
import tramontane.physics.units.QuantityKind;
import tramontane.physics.units.UnitSystem;

/** Tables of levels. */
final class Cells {

    private Cells() {
    }

    /** A level to 0.1 dB; a word for silence, nothing for what has no end. */
    static Table.Cell level(double level) {
        return level == Double.NEGATIVE_INFINITY ? new Table.Words("silent") : Double.isFinite(level)
                ? new Amount(Math.rint(10 * level) / 10, QuantityKind.LEVEL) : new Table.Empty();
    }

    /** A rating to 0.1. */
    static Table.Cell rating(double rating) {
        return Double.isFinite(rating) ? new Amount(Math.rint(10 * rating) / 10, QuantityKind.NUMBER) : new Table.Empty();
    }

    static Table.Cell words(String text) {
        return new Table.Words(text);
    }

    /** Columns, those of numbers marked with a {@code #} in front. */
    static List<Table.Column> columns(String... labels) {
        return Stream.of(labels).map(label -> label.startsWith("#") ? new Table.Column(label.substring(1), true)
                : new Table.Column(label, false)).toList();
    }

    static void print(Table table, Console console) {
        TextTable.lines(table, 1, console.width(), UnitSystem.METRIC, console::shown).forEach(console.out()::println);
    }
}
