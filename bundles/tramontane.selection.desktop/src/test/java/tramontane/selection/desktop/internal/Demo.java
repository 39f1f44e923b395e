package tramontane.selection.desktop.internal;

import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.eclipse.swt.widgets.Display;
import tramontane.desktop.internal.window.Window;

/** The views of this bundle in the real window with the real engine, without a framework: HOME FILE... */
public final class Demo {

    private Demo() {
    }

    /** Opens the window. */
    public static void main(String[] arguments) {
        Path home = Path.of(arguments[0]);
        String catalogue = Path.of("../../product/catalogue").toAbsolutePath().normalize().toString();
        SharedShelf shelf = new SharedShelf(Map.of("tramontane.catalogue", System.getProperty("demo.catalogue", catalogue), "tramontane.home", home.toString())::get);
        Display display = new Display();
        try (Window window = new Window(display, Given.ENGINE, List.of(new CandidatesViewType(Given.REAL, shelf), new CatalogueViewType(shelf)), new Window.Options(home, Optional.empty(), false))) {
            window.open();
            window.begin(Arrays.stream(arguments).skip(1).map(Path::of).toList());
            window.run();
        } finally {
            display.dispose();
        }
    }
}
