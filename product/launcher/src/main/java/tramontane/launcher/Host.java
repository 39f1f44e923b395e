package tramontane.launcher;

import java.io.IOException;
import java.io.InputStream;
import java.io.PrintStream;
import java.net.URL;
import java.nio.charset.StandardCharsets;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.HashMap;
import java.util.HashSet;
import java.util.Hashtable;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.function.Supplier;
import java.util.function.ToIntFunction;
import java.util.jar.JarFile;
import java.util.jar.Manifest;
import org.apache.felix.framework.Felix;
import org.apache.felix.framework.util.FelixConstants;
import org.osgi.framework.Bundle;
import org.osgi.framework.BundleContext;
import org.osgi.framework.BundleException;
import org.osgi.framework.Constants;
import org.osgi.framework.FrameworkUtil;
import org.osgi.framework.InvalidSyntaxException;
import org.osgi.framework.ServiceReference;
import org.osgi.framework.launch.Framework;
import org.osgi.framework.wiring.BundleCapability;
import org.osgi.framework.wiring.BundleRevision;
import org.osgi.framework.wiring.FrameworkWiring;
import org.osgi.service.log.LogService;
import org.osgi.service.log.LoggerFactory;
import org.osgi.util.tracker.ServiceTracker;

/** One running framework with the bundles of the product and of the extension folders in it. */
final class Host implements AutoCloseable {
    /** How long an entry may take to appear that some bundle has announced. */
    private static final Duration PATIENCE = Duration.ofSeconds(3);
    private static final Duration STOPPING = Duration.ofSeconds(5);

    private final Settings settings;
    private final PrintStream err;
    private final Problems problems;
    private final HostLog log;
    private final Framework framework;
    /** The file that each bundle came from, as the user knows it. */
    private final Map<Bundle, String> files = new LinkedHashMap<>();
    /** Why a bundle was not resolved. */
    private final Map<Bundle, String> reasons = new HashMap<>();
    private final Set<Coordinates> taken = new HashSet<>();

    private Host(Settings settings, Path storage, PrintStream err) {
        this.settings = settings;
        this.err = err;
        problems = new Problems(err);
        log = new HostLog(err, settings.debug());
        framework = new Felix(properties(settings, storage, log));
    }

    /** Loads and starts everything; what does not load is told and left out. */
    static Host start(Settings settings, Path storage, PrintStream err) throws BundleException {
        Host host = new Host(settings, storage, err);
        host.framework.init();
        BundleContext context = host.framework.getBundleContext();
        context.registerService(new String[] {LoggerFactory.class.getName(), LogService.class.getName()},
                host.log.forBundles(), null);
        context.registerService(new String[] {Function.class.getName(), Supplier.class.getName()}, host.problems,
                new Hashtable<>(Map.of("tramontane.role", "bundle-problems")));
        host.installFeatures(settings.features().with(settings.entry()));
        host.installExtensions();
        host.resolve();
        host.startBundles();
        return host;
    }

    private static Map<String, Object> properties(Settings settings, Path storage, HostLog log) {
        Map<String, Object> properties = new HashMap<>();
        properties.put(Constants.FRAMEWORK_STORAGE, storage.toString());
        properties.put(Constants.FRAMEWORK_STORAGE_CLEAN, Constants.FRAMEWORK_STORAGE_CLEAN_ONFIRSTINIT);
        // Two files with one name and version are an error to be told, not a choice to be made silently.
        properties.put(Constants.FRAMEWORK_BSNVERSION, Constants.FRAMEWORK_BSNVERSION_SINGLE);
        properties.put(Constants.FRAMEWORK_SYSTEMPACKAGES_EXTRA, "org.osgi.service.log;version=\"1.5.0\"");
        properties.put(FelixConstants.LOG_LOGGER_PROP, log.forFramework());
        properties.put("tramontane.install", settings.install().toString());
        properties.put("tramontane.samples", settings.install().resolve("samples").toString());
        properties.put("tramontane.home", settings.home().toString());
        properties.put("tramontane.catalogue", settings.install().resolve("catalogue").toString());
        return properties;
    }

    private void installFeatures(List<Path> folders) {
        for (Path folder : folders) {
            String name = settings.install().relativize(folder).toString().replace('\\', '/');
            for (Path file : list(folder, "*.json", name)) {
                installFeature(file, name + "/" + file.getFileName());
            }
        }
    }

    private void installFeature(Path file, String name) {
        Path repository = settings.install().resolve("repo");
        try {
            Feature feature = FeatureReader.read(file);
            if (feature.configured()) {
                log.log(org.osgi.service.log.LogLevel.WARN, name,
                        "its configurations are not applied, as nothing loaded takes them", null);
            }
            for (Coordinates bundle : feature.bundles()) {
                if (taken.add(bundle)) {
                    installFromRepository(repository, bundle, name);
                }
            }
        } catch (IOException unreadable) {
            problems.add("feature", name, unreadable instanceof FeatureFormatException ? unreadable.getMessage()
                    : "it cannot be read (" + Reasons.sentence(unreadable) + ")");
        }
    }

    private void installFromRepository(Path repository, Coordinates bundle, String feature) {
        Path jar = bundle.in(repository);
        if (Files.isRegularFile(jar)) {
            install(jar, bundle.toString());
        } else {
            problems.add("bundle", bundle.artifact(), feature + " names " + bundle + ", which is not in repo",
                    bundle.toString());
        }
    }

    private void installExtensions() {
        Set<Path> jars = new LinkedHashSet<>();
        for (Path folder : settings.extensions()) {
            jars.addAll(list(folder, "*.jar", folder.toString()));
        }
        Path own = settings.home().resolve("extensions");
        if (Files.isDirectory(own)) {
            jars.addAll(list(own, "*.jar", own.toString()));
        }
        Extensions found = Extensions.of(jars);
        found.older().forEach((jar, reason) -> problems.add("file", jar.toString(), reason));
        found.jars().forEach(jar -> install(jar, jar.toString()));
    }

    /** Files of a folder in the order of their names, each only once even when folders are given twice. */
    private List<Path> list(Path folder, String pattern, String name) {
        List<Path> found = new ArrayList<>();
        try (DirectoryStream<Path> entries = Files.newDirectoryStream(folder, pattern)) {
            for (Path entry : entries) {
                found.add(entry.toRealPath());
            }
        } catch (IOException unreadable) {
            problems.add("folder", name, Files.isDirectory(folder)
                    ? "it cannot be read (" + Reasons.sentence(unreadable) + ")" : "there is no such folder");
        }
        found.sort(null);
        return found;
    }

    private void install(Path jar, String file) {
        try {
            // By reference: the jar is used where it lies and not copied at each start.
            Bundle bundle = framework.getBundleContext().installBundle("reference:" + jar.toUri().toURL());
            if (bundle.getSymbolicName() == null) {
                bundle.uninstall();
                problems.add("file", file, "its manifest has no Bundle-SymbolicName, so it is not a bundle");
            } else {
                files.put(bundle, file);
            }
        } catch (BundleException | IOException refused) {
            explainRefusal(jar, file, refused);
        }
    }

    private void explainRefusal(Path jar, String file, Exception refused) {
        String name;
        try (JarFile content = new JarFile(jar.toFile())) {
            Manifest manifest = content.getManifest();
            String header = manifest == null ? null : manifest.getMainAttributes().getValue(Constants.BUNDLE_SYMBOLICNAME);
            if (header == null) {
                problems.add("file", file, "its manifest has no Bundle-SymbolicName, so it is not a bundle");
                return;
            }
            name = header.split(";", 2)[0].strip();
        } catch (IOException damaged) {
            problems.add("file", file, "it is not a jar that can be read (" + Reasons.sentence(damaged) + ")");
            return;
        }
        String reason = "the framework refuses it (" + Reasons.sentence(refused) + ")";
        if (refused instanceof BundleException typed && typed.getType() == BundleException.DUPLICATE_BUNDLE_ERROR) {
            Bundle first = files.keySet().stream().filter(b -> name.equals(b.getSymbolicName())).findFirst()
                    .orElse(framework);
            reason = "a bundle of the same name and version (" + first.getVersion() + ") is loaded already, from "
                    + files.getOrDefault(first, "the launcher");
        } else if (refused instanceof BundleException typed && typed.getType() == BundleException.MANIFEST_ERROR) {
            reason = "its manifest is wrong (" + Reasons.sentence(refused) + ")";
        }
        problems.add("bundle", name, reason, file);
    }

    /**
     * Resolves all. A bundle that does not resolve may hold a view or a verb beside its analysis and so stand on an entry that was
     * left out: what the others give is then loaded too, as the analysis has to run whoever asks.
     */
    private void resolve() {
        FrameworkWiring wiring = framework.adapt(FrameworkWiring.class);
        wiring.resolveBundles(null);
        List<Path> others = settings.features().without(settings.entry());
        long before = unresolved(files.keySet());
        if (others.isEmpty() || before == 0) {
            explainUnresolved(wiring);
            return;
        }
        List<Bundle> known = List.copyOf(files.keySet());
        installFeatures(others);
        wiring.resolveBundles(known);
        explainUnresolved(wiring);
        if (unresolved(known) == before) {
            // It was for nothing, so it need not be started either.
            files.keySet().stream().filter(bundle -> !known.contains(bundle)).toList().forEach(this::takeBack);
        } else {
            wiring.resolveBundles(null);
        }
    }

    private void explainUnresolved(FrameworkWiring wiring) {
        Reasons words = new Reasons(wiring, Arrays.asList(framework.getBundleContext().getBundles()));
        files.keySet().stream().filter(bundle -> bundle.getState() == Bundle.INSTALLED)
                .forEach(bundle -> reasons.put(bundle, words.unresolved(bundle)));
    }

    private static long unresolved(Collection<Bundle> bundles) {
        return bundles.stream().filter(bundle -> bundle.getState() == Bundle.INSTALLED).count();
    }

    private void takeBack(Bundle bundle) {
        try {
            bundle.uninstall();
            files.remove(bundle);
        } catch (BundleException stays) {
            log.log(org.osgi.service.log.LogLevel.DEBUG, bundle.getSymbolicName(), "it could not be taken back", stays);
        }
    }

    private void startBundles() throws BundleException {
        framework.start();
        for (Map.Entry<Bundle, String> entry : files.entrySet()) {
            Bundle bundle = entry.getKey();
            if (bundle.getState() == Bundle.INSTALLED) {
                explain(bundle, reasons.getOrDefault(bundle, ""));
            } else if (!fragment(bundle)) {
                try {
                    bundle.start(Bundle.START_TRANSIENT);
                } catch (BundleException | RuntimeException | LinkageError failed) {
                    explain(bundle, Reasons.notStarted(failed));
                }
            }
        }
    }

    private void explain(Bundle bundle, String reason) {
        problems.add("bundle", bundle.getSymbolicName(), reason, files.get(bundle), Long.toString(bundle.getBundleId()));
    }

    private static boolean fragment(Bundle bundle) {
        return (bundle.adapt(BundleRevision.class).getTypes() & BundleRevision.TYPE_FRAGMENT) != 0;
    }

    /** Calls the entry and gives its exit code. */
    int run() throws InterruptedException {
        BundleContext context = framework.getBundleContext();
        ServiceTracker<ToIntFunction<String[]>, ToIntFunction<String[]>> tracker =
                new ServiceTracker<>(context, entryFilter(), null);
        tracker.open();
        try {
            ToIntFunction<String[]> entry = tracker.getService();
            if (entry == null && announced(Bundle.ACTIVE).isPresent()) {
                entry = tracker.waitForService(PATIENCE.toMillis());
            }
            if (entry == null) {
                err.println("tramontane: there is nothing to run: " + noEntry() + ".");
                return Main.NO_ENTRY;
            }
            return entry.applyAsInt(settings.arguments().toArray(String[]::new));
        } finally {
            tracker.close();
        }
    }

    private org.osgi.framework.Filter entryFilter() {
        try {
            String value = settings.entry().replaceAll("([\\\\*()])", "\\\\$1");
            return FrameworkUtil.createFilter("(&(" + Constants.OBJECTCLASS + "=" + ToIntFunction.class.getName()
                    + ")(tramontane.entry=" + value + "))");
        } catch (InvalidSyntaxException impossible) {
            throw new IllegalStateException(impossible);
        }
    }

    /** A bundle whose manifest says that it gives such a service; bnd writes that for each component. */
    private Optional<Bundle> announced(int states) {
        return files.keySet().stream().filter(bundle -> (bundle.getState() & states) != 0)
                .filter(bundle -> bundle.adapt(BundleRevision.class).getDeclaredCapabilities("osgi.service").stream()
                        .anyMatch(Host::entryLike))
                .filter(this::namesOurEntry).findFirst();
    }

    /** What the descriptions of a bundle's components say of entries; a bundle without any may register one itself. */
    private boolean namesOurEntry(Bundle bundle) {
        String descriptions = bundle.getHeaders("").get("Service-Component");
        if (descriptions == null) {
            return true;
        }
        String ours = "name=\"tramontane.entry\" value=\"" + settings.entry() + "\"";
        for (String path : descriptions.split(",")) {
            URL description = bundle.getEntry(path.strip());
            try (InputStream text = description == null ? InputStream.nullInputStream() : description.openStream()) {
                if (path.contains("*") || new String(text.readAllBytes(), StandardCharsets.UTF_8).replaceAll("\\s+", " ")
                        .replace(" type=\"String\"", "").contains(ours)) {
                    return true;
                }
            } catch (IOException unreadable) {
                return true;
            }
        }
        return false;
    }

    private static boolean entryLike(BundleCapability capability) {
        Object types = capability.getAttributes().get(Constants.OBJECTCLASS);
        return ToIntFunction.class.getName().equals(types)
                || types instanceof List<?> list && list.contains(ToIntFunction.class.getName());
    }

    private String noEntry() {
        Optional<Bundle> active = announced(Bundle.ACTIVE);
        if (active.isPresent()) {
            return "bundle " + active.get().getSymbolicName() + " runs, but did not give its entry \"" + settings.entry()
                    + "\"" + waitsFor(active.get()).map(words -> "; " + words).orElse("");
        }
        Optional<Bundle> broken = announced(~Bundle.ACTIVE);
        if (broken.isPresent()) {
            String name = broken.get().getSymbolicName();
            return "bundle " + name + " would give the entry \"" + settings.entry() + "\", but it does not run: "
                    + problems.apply(name);
        }
        return "no loaded bundle gives the entry \"" + settings.entry() + "\""
                + (problems.get().isEmpty() ? "" : "; what is named above was left out");
    }

    private Optional<String> waitsFor(Bundle bundle) {
        ServiceReference<?> runtime = framework.getBundleContext()
                .getServiceReference("org.osgi.service.component.runtime.ServiceComponentRuntime");
        if (runtime == null) {
            return Optional.of("nothing loaded runs its components (Declarative Services)");
        }
        return Components.unsatisfied(framework.getBundleContext().getService(runtime), bundle);
    }

    @Override
    public void close() {
        try {
            framework.stop();
            framework.waitForStop(STOPPING.toMillis());
        } catch (BundleException failed) {
            log.log(org.osgi.service.log.LogLevel.WARN, "the framework", "it did not stop as it should", failed);
        } catch (InterruptedException interrupted) {
            Thread.currentThread().interrupt();
        }
    }
}
