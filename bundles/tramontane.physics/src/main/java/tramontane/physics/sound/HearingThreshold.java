package tramontane.physics.sound;

/**
 * The softest pure tone that young people with good hearing notice in a free field from in front: ISO 389-7:2005, equal to the threshold
 * of ISO 226:2003. Values from memory; between the middles of third-octaves straight lines over the logarithm of the frequency.
 */
public final class HearingThreshold {

    /** From 25 Hz on, dB re 20 µPa. */
    private static final double[] LEVELS = {68.7, 59.5, 51.1, 44.0, 37.5, 31.5, 26.5, 22.1, 17.9, 14.4, 11.4, 8.6, 6.2, 4.4, 3.0, 2.2, 2.4,
        3.5, 1.7, -1.3, -4.2, -6.0, -5.4, -1.5, 6.0, 12.6, 13.9, 12.3};

    private HearingThreshold() {
    }

    /** @param frequency of a tone, Hz, positive
     *  @return its sound pressure level at the threshold, dB re 20 µPa; below 25 Hz and above 12.5 kHz that of these */
    public static double level(double frequency) {
        double at = Math.clamp(Bands.position(frequency), 0, LEVELS.length - 1);
        int below = Math.min((int) at, LEVELS.length - 2);
        return LEVELS[below] + (at - below) * (LEVELS[below + 1] - LEVELS[below]);
    }
}
