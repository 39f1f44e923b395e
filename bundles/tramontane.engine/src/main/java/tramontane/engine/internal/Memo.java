package tramontane.engine.internal;

import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import tramontane.analysis.Cancelled;

/**
 * Keeps results by what they were computed from, the least recently used leave first; lets whoever wants a result that is
 * being computed wait for it, and finds circles of such waits.
 */
final class Memo {

    private static final long LOOK_AGAIN_MILLIS = 20;

    private final int bound;
    private final LinkedHashMap<Key, Answer> kept = new LinkedHashMap<>(64, 0.75f, true);
    private final Map<Key, Pending> running = new HashMap<>();
    private Set<Long> live = Set.of();

    Memo(int bound) {
        this.bound = bound;
    }

    /** What to do about a result. */
    sealed interface Step {
    }

    /** It is there. */
    record Kept(Answer answer) implements Step {
    }

    /** It is to be computed now, by who asked. */
    record Compute(Pending pending) implements Step {
    }

    /** Who computes it was given up; ask again. */
    record Again() implements Step {
    }

    /** It is wanted on the way to itself. */
    record Ring(List<Frame> frames) implements Step {
    }

    /**
     * Gets a result, or the task to compute it; waits while another thread computes it.
     *
     * @param key    what it is computed from
     * @param frame  who would compute it
     * @param loaded service ids of the loaded analyses
     * @param own    the answers of this evaluation; within it a key has one answer only, or what is computed from the answer
     *               would not find itself again
     * @throws Cancelled if the frame's job is given up while waiting
     */
    synchronized Step enter(Key key, Frame frame, List<Long> loaded, Map<Key, Answer> own) {
        Answer known = own.getOrDefault(key, kept.get(key));
        if (known != null && known.holdsUnder(loaded)) {
            own.put(key, known);
            return new Kept(known);
        }
        Pending pending = running.get(key);
        if (pending == null) {
            Pending mine = new Pending(key, frame);
            running.put(key, mine);
            return new Compute(mine);
        }
        List<Frame> ring = ring(pending, frame);
        if (!ring.isEmpty()) {
            return new Ring(ring);
        }
        frame.job().waitingFor(pending);
        try {
            while (!pending.isOver()) {
                if (frame.dropped()) {
                    throw new Cancelled();
                }
                wait(LOOK_AGAIN_MILLIS);
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new Cancelled();
        } finally {
            frame.job().waitingFor(null);
        }
        if (pending.answer() == null || !pending.answer().holdsUnder(loaded)) {
            return new Again();
        }
        Answer first = own.putIfAbsent(key, pending.answer());
        return new Kept(first == null ? pending.answer() : first);
    }

    /**
     * Ends a computation.
     *
     * @param pending what was computed
     * @param answer  the answer; null where there is none and whoever waits must see for himself
     * @param keep    whether it may be used by another evaluation
     * @param own     the answers of this evaluation
     */
    synchronized void leave(Pending pending, Answer answer, boolean keep, Map<Key, Answer> own) {
        if (pending.isOver()) {
            return;
        }
        if (answer != null) {
            own.put(pending.key(), answer);
        }
        pending.end(answer);
        running.remove(pending.key(), pending);
        if (keep && live.contains(pending.key().analysis())) {
            kept.put(pending.key(), answer);
            if (kept.size() > bound) {
                kept.remove(kept.keySet().iterator().next());
            }
        }
        notifyAll();
    }

    /** Ends all computations of a job that was given up, or lost its way. */
    synchronized void leave(Job job) {
        List<Pending> lost = running.values().stream().filter(pending -> pending.frame().job() == job).toList();
        lost.forEach(pending -> leave(pending, null, false, Map.of()));
    }

    /** Forgets the results of analyses that are gone, so that their bundles can be let go. */
    synchronized void retain(Collection<Long> analyses) {
        live = new HashSet<>(analyses);
        kept.keySet().removeIf(key -> !live.contains(key.analysis()));
    }

    synchronized int size() {
        return kept.size();
    }

    /**
     * The frames on the circle that waiting would close, each asking the next; empty where it closes none. A stack of frames is a chain of needs,
     * so a circle of waiting threads is always a true circle of analyses.
     */
    private static List<Frame> ring(Pending wanted, Frame asking) {
        List<Frame> ring = new ArrayList<>();
        Pending pending = wanted;
        while (pending != null && !pending.isOver()) {
            Job owner = pending.frame().job();
            // the asking frame wants the same as the pending one and is no link of its own
            Frame inner = owner == asking.job() ? asking.parent() : owner.top().map(Frame::parent).orElse(null);
            int outer = ring.size();
            for (Frame frame = inner; frame != null; frame = frame.parent()) {
                ring.add(outer, frame);
                if (frame == pending.frame()) {
                    break;
                }
            }
            if (owner == asking.job()) {
                return ring;
            }
            pending = owner.waitingFor();
        }
        return List.of();
    }
}
