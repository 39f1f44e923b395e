package tramontane.acoustics;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/** A face of the equipment, as seen by who stands in front of it. */
public enum Face {
    /** Towards the operator. */
    FRONT("front"),
    /** Away from the operator. */
    REAR("rear"),
    /** On the left hand of who looks at the front. */
    LEFT("left"),
    /** On the right hand of who looks at the front. */
    RIGHT("right"),
    /** Up. */
    TOP("top"),
    /** Down. */
    BOTTOM("bottom");

    private final String word;

    Face(String word) {
        this.word = word;
    }

    /** The word in files and labels. */
    public String word() {
        return word;
    }

    /** The face of that word. */
    public static Optional<Face> named(String word) {
        return Arrays.stream(values()).filter(face -> face.word.equals(word)).findFirst();
    }

    /** All words. */
    public static List<String> words() {
        return Arrays.stream(values()).map(Face::word).toList();
    }
}
