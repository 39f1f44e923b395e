package tramontane.drive;

import java.util.List;
import java.util.stream.Stream;

/** What a mover tells of itself. */
public enum Signal {
    /** Nothing. */
    NONE("nothing"),
    /** Whether its rotor stands. */
    LOCKED_ROTOR("locked rotor"),
    /** Its speed, by pulses or on the bus. */
    SPEED("speed");

    private final String word;

    Signal(String word) {
        this.word = word;
    }

    /** As it is written and read. */
    public String word() {
        return word;
    }

    /** Whether it tells at least as much as another. */
    public boolean tells(Signal wanted) {
        return ordinal() >= wanted.ordinal();
    }

    /** All words. */
    public static List<String> words() {
        return Stream.of(values()).map(Signal::word).toList();
    }

    /** The one that is written so. */
    public static Signal named(String word) {
        return Stream.of(values()).filter(each -> each.word.equals(word)).findFirst().orElse(NONE);
    }
}
