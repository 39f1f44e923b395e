package tramontane.airflow.internal;

import tramontane.analysis.FlowLaw;
import tramontane.physics.Resistance;

/**
 * The flow law of a local loss: Δp = K ρ v²/2 with v = q/A, linear in creeping flow ({@link Resistance}).
 *
 * @param loss     loss coefficient K on the velocity in the area, exit velocity head included
 * @param area     area A, m²
 * @param diameter hydraulic diameter of one hole, m; decides where creeping flow ends
 * @param holeArea open area of all holes, m²
 */
public record LocalLoss(double loss, double area, double diameter, double holeArea) implements FlowLaw {

    public LocalLoss {
        if (!(loss > 0 && area > 0 && diameter > 0 && holeArea > 0)) {
            throw new IllegalArgumentException("loss coefficient " + loss + ", area " + area + ", diameter " + diameter
                    + ", open area " + holeArea + "; expected above zero");
        }
    }

    /** A loss on the velocity in one hole. */
    static LocalLoss of(double loss, double area, double diameter) {
        return new LocalLoss(loss, area, diameter, area);
    }

    /** A loss on the velocity in one hole of no particular shape. */
    static LocalLoss of(double loss, double area) {
        return of(loss, area, roundDiameter(area));
    }

    /** Diameter of the circle of that area, m. */
    static double roundDiameter(double area) {
        return Math.sqrt(4 * area / Math.PI);
    }

    @Override
    public void at(double flow, double density, double viscosity, Drop drop) {
        double coefficient = loss * density / (2 * area * area);
        double creeping = Resistance.TRANSITION_REYNOLDS * viscosity * holeArea / (density * diameter);
        drop.set(Resistance.drop(flow, coefficient, creeping), Resistance.slope(flow, coefficient, creeping));
    }
}
