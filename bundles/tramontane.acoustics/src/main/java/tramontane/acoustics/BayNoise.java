package tramontane.acoustics;

/**
 * The lining of a bay.
 *
 * @param area       its area, m²
 * @param absorption what it takes of the sound that meets it, 0 to 1; nothing in bands without a value
 */
public record BayNoise(double area, Banded absorption) {
}
