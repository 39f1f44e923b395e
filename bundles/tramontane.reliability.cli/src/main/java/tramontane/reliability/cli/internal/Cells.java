package tramontane.reliability.cli.internal;

import java.util.List;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import tramontane.analysis.Amount;
import tramontane.analysis.Table;
import tramontane.cli.Console;
import tramontane.cli.terminal.Numbers;
import tramontane.cli.terminal.TextTable;
import tramontane.cli.terminal.Wrapping;
import tramontane.physics.units.QuantityKind;
import tramontane.physics.units.UnitSystem;
import tramontane.reliability.MissionLife;

/** Tables and texts of lives. */
final class Cells {

    private static final Pattern UNIT = Pattern.compile("(\\d) (?=(%|h|d|s|min|ms|years?|eV|K|°C|rpm|N)\\b|%)");

    private Cells() {
    }

    static Table.Cell words(String text) {
        return new Table.Words(text);
    }

    /** An amount; words where it has no end. */
    static Table.Cell amount(double value, QuantityKind kind) {
        return Double.isFinite(value) ? new Amount(value, kind) : new Table.Words("none");
    }

    static Table.Cell time(double seconds) {
        return amount(seconds, QuantityKind.TIME);
    }

    static Table.Cell share(double share) {
        return amount(share, QuantityKind.PROBABILITY);
    }

    static Table.Cell number(double number) {
        return amount(number, QuantityKind.NUMBER);
    }

    static Table.Cell count(long count) {
        return new Amount(count, QuantityKind.COUNT);
    }

    /** Columns, those of numbers marked with a {@code #} in front. */
    static List<Table.Column> columns(String... labels) {
        return Stream.of(labels).map(label -> label.startsWith("#") ? new Table.Column(label.substring(1), true)
                : new Table.Column(label, false)).toList();
    }

    /** The table behind an empty line. */
    static void print(Table table, Console console) {
        print(table, UnitSystem.METRIC, console);
    }

    /** The same in other units. */
    static void print(Table table, UnitSystem units, Console console) {
        console.out().println();
        TextTable.lines(table, 1, console.width(), units, console::shown).forEach(console.out()::println);
    }

    /** A sentence. */
    static void print(String sentence, Console console) {
        Wrapping.lines(fast(console.shown(sentence)), console.width()).forEach(console.out()::println);
    }

    /** Sentences under a title, behind an empty line; nothing where there are none. */
    static void print(String title, List<String> sentences, Console console) {
        if (!sentences.isEmpty()) {
            console.out().println();
            console.out().println(title);
            sentences.forEach(each -> Wrapping.hanging("  ", fast(console.shown(each)), console.width()).forEach(console.out()::println));
        }
    }

    /** With numbers that lines do not part from their units. */
    private static String fast(String sentence) {
        return UNIT.matcher(sentence).replaceAll("$1" + Wrapping.FAST);
    }

    /** With a capital, to begin a sentence with. */
    static String capital(String text) {
        return text.isEmpty() ? text : Character.toUpperCase(text.charAt(0)) + text.substring(1);
    }

    /** Without a capital, to stand within a sentence. */
    static String small(String text) {
        return text.isEmpty() ? text : Character.toLowerCase(text.charAt(0)) + text.substring(1);
    }

    static String text(double si, QuantityKind kind) {
        return text(si, kind, UnitSystem.METRIC);
    }

    static String text(double si, QuantityKind kind, UnitSystem units) {
        return Numbers.text(si, kind, units);
    }

    /** A number as somebody wrote it, without zeros behind. */
    static String written(double number) {
        return number == Math.rint(number) && Math.abs(number) < 1e9 ? Long.toString((long) number) : Double.toString(number);
    }

    /** A time; in years, too, where it is long. */
    static String years(double seconds) {
        if (!Double.isFinite(seconds)) {
            return "without end";
        }
        String text = text(seconds, QuantityKind.TIME);
        return seconds < MissionLife.YEAR ? text : text + " (" + plain(seconds / MissionLife.YEAR) + " years)";
    }

    /** Three significant digits. */
    static String plain(double number) {
        return Double.isFinite(number) ? text(number, QuantityKind.NUMBER) : "none";
    }

    static String percent(double share) {
        return text(share, QuantityKind.PROBABILITY);
    }

    /** A share that somebody wrote: {@code 90 %}, without zeros behind. */
    static String stated(double share) {
        double percent = Math.rint(share * 1e8) / 1e6;
        return written(percent) + " %";
    }
}
