package tramontane.thermal.internal.links;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.Size;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

/** Measured sinks between, below and beyond their points. */
class MeasuredSinkKindTest {

    /** R = 0.5 (q/0.01)^-0.8: comes back between the points, its power goes on below, the last value is held beyond. */
    @ParameterizedTest
    @CsvSource({"0.002, 1.811949", "0.005, 0.870551", "0.01, 0.5", "0.015, 0.361491", "0.02, 0.287175", "0.04, 0.287175", "1, 0.287175"})
    void aPowerLawComesBack(double flow, double expected) {
        Links.Case sink = Links.onSink(new MeasuredSinkKind(), "flow", "0.005 0.01 0.02 m³/s", "resistance",
                List.of(0.5 * Math.pow(0.5, -0.8), 0.5, 0.5 * Math.pow(2, -0.8)));
        assertEquals(expected, sink.resistance(Links.air(flow)), 1e-5 * expected);
    }

    @Test
    void belowALevelTableTheResistanceStillRises() {
        Links.Case sink = Links.onSink(new MeasuredSinkKind(), "flow", List.of(0.01, 0.02), "resistance", List.of(0.5, 0.5));
        assertEquals(0.5 * 2, sink.resistance(Links.air(0.0025)), 1e-12); // a quarter of the flow, as its root
        assertEquals(Double.POSITIVE_INFINITY, sink.resistance(Links.air(0)));
    }

    @Test
    void aTableAgainstVelocityNeedsOne() {
        Object[] table = {"velocity", "1 2 4 m/s", "resistance", "1 0.7 0.5 K/W"};
        Links.Case sink = Links.inBox(new MeasuredSinkKind(), table);
        assertTrue(Double.isNaN(sink.resistance(Links.air(0.01))));
        assertEquals(List.of(), sink.findings(Links.air(0.01)));
        assertEquals(0.7, sink.resistance(Links.air(0.02, 0.01)), 1e-12);
        Links.Case narrow = Links.inBox(new MeasuredSinkKind(), "velocity", "1 2 4 m/s", "resistance", "1 0.7 0.5 K/W", "flowArea",
                "50 cm²");
        assertEquals(0.5, narrow.resistance(Links.air(0.02, 0.01)), 1e-12);
        assertEquals(4, narrow.input(Links.air(0.02), "velocity"), 1e-12);
    }

    @Test
    void aShareOfTheFlowIsLookedUp() {
        Links.Case sink = Links.inBox(new MeasuredSinkKind(), "flow", "10 20 l/s", "resistance", "0.5 0.3 K/W", "flowShare", "25 %");
        assertEquals(0.5, sink.resistance(Links.air(0.04)), 1e-12);
        assertEquals(0.3, sink.resistance(Links.air(0.08)), 1e-12);
        assertEquals(List.of(), sink.findings(Links.air(0.05)));
    }

    /** Equal mass flow: 0.02 m³/s at half the pressure is looked up at 0.01 m³/s. */
    @Test
    void thinAirCountsByItsMass() {
        Links.Case sink = Links.at("sink", Links.pressure(101325 / 2.0), new MeasuredSinkKind(), "flow", "10 20 l/s", "resistance",
                "0.5 0.3 K/W");
        assertEquals(0.5, sink.resistance(Links.air(0.02)), 1e-12);
        assertEquals(0.5, sink.input(Links.air(0.02), "pressure over that at sea level"), 1e-12);
        assertEquals(List.of("caution cpu: measured sink of cpu works at 0.00500 m³/s of sea-level air, below its table, which begins "
                + "at 0.0100 m³/s; its resistance is carried on as a power of the flow"), sink.findings(Links.air(0.01)));
    }

    @Test
    void countsFromTheAirThatItsDataSheetMeans() {
        assertTrue(Links.onSink(new MeasuredSinkKind(), "flow", "10 20 l/s", "resistance", "0.5 0.3 K/W").fromInlet());
        assertFalse(Links.onSink(new MeasuredSinkKind(), "flow", "10 20 l/s", "resistance", "0.5 0.3 K/W", "reference", "mean air")
                .fromInlet());
    }

    @Test
    void saysWhereItsTableEnds() {
        Object[] table = {"flow", "10 20 l/s", "resistance", "0.5 0.3 K/W"};
        Links.Case sink = Links.onSink(new MeasuredSinkKind(), table);
        assertEquals(List.of(), sink.findings(Links.air(0.01)));
        assertEquals(List.of(), sink.findings(Links.air(0.02)));
        assertEquals(List.of("caution cpu: measured sink of cpu works at 0.00900 m³/s, below its table, which begins at 0.0100 m³/s; "
                + "its resistance is carried on as a power of the flow"), sink.findings(Links.air(0.009)));
        assertEquals(List.of("caution cpu: measured sink of cpu works at 0.0210 m³/s, beyond its table, which ends at 0.0200 m³/s; "
                + "the last resistance is held, which overstates its temperature"), sink.findings(Links.air(0.021)));
        assertEquals(List.of("caution cpu: all air of bay box, 0.0150 m³/s, is taken to go through measured sink of cpu"),
                Links.inBox(new MeasuredSinkKind(), table).findings(Links.air(0.015)));
        assertEquals(List.of("note cpu: the air goes by measured sink of cpu at 0.100 m/s, so slowly that the air it warms would rise "
                + "by itself; its temperature is overstated", "caution cpu: measured sink of cpu works at 0.100 m/s, below its table, "
                + "which begins at 1.00 m/s; its resistance is carried on as a power of the velocity"),
                Links.inBox(new MeasuredSinkKind(), "velocity", "1 2 m/s", "resistance", "1 0.7 K/W").findings(Links.air(0.001, 0.01)));
    }

    static List<Arguments> bad() {
        return List.of(
                Arguments.of(List.of("flow: is missing, so that what its resistance was measured against is not known; expected flow, or "
                        + "velocity"), new Object[] {"resistance", "1 0.7 K/W"}),
                Arguments.of(List.of("says what its resistance was measured against more than once, by flow and by velocity; expected "
                        + "one of them"), new Object[] {"flow", "1 2 l/s", "velocity", "1 2 m/s", "resistance", "1 0.7 K/W"}),
                Arguments.of(List.of("flow: is a table with one point, which does not say how the resistance follows the flow; expected "
                        + "two points or more, or a link of kind resistance"), new Object[] {"flow", "1 l/s", "resistance", "1 K/W"}),
                Arguments.of(List.of("resistance: number 3 is larger than the one before it; expected a resistance that does not rise "
                        + "with velocity"), new Object[] {"velocity", "1 2 3 m/s", "resistance", "1 0.7 0.8 K/W"}),
                Arguments.of(List.of("resistance: has 1 number; expected 2, one for each flow"),
                        new Object[] {"flow", "1 2 l/s", "resistance", "1 K/W"}),
                Arguments.of(List.of("flow: number 2, 1, is smaller than the one before it, 2; expected each larger than the one before"),
                        new Object[] {"flow", "2 1 l/s", "resistance", "1 0.7 K/W"}),
                Arguments.of(List.of("resistance: number 2, 0, is out of range; expected each thermal resistance above 0"),
                        new Object[] {"flow", "1 2 l/s", "resistance", "1 0 K/W"}),
                Arguments.of(List.of("flowArea: is not used with measured flows"),
                        new Object[] {"flow", "1 2 l/s", "resistance", "1 0.7 K/W", "flowArea", "1 cm²"}),
                Arguments.of(List.of("flowShare: is not used with measured velocities; give flowArea"),
                        new Object[] {"velocity", "1 2 m/s", "resistance", "1 0.7 K/W", "flowShare", 0.5}));
    }

    @ParameterizedTest
    @MethodSource("bad")
    void saysWhatIsWrongWithATable(List<String> expected, Object[] members) {
        assertEquals(expected, Links.inBox(new MeasuredSinkKind(), members).sentences());
    }

    /** Whatever the table, more air never makes it warmer, without a jump. */
    @Property
    void resistanceNeverRisesWithFlow(@ForAll @Size(min = 2, max = 6) List<@DoubleRange(min = 0, max = 2) Double> steps,
            @ForAll @DoubleRange(min = 0.01, max = 1000) double litres) {
        double flow = litres / 1000;
        List<Double> flows = new ArrayList<>();
        List<Double> resistances = new ArrayList<>();
        double x = 0.01;
        double y = 3;
        for (double step : steps) {
            flows.add(x);
            resistances.add(y);
            x *= 1.1 + step;
            y /= 1 + step;
        }
        Links.Case sink = Links.onSink(new MeasuredSinkKind(), "flow", flows, "resistance", resistances);
        double here = sink.resistance(Links.air(flow));
        double more = sink.resistance(Links.air(flow * (1 + 1e-6)));
        assertTrue(more <= here * (1 + 1e-12), here + " " + more);
        assertEquals(here, more, 1e-4 * here);
    }
}
