package tramontane.cli.terminal;

import tramontane.cli.ExitCode;

/** Leaves a verb with a sentence for the user, printed on {@link tramontane.cli.Console#err}, and an exit code. */
public final class Ending extends Exception {

    private static final long serialVersionUID = 1L;

    private final int code;

    private Ending(int code, String sentence) {
        super(sentence);
        this.code = code;
    }

    /** The command line or a file has a mistake. */
    public static Ending badInput(String sentence) {
        return new Ending(ExitCode.BAD_INPUT, sentence);
    }

    /** Something that has to be there is not. */
    public static Ending broken(String sentence) {
        return new Ending(ExitCode.BROKEN, sentence);
    }

    /** It could not be computed. */
    public static Ending notComputed(String sentence) {
        return new Ending(ExitCode.NOT_COMPUTED, sentence);
    }

    /** One of {@link ExitCode}. */
    public int code() {
        return code;
    }
}
