/** Air, curves and correlations: pure functions on SI doubles. */
@Export
@Version("0.1.0")
package tramontane.physics;

import org.osgi.annotation.bundle.Export;
import org.osgi.annotation.versioning.Version;
