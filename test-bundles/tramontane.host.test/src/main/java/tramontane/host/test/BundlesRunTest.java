package tramontane.host.test;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.function.Supplier;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.osgi.framework.Bundle;
import org.osgi.framework.BundleContext;
import org.osgi.framework.InvalidSyntaxException;
import org.osgi.framework.ServiceReference;
import org.osgi.framework.wiring.BundleRevision;
import org.osgi.test.common.annotation.InjectBundleContext;
import org.osgi.test.junit5.context.BundleContextExtension;

@ExtendWith(BundleContextExtension.class)
class BundlesRunTest {
    @InjectBundleContext
    BundleContext context;

    @Test
    void everyBundleIsActiveAndEveryFragmentAttached() {
        List<String> idle = Arrays.stream(context.getBundles()).filter(bundle -> bundle.getState() != wanted(bundle))
                .map(bundle -> bundle.getSymbolicName() + " in state " + bundle.getState()).toList();
        assertEquals(List.of(), idle);
    }

    private static int wanted(Bundle bundle) {
        boolean fragment = (bundle.adapt(BundleRevision.class).getTypes() & BundleRevision.TYPE_FRAGMENT) != 0;
        return fragment ? Bundle.RESOLVED : Bundle.ACTIVE;
    }

    @Test
    void theProductsOwnBundlesAreThere() {
        List<String> names = Arrays.stream(context.getBundles()).map(Bundle::getSymbolicName).toList();
        for (String name : List.of("tramontane.physics", "tramontane.model", "tramontane.analysis", "tramontane.engine",
                "tramontane.airflow", "tramontane.catalogue", "tramontane.selection", "tramontane.cli", "tramontane.selection.cli",
                "org.apache.felix.scr")) {
            assertTrue(names.contains(name), name);
        }
    }

    @Test
    void noProblemIsToldAndWhatRunsHasNoReason() throws InvalidSyntaxException {
        Supplier<?> all = problems(Supplier.class);
        Function<String, ?> one = lookup();
        assertEquals(Map.of(), all.get());
        assertNull(one.apply("tramontane.physics"));
    }

    @SuppressWarnings("unchecked") // the service takes names; its class says so, a service reference cannot
    private Function<String, ?> lookup() throws InvalidSyntaxException {
        return problems(Function.class);
    }

    private <T> T problems(Class<T> type) throws InvalidSyntaxException {
        Collection<ServiceReference<T>> found = context.getServiceReferences(type, "(tramontane.role=bundle-problems)");
        assertEquals(1, found.size());
        return context.getService(found.iterator().next());
    }

    @Test
    void bundlesLearnWhereTheProductIsInstalled() {
        Path install = Path.of(context.getProperty("tramontane.install"));
        assertTrue(Files.isDirectory(install.resolve("features")), install::toString);
        assertEquals(install.toString(), System.getProperty("tramontane.install"));
        assertEquals(install.resolve("samples").toString(), context.getProperty("tramontane.samples"));
        assertEquals(install.resolve("catalogue").toString(), context.getProperty("tramontane.catalogue"));
        assertEquals(context.getProperty("tramontane.catalogue"), System.getProperty("tramontane.catalogue"));
    }

    @Test
    void theFrameworkWritesOutsideTheInstallFolder() {
        Path install = Path.of(context.getProperty("tramontane.install"));
        Path written = context.getDataFile("probe").toPath().toAbsolutePath();
        assertFalse(written.startsWith(install), written::toString);
    }
}
