package tramontane.cli;

/** What the command line tells the program that called it. */
public final class ExitCode {

    /** Everything was done; every requirement is met, if only just (caution). */
    public static final int FINE = 0;
    /** A requirement is not met, or could not be judged. */
    public static final int NOT_MET = 1;
    /** The command line or the file has mistakes; nothing was done. */
    public static final int BAD_INPUT = 2;
    /** A fault in the program or its surroundings: a full disk, a bundle that is missing. */
    public static final int BROKEN = 3;
    /** Something that was asked for could not be computed. This comes before {@link #NOT_MET}. */
    public static final int NOT_COMPUTED = 4;
    /** Stopped by Ctrl-C: 128 and the number of the signal, as shells have it. */
    public static final int STOPPED = 130;

    private ExitCode() {
    }
}
