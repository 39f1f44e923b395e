package tramontane.launcher;

import java.io.PrintStream;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.function.Function;
import java.util.function.Supplier;

/**
 * What could not be loaded and why. Each problem is named on the standard error stream when it is met, and is there for
 * bundles to ask: by symbolic name, by id or by file name.
 */
final class Problems implements Function<String, String>, Supplier<Map<String, String>> {
    private final PrintStream err;
    private final Map<String, String> reasons = new LinkedHashMap<>();
    private final Map<String, String> subjects = new LinkedHashMap<>();

    Problems(PrintStream err) {
        this.err = err;
    }

    /**
     * Notes one problem.
     *
     * @param kind what the subject is, for the sentence on the error stream
     * @param subject what has it: a symbolic name, or a file name where there is none
     * @param reason why, as the end of the sentence "it does not run: ..."
     * @param otherNames further names to find the reason by
     */
    synchronized void add(String kind, String subject, String reason, String... otherNames) {
        // Two files can claim one symbolic name; the list keeps both.
        String key = reasons.containsKey(subject) && otherNames.length > 0 ? otherNames[0] : subject;
        reasons.put(key, reason);
        for (String name : otherNames) {
            subjects.put(name, key);
        }
        String file = otherNames.length > 0 && !otherNames[0].equals(subject) ? " (" + otherNames[0] + ")" : "";
        err.println("tramontane: " + kind + " " + subject + file
                + (kind.equals("bundle") ? " does not run: " : " is not loaded: ") + reason + ".");
    }

    /** The reason for a symbolic name, a bundle id or a file name; null if there is none, as callers outside expect. */
    @Override
    public synchronized String apply(String name) {
        String reason = reasons.get(name);
        return reason != null ? reason : reasons.get(subjects.get(name));
    }

    @Override
    public synchronized Map<String, String> get() {
        return Collections.unmodifiableMap(new LinkedHashMap<>(reasons));
    }
}
