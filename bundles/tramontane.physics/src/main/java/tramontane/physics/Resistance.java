package tramontane.physics;

/**
 * Pressure drop of passages and its slope, made for solvers: odd, strictly increasing, smooth, with a positive slope
 * at rest.
 *
 * <p>A pure square law has no slope at zero flow, where a solver would divide by it; nor has real air, since the drop
 * becomes linear in creeping flow. Here {@code Δp = c q (q⁴ + q₀⁴)^(1/4)} with c = Kρ/(2A²). It is linear below the
 * transition flow q₀ and differs from the square law by (q₀/q)⁴/4, that is below 1e-6 above 23 q₀.
 */
public final class Resistance {

    /**
     * Reynolds number at which creeping and square law meet. A thin orifice has K Re about 30 in creeping flow and K
     * about 2.8 in fast flow (Idelchik, Handbook of Hydraulic Resistance, 3rd ed., section 4; from memory), hence 10.
     */
    public static final double TRANSITION_REYNOLDS = 10;

    private Resistance() {
    }

    /**
     * Coefficient c of the square law.
     *
     * @param loss    loss coefficient K on the velocity in the area
     * @param density kg/m³
     * @param area    m²
     * @return Kρ/(2A²), Pa s²/m⁶
     */
    public static double coefficient(double loss, double density, double area) {
        requirePositive("area", area);
        requirePositive("density", density);
        requirePositive("loss coefficient", loss);
        return loss * density / (2 * area * area);
    }

    /**
     * Flow at which the Reynolds number on the hydraulic diameter is {@link #TRANSITION_REYNOLDS}.
     *
     * @param area      m²
     * @param diameter  hydraulic diameter of one hole, m
     * @param density   kg/m³
     * @param viscosity Pa s
     * @return q₀, m³/s
     */
    public static double transitionFlow(double area, double diameter, double density, double viscosity) {
        requirePositive("area", area);
        requirePositive("diameter", diameter);
        requirePositive("density", density);
        requirePositive("viscosity", viscosity);
        return TRANSITION_REYNOLDS * viscosity * area / (density * diameter);
    }

    /**
     * Pressure drop of a local loss, {@code c q (q⁴ + q₀⁴)^(1/4)}.
     *
     * @param flow           q, m³/s, either sign
     * @param coefficient    c, Pa s²/m⁶
     * @param transitionFlow q₀, m³/s
     * @return Pa, of the sign of the flow
     */
    public static double drop(double flow, double coefficient, double transitionFlow) {
        return coefficient * flow * magnitude(flow, transitionFlow);
    }

    /**
     * Slope of {@link #drop(double, double, double)}.
     *
     * @param flow           q, m³/s, either sign
     * @param coefficient    c, Pa s²/m⁶
     * @param transitionFlow q₀, m³/s
     * @return Pa s/m³, positive
     */
    public static double slope(double flow, double coefficient, double transitionFlow) {
        double size = magnitude(flow, transitionFlow);
        // a flow whose fourth power is too small for a double is at rest
        double ratio = size == 0 ? 0 : flow / size;
        double square = ratio * ratio;
        return coefficient * size * (1 + square * square);
    }

    /**
     * Pressure drop with a linear part, as filters and narrow channels have: {@code a q + c q (q⁴ + q₀⁴)^(1/4)}.
     *
     * @param flow           q, m³/s, either sign
     * @param linear         a, Pa s/m³
     * @param quadratic      c, Pa s²/m⁶
     * @param transitionFlow q₀, m³/s; 0 is in order where the linear part is positive
     * @return Pa, of the sign of the flow
     */
    public static double drop(double flow, double linear, double quadratic, double transitionFlow) {
        return linear * flow + drop(flow, quadratic, transitionFlow);
    }

    /**
     * Slope of {@link #drop(double, double, double, double)}.
     *
     * @param flow           q, m³/s, either sign
     * @param linear         a, Pa s/m³
     * @param quadratic      c, Pa s²/m⁶
     * @param transitionFlow q₀, m³/s
     * @return Pa s/m³
     */
    public static double slope(double flow, double linear, double quadratic, double transitionFlow) {
        return linear + slope(flow, quadratic, transitionFlow);
    }

    /** (q⁴ + q₀⁴)^(1/4) */
    private static double magnitude(double flow, double transitionFlow) {
        double q = flow * flow;
        double t = transitionFlow * transitionFlow;
        return Math.sqrt(Math.sqrt(q * q + t * t));
    }

    /**
     * Loss coefficient of a thin sharp-edged perforated plate or grille in a duct, on the velocity of approach.
     *
     * <p>I. E. Idelchik, Handbook of Hydraulic Resistance, 3rd ed. (1994), diagram 8-1:
     * K = [0.707 (1-F)^0.375 + 1 - F]²/F². Valid for thickness below 0.015 hole diameters and a hole Reynolds number
     * above 1e5; correlations for plates differ by 10 to 30 %.
     *
     * @param freeArea F, open over whole area, above 0 to 1
     * @return K on the velocity in the whole area
     */
    public static double thinPlate(double freeArea) {
        return opening(freeArea) / (freeArea * freeArea);
    }

    /**
     * Loss coefficient of a sharp-edged opening, on the velocity in the opening: {@link #thinPlate} times F².
     *
     * <p>With F going to 0 it is the opening in a wall between two plenums; the drop is then in total pressure and
     * contains the lost exit head. The formula's limit is (1 + 0.707)² = 2.914. Free contraction to 0.611 gives
     * 1/0.611² = 2.68, and the handbook's diagram lies between 2.7 and 2.85 (from memory), so the formula is on the
     * safe side by up to 9 %.
     *
     * @param areaRatio opening over wall area, 0 for a large wall, to 1
     * @return K on the velocity in the opening
     */
    public static double opening(double areaRatio) {
        if (!(areaRatio >= 0 && areaRatio <= 1)) {
            throw new IllegalArgumentException("ratio of areas must be 0 to 1, got " + areaRatio);
        }
        double solid = 1 - areaRatio;
        double root = 0.707 * Math.pow(solid, 0.375) + solid;
        return root * root;
    }

    /**
     * Loss coefficient of a thick square-edged perforated plate or grille in a duct, on the velocity of approach.
     *
     * <p>I. E. Idelchik, Handbook of Hydraulic Resistance, 3rd ed. (1994), diagram 8-3:
     * K = [0.5 (1-F)^0.75 + τ (1-F)^1.375 + (1-F)² + λ l/d]/F², τ = (2.4 - l/d) 10^(-φ),
     * φ = 0.25 + 0.535 (l/d)⁸/(0.05 + (l/d)⁷). Valid for l/d above 0.015; τ is 0 from 2.4 on.
     *
     * @param freeArea  F, open over whole area, above 0 to 1
     * @param thickness l/d, depth of a hole over its hydraulic diameter
     * @param friction  Darcy friction factor λ of the hole's wall
     * @return K on the velocity in the whole area
     */
    public static double thickPlate(double freeArea, double thickness, double friction) {
        requirePositive("free area", freeArea);
        if (!(freeArea <= 1) || !(thickness >= 0) || !(friction >= 0)
                || Double.isInfinite(thickness) || Double.isInfinite(friction)) {
            throw new IllegalArgumentException("plate of free area " + freeArea + ", thickness ratio " + thickness
                    + ", friction factor " + friction + "; expected 0 to 1 and not negative");
        }
        double solid = 1 - freeArea;
        return (0.5 * Math.pow(solid, 0.75) + jetLoss(thickness) * Math.pow(solid, 1.375) + solid * solid + friction * thickness)
                / (freeArea * freeArea);
    }

    /**
     * What a hole loses by its jet not filling it before it ends: τ = (2.4 - l/d) 10^(-φ),
     * φ = 0.25 + 0.535 (l/d)⁸/(0.05 + (l/d)⁷); 0 from l/d 2.4 on. I. E. Idelchik, Handbook of Hydraulic Resistance, 3rd ed.
     * (1994), diagram 8-3; within 6 % of the largest value of the handbook's own table (from memory).
     *
     * @param thickness l/d, depth of a hole over its hydraulic diameter, not negative
     * @return τ
     */
    public static double jetLoss(double thickness) {
        if (!(thickness >= 0)) {
            throw new IllegalArgumentException("depth of a hole over its diameter must not be negative, got " + thickness);
        }
        if (thickness >= 2.4) {
            return 0;
        }
        double power = Math.pow(thickness, 7);
        return (2.4 - thickness) * Math.pow(10, -(0.25 + 0.535 * thickness * power / (0.05 + power)));
    }

    /**
     * Loss coefficient of a thick opening in a wall between two plenums: {@link #thickPlate} times F² with F going to 0,
     * K = 0.5 + τ + 1 + λ l/d. The drop is in total pressure and contains the lost exit head.
     *
     * @param thickness l/d, depth of the opening over its hydraulic diameter
     * @param friction  Darcy friction factor λ of its wall; 0 where friction is counted elsewhere
     * @return K on the velocity in the opening
     */
    public static double thickOpening(double thickness, double friction) {
        return 1.5 + jetLoss(thickness) + friction * thickness;
    }

    static void requirePositive(String what, double value) {
        if (!(value > 0 && value < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException(what + " must be above zero and finite, got " + value);
        }
    }
}
