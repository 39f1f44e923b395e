package tramontane.acoustics.recording;

import java.util.Arrays;
import org.hipparchus.transform.DftNormalization;
import org.hipparchus.transform.FastFourierTransformer;
import org.hipparchus.transform.TransformType;

/**
 * Mean power spectrum of one or more channels by overlapping pieces under a Hann window (P. D. Welch, 1967).
 *
 * <p>Pieces begin at even distances of half a piece or slightly less, so that the last ends with the recording. Two pieces go through one
 * transformation, as real and imaginary part: with Z that of both, |X1|² + |X2|² at line k is (|Z(k)|² + |Z(N - k)|²)/2.
 */
final class LineAnalyser {

    private final double sampleRate;
    private final int length;
    private final long frames;
    private final int pieces;
    private final double[] window;
    private final double[] sum;
    private final double[][] pair;
    private final double[][] held;
    private final int[] there;
    private final int[] taken;
    private final long[] begins;
    private int waiting;
    private long weighed;

    LineAnalyser(double sampleRate, long frames, int channels) {
        this.sampleRate = sampleRate;
        this.frames = frames;
        length = length(sampleRate, frames);
        pieces = frames == length ? 1 : (int) ((frames - length + length / 2 - 1) / (length / 2)) + 1;
        window = new double[length];
        for (int i = 0; i < length; i++) {
            window[i] = 0.5 - 0.5 * Math.cos(2 * Math.PI * i / length);
        }
        sum = new double[length / 2 + 1];
        pair = new double[2][length];
        held = new double[channels][length];
        there = new int[channels];
        taken = new int[channels];
        begins = new long[channels];
    }

    /** The smallest power of two that gives lines no farther than 1 Hz apart, or the largest that the recording fills. */
    static int length(double sampleRate, long frames) {
        int wanted = Integer.highestOneBit((int) Math.ceil(sampleRate) * 2 - 1);
        return (int) Math.min(wanted, Long.highestOneBit(frames));
    }

    int pieces() {
        return pieces;
    }

    private long begin(int piece) {
        return pieces == 1 ? 0 : Math.round((frames - length) * (double) piece / (pieces - 1));
    }

    /** Takes the next samples of a channel. */
    void take(int channel, double[] samples, int count) {
        int at = 0;
        while (at < count) {
            int part = Math.min(count - at, length - there[channel]);
            System.arraycopy(samples, at, held[channel], there[channel], part);
            at += part;
            there[channel] += part;
            if (there[channel] == length) {
                piece(channel);
            }
        }
    }

    private void piece(int channel) {
        double[] to = pair[waiting];
        double[] from = held[channel];
        for (int i = 0; i < length; i++) {
            to[i] = from[i] * window[i];
        }
        waiting++;
        if (waiting == 2) {
            transform();
        }
        taken[channel]++;
        if (taken[channel] < pieces) {
            long next = begin(taken[channel]);
            int step = (int) (next - begins[channel]);
            System.arraycopy(from, step, from, 0, length - step);
            there[channel] = length - step;
            begins[channel] = next;
        } else {
            there[channel] = 0;
        }
    }

    private void transform() {
        FastFourierTransformer.transformInPlace(pair, DftNormalization.STANDARD, TransformType.FORWARD);
        double[] re = pair[0];
        double[] im = pair[1];
        int half = length / 2;
        sum[0] += re[0] * re[0] + im[0] * im[0];
        sum[half] += re[half] * re[half] + im[half] * im[half];
        for (int k = 1; k < half; k++) {
            int m = length - k;
            // once as the two halves of a real signal's power, once as the mean of two entries
            sum[k] += re[k] * re[k] + im[k] * im[k] + re[m] * re[m] + im[m] * im[m];
        }
        weighed += waiting;
        waiting = 0;
    }

    /** The lines of what was taken, as mean of channels; their sum is the mean square of the pieces under the window. */
    Lines lines() {
        if (waiting == 1) {
            Arrays.fill(pair[1], 0);
            transform();
        }
        double squares = 0;
        for (double each : window) {
            squares += each * each;
        }
        double[] power = new double[sum.length];
        for (int k = 0; k < power.length; k++) {
            power[k] = sum[k] / (weighed * squares * length);
        }
        return Lines.of(sampleRate / length, power);
    }
}
