package tramontane.bench;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.OptionalInt;
import java.util.SplittableRandom;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.TearDown;
import tramontane.acoustics.recording.Calibration;
import tramontane.acoustics.recording.Measured;
import tramontane.acoustics.recording.Progress;
import tramontane.acoustics.recording.Recording;
import tramontane.acoustics.recording.RecordingAnalysis;
import tramontane.acoustics.recording.WavWriter;

/** Noise: recordings. */
@State(Scope.Thread)
public class AcousticsBenchmark {

    private static final int RATE = 48000;

    /** A sample of the product; none is needed for recordings. */
    @Param("none")
    public String design;
    /** Number of its case. */
    @Param("0")
    public int number;

    private Path file;

    /** Writes a minute of noise with two tones. */
    @Setup
    public void write() throws IOException {
        SplittableRandom random = new SplittableRandom(1);
        double[] samples = new double[60 * RATE];
        for (int i = 0; i < samples.length; i++) {
            samples[i] = Math.clamp(0.05 * random.nextGaussian() + 0.02 * Math.sin(2 * Math.PI * 291.7 * i / RATE)
                    + 0.01 * Math.sin(2 * Math.PI * 2345.6 * i / RATE), -1, 1);
        }
        file = Files.createTempFile("recording", ".wav");
        try (WavWriter writer = WavWriter.create(file, RATE, 1, WavWriter.Depth.BITS_24, 1)) {
            writer.write(new double[][] {samples}, 0, samples.length);
        }
    }

    /** Removes it. */
    @TearDown
    public void remove() throws IOException {
        Files.delete(file);
    }

    /** Reads and analyses the recording. */
    @Benchmark
    public Measured recording60s() throws IOException {
        Measured measured = RecordingAnalysis.analyse(Recording.open(file), OptionalInt.of(0), Calibration.ofFullScaleSine(114),
                Progress.SILENT);
        if (measured.tones().size() != 2) {
            throw new IllegalStateException("two tones were recorded, found " + measured.tones());
        }
        return measured;
    }
}
