package tramontane.launcher;

import java.util.ArrayList;
import java.util.Collection;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.osgi.framework.Bundle;
import org.osgi.framework.BundleException;
import org.osgi.framework.Version;
import org.osgi.framework.namespace.BundleNamespace;
import org.osgi.framework.namespace.ExecutionEnvironmentNamespace;
import org.osgi.framework.namespace.HostNamespace;
import org.osgi.framework.namespace.PackageNamespace;
import org.osgi.framework.wiring.BundleCapability;
import org.osgi.framework.wiring.BundleRequirement;
import org.osgi.framework.wiring.BundleRevision;
import org.osgi.framework.wiring.FrameworkWiring;
import org.osgi.resource.Namespace;

/**
 * Says in plain words why a bundle does not run. It looks at what the bundle requires and what the others provide, since
 * the text of a resolver's exception is neither stable nor meant for users.
 */
final class Reasons {
    private static final Pattern FROM = Pattern.compile("(?<!\\(!)\\(version(>=|=)([^)]+)\\)");
    private static final Pattern UPTO = Pattern.compile("\\(version<=([^)]+)\\)");
    private static final Pattern BELOW = Pattern.compile("\\(!\\(version>=([^)]+)\\)\\)");

    private final FrameworkWiring wiring;
    private final Collection<Bundle> bundles;

    Reasons(FrameworkWiring wiring, Collection<Bundle> bundles) {
        this.wiring = wiring;
        this.bundles = List.copyOf(bundles);
    }

    /** Why a bundle is not resolved. */
    String unresolved(Bundle bundle) {
        return missing(bundle.adapt(BundleRevision.class), new HashSet<>())
                .orElse("what it needs is there, but cannot be put together: two of the packages it uses come in "
                        + "versions that exclude each other");
    }

    private Optional<String> missing(BundleRevision revision, Set<BundleRevision> seen) {
        if (!seen.add(revision)) {
            return Optional.empty();
        }
        Optional<String> indirect = Optional.empty();
        for (BundleRequirement requirement : revision.getDeclaredRequirements(null)) {
            if (!mandatory(requirement)) {
                continue;
            }
            Collection<BundleCapability> providers = wiring.findProviders(requirement);
            if (providers.isEmpty()) {
                return Optional.of("needs " + words(requirement) + ", " + instead(requirement));
            }
            if (indirect.isEmpty() && providers.stream().noneMatch(p -> usable(p, revision))) {
                BundleRevision provider = providers.iterator().next().getRevision();
                String name = provider.getSymbolicName();
                String from = words(requirement).startsWith("bundle " + name) ? "" : " from bundle " + name;
                indirect = missing(provider, seen).map(reason -> "needs " + words(requirement) + from
                        + ", which is not loaded either: it " + reason);
            }
        }
        return indirect;
    }

    private static boolean usable(BundleCapability capability, BundleRevision self) {
        BundleRevision provider = capability.getRevision();
        return provider.equals(self) || provider.getWiring() != null;
    }

    private static boolean mandatory(BundleRequirement requirement) {
        Map<String, String> directives = requirement.getDirectives();
        String resolution = directives.getOrDefault(Namespace.REQUIREMENT_RESOLUTION_DIRECTIVE, "mandatory");
        String effective = directives.getOrDefault(Namespace.REQUIREMENT_EFFECTIVE_DIRECTIVE, "resolve");
        return resolution.equals("mandatory") && effective.equals("resolve");
    }

    /** Names what a requirement asks for. */
    static String words(BundleRequirement requirement) {
        String filter = requirement.getDirectives().getOrDefault(Namespace.REQUIREMENT_FILTER_DIRECTIVE, "");
        String space = requirement.getNamespace();
        String name = name(space, filter).orElse("");
        String range = range(space, filter);
        return switch (space) {
            case PackageNamespace.PACKAGE_NAMESPACE -> "package " + name + range;
            case BundleNamespace.BUNDLE_NAMESPACE -> "bundle " + name + range;
            case HostNamespace.HOST_NAMESPACE -> "bundle " + name + range + " to be a part of";
            case ExecutionEnvironmentNamespace.EXECUTION_ENVIRONMENT_NAMESPACE ->
                    name.equals("JavaSE") ? "Java" + range.replace(" (version", "").replace(")", "") : "Java edition " + name;
            default -> name.isEmpty() ? "capability " + space + " " + filter : "capability " + space + " " + name + range;
        };
    }

    private String instead(BundleRequirement requirement) {
        String space = requirement.getNamespace();
        if (space.equals(ExecutionEnvironmentNamespace.EXECUTION_ENVIRONMENT_NAMESPACE)) {
            return "and this is Java " + Runtime.version().feature();
        }
        String filter = requirement.getDirectives().getOrDefault(Namespace.REQUIREMENT_FILTER_DIRECTIVE, "");
        Optional<String> name = name(space, filter);
        Set<String> others = new TreeSet<>();
        if (name.isPresent()) {
            for (Bundle bundle : bundles) {
                BundleRevision revision = bundle.adapt(BundleRevision.class);
                if (revision == null) {
                    continue;
                }
                for (BundleCapability capability : revision.getDeclaredCapabilities(space)) {
                    Object version = capability.getAttributes().get(versionAttribute(space));
                    if (name.get().equals(capability.getAttributes().get(space)) && version instanceof Version) {
                        others.add(version + " from " + bundle.getSymbolicName());
                    }
                }
            }
        }
        return others.isEmpty() ? "which no loaded bundle provides"
                : "and the loaded bundles provide only " + String.join(", ", others);
    }

    private static Optional<String> name(String space, String filter) {
        Matcher matcher = Pattern.compile("\\(" + Pattern.quote(space) + "=([^)]+)\\)").matcher(filter);
        return matcher.find() ? Optional.of(matcher.group(1)) : Optional.empty();
    }

    private static String versionAttribute(String space) {
        return space.equals(BundleNamespace.BUNDLE_NAMESPACE) || space.equals(HostNamespace.HOST_NAMESPACE)
                ? "bundle-version" : "version";
    }

    private static String range(String space, String filter) {
        String plain = filter.replace(versionAttribute(space), "version");
        List<String> parts = new ArrayList<>();
        Matcher from = FROM.matcher(plain);
        if (from.find()) {
            parts.add(from.group(1).equals("=") || plain.contains("(version<=" + from.group(2) + ")") ? from.group(2)
                    : from.group(2) + " or later");
        }
        Matcher upto = UPTO.matcher(plain);
        if (upto.find() && !parts.contains(upto.group(1))) {
            parts.add("up to " + upto.group(1));
        }
        Matcher below = BELOW.matcher(plain);
        if (below.find()) {
            parts.add("below " + below.group(1));
        }
        return parts.isEmpty() || parts.equals(List.of("0.0.0 or later")) ? ""
                : " (version " + String.join(", ", parts) + ")";
    }

    /** Why a resolved bundle did not start. */
    static String notStarted(Throwable thrown) {
        return "it could not be started (" + sentence(thrown) + ")";
    }

    /** A throwable in one line: the name that people know it by, and its message; of a wrapper, what it wraps. */
    static String sentence(Throwable thrown) {
        if (thrown instanceof BundleException && thrown.getCause() != null) {
            return sentence(thrown.getCause());
        }
        if (thrown instanceof UnsupportedClassVersionError) {
            return "its classes are made for a newer Java than " + Runtime.version().feature();
        }
        String message = String.valueOf(thrown.getMessage()).lines().findFirst().orElse("");
        return thrown.getClass().getSimpleName() + (thrown.getMessage() == null ? "" : ": " + message);
    }
}
