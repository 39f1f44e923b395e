package tramontane.airflow.internal;

import tramontane.analysis.FlowLaw;
import tramontane.physics.Resistance;

/**
 * The flow law of a passage that loses otherwise forwards than backwards: Δp = b ρ q² with a b for each direction, linear in
 * creeping flow ({@link Resistance}).
 *
 * <p>Both directions meet at rest with one slope, the one that the mean of both b (geometric) has at the transition Reynolds
 * number of the smaller section; each direction then has the transition flow that gives it this slope.
 *
 * @param forward  b of flow from its first to its second bay, 1/m⁴
 * @param backward b of flow the other way, 1/m⁴
 * @param creeping transition flow over μ/ρ, m
 */
public record AreaChangeLaw(double forward, double backward, double creeping) implements FlowLaw {

    public AreaChangeLaw {
        if (!(forward > 0 && backward > 0 && creeping > 0)) {
            throw new IllegalArgumentException("losses " + forward + " and " + backward + ", transition " + creeping
                    + "; expected above zero");
        }
    }

    @Override
    public void at(double flow, double density, double viscosity, Drop drop) {
        double loss = flow < 0 ? backward : forward;
        double transition = creeping * viscosity / density * Math.sqrt(forward * backward) / loss;
        drop.set(Resistance.drop(flow, loss * density, transition), Resistance.slope(flow, loss * density, transition));
    }
}
