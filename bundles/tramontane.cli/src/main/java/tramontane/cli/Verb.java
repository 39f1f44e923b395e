package tramontane.cli;

import java.util.List;
import org.osgi.annotation.versioning.ConsumerType;

/**
 * A verb of the command line; implemented by extensions and registered as a service.
 *
 * <pre>{@code
 * @Component
 * public final class Count implements Verb {
 *     public String name() { return "count"; }
 *     public String summary() { return "Count the air movers of a design."; }
 *     public String help() { return "Usage: tramontane count FILE"; }
 *
 *     public int run(List<String> arguments, Console console) throws IOException {
 *         if (arguments.size() != 1) {
 *             console.err().println("count needs one FILE.");
 *             return ExitCode.BAD_INPUT;
 *         }
 *         console.out().println(count(Path.of(arguments.get(0))) + " air movers");
 *         return ExitCode.FINE;
 *     }
 * }
 * }</pre>
 *
 * <p>How it takes its arguments apart is its own affair; {@code --help} as the only argument is answered with
 * {@link #help} before it is run. Where two verbs have one name, ours comes first, then the higher service ranking.
 */
@ConsumerType
public interface Verb {

    /** The word on the command line: lower-case letters, digits and hyphens. */
    String name();

    /** What it does, one short sentence for the list of verbs. */
    String summary();

    /** How it is called, what its options are; several lines, shown after {@link #summary}. */
    String help();

    /**
     * Does it. Called on the main thread.
     *
     * @param arguments what stands behind the verb
     * @param console   where to write to
     * @return one of {@link ExitCode}
     * @throws java.util.concurrent.CancellationException to end because {@link Console#watch} says so
     * @throws Exception for what it cannot help; the user sees one sentence, with {@code --debug} all of it
     */
    int run(List<String> arguments, Console console) throws Exception;
}
