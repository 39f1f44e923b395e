package tramontane.launcher;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.URISyntaxException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Properties;

/**
 * What one start was asked for.
 *
 * @param install install folder, absolute
 * @param extensions folders whose jars are loaded as well
 * @param home the user's own folder; {@code extensions} below it is loaded if it is there
 * @param caches where the framework may write
 * @param entry value of the service property {@code tramontane.entry} to call
 * @param platform the machine that the program runs on
 * @param debug whether everything logged is shown
 * @param arguments what is left of the command line
 */
record Settings(Path install, List<Path> extensions, Path home, Path caches, String entry, Platform platform,
        boolean debug, List<String> arguments) {

    Settings {
        extensions = List.copyOf(extensions);
        arguments = List.copyOf(arguments);
    }

    /**
     * Takes the launcher's own options, {@code --extensions DIR} (repeatable) and {@code --debug}, out of the command
     * line, wherever they stand before a lone {@code --}.
     *
     * @throws IllegalArgumentException if an option has no value; the message is for the user
     */
    static Settings of(String[] line, Map<String, String> environment, Properties system) {
        List<Path> extensions = new ArrayList<>();
        List<String> rest = new ArrayList<>();
        boolean debug = false;
        boolean ours = true;
        for (int i = 0; i < line.length; i++) {
            String word = line[i];
            if (ours && word.equals("--debug")) {
                debug = true;
            } else if (ours && word.equals("--extensions")) {
                if (i + 1 == line.length || line[i + 1].isBlank()) {
                    throw new IllegalArgumentException("--extensions needs a folder after it");
                }
                extensions.add(Path.of(line[++i]).toAbsolutePath());
            } else if (ours && word.startsWith("--extensions=") && word.length() > "--extensions=".length()) {
                extensions.add(Path.of(word.substring("--extensions=".length())).toAbsolutePath());
            } else {
                ours = ours && !word.equals("--");
                rest.add(word);
            }
        }
        // what a shell calls ~; Java asks the system instead, which may say otherwise
        Path user = folder(absolute(environment.get("HOME")), Path.of(system.getProperty("user.home", ".")));
        return new Settings(install(system), extensions,
                folder(environment.get("TRAMONTANE_HOME"), user.resolve(".tramontane")).toAbsolutePath(),
                folder(absolute(environment.get("XDG_CACHE_HOME")), user.resolve(".cache")).toAbsolutePath(),
                system.getProperty("tramontane.entry", "cli"), Platform.of(system), debug, rest);
    }

    /** Where this start finds its features. */
    FeatureFolders features() {
        return new FeatureFolders(install.resolve("features"), platform);
    }

    /** The XDG base directory specification has relative paths ignored. */
    private static String absolute(String path) {
        return path != null && Path.of(path).isAbsolute() ? path : null;
    }

    private static Path folder(String given, Path otherwise) {
        return given == null || given.isBlank() ? otherwise : Path.of(given);
    }

    private static Path install(Properties system) {
        String given = system.getProperty("tramontane.install");
        try {
            if (given != null && !given.isBlank()) {
                return Path.of(given).toRealPath();
            }
            // The launcher's jar stands in lib/ of the install folder.
            Path jar = Path.of(Settings.class.getProtectionDomain().getCodeSource().getLocation().toURI());
            return jar.toRealPath().getParent().getParent();
        } catch (IOException missing) {
            throw new UncheckedIOException(missing);
        } catch (URISyntaxException impossible) {
            throw new IllegalStateException(impossible);
        }
    }
}
