/**
 * Charts as text: SVG pictures and comma-separated values, without a display.
 *
 * <p>Answers: what does this chart look like on paper, and what are its numbers? Start with {@link tramontane.report.ChartSvg} and
 * {@link tramontane.report.ChartCsv}. {@link tramontane.report.ChartDrawing} lays a chart out as lines, areas and words for whoever
 * has another canvas; {@link tramontane.report.Ticks} says where the marks of an axis stand. All are pure functions; units are
 * turned into those of the reader here.
 *
 * <p>Sources: M. Okabe, K. Ito, "Color Universal Design" (2008) for the colours of series; P. S. Heckbert, "Nice numbers for graph
 * labels", Graphics Gems (1990) for ticks; RFC 4180 for comma-separated values.
 */
@Export
@Version("0.1.0")
package tramontane.report;

import org.osgi.annotation.bundle.Export;
import org.osgi.annotation.versioning.Version;
