package tramontane.thermal.internal.time;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * Takes bodies as settled that follow the others within a short time, so that those that are left can be followed with long
 * steps. What a settled body holds is not lost: those that its temperature follows take it over, each in proportion.
 *
 * <p>R. J. Guyan, "Reduction of stiffness and mass matrices", AIAA J. 3 (1965) 380, with the heat capacities lumped; an error of
 * the order of the time that is left out: everything may come early or late by up to about twice that. Steady states are not
 * changed.
 */
final class Settling {

    private Settling() {
    }

    /**
     * The bodies that are left.
     *
     * @param bodies  all
     * @param settled the others
     */
    record Left(Bodies bodies, List<Bodies.Node> settled) {
        Left {
            settled = List.copyOf(settled);
        }
    }

    /**
     * Takes quick bodies as settled.
     *
     * @param network the bodies in their air
     * @param quick   time within which a body counts as quick, s
     */
    static Left of(Network network, double quick) {
        Bodies bodies = network.bodies();
        int n = bodies.size();
        double[] capacity = bodies.nodes().stream().mapToDouble(Bodies.Node::capacity).toArray();
        double[][] joins = conductances(network);
        boolean[] gone = new boolean[n];
        List<Bodies.Node> settled = new ArrayList<>();
        while (true) {
            int quickest = -1;
            double least = quick;
            for (int i = 0; i < n; i++) {
                double time = gone[i] || !(joins[i][i] < 0) ? Double.POSITIVE_INFINITY : -capacity[i] / joins[i][i];
                if (time < least) {
                    least = time;
                    quickest = i;
                }
            }
            if (quickest < 0) {
                return new Left(bodies.left(gone, capacity), settled);
            }
            settled.add(bodies.nodes().get(quickest));
            eliminate(quickest, joins, capacity, gone);
        }
    }

    private static void eliminate(int i, double[][] joins, double[] capacity, boolean[] gone) {
        gone[i] = true;
        double own = -joins[i][i];
        double follows = 0;
        for (int j = 0; j < gone.length; j++) {
            follows += gone[j] ? 0 : joins[i][j] / own;
        }
        follows = Math.max(0, Math.min(1, follows));
        for (int j = 0; j < gone.length; j++) {
            if (!gone[j] && joins[j][i] != 0) {
                double to = joins[j][i] / own;
                capacity[j] += capacity[i] * follows * Math.max(0, to);
                for (int l = 0; l < gone.length; l++) {
                    joins[j][l] += to * joins[i][l];
                }
            }
        }
    }

    /** Heat that comes to each body per kelvin of each other, W/K. */
    private static double[][] conductances(Network network) {
        int n = network.bodies().size();
        double[] temperatures = new double[n];
        Arrays.fill(temperatures, network.outside());
        double[] still = network.heats(temperatures);
        double[][] joins = new double[n][n];
        for (int j = 0; j < n; j++) {
            temperatures[j] = network.outside() + 1;
            double[] heats = network.heats(temperatures);
            temperatures[j] = network.outside();
            for (int i = 0; i < n; i++) {
                double difference = heats[i] - still[i];
                joins[i][j] = Double.isNaN(difference) ? 0 : difference;
            }
        }
        return joins;
    }
}
