/**
 * Electric supply, wires and motors: pure functions on SI doubles.
 *
 * <p>Numbers that are none, or negative where that means nothing, are refused with {@link java.lang.IllegalArgumentException}.
 */
@Export
@Version("0.1.0")
package tramontane.physics.electric;

import org.osgi.annotation.bundle.Export;
import org.osgi.annotation.versioning.Version;
