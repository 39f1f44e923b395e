package tramontane.desktop.internal.judging;

import org.eclipse.swt.widgets.Composite;
import org.osgi.service.component.annotations.Component;
import tramontane.desktop.Desk;
import tramontane.desktop.Icon;
import tramontane.desktop.Spot;
import tramontane.desktop.View;
import tramontane.desktop.ViewType;

/** What analyses found, and mistakes in the design. */
@Component
public final class FindingsViewType implements ViewType {

    static final String ID = "tramontane.findings";

    @Override
    public String id() {
        return ID;
    }

    @Override
    public String label() {
        return "Findings";
    }

    @Override
    public Icon icon() {
        return Icon.read(FindingsViewType.class, "/tramontane/desktop/icons/findings.svg");
    }

    @Override
    public Spot spot() {
        return Spot.BOTTOM;
    }

    @Override
    public int order() {
        return 10;
    }

    @Override
    public String help() {
        return """
                What analyses found in all conditions, the worst first, and mistakes in the design before that. Whether requirements are met \
                stands in the requirements matrix.

                What is said in several conditions stands in one row. Where its numbers differ, those of the case in front are shown if it is \
                among them.

                # What you can do

                Double-click on a row, or press Enter, to go there: the thing is selected and the case comes to the front. Leave levels of \
                severity out with the boxes above the list, or look for words (Ctrl+F). Ctrl+C copies the rows that are selected, or all.
                """;
    }

    @Override
    public View open(Composite parent, Desk desk) {
        return new FindingsView(parent, desk);
    }
}
