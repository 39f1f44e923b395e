package tramontane.desktop.test;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Queue;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.concurrent.atomic.AtomicInteger;
import org.eclipse.jface.util.Policy;
import org.eclipse.jface.util.SafeRunnable;
import org.eclipse.jface.window.Window;
import org.eclipse.swt.SWTError;
import org.eclipse.swt.graphics.Image;
import org.eclipse.swt.graphics.Resource;
import org.eclipse.swt.widgets.Display;
import org.eclipse.swt.widgets.Shell;
import org.junit.jupiter.api.extension.AfterEachCallback;
import org.junit.jupiter.api.extension.BeforeEachCallback;
import org.junit.jupiter.api.extension.ExtensionContext;

/**
 * Holds the one display of all tests and looks after each of them: shells that are left open are closed, and the test fails if a
 * listener or a runnable threw, if JFace swallowed or logged a fault, or if a resource became garbage without having been disposed.
 */
public final class Screen implements BeforeEachCallback, AfterEachCallback {
    /** Tag of tests that take pictures; they run in each variant of {@link #variant()}. */
    public static final String PICTURES = "pictures";

    private static final Queue<Throwable> FAULTS = new ConcurrentLinkedQueue<>();
    private static final Queue<Error> LEAKS = new ConcurrentLinkedQueue<>();
    private static final AtomicInteger MARKERS = new AtomicInteger();
    private static Optional<Display> display = Optional.empty();

    static {
        Resource.setNonDisposeHandler(Screen::undisposed);
    }

    /** The display. It lives as long as the program, unless a test disposes it; then there is a new one. */
    public static Display display() {
        if (display.isEmpty() || display.get().isDisposed()) {
            try {
                display = Optional.of(new Display());
            } catch (SWTError none) {
                throw new IllegalStateException("Tests of the window need a display: run product/check, which makes one, or start "
                        + "Xvfb and a window manager and set DISPLAY.", none);
            }
        }
        return display.get();
    }

    /** Scale and theme that this process runs with, as {@code 100-light}. */
    public static String variant() {
        return System.getenv().getOrDefault("TRAMONTANE_TEST_VARIANT", "100-light");
    }

    /** Where pictures of this variant go: {@code target/screens/100-light} of this project. */
    public static Path pictures() {
        return Path.of(System.getenv().getOrDefault("TRAMONTANE_TEST_SCREENS", "target/screens")).resolve(variant());
    }

    /** Notes a fault that happened where no test can see it, so that the test fails when it has ended. */
    static void fault(Throwable thrown) {
        FAULTS.add(thrown);
    }

    /** Faults noted since the test began; they are forgotten then. */
    static List<Throwable> takeFaults() {
        List<Throwable> taken = new ArrayList<>();
        for (Throwable each = FAULTS.poll(); each != null; each = FAULTS.poll()) {
            taken.add(each);
        }
        return taken;
    }

    /**
     * Watches for resources that are not disposed of, or does not: while it does, each resource that is made costs a stack trace, which a
     * test of pace must not pay for.
     */
    static void watch(boolean on) {
        Resource.setNonDisposeHandler(on ? Screen::undisposed : null);
    }

    private static void undisposed(Error made) {
        if (Arrays.stream(made.getStackTrace()).anyMatch(at -> at.getClassName().equals(Screen.class.getName())
                && at.getMethodName().equals("marker"))) {
            MARKERS.incrementAndGet();
        } else {
            LEAKS.add(made);
        }
    }

    /** Where resources were made that have become garbage without having been disposed; they are forgotten then. */
    static List<Error> takeLeaks() {
        // What is reported first of the garbage of one collection is not said, so a second round follows.
        for (int round = 0; round < 2; round++) {
            int before = MARKERS.get();
            marker();
            long end = System.nanoTime() + 10_000_000_000L;
            while (MARKERS.get() == before) {
                System.gc();
                pause();
                if (System.nanoTime() > end) {
                    throw new IllegalStateException("a resource that was left undisposed on purpose was not reported");
                }
            }
        }
        List<Error> taken = new ArrayList<>();
        for (Error each = LEAKS.poll(); each != null; each = LEAKS.poll()) {
            taken.add(each);
        }
        return taken;
    }

    /** A resource to be missed. */
    private static void marker() {
        new Image(display(), 1, 1);
    }

    private static void pause() {
        try {
            Thread.sleep(5);
        } catch (InterruptedException interrupted) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException(interrupted);
        }
    }

    @Override
    public void beforeEach(ExtensionContext context) {
        Display screen = display();
        screen.setRuntimeExceptionHandler(Screen::fault);
        screen.setErrorHandler(Screen::fault);
        Window.setExceptionHandler(Screen::fault);
        Policy.setLog(status -> fault(new AssertionError("JFace logged: " + status, status.getException())));
        SafeRunnable.setRunner(code -> {
            try {
                code.run();
            } catch (Exception | LinkageError thrown) {
                fault(thrown);
                code.handleException(thrown);
            }
        });
        takeFaults();
    }

    @Override
    public void afterEach(ExtensionContext context) {
        Display screen = display();
        Arrays.stream(screen.getShells()).filter(shell -> !shell.isDisposed()).forEach(Shell::dispose);
        while (screen.readAndDispatch()) {
            // until nothing is left to do
        }
        List<Throwable> wrong = new ArrayList<>(takeFaults());
        wrong.addAll(takeLeaks());
        if (!wrong.isEmpty()) {
            AssertionError failed = new AssertionError(wrong.size() + " fault(s) beside the test; the first: " + wrong.getFirst(),
                    wrong.getFirst());
            wrong.stream().skip(1).forEach(failed::addSuppressed);
            throw failed;
        }
    }
}
