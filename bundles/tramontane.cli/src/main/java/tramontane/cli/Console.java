package tramontane.cli;

import java.io.PrintWriter;
import org.osgi.annotation.versioning.ProviderType;
import tramontane.analysis.Engine;

/** What a verb writes to and is stopped by; never {@code System.out}, so that verbs run in tests and in other programs too. */
@ProviderType
public interface Console {

    /** For results that people read, in the encoding of the terminal; what that cannot show is written as {@link #shown}. */
    PrintWriter out();

    /** For messages: what is wrong, what was done. */
    PrintWriter err();

    /** For results that programs read (JSON, CSV): standard output in UTF-8, whatever the terminal is set to. */
    PrintWriter data();

    /** Columns that a line should not exceed. */
    int width();

    /**
     * A text as {@link #out} can show it: {@code m³/h} becomes {@code m3/h} where the encoding has no {@code ³}, and control
     * characters become {@code ?}. Lay out columns with what this gives.
     *
     * @param text one line
     */
    String shown(String text);

    /** Shows progress where somebody looks, and says when the user pressed Ctrl-C. */
    Engine.Watch watch();
}
