package tramontane.selection;

/**
 * A part in an arrangement that may do, by the reduced design, and comes behind all that are listed whatever it comes to exactly.
 *
 * @param part        its id
 * @param arrangement how it was arranged
 * @param setting     the speed setting below which it fails for certain
 */
public record Passed(String part, Arrangement arrangement, double setting) {
}
