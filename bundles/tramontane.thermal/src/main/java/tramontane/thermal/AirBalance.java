package tramontane.thermal;

import java.util.Arrays;
import java.util.BitSet;
import tramontane.thermal.internal.Groups;
import tramontane.thermal.internal.Elimination;

/**
 * Temperatures of the bays of a flow network: what air carries in and out, and heat put into it.
 *
 * <p>Every bay is mixed: air leaves it at its temperature, in whatever direction it goes. Heat put into the air of a way goes
 * where that air goes; where air stands, half to each end. Bays are solved in the order in which air goes through them, those
 * that air goes round between together, so the cost grows with their number.
 *
 * <p>Energy is conserved to rounding whatever the flows, also where they do not balance: all that is put in leaves with the air
 * to outside or through walls. Temperatures count from outside, so 0 is air as it is out there.
 */
public final class AirBalance {

    /** The bay outside. */
    public static final int OUTSIDE = -1;

    /** Heat carried over the largest one that counts as none: mass balances close to no better. */
    private static final double NO_FLOW = 1e-9;
    /** Heat carried per kelvin that counts as none whatever the largest, W/K. */
    private static final double LEAST_FLOW = 1e-9;
    /** Error of the balance of a bay over all heat put in at which walls count as solved. */
    private static final double CLOSED = 1e-13;
    /** Temperature to which walls are taken to know their heat, K: so far a balance may be off, times their slope. */
    private static final double KNOWN = 2e-11;
    private static final int MOST_STEPS = 100;

    private final int bays;
    private final int[] from;
    private final int[] to;

    /**
     * The ways of air between bays.
     *
     * @param bays number of bays
     * @param from the bay where each way begins, or {@link #OUTSIDE}
     * @param to   the bay where it ends, or {@link #OUTSIDE}
     */
    public AirBalance(int bays, int[] from, int[] to) {
        if (from.length != to.length) {
            throw new IllegalArgumentException(from.length + " beginnings but " + to.length + " ends of ways");
        }
        for (int e = 0; e < from.length; e++) {
            if (Math.min(from[e], to[e]) < OUTSIDE || Math.max(from[e], to[e]) >= bays) {
                throw new IllegalArgumentException("way " + e + " joins " + from[e] + " and " + to[e] + ", but there are " + bays + " bays");
            }
        }
        this.bays = bays;
        this.from = from.clone();
        this.to = to.clone();
    }

    /** Heat that leaves bays other than with air; a continuous function of their temperature that does not fall. */
    @FunctionalInterface
    public interface Walls {

        /** No walls. */
        Walls NONE = (bay, rise, loss) -> loss.set(0, 0);

        /**
         * Heat that leaves a bay.
         *
         * @param bay  its number
         * @param rise its temperature above outside, K
         * @param loss receives the heat, W, and its slope, W/K, not negative
         */
        void at(int bay, double rise, Loss loss);
    }

    /** Heat that leaves a bay through its walls. */
    public static final class Loss {
        private double heat;
        private double slope;

        /** Sets both: heat, W, and its slope with the bay's temperature, W/K. */
        public void set(double newHeat, double newSlope) {
            heat = newHeat;
            slope = newSlope;
        }

        /** W. */
        public double heat() {
            return heat;
        }

        /** W/K. */
        public double slope() {
            return slope;
        }
    }

    /**
     * What came out.
     *
     * @param rise      temperature of each bay above outside, K; NaN where it has no bound, or could not be found
     * @param unbounded bays that get heat which neither air nor walls carry off
     * @param toAir     heat that air carries to outside, W
     * @param toWalls   heat that leaves through walls, W
     * @param error     heat put in less heat that leaves, W
     * @param converged whether walls and air agree; false is no answer
     */
    public record Rises(double[] rise, BitSet unbounded, double toAir, double toWalls, double error, boolean converged) {

        /** Temperature of a bay or outside above outside, K. */
        public double at(int bay) {
            return bay == OUTSIDE ? 0 : rise[bay];
        }
    }

    /**
     * Solves.
     *
     * @param capacity heat that the air of each way carries per kelvin, mass flow times specific heat, W/K, positive from its
     *                 first to its second bay
     * @param wayHeat  heat put into the air of each way, W
     * @param bayHeat  heat put into each bay, W
     * @param walls    what leaves through walls
     */
    public Rises solve(double[] capacity, double[] wayHeat, double[] bayHeat, Walls walls) {
        double largest = 0;
        double put = 0;
        for (int e = 0; e < from.length; e++) {
            requireFinite("heat carried per kelvin", capacity[e]);
            requireFinite("heat", wayHeat[e]);
            largest = Math.max(largest, Math.abs(capacity[e]));
            put += Math.abs(wayHeat[e]);
        }
        double none = Math.max(LEAST_FLOW, NO_FLOW * largest);
        double[] source = new double[bays];
        double[] leaving = new double[bays];
        for (int i = 0; i < bays; i++) {
            requireFinite("heat", bayHeat[i]);
            source[i] = bayHeat[i];
            put += Math.abs(bayHeat[i]);
        }
        int[] up = new int[from.length];
        int[] down = new int[from.length];
        double given = 0;
        double straight = 0;
        for (int e = 0; e < from.length; e++) {
            boolean stands = Math.abs(capacity[e]) <= none || from[e] == to[e]; // or it only comes back
            up[e] = capacity[e] >= 0 ? from[e] : to[e];
            down[e] = capacity[e] >= 0 ? to[e] : from[e];
            if (!stands && up[e] != OUTSIDE) {
                leaving[up[e]] += Math.abs(capacity[e]);
            }
            for (int end = 0; end < 2; end++) {
                int bay = end == 0 ? down[e] : up[e];
                double part = wayHeat[e] * (stands ? 0.5 : end == 0 ? 1 : 0);
                if (bay == OUTSIDE) {
                    straight += part;
                } else {
                    source[bay] += part;
                }
            }
            if (stands) {
                up[e] = OUTSIDE; // carries nothing
            }
        }
        Groups groups = Groups.of(bays, up, down);
        double[] rise = new double[bays];
        double[] loss = new double[bays];
        double[] slope = new double[bays];
        BitSet unbounded = new BitSet();
        Loss at = new Loss();
        boolean converged = false;
        for (int step = 0; step < MOST_STEPS && !converged; step++) {
            converged = true;
            for (int i = 0; i < bays; i++) {
                walls.at(i, Double.isNaN(rise[i]) ? 0 : rise[i], at);
                loss[i] = at.heat();
                slope[i] = at.slope();
            }
            double[] before = rise;
            rise = linear(groups, capacity, up, down, leaving, source, before, loss, slope, none, unbounded);
            for (int i = 0; i < bays; i++) {
                if (!Double.isNaN(rise[i]) && (loss[i] != 0 || slope[i] != 0)) {
                    walls.at(i, rise[i], at);
                    double linear = loss[i] + slope[i] * (rise[i] - (Double.isNaN(before[i]) ? 0 : before[i]));
                    converged &= Math.abs(at.heat() - linear) <= CLOSED * (put + Math.abs(at.heat())) + KNOWN * at.slope();
                    loss[i] = at.heat();
                }
            }
        }
        double toAir = straight;
        for (int e = 0; e < from.length; e++) {
            if (down[e] == OUTSIDE && up[e] != OUTSIDE) {
                toAir += Math.abs(capacity[e]) * rise[up[e]];
            }
        }
        double toWalls = 0;
        for (int i = 0; i < bays; i++) {
            toWalls += loss[i];
            given += bayHeat[i];
        }
        for (double heat : wayHeat) {
            given += heat;
        }
        return new Rises(rise, unbounded, toAir, toWalls, given - toAir - toWalls, converged);
    }

    /** All groups in the order of the air, with walls straightened at given temperatures. */
    private double[] linear(Groups groups, double[] capacity, int[] up, int[] down, double[] leaving, double[] source,
            double[] before, double[] loss, double[] slope, double none, BitSet unbounded) {
        double[] rise = new double[bays];
        double[] right = source.clone();
        for (int i = 0; i < bays; i++) {
            right[i] += slope[i] * (Double.isNaN(before[i]) ? 0 : before[i]) - loss[i];
        }
        unbounded.clear();
        for (int g = 0; g < groups.count(); g++) {
            int first = groups.start(g);
            int size = groups.start(g + 1) - first;
            double open = 0;
            double heat = 0;
            for (int k = 0; k < size; k++) {
                int bay = groups.member(first + k);
                open += slope[bay] + leaving[bay];
                heat += right[bay];
                for (int a = groups.outStart(bay); a < groups.outStart(bay + 1); a++) {
                    if (down[groups.out(a)] != OUTSIDE && groups.groupOf(down[groups.out(a)]) == g) {
                        open -= Math.abs(capacity[groups.out(a)]);
                    }
                }
            }
            if (open <= none) {
                boolean heated = heat > 0;
                for (int k = 0; k < size; k++) {
                    int bay = groups.member(first + k);
                    rise[bay] = heated ? Double.NaN : 0;
                    unbounded.set(bay, heated);
                }
            } else if (size == 1) {
                int bay = groups.member(first);
                rise[bay] = right[bay] / (leaving[bay] + slope[bay]);
            } else {
                together(groups, g, capacity, down, leaving, slope, right, rise);
            }
            for (int k = 0; k < size; k++) { // what they send on
                int bay = groups.member(first + k);
                for (int a = groups.outStart(bay); a < groups.outStart(bay + 1); a++) {
                    int next = down[groups.out(a)];
                    if (next != OUTSIDE && groups.groupOf(next) != g) {
                        right[next] += Math.abs(capacity[groups.out(a)]) * rise[bay];
                    }
                }
            }
        }
        return rise;
    }

    /** Bays between which air goes round. */
    private void together(Groups groups, int g, double[] capacity, int[] down, double[] leaving, double[] slope,
            double[] right, double[] rise) {
        int first = groups.start(g);
        int size = groups.start(g + 1) - first;
        double[] matrix = new double[size * size];
        double[] vector = new double[size];
        for (int k = 0; k < size; k++) {
            int bay = groups.member(first + k);
            matrix[k * size + k] += leaving[bay] + slope[bay];
            vector[k] = right[bay];
            for (int a = groups.outStart(bay); a < groups.outStart(bay + 1); a++) {
                int next = down[groups.out(a)];
                if (next != OUTSIDE && groups.groupOf(next) == g) {
                    matrix[(groups.placeOf(next) - first) * size + k] -= Math.abs(capacity[groups.out(a)]);
                }
            }
        }
        Elimination.solve(matrix, vector);
        for (int k = 0; k < size; k++) {
            rise[groups.member(first + k)] = vector[k];
        }
    }

    /** Number of ways. */
    public int ways() {
        return from.length;
    }

    private static void requireFinite(String what, double value) {
        if (!Double.isFinite(value)) {
            throw new IllegalArgumentException(what + " must be finite, got " + value);
        }
    }

    @Override
    public String toString() {
        return bays + " bays, ways from " + Arrays.toString(from) + " to " + Arrays.toString(to);
    }
}
