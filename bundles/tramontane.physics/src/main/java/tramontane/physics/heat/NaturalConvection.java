package tramontane.physics.heat;

import static tramontane.physics.heat.Inputs.notNegative;
import static tramontane.physics.heat.Inputs.positive;

/**
 * Air that moves by its own warmth along a surface; Nu = h L/k. Upright plates and lying cylinders: S. W. Churchill, H. H. S. Chu,
 * Int. J. Heat Mass Transfer 18 (1975) 1323-1329 and 1049-1053. Plates that lie: J. R. Lloyd, W. R. Moran, J. Heat Transfer 96
 * (1974) 443-447, for the face that drives the air; E. Radziemska, W. M. Lewandowski, Applied Energy 68 (2001) 347-366, for the
 * one that holds it; both as in F. P. Incropera, D. P. DeWitt, Fundamentals of Heat and Mass Transfer, ch. 9.6. Older editions
 * have 0.27 Ra^(1/4) for the latter, 18 % less at Ra 1e4, 46 % more at 1e9.
 */
public final class NaturalConvection {

    /** Acceleration of gravity, m/s². */
    public static final double GRAVITY = 9.80665;

    private NaturalConvection() {
    }

    /**
     * Rayleigh number of air, g β ΔT L³/(ν α) with β = 1/T of an ideal gas.
     *
     * @param difference         ΔT between surface and air, K, its sign left out
     * @param length             L, m: height of an upright plate, diameter of a cylinder, area over perimeter of a plate that lies
     * @param film               T, mean of surface and air, K
     * @param kinematicViscosity ν, m²/s
     * @param diffusivity        α = k/(ρ cp), m²/s
     */
    public static double rayleigh(double difference, double length, double film, double kinematicViscosity, double diffusivity) {
        return GRAVITY / positive("film temperature", film) * notNegative("difference of temperature", Math.abs(difference))
                * positive("length", length) * length * length
                / (positive("kinematic viscosity", kinematicViscosity) * positive("diffusivity", diffusivity));
    }

    /** Upright plate, Ra to 1e12, any Pr: {0.825 + 0.387 Ra^(1/6)/[1 + (0.492/Pr)^(9/16)]^(8/27)}². */
    public static double verticalPlate(double rayleigh, double prandtl) {
        double root = 0.825 + 0.387 * Math.pow(notNegative("Rayleigh number", rayleigh), 1.0 / 6)
                / Math.pow(1 + Math.pow(0.492 / positive("Prandtl number", prandtl), 9.0 / 16), 8.0 / 27);
        return root * root;
    }

    /** Upright plate, laminar, to Ra 1e9: 0.68 + 0.670 Ra^(1/4)/[1 + (0.492/Pr)^(9/16)]^(4/9). */
    public static double verticalPlateLaminar(double rayleigh, double prandtl) {
        return 0.68 + 0.670 * Math.pow(notNegative("Rayleigh number", rayleigh), 0.25)
                / Math.pow(1 + Math.pow(0.492 / positive("Prandtl number", prandtl), 9.0 / 16), 4.0 / 9);
    }

    /** Horizontal cylinder, to Ra 1e12, any Pr: {0.60 + 0.387 Ra^(1/6)/[1 + (0.559/Pr)^(9/16)]^(8/27)}². */
    public static double horizontalCylinder(double rayleigh, double prandtl) {
        double root = 0.60 + 0.387 * Math.pow(notNegative("Rayleigh number", rayleigh), 1.0 / 6)
                / Math.pow(1 + Math.pow(0.559 / positive("Prandtl number", prandtl), 9.0 / 16), 8.0 / 27);
        return root * root;
    }

    /**
     * Warm face that looks up, or cold one that looks down: 0.54 Ra^(1/4) to 1e7, 0.15 Ra^(1/3) from there to 1e11. Both meet at
     * Ra 4.7e6; the larger one counts, by up to 6.4 % more than in print between there and 1e7. Below Ra 1e4 the first goes on,
     * outside its range.
     */
    public static double hotFaceUp(double rayleigh) {
        return Math.max(0.54 * Math.pow(notNegative("Rayleigh number", rayleigh), 0.25), 0.15 * Math.cbrt(rayleigh));
    }

    /** Warm face that looks down, or cold one that looks up: 0.52 Ra^(1/5), 1e4 to 1e9. */
    public static double hotFaceDown(double rayleigh) {
        return 0.52 * Math.pow(notNegative("Rayleigh number", rayleigh), 0.2);
    }
}
