package tramontane.physics.sound;

/**
 * The third-octave and octave bands that spectra are made of, IEC 61260-1:2014 with base 10 (G = 10^0.3).
 *
 * <p>Thirds are counted from 0, 25 Hz, to {@value #THIRDS} - 1, 20 kHz; octaves from 0, 31.5 Hz, to {@value #OCTAVES} - 1, 16 kHz.
 * Octave k holds the thirds 3k, 3k + 1 and 3k + 2, and has the middle frequency of the second.
 */
public final class Bands {

    /** Number of third-octave bands. */
    public static final int THIRDS = 30;
    /** Number of octave bands. */
    public static final int OCTAVES = 10;

    /** Number of the first third in the count of IEC 61260-1, where 0 is 1 kHz. */
    private static final int FIRST = -16;

    private static final double[] NOMINAL = {25, 31.5, 40, 50, 63, 80, 100, 125, 160, 200, 250, 315, 400, 500, 630, 800, 1000, 1250, 1600,
        2000, 2500, 3150, 4000, 5000, 6300, 8000, 10000, 12500, 16000, 20000};

    private Bands() {
    }

    /** @param third 0 to {@value #THIRDS} - 1; others beyond the ends are understood
     *  @return exact middle frequency, Hz */
    public static double middle(int third) {
        return 1000 * Math.pow(10, (third + FIRST) / 10.0);
    }

    /** @param third as {@link #middle}
     *  @return lower edge, Hz */
    public static double lower(int third) {
        return 1000 * Math.pow(10, (third + FIRST - 0.5) / 10.0);
    }

    /** @param third as {@link #middle}
     *  @return upper edge, Hz */
    public static double upper(int third) {
        return 1000 * Math.pow(10, (third + FIRST + 0.5) / 10.0);
    }

    /** @param third 0 to {@value #THIRDS} - 1
     *  @return what the band is called, Hz: 31.5, 1000 */
    public static double nominal(int third) {
        return NOMINAL[third];
    }

    /** @param octave 0 to {@value #OCTAVES} - 1
     *  @return what the band is called, Hz */
    public static double nominalOctave(int octave) {
        return NOMINAL[3 * octave + 1];
    }

    /** @param third 0 to {@value #THIRDS} - 1
     *  @return what the band is called, with its unit: 31.5 Hz, 1.25 kHz */
    public static String name(int third) {
        return NOMINAL[third] < 1000 ? hertz(third) + " Hz" : plain(NOMINAL[third] / 1000) + " kHz";
    }

    /** @param third 0 to {@value #THIRDS} - 1
     *  @return the number that the band is called by, in Hz, for lists that have the unit at their end: 31.5, 1250 */
    public static String hertz(int third) {
        return plain(NOMINAL[third]);
    }

    private static String plain(double number) {
        return number == Math.rint(number) ? Long.toString((long) number) : Double.toString(number);
    }

    /** @param octave 0 to {@value #OCTAVES} - 1
     *  @return what the band is called, with its unit: 31.5 Hz, 1 kHz */
    public static String octaveName(int octave) {
        return name(3 * octave + 1);
    }

    /** @param frequency Hz, positive
     *  @return the third in which it lies; below 0 or {@value #THIRDS} and more beyond the ends */
    public static int third(double frequency) {
        return (int) Math.floor(position(frequency) + 0.5);
    }

    /** @param frequency Hz, positive
     *  @return its place in the count of thirds, whole at the middle of a band */
    public static double position(double frequency) {
        return 10 * Math.log10(frequency / 1000) - FIRST;
    }
}
