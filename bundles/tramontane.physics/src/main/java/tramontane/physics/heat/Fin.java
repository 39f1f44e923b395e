package tramontane.physics.heat;

import static tramontane.physics.heat.Inputs.notNegative;
import static tramontane.physics.heat.Inputs.positive;

/** Fins of constant section: F. P. Incropera, D. P. DeWitt, Fundamentals of Heat and Mass Transfer, ch. 3.6. */
public final class Fin {

    private Fin() {
    }

    /**
     * Efficiency of a fin with an adiabatic tip: tanh(mL)/(mL).
     *
     * @param ml m L
     * @return above 0, to 1
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

    /** m of a plate fin of a thickness and a length along the flow, its edges included: √(2 h (t + L)/(k t L)). */
    public static double plate(double coefficient, double conductivity, double thickness, double length) {
        return m(coefficient, 2 * (thickness + length), conductivity, thickness * length);
    }

    /** m of a round pin: √(4 h/(k D)). */
    public static double pin(double coefficient, double conductivity, double diameter) {
        return m(coefficient, Math.PI * diameter, conductivity, Math.PI / 4 * diameter * diameter);
    }

    /**
     * Heat of a fin with a convective tip per kelvin at its base, W/K: √(h P k A) (sinh mL + r cosh mL)/(cosh mL + r sinh mL), r = h/(m k).
     *
     * @param length L, m
     */
    public static double conductance(double coefficient, double perimeter, double conductivity, double section, double length) {
        double m = m(coefficient, perimeter, conductivity, section);
        if (m == 0) {
            return 0;
        }
        double r = coefficient / (m * conductivity);
        double tanh = Math.tanh(m * notNegative("length", length));
        return Math.sqrt(coefficient * perimeter * conductivity * section) * (tanh + r) / (1 + r * tanh);
    }
}
