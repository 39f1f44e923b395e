package tramontane.desktop.internal.judging;

import java.util.Map;
import java.util.Optional;
import java.util.Set;
import tramontane.analysis.Severity;
import tramontane.desktop.Sheet;
import tramontane.model.edit.Subject;

/**
 * The list of findings.
 *
 * @param sheet   the table
 * @param targets what each row is about, by its key
 * @param counts  how many there are of each level before any is left out
 * @param empty   what is said instead of an empty table
 */
record Findings(Sheet sheet, Map<Object, Target> targets, Map<Level, Integer> counts, String empty) {

    /** How findings are told apart for who wants to see some of them only. */
    enum Level {
        /** Mistakes in the design, and what failed. */
        ERRORS("errors", Set.of(Severity.ERROR, Severity.NOT_MET)),
        /** Not known. */
        NOT_JUDGED("not judged", Set.of(Severity.NOT_JUDGED)),
        /** Look at it. */
        CAUTIONS("cautions", Set.of(Severity.CAUTION)),
        /** Worth knowing. */
        NOTES("notes", Set.of(Severity.NOTE, Severity.MET));

        private final String label;
        private final Set<Severity> severities;

        Level(String label, Set<Severity> severities) {
            this.label = label;
            this.severities = severities;
        }

        String label() {
            return label;
        }

        static Level of(Severity severity) {
            for (Level level : values()) {
                if (level.severities.contains(severity)) {
                    return level;
                }
            }
            return NOTES;
        }
    }

    /**
     * What somebody wants to see.
     *
     * @param hidden    levels that are left out
     * @param frontOnly whether only what holds in the case in front is shown
     * @param text      words that must all occur; empty for all
     */
    record Filter(Set<Level> hidden, boolean frontOnly, String text) {

        static final Filter NONE = new Filter(Set.of(), false, "");

        Filter {
            hidden = Set.copyOf(hidden);
        }
    }

    /**
     * Where a finding leads.
     *
     * @param subject the thing of the design
     * @param front   the case to bring to the front
     * @param hover   all there is to say
     */
    record Target(Optional<Subject> subject, Optional<String> front, String hover) {
    }
}
