package tramontane.engine.internal;

import java.util.ArrayDeque;
import java.util.Deque;

/**
 * A bounded set of daemon threads. A thread that does not come back can be given up: it keeps running, since nothing can end
 * it, but another one takes its place.
 */
final class Workers {

    private static final long IDLE_MILLIS = 10_000;

    private final int size;
    private final Deque<Job> queue = new ArrayDeque<>();
    private int threads;
    private int idle;

    Workers(int size) {
        this.size = Math.max(1, size);
    }

    /** Runs a job as soon as a thread is free, in the order in which they came. */
    synchronized void submit(Job job) {
        queue.add(job);
        callIn();
    }

    /** Gives a job up: it is not started any more, or its thread is interrupted and replaced. */
    synchronized void giveUp(Job job) {
        if (job.isOver() || job.isGivenUp()) {
            return;
        }
        job.giveUp();
        if (!queue.remove(job)) {
            threads--;
            job.interrupt();
            callIn();
        }
    }

    /** How many threads work or wait for work, without those given up. */
    synchronized int threads() {
        return threads;
    }

    private void callIn() {
        if (queue.size() > idle && threads < size) {
            threads++;
            Thread thread = new Thread(this::work, "tramontane analysis");
            thread.setDaemon(true);
            // else it would be that of whoever happened to ask first, and would hold its bundle
            thread.setContextClassLoader(Workers.class.getClassLoader());
            thread.start();
        } else {
            notifyAll();
        }
    }

    private void work() {
        for (Job job = next(); job != null; job = next()) {
            try {
                job.run();
            } catch (Throwable e) { // a job reports its own failures; a thread must not be lost to what slips through
                Failure.sentence("a job of the engine", e);
            }
            synchronized (this) {
                job.end();
                if (job.isGivenUp()) {
                    return;
                }
                Thread.interrupted();
            }
        }
    }

    /** The next job; none where this thread has been idle for long. */
    private synchronized Job next() {
        long until = System.nanoTime() + IDLE_MILLIS * 1_000_000;
        while (queue.isEmpty()) {
            long left = (until - System.nanoTime()) / 1_000_000;
            if (left <= 0) {
                threads--;
                return null;
            }
            idle++;
            try {
                wait(left);
            } catch (InterruptedException e) {
                // only meant for a job, and that is over
                continue;
            } finally {
                idle--;
            }
        }
        Job job = queue.remove();
        job.begin();
        return job;
    }
}
