package tramontane.acoustics.recording;

/** Told how far a long computation is; may end it. */
@FunctionalInterface
public interface Progress {

    /** Tells nobody, never ends. */
    Progress SILENT = share -> { };

    /**
     * Called some hundred times or less often, on the thread that computes.
     *
     * @param share what is done, 0 to 1
     * @throws java.util.concurrent.CancellationException to end the computation; it passes that on
     */
    void at(double share);
}
