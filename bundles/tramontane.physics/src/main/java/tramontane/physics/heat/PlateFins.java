package tramontane.physics.heat;

import static tramontane.physics.heat.Inputs.notNegative;
import static tramontane.physics.heat.Inputs.positive;

/**
 * Heat sinks of plate fins: P. Teertstra, M. M. Yovanovich, J. R. Culham, "Analytical forced convection modeling of plate fin
 * heat sinks", J. Electronics Manufacturing 10 (2000) 253-261. Laminar; made for 0.26 &lt; Re* &lt; 175 in air. Below, Nu falls to
 * Re* Pr/2, all the air as warm as the fins; above, it rises to that of a flat plate, 0.664 √Re* ∛Pr.
 *
 * <p>Temperatures count from the air that comes to the sink: how the air warms between the fins is contained.
 *
 * @param fins         number of fins N, at least 2
 * @param thickness    of a fin t, m
 * @param width        across the fins, from the outside of the first to that of the last, m
 * @param height       of the fins above their base H, m
 * @param length       along the flow L, m
 * @param conductivity of the fins k, W/(m K)
 */
public record PlateFins(int fins, double thickness, double width, double height, double length, double conductivity) {

    /** Re* in which the relation was made. */
    public static final double LEAST = 0.26;
    /** Re* up to which the relation was made. */
    public static final double MOST = 175;

    public PlateFins {
        if (fins < 2) {
            throw new IllegalArgumentException("a heat sink needs two fins, got " + fins);
        }
        positive("fin thickness", thickness);
        positive("height", height);
        positive("length", length);
        positive("conductivity", conductivity);
        if (!(positive("width", width) > fins * thickness)) {
            throw new IllegalArgumentException(fins + " fins of " + thickness + " m leave no room in a width of " + width + " m");
        }
    }

    /**
     * Nusselt number on the gap b between fins: [(Re* Pr/2)^-3 + (0.664 √Re* ∛Pr √(1 + 3.65/√Re*))^-3]^(-1/3).
     *
     * @param modified Re* = (u b/ν)(b/L), u between the fins
     */
    public static double nusselt(double modified, double prandtl) {
        notNegative("Re*", modified);
        positive("Prandtl number", prandtl);
        if (modified == 0) {
            return 0;
        }
        double developed = modified * prandtl / 2;
        double root = Math.sqrt(modified);
        double developing = 0.664 * root * Math.cbrt(prandtl) * Math.sqrt(1 + 3.65 / root);
        return developing * developed / Math.cbrt(developed * developed * developed + developing * developing * developing);
    }

    /** Gap between fins b, m. */
    public double gap() {
        return (width - fins * thickness) / (fins - 1);
    }

    /** Area that is open between the fins, m². */
    public double flowArea() {
        return (fins - 1) * gap() * height;
    }

    /**
     * Re* at a velocity between the fins.
     *
     * @param velocity           m/s
     * @param kinematicViscosity m²/s
     */
    public double modifiedReynolds(double velocity, double kinematicViscosity) {
        return notNegative("velocity", velocity) * gap() * gap() / (positive("kinematic viscosity", kinematicViscosity) * length);
    }

    /**
     * Heat transfer coefficient of the fins, W/(m² K).
     *
     * @param velocity           between the fins, m/s
     * @param kinematicViscosity m²/s
     * @param airConductivity    W/(m K)
     */
    public double coefficient(double velocity, double kinematicViscosity, double airConductivity, double prandtl) {
        return nusselt(modifiedReynolds(velocity, kinematicViscosity), prandtl) * positive("conductivity of air", airConductivity) / gap();
    }

    /**
     * Heat per kelvin between base and air that comes, W/K: h [(N-1) b L + 2 N H L η], η = tanh(mH)/(mH) with m as
     * {@link Fin#plate}. Conduction through the base is not in it.
     *
     * @param coefficient h, W/(m² K)
     */
    public double conductance(double coefficient) {
        double efficiency = Fin.efficiency(Fin.plate(coefficient, conductivity, thickness, length) * height);
        return coefficient * ((fins - 1) * gap() * length + 2 * fins * height * length * efficiency);
    }
}
