package tramontane.desktop.test;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import org.eclipse.swt.SWT;
import org.eclipse.swt.graphics.Point;
import org.eclipse.swt.widgets.Text;
import org.osgi.framework.BundleContext;
import tramontane.desktop.Desk;
import tramontane.desktop.Desktop;
import tramontane.desktop.Results;
import tramontane.model.Design;
import tramontane.model.file.DesignFile;

/** The real window with a design in it, for one test. */
final class Bench implements AutoCloseable {

    private static final Duration COMPUTED = Duration.ofSeconds(60);

    private final Desktop.Opened window;
    private final Hands hands;

    /**
     * Opens the window.
     *
     * @param home  where it keeps what it remembers
     * @param files designs to open; as at a first start where there are none
     */
    Bench(BundleContext context, Path home, Path... files) {
        Desktop desktop = context.getService(context.getServiceReference(Desktop.class));
        window = desktop.open(Screen.display(), home, List.of(files));
        desk().shell().setBounds(20, 20, 1440, 900);
        hands = new Hands(desk().shell());
        hands.toFront();
        if (files.length > 0) {
            hands.until("the design is open", () -> desk().scene().document().file().isPresent());
        }
        computed();
    }

    /** A sample that we ship, copied to where it can be saved. */
    static Path sample(BundleContext context, String name, Path folder) throws IOException {
        return Files.copy(Path.of(context.getProperty("tramontane.samples")).resolve(name + DesignFile.ENDING),
                folder.resolve(name + DesignFile.ENDING));
    }

    Desk desk() {
        return window.desk();
    }

    Hands hands() {
        return hands;
    }

    boolean isOpen() {
        return window.isOpen();
    }

    Design design() {
        return desk().scene().document().design();
    }

    /** Waits until all is computed of the design as it is. */
    void computed() {
        hands.until("all is computed", COMPUTED, () -> {
            Results results = desk().scene().results();
            return results.complete() && results.now().orElseThrow().design() == design();
        });
        hands.settle();
    }

    /** The value of a figure in a case, of the design as it is. */
    double figure(String id, String place, String caseId) {
        return desk().scene().results().figure(id, place, caseId).filter(known -> !known.stale())
                .orElseThrow(() -> new AssertionError("no figure " + id + " at " + place + " in " + caseId)).value().value();
    }

    /** Clicks into a field, replaces what stands there and leaves it with Enter. */
    void fill(String field, String text) {
        Text widget = hands.find(field, Text.class);
        show(widget);
        hands.click(widget);
        hands.press(SWT.MOD1, 'a');
        hands.type(text);
        hands.press(0, SWT.CR);
        hands.settle();
    }

    /** Scrolls until a widget can be seen, as a wheel would. */
    void show(org.eclipse.swt.widgets.Control control) {
        for (var parent = control.getParent(); parent != null; parent = parent.getParent()) {
            if (parent instanceof org.eclipse.swt.custom.ScrolledComposite scroll) {
                scroll.showControl(control);
            }
        }
        hands.settle();
    }

    /** What the message strip says. */
    String message() {
        return hands.find("message", Text.class).getText();
    }

    /** The middle of a control. */
    static Point middle(org.eclipse.swt.widgets.Control control) {
        return new Point(control.getSize().x / 2, control.getSize().y / 2);
    }

    Optional<String> undo() {
        return desk().scene().document().undo();
    }

    @Override
    public void close() {
        window.close();
    }
}
