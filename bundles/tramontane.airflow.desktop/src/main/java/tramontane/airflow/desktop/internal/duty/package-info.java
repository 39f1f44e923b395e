/**
 * The duty chart: where a bank's curve crosses the system curve.
 *
 * <p>Answers: why does this bank move as much air as it does, and how far is it from stall? Start with
 * {@link tramontane.airflow.desktop.internal.duty.DutyChart}, a pure function from an evaluation to a chart;
 * {@link tramontane.airflow.desktop.internal.duty.DutyPresenter} knows what is shown of it and what is read off.
 */
package tramontane.airflow.desktop.internal.duty;
