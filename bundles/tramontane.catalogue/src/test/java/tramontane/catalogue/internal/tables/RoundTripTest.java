package tramontane.catalogue.internal.tables;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import tramontane.analysis.Importer.Imported;
import tramontane.catalogue.PartTable;
import tramontane.model.AirMover;
import tramontane.model.Problem;
import tramontane.model.Value;
import tramontane.physics.units.UnitSystem;

/** What is written is read back. */
class RoundTripTest {

    @Provide
    Arbitrary<List<AirMover>> parts() {
        return Arbitraries.randomValue(random -> new RandomParts(random, false).parts());
    }

    @Provide
    Arbitrary<List<AirMover>> partsWithUnits() {
        return Arbitraries.randomValue(random -> new RandomParts(random, true).parts());
    }

    private static String write(List<AirMover> parts, Optional<UnitSystem> units) {
        return PartTable.write(parts, List.of(), units, Tables.SECTIONS);
    }

    private static List<AirMover> read(String table) {
        Imported read = Tables.read(table);
        assertTrue(read.problems().stream().noneMatch(Problem::isError), () -> Tables.sentences(read) + "\n" + table);
        return read.movers();
    }

    @Property(tries = 100)
    void partsComeBackWithTheSameTextsAndTheSameValuesInSi(@ForAll("parts") List<AirMover> parts) {
        assertEquals(parts.stream().map(RandomParts::inSi).toList(), read(write(parts, Optional.empty())).stream()
                .map(RandomParts::inSi).toList());
    }

    @Property(tries = 100)
    void partsWhoseQuantitiesHaveUnitsComeBackAsTheyWere(@ForAll("partsWithUnits") List<AirMover> parts) {
        assertEquals(parts, read(write(parts, Optional.empty())));
    }

    @Property(tries = 50)
    void writtenAgainTheTableIsTheSame(@ForAll("parts") List<AirMover> parts) {
        List<AirMover> once = read(write(parts, Optional.empty()));
        String table = write(once, Optional.empty());
        assertEquals(table, write(read(table), Optional.empty()));
    }

    /** Numbers have 15 digits; a unit's factor there and back costs some last bits. */
    @Property(tries = 50)
    void inOtherUnitsTheValuesAreTheSame(@ForAll("parts") List<AirMover> parts, @ForAll("systems") UnitSystem units) {
        List<AirMover> back = read(write(parts, Optional.of(units)));
        assertEquals(parts.size(), back.size());
        for (int i = 0; i < parts.size(); i++) {
            near(RandomParts.inSi(parts.get(i)), RandomParts.inSi(back.get(i)));
        }
    }

    private static void near(Value expected, Value actual) {
        switch (expected) {
            case Value.Num num when Double.isFinite(num.number()) ->
                    assertEquals(num.number(), ((Value.Num) actual).number(), 1e-14 * Math.abs(num.number()));
            case Value.Items(List<Value> items) -> {
                List<Value> others = ((Value.Items) actual).values();
                assertEquals(items.size(), others.size());
                for (int i = 0; i < items.size(); i++) {
                    near(items.get(i), others.get(i));
                }
            }
            case Value.Tree tree -> {
                assertEquals(tree.members().keySet(), ((Value.Tree) actual).members().keySet());
                tree.members().forEach((name, value) -> near(value, ((Value.Tree) actual).get(name).orElseThrow()));
            }
            default -> assertEquals(expected, actual);
        }
    }

    @Property(tries = 100)
    void noCellIsTakenForAFormula(@ForAll("parts") List<AirMover> parts) {
        List<Problem> problems = new ArrayList<>();
        List<TableText.Row> rows = TableText.rows("parts.csv", write(parts, Optional.empty()), ',', 0, problems);
        assertEquals(List.of(), problems);
        rows.forEach(row -> row.cells().forEach(cell -> assertTrue(cell.isEmpty() || "=+@\t\r＝＋－＠".indexOf(cell.charAt(0)) < 0
                && (cell.charAt(0) != '-' || cell.matches("-[0-9].*")), cell)));
    }

    @Provide
    Arbitrary<UnitSystem> systems() {
        return Arbitraries.of(UnitSystem.values());
    }
}
