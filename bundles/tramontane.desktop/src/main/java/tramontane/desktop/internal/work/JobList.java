package tramontane.desktop.internal.work;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CancellationException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.BiConsumer;
import java.util.function.Consumer;
import tramontane.analysis.Engine;
import tramontane.desktop.Jobs;

/** Runs jobs on threads of its own and hands what came out back to the UI thread. */
public final class JobList implements Jobs, AutoCloseable {

    private static final int MOST_ENDED = 20;

    private final ExecutorService threads;
    private final Consumer<Runnable> onUi;
    private final BiConsumer<String, Throwable> failed;
    private final List<Started> shown = new ArrayList<>();

    /**
     * No jobs yet.
     *
     * @param onUi   runs something on the UI thread, now or later; drops it once the window is gone
     * @param failed is told on the UI thread of a job that threw
     */
    public JobList(Consumer<Runnable> onUi, BiConsumer<String, Throwable> failed) {
        this.onUi = onUi;
        this.failed = failed;
        AtomicInteger count = new AtomicInteger();
        threads = Executors.newCachedThreadPool(work -> {
            Thread thread = new Thread(work, "job " + count.incrementAndGet());
            thread.setDaemon(true);
            // the hand comes first
            thread.setPriority(Thread.NORM_PRIORITY - 1);
            return thread;
        });
    }

    @Override
    public <T> Job start(String label, Work<T> work, Consumer<T> then) {
        Started job = new Started(label);
        synchronized (shown) {
            shown.addFirst(job);
            long ended = shown.stream().filter(each -> each.state != State.RUNNING).count();
            for (int i = shown.size() - 1; i >= 0 && ended > MOST_ENDED; i--) {
                if (shown.get(i).state != State.RUNNING) {
                    shown.remove(i);
                    ended--;
                }
            }
        }
        run(job, work, then);
        return job;
    }

    @Override
    public <T> Job quietly(Work<T> work, Consumer<T> then) {
        Started job = new Started("");
        run(job, work, then);
        return job;
    }

    private <T> void run(Started job, Work<T> work, Consumer<T> then) {
        threads.execute(() -> {
            try {
                T result = work.run(job);
                job.end(job.cancelled ? State.CANCELLED : State.DONE);
                onUi.accept(() -> {
                    if (!job.cancelled) {
                        then.accept(result);
                    }
                });
            } catch (CancellationException stopped) {
                job.end(State.CANCELLED);
            } catch (Throwable thrown) {
                if (job.cancelled) {
                    job.end(State.CANCELLED);
                    return;
                }
                job.end(State.FAILED);
                String what = job.label.isEmpty() ? "Something in the background" : "The job \"" + job.label + "\"";
                onUi.accept(() -> failed.accept(what + " failed: " + sentence(thrown), thrown));
            }
        });
    }

    private static String sentence(Throwable thrown) {
        String message = thrown.getMessage() == null || thrown.getMessage().isBlank() ? thrown.getClass().getSimpleName()
                : thrown.getMessage().lines().findFirst().orElseThrow();
        return message.endsWith(".") ? message : message + ".";
    }

    @Override
    public List<Job> list() {
        synchronized (shown) {
            List<Job> all = new ArrayList<>(shown.stream().filter(job -> job.state == State.RUNNING).toList());
            shown.stream().filter(job -> job.state != State.RUNNING).forEach(all::add);
            return all;
        }
    }

    /** Asks all to stop and takes no more. */
    @Override
    public void close() {
        list().forEach(Job::cancel);
        threads.shutdownNow();
    }

    private static final class Started implements Job, Engine.Watch {
        private final String label;
        private volatile double fraction = -1;
        private volatile String message = "";
        private volatile State state = State.RUNNING;
        private volatile boolean cancelled;

        Started(String label) {
            this.label = label;
        }

        void end(State how) {
            state = how;
            if (how == State.DONE) {
                fraction = 1;
            }
        }

        @Override
        public String label() {
            return label;
        }

        @Override
        public double fraction() {
            return fraction;
        }

        @Override
        public String message() {
            return message;
        }

        @Override
        public State state() {
            return state;
        }

        @Override
        public void cancel() {
            cancelled = true;
        }

        @Override
        public boolean cancelled() {
            return cancelled;
        }

        @Override
        public void progress(double done, String what) {
            fraction = done;
            message = what;
        }
    }
}
