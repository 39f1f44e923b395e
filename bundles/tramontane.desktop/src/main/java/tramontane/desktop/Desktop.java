package tramontane.desktop;

import java.nio.file.Path;
import java.util.List;
import org.eclipse.swt.widgets.Display;
import org.osgi.annotation.versioning.ProviderType;

/**
 * Opens the window from code: a service for tests of views in the real window, and for programs that have the workbench as a part. The
 * program itself starts through the launcher.
 *
 * <pre>{@code
 * try (Desktop.Opened window = desktop.open(display, home, List.of(design))) {
 *     while (window.isOpen()) {
 *         if (!display.readAndDispatch()) {
 *             display.sleep();
 *         }
 *     }
 * }
 * }</pre>
 */
@ProviderType
public interface Desktop {

    /**
     * Opens a window and shows it; whoever asked runs the events.
     *
     * @param display the display, made by the calling thread
     * @param home    where layout, log and copies of unsaved work are kept; one window at a time
     * @param files   designs to open; where empty what an earlier run left, the file used last, or a sample
     */
    Opened open(Display display, Path home, List<Path> files);

    /** A window that was opened. */
    interface Opened extends AutoCloseable {

        /** What views see of it. */
        Desk desk();

        /** Whether it is still there. */
        boolean isOpen();

        /** Takes it away without asking about unsaved changes; copies of these stay as if the program had ended without warning. */
        @Override
        void close();
    }
}
