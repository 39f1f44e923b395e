/**
 * Charts in the window, for any view that has a {@link tramontane.analysis.Chart} to show.
 *
 * <p>{@link tramontane.desktop.chart.ChartCanvas} is the widget: it zooms, pans, reads values off, copies and saves, and shows the
 * same as a table. {@link tramontane.desktop.chart.ChartState} says what is shown, without a display. All is in SI units until it
 * is written or drawn.
 */
@Export
@Version("1.0.0")
package tramontane.desktop.chart;

import org.osgi.annotation.bundle.Export;
import org.osgi.annotation.versioning.Version;
