package tramontane.analysis;

/** How a finding is meant, from best to worst. */
public enum Severity {
    /** A requirement holds. */
    MET("met"),
    /** Worth knowing. */
    NOTE("note"),
    /** Holds, but look at it. */
    CAUTION("caution"),
    /** Nothing loaded gives the figure, or it could not be computed. */
    NOT_JUDGED("not judged"),
    /** A requirement does not hold. */
    NOT_MET("not met"),
    /** Something failed. */
    ERROR("error");

    private final String word;

    Severity(String word) {
        this.word = word;
    }

    /** The word that people read. */
    public String word() {
        return word;
    }
}
