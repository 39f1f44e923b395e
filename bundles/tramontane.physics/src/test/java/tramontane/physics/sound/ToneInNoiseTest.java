package tramontane.physics.sound;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;
import org.junit.jupiter.params.provider.CsvSource;
import tramontane.physics.sound.ToneInNoise.Prominence;
import tramontane.physics.sound.ToneInNoise.Tone;

class ToneInNoiseTest {

    /** ECMA-418-1, formulas as quoted by an implementation that cites them, worked out by hand. */
    @ParameterizedTest
    @CsvSource({
        " 100,  100.7229,   49.639,  150.361,   20.000,   253.770, 16.330, 19.000,  30.345",
        " 150,  101.6223,   99.189,  200.811,   20.000,   306.483, 14.863, 17.239,  23.004",
        " 200,  102.8734,  148.563,  251.437,   47.940,   359.580, 13.822, 15.990,  21.078",
        " 250,  104.4689,  197.766,  302.234,   96.437,   413.062, 13.015, 15.021,  21.510",
        " 500,  117.2554,  441.372,  558.628,  333.750,   686.250, 10.508, 12.010,  33.513",
        "1000,  162.2167,  922.176, 1084.392,  782.500,  1261.500,  8.000,  9.000,  81.579",
        "2000,  300.7697, 1855.261, 2156.031, 1586.000,  2519.700,  8.000,  9.000,  293.84",
        "4000,  685.4200, 3671.944, 4357.364, 3099.600,  5208.900,  8.000,  9.000, 1521.8",
        "8000, 1705.6594, 7192.499, 8898.159, 5930.000, 11105.700,  8.000,  9.000, NaN",
    })
    void hasTheBandsAndCriteria(double frequency, double critical, double lower, double upper, double lowest, double highest,
            double toneToNoise, double prominenceRatio, double merge) {
        assertEquals(critical, ToneInNoise.criticalBandwidth(frequency), 1e-4);
        // printed to 0.001
        assertEquals(lower, ToneInNoise.lowerEdge(frequency), 5.01e-4);
        assertEquals(upper, ToneInNoise.upperEdge(frequency), 5.01e-4);
        assertEquals(lowest, ToneInNoise.lowerBandEdge(frequency), 5.01e-4);
        assertEquals(highest, ToneInNoise.upperBandEdge(frequency), 5.01e-4);
        assertEquals(toneToNoise, ToneInNoise.toneToNoiseCriterion(frequency), 5.01e-4);
        assertEquals(prominenceRatio, ToneInNoise.prominenceRatioCriterion(frequency), 5.01e-4);
        if (!Double.isNaN(merge)) {
            // printed to five digits
            assertEquals(merge, ToneInNoise.mergeDistance(frequency), 5.01e-5 * merge);
        }
    }

    /** White noise of a density of L0 dB in 1 Hz and one tone, worked out by hand; by a model and by a line spectrum. */
    @ParameterizedTest
    @CsvSource({
        "1000, 50, 20, 42.1010,  7.8990, 8.6555, false, false",
        " 500, 50, 20, 40.6913,  9.3087, 9.7766, false, false",
        " 250, 45, 25, 45.1899, -0.1899, 2.8500, false, false",
        "2000, 40, 15, 39.7823,  0.2177, 2.8996, false, false",
        " 150, 50, 25, 45.0699,  4.9301, 6.0888, false, false",
        "1000, 51, 20, 42.1010,  8.8990, 9.5291, true,  true",
    })
    void judgesOneToneInWhiteNoise(double frequency, double level, double density, double noise, double toneToNoise,
            double prominenceRatio, boolean byToneToNoise, boolean byProminenceRatio) {
        assertEquals(noise, density + Levels.of(ToneInNoise.criticalBandwidth(frequency)), 1e-4);
        List<Prominence> judged = new ArrayList<>(
                ToneInNoise.judge(white(Levels.power(density)), List.of(new Tone(frequency, Levels.power(level)))));
        for (double resolution : new double[] {1, 0.25}) {
            double[] lines = new double[(int) (17000 / resolution)];
            Arrays.fill(lines, Levels.power(density) * resolution);
            lines[(int) (frequency / resolution)] += Levels.power(level);
            judged.addAll(ToneInNoise.find(lines, resolution));
        }
        assertEquals(3, judged.size());
        for (Prominence each : judged) {
            assertEquals(frequency, each.frequency(), 1e-9);
            assertEquals(level, each.level(), 1e-4);
            assertEquals(toneToNoise, each.toneToNoise(), 1e-4);
            assertEquals(prominenceRatio, each.prominenceRatio(), 1e-4);
            assertEquals(byToneToNoise, each.prominentByToneToNoise());
            assertEquals(byProminenceRatio, each.prominentByProminenceRatio());
            assertEquals(byToneToNoise || byProminenceRatio, each.prominent());
            assertEquals(1, each.together());
        }
    }

    /** 162 lines of 1 Hz, the tone in one of them: with its own noise taken off, and not; worked by hand. */
    @Test
    void countsTheLinesOfTheBand() {
        double critical = ToneInNoise.criticalBandwidth(1000);
        assertEquals(7.8990, ToneInNoise.toneToNoise(1e5, 161 * 100, 161, critical), 1e-4);
        assertEquals(7.9034, ToneInNoise.toneToNoise(1e5 + 100, 161 * 100, 161, critical), 1e-4);
    }

    /** Noise stepwise by thirds and several tones, integrated on a grid of 0.01 Hz, to which edges on the grid make up to 0.001 dB. */
    @ParameterizedTest
    @CsvFileSource(resources = "tones.csv", delimiter = ';', maxCharsPerColumn = 8000)
    void judgesSeveralTones(String levels, String tones, String expected) {
        List<Tone> sources = tones(tones);
        assertJudged(expected, ToneInNoise.judge(Spectrum.ofThirds(0, numbers(levels)), sources), 0.002, -100);
        List<Tone> backward = new ArrayList<>(sources);
        Collections.reverse(backward);
        assertJudged(expected, ToneInNoise.judge(Spectrum.ofThirds(0, numbers(levels)), backward), 0.002, -100);
    }

    /** The same as lines of 0.1 Hz, as far as they are taken for tones; each tone lies up to 0.05 Hz off its line. */
    @ParameterizedTest
    @CsvFileSource(resources = "tones.csv", delimiter = ';', maxCharsPerColumn = 8000)
    void findsSeveralTones(String levels, String tones, String expected) {
        double resolution = 0.1;
        Spectrum noise = Spectrum.ofThirds(0, numbers(levels));
        double[] lines = new double[170000];
        for (int k = 200; k < lines.length; k++) {
            int third = Math.max(0, Bands.third(k * resolution));
            lines[k] = noise.power(third) * resolution / (Bands.upper(third) - Bands.lower(third));
        }
        for (Tone tone : tones(tones)) {
            lines[(int) Math.round(tone.frequency() / resolution)] += tone.power();
        }
        assertJudged(expected, ToneInNoise.find(lines, resolution), 0.02, ToneInNoise.LEAST_RATIO);
    }

    private static void assertJudged(String expected, List<Prominence> judged, double tolerance, double least) {
        List<double[]> rows = Arrays.stream(expected.split("\\|")).map(ToneInNoiseTest::numbers).filter(row -> row[2] >= least).toList();
        assertEquals(rows.size(), judged.size(), judged.toString());
        for (int i = 0; i < rows.size(); i++) {
            double[] row = rows.get(i);
            assertEquals(row[0], judged.get(i).frequency(), 0.0501);
            assertEquals(row[1], judged.get(i).level(), tolerance);
            assertEquals(row[2], judged.get(i).toneToNoise(), tolerance);
            assertEquals(row[3], judged.get(i).prominenceRatio(), tolerance);
            assertEquals(row[4], judged.get(i).together());
        }
    }

    /**
     * Gaussian white noise and tones by an averaged transform with Hann's window. With 40 blocks, half overlapped, the noise in a
     * critical band of 100 to 300 lines is known to 0.1 dB, the tone to 0.1 dB by its beat with the noise in its lines: 0.4 dB is
     * three deviations of both. Prominence ratios vary less than twice that.
     */
    @ParameterizedTest
    @CsvSource({"1000, 50, 20", "1000.37, 50, 20", "500.5, 50, 20", "250.25, 48, 20", "2000, 51, 20", "1000.5, 42, 20"})
    void findsATimeSignalsTone(double frequency, double level, double density) {
        List<Prominence> found = ToneInNoise.find(signal(new Random(418), density, new double[] {frequency}, new double[] {level}), 1);
        Prominence expected = ToneInNoise.judge(white(Levels.power(density)), List.of(new Tone(frequency, Levels.power(level)))).get(0);
        assertEquals(1, found.size(), found.toString());
        assertEquals(frequency, found.get(0).frequency(), 0.1);
        assertEquals(level, found.get(0).level(), 0.3);
        assertEquals(expected.toneToNoise(), found.get(0).toneToNoise(), 0.4);
        assertEquals(expected.prominenceRatio(), found.get(0).prominenceRatio(), 0.4);
        // Hann's window: three lines where the tone lies on one, some more where it lies between two
        assertTrue(found.get(0).width() >= 2 && found.get(0).width() <= 8, "" + found.get(0).width());
    }

    /** Noise alone has no tones, and a single transform, whose lines vary most, none that count. */
    @Test
    void findsNothingInNoise() {
        assertEquals(List.of(), ToneInNoise.find(signal(new Random(7), 20, new double[0], new double[0]), 1));
        double[] single = new double[17000];
        Random random = new Random(8);
        for (int k = 0; k < single.length; k++) {
            single[k] = -Math.log(1 - random.nextDouble());
        }
        List<Prominence> found = ToneInNoise.find(single, 1);
        assertTrue(found.stream().noneMatch(Prominence::prominent), found.toString());
    }

    /** Two in one critical band: near ones are one, others are judged each without the other in its noise. */
    @Test
    void partsAndMergesTonesInOneBand() {
        List<Prominence> apart = ToneInNoise.find(signal(new Random(1), 20, new double[] {500, 545}, new double[] {50, 46}), 1);
        assertEquals(2, apart.size(), apart.toString());
        assertEquals(9.3087, apart.get(0).toneToNoise(), 0.4);
        assertEquals(46 - 20 - Levels.of(ToneInNoise.criticalBandwidth(545)), apart.get(1).toneToNoise(), 0.4);
        List<Prominence> near = ToneInNoise.find(signal(new Random(1), 20, new double[] {500, 520}, new double[] {50, 46}), 1);
        assertEquals(1, near.size(), near.toString());
        assertEquals(2, near.get(0).together());
        assertEquals(500, near.get(0).frequency(), 0.1);
        assertEquals(Levels.sum(50, 46) - 40.6913, near.get(0).toneToNoise(), 0.4);
    }

    /** A tone that wavers over several lines counts with all of them, one peak beside a dip with its own side of it. */
    @Test
    void takesAToneAsFarAsItExtends() {
        double[] lines = new double[17000];
        Arrays.fill(lines, 1);
        double[] wavering = {1.5, 3, 20, 60, 45, 70, 30, 8, 2, 0.9};
        for (int i = 0; i < wavering.length; i++) {
            lines[995 + i] = wavering[i];
        }
        Prominence one = ToneInNoise.find(lines, 1).get(0);
        assertEquals(9, one.width());
        assertEquals(Levels.of(1.5 + 3 + 20 + 60 + 45 + 70 + 30 + 8 + 2 - 9), one.level(), 0.01);
        assertEquals(1, one.together());
        double[] two = {2, 30, 200, 10, 150, 20, 2};
        Arrays.fill(lines, 1);
        for (int i = 0; i < two.length; i++) {
            lines[497 + i] = two[i];
        }
        Prominence both = ToneInNoise.find(lines, 1).get(0);
        assertEquals(2, both.together());
        assertEquals(Levels.of(2 + 30 + 200 + 10 + 150 + 20 + 2 - 7), both.level(), 0.03);
        assertEquals(499, both.frequency(), 0.5);
    }

    /** A hump as wide as the critical band is noise. */
    @Test
    void aHumpIsNoTone() {
        double[] lines = new double[17000];
        for (int k = 0; k < lines.length; k++) {
            lines[k] = 1 + 100 * Math.exp(-Math.pow((k - 3000) / 150.0, 2));
        }
        assertEquals(List.of(), ToneInNoise.find(lines, 1));
    }

    @Test
    void judgesWithinItsRangeOnly() {
        List<Tone> tones = List.of(new Tone(89, 1e6), new Tone(89.2, 10), new Tone(11219, 1e4), new Tone(11221, 1e6), new Tone(1000, 0));
        List<Prominence> judged = ToneInNoise.judge(white(1), tones);
        assertEquals(List.of(89.2, 11219.0), judged.stream().map(Prominence::frequency).toList());
        assertEquals(List.of(), ToneInNoise.find(new double[0], 1));
        assertEquals(List.of(), ToneInNoise.find(new double[5], 1));
        assertEquals(List.of(), ToneInNoise.find(new double[20000], 1));
    }

    /** The upper band of 11 220 Hz ends at 16 355 Hz, that of 1 kHz at 1261.5 Hz. */
    @Test
    void leavesOutWhereTheSpectrumEnds() {
        assertEquals(ToneInNoise.HIGHEST, ToneInNoise.reach(16400, 1));
        assertEquals(1000, ToneInNoise.reach(1262, 1), 1e-5);
        double[] lines = new double[1262];
        Arrays.fill(lines, 1);
        lines[990] += 1000;
        assertEquals(1, ToneInNoise.find(lines, 1).size());
        assertEquals(0, ToneInNoise.find(Arrays.copyOf(lines, 1200), 1).size());
        assertEquals(0, ToneInNoise.reach(10, 1), 1e-5);
    }

    @Test
    void aToneWithoutNoiseStandsOutForEver() {
        Prominence model = ToneInNoise.judge(Spectrum.SILENCE, List.of(new Tone(440, 100))).get(0);
        double[] lines = new double[2000];
        lines[440] = 100;
        Prominence found = ToneInNoise.find(lines, 1).get(0);
        for (Prominence each : List.of(model, found)) {
            assertEquals(Double.POSITIVE_INFINITY, each.toneToNoise());
            assertEquals(Double.POSITIVE_INFINITY, each.prominenceRatio());
            assertEquals(20, each.level(), 1e-9);
            assertTrue(each.prominent());
        }
    }

    /** As a window makes of it, lines fall by 60 dB for ten times the distance; without noise they end nowhere, and are no broad hump. */
    @Test
    void aToneIsNotAsWideAsItsSkirts() {
        double[] lines = new double[17000];
        for (int k = 0; k < lines.length; k++) {
            lines[k] = Math.pow(Math.max(1, Math.abs(k - 1000)), -6);
        }
        List<Prominence> found = ToneInNoise.find(lines, 1);
        assertEquals(1, found.size(), found.toString());
        assertEquals(1000, found.getFirst().frequency(), 1e-6);
        assertEquals(21, found.getFirst().width());
        assertEquals(Levels.of(3 + 2.0 / 64 + 2.0 / 729), found.getFirst().level(), 0.01);
    }

    /** A tone of 100 dB; another 99 dB below it counts, one 101 dB below does not, nor what is below a given power. */
    @Test
    void whatIsFarBelowIsNoTone() {
        double[] lines = new double[17000];
        lines[500] = 1e10;
        lines[3000] = Levels.power(1);
        lines[6000] = Levels.power(-1);
        assertEquals(List.of(500.0, 3000.0), ToneInNoise.find(lines, 1).stream().map(Prominence::frequency).toList());
        assertEquals(List.of(500.0), ToneInNoise.find(lines, 1, ToneInNoise.STANDS_OUT, ToneInNoise.LEAST_RATIO, Levels.power(2)).stream()
                .map(Prominence::frequency).toList());
    }

    @Test
    void theThresholdOfHearingIsThatOfTheStandard() {
        assertEquals(2.4, HearingThreshold.level(1000), 1e-9);
        assertEquals(26.5, HearingThreshold.level(100), 1e-9);
        assertEquals(-6.0, HearingThreshold.level(3162.3), 1e-3);
        assertEquals((6.2 + 4.4) / 2, HearingThreshold.level(Bands.upper(12)), 1e-9);
        assertEquals(68.7, HearingThreshold.level(1));
        assertEquals(12.3, HearingThreshold.level(20000));
    }

    @Test
    void refusesWhatIsNoSpectrum() {
        assertThrows(IllegalArgumentException.class, () -> new Tone(0, 1));
        assertThrows(IllegalArgumentException.class, () -> new Tone(100, -1));
        assertThrows(IllegalArgumentException.class, () -> ToneInNoise.find(new double[] {1, Double.NaN}, 1));
        assertThrows(IllegalArgumentException.class, () -> ToneInNoise.find(new double[10], 0));
    }

    record Scene(Spectrum noise, List<Tone> tones) {
    }

    @Provide
    Arbitrary<Scene> scenes() {
        Arbitrary<Spectrum> noise = Arbitraries.doubles().between(0, 60).array(double[].class).ofSize(Bands.THIRDS)
                .map(levels -> Spectrum.ofThirds(0, levels));
        Arbitrary<Tone> tone = Combinators.combine(Arbitraries.doubles().between(50, 12000), Arbitraries.doubles().between(0, 70))
                .as((frequency, level) -> new Tone(frequency, Levels.power(level)));
        return Combinators.combine(noise, tone.list().ofMinSize(1).ofMaxSize(8)).as(Scene::new);
    }

    @Property
    void noiseLowersTheToneToNoiseRatio(@ForAll("scenes") Scene scene, @ForAll @DoubleRange(min = 0.01, max = 10) double more) {
        List<Prominence> before = ToneInNoise.judge(scene.noise(), scene.tones());
        List<Prominence> after = ToneInNoise.judge(scene.noise().plus(white(more)), scene.tones());
        assertEquals(before.size(), after.size());
        for (int i = 0; i < before.size(); i++) {
            assertTrue(after.get(i).toneToNoise() < before.get(i).toneToNoise());
            assertEquals(before.get(i).level(), after.get(i).level());
        }
    }

    @Property
    void louderAltogetherChangesNothing(@ForAll("scenes") Scene scene, @ForAll @DoubleRange(min = -30, max = 30) double gain) {
        List<Prominence> before = ToneInNoise.judge(scene.noise(), scene.tones());
        List<Prominence> after = ToneInNoise.judge(scene.noise().gained(gain),
                scene.tones().stream().map(tone -> new Tone(tone.frequency(), tone.power() * Levels.power(gain))).toList());
        assertSameRatios(before, after, gain);
    }

    @Property(tries = 30)
    void aLouderRecordingChangesNothing(@ForAll @DoubleRange(min = -30, max = 30) double gain, @ForAll long seed) {
        double[] lines = new double[16400];
        Random random = new Random(seed);
        for (int k = 0; k < lines.length; k++) {
            lines[k] = 1 + 0.5 * random.nextDouble();
        }
        for (int i = 0; i < 10; i++) {
            lines[(int) (90 * Math.pow(100, random.nextDouble()))] *= 1000 * random.nextDouble();
        }
        double factor = Levels.power(gain);
        List<Prominence> found = ToneInNoise.find(lines, 1);
        assertFalse(found.isEmpty());
        assertSameRatios(found, ToneInNoise.find(Arrays.stream(lines).map(line -> line * factor).toArray(), 1), gain);
    }

    private static void assertSameRatios(List<Prominence> before, List<Prominence> after, double gain) {
        assertEquals(before.size(), after.size());
        for (int i = 0; i < before.size(); i++) {
            assertEquals(before.get(i).frequency(), after.get(i).frequency(), 1e-8);
            assertEquals(before.get(i).level() + gain, after.get(i).level(), 1e-7);
            assertEquals(before.get(i).toneToNoise(), after.get(i).toneToNoise(), 1e-7);
            assertEquals(before.get(i).prominenceRatio(), after.get(i).prominenceRatio(), 1e-7);
            assertEquals(before.get(i).toneToNoiseExcess(), after.get(i).toneToNoiseExcess(), 1e-7);
            assertEquals(before.get(i).prominenceRatioExcess(), after.get(i).prominenceRatioExcess(), 1e-7);
        }
    }

    private static Spectrum white(double density) {
        double[] power = new double[Bands.THIRDS];
        Arrays.setAll(power, i -> density * (Bands.upper(i) - Bands.lower(i)));
        return Spectrum.of(power);
    }

    private static List<Tone> tones(String text) {
        return Arrays.stream(text.split(" ")).map(each -> each.split(":"))
                .map(pair -> new Tone(Double.parseDouble(pair[0]), Levels.power(Double.parseDouble(pair[1])))).toList();
    }

    private static double[] numbers(String text) {
        return Arrays.stream(text.split(" ")).mapToDouble(Double::parseDouble).toArray();
    }

    /** Mean squares in lines of 1 Hz of white noise of a density, dB in 1 Hz, with tones: 40 blocks of 1 s at 32 768 Hz. */
    private static double[] signal(Random random, double density, double[] frequencies, double[] levels) {
        int n = 1 << 15;
        int blocks = 40;
        double[] signal = new double[n / 2 * (blocks + 1)];
        double deviation = Math.sqrt(Levels.power(density) * n / 2);
        for (int i = 0; i < signal.length; i++) {
            signal[i] = deviation * random.nextGaussian();
            for (int tone = 0; tone < frequencies.length; tone++) {
                signal[i] += Math.sqrt(2 * Levels.power(levels[tone])) * Math.sin(2 * Math.PI * frequencies[tone] * i / n + tone);
            }
        }
        double[] lines = new double[n / 2];
        for (int block = 0; block < blocks; block++) {
            double[] real = new double[n];
            double[] imaginary = new double[n];
            for (int i = 0; i < n; i++) {
                real[i] = signal[block * n / 2 + i] * (1 - Math.cos(2 * Math.PI * i / n));
            }
            transform(real, imaginary);
            // mean square of the window is 3/2
            for (int k = 0; k < lines.length; k++) {
                lines[k] += 2 * (real[k] * real[k] + imaginary[k] * imaginary[k]) / (1.5 * n * (double) n * blocks);
            }
        }
        return lines;
    }

    /** Fast Fourier transform in place; the length is a power of two. */
    private static void transform(double[] real, double[] imaginary) {
        int n = real.length;
        for (int i = 1, j = 0; i < n; i++) {
            int bit = n >> 1;
            for (; (j & bit) != 0; bit >>= 1) {
                j ^= bit;
            }
            j ^= bit;
            if (i < j) {
                double swapped = real[i];
                real[i] = real[j];
                real[j] = swapped;
                swapped = imaginary[i];
                imaginary[i] = imaginary[j];
                imaginary[j] = swapped;
            }
        }
        for (int length = 2; length <= n; length <<= 1) {
            for (int k = 0; k < length / 2; k++) {
                double cosine = Math.cos(-2 * Math.PI * k / length);
                double sine = Math.sin(-2 * Math.PI * k / length);
                for (int start = 0; start < n; start += length) {
                    int a = start + k;
                    int b = a + length / 2;
                    double x = real[b] * cosine - imaginary[b] * sine;
                    double y = real[b] * sine + imaginary[b] * cosine;
                    real[b] = real[a] - x;
                    imaginary[b] = imaginary[a] - y;
                    real[a] += x;
                    imaginary[a] += y;
                }
            }
        }
    }
}
