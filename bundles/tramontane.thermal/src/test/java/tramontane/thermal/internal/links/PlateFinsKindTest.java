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
import tramontane.analysis.AirStream;

/** Plate fins with and without a passage of their own. */
class PlateFinsKindTest {

    private static final Object[] SIZES = {"fins", 16, "finThickness", "0.8 mm", "width", "60 mm", "height", "25 mm", "length", "60 mm"};

    private static Object[] with(Object[] members, Object... more) {
        return Stream.concat(Stream.of(members), Stream.of(more)).toArray();
    }

    /**
     * P. Teertstra, M. M. Yovanovich, J. R. Culham (2000), their formulas evaluated; with the base, over which the heat is spread
     * evenly: N, t, W, H, L, k, base, Q, R of the fins, R total.
     */
    @ParameterizedTest
    @CsvSource({"16, 0.0008, 0.060, 0.025, 0.060, 180, 0.004, 0.004, 0.588798, 0.594970",
        "16, 0.0008, 0.060, 0.025, 0.060, 180, 0.004, 0.008, 0.450276, 0.456448",
        "20, 0.0015, 0.100, 0.040, 0.150, 200, 0.008, 0.015, 0.148822, 0.151488"})
    void sinksOfThePaper(int fins, double thickness, double width, double height, double length, double conductivity, double base,
            double flow, double expected, double total) {
        AirStream air = Links.air(flow);
        double convection = Links.inBox(new PlateFinsKind(), "fins", fins, "finThickness", thickness, "width", width, "height", height,
                "length", length, "conductivity", conductivity).resistance(air);
        assertEquals(expected, convection, 1e-4 * expected);
        double plate = Links.inBox(new SpreadingKind(), "sourceWidth", width, "sourceHeight", length, "width", width, "length", length,
                "thickness", base, "conductivity", conductivity).resistance(air, convection);
        assertEquals(total, plate + convection, 1e-4 * total);
    }

    @Test
    void onAHeatSinkPassageItHasItsSizes() {
        Links.Case sink = Links.onSink(new PlateFinsKind(), "conductivity", 180);
        assertEquals(0.588798, sink.resistance(Links.air(0.004)), 1e-4 * 0.588798);
        assertEquals(List.of(), sink.findings(Links.air(0.004)));
        assertTrue(sink.fromInlet());
        // half the fins' height, all else from the passage
        assertEquals(Links.inBox(new PlateFinsKind(), "fins", 16, "finThickness", "0.8 mm", "width", "60 mm", "height", "12.5 mm",
                "length", "60 mm").resistance(Links.air(0.004)),
                Links.onSink(new PlateFinsKind(), "height", "12.5 mm").resistance(Links.air(0.004)), 1e-12);
    }

    @Test
    void aShareOfTheFlowGoesBetweenTheFins() {
        Links.Case share = Links.inBox(new PlateFinsKind(), with(SIZES, "conductivity", 180, "flowShare", "20 %"));
        assertEquals(0.588798, share.resistance(Links.air(0.02)), 1e-4 * 0.588798);
        assertEquals(List.of(), share.findings(Links.air(0.02)));
        assertEquals(List.of("caution cpu: all air of bay box, 0.00400 m³/s, is taken to go through plate fins of cpu"),
                Links.inBox(new PlateFinsKind(), SIZES).findings(Links.air(0.004)));
    }

    @Test
    void noSinkGivesMoreThanItsAirCarries() {
        Links.Case sink = Links.inBox(new PlateFinsKind(), SIZES);
        for (double flow : new double[] {1e-6, 1e-5, 1e-4}) {
            AirStream air = Links.air(flow);
            double carried = air.density() * flow * air.specificHeat();
            assertTrue(1 / sink.resistance(air) <= carried * (1 + 1e-12), flow + " m³/s");
        }
        AirStream creeping = Links.air(1e-6);
        assertEquals(creeping.density() * 1e-6 * creeping.specificHeat(), 1 / sink.resistance(creeping), 1e-12);
    }

    @Test
    void aWiderDuctTakesAirFromTheFins() {
        double last = Links.inBox(new PlateFinsKind(), SIZES).resistance(Links.air(0.004));
        assertEquals(last, duct(60, 25).resistance(Links.air(0.004)), 1e-6 * last);
        for (int width = 61; width <= 200; width += 20) {
            double wider = duct(width, 25).resistance(Links.air(0.004));
            assertTrue(wider > last, width + " mm: " + wider + " after " + last);
            last = wider;
        }
        assertTrue(duct(200, 50).resistance(Links.air(0.004)) > last);
        assertEquals(List.of(), duct(100, 25).findings(Links.air(0.008)));
    }

    private static Links.Case duct(double width, double height) {
        return Links.inBox(new PlateFinsKind(), with(SIZES, "ductWidth", width + " mm", "ductHeight", height + " mm"));
    }

    @Test
    void moreAirCoolsBetterAndNoneNotAtAll() {
        for (Links.Case sink : List.of(Links.onSink(new PlateFinsKind()), duct(120, 40))) {
            assertEquals(Double.POSITIVE_INFINITY, sink.resistance(Links.air(0)));
            double last = Double.POSITIVE_INFINITY;
            for (double flow = 1e-7; flow < 1; flow *= 1.1) {
                double here = sink.resistance(Links.air(flow));
                assertTrue(here < last, flow + ": " + here + " after " + last);
                assertEquals(here, sink.resistance(Links.air(flow * (1 + 1e-6))), 1e-5 * here);
                last = here;
            }
        }
    }

    @Test
    void saysWhereItsRelationEnds() {
        Links.Case sink = Links.onSink(new PlateFinsKind());
        List<String> turbulent = sink.findings(Links.air(0.009));
        assertEquals(1, turbulent.size(), turbulent.toString());
        assertTrue(turbulent.getFirst().startsWith("caution cpu: plate fins of cpu work at a Reynolds number of 2680 between the fins, "
                + "above 2300"), turbulent.toString());
        // Re* 0.26 is a flow of 2.95e-5 m³/s here
        List<String> slow = sink.findings(Links.air(2.5e-5));
        assertEquals(2, slow.size(), slow.toString());
        assertTrue(slow.get(0).startsWith("note cpu: the air goes by plate fins of cpu at 0.0212 m/s"), slow.toString());
        assertTrue(slow.get(1).startsWith("caution cpu: plate fins of cpu work at a channel Reynolds number Re* of 0.220, outside 0.26"
                + " to 175"), slow.toString());
    }

    static List<Arguments> bad() {
        return List.of(
                Arguments.of(List.of("finThickness: is missing; expected unless it stands on a passage of kind heat sink"),
                        new Object[] {"fins", 16, "width", "60 mm", "height", "25 mm", "length", "60 mm"}),
                Arguments.of(List.of("width: leaves no room between the fins, 48.0 mm side by side in a width of 48.0 mm; expected less of them"),
                        new Object[] {"fins", 60, "finThickness", "0.8 mm", "width", "48 mm", "height", "25 mm", "length", "60 mm"}),
                Arguments.of(List.of("ductHeight: is missing; expected with ductWidth"), with(SIZES, "ductWidth", "80 mm")),
                Arguments.of(List.of("ductWidth: is less than the width of the sink, 60.0 mm; expected at least that"),
                        with(SIZES, "ductWidth", "59 mm", "ductHeight", "30 mm")),
                Arguments.of(List.of("ductHeight: is less than the height of fins and base, 25.0 mm; expected at least that"),
                        with(SIZES, "ductWidth", "60 mm", "ductHeight", "20 mm")),
                Arguments.of(List.of("conductivity: 0 is out of range; expected a conductivity above 0, as a number in W/(m K) or a text"
                        + " with its unit"), with(SIZES, "conductivity", 0)),
                Arguments.of(List.of("flowShare: \"120 %\" is out of range; expected a fraction above 0 and at most 1, as a number or a "
                        + "text in %"), with(SIZES, "flowShare", "120 %")));
    }

    @ParameterizedTest
    @MethodSource("bad")
    void saysWhatIsWrong(List<String> expected, Object[] members) {
        assertEquals(expected, Links.inBox(new PlateFinsKind(), members).sentences());
    }

    @Test
    void saysWhatIsWrongOnAPassage() {
        assertEquals(List.of(), Links.onSink(new PlateFinsKind()).sentences());
        assertEquals(List.of("fins: leaves no room between the fins, 64.0 mm side by side in a width of 60.0 mm; expected less of them"),
                Links.onSink(new PlateFinsKind(), "fins", 80).sentences());
        assertEquals(List.of("ductWidth: is not used on a passage of kind heat sink, whose air all goes between the fins",
                "ductHeight: is not used on a passage of kind heat sink, whose air all goes between the fins"),
                Links.onSink(new PlateFinsKind(), "ductWidth", "80 mm", "ductHeight", "30 mm").sentences());
        assertEquals(5, Links.inCage(new PlateFinsKind()).sentences().size());
    }
}
