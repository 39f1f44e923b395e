/**
 * Charts of lives, without a display. Pure functions of numbers that others computed.
 *
 * <p>Answers: do these units follow that distribution, how many still run after so many years, how does life fall with temperature?
 * Start with {@link tramontane.reliability.charts.LifeCharts}. Times are in seconds, temperatures in kelvin, shares between 0 and 1.
 *
 * <p>Source: NIST/SEMATECH e-Handbook of Statistical Methods, 8.2.2.1 (probability plots).
 */
@Export
@Version("0.1.0")
package tramontane.reliability.charts;

import org.osgi.annotation.bundle.Export;
import org.osgi.annotation.versioning.Version;
