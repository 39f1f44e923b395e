package tramontane.cli.terminal;

import java.util.List;
import org.osgi.annotation.versioning.ConsumerType;
import tramontane.cli.Console;
import tramontane.cli.Verb;

/**
 * A verb whose arguments a {@link Syntax} takes apart, with {@code --help} anywhere among them.
 *
 * <pre>{@code
 * @Component(service = Verb.class)
 * public final class Count extends TerminalVerb {
 *     private final Engine engine;
 *
 *     @Activate
 *     public Count(BundleContext context, @Reference Engine engine) { super("count", "Count the air movers of a design."); … }
 *
 *     protected Syntax syntax() { return new Syntax(name()).parameter("FILE", "A design file, or the name of a sample."); }
 *
 *     protected int run(Syntax.Given given, Console console) throws Ending {
 *         DesignSource source = DesignSource.open(given.parameter(0), Installation.samples(context), Options.STANDARD_SIZE, engine);
 *         if (!source.sound()) {
 *             source.print(console.err());
 *             return ExitCode.BAD_INPUT;
 *         }
 *         console.out().println(Messages.count(source.design().orElseThrow().airMovers().size(), "air mover"));
 *         return ExitCode.FINE;
 *     }
 * }
 * }</pre>
 */
@ConsumerType
public abstract class TerminalVerb implements Verb {

    private final String name;
    private final String summary;

    /**
     * A verb.
     *
     * @param name    as {@link Verb#name} says
     * @param summary as {@link Verb#summary} says
     */
    protected TerminalVerb(String name, String summary) {
        this.name = name;
        this.summary = summary;
    }

    /** What it takes; a new one at each call. */
    protected abstract Syntax syntax();

    /**
     * Does it.
     *
     * @param given   what stands behind the verb
     * @param console where to write to
     * @return one of {@link tramontane.cli.ExitCode}
     * @throws Ending for a mistake of the user, or where nothing comes of it
     */
    protected abstract int run(Syntax.Given given, Console console) throws Ending;

    @Override
    public final String name() {
        return name;
    }

    @Override
    public final String summary() {
        return summary;
    }

    @Override
    public final String help() {
        return syntax().help();
    }

    @Override
    public final int run(List<String> arguments, Console console) throws Ending {
        return run(syntax().parse(arguments), console);
    }
}
