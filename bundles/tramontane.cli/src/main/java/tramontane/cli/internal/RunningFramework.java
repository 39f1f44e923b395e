package tramontane.cli.internal;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.BiFunction;
import java.util.function.Function;
import java.util.function.Supplier;
import org.osgi.framework.Bundle;
import org.osgi.framework.BundleContext;
import org.osgi.framework.Constants;
import org.osgi.framework.FrameworkUtil;
import org.osgi.framework.InvalidSyntaxException;
import org.osgi.framework.ServiceReference;
import org.osgi.framework.wiring.BundleRevision;
import org.osgi.service.component.runtime.ServiceComponentRuntime;
import tramontane.analysis.Engine;
import tramontane.analysis.Exporter;
import tramontane.analysis.Importer;
import tramontane.analysis.LinkKind;
import tramontane.analysis.PassageKind;
import tramontane.analysis.SectionType;
import tramontane.analysis.SpeedLaw;
import tramontane.cli.Verb;
import tramontane.cli.terminal.Installation;

/** The framework that this bundle runs in. Services are looked up when they are needed, so that a broken one harms nobody. */
final class RunningFramework implements Surroundings {

    private final BundleContext context;

    RunningFramework(BundleContext context) {
        this.context = context;
    }

    @Override
    public String version() {
        Bundle own = context.getBundle();
        return own.getVersion() + " on Java " + Runtime.version();
    }

    @Override
    public Optional<Engine> engine() {
        return references(Engine.class, "").stream().findFirst().map(context::getService);
    }

    @Override
    public List<Verb> verbs() {
        List<Verb> verbs = new ArrayList<>();
        for (ServiceReference<Verb> reference : references(Verb.class, "")) {
            try {
                Verb verb = context.getService(reference);
                if (verb != null && !verb.name().isBlank()) {
                    verb.summary();
                    verbs.add(verb);
                }
            } catch (RuntimeException | LinkageError broken) {
                detail(broken);
            }
        }
        return verbs;
    }

    @Override
    public Optional<Path> samples() {
        return Installation.samples(context);
    }

    @Override
    public void detail(Throwable fault) {
        try {
            HostLog.debug(context, fault);
        } catch (LinkageError noLog) {
            // the framework brings no log service; the user has had the sentence
        }
    }

    @Override
    public Inventory inventory() {
        Map<String, Inventory.Trouble> troubles = new LinkedHashMap<>();
        List<Inventory.Loaded> bundles = bundles(troubles);
        launcherProblems(troubles);
        List<Inventory.Extension> extensions = new ArrayList<>();
        collect(PassageKind.class, "passage kind", (kind, reference) -> kind.form().name(), kind -> kind.form().help(),
                extensions, troubles);
        collect(LinkKind.class, "link kind", (kind, reference) -> kind.form().name(), kind -> kind.form().help(),
                extensions, troubles);
        collect(SectionType.class, "section", RunningFramework::name, RunningFramework::carriers, RunningFramework::help,
                extensions, troubles);
        collect(Importer.class, "importer", (importer, reference) -> importer.id(), Importer::label, extensions, troubles);
        collect(Exporter.class, "exporter", (exporter, reference) -> exporter.id(), Exporter::label, extensions, troubles);
        collect(SpeedLaw.class, "speed law", RunningFramework::componentName, law -> "", extensions, troubles);
        collect(Verb.class, "verb", (verb, reference) -> verb.name(), Verb::summary, extensions, troubles);
        List<Engine.Loaded> analyses = engine().map(Engine::analyses).orElse(List.of());
        try {
            // last, as a component only shows that it fails when it is asked for
            Components.unsatisfied(context, troubles);
        } catch (LinkageError noComponents) {
            // without Declarative Services this bundle would not have been asked
        }
        return new Inventory(bundles, analyses, extensions, List.copyOf(troubles.values()));
    }

    private List<Inventory.Loaded> bundles(Map<String, Inventory.Trouble> troubles) {
        List<Inventory.Loaded> bundles = new ArrayList<>();
        Function<String, String> reasons = reasons();
        for (Bundle bundle : context.getBundles()) {
            String name = bundle.getSymbolicName();
            bundles.add(new Inventory.Loaded(name, bundle.getVersion().toString(), state(bundle)));
            String reason = reasons.apply(Long.toString(bundle.getBundleId()));
            if (reason == null && bundle.getState() == Bundle.INSTALLED) {
                reason = "something that it imports is missing";
            }
            if (reason != null) {
                troubles.put(name, new Inventory.Trouble("bundle " + name, reason));
            }
        }
        bundles.sort(Comparator.comparing(Inventory.Loaded::name));
        return bundles;
    }

    private static String state(Bundle bundle) {
        boolean fragment = (bundle.adapt(BundleRevision.class).getTypes() & BundleRevision.TYPE_FRAGMENT) != 0;
        return switch (bundle.getState()) {
            case Bundle.ACTIVE -> "runs";
            case Bundle.STARTING -> "ready"; // waits until a class of it is asked for
            case Bundle.RESOLVED -> fragment ? "attached" : "not started";
            case Bundle.INSTALLED -> "not resolved";
            case Bundle.STOPPING -> "stopping";
            default -> "removed";
        };
    }

    /** The launcher's service that knows why a bundle does not run. */
    private Function<String, String> reasons() {
        return launcher(Function.class).map(function -> (Function<String, String>) name -> {
            @SuppressWarnings("unchecked") // as the launcher documents
            Function<String, String> reason = (Function<String, String>) function;
            return reason.apply(name);
        }).orElse(name -> null);
    }

    /** What the launcher could not load at all, so that no bundle stands for it. */
    private void launcherProblems(Map<String, Inventory.Trouble> troubles) {
        Object all = launcher(Supplier.class).<Object>map(supplier -> supplier.get()).orElse(Map.of());
        if (all instanceof Map<?, ?> map) {
            map.forEach((what, reason) -> troubles.putIfAbsent(String.valueOf(what),
                    new Inventory.Trouble(String.valueOf(what), String.valueOf(reason))));
        }
    }

    private <T> Optional<T> launcher(Class<T> type) {
        return references(type, "(tramontane.role=bundle-problems)").stream().findFirst().map(context::getService);
    }

    private <T> void collect(Class<T> type, String kind, BiFunction<? super T, ServiceReference<?>, String> name,
            Function<? super T, String> help, List<Inventory.Extension> extensions, Map<String, Inventory.Trouble> troubles) {
        collect(type, kind, name, service -> List.of(), help, extensions, troubles);
    }

    private <T> void collect(Class<T> type, String kind, BiFunction<? super T, ServiceReference<?>, String> name,
            Function<? super T, List<String>> carriers, Function<? super T, String> help, List<Inventory.Extension> extensions,
            Map<String, Inventory.Trouble> troubles) {
        List<Inventory.Extension> found = new ArrayList<>();
        for (ServiceReference<T> reference : references(type, "")) {
            String bundle = reference.getBundle() == null ? "" : reference.getBundle().getSymbolicName();
            try {
                T service = context.getService(reference);
                if (service == null) {
                    throw new IllegalStateException("it could not be made");
                }
                found.add(new Inventory.Extension(kind, name.apply(service, reference), carriers.apply(service),
                        help.apply(service), bundle));
            } catch (RuntimeException | LinkageError broken) {
                String what = kind + " " + componentName(null, reference) + " of bundle " + bundle;
                troubles.putIfAbsent(what, new Inventory.Trouble(what, "it is broken: " + broken.getMessage()));
                detail(broken);
            }
        }
        found.sort(Comparator.comparing(Inventory.Extension::fullName));
        extensions.addAll(found);
    }

    private static String name(SectionType<?> section, ServiceReference<?> reference) {
        return section.form().name();
    }

    private static List<String> carriers(SectionType<?> section) {
        return section.owners().stream().sorted().map(owner -> owner.form().name()).toList();
    }

    private static String help(SectionType<?> section) {
        return section.form().help();
    }

    private static String componentName(Object service, ServiceReference<?> reference) {
        Object name = reference.getProperty("component.name");
        String text = name != null ? name.toString()
                : service != null ? service.getClass().getName() : "service " + reference.getProperty(Constants.SERVICE_ID);
        return text.substring(text.lastIndexOf('.') + 1);
    }

    /** The services of a type, the highest ranked first. */
    private <T> List<ServiceReference<T>> references(Class<T> type, String filter) {
        try {
            Collection<ServiceReference<T>> found = context.getServiceReferences(type, filter.isEmpty() ? null : filter);
            return found.stream().sorted(Comparator.<ServiceReference<T>>reverseOrder()).toList();
        } catch (InvalidSyntaxException impossible) {
            throw new IllegalStateException(impossible);
        }
    }

    /** Talks to Declarative Services; a class of its own, so that this one loads where they are not. */
    private static final class Components {

        /** The innermost cause of a stack trace in text. */
        private static String cause(String trace) {
            List<String> heads = trace.lines().map(String::strip).filter(line -> !line.startsWith("at ")).toList();
            return heads.stream().filter(line -> line.startsWith("Caused by: ")).reduce((outer, inner) -> inner)
                    .map(line -> line.substring("Caused by: ".length()))
                    .orElse(heads.isEmpty() ? "" : heads.getFirst());
        }

        static void unsatisfied(BundleContext context, Map<String, Inventory.Trouble> troubles) {
            ServiceReference<ServiceComponentRuntime> reference = context.getServiceReference(ServiceComponentRuntime.class);
            if (reference == null) {
                return;
            }
            ServiceComponentRuntime runtime = context.getService(reference);
            runtime.getComponentDescriptionDTOs().forEach(description ->
                    runtime.getComponentConfigurationDTOs(description).forEach(configuration -> {
                        String what = "component " + description.name + " of bundle " + description.bundle.symbolicName;
                        Optional<String> reason = Optional.empty();
                        if (configuration.failure != null && !configuration.failure.isBlank()) {
                            reason = Optional.of("it failed: " + cause(configuration.failure));
                        } else if (configuration.unsatisfiedReferences.length > 0) {
                            List<String> names = Arrays.stream(configuration.unsatisfiedReferences)
                                    .map(missing -> missing.name).toList();
                            reason = Optional.of("it waits for " + String.join(", ", Arrays.stream(description.references)
                                    .filter(known -> names.contains(known.name)).map(known -> known.interfaceName)
                                    .distinct().toList()) + ", which nothing gives");
                        }
                        reason.ifPresent(words -> troubles.putIfAbsent(what, new Inventory.Trouble(what, words)));
                    }));
        }
    }

    /** Talks to the log service; a class of its own, so that this one loads where there is none. */
    private static final class HostLog {

        static void debug(BundleContext context, Throwable fault) {
            ServiceReference<org.osgi.service.log.LoggerFactory> reference =
                    context.getServiceReference(org.osgi.service.log.LoggerFactory.class);
            if (reference != null) {
                context.getService(reference).getLogger(FrameworkUtil.getBundle(HostLog.class).getSymbolicName())
                        .debug("where it broke", fault);
            }
        }
    }
}
