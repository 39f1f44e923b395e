/**
 * How long air movers last, what happens when one stops, and what a life test proved.
 *
 * <p>Answers: what is the life of each mover where it works, how likely does its bank still cool at the end of the mission, how many
 * spares and which interval of maintenance does a fleet need?
 *
 * <p>Data stand in sections called {@code life} of air movers, banks and the design. Statistics of life tests are in
 * {@code tramontane.reliability.statistics}, redundancy in {@code tramontane.reliability.system}, relations of bearings in
 * {@code tramontane.reliability.bearing}.
 */
@Export
@Version("0.1.0")
package tramontane.reliability;

import org.osgi.annotation.bundle.Export;
import org.osgi.annotation.versioning.Version;
