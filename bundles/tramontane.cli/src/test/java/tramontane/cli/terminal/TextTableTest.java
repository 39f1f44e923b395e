package tramontane.cli.terminal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.Size;
import net.jqwik.api.constraints.StringLength;
import org.junit.jupiter.api.Test;
import tramontane.analysis.Amount;
import tramontane.analysis.Table;
import tramontane.physics.units.QuantityKind;
import tramontane.physics.units.UnitSystem;

class TextTableTest {

    private static List<String> lines(Table table, int keys, int width) {
        return TextTable.lines(table, keys, width, UnitSystem.METRIC, text -> text);
    }

    private static Table.Cell flow(double cubicMetresPerHour) {
        return new Amount(cubicMetresPerHour / 3600, QuantityKind.FLOW);
    }

    private static Table.Cell words(String text) {
        return new Table.Words(text);
    }

    @Test
    void aColumnOfOneUnitHasItInTheHeadingAndNumbersAtTheRight() {
        Table table = new Table("Flows", List.of(new Table.Column("bank", false), new Table.Column("flow", true),
                new Table.Column("note", false)),
                List.of(List.of(words("a"), flow(1234), words("x")), List.of(words("bcd"), flow(5.5), new Table.Empty())));
        assertEquals(List.of(
                "Flows",
                "bank  flow [m³/h]  note",
                "----  -----------  ----",
                "a            1234  x",
                "bcd          5.50"), lines(table, 1, 100));
    }

    @Test
    void mixedUnitsStandInTheCells() {
        Table table = new Table("Mixed", List.of(new Table.Column("name", false), new Table.Column("value", true)),
                List.of(List.of(words("a"), flow(10)), List.of(words("b"), new Amount(300, QuantityKind.TIME)),
                        List.of(words("c"), new Amount(86400, QuantityKind.TIME))));
        assertEquals(List.of(
                "Mixed",
                "name      value",
                "----  ---------",
                "a     10.0 m³/h",
                "b      5.00 min",
                "c        24.0 h"), lines(table, 1, 100));
    }

    @Test
    void whatIsTooWideIsCutAndSaysWhichPartItIs() {
        List<Table.Column> columns = new ArrayList<>(List.of(new Table.Column("place", false)));
        IntStream.rangeClosed(1, 5).forEach(i -> columns.add(new Table.Column("case" + i, true)));
        List<Table.Cell> row = new ArrayList<>(List.of(words("box")));
        IntStream.rangeClosed(1, 5).forEach(i -> row.add(flow(i)));
        assertEquals(List.of(
                "Flow [m³/h], columns 1 to 3 of 5",
                "place  case1  case2  case3",
                "-----  -----  -----  -----",
                "box     1.00   2.00   3.00",
                "",
                "Flow [m³/h], columns 4 to 5 of 5",
                "place  case4  case5",
                "-----  -----  -----",
                "box     4.00   5.00"), lines(new Table("Flow", columns, List.of(row)), 1, 32));
    }

    @Test
    void ofTwoKeysTheFirstIsNotRepeated() {
        Table table = new Table("T", List.of(new Table.Column("a", false), new Table.Column("b", false)),
                List.of(List.of(words("x"), words("1")), List.of(words("x"), words("2")), List.of(words("y"), words("1"))));
        assertEquals(List.of("T", "a  b", "-  -", "x  1", "   2", "y  1"), lines(table, 2, 100));
    }

    @Property
    void everyLetterOfEveryCellIsThereAndNoLineIsTooLong(@ForAll @IntRange(min = 60, max = 140) int width,
            @ForAll @Size(min = 1, max = 8) List<@StringLength(max = 90) @net.jqwik.api.constraints.AlphaChars String> texts) {
        List<Table.Column> columns = IntStream.range(0, texts.size()).mapToObj(i -> new Table.Column("c" + i, false)).toList();
        List<String> drawn = lines(new Table("t", columns, List.of(texts.stream().map(TextTableTest::words).toList())), 1, width);
        drawn.forEach(line -> assertTrue(line.length() <= width, line));
        String all = String.join("", drawn);
        for (char letter : String.join("", texts.subList(1, texts.size())).toCharArray()) {
            assertTrue(all.indexOf(letter) >= 0, () -> letter + " in " + all);
        }
    }

    @Property
    void wrappingKeepsEveryWordAndTheWidth(@ForAll @IntRange(min = 1, max = 50) int width,
            @ForAll @StringLength(max = 200) @net.jqwik.api.constraints.CharRange(from = ' ', to = '~') String text) {
        List<String> lines = Wrapping.lines(text, width);
        lines.forEach(line -> assertTrue(line.length() <= width, line));
        assertEquals(text.replace(" ", ""), String.join("", lines).replace(" ", ""));
    }
}
