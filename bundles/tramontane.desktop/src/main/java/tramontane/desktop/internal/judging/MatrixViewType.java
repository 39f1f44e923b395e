package tramontane.desktop.internal.judging;

import org.eclipse.swt.widgets.Composite;
import org.osgi.service.component.annotations.Component;
import tramontane.desktop.Desk;
import tramontane.desktop.Icon;
import tramontane.desktop.Spot;
import tramontane.desktop.View;
import tramontane.desktop.ViewType;

/** Whether each requirement holds in each condition. */
@Component
public final class MatrixViewType implements ViewType {

    static final String ID = "tramontane.matrix";

    @Override
    public String id() {
        return ID;
    }

    @Override
    public String label() {
        return "Requirements";
    }

    @Override
    public Icon icon() {
        return Icon.read(MatrixViewType.class, "/tramontane/desktop/icons/matrix.svg");
    }

    @Override
    public Spot spot() {
        return Spot.BELOW_MIDDLE;
    }

    @Override
    public int order() {
        return 10;
    }

    @Override
    public String help() {
        return """
                Whether each requirement holds in each condition. Limits of heat sources are requirements, too.

                # What a cell says

                - met: the figure is inside the limit
                - caution: it is inside, but with the tolerances at their worst it is not
                - not met: it is outside
                - not judged: it could not be computed, or nothing loaded gives it; it is never taken for met
                - —: it is not required in this condition

                The number is the figure that decided: the worst place and the worst case. The row "all" shows the worst of each condition \
                and of how many. What is grey belongs to the design as it was before the last change.

                # What you can do

                Click on a cell, or go there with the arrow keys and press Enter: beneath stands why, how far the limit is, and what findings \
                say to do about it. The case that decided comes to the front and its place is selected. A click on a heading brings that \
                condition to the front. Ctrl+click or F4 shows where the figure comes from. Ctrl+C copies the table.
                """;
    }

    @Override
    public View open(Composite parent, Desk desk) {
        return new MatrixView(parent, desk);
    }
}
