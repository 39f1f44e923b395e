package tramontane.acoustics.recording;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import tramontane.physics.sound.Weighting;

class WeightingFilterTest {

    @ParameterizedTest
    @ValueSource(ints = {8000, 44100, 48000, 96000, 192000})
    void respondsAsTheWeightingUpToHalfTheSampleRate(int sampleRate) {
        WeightingFilter filter = new WeightingFilter(sampleRate);
        for (double frequency = 20; frequency < Math.min(20000, 0.49 * sampleRate); frequency *= 1.01) {
            assertEquals(Weighting.A.level(frequency), filter.level(frequency), 0.1, () -> "at " + sampleRate + " Hz");
        }
    }

    @ParameterizedTest
    @ValueSource(doubles = {31.5, 1000, 4000, 15000})
    void sinesComeThroughAsItResponds(double frequency) {
        WeightingFilter filter = new WeightingFilter(48000);
        double[] sine = Wav.sine(48000, 4, frequency, 1);
        double[] out = new double[1000];
        double[] block = new double[1000];
        double sum = 0;
        for (int at = 0; at < sine.length; at += 1000) {
            System.arraycopy(sine, at, block, 0, 1000);
            filter.take(block, 1000, out);
            for (double each : out) {
                sum += at >= sine.length / 2 ? each * each : 0;
            }
        }
        assertEquals(filter.level(frequency), 10 * Math.log10(2 * sum / (sine.length / 2)), 0.005);
    }
}
