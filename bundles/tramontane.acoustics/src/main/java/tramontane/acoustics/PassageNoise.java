package tramontane.acoustics;

import java.util.Optional;

/**
 * What a passage does to sound; a bank's own sound is not meant.
 *
 * @param insertionLoss  by how much it lowers the level of the sound that goes through it, dB; none in bands without a value
 * @param tolerance      by how much the truth may differ from a stated loss, dB
 * @param area           area that sound goes through, m²; empty where the kind of passage is to say
 * @param face           face of the equipment in which it sits, where it leads outside
 * @param directed       whether it radiates as an opening does, VDI 2081, and not evenly all round
 * @param inletObstacle  of a bank: free distance in front of the rotor, m
 * @param outletObstacle of a bank: free distance behind the rotor, m
 */
public record PassageNoise(Optional<Banded> insertionLoss, double tolerance, Optional<Double> area, Optional<Face> face, boolean directed,
        Optional<Double> inletObstacle, Optional<Double> outletObstacle) {

    /** Tolerance of a loss where none is stated, dB. */
    public static final double STANDARD_TOLERANCE = 2;

    /** Of which nothing is said. */
    public static final PassageNoise NONE = new PassageNoise(Optional.empty(), STANDARD_TOLERANCE, Optional.empty(), Optional.empty(), true,
            Optional.empty(), Optional.empty());
}
