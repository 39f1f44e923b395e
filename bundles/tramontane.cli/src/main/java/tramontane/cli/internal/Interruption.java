package tramontane.cli.internal;

import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;

/**
 * Turns Ctrl-C into a wish to stop: while the Java virtual machine goes down, the main thread has a moment to leave tidily.
 */
final class Interruption implements AutoCloseable {

    /** The engine gives control back within 0.1 s; reading or writing a large file may take longer. */
    private static final long MOMENT_SECONDS = 3;

    private final CountDownLatch done = new CountDownLatch(1);
    private final Thread hook = new Thread(this::stop, "stop on Ctrl-C");
    private volatile boolean wanted;

    private Interruption() {
    }

    /** Listens until it is closed. */
    static Interruption listen() {
        Interruption interruption = new Interruption();
        try {
            Runtime.getRuntime().addShutdownHook(interruption.hook);
        } catch (IllegalStateException ending) {
            interruption.wanted = true;
        }
        return interruption;
    }

    /** Whether the user wants to stop. */
    boolean wanted() {
        return wanted;
    }

    /** What happens at Ctrl-C. */
    void stop() {
        wanted = true;
        try {
            done.await(MOMENT_SECONDS, TimeUnit.SECONDS);
        } catch (InterruptedException now) {
            Thread.currentThread().interrupt();
        }
    }

    @Override
    public void close() {
        done.countDown();
        try {
            Runtime.getRuntime().removeShutdownHook(hook);
        } catch (IllegalStateException ending) {
            // the hook runs already and has just been let go
        }
    }
}
