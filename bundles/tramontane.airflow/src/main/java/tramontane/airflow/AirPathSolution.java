package tramontane.airflow;

import java.util.List;
import java.util.Optional;
import tramontane.analysis.Finding;
import tramontane.analysis.OperatingPoint;

/**
 * How an air path works at given temperatures and speeds.
 *
 * @param point      where everything works; empty where there is no honest answer
 * @param dutyPoints every crossing of a bank's curve with the system curve, for banks that have several
 * @param obstacles  why there is no answer; empty where there is one
 * @param network    the solution it was made from, to start the next one from
 */
public record AirPathSolution(Optional<OperatingPoint> point, List<DutyPoint> dutyPoints, List<Finding> obstacles,
        Optional<NetworkSolution> network) {

    public AirPathSolution {
        dutyPoints = List.copyOf(dutyPoints);
        obstacles = List.copyOf(obstacles);
    }

    static AirPathSolution none(Finding why) {
        return new AirPathSolution(Optional.empty(), List.of(), List.of(why), Optional.empty());
    }
}
