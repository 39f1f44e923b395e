package tramontane.desktop.internal.views;

import org.eclipse.swt.widgets.Composite;
import org.osgi.service.component.annotations.Component;
import tramontane.desktop.Desk;
import tramontane.desktop.Icon;
import tramontane.desktop.Spot;
import tramontane.desktop.View;
import tramontane.desktop.ViewType;

/** The fields of what is selected. */
@Component
public final class PropertiesViewType implements ViewType {

    @Override
    public String id() {
        return "tramontane.properties";
    }

    @Override
    public String label() {
        return "Properties";
    }

    @Override
    public Icon icon() {
        return Icon.read(PropertiesViewType.class, "/tramontane/desktop/icons/properties.svg");
    }

    @Override
    public Spot spot() {
        return Spot.BELOW_RIGHT;
    }

    @Override
    public int order() {
        return 10;
    }

    @Override
    public String help() {
        return """
                The fields of what is selected, and beneath them what it does in the condition in front.

                # Typing
                - A plain number is taken in the unit at the right edge. With a unit of its own, such as 35 cfm, it is kept as it is
                written; while the field has the focus that is what stands in it.
                - A comma may stand for the decimal point where it can mean nothing else.
                - An empty field is not given; the grey number is what then holds.
                - Enter or leaving the field takes the text over, Esc takes it back. A text that cannot be understood stays, with a
                sentence under it, and changes nothing.
                - The hover over a name tells what it means, what is allowed, and the number in full.

                # Tables
                - Enter, F2 or typing edits a cell, Tab goes to the next one; the empty row at the end begins a new point.
                - Ctrl+V puts cells in as spreadsheets copy them, Ctrl+Del deletes a row.

                # What it does
                Ctrl and a click on a figure, or Enter, asks where it comes from.""";
    }

    @Override
    public View open(Composite parent, Desk desk) {
        return new PropertiesView(parent, desk);
    }
}
