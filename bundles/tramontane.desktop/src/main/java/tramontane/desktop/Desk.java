package tramontane.desktop;

import java.nio.file.Path;
import java.util.Optional;
import java.util.function.UnaryOperator;
import org.eclipse.swt.graphics.Color;
import org.eclipse.swt.graphics.Font;
import org.eclipse.swt.graphics.Image;
import org.eclipse.swt.widgets.Shell;
import org.osgi.annotation.versioning.ProviderType;
import tramontane.analysis.Engine;
import tramontane.model.Design;
import tramontane.model.edit.Edit;
import tramontane.model.edit.Subject;
import tramontane.physics.units.UnitSystem;

/** The window, as views see it. On the UI thread only. */
@ProviderType
public interface Desk {

    /** What is shown now. */
    Scene scene();

    /**
     * Changes the design in front, as one step that undo takes back. Nothing happens where the change gives an equal design.
     *
     * @param what   what is done, for the undo command: {@code move bay rear}
     * @param change the change; if it throws, nothing is changed and the message strip says so
     */
    void edit(String what, UnaryOperator<Design> change);

    /**
     * Takes over an edit that was made of the design in front as it is now; one that was refused is said in the message strip.
     *
     * @return whether it was taken over
     */
    boolean edit(Edit edit);

    /** Selects something for the whole window, or nothing. */
    void select(Optional<Subject> subject);

    /** Brings a case to the front. */
    void front(String caseId);

    /** Switches the units of the whole window. */
    void units(UnitSystem units);

    /** Asks where a figure comes from and shows the answer. */
    void explain(FigureKey figure);

    /** Opens a view, or brings it to the front, and gives it the focus. */
    void open(String viewId);

    /** Runs a command by its id, if it can be done now. */
    void run(String commandId);

    /** Opens a design file beside those that are open. */
    void openFile(Path file);

    /** Says something in the message strip and the log. */
    void say(String sentence);

    /**
     * Says that something went wrong in the message strip and the log.
     *
     * @param sentence what, and what to do about it
     * @param cause    for the log; may be copied from there
     */
    void failed(String sentence, Throwable cause);

    /** Work off the UI thread. */
    Jobs jobs();

    /** Checks and runs analyses; never called on the UI thread for more than its lists. */
    Engine engine();

    /** The image of an icon in the text colour, 16 units wide, crisp at any zoom; the window owns it. */
    Image image(Icon icon);

    /** The same in a colour of its own, taken from the palette. */
    Image image(Icon icon, Color colour);

    /** A font with digits of one width, for columns of numbers; the window owns it. */
    Font digits();

    /** A bold font for headings; the window owns it. */
    Font bold();

    /** What a view wants to keep from one start to the next (a zoom, a column's width). */
    Memory memory(String viewId);

    /** Where the user's own files are kept. */
    Path home();

    /** The window, as the parent of dialogs that an action of the user calls for. */
    Shell shell();
}
