package tramontane.airflow;

import java.util.Optional;

/**
 * Pressures and flows of a network, with how well they fulfil the equations.
 *
 * <p>Only a {@link #converged} one is an answer; another says {@linkplain #why why not}.
 */
public final class NetworkSolution {

    private final double[] pressure;
    private final double[] massFlow;
    private final double[] density;
    private final double[] drop;
    private final double massResidual;
    private final double pressureResidual;
    private final int iterations;
    private final String why;
    private final String place;

    NetworkSolution(double[] pressure, double[] massFlow, double[] density, double[] drop, double massResidual,
            double pressureResidual, int iterations, String why, String place) {
        this.pressure = pressure;
        this.massFlow = massFlow;
        this.density = density;
        this.drop = drop;
        this.massResidual = massResidual;
        this.pressureResidual = pressureResidual;
        this.iterations = iterations;
        this.why = why;
        this.place = place;
    }

    /** The same, but no answer, since the flow in a branch went on changing. */
    NetworkSolution unsettled(String branch) {
        return new NetworkSolution(pressure, massFlow, density, drop, massResidual, pressureResidual, iterations,
                "did not settle", branch);
    }

    /** Whether this is an answer. */
    public boolean converged() {
        return why.isEmpty();
    }

    /** Why this is no answer; empty if it is one. */
    public Optional<String> why() {
        return why.isEmpty() ? Optional.empty() : Optional.of(why);
    }

    /** The branch or bay that fulfils its equation worst. */
    public String place() {
        return place;
    }

    /** Steps of Newton's method that were taken. */
    public int iterations() {
        return iterations;
    }

    /** Largest error of the mass balance of a bay, kg/s. */
    public double massResidual() {
        return massResidual;
    }

    /** Largest difference between a branch's drop and that between its bays, Pa. */
    public double pressureResidual() {
        return pressureResidual;
    }

    /** Pressure in a bay above the air outside at the same height, Pa. */
    public double pressure(int bay) {
        return bay == Network.OUTSIDE ? 0 : pressure[bay];
    }

    /** Mass flow of a branch, kg/s, positive from its first to its second bay. */
    public double massFlow(int branch) {
        return massFlow[branch];
    }

    /** Volume flow of a branch at the density of the air that enters it, m³/s. */
    public double flow(int branch) {
        return massFlow[branch] / density[branch];
    }

    /** Density of the air in a branch, kg/m³. */
    public double density(int branch) {
        return density[branch];
    }

    /**
     * Drop of total pressure along a branch, Pa; for one with imposed flow the drop that its surroundings ask of it.
     */
    public double drop(int branch) {
        return drop[branch];
    }

    /** Number of bays. */
    public int bays() {
        return pressure.length;
    }

    /** Number of branches. */
    public int branches() {
        return massFlow.length;
    }
}
