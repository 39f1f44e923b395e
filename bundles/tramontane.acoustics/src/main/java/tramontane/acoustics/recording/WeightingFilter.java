package tramontane.acoustics.recording;

import java.util.Arrays;
import tramontane.physics.sound.Weighting;

/**
 * A-weighting in time, IEC 61672-1:2013 annex E. Its low-frequency poles are two second-order sections by the bilinear transformation;
 * a symmetrical filter adds the rest of the exact magnitude up to half the sample rate, which no mapping of the upper poles reaches.
 * It delays all by {@value #REACH} samples.
 */
final class WeightingFilter {

    /** Half the length of the symmetrical filter. */
    static final int REACH = 32;
    private static final int GRID = 2048;

    private final double sampleRate;
    private final double[][] sections;
    private final double[] taps = new double[REACH + 1];
    private final double[] state = new double[4];
    private double[] held = new double[2 * REACH];

    /** @param sampleRate Hz */
    WeightingFilter(double sampleRate) {
        this.sampleRate = sampleRate;
        sections = new double[][] {section(20.598997, 20.598997), section(107.65265, 737.86223)};
        double[] rest = new double[GRID + 1];
        for (int i = 0; i <= GRID; i++) {
            double frequency = Math.max(i, 0.01) * sampleRate / (2 * GRID);
            rest[i] = Math.pow(10, (Weighting.A.level(frequency) - sectionsLevel(frequency)) / 20);
        }
        for (int n = 0; n <= REACH; n++) {
            double sum = (rest[0] + rest[GRID] * (n % 2 == 0 ? 1 : -1)) / 2;
            for (int i = 1; i < GRID; i++) {
                sum += rest[i] * Math.cos(Math.PI * i * n / GRID);
            }
            taps[n] = sum / GRID;
        }
    }

    /** s²/((s + 2πf1)(s + 2πf2)): gain, a1, a2; zeros twice at 1. */
    private double[] section(double f1, double f2) {
        double k = 2 * sampleRate;
        double w1 = 2 * Math.PI * f1;
        double w2 = 2 * Math.PI * f2;
        double r1 = (w1 - k) / (k + w1);
        double r2 = (w2 - k) / (k + w2);
        return new double[] {k * k / ((k + w1) * (k + w2)), r1 + r2, r1 * r2};
    }

    private double sectionsLevel(double frequency) {
        double angle = 2 * Math.PI * frequency / sampleRate;
        double level = 0;
        for (double[] each : sections) {
            double above = 4 * Math.pow(Math.sin(angle / 2), 2);
            level += 20 * Math.log10(each[0] * above / Math.hypot(1 + each[1] * Math.cos(angle) + each[2] * Math.cos(2 * angle),
                    each[1] * Math.sin(angle) + each[2] * Math.sin(2 * angle)));
        }
        return level;
    }

    /** Its response, dB. */
    double level(double frequency) {
        double response = taps[0];
        for (int n = 1; n <= REACH; n++) {
            response += 2 * taps[n] * Math.cos(2 * Math.PI * frequency / sampleRate * n);
        }
        return sectionsLevel(frequency) + 20 * Math.log10(Math.abs(response));
    }

    /** Filters the next samples into {@code out}. */
    void take(double[] in, int count, double[] out) {
        int there = 2 * REACH + count;
        if (held.length < there) {
            held = Arrays.copyOf(held, there);
        }
        sections(in, count);
        for (int i = 0; i < count; i++) {
            out[i] = taps[0] * held[i + REACH];
        }
        for (int n = 1; n <= REACH; n++) {
            double tap = taps[n];
            int below = REACH - n;
            int above = REACH + n;
            for (int i = 0; i < count; i++) {
                out[i] += tap * (held[i + below] + held[i + above]);
            }
        }
        System.arraycopy(held, count, held, 0, 2 * REACH);
    }

    private void sections(double[] in, int count) {
        double ga = sections[0][0];
        double pa = sections[0][1];
        double qa = sections[0][2];
        double gb = sections[1][0];
        double pb = sections[1][1];
        double qb = sections[1][2];
        double fa = state[0];
        double sa = state[1];
        double fb = state[2];
        double sb = state[3];
        for (int i = 0; i < count; i++) {
            double x = ga * in[i];
            double y = x + fa;
            fa = sa - 2 * x - pa * y;
            sa = x - qa * y;
            x = gb * y;
            y = x + fb;
            fb = sb - 2 * x - pb * y;
            sb = x - qb * y;
            held[2 * REACH + i] = y;
        }
        state[0] = fa;
        state[1] = sa;
        state[2] = fb;
        state[3] = sb;
    }
}
