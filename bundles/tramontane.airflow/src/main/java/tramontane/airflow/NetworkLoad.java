package tramontane.airflow;

import java.util.Arrays;
import java.util.Objects;

/** What a network is solved for: the air in it, air put in from elsewhere, and branches whose flow is given. */
public final class NetworkLoad {

    private final NetworkAir air;
    private final double[] inflow;
    private final double[] imposed;

    private NetworkLoad(NetworkAir air, double[] inflow, double[] imposed) {
        this.air = Objects.requireNonNull(air);
        this.inflow = inflow;
        this.imposed = imposed;
    }

    /** Nothing but the air. */
    public static NetworkLoad of(NetworkAir air) {
        return new NetworkLoad(air, new double[0], new double[0]);
    }

    /**
     * The same with air put into bays from elsewhere.
     *
     * @param massFlow into each bay, kg/s; negative for air taken out
     */
    public NetworkLoad withInflow(double... massFlow) {
        for (double each : massFlow) {
            if (!Double.isFinite(each)) {
                throw new IllegalArgumentException("inflow must be finite, got " + Arrays.toString(massFlow));
            }
        }
        return new NetworkLoad(air, massFlow.clone(), imposed);
    }

    /**
     * The same with the flow of one more branch given; its law is then left out of account.
     *
     * @param branch   its number
     * @param massFlow kg/s, positive from its first to its second bay
     */
    public NetworkLoad imposing(int branch, double massFlow) {
        if (branch < 0 || !Double.isFinite(massFlow)) {
            throw new IllegalArgumentException("flow " + massFlow + " in branch " + branch + " cannot be imposed");
        }
        double[] more = Arrays.copyOf(imposed, Math.max(imposed.length, branch + 1));
        Arrays.fill(more, imposed.length, more.length, Double.NaN);
        more[branch] = massFlow;
        return new NetworkLoad(air, inflow, more);
    }

    /** The air. */
    public NetworkAir air() {
        return air;
    }

    /** What is put into a bay, kg/s. */
    public double inflow(int bay) {
        return bay < inflow.length ? inflow[bay] : 0;
    }

    /** Whether the flow of a branch is given. */
    public boolean imposes(int branch) {
        return branch < imposed.length && !Double.isNaN(imposed[branch]);
    }

    /** The given flow of a branch, kg/s. */
    public double imposedFlow(int branch) {
        return imposed[branch];
    }
}
