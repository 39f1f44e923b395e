/**
 * Changes of a design as pure functions: what an editor does, without an editor.
 *
 * <p>Entry type: {@link tramontane.model.edit.Subject}, what is edited; an {@link tramontane.model.edit.Edit} is what comes out.
 */
@Export
@Version("1.0.0")
package tramontane.model.edit;

import org.osgi.annotation.bundle.Export;
import org.osgi.annotation.versioning.Version;
