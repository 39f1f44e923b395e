package tramontane.launcher;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.jar.Attributes;
import java.util.jar.JarFile;
import org.osgi.framework.Constants;
import org.osgi.framework.Version;

/**
 * The jars of extension folders: of several versions of one bundle only the newest, as a folder into which a lab builds often
 * holds the last version as well.
 *
 * @param jars  what is to be installed, in the order given
 * @param older what is left out, with the reason
 */
record Extensions(List<Path> jars, Map<Path, String> older) {

    private record Named(Path jar, String name, Version version) {
    }

    /** Chooses among jars; those that are no bundles or have the same version are left to whoever installs them. */
    static Extensions of(Collection<Path> all) {
        Map<String, Named> newest = new HashMap<>();
        List<Named> named = new ArrayList<>();
        for (Path jar : all) {
            read(jar).ifPresent(each -> {
                named.add(each);
                newest.merge(each.name(), each, (one, other) -> other.version().compareTo(one.version()) > 0 ? other : one);
            });
        }
        Map<Path, String> older = new LinkedHashMap<>();
        for (Named each : named) {
            Named best = newest.get(each.name());
            if (each.version().compareTo(best.version()) < 0) {
                older.put(each.jar(), "it holds version " + each.version() + " of bundle " + each.name() + ", and "
                        + best.jar() + " holds version " + best.version());
            }
        }
        return new Extensions(all.stream().filter(jar -> !older.containsKey(jar)).toList(), older);
    }

    private static Optional<Named> read(Path jar) {
        try (JarFile file = new JarFile(jar.toFile())) {
            Attributes headers = file.getManifest() == null ? new Attributes() : file.getManifest().getMainAttributes();
            String name = headers.getValue(Constants.BUNDLE_SYMBOLICNAME);
            String version = headers.getValue(Constants.BUNDLE_VERSION);
            return name == null ? Optional.empty()
                    : Optional.of(new Named(jar, name.split(";", 2)[0].strip(), Version.parseVersion(version)));
        } catch (IOException | IllegalArgumentException unreadable) {
            return Optional.empty(); // installing it will say what is wrong
        }
    }
}
