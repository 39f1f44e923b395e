package tramontane.desktop.test;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.eclipse.swt.graphics.ImageData;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Table;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.api.io.TempDir;
import org.osgi.framework.BundleContext;
import org.osgi.framework.InvalidSyntaxException;
import org.osgi.framework.ServiceReference;
import org.osgi.test.common.annotation.InjectBundleContext;
import org.osgi.test.junit5.context.BundleContextExtension;
import tramontane.desktop.FigureKey;
import tramontane.desktop.ViewType;
import tramontane.model.edit.Subject;

/** A picture of the window and of every view, in each scale and theme, to be looked at. */
@ExtendWith({Screen.class, BundleContextExtension.class})
@Tag(Screen.PICTURES)
class PicturesTest {

    @InjectBundleContext
    BundleContext context;

    @TempDir
    Path folder;

    @Test
    void ofEveryView() throws IOException, InvalidSyntaxException {
        try (Bench bench = new Bench(context, folder.resolve("home"), Bench.sample(context, "observatory", folder))) {
            bench.desk().select(Optional.of(new Subject(Subject.Kind.PASSAGE, "grille")));
            bench.hands().settle();
            shows(bench.hands().screenshot(bench.desk().shell(), Screen.pictures().resolve("window.png")));
            bench.desk().front("any one failed");
            bench.desk().explain(new FigureKey("airflow.bank.flow", "fans", "any one failed: fans 1 locked"));
            bench.hands().settle();
            shows(bench.hands().screenshot(bench.desk().shell(), Screen.pictures().resolve("window-failed.png")));
            List<ViewType> types = new ArrayList<>();
            for (ServiceReference<ViewType> each : context.getServiceReferences(ViewType.class, null)) {
                types.add(context.getService(each));
            }
            for (ViewType type : types) {
                bench.desk().open(type.id());
                bench.hands().settle();
                Composite view = bench.hands().find("view:" + type.id(), Composite.class);
                bench.hands().until(type.id() + " is shown", view::isVisible);
                if (type.id().equals("tramontane.catalogue")) {
                    bench.hands().until("the catalogue is read", () -> bench.hands().widgets().stream()
                            .anyMatch(each -> each instanceof Table table && table.isVisible() && table.getItemCount() >= 200));
                }
                shows(bench.hands().screenshot(view, Screen.pictures().resolve(type.id() + ".png")));
            }
        }
    }

    /** A view in one colour shows nothing. */
    private static void shows(Path picture) {
        ImageData image = new ImageData(picture.toString());
        Set<Integer> colours = new HashSet<>();
        for (int y = 0; y < image.height; y += 3) {
            for (int x = 0; x < image.width; x += 3) {
                colours.add(image.getPixel(x, y));
            }
        }
        assertTrue(colours.size() > 5, () -> picture + " has " + colours.size() + " colours");
    }
}
