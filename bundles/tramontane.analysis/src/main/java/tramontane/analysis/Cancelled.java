package tramontane.analysis;

import java.util.concurrent.CancellationException;

/** Leaves a run whose answer is no longer wanted. */
public final class Cancelled extends CancellationException {

    private static final long serialVersionUID = 1L;

    /** The answer is no longer wanted. */
    public Cancelled() {
        super("cancelled");
    }
}
