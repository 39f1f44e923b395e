package tramontane.acoustics.internal.path;

import java.util.Optional;
import tramontane.acoustics.Face;

/**
 * What sound leaves the box by.
 *
 * @param id        that of the passage
 * @param face      the face of the equipment in which it sits; empty where not stated
 * @param area      m²
 * @param assumed   whether the area is assumed
 * @param directed  whether it radiates as an opening does, not evenly all round
 * @param tolerance the most by which sound from it may be louder in any band since stated insertion losses may all be too high by
 *                  their tolerances, dB; 0 where none is stated
 */
public record Opening(String id, Optional<Face> face, double area, boolean assumed, boolean directed, double tolerance) {
}
