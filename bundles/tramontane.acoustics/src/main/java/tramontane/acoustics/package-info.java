/**
 * Noise of air movers: sound power at the duty point, its way out of the box, levels at listening positions, ratings, tones.
 *
 * <p>Answers: how loud is it where somebody listens, which source and band make that, how will it be judged, what would a change gain?
 *
 * <p>Data stand in sections called {@code noise} of air movers, passages, bays and the design.
 */
@Export
@Version("0.1.0")
package tramontane.acoustics;

import org.osgi.annotation.bundle.Export;
import org.osgi.annotation.versioning.Version;
