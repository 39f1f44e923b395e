package tramontane.airflow;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import tramontane.analysis.FlowLaw;

/** What the worked loop networks of {@link NetworkSolverTest} say of pressures and of the whole as one resistance. */
class WorkedNetworksTest {

    private static final int OUT = Network.OUTSIDE;

    private static Network.Branch branch(int from, int to, FlowLaw law) {
        return new Network.Branch(from + "-" + to, from, to, law);
    }

    private static NetworkSolution solved(List<Network.Branch> branches, double... inflow) {
        List<Network.Bay> bays = new ArrayList<>();
        for (int i = 0; i < inflow.length; i++) {
            bays.add(new Network.Bay("bay " + i, 0));
        }
        NetworkSolution solution = NetworkSolver.solve(new Network(bays, branches),
                NetworkLoad.of(NetworkAir.uniform(inflow.length, 1, 1.8e-5)).withInflow(inflow), NetworkSolver.Settings.STANDARD);
        assertEquals(Optional.empty(), solution.why());
        return solution;
    }

    private static List<Network.Branch> bridge(double... r) {
        return List.of(branch(0, 1, Laws.square(r[0])), branch(0, 2, Laws.square(r[1])), branch(1, 2, Laws.square(r[2])),
                branch(1, OUT, Laws.square(r[3])), branch(2, OUT, Laws.square(r[4])));
    }

    /** The introductory example of H. Cross's method (from memory); exact: 100 Pa at 10 m³/s, as a single resistance of 1. */
    @Test
    void theAntisymmetricBridgeIsOneResistance() {
        for (double flow : new double[] {0.1, 1, 10, 250}) {
            NetworkSolution solution = solved(bridge(1, 5, 1, 5, 1), flow, 0, 0);
            assertEquals(flow * flow, solution.pressure(0), 1e-11 * flow * flow);
            assertEquals(flow / 3, solution.massFlow(2), 1e-11 * flow);
        }
    }

    /** Data of a mine district's air network from a public teaching page (2019); solved by mpmath with 30 digits. */
    @Test
    void theMineDistrictIsOneResistance() {
        NetworkSolution solution = solved(bridge(0.4, 0.6, 0.1, 0.5, 0.7), 47, 0, 0);
        assertEquals(0.26808506, solution.pressure(0) / (47 * 47), 5e-9);
        NetworkSolution reduced = solved(List.of(branch(0, OUT, Laws.square(0.26808506))), 47);
        assertEquals(solution.pressure(0), reduced.pressure(0), 1e-5);
    }

    /** Backwards through the mine district the same resistance holds, and every flow turns. */
    @Test
    void theMineDistrictWorksBothWays() {
        NetworkSolution forth = solved(bridge(0.4, 0.6, 0.1, 0.5, 0.7), 47, 0, 0);
        NetworkSolution back = solved(bridge(0.4, 0.6, 0.1, 0.5, 0.7), -47, 0, 0);
        for (int e = 0; e < 5; e++) {
            assertEquals(-forth.massFlow(e), back.massFlow(e), 1e-10);
        }
    }

    /**
     * Loops of water pipes by Hazen and Williams, h = 10.67 L q^1.852/(C^1.852 D^4.8704); made-up pipes, solved by SciPy. Heads
     * of A, B, D, E above C, given to 1e-5 m.
     */
    @Test
    void pipesOfHazenAndWilliamsLoseTheirHeads() {
        NetworkSolution solution = solved(List.of(branch(0, 1, pipe(600, 130, 0.25)), branch(1, OUT, pipe(500, 130, 0.20)),
                branch(0, 2, pipe(500, 120, 0.20)), branch(2, OUT, pipe(600, 120, 0.15)), branch(1, 3, pipe(400, 110, 0.15)),
                branch(3, OUT, pipe(400, 110, 0.15))), 0.090, 0, -0.025, -0.010);
        double[] heads = {6.69588, 3.78278, 2.48742, 0.49491};
        double[] losses = {2.91310, 3.78278, 4.20846, 2.48742, 3.28787, 0.49491};
        for (int i = 0; i < heads.length; i++) {
            assertEquals(heads[i], solution.pressure(i), 6e-6);
        }
        for (int e = 0; e < losses.length; e++) {
            assertEquals(losses[e], solution.drop(e), 6e-6);
        }
        assertEquals(0.055, solution.massFlow(1) + solution.massFlow(3) + solution.massFlow(5), 1e-12);
    }

    private static FlowLaw pipe(double length, double roughness, double diameter) {
        return Laws.power(10.67 * length / (Math.pow(roughness, 1.852) * Math.pow(diameter, 4.8704)), 1.852);
    }
}
