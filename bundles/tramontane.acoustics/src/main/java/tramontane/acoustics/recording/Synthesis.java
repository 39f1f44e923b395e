package tramontane.acoustics.recording;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.SplittableRandom;
import org.hipparchus.transform.DftNormalization;
import org.hipparchus.transform.FastFourierTransformer;
import org.hipparchus.transform.TransformType;
import tramontane.physics.sound.Bands;
import tramontane.physics.sound.Levels;
import tramontane.physics.sound.Spectrum;
import tramontane.physics.sound.ToneInNoise;

/**
 * Makes sound out of numbers, to compare by ear what was computed.
 *
 * <p>Noise is a sum of lines with the power that its bands ask for and chance phases, one period of which is a power of two of samples,
 * at most {@value #LONGEST_PERIOD}; longer sounds repeat it. Power follows a straight line on logarithmic scales from one middle of a
 * band to the next, moved up or down in each so that filters of class 1 ({@link RecordingAnalysis}) read in it what was asked for: a soft
 * band beside a loud one gets less than it has, as the filter lets in some of the other. A band that is softer than what its filter lets
 * in stays too loud. Tones go on at their own frequency. A sound that is
 * to be repeated without a seam has whole periods only: its tones move to the nearest line, by less than half a line.
 *
 * <p>All sounds rendered together have one gain, so that what is louder is heard louder, and the same chance phases, so that only what
 * differs between them is heard to differ. See {@link #HEARING_CAUTION}: how loud they are at the ear is up to the player; only
 * differences between them mean something, and those only with a player whose response is flat.
 */
public final class Synthesis {

    /** What to tell who is about to listen. */
    public static final String HEARING_CAUTION = "Start with the volume turned down. How loud this is at the ear depends on the player and"
            + " the headphones or loudspeakers: only the differences between these sounds are true. Stop if it is unpleasant.";

    /** Longest period of noise, samples. */
    public static final int LONGEST_PERIOD = 1 << 20;
    /** Longest sound, s. */
    public static final double LONGEST = 120;
    /** Level of the loudest sound where nothing else is asked for, dB re a full-scale sine. */
    public static final double USUAL_LIMIT = -26;
    /** Highest peak, as a part of full scale. */
    public static final double HIGHEST_PEAK = 0.98;

    /** Of balancing bands; each leaves a tenth of what was wrong or less where bands differ by less than 10 dB. */
    private static final int ROUNDS = 40;

    private Synthesis() {
    }

    /**
     * A sound as numbers.
     *
     * @param name  of it
     * @param noise mean square of sound pressure re (20 µPa)² in bands, without the tones
     * @param tones with their mean square of sound pressure re (20 µPa)²
     */
    public record Sound(String name, Spectrum noise, List<ToneInNoise.Tone> tones) {
        /** Copies its list. */
        public Sound {
            tones = List.copyOf(tones);
        }
    }

    /**
     * What is wanted.
     *
     * @param sampleRate Hz, 8000 to 192000
     * @param seconds    how long, 1 to {@value #LONGEST} s; a loop lasts the nearest power of two of samples up to {@value #LONGEST_PERIOD}
     * @param loop       whether the end goes over into the beginning without a seam; such a sound is not faded
     * @param fade       time of fading in, and of fading out, s; at most half the sound
     * @param limit      highest level of the loudest sound, dB re a full-scale sine, at most -3
     * @param seed       of the chance phases: the same seed gives the same samples
     */
    public record Request(int sampleRate, double seconds, boolean loop, double fade, double limit, long seed) {

        /** Ten seconds at 48 kHz, faded for a twentieth of a second. */
        public static final Request USUAL = new Request(48000, 10, false, 0.05, USUAL_LIMIT, 1);

        /** Refuses what cannot be rendered. */
        public Request {
            if (sampleRate < 8000 || sampleRate > 192000 || !(seconds >= 1 && seconds <= LONGEST) || !(fade >= 0 && fade <= seconds / 2)
                    || !(limit <= -3 && limit > -200)) {
                throw new IllegalArgumentException("cannot render " + seconds + " s at " + sampleRate + " Hz, faded for " + fade
                        + " s, limited to " + limit + " dB");
            }
        }

        int frames() {
            long wanted = Math.round(seconds * sampleRate);
            return loop ? (int) Math.min(LONGEST_PERIOD, Long.highestOneBit((long) (wanted * Math.sqrt(2)))) : (int) wanted;
        }

        int period() {
            return (int) Math.min(LONGEST_PERIOD, Long.highestOneBit(2L * frames() - 1));
        }
    }

    /**
     * Sounds at their right relative level.
     *
     * @param sounds    in the order they were asked for
     * @param fullScale sound pressure level that a full-scale sine stands for in all of them, dB re 20 µPa
     * @param request   what was wanted
     * @param notes     what was changed or left out, a sentence each
     */
    public record Rendered(List<Rendering> sounds, double fullScale, Request request, List<String> notes) {
        /** Copies its lists. */
        public Rendered {
            sounds = List.copyOf(sounds);
            notes = List.copyOf(notes);
        }
    }

    /** Samples of one sound. Immutable. */
    public static final class Rendering {

        private final String name;
        private final double[] samples;
        private final int sampleRate;
        private final double level;
        private final double peak;

        Rendering(String name, double[] samples, int sampleRate, double level, double peak) {
            this.name = name;
            this.samples = samples;
            this.sampleRate = sampleRate;
            this.level = level;
            this.peak = peak;
        }

        /** @return name of the sound */
        public String name() {
            return name;
        }

        /** @return samples, full scale is 1; a copy */
        public double[] samples() {
            return samples.clone();
        }

        /** @return samples per second, Hz */
        public int sampleRate() {
            return sampleRate;
        }

        /** @return level before fading, dB re a full-scale sine; negative infinity for silence */
        public double level() {
            return level;
        }

        /** @return largest sample, dB re full scale */
        public double peak() {
            return 20 * Math.log10(peak);
        }

        /** Writes it as a recording of one channel; one that is there is replaced. */
        public void write(Path file, WavWriter.Depth depth) throws IOException {
            try (WavWriter writer = WavWriter.create(file, sampleRate, 1, depth, 1)) {
                writer.write(new double[][] {samples}, 0, samples.length);
            }
        }
    }

    /**
     * Renders sounds that are to be compared.
     *
     * @param sounds   one or more
     * @param request  what is wanted
     * @param progress told how far it is; may end it
     */
    public static Rendered render(List<Sound> sounds, Request request, Progress progress) {
        List<String> notes = new ArrayList<>();
        if (request.frames() > request.period()) {
            notes.add(said("The noise repeats after %.1f s.", request.period() / (double) request.sampleRate()));
        }
        if (request.loop() && Math.abs(request.frames() / (double) request.sampleRate() - request.seconds()) > 0.01) {
            notes.add(said("The loop lasts %.2f s instead of %.2f s.", request.frames() / (double) request.sampleRate(),
                    request.seconds()));
        }
        List<double[]> all = new ArrayList<>();
        double loudest = 0;
        double peak = 0;
        for (int i = 0; i < sounds.size(); i++) {
            progress.at(i / (double) sounds.size());
            double[] samples = samples(sounds.get(i), request, notes);
            all.add(samples);
            loudest = Math.max(loudest, meanSquare(samples));
            peak = Math.max(peak, peak(samples));
        }
        double gain = loudest > 0 ? Math.min(Math.pow(10, request.limit() / 20) / Math.sqrt(2 * loudest), HIGHEST_PEAK / peak) : 1;
        double reached = Levels.of(2 * loudest * gain * gain);
        if (loudest > 0 && reached < request.limit() - 0.05) {
            notes.add(said("The loudest sound is at %.1f dB re a full-scale sine instead of %.1f dB: with more its peaks would be cut off.",
                    reached, request.limit()));
        }
        List<Rendering> renderings = new ArrayList<>();
        for (int i = 0; i < sounds.size(); i++) {
            double[] samples = all.get(i);
            for (int n = 0; n < samples.length; n++) {
                samples[n] *= gain;
            }
            double level = Levels.of(2 * meanSquare(samples));
            if (!request.loop()) {
                fade(samples, (int) Math.round(request.fade() * request.sampleRate()));
            }
            renderings.add(new Rendering(sounds.get(i).name(), samples, request.sampleRate(), level, peak(samples)));
        }
        progress.at(1);
        return new Rendered(renderings, -20 * Math.log10(gain * Math.sqrt(2)), request, notes);
    }

    /** Sound pressure in 20 µPa. */
    private static double[] samples(Sound sound, Request request, List<String> notes) {
        int frames = request.frames();
        int period = request.period();
        SplittableRandom random = new SplittableRandom(request.seed());
        double spacing = request.sampleRate() / (double) period;
        double[] power = lines(sound.noise(), spacing, period / 2);
        double[][] wave = new double[2][period];
        for (int k = 1; k < period / 2; k++) {
            double phase = 2 * Math.PI * random.nextDouble();
            double amplitude = Math.sqrt(2 * power[k]);
            wave[0][k] = amplitude * Math.cos(phase);
            wave[1][k] = amplitude * Math.sin(phase);
        }
        FastFourierTransformer.transformInPlace(wave, DftNormalization.STANDARD, TransformType.FORWARD);
        double[] samples = new double[frames];
        for (int n = 0; n < frames; n++) {
            samples[n] = wave[0][n & period - 1];
        }
        List<Double> missing = new ArrayList<>();
        for (int third = 0; third < Bands.THIRDS; third++) {
            if (sound.noise().power(third) > 0 && Bands.upper(third) > request.sampleRate() / 2.0) {
                missing.add(Bands.nominal(third));
            }
        }
        if (!missing.isEmpty()) {
            notes.add(said("%s: bands from %.0f Hz on are beyond the sample rate and left out.", sound.name(), missing.getFirst()));
        }
        for (ToneInNoise.Tone tone : sound.tones()) {
            double phase = 2 * Math.PI * random.nextDouble();
            if (tone.frequency() > 0.48 * request.sampleRate()) {
                notes.add(said("%s: the tone at %.0f Hz is beyond the sample rate and left out.", sound.name(), tone.frequency()));
                continue;
            }
            double frequency = tone.frequency();
            if (request.loop()) {
                frequency = Math.max(1, Math.rint(frequency / spacing)) * spacing;
                if (Math.abs(frequency - tone.frequency()) > 1e-9 * frequency) {
                    notes.add(said("%s: the tone at %.3f Hz moved to %.3f Hz so that the loop has no seam.", sound.name(), tone.frequency(),
                            frequency));
                }
            }
            add(samples, Math.sqrt(2 * tone.power()), frequency / request.sampleRate(), phase);
        }
        return samples;
    }

    private static void add(double[] samples, double amplitude, double turns, double phase) {
        for (int n = 0; n < samples.length; n++) {
            double turn = turns * n;
            samples[n] += amplitude * Math.cos(2 * Math.PI * (turn - Math.rint(turn)) + phase);
        }
    }

    /** Power of each line, so that filters read in each band what it has. */
    private static double[] lines(Spectrum noise, double spacing, int count) {
        double[] density = new double[Bands.THIRDS];
        for (int third = 0; third < Bands.THIRDS; third++) {
            density[third] = Math.log(noise.power(third) / (Bands.upper(third) - Bands.lower(third)));
        }
        double[] power = new double[count];
        double[][] read = new double[Bands.THIRDS][Bands.THIRDS];
        ThirdOctaveFilters filters = new ThirdOctaveFilters(2 * count * spacing, 0);
        for (int third = 0; third < Bands.THIRDS && Bands.upper(third) <= count * spacing; third++) {
            if (!(noise.power(third) > 0)) {
                continue;
            }
            int first = (int) Math.ceil(Bands.lower(third) / spacing);
            int end = (int) Math.ceil(Bands.upper(third) / spacing);
            double sum = 0;
            for (int k = first; k < end; k++) {
                double from = Bands.position(k * spacing) - third;
                int beside = third + (from < 0 ? -1 : 1);
                boolean known = beside >= 0 && beside < Bands.THIRDS && noise.power(beside) > 0;
                power[k] = Math.exp(known ? Math.abs(from) * (density[beside] - density[third]) : 0);
                sum += power[k];
            }
            for (int k = first; k < end; k++) {
                power[k] /= sum;
            }
            // farther away filters let nothing through
            for (int filter = Math.max(0, third - 4); filter <= Math.min(Bands.THIRDS - 1, third + 4); filter++) {
                if (filters.carries(filter)) {
                    read[filter][third] = read(filters, filter, power, first, end, spacing);
                }
            }
        }
        double[] share = balance(noise, read);
        for (int third = 0; third < Bands.THIRDS && Bands.upper(third) <= count * spacing; third++) {
            int end = (int) Math.ceil(Bands.upper(third) / spacing);
            for (int k = (int) Math.ceil(Bands.lower(third) / spacing); k < end; k++) {
                power[k] *= share[third];
            }
        }
        return power;
    }

    /** What the filter of a band reads of some lines; of wide bands some are looked at. */
    private static double read(ThirdOctaveFilters filters, int filter, double[] power, int first, int end, double spacing) {
        int step = Math.max(1, (end - first) / 250);
        double sum = 0;
        double all = 0;
        for (int k = first; k < end; k += step) {
            sum += power[k] * Levels.power(-filters.attenuation(filter, k * spacing));
            all += power[k];
        }
        return all > 0 ? sum / all : 0;
    }

    /** Power of each band so that filters read what was asked for, and as much more as they read of level noise. */
    private static double[] balance(Spectrum noise, double[][] read) {
        // noise bandwidth of a Butterworth filter over its width
        double level = Math.PI / (2 * ThirdOctaveFilters.ORDER) / Math.sin(Math.PI / (2 * ThirdOctaveFilters.ORDER));
        double[] power = noise.toArray();
        for (int round = 0; round < ROUNDS; round++) {
            double[] next = power.clone();
            for (int filter = 0; filter < Bands.THIRDS; filter++) {
                double sum = 0;
                for (int third = 0; third < Bands.THIRDS; third++) {
                    sum += read[filter][third] * power[third];
                }
                if (sum > 0) {
                    next[filter] *= level * noise.power(filter) / sum;
                }
            }
            power = next;
        }
        return power;
    }

    private static void fade(double[] samples, int count) {
        for (int n = 0; n < count; n++) {
            double factor = 0.5 - 0.5 * Math.cos(Math.PI * n / count);
            samples[n] *= factor;
            samples[samples.length - 1 - n] *= factor;
        }
    }

    private static double meanSquare(double[] samples) {
        double sum = 0;
        for (double each : samples) {
            sum += each * each;
        }
        return sum / samples.length;
    }

    private static double peak(double[] samples) {
        double peak = 0;
        for (double each : samples) {
            peak = Math.max(peak, Math.abs(each));
        }
        return peak;
    }

    private static String said(String format, Object... arguments) {
        return String.format(Locale.ROOT, format, arguments);
    }
}
