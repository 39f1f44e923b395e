package tramontane.cli.internal;

import java.util.List;
import java.util.Optional;
import java.util.function.ToIntFunction;
import org.osgi.framework.BundleContext;
import org.osgi.service.component.annotations.Activate;
import org.osgi.service.component.annotations.Component;
import tramontane.cli.ExitCode;

/**
 * The service that the launcher calls with the words of the command line.
 *
 * <p>It refers to no service, not even the engine: what is missing is for {@code modules} to explain, so the command line has
 * to be there without.
 */
@Component(service = ToIntFunction.class, property = "tramontane.entry=cli")
public final class CommandLineEntry implements ToIntFunction<String[]> {

    private final BundleContext context;

    /** Made by Declarative Services. */
    @Activate
    public CommandLineEntry(BundleContext context) {
        this.context = context;
    }

    @Override
    public int applyAsInt(String[] line) {
        return run(new RunningFramework(context), line);
    }

    /** Runs a command line on the standard streams of this process. */
    static int run(Surroundings surroundings, String[] line) {
        try (Interruption interruption = Interruption.listen()) {
            SystemConsole console = new SystemConsole(System.out, System.err,
                    Optional.ofNullable(System.getenv("COLUMNS")).orElse(""), interruption::wanted);
            int code = new Program(surroundings, Program.verbs(surroundings))
                    .run(List.of(line), console);
            if (!console.arrived() && code != ExitCode.STOPPED && !SystemConsole.piped()) {
                console.err().println("The output could not be written in full.");
                return ExitCode.BROKEN;
            }
            return code;
        }
    }
}
