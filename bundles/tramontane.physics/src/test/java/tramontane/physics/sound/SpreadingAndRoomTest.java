package tramontane.physics.sound;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class SpreadingAndRoomTest {

    /** Worked by hand: 10 lg 2πr², 10 lg 4πr². */
    @Test
    void fallsWithDistance() {
        assertEquals(1.9612, Spreading.hemisphere(0.5), 1e-4);
        assertEquals(7.9818, Spreading.hemisphere(1), 1e-4);
        assertEquals(14.0024, Spreading.hemisphere(2), 1e-4);
        assertEquals(20.0230, Spreading.hemisphere(4), 1e-4);
        assertEquals(10.9921, Spreading.sphere(1), 1e-4);
        assertEquals(17.0127, Spreading.sphere(2), 1e-4);
        assertEquals(10 * Math.log10(Spreading.hemisphereSurface(3)), Spreading.hemisphere(3), 1e-12);
    }

    /** Worked by hand: box 0.48 x 0.60 x 0.18 m, 1 m around: a 1.24, b 1.30, c 1.18 m. */
    @Test
    void measuresAroundABox() {
        double area = Spreading.boxSurface(0.48, 0.60, 0.18, 1);
        assertEquals(18.4368, area, 1e-4);
        assertEquals(40 + 12.65686, Spreading.soundPower(40, area, 0, 0), 1e-5);
        assertEquals(40 + 12.65686 - 1.7, Spreading.soundPower(40, area, 0.5, 1.2), 1e-5);
    }

    /** ISO 3744:2010, 8.2.3, from memory: 1.3 dB at most, 0.5 dB at 10 dB, none above 15 dB; worked by hand. */
    @ParameterizedTest
    @CsvSource({"20, 0", "15.01, 0", "15, 0.13956", "10, 0.45757", "6, 1.25628", "5.99, 1.25628", "0, 1.25628", "-3, 1.25628",
        "Infinity, 0", "-Infinity, 1.25628"})
    void takesOffTheBackground(double difference, double expected) {
        assertEquals(expected, Spreading.backgroundCorrection(difference), 1e-5);
    }

    @Property
    void theBackgroundIsTakenOffAsPower(@ForAll @DoubleRange(min = 6, max = 15) double difference,
            @ForAll @DoubleRange(min = -10, max = 80) double background) {
        double level = background + difference;
        assertEquals(Levels.without(level, background), level - Spreading.backgroundCorrection(difference), 1e-9);
    }

    /** Worked by hand: 4S/A = 1 gives 3.0103 dB, 1.511886 the limit of 4 dB, none in the open. */
    @Test
    void takesOffTheRoom() {
        assertEquals(3.0103, Spreading.environmentCorrection(18, 72), 1e-4);
        assertEquals(Spreading.ENVIRONMENT_MOST, Spreading.environmentCorrection(1, 4 / 1.511886), 1e-5);
        assertEquals(0, Spreading.environmentCorrection(18, Double.POSITIVE_INFINITY));
    }

    /** Worked by hand for surfaces and absorptions alone: Rc, Lp − Lw, critical distance; here as rooms of those surfaces. */
    @Test
    void addsWhatTheWallsThrowBack() {
        Room room = Room.of(6, 5, 3, 0.2);
        assertEquals(126, room.surface(), 1e-12);
        assertEquals(31.5, room.constant(7), 1e-9);
        assertEquals(54.5658, 60 + Levels.of(room.transfer(2, 1, 7)), 1e-4);
        assertEquals(51.6037, 60 + Levels.of(room.transfer(2, 3, 7)), 1e-4);
        assertEquals(1.11953, room.criticalDistance(2, 7), 1e-5);
        Room small = Room.of(5, 4, 3, 0.1);
        assertEquals(60, small.volume(), 1e-12);
        assertEquals(94, small.surface(), 1e-12);
        assertEquals(10.4444, small.constant(0), 1e-4);
        assertEquals(56.0517, 60 + Levels.of(small.transfer(1, 2, 0)), 1e-4);
        // at 55.26/0.161 = 343.23 m/s Sabine's factor is 0.161 s/m; 24 ln 10 is 55.2620
        assertEquals(1.02766, small.reverberation(29, 55.2620 / 0.161), 1e-5);
    }

    @Property
    void theDirectFieldIsLeftWhereAllIsAbsorbed(@ForAll @DoubleRange(min = 0.1, max = 30) double distance) {
        Room dead = Room.of(6, 5, 3, 1);
        assertEquals(Spreading.factor(2, distance), dead.transfer(2, distance, 4));
        assertEquals(Double.POSITIVE_INFINITY, dead.criticalDistance(2, 4));
    }

    @Property
    void bothFieldsAreAlikeAtTheCriticalDistance(@ForAll @DoubleRange(min = 0.01, max = 0.99) double absorption,
            @ForAll @DoubleRange(min = 1, max = 8) double directivity) {
        Room room = Room.of(7, 4, 2.6, absorption);
        double critical = room.criticalDistance(directivity, 12);
        assertEquals(room.reverberant(12), Spreading.factor(directivity, critical), 1e-12 * room.reverberant(12));
        assertEquals(4 / room.constant(12), room.reverberant(12), 1e-12 * room.reverberant(12));
        assertTrue(room.transfer(directivity, critical * 1.1, 12) < room.transfer(directivity, critical, 12));
    }

    @Property
    void reverberationAndAbsorptionTellTheSame(@ForAll @DoubleRange(min = 0.01, max = 1) double absorption) {
        Room room = Room.of(7, 4, 2.6, absorption);
        double[] times = new double[Bands.THIRDS];
        Arrays.setAll(times, i -> room.reverberation(i, 343));
        Room other = Room.ofReverberation(7, 4, 2.6, Arrays.stream(times).map(t -> t * (1 + 1e-14)).toArray(), 343);
        assertEquals(absorption, other.absorption()[3], 1e-12);
        assertEquals(room.absorptionArea(5), Room.absorptionArea(room.volume(), times[5], 343), 1e-10);
    }

    @Test
    void isNotChangedFromOutside() {
        double[] absorption = new double[Bands.THIRDS];
        Arrays.fill(absorption, 0.2);
        Room room = new Room(6, 5, 3, absorption);
        absorption[0] = 0.9;
        room.absorption()[1] = 0.9;
        assertEquals(Room.of(6, 5, 3, 0.2), room);
        assertEquals(Room.of(6, 5, 3, 0.2).hashCode(), room.hashCode());
        assertNotEquals(Room.of(6, 5, 3, 0.21), room);
    }

    @Test
    void refusesWhatIsNoRoom() {
        assertThrows(IllegalArgumentException.class, () -> Room.of(0, 5, 3, 0.2));
        assertThrows(IllegalArgumentException.class, () -> Room.of(6, 5, 3, 0));
        assertThrows(IllegalArgumentException.class, () -> Room.of(6, 5, 3, 1.01));
        assertThrows(IllegalArgumentException.class, () -> new Room(6, 5, 3, new double[3]));
        double[] short1 = new double[Bands.THIRDS];
        Arrays.fill(short1, 0.01);
        assertThrows(IllegalArgumentException.class, () -> Room.ofReverberation(6, 5, 3, short1, 343));
        assertThrows(IllegalArgumentException.class, () -> Spreading.sphere(0));
        assertThrows(IllegalArgumentException.class, () -> Spreading.loss(-1, 1));
        assertThrows(IllegalArgumentException.class, () -> Spreading.backgroundCorrection(Double.NaN));
        assertThrows(IllegalArgumentException.class, () -> Spreading.environmentCorrection(1, 0));
    }
}
