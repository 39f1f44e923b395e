package tramontane.airflow.internal;

import tramontane.analysis.FlowLaw;
import tramontane.physics.DuctFriction;
import tramontane.physics.Resistance;

/**
 * The flow law of ducts side by side: Δp = (f n + K) ρ v²/2 with v = q/A; K linear in creeping flow ({@link Resistance}).
 *
 * @param area     area A of all ducts, m²
 * @param diameter hydraulic diameter of one duct, m
 * @param friction friction factor f
 * @param lengths  n, length over hydraulic diameter that friction counts for, above zero
 * @param loss     loss coefficient K on the velocity in the ducts, exit velocity head included; not negative
 */
public record ChannelLaw(double area, double diameter, DuctFriction friction, double lengths, double loss) implements FlowLaw {

    public ChannelLaw {
        if (!(area > 0 && diameter > 0 && lengths > 0 && loss >= 0)) {
            throw new IllegalArgumentException("area " + area + ", diameter " + diameter + ", lengths " + lengths
                    + ", loss coefficient " + loss + "; expected above zero, the last not below");
        }
    }

    /** Ducts whose friction counts for their own length, developing flow included. */
    static ChannelLaw of(double area, double diameter, DuctFriction friction, double loss) {
        return new ChannelLaw(area, diameter, friction, friction.length(), loss);
    }

    @Override
    public void at(double flow, double density, double viscosity, Drop drop) {
        double reynolds = Math.abs(flow) * density * diameter / (area * viscosity);
        double product = friction.product(reynolds);
        // f n ρ v²/2 = f Re n μ v/(2 d)
        double linear = lengths * viscosity / (2 * diameter * area);
        double coefficient = loss * density / (2 * area * area);
        double creeping = Resistance.TRANSITION_REYNOLDS * viscosity * area / (density * diameter);
        drop.set(linear * product * flow + Resistance.drop(flow, coefficient, creeping),
                linear * (product + reynolds * friction.slope(reynolds)) + Resistance.slope(flow, coefficient, creeping));
    }
}
