/**
 * The catalogue: air movers as parts in plain files that a lab keeps under version control, several folders stacked.
 *
 * <p>Answers: which parts are there, which of them are within given limits on any field, are their figures plausible, and how do
 * parts get in and out as tables?
 *
 * <p>A file is JSON: one air mover as in a design, or a family whose members beside {@code parts} hold for all of its parts.
 *
 * <p>Entry is {@link tramontane.catalogue.Catalogue}: what is damaged is named and the rest is read. {@link
 * tramontane.catalogue.PartFilter} selects by any field, {@link tramontane.catalogue.Derived} figures included: those assume the
 * {@linkplain tramontane.physics.FanLaws fan laws} and air of 1.2 kg/m³. {@link tramontane.catalogue.PartFile} reads and writes one
 * file.
 */
@Export
@Version("0.1.0")
package tramontane.catalogue;

import org.osgi.annotation.bundle.Export;
import org.osgi.annotation.versioning.Version;
