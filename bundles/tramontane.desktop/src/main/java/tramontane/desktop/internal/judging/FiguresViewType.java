package tramontane.desktop.internal.judging;

import org.eclipse.swt.widgets.Composite;
import org.osgi.service.component.annotations.Component;
import tramontane.desktop.Desk;
import tramontane.desktop.Icon;
import tramontane.desktop.Spot;
import tramontane.desktop.View;
import tramontane.desktop.ViewType;

/** All figures of all cases. */
@Component
public final class FiguresViewType implements ViewType {

    static final String ID = "tramontane.figures";

    @Override
    public String id() {
        return ID;
    }

    @Override
    public String label() {
        return "Figures";
    }

    @Override
    public Icon icon() {
        return Icon.read(FiguresViewType.class, "/tramontane/desktop/icons/figures.svg");
    }

    @Override
    public Spot spot() {
        return Spot.BOTTOM;
    }

    @Override
    public int order() {
        return 20;
    }

    @Override
    public String help() {
        return """
                All figures that the loaded analyses give, with a column for each case. The box at the upper left chooses tables that analyses \
                lay out themselves instead, for the case in front.

                # What you can do

                - Hover over a number for all its digits, its bounds, and other units.
                - Ctrl+click on it, or press F4, to see where it comes from.
                - Look for words in figure and place (Ctrl+F).
                - Click on a heading to sort by it, once more for the other way round, a third time for the order as it was.
                - Copy the selected rows, or all, as tab-separated text for a spreadsheet (Ctrl+C).
                """;
    }

    @Override
    public View open(Composite parent, Desk desk) {
        return new FiguresView(parent, desk);
    }
}
