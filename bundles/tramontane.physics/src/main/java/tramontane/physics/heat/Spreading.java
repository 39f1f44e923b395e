package tramontane.physics.heat;

import static tramontane.physics.heat.Inputs.notNegative;
import static tramontane.physics.heat.Inputs.positive;

/**
 * Heat that spreads from a small source in a plate.
 *
 * <p>S. Lee, S. Song, V. Au, K. P. Moran, "Constriction/spreading resistance model for electronics packaging", ASME/JSME Thermal
 * Engineering Conf. 4 (1995) 199-206. A source of even flux in the middle of a plate that gives its heat on the far side with an even
 * coefficient h; both are taken as circles of their areas, radii a and b. ε = a/b, τ = t/b with the thickness t, Bi = h b/k.
 *
 * <p>Against the exact series in Bessel functions, ε 0.1 to 0.6, τ 0.02 to 2: as long as Bi is at most 0.1, as it is with air, the mean
 * is 9 % low to 4 % high and the maximum 7 % low to 12 % high, which is 3 % low to 6 % high of the whole resistance from source to air.
 * At Bi 1 to 10 the mean is 10 % off from τ 0.1 on and up to 22 % high in thinner plates, the maximum 10 % low to 48 % high. Larger
 * sources: up to 57 % off in what little spreading there is, 1 % of the whole at Bi to 0.1. A small source on a thick plate:
 * the maximum is exact, the mean 4.4 % high.
 *
 * <p>It rises with the resistance beyond the plate, from tanh λτ to coth λτ: where heat hardly gets out of the plate it comes out
 * evenly and has further to go. It falls as the source grows, to nothing where it covers the plate.
 */
public final class Spreading {

    private Spreading() {
    }

    /** Mean rise of a source of even flux on a half-space, times k and radius: 8/(3π²). */
    public static final double HALF_SPACE_MEAN = 8 / (3 * Math.PI * Math.PI);
    /** Rise at its centre, times k and radius: 1/π. */
    public static final double HALF_SPACE_CENTRE = 1 / Math.PI;
    /** Rise of an isothermal source on a half-space, times k and radius. */
    public static final double HALF_SPACE_ISOTHERMAL = 0.25;

    /**
     * Mean resistance of spreading over the source, K/W: (1 - ε)^1.5 φ/(2 √π k a); what conduction through the plate and beyond it
     * take comes on top.
     *
     * @param source       area of the source, m²
     * @param plate        area of the plate, at least that of the source, m²
     * @param thickness    m
     * @param conductivity W/(m K)
     * @param beyond       resistance from the far side of the plate on R0, K/W; 0 to infinity
     */
    public static double mean(double source, double plate, double thickness, double conductivity, double beyond) {
        double epsilon = Math.sqrt(source / plate);
        return 0.5 * Math.pow(1 - epsilon, 1.5) * shape(source, plate, thickness, conductivity, beyond)
                / (Math.sqrt(Math.PI) * conductivity * Math.sqrt(source / Math.PI));
    }

    /** Resistance of spreading to the hottest point of the source, K/W: (1 - ε) φ/(π k a); parameters as of {@link #mean}. */
    public static double maximum(double source, double plate, double thickness, double conductivity, double beyond) {
        double epsilon = Math.sqrt(source / plate);
        return (1 - epsilon) * shape(source, plate, thickness, conductivity, beyond)
                / (Math.PI * conductivity * Math.sqrt(source / Math.PI));
    }

    /** φ = (tanh λτ + λ/Bi)/(1 + (λ/Bi) tanh λτ), λ = π + 1/(√π ε), τ = t/b, Bi = 1/(π k b R0). */
    private static double shape(double source, double plate, double thickness, double conductivity, double beyond) {
        positive("area of the source", source);
        positive("thickness", thickness);
        positive("conductivity", conductivity);
        if (!(plate >= source && plate < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException("a plate of " + plate + " m² is smaller than its source of " + source + " m²");
        }
        if (!(beyond >= 0)) {
            throw new IllegalArgumentException("resistance beyond the plate must not be below zero, got " + beyond);
        }
        double b = Math.sqrt(plate / Math.PI);
        double lambda = Math.PI + 1 / (Math.sqrt(Math.PI) * Math.sqrt(source / plate));
        double tanh = Math.tanh(lambda * thickness / b);
        double overBiot = lambda * Math.PI * conductivity * b * beyond;
        return Double.isInfinite(overBiot) ? 1 / tanh : (tanh + overBiot) / (1 + overBiot * tanh);
    }

    /** Conduction straight through a plate, K/W: t/(k A). */
    public static double through(double area, double thickness, double conductivity) {
        return notNegative("thickness", thickness) / (positive("conductivity", conductivity) * positive("area", area));
    }
}
