package tramontane.desktop.test;

import java.time.Duration;
import java.util.Arrays;
import java.util.List;
import java.util.Queue;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.concurrent.atomic.AtomicLong;
import java.util.stream.Collectors;
import org.eclipse.swt.SWTException;
import org.eclipse.swt.widgets.Display;

/**
 * Measures how long the window does not answer: a thread beside it asks every few milliseconds for a word and notes the longest wait.
 * Time in which a test runs without handling events counts as well, so wait with {@link Hands#until}.
 */
public final class Heartbeat implements AutoCloseable {
    private static final long EVERY = 5_000_000; // ns
    private static final long LONG = 40_000_000; // ns
    private static final int DEPTH = 60;

    private final Display display;
    private final Thread thread;
    private final AtomicLong longest = new AtomicLong();
    /** When the word was asked for that has not come yet; 0 if none is asked for. */
    private final AtomicLong asked = new AtomicLong();
    private final Queue<String> waits = new ConcurrentLinkedQueue<>();
    private final AtomicInteger answers = new AtomicInteger();
    private volatile boolean ended;
    private long seen;

    /** Begins to measure. */
    public Heartbeat(Display display) {
        this.display = display;
        thread = new Thread(this::beat, "heartbeat");
        thread.setDaemon(true);
        thread.start();
    }

    private void beat() {
        try {
            while (!ended) {
                long since = asked.get();
                if (asked.compareAndSet(0, System.nanoTime())) {
                    display.asyncExec(this::answer);
                } else if (since != 0 && System.nanoTime() - since > LONG && seen != since) {
                    seen = since;
                    waits.add(Arrays.stream(display.getThread().getStackTrace()).limit(DEPTH).map(at -> "  " + at)
                            .collect(Collectors.joining("\n")));
                }
                Thread.sleep(Duration.ofNanos(EVERY));
            }
        } catch (InterruptedException | SWTException closed) {
            Thread.currentThread().interrupt();
        }
    }

    private void answer() {
        long since = asked.getAndSet(0);
        longest.accumulateAndGet(System.nanoTime() - since, Math::max);
        answers.incrementAndGet();
    }

    /** How often the window has answered. */
    public int answers() {
        return answers.get();
    }

    /** The longest wait up to now, a wait that still lasts included. */
    public Duration longest() {
        long since = asked.get();
        return Duration.ofNanos(Math.max(longest.get(), since == 0 ? 0 : System.nanoTime() - since));
    }

    /** What the thread of the display was doing in each wait of more than 40 ms. */
    public List<String> waits() {
        return List.copyOf(waits);
    }

    /** Forgets what was measured up to now, after a part that is not meant. */
    public void reset() {
        asked.updateAndGet(since -> since == 0 ? 0 : System.nanoTime());
        longest.set(0);
        waits.clear();
    }

    @Override
    public void close() {
        ended = true;
        thread.interrupt();
    }
}
