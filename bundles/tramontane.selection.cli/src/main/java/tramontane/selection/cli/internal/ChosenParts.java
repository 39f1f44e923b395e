package tramontane.selection.cli.internal;

import java.util.AbstractList;
import tramontane.catalogue.Catalogue;
import tramontane.model.AirMover;

/** Parts of a catalogue, each made when it is asked for. */
final class ChosenParts extends AbstractList<AirMover> {

    private final Catalogue catalogue;
    private final int[] numbers;

    ChosenParts(Catalogue catalogue, int[] numbers) {
        this.catalogue = catalogue;
        this.numbers = numbers.clone();
    }

    @Override
    public AirMover get(int index) {
        return catalogue.part(numbers[index]);
    }

    @Override
    public int size() {
        return numbers.length;
    }
}
