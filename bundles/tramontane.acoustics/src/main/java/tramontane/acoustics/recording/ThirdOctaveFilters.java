package tramontane.acoustics.recording;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.hipparchus.complex.Complex;
import tramontane.physics.sound.Bands;

/**
 * Third-octave filters of class 1, IEC 61260-1:2014 with base 10, for one channel that comes in blocks.
 *
 * <p>Each is a Butterworth band-pass of {@value #ORDER} pole pairs, mapped by the bilinear transformation with its edges kept in place,
 * in second-order sections. Low bands run at a rate that is halved as often as it stays four times the upper edge of the octave or
 * more; before each halving a symmetrical filter of {@value HalfRate#TAPS} coefficients keeps out by 110 dB what would fold into a band.
 * Bands whose upper edge lies above {@value #CARRIED} of the sample rate are left out.
 *
 * <p>Noise as strong at all frequencies reads 0.05 dB high, as the skirts of a filter pass more than its edges cut off.
 *
 * <p>The filters start from rest. What a band gives while it settles, {@value #SETTLING} over its width but at most a quarter of the
 * recording, does not count.
 */
final class ThirdOctaveFilters {

    /** Pole pairs of a filter. */
    static final int ORDER = 6;
    /** Highest upper edge as a part of the sample rate. */
    static final double CARRIED = 0.48;
    /** Time until a filter has settled, times its width. */
    static final double SETTLING = 8;

    private final List<Stage> stages = new ArrayList<>();
    private final Band[] bands = new Band[Bands.THIRDS];

    /**
     * @param sampleRate Hz
     * @param frames     how many samples will come
     */
    ThirdOctaveFilters(double sampleRate, long frames) {
        Stage stage = new Stage(sampleRate, Optional.empty());
        stages.add(stage);
        for (int octave = Bands.OCTAVES - 1; octave >= 0; octave--) {
            while (stage.rate / 2 >= 4 * Bands.upper(3 * octave + 2)) {
                stage = new Stage(stage.rate / 2, Optional.of(new HalfRate()));
                stages.add(stage);
            }
            for (int third = 3 * octave + 2; third >= 3 * octave; third--) {
                if (Bands.upper(third) <= CARRIED * sampleRate) {
                    long all = (long) (frames * (stage.rate / sampleRate));
                    double width = Bands.upper(third) - Bands.lower(third);
                    bands[third] = new Band(third, stage.rate, Math.min((long) (SETTLING / width * stage.rate), all / 4));
                    stage.bands.add(bands[third]);
                }
            }
        }
    }

    /** Whether the sample rate carries a band. */
    boolean carries(int third) {
        return bands[third] != null;
    }

    /** Takes the next samples. */
    void take(double[] samples, int count) {
        double[] given = samples;
        int there = count;
        for (Stage stage : stages) {
            if (stage.half.isPresent()) {
                HalfRate half = stage.half.get();
                there = half.take(given, there);
                given = half.out;
            }
            for (Band band : stage.bands) {
                band.take(given, there);
            }
        }
    }

    /** Mean square of what a band gave once it had settled. */
    double meanSquare(int third) {
        return bands[third].sum / Math.max(1, bands[third].counted());
    }

    /** Time that counts in a band, s. */
    double time(int third) {
        return bands[third].counted() / bands[third].rate;
    }

    /** By what a tone is taken down in a band, dB, halving included. */
    double attenuation(int third, double frequency) {
        double gain = 0;
        for (Stage stage : stages) {
            if (stage.half.isPresent()) {
                gain += HalfRate.level(frequency / (2 * stage.rate));
            }
            if (stage.bands.contains(bands[third])) {
                break;
            }
        }
        return -gain - bands[third].level(frequency);
    }

    /** Rate at which a band runs, Hz. */
    double rate(int third) {
        return bands[third].rate;
    }

    /** One rate and the bands that run at it. */
    private static final class Stage {

        final double rate;
        final List<Band> bands = new ArrayList<>();
        /** How it comes from the rate above; empty at the top. */
        final Optional<HalfRate> half;

        Stage(double rate, Optional<HalfRate> half) {
            this.rate = rate;
            this.half = half;
        }
    }

    /** One filter: ORDER sections g (1 - z^-2)/(1 + a1 z^-1 + a2 z^-2). */
    private static final class Band {

        final double rate;
        final long skip;
        final double[] gain = new double[ORDER];
        final double[] a1 = new double[ORDER];
        final double[] a2 = new double[ORDER];
        final double[] first = new double[ORDER];
        final double[] second = new double[ORDER];
        double[] work = new double[0];
        long seen;
        double sum;

        Band(int third, double rate, long skip) {
            this.rate = rate;
            this.skip = skip;
            double low = Math.tan(Math.PI * Bands.lower(third) / rate);
            double high = Math.tan(Math.PI * Bands.upper(third) / rate);
            double middle = 2 * Math.atan(Math.sqrt(low * high));
            for (int i = 0; i < ORDER; i++) {
                double angle = Math.PI * (2 * (i / 2) + 1 + ORDER) / (2 * ORDER);
                Complex half = new Complex(Math.cos(angle), Math.sin(angle)).multiply((high - low) / 2);
                Complex root = half.multiply(half).subtract(low * high).sqrt();
                Complex pole = i % 2 == 0 ? half.add(root) : half.subtract(root);
                Complex mapped = pole.add(1).divide(pole.negate().add(1));
                a1[i] = -2 * mapped.getReal();
                a2[i] = mapped.getReal() * mapped.getReal() + mapped.getImaginary() * mapped.getImaginary();
                gain[i] = 1;
                gain[i] = 1 / magnitude(i, middle);
            }
        }

        private double magnitude(int i, double angle) {
            double c = Math.cos(angle);
            double s = Math.sin(angle);
            double c2 = Math.cos(2 * angle);
            double s2 = Math.sin(2 * angle);
            return gain[i] * Math.hypot(1 - c2, s2) / Math.hypot(1 + a1[i] * c + a2[i] * c2, a1[i] * s + a2[i] * s2);
        }

        double level(double frequency) {
            double level = 0;
            for (int i = 0; i < ORDER; i++) {
                level += 20 * Math.log10(magnitude(i, 2 * Math.PI * frequency / rate));
            }
            return level;
        }

        long counted() {
            return Math.max(0, seen - skip);
        }

        void take(double[] in, int count) {
            if (work.length < count) {
                work = new double[count];
            }
            three(in, work, count, 0);
            for (int i = 3; i < ORDER; i += 3) {
                three(work, work, count, i);
            }
            double squares = 0;
            for (int i = Math.clamp(skip - seen, 0, count); i < count; i++) {
                squares += work[i] * work[i];
            }
            sum += squares;
            seen += count;
        }

        /** Three sections in one pass, all that the processor has registers for. */
        private void three(double[] in, double[] out, int count, int at) {
            double ga = gain[at];
            double gb = gain[at + 1];
            double gc = gain[at + 2];
            double pa = a1[at];
            double pb = a1[at + 1];
            double pc = a1[at + 2];
            double qa = a2[at];
            double qb = a2[at + 1];
            double qc = a2[at + 2];
            double fa = first[at];
            double fb = first[at + 1];
            double fc = first[at + 2];
            double sa = second[at];
            double sb = second[at + 1];
            double sc = second[at + 2];
            for (int i = 0; i < count; i++) {
                double x = ga * in[i];
                double y = x + fa;
                fa = sa - pa * y;
                sa = -x - qa * y;
                x = gb * y;
                y = x + fb;
                fb = sb - pb * y;
                sb = -x - qb * y;
                x = gc * y;
                y = x + fc;
                fc = sc - pc * y;
                sc = -x - qc * y;
                out[i] = y;
            }
            first[at] = fa;
            first[at + 1] = fb;
            first[at + 2] = fc;
            second[at] = sa;
            second[at + 1] = sb;
            second[at + 2] = sc;
        }
    }

    /** Halves a rate: every second sample of what a half-band filter gives, a sinc under a Kaiser window. */
    static final class HalfRate {

        static final int TAPS = 31;
        private static final int REACH = TAPS / 2;
        /** For 110 dB from 3/8 of the rate on. J. F. Kaiser, in Kuo and Kaiser, System Analysis by Digital Computer, 1966, ch. 7. */
        private static final double BETA = 0.1102 * (120 - 8.7);
        /** Of the samples 1, 3, 5 … to either side; that of the middle is a half, those between are none. */
        private static final double[] COEFFICIENTS = coefficients();

        double[] out = new double[0];
        private double[] held = new double[2 * REACH];
        private int waiting = 2 * REACH;

        private static double[] coefficients() {
            double[] all = new double[(REACH + 1) / 2];
            double sum = 0;
            for (int i = 0; i < all.length; i++) {
                int k = 2 * i + 1;
                double x = k / (double) (REACH + 1);
                all[i] = (i % 2 == 0 ? 1 : -1) / (Math.PI * k) * bessel(BETA * Math.sqrt(1 - x * x)) / bessel(BETA);
                sum += 2 * all[i];
            }
            for (int i = 0; i < all.length; i++) {
                all[i] *= 0.5 / sum;
            }
            return all;
        }

        /** Modified Bessel function of the first kind, order 0. */
        private static double bessel(double x) {
            double term = 1;
            double sum = 1;
            for (int k = 1; k < 60; k++) {
                term *= x * x / (4.0 * k * k);
                sum += term;
            }
            return sum;
        }

        /** @param frequency as a part of the higher rate */
        static double level(double frequency) {
            double response = 0.5;
            for (int i = 0; i < COEFFICIENTS.length; i++) {
                response += 2 * COEFFICIENTS[i] * Math.cos(2 * Math.PI * frequency * (2 * i + 1));
            }
            return 20 * Math.log10(Math.abs(response));
        }

        int take(double[] in, int count) {
            int there = waiting + count;
            if (held.length < there) {
                held = Arrays.copyOf(held, there);
            }
            System.arraycopy(in, 0, held, waiting, count);
            int given = Math.max(0, (there - 2 * REACH + 1) / 2);
            if (out.length < given) {
                out = new double[given];
            }
            for (int i = 0; i < given; i++) {
                int middle = 2 * i + REACH;
                double sum = 0.5 * held[middle];
                for (int j = 0; j < COEFFICIENTS.length; j++) {
                    int k = 2 * j + 1;
                    sum += COEFFICIENTS[j] * (held[middle - k] + held[middle + k]);
                }
                out[i] = sum;
            }
            System.arraycopy(held, 2 * given, held, 0, there - 2 * given);
            waiting = there - 2 * given;
            return given;
        }
    }
}
