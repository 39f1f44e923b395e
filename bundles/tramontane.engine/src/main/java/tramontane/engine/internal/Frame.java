package tramontane.engine.internal;

import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.atomic.AtomicReference;
import tramontane.analysis.Cancelled;
import tramontane.analysis.Figure;
import tramontane.analysis.Finding;
import tramontane.analysis.Run;
import tramontane.analysis.Trace;
import tramontane.model.Condition;
import tramontane.model.Design;
import tramontane.model.FailedMover;

/** One run of one analysis, on the stack of those that asked for it. */
final class Frame implements Run {

    private final Session session;
    private final Job job;
    private final Frame parent;
    private final Card card;
    private final Trace trace;
    private final int level;
    private final boolean brief;
    private final long begun = System.nanoTime();
    private final Set<Finding> heard = new LinkedHashSet<>();
    private int depth = 1;
    private boolean asked;
    private Key key;
    private final AtomicReference<Doom> doom = new AtomicReference<>();

    Frame(Session session, Job job, Frame parent, Card card, Trace trace) {
        this.session = session;
        this.job = job;
        this.parent = parent;
        this.card = card;
        this.trace = trace;
        this.level = parent == null ? 1 : parent.level + 1;
        this.brief = card.mayBeBrief() && (parent != null || session.isBrief());
    }

    Job job() {
        return job;
    }

    /** Who asked for it; null for nobody. */
    Frame parent() {
        return parent;
    }

    Card card() {
        return card;
    }

    /** How many are on the stack with it. */
    int level() {
        return level;
    }

    /** How long it has been running, ns. */
    long nanos() {
        return System.nanoTime() - begun;
    }

    /** How deep it asked, itself included. */
    int depth() {
        return depth;
    }

    /** What it asked for was that deep. */
    void reached(int deeper) {
        depth = Math.max(depth, deeper + 1);
    }

    /** What it computes from; known when its design has been read. */
    Optional<Key> key() {
        return Optional.ofNullable(key);
    }

    void key(Key known) {
        key = known;
    }

    /** Makes it fail whatever it returns; the first reason stands. */
    void doom(Doom reason) {
        doom.compareAndSet(null, reason);
    }

    /** Why it fails whatever it returns. */
    Optional<Doom> doom() {
        return Optional.ofNullable(doom.get());
    }

    /** Whether its job is not wanted any more. */
    boolean dropped() {
        return job.isGivenUp() || session.isCancelled();
    }

    /** What it asked for failed: it may go on, but its result is no good for another time. */
    void heard(Collection<Finding> findings) {
        heard.addAll(findings);
    }

    List<Finding> heard() {
        return new ArrayList<>(heard);
    }

    boolean asked() {
        return asked;
    }

    @Override
    public boolean cancelled() {
        return dropped() || doom.get() != null;
    }

    @Override
    public void progress(double fraction, String message) {
        if (parent == null) {
            job.progress(fraction, message);
        }
    }

    @Override
    public boolean brief() {
        return brief;
    }

    @Override
    public boolean wants(String figure) {
        Set<String> wanted = wanted();
        return wanted.isEmpty() || wanted.contains(figure);
    }

    /** The figures that are wanted; all where empty. */
    Set<String> wanted() {
        return brief && parent == null ? session.wanted() : Set.of();
    }

    @Override
    public Trace trace() {
        return trace;
    }

    @Override
    public <R> Optional<R> ask(Design design, Condition condition, Class<R> type) {
        return mayAsk("ask()", condition) ? session.ask(this, design, condition, type).map(type::cast) : Optional.empty();
    }

    @Override
    public List<Figure> figures(Design design, Condition condition, String id) {
        return mayAsk("figures()", condition) ? session.figures(this, design, condition, id) : List.of();
    }

    /** Whether a question has an answer; notes that one was asked, since another analysis might answer it another time. */
    private boolean mayAsk(String method, Condition condition) {
        if (dropped()) {
            throw new Cancelled();
        }
        if (!job.isMine()) {
            throw new IllegalStateException(method + " must be called on the thread that run() was called on");
        }
        if (!condition.failed().stream().allMatch(FailedMover::isConcrete)) {
            throw new IllegalArgumentException("condition " + condition.id() + " has failed movers that are not concrete");
        }
        asked = true;
        return doom.get() == null; // else it fails anyway; asking on could take for ever
    }
}
