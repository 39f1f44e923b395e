package tramontane.acoustics.recording;

import java.io.IOException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.OptionalInt;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import tramontane.physics.sound.Bands;
import tramontane.physics.sound.Levels;
import tramontane.physics.sound.ToneInNoise;
import tramontane.physics.sound.Weighting;

/**
 * Levels, bands, lines and tones of a recording.
 *
 * <p>The file is read twice in blocks: first for the constant offset, the peak and clipping, then, without the offset, for the rest.
 * Equivalent levels are sums over the lines, each weighted at its frequency: the exact weighting, where that of a band at its middle is
 * off by some tenths on a slope. Bands come from {@link ThirdOctaveFilters}. Lines are the mean of spectra of pieces that overlap by half
 * or slightly more, under a Hann window, 0.5 Hz to 1 Hz apart (farther in recordings shorter than a piece), raised or lowered together
 * so that their sum is the mean square of all samples: the window would else count the ends of a recording less.
 */
public final class RecordingAnalysis {

    /** Shortest recording that is analysed, s. */
    public static final double SHORTEST = 0.5;
    /** Time constant of the weighting fast, s. IEC 61672-1:2013, 5.8. */
    private static final double FAST = 0.125;
    /** Time in which the weighting in time settles, s: its slowest poles, at 20.6 Hz, by 100 dB. */
    private static final double SETTLING = 0.1;
    private static final int BLOCK = 8192;
    /** By how much softer than the loudest second another is counted as silent, dB. */
    private static final double SILENT = 60;
    /** Mean square of samples below which there is nothing but rounding. */
    private static final double ROUNDING = 1e-24;
    /** Part of the whole that the first reading takes, about. */
    private static final double FIRST = 0.1;

    private RecordingAnalysis() {
    }

    /**
     * Analyses a recording.
     *
     * @param recording   what
     * @param channel     from 0; empty for the mean power of all channels
     * @param calibration what full scale means
     * @param progress    told how far it is; may end it
     * @throws RecordingException where the samples cannot be used
     * @throws IOException        where they cannot be read
     */
    public static Measured analyse(Recording recording, OptionalInt channel, Calibration calibration, Progress progress)
            throws IOException {
        if (channel.isPresent() && (channel.getAsInt() < 0 || channel.getAsInt() >= recording.channels())) {
            throw new IllegalArgumentException("channel " + channel.getAsInt() + " of " + recording.channels());
        }
        if (recording.duration() < SHORTEST) {
            throw new RecordingException(String.format(Locale.ROOT, "The recording lasts %.3f s; %.1f s or more were expected",
                    recording.duration(), SHORTEST));
        }
        int[] chosen = channel.isPresent() ? new int[] {channel.getAsInt()} : IntStream.range(0, recording.channels()).toArray();
        Survey survey = survey(recording, chosen, progress);
        return new Work(recording, chosen, survey).measured(channel, calibration, progress);
    }

    private record Survey(double[] offsets, double peak, long clipped) {
    }

    private static Survey survey(Recording recording, int[] chosen, Progress progress) throws IOException {
        double[][] block = new double[recording.channels()][BLOCK];
        double[] sums = new double[chosen.length];
        // one step below full scale is the largest number that a positive sample can have
        double top = recording.coding().floating() ? 1 : 1 - Math.scalb(1.0, 1 - recording.coding().bits());
        double peak = 0;
        long clipped = 0;
        long done = 0;
        try (Recording.Samples samples = recording.samples()) {
            for (int count = samples.read(block); count > 0; count = samples.read(block)) {
                for (int c = 0; c < chosen.length; c++) {
                    double[] from = block[chosen[c]];
                    double sum = 0;
                    double high = 0;
                    double low = 0;
                    for (int i = 0; i < count; i++) {
                        sum += from[i];
                        high = Math.max(high, from[i]);
                        low = Math.min(low, from[i]);
                    }
                    sums[c] += sum;
                    peak = Math.max(peak, Math.max(high, -low));
                    if (high >= top || low <= -1) {
                        for (int i = 0; i < count; i++) {
                            clipped += from[i] >= top || from[i] <= -1 ? 1 : 0;
                        }
                    }
                }
                done += count;
                progress.at(FIRST * done / recording.frames());
            }
        }
        double[] offsets = Arrays.stream(sums).map(sum -> sum / recording.frames()).toArray();
        return new Survey(offsets, peak, clipped);
    }

    /** The second reading. */
    private static final class Work {

        private final Recording recording;
        private final int[] chosen;
        private final Survey survey;
        private final LineAnalyser lines;
        private final ThirdOctaveFilters[] filters;
        private final WeightingFilter[] weightings;
        private final double[] weighted = new double[BLOCK];
        private final double[] squares = new double[BLOCK];
        private final double forget;
        private final List<Double> seconds = new ArrayList<>();
        private double sum;
        private double fast;
        private double fastest;
        private double second;
        private int inSecond;
        private int unsettled;
        /** How many samples of the first second do not count. */
        private int skipped;

        Work(Recording recording, int[] chosen, Survey survey) {
            this.recording = recording;
            this.chosen = chosen;
            this.survey = survey;
            lines = new LineAnalyser(recording.sampleRate(), recording.frames(), chosen.length);
            filters = new ThirdOctaveFilters[chosen.length];
            Arrays.setAll(filters, i -> new ThirdOctaveFilters(recording.sampleRate(), recording.frames()));
            weightings = new WeightingFilter[chosen.length];
            Arrays.setAll(weightings, i -> new WeightingFilter(recording.sampleRate()));
            unsettled = (int) (SETTLING * recording.sampleRate());
            skipped = unsettled;
            forget = -Math.expm1(-1 / (FAST * recording.sampleRate()));
        }

        Measured measured(OptionalInt channel, Calibration calibration, Progress progress) throws IOException {
            read(progress);
            double factor = calibration.factor();
            double meanSquare = sum / recording.frames();
            Lines raw = lines.lines();
            double shift = meanSquare > 0 && raw.sum() > 0 ? meanSquare / raw.sum() : 1;
            Lines scaled = raw.times(shift * factor);
            List<Measured.Band> bands = bands(factor);
            List<ToneInNoise.Prominence> tones = ToneInNoise.find(scaled.toArray(), scaled.resolution(), standsOut(),
                    ToneInNoise.LEAST_RATIO, rounding(recording.coding()) * factor);
            double offset = Arrays.stream(survey.offsets).reduce(0, (a, b) -> Math.abs(b) > Math.abs(a) ? b : a);
            List<Double> levels = seconds.stream().map(each -> Levels.of(each * factor)).toList();
            Cautions cautions = new Cautions();
            cautions.list.addAll(recording.cautions());
            cautions.clipping(survey.clipped);
            cautions.offset(offset, Math.sqrt(meanSquare));
            cautions.silence(meanSquare);
            cautions.leftOut(Measured.leftOut(bands), recording.sampleRate());
            cautions.chance(bands);
            cautions.lines(lines.pieces(), scaled.resolution(), Levels.of(shift));
            cautions.low(scaled);
            cautions.course(levels);
            return new Measured(recording.name(), recording.duration(), recording.sampleRate(), channel, recording.channels(), calibration,
                    Levels.of(meanSquare * factor), weighted(scaled, Weighting.A), weighted(scaled, Weighting.C),
                    Levels.of(fastest * factor), bands, scaled, Levels.of(shift), lines.pieces(), tones,
                    20 * Math.log10(survey.peak), survey.clipped, offset, levels, cautions.list);
        }

        /**
         * Mean square of the rounding of samples, one step squared over twelve. Of a sound without noise it is no noise but a row of
         * harmonics, any of which may have nearly all of it. As floating point numbers it is far below the deepest tone.
         */
        private static double rounding(Recording.Coding coding) {
            return coding.floating() ? 0 : Math.scalb(1.0, 2 - 2 * coding.bits()) / 12;
        }

        /** What a line must exceed its surroundings by, dB, so that chance makes no tone; the fewer the spectra the more. */
        private double standsOut() {
            // the mean of n exponentially distributed powers exceeds n = 1, 2, 4, 8: 12.7, 10.2, 8.0, 6.0 dB once in 1e8 lines
            return Math.max(ToneInNoise.STANDS_OUT, 12.7 - 7.4 * Math.log10(lines.pieces()));
        }

        private static double weighted(Lines lines, Weighting weighting) {
            return Levels.of(lines.weighted(frequency -> Levels.power(weighting.level(frequency))));
        }

        private void read(Progress progress) throws IOException {
            double[][] block = new double[recording.channels()][BLOCK];
            long done = 0;
            try (Recording.Samples samples = recording.samples()) {
                for (int count = samples.read(block); count > 0; count = samples.read(block)) {
                    Arrays.fill(squares, 0);
                    for (int c = 0; c < chosen.length; c++) {
                        channel(c, block[chosen[c]], count);
                    }
                    detect(count);
                    done += count;
                    progress.at(FIRST + (1 - FIRST) * done / recording.frames());
                }
            }
        }

        private void channel(int c, double[] from, int count) {
            double offset = survey.offsets[c];
            double all = 0;
            for (int i = 0; i < count; i++) {
                from[i] -= offset;
                all += from[i] * from[i];
            }
            sum += all / chosen.length;
            lines.take(c, from, count);
            filters[c].take(from, count);
            weightings[c].take(from, count, weighted);
            for (int i = 0; i < count; i++) {
                squares[i] += weighted[i] * weighted[i] / chosen.length;
            }
        }

        private void detect(int count) {
            double now = fast;
            double most = fastest;
            for (int i = 0; i < count; i++) {
                if (unsettled > 0) {
                    unsettled--;
                    continue;
                }
                now += forget * (squares[i] - now);
                most = Math.max(most, now);
                second += squares[i];
                inSecond++;
                if (inSecond + skipped == recording.sampleRate()) {
                    seconds.add(second / inSecond);
                    second = 0;
                    inSecond = 0;
                    skipped = 0;
                }
            }
            fast = now;
            fastest = most;
        }

        private List<Measured.Band> bands(double factor) {
            List<Measured.Band> bands = new ArrayList<>();
            for (int third = 0; third < Bands.THIRDS; third++) {
                if (filters[0].carries(third)) {
                    double power = 0;
                    for (ThirdOctaveFilters each : filters) {
                        power += each.meanSquare(third) / filters.length;
                    }
                    double time = filters[0].time(third);
                    bands.add(new Measured.Band(third, Levels.of(power * factor), Measured.Band.deviation(third, time), time));
                }
            }
            return bands;
        }
    }

    /** What to know before the figures are used. */
    private static final class Cautions {

        private final List<String> list = new ArrayList<>();

        void clipping(long clipped) {
            if (clipped > 0) {
                add("%d samples are at full scale: the recording was too loud for its gain there; levels and tones may be wrong.", clipped);
            }
        }

        void offset(double offset, double effective) {
            if (Math.abs(offset) > 1e-3 || Math.abs(offset) > 0.1 * effective && effective > 0) {
                add("A constant offset of %.3g %% of full scale was taken off.", 100 * offset);
            }
        }

        void silence(double meanSquare) {
            if (!(meanSquare > ROUNDING)) {
                add("There is no sound in the recording: all samples are equal.");
            }
        }

        void leftOut(List<Double> bands, int sampleRate) {
            if (!bands.isEmpty()) {
                add("A sample rate of %d Hz does not carry these bands, which are left out: %s Hz.", sampleRate, list(bands));
            }
        }

        void chance(List<Measured.Band> bands) {
            List<Double> poor = bands.stream().filter(band -> band.deviation() > 1).map(band -> Bands.nominal(band.third())).toList();
            if (!poor.isEmpty()) {
                add("The recording is too short for some bands, where chance alone makes ± 1 dB or more: %s Hz.", list(poor));
            }
        }

        void lines(int pieces, double resolution, double shift) {
            if (resolution > 1) {
                add("The recording is too short for lines 1 Hz apart; they are %.2f Hz apart.", resolution);
            }
            if (pieces < 8) {
                add("The lines are the mean of %d spectra only; weak tones may be missed, chance peaks be taken for tones.", pieces);
            }
            if (Math.abs(shift) > 0.5) {
                add("The beginning and the end differ from the rest: lines were changed by %.1f dB to agree with the level.", shift);
            }
        }

        void low(Lines lines) {
            double all = lines.sum();
            if (lines.between(0, 20) > 0.5 * all && all > 0) {
                add("More than half of the unweighted power lies below 20 Hz, as of wind or handling.");
            }
        }

        void course(List<Double> seconds) {
            int count = seconds.size();
            double top = seconds.stream().mapToDouble(Double::doubleValue).max().orElse(Double.NEGATIVE_INFINITY);
            if (count < 5 || top == Double.NEGATIVE_INFINITY) {
                return;
            }
            // digital silence has any level down to none
            List<Double> levels = seconds.stream().map(level -> Math.max(level, top - SILENT)).toList();
            double mean = levels.stream().mapToDouble(Double::doubleValue).average().orElseThrow();
            double middle = (count - 1) / 2.0;
            double products = 0;
            double squares = 0;
            for (int i = 0; i < count; i++) {
                products += (i - middle) * (levels.get(i) - mean);
                squares += (i - middle) * (i - middle);
            }
            double slope = products / squares;
            double rest = 0;
            for (int i = 0; i < count; i++) {
                rest += Math.pow(levels.get(i) - mean - slope * (i - middle), 2);
            }
            double change = slope * (count - 1);
            double doubt = (count - 1) * Math.sqrt(rest / (count - 2) / squares);
            if (Math.abs(change) > 1 && Math.abs(change) > 3 * doubt) {
                add("The A-weighted level %s by %.1f dB during the recording.", change > 0 ? "rises" : "falls", Math.abs(change));
            }
            double spread = top - levels.stream().mapToDouble(Double::doubleValue).min().orElseThrow();
            if (spread >= SILENT) {
                add("Some seconds are %.0f dB softer than the loudest, or silent: the sound is not steady.", SILENT);
            } else if (spread > 6) {
                add("The A-weighted levels of single seconds differ by %.1f dB: the sound is not steady.", spread);
            }
        }

        private static String list(List<Double> frequencies) {
            return frequencies.stream().map(each -> Bands.hertz(Bands.third(each))).collect(Collectors.joining(", "));
        }

        private void add(String format, Object... arguments) {
            list.add(String.format(Locale.ROOT, format, arguments));
        }
    }
}
