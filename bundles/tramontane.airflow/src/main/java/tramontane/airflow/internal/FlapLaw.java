package tramontane.airflow.internal;

import tramontane.analysis.FlowLaw;
import tramontane.physics.Resistance;

/**
 * The flow law of a non-return flap: in its direction the loss of the open flap and the pressure that lifts it, against its
 * direction the loss of the leak that is left when it is shut.
 *
 * <p>Forwards Δp = K ρ v²/2 + p q/√(q² + q₁²), p the lifting pressure; backwards that of an opening of the leak's area, linear
 * below the flow that the lifting pressure drives through the leak. q₁ is about that flow, such that both meet with one slope
 * at rest. That a flap asks for its full lifting pressure as soon as the leak does not do any more, and for no more when wide
 * open, is the simplest picture of one; common practice.
 *
 * @param open    loss of the open flap
 * @param leak    loss of the leak of the shut flap, of smaller area
 * @param lifting pressure that lifts it, Pa, above zero
 */
public record FlapLaw(LocalLoss open, LocalLoss leak, double lifting) implements FlowLaw {

    public FlapLaw {
        if (!(lifting > 0 && lifting < Double.POSITIVE_INFINITY) || !(leak.area() < open.area())) {
            throw new IllegalArgumentException("lifting pressure " + lifting + " Pa, leak " + leak.area() + " of "
                    + open.area() + " m²; expected a pressure above zero and a leak smaller than the flap");
        }
    }

    /**
     * A flap of usual make.
     *
     * @param area      area of the open flap, m²
     * @param loss      loss coefficient of the open flap on the velocity in that area, exit included
     * @param leakShare area of the leak over the area of the flap, above 0, below 1
     * @param leakLoss  loss coefficient of the leak on the velocity in it, exit included
     * @param lifting   pressure that lifts it, Pa
     */
    static FlapLaw of(double area, double loss, double leakShare, double leakLoss, double lifting) {
        return new FlapLaw(LocalLoss.of(loss, area), LocalLoss.of(leakLoss, leakShare * area), lifting);
    }

    @Override
    public void at(double flow, double density, double viscosity, Drop drop) {
        open.at(0, density, viscosity, drop);
        double openSlope = drop.slope();
        leak.at(0, density, viscosity, drop);
        double coefficient = leak.loss() * density / (2 * leak.area() * leak.area());
        double shutSlope = Math.max(Math.sqrt(lifting * coefficient), Math.max(drop.slope(), 2 * openSlope));
        if (flow <= 0) {
            double linear = shutSlope / coefficient;
            drop.set(Resistance.drop(flow, coefficient, linear), Resistance.slope(flow, coefficient, linear));
            return;
        }
        double turn = lifting / (shutSlope - openSlope);
        open.at(flow, density, viscosity, drop);
        double size = Math.hypot(flow, turn);
        double part = turn / size;
        drop.set(drop.pressure() + lifting * flow / size, drop.slope() + lifting * part * part / size);
    }
}
