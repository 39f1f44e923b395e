package tramontane.physics;

/**
 * A thin concentric orifice plate in a round duct: ISO 5167-2:2003, discharge coefficient of M. J. Reader-Harris and
 * J. A. Sattary (Reader-Harris/Gallagher equation, eq. 4) and permanent loss (eq. 7, 8).
 *
 * <p>Valid for ducts of 50 to 1000 mm, holes from 12.5 mm, β of 0.1 to 0.75, Re from 5000 (β up to 0.56, more above).
 * {@link #loss} holds C below Re 5000, smoothly, at about its value there.
 *
 * @param ratio    β, diameter of the hole over that of the duct, above 0, below 1
 * @param diameter diameter of the duct, m
 */
public record OrificePlate(double ratio, double diameter) {

    /** Reynolds number of the duct below which C is held. */
    public static final double LEAST_REYNOLDS = 5000;
    /** Duct diameter below which the equation has a further term, m. */
    private static final double SMALL = 0.07112;

    public OrificePlate {
        Resistance.requirePositive("diameter", diameter);
        if (!(ratio > 0 && ratio < 1)) {
            throw new IllegalArgumentException("hole over duct diameter must be above 0, below 1, got " + ratio);
        }
    }

    /**
     * Discharge coefficient C.
     *
     * @param reynolds   Re of the duct, above zero
     * @param upstream   L₁, distance of the upstream tap over the duct's diameter; 0 for corner taps
     * @param downstream L'₂, distance of the downstream tap from the plate's far face over the duct's diameter
     * @return C
     */
    public double discharge(double reynolds, double upstream, double downstream) {
        Resistance.requirePositive("Reynolds number", reynolds);
        double b4 = ratio * ratio * ratio * ratio;
        double a = Math.pow(19000 * ratio / reynolds, 0.8);
        double m = 2 * downstream / (1 - ratio);
        double c = 0.5961 + 0.0261 * ratio * ratio - 0.216 * b4 * b4
                + 0.000521 * Math.pow(1e6 * ratio / reynolds, 0.7)
                + (0.0188 + 0.0063 * a) * Math.pow(ratio, 3.5) * Math.pow(1e6 / reynolds, 0.3)
                + (0.043 + 0.080 * Math.exp(-10 * upstream) - 0.123 * Math.exp(-7 * upstream)) * (1 - 0.11 * a) * b4 / (1 - b4)
                - 0.031 * (m - 0.8 * Math.pow(m, 1.1)) * Math.pow(ratio, 1.3);
        return diameter < SMALL ? c + 0.011 * (0.75 - ratio) * (2.8 - diameter / 0.0254) : c;
    }

    /** Slope of {@link #discharge} with corner taps in Re. */
    private double dischargeSlope(double reynolds) {
        double a = Math.pow(19000 * ratio / reynolds, 0.8);
        double first = 0.000521 * Math.pow(1e6 * ratio / reynolds, 0.7);
        double second = Math.pow(ratio, 3.5) * Math.pow(1e6 / reynolds, 0.3);
        return -(0.7 * first + second * (0.3 * (0.0188 + 0.0063 * a) + 0.8 * 0.0063 * a)) / reynolds;
    }

    /**
     * Permanent loss of a discharge coefficient: K = [√(1 - β⁴(1-C²))/(C β²) - 1]².
     *
     * @param discharge C, above zero
     * @return K on the velocity in the duct
     */
    public double lossOf(double discharge) {
        double root = excess(discharge);
        return root * root;
    }

    /** √K */
    private double excess(double discharge) {
        double jet = discharge * ratio * ratio;
        return root(jet) / jet - 1;
    }

    private double root(double jet) {
        double b4 = ratio * ratio * ratio * ratio;
        return Math.sqrt(1 - b4 + jet * jet);
    }

    /**
     * Permanent loss at a Reynolds number, C by corner taps at (Re⁸ + 5000⁸)^(1/8).
     *
     * @param reynolds Re of the duct, not negative
     * @return K on the velocity in the duct
     */
    public double loss(double reynolds) {
        return lossOf(discharge(held(reynolds), 0, 0));
    }

    /**
     * Slope of {@link #loss} in Re.
     *
     * @param reynolds Re of the duct, not negative
     * @return dK/dRe
     */
    public double lossSlope(double reynolds) {
        double held = held(reynolds);
        double c = discharge(held, 0, 0);
        double jet = c * ratio * ratio;
        double b4 = ratio * ratio * ratio * ratio;
        double byDischarge = -2 * excess(c) * (1 - b4) / (root(jet) * jet * c);
        return byDischarge * dischargeSlope(held) * Math.pow(reynolds / held, 7);
    }

    private static double held(double reynolds) {
        double r = reynolds / LEAST_REYNOLDS;
        double square = r * r;
        double fourth = square * square;
        return LEAST_REYNOLDS * Math.pow(1 + fourth * fourth, 0.125);
    }
}
