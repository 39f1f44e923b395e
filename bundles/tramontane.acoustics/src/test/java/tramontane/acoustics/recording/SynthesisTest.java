package tramontane.acoustics.recording;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tramontane.physics.sound.Bands;
import tramontane.physics.sound.Levels;
import tramontane.physics.sound.Spectrum;
import tramontane.physics.sound.ToneInNoise.Tone;

class SynthesisTest {

    /** As a fan makes it: a hill over the middle. */
    private static final Spectrum FAN = Spectrum.ofThirds(0, 28, 30, 32, 33, 34, 36, 37, 38, 39, 40, 41, 41, 40, 40, 39, 38, 37, 36, 35, 34,
            32, 30, 28, 26, 24, 21, 18, 15, 12, 9);
    /** Up and down by 6 dB. */
    private static final Spectrum JAGGED = Spectrum.ofThirds(0, 40, 46, 40, 46, 40, 46, 40, 46, 40, 46, 40, 46, 40, 46, 40, 46, 40, 46, 40,
            46, 40, 46, 40, 46, 40, 46, 40, 46, 40, 46);
    private static final Synthesis.Request MINUTE = new Synthesis.Request(48000, 60, false, 0, Synthesis.USUAL_LIMIT, 3);

    private static Measured analysed(Synthesis.Rendered rendered, int which) throws IOException {
        return RecordingAnalysis.analyse(Wav.of(rendered.request().sampleRate(), 3, 64, rendered.sounds().get(which).samples()).recording(),
                OptionalInt.of(0), Calibration.ofFullScaleSine(rendered.fullScale()), Progress.SILENT);
    }

    private static Synthesis.Rendered render(Synthesis.Request request, Synthesis.Sound... sounds) {
        return Synthesis.render(List.of(sounds), request, Progress.SILENT);
    }

    private static Synthesis.Sound noise(Spectrum spectrum) {
        return new Synthesis.Sound("noise", spectrum, List.of());
    }

    /** By our filters; chance is what is left of a minute. */
    @Test
    void bandsHaveTheLevelsAskedFor() throws IOException {
        for (int rate : new int[] {48000, 96000}) {
            for (Spectrum asked : List.of(FAN, JAGGED)) {
                Measured measured = analysed(render(new Synthesis.Request(rate, 60, false, 0, -26, 3), noise(asked)), 0);
                for (int third = 0; third < Bands.THIRDS; third++) {
                    double deviation = measured.bands().get(third).deviation();
                    double difference = measured.bands().get(third).level() - asked.level(third);
                    assertEquals(0.05, difference, deviation < 0.06 ? 0.05 : 0.05 + 2.5 * deviation, Bands.nominal(third) + " Hz");
                }
            }
        }
    }

    /** A loop has no chance in it: over whole periods filters read what was asked for, in all bands. */
    @Test
    void bandsOfALoopHaveTheLevelsAskedForWhateverTheirWidth() throws IOException {
        for (Spectrum asked : List.of(FAN, JAGGED)) {
            Synthesis.Rendered rendered = render(new Synthesis.Request(48000, 21.8, true, 0, -26, 4), noise(asked));
            double[] loop = rendered.sounds().getFirst().samples();
            assertEquals(1 << 20, loop.length);
            ThirdOctaveFilters filters = new ThirdOctaveFilters(48000, 4L * loop.length);
            double[] settled = new double[Bands.THIRDS];
            double[] twice = new double[Bands.THIRDS];
            for (int round = 1; round <= 3; round++) {
                filters.take(loop, loop.length);
                for (int third = 0; third < Bands.THIRDS; third++) {
                    settled[third] = twice[third];
                    twice[third] = filters.meanSquare(third) * filters.time(third);
                }
            }
            for (int third = 0; third < Bands.THIRDS; third++) {
                // of the last round alone, a whole period
                double power = (twice[third] - settled[third]) / (loop.length / 48000.0);
                assertEquals(asked.level(third) + 0.05, rendered.fullScale() + Levels.of(2 * power), 0.05, Bands.nominal(third) + " Hz");
            }
        }
    }

    @Test
    void aBandAloneHasItsPower() throws IOException {
        Measured measured = analysed(render(MINUTE, noise(Spectrum.ofThirds(16, 50))), 0);
        assertEquals(50.05, measured.bands().get(16).level(), 0.1);
        assertEquals(measured.level(), Levels.of(measured.lines().between(Bands.lower(16), Bands.upper(16))), 0.02);
        // what a filter loses at the edges of a band that ends there
        assertEquals(50.35, measured.level(), 0.15);
    }

    @Test
    void levelsAddUp() throws IOException {
        Synthesis.Rendered rendered = render(MINUTE, noise(FAN), noise(FAN.gained(-7)), noise(Spectrum.SILENCE));
        assertEquals(FAN.level(), analysed(rendered, 0).level(), 0.05);
        assertEquals(FAN.level() - 7, analysed(rendered, 1).level(), 0.05);
        assertEquals(7, rendered.sounds().get(0).level() - rendered.sounds().get(1).level(), 1e-9);
        assertEquals(Double.NEGATIVE_INFINITY, rendered.sounds().get(2).level());
        assertEquals(-26, rendered.sounds().getFirst().level(), 1e-9);
        assertEquals(FAN.level() + 26, rendered.fullScale(), 0.05);
    }

    @Test
    void tonesHaveTheirFrequencyAndLevel() throws IOException {
        Synthesis.Sound sound = new Synthesis.Sound("fan", FAN, List.of(new Tone(291.6667, Levels.power(52)),
                new Tone(2345.67, Levels.power(45))));
        Measured measured = analysed(render(MINUTE, sound), 0);
        assertEquals(2, measured.tones().size());
        assertEquals(291.6667, measured.tones().get(0).frequency(), 0.02);
        assertEquals(52, measured.tones().get(0).level(), 0.1);
        assertEquals(2345.67, measured.tones().get(1).frequency(), 0.02);
        assertEquals(45, measured.tones().get(1).level(), 0.1);
        // alone, to the last digit of a count of turns
        double[] alone = render(MINUTE, new Synthesis.Sound("tone", Spectrum.SILENCE,
                List.of(new Tone(291.6667, 1)))).sounds().getFirst().samples();
        double re = 0;
        double im = 0;
        for (int i = 0; i < alone.length; i++) {
            re += alone[i] * Math.cos(2 * Math.PI * 291.6667 * i / 48000);
            im += alone[i] * Math.sin(2 * Math.PI * 291.6667 * i / 48000);
        }
        // any difference in frequency over a minute would make this smaller: 0.001 Hz by 0.6 %
        assertEquals(-26, 20 * Math.log10(2 * Math.hypot(re, im) / alone.length), 0.001);
    }

    @Test
    void aLoopHasNoSeam() {
        Synthesis.Sound sound = new Synthesis.Sound("fan", Spectrum.ofThirds(0, 50, 50, 50, 50, 50),
                List.of(new Tone(333.333, Levels.power(50))));
        Synthesis.Rendered rendered = render(new Synthesis.Request(48000, 5, true, 0.5, -26, 5), sound);
        double[] loop = rendered.sounds().getFirst().samples();
        assertEquals(1 << 18, loop.length);
        assertEquals(2, rendered.notes().size(), rendered.notes().toString());
        assertEquals("The loop lasts 5.46 s instead of 5.00 s.", rendered.notes().get(0));
        assertEquals("fan: the tone at 333.333 Hz moved to 333.252 Hz so that the loop has no seam.", rendered.notes().get(1));
        double bend = 0;
        for (int i = 1; i + 1 < loop.length; i++) {
            bend = Math.max(bend, Math.abs(loop[i - 1] - 2 * loop[i] + loop[i + 1]));
        }
        int last = loop.length - 1;
        assertTrue(Math.abs(loop[last - 1] - 2 * loop[last] + loop[0]) <= bend);
        assertTrue(Math.abs(loop[last] - 2 * loop[0] + loop[1]) <= bend);
    }

    @Test
    void nothingClipsAndTheLoudestKeepsTheLimit() {
        for (double limit : new double[] {-3, -12, -26, -60}) {
            Synthesis.Rendered rendered = render(new Synthesis.Request(48000, 5, false, 0.1, limit, 6), noise(FAN.gained(80)),
                    noise(JAGGED));
            double loudest = rendered.sounds().getFirst().level();
            assertTrue(loudest <= limit + 1e-9);
            for (Synthesis.Rendering each : rendered.sounds()) {
                assertTrue(each.peak() <= 20 * Math.log10(0.98) + 1e-9);
            }
            if (limit <= -14) {
                assertEquals(limit, loudest, 1e-9);
                assertEquals(List.of(), rendered.notes());
            } else if (limit == -3) {
                assertTrue(loudest < -9, "peaks limit it: " + loudest);
                assertEquals(List.of(String.format(Locale.ROOT, "The loudest sound is at %.1f dB re a full-scale sine instead of -3.0 dB:"
                        + " with more its peaks would be cut off.", loudest)), rendered.notes());
            }
        }
        assertThrows(IllegalArgumentException.class, () -> new Synthesis.Request(48000, 5, false, 0.1, 0, 6));
        assertThrows(IllegalArgumentException.class, () -> new Synthesis.Request(48000, 5, false, 3, -26, 6));
        assertThrows(IllegalArgumentException.class, () -> new Synthesis.Request(48000, Double.NaN, false, 0, -26, 6));
    }

    @Test
    void seedsDecideAlone() {
        Synthesis.Request request = new Synthesis.Request(48000, 2, false, 0.1, -26, 8);
        double[] once = render(request, noise(FAN)).sounds().getFirst().samples();
        assertArrayEquals(once, render(request, noise(FAN)).sounds().getFirst().samples());
        double[] other = render(new Synthesis.Request(48000, 2, false, 0.1, -26, 9), noise(FAN)).sounds().getFirst().samples();
        assertFalse(Arrays.equals(once, other));
        assertEquals(0, Math.abs(once[0]));
        assertEquals(0, Math.abs(once[once.length - 1]));
    }

    @Test
    void whatTheSampleRateDoesNotCarryIsTold() {
        Synthesis.Rendered rendered = render(new Synthesis.Request(16000, 70, false, 0.1, -26, 8), new Synthesis.Sound("fan", FAN,
                List.of(new Tone(9000, 1))));
        assertEquals(List.of("The noise repeats after 65.5 s.", "fan: bands from 8000 Hz on are beyond the sample rate and left out.",
                "fan: the tone at 9000 Hz is beyond the sample rate and left out."), rendered.notes());
    }

    @Test
    void filesSoundAsTheSamples(@TempDir Path folder) throws IOException {
        Synthesis.Rendered rendered = render(new Synthesis.Request(48000, 10, false, 0, -26, 8), noise(FAN));
        double exact = analysed(rendered, 0).levelA();
        for (WavWriter.Depth depth : WavWriter.Depth.values()) {
            Path file = folder.resolve(depth + ".wav");
            rendered.sounds().getFirst().write(file, depth);
            Measured measured = RecordingAnalysis.analyse(Recording.open(file), OptionalInt.empty(),
                    Calibration.ofFullScaleSine(rendered.fullScale()), Progress.SILENT);
            assertEquals(exact, measured.levelA(), 0.001);
        }
    }
}
