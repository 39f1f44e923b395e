package tramontane.thermal;

import java.util.List;
import java.util.Optional;
import tramontane.analysis.Finding;

/**
 * How the loop of flow, temperature and speed came out.
 *
 * @param state     where it comes to rest, warming up from cold; empty where it does not
 * @param cycle     the states between which it goes to and fro where it never comes to rest
 * @param law       the control law that keeps it going; empty where none does
 * @param obstacles why there is no answer; empty where there is one
 */
public record Loop(Optional<ThermalState> state, List<ThermalState> cycle, Optional<String> law, List<Finding> obstacles) {

    public Loop {
        cycle = List.copyOf(cycle);
        obstacles = List.copyOf(obstacles);
    }

    static Loop of(ThermalState state) {
        return new Loop(Optional.of(state), List.of(), Optional.empty(), List.of());
    }

    static Loop none(List<Finding> why) {
        return new Loop(Optional.empty(), List.of(), Optional.empty(), why);
    }
}
