package tramontane.airflow;

/**
 * A crossing of a bank's curve with the system curve.
 *
 * @param bank     the bank's id
 * @param flow     actual volume flow at its inlet, m³/s
 * @param pressure fan static pressure of the bank, Pa
 */
public record DutyPoint(String bank, double flow, double pressure) {
}
