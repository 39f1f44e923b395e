package tramontane.physics.heat;

import static tramontane.physics.heat.Inputs.notNegative;
import static tramontane.physics.heat.Inputs.positive;

/** Two surfaces that touch with something between them, in the sense of ASTM D5470. */
public final class Interface {

    private Interface() {
    }

    /**
     * Resistance, K/W: (t/k + Rc)/A.
     *
     * @param thickness    of what is between them, m
     * @param conductivity of it, W/(m K)
     * @param contact      contact resistance of both faces, m² K/W
     * @param area         m²
     */
    public static double resistance(double thickness, double conductivity, double contact, double area) {
        return (notNegative("thickness", thickness) / positive("conductivity", conductivity) + notNegative("contact resistance", contact))
                / positive("area", area);
    }
}
