package tramontane.selection.desktop.internal;

import java.util.function.Consumer;
import java.util.function.Supplier;
import java.util.function.UnaryOperator;
import tramontane.analysis.Engine;
import tramontane.model.Design;

/** What presenters need of the window; a test hands them one that does everything at once. */
interface Desktop {

    /**
     * Starts work that is shown with a stop button.
     *
     * @return stops it
     */
    Runnable start(String label, Consumer<Engine.Watch> work);

    /** Does small work off the UI thread and hands on what came out on it. */
    <T> void quietly(Supplier<T> work, Consumer<T> then);

    /** Does something on the UI thread, soon. */
    void later(Runnable work);

    /** Changes the design in front as one step. */
    void edit(String what, UnaryOperator<Design> change);

    /** Says something in the message strip. */
    void say(String sentence);
}
