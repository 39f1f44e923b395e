package tramontane.engine.internal;

import java.lang.System.Logger;
import java.lang.System.Logger.Level;
import tramontane.analysis.Finding;

/** Sentences about extensions that failed. */
final class Failure {

    static final String REMEDY = "tell whoever makes the bundle; everything that does not need it went on";

    private static final Logger LOG = System.getLogger("tramontane.engine");

    private Failure() {
    }

    /**
     * Turns what an extension threw into a sentence, and keeps the stack trace for those who look for it.
     *
     * @param what   what failed: {@code analysis toy of bundle lab.toy 1.0.0}
     * @param thrown what it threw
     */
    static String sentence(String what, Throwable thrown) {
        String sentence = what + " failed: " + describe(thrown);
        LOG.log(Level.DEBUG, sentence, thrown);
        return sentence;
    }

    static Finding finding(String sentence) {
        return Finding.error("", sentence).remedy(REMEDY);
    }

    private static String describe(Throwable thrown) {
        String message;
        try {
            message = thrown.getMessage();
        } catch (Throwable e) { // an exception of an extension may fail itself
            message = null;
        }
        String name = thrown.getClass().getSimpleName();
        return message == null || message.isBlank() ? name : name + ": " + message;
    }
}
