package tramontane.selection.desktop.internal;

import java.nio.file.Path;
import java.util.Optional;
import java.util.function.UnaryOperator;
import org.osgi.framework.BundleContext;
import org.osgi.service.component.annotations.Activate;
import org.osgi.service.component.annotations.Component;
import tramontane.desktop.Desk;

/** One catalogue for all views of a window, read once. */
@Component(service = SharedShelf.class)
public final class SharedShelf {

    private final UnaryOperator<String> property;
    private Optional<Shelf> shelf = Optional.empty();

    /** Made by Declarative Services. */
    @Activate
    public SharedShelf(BundleContext context) {
        this(context::getProperty);
    }

    SharedShelf(UnaryOperator<String> property) {
        this.property = property;
    }

    /** The catalogue of a window; on the UI thread only. */
    Shelf of(Desk desk) {
        if (shelf.isEmpty()) {
            Path home = Optional.ofNullable(property.apply("tramontane.home")).map(Path::of).orElse(desk.home());
            shelf = Optional.of(new Shelf(Folders.of(property, home), desk.engine()::sectionTypes));
        }
        return shelf.get();
    }
}
