package tramontane.desktop.internal.window;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.Predicate;
import tramontane.desktop.Command;
import tramontane.desktop.Desk;
import tramontane.desktop.Scene;
import tramontane.desktop.internal.commands.CommandTable;

/** The commands of the menus. */
final class StandardCommands {

    private StandardCommands() {
    }

    static CommandTable of(Window window) {
        Map<String, List<List<Command>>> menus = new LinkedHashMap<>();
        menus.put("&Design", List.of(
                List.of(command("design.new", "New", "Ctrl+N", "An empty design beside those that are open.", d -> window.newDesign()),
                        command("design.open", "Open…", "Ctrl+O", "Opens design files.", d -> window.openDesigns())),
                List.of(command("design.save", "Save", "Ctrl+S", "Saves the design in front.", scene -> scene.document().changed()
                                || scene.document().file().isEmpty(), d -> window.files().save()),
                        command("design.saveAs", "Save as…", "Ctrl+Shift+S", "Saves the design in front elsewhere.",
                                d -> window.files().saveAs(window.session().front(), () -> { })),
                        command("design.reload", "Reload from file", "", "Takes what the file holds; undo takes it back.",
                                scene -> scene.document().file().isPresent(), d -> window.files().reload())),
                List.of(command("design.close", "Close", "Ctrl+W", "Closes the design in front.",
                                d -> window.files().close(window.session().front())),
                        command("design.quit", "Quit", "Ctrl+Q", "Ends the program.", d -> window.quit()))));
        menus.put("&Edit", List.of(
                List.of(command("edit.undo", "Undo", "Ctrl+Z", "Takes the last step back.", scene -> scene.document().undo().isPresent(),
                                d -> window.session().undo()),
                        command("edit.redo", "Redo", "Ctrl+Y", "Does the last step again.", scene -> scene.document().redo().isPresent(),
                                d -> window.session().redo())),
                List.of(handled(window, Command.CUT, "Cut", "Ctrl+X"), handled(window, Command.COPY, "Copy", "Ctrl+C"),
                        handled(window, Command.PASTE, "Paste", "Ctrl+V"), handled(window, Command.DUPLICATE, "Duplicate", "Ctrl+D"),
                        handled(window, Command.DELETE, "Delete", "Del"), handled(window, Command.RENAME, "Rename", "F2"),
                        handled(window, Command.SELECT_ALL, "Select all", "Ctrl+A")),
                List.of(handled(window, Command.FIND, "Find", "Ctrl+F"))));
        menus.put("&View", List.of(
                List.of(handled(window, Command.ZOOM_IN, "Larger", "Ctrl++"), handled(window, Command.ZOOM_OUT, "Smaller", "Ctrl+-"),
                        handled(window, Command.FIT, "Fit", "Ctrl+0")),
                List.of(command("view.fill", "Fill the window", "Ctrl+M", "The view in front fills the window, or no longer does.",
                                d -> window.fillFront()),
                        command("view.next", "Next view", "F6", "Goes to the next view.", d -> window.nextView(1)),
                        command("view.previous", "Previous view", "Shift+F6", "Goes to the view before.", d -> window.nextView(-1)),
                        command("view.close", "Close view", "Ctrl+Shift+W", "Closes the view in front.", d -> window.closeFront()),
                        command("view.menu", "Menu of the view", "Ctrl+F10", "Opens the menu of the view in front.", d -> window.frontMenu()),
                        command("view.reset", "Reset layout", "", "All views stand where they stood at first.", d -> window.resetLayout())),
                List.of(command("view.nextCondition", "Next condition", "F8", "Brings the next case to the front.",
                                d -> window.nextCase(1)),
                        command("view.previousCondition", "Previous condition", "Shift+F8", "Brings the case before to the front.",
                                d -> window.nextCase(-1)),
                        command("view.units", "Next units", "Ctrl+U", "Shows everything in the next system of units.",
                                d -> window.nextUnits()))));
        menus.put("&Run", List.of(
                List.of(command("run.all", "Compute all anew", "F5", "Computes the design in front in all conditions.", d -> window.compute()),
                        command("run.stop", "Stop", "Shift+F5", "Stops all that is at work.", d -> d.jobs().list()
                                .forEach(job -> job.cancel())))));
        menus.put("&Tools", List.of(List.of(view("tools.preferences", "Preferences", "Ctrl+,", "tramontane.preferences"))));
        menus.put("&Help", List.of(
                List.of(view("help.view", "Help on this view", "F1", "tramontane.help"), view("help.keys", "Keys", "Shift+F1", "tramontane.keys"),
                        view("help.welcome", "Welcome", "", "tramontane.welcome"))));
        return new CommandTable(menus);
    }

    private static Command view(String id, String label, String keys, String view) {
        return command(id, label, keys, "Opens the view " + label + ".", desk -> desk.open(view));
    }

    private static Command command(String id, String label, String keys, String help, Consumer<Desk> run) {
        return command(id, label, keys, help, scene -> true, run);
    }

    private static Command command(String id, String label, String keys, String help, Predicate<Scene> enabled, Consumer<Desk> run) {
        return new Command(id, label, keys, Optional.empty(), help, enabled, run);
    }

    /** What the view in front does its own way. */
    private static Command handled(Window window, String id, String label, String keys) {
        return command(id, label, keys, label + " in the view in front.", scene -> window.handler(id).isPresent(),
                desk -> window.handler(id).ifPresent(Runnable::run));
    }

    /** With the views that can be opened behind the groups of the view menu. */
    static List<Command> views(Window window) {
        List<Command> views = new ArrayList<>();
        window.viewTypes().forEach(type -> views.add(command("open." + type.id(), type.label(), "", "Opens the view " + type.label() + ".",
                desk -> desk.open(type.id())).icon(type.icon())));
        return views;
    }
}
