package tramontane.selection.desktop.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.function.Function;
import java.util.stream.IntStream;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.Size;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tramontane.analysis.Amount;
import tramontane.analysis.Table;
import tramontane.physics.units.QuantityKind;

class OrderTest {

    private static final Order RISING = new Order("x", false);
    private static final Order FALLING = new Order("x", true);

    @Test
    void numbersGoByValueAndWhatIsNotKnownComesLastEitherWay() {
        List<Table.Cell> cells = List.of(new Table.Empty(), watts(9), watts(120), watts(-1));
        assertEquals(List.of(watts(-1), watts(9), watts(120), new Table.Empty()), RISING.sorted(cells, Function.identity()));
        assertEquals(List.of(watts(120), watts(9), watts(-1), new Table.Empty()), FALLING.sorted(cells, Function.identity()));
    }

    @ParameterizedTest
    @CsvSource({"Garbin 40, Garbin 120, -1", "garbin 40, Garbin 40, 0", "a9b, a10a, -1", "a, b, -1", "B, a, 1", "a, a1, -1", "HV-007, HV-7, 0", "12, 3, 1"})
    void wordsGoByLettersAndTheNumbersInThem(String one, String other, int sign) {
        assertEquals(sign, Integer.signum(Order.natural(one, other)));
        assertEquals(-sign, Integer.signum(Order.natural(other, one)));
    }

    @Test
    void aFixedSettingComesBehindNumbers() {
        List<Table.Cell> cells = List.of(new Table.Words("fixed"), watts(2), watts(1));
        assertEquals(List.of(watts(1), watts(2), new Table.Words("fixed")), RISING.sorted(cells, Function.identity()));
    }

    /** As the choice itself weighs them: 50 K count like the whole of another limit. */
    @Test
    void kelvinAndSharesStandInOneOrder() {
        List<Table.Cell> cells = List.of(new Amount(5, QuantityKind.TEMPERATURE_DIFFERENCE), new Amount(0.05, QuantityKind.FRACTION), new Amount(0.2, QuantityKind.FRACTION));
        assertEquals(List.of(cells.get(1), cells.get(0), cells.get(2)), RISING.sorted(cells, Function.identity()));
    }

    @Test
    void aSecondClickTurnsItRound() {
        assertEquals(new Order("y", false), RISING.clicked("y"));
        assertEquals(FALLING, RISING.clicked("x"));
        assertEquals(RISING, FALLING.clicked("x"));
    }

    /** Rows that are equal in the column keep their order, so that sorting by one and then by another sorts by both. */
    @Property
    void sortingIsStable(@ForAll @Size(max = 30) List<Boolean> values, @ForAll boolean descending) {
        List<Integer> rows = IntStream.range(0, values.size()).boxed().toList();
        Function<Integer, Table.Cell> cell = row -> watts(values.get(row) ? 1 : 0);
        List<Integer> sorted = new Order("x", descending).sorted(rows, cell);
        for (int i = 1; i < sorted.size(); i++) {
            int before = sorted.get(i - 1);
            int after = sorted.get(i);
            assertEquals(true, values.get(before).equals(values.get(after)) ? before < after : values.get(after) != descending);
        }
    }

    private static Table.Cell watts(double watts) {
        return new Amount(watts, QuantityKind.POWER);
    }
}
