package tramontane.selection.cli.internal;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.osgi.framework.BundleContext;
import org.osgi.service.component.annotations.Activate;
import org.osgi.service.component.annotations.Component;
import org.osgi.service.component.annotations.Reference;
import tramontane.analysis.Cancelled;
import tramontane.analysis.Engine;
import tramontane.analysis.FigureKind;
import tramontane.analysis.Sentence;
import tramontane.analysis.Severity;
import tramontane.analysis.Table;
import tramontane.catalogue.Catalogue;
import tramontane.catalogue.PartFilter;
import tramontane.cli.Console;
import tramontane.cli.ExitCode;
import tramontane.cli.Verb;
import tramontane.cli.terminal.Delivery;
import tramontane.cli.terminal.DesignSource;
import tramontane.cli.terminal.Ending;
import tramontane.cli.terminal.Installation;
import tramontane.cli.terminal.Messages;
import tramontane.cli.terminal.Options.Format;
import tramontane.cli.terminal.Options;
import tramontane.cli.terminal.QuietWatch;
import tramontane.cli.terminal.Syntax;
import tramontane.cli.terminal.TerminalVerb;
import tramontane.model.AirMover;
import tramontane.model.Condition;
import tramontane.model.Design;
import tramontane.model.FormReader;
import tramontane.model.Passage;
import tramontane.model.Problem;
import tramontane.model.Quantity;
import tramontane.model.Spelling;
import tramontane.model.Value;
import tramontane.model.file.DesignFile;
import tramontane.physics.units.QuantityKind;
import tramontane.physics.units.UnitException;
import tramontane.physics.units.UnitSystem;
import tramontane.physics.units.Units;
import tramontane.selection.Candidate;
import tramontane.selection.Criterion;
import tramontane.selection.Duty;
import tramontane.selection.Merit;
import tramontane.selection.Placement;
import tramontane.selection.Rejected;
import tramontane.selection.Selection;
import tramontane.selection.Selector;
import tramontane.selection.Task;
import tramontane.selection.Wish;
import tramontane.selection.WishSection;

/** Chooses the movers of a bank out of a catalogue. */
@Component(service = Verb.class)
public final class Choose extends TerminalVerb {

    private static final String FLOW = "--flow";
    private static final String PRESSURE = "--pressure";
    private static final String TEMPERATURE = "--temperature";
    private static final String ALTITUDE = "--altitude";
    private static final String BANK = "--bank";
    private static final String WEIGHT = "--weight";
    private static final String COMPARE = "--compare";
    private static final String PUT = "--put";
    private static final String MISS = "miss:";
    private static final String OUTPUT = "--output";
    private static final String IN_PLACE = "--in-place";
    private static final String REPLACE = "--replace";

    /** An id that no part of a catalogue has. */
    private static final String ANY_PART = "part of the catalogue";

    private final CatalogueFolders folders;
    private final Optional<Path> samples;
    private final Engine engine;
    private final Selector selector;

    /** Made by Declarative Services. */
    @Activate
    public Choose(BundleContext context, @Reference Engine engine, @Reference Selector selector) {
        this(CatalogueFolders.of(context), Installation.samples(context), engine, selector);
    }

    Choose(CatalogueFolders folders, Optional<Path> samples, Engine engine, Selector selector) {
        super("choose", "Choose the movers of a bank out of a catalogue.");
        this.folders = folders;
        this.samples = samples;
        this.engine = engine;
        this.selector = selector;
    }

    @Override
    protected Syntax syntax() {
        Syntax syntax = new Syntax(name())
                .optionalParameter("FILE", "A design file, or the name of a sample; not with --flow.")
                .option(FLOW, "FLOW", "Without a FILE: the flow that is needed at the inlet of the movers, 0.08m3/s.")
                .option(PRESSURE, "PRESSURE", "Without a FILE: the fan static pressure that is needed at that flow, 60Pa.")
                .option(TEMPERATURE, "TEMPERATURE", "Without a FILE: of the air outside; standard 20°C.")
                .option(ALTITUDE, "HEIGHT", "Without a FILE: above sea level; standard 0m.")
                .option(BANK, "ID", "The bank to choose for; may be left out where the design has one.");
        CatalogueFolders.folders(syntax);
        CatalogueFolders.filter(syntax).flag(CatalogueFolders.ENDED, "Look also at parts that are not to be had any more.")
                .option(Opening.OPTION, "SIZE", "The opening that the bank may take up, 170x90mm, or with the depth along the flow 170x90x60mm.")
                .option("--side-by-side", "NUMBER", "How many movers may stand side by side.")
                .option("--in-series", "NUMBER", "How many may stand one behind another.")
                .option("--movers", "NUMBER", "How many there may be in all.")
                .options(WEIGHT, "NAME=NUMBER", "How much a criterion counts: power, noise, life, cost, size, mass, or the id of a figure. "
                        + "May be given several times; takes the place of all weights of the design. All six alike where none is given.")
                .option("--lowest", "SHARE", "The lowest speed setting that is looked at; standard one fifth.")
                .option("--top", "NUMBER", "How many candidates are ranked; standard 20.")
                .option("--misses", "NUMBER", "How many near misses are shown; standard 5.")
                .flag("--certain", "All that is required must be judged, and hold at the edge of the bounds, too: slower.")
                .flag("--exactly", "Solve every candidate exactly, whatever the reduced design says of it: slow.")
                .option(COMPARE, "RANKS", "Set these candidates side by side: 1,3,5.")
                .flag("--rejected", "List everything that fails, each with its reason, parts that the filter leaves out as well.")
                .option(PUT, "RANK", "Put this candidate into the design and write it to --output FILE or --in-place; miss:1 puts the nearest miss, "
                        + "which does not meet everything.")
                .option(OUTPUT, "FILE", "With --put: the file to write the design to.")
                .flag(IN_PLACE, "With --put: write into the design file itself.")
                .flag(REPLACE, "With --output: write over a file that is there already.")
                .option(Options.FORMAT, "FORMAT", "text (standard), json or csv.")
                .option(Options.UNITS, "UNITS", "metric (standard for text), us, or si (standard for csv); json is always SI.")
                .option(Options.MAX_SIZE, "SIZE", "Refuse design files larger than this; standard 64MB.")
                .flag("--quiet", "Print no progress, no cautions and no confirmations.");
        return syntax.footer("What section \"selection\" of the bank says holds where no option is given.",
                "A candidate is a part in an arrangement at the lowest speed setting with which every",
                "requirement holds in every condition.",
                "",
                Merit.MEANING,
                "",
                "Exit codes:",
                "  0  at least one candidate meets everything",
                "  1  none does",
                "  2  the command line, the design or a filter has mistakes; nothing was chosen",
                "  3  a fault in the program or its surroundings",
                "  4  the choice could not be computed",
                "  130  stopped by Ctrl-C",
                "",
                "Examples:",
                "  tramontane choose quick",
                "  tramontane choose --flow 0.08m3/s --pressure 60Pa --opening 250x130x80mm",
                "  tramontane choose cabinet --bank fans --where \"drive.supply.voltage = 48 V\" --weight power=2 --weight cost=1",
                "  tramontane choose quick --put 1 --output chosen.tramontane.json",
                "  tramontane choose quick --put miss:1 --output nearly.tramontane.json");
    }

    /** What the command line says of the answer. */
    private record Wanted(Format format, UnitSystem units, boolean all, List<Integer> compared, Optional<Putting> put, Optional<Path> target,
            boolean quiet) {
    }

    /** Which one is put into the design: a ranked one, or one of the nearest misses. */
    private record Putting(boolean miss, int number) {
    }

    /** A design and what is to be said of its file. */
    private record Asked(String file, Design design, List<Problem> problems, List<String> sentences, Optional<Path> path) {
    }

    @Override
    protected int run(Syntax.Given given, Console console) throws Ending {
        Format format = Options.format(given, Format.TEXT, Format.JSON, Format.CSV);
        UnitSystem units = Options.units(given, format == Format.CSV ? UnitSystem.SI : UnitSystem.METRIC);
        boolean quiet = given.flag("--quiet");
        Catalogue catalogue = folders.read(given, engine);
        if (catalogue.size() == 0) {
            tellProblems(catalogue, console);
            throw Ending.badInput("The catalogue holds no part, so there is nothing to choose from.");
        }
        Optional<Asked> read = asked(given, catalogue, format, console);
        if (read.isEmpty()) {
            return ExitCode.BAD_INPUT;
        }
        Asked asked = read.get();
        String bank = bank(given, asked.design());
        Wanted wanted = new Wanted(format, units, given.flag("--rejected"), ranks(given), putting(given), target(given, asked), quiet);
        Wish wish = wish(given, WishSection.of(asked.design(), bank));
        if (wish.weighed().values().stream().noneMatch(weight -> weight > 0)) {
            throw Ending.badInput((given.options(WEIGHT).isEmpty() ? "Section selection of bank " + bank : WEIGHT) + ": no criterion has a weight above 0, so there "
                    + "is nothing to rank by. The weights given take the place of all others; give at least one, for example " + WEIGHT + " power=1.");
        }
        List<CatalogueFolders.Written> filters = new ArrayList<>(CatalogueFolders.written(given));
        wish.where().ifPresent(where -> filters.addFirst(new CatalogueFolders.Written("section selection of bank " + bank + ", where", where)));
        PartFilter filter = CatalogueFolders.filter(filters, given.flag(CatalogueFolders.ENDED), catalogue);
        int[] numbers = catalogue.select(filter);
        if (numbers.length == 0) {
            throw Ending.badInput("None of " + Messages.count(catalogue.size(), "part") + " of the catalogue passes the filter, so there is nothing to choose "
                    + "from. The filter is: " + filter);
        }
        if (!quiet) {
            tellProblems(catalogue, console);
        }
        int top = number(given, "--top", 1, 1000).orElse(20);
        int least = Math.max(wanted.put().filter(put -> !put.miss()).map(Putting::number).orElse(0), wanted.compared().stream().max(Integer::compare).orElse(0));
        int misses = Math.max(number(given, "--misses", 0, 1000).orElse(5), wanted.put().filter(Putting::miss).map(Putting::number).orElse(0));
        Task task = new Task(asked.design(), bank, catalogue.parts(numbers), wish.space(), wish.weighed(), wish.lowestSetting(),
                Math.max(top, least), misses, given.flag("--certain"), given.flag("--exactly"));
        Selection selection = selector.choose(task, new Progress(quiet ? new QuietWatch(console.watch()) : console.watch()));
        if (selection.cancelled() || console.watch().cancelled()) {
            throw new Cancelled();
        }
        Selection told = wanted.all() ? selection.withRejected(Stream.concat(leftOut(catalogue, filter), selection.rejected().stream()).toList()) : selection;
        Choice choice = new Choice(asked.file(), task, told, catalogue.size(), given.flag(CatalogueFolders.ENDED),
                asked.path().filter(path -> !isSample(path)).isPresent(), asked.problems(), labels());
        print(choice, wanted, asked.sentences(), console);
        if (wanted.put().isPresent()) {
            put(choice, wanted.put().get(), wanted, console);
        }
        if (selection.findings().stream().anyMatch(finding -> finding.severity() == Severity.ERROR)) {
            return ExitCode.NOT_COMPUTED;
        }
        return selection.ranked().isEmpty() ? ExitCode.NOT_MET : ExitCode.FINE;
    }

    /** The parts that the filter leaves out, each with its reason. */
    private static Stream<Rejected> leftOut(Catalogue catalogue, PartFilter filter) {
        return IntStream.range(0, catalogue.size()).boxed().flatMap(part -> filter.why(part, catalogue).map(why -> new Rejected(catalogue.id(part),
                Optional.empty(), Sentence.of("the filter leaves it out: " + why), OptionalDouble.empty(), true, Sentence.EMPTY)).stream());
    }

    /** The design of a file, or of a duty; empty where its mistakes have been told. */
    private Optional<Asked> asked(Syntax.Given given, Catalogue catalogue, Format format, Console console) throws Ending {
        boolean duty = given.option(FLOW).isPresent() || given.option(PRESSURE).isPresent();
        String file = given.parameter(0);
        if (file.isEmpty() != duty) {
            throw Ending.badInput(duty ? "choose: a FILE says itself what flow is needed; give FILE, or " + FLOW + " and " + PRESSURE + "."
                    : "choose: FILE is missing; name a design, or give " + FLOW + " and " + PRESSURE + ". See \"tramontane help choose\".");
        }
        if (duty) {
            if (given.option(FLOW).isEmpty() || given.option(PRESSURE).isEmpty()) {
                throw Ending.badInput(FLOW + " and " + PRESSURE + " belong together; " + (given.option(FLOW).isEmpty() ? FLOW : PRESSURE) + " is missing.");
            }
            Design design = Duty.design(above(given, FLOW, QuantityKind.FLOW), above(given, PRESSURE, QuantityKind.PRESSURE), condition(given));
            return Optional.of(new Asked("", design, List.of(), List.of(), Optional.empty()));
        }
        for (String option : List.of(TEMPERATURE, ALTITUDE)) {
            if (given.option(option).isPresent()) {
                throw Ending.badInput(option + " goes with " + FLOW + " and " + PRESSURE + "; the conditions of a design stand in its file.");
            }
        }
        DesignSource source = DesignSource.open(file, samples, Options.maxSize(given), design -> check(design, given, catalogue));
        if (!source.sound()) {
            source.print(console.err());
            console.err().println(Messages.count(source.problems()) + "; nothing was chosen and the file is untouched.");
            if (format == Format.JSON) {
                console.data().print(ChoiceJson.of(source.design().map(Design::name).orElse(""), source.problems()));
            }
            return Optional.empty();
        }
        if (!given.flag("--quiet") && format != Format.TEXT) {
            source.print(console.err());
        }
        return Optional.of(new Asked(source.name(), source.design().orElseThrow(), source.problems(),
                given.flag("--quiet") ? List.of() : source.sentences(), Optional.of(source.path())));
    }

    /** What is wrong with a design whose bank need not hold a part yet: it is checked with any part in it. */
    private List<Problem> check(Design design, Syntax.Given given, Catalogue catalogue) {
        List<String> banks = design.airPath().banks().stream().map(Passage::id).toList();
        String bank = given.option(BANK).orElse(banks.size() == 1 ? banks.getFirst() : "");
        if (!banks.contains(bank)) {
            return engine.check(design);
        }
        AirMover part = catalogue.part(0).withId(ANY_PART);
        Design with = Placement.roomy(design, bank, part);
        return engine.check(with).stream().filter(problem -> !Placement.isOfPart(problem, with, bank)).toList();
    }

    private static Condition condition(Syntax.Given given) throws Ending {
        Optional<Quantity> temperature = within(given, TEMPERATURE, "outsideTemperature", QuantityKind.TEMPERATURE);
        Optional<Quantity> altitude = within(given, ALTITUDE, "altitude", QuantityKind.LENGTH);
        Condition nominal = Condition.NOMINAL;
        return new Condition(nominal.id(), temperature, altitude, nominal.pressure(), nominal.humidity(), nominal.heatFactor(), nominal.heatFactors(),
                nominal.clogging(), nominal.supplyVoltage(), nominal.supplyFrequency(), nominal.speed(), nominal.failed(), nominal.more());
    }

    /** A quantity of a condition, within the range that its form has for it. */
    private static Optional<Quantity> within(Syntax.Given given, String option, String field, QuantityKind kind) throws Ending {
        Optional<Quantity> quantity = quantity(given, option, kind);
        if (quantity.isPresent()) {
            List<Problem> problems = new ArrayList<>();
            FormReader.read(Condition.FORM, Value.Tree.EMPTY.with("id", new Value.Text("nominal"))
                    .with(field, quantity.get().written()), "", problems);
            Optional<Problem> wrong = problems.stream().filter(Problem::isError).findFirst();
            if (wrong.isPresent()) {
                throw Ending.badInput(option + " " + wrong.get().message() + ".");
            }
        }
        return quantity;
    }

    private static Quantity above(Syntax.Given given, String option, QuantityKind kind) throws Ending {
        Quantity quantity = quantity(given, option, kind).orElseThrow();
        if (!(quantity.si() > 0)) {
            throw Ending.badInput(option + " \"" + given.option(option).orElse("") + "\" must be above zero.");
        }
        return quantity;
    }

    private static Optional<Quantity> quantity(Syntax.Given given, String option, QuantityKind kind) throws Ending {
        Optional<String> text = given.option(option);
        if (text.isEmpty()) {
            return Optional.empty();
        }
        try {
            return Optional.of(Quantity.of(Units.parse(text.get(), kind), spaced(text.get())));
        } catch (UnitException wrong) {
            throw Ending.badInput(option + " " + wrong.getMessage() + ".");
        }
    }

    /** With a space before the unit, as it is to stand in a file. */
    private static String spaced(String text) {
        String plain = text.strip();
        return plain.replaceFirst("^([+-]?[0-9.,]+(?:[eE][+-]?[0-9]+)?)(?=[^0-9.,\\s])", "$1 ");
    }

    private static String bank(Syntax.Given given, Design design) throws Ending {
        List<String> banks = design.airPath().banks().stream().map(Passage::id).toList();
        Optional<String> named = given.option(BANK);
        if (named.isPresent()) {
            if (!banks.contains(named.get())) {
                throw Ending.badInput(BANK + " " + named.get() + ": the design has no such bank" + Spelling.nearest(named.get(), banks)
                        .map(near -> "; did you mean " + near + "?").orElse(banks.isEmpty() ? "; it has none at all." : "; it has " + String.join(", ", banks) + "."));
            }
            return named.get();
        }
        if (banks.size() != 1) {
            throw Ending.badInput(banks.isEmpty() ? "The design has no bank to choose movers for; add a passage of kind \"bank\"."
                    : "The design has " + banks.size() + " banks; name one with " + BANK + ": " + String.join(", ", banks) + ".");
        }
        return banks.getFirst();
    }

    /** The wish of the design with what the options say. */
    private Wish wish(Syntax.Given given, Wish wish) throws Ending {
        Optional<Opening> opening = given.option(Opening.OPTION).isPresent() ? Optional.of(Opening.parse(given.option(Opening.OPTION).get()))
                : Optional.empty();
        Optional<Quantity> lowest = quantity(given, "--lowest", QuantityKind.FRACTION);
        if (lowest.isPresent() && !(lowest.get().si() > 0 && lowest.get().si() <= 1)) {
            throw Ending.badInput("--lowest \"" + given.option("--lowest").orElse("") + "\" must be above 0 % and at most 100 %.");
        }
        Map<String, Double> weights = weights(given);
        return new Wish(opening.map(Opening::width).or(wish::width), opening.map(Opening::height).or(wish::height),
                opening.isPresent() ? opening.get().depth() : wish.depth(), number(given, "--side-by-side", 1, 100).or(wish::columns),
                number(given, "--in-series", 1, 100).or(wish::series), number(given, "--movers", 1, 100).or(wish::movers), lowest.or(wish::lowest),
                wish.where(), weights.isEmpty() ? wish.weights() : weights, wish.more());
    }

    private Map<String, Double> weights(Syntax.Given given) throws Ending {
        Set<String> known = new LinkedHashSet<>(List.of(Criterion.POWER, Criterion.NOISE, Criterion.LIFE, Criterion.COST, Criterion.SIZE, Criterion.MASS));
        engine.analyses().stream().flatMap(analysis -> analysis.figures().stream()).map(FigureKind::id).forEach(known::add);
        Map<String, Double> weights = new LinkedHashMap<>();
        for (String each : given.options(WEIGHT)) {
            int equals = each.lastIndexOf('=');
            String name = equals < 1 ? "" : each.substring(0, equals).strip();
            if (name.isEmpty()) {
                throw Ending.badInput(WEIGHT + " \"" + each + "\" has no name and number; write NAME=NUMBER, for example power=2.");
            }
            if (!known.contains(name)) {
                throw Ending.badInput(WEIGHT + " " + name + ": there is no such criterion" + Spelling.nearest(name, known).map(near -> "; did you mean " + near + "?")
                        .orElse("; it is power, noise, life, cost, size, mass, or the id of a figure."));
            }
            if (weights.put(name, weight(each.substring(equals + 1).strip(), name)) != null) {
                throw Ending.badInput(WEIGHT + " " + name + ": it is given twice.");
            }
        }
        return weights;
    }

    private static double weight(String text, String name) throws Ending {
        try {
            double weight = Units.parse(text, QuantityKind.NUMBER);
            if (weight >= 0) {
                return weight;
            }
        } catch (UnitException wrong) {
            // said below
        }
        throw Ending.badInput(WEIGHT + " " + name + ": \"" + text + "\" is no number from 0 on.");
    }

    private static Optional<Integer> number(Syntax.Given given, String option, int least, int most) throws Ending {
        Optional<String> text = given.option(option);
        return text.isEmpty() ? Optional.empty() : Optional.of(number(option, text.get(), least, most));
    }

    private static int number(String option, String text, int least, int most) throws Ending {
        String digits = text.strip();
        if (!digits.isEmpty() && digits.length() < 6 && digits.chars().allMatch(c -> c >= '0' && c <= '9')) {
            int number = Integer.parseInt(digits);
            if (number >= least && number <= most) {
                return number;
            }
        }
        throw Ending.badInput(option + " \"" + text + "\" is no whole number from " + least + " to " + most + ".");
    }

    private static List<Integer> ranks(Syntax.Given given) throws Ending {
        List<Integer> ranks = new ArrayList<>();
        for (String each : given.option(COMPARE).map(text -> text.split(",", -1)).orElse(new String[0])) {
            ranks.add(number(COMPARE, each, 1, 1000));
        }
        return ranks;
    }

    /** The file for the design with a candidate in it; found out before anything is chosen. */
    private Optional<Path> target(Syntax.Given given, Asked asked) throws Ending {
        boolean in = given.flag(IN_PLACE);
        Optional<String> name = given.option(OUTPUT);
        if (given.option(PUT).isEmpty()) {
            if (in || name.isPresent()) {
                throw Ending.badInput((in ? IN_PLACE : OUTPUT) + " writes the candidate that " + PUT + " RANK names.");
            }
            return Optional.empty();
        }
        if (in == name.isPresent()) {
            throw Ending.badInput(in ? "Choose one of " + OUTPUT + " and " + IN_PLACE + "." : PUT + " needs " + OUTPUT + " FILE or " + IN_PLACE + ".");
        }
        if (in) {
            Path path = asked.path().orElseThrow(() -> Ending.badInput(IN_PLACE + ": there is no design file; write to " + OUTPUT + " FILE."));
            if (isSample(path)) {
                throw Ending.badInput(IN_PLACE + ": " + asked.file() + " is a sample, which is not written over; write to " + OUTPUT + " FILE.");
            }
            return Optional.of(path);
        }
        Path target = asked.path().isPresent() ? Delivery.target(name.get(), asked.path().get()) : Delivery.target(name.get());
        if (Files.exists(target) && !given.flag(REPLACE)) {
            throw Ending.badInput(OUTPUT + " " + name.get() + ": there is a file of that name; " + REPLACE + " writes over it.");
        }
        return Optional.of(target);
    }

    private boolean isSample(Path path) {
        return samples.filter(folder -> path.toAbsolutePath().startsWith(folder)).isPresent();
    }

    private static void tellProblems(Catalogue catalogue, Console console) {
        List<Problem> errors = catalogue.problems().stream().filter(Problem::isError).toList();
        if (!errors.isEmpty()) {
            console.err().println("caution: the catalogue has " + Messages.count(errors.size(), "error") + ", the first: " + errors.getFirst().sentence()
                    + ". What they concern is left out; \"tramontane catalogue check\" says all.");
        }
    }

    private void print(Choice choice, Wanted wanted, List<String> cautions, Console console) throws Ending {
        switch (wanted.format()) {
            case TEXT -> {
                List<Candidate> compared = new ArrayList<>();
                for (int rank : wanted.compared()) {
                    compared.add(chosen(choice, COMPARE, rank));
                }
                List<Table> tables = compared.isEmpty() ? List.of() : selector.compare(choice.task(), compared);
                console.out().print(ChoiceText.of(choice, tables, wanted.all(), cautions, wanted.units(), console.width(), console::shown));
            }
            case JSON -> console.data().print(ChoiceJson.of(choice, wanted.all()));
            case CSV -> console.data().print(ChoiceCsv.of(choice, wanted.all(), wanted.units()));
        }
    }

    private static Candidate chosen(Choice choice, String option, int rank) throws Ending {
        List<Candidate> ranked = choice.selection().ranked();
        if (rank > ranked.size()) {
            throw Ending.badInput(option + " " + rank + ": " + (ranked.isEmpty() ? "no candidate meets everything."
                    + (option.equals(PUT) && !choice.selection().nearest().isEmpty() ? " " + PUT + " " + MISS + "1 puts the nearest miss." : "") : "there are "
                    + Messages.count(ranked.size(), "candidate") + " only."));
        }
        return ranked.get(rank - 1);
    }

    /** {@code 2}, or {@code miss:2}. */
    private static Optional<Putting> putting(Syntax.Given given) throws Ending {
        Optional<String> text = given.option(PUT).map(String::strip);
        boolean miss = text.filter(each -> each.startsWith(MISS)).isPresent();
        return text.isEmpty() ? Optional.empty() : Optional.of(new Putting(miss, number(miss ? PUT + " " + MISS : PUT,
                miss ? text.get().substring(MISS.length()) : text.get(), 1, 1000)));
    }

    private Map<String, String> labels() {
        Map<String, String> labels = new LinkedHashMap<>();
        engine.analyses().stream().flatMap(analysis -> analysis.figures().stream()).forEach(figure -> labels.putIfAbsent(figure.id(), figure.label()));
        return labels;
    }

    private static void put(Choice choice, Putting put, Wanted wanted, Console console) throws Ending {
        if (!put.miss()) {
            Candidate candidate = chosen(choice, PUT, put.number());
            save(candidate.design(), candidate.words(), wanted, console);
            return;
        }
        List<Rejected> misses = choice.selection().nearest();
        if (put.number() > misses.size()) {
            throw Ending.badInput(PUT + " " + MISS + put.number() + ": " + (misses.isEmpty() ? "there is no near miss." : misses.size() == 1
                    ? "there is 1 near miss only." : "there are " + misses.size() + " near misses only."));
        }
        Rejected miss = misses.get(put.number() - 1);
        save(miss.in(choice.task()).orElseThrow(), miss.words(), wanted, console);
        if (!wanted.quiet()) {
            console.err().println("caution: " + miss.words() + " does not meet everything: " + miss.reason().in(wanted.units()) + ".");
        }
    }

    private static void save(Design design, String words, Wanted wanted, Console console) throws Ending {
        Path target = wanted.target().orElseThrow();
        try {
            DesignFile.save(design, target);
        } catch (IOException failed) {
            throw Ending.broken("The design could not be written to " + target + ": " + failed.getMessage() + ".");
        }
        if (!wanted.quiet()) {
            console.err().println("The design with " + words + " is written to " + target + ".");
        }
    }
}
