package tramontane.physics.sound;

/**
 * What a spectrum gets by a set of limiting curves: the lowest curve that no octave exceeds.
 *
 * @param value     number of that curve, between two where need be
 * @param octave    the octave of {@link Bands} that decides, the lower one of two alike
 * @param tabulated whether the value lies where the curves are laid down; elsewhere they are continued straight
 */
public record Rating(double value, int octave, boolean tabulated) {
}
