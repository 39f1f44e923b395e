package tramontane.cli.internal;

import java.util.List;
import tramontane.cli.Console;
import tramontane.cli.Verb;

/** A verb that we bring ourselves. */
abstract class OwnVerb implements Verb {

    private final String name;
    private final String summary;

    OwnVerb(String name, String summary) {
        this.name = name;
        this.summary = summary;
    }

    /** What it takes; a new one at each call. */
    abstract Syntax syntax();

    abstract int run(Syntax.Given given, Console console) throws Ending;

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
