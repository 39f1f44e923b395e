package tramontane.thermal.internal.time;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import tramontane.thermal.AirBalance;
import tramontane.thermal.internal.Balancing;
import tramontane.thermal.internal.Groups;

/**
 * The air of all bays at given flows. It holds no heat, so its temperatures follow those of the bodies at once, and as long as
 * flows and resistances stand still they follow linearly: found by elimination, without error but rounding.
 *
 * <p>At each place the heats of the bodies there, which warm each other's air, are solved together; what is left is one equation
 * for each bay, solved in the order of the air, bays that air goes round between together. Temperatures count from outside.
 *
 * <p>Not to be used by two threads at once: it keeps its scratch.
 */
final class AirSystem {

    /** Heat carried over the largest one that counts as none, as in the steady balance. */
    private static final double NO_FLOW = 1e-9;
    /** Heat carried per kelvin that counts as none whatever the largest, W/K. */
    private static final double LEAST_FLOW = 1e-9;
    private static final int OUTSIDE = AirBalance.OUTSIDE;

    private final Contacts contacts;
    private final Passing passing;
    private final double[] heat;
    private final Block[] blocks;
    private final int[] from;
    private final int[] into;
    private final double[] carries;
    private final boolean[] stands;
    private final double[] share;
    private final double[] movers;
    private final int[] place;
    private final double[] fixed;
    private final double[] atOnce;
    private final double[] ofPlace;
    /** Part of what comes into each bay that stays in its air past the bodies that count from what arrives. */
    private final double[] stays;
    private final double[] wallHeat;
    private final double[] keeps;
    private final Groups groups;
    private final Factors[] factors;
    private final boolean[] open;
    private final int[][] needs;
    private final double[][] needed;

    private final double[] rise;
    private final double[] arriving;
    private final double[] given;
    private final double[] right;

    /**
     * The air that goes by places.
     *
     * @param capacity heat that it carries per kelvin, W/K
     * @param massFlow kg/s
     * @param up       the bay from which the air of a passage comes
     */
    record Passing(double[] capacity, double[] massFlow, int[] up) {

        static Passing of(Contacts contacts, Balancing.Carried carried) {
            int bays = contacts.bays();
            double[] capacity = new double[contacts.places()];
            double[] massFlow = new double[contacts.places()];
            double[] net = new double[contacts.places()];
            int[] up = new int[contacts.places()];
            for (int w = 0; w < carried.passage().length; w++) {
                net[carried.passage()[w]] += carried.massFlow()[w];
            }
            for (int w = 0; w < carried.passage().length; w++) {
                int p = carried.passage()[w];
                double flow = carried.massFlow()[w];
                up[p] = net[p] >= 0 ? carried.from()[w] : carried.to()[w];
                if (flow >= 0 == net[p] >= 0) {
                    capacity[p] += Math.abs(carried.capacity()[w]);
                    massFlow[p] += Math.abs(flow);
                }
                int end = flow >= 0 ? carried.to()[w] : carried.from()[w];
                if (end != OUTSIDE) {
                    capacity[end] += Math.abs(carried.capacity()[w]);
                    massFlow[end] += Math.abs(flow);
                }
            }
            for (int i = 0; i < bays; i++) {
                up[i] = i;
            }
            return new Passing(capacity, massFlow, up);
        }
    }

    /** The heats of the bodies at one place, which depend on each other through the air that they warm. */
    private static final class Block {
        private int[] givers;
        private int[] body;
        private double[] conductance;
        private boolean[] along;
        private double[] before;
        private Factors coupled;
        private double[] response;
        private double base;
        private double ofArriving;
        private double ofMean;
        private double[] scratch;
    }

    /**
     * The air at given flows.
     *
     * @param contacts    where heat goes into it
     * @param passing     the air at places
     * @param carried     what ways carry
     * @param conductance of each giver that is a body, to its air, W/K
     * @param heat        of each giver that is none, W
     * @param wallHeat    heat that leaves each bay through walls at the temperature outside, as its tangent says, W
     * @param wallSlope   slope of that tangent, W/K
     */
    AirSystem(Contacts contacts, Passing passing, Balancing.Carried carried, double[] conductance, double[] heat,
            double[] wallHeat, double[] wallSlope) {
        this.contacts = contacts;
        this.passing = passing;
        this.heat = heat;
        this.wallHeat = wallHeat;
        int bays = contacts.bays();
        int ways = carried.passage().length;
        from = new int[ways];
        into = new int[ways];
        carries = new double[ways];
        stands = new boolean[ways];
        share = carried.share();
        movers = carried.movers();
        place = carried.passage();
        keeps = wallSlope.clone();
        double largest = 0;
        for (double each : carried.capacity()) {
            largest = Math.max(largest, Math.abs(each));
        }
        double none = Math.max(LEAST_FLOW, NO_FLOW * largest);
        for (int w = 0; w < ways; w++) {
            boolean forward = carried.capacity()[w] >= 0;
            from[w] = forward ? carried.from()[w] : carried.to()[w];
            into[w] = forward ? carried.to()[w] : carried.from()[w];
            carries[w] = Math.abs(carried.capacity()[w]);
            stands[w] = carries[w] <= none;
            if (!stands[w] && from[w] != OUTSIDE) {
                keeps[from[w]] += carries[w];
            }
        }
        fixed = new double[contacts.places()];
        atOnce = new double[heat.length];
        for (int g = 0; g < heat.length; g++) {
            if (contacts.givers().get(g).body() < 0) {
                atOnce[g] = heat[g];
                fixed[contacts.givers().get(g).place()] += heat[g];
            }
        }
        blocks = blocks(conductance);
        rise = new double[bays];
        arriving = new double[contacts.places()];
        given = new double[contacts.givers().size()];
        right = new double[bays];
        ofPlace = new double[contacts.places()];
        stays = new double[bays];
        for (int i = 0; i < bays; i++) {
            stays[i] = passing.capacity[i] > 0 ? 1 - ofArriving(i) / passing.capacity[i] : 1;
        }
        needs = new int[bays][];
        needed = new double[bays][];
        groups = assemble();
        factors = new Factors[groups.count()];
        open = new boolean[groups.count()];
        factor(none);
    }

    private Block[] blocks(double[] conductance) {
        List<List<Integer>> at = new ArrayList<>();
        for (int p = 0; p < contacts.places(); p++) {
            at.add(List.of());
        }
        for (int g = 0; g < contacts.givers().size(); g++) {
            Contacts.Giver giver = contacts.givers().get(g);
            boolean still = giver.place() >= contacts.bays() && !(passing.capacity[giver.place()] > 0);
            if (giver.body() >= 0 && conductance[g] > 0 && !still) {
                if (at.get(giver.place()).isEmpty()) {
                    at.set(giver.place(), new ArrayList<>());
                }
                at.get(giver.place()).add(g);
            }
        }
        Block[] all = new Block[contacts.places()];
        for (int p = 0; p < all.length; p++) {
            if (!at.get(p).isEmpty()) {
                all[p] = block(p, at.get(p).stream().mapToInt(Integer::intValue).toArray(), conductance);
            }
        }
        return all;
    }

    private boolean along(Contacts.Local local) {
        return local.along() && passing.capacity[local.place()] > 0;
    }

    private Block block(int p, int[] givers, double[] conductance) {
        int n = givers.length;
        double capacity = passing.capacity[p];
        Block block = new Block();
        block.givers = givers;
        block.body = Arrays.stream(givers).map(g -> contacts.givers().get(g).body()).toArray();
        block.conductance = new double[n];
        block.along = new boolean[n];
        block.before = new double[n];
        block.scratch = new double[n];
        int[] number = new int[contacts.givers().size()];
        Arrays.fill(number, -1);
        for (int i = 0; i < n; i++) {
            number[givers[i]] = i;
        }
        double[] matrix = null;
        for (int i = 0; i < n; i++) {
            Contacts.Local local = contacts.airs().get(contacts.givers().get(givers[i]).local());
            block.conductance[i] = conductance[givers[i]];
            block.along[i] = along(local);
            if (!block.along[i]) {
                continue;
            }
            for (int j = 0; j < local.givers().length; j++) {
                int other = local.givers()[j];
                double weight = local.weights()[j] / capacity;
                if (contacts.givers().get(other).body() < 0) {
                    block.before[i] += weight * heat[other];
                } else if (number[other] >= 0 && weight != 0) {
                    if (matrix == null) {
                        matrix = identity(n);
                    }
                    matrix[i * n + number[other]] += block.conductance[i] * weight;
                }
            }
        }
        double[] response = new double[n];
        Arrays.fill(response, 1);
        if (matrix != null) {
            block.coupled = new Factors(matrix, n);
            block.coupled.solveTransposed(response);
        }
        for (int i = 0; i < n; i++) {
            response[i] *= block.conductance[i];
            if (block.along[i]) {
                block.ofArriving += response[i];
                block.base -= response[i] * block.before[i];
            } else {
                block.ofMean += response[i];
            }
        }
        block.response = response;
        return block;
    }

    private static double[] identity(int n) {
        double[] matrix = new double[n * n];
        for (int i = 0; i < n; i++) {
            matrix[i * n + i] = 1;
        }
        return matrix;
    }

    private double ofArriving(int p) {
        return blocks[p] == null ? 0 : blocks[p].ofArriving;
    }

    /** The equations of the bays, and the order in which they can be solved. */
    private Groups assemble() {
        int bays = contacts.bays();
        List<List<double[]>> rows = new ArrayList<>();
        for (int i = 0; i < bays; i++) {
            rows.add(new ArrayList<>());
            keeps[i] += blocks[i] == null ? 0 : blocks[i].ofMean;
        }
        for (int w = 0; w < from.length; w++) {
            double slope = share[w] * ofArriving(place[w]);
            int source = passing.up[place[w]];
            if (!stands[w] && into[w] != OUTSIDE) {
                entry(rows, into[w], from[w], -stays[into[w]] * carries[w]);
                entry(rows, into[w], source, stays[into[w]] * slope);
            }
        }
        List<int[]> edges = new ArrayList<>();
        for (int i = 0; i < bays; i++) {
            needs[i] = rows.get(i).stream().mapToInt(each -> (int) each[0]).toArray();
            needed[i] = rows.get(i).stream().mapToDouble(each -> each[1]).toArray();
            for (int j : needs[i]) {
                edges.add(new int[] {j, i});
            }
        }
        return Groups.of(bays, edges.stream().mapToInt(each -> each[0]).toArray(), edges.stream().mapToInt(each -> each[1]).toArray());
    }

    private static void entry(List<List<double[]>> rows, int row, int column, double value) {
        if (row != OUTSIDE && column != OUTSIDE && value != 0) {
            rows.get(row).add(new double[] {column, value});
        }
    }

    private void factor(double none) {
        for (int g = 0; g < groups.count(); g++) {
            int first = groups.start(g);
            int n = groups.start(g + 1) - first;
            double[] matrix = new double[n * n];
            double leaves = 0;
            for (int i = 0; i < n; i++) {
                int bay = groups.member(first + i);
                matrix[i * n + i] += keeps[bay];
                for (int a = 0; a < needs[bay].length; a++) {
                    if (groups.groupOf(needs[bay][a]) == g) {
                        matrix[i * n + groups.placeOf(needs[bay][a]) - first] += needed[bay][a];
                    }
                }
                for (int j = 0; j < n; j++) {
                    leaves += matrix[i * n + j];
                }
            }
            open[g] = leaves > none;
            if (open[g]) {
                factors[g] = new Factors(matrix, n);
            }
        }
    }

    /** Heat put into the air of a place apart from what follows the air that comes to it. */
    private double put(int p, double[] rises) {
        double sum = fixed[p];
        Block block = blocks[p];
        if (block != null) {
            sum += block.base;
            for (int i = 0; i < block.givers.length; i++) {
                sum += block.response[i] * rises[block.body[i]];
            }
        }
        return sum;
    }

    /**
     * Solves for all air.
     *
     * @param rises temperatures of the bodies above outside, K
     * @return heat that each giver gives off, W; the array is used again
     */
    double[] solve(double[] rises) {
        int bays = contacts.bays();
        for (int i = 0; i < bays; i++) {
            right[i] = put(i, rises) - wallHeat[i];
            arriving[i] = 0;
        }
        for (int p = bays; p < ofPlace.length; p++) {
            ofPlace[p] = put(p, rises);
        }
        for (int w = 0; w < from.length; w++) {
            double heated = share[w] * ofPlace[place[w]] + movers[w];
            if (stands[w]) {
                if (into[w] != OUTSIDE) {
                    right[into[w]] += 0.5 * stays[into[w]] * heated;
                }
                if (from[w] != OUTSIDE) {
                    right[from[w]] += 0.5 * stays[from[w]] * heated;
                }
            } else if (into[w] != OUTSIDE) {
                right[into[w]] += stays[into[w]] * heated;
            }
        }
        bays();
        arriving();
        heats(rises);
        return given;
    }

    private void bays() {
        for (int g = 0; g < groups.count(); g++) {
            int first = groups.start(g);
            int n = groups.start(g + 1) - first;
            double[] b = new double[n];
            double heated = 0;
            for (int i = 0; i < n; i++) {
                int bay = groups.member(first + i);
                b[i] = right[bay];
                for (int a = 0; a < needs[bay].length; a++) {
                    if (groups.groupOf(needs[bay][a]) != g) {
                        b[i] -= needed[bay][a] * rise[needs[bay][a]];
                    }
                }
                heated += b[i];
            }
            if (open[g]) {
                factors[g].solve(b);
            } else {
                Arrays.fill(b, heated > 0 ? Double.NaN : 0);
            }
            for (int i = 0; i < n; i++) {
                rise[groups.member(first + i)] = b[i];
            }
        }
    }

    private double at(int bay) {
        return bay == OUTSIDE ? 0 : rise[bay];
    }

    private void arriving() {
        for (int p = contacts.bays(); p < arriving.length; p++) {
            arriving[p] = at(passing.up[p]);
        }
        for (int w = 0; w < from.length; w++) {
            double heated = share[w] * (ofPlace[place[w]] - ofArriving(place[w]) * arriving[place[w]]) + movers[w];
            if (stands[w]) { // half to each end
                if (into[w] != OUTSIDE) {
                    arriving[into[w]] += 0.5 * heated;
                }
                if (from[w] != OUTSIDE) {
                    arriving[from[w]] += 0.5 * heated;
                }
            } else if (into[w] != OUTSIDE) {
                arriving[into[w]] += carries[w] * at(from[w]) + heated;
            }
        }
        for (int i = 0; i < contacts.bays(); i++) {
            arriving[i] = passing.capacity[i] > 0 ? arriving[i] / passing.capacity[i] : rise[i];
        }
    }

    private void heats(double[] rises) {
        System.arraycopy(atOnce, 0, given, 0, given.length);
        for (int p = 0; p < blocks.length; p++) {
            Block block = blocks[p];
            if (block == null) {
                continue;
            }
            double[] q = block.scratch;
            for (int i = 0; i < q.length; i++) {
                double air = block.along[i] ? arriving[p] + block.before[i] : rise[p];
                q[i] = block.conductance[i] * (rises[block.body[i]] - air);
            }
            if (block.coupled != null) {
                block.coupled.solve(q);
            }
            for (int i = 0; i < q.length; i++) {
                given[block.givers[i]] = q[i];
            }
        }
    }

    /** Temperature of a bay above outside as last solved, K; NaN where it has no bound. */
    double rise(int bay) {
        return at(bay);
    }

    /** Temperature above outside of the air at something as last solved, K; NaN where no air goes by it. */
    double local(int number) {
        Contacts.Local local = contacts.airs().get(number);
        if (!along(local)) {
            return local.place() < contacts.bays() ? rise[local.place()] : Double.NaN;
        }
        double sum = 0;
        for (int i = 0; i < local.givers().length; i++) {
            sum += local.weights()[i] == 0 ? 0 : local.weights()[i] * given[local.givers()[i]];
        }
        return arriving[local.place()] + sum / passing.capacity[local.place()];
    }

    /** Temperature above outside of the air that comes to a place, as last solved, K. */
    double arriving(int p) {
        return arriving[p];
    }

    /** Heat put into the air of a place as last solved, W. */
    double put(int p) {
        double sum = 0;
        for (int g = 0; g < given.length; g++) {
            sum += contacts.givers().get(g).place() == p ? given[g] : 0;
        }
        return sum;
    }

    /** The air at places. */
    Passing passing() {
        return passing;
    }
}
