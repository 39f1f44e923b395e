package tramontane.host.test;

import java.util.function.BooleanSupplier;
import org.osgi.service.component.annotations.Activate;
import org.osgi.service.component.annotations.Component;
import org.osgi.service.component.annotations.Reference;
import org.osgi.service.log.LoggerFactory;

/** A component as extensions write them, so that the tests see one start even where the product has none. */
@Component(property = "tramontane.test=probe")
public final class Probe implements BooleanSupplier {
    private final LoggerFactory log;

    /** Takes the log that the launcher gives. */
    @Activate
    public Probe(@Reference LoggerFactory log) {
        this.log = log;
    }

    /** Whether the log would show errors. */
    @Override
    public boolean getAsBoolean() {
        return log.getLogger(Probe.class).isErrorEnabled();
    }
}
