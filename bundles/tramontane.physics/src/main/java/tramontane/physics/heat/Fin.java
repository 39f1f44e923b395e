package tramontane.physics.heat;

import static tramontane.physics.heat.Inputs.notNegative;
import static tramontane.physics.heat.Inputs.positive;

/**
 * Fins of constant section: F. P. Incropera, D. P. DeWitt, Fundamentals of Heat and Mass Transfer, ch. 3.6. Temperature is even
 * across the fin, which holds as long as h times half its thickness over k is below 0.1; h is even over its surface.
 */
public final class Fin {

    private Fin() {
    }

    /**
     * Efficiency of a fin with an adiabatic tip: tanh(mL)/(mL).
     *
     * @param ml m times the length L of the fin; a tip that gives heat too adds A/P to L
     * @return heat over that of a fin as warm as its base, above 0, to 1
     */
    public static double efficiency(double ml) {
        notNegative("m L", ml);
        return ml < 1e-4 ? 1 - ml * ml / 3 : Math.tanh(ml) / ml;
    }

    /**
     * m of any fin: √(h P/(k A)).
     *
     * @param coefficient  h, W/(m² K)
     * @param perimeter    P, m
     * @param conductivity k, W/(m K)
     * @param section      A, m²
     * @return 1/m
     */
    public static double m(double coefficient, double perimeter, double conductivity, double section) {
        return Math.sqrt(notNegative("heat transfer coefficient", coefficient) * positive("perimeter", perimeter)
                / (positive("conductivity", conductivity) * positive("section", section)));
    }

    /**
     * m of a plate fin, its edges included: √(2 h (t + L)/(k t L)).
     *
     * @param coefficient  h, W/(m² K)
     * @param conductivity k, W/(m K)
     * @param thickness    t, m
     * @param length       L along the flow, m
     * @return 1/m
     */
    public static double plate(double coefficient, double conductivity, double thickness, double length) {
        return m(coefficient, 2 * (thickness + length), conductivity, thickness * length);
    }

    /**
     * m of a round pin: √(4 h/(k D)).
     *
     * @param coefficient  h, W/(m² K)
     * @param conductivity k, W/(m K)
     * @param diameter     D, m
     * @return 1/m
     */
    public static double pin(double coefficient, double conductivity, double diameter) {
        return m(coefficient, Math.PI * diameter, conductivity, Math.PI / 4 * diameter * diameter);
    }

    /**
     * Heat of a fin with a convective tip per kelvin between base and air: √(h P k A) (sinh mL + r cosh mL)/(cosh mL + r sinh mL),
     * r = h/(m k).
     *
     * @param coefficient  h, on the sides and the tip, W/(m² K)
     * @param perimeter    P, m
     * @param conductivity k, W/(m K)
     * @param section      A, m²
     * @param length       L from base to tip, m
     * @return W/K
     */
    public static double conductance(double coefficient, double perimeter, double conductivity, double section, double length) {
        notNegative("length", length);
        double m = m(coefficient, perimeter, conductivity, section);
        if (m == 0) {
            return 0;
        }
        double r = coefficient / (m * conductivity);
        double tanh = Math.tanh(m * length);
        return Math.sqrt(coefficient * perimeter * conductivity * section) * (tanh + r) / (1 + r * tanh);
    }
}
