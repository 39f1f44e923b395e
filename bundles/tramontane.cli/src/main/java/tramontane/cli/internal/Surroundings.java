package tramontane.cli.internal;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import tramontane.analysis.Engine;
import tramontane.cli.Verb;
import tramontane.cli.terminal.Ending;

/** What the command line stands in: a running framework, or a test. */
interface Surroundings {

    /** The version of the program. */
    String version();

    /** The engine, if it is loaded. */
    Optional<Engine> engine();

    /** Verbs of extensions, the highest ranked first. */
    List<Verb> verbs();

    /** What is loaded, and what is not and why. */
    Inventory inventory();

    /** The folder of samples, if there is one. */
    Optional<Path> samples();

    /** Hands everything about a fault to whoever looks for it ({@code --debug}). */
    void detail(Throwable fault);

    /** The engine, or an end with the reason why there is none. */
    default Engine needEngine() throws Ending {
        Optional<Engine> engine = engine();
        if (engine.isEmpty()) {
            throw Ending.broken("The engine is not running, so nothing can be checked or solved; "
                    + "\"tramontane modules\" says why.");
        }
        return engine.get();
    }
}
