package tramontane.physics;

/**
 * Similarity of fans: from one point of operation to that of a geometrically similar fan at another speed, size or
 * density, at the same point of rating.
 *
 * <p>Source: ANSI/AMCA 210 (ANSI/ASHRAE 51) and ISO 5801, conversion rules, with compressibility factor Kp = 1, which
 * is near enough below about 2 kPa. Reynolds numbers must not be too far apart; small fans lose efficiency when much
 * slower, so the power is then a lower bound.
 */
public final class FanLaws {

    private FanLaws() {
    }

    /**
     * One point of operation.
     *
     * @param flow     volume flow at the inlet, m³/s
     * @param pressure fan pressure, Pa
     * @param power    shaft power, W
     */
    public record Point(double flow, double pressure, double power) {
    }

    /**
     * The like point of the other fan.
     *
     * @param point    point of the first fan
     * @param speed    speed of the other over the first, not negative
     * @param diameter impeller diameter of the other over the first, positive
     * @param density  inlet density of the other over the first, positive
     * @return the point
     */
    public static Point scale(Point point, double speed, double diameter, double density) {
        return new Point(point.flow() * flowRatio(speed, diameter),
                point.pressure() * pressureRatio(speed, diameter, density),
                point.power() * powerRatio(speed, diameter, density));
    }

    /** Q2/Q1 = (n2/n1)(D2/D1)³.
     *
     * @param speed    ratio of speeds
     * @param diameter ratio of diameters
     * @return ratio of volume flows */
    public static double flowRatio(double speed, double diameter) {
        require(speed, diameter, 1);
        return speed * diameter * diameter * diameter;
    }

    /** Δp2/Δp1 = (n2/n1)²(D2/D1)²(ρ2/ρ1).
     *
     * @param speed    ratio of speeds
     * @param diameter ratio of diameters
     * @param density  ratio of densities
     * @return ratio of pressures */
    public static double pressureRatio(double speed, double diameter, double density) {
        require(speed, diameter, density);
        double tip = speed * diameter;
        return tip * tip * density;
    }

    /** P2/P1 = (n2/n1)³(D2/D1)⁵(ρ2/ρ1).
     *
     * @param speed    ratio of speeds
     * @param diameter ratio of diameters
     * @param density  ratio of densities
     * @return ratio of shaft powers */
    public static double powerRatio(double speed, double diameter, double density) {
        return flowRatio(speed, diameter) * pressureRatio(speed, diameter, density);
    }

    private static void require(double speed, double diameter, double density) {
        if (!(speed >= 0 && diameter > 0 && density > 0)
                || !Double.isFinite(speed) || !Double.isFinite(diameter) || !Double.isFinite(density)) {
            throw new IllegalArgumentException("ratios of speed " + speed + ", diameter " + diameter + ", density "
                    + density + " must be positive");
        }
    }
}
