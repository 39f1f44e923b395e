package tramontane.desktop;

import java.util.List;
import java.util.function.Consumer;
import org.osgi.annotation.versioning.ProviderType;
import tramontane.analysis.Engine;

/** Work off the UI thread, shown with progress and a stop button. */
@ProviderType
public interface Jobs {

    /**
     * Starts work at once.
     *
     * @param label what is being done: {@code choosing a mover for fans}
     * @param work  the work; should ask {@link Engine.Watch#cancelled} often. What it throws is said in the message strip and the log
     * @param then  is handed what came out, on the UI thread; not called where the job was cancelled or threw, or the window is gone
     * @param <T>   what comes out
     */
    <T> Job start(String label, Work<T> work, Consumer<T> then);

    /**
     * The same for small work that is not worth showing.
     *
     * @param work the work
     * @param then is handed what came out, on the UI thread
     * @param <T>  what comes out
     */
    <T> Job quietly(Work<T> work, Consumer<T> then);

    /** Jobs that run, then those that ended lately, newest first. */
    List<Job> list();

    /** Work. */
    @FunctionalInterface
    interface Work<T> {
        /** Does it. */
        T run(Engine.Watch watch) throws Exception;
    }

    /** One piece of work. */
    interface Job {

        /** What is being done. */
        String label();

        /** Done, 0 to 1; negative where unknown. */
        double fraction();

        /** What is being done within it. */
        String message();

        /** How it stands. */
        State state();

        /** Asks it to stop. */
        void cancel();
    }

    /** How a job stands. */
    enum State {
        /** At work. */
        RUNNING,
        /** It came to its end. */
        DONE,
        /** It was stopped. */
        CANCELLED,
        /** It threw. */
        FAILED
    }
}
