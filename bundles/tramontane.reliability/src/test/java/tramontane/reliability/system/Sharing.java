package tramontane.reliability.system;

import static java.util.Map.entry;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;

import tramontane.reliability.statistics.LifeDistribution;
import tramontane.reliability.statistics.Weibull;
import tramontane.reliability.system.FailureGraph.Failure;
import tramontane.reliability.system.FailureGraph.State;

/** Systems whose units share load: those of sharing.py. */
final class Sharing {

    private static final double[][] FOUR = {{1.5, 1.1, 1.2, 1.05}, {1.1, 1.3, 1.15, 1.2}, {1.2, 1.05, 1.4, 1.1}, {1.05, 1.2, 1.1, 1.3},
        {1.7, 1.15, 1.6, 1.2}, {1.15, 1.5, 1.2, 1.6}};

    static final Map<String, SystemSurvival> CASES = Map.ofEntries(
            entry("1 of 2, shape 3, 1.3", needed(1, 2, 3, 1.3)),
            entry("2 of 3, shape 3, 1.3", needed(2, 3, 3, 1.3)),
            entry("1 of 2, shape 0.7, 1.3", needed(1, 2, 0.7, 1.3)),
            entry("1 of 2, shape 1.5, 2.5", needed(1, 2, 1.5, 2.5)),
            entry("1 of 2, shape 3, 4", needed(1, 2, 3, 4)),
            entry("1 of 2, shape 3, 0.5", needed(1, 2, 3, 0.5)),
            entry("1 of 3, shape 3, 1.3 1.8", needed(1, 3, 3, 1.3, 1.8)),
            entry("3 of 5, shape 2.2, 1.15 1.4", needed(3, 5, 2.2, 1.15, 1.4)),
            entry("two banks", new SystemSurvival(twoBanks(), List.of(new Weibull(1, 3), new Weibull(1.6, 1.5)))),
            entry("three banks", new SystemSurvival(threeBanks(), List.of(new Weibull(1, 2), new Weibull(1.3, 3), new Weibull(0.9, 1.2)))),
            entry("four banks", new SystemSurvival(fourBanks(),
                    List.of(new Weibull(1, 2), new Weibull(1.3, 3), new Weibull(0.9, 1.5), new Weibull(1.1, 2.5)))));

    private Sharing() {
    }

    static SystemSurvival needed(int needed, int units, double shape, double... ageing) {
        List<LifeDistribution> lives = List.of(new Weibull(1, shape));
        return new SystemSurvival(FailureGraph.needed(needed, units, failed -> ageing[Math.min(failed, ageing.length) - 1]), lives);
    }

    static FailureGraph twoBanks() {
        return new FailureGraph(List.of(
                state(failure(1, 2, 0, 1), failure(2, 3, 1, 1)),
                state(failure(4, 1, 0, 1.4), failure(3, 3, 1, 1.1)),
                state(failure(3, 2, 0, 1.05), failure(4, 2, 1, 1.25)),
                state(failure(4, 1, 0, 1.4 * 1.05), failure(4, 2, 1, 1.1 * 1.25)),
                new State(false, List.of())));
    }

    static FailureGraph threeBanks() {
        return new FailureGraph(List.of(
                state(failure(1, 2, 0, 1), failure(2, 2, 1, 1), failure(3, 2, 2, 1)),
                state(failure(6, 1, 0, 1.5), failure(4, 2, 1, 1.1), failure(5, 2, 2, 1.2)),
                state(failure(4, 2, 0, 1.1), failure(6, 1, 1, 1.3), failure(6, 2, 2, 1.15)),
                state(failure(5, 2, 0, 1.2), failure(6, 2, 1, 1.05), failure(6, 1, 2, 1.4)),
                state(failure(6, 1, 0, 1.6), failure(6, 1, 1, 1.4), failure(6, 2, 2, 1.3)),
                state(failure(6, 1, 0, 1.7), failure(6, 2, 1, 1.2), failure(6, 1, 2, 1.6)),
                new State(false, List.of())));
    }

    static FailureGraph fourBanks() {
        List<State> states = new ArrayList<>();
        states.add(state(failure(1, 2, 0, 1), failure(2, 2, 1, 1), failure(3, 2, 2, 1), failure(4, 2, 3, 1)));
        for (int s = 0; s < 6; s++) {
            List<Failure> failures = new ArrayList<>();
            for (int g = 0; g < 4; g++) {
                boolean hit = s < 4 ? g == s : g % 2 == s % 2;
                int to = s < 4 && !hit && g % 2 == s % 2 ? 5 + s % 2 : 7;
                failures.add(failure(to, hit ? 1 : 2, g, FOUR[s][g]));
            }
            states.add(new State(true, failures));
        }
        states.add(new State(false, List.of()));
        return new FailureGraph(states);
    }

    static State state(Failure... failures) {
        return new State(true, List.of(failures));
    }

    /** Units of a group are all of the kind of the same number. */
    static Failure failure(int to, int units, int group, double ageing) {
        return new Failure(to, units, group, group, ageing);
    }
}
