package tramontane.desktop;

import org.eclipse.swt.widgets.Composite;
import org.osgi.annotation.versioning.ConsumerType;

/**
 * A kind of view that the window can open; registered as a service.
 *
 * <pre>{@code
 * @Component
 * public final class StayViewType implements ViewType {
 *     public String id() { return "lab.stay"; }
 *     public String label() { return "Stay of air"; }
 *     public Icon icon() { return Icon.read(StayViewType.class, "stay.svg"); }
 *     public Spot spot() { return Spot.RIGHT; }
 *     public String help() { return "How long the air of the box stays in it."; }
 *     public View open(Composite parent, Desk desk) { return new StayView(parent, desk); }
 * }
 * }</pre>
 */
@ConsumerType
public interface ViewType {

    /** Its own name, unique among views; the layout is remembered by it. */
    String id();

    /** What people read on its tab, in sentence case: {@code Duty chart}. */
    String label();

    /** Its picture on the tab and in menus. */
    Icon icon();

    /** Where it stands in the standard layout. */
    Spot spot();

    /** Whether the standard layout has it open. */
    default boolean atFirst() {
        return true;
    }

    /** Among the views of one spot, smaller stands further left and is in front. */
    default int order() {
        return 100;
    }

    /**
     * Its help page: paragraphs divided by empty lines; a line that begins with {@code # } is a heading, one with {@code - } an
     * item of a list.
     */
    String help();

    /**
     * Builds the widgets.
     *
     * @param parent has a fill layout; the view makes exactly one child
     * @param desk   the window
     * @return the view; {@link View#show} is called next
     */
    View open(Composite parent, Desk desk);
}
