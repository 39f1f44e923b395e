package tramontane.desktop.internal.judging;

import org.eclipse.swt.widgets.Composite;
import org.osgi.service.component.annotations.Component;
import tramontane.desktop.Desk;
import tramontane.desktop.Icon;
import tramontane.desktop.Spot;
import tramontane.desktop.View;
import tramontane.desktop.ViewType;

/** Where a figure comes from. */
@Component
public final class WhereFromViewType implements ViewType {

    static final String ID = "tramontane.whereFrom";

    @Override
    public String id() {
        return ID;
    }

    @Override
    public String label() {
        return "Where from";
    }

    @Override
    public Icon icon() {
        return Icon.read(WhereFromViewType.class, "/tramontane/desktop/icons/wherefrom.svg");
    }

    @Override
    public Spot spot() {
        return Spot.BELOW_RIGHT;
    }

    @Override
    public int order() {
        return 20;
    }

    @Override
    public String help() {
        return """
                Where a figure comes from: the values that went into it, and into these in turn, with the formulas, where they hold, and where \
                they are published.

                Ctrl+click any number in the window, or press F4 on it, to ask about it.

                # What you can do

                - Open a value to see what went into it. Figures of other analyses open, too.
                - Select a value to read its formula beneath.
                - Double-click on a value, or press Enter, to select the thing of the design where it stands.
                - Ctrl+click on a figure of another analysis asks about that one; Alt+Left goes back.
                - Ctrl+C copies all steps as text.

                After a change of the design what is shown is grey until it has been found anew.
                """;
    }

    @Override
    public View open(Composite parent, Desk desk) {
        return new WhereFromView(parent, desk);
    }
}
