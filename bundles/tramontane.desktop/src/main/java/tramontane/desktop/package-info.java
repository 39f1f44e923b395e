/**
 * The window, for bundles that show something in it: views, and what views may ask of the window.
 *
 * <p>Register a {@link tramontane.desktop.ViewType} as a service; the window opens it, remembers where it stands, hands it a
 * {@link tramontane.desktop.Scene} whenever something changes, and takes it away when the bundle goes. All methods are called on
 * the UI thread, and whoever calls the {@link tramontane.desktop.Desk} does so on the UI thread too. Work goes to
 * {@link tramontane.desktop.Jobs}. A view that throws is replaced by its error text; the rest goes on.
 *
 * <p>Three classes per view keep it testable: its state as a record, a presenter in plain Java that makes states, and the view, which
 * draws them.
 */
@Export
@Version("1.0.0")
package tramontane.desktop;

import org.osgi.annotation.bundle.Export;
import org.osgi.annotation.versioning.Version;
