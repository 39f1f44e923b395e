package tramontane.physics.sound;

import static tramontane.physics.sound.Inputs.positive;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;

/**
 * Is a tone prominent in the noise around it? Tone-to-noise ratio and prominence ratio of ECMA-418-1 (formerly ECMA-74, annex D).
 *
 * <p>Tone-to-noise ratio TNR: level of the tone less that of the noise in the critical band around it. Prominence ratio PR: level of
 * the critical band around the tone less that of the mean of the two bands next to it. Both are ratios in one place: any weighting
 * that is flat over these bands, any distance and any correction for the room drop out. Tones from {@value #LOWEST} Hz to
 * {@value #HIGHEST} Hz are judged. Whether a tone can be heard at all over the threshold of hearing is not asked here; see
 * {@link HearingThreshold}.
 *
 * <p>Formulas of bands, ratios and criteria as quoted by an implementation that cites the standard, equal to memory. Ours, since the
 * standard leaves it open or we do not have it word by word:
 * <ul>
 * <li>Several tones in one critical band: from the strongest on, weaker ones within its critical band and nearer than
 * {@link #mergeDistance} are heard as one with it, all of them, and not judged of their own; those further off are taken out of the
 * noise. (The standard speaks of the strongest and the second.)
 * <li>The noise in the lines of a tone is taken off its power, as much of it as in the rest of the critical band.
 * <li>Lines on the edge of a band count with the part inside.
 * <li>How tones are found in a line spectrum, see {@link #find}.
 * </ul>
 */
public final class ToneInNoise {

    /** Lowest frequency of a tone that is judged, Hz. */
    public static final double LOWEST = 89.1;
    /** Highest, Hz. */
    public static final double HIGHEST = 11220;
    /** By how much a tone stands out, dB, of the lines around it, for {@link #find}. */
    public static final double STANDS_OUT = 6;
    /**
     * Least tone-to-noise ratio of what {@link #find} takes for a tone, dB: 2 dB below where a tone in noise begins to be heard (about
     * −4 dB, from memory), so that chance peaks stay noise.
     */
    public static final double LEAST_RATIO = -6;

    /**
     * How far below all lines together what {@link #find} takes for a tone may be, dB. A window lets nothing through so far off, the
     * rounding of samples in 24 bit or as floating point numbers is below; nobody hears a tone so much softer than the rest.
     */
    public static final double DEEPEST = 100;

    /** Lines of a tone that are softer than its highest by more, 60 dB, count as noise. */
    private static final double SKIRT = 1e-6;

    /** Below it the lower band is cut off at 20 Hz and scaled up to this width, both in Hz. */
    private static final double CUT_BELOW = 171.4;
    private static final double CUT_WIDTH = 100;

    /** Upper edges of the thirds, Hz. */
    private static final double[] UPPER = new double[Bands.THIRDS];

    static {
        Arrays.setAll(UPPER, Bands::upper);
    }

    private ToneInNoise() {
    }

    /** A tone of a source.
     *
     * @param frequency Hz, positive
     * @param power     ratio, not negative */
    public record Tone(double frequency, double power) {
        /** Refuses what is no tone. */
        public Tone {
            positive("frequency of a tone", frequency);
            if (!(power >= 0 && power < Double.POSITIVE_INFINITY)) {
                throw new IllegalArgumentException("power of a tone must be finite and not negative, got " + power);
            }
        }
    }

    /**
     * How a tone stands in the noise.
     *
     * @param frequency       of the tone, of the strongest where several are heard as one, Hz
     * @param level           of the tone or of all that are heard as one, dB
     * @param toneToNoise     TNR, dB; infinity where there is no noise
     * @param prominenceRatio PR, dB; infinity where nothing is in the bands beside
     * @param together        how many tones are heard as one
     * @param width           over which the lines of the strongest extend, Hz; 0 in a model. More than 15 % of the critical bandwidth is
     *                        hardly a tone (limit from memory)
     */
    public record Prominence(double frequency, double level, double toneToNoise, double prominenceRatio, int together, double width) {

        /** @return TNR less its criterion, dB; the tone is prominent from 0 on */
        public double toneToNoiseExcess() {
            return toneToNoise - toneToNoiseCriterion(frequency);
        }

        /** @return PR less its criterion, dB; the tone is prominent from 0 on */
        public double prominenceRatioExcess() {
            return prominenceRatio - prominenceRatioCriterion(frequency);
        }

        /** @return whether the tone is prominent by its tone-to-noise ratio */
        public boolean prominentByToneToNoise() {
            return toneToNoiseExcess() >= 0;
        }

        /** @return whether the tone is prominent by its prominence ratio */
        public boolean prominentByProminenceRatio() {
            return prominenceRatioExcess() >= 0;
        }

        /** @return whether it is prominent by one of both */
        public boolean prominent() {
            return prominentByToneToNoise() || prominentByProminenceRatio();
        }
    }

    /** @param frequency middle, Hz, positive
     *  @return width of the critical band around it: 25 + 75 (1 + 1.4 (f/kHz)²)^0.69, Hz */
    public static double criticalBandwidth(double frequency) {
        double kilohertz = frequency / 1000;
        return 25 + 75 * Math.pow(1 + 1.4 * kilohertz * kilohertz, 0.69);
    }

    /** @param frequency middle, Hz, positive
     *  @return lower edge of the critical band around it, Hz: at even distances up to 500 Hz, at even ratios above */
    public static double lowerEdge(double frequency) {
        double half = criticalBandwidth(frequency) / 2;
        return frequency <= 500 ? frequency - half : Math.hypot(half, frequency) - half;
    }

    /** @param frequency middle, Hz, positive
     *  @return upper edge of the critical band around it, Hz */
    public static double upperEdge(double frequency) {
        double half = criticalBandwidth(frequency) / 2;
        return frequency <= 500 ? frequency + half : Math.hypot(half, frequency) + half;
    }

    /** @param frequency of the tone, Hz, {@value #LOWEST} to {@value #HIGHEST}
     *  @return lower edge of the band below its critical band, Hz */
    public static double lowerBandEdge(double frequency) {
        if (frequency < CUT_BELOW) {
            return 20;
        }
        return frequency <= 1600 ? -149.5 + frequency * (1.001 - 6.90e-5 * frequency) : 6.8 + frequency * (0.806 - 8.20e-6 * frequency);
    }

    /** @param frequency of the tone, Hz, {@value #LOWEST} to {@value #HIGHEST}
     *  @return upper edge of the band above its critical band, Hz */
    public static double upperBandEdge(double frequency) {
        return frequency <= 1600 ? 149.5 + frequency * (1.035 + 7.70e-5 * frequency) : 3.3 + frequency * (1.215 + 2.16e-5 * frequency);
    }

    /** @param frequency of the tone, Hz, positive
     *  @return tone-to-noise ratio from which on it is prominent, dB */
    public static double toneToNoiseCriterion(double frequency) {
        return frequency < 1000 ? 8 + 8.33 * Math.log10(1000 / frequency) : 8;
    }

    /** @param frequency of the tone, Hz, positive
     *  @return prominence ratio from which on it is prominent, dB */
    public static double prominenceRatioCriterion(double frequency) {
        return frequency < 1000 ? 9 + 10 * Math.log10(1000 / frequency) : 9;
    }

    /** @param frequency of the stronger tone, Hz, {@value #LOWEST} or more
     *  @return difference below which another in its critical band is heard as one with it: 21 · 10^(1.2 |lg(f/212 Hz)|^1.8), Hz; from
     *          1040 Hz on that is the whole critical band */
    public static double mergeDistance(double frequency) {
        return 21 * Math.pow(10, 1.2 * Math.pow(Math.abs(Math.log10(frequency / 212)), 1.8));
    }

    /**
     * Tone-to-noise ratio of a tone whose noise is known: 10 lg Wt − 10 lg(Wr Δfc/Δfr), dB; infinity without noise.
     *
     * @param tone     power of the tone Wt, positive
     * @param rest     power in the critical band without the tones Wr, not negative
     * @param width    bandwidth Δfr over which the rest was summed, Hz, positive
     * @param critical bandwidth Δfc, Hz
     */
    public static double toneToNoise(double tone, double rest, double width, double critical) {
        return Levels.of(tone * width / (rest * critical));
    }

    /**
     * Prominence ratio, dB: 10 lg(WM/((WL + WU)/2)), WL of tones below 171.4 Hz scaled from its width down to 20 Hz to 100 Hz.
     *
     * @param frequency of the tone, Hz
     * @param below     power in the band below WL
     * @param middle    power in the critical band WM
     * @param above     power in the band above WU
     */
    public static double prominenceRatio(double frequency, double below, double middle, double above) {
        double scale = frequency < CUT_BELOW ? CUT_WIDTH / (lowerEdge(frequency) - lowerBandEdge(frequency)) : 1;
        return Levels.of(2 * middle / (scale * below + above));
    }

    // In a model -----------------------------------------------------------------------------------------------------------------------

    /**
     * Tones of known power in noise of known third-octaves.
     *
     * <p>The density of the noise is taken as constant within each third, and below the first as in it. Nothing of the tones may be in
     * the noise. Tones beyond the range of frequency are not judged, but count in the bands of others.
     *
     * @param noise without the tones
     * @param tones of all sources; without power they are left out
     * @return those from {@value #LOWEST} Hz to {@value #HIGHEST} Hz that are heard of their own, by frequency
     */
    public static List<Prominence> judge(Spectrum noise, List<Tone> tones) {
        List<Tone> strongest = new ArrayList<>(tones.size());
        for (Tone tone : tones) {
            if (tone.power() > 0) {
                strongest.add(tone);
            }
        }
        strongest.sort(Comparator.comparingDouble(Tone::power).reversed().thenComparingDouble(Tone::frequency));
        boolean[] merged = new boolean[strongest.size()];
        List<Prominence> judged = new ArrayList<>();
        for (int i = 0; i < merged.length; i++) {
            double frequency = strongest.get(i).frequency();
            if (merged[i] || frequency < LOWEST || frequency > HIGHEST) {
                continue;
            }
            judged.add(judge(noise, strongest, i, merged));
        }
        judged.sort(Comparator.comparingDouble(Prominence::frequency));
        return List.copyOf(judged);
    }

    private static Prominence judge(Spectrum noise, List<Tone> strongest, int i, boolean[] merged) {
        double frequency = strongest.get(i).frequency();
        double lower = lowerEdge(frequency);
        double upper = upperEdge(frequency);
        double lowest = lowerBandEdge(frequency);
        double highest = upperBandEdge(frequency);
        double near = mergeDistance(frequency);
        double tone = strongest.get(i).power();
        double rest = power(noise, lower, upper);
        double below = power(noise, lowest, lower);
        double middle = rest + tone;
        double above = power(noise, upper, highest);
        int together = 1;
        for (int j = 0; j < merged.length; j++) {
            double other = strongest.get(j).frequency();
            double power = strongest.get(j).power();
            if (j == i || other < lowest || other > highest) {
                continue;
            }
            if (other < lower) {
                below += power;
            } else if (other > upper) {
                above += power;
            } else {
                middle += power;
                if (j > i && !merged[j] && Math.abs(other - frequency) < near) {
                    merged[j] = true;
                    tone += power;
                    together++;
                }
            }
        }
        return new Prominence(frequency, Levels.of(tone), toneToNoise(tone, rest, upper - lower, upper - lower),
                prominenceRatio(frequency, below, middle, above), together, 0);
    }

    /** Power of the noise between two frequencies; its density is that of the third, below the first that of the first. */
    private static double power(Spectrum noise, double from, double to) {
        double sum = 0;
        double lower = from;
        for (int third = Math.max(0, Bands.third(from)); lower < to && third < Bands.THIRDS; third++) {
            double edge = UPPER[third];
            double upper = Math.min(edge, to);
            sum += noise.power(third) * Math.max(0, upper - lower) / (edge - (third == 0 ? Bands.lower(0) : UPPER[third - 1]));
            lower = upper;
        }
        return sum;
    }

    // In a line spectrum ---------------------------------------------------------------------------------------------------------------

    /** The other {@code find} with {@link #STANDS_OUT} and {@link #LEAST_RATIO}, for tones of any power. */
    public static List<Prominence> find(double[] lines, double resolution) {
        return find(lines, resolution, STANDS_OUT, LEAST_RATIO, 0);
    }

    /**
     * The tones in a line spectrum, and how each stands in the noise.
     *
     * <p>A line k has the power between (k − ½) and (k + ½) times the resolution; all lines together have the power of the sound, whatever
     * window was used. The resolution should be finer than 1 % of the frequency of the tones (from memory), and the spectrum a mean of
     * many: in a single one the noise itself varies by more than a tone stands out.
     *
     * <p>The finding is ours. The noise floor is the median of the lines within a critical band. A tone is a run of lines that exceed the
     * floor by {@code standsOut}, parted where it dips by as much below the peaks on both sides, with the falling lines on its flanks
     * down to the floor or to 60 dB below its peak. Its frequency is the mean of its lines, by power. What is wider than half the
     * critical band or has less than {@code leastRatio} in it is noise, and so is what has less than {@code leastPower} or is
     * {@value #DEEPEST} dB or more below all lines together: what computing leaves of nothing. Where the spectrum ends before the upper band of a tone, that tone is not judged:
     * see {@link #reach}.
     *
     * @param lines      power of each line, not negative, from 0 Hz
     * @param resolution Hz, positive
     * @param standsOut  by how much a tone exceeds the noise floor, dB, positive
     * @param leastRatio least tone-to-noise ratio of a tone, dB
     * @param leastPower least power of a tone, such as that of the rounding of samples, not negative
     * @return the tones that are heard of their own, by frequency
     */
    public static List<Prominence> find(double[] lines, double resolution, double standsOut, double leastRatio, double leastPower) {
        positive("resolution", resolution);
        positive("what stands out", standsOut);
        Lines spectrum = new Lines(lines, resolution);
        double least = Math.max(leastPower, Levels.power(-DEEPEST) * spectrum.sum());
        List<Run> kept = spectrum.runs(Levels.power(standsOut)).stream().filter(run -> run.power() > least).toList();
        int before;
        do {
            // what is dropped is noise to the others, by which their ratios only fall
            before = kept.size();
            List<Run> tones = kept;
            kept = tones.stream().filter(run -> spectrum.ratio(run, tones) >= leastRatio).toList();
        } while (kept.size() < before);
        kept = kept.stream().sorted(Comparator.comparingDouble(Run::power).reversed().thenComparingDouble(Run::frequency)).toList();
        double reach = reach(lines.length, resolution);
        boolean[] merged = new boolean[kept.size()];
        List<Prominence> judged = new ArrayList<>();
        for (int i = 0; i < merged.length; i++) {
            double frequency = kept.get(i).frequency();
            if (merged[i] || frequency < LOWEST || frequency > reach) {
                continue;
            }
            judged.add(spectrum.judge(kept, i, merged));
        }
        judged.sort(Comparator.comparingDouble(Prominence::frequency));
        return List.copyOf(judged);
    }

    /** @param count      number of lines, from 0 Hz
     *  @param resolution Hz
     *  @return highest frequency of a tone that can be judged, at most {@value #HIGHEST} Hz; its upper band ends with the last line */
    public static double reach(int count, double resolution) {
        double end = (count - 0.5) * resolution;
        if (end >= upperBandEdge(HIGHEST)) {
            return HIGHEST;
        }
        double low = 0;
        double high = HIGHEST;
        while (high - low > 1e-9 * HIGHEST) {
            double middle = (low + high) / 2;
            if (upperBandEdge(middle) <= end) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return low;
    }

    /** Lines of one tone, first to last, with their power, noise included. */
    private record Run(int first, int last, double power, double frequency) {
    }

    private static final class Lines {

        private final double[] lines;
        private final double resolution;
        /** Power of the lines before each. */
        private final double[] before;

        Lines(double[] lines, double resolution) {
            this.lines = lines;
            this.resolution = resolution;
            before = new double[lines.length + 1];
            for (int k = 0; k < lines.length; k++) {
                if (!(lines[k] >= 0 && lines[k] < Double.POSITIVE_INFINITY)) {
                    throw new IllegalArgumentException("power of line " + k + " must be finite and not negative, got " + lines[k]);
                }
                before[k + 1] = before[k] + lines[k];
            }
        }

        double sum() {
            return before[lines.length];
        }

        /** Median of the lines within a critical band, at least nine, at some frequencies, straight between them. */
        private double[] floor() {
            double[] floor = new double[lines.length];
            int last = 0;
            double lastMedian = median(0);
            floor[0] = lastMedian;
            while (last < lines.length - 1) {
                int step = Math.max(1, (int) (criticalBandwidth(last * resolution) / (4 * resolution)));
                int next = Math.min(lines.length - 1, last + step);
                double median = median(next);
                for (int k = last + 1; k <= next; k++) {
                    floor[k] = lastMedian + (median - lastMedian) * (k - last) / (next - last);
                }
                last = next;
                lastMedian = median;
            }
            return floor;
        }

        private double median(int line) {
            int half = Math.max(4, (int) (criticalBandwidth(line * resolution) / (2 * resolution)));
            double[] near = Arrays.copyOfRange(lines, Math.max(0, line - half), Math.min(lines.length, line + half + 1));
            Arrays.sort(near);
            return 0.5 * (near[near.length / 2] + near[(near.length - 1) / 2]);
        }

        List<Run> runs(double factor) {
            List<Run> runs = new ArrayList<>();
            if (lines.length == 0) {
                return runs;
            }
            double[] floor = floor();
            int taken = 0;
            int k = 1;
            while (k < lines.length) {
                if (!(lines[k] > factor * floor[k])) {
                    k++;
                    continue;
                }
                int first = k;
                // up to the end of what stands out, or to a dip between two peaks
                double peak = lines[k];
                double low = lines[k];
                int lowest = k;
                int end = k + 1;
                boolean parted = false;
                while (end < lines.length && lines[end] > factor * floor[end]) {
                    if (lines[end] > factor * low && peak > factor * low) {
                        parted = true;
                        break;
                    }
                    if (lines[end] > peak) {
                        peak = lines[end];
                        low = peak;
                        lowest = end;
                    } else if (lines[end] < low) {
                        low = lines[end];
                        lowest = end;
                    }
                    end++;
                }
                int last = parted ? lowest : end - 1;
                k = last + 1;
                while (first - 1 > taken && lines[first - 1] < lines[first] && lines[first - 1] > floor[first - 1]) {
                    first--;
                }
                while (!parted && last + 1 < lines.length && lines[last + 1] < lines[last] && lines[last + 1] > floor[last + 1]
                        && !(lines[last + 1] > factor * floor[last + 1])) {
                    last++;
                }
                k = Math.max(k, last + 1);
                taken = last;
                runs.add(trimmed(first, last));
            }
            return runs;
        }

        /** Without what is far below its peak: where there is no noise the skirts of a window go on for hundreds of lines. */
        private Run trimmed(int first, int last) {
            double peak = 0;
            for (int k = first; k <= last; k++) {
                peak = Math.max(peak, lines[k]);
            }
            int from = first;
            int to = last;
            while (lines[from] < SKIRT * peak) {
                from++;
            }
            while (lines[to] < SKIRT * peak) {
                to--;
            }
            return run(from, to);
        }

        private Run run(int first, int last) {
            double moment = 0;
            double power = 0;
            for (int k = first; k <= last; k++) {
                moment += k * lines[k];
                power += lines[k];
            }
            return new Run(first, last, power, resolution * moment / power);
        }

        private double width(Run run) {
            return (run.last() - run.first() + 1) * resolution;
        }

        /** Power between two frequencies, of the lines on their edges the part between. */
        private double power(double from, double to) {
            return to <= from ? 0 : before(to) - before(from);
        }

        private double before(double frequency) {
            double at = Math.clamp(frequency / resolution + 0.5, 0, lines.length);
            int line = Math.min((int) at, lines.length - 1);
            return before[line] + (at - line) * lines[line];
        }

        /** Density of what is in a band without some runs, and whether anything of it is left, else NaN. */
        private double density(double lower, double upper, List<Run> without) {
            double rest = power(lower, upper);
            double width = upper - Math.max(lower, -0.5 * resolution);
            for (Run run : without) {
                double from = Math.max(lower, (run.first() - 0.5) * resolution);
                double to = Math.min(upper, (run.last() + 0.5) * resolution);
                if (to > from) {
                    rest -= power(from, to);
                    width -= to - from;
                }
            }
            // what differences of sums leave of nothing
            return width <= 0 ? Double.NaN : rest <= 1e-13 * power(lower, upper) ? 0 : rest / width;
        }

        /** Tone-to-noise ratio of a run, noise without all runs. */
        double ratio(Run run, List<Run> runs) {
            double lower = lowerEdge(run.frequency());
            double upper = upperEdge(run.frequency());
            double density = density(lower, upper, runs);
            if (Double.isNaN(density) || width(run) > 0.5 * (upper - lower)) {
                return Double.NEGATIVE_INFINITY;
            }
            return toneToNoise(Math.max(0, run.power() - density * width(run)), density, 1, upper - lower);
        }

        Prominence judge(List<Run> strongest, int i, boolean[] merged) {
            Run run = strongest.get(i);
            double frequency = run.frequency();
            double lower = lowerEdge(frequency);
            double upper = upperEdge(frequency);
            double near = mergeDistance(frequency);
            double density = density(lower, upper, strongest);
            double tone = run.power() - density * width(run);
            int together = 1;
            for (int j = i + 1; j < merged.length; j++) {
                Run other = strongest.get(j);
                if (!merged[j] && other.frequency() >= lower && other.frequency() <= upper
                        && Math.abs(other.frequency() - frequency) < near) {
                    merged[j] = true;
                    tone += Math.max(0, other.power() - density * width(other));
                    together++;
                }
            }
            double ratio = prominenceRatio(frequency, power(lowerBandEdge(frequency), lower), power(lower, upper),
                    power(upper, upperBandEdge(frequency)));
            return new Prominence(frequency, Levels.of(tone), toneToNoise(tone, density, 1, upper - lower), ratio, together, width(run));
        }
    }
}
