package tramontane.physics.sound;

/**
 * Arithmetic of levels in decibels: L = 10 lg(P/P0), powers of incoherent sources add.
 *
 * <p>A power here is a ratio without unit: a sound power over 1 pW, or a mean square of sound pressure over (20 µPa)².
 */
public final class Levels {

    private static final double NEPERS = Math.log(10) / 10;

    private Levels() {
    }

    /** @param power ratio of powers, not negative
     *  @return its level, dB; negative infinity for none */
    public static double of(double power) {
        return 10 * Math.log10(power);
    }

    /** @param level dB; negative infinity for none
     *  @return ratio of powers */
    public static double power(double level) {
        return Math.exp(NEPERS * level);
    }

    /** The level of incoherent sources together.
     *
     * @param levels dB
     * @return dB; negative infinity where there are none */
    public static double sum(double... levels) {
        double power = 0;
        for (double level : levels) {
            power += power(level);
        }
        return of(power);
    }

    /** The level of the mean power.
     *
     * @param levels dB, at least one
     * @return dB */
    public static double mean(double... levels) {
        if (levels.length == 0) {
            throw new IllegalArgumentException("a mean level needs one level or more");
        }
        return sum(levels) - of(levels.length);
    }

    /**
     * What is left of a level when the background is taken off.
     *
     * @param level      with the background, dB
     * @param background alone, dB
     * @return dB; negative infinity where the background is not below the level
     */
    public static double without(double level, double background) {
        return background < level ? of(power(level) - power(background)) : Double.NEGATIVE_INFINITY;
    }
}
