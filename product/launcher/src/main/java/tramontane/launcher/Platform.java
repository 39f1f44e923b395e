package tramontane.launcher;

import java.util.Locale;
import java.util.Properties;

/**
 * The kind of machine that the program runs on, in the words of our feature folders: {@code linux-x86_64},
 * {@code windows-aarch64}, {@code macos-aarch64}.
 *
 * @param system operating system, {@code linux}, {@code windows}, {@code macos}, or Java's name for another one
 * @param processor processor, {@code x86_64}, {@code aarch64}, or Java's name for another one
 */
record Platform(String system, String processor) {

    /** The machine that system properties tell of ({@code os.name} and {@code os.arch}). */
    static Platform of(Properties properties) {
        return new Platform(system(words(properties, "os.name")), processor(words(properties, "os.arch")));
    }

    private static String words(Properties properties, String key) {
        // Names become a folder's name, so nothing may be in them that leads elsewhere.
        return properties.getProperty(key, "unknown").toLowerCase(Locale.ROOT).strip().replaceAll("[^a-z0-9_]+", "_");
    }

    private static String system(String name) {
        if (name.startsWith("windows")) {
            return "windows";
        }
        if (name.startsWith("mac") || name.startsWith("darwin")) {
            return "macos";
        }
        return name.startsWith("linux") ? "linux" : name;
    }

    private static String processor(String name) {
        return switch (name) {
            case "amd64", "x86_64", "x64" -> "x86_64";
            case "aarch64", "arm64" -> "aarch64";
            default -> name;
        };
    }

    @Override
    public String toString() {
        return system + "-" + processor;
    }
}
