package tramontane.desktop.internal.window;

import java.nio.file.Path;
import java.util.List;
import java.util.function.Consumer;
import org.eclipse.swt.SWT;
import org.eclipse.swt.widgets.Menu;
import org.eclipse.swt.widgets.MenuItem;
import org.eclipse.swt.widgets.Shell;
import tramontane.desktop.Command;
import tramontane.desktop.Desk;
import tramontane.desktop.internal.commands.CommandTable;

/** Menus made from commands, each time they are opened: what can be done is asked then, and only then. */
final class Menus {

    private final Window window;

    Menus(Window window) {
        this.window = window;
    }

    /** The menu bar of a window. */
    Menu bar(Shell shell, CommandTable table) {
        Menu bar = new Menu(shell, SWT.BAR);
        table.menus().forEach((name, groups) -> {
            MenuItem head = new MenuItem(bar, SWT.CASCADE);
            head.setText(name);
            Menu menu = new Menu(head);
            head.setMenu(menu);
            menu.addListener(SWT.Show, event -> {
                clear(menu);
                fill(menu, groups);
                switch (name) {
                    case "&Design" -> designs(menu);
                    case "&View" -> views(menu);
                    case "&Help" -> fillGroup(menu, List.of(Command.of("help.about", "About", "What this is.", desk -> window.about())));
                    default -> {
                        // as the table has it
                    }
                }
            });
        });
        return bar;
    }

    /** Groups of commands with lines between. */
    void fill(Menu menu, List<List<Command>> groups) {
        for (List<Command> group : groups) {
            fillGroup(menu, group);
        }
    }

    private void fillGroup(Menu menu, List<Command> group) {
        if (menu.getItemCount() > 0 && !group.isEmpty()) {
            new MenuItem(menu, SWT.SEPARATOR);
        }
        group.forEach(command -> item(menu, command));
    }

    private void item(Menu menu, Command command) {
        MenuItem item = new MenuItem(menu, SWT.PUSH);
        item.setText(command.label() + (command.keys().isEmpty() ? "" : "\t" + command.keys()));
        item.setToolTipText(command.help());
        command.icon().ifPresent(icon -> item.setImage(window.image(icon)));
        item.setEnabled(window.can(command));
        item.setData("tramontane.id", command.id());
        item.addListener(SWT.Selection, event -> window.perform(command));
    }

    /** An item that leads to more. */
    static Menu more(Menu menu, String label) {
        MenuItem head = new MenuItem(menu, SWT.CASCADE);
        head.setText(label);
        Menu below = new Menu(head);
        head.setMenu(below);
        return below;
    }

    static MenuItem plain(Menu menu, int style, String label, Runnable run) {
        MenuItem item = new MenuItem(menu, style);
        item.setText(label);
        item.addListener(SWT.Selection, event -> run.run());
        return item;
    }

    private void designs(Menu menu) {
        new MenuItem(menu, SWT.SEPARATOR);
        files(more(menu, "Recent"), window.remembered().recent(), window::openFile, "none yet");
        files(more(menu, "Samples"), window.samples(), window::openSample, "none installed");
        Menu export = more(menu, "Export");
        window.engine().exporters().forEach(exporter -> plain(export, SWT.PUSH, sentenceCase(exporter.label()) + "…",
                () -> window.export(exporter)));
        if (export.getItemCount() == 0) {
            plain(export, SWT.PUSH, "nothing loaded exports", () -> { }).setEnabled(false);
        }
    }

    private static void files(Menu menu, List<Path> files, Consumer<Path> open, String none) {
        files.forEach(file -> plain(menu, SWT.PUSH, file.getFileName().toString(), () -> open.accept(file)).setToolTipText(file.toString()));
        if (files.isEmpty()) {
            plain(menu, SWT.PUSH, none, () -> { }).setEnabled(false);
        }
    }

    private void views(Menu menu) {
        fillGroup(menu, StandardCommands.views(window));
    }

    private static String sentenceCase(String label) {
        return label.isEmpty() ? label : Character.toUpperCase(label.charAt(0)) + label.substring(1);
    }

    static void clear(Menu menu) {
        for (MenuItem item : menu.getItems()) {
            item.dispose();
        }
    }

}
