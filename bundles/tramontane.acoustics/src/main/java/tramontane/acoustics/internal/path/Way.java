package tramontane.acoustics.internal.path;

import java.util.Arrays;
import tramontane.acoustics.Banded;
import tramontane.acoustics.PassageNoise;
import tramontane.model.Passage;
import tramontane.physics.sound.Bands;
import tramontane.physics.sound.Levels;

/**
 * A passage as sound meets it.
 *
 * @param passage the passage
 * @param noise   what is said of it
 * @param from    number of the bay it starts in, or {@link #OUTSIDE}
 * @param to      number of the bay it ends in, or {@link #OUTSIDE}
 * @param area    m²; not a number while it is not known
 * @param assumed whether the area is assumed
 */
record Way(Passage passage, PassageNoise noise, int from, int to, double area, boolean assumed) {

    static final int OUTSIDE = -1;

    String id() {
        return passage.id();
    }

    boolean bank() {
        return passage.isBank();
    }

    /** Whether one of its ends is outside. */
    boolean outer() {
        return from == OUTSIDE || to == OUTSIDE;
    }

    /** Whether sound gets outside by it: from a bay, or from a bank. */
    boolean opening() {
        return (from == OUTSIDE) != (to == OUTSIDE) || bank() && from == OUTSIDE;
    }

    /** Whether it joins two places between which sound makes a difference. */
    boolean crossed() {
        return from != to;
    }

    /** Whether one of its ends is that bay. */
    boolean at(int bay) {
        return from == bay || to == bay;
    }

    /** The bay in front of an opening, or {@link #OUTSIDE} where there is none. */
    int inner() {
        return from == OUTSIDE ? to : from;
    }

    /**
     * What of the sound that meets it gets through, in each third.
     *
     * @param less by how much stated losses are lower than stated, as a multiple of their tolerance
     */
    double[] passed(double less) {
        double[] passed = new double[Bands.THIRDS];
        double[] loss = noise.insertionLoss().orElse(Banded.always(0)).thirds(0);
        Arrays.setAll(passed, third -> Levels.power(-Math.max(0, loss[third] - less * noise.tolerance())));
        return passed;
    }

    Way of(double assumedArea) {
        return new Way(passage, noise, from, to, assumedArea, true);
    }
}
