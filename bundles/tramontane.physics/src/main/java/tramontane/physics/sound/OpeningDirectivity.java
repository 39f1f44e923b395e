package tramontane.physics.sound;

import static tramontane.physics.sound.Inputs.positive;

/**
 * Directivity factor of an opening that air leaves or enters, by where it lies and by the angle to its axis.
 *
 * <p>VDI 2081-1:2019, equation 46 with table 15: Q = B2 + (B1 − B2)/(1 + (f√S/x0)^p), at 0° and at 45°; the values are quoted
 * second-hand, from an implementation that cites the table. Its rows for an opening in an edge or a corner of a room are left out: in
 * one the exponent is a misprint, the other falls where all else rises. Between 0° and 45° Q is interpolated straight in the angle.
 *
 * <p>Below 1 the table of an opening in the middle of a room (0.73 on its axis at low frequency) does not count: small against the
 * wavelength an opening radiates evenly in all directions, so that Q is 1. On the axis it is more from f√S of 13 m/s on.
 *
 * <p>Beyond 45° the table says nothing; what follows is our own assumption and on the loud side. Up to 90° the value of 45° holds.
 * From there Q goes straight, in the angle, to its value behind at 135° and stays: 1, as if it radiated evenly and nothing shaded it.
 * Nothing is taken off behind a wall, since the front of a device is none at low frequency. In no band it is louder behind than ahead.
 *
 * <p>All directions together thus have 1.0 (low frequency) to 3.2 times the power sent out for the middle of a room, 1.6 to 3.4 for a
 * wall; those up to 90° alone 0.5 to 2.2 and 0.9 to 2.3. The excess at high frequency is that of the value at 45° held to 90°.
 *
 * <p>Against the baffled {@link Piston} on the axis of an opening in a wall: both start near 2 (1.7 here), this one reaches 2.6 at ka 0.31
 * and 4.0 at ka 0.83, the piston at ka 1.26 and 2.05; from ka 2.64 on the piston is above, going on as (ka)² where this one stays
 * below 7.9. At 45° this one rises to 4.2 where the piston falls away. The table is for ducts in which sound arrives from many directions,
 * the piston for one that moves as a whole: the same trend on the axis until ka 3, nothing alike beyond.
 */
public enum OpeningDirectivity {
    /** Far from all walls: the end of a duct that stands free. */
    MIDDLE(0.73, 7.62, 158.51, 1.29, 0.84, 4.01, 213.89, 1.10),
    /** In a wall or ceiling, flush with it. */
    WALL(1.70, 7.88, 121.19, 1.28, 1.90, 4.16, 221.72, 1.25);

    private static final double TABULATED = Math.PI / 4;
    private static final double SIDE = Math.PI / 2;
    private static final double BEHIND = 3 * Math.PI / 4;

    private final double[] ahead;
    private final double[] aside;

    OpeningDirectivity(double b1, double b2, double x0, double p, double b1Aside, double b2Aside, double x0Aside, double pAside) {
        ahead = new double[] {b1, b2, x0, p};
        aside = new double[] {b1Aside, b2Aside, x0Aside, pAside};
    }

    /**
     * Q, a ratio: intensity at a distance over that of a source of the same power that radiates evenly into the whole space.
     *
     * @param frequency Hz, positive
     * @param area      of the opening, m², positive
     * @param angle     between its outward axis and the direction, rad, 0 to π
     */
    public double factor(double frequency, double area, double angle) {
        if (!(angle >= 0 && angle <= Math.PI)) {
            throw new IllegalArgumentException("angle must be 0 to π, got " + angle);
        }
        double x = positive("frequency", frequency) * Math.sqrt(positive("area", area));
        double beside = fit(aside, x);
        if (angle >= TABULATED && angle <= SIDE) {
            return beside;
        }
        if (angle < TABULATED) {
            double axis = fit(ahead, x);
            return axis + (beside - axis) * angle / TABULATED;
        }
        return beside + (1 - beside) * Math.min(1, (angle - SIDE) / (BEHIND - SIDE));
    }

    private static double fit(double[] of, double x) {
        return Math.max(1, of[1] + (of[0] - of[1]) / (1 + Math.pow(x / of[2], of[3])));
    }
}
