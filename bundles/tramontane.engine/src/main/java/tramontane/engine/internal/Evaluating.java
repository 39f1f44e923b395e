package tramontane.engine.internal;

import java.time.Duration;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.TimeUnit;
import java.util.function.Function;
import java.util.function.Supplier;
import tramontane.analysis.Cases;
import tramontane.analysis.Engine;
import tramontane.analysis.Evaluation;
import tramontane.analysis.Figure;
import tramontane.analysis.Finding;
import tramontane.analysis.Judgement;
import tramontane.analysis.OperatingPoint;
import tramontane.analysis.Overview;
import tramontane.analysis.Result;
import tramontane.analysis.Severity;
import tramontane.analysis.Trace;
import tramontane.analysis.Verdict;
import tramontane.model.Condition;
import tramontane.model.Design;
import tramontane.model.Problem;

/**
 * One evaluation. Everything of an extension runs on worker threads; the caller's thread only looks after them, so that it
 * can leave at any time.
 */
final class Evaluating {

    /** How often the caller's thread looks, ms; well within the 100 ms in which a cancel must take effect. */
    private static final long LOOK_MILLIS = 20;

    /** How long asking and checking everything may take; not the request's limit, which may be as short as one run. */
    private static final Duration LONGEST_CHECK = Duration.ofMinutes(1);

    private final Engine.Request request;
    private final Workers workers;
    private final Memo memo;
    private final Bars bars;
    private final Supplier<Loadout> load;
    private final Function<Loadout, Function<Job, List<Problem>>> check;

    private final Map<Job, Optional<Node>> running = new LinkedHashMap<>();
    private final Map<NodeId, Node> nodes = new LinkedHashMap<>();
    private final List<Finding> own = new ArrayList<>();
    private Plan plan;
    private int open;
    private boolean finished;
    private boolean cancelled;

    /**
     * An evaluation that has not begun.
     *
     * @param load  finds what is loaded; on a worker
     * @param check checks the design; on a worker
     */
    Evaluating(Engine.Request request, Workers workers, Memo memo, Bars bars, Supplier<Loadout> load,
            Function<Loadout, Function<Job, List<Problem>>> check) {
        this.request = request;
        this.workers = workers;
        this.memo = memo;
        this.bars = bars;
        this.load = load;
        this.check = check;
    }

    /** What is to be done. */
    private record Plan(Loadout loadout, Session session, Design design, Cases cases, List<Engine.Case> allCases,
            Set<Card> active, List<String> errors) {
    }

    private record NodeId(Card card, String condition) {
    }

    /** One analysis in one case. */
    private static final class Node {
        private final Card card;
        private final Optional<Engine.Case> concrete;
        private final List<Node> waitingForIt = new ArrayList<>();
        private int missing;
        private Answer answer;

        Node(Card card, Optional<Engine.Case> concrete) {
            this.card = card;
            this.concrete = concrete;
        }
    }

    /** Runs it and comes back when it is finished, or cancelled. */
    Evaluation run(Engine.Watch watch) {
        boolean ended = false;
        try {
            if (!watch.cancelled()) {
                begin();
                ended = await(watch);
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        } finally {
            if (!ended) {
                leave();
            }
        }
        return evaluation();
    }

    private synchronized void begin() {
        Job job = new Job(this::prepare);
        running.put(job, Optional.empty());
        workers.submit(job);
    }

    private boolean await(Engine.Watch watch) throws InterruptedException {
        double shown = 0;
        String said = "";
        while (true) {
            double fraction;
            String message;
            boolean done;
            synchronized (this) {
                if (!finished) {
                    wait(LOOK_MILLIS);
                }
                done = finished;
                fraction = done ? 1 : Math.max(shown, progress());
                message = done ? "" : doing();
            }
            if (fraction > shown || !message.equals(said)) {
                watch.progress(fraction, message);
                shown = fraction;
                said = message;
            }
            if (done) {
                return true;
            }
            if (watch.cancelled()) {
                return false;
            }
            stopOverdue();
        }
    }

    private double progress() {
        if (nodes.isEmpty()) {
            return 0;
        }
        double done = nodes.size() - open;
        for (Job job : running.keySet()) {
            done += job.isRunning() ? job.progress() : 0;
        }
        return Math.min(1, done / nodes.size());
    }

    private String doing() {
        return running.entrySet().stream().filter(each -> each.getKey().isRunning()).findFirst()
                .map(each -> each.getValue().map(node -> node.card.label() + node.concrete.map(concrete ->
                        ", " + concrete.concrete().id()).orElse("")).orElse("checking the design")
                        + (each.getKey().doing().isEmpty() || each.getValue().isEmpty() ? "" : ": " + each.getKey().doing()))
                .orElse("");
    }

    // on a worker

    private void prepare(Job job) {
        try {
            Loadout loadout = load.get();
            List<String> errors = check.apply(loadout).apply(job).stream().filter(Problem::isError).map(Problem::sentence)
                    .toList();
            Design bare = Cosmetics.strip(request.design());
            Session session = new Session(loadout.order(), memo, bars, loadout.extensions(), request.brief(), request.wanted());
            Set<Card> chosen = new LinkedHashSet<>(loadout.order().sequence());
            if (!request.analyses().isEmpty()) {
                chosen.removeIf(card -> !request.analyses().contains(card.id()));
            }
            Plan made = new Plan(loadout, session, bare, request.brief() ? Cases.unlike(bare, request.conditions())
                    : Cases.of(bare, request.conditions()), (request.brief() ? Cases.unlike(bare, Set.of()) : Cases.of(bare, Set.of())).list(), loadout.order().closure(chosen), errors);
            List<Finding> said = new ArrayList<>(loadout.findings());
            request.analyses().stream().sorted().filter(id -> chosen.stream().noneMatch(card -> card.id().equals(id)))
                    .forEach(id -> said.add(Finding.error("", "no analysis " + id + " is loaded")));
            request.conditions().stream().sorted().filter(id -> !made.cases().conditions().contains(id))
                    .forEach(id -> said.add(Finding.error("", "the design has no condition " + id)));
            said.addAll(made.cases().findings());
            said.addAll(unused(request.design(), loadout));
            errors.forEach(error -> said.add(Finding.error("", error).remedy("correct the design; until then it is not"
                    + " judged")));
            prepared(job, made, said);
        } catch (Throwable e) { // without a plan nobody would ever wake the caller
            unprepared(job, Failure.sentence("preparing the evaluation", e));
        }
    }

    private synchronized void prepared(Job job, Plan made, List<Finding> said) {
        if (job.isGivenUp()) {
            return;
        }
        running.remove(job);
        plan = made;
        own.addAll(said);
        if (made.errors().isEmpty()) {
            for (Engine.Case each : made.cases().list()) {
                made.active().stream().filter(card -> !card.isDesignWide()).forEach(card -> node(card, Optional.of(each)));
            }
            made.active().stream().filter(Card::isDesignWide).forEach(card -> node(card, Optional.empty()));
        }
        open = nodes.size();
        finished = open == 0;
        List.copyOf(nodes.values()).stream().filter(node -> node.missing == 0).forEach(this::submit);
        notifyAll();
    }

    private synchronized void unprepared(Job job, String sentence) {
        if (!job.isGivenUp()) {
            running.remove(job);
            own.add(Failure.finding(sentence));
            finished = true;
            notifyAll();
        }
    }

    /** The node of an analysis in a case, with all those that must be there before it. */
    private Node node(Card card, Optional<Engine.Case> concrete) {
        NodeId id = new NodeId(card, concrete.map(each -> each.concrete().id()).orElse(""));
        Node known = nodes.get(id);
        if (known != null) {
            return known;
        }
        Node node = new Node(card, concrete);
        nodes.put(id, node);
        Order order = plan.loadout().order();
        if (card.fault().isEmpty() && order.ring(card).isEmpty()) {
            for (Card giver : order.before(card)) {
                List<Optional<Engine.Case>> from = giver.isDesignWide() ? List.of(Optional.empty())
                        : card.isDesignWide() ? plan.allCases().stream().map(Optional::of).toList() : List.of(concrete);
                for (Optional<Engine.Case> each : from) {
                    node(giver, each).waitingForIt.add(node);
                    node.missing++;
                }
            }
        }
        return node;
    }

    private void submit(Node node) {
        Job job = new Job(running -> compute(running, node));
        running.put(job, Optional.of(node));
        workers.submit(job);
    }

    private void compute(Job job, Node node) {
        Answer answer = null;
        try {
            answer = plan().session().run(job, null, node.card, plan().design(), node.concrete, plan()::allCases,
                    this::answer, Trace.SILENT);
        } catch (Throwable e) { // the caller waits for every node
            answer = Answer.failed(Failure.finding(Failure.sentence(node.card.name(), e)));
        } finally {
            memo.leave(job);
            finish(job, node, answer);
        }
    }

    private synchronized Plan plan() {
        return plan;
    }

    private synchronized Answer answer(Card card, Optional<Engine.Case> concrete) {
        return nodes.get(new NodeId(card, concrete.map(each -> each.concrete().id()).orElse(""))).answer;
    }

    private synchronized void finish(Job job, Node node, Answer answer) {
        if (job.isGivenUp() || cancelled) {
            return;
        }
        give(job, node, answer);
    }

    // on the caller's thread

    private synchronized void stopOverdue() {
        for (Map.Entry<Job, Optional<Node>> each : List.copyOf(running.entrySet())) {
            Job job = each.getKey();
            Duration limit = each.getValue().isPresent() ? request.timeLimit() : LONGEST_CHECK;
            if (!job.isRunning() || job.nanos() < limit.toNanos()) {
                continue;
            }
            Optional<Card> guilty = guilty(job, limit);
            workers.giveUp(job);
            memo.leave(job);
            running.remove(job);
            guilty.ifPresent(card -> bars.bar(card, limit));
            if (each.getValue().isEmpty()) {
                own.add(Failure.finding("checking the design took more than the time limit of " + Bars.words(limit)
                        + (job.doing().isEmpty() ? "" : ", last in " + job.doing())));
                finished = true;
                continue;
            }
            Node node = each.getValue().get();
            Card slow = guilty.orElse(node.card);
            String what = slow == node.card ? " ran beyond the time limit of " + Bars.words(limit)
                    : " was stopped at the time limit of " + Bars.words(limit) + ", which " + slow.name() + " used up";
            give(job, node, Answer.failed(Finding.error("", node.card.name() + what + "; its result is dropped"
                    + guilty.map(card -> ", and bundle " + card.bundle() + " is barred until the program is started again")
                    .orElse("")).remedy("start the program again and give it more time, or take the bundle out")));
        }
    }

    private void give(Job job, Node node, Answer answer) {
        running.remove(job);
        node.answer = answer;
        open--;
        for (Node next : node.waitingForIt) {
            if (--next.missing == 0) {
                submit(next);
            }
        }
        if (open == 0) {
            finished = true;
            notifyAll();
        }
    }

    /**
     * Whose fault it is that a job takes too long: the innermost analysis that alone took half of the limit, since those that
     * asked it can only wait; else the outermost.
     */
    private static Optional<Card> guilty(Job job, Duration limit) {
        Frame last = null;
        for (Frame frame = job.top().orElse(null); frame != null; frame = frame.parent()) {
            last = frame;
            if (frame.nanos() >= limit.toNanos() / 2) {
                break;
            }
        }
        return Optional.ofNullable(last).map(Frame::card);
    }

    /** Leaves early. What does not stop of its own accord is still watched, and barred when its time is up. */
    private synchronized void leave() {
        cancelled = true;
        if (plan != null) {
            plan.session().cancel();
        }
        for (Job job : running.keySet()) {
            workers.giveUp(job);
            memo.leave(job);
            if (job.isRunning()) {
                long left = Math.max(0, request.timeLimit().toNanos() - job.nanos());
                CompletableFuture.delayedExecutor(left, TimeUnit.NANOSECONDS).execute(() -> {
                    if (!job.isOver()) {
                        guilty(job, request.timeLimit()).ifPresent(card -> bars.bar(card, request.timeLimit()));
                    }
                });
            }
        }
    }

    private synchronized Evaluation evaluation() {
        if (plan == null) {
            return new Evaluation(request.design(), List.of(), List.of(), own, Judgement.none(request.design(), List.of(),
                    request.design().workingConditions().stream().map(Condition::id)
                            .filter(id -> request.conditions().isEmpty() || request.conditions().contains(id)).toList(),
                    cancelled ? "the run was left early" : "the evaluation could not be prepared"), cancelled);
        }
        List<Evaluation.Outcome> outcomes = new ArrayList<>();
        List<Finding> findings = new ArrayList<>();
        Map<RemarkId, Set<String>> remarks = new LinkedHashMap<>();
        for (Engine.Case each : plan.cases().list()) {
            collect(Optional.of(each), outcomes, findings, remarks);
        }
        collect(Optional.empty(), outcomes, findings, remarks);
        Set<Finding> all = new LinkedHashSet<>(findings);
        remarks.forEach((remark, conditions) -> {
            // one sentence for all conditions where it is the same in all
            if (conditions.size() == plan.cases().list().size() && conditions.size() > 1) {
                all.add(remark.finding());
            } else {
                conditions.forEach(condition -> all.add(
                        remark.finding().condition().isEmpty() ? remark.finding().in(condition) : remark.finding()));
            }
        });
        all.addAll(own);
        return new Evaluation(request.design(), plan.cases().list(), outcomes, List.copyOf(all), verdicts(outcomes), cancelled);
    }

    private record RemarkId(Card card, Finding finding) {
    }

    private void collect(Optional<Engine.Case> concrete, List<Evaluation.Outcome> outcomes, List<Finding> findings,
            Map<RemarkId, Set<String>> remarks) {
        String condition = concrete.map(each -> each.concrete().id()).orElse("");
        for (Card card : plan.loadout().order().sequence()) {
            Node node = nodes.get(new NodeId(card, condition));
            if (node == null || node.answer == null) {
                continue;
            }
            List<Card> above = plan.loadout().order().above(card).stream().filter(plan.active()::contains).toList();
            List<Figure> figures = Session.figures(node.answer, concrete)
                    .filter(figure -> above.stream().noneMatch(higher -> higher.declares(figure.kind().id()))).toList();
            boolean saidAnew = above.stream().anyMatch(higher -> saysAnew(higher, card, condition));
            List<Finding> said = node.answer.findings(condition).stream()
                    .filter(finding -> !saidAnew || finding.severity() == Severity.ERROR).toList();
            List<Finding> all = new ArrayList<>(said);
            all.addAll(node.answer.remarks(condition));
            List<Overview> overviews = node.answer.result().overviews().stream().filter(overview -> !saidAnew
                    && above.stream().noneMatch(higher -> overview.figures().stream().anyMatch(higher::declares))).toList();
            Result<?> result = placed(node.answer.result(), figures, all, overviews);
            outcomes.add(new Evaluation.Outcome(card.id(), condition, node.answer.status(), result, !above.isEmpty()));
            findings.addAll(said);
            node.answer.remarks().forEach(remark -> remarks.computeIfAbsent(new RemarkId(card, remark),
                    id -> new LinkedHashSet<>()).add(condition));
        }
    }

    /**
     * Whether a higher ranked analysis of the same type says again, from better numbers, what a lower one found: it was computed
     * there, and gives all that the lower one gives. Both beside each other would be the same sentence with two amounts.
     */
    private boolean saysAnew(Card higher, Card lower, String condition) {
        Node node = nodes.get(new NodeId(higher, higher.isDesignWide() ? "" : condition));
        return node != null && node.answer != null && node.answer.isComputed()
                && lower.figures().stream().allMatch(kind -> higher.declares(kind.id()));
    }

    private static <T> Result<T> placed(Result<T> result, List<Figure> figures, List<Finding> findings,
            List<Overview> overviews) {
        return new Result<>(result.data(), figures, findings, overviews);
    }

    private List<Verdict> verdicts(List<Evaluation.Outcome> outcomes) {
        if (!plan.errors().isEmpty()) {
            return Judgement.none(request.design(), plan.loadout().figures(), plan.cases().conditions(), "the design has errors");
        }
        return Judgement.judge(request.design(), plan.cases(), outcomes,
                plan.active().stream().map(card -> card.loaded(bars.reason(card.bundle()))).toList(),
                plan.loadout().figures());
    }

    /** What a design states and nothing loaded looks at, which would otherwise pass for judged. */
    private static List<Finding> unused(Design design, Loadout loadout) {
        List<Finding> unused = new ArrayList<>();
        long limits = design.heatSources().stream().filter(source -> source.limit().isPresent()).count();
        if (limits > 0 && loadout.figures().stream().noneMatch(kind -> kind.id().equals(Judgement.COMPONENT_TEMPERATURE))) {
            unused.add(Finding.of(Severity.NOT_JUDGED, "", limits == 1 ? "the limit of one heat source is not judged"
                    : "the limits of " + limits + " heat sources are not judged", ": nothing loaded gives component temperatures"));
        }
        // whoever brings flow, temperature and speed into agreement starts from a lower operating point
        boolean coupled = loadout.all().stream().anyMatch(card -> card.gives() == OperatingPoint.class
                && card.needs().results().contains(OperatingPoint.class));
        if (!design.controlLaws().isEmpty() && !coupled) {
            unused.add(Finding.of(Severity.NOT_JUDGED, "", "control laws are not applied, as nothing loaded brings speeds and"
                    + " temperatures into agreement: movers run at the condition's speed setting"));
        }
        return unused;
    }
}
