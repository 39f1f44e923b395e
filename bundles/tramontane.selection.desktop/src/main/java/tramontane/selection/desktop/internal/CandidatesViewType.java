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
import tramontane.selection.Selector;

/** The view in which the movers of a bank are chosen. */
@Component(service = ViewType.class)
public final class CandidatesViewType implements ViewType {

    private final Selector selector;
    private final SharedShelf shelf;

    /** Made by Declarative Services. */
    @Activate
    public CandidatesViewType(@Reference Selector selector, @Reference SharedShelf shelf) {
        this.selector = selector;
        this.shelf = shelf;
    }

    @Override
    public String id() {
        return CandidatesView.ID;
    }

    @Override
    public String label() {
        return "Candidates";
    }

    @Override
    public Icon icon() {
        return Icon.read(CandidatesViewType.class, "candidates.svg");
    }

    @Override
    public Spot spot() {
        return Spot.MIDDLE;
    }

    @Override
    public int order() {
        return 200;
    }

    @Override
    public String help() {
        return """
                # Candidates

                Chooses the air movers of a bank out of the catalogue. A candidate is a part in an arrangement at the lowest speed setting with \
                which every requirement holds in every condition.

                # How it is done

                - Say which parts are looked at (a filter such as type = axial and width <= 92 mm) and, under settings, how much room there is and what \
                counts. Add figure… lets any figure count that what is loaded gives and that is better one way.
                - Keep in the design writes these settings into the bank, so that they are there when the design is opened again. How many are listed, \
                ended ones and tolerances are asked anew each time.
                - Press choose, or Ctrl+Enter. Rows appear as candidates are found; the list is complete when the choice is done. Stop keeps what was found.
                - Enter or a double click on a row says why it stands there, what limits it, and what is met with how much to spare.
                - Select two to six rows to compare them; the best of each line is marked by the word best.
                - Scatter draws candidates by two figures: discs are in the Pareto set, rings are not, the dashed line joins the best trade-offs of these \
                two. A click on one selects its row; as a table (Ctrl+T) it says the same in numbers; Ctrl+E saves it.
                - The pages beside the table take all the room and give it back with Ctrl+5.
                - Put it into the design puts the selected candidate into the bank as one step, which undo takes back. The mover that was there \
                goes where nothing else uses it.

                # What the words mean

                - tolerances, too: each candidate holds at the edge of its tolerances as well. Without, the lowest speed that just does is given, \
                and what is put into the design may be met with a caution.
                - merit: 100 for the first; 50 means on the weighted average twice as much of everything.
                - Pareto set: no other candidate is as good in everything and better in something.
                - to spare: what the tightest requirement has left, of a temperature in K, else over its limit.

                # Parts

                Parts are read from the catalogue that comes with the program and from the folder catalogue in your own folder; one of yours takes \
                the place of a shipped one with the same id. Files that change are read again at once.
                """;
    }

    @Override
    public View open(Composite parent, Desk desk) {
        return new CandidatesView(parent, desk, selector, shelf.of(desk));
    }
}
