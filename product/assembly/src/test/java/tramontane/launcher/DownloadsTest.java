package tramontane.launcher;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.concurrent.TimeUnit;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import java.util.zip.ZipEntry;
import java.util.zip.ZipInputStream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.condition.DisabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;

/** What {@code product/downloads} makes of the installation, with stand-ins for the native parts so that nothing is fetched. */
@DisabledOnOs(OS.WINDOWS)
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class DownloadsTest {
    private static final Path PRODUCT = Path.of(System.getProperty("tramontane.install")).resolve("../..").normalize();

    /** Platform to the native part that its feature names. */
    private final Map<String, Coordinates> platforms = new TreeMap<>();
    /** Platform to its files, below the one folder that is in the archive. */
    private final Map<String, Map<String, byte[]>> archives = new TreeMap<>();
    private Path folder;

    @BeforeAll
    void make(@TempDir Path temporary) throws IOException, InterruptedException {
        folder = temporary;
        Path natives = temporary.resolve("natives");
        try (Stream<Path> features = Files.walk(PRODUCT.resolve("../features/desktop"), 2)) {
            for (Path feature : features.filter(file -> file.endsWith("swt.json")).toList()) {
                Coordinates part = FeatureReader.read(feature).bundles().getFirst();
                platforms.put(feature.getParent().getFileName().toString(), part);
                Files.createDirectories(part.in(natives).getParent());
                Files.writeString(part.in(natives), "stands in for " + part);
            }
        }
        run("bash", PRODUCT.resolve("downloads").toString(), "--natives", natives.toString(), temporary.resolve("made").toString());
        try (Stream<Path> made = Files.list(temporary.resolve("made"))) {
            for (Path archive : made.toList()) {
                String name = archive.getFileName().toString();
                String top = name.replaceFirst("\\.(zip|tar\\.gz)$", "");
                archives.put(top.replaceFirst("^tramontane-[0-9.]+-", ""), name.endsWith(".zip") ? unzipped(archive, top)
                        : untarred(archive, top));
            }
        }
    }

    private void run(String... command) throws IOException, InterruptedException {
        Path out = folder.resolve("out.txt");
        ProcessBuilder builder = new ProcessBuilder(command).redirectErrorStream(true).redirectOutput(out.toFile());
        builder.environment().put("JAVA_HOME", System.getProperty("java.home"));
        // The installation is there; a build inside the build would wait for itself.
        builder.environment().put("TRAMONTANE_BUILDING", "1");
        Process process = builder.start();
        assertTrue(process.waitFor(120, TimeUnit.SECONDS), "it did not end");
        assertEquals(0, process.exitValue(), Files.readString(out));
    }

    private static Map<String, byte[]> unzipped(Path archive, String top) throws IOException {
        Map<String, byte[]> files = new HashMap<>();
        try (ZipInputStream zip = new ZipInputStream(Files.newInputStream(archive))) {
            for (ZipEntry entry = zip.getNextEntry(); entry != null; entry = zip.getNextEntry()) {
                assertTrue(entry.getName().startsWith(top + "/"), entry::getName);
                if (!entry.isDirectory()) {
                    files.put(entry.getName().substring(top.length() + 1), zip.readAllBytes());
                }
            }
        }
        return files;
    }

    private Map<String, byte[]> untarred(Path archive, String top) throws IOException, InterruptedException {
        Path into = Files.createDirectories(folder.resolve("untarred"));
        run("tar", "-xzf", archive.toString(), "-C", into.toString());
        Path root = into.resolve(top);
        assertTrue(Files.isExecutable(root.resolve("tramontane")), "its script can be started");
        Map<String, byte[]> files = new HashMap<>();
        try (Stream<Path> walk = Files.walk(root)) {
            for (Path file : walk.filter(Files::isRegularFile).toList()) {
                files.put(root.relativize(file).toString(), Files.readAllBytes(file));
            }
        }
        return files;
    }

    @Test
    void thereIsOneForEachPlatformThatHasANativePart() {
        assertEquals(List.of("linux-aarch64", "linux-x86_64", "macos-aarch64", "macos-x86_64", "windows-aarch64", "windows-x86_64"),
                List.copyOf(platforms.keySet()));
        assertEquals(platforms.keySet(), archives.keySet());
    }

    @Test
    void eachHoldsItsNativePartAndNoOther() {
        archives.forEach((platform, files) -> {
            Coordinates part = platforms.get(platform);
            String path = part.in(Path.of("repo")).toString();
            assertEquals(List.of(path), files.keySet().stream().filter(name -> name.contains("org.eclipse.swt.")).toList(), platform);
            assertEquals("stands in for " + part, new String(files.get(path), StandardCharsets.UTF_8));
            assertEquals(List.of("features/desktop/" + platform + "/swt.json"), files.keySet().stream()
                    .filter(name -> name.startsWith("features/desktop/") && name.split("/").length == 4).toList());
        });
    }

    @Test
    void eachHoldsTheLauncherAndExactlyTheBundlesThatItsFeaturesName() throws IOException {
        for (Map.Entry<String, Map<String, byte[]>> archive : archives.entrySet()) {
            Map<String, byte[]> files = archive.getValue();
            List<String> wanted = new ArrayList<>();
            for (Map.Entry<String, byte[]> file : files.entrySet()) {
                if (file.getKey().startsWith("features/")) {
                    FeatureReader.parse(new String(file.getValue(), StandardCharsets.UTF_8)).bundles()
                            .forEach(bundle -> wanted.add(bundle.in(Path.of("repo")).toString()));
                }
            }
            assertEquals(new TreeSet<>(wanted), files.keySet().stream().filter(name -> name.startsWith("repo/"))
                    .collect(Collectors.toCollection(TreeSet::new)), archive.getKey());
            assertTrue(files.keySet().stream().anyMatch(name -> name.startsWith("lib/tramontane.launcher-")), archive.getKey());
            assertTrue(files.containsKey("samples/observatory.tramontane.json"), archive.getKey());
            assertTrue(files.keySet().stream().anyMatch(name -> name.startsWith("catalogue/")), archive.getKey());
        }
    }

    @Test
    void scriptsHaveTheLineEndsOfTheirSystem() {
        archives.forEach((platform, files) -> {
            boolean windows = platform.startsWith("windows");
            assertEquals(windows, files.containsKey("tramontane.cmd"), platform);
            assertEquals(!windows, files.containsKey("tramontane"), platform);
            assertEquals(!windows, files.containsKey("lib/java.sh"), platform);
            String script = new String(files.get(windows ? "tramontane.cmd" : "tramontane"), StandardCharsets.UTF_8);
            assertFalse(script.isBlank());
            long lines = script.chars().filter(c -> c == '\n').count();
            long returns = script.chars().filter(c -> c == '\r').count();
            assertEquals(windows ? lines : 0, returns, platform);
            assertTrue(script.chars().allMatch(c -> c < 128), "code pages differ");
        });
    }

    @Test
    void theOneForThisMachineSolvesASample() throws IOException, InterruptedException {
        String here = Platform.of(System.getProperties()).toString();
        if (archives.containsKey(here)) {
            try (Stream<Path> roots = Files.list(folder.resolve("untarred"))) {
                Path root = roots.filter(each -> each.toString().endsWith(here)).findFirst().orElseThrow();
                ProcessBuilder builder = new ProcessBuilder(root.resolve("tramontane").toString(), "solve", "quick");
                builder.environment().put("JAVA_HOME", System.getProperty("java.home"));
                builder.environment().put("XDG_CACHE_HOME", folder.resolve("cache").toString());
                builder.environment().put("TRAMONTANE_HOME", folder.resolve("home").toString());
                Path out = folder.resolve("solved.txt");
                Process process = builder.redirectErrorStream(true).redirectOutput(out.toFile()).start();
                assertTrue(process.waitFor(60, TimeUnit.SECONDS), "it did not end");
                assertTrue(Files.readString(out).contains("The one requirement is met."), Files.readString(out));
            }
        }
    }
}
