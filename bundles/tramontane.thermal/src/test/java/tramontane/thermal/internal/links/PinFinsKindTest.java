package tramontane.thermal.internal.links;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

/** Pin fins against a worked example, and what does not fit. */
class PinFinsKindTest {

    private static final Object[] SIZES = {"pinDiameter", "3 mm", "height", "20 mm", "across", 8, "rows", 10, "pitchAcross", "6 mm",
        "pitchAlong", "8 mm"};

    private static Links.Case pins(Object... more) {
        return Links.inBox(new PinFinsKind(), Stream.concat(Stream.of(SIZES), Stream.of(more)).toArray());
    }

    /**
     * A. Zukauskas (1987), worked by hand at Re 1573 and 393 in the narrowest section, row factor 0.97: Nu 0.97 × 0.27 Re^0.63
     * Pr^0.36, 0.97 × 0.35 (6/8)^0.2 Re^0.6 Pr^0.36, 0.97 × 0.52 Re^½ Pr^0.36; h, G and then R of the air that comes.
     */
    @ParameterizedTest
    @CsvSource({"in line, 0.004, 209.2352, 3.429964, 0.4113739", "staggered, 0.004, 205.3291, 3.373779, 0.4160208",
        "in line, 0.001, 77.38817, 1.381815, 1.2334994"})
    void workedExamples(String arrangement, double flow, double coefficient, double conductance, double expected) {
        Links.Case pins = pins("arrangement", arrangement, "flowShare", 0.5);
        assertEquals(coefficient, pins.input(Links.air(2 * flow), "heat transfer coefficient h"), 1e-5 * coefficient);
        assertEquals(conductance, pins.input(Links.air(2 * flow), "heat G of the pins in W/K"), 1e-5 * conductance);
        assertEquals(expected, pins.resistance(Links.air(2 * flow)), 1e-5 * expected);
        assertEquals(List.of(), pins.findings(Links.air(2 * flow)));
        assertTrue(pins.fromInlet());
    }

    @Test
    void moreAirCoolsBetterAndNoneNotAtAll() {
        for (String arrangement : List.of("in line", "staggered")) {
            Links.Case pins = pins("arrangement", arrangement);
            assertEquals(Double.POSITIVE_INFINITY, pins.resistance(Links.air(0)));
            double last = Double.POSITIVE_INFINITY;
            for (double flow = 1e-7; flow < 1; flow *= 1.05) {
                double here = pins.resistance(Links.air(flow));
                assertTrue(here < last, flow + ": " + here + " after " + last);
                assertEquals(here, pins.resistance(Links.air(flow * (1 + 1e-7))), 1e-5 * here);
                last = here;
            }
        }
    }

    /** With little air all of it leaves as warm as the base: 1/(ρ Q cp). */
    @Test
    void littleAirTakesWhatItCanCarry() {
        assertEquals(1 / (1.1614 * 1e-5 * 1007), pins().resistance(Links.air(1e-5)), 1e-6 / (1.1614 * 1e-5 * 1007));
    }

    @Test
    void saysWhatIsAssumed() {
        assertEquals(List.of("caution cpu: all air of bay box, 0.00400 m³/s, is taken to go through pin fins of cpu"),
                pins().findings(Links.air(0.004)));
        // 1e-4 m³/s over 8 × 6 mm × 20 mm
        assertEquals(List.of("note cpu: the air goes by pin fins of cpu at 0.104 m/s, so slowly that the air it warms would rise by "
                + "itself; its temperature is overstated"), pins("flowShare", 1).findings(Links.air(1e-4)));
    }

    static List<Arguments> bad() {
        return List.of(
                Arguments.of("pitchAcross: leaves no room between the pins; expected above the pin diameter of 3.0 mm",
                        new Object[] {"pitchAcross", "3 mm", "pitchAlong", "8 mm"}),
                Arguments.of("pitchAlong: leaves no room between the rows; expected above the pin diameter of 3.0 mm",
                        new Object[] {"pitchAcross", "6 mm", "pitchAlong", "2 mm"}),
                Arguments.of("pitchAlong: leaves no room between pins of neighbouring rows; expected above 2.236068 mm",
                        new Object[] {"pitchAcross", "4 mm", "pitchAlong", "2 mm", "arrangement", "staggered"}),
                Arguments.of("pitchAlong: is missing; expected a length above 0, as a number in m or a text with its unit",
                        new Object[] {"pitchAcross", "4 mm"}));
    }

    @ParameterizedTest
    @MethodSource("bad")
    void saysWhatIsWrong(String expected, Object[] pitches) {
        assertEquals(List.of(expected), Links.inBox(new PinFinsKind(), Stream.concat(Stream.of("pinDiameter", "3 mm", "height", "20 mm",
                "across", 8, "rows", 10), Stream.of(pitches)).toArray()).sentences());
    }

    @Test
    void staggeredRowsMayStandCloserThanADiameter() {
        assertEquals(List.of(), Links.inBox(new PinFinsKind(), "pinDiameter", "3 mm", "height", "20 mm", "across", 8, "rows", 10,
                "pitchAcross", "6 mm", "pitchAlong", "2 mm", "arrangement", "staggered").sentences());
    }
}
