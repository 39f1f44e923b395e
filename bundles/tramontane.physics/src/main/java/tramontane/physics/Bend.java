package tramontane.physics;

/**
 * Loss of total pressure in bends, friction included, on the velocity in the duct: D. C. Rennels, H. M. Hudson, Pipe Flow: A
 * Practical and Comprehensive Guide (2012), ch. 15. Made for turbulent flow in smooth round ducts with straight ducts before
 * and behind.
 */
public final class Bend {

    private Bend() {
    }

    /**
     * Mitre bend: K = 0.42 sin(α/2) + 2.56 sin³(α/2).
     *
     * @param angle α, rad, above 0, to π
     * @return K
     */
    public static double mitre(double angle) {
        double sine = half(angle);
        return 0.42 * sine + 2.56 * sine * sine * sine;
    }

    /**
     * The part of a rounded bend's K that does not go with friction: 0.10 sin(α/2).
     *
     * @param angle α, rad, above 0, to π
     * @return K - f {@link #frictionLength}
     */
    public static double turning(double angle) {
        return 0.10 * half(angle);
    }

    /**
     * The part of a rounded bend's K that goes with the friction factor f: α r/d + 2.4 sin(α/2) +
     * 6.6 (√sin(α/2) + sin(α/2))/(r/d)^(4α/π).
     *
     * @param angle  α, rad, above 0, to π
     * @param radius r/d, radius of the centreline over diameter, at least 0.5
     * @return length of straight duct of that friction, over diameter
     */
    public static double frictionLength(double angle, double radius) {
        if (!(radius >= 0.5 && radius < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException("radius of a bend over its diameter must be at least 0.5, got " + radius);
        }
        double sine = half(angle);
        return angle * radius + 2.4 * sine + 6.6 * (Math.sqrt(sine) + sine) / Math.pow(radius, 4 * angle / Math.PI);
    }

    /**
     * Rounded bend: K = f α r/d + (0.10 + 2.4 f) sin(α/2) + 6.6 f (√sin(α/2) + sin(α/2))/(r/d)^(4α/π).
     *
     * @param angle    α, rad, above 0, to π
     * @param radius   r/d, radius of the centreline over diameter, at least 0.5
     * @param friction f, Darcy friction factor of the duct
     * @return K
     */
    public static double rounded(double angle, double radius, double friction) {
        return turning(angle) + friction * frictionLength(angle, radius);
    }

    private static double half(double angle) {
        if (!(angle > 0 && angle <= Math.PI)) {
            throw new IllegalArgumentException("angle of a bend must be above 0, to π, got " + angle);
        }
        return Math.sin(angle / 2);
    }
}
