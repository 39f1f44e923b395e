package tramontane.airflow.desktop.internal.path;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import tramontane.model.AirPath;
import tramontane.model.Design;
import tramontane.model.FailedMover;
import tramontane.model.Value;

/** Where users put bays, as it is kept in the design. Nothing of this changes a result. */
final class PathEdits {

    private PathEdits() {
    }

    /** The design with the middle of a bay put somewhere, to a whole unit. */
    static Design move(Design design, String bay, Spot middle) {
        Value.Tree there = Value.Tree.EMPTY.with("x", whole(middle.x())).with("y", whole(middle.y()));
        Value.Tree layout = design.airPath().more().tree(PathGraph.LAYOUT).orElse(Value.Tree.EMPTY);
        Value.Tree bays = layout.tree(PathGraph.BAYS).orElse(Value.Tree.EMPTY);
        return with(design, Optional.of(layout.with(PathGraph.BAYS, bays.with(bay, there))));
    }

    /** The design with a bay back where the layout has it. */
    static Design release(Design design, String bay) {
        return design.airPath().more().tree(PathGraph.LAYOUT).flatMap(layout -> layout.tree(PathGraph.BAYS).map(bays -> {
            Value.Tree left = bays.without(bay);
            Value.Tree rest = left.isEmpty() ? layout.without(PathGraph.BAYS) : layout.with(PathGraph.BAYS, left);
            return with(design, rest.isEmpty() ? Optional.empty() : Optional.of(rest));
        })).orElse(design);
    }

    /** The design with every bay back where the layout has it. */
    static Design releaseAll(Design design) {
        return design.airPath().more().tree(PathGraph.LAYOUT).map(layout -> layout.without(PathGraph.BAYS))
                .map(rest -> with(design, rest.isEmpty() ? Optional.empty() : Optional.of(rest))).orElse(design);
    }

    /**
     * The design with one mover failed in a condition, or working in it again.
     *
     * @param condition the condition as declared; a design that declares none gets the one that holds for it
     * @param bank      the bank
     * @param position  the position, from 1
     * @param state     how it fails; empty for it works
     */
    static Design fail(Design design, String condition, String bank, int position, Optional<FailedMover.State> state) {
        return design.withConditions(design.workingConditions().stream().map(each -> {
            if (!each.id().equals(condition)) {
                return each;
            }
            List<FailedMover> failed = new ArrayList<>(each.failed().stream().filter(mover -> !mover.bank().equals(Optional.of(bank))
                    || !mover.position().equals(Optional.of(position))).toList());
            state.ifPresent(how -> failed.add(new FailedMover(Optional.of(bank), Optional.of(position), how)));
            return each.with(each.id(), failed);
        }).toList());
    }

    private static Value whole(double number) {
        return Value.Num.of(Math.rint(number) + 0.0);
    }

    private static Design with(Design design, Optional<Value.Tree> layout) {
        AirPath path = design.airPath();
        return design.withAirPath(new AirPath(path.bays(), path.passages(), layout.map(tree -> path.more().with(PathGraph.LAYOUT, tree))
                .orElseGet(() -> path.more().without(PathGraph.LAYOUT))));
    }
}
