package tramontane.physics.heat;

import static tramontane.physics.heat.Inputs.notNegative;
import static tramontane.physics.heat.Inputs.positive;

/**
 * Forced flow along a flat plate: F. P. Incropera, D. P. DeWitt, Fundamentals of Heat and Mass Transfer, ch. 7.2. Reynolds
 * numbers Re = u x/ν on the length x from the leading edge, Nusselt numbers Nu = h x/k on the same; Prandtl number Pr at least
 * 0.6. Against the boundary-layer equations the laminar ones of even temperature are 1.1 % high at Pr 0.6, 0.7 % high in air and 2 %
 * low at Pr 50.
 */
public final class FlatPlate {

    /** Reynolds number at which the flow is taken to turn turbulent. */
    public static final double TRANSITION = 5e5;

    /** So that the mean is continuous at the transition; rounded to 871 in print. */
    private static final double LAMINAR_PART = 0.037 * Math.pow(TRANSITION, 0.8) - 0.664 * Math.sqrt(TRANSITION);

    private FlatPlate() {
    }

    /** Local Nusselt number of an isothermal plate, laminar: 0.332 √Re ∛Pr. */
    public static double localLaminar(double reynolds, double prandtl) {
        return 0.332 * Math.sqrt(notNegative("Reynolds number", reynolds)) * Math.cbrt(positive("Prandtl number", prandtl));
    }

    /** Local Nusselt number of a plate of even heat flux, laminar: 0.453 √Re ∛Pr; 0.9 % low in air, 2.3 % at Pr 50. */
    public static double localEvenFlux(double reynolds, double prandtl) {
        return 0.453 * Math.sqrt(notNegative("Reynolds number", reynolds)) * Math.cbrt(positive("Prandtl number", prandtl));
    }

    /** Mean Nusselt number, laminar all along: 0.664 √Re ∛Pr; to Re 5e5. */
    public static double laminar(double reynolds, double prandtl) {
        return 2 * localLaminar(reynolds, prandtl);
    }

    /** Mean Nusselt number, turbulent all along: 0.037 Re^0.8 ∛Pr; to Re 1e8, Pr to 60. */
    public static double turbulent(double reynolds, double prandtl) {
        return 0.037 * Math.pow(notNegative("Reynolds number", reynolds), 0.8) * Math.cbrt(positive("Prandtl number", prandtl));
    }

    /**
     * Mean Nusselt number: laminar to {@link #TRANSITION}, behind it (0.037 Re^0.8 - 871.3) ∛Pr with the constant that makes it
     * continuous there; to Re 1e8, Pr to 60.
     */
    public static double mean(double reynolds, double prandtl) {
        return reynolds <= TRANSITION ? laminar(reynolds, prandtl)
                : turbulent(reynolds, prandtl) - LAMINAR_PART * Math.cbrt(prandtl);
    }
}
