package tramontane.physics.sound;

import java.util.Arrays;

/**
 * Power in each of the third-octave bands of {@link Bands}, as ratios (sound power over 1 pW, mean square of pressure over
 * (20 µPa)²), so that what is incoherent adds. Immutable.
 */
public final class Spectrum {

    /** Silence. */
    public static final Spectrum SILENCE = new Spectrum(new double[Bands.THIRDS]);

    /** By what the power of an octave is spread over its thirds so that its A-weighted level stays that of its middle. */
    private static final double[][] SPREAD = spread();

    private final double[] power;

    private Spectrum(double[] power) {
        this.power = power;
    }

    /** @param power ratio in each of the {@value Bands#THIRDS} bands, finite and not negative */
    public static Spectrum of(double[] power) {
        if (power.length != Bands.THIRDS) {
            throw new IllegalArgumentException("a spectrum has " + Bands.THIRDS + " bands, got " + power.length);
        }
        for (int i = 0; i < power.length; i++) {
            if (!(power[i] >= 0) || Double.isInfinite(power[i])) {
                throw new IllegalArgumentException("power in the band of " + Bands.nominal(i) + " Hz must be finite and not negative, got "
                        + power[i]);
            }
        }
        return new Spectrum(power.clone());
    }

    /**
     * A spectrum of third-octave band levels; nothing in the bands beyond them.
     *
     * @param first  the band of the first level
     * @param levels dB
     */
    public static Spectrum ofThirds(int first, double... levels) {
        double[] power = new double[Bands.THIRDS];
        for (int i = 0; i < levels.length; i++) {
            power[first + i] = Levels.power(levels[i]);
        }
        return of(power);
    }

    /**
     * A spectrum of octave band levels. Each octave is spread over its three third-octaves in a geometric proportion that leaves both
     * its level and its A-weighted level, taken at its middle, as they are.
     *
     * @param first  the octave of the first level
     * @param levels dB
     */
    public static Spectrum ofOctaves(int first, double... levels) {
        double[] power = new double[Bands.THIRDS];
        for (int i = 0; i < levels.length; i++) {
            for (int third = 0; third < 3; third++) {
                power[3 * (first + i) + third] = Levels.power(levels[i]) * SPREAD[first + i][third];
            }
        }
        return of(power);
    }

    private static double[][] spread() {
        double[][] spread = new double[Bands.OCTAVES][];
        for (int octave = 0; octave < Bands.OCTAVES; octave++) {
            double below = Weighting.A.factor(3 * octave);
            double middle = Weighting.A.factor(3 * octave + 1);
            double above = Weighting.A.factor(3 * octave + 2);
            // below/r + middle + above r = middle (1/r + 1 + r); the weighting is monotone within each octave
            double ratio = Math.sqrt((middle - below) / (above - middle));
            double total = 1 / ratio + 1 + ratio;
            spread[octave] = new double[] {1 / ratio / total, 1 / total, ratio / total};
        }
        return spread;
    }

    /** @param third a band
     *  @return power in it, a ratio */
    public double power(int third) {
        return power[third];
    }

    /** @param third a band
     *  @return its level, dB; negative infinity for none */
    public double level(int third) {
        return Levels.of(power[third]);
    }

    /** @param octave an octave
     *  @return its level, dB; negative infinity for none */
    public double octave(int octave) {
        return octave(octave, Weighting.Z);
    }

    /** @param octave    an octave
     *  @param weighting by which each third in it counts
     *  @return its weighted level, dB; negative infinity for none */
    public double octave(int octave, Weighting weighting) {
        return Levels.of(octavePower(octave, weighting));
    }

    /** @param octave    an octave
     *  @param weighting by which each third in it counts
     *  @return its weighted power, a ratio */
    public double octavePower(int octave, Weighting weighting) {
        double sum = 0;
        for (int third = 3 * octave; third < 3 * octave + 3; third++) {
            sum += power[third] * weighting.factor(third);
        }
        return sum;
    }

    /** @return the levels of the octaves from 31.5 Hz to 16 kHz, dB */
    public double[] octaves() {
        double[] levels = new double[Bands.OCTAVES];
        for (int octave = 0; octave < Bands.OCTAVES; octave++) {
            levels[octave] = octave(octave);
        }
        return levels;
    }

    /** @return the level of all bands together, dB; negative infinity for silence */
    public double level() {
        return level(Weighting.Z);
    }

    /** @param weighting by which each band counts
     *  @return the weighted level of all bands together, dB; negative infinity for silence */
    public double level(Weighting weighting) {
        return Levels.of(power(weighting));
    }

    /** @param weighting by which each band counts
     *  @return the weighted power of all bands together, a ratio */
    public double power(Weighting weighting) {
        double sum = 0;
        for (int i = 0; i < power.length; i++) {
            sum += power[i] * weighting.factor(i);
        }
        return sum;
    }

    /** @return whether there is nothing in any band */
    public boolean silent() {
        for (double each : power) {
            if (each > 0) {
                return false;
            }
        }
        return true;
    }

    /** @param other an incoherent sound
     *  @return both together */
    public Spectrum plus(Spectrum other) {
        double[] sum = power.clone();
        for (int i = 0; i < sum.length; i++) {
            sum[i] += other.power[i];
        }
        return new Spectrum(sum);
    }

    /** @param frequency of a tone, Hz
     *  @param added     its power, a ratio
     *  @return this with the tone in its band; the same where that lies beyond the ends */
    public Spectrum plus(double frequency, double added) {
        int third = Bands.third(frequency);
        if (third < 0 || third >= Bands.THIRDS) {
            return this;
        }
        double[] sum = power.clone();
        sum[third] += added;
        return of(sum);
    }

    /** @param factor on the power of every band, not negative
     *  @return the louder or softer sound */
    public Spectrum times(double factor) {
        double[] scaled = power.clone();
        for (int i = 0; i < scaled.length; i++) {
            scaled[i] *= factor;
        }
        return of(scaled);
    }

    /** @param factors on the power of each band, not negative
     *  @return the changed sound */
    public Spectrum times(double[] factors) {
        double[] scaled = power.clone();
        for (int i = 0; i < scaled.length; i++) {
            scaled[i] *= factors[i];
        }
        return of(scaled);
    }

    /** @param gain on every band, dB
     *  @return the louder or softer sound */
    public Spectrum gained(double gain) {
        return times(Levels.power(gain));
    }

    /**
     * The same sound with every frequency changed by one factor, as when a recording runs faster: its power stays.
     * Where a band falls between two bands its power is shared between them; at the ends it stays in the last band.
     *
     * @param ratio new frequency over old, positive
     */
    public Spectrum shifted(double ratio) {
        double steps = 10 * Math.log10(ratio);
        if (steps == 0) {
            return this;
        }
        double[] moved = new double[Bands.THIRDS];
        for (int i = 0; i < moved.length; i++) {
            double to = Math.clamp(i + steps, 0, Bands.THIRDS - 1);
            int below = Math.min((int) to, Bands.THIRDS - 2);
            moved[below] += power[i] * (below + 1 - to);
            moved[below + 1] += power[i] * (to - below);
        }
        return new Spectrum(moved);
    }

    /** @return the powers of all bands, a copy */
    public double[] toArray() {
        return power.clone();
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Spectrum spectrum && Arrays.equals(power, spectrum.power);
    }

    @Override
    public int hashCode() {
        return Arrays.hashCode(power);
    }

    @Override
    public String toString() {
        StringBuilder text = new StringBuilder("Spectrum[dB");
        for (int i = 0; i < power.length; i++) {
            text.append(' ').append(Math.round(10 * level(i)) / 10.0);
        }
        return text.append(']').toString();
    }
}
