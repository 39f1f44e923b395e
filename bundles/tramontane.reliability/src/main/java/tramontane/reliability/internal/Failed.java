package tramontane.reliability.internal;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import tramontane.analysis.Cases;
import tramontane.model.FailedMover;
import tramontane.model.Passage;
import tramontane.model.Value;

/**
 * A set of failed movers. Columns of a bank are alike, so that it counts only how many of them have lost which places: they are put in
 * the order of their masks, highest first.
 *
 * @param banks of each bank the failed places of each column as bits, the first place the lowest bit
 */
record Failed(List<List<Integer>> banks) {

    Failed {
        banks = banks.stream().map(columns -> columns.stream().sorted(Comparator.reverseOrder()).toList()).toList();
    }

    /** Nothing has failed. */
    static Failed none(List<Scene.Bank> scene) {
        return new Failed(scene.stream().map(bank -> IntStream.range(0, Cases.positions(bank.passage()) / series(bank.passage())).map(column -> 0).boxed().toList()).toList());
    }

    /** How many movers stand one behind another. */
    static int series(Passage bank) {
        return bank.parameters().get("series").filter(Value.Num.class::isInstance).map(value -> (int) ((Value.Num) value).number()).filter(count -> count >= 1).orElse(1);
    }

    /**
     * A failure that may come next.
     *
     * @param bank  the bank
     * @param place the place in its column
     * @param to    what has failed then
     * @param units how many movers there are whose failure leads there
     */
    record Next(int bank, int place, Failed to, int units) {
    }

    /** All failures that may come next. */
    List<Next> next(List<Scene.Bank> scene) {
        List<Next> next = new ArrayList<>();
        for (int bank = 0; bank < banks.size(); bank++) {
            List<Integer> columns = banks.get(bank);
            for (int place = 0; place < series(scene.get(bank).passage()); place++) {
                for (int column = 0; column < columns.size(); column++) {
                    int mask = columns.get(column);
                    if ((mask >> place & 1) == 0 && (column == 0 || columns.get(column - 1) != mask)) {
                        next.add(new Next(bank, place, failing(bank, column, place), (int) columns.stream().filter(other -> other == mask).count()));
                    }
                }
            }
        }
        return next;
    }

    private Failed failing(int bank, int column, int place) {
        List<List<Integer>> changed = new ArrayList<>(banks);
        List<Integer> columns = new ArrayList<>(banks.get(bank));
        columns.set(column, columns.get(column) | 1 << place);
        changed.set(bank, columns);
        return new Failed(changed);
    }

    /** How many have failed. */
    int count() {
        return IntStream.range(0, banks.size()).map(this::count).sum();
    }

    /** How many of a bank have failed. */
    int count(int bank) {
        return banks.get(bank).stream().mapToInt(Integer::bitCount).sum();
    }

    /** Whether none of any other bank has failed. */
    boolean within(int bank) {
        return IntStream.range(0, banks.size()).allMatch(other -> other == bank || count(other) == 0);
    }

    /** Positions of a bank that have failed, counted from 1. */
    List<Integer> positions(int bank, int series) {
        List<Integer> positions = new ArrayList<>();
        for (int column = 0; column < banks.get(bank).size(); column++) {
            for (int place = 0; place < series; place++) {
                if ((banks.get(bank).get(column) >> place & 1) == 1) {
                    positions.add(column * series + place + 1);
                }
            }
        }
        return positions;
    }

    /** As a condition says it. */
    List<FailedMover> movers(List<Scene.Bank> scene) {
        List<FailedMover> movers = new ArrayList<>();
        for (int bank = 0; bank < banks.size(); bank++) {
            Scene.Bank each = scene.get(bank);
            positions(bank, series(each.passage())).forEach(position -> movers.add(new FailedMover(Optional.of(each.id()), Optional.of(position), each.section().failing())));
        }
        return movers;
    }

    /** In words: how many of which bank, and where they stand where that matters. */
    String words(List<Scene.Bank> scene) {
        List<String> words = new ArrayList<>();
        for (int bank = 0; bank < banks.size(); bank++) {
            if (count(bank) > 0) {
                int series = series(scene.get(bank).passage());
                words.add(series == 1 ? count(bank) + " of " + banks.get(bank).size() + (scene.size() > 1 ? " " + scene.get(bank).id() : "")
                        : (scene.size() > 1 ? scene.get(bank).id() + " " : "") + String.join(", ", positions(bank, series).stream().map(String::valueOf).toList()));
            }
        }
        return words.isEmpty() ? "none" : String.join("; ", words);
    }
}
