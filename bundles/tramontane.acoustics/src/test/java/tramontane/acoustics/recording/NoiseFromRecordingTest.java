package tramontane.acoustics.recording;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.util.OptionalInt;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import tramontane.physics.sound.Levels;

class NoiseFromRecordingTest {

    private static final Calibration AT_114 = Calibration.ofFullScaleSine(114);

    private static double[] noise(double effective, long seed, double... tones) {
        SplittableRandom random = new SplittableRandom(seed);
        return Wav.signal(48000 * 20, i -> {
            double value = effective * random.nextGaussian();
            for (int k = 0; k < tones.length; k += 2) {
                value += tones[k + 1] * Math.sin(2 * Math.PI * tones[k] * i / 48000);
            }
            return value;
        });
    }

    private static Measured measured(double[] samples) throws IOException {
        return RecordingAnalysis.analyse(Wav.of(48000, 3, 64, samples).recording(), OptionalInt.empty(), AT_114, Progress.SILENT);
    }

    private static double[] sum(double[] a, double[] b) {
        return Wav.signal(a.length, i -> a[i] + b[i]);
    }

    @Test
    void withoutBackgroundLevelsStayAsTheyAre() throws IOException {
        Measured measured = measured(noise(0.01, 1, 700, 0.02));
        NoiseFromRecording noise = NoiseFromRecording.of(measured, 1, NoiseFromRecording.Field.HALF_SPACE, 200);
        assertEquals(measured.spectrum().level(), noise.pressure().level(), 1e-9);
        assertEquals(measured.levelA(), noise.levelA(), 0.1);
        assertEquals(noise.pressure().level() + 7.9818, noise.power().level(), 1e-4);
        assertEquals(noise.pressure().level() + 17.0127,
                NoiseFromRecording.of(measured, 2, NoiseFromRecording.Field.FREE, 200).power().level(), 1e-4);
        assertEquals(1, noise.tones().size());
        assertTrue(noise.tones().getFirst().prominent());
        assertTrue(noise.cautions().contains("The background was not recorded; it is in the levels."));
        assertTrue(noise.cautions().contains("Below 86 Hz the microphone is nearer than a quarter of the wavelength; levels there tell"
                + " little about other distances."));
        // near the edge of two bands, it is in both; without it white noise rises by 1 dB from band to band
        assertTrue(noise.bands().get(14).level() > noise.noise().get(14).level() + 10);
        assertTrue(noise.bands().get(15).level() > noise.noise().get(15).level() + 5);
        for (int third = 12; third < 18; third++) {
            assertEquals(noise.noise().get(20).level() - (20 - third), noise.pressureOfNoise().level(third), 0.4);
        }
        assertFalse(noise.background());
    }

    @Test
    void backgroundIsTakenOff() throws IOException {
        double[] part = noise(0.01, 2);
        for (double below : new double[] {20, 12, 7}) {
            double[] background = noise(0.01 * Math.pow(10, -below / 20), 3);
            NoiseFromRecording noise = NoiseFromRecording.of(measured(sum(part, background)), measured(background), 1,
                    NoiseFromRecording.Field.FREE, 200);
            Measured alone = measured(part);
            for (int third = 8; third < 30; third++) {
                NoiseFromRecording.Band band = noise.bands().get(third);
                // of the sum the background is 10 lg(1 + 10^(-below/10)) further down
                double k1 = below > 15 ? 0 : Levels.of(1 + Levels.power(-below));
                assertEquals(k1, band.taken(), 0.6);
                assertEquals(alone.bands().get(third).level(), band.level(),
                        0.05 + 4 * Math.sqrt(2) * Levels.power(-below / 2) * band.deviation());
                assertFalse(band.upperBound());
                assertTrue(below > 15 ? band.deviation() == alone.bands().get(third).deviation()
                        : band.deviation() > alone.bands().get(third).deviation());
            }
        }
    }

    @Test
    void tooLoudABackgroundLeavesAnUpperBound() throws IOException {
        double[] part = noise(0.01, 4);
        for (double below : new double[] {3, 0, -10}) {
            double[] background = noise(0.01 * Math.pow(10, -below / 20), 5);
            Measured with = measured(sum(part, background));
            NoiseFromRecording noise = NoiseFromRecording.of(with, measured(background), 1, NoiseFromRecording.Field.FREE, 200);
            Measured alone = measured(part);
            for (int third = 6; third < 30; third++) {
                NoiseFromRecording.Band band = noise.bands().get(third);
                assertTrue(band.upperBound());
                assertEquals(1.2563, band.taken(), 1e-4);
                assertEquals(with.bands().get(third).level() - 1.2563, band.level(), 1e-4);
                assertTrue(band.level() > alone.bands().get(third).level() - 4 * band.deviation());
            }
            assertTrue(noise.cautions().stream().anyMatch(each -> each.contains("their levels are upper bounds")));
        }
    }

    @Test
    void aToneOfTheBackgroundIsNotThatOfThePart() throws IOException {
        double[] background = noise(0.001, 6, 1500, 0.02);
        NoiseFromRecording noise = NoiseFromRecording.of(measured(sum(noise(0.005, 7, 700, 0.02), background)), measured(background), 1,
                NoiseFromRecording.Field.FREE, 200);
        assertEquals(2, noise.tones().size());
        assertFalse(noise.tones().get(0).upperBound());
        assertEquals(114 + 20 * Math.log10(0.02), noise.tones().get(0).level(), 0.1);
        assertTrue(noise.tones().get(1).upperBound());
        assertEquals(114 + 20 * Math.log10(0.02) - 1.2563, noise.tones().get(1).level(), 0.1);
    }

    @Test
    void correctionIsThatOfTheStandard() {
        assertEquals(1.2563, NoiseFromRecording.correction(6), 1e-4);
        assertEquals(0.4576, NoiseFromRecording.correction(10), 1e-4);
        assertEquals(0.1396, NoiseFromRecording.correction(15), 1e-4);
        assertEquals(59.5424, 60 - NoiseFromRecording.correction(10), 1e-4);
    }

    @Test
    void withoutCalibrationThereIsNoPressure() throws IOException {
        Measured measured = RecordingAnalysis.analyse(Wav.of(48000, 3, 64, noise(0.01, 8)).recording(), OptionalInt.empty(),
                Calibration.NONE, Progress.SILENT);
        assertEquals("The recording test is not calibrated, so that it gives no sound pressure; a calibration was expected", assertThrows(
                RecordingException.class, () -> NoiseFromRecording.of(measured, 1, NoiseFromRecording.Field.FREE, 200)).getMessage());
        Measured calibrated = measured(noise(0.01, 8));
        assertThrows(IllegalArgumentException.class, () -> NoiseFromRecording.of(calibrated, 0, NoiseFromRecording.Field.FREE, 200));
        assertThrows(IllegalArgumentException.class, () -> NoiseFromRecording.of(calibrated, 1, NoiseFromRecording.Field.FREE, Double.NaN));
    }

    @Test
    void aBackgroundWithoutTheBandsIsRefused() throws IOException {
        Measured slow = RecordingAnalysis.analyse(Wav.of(32000, 3, 64, noise(0.001, 9)).recording(), OptionalInt.empty(), AT_114,
                Progress.SILENT);
        Measured part = measured(noise(0.01, 8));
        assertEquals("The background recording does not have the band of 16000 Hz; a sample rate as high as that of the other was expected",
                assertThrows(RecordingException.class, () -> NoiseFromRecording.of(part, slow, 1, NoiseFromRecording.Field.FREE,
                        200)).getMessage());
    }
}
