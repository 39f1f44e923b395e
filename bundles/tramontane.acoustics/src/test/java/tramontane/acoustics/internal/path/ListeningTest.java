package tramontane.acoustics.internal.path;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import tramontane.acoustics.Face;
import tramontane.acoustics.internal.path.Listening.Position;
import tramontane.analysis.Finding;
import tramontane.model.Design;
import tramontane.physics.sound.Bands;
import tramontane.physics.sound.Levels;
import tramontane.physics.sound.OpeningDirectivity;

class ListeningTest {

    private static final String BOX = "'equipment': {'width': '0.48 m', 'height': '0.18 m', 'depth': '0.6 m'}";
    private static final int KILOHERTZ = Bands.third(1000);

    private static Listening listening(String equipment, String noise) {
        return Listening.of(Boxes.design(equipment + (noise.isEmpty() ? "" : ", 'sections': {'noise': {" + noise + "}}")));
    }

    private static Listening space(String space) {
        return listening(BOX, "'space': {" + space + "}, 'positions': [{'id': 'p', 'distance': 1}]");
    }

    private static Opening round(Face face) {
        return new Opening("o", Optional.ofNullable(face), 1e-6, false, false, 0);
    }

    private static double level(Listening listening, Opening opening, Position position) {
        return Levels.of(listening.transfer(opening, position)[KILOHERTZ]);
    }

    private static double level(Listening listening, Opening opening, double x, double y, double z) {
        return level(listening, opening, new Position("p", List.of(new Point(x, y, z)), false));
    }

    private static List<String> sentences(List<Finding> findings) {
        return findings.stream().map(finding -> finding.message().toString()).toList();
    }

    /** References 7.3: 10 lg(2πr²) and 10 lg(4πr²), dB, straight ahead of the front. */
    @ParameterizedTest
    @CsvSource({"reflecting plane, 0.5, 1.9612", "reflecting plane, 1, 7.9818", "reflecting plane, 2, 14.0024", "reflecting plane,"
            + " 4, 20.0230",
        "free field, 1, 10.9921", "free field, 2, 17.0127"})
    void levelsFallWithDistance(String around, double distance, double loss) {
        Listening listening = listening(BOX, "'space': {'kind': '" + around + "'}, 'positions': [{'id': 'p', 'distance':"
                + " " + distance + "}]");
        assertEquals(60 - loss, 60 + level(listening, round(Face.FRONT), listening.positions().getFirst()), 1e-4);
    }

    /** References 7.3: Q 2, Rc 31.5: S 126 m² by 3 × 9 × 3 m; Q 1, Rc 10.4444: 5 × 4 × 3 m. */
    @ParameterizedTest
    @CsvSource({"on the floor, 9, 3, 3, 0.2, 1, 54.5658", "on the floor, 9, 3, 3, 0.2, 3, 51.6037", "on a wall, 9, 3, 3, 0.2, 1, 54.5658",
        "on a table, 5, 4, 3, 0.1, 2, 56.0517", "in a rack, 5, 4, 3, 0.1, 2, 56.0517"})
    void roomsThrowSoundBack(String stands, double length, double width, double height, double absorption, double distance, double level) {
        Listening listening = listening(BOX, "'stands': '" + stands + "', 'space': {'kind': 'room', 'length': " + length + ","
                + " 'width': " + width
                + ", 'height': " + height + ", 'absorption': " + absorption + "}, 'positions': [{'id': 'p', 'distance':"
                + " " + distance + "}]");
        assertEquals(level, 60 + level(listening, round(Face.FRONT), listening.positions().getFirst()), 1e-4);
    }

    /** References 7.3: 5 × 4 × 3 m with 0.1 has T 1.02766 s with 0.161; with c of 343.2 m/s the constant is 0.16101. */
    @Test
    void reverberationTimesSayTheSameAsAbsorptions() {
        double time = 55.2620 / 343.2 * 60 / 9.4;
        assertEquals(1.02766, time, 1e-3);
        Listening listening = space("'kind': 'room', 'length': 5, 'width': 4, 'height': 3, 'reverberationTime': " + time);
        Listening same = space("'kind': 'room', 'length': 5, 'width': 4, 'height': 3, 'absorption': 0.1");
        assertEquals(level(same, round(Face.FRONT), 0, 1, 1), level(listening, round(Face.FRONT), 0, 1, 1), 1e-4);
        Listening dead = space("'kind': 'room', 'length': 5, 'width': 4, 'height': 3, 'reverberationTime': 0.01");
        assertEquals(level(space("'kind': 'reflecting plane'"), round(Face.FRONT), 0, 1, 1), level(dead, round(Face.FRONT), 0, 1, 1), 1e-9);
    }

    @Test
    void theAbsorptionOfTheNearestBandIsHeld() {
        double[] transfer = space("'kind': 'room', 'length': 5, 'width': 4, 'height': 3, 'absorption': [0.1, 0.4], 'lowestBand':"
                + " '500 Hz'").transfer(
                round(Face.FRONT), new Position("far", List.of(new Point(0, 1e6, 0)), false));
        assertEquals(4 / (94 * 0.1 / 0.9), transfer[0], 1e-9);
        assertEquals(4 / (94 * 0.4 / 0.6), transfer[29], 1e-9);
    }

    @Test
    void aRoomThatIsNotKnownIsAPlane() {
        Listening listening = space("'kind': 'room', 'length': 5");
        assertEquals(-7.9818, level(listening, round(Face.FRONT), listening.positions().getFirst()), 1e-4);
        assertEquals(List.of("the room is not known; a reflecting plane is counted in its place"), sentences(listening.findings()));
    }

    /** ISO 7779, from memory. */
    @Test
    void positionsOfTheStandard() {
        Listening listening = listening(BOX, "'stands': 'on a table', 'positions': [{'id': 'a', 'kind': 'operator seated'}, {'id':"
                + " 'b', 'kind': "
                + "'operator standing'}, {'id': 'c', 'kind': 'bystanders'}, {'id': 'd', 'x': 1, 'y': -2, 'z': 3}, {'id': 'e',"
                + " 'distance': 2}]");
        assertEquals(List.of(new Position("a", List.of(new Point(0, 0.25, 1.2)), false), new Position("b", List.of(new Point(0,
                0.25, 1.5)), false),
                new Position("c", List.of(new Point(0, 1, 1.5), new Point(0, -1.6, 1.5), new Point(-1.24, -0.3, 1.5),
                        new Point(1.24, -0.3, 1.5)),
                        false),
                new Position("d", List.of(new Point(1, -2, 3)), false), new Position("e", List.of(new Point(0, 2, 0.84)), false)),
                listening.positions());
        assertEquals(List.of(), listening.findings());
    }

    @Test
    void nobodyStandsBehindWhatHangsOnAWall() {
        Listening listening = listening(BOX, "'stands': 'on a wall'");
        assertEquals(3, listening.positions().getFirst().points().size());
        assertEquals(List.of("how high the equipment hangs is not stated; its underside is taken to be 1.00 m above the floor",
                "no position is named; bystanders 1 m from the equipment are counted"), sentences(listening.findings()));
    }

    @Test
    void withoutASectionBystandersListen() {
        Listening listening = Listening.of(Design.EMPTY);
        assertEquals(List.of(new Position("1 m", List.of(new Point(0, 1, 1.5), new Point(0, -1, 1.5), new Point(-1, 0, 1.5),
                new Point(1, 0, 1.5)),
                true)), listening.positions());
        assertEquals(List.of("the size of the equipment is not known; who listens is taken to be as far from one point, or from"
                + " what is known of it",
                "no position is named; bystanders 1 m from the equipment are counted"), sentences(listening.findings()));
        assertEquals(-Levels.of(2 * Math.PI * 3.25), level(listening, round(null), listening.positions().getFirst()), 1e-9);
    }

    @Test
    void aPositionWithoutAPlaceIsLeftOut() {
        Listening listening = listening(BOX, "'positions': [{'id': 'p', 'y': 1}, {'id': 'q', 'kind': 'bystanders'}]");
        assertEquals(List.of("q"), listening.positions().stream().map(Position::id).toList());
        assertEquals(List.of("position p has no place; nothing is computed for it"), sentences(listening.findings()));
    }

    @Test
    void pointsAreAveragedByEnergy() {
        Listening listening = listening(BOX, "");
        Position both = new Position("p", List.of(new Point(0, 1, 0.09), new Point(0, 2, 0.09)), false);
        assertEquals(Levels.mean(-7.9818, -14.0024), level(listening, round(Face.FRONT), both), 1e-4);
    }

    @ParameterizedTest
    @EnumSource(Face.class)
    void soundLeavesFromTheMiddleOfAFace(Face face) {
        ReferenceBox box = new ReferenceBox(0.48, 0.18, 0.6, 0.75);
        Point middle = box.middle(face);
        Point normal = ReferenceBox.normal(face);
        Listening listening = listening(BOX, "'stands': 'on a table'");
        assertEquals(-7.9818, level(listening, round(face), middle.x() + normal.x(), middle.y() + normal.y(),
                middle.z() + normal.z()), 1e-4);
        assertEquals(middle, box.nearest(middle));
        Opening directed = new Opening("o", Optional.of(face), 0.01, false, true, 0);
        double[] ahead = listening.transfer(directed, new Position("p", List.of(new Point(middle.x() + normal.x(), middle.y() + normal.y(),
                middle.z() + normal.z())), false));
        double[] behind = listening.transfer(directed, new Position("p", List.of(new Point(middle.x() - normal.x(), middle.y() - normal.y(),
                middle.z() - normal.z())), false));
        for (int third = 0; third < Bands.THIRDS; third++) {
            double hemisphere = 1 / (2 * Math.PI);
            assertEquals(hemisphere * OpeningDirectivity.MIDDLE.factor(Bands.middle(third), 0.01, 0), ahead[third], 1e-12);
            assertEquals(hemisphere * OpeningDirectivity.MIDDLE.factor(Bands.middle(third), 0.01, Math.PI), behind[third], 1e-12);
        }
    }

    @Test
    void leftIsLeftAsSeenFromTheFront() {
        ReferenceBox box = new ReferenceBox(0.48, 0.18, 0.6, 0);
        assertEquals(-0.24, box.middle(Face.LEFT).x());
        assertEquals(-0.6, box.middle(Face.REAR).y());
    }

    @Test
    void withoutAFaceTheNearestPointCounts() {
        Listening listening = listening(BOX, "");
        Opening nowhere = new Opening("o", Optional.empty(), 1e-6, false, true, 0);
        assertEquals(-7.9818, level(listening, nowhere, 0.2, 1, 0.1), 1e-4);
        assertEquals(-7.9818, level(listening, nowhere, 0.1, -0.3, 1.18), 1e-4);
        assertEquals(List.of("in which face of the equipment o sits is not stated; its sound is taken to leave, evenly all round,"
                + " at the point nearest"
                + " to who listens"), sentences(listening.findings(List.of(nowhere, round(Face.TOP)))));
    }

    /** All power through a hemisphere as large as the opening: no more than that. */
    @Test
    void levelsStayFiniteAtTheOpening() {
        Listening listening = listening(BOX, "");
        Opening large = new Opening("o", Optional.of(Face.FRONT), 0.05, false, false, 0);
        assertEquals(-Levels.of(0.05), level(listening, large, 0, 0, 0.09), 1e-9);
        assertEquals(-Levels.of(0.05), level(listening, large, 0, 0.01, 0.09), 1e-9);
        double[] directed = listening.transfer(new Opening("o", Optional.of(Face.FRONT), 0.05, false, true, 0),
                new Position("p", List.of(new Point(0, 0, 0.09)), false));
        assertEquals(OpeningDirectivity.MIDDLE.factor(1000, 0.05, 0) / 0.05, directed[KILOHERTZ], 1e-9);
    }

    /**
     * ISO 3744: the mean level on a hemisphere gives the sound power back, Lw = Lp + 10 lg(S); points of equal height for equal parts
     * of the area.
     */
    @Test
    void theMeanOverAHemisphereIsTheSoundPower() {
        Listening listening = listening("'equipment': {}", "");
        double radius = 2;
        int rings = 40;
        List<Point> points = new ArrayList<>();
        for (int ring = 0; ring < rings; ring++) {
            double z = (ring + 0.5) / rings;
            for (int step = 0; step < 24; step++) {
                double out = Math.sqrt(1 - z * z);
                points.add(new Point(radius * out * Math.cos(step * Math.PI / 12), radius * out * Math.sin(step * Math.PI / 12),
                        radius * z));
            }
        }
        assertEquals(0, level(listening, round(null), new Position("p", points, false)) + Levels.of(2 * Math.PI * radius * radius), 1e-9);
    }

    @Property
    void nearerIsLouder(@ForAll @DoubleRange(min = 0.01, max = 20) double near, @ForAll @DoubleRange(min = 0.01, max = 5) double further) {
        for (String kind : List.of("'kind': 'free field'", "'kind': 'reflecting plane'",
                "'kind': 'room', 'length': 5, 'width': 4, 'height': 3, 'absorption': 0.2")) {
            Listening listening = space(kind);
            assertTrue(level(listening, round(Face.FRONT), 0, near, 0.09) > level(listening, round(Face.FRONT), 0, near + further, 0.09));
        }
    }

    @Property
    void moreSurroundingsMakeItLouder(@ForAll @DoubleRange(min = -5, max = 5) double x, @ForAll @DoubleRange(min = -5, max = 5) double y,
            @ForAll @DoubleRange(min = 0, max = 3) double z, @ForAll Face face) {
        Opening opening = new Opening("o", Optional.of(face), 0.01, false, true, 0);
        double free = level(space("'kind': 'free field'"), opening, x, y, z);
        double plane = level(space("'kind': 'reflecting plane'"), opening, x, y, z);
        assertEquals(Levels.of(2), plane - free, 1e-9);
        assertTrue(level(space("'kind': 'room', 'length': 5, 'width': 4, 'height': 3, 'absorption': 0.2"), opening, x, y, z) > plane);
    }

    @Property
    void leftAndRightAreMirrored(@ForAll @DoubleRange(min = -5, max = 5) double x, @ForAll @DoubleRange(min = -5, max = 5) double y,
            @ForAll @DoubleRange(min = 0, max = 3) double z) {
        Listening listening = listening(BOX, "");
        Opening left = new Opening("o", Optional.of(Face.LEFT), 0.01, false, true, 0);
        Opening right = new Opening("o", Optional.of(Face.RIGHT), 0.01, false, true, 0);
        Opening top = new Opening("o", Optional.of(Face.TOP), 0.01, false, true, 0);
        assertEquals(level(listening, left, x, y, z), level(listening, right, -x, y, z), 1e-9);
        assertEquals(level(listening, top, x, y, z), level(listening, top, -x, y, z), 1e-9);
    }
}
