package tramontane.desktop;

import java.util.List;
import java.util.Map;
import org.eclipse.swt.widgets.Control;
import org.osgi.annotation.versioning.ConsumerType;

/** An open view. */
@ConsumerType
public interface View {

    /** Its widget: the one child of the parent it was opened in. */
    Control control();

    /**
     * Draws a scene. Called at once after opening, and then whenever anything in the scene has changed while the view can be seen;
     * compare with the last one to draw only what is new. Keep rows, scroll positions, zoom and half-typed text.
     */
    void show(Scene scene);

    /** Takes the focus; false if it has nothing that can. */
    default boolean focus() {
        return control().setFocus();
    }

    /**
     * Commands of its own, in the toolbar (those with an icon, and those without a place in a menu) and the context menu of its tab,
     * with their keys while it is in front. Asked once.
     */
    default List<Command> commands() {
        return List.of();
    }

    /**
     * What it does for the commands that many views understand, by the command's id: {@link Command#COPY}, {@link Command#DELETE}, …
     * Asked each time; leave out what it cannot do now.
     */
    default Map<String, Runnable> handlers() {
        return Map.of();
    }

    /** It is being closed; its control is disposed of afterwards by the window. */
    default void close() {
    }
}
