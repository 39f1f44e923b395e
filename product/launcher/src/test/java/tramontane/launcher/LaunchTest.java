package tramontane.launcher;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.net.URISyntaxException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.DisabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;
import tramontane.launcher.TrialInstall.Outcome;
import tramontane.launcher.TrialInstall.Running;

/** The launcher as a program, with an entry that a bundle made here gives. */
class LaunchTest {
    private static final String ENTRY = """
            package acme.entry;

            import java.util.Arrays;
            import java.util.Hashtable;
            import java.util.Map;
            import java.util.function.Function;
            import java.util.function.Supplier;
            import java.util.function.ToIntFunction;
            import org.osgi.framework.BundleActivator;
            import org.osgi.framework.BundleContext;
            import org.osgi.framework.ServiceReference;

            @SuppressWarnings("unchecked")
            public class Entry implements BundleActivator, ToIntFunction<String[]> {
                private BundleContext context;

                public void start(BundleContext context) {
                    this.context = context;
                    context.registerService(ToIntFunction.class, this,
                            new Hashtable<>(Map.of("tramontane.entry", "cli")));
                }

                public void stop(BundleContext context) { }

                public int applyAsInt(String[] words) {
                    try {
                        return run(words);
                    } catch (InterruptedException interrupted) {
                        System.out.println("cancelled");
                        return 130;
                    } catch (Exception failed) {
                        throw new IllegalStateException("no luck", failed);
                    }
                }

                private int run(String[] words) throws Exception {
                    switch (words[0]) {
                        case "say" -> System.out.println(Arrays.toString(words));
                        case "exit" -> { return Integer.parseInt(words[1]); }
                        case "bundles" -> Arrays.stream(context.getBundles())
                                .forEach(b -> System.out.println(b.getSymbolicName() + " " + b.getState()));
                        case "problems" -> {
                            ServiceReference<?> found =
                                    context.getServiceReferences("java.util.function.Supplier",
                                            "(tramontane.role=bundle-problems)")[0];
                            ((Map<?, ?>) ((Supplier<?>) context.getService(found)).get())
                                    .forEach((who, why) -> System.out.println(who + " = " + why));
                            System.out.println("asked: "
                                    + ((Function<String, ?>) context.getService(found)).apply(words[1]));
                        }
                        case "hold" -> {
                            System.out.println("storage " + context.getDataFile(""));
                            System.in.read();
                        }
                        case "sleep" -> {
                            Thread main = Thread.currentThread();
                            // The hardest hook: it waits for the thread that will want to end the program.
                            Runtime.getRuntime().addShutdownHook(new Thread(() -> {
                                main.interrupt();
                                try {
                                    main.join();
                                } catch (InterruptedException impossible) { }
                            }));
                            System.out.println("asleep");
                            Thread.sleep(60_000);
                        }
                        default -> throw new Exception(words[0]);
                    }
                    return 0;
                }
            }
            """;

    private static Path entryClasses;

    @TempDir
    private Path root;
    private TrialInstall install;
    private Path extensions;

    @BeforeAll
    static void compileEntry(@TempDir Path folder) throws IOException {
        entryClasses = TrialInstall.compiled(folder, "acme.entry.Entry", ENTRY);
    }

    @BeforeEach
    void layOut() throws IOException, URISyntaxException {
        install = new TrialInstall(root, "in stall+%41");
        extensions = Files.createDirectories(root.resolve("extensions"));
        install.feature("entry", "entry");
        entryBundle(install.inRepository("entry"));
    }

    private static void entryBundle(Path jar, String... headers) throws IOException {
        String[] all = Stream.concat(Stream.of("Bundle-Activator: acme.entry.Entry",
                "Import-Package: org.osgi.framework;version=\"[1.8,2)\"",
                "Require-Capability: osgi.ee;filter:=\"(&(osgi.ee=JavaSE)(version=21))\"",
                "Provide-Capability: osgi.service;objectClass:List<String>=\"java.util.function.ToIntFunction\""),
                Stream.of(headers)).toArray(String[]::new);
        TrialInstall.bundleOf(entryClasses, jar, "acme.entry", all);
    }

    @Test
    void argumentsGoInAndOnlyTheEntryWritesToStandardOutput() throws IOException, InterruptedException {
        Outcome outcome = install.run("say", "a b", "--extensions", extensions.toString(), "--json");
        assertEquals(new Outcome(0, "[say, a b, --json]\n", outcome.err()), outcome);
        assertFalse(outcome.err().contains("tramontane:"), outcome.err());
    }

    @Test
    void theEntrysExitCodeComesOut() throws IOException, InterruptedException {
        assertEquals(2, install.run("exit", "2").code());
        assertEquals(1, install.run("exit", "1").code());
        // How product/start runs it: requirements that are not met are no failure to run.
        assertEquals(0, install.option("-Dtramontane.unmet.exit=0").run("exit", "1").code());
    }

    @Test
    void anEntryThatThrowsIsABreakdown() throws IOException, InterruptedException {
        Outcome outcome = install.run("unknown");
        assertEquals(3, outcome.code());
        assertTrue(outcome.err().contains("IllegalStateException: no luck"), outcome.err());
    }

    @Test
    void twoProgramsRunAtOnceWithStorageOfTheirOwn() throws IOException, InterruptedException {
        Running first = install.start("hold");
        first.awaitOutput("storage");
        Running second = install.start("hold");
        second.awaitOutput("storage");
        first.process().getOutputStream().close();
        second.process().getOutputStream().close();
        Outcome one = first.end();
        Outcome other = second.end();
        assertEquals(List.of(0, 0), List.of(one.code(), other.code()));
        assertNotEquals(one.out(), other.out());
        assertTrue(one.out().contains(install.caches.toString()), one.out());
    }

    @Test
    void runsFromAnInstallFolderThatItCannotWriteTo() throws IOException, InterruptedException {
        List<String> before = listing();
        writable(false);
        try {
            assertEquals(0, install.run("say", "x").code());
        } finally {
            writable(true);
        }
        // The superuser may write everywhere, so look whether anything was.
        assertEquals(before, listing());
    }

    private List<String> listing() throws IOException {
        try (Stream<Path> walk = Files.walk(install.folder)) {
            List<String> lines = new java.util.ArrayList<>();
            for (Path path : walk.sorted().toList()) {
                lines.add(path + " " + Files.getLastModifiedTime(path));
            }
            return lines;
        }
    }

    private void writable(boolean writable) throws IOException {
        try (Stream<Path> walk = Files.walk(install.folder)) {
            walk.forEach(path -> assertTrue(path.toFile().setWritable(writable), path::toString));
        }
    }

    @Test
    void withoutAPlaceForItsCacheItUsesATemporaryOneAndTidiesUp() throws IOException, InterruptedException {
        Files.createFile(install.caches);
        Running running = install.start("hold");
        running.awaitOutput("storage " + install.temporary);
        running.process().getOutputStream().close();
        assertEquals(0, running.end().code());
        try (Stream<Path> left = Files.list(install.temporary)) {
            assertEquals(List.of(), left.filter(path -> path.getFileName().toString().startsWith("tramontane")).toList());
        }
    }

    @Test
    void extensionsAreLoadedFromFoldersGivenAndFromHome() throws IOException, InterruptedException {
        TrialInstall.bundle(extensions.resolve("one.jar"), "acme.one");
        TrialInstall.bundle(install.home.resolve(".tramontane/extensions/two.jar"), "acme.two");
        TrialInstall.bundle(root.resolve("more/three.jar"), "acme.three", "Fragment-Host: acme.one");
        Outcome outcome = install.run("bundles", "--extensions", extensions.toString(), "--extensions",
                root.resolve("more").toString());
        assertTrue(outcome.out().contains("acme.one 32\n"), outcome.out());
        assertTrue(outcome.out().contains("acme.two 32\n"), outcome.out());
        // A fragment is a part of its host: resolved (4), never active (32).
        assertTrue(outcome.out().contains("acme.three 4\n"), outcome.out());
        assertFalse(outcome.err().contains("tramontane:"), outcome.err());
    }

    @Test
    void whatIsBrokenIsNamedWithItsReasonAndTheRestRuns() throws IOException, InterruptedException {
        TrialInstall.bundle(extensions.resolve("a.jar"), "acme.a", "Import-Package: acme.missing;version=\"[1.2,2)\"");
        TrialInstall.bundle(extensions.resolve("b.jar"), "acme.b", "Import-Package: acme.p;version=\"[2,3)\"");
        TrialInstall.bundle(extensions.resolve("c.jar"), "acme.c", "Export-Package: acme.p;version=\"1.0\"");
        TrialInstall.bundle(extensions.resolve("d.jar"), "acme.d", "Require-Bundle: acme.a");
        TrialInstall.bundle(extensions.resolve("e.jar"), "acme.e", "Fragment-Host: acme.nobody");
        TrialInstall.bundle(extensions.resolve("f.jar"), "acme.f",
                "Require-Capability: osgi.ee;filter:=\"(&(osgi.ee=JavaSE)(version=99))\"");
        TrialInstall.bundle(extensions.resolve("g.jar"), "acme.g", "Bundle-Activator: acme.Nothing");
        TrialInstall.bundle(extensions.resolve("h.jar"), "acme.entry");
        TrialInstall.jar(extensions.resolve("i.jar"), "", null);
        Files.writeString(extensions.resolve("j.jar"), "no jar");
        TrialInstall.bundle(extensions.resolve("k.jar"), "acme.k", "Import-Package: acme.p");
        Outcome outcome = install.run("problems", "acme.a", "--extensions", extensions.toString());
        assertEquals(0, outcome.code(), outcome.err());
        String missing = "needs package acme.missing (version 1.2.0 or later, below 2.0.0), "
                + "which no loaded bundle provides";
        Path real = extensions.toRealPath();
        List<String> expected = List.of(
                "acme.a = " + missing,
                "acme.b = needs package acme.p (version 2.0.0 or later, below 3.0.0), "
                        + "and the loaded bundles provide only 1.0.0 from acme.c",
                "acme.d = needs bundle acme.a, which is not loaded either: it " + missing,
                "acme.e = needs bundle acme.nobody to be a part of, which no loaded bundle provides",
                "acme.f = needs Java 99, and this is Java " + Runtime.version().feature(),
                "acme.g = it could not be started (ClassNotFoundException: acme.Nothing not found by acme.g [8])",
                "acme.entry = a bundle of the same name and version (1.0.0) is loaded already, from acme:entry:1.0.0",
                real.resolve("i.jar") + " = its manifest has no Bundle-SymbolicName, so it is not a bundle",
                "asked: " + missing);
        for (String line : expected) {
            assertTrue(outcome.out().lines().anyMatch(line::equals), line + "\nis not in\n" + outcome.out());
        }
        assertTrue(outcome.out().contains(real.resolve("j.jar") + " = it is not a jar that can be read"), outcome.out());
        assertFalse(outcome.out().contains("acme.c ="), outcome.out());
        assertFalse(outcome.out().contains("acme.k ="), outcome.out());
        assertTrue(outcome.err().lines().anyMatch(("tramontane: bundle acme.a (" + real.resolve("a.jar")
                + ") does not run: " + missing + ".")::equals), outcome.err());
        assertEquals(9, outcome.err().lines().filter(line -> line.startsWith("tramontane:")).count(), outcome.err());
    }

    @Test
    void aMalformedFeatureAndAMissingJarAreNamedAndTheRestRuns() throws IOException, InterruptedException {
        Files.writeString(install.folder.resolve("features/broken.json"), "{ \"id\": \"acme:broken:1.0.0\", ");
        install.feature("lacking", "entry", "lost");
        Outcome outcome = install.run("say", "x", "--extensions", root.resolve("nowhere").toString());
        assertEquals(0, outcome.code(), outcome.err());
        assertEquals(List.of("tramontane: feature features/broken.json is not loaded: it ends in the middle.",
                "tramontane: bundle lost (acme:lost:1.0.0) does not run: "
                        + "features/lacking.json names acme:lost:1.0.0, which is not in repo.",
                "tramontane: folder " + root.resolve("nowhere") + " is not loaded: there is no such folder."),
                outcome.err().lines().filter(line -> line.startsWith("tramontane:")).toList());
    }

    @Test
    void withoutAnEntryItSaysSoAtOnce() throws IOException, InterruptedException {
        Files.delete(install.folder.resolve("features/entry.json"));
        Outcome outcome = install.run("say", "x");
        assertEquals(3, outcome.code());
        assertTrue(outcome.err().contains("there is nothing to run: no loaded bundle gives the entry \"cli\"."),
                outcome.err());
    }

    @Test
    void anEntryWhoseBundleDoesNotRunIsTheReason() throws IOException, InterruptedException {
        entryBundle(install.inRepository("entry"), "Require-Bundle: acme.lost");
        Outcome outcome = install.run("say", "x");
        assertEquals(3, outcome.code());
        assertTrue(outcome.err().contains("bundle acme.entry would give the entry \"cli\", but it does not run: "
                + "needs bundle acme.lost, which no loaded bundle provides."), outcome.err());
    }

    @Test
    void anEntryThatWaitsForAServiceIsTheReason() throws IOException, InterruptedException, URISyntaxException {
        install.library("function", org.osgi.util.function.Function.class)
                .library("promise", org.osgi.util.promise.Promise.class)
                .library("component", org.osgi.service.component.ComponentContext.class)
                .library("scr", org.apache.felix.scr.info.ScrInfo.class)
                .feature("entry", "function", "promise", "component", "scr", "waiting");
        Path content = Files.createDirectories(root.resolve("content"));
        Files.writeString(content.resolve("waiting.xml"), """
                <scr:component xmlns:scr="http://www.osgi.org/xmlns/scr/v1.3.0" name="acme.waiting">
                  <implementation class="acme.Waiting"/>
                  <property name="tramontane.entry" value="cli"/>
                  <service><provide interface="java.util.function.ToIntFunction"/></service>
                  <reference name="lost" interface="acme.Lost"/>
                </scr:component>""");
        TrialInstall.bundleOf(content, install.inRepository("waiting"), "acme.waiting",
                "Service-Component: waiting.xml",
                "Provide-Capability: osgi.service;objectClass:List<String>=\"java.util.function.ToIntFunction\"");
        Outcome outcome = install.run("say", "x");
        assertEquals(3, outcome.code());
        assertTrue(outcome.err().contains("bundle acme.waiting runs, but did not give its entry \"cli\"; "
                + "component acme.waiting waits for a service acme.Lost, which nothing gives."), outcome.err());
    }

    /** An install with a window, of one bundle for all machines and a part of it for this one, and another for the command line. */
    private void layOutEntries(String machine) throws IOException {
        install.feature("cli/verbs", "verbs").feature("desktop/window", "window").feature("desktop/" + machine + "/native", "native");
        TrialInstall.bundle(install.inRepository("verbs"), "acme.verbs", "Export-Package: acme.verbs;version=1.0");
        TrialInstall.bundle(install.inRepository("window"), "acme.window", "Export-Package: acme.window;version=1.0");
        TrialInstall.bundle(install.inRepository("native"), "acme.native", "Fragment-Host: acme.window");
    }

    private static String here() {
        return Platform.of(System.getProperties()).toString();
    }

    @Test
    void anEntryIsStartedWithoutWhatOnlyOthersNeed() throws IOException, InterruptedException {
        layOutEntries(here());
        Outcome outcome = install.run("bundles");
        assertTrue(outcome.out().contains("acme.verbs 32\n"), outcome.out());
        assertFalse(outcome.out().contains("acme.window"), outcome.out());
        assertFalse(outcome.out().contains("acme.native"), outcome.out());
    }

    @Test
    void anExtensionThatStandsOnAnotherEntryIsGivenItWithoutAWord() throws IOException, InterruptedException {
        layOutEntries(here());
        TrialInstall.bundle(extensions.resolve("a.jar"), "acme.a", "Import-Package: acme.window");
        Outcome outcome = install.run("bundles", "--extensions", extensions.toString());
        for (String line : List.of("acme.a 32", "acme.window 32", "acme.native 4", "acme.verbs 32")) {
            assertTrue(outcome.out().lines().anyMatch(line::equals), outcome.out());
        }
        assertFalse(outcome.err().contains("tramontane:"), outcome.err());
    }

    @Test
    void anExtensionThatOtherEntriesCannotHelpDoesNotKeepThem() throws IOException, InterruptedException {
        layOutEntries(here());
        TrialInstall.bundle(extensions.resolve("a.jar"), "acme.a", "Import-Package: acme.window,acme.lost");
        Outcome outcome = install.run("bundles", "--extensions", extensions.toString());
        assertFalse(outcome.out().contains("acme.window"), outcome.out());
        assertEquals(List.of("tramontane: bundle acme.a (" + extensions.toRealPath().resolve("a.jar") + ") does not run: "
                + "needs package acme.lost, which no loaded bundle provides."),
                outcome.err().lines().filter(line -> line.startsWith("tramontane:")).toList());
    }

    @Test
    void onAMachineWithoutPartsTheWindowSaysSoAndTheCommandLineRuns() throws IOException, InterruptedException {
        layOutEntries("plan9-mips");
        assertEquals(0, install.run("say", "x").code());
        Outcome outcome = install.option("-Dtramontane.entry=desktop").run("say", "x");
        assertEquals(3, outcome.code());
        assertEquals(List.of("tramontane: the desktop cannot open a window on " + here() + ", as this installation has what that "
                + "needs for plan9-mips only; the command line works here."),
                outcome.err().lines().filter(line -> line.startsWith("tramontane:")).toList());
    }

    @Test
    void anEntryThatIsMissingIsNotLaidAtTheDoorOfAnother() throws IOException, InterruptedException, URISyntaxException {
        Path content = Files.createDirectories(root.resolve("content"));
        Files.writeString(content.resolve("window.xml"), """
                <scr:component xmlns:scr="http://www.osgi.org/xmlns/scr/v1.3.0" name="acme.window">
                  <property name="tramontane.entry" type="String" value="desktop"/>
                </scr:component>""");
        install.feature("entry", "window");
        TrialInstall.bundleOf(content, install.inRepository("window"), "acme.window", "Service-Component: window.xml",
                "Provide-Capability: osgi.service;objectClass:List<String>=\"java.util.function.ToIntFunction\"");
        Outcome outcome = install.run("say", "x");
        assertTrue(outcome.err().contains("there is nothing to run: no loaded bundle gives the entry \"cli\"."), outcome.err());
        Outcome window = install.option("-Dtramontane.entry=desktop").run("say", "x");
        assertTrue(window.err().contains("bundle acme.window runs, but did not give its entry \"desktop\"; "
                + "nothing loaded runs its components"), window.err());
    }

    @Test
    @DisabledOnOs(OS.WINDOWS)
    void aSignalEndsItEvenIfAHookWaitsForTheMainThread() throws IOException, InterruptedException {
        Running running = install.start("sleep");
        running.awaitOutput("asleep");
        // Ctrl-C is SIGINT, which programs started in the background are told to ignore; SIGTERM takes the same way
        new ProcessBuilder("kill", "-TERM", Long.toString(running.process().pid())).start().waitFor();
        Outcome outcome = running.end();
        assertEquals(143, outcome.code());
        assertTrue(outcome.out().endsWith("cancelled\n"), outcome.out());
    }
}
