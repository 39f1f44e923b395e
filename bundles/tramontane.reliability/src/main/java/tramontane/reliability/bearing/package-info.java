/**
 * From a rated life to that at other temperature, speed and load. Pure functions on SI doubles.
 *
 * <p>Answers: by what factor does life change from where it was rated to where the mover works, what do load and speed allow a rolling
 * bearing, what does a failure rate handbook say of a small motor?
 */
@Export
@Version("0.1.0")
package tramontane.reliability.bearing;

import org.osgi.annotation.bundle.Export;
import org.osgi.annotation.versioning.Version;
