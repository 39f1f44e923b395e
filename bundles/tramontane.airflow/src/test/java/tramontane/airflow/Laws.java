package tramontane.airflow;

import tramontane.analysis.FlowLaw;

/** Flow laws for tests; of volume flow, the same in air of any density. */
final class Laws {

    private Laws() {
    }

    /** r |q| q, with a slope at rest that no test sees. */
    static FlowLaw square(double r) {
        return power(r, 2);
    }

    /** r |q|^(n-1) q, rounded off below a flow of 1e-8. */
    static FlowLaw power(double r, double n) {
        return (flow, density, viscosity, drop) -> {
            double size = flow * flow + 1e-16;
            double factor = r * Math.pow(size, (n - 1) / 2);
            drop.set(factor * flow, factor * (1 + (n - 1) * flow * flow / size));
        };
    }

    /** a q + c q (q⁴ + q0⁴)^(1/4) - p. */
    static FlowLaw mixed(double a, double c, double q0, double p) {
        return (flow, density, viscosity, drop) -> {
            double q4 = flow * flow * flow * flow;
            double size = Math.sqrt(Math.sqrt(q4 + q0 * q0 * q0 * q0));
            drop.set(a * flow + c * flow * size - p, a + c * size * (1 + q4 / (size * size * size * size)));
        };
    }

    /** A mover that gives p (1 - (q/q0)^n), and goes on steeper both ways. */
    static FlowLaw mover(double p, double q0, double n) {
        FlowLaw resistance = power(p / Math.pow(q0, n), n);
        return (flow, density, viscosity, drop) -> {
            resistance.at(flow, density, viscosity, drop);
            drop.set(drop.pressure() - p, drop.slope());
        };
    }

    /** Another law, defined backwards. */
    static FlowLaw backwards(FlowLaw law) {
        return (flow, density, viscosity, drop) -> {
            law.at(-flow, density, viscosity, drop);
            drop.set(-drop.pressure(), drop.slope());
        };
    }

    /** Another law, its drop times a factor. */
    static FlowLaw times(double factor, FlowLaw law) {
        return (flow, density, viscosity, drop) -> {
            law.at(flow, density, viscosity, drop);
            drop.set(factor * drop.pressure(), factor * drop.slope());
        };
    }
}
