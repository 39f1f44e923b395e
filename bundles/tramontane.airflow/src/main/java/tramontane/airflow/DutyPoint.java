package tramontane.airflow;

/**
 * A crossing of a bank's curve with the system curve.
 *
 * @param bank     the bank's id
 * @param flow     actual volume flow at its inlet, m³/s
 * @param pressure fan static pressure of the bank, Pa
 * @param stable   whether the bank's curve crosses the system curve from above, so that a small change of flow dies away
 */
public record DutyPoint(String bank, double flow, double pressure, boolean stable) {
}
