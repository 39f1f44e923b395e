package tramontane.airflow.desktop.internal.path;

import org.eclipse.swt.widgets.Composite;
import org.osgi.service.component.annotations.Component;
import tramontane.desktop.Desk;
import tramontane.desktop.Icon;
import tramontane.desktop.View;
import tramontane.desktop.ViewType;

/** The editor of the air path. */
@Component
public final class PathViewType implements ViewType {

    static final String ID = "tramontane.airpath";

    @Override
    public String id() {
        return ID;
    }

    @Override
    public String label() {
        return "Air path";
    }

    @Override
    public Icon icon() {
        return Icon.read(PathViewType.class, "airpath.svg");
    }

    @Override
    public tramontane.desktop.Spot spot() {
        return tramontane.desktop.Spot.MIDDLE;
    }

    @Override
    public int order() {
        return 10;
    }

    @Override
    public String help() {
        return """
                Where the air goes in the case in front. Bays are boxes along the flow, from outside at the left to outside at the right. Air is \
                drawn as ribbons as wide as their share of the flow, coloured by temperature or by pressure; passages are the joints on them.

                - A hatched ribbon with its heads turned, and the word reverse, is air that goes against the direction of its passage.
                - A bank has a cell for each position: a head where the mover runs, a cross where it is locked, a ring where the air turns it, a \
                dashed frame where it is removed.
                - Thin grey ribbons: nothing is solved yet, or the design has an error. It can be edited all the same.

                # With the mouse

                - Drag a bay to put it somewhere else. No result changes by that. Arrange bays puts all of them back.
                - Drag from the round handle of a bay, or from outside at the left, to another bay or to outside at the right, to join them by a passage.
                - Hover over anything for all digits and bounds; Ctrl+click asks where the number comes from.
                - Turn the wheel to move up and down, with Shift to the sides, with Ctrl to zoom. Drag the ground to move the picture.

                # With the keyboard

                - Right and Left go along the flow and back, Up and Down to what lies beside. Home and End go to outside.
                - Ctrl+Shift+B adds a bay. C begins a passage at the selected bay: go to the other bay with the arrows, then Enter; Esc leaves.
                - Alt with an arrow moves the selected bay.
                - F2 renames, Del deletes, Ctrl++, Ctrl+- and Ctrl+0 zoom and fit.
                - Ctrl+Shift+T shows the same as a table.""";
    }

    @Override
    public View open(Composite parent, Desk desk) {
        return new PathView(parent, desk);
    }
}
