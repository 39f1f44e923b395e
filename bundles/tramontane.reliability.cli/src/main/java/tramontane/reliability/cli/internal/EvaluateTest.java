package tramontane.reliability.cli.internal;

import java.io.InputStream;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import tramontane.cli.Console;
import tramontane.cli.ExitCode;
import tramontane.cli.terminal.Delivery;
import tramontane.cli.terminal.Ending;
import tramontane.cli.terminal.Messages;
import tramontane.cli.terminal.Options;
import tramontane.cli.terminal.Options.Format;
import tramontane.cli.terminal.Syntax;
import tramontane.cli.terminal.TerminalVerb;
import tramontane.physics.units.QuantityKind;
import tramontane.physics.units.UnitSystem;
import tramontane.physics.units.Units;
import tramontane.reliability.statistics.Acceleration;
import tramontane.reliability.statistics.Bounds;
import tramontane.reliability.statistics.FailureCriteria;
import tramontane.reliability.statistics.Family;
import tramontane.reliability.statistics.LifeData;
import tramontane.reliability.statistics.LifeTable;
import tramontane.reliability.statistics.Weibayes;

/** What a life test shows. */
final class EvaluateTest extends TerminalVerb {

    private static final String DISTRIBUTION = "--distribution";
    private static final String METHOD = "--method";
    private static final String BOUNDS = "--bounds";
    private static final String CONFIDENCE = "--confidence";
    private static final String SHAPE = "--shape";
    private static final String AT = "--at";
    private static final String SPEED = "--speed";
    private static final String TEST_AT = "--test-at";
    private static final String FACTOR = "--factor";
    private static final String ENERGY = "--energy";
    private static final String LAW = "--law";
    private static final String LIFE = "--life";
    private static final String AFTER = "--after";
    private static final String CHART = "--chart";
    private static final String SPEED_FALL = "--speed-fall";
    private static final String CURRENT_RISE = "--current-rise";
    private static final String LEVEL_RISE = "--level-rise";
    private static final String RANKS = "ranks";
    private static final double USUAL_CONFIDENCE = 0.9;
    private static final Pattern LIFE_NAME = Pattern.compile("[LB](\\d{1,2}(?:\\.\\d{1,6})?)");
    private static final List<Question.Named> USUAL = List.of(new Question.Named("L1", 0.01), new Question.Named("L10", 0.1),
            new Question.Named("L50", 0.5), new Question.Named("mean", Double.NaN));

    private final InputStream input;

    EvaluateTest(InputStream input) {
        super("life test", "What a life test shows: distribution, lives and their bounds, life at another temperature.");
        this.input = input;
    }

    @Override
    protected Syntax syntax() {
        return new Syntax(name())
                .parameter("FILE", "The life test as text: a table or bare times; - reads standard input.")
                .option(DISTRIBUTION, "NAME", "weibull (standard), lognormal, exponential, or all: the one with the lowest AIC goes first.")
                .option(METHOD, "METHOD", "likelihood (standard), or ranks: a line through median ranks, without bounds.")
                .option(BOUNDS, "METHOD", "likelihood (standard): by the likelihood ratio; fisher: quicker, too narrow for few failures.")
                .option(CONFIDENCE, "SHARE", "Of bounds; standard 90 %.")
                .option(SHAPE, "NUMBER", "The shape is known, as from earlier tests of like units; needed where no unit failed.")
                .option(AT, "TEMPERATURE", "Life at this air temperature, from tests at two temperatures or more, or by --factor or"
                + " --energy.")
                .option(LAW, "LAW", "With --at: Arrhenius (standard) or \"factor per 10 K\".")
                .option(FACTOR, "NUMBER", "With --at: life falls by this factor with each 10 K more, known beforehand.")
                .option(ENERGY, "ENERGY", "With --at: the activation energy, known beforehand, \"0.4 eV\".")
                .option(SPEED, "SPEED", "With --at: at this speed, where units were tested at different ones.")
                .option(TEST_AT, "TEMPERATURE", "The units were tested at this temperature, where the file does not say.")
                .options(LIFE, "NAME", "L10 is the time by which 10 % have failed; mean is the mean life. May be given several times;"
                + " standard"
                        + " L1, L10, L50 and mean.")
                .options(AFTER, "TIME", "Which share survives this time; may be given several times.")
                .option(SPEED_FALL, "SHARE", "Of readings: a unit has failed whose speed fell by more than this; standard 15 %.")
                .option(CURRENT_RISE, "SHARE", "Of readings: or whose current rose by more than this; standard 15 %.")
                .option(LEVEL_RISE, "LEVEL", "Of readings: or whose sound rose by more than this; standard 3 dB.")
                .option(CHART, "FILE", "Write a probability plot to this file, as SVG.")
                .option(Options.FORMAT, "FORMAT", "text (standard), json or csv.")
                .footer("A table has a heading row: time [h], or from [h] and to [h]; state (failed,",
                        "survived, suspended, F, S, 1, 0); count; unit; temperature [°C]; speed [rpm].",
                        "Bare times: \"54 187 216 500+ 500+ h\", a + or S behind those that survived.",
                        "Readings: unit, time [h] and speed [rpm], current [A] or level [dB], several rows",
                        "to a unit, each against the first; standard limits in the manner of IPC-9591,",
                        "from memory. A unit that stands has failed in any case.",
                        "",
                        "Exit codes:",
                        "  0  evaluated",
                        "  2  the command line or the file has mistakes",
                        "  3  a fault in the program or its surroundings",
                        "  4  the test shows no life; the message says why",
                        "",
                        "Examples:",
                        "  tramontane life test test.csv --chart test.svg",
                        "  echo \"54 187 216 500+ 500+ h\" | tramontane life test -",
                        "  tramontane life test hot.csv --at \"40 °C\" --after \"5 years\"",
                        "  tramontane life test passed.csv --shape 3 --test-at \"70 °C\" --at \"40 °C\"",
                        "                       --factor 1.5");
    }

    @Override
    protected int run(Syntax.Given given, Console console) throws Ending {
        Format format = Options.format(given, Format.TEXT, Format.JSON, Format.CSV);
        Question asked = question(given);
        Optional<Path> chart = given.option(CHART).isPresent() ? Optional.of(Inputs.target(CHART, given.option(CHART).get()))
                : Optional.empty();
        String name = given.parameter(0);
        String shown = name.equals("-") ? "standard input" : name;
        LifeTable.Read read = LifeTable.read(shown, Inputs.text(name, input));
        if (!read.problems().isEmpty()) {
            read.problems().forEach(problem -> console.err().println(console.shown(problem.sentence() + ".")));
            if (read.table().isEmpty()) {
                console.err().println(Messages.count(read.problems()) + "; nothing was evaluated.");
                return ExitCode.BAD_INPUT;
            }
        }
        LifeTable table = read.table().orElseThrow();
        Question question = asked.in(table.timeUnit());
        List<LifeTable.Group> groups = table.judged(question.criteria());
        Evaluated evaluated = Evaluated.of(groups, question);
        Optional<Evaluated.Answer> silent = evaluated.answers().stream().filter(each -> each.estimates().isEmpty() && each.known()
                .isEmpty())
                .findFirst();
        if (silent.isPresent() && evaluated.answers().stream().allMatch(each -> each.estimates().isEmpty() && each.known().isEmpty())) {
            throw Ending.notComputed(why(shown, silent.get(), question));
        }
        if (chart.isPresent()) {
            Delivery.write(chart.get(), TestChart.svg(shown, evaluated));
        }
        switch (format) {
            case JSON -> console.data().print(TestJson.of(shown, evaluated));
            case CSV -> console.data().print(TestJson.csv(evaluated));
            case TEXT -> new TestText(evaluated, table, console).print();
        }
        chart.ifPresent(file -> console.err().println("The chart was written to " + file + "."));
        return silent.isPresent() ? ExitCode.NOT_COMPUTED : ExitCode.FINE;
    }

    private static String why(String name, Evaluated.Answer answer, Question question) {
        LifeData data = answer.data();
        if (data.failures() > 0) {
            return name + ": no life can be given: " + answer.without().getFirst().sentence() + ". With a known shape, " + SHAPE
                    + " NUMBER, less is needed.";
        }
        return name + ": no unit failed, so the test alone gives no life. Where the shape is known, it shows one: "
                + shown(data, 1, question) + " with " + SHAPE + " 1, " + shown(data, 3, question) + " with " + SHAPE + " 3.";
    }

    private static String shown(LifeData data, double shape, Question question) {
        return "L10 of at least " + question.time(Weibayes.cautious(data, shape).demonstratedLife(0.1, question.confidence())) + " at "
                + Cells.stated(question.confidence());
    }

    private static Question question(Syntax.Given given) throws Ending {
        String distribution = Amounts.word(given, DISTRIBUTION, "weibull", "lognormal", "exponential", "all");
        List<Family> families = switch (distribution) {
            case "lognormal" -> List.of(Family.LOGNORMAL);
            case "exponential" -> List.of(Family.EXPONENTIAL);
            case "all" -> List.of(Family.WEIBULL, Family.LOGNORMAL, Family.EXPONENTIAL);
            default -> List.of(Family.WEIBULL);
        };
        boolean ranks = Amounts.word(given, METHOD, "likelihood", RANKS).equals(RANKS);
        Bounds.Method method = Amounts.word(given, BOUNDS, "likelihood", "fisher").equals("fisher") ? Bounds.Method.FISHER
                : Bounds.Method.LIKELIHOOD_RATIO;
        Optional<Double> shape = Amounts.shape(given, SHAPE);
        if (shape.isPresent() && (families.size() > 1 || families.contains(Family.EXPONENTIAL))) {
            throw Ending.badInput(SHAPE + " belongs to one distribution, not to \"" + distribution + "\"; give " + DISTRIBUTION
                    + " weibull or lognormal.");
        }
        if (ranks && (shape.isPresent() || given.option(BOUNDS).isPresent())) {
            throw Ending.badInput(METHOD + " ranks finds the shape and has no bounds; leave out " + (shape.isPresent() ? SHAPE : BOUNDS)
                    + ", or take " + METHOD + " likelihood.");
        }
        double confidence = Amounts.share(given, CONFIDENCE, "90 %").orElse(USUAL_CONFIDENCE);
        List<Double> times = Amounts.times(given, AFTER);
        Optional<Double> testedAt = Amounts.positive(given, TEST_AT, QuantityKind.TEMPERATURE);
        return new Question(families, ranks, method, confidence, optional(shape), lives(given), times, use(given), optional(testedAt),
                criteria(given), Units.display(QuantityKind.TIME, UnitSystem.METRIC));
    }

    private static List<Question.Named> lives(Syntax.Given given) throws Ending {
        List<Question.Named> lives = new ArrayList<>();
        for (String text : given.options(LIFE)) {
            String name = text.strip();
            Matcher matcher = LIFE_NAME.matcher(name);
            double percent = matcher.matches() ? Double.parseDouble(matcher.group(1)) : 0;
            if (name.equalsIgnoreCase("mean") || name.equalsIgnoreCase("MTTF")) {
                lives.add(USUAL.getLast());
            } else if (percent > 0) {
                lives.add(new Question.Named("L" + matcher.group(1), percent / 100));
            } else {
                throw Ending.badInput(LIFE + " \"" + text + "\" is no life; write L10 for the time by which 10 % have failed, or mean.");
            }
        }
        return lives.isEmpty() ? USUAL : lives.stream().distinct().toList();
    }

    private static Optional<Question.Use> use(Syntax.Given given) throws Ending {
        Optional<Double> at = Amounts.positive(given, AT, QuantityKind.TEMPERATURE);
        Optional<Double> speed = Amounts.positive(given, SPEED, QuantityKind.ROTATIONAL_SPEED);
        Optional<Double> factor = Amounts.between(given, FACTOR, 1, 10);
        Optional<Double> energy = Amounts.positive(given, ENERGY, QuantityKind.ACTIVATION_ENERGY);
        if (at.isEmpty()) {
            for (String option : List.of(SPEED, FACTOR, ENERGY, LAW)) {
                if (given.option(option).isPresent()) {
                    throw Ending.badInput(option + " belongs to " + AT + ", the temperature at which life is asked for; it is missing.");
                }
            }
            return Optional.empty();
        }
        if (factor.isPresent() && energy.isPresent()) {
            throw Ending.badInput(FACTOR + " and " + ENERGY + " say the same in two ways; give one.");
        }
        boolean ten = Amounts.word(given, LAW, "Arrhenius", "factor per 10 K").startsWith("factor");
        if (given.option(LAW).isPresent() && (ten ? energy : factor).isPresent()) {
            throw Ending.badInput(LAW + " \"" + given.option(LAW).get() + "\" contradicts " + (ten ? ENERGY : FACTOR) + "; leave one out.");
        }
        Acceleration.Law law = energy.isEmpty() && (factor.isPresent() || ten) ? Acceleration.Law.PER_TEN_KELVIN
                : Acceleration.Law.ARRHENIUS;
        return Optional.of(new Question.Use(at.get(), optional(speed), law, optional(factor.or(() -> energy))));
    }

    private static FailureCriteria criteria(Syntax.Given given) throws Ending {
        FailureCriteria usual = FailureCriteria.DEFAULT;
        double level = Amounts.positive(given, LEVEL_RISE, QuantityKind.LEVEL).orElse(usual.levelRise());
        return new FailureCriteria(Amounts.share(given, SPEED_FALL, "15 %").orElse(usual.speedFall()),
                Amounts.positive(given, CURRENT_RISE, QuantityKind.FRACTION).orElse(usual.currentRise()), level);
    }

    private static OptionalDouble optional(Optional<Double> value) {
        return value.map(OptionalDouble::of).orElse(OptionalDouble.empty());
    }
}
