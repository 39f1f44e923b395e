package tramontane.testing;

import java.util.Hashtable;
import java.util.Map;
import java.util.function.ToIntFunction;
import org.osgi.annotation.bundle.Header;
import org.osgi.framework.BundleActivator;
import org.osgi.framework.BundleContext;
import org.osgi.framework.Constants;

/** Registers the entry. */
@Header(name = Constants.BUNDLE_ACTIVATOR, value = "${@class}")
public final class TestActivator implements BundleActivator {
    @Override
    public void start(BundleContext context) {
        context.registerService(ToIntFunction.class, new TestEntry(context),
                new Hashtable<>(Map.of("tramontane.entry", "tests")));
    }

    @Override
    public void stop(BundleContext context) {
        // The framework takes the service back.
    }
}
