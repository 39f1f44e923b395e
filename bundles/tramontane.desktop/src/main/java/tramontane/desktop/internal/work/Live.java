package tramontane.desktop.internal.work;

import java.util.List;
import java.util.Set;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.function.Consumer;
import java.util.stream.Collectors;
import tramontane.analysis.Engine;
import tramontane.analysis.Evaluation;
import tramontane.analysis.Scope;
import tramontane.desktop.Jobs;
import tramontane.model.Design;
import tramontane.model.Problem;

/**
 * Computes the design in front anew after each edit, in the background. What is looked at comes first: where the whole takes longer than a
 * blink, the condition in front is computed and shown before the rest. A run that a newer edit overtakes is stopped.
 */
public final class Live {

    /** What takes no longer is computed in one go, in seconds. */
    private static final double BLINK = 0.05;

    /** How long the window is given to paint, in milliseconds. */
    private static final long PAINTED = 100;

    /** What is told, on the UI thread. */
    public interface Listener {
        /** What is wrong with a design. */
        void checked(String key, Design design, List<Problem> problems);

        /** What came out, first a part and then all. */
        void computed(String key, Evaluation evaluation, boolean last);

        /** Nothing will come of this run. */
        void notComputed(String key, Design design);
    }

    private final Engine engine;
    private final Jobs jobs;
    private final Consumer<Runnable> onUi;
    private final Listener listener;
    private Jobs.Job running;
    private volatile double lastTook = 1;

    /** Nothing runs yet. */
    public Live(Engine engine, Jobs jobs, Consumer<Runnable> onUi, Listener listener) {
        this.engine = engine;
        this.jobs = jobs;
        this.onUi = onUi;
        this.listener = listener;
    }

    /**
     * Computes a design; on the UI thread.
     *
     * @param key       of the design
     * @param label     what people call it
     * @param design    the design
     * @param condition the condition in front, as declared
     */
    public void compute(String key, String label, Design design, String condition) {
        if (running != null) {
            running.cancel();
        }
        running = jobs.start("computing " + label, watch -> {
            run(key, design, condition, watch);
            return true;
        }, done -> { });
    }

    private void run(String key, Design design, String condition, Engine.Watch watch) {
        boolean told = false;
        try {
            List<Problem> problems = engine.check(design);
            onUi.accept(() -> listener.checked(key, design, problems));
            if (problems.stream().anyMatch(Problem::isError) || watch.cancelled()) {
                return;
            }
            if (lastTook > BLINK && design.workingConditions().size() > 1) {
                Set<String> each = engine.analyses().stream().filter(analysis -> analysis.scope() == Scope.CONDITION)
                        .map(Engine.Loaded::id).collect(Collectors.toSet());
                Evaluation part = engine.evaluate(new Engine.Request(design, each, Set.of(condition), Engine.Request.TIME_LIMIT),
                        quiet(watch));
                if (part.cancelled() || watch.cancelled()) {
                    return;
                }
                show(key, part);
            }
            long begun = System.nanoTime();
            Evaluation all = engine.evaluate(Engine.Request.all(design), watch);
            if (!all.cancelled()) {
                lastTook = (System.nanoTime() - begun) / 1e9;
                told = true;
                onUi.accept(() -> listener.computed(key, all, true));
            }
        } finally {
            if (!told) {
                onUi.accept(() -> listener.notComputed(key, design));
            }
        }
    }

    /** Shows a part, and lets the window paint it before the rest takes the processors. */
    private void show(String key, Evaluation part) {
        CountDownLatch painted = new CountDownLatch(1);
        onUi.accept(() -> {
            listener.computed(key, part, false);
            onUi.accept(painted::countDown);
        });
        try {
            // a window that is busy, or gone, is not waited for
            painted.await(PAINTED, TimeUnit.MILLISECONDS);
        } catch (InterruptedException ended) {
            Thread.currentThread().interrupt();
        }
    }

    /** The part must not make the bar of the whole go to its end and back. */
    private static Engine.Watch quiet(Engine.Watch watch) {
        return new Engine.Watch() {
            @Override
            public boolean cancelled() {
                return watch.cancelled();
            }

            @Override
            public void progress(double fraction, String message) {
                // the whole tells
            }
        };
    }
}
