package tramontane.reliability.statistics;

/**
 * From when on a unit that still turns counts as failed, against its own first reading.
 *
 * <p>The defaults are those a life test of fans commonly takes, in the manner of IPC-9591; they are written from memory and not checked
 * against a copy of that standard. Edit them to what was agreed. A unit that does not start has failed in any case.
 *
 * @param speedFall   speed has fallen by more than this share of the first reading, above 0, below 1
 * @param currentRise current has risen by more than this share of the first reading, above 0
 * @param levelRise   A-weighted sound level has risen by more than this above the first reading, dB, above 0
 */
public record FailureCriteria(double speedFall, double currentRise, double levelRise) {

    /** 15 % of speed, 15 % of current, 3 dB(A): from memory, see above. */
    public static final FailureCriteria DEFAULT = new FailureCriteria(0.15, 0.15, 3);

    /** What a unit can fail by. */
    public enum Criterion {
        /** It does not start, or no longer turns. */
        NOT_RUNNING("does not run"),
        /** Too slow. */
        SPEED("speed fell"),
        /** Takes too much current. */
        CURRENT("current rose"),
        /** Too loud. */
        LEVEL("sound rose");

        private final String words;

        Criterion(String words) {
            this.words = words;
        }

        /** In running text. */
        public String words() {
            return words;
        }
    }

    /** Refuses limits that are not above zero, and a fall of speed by all of it. */
    public FailureCriteria {
        Requires.share("fall of speed", speedFall);
        Requires.positive("rise of current", currentRise);
        Requires.positive("rise of sound level", levelRise);
    }
}
