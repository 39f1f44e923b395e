package tramontane.cli.internal;

import java.nio.file.Path;
import java.time.Duration;
import java.util.Collection;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import tramontane.analysis.Cancelled;
import tramontane.analysis.Engine;
import tramontane.analysis.Evaluation;
import tramontane.analysis.Severity;
import tramontane.cli.Console;
import tramontane.cli.ExitCode;
import tramontane.cli.internal.output.Closing;
import tramontane.cli.internal.output.CsvFigures;
import tramontane.cli.internal.output.JsonReport;
import tramontane.cli.internal.output.Results;
import tramontane.cli.internal.output.Spelling;
import tramontane.cli.internal.output.TextReport;
import tramontane.cli.terminal.Delivery;
import tramontane.cli.terminal.DesignSource;
import tramontane.cli.terminal.Ending;
import tramontane.cli.terminal.Messages;
import tramontane.cli.terminal.Options;
import tramontane.cli.terminal.Options.Format;
import tramontane.cli.terminal.QuietWatch;
import tramontane.cli.terminal.Syntax;
import tramontane.cli.terminal.TerminalVerb;
import tramontane.model.Condition;
import tramontane.model.Design;
import tramontane.model.Problem;
import tramontane.physics.units.UnitSystem;

/** Runs the analyses on a design and judges its requirements. */
final class Solve extends TerminalVerb {

    private static final int FILE_WIDTH = 100;

    private final Surroundings surroundings;

    Solve(Surroundings surroundings) {
        super("solve", "Compute a design in all its conditions and judge its requirements.");
        this.surroundings = surroundings;
    }

    @Override
    protected Syntax syntax() {
        return new Syntax(name())
                .parameter("FILE", "A design file, or the name of a sample.")
                .options("--analysis", "ID", "Run only this analysis and what it needs; may be given several times.")
                .options("--condition", "ID", "Compute only this condition; may be given several times.")
                .option(Options.FORMAT, "FORMAT", "text (standard), json or csv.")
                .option(Options.UNITS, "UNITS", "metric (standard for text), us, or si (standard for csv); json is always SI.")
                .option("--output", "FILE", "Write the results to this file instead of the terminal.")
                .option(Options.MAX_SIZE, "SIZE", "Refuse design files larger than this; standard 64MB.")
                .option(Options.TIME_LIMIT, "TIME", "Give up an analysis that takes longer than this; standard 5min.")
                .flag("--quiet", "Print no progress, no cautions and no confirmations.")
                .footer("Exit codes:",
                        "  0  every requirement is met, if only with caution, or none is stated",
                        "  1  a requirement is not met, or not judged",
                        "  2  the command line or the file has mistakes; nothing was solved",
                        "  3  a fault in the program or its surroundings",
                        "  4  an analysis failed or had no answer, or one named with --analysis could",
                        "     not run; this comes before 1",
                        "  130  stopped by Ctrl-C",
                        "",
                        "Examples:",
                        "  tramontane solve cabinet.tramontane.json",
                        "  tramontane solve quick --condition nominal --format json --output quick.json");
    }

    @Override
    protected int run(Syntax.Given given, Console console) throws Ending {
        Format format = Options.format(given, Format.TEXT, Format.JSON, Format.CSV);
        UnitSystem units = Options.units(given, format == Format.CSV ? UnitSystem.SI : UnitSystem.METRIC);
        long maxSize = Options.maxSize(given);
        Duration timeLimit = Options.timeLimit(given, Engine.Request.TIME_LIMIT);
        boolean quiet = given.flag("--quiet");
        Engine engine = surroundings.needEngine();
        DesignSource source = DesignSource.open(given.parameter(0), surroundings.samples(), maxSize, engine);
        Optional<Path> target = Optional.empty();
        if (given.option("--output").isPresent()) {
            target = Optional.of(Delivery.target(given.option("--output").get(), source.path()));
        }
        if (!source.sound()) {
            return refuse(source, format, target, console);
        }
        Design design = source.design().orElseThrow();
        Set<String> analyses = known("--analysis", given.options("--analysis"), "analysis", "loaded are ",
                engine.analyses().stream().map(Engine.Loaded::id).toList());
        Set<String> conditions = known("--condition", given.options("--condition"), "condition in the design", "it has ",
                design.workingConditions().stream().map(Condition::id).toList());
        if (!quiet && format == Format.CSV) {
            source.print(console.err());
        }
        Evaluation evaluation = engine.evaluate(new Engine.Request(design, analyses, conditions, timeLimit),
                quiet ? new QuietWatch(console.watch()) : console.watch());
        if (evaluation.cancelled() || console.watch().cancelled()) {
            throw new Cancelled();
        }
        Results results = new Results(source.name(), evaluation, engine.analyses());
        if (format == Format.TEXT && !quiet) {
            results = results.with(source.sentences());
        }
        deliver(results, source.problems(), format, units, target, console);
        if (target.isPresent() && !quiet) {
            console.err().println(Closing.sentence(results) + " Written to " + target.get() + ".");
        }
        return exitCode(evaluation, analyses);
    }

    private static void deliver(Results results, List<Problem> problems, Format format, UnitSystem units,
            Optional<Path> target, Console console) throws Ending {
        switch (format) {
            case TEXT -> {
                if (target.isPresent()) {
                    Delivery.write(target.get(), TextReport.of(results, units, FILE_WIDTH, Spelling.FULL::of));
                } else {
                    console.out().print(TextReport.of(results, units, console.width(), console::shown));
                }
            }
            case JSON -> data(JsonReport.of(results, problems), target, console);
            case CSV -> data(CsvFigures.of(results.evaluation().figures(), units), target, console);
        }
    }

    private static void data(String text, Optional<Path> target, Console console) throws Ending {
        if (target.isPresent()) {
            Delivery.write(target.get(), text);
        } else {
            console.data().print(text);
        }
    }

    /** A file with mistakes: all of them at once, for people and, where asked for, for programs. */
    private static int refuse(DesignSource source, Format format, Optional<Path> target, Console console) throws Ending {
        source.print(console.err());
        console.err().println(Messages.count(source.problems()) + "; nothing was solved and the file is untouched.");
        if (format == Format.JSON) {
            data(JsonReport.of(source.design().map(Design::name).orElse(""), source.problems()), target, console);
        }
        return ExitCode.BAD_INPUT;
    }

    private static Set<String> known(String option, List<String> given, String noun, String lead, Collection<String> known)
            throws Ending {
        for (String id : given) {
            if (!known.contains(id)) {
                String near = tramontane.model.Spelling.nearest(id, known).map(each -> "; did you mean " + each + "?")
                        .orElse(known.isEmpty() ? "; none is loaded." : "; " + lead + String.join(", ", known) + ".");
                throw Ending.badInput(option + " " + id + ": there is no such " + noun + near);
            }
        }
        return new LinkedHashSet<>(given);
    }

    /**
     * How a run came out.
     *
     * <p>An analysis that failed or had no answer comes before a requirement that is not met: what is not there may hide
     * worse. One that did not run because something it needs is missing counts only where it was asked for by name, so that
     * a design without noise data is still fine; requirements on its figures are not judged anyway.
     *
     * @param evaluation what the engine gave
     * @param named      analyses asked for by name
     */
    static int exitCode(Evaluation evaluation, Set<String> named) {
        boolean gaps = evaluation.outcomes().isEmpty() || evaluation.outcomes().stream().anyMatch(outcome ->
                switch (outcome.status()) {
                    case COMPUTED -> false;
                    case NOT_COMPUTED, FAILED -> true;
                    case NOT_RUN -> named.contains(outcome.analysis());
                });
        if (gaps) {
            return ExitCode.NOT_COMPUTED;
        }
        boolean met = evaluation.verdicts().stream().allMatch(verdict -> verdict.severity() == Severity.MET
                || verdict.severity() == Severity.CAUTION || verdict.severity() == Severity.NOTE);
        met &= evaluation.findings().stream().noneMatch(finding -> finding.severity() == Severity.NOT_MET);
        return met ? ExitCode.FINE : ExitCode.NOT_MET;
    }
}
