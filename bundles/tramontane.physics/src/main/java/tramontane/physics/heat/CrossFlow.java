package tramontane.physics.heat;

import static tramontane.physics.heat.Inputs.notNegative;
import static tramontane.physics.heat.Inputs.positive;

/**
 * Flow across a cylinder: S. W. Churchill, M. Bernstein, J. Heat Transfer 99 (1977) 300-306. Re = u D/ν and Nu = h D/k on the
 * diameter D and the velocity far from it, properties at the mean of surface and air; Re Pr above 0.2, Re to 1e7. Measurements
 * spread by 20 to 30 % around it; below Re Pr 0.2 it goes on to 0.3.
 */
public final class CrossFlow {

    private CrossFlow() {
    }

    /** Mean Nusselt number: 0.3 + 0.62 √Re ∛Pr/[1 + (0.4/Pr)^(2/3)]^(1/4) [1 + (Re/282000)^(5/8)]^(4/5). */
    public static double cylinder(double reynolds, double prandtl) {
        notNegative("Reynolds number", reynolds);
        positive("Prandtl number", prandtl);
        return 0.3 + 0.62 * Math.sqrt(reynolds) * Math.cbrt(prandtl) / Math.pow(1 + Math.pow(0.4 / prandtl, 2.0 / 3), 0.25)
                * Math.pow(1 + Math.pow(reynolds / 282_000, 0.625), 0.8);
    }
}
