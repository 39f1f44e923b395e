package tramontane.airflow;

import java.util.List;
import java.util.Optional;
import tramontane.analysis.Finding;
import tramontane.analysis.OperatingPoint;

/**
 * How an air path works at given temperatures and speeds.
 *
 * @param point      where everything works; empty where there is no honest answer
 * @param dutyPoints duty points of the banks whose curves do not fall all the way
 * @param complete   whether these are all there are, each a crossing of the bank's curve with its system curve by rising flow;
 *                   else there are two for each such bank: the one reached from rest, all banks starting together, and the one
 *                   reached from the largest measured flow
 * @param obstacles  why there is no answer; empty where there is one
 * @param network    the solution it was made from, to start the next one from
 */
public record AirPathSolution(Optional<OperatingPoint> point, List<DutyPoint> dutyPoints, boolean complete,
        List<Finding> obstacles, Optional<NetworkSolution> network) {

    public AirPathSolution {
        dutyPoints = List.copyOf(dutyPoints);
        obstacles = List.copyOf(obstacles);
    }

    static AirPathSolution none(Finding why) {
        return new AirPathSolution(Optional.empty(), List.of(), false, List.of(why), Optional.empty());
    }
}
