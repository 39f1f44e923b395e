package tramontane.catalogue.internal;

import java.util.Optional;

/**
 * What air movers of each type can be at all, in dimensionless figures: flow φ = Q/(π/4 D² u) and pressure ψ = Δp/(ρ/2 u²) with the tip
 * speed u; of cross-flow rotors φ = Q/(D L u).
 *
 * <p>From memory: ranges of B. Eck, "Fans" (Pergamon, 1973) and T. Carolus, "Ventilatoren" (Springer, 2013), widened to what data
 * sheets of small air movers show, fan static pressure, two contra-rotating rotors in one frame included. A part outside is no
 * better part but a slip of units or of a decimal point.
 */
public enum TypeBounds {
    /** Propeller in a short duct. */
    AXIAL("axial", 0.04, 0.50, 0.06, 1.60, 0.72, 37),
    /** Diagonal rotor. */
    MIXED_FLOW("mixed-flow", 0.05, 0.60, 0.20, 1.80, 0.74, 35),
    /** Radial rotor, blades curved either way. */
    CENTRIFUGAL("centrifugal", 0.01, 1.60, 0.40, 3.50, 0.78, 35),
    /** Drum that air crosses twice. */
    CROSS_FLOW("cross-flow", 0.15, 1.80, 0.60, 5.00, 0.40, 35);

    /** Diameter at which the best reach half of what the best large ones reach, m. */
    private static final double HALF = 0.03;

    private final String type;
    private final double leastFlow;
    private final double mostFlow;
    private final double leastPressure;
    private final double mostPressure;
    private final double efficiency;
    private final double specificNoise;

    TypeBounds(String type, double leastFlow, double mostFlow, double leastPressure, double mostPressure, double efficiency,
            double specificNoise) {
        this.type = type;
        this.leastFlow = leastFlow;
        this.mostFlow = mostFlow;
        this.leastPressure = leastPressure;
        this.mostPressure = mostPressure;
        this.efficiency = efficiency;
        this.specificNoise = specificNoise;
    }

    /** The bounds of a type as a part names it. */
    public static Optional<TypeBounds> of(String type) {
        for (TypeBounds bounds : values()) {
            if (bounds.type.equals(type)) {
                return Optional.of(bounds);
            }
        }
        return Optional.empty();
    }

    /** Least flow coefficient at free delivery. */
    public double leastFlow() {
        return leastFlow;
    }

    /** Greatest flow coefficient at free delivery. */
    public double mostFlow() {
        return mostFlow;
    }

    /** Least of the highest pressure coefficients. */
    public double leastPressure() {
        return leastPressure;
    }

    /** Greatest of the highest pressure coefficients. */
    public double mostPressure() {
        return mostPressure;
    }

    /**
     * Overall static efficiency that the best of them reach, electrical input to air.
     *
     * @param diameter of the rotor, m
     */
    public double bestEfficiency(double diameter) {
        return efficiency * diameter / (diameter + HALF);
    }

    /** Specific level of A-weighted sound power, dB, with flow in m³/s and pressure in Pa. */
    public double specificNoise() {
        return specificNoise;
    }
}
