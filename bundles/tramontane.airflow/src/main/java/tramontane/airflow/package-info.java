/**
 * The flow network: how much air goes through each passage, and where each bank of air movers works.
 *
 * <p>Answers: what do these fans move through this equipment, and what pressure is in each bay? Start with
 * {@link tramontane.airflow.AirPathModel}, which solves the air path of a design at given bay temperatures and speeds, or with
 * {@link tramontane.airflow.NetworkSolver} for a bare network of flow laws. {@link tramontane.airflow.AirflowStudy} says all that
 * the air-flow analysis says of an air path, at temperatures and speeds that another has found;
 * {@link tramontane.airflow.SupplySpeed} how fast a mover turns by its own data.
 *
 * <p>Assumed: steady flow; bays are plenums in which the velocity head is lost; air of constant density within a passage, that
 * of the bay it comes from; pressure differences small beside the barometric pressure (below some 2 kPa).
 *
 * <p>Sources: ISO 5801 and AMCA 210 for what a mover's curve means and for the fan laws; E. Todini, S. Pilati, "A gradient
 * method for the solution of looped pipe networks" (1988) for the solver.
 */
@Export
@Version("0.2.0")
package tramontane.airflow;

import org.osgi.annotation.bundle.Export;
import org.osgi.annotation.versioning.Version;
