package tramontane.physics;

/**
 * Friction of a straight duct at any Reynolds number: laminar from its entry on, turbulent, and between them.
 *
 * <p>f·Re = (l¹² + t¹²)^(1/12), with l the apparent f·Re of the laminar flow and t the turbulent part of Churchill's formula
 * ({@link Friction#turbulentProduct}), both on the hydraulic diameter. This is Churchill's own way of joining them, with the
 * laminar part of the duct's shape in place of the round duct's. Smooth and, times Re, rising with Re everywhere. Between
 * Re 2000 and 4000 real flow may do either.
 *
 * <p>Laminar flow does not go on developing at high Re. Beyond about Re 3000 the pressure that it costs (f·Re²) stays
 * as it is there, so that turbulent friction soon takes over, in a short duct by about Re 6000; common practice is to take
 * turbulent friction from Re 2300 to 4000 on.
 *
 * @param laminar   friction of its laminar flow
 * @param length    length over hydraulic diameter, above zero; matters for developing flow only
 * @param roughness roughness over hydraulic diameter, 0 to 0.1
 */
public record DuctFriction(LaminarFriction laminar, double length, double roughness) {

    /** Largest roughness over hydraulic diameter for which the turbulent formulas stand; they were made for 0.05. */
    public static final double ROUGHEST = 0.1;

    /** Reynolds number at which laminar flow ends here, in the middle of 2000 to 4000. */
    private static final double TURNS = 3000;
    /** How sharply. */
    private static final int SHARPNESS = 48;

    public DuctFriction {
        Resistance.requirePositive("length over diameter", length);
        if (!(roughness >= 0 && roughness <= ROUGHEST)) {
            throw new IllegalArgumentException("roughness over hydraulic diameter must be 0 to " + ROUGHEST + ", got " + roughness);
        }
    }

    /**
     * f·Re.
     *
     * @param reynolds Re, not negative
     */
    public double product(double reynolds) {
        double held = held(reynolds);
        return Friction.blend(laminar.product(reynolds * held / length) * held, Friction.turbulentProduct(reynolds, roughness));
    }

    /**
     * Slope of {@link #product} in Re.
     *
     * @param reynolds Re, not negative
     */
    public double slope(double reynolds) {
        double held = held(reynolds);
        // with h = (1 + x^n)^(-1/n): d(Re h)/dRe = h^(n+1), dh/dRe = (h^(n+1) - h)/Re
        double turned = Math.pow(held, SHARPNESS + 1);
        double u = reynolds * held / length;
        double product = laminar.product(u);
        double slope = laminar.slope(u) / length * turned * held + (reynolds > 0 ? product * (turned - held) / reynolds : 0);
        return Friction.blendSlope(product * held, slope, Friction.turbulentProduct(reynolds, roughness),
                Friction.turbulentSlope(reynolds, roughness));
    }

    /** Reynolds number at which laminar friction is taken, over the real one: 1 below that at which it ends. */
    private static double held(double reynolds) {
        double x = reynolds / TURNS;
        return x < 0.2 ? 1 : x > 5 ? 1 / x : Math.pow(1 + Math.pow(x, SHARPNESS), -1.0 / SHARPNESS);
    }
}
