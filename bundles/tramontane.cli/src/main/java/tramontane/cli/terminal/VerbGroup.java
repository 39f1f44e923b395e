package tramontane.cli.terminal;

import java.util.ArrayList;
import java.util.List;
import tramontane.cli.Console;
import tramontane.cli.ExitCode;
import tramontane.cli.Verb;
import tramontane.model.Spelling;

/** A verb with verbs of its own: {@code catalogue list}, {@code catalogue show}. Extend it and hand it these. */
public class VerbGroup implements Verb {

    private final String name;
    private final String summary;
    private final List<TerminalVerb> verbs;
    private final List<String> footer;

    /**
     * A group.
     *
     * @param name    the first word
     * @param summary what it is for, one short sentence
     * @param verbs   its verbs, each named by both words: {@code catalogue list}
     * @param footer  lines at the end of its help
     */
    protected VerbGroup(String name, String summary, List<TerminalVerb> verbs, String... footer) {
        this.name = name;
        this.summary = summary;
        this.verbs = List.copyOf(verbs);
        this.footer = List.of(footer);
    }

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
        int longest = verbs.stream().mapToInt(verb -> second(verb).length()).max().orElse(0);
        List<String> lines = new ArrayList<>(List.of("Usage: tramontane " + name + " VERB ...", "", "Verbs:"));
        verbs.forEach(verb -> lines.addAll(Wrapping.hanging("  " + second(verb) + " ".repeat(longest - second(verb).length() + 2),
                verb.summary(), 80)));
        lines.addAll(List.of("", "\"tramontane help " + name + " VERB\" shows the options of a verb."));
        if (!footer.isEmpty()) {
            lines.add("");
            lines.addAll(footer);
        }
        return String.join("\n", lines);
    }

    private String second(Verb verb) {
        return verb.name().substring(name.length() + 1);
    }

    /**
     * One of its verbs.
     *
     * @param word the second word
     * @throws Ending where there is none
     */
    public final TerminalVerb verb(String word) throws Ending {
        List<String> known = verbs.stream().map(this::second).toList();
        return verbs.stream().filter(verb -> second(verb).equals(word)).findFirst().orElseThrow(() -> Ending.badInput(name + ": \""
                + word + "\" is not one of its verbs" + Spelling.nearest(word, known).map(near -> "; did you mean " + near + "?")
                .orElse("; they are " + String.join(", ", known) + ".")));
    }

    @Override
    public final int run(List<String> arguments, Console console) throws Ending {
        if (arguments.isEmpty()) {
            console.err().println(help());
            return ExitCode.BAD_INPUT;
        }
        return verb(arguments.getFirst()).run(arguments.subList(1, arguments.size()), console);
    }
}
