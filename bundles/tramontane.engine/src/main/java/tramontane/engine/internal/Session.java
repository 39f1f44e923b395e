package tramontane.engine.internal;

import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.function.Supplier;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import tramontane.analysis.Cancelled;
import tramontane.analysis.Cases;
import tramontane.analysis.Engine;
import tramontane.analysis.Evaluation;
import tramontane.analysis.Figure;
import tramontane.analysis.Finding;
import tramontane.analysis.Result;
import tramontane.analysis.Severity;
import tramontane.analysis.Trace;
import tramontane.model.Condition;
import tramontane.model.Design;
import tramontane.model.Requirement;

/** Runs single analyses with what was loaded when it began, for one evaluation. */
final class Session {

    /** How deep asking "what if" may go. */
    static final int DEEPEST = 32;

    private final Order order;
    private final Memo memo;
    private final Bars bars;
    private final List<Long> loaded;
    private final List<Long> drawnOn;
    private final boolean brief;
    /** The answers of this evaluation, also those that failed and are tried again in the next; guarded by the memo. */
    private final Map<Key, Answer> ownAnswers = new HashMap<>();
    private volatile boolean cancelled;

    /** For an evaluation, or for a trace; a brief one leaves out what {@link Engine.Request#brief} says. */
    Session(Order order, Memo memo, Bars bars, Extensions extensions, boolean brief) {
        this.order = order;
        this.memo = memo;
        this.bars = bars;
        this.loaded = extensions.analysisIds();
        this.drawnOn = extensions.drawnOn();
        this.brief = brief;
    }

    Order order() {
        return order;
    }

    boolean isBrief() {
        return brief;
    }

    boolean isCancelled() {
        return cancelled;
    }

    void cancel() {
        cancelled = true;
    }

    /** Where the answers of other analyses come from; the case is empty for a design-wide one. */
    @FunctionalInterface
    interface Answers {
        Answer of(Card giver, Optional<Engine.Case> concrete);
    }

    /**
     * Runs an analysis on the calling thread, or finds what it gave before.
     *
     * @param job      the job that it is part of
     * @param parent   who asks; null for nobody
     * @param card     the analysis
     * @param design   the design without what is cosmetic
     * @param concrete the case; empty for a design-wide analysis
     * @param cases    all cases of the design
     * @param answers  what other analyses gave
     * @param trace    where steps go; a recording one makes it run in any case
     * @throws Cancelled if the answer is no longer wanted
     */
    Answer run(Job job, Frame parent, Card card, Design design, Optional<Engine.Case> concrete,
            Supplier<List<Engine.Case>> cases, Answers answers, Trace trace) {
        if (parent != null && parent.doom().isPresent()) {
            return Answer.failed(parent.doom().get());
        }
        if (card.fault().isPresent()) {
            return Answer.failed(Failure.finding(card.fault().get()));
        }
        Optional<Finding> refusal = refusal(card);
        if (refusal.isPresent()) {
            return Answer.notRun(refusal.get());
        }
        Given given = gather(card, concrete, cases, answers);
        if (given.missing().isPresent()) {
            return Answer.notRun(given.missing().get());
        }
        Frame frame = new Frame(this, job, parent, card, trace);
        if (frame.level() > DEEPEST) {
            return tooDeep(frame);
        }
        job.top(frame);
        try {
            Answer answer = run(frame, design, concrete, given);
            if (parent != null) {
                parent.reached(answer.depth());
            }
            return frame.level() - 1 + answer.depth() > DEEPEST ? tooDeep(frame) : answer;
        } finally {
            job.top(parent);
        }
    }

    /** Answers {@link Frame#ask}. */
    Optional<Object> ask(Frame asking, Design design, Condition condition, Class<?> type) {
        return order.giver(type).flatMap(giver -> ask(asking, design, condition, giver).result().data());
    }

    /** Answers {@link Frame#figures}. */
    List<Figure> figures(Frame asking, Design design, Condition condition, String id) {
        return order.giver(id).map(giver -> {
            Answer answer = ask(asking, design, condition, giver);
            return answer.isComputed() ? answer.result().figures().stream().filter(figure -> figure.kind().id().equals(id))
                    .map(figure -> giver.isDesignWide() ? figure : figure.in(condition.id())).toList() : List.<Figure>of();
        }).orElse(List.of());
    }

    private Answer ask(Frame asking, Design design, Condition condition, Card giver) {
        Design bare = Cosmetics.strip(design);
        List<Engine.Case> cases = Cases.of(bare, Set.of()).list();
        String declared = cases.stream().filter(each -> each.concrete().id().equals(condition.id()))
                .map(Engine.Case::declared).findFirst().orElse(condition.id());
        Engine.Case concrete = new Engine.Case(declared, Cosmetics.condition(condition));
        OnThread asked = new OnThread(asking.job(), asking, bare, cases);
        Answer answer = asked.of(giver, giver.isDesignWide() ? Optional.empty() : Optional.of(concrete));
        asking.heard(asked.trouble);
        return answer;
    }

    /** Answers computed on the thread that asks, each once. */
    final class OnThread implements Answers {

        private final Job job;
        private final Frame asking;
        private final Design design;
        private final List<Engine.Case> cases;
        private final Map<List<Object>, Answer> found = new HashMap<>();
        private final List<Finding> trouble = new ArrayList<>();

        /**
         * Answers nothing yet.
         *
         * @param job    the job that it is part of
         * @param asking who asks; null for nobody
         * @param design the design without what is cosmetic
         * @param cases  its cases
         */
        OnThread(Job job, Frame asking, Design design, List<Engine.Case> cases) {
            this.job = job;
            this.asking = asking;
            this.design = design;
            this.cases = cases;
        }

        @Override
        public Answer of(Card giver, Optional<Engine.Case> concrete) {
            List<Object> wanted = List.of(giver, concrete);
            Answer known = found.get(wanted);
            if (known == null) {
                known = run(giver, concrete, Trace.SILENT);
                found.put(wanted, known);
                // what failed may succeed another time, so that the asking result must not be kept
                known.remarks().stream().filter(remark -> remark.severity() == Severity.ERROR).forEach(trouble::add);
            }
            return known;
        }

        /** The same with a trace of one's own. */
        Answer run(Card card, Optional<Engine.Case> concrete, Trace trace) {
            return Session.this.run(job, asking, card, design, concrete, () -> cases, this, trace);
        }
    }

    /** What of a design concerns one case: its condition, and the requirements that hold in it. */
    private static Design inCase(Design design, Engine.Case each) {
        return design.withConditions(List.of(each.concrete())).withRequirements(design.requirements().stream()
                .filter(requirement -> requirement.appliesIn(each.declared()))
                .map(Requirement::everywhere).toList());
    }

    private Answer run(Frame frame, Design design, Optional<Engine.Case> concrete, Given given) {
        Card card = frame.card();
        Design read;
        Key key;
        try {
            read = Objects.requireNonNull(card.analysis().reads(concrete.map(each -> inCase(design, each)).orElse(design)),
                    "reads() gave nothing");
            key = new Key(card, read, given.used(), drawnOn, frame.brief());
        } catch (Throwable e) { // whatever an extension does wrong must not reach the others
            return failed(frame, e);
        }
        frame.key(key);
        if (frame.trace().recording()) {
            return call(frame, read, given);
        }
        while (true) {
            if (frame.dropped()) {
                throw new Cancelled();
            }
            if (frame.parent() != null && frame.parent().doom().isPresent()) {
                return Answer.failed(frame.parent().doom().get());
            }
            switch (memo.enter(key, frame, loaded, ownAnswers)) {
                case Memo.Kept(Answer answer) -> {
                    return shared(frame, answer);
                }
                case Memo.Again() -> {
                    Optional<Finding> refusal = refusal(card);
                    if (refusal.isPresent()) {
                        return Answer.notRun(refusal.get());
                    }
                }
                case Memo.Ring(List<Frame> frames) -> {
                    Doom doom = ring(frames);
                    frames.forEach(each -> each.doom(doom));
                    return Answer.failed(doom);
                }
                case Memo.Compute(Pending pending) -> {
                    return compute(pending, frame, read, given);
                }
            }
        }
    }

    private Answer compute(Pending pending, Frame frame, Design read, Given given) {
        Answer answer = null;
        boolean keep = false;
        try {
            answer = call(frame, read, given);
            keep = answer.status() != Evaluation.Status.FAILED && frame.heard().isEmpty();
            return answer;
        } finally {
            boolean holds = frame.doom().map(Doom::holdsEverywhere).orElse(true);
            memo.leave(pending, holds ? answer : null, keep, ownAnswers);
        }
    }

    /**
     * Takes an answer that was found elsewhere. Where that failed in a circle, and who asks is part of it, who asks fails as
     * he would have if he had gone round himself.
     */
    private static Answer shared(Frame frame, Answer answer) {
        Frame outermost = null;
        for (Frame each = frame.parent(); each != null && !answer.ring().isEmpty(); each = each.parent()) {
            outermost = each.key().filter(answer.ring()::contains).isPresent() ? each : outermost;
        }
        if (outermost != null) {
            Doom doom = new Doom(answer.remarks().getFirst(), answer.ring());
            for (Frame each = frame.parent(); each != outermost.parent(); each = each.parent()) {
                each.doom(doom);
            }
        }
        return answer;
    }

    private Answer call(Frame frame, Design read, Given given) {
        Result<?> result;
        try {
            result = frame.card().analysis().run(new HandedInput(frame.card(), read, given), frame);
            check(frame.card(), result);
        } catch (Throwable e) { // whatever an extension does wrong must not reach the others
            return failed(frame, e);
        }
        if (frame.dropped()) {
            throw new Cancelled(); // it may have left its loops early without saying so
        }
        return frame.doom().map(Answer::failed)
                .orElseGet(() -> Answer.of(result, frame.heard(), frame.depth(), frame.asked() ? loaded : List.of()));
    }

    private static void check(Card card, Result<?> result) {
        Objects.requireNonNull(result, "run() gave nothing");
        Objects.requireNonNull(result.data(), "run() gave a result without data and without saying so");
        if (!result.data().map(card.gives()::isInstance).orElse(true)) {
            throw new IllegalStateException("run() gave a " + result.data().get().getClass().getSimpleName()
                    + ", but gives() says " + card.gives().getSimpleName());
        }
        for (Figure figure : result.figures()) {
            if (!card.figures().contains(figure.kind())) {
                throw new IllegalStateException("run() gave figure " + figure.kind().id()
                        + (card.declares(figure.kind().id()) ? " of another kind than" : ", which is not among those that")
                        + " figures() lists");
            }
        }
    }

    private static Answer failed(Frame frame, Throwable thrown) {
        if (frame.dropped()) {
            throw new Cancelled();
        }
        return frame.doom().map(Answer::failed).orElseGet(
                () -> Answer.failed(Failure.finding(Failure.sentence(frame.card().name(), thrown))));
    }

    /** Why an analysis does not run whatever it is given. */
    private Optional<Finding> refusal(Card card) {
        return bars.reason(card.bundle()).map(reason -> Finding.error("", card.name() + " did not run: " + reason)
                        .remedy("start the program again; if it happens again, take the bundle out"))
                .or(() -> order.ring(card).map(ring -> Failure.finding(
                        card.name() + " did not run: it needs itself by way of others (" + ring + ")")));
    }

    /** Says of a circle of "what if"s who takes part; the same sentence wherever it was found. */
    private static Doom ring(List<Frame> frames) {
        List<String> ids = new ArrayList<>(frames.stream().map(frame -> frame.card().id()).toList());
        String ring = IntStream.range(0, ids.size()).mapToObj(turn -> {
            Collections.rotate(ids, 1);
            return String.join(" asks ", ids) + " asks " + ids.getFirst();
        }).min(Comparator.naturalOrder()).orElseThrow();
        return new Doom(Failure.finding("analyses ask each other in a circle (" + ring + "); the bundles are "
                + frames.stream().map(frame -> frame.card().bundle()).distinct().sorted().collect(Collectors.joining(", "))),
                frames.stream().flatMap(frame -> frame.key().stream()).collect(Collectors.toSet()));
    }

    private static Answer tooDeep(Frame frame) {
        Doom last = null;
        for (Frame each = frame.parent() == null ? frame : frame.parent(); each != null; each = each.parent()) {
            last = new Doom(Failure.finding(each.card().name() + " failed: its questions lead to more than " + DEEPEST
                    + " questions within each other"), Set.of());
            each.doom(last);
        }
        return Answer.failed(last);
    }

    private Given gather(Card card, Optional<Engine.Case> concrete, Supplier<List<Engine.Case>> cases, Answers answers) {
        Map<Class<?>, Object> single = new HashMap<>();
        Map<Class<?>, Map<String, Object>> byCase = new HashMap<>();
        List<Answer> used = new ArrayList<>();
        for (Class<?> type : card.needs().results()) {
            Optional<Card> giver = order.giver(card, type);
            if (giver.isEmpty()) {
                return missing(card, type, "nothing loaded gives it");
            }
            if (card.isDesignWide() && !giver.get().isDesignWide()) {
                Map<String, Object> found = new LinkedHashMap<>();
                for (Engine.Case each : cases.get()) {
                    Answer answer = answers.of(giver.get(), Optional.of(each));
                    use(answer, used);
                    answer.result().data().ifPresent(data -> found.put(each.concrete().id(), data));
                }
                if (found.isEmpty()) {
                    return missing(card, type, "analysis " + giver.get().id() + " gave it in no condition");
                }
                byCase.put(type, found);
            } else {
                Answer answer = answers.of(giver.get(), giver.get().isDesignWide() ? Optional.empty() : concrete);
                use(answer, used);
                if (answer.result().data().isEmpty()) {
                    return missing(card, type, "analysis " + giver.get().id() + " " + switch (answer.status()) {
                        case NOT_RUN -> "did not run";
                        case FAILED -> "failed";
                        default -> "found no answer";
                    });
                }
                single.put(type, answer.result().data().get());
            }
        }
        Map<String, List<Figure>> figures = new HashMap<>();
        for (String id : card.needs().figures()) {
            List<Card> givers = order.figureGivers(card, id);
            List<Figure> found = new ArrayList<>();
            for (Card giver : givers) {
                if (order.above(giver).stream().anyMatch(givers::contains)) {
                    continue; // overruled
                }
                for (Optional<Engine.Case> each : giver.isDesignWide() ? List.of(Optional.<Engine.Case>empty())
                        : card.isDesignWide() ? cases.get().stream().map(Optional::of).toList() : List.of(concrete)) {
                    Answer answer = answers.of(giver, each);
                    use(answer, used);
                    figures(answer, each).filter(figure -> figure.kind().id().equals(id)).forEach(found::add);
                }
            }
            figures.put(id, List.copyOf(found));
        }
        return new Given(single, byCase, figures, used, Optional.empty());
    }

    /** Notes what a result depends on; an analysis that did not run gives nothing to depend on. */
    private static void use(Answer answer, List<Answer> used) {
        if (answer.isComputed() || answer.status() == Evaluation.Status.NOT_COMPUTED) {
            used.add(answer);
        }
    }

    /** The figures of an answer, each with its case. */
    static Stream<Figure> figures(Answer answer, Optional<Engine.Case> concrete) {
        return answer.result().figures().stream()
                .map(figure -> concrete.map(each -> figure.in(each.concrete().id())).orElse(figure));
    }

    private static Given missing(Card card, Class<?> type, String why) {
        return new Given(Map.of(), Map.of(), Map.of(), List.of(), Optional.of(Finding.of(Severity.NOT_JUDGED, "",
                "analysis " + card.id() + " did not run: it needs " + type.getSimpleName() + ", and " + why)));
    }
}
