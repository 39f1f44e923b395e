package tramontane.engine.internal;

import java.util.Optional;
import java.util.function.Consumer;

/** A piece of work on one thread, with what is running in it at the moment. */
final class Job {

    private final Runnable work;
    private volatile Thread thread;
    private volatile long begun;
    private volatile boolean over;
    private volatile boolean givenUp;
    private volatile Frame top;
    private volatile double progress;
    private volatile String doing = "";
    private Pending waitingFor;

    Job(Consumer<Job> work) {
        this.work = () -> work.accept(this);
    }

    void run() {
        work.run();
    }

    void begin() {
        begun = System.nanoTime();
        thread = Thread.currentThread();
    }

    void end() {
        over = true;
    }

    void giveUp() {
        givenUp = true;
    }

    void interrupt() {
        thread.interrupt();
    }

    boolean isMine() {
        return Thread.currentThread() == thread;
    }

    boolean isRunning() {
        return thread != null && !over;
    }

    boolean isOver() {
        return over;
    }

    boolean isGivenUp() {
        return givenUp;
    }

    /** How long it has been running, ns. */
    long nanos() {
        return System.nanoTime() - begun;
    }

    /** The innermost analysis that is running. */
    Optional<Frame> top() {
        return Optional.ofNullable(top);
    }

    void top(Frame frame) {
        top = frame;
    }

    double progress() {
        return progress;
    }

    String doing() {
        return doing;
    }

    void progress(double fraction, String message) {
        if (fraction > progress) { // false for NaN
            progress = Math.min(1, fraction);
        }
        doing = message;
    }

    /** What another thread computes and this one waits for; guarded by the memo. */
    Pending waitingFor() {
        return waitingFor;
    }

    void waitingFor(Pending pending) {
        waitingFor = pending;
    }
}
