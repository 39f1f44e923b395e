package tramontane.desktop.internal.views;

import org.eclipse.swt.widgets.Composite;
import org.osgi.service.component.annotations.Component;
import tramontane.desktop.Desk;
import tramontane.desktop.Icon;
import tramontane.desktop.Spot;
import tramontane.desktop.View;
import tramontane.desktop.ViewType;

/** What is in the design. */
@Component
public final class DesignTreeViewType implements ViewType {

    @Override
    public String id() {
        return "tramontane.design";
    }

    @Override
    public String label() {
        return "Design tree";
    }

    @Override
    public Icon icon() {
        return Icon.read(DesignTreeViewType.class, "/tramontane/desktop/icons/design.svg");
    }

    @Override
    public Spot spot() {
        return Spot.LEFT;
    }

    @Override
    public int order() {
        return 10;
    }

    @Override
    public String help() {
        return """
                All that the design holds. What is selected here is selected everywhere; its properties stand in the view Properties.

                A word behind a name is the worst that is said of it in the condition in front: not met, caution, not judged, error. The
                hover tells why.

                # Editing
                - F2 changes a name in place, and with it everything that names the thing.
                - Del deletes what is selected; what is about nothing else goes with it.
                - Ctrl+C, Ctrl+X and Ctrl+V copy, cut and paste, from one design to another too. Ctrl+D puts a copy behind.
                - Alt+Up and Alt+Down, or dragging, move a thing within its list.
                - Ctrl+F goes to the search field: names, kinds and values are searched; Esc shows everything again.""";
    }

    @Override
    public View open(Composite parent, Desk desk) {
        return new DesignTreeView(parent, desk);
    }
}
