package tramontane.desktop;

import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Control;
import org.osgi.annotation.versioning.ConsumerType;
import tramontane.model.Design;
import tramontane.model.edit.Subject;

/**
 * A page of its own beneath the properties of something selected, for what a list of fields cannot say; registered as a service. Sections
 * need none: their fields are shown from their {@code SectionType} alone. A page that throws is replaced by its error text.
 */
@ConsumerType
public interface PageType {

    /** Its own name, unique among pages. */
    String id();

    /** Its heading, in sentence case. */
    String label();

    /** Whether it has something to show of a subject. */
    boolean shows(Design design, Subject subject);

    /**
     * Builds the widgets.
     *
     * @param parent has a fill layout; the page makes exactly one child
     * @param desk   the window
     */
    Page open(Composite parent, Desk desk);

    /** An open page. */
    @ConsumerType
    interface Page {

        /** Its widget: the one child of the parent it was opened in. Its preferred height is given to it. */
        Control control();

        /** Draws a scene; {@code subject} is one that the page shows. */
        void show(Scene scene, Subject subject);

        /** It is being closed; its control is disposed of afterwards by the window. */
        default void close() {
        }
    }
}
