package tramontane.acoustics.recording;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.util.List;
import java.util.OptionalInt;
import java.util.SplittableRandom;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;

class CalibrationTest {

    private static Calibrator calibrator(double[] samples) throws IOException {
        return Calibrator.of(Wav.of(48000, 1, 24, samples).recording(), OptionalInt.of(0), Calibrator.USUAL_LEVEL,
                Calibrator.USUAL_FREQUENCY, Progress.SILENT);
    }

    @Test
    void threeWaysToTheSameFullScale() throws IOException {
        // 50 mV/Pa, full scale 5 V: 100 Pa peak, 70.7 Pa effective, 130.97 dB
        Calibration microphone = Calibration.ofMicrophone(0.05, 5);
        assertEquals(100, microphone.pascals(), 1e-12);
        assertEquals(130.9691, microphone.fullScaleSine(), 1e-4);
        assertEquals(100, Calibration.ofFullScaleSine(microphone.fullScaleSine()).pascals(), 1e-9);
        // 94 dB are 1.00237 Pa
        double amplitude = 20e-6 * Math.pow(10, 4.7) * Math.sqrt(2) / 100;
        Calibrator found = calibrator(Wav.sine(48000, 5, 1000.7, amplitude));
        assertEquals(List.of(), found.problems());
        assertEquals(100, found.calibration().orElseThrow().pascals(), 0.01);
        assertEquals(1000.7, found.frequency(), 0.01);
        assertEquals("calibrator 94.0 dB re 20 µPa at 1000 Hz, recorded as test", found.calibration().get().words());
        assertTrue(found.calibration().get().absolute());
    }

    @Test
    void aCalibratorInSomeNoiseStillCalibrates() throws IOException {
        SplittableRandom random = new SplittableRandom(1);
        double[] sine = Wav.sine(48000, 5, 1000, 0.1);
        for (int i = 0; i < sine.length; i++) {
            sine[i] += 0.01 * random.nextGaussian();
        }
        Calibrator found = calibrator(sine);
        assertEquals(List.of(), found.problems());
        assertEquals(-20, found.level(), 0.02);
        assertEquals(0.98, found.share(), 0.002);
    }

    @Test
    void whatIsNoCalibratorIsTold() throws IOException {
        SplittableRandom random = new SplittableRandom(1);
        assertSays("has [0-9] % of the power only", calibrator(Wav.signal(240000, i -> 0.1 * random.nextGaussian())));
        assertSays("Its tone is at 250.0 Hz, not at 1000.0 Hz.", calibrator(Wav.sine(48000, 5, 250, 0.1)));
        assertSays("Its level wanders by [0-9.]+ dB", calibrator(Wav.signal(240000,
                i -> (0.1 + 0.1 * i / 240000) * Math.sin(2 * Math.PI * 1000 * i / 48000))));
        assertSays("Its level wanders by Infinity dB|Its level wanders by [0-9.]+ dB", calibrator(Wav.signal(240000,
                i -> i > 100000 ? 0 : 0.1 * Math.sin(2 * Math.PI * 1000 * i / 48000))));
        assertSays("samples are at full scale",
                calibrator(Wav.signal(240000, i -> Math.clamp(1.1 * Math.sin(2 * Math.PI * 1000 * i / 48000), -1, 1))));
        assertSays("It lasts 1.0 s", calibrator(Wav.sine(48000, 1, 1000, 0.1)));
        assertSays("There is no sound in it", calibrator(new double[240000]));
        double[] two = Wav.sine(48000, 5, 1000, 0.1);
        double[] other = Wav.sine(48000, 5, 3000, 0.05);
        for (int i = 0; i < two.length; i++) {
            two[i] += other[i];
        }
        assertSays("has 80 % of the power only", calibrator(two));
    }

    private static void assertSays(String expected, Calibrator found) {
        assertTrue(found.problems().stream().anyMatch(each -> Pattern.compile(expected).matcher(each).find()),
                found.problems().toString());
        assertTrue(found.calibration().isEmpty());
    }

    @Test
    void whatCannotBeIsRefused() {
        assertFalse(Calibration.NONE.absolute());
        assertThrows(IllegalArgumentException.class, () -> Calibration.ofMicrophone(0, 1));
        assertThrows(IllegalArgumentException.class, () -> Calibration.ofMicrophone(1, Double.NaN));
        assertThrows(IllegalArgumentException.class, () -> Calibration.ofFullScaleSine(Double.NaN));
    }
}
