package tramontane.reliability.system;

import java.util.List;
import java.util.Map;

import tramontane.reliability.statistics.LifeDistribution;
import tramontane.reliability.statistics.Weibull;
import tramontane.reliability.system.FailureGraph.Failure;
import tramontane.reliability.system.FailureGraph.State;

/** Systems whose units share load: those of sharing.py. */
final class Sharing {

    static final Map<String, SystemSurvival> CASES = Map.of(
            "1 of 2, shape 3, 1.3", needed(1, 2, 3, 1.3),
            "2 of 3, shape 3, 1.3", needed(2, 3, 3, 1.3),
            "1 of 2, shape 0.7, 1.3", needed(1, 2, 0.7, 1.3),
            "1 of 2, shape 1.5, 2.5", needed(1, 2, 1.5, 2.5),
            "1 of 2, shape 3, 4", needed(1, 2, 3, 4),
            "1 of 2, shape 3, 0.5", needed(1, 2, 3, 0.5),
            "1 of 3, shape 3, 1.3 1.8", needed(1, 3, 3, 1.3, 1.8),
            "3 of 5, shape 2.2, 1.15 1.4", needed(3, 5, 2.2, 1.15, 1.4),
            "two banks", new SystemSurvival(twoBanks(), List.of(new Weibull(1, 3), new Weibull(1.6, 1.5))),
            "three banks", new SystemSurvival(threeBanks(), List.of(new Weibull(1, 2), new Weibull(1.3, 3), new Weibull(0.9, 1.2))));

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

    static State state(Failure... failures) {
        return new State(true, List.of(failures));
    }

    /** Units of a group are all of the kind of the same number. */
    static Failure failure(int to, int units, int group, double ageing) {
        return new Failure(to, units, group, group, ageing);
    }
}
