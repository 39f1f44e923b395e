package tramontane.desktop;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import tramontane.analysis.Engine;
import tramontane.analysis.Evaluation;
import tramontane.analysis.Figure;
import tramontane.analysis.Finding;
import tramontane.analysis.Severity;
import tramontane.analysis.Verdict;

/**
 * What is known of the design in front: what was computed of it as it is now, and for the rest what was known of it before, marked as
 * stale.
 *
 * @param now     what was computed of the design as it is; may be part of all only; empty while nothing was
 * @param before  the last complete evaluation of an earlier state; empty where there was none, or where it is no longer needed
 * @param running whether more is being computed
 * @param late    whether that has lasted so long that what belongs to an earlier state is to be shown as stale. Most edits are computed in
 *                the blink of an eye, and greying and ungreying the whole window in that time would only flicker
 */
public record Results(Optional<Evaluation> now, Optional<Evaluation> before, boolean running, boolean late) {

    /** Nothing known. */
    public static final Results NONE = new Results(Optional.empty(), Optional.empty(), false);

    /** Results of which what belongs to an earlier state is stale. */
    public Results(Optional<Evaluation> now, Optional<Evaluation> before, boolean running) {
        this(now, before, running, true);
    }

    /**
     * Something known.
     *
     * @param value what
     * @param stale whether it belongs to an earlier state of the design and is to be shown so
     * @param <T>   a figure, a finding, a verdict, or typed data
     */
    public record Known<T>(T value, boolean stale) {
    }

    /** The cases that were computed, in the order of the conditions. */
    public List<Engine.Case> cases() {
        // a run of a part has a part of the cases only
        return before.or(() -> now).map(Evaluation::cases).orElse(List.of());
    }

    /** Whether all is known of the design as it is. */
    public boolean complete() {
        return now.isPresent() && before.isEmpty() && !running;
    }

    /** All figures, the stale ones last. */
    public List<Known<Figure>> figures() {
        return all(Evaluation::figures, figure -> List.of(figure.kind().id(), figure.place(), figure.condition()));
    }

    /** One figure. */
    public Optional<Known<Figure>> figure(FigureKey key) {
        return first(evaluation -> evaluation.figures().stream().filter(figure -> FigureKey.of(figure).equals(key)).findFirst());
    }

    /** One figure by id, place and case. */
    public Optional<Known<Figure>> figure(String id, String place, String caseId) {
        return figure(new FigureKey(id, place, caseId));
    }

    /**
     * The data of one type in a case, for drawing what figures do not say.
     *
     * @param type   the type
     * @param caseId the case's id; empty for data of the design as a whole
     * @param <T>    the type
     */
    public <T> Optional<Known<T>> data(Class<T> type, String caseId) {
        return first(evaluation -> evaluation.data(type, caseId));
    }

    /** All findings; an earlier state's only where their analysis has not been run again. */
    public List<Known<Finding>> findings() {
        if (now.isEmpty() || before.isEmpty()) {
            return all(Evaluation::findings, finding -> finding);
        }
        Set<List<String>> again = new HashSet<>();
        now.get().outcomes().forEach(outcome -> again.add(List.of(outcome.analysis(), outcome.condition())));
        List<Known<Finding>> all = new ArrayList<>();
        now.get().findings().forEach(finding -> all.add(new Known<>(finding, false)));
        Set<Finding> said = new HashSet<>(now.get().findings());
        before.get().outcomes().stream().filter(outcome -> !again.contains(List.of(outcome.analysis(), outcome.condition())))
                .flatMap(outcome -> outcome.result().findings().stream()).filter(said::add)
                .forEach(finding -> all.add(new Known<>(finding, late)));
        return all;
    }

    /** All requirements by conditions; those that were not judged again yet as they were before. */
    public List<Known<Verdict>> verdicts() {
        if (now.isEmpty() || before.isEmpty()) {
            return all(Evaluation::verdicts, verdict -> verdict);
        }
        Map<Object, Verdict> old = new LinkedHashMap<>();
        before.get().verdicts().forEach(verdict -> old.put(List.of(verdict.requirement(), verdict.condition()), verdict));
        List<Known<Verdict>> all = new ArrayList<>();
        for (Verdict verdict : now.get().verdicts()) {
            Verdict earlier = old.remove(List.of(verdict.requirement(), verdict.condition()));
            boolean stale = verdict.severity() == Severity.NOT_JUDGED && earlier != null;
            all.add(new Known<>(stale ? earlier : verdict, stale && late));
        }
        old.values().forEach(verdict -> all.add(new Known<>(verdict, late)));
        return all;
    }

    private <T> List<Known<T>> all(Function<Evaluation, List<T>> what, Function<T, Object> key) {
        Set<Object> known = new HashSet<>();
        List<Known<T>> all = new ArrayList<>();
        // one thing may be said twice of one state
        now.ifPresent(evaluation -> what.apply(evaluation).forEach(each -> {
            known.add(key.apply(each));
            all.add(new Known<>(each, false));
        }));
        before.ifPresent(evaluation -> what.apply(evaluation).stream().filter(each -> !known.contains(key.apply(each)))
                .forEach(each -> all.add(new Known<>(each, late))));
        return all;
    }

    private <T> Optional<Known<T>> first(Function<Evaluation, Optional<T>> what) {
        return now.flatMap(what).map(found -> new Known<>(found, false))
                .or(() -> before.flatMap(what).map(found -> new Known<>(found, late)));
    }
}
