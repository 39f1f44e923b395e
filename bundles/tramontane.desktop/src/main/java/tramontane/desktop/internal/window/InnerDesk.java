package tramontane.desktop.internal.window;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import tramontane.desktop.Desk;
import tramontane.desktop.PageType;
import tramontane.desktop.ViewType;
import tramontane.desktop.internal.commands.CommandTable;
import tramontane.desktop.internal.state.Remembered;
import tramontane.desktop.internal.work.LogBook;

/** The window as the views of its own bundle see it. */
public interface InnerDesk extends Desk {

    /** What was said. */
    LogBook log();

    /** All commands of the menus. */
    CommandTable commands();

    /** The views that can be opened, in the order of their labels. */
    List<ViewType> viewTypes();

    /** The property pages that bundles bring. */
    List<PageType> pageTypes();

    /** The view that was in front last, other than the help. */
    Optional<ViewType> frontView();

    /** What is kept from one start to the next. */
    Remembered remembered();

    /** Takes other colours. */
    void colours(Remembered.Colours wanted);

    /** The sample designs. */
    List<Path> samples();

    /** Opens a sample as a design of its own. */
    void openSample(Path file);
}
