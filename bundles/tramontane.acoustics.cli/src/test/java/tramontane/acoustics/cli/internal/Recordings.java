package tramontane.acoustics.cli.internal;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import tramontane.acoustics.recording.Progress;
import tramontane.acoustics.recording.Synthesis;
import tramontane.acoustics.recording.WavWriter;
import tramontane.physics.sound.Spectrum;
import tramontane.physics.sound.ToneInNoise;

/** Recordings to test with. */
final class Recordings {

    /** A noise without steep slopes. */
    static final Spectrum NOISE = Spectrum.ofOctaves(0, 44, 46, 47, 46, 44, 41, 37, 32, 26, 20);

    private Recordings() {
    }

    /** Writes sounds of one gain and gives the level of a full-scale sine as an option says it. */
    static String render(List<Path> files, List<Synthesis.Sound> sounds) {
        Synthesis.Rendered rendered = Synthesis.render(sounds, Synthesis.Request.USUAL, Progress.SILENT);
        try {
            for (int i = 0; i < files.size(); i++) {
                rendered.sounds().get(i).write(files.get(i), WavWriter.Depth.BITS_24);
            }
        } catch (IOException failed) {
            throw new UncheckedIOException(failed);
        }
        return String.format(Locale.ROOT, "%.3f dB", rendered.fullScale());
    }

    static Synthesis.Sound sound(Spectrum noise, ToneInNoise.Tone... tones) {
        return new Synthesis.Sound("sound", noise, List.of(tones));
    }

    /** Sines, each with its amplitude re full scale, in channels of their own. */
    static String sines(Path file, double seconds, double frequency, double... amplitudes) {
        int count = (int) (48000 * seconds);
        double[][] samples = new double[amplitudes.length][count];
        for (int channel = 0; channel < amplitudes.length; channel++) {
            double amplitude = amplitudes[channel];
            Arrays.setAll(samples[channel], i -> amplitude * Math.sin(2 * Math.PI * frequency * i / 48000));
        }
        try (WavWriter writer = WavWriter.create(file, 48000, amplitudes.length, WavWriter.Depth.BITS_24, 1)) {
            writer.write(samples, 0, count);
        } catch (IOException failed) {
            throw new UncheckedIOException(failed);
        }
        return file.toString();
    }
}
