package tramontane.selection.desktop.internal;

import org.eclipse.swt.widgets.Composite;
import org.osgi.service.component.annotations.Activate;
import org.osgi.service.component.annotations.Component;
import org.osgi.service.component.annotations.Reference;
import tramontane.desktop.Desk;
import tramontane.desktop.Icon;
import tramontane.desktop.Spot;
import tramontane.desktop.View;
import tramontane.desktop.ViewType;

/** The view in which the catalogue is looked through. */
@Component(service = ViewType.class)
public final class CatalogueViewType implements ViewType {

    private final SharedShelf shelf;

    /** Made by Declarative Services. */
    @Activate
    public CatalogueViewType(@Reference SharedShelf shelf) {
        this.shelf = shelf;
    }

    @Override
    public String id() {
        return CatalogueView.ID;
    }

    @Override
    public String label() {
        return "Catalogue";
    }

    @Override
    public Icon icon() {
        return Icon.read(CatalogueViewType.class, "catalogue.svg");
    }

    @Override
    public Spot spot() {
        return Spot.MIDDLE;
    }

    @Override
    public boolean atFirst() {
        return false;
    }

    @Override
    public int order() {
        return 210;
    }

    @Override
    public String help() {
        return """
                # Catalogue

                All parts there are, with what they say of the usual fields. The sheet of the selected one has every field with where it comes \
                from, its curves, and whether its figures can be true together.

                - Type words, all of which must occur, or a filter: width <= 80 mm and freeDelivery >= 100 m³/h.
                - A heading sorts by its column, numbers by value; pressed again it sorts the other way round. What is not known comes last.
                - Hover over a heading to see how filters name the field.

                Parts are read from the catalogue that comes with the program and from the folder catalogue in your own folder; one of yours takes \
                the place of a shipped one with the same id. Files that change are read again at once.
                """;
    }

    @Override
    public View open(Composite parent, Desk desk) {
        return new CatalogueView(parent, desk, shelf.of(desk));
    }
}
