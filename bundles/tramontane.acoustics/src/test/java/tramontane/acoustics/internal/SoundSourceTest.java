package tramontane.acoustics.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static tramontane.acoustics.internal.Movers.RATED;
import static tramontane.acoustics.internal.Movers.source;

import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tramontane.acoustics.Emission;
import tramontane.model.AirMover;
import tramontane.physics.sound.Bands;
import tramontane.physics.sound.Levels;
import tramontane.physics.sound.Weighting;

class SoundSourceTest {

    private static final SoundSource.Obstacles CLEAR = SoundSource.Obstacles.NONE;
    private static final String OCTAVES = "'octaves': '45 48 46 44 42 38 33 27 dB'";
    private static final double AIR = 1.2;

    private static Emission free(SoundSource source, double speed) {
        return source.at(speed, 0.05 * speed / RATED, AIR, CLEAR);
    }

    /** ISO 3744 and 3745: 10 lg 4πr² = 10.9921 dB and 10 lg 2πr² = 7.9818 dB at 1 m, 17.0127 and 14.0024 dB at 2 m. */
    @ParameterizedTest
    @CsvSource({"1 m, free field, 10.9921", "1 m, half-space, 7.9818", "2 m, free field, 17.0127", "2 m, half-space, 14.0024"})
    void pressureBecomesPower(String distance, String field, double more) {
        SoundSource source = source("'soundPressure': '30 dB', 'distance': '" + distance + "', 'field': '" + field + "'");
        assertEquals(30 + more, free(source, RATED).level(), 1e-4);
    }

    @Test
    void anUnstatedFieldIsTakenAsFreeAndMayBeThreeDecibelsLess() {
        Emission assumed = free(source("'soundPressure': '30 dB', 'tolerance': '1 dB'"), RATED);
        assertEquals(30 + 10.9921, assumed.level(), 1e-4);
        assertTrue(assumed.assumed().contains(Emission.Assumed.FREE_FIELD));
        assertEquals(1 + 3.0103, assumed.below(), 1e-4);
        assertEquals(1, assumed.above(), 1e-9);
    }

    /** The A-weighted sum of these octaves is 46.6474 dB by the weightings of IEC 61672-1 to 0.1 dB; analytic ones give 46.65. */
    @Test
    void octavesKeepTheirSum() {
        Emission there = free(source(OCTAVES), RATED);
        assertEquals(46.6474, there.level(), 0.02);
        assertEquals(52.6553, there.total().level(), 1e-4);
    }

    /** 50 lg(n2/n1) at like points: 0.5 −15.0515, 0.8 −4.8455, 1.25 +4.8455, 2 +15.0515 dB. */
    @ParameterizedTest
    @CsvSource({"0.5, -15.0515", "0.8, -4.8455", "1.25, 4.8455", "2, 15.0515"})
    void levelsFollowTheSpeedAtLikePoints(double ratio, double gain) {
        SoundSource bands = source(OCTAVES);
        assertEquals(52.6553 + gain, free(bands, ratio * RATED).total().level(), 1e-4);
        SoundSource alone = source("'soundPower': '46 dB'");
        assertEquals(46 + gain, free(alone, ratio * RATED).level(), 1e-4);
    }

    @Test
    void aStatedExponentCounts() {
        SoundSource source = source("'soundPower': '46 dB', 'exponent': 55");
        assertEquals(46 + 16.5566, free(source, 2 * RATED).level(), 1e-4); // 55 lg 2
    }

    /** 70 lg(D2/D1): 1.25 +6.7837 dB; 20 lg of the density 0.909122/1.2: −2.4112 dB. */
    @Test
    void sizeAndDensityCount() {
        SoundSource larger = source("'soundPower': '46 dB', 'rotorDiameter': '0.088 m'");
        assertEquals(46 + 6.7837, free(larger, RATED).level(), 1e-4);
        SoundSource source = source("'soundPower': '46 dB'");
        assertEquals(46 - 2.4112, source.at(RATED, 0.05, 0.909122, CLEAR).level(), 1e-4);
        SoundSource high = source("'soundPower': '46 dB', 'density': '0.909122 kg/m³'");
        assertEquals(46 + 2.4112, free(high, RATED).level(), 1e-4);
    }

    @Test
    void bandsMoveWithTheSpeed() {
        Emission full = free(source("'thirds': '40 dB', 'lowestThird': '1000 Hz'"), RATED);
        Emission half = free(source("'thirds': '40 dB', 'lowestThird': '1000 Hz'"), RATED / Math.pow(10, 0.3));
        assertEquals(40, full.noise().level(Bands.third(1000)), 1e-9);
        assertEquals(40 - 15, half.noise().level(Bands.third(500)), 1e-9); // three thirds down, 50 lg of 10^0.3
    }

    @Test
    void tonesMoveWithTheSpeedAndFixedOnesStay() {
        SoundSource source = source(OCTAVES + ", 'blades': 7, 'tones': [{'order': 7, 'level': '40 dB'}, {'frequency': '100 Hz', 'level': '30 dB',"
                + " 'fixed': true}]");
        Emission full = free(source, RATED);
        Emission fast = free(source, 1.25 * RATED);
        assertEquals(100, full.tones().getFirst().frequency(), 1e-9);
        assertEquals(350, full.tones().getLast().frequency(), 1e-9); // 7 blades, 50 turns in a second
        assertEquals(437.5, fast.tones().getLast().frequency(), 1e-9);
        assertEquals(100, fast.tones().getFirst().frequency(), 1e-9);
        assertEquals(40 + 4.8455, Levels.of(fast.tones().getLast().power()), 1e-4);
        assertEquals(52.6553, full.total().level(), 1e-4, "the octaves include the tones");
    }

    /** Hum is no work of the blades: neither speed nor flow, obstacles nor thin air change it. */
    @Test
    void fixedTonesStayAsLoudAsTheyWereMeasured() {
        SoundSource source = source("'soundPressure': '40 dB', 'field': 'half-space', 'rotorDiameter': '0.1 m', 'tones': [{'order': 7, 'level': '35 dB'},"
                + " {'frequency': '100 Hz', 'level': '30 dB', 'fixed': true}]");
        for (double speed : new double[] {RATED / 3, RATED, 1.5 * RATED}) {
            for (double flow : new double[] {0, 0.03, 0.05}) {
                Emission there = source.at(speed, flow * speed / RATED, 0.9, new SoundSource.Obstacles(0.01, 0.02));
                Emission.Tone hum = there.tones().stream().filter(tone -> tone.order() == 0).findFirst().orElseThrow();
                assertEquals(30 + 7.9818, Levels.of(hum.power()), 1e-4);
                assertEquals(100, hum.frequency(), 1e-9);
                assertEquals(there.level(), there.terms().sum(), 1e-9);
            }
        }
    }

    /** VDI 2081 has its spectrum without the tones of blades: ΔL = −5 − 5 (lg St − 0.3)², St = 2f/ω. */
    @Test
    void anAssumedSpectrumHasNoHoleAtATone() {
        Emission there = free(source("'soundPower': '46 dB', 'tones': [{'order': 7, 'level': '45 dB'}]"), RATED);
        assertEquals(46, there.level(), 1e-9, "the A-weighted level includes the tone");
        for (int third = 1; third < Bands.THIRDS; third++) {
            double step = shape(Bands.middle(third), RATED) - shape(Bands.middle(third - 1), RATED);
            assertEquals(step, there.noise().level(third) - there.noise().level(third - 1), 1e-9);
        }
    }

    @Test
    void anAssumedSpectrumIsThatOfTheSpeed() {
        for (double speed : new double[] {RATED / 4, 0.7 * RATED, 2 * RATED}) {
            Emission there = free(source("'soundPower': '46 dB'"), speed);
            assertEquals(46 + 50 * Math.log10(speed / RATED), there.level(), 1e-9);
            for (int third = 1; third < Bands.THIRDS; third++) {
                double step = shape(Bands.middle(third), speed) - shape(Bands.middle(third - 1), speed);
                assertEquals(step, there.noise().level(third) - there.noise().level(third - 1), 1e-9, "no band falls off the ends");
            }
        }
    }

    private static double shape(double frequency, double speed) {
        double part = Math.log10(2 * frequency / speed) - 0.3;
        return -5 - 5 * part * part;
    }

    private static final String PLENUM = "'points': ["
            + "{'speed': '3000 rpm', 'flow': '0.02 m³/s', 'soundPower': '50 dB'}, {'speed': '3000 rpm', 'flow': '0.04 m³/s', 'soundPower': '46 dB'},"
            + "{'speed': '1500 rpm', 'flow': '0.01 m³/s', 'soundPower': '36 dB'}, {'speed': '1500 rpm', 'flow': '0.02 m³/s', 'soundPower': '31 dB'}]";

    @Test
    void measuredPointsAreMetExactly() {
        SoundSource source = source(PLENUM);
        assertEquals(50, source.at(RATED, 0.02, AIR, CLEAR).level(), 1e-9);
        assertEquals(46, source.at(RATED, 0.04, AIR, CLEAR).level(), 1e-9);
        assertEquals(48, source.at(RATED, 0.03, AIR, CLEAR).level(), 1e-9);
        assertEquals(36, source.at(RATED / 2, 0.01, AIR, CLEAR).level(), 1e-9);
        Emission there = source.at(RATED, 0.03, AIR, CLEAR);
        assertTrue(there.assumed().stream().allMatch(each -> each == Emission.Assumed.SPECTRUM), there.assumed().toString());
        assertEquals(3, there.above(), 1e-9);
    }

    /** Between two speeds that were measured, the two laws meet in between: 50 dB less 50 lg, and 36 dB and 50 lg more. */
    @Test
    void betweenMeasuredSpeedsBothCount() {
        double speed = RATED / Math.sqrt(2);
        double level = source(PLENUM).at(speed, 0.02 / Math.sqrt(2), AIR, CLEAR).level();
        double down = 50 - 50 * Math.log10(Math.sqrt(2));
        double up = 36 + 50 * Math.log10(Math.sqrt(2));
        assertEquals((down + up) / 2, level, 1e-9);
    }

    @Test
    void beyondTheMeasuredFlowsIsSaid() {
        Emission choked = source(PLENUM).at(RATED, 0.012, AIR, CLEAR);
        assertTrue(choked.assumed().contains(Emission.Assumed.FLOW));
        assertTrue(choked.level() > 50);
        assertEquals(3 + 3 + choked.terms().flow() / 2, choked.above(), 1e-9);
        Emission near = source(PLENUM).at(RATED, 0.044, AIR, CLEAR); // half way to a fifth beyond the last flow
        assertTrue(near.assumed().contains(Emission.Assumed.FLOW));
        assertEquals(3 + 1.5, near.above(), 1e-9);
        assertEquals(3 + 1.5, near.below(), 1e-9);
    }

    /** Efficiency is flow times pressure here: 1.8 at 0.03 m³/s, 1.4 at 0.02 (78 %), 0.8 at 0.01 (44 %). */
    @Test
    void leftOfTheBestPointItIsLouder() {
        SoundSource source = source("'soundPower': '46 dB'");
        assertEquals(46, source.at(RATED, 0.045, AIR, CLEAR).level(), 1e-9);
        assertEquals(46, source.at(RATED, 0.03, AIR, CLEAR).level(), 0.01);
        double some = source.at(RATED, 0.02, AIR, CLEAR).level();
        assertTrue(some > 46 + 3 && some < 46 + 9, "handbook: 6 dB from 75 to 84 %, got " + (some - 46));
        assertEquals(46 + 15, source.at(RATED, 0.008, AIR, CLEAR).level(), 0.01);
    }

    @Test
    void dataAtFreeDeliveryMayBeSeveralDecibelsLouderElsewhere() {
        SoundSource source = source("'soundPower': '46 dB'");
        Emission near = source.at(RATED, 0.048, AIR, CLEAR);
        assertEquals(3, near.above(), 1e-9);
        Emission away = source.at(RATED, 0.035, AIR, CLEAR);
        assertEquals(3 + SoundSource.INSTALLED, away.above(), 1e-9);
        assertEquals(3, away.below(), 1e-9);
        assertEquals(3 + SoundSource.INSTALLED / 2, source.at(RATED, 0.04, AIR, CLEAR).above(), 1e-9);
        assertTrue(away.assumed().contains(Emission.Assumed.FREE_DELIVERY));
        Emission best = source("'soundPower': '46 dB', 'at': 'best point'").at(RATED, 0.035, AIR, CLEAR);
        assertEquals(3, best.above(), 1e-9);
    }

    /** A speed or a flow that changes a little must not throw its bounds about. */
    @Test
    void boundsDoNotJump() {
        for (String noise : List.of("'soundPower': '46 dB'", PLENUM, "'points': [{'flow': '0.048 m³/s', 'soundPower': '46 dB'},"
                + " {'flow': '0.05 m³/s', 'soundPower': '47 dB'}]")) {
            SoundSource source = source(noise);
            for (int i = 40; i <= 700; i++) {
                Emission below = source.at(RATED, i * 1e-4 - 1e-7, AIR, CLEAR);
                Emission above = source.at(RATED, i * 1e-4 + 1e-7, AIR, CLEAR);
                assertEquals(below.above(), above.above(), 0.01, noise + i);
                assertEquals(below.below(), above.below(), 0.01, noise + i);
            }
        }
    }

    /** A frame is no rotor: where the part does not state its own, a like mover of another size counts as it was measured. */
    @Test
    void aSizeThatCannotCountIsSaid() {
        AirMover without = Movers.read("{'format': 1, 'airMovers': [{" + Movers.PART.replace("'rotorDiameter': '0.11 m', ", "")
                + ", 'sections': {'noise': {'soundPower': '46 dB', 'rotorDiameter': '0.088 m'}}}], 'airPath': {'bays': [], 'passages': []}}")
                .airMovers().getFirst();
        Emission there = free(SoundSource.of(without, Movers.noise(without)).orElseThrow(), RATED);
        assertTrue(there.assumed().contains(Emission.Assumed.SIZE));
        assertEquals(46, there.level(), 1e-9);
        assertFalse(free(source("'soundPower': '46 dB', 'rotorDiameter': '0.088 m'"), RATED).assumed().contains(Emission.Assumed.SIZE));
    }

    @Test
    void anObstacleOfAPartWithoutASizeIsSaid() {
        AirMover without = Movers.read("{'format': 1, 'airMovers': [{'id': 'F', 'ratedSpeed': '3000 rpm', 'curves': [{'flow': [0, 0.05],"
                + " 'pressure': [100, 0]}], 'sections': {'noise': {'soundPower': '46 dB', 'at': 'best point'}}}],"
                + " 'airPath': {'bays': [], 'passages': []}}").airMovers().getFirst();
        SoundSource source = SoundSource.of(without, Movers.noise(without)).orElseThrow();
        SoundSource.Obstacles near = new SoundSource.Obstacles(Double.POSITIVE_INFINITY, 0.01);
        Emission there = source.at(RATED, 0.05, AIR, near);
        assertTrue(there.assumed().contains(Emission.Assumed.OBSTACLE_SIZE) && !there.assumed().contains(Emission.Assumed.OBSTACLE));
        assertEquals(46, there.level(), 1e-9);
        assertFalse(free(source, RATED).assumed().contains(Emission.Assumed.OBSTACLE_SIZE));
        assertFalse(source("'soundPower': '46 dB'").at(RATED, 0.05, AIR, near).assumed().contains(Emission.Assumed.OBSTACLE_SIZE));
    }

    @Test
    void obstaclesMakeItLouderTonesMost() {
        SoundSource source = source(OCTAVES + ", 'tones': [{'order': 7, 'level': '40 dB'}]");
        Emission clear = free(source, RATED);
        Emission blocked = source.at(RATED, 0.05, AIR, new SoundSource.Obstacles(0.055, Double.POSITIVE_INFINITY));
        assertEquals(2.5, blocked.noise().level() - clear.noise().level(), 1e-9); // half a diameter away: half of 5 dB
        assertEquals(5, Levels.of(blocked.tones().getFirst().power() / clear.tones().getFirst().power()), 1e-9);
        Emission behind = source.at(RATED, 0.05, AIR, new SoundSource.Obstacles(Double.POSITIVE_INFINITY, 0.055));
        assertEquals(1.25, behind.noise().level() - clear.noise().level(), 1e-9);
        assertEquals(clear, source.at(RATED, 0.05, AIR, new SoundSource.Obstacles(0.2, 0.2)));
    }

    @Test
    void theTermsAddUp() {
        SoundSource source = source("'octaves': '45 48 46 44 42 38 33 27 dB', 'rotorDiameter': '0.1 m', 'tones': [{'order': 7, 'level': '40 dB'}]");
        Emission there = source.at(0.7 * RATED, 0.014, 1.0, new SoundSource.Obstacles(0.02, 0.05));
        assertEquals(there.level(), there.terms().sum(), 1e-9);
        assertEquals(20 * Math.log10(1.0 / 1.2), there.terms().density(), 1e-9);
        assertEquals(70 * Math.log10(1.1), there.terms().size(), 1e-9);
        assertTrue(there.terms().flow() > 1 && there.terms().obstacle() > 1 && there.terms().speed() < -5);
    }

    @Property(tries = 200)
    void itIsLouderTheFasterItRuns(@ForAll @DoubleRange(min = 30, max = 900) double speed, @ForAll @DoubleRange(min = 1.01, max = 2) double faster,
            @ForAll @DoubleRange(min = 0, max = 1) double flow) {
        for (SoundSource source : new SoundSource[] {source(OCTAVES), source("'soundPower': '46 dB'"), source(PLENUM)}) {
            double slow = source.at(speed, flow * 0.05 * speed / RATED, AIR, CLEAR).total().level();
            double fast = source.at(speed * faster, flow * 0.05 * speed * faster / RATED, AIR, CLEAR).total().level();
            assertTrue(fast > slow, slow + " " + fast);
        }
    }

    @Property(tries = 200)
    void likePointsDifferByTheSoundLaw(@ForAll @DoubleRange(min = 30, max = 900) double speed, @ForAll @DoubleRange(min = 0, max = 1.2) double flow,
            @ForAll @DoubleRange(min = 0.6, max = 1.4) double density) {
        SoundSource source = source(OCTAVES);
        double here = source.at(RATED, flow * 0.05, AIR, CLEAR).total().level();
        double there = source.at(speed, flow * 0.05 * speed / RATED, density, CLEAR).total().level();
        assertEquals(here + 50 * Math.log10(speed / RATED) + 20 * Math.log10(density / AIR), there, 1e-9);
    }

    @Test
    void weightedBandsAreUnweighted() {
        double weight = Weighting.A.level(Bands.middle(Bands.third(250)));
        Emission plain = free(source("'octaves': '40 dB', 'lowestOctave': '250 Hz'"), RATED);
        Emission weighted = free(source("'octaves': '" + (40 + weight) + " dB', 'lowestOctave': '250 Hz', 'bandWeighting': 'A'"), RATED);
        assertEquals(plain.total().octave(3), weighted.total().octave(3), 1e-9);
    }
}
