package tramontane.model;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTimeoutPreemptively;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import tramontane.physics.units.QuantityKind;

class ValueTest {

    /** The grammar of numbers: RFC 8259, section 6. */
    @ParameterizedTest
    @ValueSource(strings = {"0", "-0", "12", "1.50", "-0.5", "1e3", "1E+3", "1e-3", "1.5e10", "1e999999999", "1e-99999999999999999999"})
    void numbersAreKeptAsWritten(String literal) {
        assertEquals(literal, new Value.Num(literal).literal());
        new Value.Num(literal).number();
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "-", "01", "-01", ".5", "5.", "+5", "1e", "1e+", "0x10", "NaN", "Infinity", "1 ", " 1", "1d", "1_0",
        "\u0663", "1,5"})
    void whatJsonDoesNotTakeForANumberIsRefused(String literal) {
        assertThrows(NumberFormatException.class, () -> new Value.Num(literal));
    }

    @Test
    void absurdNumbersCostNothing() {
        Form form = Form.of("thing", "A thing.", Field.amount("a", "a", QuantityKind.POWER, Range.ANY, "A."),
                Field.whole("b", "b", 0, 9, "B."), Field.of("c", "c", new Shape.WholeOr(1, "any"), "C."),
                Field.of("d", "d", new Shape.AnyAmount(), "D."), Field.amounts("e", "e", QuantityKind.POWER, Range.ANY, 1, "E."));
        List<Problem> problems = new ArrayList<>();
        assertTimeoutPreemptively(Duration.ofSeconds(5), () -> {
            for (String literal : List.of("1e999999999", "1e-999999999", "-1e99999999999999999999", "9".repeat(1000),
                    "0." + "0".repeat(900) + "1")) {
                Value num = new Value.Num(literal);
                FormReader.read(form, Value.Tree.EMPTY.with("a", num).with("b", num).with("c", num).with("d", num)
                        .with("e", new Value.Items(List.of(num))), "", problems);
                String text = literal + " W";
                FormReader.read(form, Value.Tree.EMPTY.with("a", new Value.Text(text)).with("e", new Value.Text(text)), "", problems);
            }
        });
        assertEquals(5 * 7, problems.size(), problems::toString);
    }

    @Test
    void manyMistakesInOneLongTextAreFoundInTime() {
        Form form = Form.of("thing", "A thing.", Field.increasing("e", "e", QuantityKind.POWER, Range.POSITIVE, 1, "E."));
        List<Problem> problems = new ArrayList<>();
        assertTimeoutPreemptively(Duration.ofSeconds(20), () -> FormReader.read(form,
                Value.Tree.EMPTY.with("e", new Value.Text("-1 ".repeat(60_000) + "W")), "", problems));
        assertEquals(60_000 + 59_999, problems.size());
        assertEquals("e: number 60000, -1, is out of range; expected each power above 0", problems.get(59_999).sentence());
    }

    @Test
    void aKnownFieldIsNeverOverriddenByAnUnknownMember() {
        Bay bay = new Bay("box", java.util.Optional.empty(), Value.Tree.EMPTY.with("id", new Value.Text("other")));
        assertEquals(new Value.Text("box"), ((Value.Tree) bay.value()).get("id").orElseThrow());
    }
}
