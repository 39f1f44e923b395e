package tramontane.acoustics;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/**
 * Where the equipment stands and who listens.
 *
 * @param space       what surrounds it
 * @param stands      what it stands on
 * @param height      height of its underside above the floor, m; empty for that of what it stands on
 * @param positions   where somebody listens
 * @param background  noise that is there without it
 * @param declaration what a declaration of its noise needs
 */
public record NoiseScene(Space space, Stands stands, Optional<Double> height, List<Position> positions, Optional<Background> background,
        Optional<Declaration> declaration) {

    /** Of which nothing is said: on the floor, over a reflecting plane, nobody listening. */
    public static final NoiseScene NONE = new NoiseScene(Space.PLANE, Stands.FLOOR, Optional.empty(), List.of(), Optional.empty(),
            Optional.empty());

    public NoiseScene {
        positions = List.copyOf(positions);
    }

    /** Height of the underside of the equipment above the floor, m. */
    public double underside() {
        return height.orElse(stands.height());
    }

    /** Whether that height is assumed, since nothing says how high a rack or a wall carries the equipment. */
    public boolean undersideAssumed() {
        return height.isEmpty() && (stands == Stands.WALL || stands == Stands.RACK);
    }

    /** What surrounds the equipment. */
    public enum Around {
        /** Nothing that reflects sound. */
        FREE_FIELD("free field"),
        /** One plane that reflects all sound: the floor, or the wall that the equipment hangs on. */
        REFLECTING_PLANE("reflecting plane"),
        /** A room of known absorption. */
        ROOM("room");

        private final String word;

        Around(String word) {
            this.word = word;
        }

        /** The word in files and labels. */
        public String word() {
            return word;
        }

        /** All words. */
        public static List<String> words() {
            return Arrays.stream(values()).map(Around::word).toList();
        }
    }

    /**
     * What surrounds the equipment. Sizes and absorption are those of a room.
     *
     * @param around        its kind
     * @param length        m
     * @param width         m
     * @param height        m
     * @param absorption    mean absorption coefficient of all its surfaces, above 0 to 1
     * @param reverberation reverberation time, s; one of both is given
     */
    public record Space(Around around, Optional<Double> length, Optional<Double> width, Optional<Double> height,
            Optional<Banded> absorption, Optional<Banded> reverberation) {

        /** One reflecting plane. */
        public static final Space PLANE = new Space(Around.REFLECTING_PLANE, Optional.empty(), Optional.empty(), Optional.empty(),
                Optional.empty(), Optional.empty());

        /** Volume of the room, m³; empty where a size is missing. */
        public Optional<Double> volume() {
            return length.flatMap(l -> width.flatMap(w -> height.map(h -> l * w * h)));
        }

        /** Area of all surfaces of the room, m²; empty where a size is missing. */
        public Optional<Double> surface() {
            return length.flatMap(l -> width.flatMap(w -> height.map(h -> 2 * (l * w + w * h + h * l))));
        }
    }

    /** What the equipment stands on. */
    public enum Stands {
        /** The floor. */
        FLOOR("on the floor", 0),
        /** A table of ISO 7779 (from memory). */
        TABLE("on a table", 0.75),
        /** A wall; its height is assumed. */
        WALL("on a wall", 1),
        /** A rack; its height is assumed. */
        RACK("in a rack", 1);

        private final String words;
        private final double height;

        Stands(String words, double height) {
            this.words = words;
            this.height = height;
        }

        /** The words in files and labels. */
        public String word() {
            return words;
        }

        /** Height of the underside of the equipment above the floor, m. */
        public double height() {
            return height;
        }

        /** All words. */
        public static List<String> words() {
            return Arrays.stream(values()).map(Stands::word).toList();
        }
    }

    /** Who listens. */
    public enum Listener {
        /** An operator who sits in front. */
        OPERATOR_SEATED("operator seated"),
        /** An operator who stands in front. */
        OPERATOR_STANDING("operator standing"),
        /** Bystanders on four sides; their mean counts. */
        BYSTANDERS("bystanders"),
        /** Somebody at a stated point. */
        POINT("point");

        private final String words;

        Listener(String words) {
            this.words = words;
        }

        /** The words in files and labels. */
        public String word() {
            return words;
        }

        /** All words. */
        public static List<String> words() {
            return Arrays.stream(values()).map(Listener::word).toList();
        }
    }

    /**
     * Where somebody listens. A point has a distance, or coordinates whose origin lies on the floor below the middle of the front face.
     *
     * @param id       its name
     * @param listener who listens
     * @param x        m to the right, as seen from the front
     * @param y        m from the front face towards the operator
     * @param z        m above the floor
     * @param distance m straight in front of the middle of the front face
     */
    public record Position(String id, Listener listener, double x, Optional<Double> y, Optional<Double> z, Optional<Double> distance) {
    }

    /**
     * Noise that is there without the equipment; one of both is given.
     *
     * @param levels   band levels of the sound pressure, dB
     * @param weighted A-weighted sound pressure level, dB
     */
    public record Background(Optional<Banded> levels, Optional<Double> weighted) {
    }

    /**
     * Spreads that a declaration by ISO 9296 counts with.
     *
     * @param reproducibility standard deviation of reproducibility of the measurement, dB
     * @param production      standard deviation of production, dB
     */
    public record Declaration(double reproducibility, double production) {
    }
}
