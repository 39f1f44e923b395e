package tramontane.desktop.internal.judging;

import java.util.List;
import java.util.Optional;
import tramontane.analysis.Derivation;
import tramontane.analysis.Trace;
import tramontane.desktop.FigureKey;
import tramontane.model.edit.Subject;

/**
 * A value in the tree of where a figure comes from.
 *
 * @param label      what it is
 * @param value      how much it is, with its unit
 * @param from       where it stands
 * @param steps      how it came about; more than one where several values stand behind it, none where it is given
 * @param derivation of which these steps are
 * @param above      the steps on the way here, which are not entered again
 * @param subject    the thing of the design where it stands
 * @param elsewhere  the figure of another analysis that it is; that can be asked about in turn
 * @param again      whether it stands above already, and is told there
 */
record Origin(String label, String value, String from, List<Trace.Step> steps, Derivation derivation, List<Trace.Step> above,
        Optional<Subject> subject, Optional<FigureKey> elsewhere, boolean again) {

    static final String TOLD = "told above";

    Origin {
        steps = List.copyOf(steps);
        above = List.copyOf(above);
    }

    /** Whether there is more beneath it. */
    boolean opens() {
        return steps.stream().anyMatch(step -> !step.inputs().isEmpty()) || elsewhere.isPresent() && steps.isEmpty();
    }

    /** This figure of another analysis, now that its steps are known. */
    Origin told(Derivation by, List<Trace.Step> how) {
        // two analyses may rest on each other, as flow and temperature do
        boolean seen = !how.isEmpty() && above.containsAll(how);
        return new Origin(label, value, seen ? TOLD : from, seen ? List.of() : how, by, above, subject,
                how.isEmpty() || seen ? Optional.empty() : elsewhere, seen);
    }

    /**
     * What is said of it when it is selected.
     *
     * @param heading the value
     * @param formula how it came about; empty where it is given
     * @param lines   name, validity and source of the formula, or where it stands
     */
    record Told(String heading, String formula, List<String> lines) {
        Told {
            lines = List.copyOf(lines);
        }
    }
}
