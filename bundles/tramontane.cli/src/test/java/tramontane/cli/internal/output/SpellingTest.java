package tramontane.cli.internal.output;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.nio.charset.StandardCharsets;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tramontane.physics.units.QuantityKind;
import tramontane.physics.units.Unit;
import tramontane.physics.units.Units;
import org.junit.jupiter.api.Test;

class SpellingTest {

    private static final Spelling ASCII = new Spelling(StandardCharsets.US_ASCII);

    @ParameterizedTest
    @CsvSource({"m³/h, m3/h", "45 °C, 45 degC", "W/(m² K), W/(m2 K)", "Pa s²/m⁶, Pa s2/m6", "10 µm, 10 um", "kΩ, kohm",
        "a ≤ b ≥ c, a <= b >= c", "Müller, M?ller", "plain, plain"})
    void ascii(String text, String spelt) {
        assertEquals(spelt, ASCII.of(text));
    }

    @Test
    void latinKeepsWhatItHas() {
        assertEquals("m³/h 45 °C Müller >=", new Spelling(StandardCharsets.ISO_8859_1).of("m³/h 45 °C Müller ≥"));
    }

    @Test
    void everyUnitCanBeWrittenInAsciiAndReadBack() {
        for (QuantityKind kind : QuantityKind.standard()) {
            for (Unit unit : Units.of(kind)) {
                String spelt = ASCII.of("3 " + unit.symbol());
                if (!unit.symbol().equals("Ω") && !unit.symbol().endsWith("Ω")) {
                    assertEquals(unit.toSi(3), Units.parse(spelt, kind), Math.ulp(unit.toSi(3)), spelt);
                }
            }
        }
    }

    @Test
    void controlCharactersBecomeQuestionMarks() {
        assertEquals("a?[31mb?c?d", Spelling.FULL.of("a\u001b[31mb\nc\u202ed"));
    }
}
