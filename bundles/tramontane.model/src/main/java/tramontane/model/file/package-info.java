/**
 * Design files: reading, checking and writing them without losing anything.
 *
 * <p>Answers: what stands in this file, what is wrong with it and where, and how is a design written so that people can
 * read and compare it? The entry type is {@link tramontane.model.file.DesignFile}; {@link tramontane.model.file.TreeFile}
 * does the same for other files of values (parts of a catalogue), {@link tramontane.model.file.JsonSchema} describes design
 * files to editors.
 *
 * <p>Files are JSON in UTF-8 (RFC 8259) without its liberties: no name twice in one object, nesting and size bounded. Reading
 * never throws for what a file holds; everything that is wrong is collected as {@link tramontane.model.Problem}s. What
 * nothing loaded understands is written back as it was read.
 */
@Export
@Version("0.1.0")
package tramontane.model.file;

import org.osgi.annotation.bundle.Export;
import org.osgi.annotation.versioning.Version;
