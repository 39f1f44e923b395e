package tramontane.reliability.bearing;

import java.util.List;

/**
 * Basic rating life of rolling bearings by fatigue; ISO 281:2007.
 *
 * <p>In light bearings of fans fatigue is far from limiting; their grease is. So this life stands beside that of the grease, not for it.
 */
public enum RollingBearing {
    /** Ball bearings: exponent 3, spread of lives 10/9. */
    BALL(3, 10.0 / 9),
    /** Roller bearings: exponent 10/3, spread of lives 9/8. */
    ROLLER(10.0 / 3, 9.0 / 8);

    /** Shape of the lives at reliabilities of 95 to 99 %: that which the factor a1 of the editions before 2007 follows. */
    public static final double SHAPE = 1.5;

    private static final double MILLION = 1e6;

    private final double exponent;
    private final double spread;

    RollingBearing(double exponent, double spread) {
        this.exponent = exponent;
        this.spread = spread;
    }

    /** Exponent p of the load. */
    public double exponent() {
        return exponent;
    }

    /** Weibull slope e by which lives of several bearings are put together. */
    public double spread() {
        return spread;
    }

    /**
     * L10 in revolutions: {@code 10^6 (C/P)^p}; ISO 281:2007, equation for the basic rating life.
     *
     * @param rating basic dynamic load rating C, N
     * @param load   dynamic equivalent load P, N
     */
    public double revolutions(double rating, double load) {
        return MILLION * Math.pow(rating / load, exponent);
    }

    /**
     * L10 in seconds.
     *
     * @param rating basic dynamic load rating C, N
     * @param load   dynamic equivalent load P, N
     * @param speed  rad/s
     */
    public double life(double rating, double load, double speed) {
        return revolutions(rating, load) * 2 * Math.PI / speed;
    }

    /**
     * L10 of several bearings of which the first to fail counts: {@code (Σ L_i^-e)^(-1/e)}; product of survivals of like spread, the
     * derivation of ISO 281 (ISO/TR 1281-1).
     *
     * @param lives L10 of each, at least one
     */
    public double together(List<Double> lives) {
        return Math.pow(lives.stream().mapToDouble(life -> Math.pow(life, -spread)).sum(), -1 / spread);
    }

    /**
     * Dynamic equivalent load {@code P = X F_r + Y F_a}.
     *
     * @param radial       F_r, N
     * @param axial        F_a, N
     * @param radialFactor X
     * @param axialFactor  Y
     */
    public static double load(double radial, double axial, double radialFactor, double axialFactor) {
        return radialFactor * radial + axialFactor * axial;
    }
}
