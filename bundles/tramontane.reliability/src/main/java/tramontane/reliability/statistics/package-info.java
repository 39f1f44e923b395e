/**
 * Statistics of lives: distributions, what was observed in a test, fits, bounds, plans. Pure functions.
 *
 * <p>Answers: which distribution do these units follow, how sure is its L10, how many units must run how long to prove a life?
 *
 * <p>Times are in any unit, the same for all that is handed over together; the log-likelihood belongs to that unit. Shares and
 * confidences are between 0 and 1, both left out, unless said otherwise.
 */
@Export
@Version("0.1.0")
package tramontane.reliability.statistics;

import org.osgi.annotation.bundle.Export;
import org.osgi.annotation.versioning.Version;
