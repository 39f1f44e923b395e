package tramontane.launcher;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.DisabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;

/** The folder that the build laid out holds what the features name, and nothing else. */
class InstallFolderTest {
    private static final Path INSTALL = Path.of(System.getProperty("tramontane.install"));

    private static List<Path> files(String folder, String ending) throws IOException {
        try (Stream<Path> walk = Files.walk(INSTALL.resolve(folder))) {
            return walk.filter(Files::isRegularFile).filter(file -> file.toString().endsWith(ending)).sorted().toList();
        }
    }

    private static List<Coordinates> named() throws IOException {
        List<Coordinates> bundles = new ArrayList<>();
        for (Path file : files("features", ".json")) {
            bundles.addAll(FeatureReader.read(file).bundles());
        }
        return bundles;
    }

    @Test
    void everyFeatureCanBeReadAndHasAnIdOfItsOwn() throws IOException {
        List<Path> features = files("features", ".json");
        Set<Coordinates> ids = new HashSet<>();
        for (Path feature : features) {
            assertTrue(ids.add(FeatureReader.read(feature).id()), feature::toString);
        }
        assertFalse(features.isEmpty());
    }

    @Test
    void noBundleIsNamedTwice() throws IOException {
        List<String> names = named().stream().map(bundle -> bundle.group() + ":" + bundle.artifact()).toList();
        Set<String> once = new HashSet<>();
        assertEquals(List.of(), names.stream().filter(name -> !once.add(name)).toList());
    }

    /** Left: a jar in no feature, so a dependency in the pom only. Right: a bundle in a feature only. */
    @Test
    void theRepositoryHoldsExactlyTheBundlesThatFeaturesName() throws IOException {
        Set<String> held = new TreeSet<>();
        for (Path file : files("repo", "")) {
            held.add(INSTALL.resolve("repo").relativize(file).toString());
        }
        Set<String> wanted = new TreeSet<>();
        for (Coordinates bundle : named()) {
            wanted.add(bundle.in(Path.of("")).toString());
        }
        assertEquals(wanted, held);
        assertFalse(held.isEmpty());
    }

    @Test
    void theClassPathHoldsTheLauncherAndWhatItUses() throws IOException {
        List<String> jars = files("lib", ".jar").stream()
                .map(file -> file.getFileName().toString().replaceFirst("-[0-9.]+\\.jar$", "")).toList();
        assertEquals(List.of("gson", "org.apache.felix.framework", "org.osgi.service.log", "tramontane.launcher"), jars);
    }

    @Test
    @DisabledOnOs(OS.WINDOWS)
    void itsOwnScriptSolvesASampleFromAnyFolder(@TempDir Path elsewhere) throws IOException, InterruptedException {
        ProcessBuilder builder = new ProcessBuilder(INSTALL.resolve("tramontane").toString(), "solve", "quick");
        builder.environment().put("JAVA_HOME", System.getProperty("java.home"));
        builder.environment().put("XDG_CACHE_HOME", elsewhere.resolve("cache").toString());
        builder.environment().put("TRAMONTANE_HOME", elsewhere.toString());
        Path out = elsewhere.resolve("out.txt");
        Process process = builder.directory(elsewhere.toFile()).redirectErrorStream(true).redirectOutput(out.toFile()).start();
        try {
            assertTrue(process.waitFor(60, TimeUnit.SECONDS), "it did not end");
        } finally {
            process.destroyForcibly();
        }
        assertEquals(0, process.exitValue(), () -> read(out));
        assertTrue(read(out).contains("The one requirement is met."), () -> read(out));
    }

    private static String read(Path file) {
        try {
            return Files.readString(file);
        } catch (IOException gone) {
            throw new UncheckedIOException(gone);
        }
    }
}
