package tramontane.airflow.internal;

import tramontane.analysis.FlowLaw;

/**
 * The law of a bank whose curve does not fall all the way, made to rise by a resistance to change: to its drop comes a
 * stiffness times the distance from a flow that moves along after each solution.
 *
 * <p>Solved again and again, this follows the air as it speeds up from where it was, each step backward Euler's, and comes to
 * rest where the resistance to change is nothing: at a duty point that is stable, for the network's content has fallen at each
 * step (the proximal point method, R. T. Rockafellar, SIAM J. Control Optim. 14 (1976) 877-898). Which one depends on where it
 * started.
 */
public final class EasedLaw implements FlowLaw {

    private static final int STEPS = 24;
    /** Stiffness over the steepest rise of the curve; more follows the air more closely, and slower. */
    private static final double STIFFNESS = 3;

    private final BankLaw law;
    private double stiffness;
    private double anchor;

    /** The law of a bank. */
    public EasedLaw(BankLaw law) {
        this.law = law;
    }

    @Override
    public void at(double flow, double density, double viscosity, Drop drop) {
        law.at(flow, density, viscosity, drop);
        drop.set(drop.pressure() + stiffness * (flow - anchor), drop.slope() + stiffness);
    }

    /** Sets the stiffness for air of a density, kg/m³, and the flow to start from, m³/s. */
    public void start(double density, double flow) {
        MoverCharacteristic mover = law.mover().orElseThrow();
        Drop drop = new Drop();
        double steepest = 0;
        double before = -2 * mover.lastFlow();
        for (int i = 0; i < mover.points(); i++) {
            for (int k = 0; k <= STEPS; k++) {
                law.at((before + (mover.flow(i) - before) * k / STEPS) * law.width(), density, 0, drop);
                steepest = Math.max(steepest, -drop.slope());
            }
            before = mover.flow(i);
        }
        stiffness = STIFFNESS * steepest;
        anchor = flow;
    }

    /** Moves on to a flow, m³/s; returns how far that is. */
    public double moveTo(double flow) {
        double distance = Math.abs(flow - anchor);
        anchor = flow;
        return distance;
    }

    /** Largest flow that was measured, of all columns together, m³/s. */
    public double largestFlow() {
        return law.mover().orElseThrow().lastFlow() * law.width();
    }
}
