package tramontane.airflow;

import java.util.List;
import java.util.Optional;
import tramontane.analysis.Finding;
import tramontane.analysis.OperatingPoint;

/**
 * How an air path works at given temperatures and speeds.
 *
 * @param point     where everything works; empty where there is no honest answer
 * @param states    all states in which it can work, by rising flow of the first bank; empty where all curves fall all the way,
 *                  so that there is but one
 * @param reached   which of them is the one of {@code point}: that first met from standstill, quasi-steadily
 * @param limit     what kept the search for states from finding all for certain; empty if nothing did
 * @param obstacles why there is no answer; empty where there is one
 * @param network   the solution it was made from, to start the next one from
 */
public record AirPathSolution(Optional<OperatingPoint> point, List<JointState> states, int reached, String limit,
        List<Finding> obstacles, Optional<NetworkSolution> network) {

    public AirPathSolution {
        states = List.copyOf(states);
        obstacles = List.copyOf(obstacles);
    }

    /** Whether the search for states was complete. */
    public boolean complete() {
        return limit.isEmpty();
    }

    static AirPathSolution none(Finding why) {
        return none(List.of(why));
    }

    static AirPathSolution none(List<Finding> why) {
        return new AirPathSolution(Optional.empty(), List.of(), -1, "", why, Optional.empty());
    }
}
