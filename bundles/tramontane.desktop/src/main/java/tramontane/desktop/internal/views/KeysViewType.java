package tramontane.desktop.internal.views;

import java.util.List;
import org.eclipse.swt.SWT;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.Table;
import org.eclipse.swt.widgets.TableColumn;
import org.eclipse.swt.widgets.TableItem;
import org.osgi.service.component.annotations.Component;
import tramontane.desktop.Command;
import tramontane.desktop.Desk;
import tramontane.desktop.Icon;
import tramontane.desktop.Scene;
import tramontane.desktop.Spot;
import tramontane.desktop.View;
import tramontane.desktop.ViewType;
import tramontane.desktop.internal.window.InnerDesk;

/** All keys, from the table of commands. */
@Component
public final class KeysViewType implements ViewType {

    @Override
    public String id() {
        return "tramontane.keys";
    }

    @Override
    public String label() {
        return "Keys";
    }

    @Override
    public Icon icon() {
        return Icon.read(KeysViewType.class, "/tramontane/desktop/icons/keys.svg");
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
                All commands and their keys. Commands that a view brings have theirs while that view is in front; its menu (Ctrl+F10) shows
                them. Alt with an underlined letter opens a menu.

                - Tab and Shift+Tab go from field to field.
                - F6 and Shift+F6 go from view to view.
                - In a field, what edits text belongs to the field; Ctrl+Z does while something is half typed.""";
    }

    @Override
    public View open(Composite parent, Desk desk) {
        Table table = new Table(parent, SWT.FULL_SELECTION | SWT.V_SCROLL);
        table.setHeaderVisible(true);
        for (String head : List.of("Command", "Keys", "What it does")) {
            new TableColumn(table, SWT.NONE).setText(head);
        }
        ((InnerDesk) desk).commands().menus().forEach((menu, groups) -> groups.forEach(group -> {
            for (Command command : group) {
                new TableItem(table, SWT.NONE).setText(new String[] {menu.replace("&", "") + " ▸ " + command.label(), command.keys(),
                    command.help()});
            }
        }));
        for (TableColumn column : table.getColumns()) {
            column.pack();
        }
        return new View() {
            @Override
            public Control control() {
                return table;
            }

            @Override
            public void show(Scene scene) {
                Page.colour(table, scene.palette());
            }
        };
    }
}
