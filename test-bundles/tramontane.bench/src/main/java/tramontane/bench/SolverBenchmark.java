package tramontane.bench;

import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import tramontane.airflow.Network;
import tramontane.airflow.NetworkAir;
import tramontane.airflow.NetworkLoad;
import tramontane.airflow.NetworkSolution;
import tramontane.airflow.NetworkSolver;

/** Solving from a cold start on a solver that is there already, and making the solver. */
@State(Scope.Thread)
public class SolverBenchmark {

    /** Bays along a side of the grid; 0 for the chain. */
    @Param("0")
    public int side;
    /** Least accuracy asked for; a poor one takes fewer steps. */
    @Param("1e-10")
    public double tolerance;

    private Network network;
    private NetworkSolver solver;
    private NetworkLoad load;
    private NetworkSolver.Settings settings;

    /** Builds the network. */
    @Setup
    public void build() {
        network = side == 0 ? Networks.chain() : Networks.grid(side);
        solver = NetworkSolver.of(network);
        load = NetworkLoad.of(NetworkAir.uniform(network.bays().size(), 1.2, 1.8e-5));
        settings = new NetworkSolver.Settings(tolerance, 200, 200);
    }

    /** The whole solution. */
    @Benchmark
    public NetworkSolution solve() {
        NetworkSolution solution = solver.solve(load, settings);
        if (!solution.converged()) {
            throw new IllegalStateException(solution.why().orElseThrow());
        }
        return solution;
    }

    /** Everything that depends on the network alone. */
    @Benchmark
    public NetworkSolver setUp() {
        return NetworkSolver.of(network);
    }

    /** Steps of Newton's method that a solution takes. */
    int steps() {
        build();
        return solve().iterations();
    }
}
