package tramontane.airflow.internal;

import tramontane.analysis.FlowLaw;
import tramontane.physics.OrificePlate;
import tramontane.physics.Resistance;

/**
 * The flow law of an orifice plate in a duct: Δp = (K + e) ρ v²/2 with v in the duct, K by its Reynolds number; linear in
 * creeping flow through the hole ({@link Resistance}).
 *
 * @param plate the plate
 * @param exit  e, velocity heads of the duct lost at the exit
 */
public record OrificeLaw(OrificePlate plate, double exit) implements FlowLaw {

    @Override
    public void at(double flow, double density, double viscosity, Drop drop) {
        double diameter = plate.diameter();
        double area = Math.PI / 4 * diameter * diameter;
        double perFlow = density * diameter / (area * viscosity);
        double reynolds = Math.abs(flow) * perFlow;
        double head = density / (2 * area * area);
        // Re of the hole is that of the duct over β
        double creeping = Resistance.TRANSITION_REYNOLDS * plate.ratio() / perFlow;
        double coefficient = head * (plate.loss(reynolds) + exit);
        double perCoefficient = Resistance.drop(flow, 1, creeping);
        drop.set(coefficient * perCoefficient, Resistance.slope(flow, coefficient, creeping)
                + head * plate.lossSlope(reynolds) * perFlow * Math.abs(perCoefficient));
    }
}
