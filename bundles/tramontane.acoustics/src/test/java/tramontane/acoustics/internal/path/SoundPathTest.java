package tramontane.acoustics.internal.path;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static tramontane.acoustics.internal.path.Boxes.bank;
import static tramontane.acoustics.internal.path.Boxes.bay;
import static tramontane.acoustics.internal.path.Boxes.follow;
import static tramontane.acoustics.internal.path.Boxes.hole;
import static tramontane.acoustics.internal.path.Boxes.path;
import static tramontane.acoustics.internal.path.Boxes.pathWith;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import tramontane.acoustics.Face;
import tramontane.airflow.internal.BankKind;
import tramontane.airflow.internal.OpeningKind;
import tramontane.analysis.Severity;
import tramontane.model.Condition;
import tramontane.model.Design;
import tramontane.physics.sound.Bands;
import tramontane.physics.sound.Levels;

class SoundPathTest {

    /** 0 at 1 kHz and the same everywhere in most of these. */
    private static final int KILOHERTZ = Bands.third(1000);

    private static double share(SoundPath path, String bank, String opening) {
        return path.share(bank, opening(path, opening))[KILOHERTZ];
    }

    private static Opening opening(SoundPath path, String id) {
        return path.openings().stream().filter(each -> each.id().equals(id)).findFirst().orElseThrow();
    }

    private static double total(SoundPath path, String bank) {
        return path.openings().stream().mapToDouble(each -> path.share(bank, each)[KILOHERTZ]).sum();
    }

    private static List<String> sentences(SoundPath path) {
        return path.findings().stream().map(finding -> finding.message().toString()).toList();
    }

    /** One way out: all sound goes there, and loses what the insertion loss says. */
    @ParameterizedTest
    @ValueSource(doubles = {0, 3, 10, 40, 100})
    void withOneOpeningTheLossIsTheInsertionLoss(double loss) {
        SoundPath path = follow(path("'a', 'b'", bank("fans", "a", "b", ""), hole("out", "b", "outside", 0.02, "'insertionLoss':"
                + " " + loss)));
        assertEquals(loss, -Levels.of(share(path, "fans", "out")), 1e-9);
        assertEquals(Math.min(2, loss), opening(path, "out").tolerance(), 1e-9);
        assertEquals(List.of(), path.findings());
    }

    /**
     * Division of sound power at a branch by areas, dB: 10 lg(S/ΣS) (VDI 2081; ASHRAE Handbook, HVAC Applications, table "Duct branch
     * sound power division": area ratio 0.5: 3, 0.2: 7, 0.1: 10, 0.05: 13; from memory, rounded to whole dB there).
     */
    @ParameterizedTest
    @CsvSource({"0.5, 3.0103", "0.2, 6.9897", "0.1, 10", "0.05, 13.0103"})
    void soundDividesAtBranchesAsTheAreasDo(double ratio, double loss) {
        SoundPath path = follow(path("'a', 'b'", bank("fans", "a", "b", ""), hole("branch", "b", "outside", 0.04 * ratio, ""),
                hole("rest", "b", "outside", 0.04 * (1 - ratio), "")));
        assertEquals(loss, -Levels.of(share(path, "fans", "branch")), 1e-4);
        assertEquals(1, total(path, "fans"), 1e-12);
    }

    /**
     * One bay with lining, both by hand: of half the power, the part S/(S + A) of each opening leaves. The intensity on a wall of a room
     * is W/A and its mean square pressure 4W/A (room equation for the reverberant field; Kuttruff, Room Acoustics).
     */
    @Test
    void oneLinedBayIsARoom() {
        SoundPath path = follow(path(bay("box", 0.3), bank("fans", "outside", "box", "'area': 0.1"), hole("out", "box", "outside",
                0.1, "")));
        assertEquals(0.5 * 0.1 / 0.5, share(path, "fans", "out"), 1e-12);
        assertEquals(0.5 + 0.5 * 0.1 / 0.5, share(path, "fans", "fans"), 1e-12);
        assertEquals(1 - 0.5 * 0.3 / 0.5, total(path, "fans"), 1e-12);
        double pressure = Levels.of(4 / 0.5); // over Lw of what enters the bay
        double onWall = pressure - Levels.of(4); // intensity of a diffuse field is a quarter of that of a plane wave
        assertEquals(onWall + Levels.of(0.1), Levels.of(2 * share(path, "fans", "out")), 1e-9);
    }

    /**
     * Two rooms coupled by an opening of 0.05 m², as coupled rooms are solved by hand: (A1 + S) E1 − S E2 = W, (A2 + S) E2 − S E1 = 0
     * (Kuttruff, Room
     * Acoustics, coupled rooms): E2/E1 = S/(A2 + S).
     */
    @Test
    void twoBaysAreCoupledRooms() {
        SoundPath path = follow(path(bay("one", 0.2) + ", " + bay("two", 0.1), bank("fans", "outside", "one", "'area': 0.02"),
                hole("door", "one", "two", 0.05, ""), hole("first", "one", "outside", 0.01, ""), hole("second", "two", "outside",
                        0.01, "")));
        double ratio = share(path, "fans", "second") / share(path, "fans", "first");
        assertEquals(0.05 / (0.1 + 0.01 + 0.05), ratio, 1e-12);
        assertEquals(0.5 * 0.01 / (0.2 + 0.02 + 0.01 + 0.05 - 0.05 * ratio), share(path, "fans", "first"), 1e-12);
    }

    @Test
    void aBankInTheWallRadiatesHalfOfItsPowerItself() {
        SoundPath path = follow(path("'box'", bank("fans", "box", "outside", "'insertionLoss': 20"), hole("in", "outside", "box",
                0.008, "")));
        // what is in the box meets two openings of 80 cm² each; its loss is only for what crosses it
        assertEquals(0.25, share(path, "fans", "in"), 1e-12);
        assertEquals(0.5 + 0.25 * 0.01, share(path, "fans", "fans"), 1e-12);
    }

    @Test
    void aBankFromOutsideToOutsideRadiatesAll() {
        SoundPath path = follow(path("'box'", bank("fans", "outside", "outside", ""), bank("other", "box", "outside", "")));
        assertEquals(1, share(path, "fans", "fans"));
        assertEquals(0, share(path, "fans", "other"));
        assertEquals(1, share(path, "other", "other"), 1e-12);
    }

    @Test
    void soundOfOthersCrossesABank() {
        SoundPath path = follow(path("'a', 'b'", bank("quiet", "a", "b", "'insertionLoss': 10"), bank("loud", "outside", "a",
                "'area': 0.008"),
                hole("out", "b", "outside", 0.05, "")));
        // a: 80 cm² to outside, 80 cm² to b; b: 80 cm² back, 500 cm² out
        double eb = 0.1 * 0.008 / 0.058; // E in b over E in a
        double ea = 0.5 / (0.016 - 0.008 * 0.1 * eb);
        assertEquals(0.05 * eb * ea, share(path, "loud", "out"), 1e-12);
        assertEquals(List.of("quiet", "loud"), path.banks());
    }

    @Test
    void bandsAreApart() {
        SoundPath path = follow(path("'a', 'b'", bank("fans", "a", "b", ""),
                hole("out", "b", "outside", 0.02, "'insertionLoss': '5 10 20 dB', 'lowestBand': '250 Hz', 'tolerance': '1 dB'")));
        double[] share = path.share("fans", path.openings().getFirst());
        double[] loss = Arrays.stream(share).map(each -> -Levels.of(each)).toArray();
        double[] expected = new double[Bands.THIRDS];
        Arrays.fill(expected, 9, 12, 5);
        Arrays.fill(expected, 12, 15, 10);
        Arrays.fill(expected, 15, 18, 20);
        assertArrayEquals(expected, loss, 1e-9);
    }

    /** Tolerances of losses one behind another may add; those of another way count for nothing here. */
    @Test
    void tolerancesAddAlongTheWay() {
        SoundPath path = follow(path("'a', 'b', 'c'", bank("fans", "outside", "a", "'area': 1"),
                hole("filter", "a", "b", 0.001, "'insertionLoss': 10, 'tolerance': 1"), hole("out", "b", "outside", 1,
                        "'insertionLoss': 10, 'tolerance': 3"),
                hole("plain", "a", "outside", 1, "")));
        assertEquals(4, opening(path, "out").tolerance(), 0.01);
        assertEquals(0, opening(path, "plain").tolerance(), 1e-6);
    }

    @Test
    void symmetricBoxesRadiateAlike() {
        SoundPath path = follow(path("'left', 'middle', 'right'", bank("one", "left", "middle", ""), bank("two", "right", "middle", ""),
                hole("a", "outside", "left", 0.01, ""), hole("b", "outside", "right", 0.01, ""), hole("out", "middle", "outside",
                        0.03, "")));
        assertEquals(share(path, "one", "a"), share(path, "two", "b"), 1e-15);
        assertEquals(share(path, "one", "b"), share(path, "two", "a"), 1e-15);
        assertEquals(share(path, "one", "out"), share(path, "two", "out"), 1e-15);
        assertTrue(share(path, "one", "a") > share(path, "one", "b"));
    }

    @Test
    void openingsSayWhatIsStated() {
        SoundPath path = follow(path("'box'", hole("in", "outside", "box", 0.01, "'face': 'front', 'directivity': 'all round'"),
                bank("fans", "box", "outside", "'face': 'rear'")));
        assertEquals(List.of(new Opening("in", Optional.of(Face.FRONT), 0.01, false, false, 0),
                new Opening("fans", Optional.of(Face.REAR), 0.008, false, true, 0)), path.openings());
        assertThrows(IllegalArgumentException.class, () -> path.share("in", path.openings().getFirst()));
    }

    @Test
    void banksAreAsLargeAsTheirMoversTogether() {
        String bank = "'id': 'fans', 'kind': 'bank', 'mover': 'F', 'from': 'box', 'to': 'outside', 'across': 3, 'along': 2";
        assertEquals(0.048, follow(path("'box'", bank)).openings().getFirst().area(), 1e-15);
        SoundPath framed = follow(pathWith("{'id': 'F', 'width': '0.1 m', 'height': '0.2 m', 'curves': [{'flow': '0 1 m³/s',"
                + " 'pressure': '1 0 Pa'}]}",
                "'box'", bank));
        assertEquals(6 * 0.6 * 0.02, framed.openings().getFirst().area(), 1e-15);
        assertTrue(framed.openings().getFirst().assumed());
        assertEquals(List.of("sound crosses bank fans by an area that is assumed from the frame of F: 0.0720 m²"), sentences(framed));
    }

    @Test
    void unknownAreasAreTheMeanOfTheirNeighbours() {
        String bend = "'id': 'bend', 'kind': 'bend', 'from': 'a', 'to': 'outside'";
        SoundPath path = follow(path("'a', 'b'", bank("fans", "a", "b", "'area': 0.01"), hole("out", "a", "outside", 0.03, ""), bend,
                hole("far", "b", "outside", 7, "")));
        assertEquals(0.02, opening(path, "bend").area(), 1e-15);
        assertTrue(opening(path, "bend").assumed());
        assertEquals(List.of("the area that sound goes through at passage bend is not known; 0.0200 m² is counted, the mean of the"
                + " others of its bays"),
                sentences(path));
        assertEquals(Severity.NOTE, path.findings().getFirst().severity());
    }

    @ParameterizedTest
    @ValueSource(strings = {"'kind': 'strange'", "'kind': 'hole'", "'kind': 'hole', 'area': 'wide'", "'kind': 'bend'", "'kind': 'broken'"})
    void passagesThatDoNotReadHaveNoKnownArea(String kind) {
        SoundPath path = follow(path("'a'", "'id': 'out', 'from': 'a', 'to': 'outside', " + kind));
        assertEquals(0.01, path.openings().getFirst().area());
        assertEquals(List.of("the area that sound goes through at passage out is not known; nor is that of any other of its bays;"
                + " 0.0100 m² is counted"),
                sentences(path));
        assertEquals(Severity.CAUTION, path.findings().getFirst().severity());
    }

    @Test
    void ourOwnKindsSayTheirAreas() {
        Design design = path("'box'", "'id': 'in', 'kind': 'opening', 'from': 'outside', 'to': 'box', 'area': '60 cm²'",
                "'id': 'slot', 'kind': 'opening', 'from': 'box', 'to': 'outside', 'width': '100 mm', 'height': '20 mm'",
                "'id': 'fans', 'kind': 'bank', 'mover': 'F', 'from': 'box', 'to': 'outside'");
        SoundPath path = SoundPath.of(design, Condition.NOMINAL, List.of(new OpeningKind(), new BankKind()));
        assertArrayEquals(new double[] {0.006, 0.002, 0.008}, path.openings().stream().mapToDouble(Opening::area).toArray(), 1e-12);
        assertEquals(List.of(), path.findings());
        assertEquals(0.5 * 6 / 16, share(path, "fans", "in"), 1e-12);
    }

    @Test
    void banksWithoutAnyWayOutAreNamed() {
        SoundPath path = follow(path("'a', 'b', 'c', 'd', 'e'", bank("shut", "a", "b", ""), bank("round", "c", "c", ""),
                bank("open", "d", "e", ""),
                hole("out", "e", "outside", 0.01, ""), hole("inner", "a", "b", 0.01, "'insertionLoss': 3")));
        assertEquals(List.of("the sound of bank shut has no way outside: nothing joins bay a or bay b to outside, and none of its"
                + " sound is counted",
                "the sound of bank round has no way outside: nothing joins bay c to outside, and none of its sound is counted"),
                    sentences(path));
        assertEquals(0, total(path, "shut"));
        assertEquals(0, total(path, "round"));
        assertEquals(1, total(path, "open"), 1e-12);
    }

    @Test
    void whatDoesNothingIsSaid() {
        SoundPath path = follow(path("'a', 'b', 'c'", bank("fans", "a", "b", "'face': 'rear'"), hole("out", "b", "outside", 0.01,
                "'inletObstacle': 1"),
                hole("silent", "c", "outside", 0.01, "'insertionLoss': 3"), hole("loop", "b", "b", 0.01, "'insertionLoss': 3"),
                hole("lost", "b", "nowhere", 0.01, ""), hole("sky", "outside", "outside", 0.01, "'insertionLoss': 3")));
        assertEquals(List.of("bank fans states a face of the equipment, but does not lead outside; the face does nothing",
                "passage out states obstacles, but holds no air movers; they do nothing",
                "passage loop states an insertion loss, but no sound crosses it: it joins b to itself",
                "passage lost ends in bay nowhere, which the design does not have; no sound is counted through it",
                "passage sky states an insertion loss, but no sound crosses it: it joins outside to itself",
                "passage silent states an insertion loss, but no sound crosses it: no bank is joined to its bays"), sentences(path));
        assertEquals(List.of("out", "silent"), path.openings().stream().map(Opening::id).toList());
        assertEquals(1, total(path, "fans"), 1e-12);
    }

    @Test
    void aDesignWithNothingInItIsSilent() {
        SoundPath path = SoundPath.of(Design.EMPTY, Condition.NOMINAL, List.of());
        assertEquals(List.of(), path.openings());
        assertEquals(List.of(), path.banks());
        assertEquals(List.of(), path.findings());
    }
}
