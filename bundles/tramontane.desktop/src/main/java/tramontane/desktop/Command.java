package tramontane.desktop;

import java.util.Objects;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.Predicate;

/**
 * One thing that can be done. Menus, toolbars, context menus, keys and the list of keys are all made from commands.
 *
 * @param id      its own name: {@code edit.undo}
 * @param label   what people read, sentence case, with an ellipsis where it asks something first
 * @param keys    its keys: {@code Ctrl+Shift+D}, {@code F2}, {@code Del}; {@code Ctrl} stands for the command key on a Mac; empty for none
 * @param icon    its picture, where it has one
 * @param help    one sentence for the hover
 * @param enabled whether it can be done now
 * @param run     does it
 */
public record Command(String id, String label, String keys, Optional<Icon> icon, String help, Predicate<Scene> enabled,
        Consumer<Desk> run) {

    /** Cut what is selected. */
    public static final String CUT = "edit.cut";
    /** Copy what is selected. */
    public static final String COPY = "edit.copy";
    /** Paste. */
    public static final String PASTE = "edit.paste";
    /** Delete what is selected. */
    public static final String DELETE = "edit.delete";
    /** Duplicate what is selected. */
    public static final String DUPLICATE = "edit.duplicate";
    /** Rename what is selected. */
    public static final String RENAME = "edit.rename";
    /** Go to the view's search field. */
    public static final String FIND = "edit.find";
    /** Select all. */
    public static final String SELECT_ALL = "edit.selectAll";
    /** Show everything. */
    public static final String FIT = "view.fit";
    /** Larger. */
    public static final String ZOOM_IN = "view.zoomIn";
    /** Smaller. */
    public static final String ZOOM_OUT = "view.zoomOut";

    public Command {
        Objects.requireNonNull(id);
        Objects.requireNonNull(label);
        Objects.requireNonNull(keys);
        Objects.requireNonNull(icon);
        Objects.requireNonNull(help);
        Objects.requireNonNull(enabled);
        Objects.requireNonNull(run);
    }

    /** A command that can always be done, without keys or icon. */
    public static Command of(String id, String label, String help, Consumer<Desk> run) {
        return new Command(id, label, "", Optional.empty(), help, scene -> true, run);
    }

    /** This command with keys. */
    public Command keys(String pressed) {
        return new Command(id, label, pressed, icon, help, enabled, run);
    }

    /** This command with an icon. */
    public Command icon(Icon picture) {
        return new Command(id, label, keys, Optional.of(picture), help, enabled, run);
    }

    /** This command, possible only where a condition holds. */
    public Command when(Predicate<Scene> possible) {
        return new Command(id, label, keys, icon, help, possible, run);
    }
}
