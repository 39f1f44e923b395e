package tramontane.launcher;

import java.io.IOException;
import java.io.PrintStream;
import java.io.UncheckedIOException;
import java.util.Optional;
import org.osgi.framework.BundleException;

/**
 * Starts the product and ends with the exit code of its entry.
 *
 * <p>The launcher's own exit codes: 2 for a wrong option, 3 if nothing could be run or the entry broke down.
 * The system property {@code tramontane.unmet.exit} gives another code in place of an entry's 1, which says that it ran
 * well and found requirements not met.
 */
public final class Main {
    /** The entry ran, and requirements are not met. */
    static final int UNMET = 1;
    static final int WRONG_OPTION = 2;
    static final int NO_ENTRY = 3;
    static final int BROKEN = 3;

    private Main() {
    }

    /** Entry of the program; see {@link Settings} for the options that are not handed on. */
    public static void main(String[] line) {
        int code = run(line, System.err);
        exit(code == UNMET ? Integer.getInteger("tramontane.unmet.exit", UNMET) : code);
    }

    private static int run(String[] line, PrintStream err) {
        Settings settings;
        try {
            settings = Settings.of(line, System.getenv(), System.getProperties());
        } catch (IllegalArgumentException wrong) {
            err.println("tramontane: " + wrong.getMessage() + ".");
            return WRONG_OPTION;
        } catch (UncheckedIOException missing) {
            err.println("tramontane: the install folder " + missing.getCause().getMessage() + " cannot be read.");
            return NO_ENTRY;
        }
        System.setProperty("tramontane.install", settings.install().toString());
        System.setProperty("tramontane.samples", settings.install().resolve("samples").toString());
        System.setProperty("tramontane.home", settings.home().toString());
        System.setProperty("tramontane.catalogue", settings.install().resolve("catalogue").toString());
        Optional<String> missing = settings.features().missing(settings.entry());
        if (missing.isPresent()) {
            err.println("tramontane: " + missing.get() + ".");
            return NO_ENTRY;
        }
        if (settings.debug()) {
            HostLog.showJdkLogging();
        }
        try (Storage storage = Storage.open(settings.caches(), settings.install())) {
            if (storage.temporary()) {
                Runtime.getRuntime().addShutdownHook(new Thread(storage::close));
            }
            try (Host host = Host.start(settings, storage.folder(), err)) {
                return host.run();
            }
        } catch (BundleException | IOException failed) {
            err.println("tramontane: the framework did not start: " + Reasons.sentence(failed) + ".");
            return NO_ENTRY;
        } catch (InterruptedException interrupted) {
            return BROKEN;
        } catch (RuntimeException | Error broken) {
            Optional<String> lacking = SystemParts.lacking(broken, settings.platform());
            if (lacking.isPresent() && !settings.debug()) {
                err.println("tramontane: " + lacking.get() + ".");
                return NO_ENTRY;
            }
            err.println("tramontane: the program broke down, which is a fault in it: " + broken
                    + (settings.debug() ? "" : "; --debug shows where") + ".");
            if (settings.debug()) {
                broken.printStackTrace(err);
            }
            return BROKEN;
        }
    }

    /**
     * Ends the program. While it is ending already, after Ctrl-C, {@link System#exit} would wait for the shutdown hooks;
     * a hook that in turn waits for this thread would then never end, so this thread just runs out.
     */
    private static void exit(int code) {
        Thread probe = new Thread(() -> { });
        try {
            Runtime.getRuntime().addShutdownHook(probe);
            Runtime.getRuntime().removeShutdownHook(probe);
        } catch (IllegalStateException ending) {
            return;
        }
        System.exit(code);
    }
}
