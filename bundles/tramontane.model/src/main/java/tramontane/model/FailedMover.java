package tramontane.model;

import java.util.Arrays;
import java.util.Optional;

/**
 * A mover that has failed in a condition.
 *
 * @param bank     the bank it sits in; any bank where not given
 * @param position its position in the bank, counted from 1; any one position where not given
 * @param state    how it fails
 * @param more     notes and unknown members
 */
public record FailedMover(Optional<String> bank, Optional<Integer> position, State state, Value.Tree more) implements Noun {

    /** How a mover may fail. */
    public enum State {
        /** The rotor stands still. */
        LOCKED("locked"),
        /** The rotor is turned by the air. */
        FREEWHEELING("freewheeling"),
        /** The mover is taken out and leaves an open hole. */
        REMOVED("removed");

        private final String word;

        State(String word) {
            this.word = word;
        }

        /** The word in files and labels. */
        public String word() {
            return word;
        }
    }

    /** The word for a position that is not said. */
    public static final String ANY_ONE = "any one";

    /** The fields in the file. */
    public static final Form FORM = Form.of("failed mover", "A mover that has failed in a condition.",
            Field.reference("bank", "bank", Shape.Target.BANK, "The bank it sits in; any bank where not given."),
            Field.of("position", "position", new Shape.WholeOr(1, ANY_ONE),
                    "Position in the bank, counted from 1, or \"any one\": every position in turn, the worst counts."),
            Field.choice("state", "state", Arrays.stream(State.values()).map(State::word).toList(),
                    "Locked: the rotor stands still. Freewheeling: the air turns it. Removed: an open hole.")
                    .standard("locked"));

    /** A failed mover of which nothing else is said. */
    public FailedMover(Optional<String> bank, Optional<Integer> position, State state) {
        this(bank, position, state, Value.Tree.EMPTY);
    }

    static FailedMover from(Values values) {
        State state = Arrays.stream(State.values()).filter(each -> each.word().equals(values.text("state"))).findFirst()
                .orElse(State.LOCKED);
        return new FailedMover(values.ifText("bank"), values.ifWhole("position"), state, values.rest());
    }

    /** Whether bank and position are both said. */
    public boolean isConcrete() {
        return bank.isPresent() && position.isPresent();
    }

    @Override
    public Value.Tree tree() {
        return new TreeBuilder().text("bank", bank)
                .value("position", position.<Value>map(Value.Num::of).orElse(new Value.Text(ANY_ONE)))
                .text("state", state.word()).build(more);
    }
}
