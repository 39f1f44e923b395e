package tramontane.reliability.cli.internal;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import tramontane.analysis.Cancelled;
import tramontane.analysis.Chart;
import tramontane.analysis.Engine;
import tramontane.analysis.Evaluation;
import tramontane.analysis.Severity;
import tramontane.cli.Console;
import tramontane.cli.ExitCode;
import tramontane.cli.terminal.Delivery;
import tramontane.cli.terminal.DesignSource;
import tramontane.cli.terminal.Ending;
import tramontane.cli.terminal.FindingLines;
import tramontane.cli.terminal.JsonDocument;
import tramontane.cli.terminal.Messages;
import tramontane.cli.terminal.Options;
import tramontane.cli.terminal.Options.Format;
import tramontane.cli.terminal.QuietWatch;
import tramontane.cli.terminal.Syntax;
import tramontane.cli.terminal.TerminalVerb;
import tramontane.model.Design;
import tramontane.model.Spelling;
import tramontane.physics.units.UnitSystem;
import tramontane.reliability.LifeState;
import tramontane.reliability.MissionLife;
import tramontane.reliability.SystemLife;
import tramontane.reliability.charts.DesignCharts;
import tramontane.report.ChartColours;
import tramontane.report.ChartCsv;
import tramontane.report.ChartSvg;

/** Draws the lives of a design. */
final class DrawCharts extends TerminalVerb {

    private static final String OUTPUT = "--output";
    private static final String CONDITION = "--condition";
    private static final String AFTER = "--after";
    private static final String REPLACE = "--replace";
    private static final String QUIET = "--quiet";
    private static final double USUAL_YEARS = 10;

    private final Optional<Path> samples;
    private final Engine engine;

    DrawCharts(Optional<Path> samples, Engine engine) {
        super("life charts", "Draw survival over the years and life against temperature of a design.");
        this.samples = samples;
        this.engine = engine;
    }

    @Override
    protected Syntax syntax() {
        return new Syntax(name())
                .parameter("DESIGN", "A design file, or the name of a sample.")
                .option(OUTPUT, "FOLDER", "The folder to write to; must be given.")
                .options(CONDITION, "ID", "Mark this condition, or one of its cases; may be given several times. Standard is all"
                + " conditions.")
                .option(AFTER, "TIME", "How long the equipment serves; standard what the design says, else 10 years.")
                .flag(REPLACE, "Write over files that are there already.")
                .option(Options.FORMAT, "FORMAT", "text (standard) or json: what was written.")
                .option(Options.MAX_SIZE, "SIZE", "Refuse design files larger than this; standard 64MB.")
                .option(Options.TIME_LIMIT, "TIME", "Give up an analysis that takes longer than this; standard 5min.")
                .flag(QUIET, "Print no progress and no cautions of the design.")
                .footer("Writes survival.svg and survival.csv: the probability that each bank, and the whole,",
                        "still keeps all limits; and life-temperature.svg and .csv: L10 of each part against",
                        "the temperature of the air, with its conditions. Bands are what is uncertain.",
                        "",
                        "Exit codes:",
                        "  0  written",
                        "  2  the command line or the file has mistakes; nothing was written",
                        "  3  a fault in the program or its surroundings",
                        "  4  nothing is known of lives, or they could not be computed; nothing was written",
                        "  130  stopped by Ctrl-C",
                        "",
                        "Examples:",
                        "  tramontane life charts cabinet --output charts",
                        "  tramontane life charts cabinet --condition nominal --output charts --replace");
    }

    @Override
    protected int run(Syntax.Given given, Console console) throws Ending {
        Format format = Options.format(given, Format.TEXT, Format.JSON);
        Duration timeLimit = Options.timeLimit(given, Engine.Request.TIME_LIMIT);
        boolean quiet = given.flag(QUIET);
        Optional<Double> after = Amounts.time(given, AFTER);
        Path folder = Delivery.folder(OUTPUT, Amounts.needed(given.option(OUTPUT), name(), OUTPUT, "the folder to write to"));
        Set<String> givers = engine.givers(Set.of(LifeState.class, MissionLife.class, SystemLife.class));
        if (givers.isEmpty()) {
            throw Ending.broken("No analysis of life is loaded; \"tramontane modules\" shows why.");
        }
        DesignSource source = DesignSource.open(given.parameter(0), samples, Options.maxSize(given), engine);
        if (!source.sound()) {
            source.print(console.err());
            console.err().println(Messages.count(source.problems()) + "; nothing was solved and the file is untouched.");
            return ExitCode.BAD_INPUT;
        }
        if (!quiet) {
            source.print(console.err());
        }
        Design design = source.design().orElseThrow();
        Engine.Watch watch = quiet ? new QuietWatch(console.watch()) : console.watch();
        Set<String> wanted = new LinkedHashSet<>(given.options(CONDITION));
        Evaluation evaluation = engine.evaluate(new Engine.Request(design, givers, Set.of(), timeLimit), watch);
        if (evaluation.cancelled() || watch.cancelled()) {
            throw new Cancelled();
        }
        List<Engine.Case> cases = cases(evaluation, source.name(), wanted);
        Map<String, LifeState> states = new LinkedHashMap<>();
        cases.forEach(each -> evaluation.data(LifeState.class, each.concrete().id()).filter(state -> !state.banks().isEmpty())
                .ifPresent(state -> states.put(each.concrete().id(), state)));
        Optional<SystemLife> system = evaluation.data(SystemLife.class, "").filter(life -> !life.groups().isEmpty());
        if (states.isEmpty() && system.isEmpty()) {
            throw Ending.notComputed(source.name() + ": nothing can be said of life" + evaluation.findings().stream()
                    .filter(finding -> finding.severity() == Severity.ERROR).findFirst().map(finding -> ": "
                    + FindingLines.sentence(finding, UnitSystem.METRIC) + ".")
                    .orElse("; give its parts a section \"life\", with a rated life, by"
                    + " their data sheets."));
        }
        double service = after.or(() -> evaluation.data(MissionLife.class, "").flatMap(MissionLife::serviceLife))
                .orElse(USUAL_YEARS * MissionLife.YEAR);
        Map<String, Chart> charts = new LinkedHashMap<>();
        system.ifPresent(life -> charts.put("survival", DesignCharts.survival(life, service)));
        DesignCharts.temperature("Life by temperature: " + (design.name().isBlank() ? "the design" : design.name()), states)
                .ifPresent(chart -> charts.put("life-temperature", chart));
        List<Path> files = write(charts, folder, given.flag(REPLACE));
        List<String> notes = new ArrayList<>();
        if (system.isEmpty()) {
            notes.add("Survival was not drawn: " + (design.mission().isEmpty() ? "the design has no mission."
                    : "the design does not say of enough movers how long they live over its mission."));
        }
        if (!charts.containsKey("life-temperature")) {
            notes.add("Life against temperature was not drawn: no mover of a known life runs in these conditions.");
        }
        if (format == Format.JSON) {
            console.data().print(json(files, charts, notes));
        } else {
            Cells.print("Written to " + folder + ": " + String.join(", ", files.stream().map(file -> file.getFileName().toString())
                    .toList()) + ".",
                    console);
            charts.values().forEach(chart -> Cells.print(ChartSvg.description(chart, UnitSystem.METRIC), console));
            notes.forEach(note -> Cells.print(note, console));
        }
        return ExitCode.FINE;
    }

    private static List<Engine.Case> cases(Evaluation evaluation, String name, Set<String> wanted) throws Ending {
        if (wanted.isEmpty()) {
            return evaluation.cases();
        }
        List<Engine.Case> chosen = new ArrayList<>();
        for (String id : wanted) {
            List<Engine.Case> found = evaluation.cases().stream().filter(each -> each.concrete().id().equals(id) || each.declared()
                    .equals(id)).toList();
            if (found.isEmpty()) {
                List<String> known = evaluation.cases().stream().map(Engine.Case::declared).distinct().toList();
                throw Ending.badInput(CONDITION + " " + id + ": " + name + " has no such condition" + Spelling.nearest(id, known)
                        .map(near -> "; did you mean \"" + near + "\"?").orElse("; it has " + String.join("; ", known) + "."));
            }
            chosen.addAll(found);
        }
        return chosen.stream().distinct().toList();
    }

    private static List<Path> write(Map<String, Chart> charts, Path folder, boolean replace) throws Ending {
        Map<Path, String> texts = new LinkedHashMap<>();
        charts.forEach((name, chart) -> {
            texts.put(folder.resolve(name + ".svg"), ChartSvg.of(chart, UnitSystem.METRIC, TestChart.WIDTH, TestChart.HEIGHT,
                    ChartColours.LIGHT));
            texts.put(folder.resolve(name + ".csv"), ChartCsv.of(chart, UnitSystem.METRIC));
        });
        for (Path file : texts.keySet()) {
            if (Files.exists(file) && !replace) {
                throw Ending.badInput(file + ": there is a file of that name; " + REPLACE + " writes over it.");
            }
        }
        try {
            if (!Files.isDirectory(folder)) {
                Files.createDirectory(folder);
            }
        } catch (IOException failed) {
            throw Ending.broken("The folder " + folder + " could not be made: " + failed.getMessage() + ".");
        }
        for (Map.Entry<Path, String> text : texts.entrySet()) {
            Delivery.write(text.getKey(), text.getValue());
        }
        return List.copyOf(texts.keySet());
    }

    private static String json(List<Path> files, Map<String, Chart> charts, List<String> notes) {
        return JsonDocument.of(json -> {
            json.beginObject().name("format").value(1);
            TestJson.strings(json, "files", files.stream().map(Path::toString).toList());
            TestJson.strings(json, "charts", charts.values().stream().map(chart -> ChartSvg.description(chart, UnitSystem.METRIC))
                    .toList());
            TestJson.strings(json, "notes", notes);
            json.endObject();
        });
    }
}
