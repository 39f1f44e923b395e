package tramontane.airflow.internal;

import tramontane.analysis.FlowLaw;

/**
 * The law of a bank whose curve does not fall all the way, made to rise so that a network with it has one answer.
 *
 * <p>It does so in one of two ways. <b>Eased</b>: to its drop comes a stiffness times the distance from a flow that moves along
 * after each solution. Solved again and again, this follows the air as it speeds up from where it was, each step backward
 * Euler's, and comes to rest where the resistance to change is nothing: at a duty point that is stable, for the network's
 * content has fallen at each step (the proximal point method, R. T. Rockafellar, SIAM J. Control Optim. 14 (1976) 877-898).
 * <b>Within a stretch</b> on which the curve falls: beyond its ends the law goes on as a resistance. A solution inside the
 * stretch is one of the bank itself, and the only one there.
 */
public final class DipLaw implements FlowLaw {

    /** Stiffness over the steepest rise of the curve; more follows the air more closely, and slower. */
    private static final double STIFFNESS = 3;
    /** Least slope within a stretch, over highest pressure by largest flow: the curve is level at the ends. */
    private static final double LEAST_SLOPE = 1e-6;

    private final BankLaw law;
    private double stiffness;
    private double anchor;
    private double from = Double.NEGATIVE_INFINITY;
    private double to = Double.POSITIVE_INFINITY;
    private double beyond;
    private double least;

    /** The law of a bank. */
    public DipLaw(BankLaw law) {
        this.law = law;
    }

    /** The bank's own law. */
    public BankLaw law() {
        return law;
    }

    @Override
    public void at(double flow, double density, double viscosity, Drop drop) {
        double within = Math.max(from, Math.min(to, flow));
        law.at(within, density, viscosity, drop);
        double out = flow - within;
        drop.set(drop.pressure() + stiffness * (flow - anchor) + beyond * out * Math.abs(out),
                Math.max(drop.slope() + stiffness + 2 * beyond * Math.abs(out), least));
    }

    /** Eases it, for air of a density, kg/m³, from a flow on, m³/s. */
    public void ease(double density, double viscosity, double flow) {
        double steepest = 0;
        Drop drop = new Drop();
        for (double place : Segment.places(law)) {
            law.at(place, density, viscosity, drop);
            steepest = Math.max(steepest, -drop.slope());
        }
        stiffness = STIFFNESS * steepest;
        anchor = flow;
        from = Double.NEGATIVE_INFINITY;
        to = Double.POSITIVE_INFINITY;
        least = 0;
    }

    /** Moves on to a flow, m³/s; returns how far that is. */
    public double moveTo(double flow) {
        double distance = Math.abs(flow - anchor);
        anchor = flow;
        return distance;
    }

    /** Keeps it within a stretch on which the curve falls. */
    public void within(Segment segment) {
        stiffness = 0;
        anchor = 0;
        from = segment.from();
        to = segment.to();
        MoverCharacteristic mover = law.mover().orElseThrow();
        double highest = 0;
        for (int i = 0; i < mover.points(); i++) {
            highest = Math.max(highest, Math.abs(mover.pressure(i)));
        }
        beyond = 10 * highest / (largestFlow() * largestFlow());
        least = LEAST_SLOPE * highest / largestFlow();
    }

    /** Largest flow that was measured, of all columns together, m³/s. */
    public double largestFlow() {
        return law.mover().orElseThrow().lastFlow() * law.width();
    }
}
