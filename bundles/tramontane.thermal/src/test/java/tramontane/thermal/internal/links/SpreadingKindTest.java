package tramontane.thermal.internal.links;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import tramontane.analysis.AirStream;
import tramontane.analysis.LinkKind;

/** Spreading in a plate against the closed form, its limits, and what does not fit. */
class SpreadingKindTest {

    private static final AirStream AIR = Links.air(0.01);

    private static Links.Case plate(double source, double plate, double thickness, double conductivity, String where) {
        return Links.inBox(new SpreadingKind(), "sourceArea", source, "plateArea", plate, "thickness", thickness, "conductivity",
                conductivity, "where", where);
    }

    /**
     * S. Lee, S. Song, V. Au, K. P. Moran (1995), their formulas evaluated: source and plate as areas, thickness, conductivity, R0,
     * mean and maximum without the way through, t/(k A). The last is the example of S. Lee, Electronics Cooling (1998): about 0.66.
     */
    @ParameterizedTest
    @CsvSource({"4e-4, 36e-4, 0.004, 180, 0.462963, 0.141796, 0.195958, 0.006173",
        "3.14159265e-4, 50.2654825e-4, 0.005, 200, 0.397887, 0.152660, 0.198907, 0.004974",
        "0.785398163e-4, 12.5663706e-4, 0.002, 390, 0.795775, 0.187916, 0.244843, 0.004081",
        "6.25e-4, 100e-4, 0.0013, 200, 1, 0.50392, 0.65658, 0.00065"})
    void spreads(double source, double plate, double thickness, double conductivity, double beyond, double mean, double maximum,
            double through) {
        assertEquals(mean + through, plate(source, plate, thickness, conductivity, "average").resistance(AIR, beyond), 1e-5);
        assertEquals(maximum + through, plate(source, plate, thickness, conductivity, "maximum").resistance(AIR, beyond), 1e-5);
    }

    @Test
    void theHottestPlaceCountsWhereNothingIsSaid() {
        Links.Case sides = Links.inBox(new SpreadingKind(), "sourceWidth", "20 mm", "sourceHeight", "20 mm", "width", "60 mm", "length",
                "60 mm", "thickness", "4 mm", "conductivity", 180);
        assertEquals(plate(4e-4, 36e-4, 0.004, 180, "maximum").resistance(AIR, 0.5), sides.resistance(AIR, 0.5), 1e-12);
        assertEquals("spreading to the hottest place", sides.origin(AIR).relation().name());
        assertEquals(36e-4, sides.input(AIR, "plate area A"), 1e-12);
        assertEquals(LinkKind.Step.SPREADING, sides.kind().step());
    }

    /** t/(k A) alone: 4 mm of 180 W/(m K) and 60 mm square. */
    @Test
    void evenHeatOnlyGoesThrough() {
        for (double beyond : new double[] {0, 0.5, Double.POSITIVE_INFINITY}) {
            assertEquals(0.0061728, plate(36e-4, 36e-4, 0.004, 180, "maximum").resistance(AIR, beyond), 1e-7);
            assertEquals(0.0061728, plate(36e-4, 36e-4, 0.004, 180, "average").resistance(AIR, beyond), 1e-7);
        }
    }

    /** φ → tanh λτ on an even temperature, 1/tanh λτ with no heat through: λ 4.83416, τ 0.11816, 1/(k √A) times (1 - ε)/√π. */
    @Test
    void hasLimitsForAllThatMayComeAfterIt() {
        Links.Case plate = plate(4e-4, 36e-4, 0.004, 180, "maximum");
        double unit = (1 - 1 / 3.0) / (Math.sqrt(Math.PI) * 180 * 0.02);
        double tanh = Math.tanh(4.83416 * 0.118164);
        assertEquals(unit * tanh + 0.006173, plate.resistance(AIR, 0), 1e-5);
        assertEquals(unit / tanh + 0.006173, plate.resistance(AIR, Double.POSITIVE_INFINITY), 1e-5);
        assertEquals(plate.resistance(AIR, 0), plate.resistance(AIR, 1e-9), 1e-6);
        assertEquals(plate.resistance(AIR, Double.POSITIVE_INFINITY), plate.resistance(AIR, 1e9), 1e-6);
        assertTrue(Double.isNaN(plate.resistance(AIR, Double.NaN)));
    }

    /** The less well heat gets away behind it, the further it must spread; the hottest place is never cooler than the mean. */
    @Property
    void risesWithWhatComesAfterIt(@ForAll @DoubleRange(min = 0.01, max = 0.99) double part,
            @ForAll @DoubleRange(min = 0.5, max = 20) double millimetres, @ForAll @DoubleRange(min = 1, max = 400) double conductivity,
            @ForAll @DoubleRange(min = 0, max = 50) double beyond) {
        Links.Case hottest = plate(part * 1e-2, 1e-2, millimetres / 1000, conductivity, "maximum");
        Links.Case mean = plate(part * 1e-2, 1e-2, millimetres / 1000, conductivity, "average");
        double here = hottest.resistance(AIR, beyond);
        assertTrue(hottest.resistance(AIR, beyond + 0.1) >= here * (1 - 1e-12), beyond + " " + here);
        assertTrue(mean.resistance(AIR, beyond) <= here, mean.resistance(AIR, beyond) + " " + here);
        assertTrue(plate(part * 1e-2, 1e-2, millimetres / 1000, 1.1 * conductivity, "maximum").resistance(AIR, 0) < hottest.resistance(AIR, 0));
    }

    static List<Arguments> bad() {
        return List.of(
                Arguments.of("sourceArea: makes a source of 16.0 cm², larger than its plate of 9.0 cm²; expected a source that fits on it",
                        new Object[] {"sourceArea", "16 cm²", "plateArea", "9 cm²", "thickness", "3 mm", "conductivity", 200}),
                Arguments.of("sourceWidth: makes a source of 16.0 cm², larger than its plate of 9.0 cm²; expected a source that fits on it",
                        new Object[] {"sourceWidth", "4 cm", "sourceHeight", "4 cm", "plateArea", "9 cm²", "thickness", "3 mm",
                            "conductivity", 200}),
                Arguments.of("sourceWidth: makes a source of 10.0 mm by 70.0 mm, larger than its plate of 60.0 mm by 60.0 mm; expected a "
                        + "source that fits on it", new Object[] {"sourceWidth", "70 mm", "sourceHeight", "10 mm", "width", "60 mm",
                            "length", "60 mm", "thickness", "3 mm", "conductivity", 200}),
                Arguments.of("conductivity: 0 is out of range; expected a conductivity above 0, as a number in W/(m K) or a text with its"
                        + " unit", new Object[] {"sourceArea", "4 cm²", "plateArea", "9 cm²", "thickness", "3 mm", "conductivity", 0}),
                Arguments.of("sourceWidth: is missing, so that the size of its source is not known; expected sourceWidth and sourceHeight,"
                        + " or sourceArea", new Object[] {"plateArea", "9 cm²", "thickness", "3 mm", "conductivity", 200}),
                Arguments.of("length: is missing; expected with width", new Object[] {"sourceArea", "4 cm²", "width", "3 cm", "thickness",
                    "3 mm", "conductivity", 200}),
                Arguments.of("where: is \"max\"; expected one of \"average\", \"maximum\"",
                        new Object[] {"sourceArea", "4 cm²", "plateArea", "9 cm²", "thickness", "3 mm", "conductivity", 200, "where", "max"}));
    }

    @ParameterizedTest
    @MethodSource("bad")
    void saysWhatIsWrong(String expected, Object[] members) {
        assertEquals(List.of(expected), Links.inBox(new SpreadingKind(), members).sentences());
    }

    @Test
    void aSourceMayCoverItsPlateInAnyUnits() {
        assertEquals(List.of(), Links.inBox(new SpreadingKind(), "sourceArea", "36 cm²", "width", "6 cm", "length", "60 mm", "thickness",
                "3 mm", "conductivity", 200).sentences());
        // turned by a quarter
        assertEquals(List.of(), Links.inBox(new SpreadingKind(), "sourceWidth", "20 mm", "sourceHeight", "60 mm", "width", "60 mm", "length",
                "30 mm", "thickness", "3 mm", "conductivity", 200).sentences());
    }
}
