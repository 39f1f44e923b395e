package tramontane.cli.internal;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import tramontane.analysis.Cancelled;
import tramontane.analysis.Engine;
import tramontane.analysis.Evaluation;
import tramontane.analysis.Exporter;
import tramontane.analysis.Finding;
import tramontane.analysis.Severity;
import tramontane.analysis.Table;
import tramontane.cli.Console;
import tramontane.cli.ExitCode;
import tramontane.cli.terminal.Delivery;
import tramontane.cli.terminal.DesignSource;
import tramontane.cli.terminal.Ending;
import tramontane.cli.terminal.Messages;
import tramontane.cli.terminal.Options;
import tramontane.cli.terminal.QuietWatch;
import tramontane.cli.terminal.Settings;
import tramontane.cli.terminal.Syntax;
import tramontane.cli.terminal.TerminalVerb;
import tramontane.cli.terminal.TextTable;
import tramontane.model.Design;
import tramontane.model.FormReader;
import tramontane.model.Problem;
import tramontane.model.References;
import tramontane.model.Spelling;
import tramontane.model.Value;
import tramontane.model.Values;
import tramontane.physics.units.UnitSystem;

/** Writes results in a form that an extension gives, for other programs. */
final class Export extends TerminalVerb {

    private static final String AS = "--as";
    private static final String SET = Settings.SET;

    private final Surroundings surroundings;

    Export(Surroundings surroundings) {
        super("export", "Compute a design and write results for other programs.");
        this.surroundings = surroundings;
    }

    @Override
    protected Syntax syntax() {
        return new Syntax(name())
                .optionalParameter("FILE", "A design file, or the name of a sample.")
                .option(AS, "ID", "The exporter; \"tramontane export\" alone lists them and their settings.")
                .options(SET, "NAME=VALUE", "A setting of the exporter; may be given several times.")
                .option("--output", "FILE", "Write to this file instead of the terminal.")
                .option(Options.MAX_SIZE, "SIZE", "Refuse design files larger than this; standard 64MB.")
                .option(Options.TIME_LIMIT, "TIME", "Give up an analysis that takes longer than this; standard 5min.")
                .flag("--quiet", "Print no progress, no cautions and no confirmations.")
                .footer("Only what the exporter reads is computed; requirements are not judged.",
                        "",
                        "Exit codes:",
                        "  0  it is written, or the exporters are listed",
                        "  2  the command line or the file has mistakes; nothing was solved",
                        "  3  a fault in the program or its surroundings",
                        "  4  the exporter had nothing to write, or failed; nothing was written",
                        "  130  stopped by Ctrl-C",
                        "",
                        "Example:",
                        "  tramontane export cabinet.tramontane.json --as ID --output cabinet.csv");
    }

    @Override
    protected int run(Syntax.Given given, Console console) throws Ending {
        long maxSize = Options.maxSize(given);
        Duration timeLimit = Options.timeLimit(given, Engine.Request.TIME_LIMIT);
        boolean quiet = given.flag("--quiet");
        Engine engine = surroundings.needEngine();
        List<Exporter> exporters = engine.exporters();
        if (given.option(AS).isEmpty()) {
            return list(exporters, given, console);
        }
        Exporter exporter = exporter(given.option(AS).get(), exporters);
        if (given.parameter(0).isEmpty()) {
            throw Ending.badInput("export: FILE is missing. See \"tramontane help export\".");
        }
        Value.Tree set = Settings.written(exporter.settings(), "exporter " + exporter.id(), given.options(SET));
        Values settings = Settings.read(exporter.settings(), set);
        DesignSource source = DesignSource.open(given.parameter(0), surroundings.samples(), maxSize, engine);
        Optional<Path> target = Optional.empty();
        if (given.option("--output").isPresent()) {
            target = Optional.of(Delivery.target(given.option("--output").get(), source.path()));
        }
        if (!source.sound()) {
            source.print(console.err());
            console.err().println(Messages.count(source.problems()) + "; nothing was solved and the file is untouched.");
            return ExitCode.BAD_INPUT;
        }
        Design design = source.design().orElseThrow();
        Settings.refuseErrors(References.check(exporter.settings(), set, design, ""));
        if (!quiet) {
            source.print(console.err());
        }
        Engine.Watch watch = quiet ? new QuietWatch(console.watch()) : console.watch();
        Evaluation evaluation = engine.evaluate(
                new Engine.Request(design, engine.givers(exporter.reads()), Set.of(), timeLimit), watch);
        if (evaluation.cancelled() || console.watch().cancelled()) {
            throw new Cancelled();
        }
        return deliver(exporter.write(design, evaluation, settings), evaluation, source, target, quiet, console);
    }

    private static int deliver(Exporter.Exported exported, Evaluation evaluation, DesignSource source, Optional<Path> target,
            boolean quiet, Console console) throws Ending {
        if (exported.text().isEmpty()) {
            evaluation.findings().stream().filter(finding -> finding.severity() == Severity.ERROR).map(Export::sentence).distinct()
                    .forEach(sentence -> console.err().println(source.name() + ": " + sentence));
            print(source, exported.problems(), console);
            console.err().println("Nothing was written.");
            return ExitCode.NOT_COMPUTED;
        }
        if (!quiet) {
            print(source, exported.problems(), console);
        }
        if (target.isEmpty()) {
            console.data().print(exported.text());
            return ExitCode.FINE;
        }
        Delivery.write(target.get(), exported.text());
        if (!quiet) {
            console.err().println("Written to " + target.get() + ".");
        }
        return ExitCode.FINE;
    }

    private static void print(DesignSource source, List<Problem> problems, Console console) {
        Messages.print(console.err(), source.name(), problems.stream().map(Problem::sentence).toList(), problems);
    }

    private static String sentence(Finding finding) {
        return (finding.place().isEmpty() ? "" : finding.place() + ": ") + finding.message().in(UnitSystem.METRIC)
                + (finding.condition().isEmpty() ? "" : " (in " + finding.condition() + ")");
    }

    private static Exporter exporter(String id, List<Exporter> exporters) throws Ending {
        List<String> known = exporters.stream().map(Exporter::id).toList();
        String all = known.isEmpty() ? "none is loaded." : "loaded are " + String.join(", ", known) + ".";
        return exporters.stream().filter(each -> each.id().equals(id)).findFirst().orElseThrow(() ->
                Ending.badInput(AS + " " + id + ": there is no such exporter; " + Spelling.nearest(id, known)
                        .map(near -> "did you mean " + near + "? (" + all.substring(0, all.length() - 1) + ")").orElse(all)));
    }

    /** Lists the exporters; where a file was named, as an answer to a command line that says too little. */
    private static int list(List<Exporter> exporters, Syntax.Given given, Console console) {
        boolean asked = given.parameter(0).isEmpty();
        PrintWriter to = asked ? console.out() : console.err();
        if (!asked) {
            to.println("export: --as is missing. See \"tramontane help export\".");
        }
        if (exporters.isEmpty()) {
            to.println("No exporter is loaded.");
        } else {
            print(to, console, new Table("Exporters", columns("id", "what it writes", "ending"), exporters.stream()
                    .map(each -> cells(each.id(), each.label(), each.ending())).toList()));
        }
        List<List<Table.Cell>> settings = exporters.stream().flatMap(each -> each.settings().fields().stream().map(field -> cells(
                each.id(), field.name(), field.help(), field.standard().map(FormReader::describe)
                        .orElse(field.required() ? "must be set" : "")))).toList();
        if (!settings.isEmpty()) {
            to.println();
            print(to, console, new Table("Settings", columns("exporter", "name", "what it is", "standard"), settings));
        }
        return asked ? ExitCode.FINE : ExitCode.BAD_INPUT;
    }

    private static void print(PrintWriter to, Console console, Table table) {
        TextTable.lines(table, 1, console.width(), UnitSystem.METRIC, console::shown).forEach(to::println);
    }

    private static List<Table.Column> columns(String... labels) {
        return Stream.of(labels).map(label -> new Table.Column(label, false)).toList();
    }

    private static List<Table.Cell> cells(String... texts) {
        return Stream.of(texts).<Table.Cell>map(Table.Words::new).toList();
    }
}
