/**
 * Temperatures of air and components: how warm each part gets in the air that the movers give it.
 *
 * <p>Answers: does every part stay below its limit, in every condition, and if not, what takes up the most kelvin?
 *
 * <p>Assumed: bays are mixed; air carries heat with the flow only; a component is a chain of thermal resistances.
 */
@Export
@Version("0.1.0")
package tramontane.thermal;

import org.osgi.annotation.bundle.Export;
import org.osgi.annotation.versioning.Version;
