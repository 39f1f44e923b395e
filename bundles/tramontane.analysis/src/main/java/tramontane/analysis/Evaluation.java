package tramontane.analysis;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import tramontane.model.Design;

/**
 * What a run of the engine gave, in an order that does not depend on threads.
 *
 * @param design    the design that was run
 * @param cases     the cases that were computed, in the order of the conditions
 * @param outcomes  one entry per analysis and case: by case, within it givers before those that need them
 * @param findings  all findings: those of the analyses, then those of the engine itself
 * @param verdicts  requirements by conditions
 * @param cancelled whether it was left early; what is there is right, but not all
 */
public record Evaluation(Design design, List<Engine.Case> cases, List<Outcome> outcomes, List<Finding> findings,
        List<Verdict> verdicts, boolean cancelled) {

    public Evaluation {
        cases = List.copyOf(cases);
        outcomes = List.copyOf(outcomes);
        findings = List.copyOf(findings);
        verdicts = List.copyOf(verdicts);
    }

    /**
     * How one analysis came out in one case.
     *
     * @param analysis  its id
     * @param condition the case's id; empty for a design-wide analysis
     * @param status    how it ended
     * @param result    its result with the engine's findings about it; empty data unless {@link Status#COMPUTED}
     * @param overruled whether a higher ranked analysis of the same run gives the same type of data: its data then counts,
     *                  and the figures that it can give are taken out of this result, and overviews of such figures with
     *                  them, so that no figure has two values;
     *                  where it was computed and can give them all, the findings too, other than errors, as it says them anew
     */
    public record Outcome(String analysis, String condition, Status status, Result<?> result, boolean overruled) {

        /** An outcome that counts. */
        public Outcome(String analysis, String condition, Status status, Result<?> result) {
            this(analysis, condition, status, result, false);
        }
    }

    /** How an analysis ended. */
    public enum Status {
        /** It gave data. */
        COMPUTED,
        /** It ran and said that there is no answer. */
        NOT_COMPUTED,
        /** It did not run: something it needs is missing. */
        NOT_RUN,
        /** It threw, or ran beyond its time limit. */
        FAILED
    }

    /** All figures, in the order of the outcomes. */
    public List<Figure> figures() {
        return outcomes.stream().flatMap(outcome -> outcome.result().figures().stream()).toList();
    }

    /**
     * The data of one type in a case; of the highest ranked analysis that gives it. Empty where that one could not compute
     * it, even if a lower ranked one did.
     *
     * @param <T>       the type
     * @param type      the type
     * @param condition the case's id; empty for design-wide data
     */
    public <T> Optional<T> data(Class<T> type, String condition) {
        return outcomes.stream().filter(outcome -> !outcome.overruled() && outcome.condition().equals(condition))
                .flatMap(outcome -> outcome.result().data().stream()).filter(type::isInstance).map(type::cast).findFirst();
    }

    /** Figures by place of one id in one case. */
    public Map<String, Figure> figures(String id, String condition) {
        Map<String, Figure> byPlace = new java.util.LinkedHashMap<>();
        figures().stream().filter(figure -> figure.kind().id().equals(id) && figure.condition().equals(condition))
                .forEach(figure -> byPlace.put(figure.place(), figure));
        return byPlace;
    }
}
