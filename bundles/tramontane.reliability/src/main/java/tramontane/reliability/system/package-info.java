/**
 * Systems of units that fail: redundancy, load sharing, repair, spares, intervals of maintenance. Pure functions.
 *
 * <p>Answers: how likely does a bank still give enough when some of its movers have stopped, how often must somebody come, how many
 * spares must lie ready?
 *
 * <p>Times are in any unit, the same for all that is handed over together.
 */
@Export
@Version("0.1.0")
package tramontane.reliability.system;

import org.osgi.annotation.bundle.Export;
import org.osgi.annotation.versioning.Version;
