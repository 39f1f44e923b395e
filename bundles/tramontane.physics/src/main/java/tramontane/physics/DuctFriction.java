package tramontane.physics;

/**
 * Friction of a straight duct at any Reynolds number: laminar from its entry on, turbulent, and between them.
 *
 * <p>f·Re = (l¹² + t¹²)^(1/12), with l the apparent f·Re of the laminar flow and t the turbulent part of Churchill's formula
 * ({@link Friction#turbulentProduct}), both on the hydraulic diameter. This is Churchill's own way of joining them, with the
 * laminar part of the duct's shape in place of the round duct's. Smooth and, times Re, rising with Re everywhere. Between
 * Re 2000 and 4000 real flow may do either.
 *
 * @param laminar   friction of its laminar flow
 * @param length    length over hydraulic diameter, above zero; matters for developing flow only
 * @param roughness roughness over hydraulic diameter, 0 to 0.1
 */
public record DuctFriction(LaminarFriction laminar, double length, double roughness) {

    /** Largest roughness over hydraulic diameter for which the turbulent formulas stand; they were made for 0.05. */
    public static final double ROUGHEST = 0.1;

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
        return Friction.blend(laminar.product(reynolds / length), Friction.turbulentProduct(reynolds, roughness));
    }

    /**
     * Slope of {@link #product} in Re.
     *
     * @param reynolds Re, not negative
     */
    public double slope(double reynolds) {
        double u = reynolds / length;
        return Friction.blendSlope(laminar.product(u), laminar.slope(u) / length,
                Friction.turbulentProduct(reynolds, roughness), Friction.turbulentSlope(reynolds, roughness));
    }
}
