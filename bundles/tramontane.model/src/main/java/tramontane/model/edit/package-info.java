/**
 * Edits of a design, as pure functions: set a field, add, remove, rename, duplicate, move, copy and paste.
 *
 * <p>Answers: what is the design after this change, what is the change called, or why can it not be made? The entry type is
 * {@link tramontane.model.edit.Edits}; {@link tramontane.model.edit.Subject} says what is changed and
 * {@link tramontane.model.edit.FieldPath} which field of it. A change is made in the value tree as it stands in the file and
 * read back by the {@link tramontane.model.Form}s, so that quantities stay as their author wrote them, and what nothing loaded
 * knows stays untouched.
 */
@Export
@Version("1.0.0")
package tramontane.model.edit;

import org.osgi.annotation.bundle.Export;
import org.osgi.annotation.versioning.Version;
