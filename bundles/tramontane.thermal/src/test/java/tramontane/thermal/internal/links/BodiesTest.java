package tramontane.thermal.internal.links;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import tramontane.analysis.AirStream;

/** Boards and bare packages against published examples, and what does not fit. */
class BodiesTest {

    /** Area of the channels of the cage: 10 of 13.4 mm by 160 mm. */
    private static final double CAGE = 10 * 0.0134 * 0.16;

    /** S. K. Som, Introduction to Heat Transfer, example 7.3: 5 m/s along 1 m and 5 m, h 8.86872 and 10.2568 W/(m² K). */
    @ParameterizedTest
    @CsvSource({"1, 8.86872", "5, 10.2568"})
    void boardsAloneAreFlatPlates(double length, double coefficient) {
        AirStream air = new AirStream(5, 1, 1, 2e-5, 0.03, 0.706 * 0.03 / 2e-5);
        Links.Case one = Links.inBox(new BoardKind(), "width", 1, "length", length);
        assertEquals(1 / (coefficient * length), one.resistance(air), 1e-3 / (coefficient * length));
        assertEquals(one.resistance(air) / 6, Links.inBox(new BoardKind(), "width", 1, "length", length, "sides", 2, "boards", 3)
                .resistance(air), 1e-12);
        assertFalse(one.fromInlet());
        Links.Case flat = Links.inBox(new PackageKind(), "width", 1, "length", length);
        assertEquals(1 / (coefficient * length), flat.resistance(air), 1e-3 / (coefficient * length));
        assertEquals(flat.resistance(air) * length / (length + 2 * (1 + length) * 0.1),
                Links.inBox(new PackageKind(), "width", 1, "length", length, "height", 0.1).resistance(air), 1e-12);
        assertFalse(flat.fromInlet());
    }

    /** F. P. Incropera, D. P. DeWitt, example 7.4, from memory: 10 m/s across 12.7 mm, air of 350 K: Nu 40.6, h 96 W/(m² K). */
    @Test
    void roundPackagesLieAcrossTheFlow() {
        double density = 0.995;
        AirStream air = new AirStream(0.1, 0.01, density, 20.92e-6 * density, 0.030, 0.70 * 0.030 / (20.92e-6 * density));
        Links.Case round = Links.inBox(new PackageKind(), "diameter", "12.7 mm", "length", "94 mm");
        double expected = 1 / (96 * Math.PI * 0.0127 * 0.094);
        assertEquals(expected, round.resistance(air), 5e-3 * expected);
        assertEquals(96, round.input(air, "heat transfer coefficient h"), 0.5);
    }

    /**
     * Channels of 13.4 mm between boards of 160 by 220 mm at 1 m/s, worked by hand: d 24.73 mm, Re 1556, K. Stephan (1959) with a
     * developed part of 6.134 for this shape gives Nu 9.487, of one wall 2.180 less; half of 1/(ρ v g w cp) on top.
     */
    @ParameterizedTest
    @CsvSource({"1, 3.854997", "2, 1.607217"})
    void boardsInACageTakeItsChannels(int sides, double expected) {
        Links.Case board = Links.inCage(new BoardKind(), "sides", sides);
        assertEquals(expected, board.resistance(Links.air(CAGE, CAGE)), 1e-6 * expected);
        assertTrue(board.fromInlet());
        assertEquals(0.0134, board.input(Links.air(CAGE, CAGE), "channel"), 1e-12);
        assertEquals(expected / 4, Links.inCage(new BoardKind(), "sides", sides, "boards", 4).resistance(Links.air(CAGE, CAGE)), 1e-6);
        // the same channel in a bay, by its own sizes
        assertEquals(expected, Links.inBox(new BoardKind(), "width", "160 mm", "length", "220 mm", "channel", "13.4 mm", "sides", sides,
                "velocity", "1 m/s").resistance(Links.air(CAGE)), 1e-6 * expected);
    }

    @Test
    void boardsAreNoMoreThanTheirCageHas() {
        assertEquals(List.of(), Links.inCage(new BoardKind(), "boards", 10).sentences());
        List<String> wrong = Links.inCage(new BoardKind(), "boards", 11).sentences();
        assertEquals(1, wrong.size());
        assertTrue(wrong.getFirst().endsWith("boards (cpu): is 11, more than the card cage has; expected 10 at most")
                || wrong.getFirst().contains("is 11, more than the card cage has; expected 10 at most"), wrong::toString);
        assertEquals(List.of("note cpu: board of cpu is taken as one board of the 10 in the card cage"),
                Links.inCage(new BoardKind()).findings(Links.air(CAGE, CAGE)));
    }

    /** A stated velocity may ask for more air than there is; what warms along the board is what comes. */
    @Test
    void aBoardIsNeverColderThanTheMeanOfItsAir() {
        AirStream air = Links.air(1e-4);
        Links.Case board = Links.inBox(new BoardKind(), "width", "160 mm", "length", "220 mm", "channel", "13.4 mm", "velocity", "5 m/s");
        assertTrue(board.resistance(air) > 1 / (2 * air.flow() * air.density() * air.specificHeat()));
    }

    @Test
    void aVelocityIsNeeded() {
        Object[] board = {"width", "160 mm", "length", "220 mm"};
        assertTrue(Double.isNaN(Links.inBox(new BoardKind(), board).resistance(Links.air(0.01))));
        assertTrue(Double.isNaN(Links.inBox(new BoardKind(), with(board, "channel", "10 mm")).resistance(Links.air(0.01))));
        assertTrue(Double.isNaN(Links.inBox(new PackageKind(), "diameter", "5 mm", "length", "10 mm").resistance(Links.air(0.01))));
        assertEquals(List.of(), Links.inBox(new BoardKind(), board).findings(Links.air(0.01)));
        double expected = Links.inBox(new BoardKind(), board).resistance(Links.air(0.02, 0.01));
        assertEquals(expected, Links.inBox(new BoardKind(), with(board, "flowArea", "100 cm²")).resistance(Links.air(0.02)), 1e-12);
        assertEquals(expected, Links.inBox(new BoardKind(), with(board, "flowArea", "100 cm²")).resistance(Links.air(0.02, 1)), 1e-12);
        assertEquals(expected, Links.inBox(new BoardKind(), with(board, "velocity", "2 m/s")).resistance(Links.air(0.001, 1)), 1e-12);
    }

    static Stream<Arguments> moving() {
        return Stream.of(
                Links.inBox(new BoardKind(), "width", "160 mm", "length", "220 mm", "flowArea", "100 cm²"),
                Links.inBox(new BoardKind(), "width", "160 mm", "length", "220 mm", "channel", "10 mm", "flowArea", "100 cm²"),
                Links.inBox(new BoardKind(), "width", "160 mm", "length", "220 mm", "channel", "10 mm", "sides", 2, "flowArea", "100 cm²"),
                Links.inBox(new PackageKind(), "width", "20 mm", "length", "30 mm", "height", "2 mm", "flowArea", "100 cm²"),
                Links.inBox(new PackageKind(), "diameter", "5 mm", "length", "12 mm", "flowArea", "100 cm²")).map(Arguments::of);
    }

    @ParameterizedTest
    @MethodSource("moving")
    void moreAirCoolsBetterAndNoneNotAtAll(Links.Case body) {
        assertEquals(Double.POSITIVE_INFINITY, body.resistance(Links.air(0)));
        double last = Double.POSITIVE_INFINITY;
        for (double flow = 1e-9; flow < 1; flow *= 1.1) {
            double here = body.resistance(Links.air(flow));
            assertTrue(here < last, flow + ": " + here + " after " + last);
            assertEquals(here, body.resistance(Links.air(flow * (1 + 1e-6))), 1e-5 * here);
            last = here;
        }
    }

    @Test
    void saysThatAirIsSlowOrAVelocityStated() {
        Links.Case board = Links.inBox(new BoardKind(), "width", "160 mm", "length", "220 mm");
        assertEquals(List.of(), board.findings(Links.air(0.002, 0.01)));
        assertEquals(List.of("note cpu: the air goes by board of cpu at 0.150 m/s, so slowly that the air it warms would rise by itself; its "
                + "temperature is overstated"), board.findings(Links.air(0.0015, 0.01)));
        assertEquals(List.of("note cpu: the velocity at package of cpu is stated and does not follow the flow"),
                Links.inBox(new PackageKind(), "width", "2 cm", "length", "2 cm", "velocity", "2 m/s").findings(Links.air(0.01)));
    }

    static List<Arguments> bad() {
        return List.of(
                Arguments.of("board", List.of("width: is missing; expected unless it stands on a passage of kind card cage"),
                        new Object[] {"length", "22 cm"}),
                Arguments.of("board", List.of("says the velocity at it more than once, by velocity and by flowArea; expected one of them"),
                        new Object[] {"width", "16 cm", "length", "22 cm", "velocity", "1 m/s", "flowArea", "1 cm²"}),
                Arguments.of("board", List.of("sides: is 3; expected a whole number from 1 to 2"),
                        new Object[] {"width", "16 cm", "length", "22 cm", "sides", 3}),
                Arguments.of("board", List.of("channel: 0 is out of range; expected a length above 0, as a number in m or a text with its"
                        + " unit"), new Object[] {"width", "16 cm", "length", "22 cm", "channel", 0}),
                Arguments.of("package", List.of("width: is missing, so that its size is not known; expected width, or diameter"),
                        new Object[] {"length", "2 cm"}),
                Arguments.of("package", List.of("says its size more than once, by width and by diameter; expected one of them"),
                        new Object[] {"width", "2 cm", "diameter", "2 cm", "length", "2 cm"}),
                Arguments.of("package", List.of("length: is missing; expected with width or diameter"), new Object[] {"width", "2 cm"}),
                Arguments.of("package", List.of("height: is not used without width"),
                        new Object[] {"diameter", "2 cm", "length", "2 cm", "height", "1 mm"}));
    }

    @ParameterizedTest
    @MethodSource("bad")
    void saysWhatIsWrong(String kind, List<String> expected, Object[] members) {
        assertEquals(expected, Links.inBox(kind.equals("board") ? new BoardKind() : new PackageKind(), members).sentences());
    }

    private static Object[] with(Object[] members, Object... more) {
        return Stream.concat(Stream.of(members), Stream.of(more)).toArray();
    }
}
