package tramontane.reliability.system;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.IntToDoubleFunction;

/**
 * What failures lead to: states of a system, and which failure leads from one to another.
 *
 * <p>In state 0 all units run. Every failure is that of one unit; no sequence of failures leads back. A state in which limits are
 * broken is down. What happens beyond the first down state matters only for {@link Repair}; a graph without that may end there.
 *
 * @param states at least one; number 0 is up
 */
public record FailureGraph(List<State> states) {

    /**
     * One state.
     *
     * @param up       whether all limits are kept
     * @param failures what may happen next; empty where nothing is left to fail, or at the edge of what was explored
     */
    public record State(boolean up, List<Failure> failures) {

        /** Copies the list. */
        public State {
            failures = List.copyOf(failures);
        }
    }

    /**
     * The failure of one of some alike units.
     *
     * @param to     number of the state it leads to
     * @param units  how many units there are the failure of any of which leads there, 1 or more
     * @param kind   which distribution of lives these follow: place in the list handed over with the graph
     * @param group  units of one group have one age
     * @param ageing how much faster the group ages in this state than in state 0, above zero; 1 in state 0
     */
    public record Failure(int to, int units, int kind, int group, double ageing) {

        /** Refuses what can't be. */
        public Failure {
            Refuse.atLeast(0, "number of a state", to);
            Refuse.atLeast(1, "units of a failure", units);
            Refuse.atLeast(0, "kind of units", kind);
            Refuse.atLeast(0, "group of units", group);
            Refuse.positive("ageing", ageing);
        }
    }

    /** Refuses graphs that contradict themselves; the message says which state is wrong, and why. */
    public FailureGraph {
        states = List.copyOf(states);
        if (states.isEmpty()) {
            throw new IllegalArgumentException("a failure graph needs a state in which all units run");
        }
        if (!states.get(0).up()) {
            throw new IllegalArgumentException("state 0, in which all units run, must be up");
        }
        for (int from = 0; from < states.size(); from++) {
            Map<Integer, Double> ageing = new HashMap<>();
            for (Failure failure : states.get(from).failures()) {
                if (failure.to() >= states.size()) {
                    throw new IllegalArgumentException("a failure in state " + from + " leads to state " + failure.to()
                            + ", the last one is " + (states.size() - 1));
                }
                if (from == 0 && failure.ageing() != 1) {
                    throw new IllegalArgumentException("lives are given for state 0: ageing must be 1 there, got " + failure.ageing());
                }
                Double other = ageing.put(failure.group(), failure.ageing());
                if (other != null && other != failure.ageing()) {
                    throw new IllegalArgumentException("units of one group have one age: group " + failure.group() + " in state " + from
                            + " has ageing " + other + " and " + failure.ageing());
                }
            }
        }
        order(states);
    }

    /**
     * The graph of alike units of one group, of which some must run. It goes on until all have failed. State number = failed units.
     *
     * @param needed 1 or more
     * @param units  not below {@code needed}
     */
    public static FailureGraph needed(int needed, int units) {
        return needed(needed, units, failed -> 1);
    }

    /**
     * The same, where the rest ages faster when some have failed.
     *
     * @param needed 1 or more
     * @param units  not below {@code needed}
     * @param ageing from the number of failed units, 1 and up, to how much faster the rest ages; not asked for 0
     */
    public static FailureGraph needed(int needed, int units, IntToDoubleFunction ageing) {
        Refuse.atLeast(1, "needed units", needed);
        Refuse.atLeast(needed, "units", units);
        List<State> states = new ArrayList<>();
        for (int failed = 0; failed <= units; failed++) {
            List<Failure> failures = failed == units ? List.of()
                    : List.of(new Failure(failed + 1, units - failed, 0, 0, failed == 0 ? 1 : ageing.applyAsDouble(failed)));
            states.add(new State(units - failed >= needed, failures));
        }
        return new FailureGraph(states);
    }

    /** How many kinds of units it speaks of: the least length of a list of distributions for it. */
    public int kinds() {
        return states.stream().flatMap(state -> state.failures().stream()).mapToInt(failure -> failure.kind() + 1).max().orElse(0);
    }

    /** Units in state 0. */
    public int units() {
        return states.get(0).failures().stream().mapToInt(Failure::units).sum();
    }

    /** Numbers of the states that can be reached from state 0, each behind all that lead to it. */
    List<Integer> reachable() {
        boolean[] seen = new boolean[states.size()];
        seen[0] = true;
        List<Integer> reached = new ArrayList<>();
        for (int state : order(states)) {
            if (seen[state]) {
                reached.add(state);
                states.get(state).failures().forEach(failure -> seen[failure.to()] = true);
            }
        }
        return reached;
    }

    private static int[] order(List<State> states) {
        int[] entries = new int[states.size()];
        states.forEach(state -> state.failures().forEach(failure -> entries[failure.to()]++));
        int[] order = new int[states.size()];
        int end = 0;
        for (int state = 0; state < entries.length; state++) {
            if (entries[state] == 0) {
                order[end++] = state;
            }
        }
        for (int next = 0; next < end; next++) {
            for (Failure failure : states.get(order[next]).failures()) {
                if (--entries[failure.to()] == 0) {
                    order[end++] = failure.to();
                }
            }
        }
        if (end < order.length) {
            int state = 0;
            while (entries[state] == 0) {
                state++;
            }
            throw new IllegalArgumentException("failures lead in a circle through or to state " + state
                    + "; a failed unit doesn't run again by a failure");
        }
        return Arrays.copyOf(order, end);
    }
}
