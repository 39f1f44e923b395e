package tramontane.testing;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.function.ToIntFunction;
import org.junit.jupiter.engine.JupiterTestEngine;
import org.junit.platform.engine.Filter;
import org.junit.platform.engine.discovery.DiscoverySelectors;
import org.junit.platform.engine.support.descriptor.MethodSource;
import org.junit.platform.launcher.Launcher;
import org.junit.platform.launcher.TagFilter;
import org.junit.platform.launcher.TestIdentifier;
import org.junit.platform.launcher.TestPlan;
import org.junit.platform.launcher.core.LauncherConfig;
import org.junit.platform.launcher.core.LauncherDiscoveryRequestBuilder;
import org.junit.platform.launcher.core.LauncherFactory;
import org.osgi.framework.Bundle;
import org.osgi.framework.BundleContext;

/**
 * Runs the tests of test bundles: first argument a folder for reports, then symbolic names. Where the environment has
 * {@code TRAMONTANE_TEST_TAG}, only tests of that tag run, and where it has {@code TRAMONTANE_TEST_VARIANT}, which says how the same
 * tests run once more, the reports go to a folder of that name below the other.
 *
 * <p>Exit code 0 if every listed class ran and no test failed, 1 if a test failed, 5 if a bundle or a class that should
 * run did not, so that a test which silently stays away is no success.
 */
final class TestEntry implements ToIntFunction<String[]> {
    private static final int FAILED = 1;
    private static final int MISSING = 5;

    private final BundleContext context;

    TestEntry(BundleContext context) {
        this.context = context;
    }

    @Override
    public int applyAsInt(String[] arguments) {
        if (arguments.length < 2) {
            System.err.println("tests: needs a folder for reports and names of test bundles");
            return MISSING;
        }
        String variant = System.getenv().getOrDefault("TRAMONTANE_TEST_VARIANT", "");
        Path reports = variant.isEmpty() ? Path.of(arguments[0]) : Path.of(arguments[0], variant + "-reports");
        int code = 0;
        for (String name : List.of(arguments).subList(1, arguments.length)) {
            try {
                code = Math.max(code, run(name, reports));
            } catch (IOException | ClassNotFoundException | LinkageError broken) {
                System.err.println("tests: " + name + " could not run: " + broken);
                code = MISSING;
            }
        }
        return code;
    }

    private int run(String name, Path reports) throws IOException, ClassNotFoundException {
        Optional<Bundle> found = Arrays.stream(context.getBundles()).filter(b -> name.equals(b.getSymbolicName()))
                .findFirst();
        if (found.isEmpty() || found.get().getState() != Bundle.ACTIVE) {
            System.err.println("tests: bundle " + name + (found.isEmpty() ? " is not there" : " is not running"));
            return MISSING;
        }
        List<Class<?>> classes = listed(found.get());
        if (classes.isEmpty()) {
            System.err.println("tests: bundle " + name + " lists no test");
            return MISSING;
        }
        TestReport report = new TestReport();
        String tag = System.getenv().getOrDefault("TRAMONTANE_TEST_TAG", "");
        // One engine, named; everything that JUnit would look for with ServiceLoader is off.
        Launcher junit = LauncherFactory.create(LauncherConfig.builder().enableTestEngineAutoRegistration(false)
                .enableTestExecutionListenerAutoRegistration(false).enableLauncherSessionListenerAutoRegistration(false)
                .enableLauncherDiscoveryListenerAutoRegistration(false).enablePostDiscoveryFilterAutoRegistration(false)
                .addTestEngines(new JupiterTestEngine()).build());
        Thread thread = Thread.currentThread();
        ClassLoader before = thread.getContextClassLoader();
        thread.setContextClassLoader(TestEntry.class.getClassLoader());
        try {
            TestPlan plan = junit.discover(LauncherDiscoveryRequestBuilder.request()
                    .selectors(classes.stream().map(DiscoverySelectors::selectClass).toList())
                    // One that waits for ever would keep the build; a test that takes longer says so by @Timeout.
                    .configurationParameter("junit.jupiter.execution.timeout.default", "5 m")
                    .filters(tag.isEmpty() ? new Filter<?>[0] : new Filter<?>[] {TagFilter.includeTags(tag)}).build());
            if (!tag.isEmpty()) {
                classes.removeIf(type -> !holds(plan, type));
            }
            junit.execute(plan, report);
        } finally {
            thread.setContextClassLoader(before);
        }
        Files.createDirectories(reports);
        report.write(reports);
        System.out.println("tests: " + name + ": " + report.summary());
        report.failed().forEach(line -> System.out.println("  FAILED " + line));
        if (classes.isEmpty()) {
            System.err.println("tests: bundle " + name + " has no test with the tag " + tag);
            return MISSING;
        }
        List<String> absent = classes.stream().map(Class::getName).filter(c -> !report.ran(c)).toList();
        if (!absent.isEmpty()) {
            System.err.println("tests: bundle " + name + " lists classes of which no test ran: " + absent);
            return MISSING;
        }
        return report.failures() == 0 ? 0 : FAILED;
    }

    private static boolean holds(TestPlan plan, Class<?> type) {
        return plan.getRoots().stream().flatMap(root -> plan.getDescendants(root).stream()).filter(TestIdentifier::isTest)
                .anyMatch(test -> test.getSource().filter(MethodSource.class::isInstance).map(MethodSource.class::cast)
                        .filter(method -> method.getClassName().equals(type.getName())
                                || method.getClassName().startsWith(type.getName() + "$")).isPresent());
    }

    private static List<Class<?>> listed(Bundle bundle) throws ClassNotFoundException {
        String header = Optional.ofNullable(bundle.getHeaders("").get("Test-Cases")).orElse("");
        List<Class<?>> classes = new ArrayList<>();
        for (String name : header.split(",")) {
            if (!name.isBlank()) {
                classes.add(bundle.loadClass(name.strip()));
            }
        }
        return classes;
    }
}
