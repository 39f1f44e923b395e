package tramontane.physics.heat;

import static tramontane.physics.heat.Inputs.notNegative;
import static tramontane.physics.heat.Inputs.positive;

import tramontane.physics.AreaChange;
import tramontane.physics.DuctFriction;
import tramontane.physics.Friction;
import tramontane.physics.LaminarFriction;
import tramontane.physics.RootSearch;

/**
 * A heat sink of plate fins that stands in a duct larger than itself, so that air goes by it.
 *
 * <p>Two ways side by side. Both streams come with one total pressure and leave the sink at one static pressure, behind which each
 * loses its velocity head by mixing; so along both the same is lost, these heads counted in:
 * <ul>
 * <li>between the fins (Kc + f L/d + Ke) ρ v²/2 + ρ u²/2 as J. R. Culham, Y. S. Muzychka, IEEE Trans. Components Packaging Technol. 24
 * (2001) 159-165, with Kc = 0.42 (1 - s²), Ke = (1 - s²)², s = 1 - N t/W the open part of the sink's front, L its length,
 * d = 2 b H/(b + H) the hydraulic diameter of a gap, v the velocity in it, u that on the whole front of the fins;
 * <li>past the sink (K + f L/d + 1) ρ v²/2, K the {@link AreaChange#contraction} by the open part of the duct, friction as between
 * plates, d the mean of the hydraulic diameters above the fins and beside the sink, by area; the sink stands midway.
 * </ul>
 * Without the heads behind it a sink in a wide duct would get no air, though the stream blows upon it. Friction is that of
 * {@link DuctFriction}. Air that leaves the gaps at their tips on its way is left out, which with low fins in a wide duct is much.
 * Dividing the air by pressures: R. E. Simons, R. C. Schmidt, "A simple method to estimate heat sink air flow bypass" (1997), from
 * memory. Not compared with measurements.
 *
 * @param sink       the sink
 * @param ductWidth  at least that of the sink, m
 * @param ductHeight at least that of fins and base, m
 * @param base       thickness of the sink's base, which blocks the duct too, m
 */
public record Bypass(PlateFins sink, double ductWidth, double ductHeight, double base) {

    private static final double EXACT = 1e-14;

    public Bypass {
        notNegative("thickness of the base", base);
        if (!(ductWidth >= sink.width() && ductHeight >= sink.height() + base)
                || Double.isInfinite(ductWidth) || Double.isInfinite(ductHeight)) {
            throw new IllegalArgumentException("a duct of " + ductWidth + " by " + ductHeight + " m does not hold a heat sink of "
                    + sink.width() + " by " + (sink.height() + base) + " m");
        }
    }

    private double clearance() {
        return ductHeight - sink.height() - base;
    }

    /** Gap on one side of the sink. */
    private double flank() {
        return 0.5 * (ductWidth - sink.width());
    }

    private double besideArea() {
        return ductWidth * clearance() + 2 * flank() * (sink.height() + base);
    }

    private double besideDiameter() {
        return (ductWidth * clearance() * diameter(ductWidth, clearance())
                + 2 * flank() * (sink.height() + base) * diameter(flank(), sink.height() + base)) / besideArea();
    }

    private static double diameter(double one, double other) {
        return one == 0 || other == 0 ? 0 : 2 * one * other / (one + other);
    }

    /**
     * Part of the air that goes between the fins.
     *
     * @param flow               through the duct, m³/s
     * @param kinematicViscosity m²/s
     * @return above 0, to 1; 1 where no air can go by; at rest what it comes to in ever slower flow
     */
    public double share(double flow, double kinematicViscosity) {
        notNegative("flow", flow);
        positive("kinematic viscosity", kinematicViscosity);
        if (besideArea() <= EXACT * ductWidth * ductHeight) {
            return 1;
        }
        // at rest both are laminar: the share is that of creeping flow
        double through = flow == 0 ? 1e-9 * kinematicViscosity * Math.sqrt(besideArea()) : flow;
        return RootSearch.between(share -> between(share * through, kinematicViscosity) - beside((1 - share) * through, kinematicViscosity),
                0, 1, -beside(through, kinematicViscosity), between(through, kinematicViscosity), EXACT, 0).at();
    }

    /** Loss between the fins over density, m²/s². */
    private double between(double flow, double nu) {
        double gap = sink.gap();
        double diameter = diameter(gap, sink.height());
        double aspect = Math.min(gap, sink.height()) / Math.max(gap, sink.height());
        double open = 1 - sink.fins() * sink.thickness() / sink.width();
        double closed = 1 - open * open;
        double front = sink.flowArea() / (sink.width() * sink.height());
        return loss(flow / sink.flowArea(), diameter, 0.42 * closed + closed * closed + front * front,
                new DuctFriction(LaminarFriction.CulhamMuzychka.channel(aspect), sink.length() / diameter, 0), nu);
    }

    /** Loss past the sink over density, m²/s². */
    private double beside(double flow, double nu) {
        double area = besideArea();
        double diameter = besideDiameter();
        return loss(flow / area, diameter, AreaChange.contraction(area / (ductWidth * ductHeight)) + 1,
                new DuctFriction(new LaminarFriction.CulhamMuzychka(Friction.LAMINAR_PLATES), sink.length() / diameter, 0), nu);
    }

    private double loss(double velocity, double diameter, double ends, DuctFriction friction, double nu) {
        double reynolds = velocity * diameter / nu;
        return 0.5 * velocity * velocity * ends
                + 0.5 * friction.product(reynolds) * nu * velocity * sink.length() / (diameter * diameter);
    }

    /** Velocity between the fins, m/s; parameters as of {@link #share}. */
    public double velocity(double flow, double kinematicViscosity) {
        return flow * share(flow, kinematicViscosity) / sink.flowArea();
    }
}
