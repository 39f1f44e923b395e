package tramontane.cli.terminal;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import org.osgi.framework.BundleContext;

/** Where the files are that come with the program. */
public final class Installation {

    private Installation() {
    }

    /** The folder of sample designs; empty where there is none. */
    public static Optional<Path> samples(BundleContext context) {
        return folder(context, "samples");
    }

    /** The folder of the catalogue that comes with the program; empty where there is none. */
    public static Optional<Path> catalogue(BundleContext context) {
        return folder(context, "catalogue");
    }

    /** The folder in which the user keeps what all his work shares, as a rule {@code ~/.tramontane}; it may not exist. */
    public static Optional<Path> home(BundleContext context) {
        return Optional.ofNullable(context.getProperty("tramontane.home")).map(Path::of);
    }

    private static Optional<Path> folder(BundleContext context, String name) {
        return Optional.ofNullable(context.getProperty("tramontane." + name)).map(Path::of)
                .or(() -> Optional.ofNullable(context.getProperty("tramontane.install")).map(install -> Path.of(install, name)))
                .filter(Files::isDirectory);
    }
}
