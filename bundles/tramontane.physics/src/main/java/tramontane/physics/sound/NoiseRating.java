package tramontane.physics.sound;

import java.util.Arrays;
import java.util.Optional;

/**
 * Noise rating NR of octave levels, 31.5 Hz to 8 kHz: L = a + b NR in each octave, the highest decides.
 *
 * <p>Source: ISO/R 1996:1971, which has been withdrawn but is still asked for; coefficients as quoted with AS 1469:1983. Curves
 * NR 0 to NR 130. The octave of 16 kHz has no curve. Octaves without sound do not decide.
 */
public final class NoiseRating {

    /** The first octave that counts, of {@link Bands}: 31.5 Hz. */
    public static final int FIRST = 0;
    /** The last one: 8 kHz. */
    public static final int LAST = 8;
    /** Lowest curve laid down. */
    public static final double LOWEST = 0;
    /** Highest curve laid down. */
    public static final double HIGHEST = 130;

    private static final double[] A = {55.4, 35.5, 22.0, 12.0, 4.8, 0, -3.5, -6.1, -8.0};
    private static final double[] B = {0.681, 0.790, 0.870, 0.930, 0.974, 1.000, 1.015, 1.025, 1.030};

    private NoiseRating() {
    }

    /** @param spectrum sound pressure over (20 µPa)²
     *  @return its rating; empty where no octave from 31.5 Hz to 8 kHz has any sound */
    public static Optional<Rating> of(Spectrum spectrum) {
        return of(spectrum.octaves());
    }

    /** @param octaves sound pressure levels in the order of {@link Bands}, from 31.5 Hz, dB re 20 µPa; negative infinity for none. At
     *                 least to 8 kHz
     *  @return their rating; empty where none of them has any sound */
    public static Optional<Rating> of(double[] octaves) {
        double most = Double.NEGATIVE_INFINITY;
        int decides = -1;
        for (int octave = FIRST; octave <= LAST; octave++) {
            double value = band(octave, octaves[octave]);
            if (value > most) {
                most = value;
                decides = octave;
            }
        }
        return decides < 0 ? Optional.empty() : Optional.of(new Rating(most, decides, most >= LOWEST && most <= HIGHEST));
    }

    /** @param octave {@link #FIRST} to {@link #LAST}
     *  @param level  dB; negative infinity for none
     *  @return number of the curve that goes through it; negative infinity for none */
    public static double band(int octave, double level) {
        return (level - A[octave]) / B[octave];
    }

    /** @param octave {@link #FIRST} to {@link #LAST}
     *  @param rating number of the curve
     *  @return its level there, dB */
    public static double limit(int octave, double rating) {
        return A[octave] + B[octave] * rating;
    }

    /** @param rating number of the curve
     *  @return its levels from octave {@link #FIRST} to {@link #LAST}, dB */
    public static double[] curve(double rating) {
        double[] levels = new double[LAST - FIRST + 1];
        Arrays.setAll(levels, i -> limit(FIRST + i, rating));
        return levels;
    }
}
