package tramontane.launcher;

import java.io.PrintStream;
import java.lang.reflect.InvocationHandler;
import java.lang.reflect.Method;
import java.lang.reflect.Proxy;
import java.util.Arrays;
import java.lang.reflect.InvocationTargetException;
import java.util.Locale;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import org.apache.felix.framework.Logger;
import org.osgi.framework.Bundle;
import org.osgi.framework.BundleException;
import org.osgi.framework.ServiceReference;
import org.osgi.service.log.LogLevel;
import org.osgi.service.log.LogService;

/**
 * Sends what the framework and the bundles log to the standard error stream, so that the standard output stays the
 * command line's own. Without {@code --debug} only warnings and errors are shown, in one line each.
 */
final class HostLog {
    /** The JDK forgets loggers, and their settings, that nobody holds. */
    @SuppressWarnings("unused")
    private static java.util.logging.Logger kept;

    private final PrintStream err;
    private final boolean debug;
    private final Set<String> told = ConcurrentHashMap.newKeySet();

    HostLog(PrintStream err, boolean debug) {
        this.err = err;
        this.debug = debug;
    }

    boolean shows(LogLevel level) {
        return debug || level.ordinal() <= LogLevel.WARN.ordinal();
    }

    void log(LogLevel level, String who, String message, Throwable thrown) {
        if (!shows(level)) {
            return;
        }
        String line = "tramontane: " + level.name().toLowerCase(Locale.ROOT) + " from " + who + ": " + message;
        if (debug) {
            err.println(line);
            if (thrown != null) {
                thrown.printStackTrace(err);
            }
            return;
        }
        String whole = thrown == null ? line : line + " (" + Reasons.sentence(cause(thrown)) + ")";
        // A component that cannot be made is tried again by everyone who asks for it.
        if (told.add(whole)) {
            err.println(whole);
        }
    }

    /** What a bundle threw, without what reflection wrapped round it. */
    private static Throwable cause(Throwable thrown) {
        return thrown instanceof InvocationTargetException && thrown.getCause() != null ? cause(thrown.getCause()) : thrown;
    }

    /** Shows what our bundles write to the JDK's own logging, such as the stack traces of extensions that failed. */
    static void showJdkLogging() {
        java.util.logging.Logger ours = java.util.logging.Logger.getLogger("tramontane");
        ours.setLevel(java.util.logging.Level.FINE);
        ours.setUseParentHandlers(false);
        java.util.logging.Handler console = new java.util.logging.ConsoleHandler();
        console.setLevel(java.util.logging.Level.FINE);
        ours.addHandler(console);
        kept = ours;
    }

    /** What Felix itself logs to. */
    Logger forFramework() {
        Logger logger = new Logger() {
            @Override
            @SuppressWarnings("rawtypes") // as declared by Felix
            protected void doLog(Bundle bundle, ServiceReference service, int level, String message, Throwable thrown) {
                // Problems while bundles are loaded are told by Problems, in words; here they would come twice.
                LogLevel known = thrown instanceof BundleException ? LogLevel.DEBUG : level(level);
                HostLog.this.log(known, bundle == null ? "the framework" : bundle.getSymbolicName(), message, thrown);
            }
        };
        logger.setLogLevel(debug ? Logger.LOG_DEBUG : Logger.LOG_WARNING);
        return logger;
    }

    private static LogLevel level(int felix) {
        return switch (felix) {
            case Logger.LOG_ERROR -> LogLevel.ERROR;
            case Logger.LOG_WARNING -> LogLevel.WARN;
            case Logger.LOG_INFO -> LogLevel.INFO;
            default -> LogLevel.DEBUG;
        };
    }

    /** What bundles, Declarative Services among them, log to: {@code org.osgi.service.log} 1.5 without a log to read. */
    LogService forBundles() {
        return proxy(LogService.class, (self, method, arguments) -> switch (method.getName()) {
            case "getLogger" -> logger(arguments);
            default -> answer(self, method, arguments, "a bundle");
        });
    }

    private Object logger(Object... arguments) {
        // getLogger(name), (name, type), (class), (class, type), (bundle, name, type)
        boolean forBundle = arguments.length == 3 && arguments[0] instanceof Bundle;
        Object name = forBundle ? arguments[1] : arguments[0];
        Object type = arguments.length > 1 ? arguments[arguments.length - 1] : org.osgi.service.log.Logger.class;
        String text = name instanceof Class<?> named ? named.getName() : String.valueOf(name);
        String who = forBundle && text.equals(org.osgi.service.log.Logger.ROOT_LOGGER_NAME)
                ? ((Bundle) arguments[0]).getSymbolicName() : text;
        return proxy((Class<?>) type, (self, method, given) -> answer(self, method, given, who));
    }

    private static <T> T proxy(Class<T> type, InvocationHandler handler) {
        return type.cast(Proxy.newProxyInstance(HostLog.class.getClassLoader(), new Class<?>[] {type}, handler));
    }

    /**
     * One method of a logger. There are six levels with five forms each, and the old ones of LogService, so they are told
     * apart by name and arguments.
     */
    private Object answer(Object self, Method method, Object[] given, String who) {
        Object[] arguments = given == null ? new Object[0] : given;
        String name = method.getName();
        if (name.startsWith("is") && name.endsWith("Enabled")) {
            return shows(LogLevel.valueOf(name.substring(2, name.length() - "Enabled".length())
                    .toUpperCase(Locale.ROOT)));
        }
        switch (name) {
            case "getName":
                return who;
            case "equals":
                return self == arguments[0];
            case "hashCode":
                return System.identityHashCode(self);
            case "toString":
                return "log of " + who;
            case "log":
                old(arguments, who);
                return null;
            default:
                LogLevel level = LogLevel.valueOf(name.toUpperCase(Locale.ROOT));
                if (arguments.length > 0 && arguments[0] instanceof String format) {
                    message(level, who, format, Arrays.copyOfRange(arguments, 1, arguments.length));
                }
                return null;
        }
    }

    /** The forms that LogService had before loggers: ([service,] level, message [, throwable]). */
    private void old(Object[] arguments, String who) {
        LogLevel level = LogLevel.ERROR;
        String text = "";
        Throwable thrown = null;
        for (Object argument : arguments) {
            switch (argument) {
                case Integer number -> level = number >= 1 && number <= 4 ? LogLevel.values()[number] : LogLevel.DEBUG;
                case String message -> text = message;
                case Throwable throwable -> thrown = throwable;
                case null, default -> { }
            }
        }
        log(level, who, text, thrown);
    }

    private void message(LogLevel level, String who, String format, Object[] rest) {
        if (!shows(level)) {
            return;
        }
        Object[] values = rest.length == 1 && rest[0] instanceof Object[] several ? several : rest;
        Throwable thrown = null;
        StringBuilder text = new StringBuilder();
        int from = 0;
        for (Object value : values) {
            if (value instanceof Throwable throwable) {
                thrown = throwable;
            } else if (!(value instanceof ServiceReference<?>)) {
                int hole = format.indexOf("{}", from);
                if (hole >= 0) {
                    text.append(format, from, hole).append(value);
                    from = hole + 2;
                }
            }
        }
        log(level, who, text.append(format.substring(from)).toString(), thrown);
    }
}
