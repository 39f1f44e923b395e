package tramontane.physics.heat;

import static tramontane.physics.heat.Inputs.notNegative;
import static tramontane.physics.heat.Inputs.positive;

import tramontane.physics.DuctFriction;
import tramontane.physics.Friction;
import tramontane.physics.LaminarFriction;

/**
 * A heat sink of plate fins that stands in a duct larger than itself, so that air goes by it.
 *
 * <p>Two ways side by side from the air before the sink to that behind it, with one loss of total pressure along both: between
 * the fins as J. R. Culham, Y. S. Muzychka, IEEE Trans. Components Packaging Technol. 24 (2001) 159-165, (Kc + f L/d + Ke) ρ v²/2 with
 * Kc = 0.42 (1 - s²), Ke = (1 - s²)², s = 1 - N t/W the open part of the sink's front, L its length, d = 2 b H/(b + H) the hydraulic
 * diameter of a gap, v the velocity in it; past the sink the same with the open part of the duct for s and friction of a smooth duct
 * of the hydraulic diameter of what is open beside and above the sink. Friction is that of {@link DuctFriction}. Air that leaves the
 * gaps between the fins at their tips is left out, so it is good for sinks whose fins are not much taller than the gap above them
 * lets through; measured shares differ by 10 to 20 % (common practice).
 *
 * <p>The share goes with the flow, where friction between the fins counts most upwards: a sink of 60 mm by 29 mm with 16 fins in a duct
 * of 80 mm by 40 mm gets 7 % of 0.01 l/s and 23 % of 1 l/s. The velocity between the fins rises with flow, always.
 *
 * @param sink       the sink
 * @param ductWidth  at least that of the sink, m
 * @param ductHeight at least that of fins and base, m
 * @param base       thickness of the sink's base, which blocks the duct too, m
 */
public record Bypass(PlateFins sink, double ductWidth, double ductHeight, double base) {

    private static final double EXACT = 1e-14;
    private static final int MOST_STEPS = 200;

    public Bypass {
        notNegative("thickness of the base", base);
        if (!(ductWidth >= sink.width() && ductHeight >= sink.height() + base)
                || Double.isInfinite(ductWidth) || Double.isInfinite(ductHeight)) {
            throw new IllegalArgumentException("a duct of " + ductWidth + " by " + ductHeight + " m does not hold a heat sink of "
                    + sink.width() + " by " + (sink.height() + base) + " m");
        }
    }

    private double besideArea() {
        return ductWidth * ductHeight - sink.width() * (sink.height() + base);
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
        double low = 0;
        double high = 1;
        double atLow = -beside(through, kinematicViscosity);
        double atHigh = between(through, kinematicViscosity);
        int same = 0;
        for (int i = 0; i < MOST_STEPS && high - low > EXACT; i++) {
            double next = i % 3 == 2 ? 0.5 * (low + high) : (low * atHigh - high * atLow) / (atHigh - atLow);
            double f = between(next * through, kinematicViscosity) - beside((1 - next) * through, kinematicViscosity);
            if (f < 0) {
                low = next;
                atLow = f;
                atHigh = same < 0 ? 0.5 * atHigh : atHigh;
                same = -1;
            } else {
                high = next;
                atHigh = f;
                atLow = same > 0 ? 0.5 * atLow : atLow;
                same = 1;
            }
        }
        return 0.5 * (low + high);
    }

    /** Loss between the fins over density, m²/s². */
    private double between(double flow, double nu) {
        double area = sink.flowArea();
        double gap = sink.gap();
        double diameter = 2 * gap * sink.height() / (gap + sink.height());
        double aspect = Math.min(gap, sink.height()) / Math.max(gap, sink.height());
        double open = 1 - sink.fins() * sink.thickness() / sink.width();
        return loss(flow / area, diameter, open, new DuctFriction(LaminarFriction.CulhamMuzychka.channel(aspect), sink.length() / diameter, 0), nu);
    }

    /** Loss past the sink over density, m²/s². */
    private double beside(double flow, double nu) {
        double area = besideArea();
        double diameter = 4 * area / (2 * (ductWidth + ductHeight) + 2 * (sink.height() + base));
        return loss(flow / area, diameter, area / (ductWidth * ductHeight), new DuctFriction(
                new LaminarFriction.CulhamMuzychka(Friction.LAMINAR_PLATES), sink.length() / diameter, 0), nu);
    }

    private double loss(double velocity, double diameter, double open, DuctFriction friction, double nu) {
        double closed = 1 - open * open;
        double reynolds = velocity * diameter / nu;
        return 0.5 * velocity * velocity * (0.42 * closed + closed * closed)
                + 0.5 * friction.product(reynolds) * nu * velocity * sink.length() / (diameter * diameter);
    }

    /** Velocity between the fins, m/s; parameters as of {@link #share}. */
    public double velocity(double flow, double kinematicViscosity) {
        return flow * share(flow, kinematicViscosity) / sink.flowArea();
    }
}
