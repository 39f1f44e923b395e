package tramontane.launcher;

import java.util.Locale;
import java.util.Optional;

/** What a window needs of the system and a program cannot bring: says which of it is missing, from what was thrown. */
final class SystemParts {
    private SystemParts() {
    }

    /**
     * One sentence on what the system lacks, or nothing if something else is wrong.
     *
     * @param thrown what came out of the entry, with its causes
     */
    static Optional<String> lacking(Throwable thrown, Platform platform) {
        int depth = 0;
        for (Throwable at = thrown; at != null && depth < 20; at = at.getCause(), depth++) {
            Optional<String> words = words(String.valueOf(at.getMessage()).toLowerCase(Locale.ROOT), platform);
            if (words.isPresent()) {
                return words;
            }
        }
        return Optional.empty();
    }

    private static Optional<String> words(String message, Platform platform) {
        // "Could not load SWT library" with, among its reasons, "libgtk-3.so.0: cannot open shared object file"
        if (message.contains("libgtk-3")) {
            return Optional.of("the window needs GTK 3, which is not installed: 'apt install libgtk-3-0', or 'dnf install gtk3'");
        }
        if (message.contains("could not load swt library")) {
            return Optional.of("the native part of the window for " + platform + " could not be loaded; --debug shows why");
        }
        // "No more handles [gtk_init_check() failed]"
        if (message.contains("gtk_init_check")) {
            return Optional.of("no window can be opened, as no display answers; set DISPLAY or WAYLAND_DISPLAY, or use the command line");
        }
        return Optional.empty();
    }
}
