package tramontane.launcher;

import java.io.IOException;
import java.io.OutputStream;
import java.net.URISyntaxException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.jar.JarEntry;
import java.util.jar.JarOutputStream;
import java.util.jar.Manifest;
import java.util.stream.Stream;
import javax.tools.ToolProvider;

/** An install folder made in a test, with bundles made in the test, run as a program of its own. */
final class TrialInstall {
    /** What a program left behind. */
    record Outcome(int code, String out, String err) { }

    /** A program that runs. */
    record Running(Process process, Path out, Path err) {
        Outcome end() throws IOException, InterruptedException {
            if (!process.waitFor(30, TimeUnit.SECONDS)) {
                process.destroyForcibly();
                throw new IllegalStateException("it did not end: " + Files.readString(out) + Files.readString(err));
            }
            return new Outcome(process.exitValue(), Files.readString(out), Files.readString(err));
        }

        void awaitOutput(String text) throws IOException, InterruptedException {
            long end = System.nanoTime() + TimeUnit.SECONDS.toNanos(30);
            while (!Files.readString(out).contains(text)) {
                if (System.nanoTime() > end || !process.isAlive()) {
                    throw new IllegalStateException("it did not say \"" + text + "\": " + Files.readString(err));
                }
                Thread.sleep(20);
            }
        }
    }

    final Path folder;
    final Path home;
    final Path temporary;
    /** Where the framework may write; a test may put a file in its place. */
    final Path caches;
    private final Path outputs;
    private final List<String> options = new ArrayList<>();

    TrialInstall(Path root, String name) throws IOException, URISyntaxException {
        folder = Files.createDirectories(root.resolve(name));
        home = root.resolve("home");
        caches = root.resolve("caches");
        temporary = Files.createDirectories(root.resolve("temporary"));
        outputs = Files.createDirectories(root.resolve("outputs"));
        Files.createDirectories(folder.resolve("features"));
        Files.createDirectories(folder.resolve("lib"));
        for (Class<?> part : List.of(Main.class, org.apache.felix.framework.Felix.class,
                com.google.gson.stream.JsonReader.class, org.osgi.service.log.LogService.class)) {
            Path from = place(part);
            if (Files.isDirectory(from)) {
                jar(folder.resolve("lib/launcher.jar"), "", from);
            } else {
                Files.copy(from, folder.resolve("lib").resolve(from.getFileName()));
            }
        }
    }

    private static Path place(Class<?> type) throws URISyntaxException {
        return Path.of(type.getProtectionDomain().getCodeSource().getLocation().toURI());
    }

    /** Gives the Java that runs the program an option. */
    TrialInstall option(String option) {
        options.add(option);
        return this;
    }

    /** Adds a feature of bundles {@code acme:NAME:1.0.0}; its name may have folders in front. */
    TrialInstall feature(String name, String... bundles) throws IOException {
        List<String> ids = Stream.of(bundles).map(bundle -> "\"acme:" + bundle + ":1.0.0\"").toList();
        Files.createDirectories(folder.resolve("features/" + name).getParent());
        Files.writeString(folder.resolve("features/" + name + ".json"),
                "{ \"id\": \"acme:" + name.replace('/', '.') + ":1.0.0\", \"bundles\": " + ids + " }");
        return this;
    }

    /** Where the jar of {@code acme:NAME:1.0.0} has to be. */
    Path inRepository(String name) {
        return folder.resolve("repo/acme/" + name + "/1.0.0/" + name + "-1.0.0.jar");
    }

    /** Puts the bundle that gives a class of the class path of this test into the repository, as {@code acme:NAME:1.0.0}. */
    TrialInstall library(String name, Class<?> type) throws IOException, URISyntaxException {
        Files.createDirectories(inRepository(name).getParent());
        Files.copy(place(type), inRepository(name));
        return this;
    }

    /** Makes a bundle without classes. */
    static void bundle(Path jar, String name, String... headers) throws IOException {
        Files.createDirectories(jar.getParent());
        jar(jar, manifest(name, headers), null);
    }

    /** Makes a bundle out of a folder of classes and other content. */
    static void bundleOf(Path content, Path jar, String name, String... headers) throws IOException {
        Files.createDirectories(jar.getParent());
        jar(jar, manifest(name, headers), content);
    }

    /** Compiles one class against the class path of this test; gives the folder with it. */
    static Path compiled(Path folder, String type, String source) throws IOException {
        Path file = folder.resolve(type.substring(type.lastIndexOf('.') + 1) + ".java");
        Path classes = Files.createDirectories(folder.resolve("classes"));
        Files.writeString(file, source);
        int result = ToolProvider.getSystemJavaCompiler().run(null, null, null, "-proc:none", "-cp",
                System.getProperty("java.class.path"), "-d", classes.toString(), file.toString());
        if (result != 0) {
            throw new IllegalStateException("the bundle of the test does not compile");
        }
        return classes;
    }

    private static String manifest(String name, String... headers) {
        return "Bundle-ManifestVersion: 2\nBundle-SymbolicName: " + name + "\nBundle-Version: 1.0.0\n"
                + String.join("\n", headers) + "\n";
    }

    /** Makes a jar of any manifest headers and, if there is one, a folder. */
    static void jar(Path jar, String headers, Path content) throws IOException {
        byte[] text = ("Manifest-Version: 1.0\n" + headers.strip() + "\n").getBytes(StandardCharsets.UTF_8);
        Manifest manifest = new Manifest(new java.io.ByteArrayInputStream(text));
        try (OutputStream file = Files.newOutputStream(jar); JarOutputStream out = new JarOutputStream(file, manifest)) {
            if (content == null) {
                return;
            }
            List<Path> entries;
            try (Stream<Path> walk = Files.walk(content)) {
                entries = walk.filter(Files::isRegularFile).filter(path -> !path.endsWith("MANIFEST.MF")).toList();
            }
            for (Path entry : entries) {
                out.putNextEntry(new JarEntry(content.relativize(entry).toString().replace('\\', '/')));
                Files.copy(entry, out);
            }
        }
    }

    Running start(String... arguments) throws IOException {
        List<String> command = new ArrayList<>(List.of(Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-XX:+UseSerialGC", "-XX:TieredStopAtLevel=1", "-Duser.home=" + home, "-Djava.io.tmpdir=" + temporary));
        command.addAll(options);
        command.addAll(List.of("-cp", folder.resolve("lib") + "/*", "tramontane.launcher.Main"));
        command.addAll(List.of(arguments));
        Path out = Files.createTempFile(outputs, "out", null);
        Path err = Files.createTempFile(outputs, "err", null);
        ProcessBuilder builder = new ProcessBuilder(command).redirectOutput(out.toFile()).redirectError(err.toFile());
        builder.environment().put("XDG_CACHE_HOME", caches.toString());
        builder.environment().remove("TRAMONTANE_HOME");
        builder.environment().put("HOME", home.toString());
        return new Running(builder.start(), out, err);
    }

    Outcome run(String... arguments) throws IOException, InterruptedException {
        return start(arguments).end();
    }
}
