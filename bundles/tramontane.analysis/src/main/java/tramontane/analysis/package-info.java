/**
 * What an extension implements and what it is handed: analyses, figures, findings, passage kinds, link kinds,
 * sections, importers, exporters, and tables and charts without a display.
 *
 * <p>Answers: how does a bundle add an analysis, a kind of passage or an importer, and how are their results judged? Start
 * with {@link tramontane.analysis.Analysis}. Everything here is API without state; the engine that orders, runs and judges
 * is found as the service {@link tramontane.analysis.Engine}. All numbers are SI doubles; angles in radians, temperatures in
 * kelvin.
 */
@Export
@Version("0.2.0")
package tramontane.analysis;

import org.osgi.annotation.bundle.Export;
import org.osgi.annotation.versioning.Version;
