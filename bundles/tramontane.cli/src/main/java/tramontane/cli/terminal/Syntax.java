package tramontane.cli.terminal;

import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;
import picocli.CommandLine;
import picocli.CommandLine.Help.Ansi;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.OptionSpec;
import picocli.CommandLine.Model.PositionalParamSpec;
import picocli.CommandLine.ParseResult;
import tramontane.model.Spelling;

/**
 * The parameters and options of a verb. All are read as texts; what they mean is for the verb to say, {@link Options} helps.
 *
 * <pre>{@code
 * new Syntax("count")
 *         .parameter("FILE", "A design file, or the name of a sample.")
 *         .flag("--quiet", "Print no cautions.")
 *         .footer("Example:", "  tramontane count quick");
 * }</pre>
 */
public final class Syntax {

    /** How a number below zero begins. */
    private static final Pattern NUMBER = Pattern.compile("-\\.?[0-9]");
    /** In front of what must not be taken for an option; no argument can hold it. */
    private static final String NO_OPTION = "\0";

    private final CommandSpec spec;
    private int positions;

    /**
     * Nothing so far.
     *
     * @param verb as it is called: {@code count}, {@code catalogue list}
     */
    public Syntax(String verb) {
        spec = CommandSpec.create().name("tramontane " + verb);
        spec.usageMessage().sortOptions(false).sortSynopsis(false).abbreviateSynopsis(false).parameterListHeading("%n")
                .optionListHeading("%n").footerHeading("%n");
    }

    /** The next parameter that has to be given. */
    public Syntax parameter(String label, String help) {
        spec.addPositional(PositionalParamSpec.builder().paramLabel(label).index(Integer.toString(positions++))
                .arity("1").type(String.class).required(true).description(plain(help)).build());
        return this;
    }

    /** A parameter that may be left out. */
    public Syntax optionalParameter(String label, String help) {
        spec.addPositional(PositionalParamSpec.builder().paramLabel(label).index(Integer.toString(positions++))
                .arity("0..1").type(String.class).required(false).description(plain(help)).build());
        return this;
    }

    /** The last parameter, which may be given as often as wanted, or left out. */
    public Syntax furtherParameters(String label, String help) {
        spec.addPositional(PositionalParamSpec.builder().paramLabel(label).index(positions++ + "..*").arity("0..*").type(List.class)
                .auxiliaryTypes(String.class).required(false).description(plain(help)).build());
        return this;
    }

    /** An option with a value. */
    public Syntax option(String name, String label, String help) {
        spec.addOption(OptionSpec.builder(name).paramLabel(label).arity("1").type(String.class).description(plain(help))
                .build());
        return this;
    }

    /** An option that may be given several times. */
    public Syntax options(String name, String label, String help) {
        spec.addOption(OptionSpec.builder(name).paramLabel(label).arity("1").type(List.class).auxiliaryTypes(String.class)
                .description(plain(help)).build());
        return this;
    }

    /** An option without a value. */
    public Syntax flag(String name, String help) {
        spec.addOption(OptionSpec.builder(name).arity("0").type(boolean.class).description(plain(help)).build());
        return this;
    }

    /** Lines at the end of the help. */
    public Syntax footer(String... lines) {
        String[] plain = new String[lines.length];
        for (int i = 0; i < lines.length; i++) {
            plain[i] = plain(lines[i]);
        }
        spec.usageMessage().footer(plain);
        return this;
    }

    /** picocli takes descriptions for formats. */
    private static String plain(String text) {
        return text.replace("%", "%%");
    }

    /** The help, some lines. */
    public String help() {
        flag("--help", "Show this help.");
        CommandLine line = line();
        line.setUsageHelpLongOptionsMaxWidth(24);
        return line.getUsageMessage(Ansi.OFF).stripTrailing();
    }

    private CommandLine line() {
        CommandLine line = new CommandLine(spec);
        line.setExpandAtFiles(false);
        line.setInterpolateVariables(false);
        return line;
    }

    /**
     * Takes arguments apart.
     *
     * @throws Ending that names the first mistake, and what was meant perhaps
     */
    public Given parse(List<String> arguments) throws Ending {
        try {
            return new Given(line().parseArgs(arguments.stream().map(Syntax::marked).toArray(String[]::new)));
        } catch (CommandLine.UnmatchedArgumentException unmatched) {
            throw refuse(unmatched(unmatched));
        } catch (CommandLine.MissingParameterException missing) {
            throw refuse(missing(missing));
        } catch (CommandLine.OverwrittenOptionException twice) {
            throw refuse(((OptionSpec) twice.getOverwritten()).longestName() + " is given twice");
        } catch (CommandLine.ParameterException other) {
            throw refuse(unmarked(other.getMessage()));
        }
    }

    /** A number below zero is no option, though it begins like one. */
    private static String marked(String argument) {
        return NUMBER.matcher(argument).lookingAt() ? NO_OPTION + argument : argument;
    }

    private static String unmarked(String argument) {
        return argument.replace(NO_OPTION, "");
    }

    private String unmatched(CommandLine.UnmatchedArgumentException unmatched) {
        String first = unmarked(unmatched.getUnmatched().getFirst());
        if (!first.startsWith("-") || NUMBER.matcher(first).lookingAt()) {
            return "\"" + first + "\" is an argument too many";
        }
        String name = first.split("=", 2)[0];
        List<String> known = spec.options().stream().map(OptionSpec::longestName).toList();
        return "there is no option " + name + Spelling.nearest(name, known).map(near -> "; did you mean " + near + "?").orElse("");
    }

    private String missing(CommandLine.MissingParameterException missing) {
        CommandLine.Model.ArgSpec first = missing.getMissing().getFirst();
        if (first.isOption()) {
            return ((OptionSpec) first).longestName() + " needs a value, " + first.paramLabel();
        }
        // picocli names the first only
        int from = ((PositionalParamSpec) first).index().min();
        List<String> labels = spec.positionalParameters().stream()
                .filter(each -> each.required() && each.index().min() >= from).map(each -> each.paramLabel()).toList();
        return String.join(" and ", labels) + (labels.size() == 1 ? " is missing" : " are missing");
    }

    private Ending refuse(String reason) {
        String verb = spec.name().substring("tramontane ".length());
        String end = reason.endsWith("?") || reason.endsWith(".") ? "" : ".";
        return Ending.badInput(verb + ": " + reason + end + " See \"tramontane help " + verb + "\".");
    }

    /** What was given. */
    public static final class Given {

        private final ParseResult result;

        private Given(ParseResult result) {
            this.result = result;
        }

        private static List<String> unmarked(List<String> values) {
            return values.stream().map(Syntax::unmarked).toList();
        }

        private static String unmarked(String value) {
            return Syntax.unmarked(value);
        }

        /** What was given for a parameter, counted from 0; empty where it was left out. */
        public String parameter(int index) {
            return unmarked(result.matchedPositionalValue(index, ""));
        }

        /** What was given for the parameters from an index on, for {@link Syntax#furtherParameters}. */
        public List<String> furtherParameters(int index) {
            return result.matchedPositionals().stream().filter(each -> each.index().min() == index).findFirst()
                    .map(each -> unmarked(each.<List<String>>getValue())).orElse(List.of());
        }

        /** The value of an option. */
        public Optional<String> option(String name) {
            return Optional.ofNullable(result.matchedOptionValue(name, (String) null)).map(Syntax::unmarked);
        }

        /** All values of an option that may be given several times, in their order. */
        public List<String> options(String name) {
            return unmarked(result.matchedOptionValue(name, List.<String>of()));
        }

        /** Whether an option without a value was given. */
        public boolean flag(String name) {
            return result.hasMatchedOption(name);
        }
    }
}
