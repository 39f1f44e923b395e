package tramontane.cli.internal;

import tramontane.cli.ExitCode;

/** Leaves a verb with a sentence for the user. */
final class Ending extends Exception {

    private static final long serialVersionUID = 1L;

    private final int code;

    private Ending(int code, String sentence) {
        super(sentence);
        this.code = code;
    }

    /** The command line or a file has a mistake. */
    static Ending badInput(String sentence) {
        return new Ending(ExitCode.BAD_INPUT, sentence);
    }

    /** Something that has to be there is not. */
    static Ending broken(String sentence) {
        return new Ending(ExitCode.BROKEN, sentence);
    }

    /** It could not be computed. */
    static Ending notComputed(String sentence) {
        return new Ending(ExitCode.NOT_COMPUTED, sentence);
    }

    int code() {
        return code;
    }
}
