package tramontane.airflow;

import java.util.List;

/**
 * A way in which all banks with curves that do not fall all the way can work together.
 *
 * @param points where each of these banks works
 * @param stable whether it is statically stable: every small change of flow dies away
 * @param even   whether like columns of a bank share its flow evenly
 */
public record JointState(List<DutyPoint> points, boolean stable, boolean even) {

    public JointState {
        points = List.copyOf(points);
    }
}
