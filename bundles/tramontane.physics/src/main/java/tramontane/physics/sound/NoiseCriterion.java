package tramontane.physics.sound;

import java.util.Arrays;
import java.util.Optional;

/**
 * Noise criterion NC of octave levels, 63 Hz to 8 kHz, by the tangent method: the highest octave decides.
 *
 * <p>Source: L. L. Beranek, "Revised criteria for noise in buildings", Noise Control 3 (1957) 19, as tabulated in ASHRAE's and other
 * handbooks, NC 15 to NC 70 in steps of 5. Between two curves the number is interpolated straight in each octave; custom differs, and
 * some quote the next curve of the table that is not exceeded: {@link #nextCurve}. Below NC 15 and above NC 70 there are no curves: the
 * last two are continued straight (our assumption), so that designs can still be compared, and the rating says so. Octaves without sound
 * do not decide.
 */
public final class NoiseCriterion {

    /** The first octave that counts, of {@link Bands}: 63 Hz. */
    public static final int FIRST = 1;
    /** The last one: 8 kHz. */
    public static final int LAST = 8;
    /** Lowest curve laid down. */
    public static final double LOWEST = 15;
    /** Highest curve laid down. */
    public static final double HIGHEST = 70;

    private static final double STEP = 5;

    /** By octave, then by curve. */
    private static final double[][] CURVES = {
        {47, 51, 54, 57, 60, 64, 67, 71, 74, 77, 80, 83},
        {36, 40, 44, 48, 52, 56, 60, 64, 67, 71, 75, 79},
        {29, 33, 37, 41, 45, 50, 54, 58, 62, 67, 71, 75},
        {22, 26, 31, 35, 40, 45, 49, 54, 58, 63, 68, 72},
        {17, 22, 27, 31, 36, 41, 46, 51, 56, 61, 66, 71},
        {14, 19, 24, 29, 34, 39, 44, 49, 54, 59, 64, 70},
        {12, 17, 22, 28, 33, 38, 43, 48, 53, 58, 63, 69},
        {11, 16, 21, 27, 32, 37, 42, 47, 52, 57, 62, 68},
    };

    private NoiseCriterion() {
    }

    /** @param spectrum sound pressure over (20 µPa)²
     *  @return its rating; empty where no octave from 63 Hz to 8 kHz has any sound */
    public static Optional<Rating> of(Spectrum spectrum) {
        return of(spectrum.octaves());
    }

    /** @param octaves sound pressure levels in the order of {@link Bands}, from 31.5 Hz, dB re 20 µPa; negative infinity for none. At
     *                 least to 8 kHz
     *  @return their rating; empty where none from 63 Hz on has any sound */
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

    /** @param rating of a spectrum
     *  @return the curve of the table that it does not exceed, 15 to 70 in steps of 5; empty above 70 */
    public static Optional<Double> nextCurve(Rating rating) {
        double next = Math.max(LOWEST, STEP * Math.ceil(rating.value() / STEP));
        return next > HIGHEST ? Optional.empty() : Optional.of(next);
    }

    /** @param octave {@link #FIRST} to {@link #LAST}
     *  @param level  dB; negative infinity for none
     *  @return number of the curve that goes through it; negative infinity for none */
    public static double band(int octave, double level) {
        double[] curves = CURVES[octave - FIRST];
        int i = 0;
        while (i < curves.length - 2 && level > curves[i + 1]) {
            i++;
        }
        return LOWEST + STEP * (i + (level - curves[i]) / (curves[i + 1] - curves[i]));
    }

    /** @param octave {@link #FIRST} to {@link #LAST}
     *  @param rating number of the curve
     *  @return its level there, dB */
    public static double limit(int octave, double rating) {
        double[] curves = CURVES[octave - FIRST];
        double steps = (rating - LOWEST) / STEP;
        int i = (int) Math.clamp(Math.floor(steps), 0, curves.length - 2);
        return curves[i] + (steps - i) * (curves[i + 1] - curves[i]);
    }

    /** @param rating number of the curve
     *  @return its levels from octave {@link #FIRST} to {@link #LAST}, dB */
    public static double[] curve(double rating) {
        double[] levels = new double[LAST - FIRST + 1];
        Arrays.setAll(levels, i -> limit(FIRST + i, rating));
        return levels;
    }
}
