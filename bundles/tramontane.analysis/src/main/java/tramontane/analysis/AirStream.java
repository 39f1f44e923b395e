package tramontane.analysis;

/**
 * Air that goes by a component.
 *
 * @param flow         volume flow through the bay or passage where it stands, m³/s, not negative
 * @param area         free cross-section there, m²; NaN where it is not known
 * @param density      kg/m³
 * @param viscosity    dynamic viscosity, Pa s
 * @param conductivity W/(m K)
 * @param specificHeat J/(kg K)
 */
public record AirStream(double flow, double area, double density, double viscosity, double conductivity, double specificHeat) {

    /** Mean velocity, m/s; NaN where the cross-section is not known. */
    public double velocity() {
        return flow / area;
    }

    /** Kinematic viscosity, m²/s. */
    public double kinematicViscosity() {
        return viscosity / density;
    }

    /** Prandtl number. */
    public double prandtl() {
        return specificHeat * viscosity / conductivity;
    }
}
