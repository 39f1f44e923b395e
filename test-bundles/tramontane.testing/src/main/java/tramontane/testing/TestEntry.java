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
import org.junit.platform.engine.discovery.DiscoverySelectors;
import org.junit.platform.launcher.Launcher;
import org.junit.platform.launcher.core.LauncherConfig;
import org.junit.platform.launcher.core.LauncherDiscoveryRequestBuilder;
import org.junit.platform.launcher.core.LauncherFactory;
import org.osgi.framework.Bundle;
import org.osgi.framework.BundleContext;

/**
 * Runs the tests of test bundles: first argument a folder for reports, then symbolic names.
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
        Path reports = Path.of(arguments[0]);
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
        // One engine, named; everything that JUnit would look for with ServiceLoader is off.
        Launcher junit = LauncherFactory.create(LauncherConfig.builder().enableTestEngineAutoRegistration(false)
                .enableTestExecutionListenerAutoRegistration(false).enableLauncherSessionListenerAutoRegistration(false)
                .enableLauncherDiscoveryListenerAutoRegistration(false).enablePostDiscoveryFilterAutoRegistration(false)
                .addTestEngines(new JupiterTestEngine()).build());
        Thread thread = Thread.currentThread();
        ClassLoader before = thread.getContextClassLoader();
        thread.setContextClassLoader(TestEntry.class.getClassLoader());
        try {
            junit.execute(LauncherDiscoveryRequestBuilder.request()
                    .selectors(classes.stream().map(DiscoverySelectors::selectClass).toList()).build(), report);
        } finally {
            thread.setContextClassLoader(before);
        }
        Files.createDirectories(reports);
        report.write(reports);
        System.out.println("tests: " + name + ": " + report.summary());
        report.failed().forEach(line -> System.out.println("  FAILED " + line));
        List<String> absent = classes.stream().map(Class::getName).filter(c -> !report.ran(c)).toList();
        if (!absent.isEmpty()) {
            System.err.println("tests: bundle " + name + " lists classes of which no test ran: " + absent);
            return MISSING;
        }
        return report.failures() == 0 ? 0 : FAILED;
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
