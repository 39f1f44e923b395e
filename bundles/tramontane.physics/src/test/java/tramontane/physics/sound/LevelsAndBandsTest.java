package tramontane.physics.sound;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;
import org.junit.jupiter.params.provider.CsvSource;

class LevelsAndBandsTest {

    /** IEC 61260-1:2014 and IEC 61672-1:2013; the weightings tabulated to 0.1 dB, and by poles in the complex plane to 1e-6 dB. */
    @ParameterizedTest
    @CsvFileSource(resources = "bands.csv", delimiter = ';')
    void agreesWithTheStandards(int third, double nominal, double middle, double lower, double upper, double aTable, double a,
            double cTable, double c) {
        assertEquals(nominal, Bands.nominal(third));
        assertEquals(middle, Bands.middle(third), 1e-12 * middle);
        assertEquals(lower, Bands.lower(third), 1e-12 * lower);
        assertEquals(upper, Bands.upper(third), 1e-12 * upper);
        assertEquals(third, Bands.third(middle));
        assertEquals(third, Bands.third(lower * 1.0001));
        assertEquals(third, Bands.third(upper / 1.0001));
        assertEquals(a, Weighting.A.level(middle), 2e-6);
        assertEquals(c, Weighting.C.level(middle), 2e-6);
        assertEquals(0, Weighting.Z.level(middle));
        assertEquals(aTable, Math.round(10 * Weighting.A.level(middle)) / 10.0, 1e-12);
        assertEquals(cTable, Math.round(10 * Weighting.C.level(middle)) / 10.0, 1e-12);
        assertEquals(Levels.power(a), Weighting.A.factor(third), 1e-6 * Levels.power(a));
        if (third % 3 == 1) {
            assertEquals(nominal, Bands.nominalOctave(third / 3));
        }
    }

    /** IEC 61672-1:2013, E.4: A1000 = −2.000 dB and C1000 = −0.062 dB, rounded to 0.001. */
    @Test
    void weightingsAreNoughtAtOneKilohertz() {
        assertEquals(-2.000, 20 * Math.log10(Weighting.A.response(1e6)), 5e-4);
        assertEquals(-0.062, 20 * Math.log10(Weighting.C.response(1e6)), 5e-4);
        assertEquals(0, Weighting.A.level(1000));
        assertEquals(0, Weighting.C.level(1000));
    }

    /** Edges of octaves, IEC 61260-1:2014, worked out from 1000 · 10^(3n/10 ± 3/20). */
    @ParameterizedTest
    @CsvSource({"0, 22.387, 44.668", "1, 44.668, 89.125", "2, 89.125, 177.828", "3, 177.828, 354.813", "4, 354.813, 707.946",
        "5, 707.946, 1412.538", "6, 1412.538, 2818.383", "7, 2818.383, 5623.413", "8, 5623.413, 11220.185", "9, 11220.185, 22387.211"})
    void anOctaveIsThreeThirds(int octave, double lower, double upper) {
        assertEquals(lower, Bands.lower(3 * octave), 1e-3);
        assertEquals(upper, Bands.upper(3 * octave + 2), 1e-3);
    }

    /** Worked by hand from L = 10 lg Σ 10^(Li/10); printed with four decimals. */
    @Test
    void addsPowers() {
        assertEquals(63.0103, Levels.sum(60, 60), 1e-4);
        assertEquals(66.0206, Levels.sum(60, 60, 60, 60), 1e-4);
        assertEquals(60.4139, Levels.sum(60, 50), 1e-4);
        assertEquals(58.4363, Levels.sum(50, 53, 56), 1e-4);
        assertEquals(54.0309, Levels.sum(45, 45, 45, 45, 45, 45, 45, 45), 1e-4);
        assertEquals(53.9629, Levels.mean(50, 56), 1e-4);
        assertEquals(59.5424, Levels.without(60, 50), 1e-4);
        assertEquals(53.3491, Levels.without(55, 50), 1e-4);
        assertEquals(Double.NEGATIVE_INFINITY, Levels.sum());
        assertEquals(60, Levels.sum(60, Double.NEGATIVE_INFINITY), 1e-12);
        assertEquals(Double.NEGATIVE_INFINITY, Levels.without(50, 50));
        assertThrows(IllegalArgumentException.class, Levels::mean);
    }

    /** Worked by hand with the tabulated weightings: 46.6474 dB(A), 52.4372 dB(C), 52.6553 dB. */
    @Test
    void weighsOctaves() {
        Spectrum spectrum = Spectrum.ofOctaves(1, 45, 48, 46, 44, 42, 38, 33, 27);
        // the table is rounded to 0.1 dB: its weightings and the analytic ones of these octaves differ by up to 0.033 and 0.018 dB
        assertEquals(46.6474, spectrum.level(Weighting.A), 0.033);
        // within an octave the C weighting is not that of its middle for the spread that keeps A
        assertEquals(52.4372, spectrum.level(Weighting.C), 0.06);
        assertEquals(52.6553, spectrum.level(), 1e-4);
        double byMiddles = Levels.sum(45 + Weighting.A.level(Bands.middle(4)), 48 + Weighting.A.level(Bands.middle(7)),
                46 + Weighting.A.level(Bands.middle(10)), 44 + Weighting.A.level(Bands.middle(13)), 42,
                38 + Weighting.A.level(Bands.middle(19)), 33 + Weighting.A.level(Bands.middle(22)),
                27 + Weighting.A.level(Bands.middle(25)));
        assertEquals(byMiddles, spectrum.level(Weighting.A), 1e-9);
    }

    @Provide
    Arbitrary<double[]> thirds() {
        return Arbitraries.doubles().between(-20, 90).array(double[].class).ofSize(Bands.THIRDS);
    }

    @Property
    void octavesKeepTheirLevels(@ForAll @IntRange(min = 0, max = 9) int octave, @ForAll @DoubleRange(min = -30, max = 110) double level) {
        Spectrum spectrum = Spectrum.ofOctaves(octave, level);
        assertEquals(level, spectrum.octave(octave), 1e-9);
        assertEquals(level, spectrum.level(), 1e-9);
        assertEquals(level + Weighting.A.level(Bands.middle(3 * octave + 1)), spectrum.level(Weighting.A), 1e-9);
    }

    @Property
    void spectraAddByBand(@ForAll("thirds") double[] first, @ForAll("thirds") double[] other) {
        Spectrum a = Spectrum.ofThirds(0, first);
        Spectrum b = Spectrum.ofThirds(0, other);
        Spectrum both = a.plus(b);
        for (int i = 0; i < Bands.THIRDS; i++) {
            assertEquals(Levels.sum(first[i], other[i]), both.level(i), 1e-9);
        }
        for (Weighting weighting : Weighting.values()) {
            assertEquals(Levels.sum(a.level(weighting), b.level(weighting)), both.level(weighting), 1e-9);
        }
        assertEquals(Levels.sum(both.octaves()), both.level(), 1e-9);
        assertEquals(both, b.plus(a));
        assertEquals(both.hashCode(), b.plus(a).hashCode());
        assertEquals(a, a.plus(Spectrum.SILENCE));
    }

    @Property
    void gainMovesEveryBand(@ForAll("thirds") double[] levels, @ForAll @DoubleRange(min = -40, max = 40) double gain) {
        Spectrum moved = Spectrum.ofThirds(0, levels).gained(gain);
        for (int i = 0; i < Bands.THIRDS; i++) {
            assertEquals(levels[i] + gain, moved.level(i), 1e-9);
        }
        double[] half = new double[Bands.THIRDS];
        Arrays.fill(half, 0.5);
        assertArrayEquals(moved.times(0.5).toArray(), moved.times(half).toArray());
    }

    @Property
    void shiftingKeepsThePower(@ForAll("thirds") double[] levels, @ForAll @DoubleRange(min = 0.05, max = 20) double ratio) {
        Spectrum spectrum = Spectrum.ofThirds(0, levels);
        assertEquals(spectrum.level(), spectrum.shifted(ratio).level(), 1e-9);
    }

    /** A whole number of bands moves each as it is, and back. */
    @Property
    void shiftsByWholeBands(@ForAll("thirds") double[] levels, @ForAll @IntRange(min = -6, max = 6) int bands) {
        double[] inner = levels.clone();
        Arrays.fill(inner, 0, 6, Double.NEGATIVE_INFINITY);
        Arrays.fill(inner, Bands.THIRDS - 6, Bands.THIRDS, Double.NEGATIVE_INFINITY);
        Spectrum moved = Spectrum.ofThirds(0, inner).shifted(Math.pow(10, bands / 10.0));
        for (int i = 6; i < Bands.THIRDS - 6; i++) {
            assertEquals(Levels.power(inner[i]), moved.power(i + bands), 1e-9 * moved.power(Weighting.Z));
        }
    }

    @Test
    void aToneGoesToItsBand() {
        Spectrum one = Spectrum.SILENCE.plus(291.67, 1000);
        assertEquals(30, one.level(11), 1e-12);
        assertEquals(30, one.level(), 1e-12);
        assertEquals(one, one.plus(22, 1000).plus(22388, 1000));
        assertTrue(Spectrum.SILENCE.silent());
        assertFalse(one.silent());
        assertEquals(Double.NEGATIVE_INFINITY, Spectrum.SILENCE.level());
    }

    @Test
    void isNotChangedFromOutside() {
        double[] power = new double[Bands.THIRDS];
        Spectrum spectrum = Spectrum.of(power);
        power[3] = 5;
        spectrum.toArray()[4] = 5;
        assertTrue(spectrum.silent());
    }

    @Test
    void refusesWhatIsNoPower() {
        assertThrows(IllegalArgumentException.class, () -> Spectrum.of(new double[3]));
        assertThrows(IllegalArgumentException.class, () -> Spectrum.SILENCE.plus(1000, -1));
        assertThrows(IllegalArgumentException.class, () -> Spectrum.ofThirds(0, Double.NaN));
        assertThrows(IllegalArgumentException.class, () -> Spectrum.ofThirds(0, 1).times(-1));
        assertThrows(IllegalArgumentException.class, () -> Spectrum.ofThirds(0, Double.POSITIVE_INFINITY));
    }

    @Test
    void bandsHaveNames() {
        assertEquals("31.5 Hz", Bands.octaveName(0));
        assertEquals("500 Hz", Bands.octaveName(4));
        assertEquals("16 kHz", Bands.octaveName(9));
        assertEquals("25 Hz", Bands.name(0));
        assertEquals("1.25 kHz", Bands.name(17));
        assertEquals("20 kHz", Bands.name(29));
        assertEquals("31.5", Bands.hertz(1));
        assertEquals("1250", Bands.hertz(17));
    }

    /** An octave given at its middle keeps its A-weighted level: at 63 Hz that is 26.2 dB less; weighted octaves add up to the whole. */
    @Test
    void octavesCanBeWeighted() {
        Spectrum spectrum = Spectrum.ofOctaves(1, 60, 50, 40);
        assertEquals(60 - 26.2, spectrum.octave(1, Weighting.A), 0.05);
        assertEquals(60, spectrum.octave(1, Weighting.Z), 1e-9);
        double sum = 0;
        for (int octave = 0; octave < Bands.OCTAVES; octave++) {
            sum += spectrum.octavePower(octave, Weighting.A);
        }
        assertEquals(spectrum.power(Weighting.A), sum, 1e-9 * sum);
        assertEquals(Double.NEGATIVE_INFINITY, spectrum.octave(8, Weighting.A));
    }
}
