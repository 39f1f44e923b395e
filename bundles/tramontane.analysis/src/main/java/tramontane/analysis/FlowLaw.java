package tramontane.analysis;

import org.osgi.annotation.versioning.ConsumerType;

/**
 * How the pressure drop of a passage depends on its flow.
 *
 * <p>The drop is in total pressure and includes the exit velocity head. As a function of flow it must be defined for all
 * reals (reverse flow included), continuously differentiable, strictly increasing with a finite slope above zero everywhere,
 * zero flow included (unless {@link #increasing} says otherwise), and it must not allocate: solvers call it often.
 *
 * <pre>{@code
 * FlowLaw honeycomb = (flow, density, viscosity, drop) -> {
 *     double linear = 32 * viscosity * length / (cell * cell * area);
 *     drop.set(linear * flow, linear);
 * };
 * }</pre>
 */
@ConsumerType
@FunctionalInterface
public interface FlowLaw {

    /**
     * Gives pressure drop and slope at a flow.
     *
     * @param flow      volume flow at the passage's own density, m³/s; positive from its first to its second bay
     * @param density   air density, kg/m³
     * @param viscosity dynamic viscosity, Pa s
     * @param drop      receives the pressure drop in Pa and its derivative by flow in Pa s/m³
     */
    void at(double flow, double density, double viscosity, Drop drop);

    /**
     * Whether the drop is strictly increasing with flow. A law that cannot promise it (an air mover with a dip in its curve)
     * is solved with its flow as an unknown of its own.
     */
    default boolean increasing() {
        return true;
    }

    /** Receives a pressure drop and its slope; made once and used again. */
    final class Drop {

        private double pressure;
        private double slope;

        /** Sets both. */
        public void set(double pressureDrop, double dropSlope) {
            pressure = pressureDrop;
            slope = dropSlope;
        }

        /** Pressure drop, Pa. */
        public double pressure() {
            return pressure;
        }

        /** Derivative of the pressure drop by flow, Pa s/m³. */
        public double slope() {
            return slope;
        }
    }
}
