package tramontane.selection.desktop.internal;

import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.UnaryOperator;
import tramontane.catalogue.Catalogue;
import tramontane.physics.units.UnitSystem;

/** Makes states of the view of the catalogue, one after another off the UI thread. Called on the UI thread only. */
final class CataloguePresenter {

    private final Desktop desktop;
    private final Consumer<PartsShown> view;
    private PartsShown state = PartsShown.NOTHING;
    private UnaryOperator<PartsShown> waiting = UnaryOperator.identity();
    private boolean busy;
    private boolean more;
    private boolean closed;

    CataloguePresenter(Desktop desktop, Consumer<PartsShown> view) {
        this.desktop = desktop;
        this.view = view;
    }

    PartsShown state() {
        return state;
    }

    void catalogue(Catalogue catalogue) {
        change(before -> before.catalogue(catalogue));
    }

    void find(String text) {
        change(before -> before.find().equals(text) ? before : before.find(text));
    }

    void sort(String column) {
        change(before -> before.sort(column));
    }

    void units(UnitSystem units) {
        change(before -> before.units().equals(units) ? before : before.units(units));
    }

    void select(Optional<String> id) {
        change(before -> before.selected().equals(id) ? before : before.sheet(id));
    }

    void close() {
        closed = true;
    }

    private void change(UnaryOperator<PartsShown> step) {
        UnaryOperator<PartsShown> before = waiting;
        waiting = state -> step.apply(before.apply(state));
        more = true;
        next();
    }

    private void next() {
        if (busy || !more) {
            return;
        }
        busy = true;
        more = false;
        UnaryOperator<PartsShown> steps = waiting;
        waiting = UnaryOperator.identity();
        PartsShown now = state;
        desktop.quietly(() -> steps.apply(now), changed -> {
            busy = false;
            state = changed;
            if (!closed) {
                view.accept(state);
                next();
            }
        });
    }
}
