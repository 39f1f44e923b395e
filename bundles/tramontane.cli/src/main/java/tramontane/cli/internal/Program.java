package tramontane.cli.internal;

import java.io.PrintWriter;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.CancellationException;
import tramontane.cli.Console;
import tramontane.cli.ExitCode;
import tramontane.cli.Verb;
import tramontane.cli.terminal.Ending;
import tramontane.cli.terminal.Options;
import tramontane.cli.terminal.TerminalVerb;
import tramontane.cli.terminal.VerbGroup;
import tramontane.cli.terminal.Wrapping;
import tramontane.model.Spelling;

/** Finds the verb and runs it; whatever happens ends in one sentence and an exit code. */
final class Program {

    private final Surroundings surroundings;
    private final List<Verb> own;

    Program(Surroundings surroundings, List<Verb> own) {
        this.surroundings = surroundings;
        this.own = List.copyOf(own);
    }

    /** Our own verbs. */
    static List<Verb> verbs(Surroundings surroundings) {
        return List.of(new Solve(surroundings), new Validate(surroundings),
                new Where(surroundings), new Export(surroundings), new Modules(surroundings), new Schema(surroundings));
    }

    /**
     * Runs a command line.
     *
     * @param line    its words
     * @param console where to write to
     * @return the exit code
     */
    int run(List<String> line, Console console) {
        try {
            return dispatch(line, console);
        } catch (Ending ending) {
            console.err().println(ending.getMessage());
            return ending.code();
        } catch (CancellationException stopped) {
            console.err().println("Stopped.");
            return ExitCode.STOPPED;
        } catch (OutOfMemoryError full) {
            console.err().println("The memory was not enough; give the program more with JAVA_TOOL_OPTIONS=-Xmx4g.");
            surroundings.detail(full);
            return ExitCode.BROKEN;
        } catch (Exception | LinkageError | StackOverflowError | AssertionError fault) {
            console.err().println("This is a fault in the program or in an extension: " + sentence(fault)
                    + " Run again with --debug to see where.");
            surroundings.detail(fault);
            return ExitCode.BROKEN;
        } finally {
            console.out().flush();
            console.data().flush();
            console.err().flush();
        }
    }

    private static String sentence(Throwable fault) {
        String message = fault.getMessage() == null ? "" : fault.getMessage().lines().findFirst().orElse("");
        String text = message.isBlank() ? fault.getClass().getSimpleName()
                : fault.getClass().getSimpleName() + ": " + message;
        return text.endsWith(".") ? text : text + ".";
    }

    private int dispatch(List<String> line, Console console) throws Exception {
        if (line.isEmpty()) {
            console.err().println(overview(console.width()));
            return ExitCode.BAD_INPUT;
        }
        String first = line.getFirst();
        List<String> rest = line.subList(1, line.size());
        switch (first) {
            case "--help", "-h" -> console.out().println(overview(console.width()));
            case "--version", "-V" -> console.out().println("tramontane " + surroundings.version());
            case "help" -> help(rest, console);
            default -> {
                return run(first, rest, console);
            }
        }
        return ExitCode.FINE;
    }

    private int run(String name, List<String> arguments, Console console) throws Exception {
        if (name.startsWith("-")) {
            throw Ending.badInput("There is no option " + name + " before the verb. See \"tramontane --help\".");
        }
        Verb verb = find(name);
        if (verb instanceof VerbGroup group && !arguments.isEmpty() && !arguments.getFirst().startsWith("-")) {
            verb = group.verb(arguments.getFirst());
            if (asksForHelp(arguments)) {
                help(verb, console);
                return ExitCode.FINE;
            }
            return verb.run(List.copyOf(arguments.subList(1, arguments.size())), console);
        }
        if (verb instanceof TerminalVerb || verb instanceof VerbGroup ? asksForHelp(arguments) : arguments.equals(List.of("--help"))) {
            help(verb, console);
            return ExitCode.FINE;
        }
        return verb.run(List.copyOf(arguments), console);
    }

    private static boolean asksForHelp(List<String> arguments) {
        return arguments.stream().takeWhile(word -> !word.equals("--")).anyMatch(
                word -> word.equals("--help") || word.equals("-h"));
    }

    private void help(List<String> names, Console console) throws Ending {
        PrintWriter out = console.out();
        if (names.isEmpty()) {
            out.println(overview(console.width()));
            return;
        }
        Verb verb = find(names.getFirst());
        help(verb instanceof VerbGroup group && names.size() > 1 ? group.verb(names.get(1)) : verb, console);
    }

    private static void help(Verb verb, Console console) {
        console.out().println(verb.summary());
        console.out().println();
        console.out().println(verb.help());
    }

    /** Extensions are asked only where the verb is none of ours: solving must not wait for them to wake. */
    private Verb find(String name) throws Ending {
        Optional<Verb> ours = own.stream().filter(verb -> verb.name().equals(name)).findFirst();
        if (ours.isPresent()) {
            return ours.get();
        }
        Map<String, Verb> all = all();
        if (all.containsKey(name)) {
            return all.get(name);
        }
        List<String> names = new ArrayList<>(all.keySet());
        names.add("help");
        throw Ending.badInput("\"" + name + "\" is not a verb" + Spelling.nearest(name, names)
                .map(near -> "; did you mean " + near + "?").orElse("; the verbs are " + String.join(", ", names) + "."));
    }

    private Map<String, Verb> all() {
        Map<String, Verb> all = new LinkedHashMap<>();
        own.forEach(verb -> all.put(verb.name(), verb));
        surroundings.verbs().forEach(verb -> all.putIfAbsent(verb.name(), verb));
        return all;
    }

    private String overview(int width) {
        Map<String, Verb> all = all();
        int longest = all.keySet().stream().mapToInt(String::length).max().orElse(0);
        List<String> lines = new ArrayList<>(List.of(
                "Tramontane computes how air cools a piece of equipment and judges it against its requirements.",
                "",
                "Usage: tramontane VERB ...",
                "",
                "Verbs:"));
        all.forEach((name, verb) -> lines.addAll(Wrapping.hanging("  " + name + " ".repeat(longest - name.length()) + "  ",
                verb.summary(), width)));
        lines.addAll(List.of(
                "  help" + " ".repeat(Math.max(1, longest - 2)) + "Show this help; \"help VERB\" shows the options of a verb.",
                "",
                "Examples:",
                "  tramontane solve quick                        solves a sample and prints the results",
                "  tramontane validate cabinet.tramontane.json   says everything that is wrong with a file",
                "",
                "Options:",
                "  --extensions DIR  Load the bundles in this folder too; may be given several times.",
                "  --debug           Show everything that is logged.",
                "  --version         Show the version.",
                "",
                "Exit codes:",
                "  0  every requirement is met",
                "  1  a requirement is not met, or not judged",
                "  2  the command line or the file has mistakes",
                "  3  a fault in the program or its surroundings",
                "  4  something could not be computed",
                "  130  stopped by Ctrl-C"));
        return String.join("\n", lines);
    }
}
