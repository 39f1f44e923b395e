package tramontane.drive;

import java.util.Optional;

/**
 * How a control law is carried out, and what is asked of a better one.
 *
 * @param lag        time constant of its sensor, s
 * @param interval   time between two readings, s; 0 for a continuous one
 * @param tolerance  how far the sensor may be off, K
 * @param moverLag   time constant with which speed follows the setting, s
 * @param resolution step of the setting; 0 for a smooth one
 * @param aim        what a computed law is to spare: one of {@link #AIMS}
 * @param reserve    what a computed law is to leave of every limit, K
 * @param gainMargin least gain margin
 * @param lowest     lowest setting that a computed law may give; what the movers need where it is not given
 */
public record LawDrive(double lag, double interval, double tolerance, Optional<Double> moverLag, double resolution, String aim,
        double reserve, double gainMargin, Optional<Double> lowest) {

    /** What a computed law may spare. */
    public static final java.util.List<String> AIMS = java.util.List.of("energy", "noise");

    /** Gain margin below which a loop is not taken for well damped: 6 dB, common practice. */
    public static final double GAIN_MARGIN = 2;

    /** Of which nothing is said. */
    public static final LawDrive NONE = new LawDrive(0, 0, 0, Optional.empty(), 0, "energy", 0, GAIN_MARGIN, Optional.empty());
}
