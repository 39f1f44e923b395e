package tramontane.physics.heat;

import static tramontane.physics.heat.Inputs.positive;

/** Radiation of grey surfaces: F. P. Incropera, D. P. DeWitt, Fundamentals of Heat and Mass Transfer, ch. 12 and 13. */
public final class Radiation {

    /** Stefan-Boltzmann constant, W/(m² K⁴) (CODATA 2018). */
    public static final double STEFAN_BOLTZMANN = 5.670374419e-8;

    private Radiation() {
    }

    /**
     * Net flux from a surface to large surroundings, W/m²: ε σ (T1⁴ - T2⁴).
     *
     * @param emissivity   ε, 0 to 1
     * @param surface      T1, K
     * @param surroundings T2, K
     */
    public static double flux(double emissivity, double surface, double surroundings) {
        return emissivity(emissivity) * STEFAN_BOLTZMANN * (pow4(surface) - pow4(surroundings));
    }

    /**
     * Flux over difference of temperature of a black surface, W/(m² K): σ (T1 + T2)(T1² + T2²).
     *
     * @param surface      T1, K
     * @param surroundings T2, K
     */
    public static double coefficient(double surface, double surroundings) {
        return STEFAN_BOLTZMANN * (positive("temperature", surface) + positive("temperature", surroundings))
                * (surface * surface + surroundings * surroundings);
    }

    /**
     * Net flux between two large parallel plates, W/m²: σ (T1⁴ - T2⁴)/(1/ε1 + 1/ε2 - 1).
     *
     * @param emissivity of the first, ε1, above 0, to 1
     * @param other      of the second, ε2, above 0, to 1
     * @param surface    temperature of the first, T1, K
     * @param opposite   temperature of the second, T2, K
     */
    public static double betweenPlates(double emissivity, double other, double surface, double opposite) {
        return STEFAN_BOLTZMANN * (pow4(surface) - pow4(opposite))
                / (1 / positive("emissivity", emissivity(emissivity)) + 1 / positive("emissivity", emissivity(other)) - 1);
    }

    private static double pow4(double t) {
        double square = positive("temperature", t) * t;
        return square * square;
    }

    private static double emissivity(double value) {
        if (!(value >= 0 && value <= 1)) {
            throw new IllegalArgumentException("emissivity must be 0 to 1, got " + value);
        }
        return value;
    }
}
