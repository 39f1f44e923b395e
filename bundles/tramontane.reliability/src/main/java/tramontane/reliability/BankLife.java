package tramontane.reliability;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import tramontane.model.FailedMover;

/**
 * What counts for the life of the movers of a bank: section {@value MoverLife#SECTION} of a passage.
 *
 * @param shaft   along which edge of the upright equipment its shafts lie
 * @param needed  how many of its movers must run; found by letting them fail where not given
 * @param failing how a mover fails
 * @param solids  what solids reach it, where that differs from the rest of the equipment
 * @param water   how water reaches it, where that differs from the rest of the equipment
 */
public record BankLife(Optional<Axis> shaft, Optional<Integer> needed, FailedMover.State failing, Optional<Solids> solids, Optional<Water> water) {

    /** One of which nothing is said. */
    public static final BankLife NONE = new BankLife(Optional.empty(), Optional.empty(), FailedMover.State.LOCKED, Optional.empty(), Optional.empty());

    /** An edge of the equipment as it stands upright. */
    public enum Axis {
        /** From left to right. */
        WIDTH("width"),
        /** From the bottom to the top. */
        HEIGHT("height"),
        /** From the front to the back. */
        DEPTH("depth");

        private final String word;

        Axis(String word) {
            this.word = word;
        }

        /** The word in files and labels. */
        public String word() {
            return word;
        }

        /**
         * How a shaft along this edge lies in equipment that stands in an attitude.
         *
         * @param attitude one of {@code Equipment.ATTITUDES}
         */
        public MoverLife.Shaft in(String attitude) {
            Axis upward = switch (attitude) {
                case "upright", "upside down" -> HEIGHT;
                case "on its side" -> WIDTH;
                case "on its back" -> DEPTH;
                default -> null;
            };
            return upward == null ? MoverLife.Shaft.ANY : upward == this ? MoverLife.Shaft.UPRIGHT : MoverLife.Shaft.LEVEL;
        }
    }

    /** What reaches a mover, with the numeral of IEC 60529 against it. */
    public enum Solids {
        /** Nothing. */
        NONE("none", 0),
        /** Fingers; 12.5 mm. */
        FINGERS("fingers", 2),
        /** Tools and thick wires; 2.5 mm. */
        TOOLS("tools", 3),
        /** Wires and grains; 1 mm. */
        GRAINS("grains", 4),
        /** Dust, of which some may come in. */
        DUST("dust", 5),
        /** Dust, of which none may come in. */
        FINE_DUST("fine dust", 6);

        private final String word;
        private final int numeral;

        Solids(String word, int numeral) {
            this.word = word;
            this.numeral = numeral;
        }

        /** The word in files and labels. */
        public String word() {
            return word;
        }

        /** First characteristic numeral of IEC 60529 that protects against it. */
        public int numeral() {
            return numeral;
        }

        /** All words. */
        public static List<String> words() {
            return Arrays.stream(values()).map(Solids::word).toList();
        }
    }

    /** How water reaches a mover, with the numeral of IEC 60529 against it. */
    public enum Water {
        /** Not at all. */
        NONE("none", 0),
        /** Drops fall straight down. */
        DRIP("drip", 1),
        /** Drops fall with the equipment tilted by 15°. */
        TILTED_DRIP("drip, tilted", 2),
        /** Spray up to 60° from the vertical. */
        SPRAY("spray", 3),
        /** Splashes from all sides. */
        SPLASH("splash", 4),
        /** Jets. */
        JETS("jets", 5),
        /** Strong jets. */
        STRONG_JETS("strong jets", 6),
        /** Under water for a while. */
        IMMERSION("immersion", 7);

        private final String word;
        private final int numeral;

        Water(String word, int numeral) {
            this.word = word;
            this.numeral = numeral;
        }

        /** The word in files and labels. */
        public String word() {
            return word;
        }

        /** Second characteristic numeral of IEC 60529 that protects against it. */
        public int numeral() {
            return numeral;
        }

        /** All words. */
        public static List<String> words() {
            return Arrays.stream(values()).map(Water::word).toList();
        }
    }
}
