package tramontane.airflow.internal;

import tramontane.analysis.FlowLaw;
import tramontane.physics.Air;
import tramontane.physics.Resistance;

/**
 * The flow law of a resistance with a linear and a square part: Δp = a μ q + b ρ q², the latter linear below a transition flow
 * that goes with μ/ρ ({@link Resistance}).
 *
 * @param linear   a, 1/m³
 * @param square   b, 1/m⁴
 * @param creeping transition flow over μ/ρ, m; may be 0 where there is a linear part
 */
public record MixedLaw(double linear, double square, double creeping) implements FlowLaw {

    /** Pressure drop below which a pure square law turns linear, Pa: far below what can be measured. */
    private static final double CREEPING = 1e-4;
    /** Viscosity of the air of a measurement, which nobody states: that of 20 °C. */
    private static final double MEASURED_VISCOSITY = Air.viscosity(293.15);

    public MixedLaw {
        if (!(linear >= 0 && square >= 0 && creeping >= 0 && linear + square * creeping > 0)) {
            throw new IllegalArgumentException("linear part " + linear + ", square part " + square + ", transition " + creeping
                    + "; expected a slope at rest");
        }
    }

    /**
     * A law of measured coefficients, Δp = c (a q + b q²).
     *
     * @param linear    a, Pa s/m³
     * @param quadratic b, Pa s²/m⁶
     * @param density   density at the measurement, kg/m³
     * @param factor    c, what the drop is multiplied by at equal flow
     */
    static MixedLaw measured(double linear, double quadratic, double density, double factor) {
        double transition = linear > 0 ? 0 : Math.sqrt(CREEPING / quadratic);
        return new MixedLaw(factor * linear / MEASURED_VISCOSITY, factor * quadratic / density,
                transition * density / MEASURED_VISCOSITY);
    }

    @Override
    public void at(double flow, double density, double viscosity, Drop drop) {
        double transition = creeping * viscosity / density;
        drop.set(Resistance.drop(flow, linear * viscosity, square * density, transition),
                Resistance.slope(flow, linear * viscosity, square * density, transition));
    }
}
