package tramontane.acoustics.recording;

import java.util.Arrays;
import java.util.function.DoubleUnaryOperator;

/**
 * Power at evenly spaced frequencies, whose sum is the mean square. Immutable.
 *
 * <p>A steady tone lies in some four lines about its frequency, the shape of a Hann window.
 */
public final class Lines {

    private final double resolution;
    private final double[] power;

    private Lines(double resolution, double[] power) {
        this.resolution = resolution;
        this.power = power;
    }

    /** @param resolution distance of lines, Hz
     *  @param power      of the lines from 0 Hz on, in any unit, not negative */
    public static Lines of(double resolution, double[] power) {
        if (!(resolution > 0) || !(resolution < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException("lines " + resolution + " Hz apart cannot be");
        }
        for (double each : power) {
            if (!(each >= 0)) {
                throw new IllegalArgumentException("power of a line must not be negative, got " + each);
            }
        }
        return new Lines(resolution, power.clone());
    }

    /** @return distance of lines, Hz */
    public double resolution() {
        return resolution;
    }

    /** @return number of lines, that of 0 Hz included */
    public int count() {
        return power.length;
    }

    /** @param line from 0
     *  @return its frequency, Hz */
    public double frequency(int line) {
        return line * resolution;
    }

    /** @param line from 0
     *  @return power in it */
    public double power(int line) {
        return power[line];
    }

    /** @return power of all lines */
    public double sum() {
        return Arrays.stream(power).sum();
    }

    /** @param factor on all, not negative
     *  @return the louder or softer lines */
    public Lines times(double factor) {
        return of(resolution, Arrays.stream(power).map(each -> factor * each).toArray());
    }

    /** @param factor on the power at a frequency in Hz, not asked at 0
     *  @return power of all lines so weighted, without that of 0 Hz */
    double weighted(DoubleUnaryOperator factor) {
        double sum = 0;
        for (int i = 1; i < power.length; i++) {
            sum += power[i] * factor.applyAsDouble(i * resolution);
        }
        return sum;
    }

    /**
     * Power from one frequency to another; a line spreads over half its distance to either side.
     *
     * @param from Hz
     * @param to   Hz
     */
    public double between(double from, double to) {
        double sum = 0;
        int last = (int) Math.min(power.length - 1L, (long) Math.ceil(to / resolution + 0.5));
        for (int i = (int) Math.max(0, Math.floor(from / resolution - 0.5)); i <= last; i++) {
            double share = Math.min(to / resolution, i + 0.5) - Math.max(from / resolution, i - 0.5);
            sum += power[i] * Math.max(0, share);
        }
        return sum;
    }

    /**
     * The lines with a tone taken out: those within a distance of it have the mean of twice as many beside them.
     *
     * @param frequency of the tone, Hz
     * @param reach     to either side, Hz
     */
    Lines without(double frequency, double reach) {
        int first = Math.clamp((long) Math.floor((frequency - reach) / resolution), 0, power.length);
        int end = Math.clamp((long) Math.ceil((frequency + reach) / resolution) + 1, first, power.length);
        int beside = end - first;
        double sum = 0;
        int count = 0;
        for (int i = Math.max(0, first - beside); i < Math.min(power.length, end + beside); i++) {
            if (i < first || i >= end) {
                sum += power[i];
                count++;
            }
        }
        double[] rest = power.clone();
        Arrays.fill(rest, first, end, count == 0 ? 0 : sum / count);
        return new Lines(resolution, rest);
    }

    /** @return the powers, a copy */
    public double[] toArray() {
        return power.clone();
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Lines lines && lines.resolution == resolution && Arrays.equals(lines.power, power);
    }

    @Override
    public int hashCode() {
        return 31 * Double.hashCode(resolution) + Arrays.hashCode(power);
    }

    @Override
    public String toString() {
        return "Lines[" + power.length + " lines, " + resolution + " Hz apart]";
    }
}
