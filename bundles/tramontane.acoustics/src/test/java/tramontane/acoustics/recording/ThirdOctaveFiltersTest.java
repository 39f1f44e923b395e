package tramontane.acoustics.recording;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;
import org.junit.jupiter.params.provider.ValueSource;
import tramontane.physics.sound.Bands;

class ThirdOctaveFiltersTest {

    /**
     * Limits of relative attenuation of an octave filter, class 1, IEC 61260-1:2014, table 1: exponent of G of the frequency over the
     * middle, least, most. From memory; those at 0, 1/2, 1 and 4 also as quoted by open implementations. Below the middle they hold
     * at the inverse.
     */
    private static final double[][] LIMITS = {{0, -0.4, 0.4}, {0.125, -0.4, 0.5}, {0.25, -0.4, 0.7}, {0.375, -0.4, 1.4}, {0.5, -0.4, 5.3},
        {0.5, 1.2, Double.POSITIVE_INFINITY}, {1, 16.6, Double.POSITIVE_INFINITY}, {2, 40.5, Double.POSITIVE_INFINITY},
        {3, 60, Double.POSITIVE_INFINITY}, {4, 70, Double.POSITIVE_INFINITY}, {9, 70, Double.POSITIVE_INFINITY}};

    private static final double G = Math.pow(10, 0.3);

    /** Formula (9) and (10): the breakpoint of a third-octave filter. */
    private static double third(double octave) {
        return 1 + (Math.pow(G, 1 / 6.0) - 1) / (Math.sqrt(G) - 1) * (octave - 1);
    }

    private static double[] limits(double ratio) {
        double above = ratio < 1 ? 1 / ratio : ratio;
        for (int i = 0; i + 1 < LIMITS.length; i++) {
            double from = third(Math.pow(G, LIMITS[i][0]));
            double to = third(Math.pow(G, LIMITS[i + 1][0]));
            if (above < to) {
                double part = Math.log(above / from) / Math.log(to / from);
                double most = LIMITS[i + 1][2];
                return new double[] {LIMITS[i][1] + part * (LIMITS[i + 1][1] - LIMITS[i][1]),
                    Double.isInfinite(most) ? most : LIMITS[i][2] + part * (most - LIMITS[i][2])};
            }
        }
        return new double[] {70, Double.POSITIVE_INFINITY};
    }

    @ParameterizedTest
    @ValueSource(ints = {8000, 11025, 16000, 22050, 32000, 44100, 48000, 88200, 96000, 192000})
    void everyBandIsOfClass1(int sampleRate) {
        ThirdOctaveFilters filters = new ThirdOctaveFilters(sampleRate, 60L * sampleRate);
        int bands = 0;
        double margin = Double.POSITIVE_INFINITY;
        for (int third = 0; third < Bands.THIRDS; third++) {
            if (!filters.carries(third)) {
                assertTrue(Bands.upper(third) > 0.48 * sampleRate);
                continue;
            }
            bands++;
            double middle = Bands.middle(third);
            for (double ratio = 0.005; ratio * middle < 0.4999 * sampleRate; ratio *= 1.002) {
                double[] limits = limits(ratio);
                double attenuation = filters.attenuation(third, ratio * middle);
                assertTrue(attenuation >= limits[0] && attenuation <= limits[1],
                        Bands.nominal(third) + " Hz at " + ratio + ": " + attenuation + " beyond " + limits[0] + " .. " + limits[1]);
                margin = Math.min(margin, Math.min(attenuation - limits[0], limits[1] - attenuation));
            }
            assertEquals(0, filters.attenuation(third, middle), 0.02);
            assertEquals(3.0103, filters.attenuation(third, Bands.lower(third)), 1e-4);
            assertEquals(3.0103, filters.attenuation(third, Bands.upper(third)), 1e-4);
        }
        assertTrue(margin > 0.3, "margin " + margin);
        assertTrue(bands >= 22);
    }

    @Test
    void sampleRatesCarryTheBandsTheyCan() {
        assertEquals(30, carried(96000));
        assertEquals(30, carried(48000));
        assertEquals(29, carried(44100));
        assertEquals(28, carried(32000));
        assertEquals(22, carried(8000));
    }

    private static long carried(int sampleRate) {
        ThirdOctaveFilters filters = new ThirdOctaveFilters(sampleRate, 60L * sampleRate);
        return IntStream.range(0, Bands.THIRDS).filter(filters::carries).count();
    }

    @ParameterizedTest
    @CsvFileSource(resources = "filters.csv", delimiter = ';', numLinesToSkip = 3)
    void sectionsRespondAsSciPyDesignsThem(int sampleRate, int third, double rate, double frequency, double response) {
        ThirdOctaveFilters filters = new ThirdOctaveFilters(sampleRate, 60L * sampleRate);
        assertEquals(rate, filters.rate(third));
        // what the halving adds is looked at elsewhere
        double halved = 0;
        for (double higher = sampleRate; higher > rate; higher /= 2) {
            halved -= ThirdOctaveFilters.HalfRate.level(frequency / higher);
        }
        assertEquals(response, halved - filters.attenuation(third, frequency), 1e-6 + 1e-8 * Math.abs(response));
    }

    @Test
    void theTableIsThere() throws IOException {
        try (InputStream table = ThirdOctaveFiltersTest.class.getResourceAsStream("filters.csv")) {
            List<String> lines = new String(table.readAllBytes(), StandardCharsets.UTF_8).lines().toList();
            assertTrue(lines.size() > 280);
        }
    }

    @Test
    void halvingKeepsTheBandAndKeepsOutWhatFolds() {
        for (double frequency = 0; frequency <= 0.125; frequency += 0.001) {
            assertEquals(0, ThirdOctaveFilters.HalfRate.level(frequency), 4e-5);
            assertTrue(ThirdOctaveFilters.HalfRate.level(0.5 - frequency) < -110);
        }
    }

    /** What comes through is what the responses say, by sines in all parts of the chain. */
    @Test
    void sinesComeThroughAsTheResponsesSay() {
        int rate = 48000;
        for (int third : new int[] {0, 4, 13, 20, 24, 27, 29}) {
            for (double ratio : new double[] {0.8, Math.pow(10, -0.05), 1, Math.pow(10, 0.05), 1.25}) {
                double frequency = ratio * Bands.middle(third);
                if (frequency > 23000) {
                    continue;
                }
                ThirdOctaveFilters filters = new ThirdOctaveFilters(rate, 20L * rate);
                double[] sine = Wav.sine(rate, 20, frequency, 1);
                for (int at = 0; at < sine.length; at += 4801) {
                    int count = Math.min(4801, sine.length - at);
                    filters.take(Arrays.copyOfRange(sine, at, at + count), count);
                }
                assertEquals(-filters.attenuation(third, frequency), 10 * Math.log10(2 * filters.meanSquare(third)), 0.01);
            }
        }
    }

    /** White noise reads what its density makes of the width, 0.05 dB more for the skirts. */
    @Test
    void whiteNoiseReadsItsDensity() {
        int rate = 48000;
        SplittableRandom random = new SplittableRandom(3);
        ThirdOctaveFilters filters = new ThirdOctaveFilters(rate, 120L * rate);
        double[] block = new double[rate];
        for (int i = 0; i < 120; i++) {
            Arrays.setAll(block, n -> random.nextGaussian());
            filters.take(block, rate);
        }
        for (int third = 0; third < Bands.THIRDS; third++) {
            double width = Bands.upper(third) - Bands.lower(third);
            double deviation = Measured.Band.deviation(third, filters.time(third));
            assertEquals(10 * Math.log10(width / (rate / 2.0)) + 0.05, 10 * Math.log10(filters.meanSquare(third)), 3.5 * deviation + 0.04);
            assertEquals(120 - 8 / width, filters.time(third), 0.01);
        }
        assertFalse(filters.attenuation(0, 1000) < 70);
    }
}
