/**
 * The design: what one file holds and every analysis reads.
 *
 * <p>Answers: what is the equipment, how does air go through it, what heats it, in which conditions must it
 * work, and what is required of it? The entry type is {@link tramontane.model.Design}. Every type is an immutable record; an edit
 * makes a new design. Numbers are SI doubles inside a {@link tramontane.model.Quantity}, which also keeps how its
 * author wrote it. Constructors refuse impossible values only (NaN); missing data and dangling names are
 * reported by {@link tramontane.model.Consistency}, so that a half-finished design opens, edits and saves.
 */
@Export
@Version("0.1.0")
package tramontane.model;

import org.osgi.annotation.bundle.Export;
import org.osgi.annotation.versioning.Version;
