package tramontane.desktop.internal.views;

import java.util.Optional;
import org.eclipse.swt.SWT;
import org.eclipse.swt.custom.StyledText;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Control;
import org.osgi.service.component.annotations.Component;
import tramontane.desktop.Desk;
import tramontane.desktop.Icon;
import tramontane.desktop.Scene;
import tramontane.desktop.Spot;
import tramontane.desktop.View;
import tramontane.desktop.ViewType;
import tramontane.desktop.internal.window.InnerDesk;

/** The help page of the view that was in front last. */
@Component
public final class HelpViewType implements ViewType {

    @Override
    public String id() {
        return "tramontane.help";
    }

    @Override
    public String label() {
        return "Help";
    }

    @Override
    public Icon icon() {
        return Icon.read(HelpViewType.class, "/tramontane/desktop/icons/help.svg");
    }

    @Override
    public Spot spot() {
        return Spot.BELOW_RIGHT;
    }

    @Override
    public boolean atFirst() {
        return false;
    }

    @Override
    public String help() {
        return """
                Shows the help page of the view in front. F1 opens it.""";
    }

    @Override
    public View open(Composite parent, Desk desk) {
        Composite box = new Composite(parent, SWT.NONE);
        StyledText text = Page.reading(box);
        text.setData("tramontane.id", "help");
        return new View() {
            private Optional<ViewType> shown = Optional.empty();

            @Override
            public Control control() {
                return box;
            }

            @Override
            public void show(Scene scene) {
                text.setBackground(scene.palette().surface());
                text.setForeground(scene.palette().text());
                ViewType type = ((InnerDesk) desk).frontView().orElse(HelpViewType.this);
                if (!Optional.of(type).equals(shown)) {
                    shown = Optional.of(type);
                    Page.read(text, type.label(), type.help());
                }
            }
        };
    }
}
