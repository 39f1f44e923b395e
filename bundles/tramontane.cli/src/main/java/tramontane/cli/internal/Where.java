package tramontane.cli.internal;

import java.io.PrintWriter;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import tramontane.analysis.Better;
import tramontane.analysis.Cancelled;
import tramontane.analysis.Derivation;
import tramontane.analysis.Engine;
import tramontane.analysis.Evaluation;
import tramontane.analysis.Figure;
import tramontane.analysis.FigureKind;
import tramontane.analysis.Trace;
import tramontane.cli.Console;
import tramontane.cli.ExitCode;
import tramontane.cli.internal.output.JsonReport;
import tramontane.cli.terminal.DesignSource;
import tramontane.cli.terminal.Ending;
import tramontane.cli.terminal.Messages;
import tramontane.cli.terminal.Numbers;
import tramontane.cli.terminal.Options;
import tramontane.cli.terminal.Options.Format;
import tramontane.cli.terminal.Syntax;
import tramontane.cli.terminal.TerminalVerb;
import tramontane.cli.terminal.Wrapping;
import tramontane.model.Condition;
import tramontane.model.Design;
import tramontane.model.Spelling;
import tramontane.physics.units.QuantityKind;
import tramontane.physics.units.UnitSystem;

/** Shows where a figure comes from. */
final class Where extends TerminalVerb {

    private final Surroundings surroundings;

    Where(Surroundings surroundings) {
        super("trace", "Show where a figure comes from: formulas, their sources, and what went in.");
        this.surroundings = surroundings;
    }

    @Override
    protected Syntax syntax() {
        return new Syntax(name())
                .parameter("FILE", "A design file, or the name of a sample.")
                .parameter("FIGURE", "The figure's id; \"tramontane modules\" lists them.")
                .option("--place", "ID", "The bay, passage, bank or heat source; the worst where not given.")
                .option("--condition", "ID", "The condition, or one case of it; the worst where not given.")
                .option(Options.FORMAT, "FORMAT", "text (standard) or json.")
                .option(Options.UNITS, "UNITS", "metric (standard), us or si; json is always SI.")
                .option(Options.MAX_SIZE, "SIZE", "Refuse design files larger than this; standard 64MB.")
                .footer("Exit code: 0 if it is shown; 2 for mistakes in the command line or the file;",
                        "4 if the figure could not be computed.",
                        "",
                        "Example:",
                        "  tramontane trace quick airflow.bank.flow --condition nominal");
    }

    @Override
    protected int run(Syntax.Given given, Console console) throws Ending {
        Format format = Options.format(given, Format.TEXT, Format.JSON);
        UnitSystem units = Options.units(given, UnitSystem.METRIC);
        long maxSize = Options.maxSize(given);
        String id = given.parameter(1);
        Engine engine = surroundings.needEngine();
        Map<String, FigureKind> kinds = kinds(engine);
        if (!kinds.containsKey(id)) {
            throw Ending.badInput(id + ": no loaded analysis gives this figure" + Spelling.nearest(id, kinds.keySet())
                    .map(near -> "; did you mean " + near + "?").orElse("; \"tramontane modules\" lists the figures."));
        }
        DesignSource source = DesignSource.open(given.parameter(0), surroundings.samples(), maxSize, engine);
        if (!source.sound()) {
            source.print(console.err());
            console.err().println(Messages.count(source.problems()) + "; nothing was solved and the file is untouched.");
            return ExitCode.BAD_INPUT;
        }
        Design design = source.design().orElseThrow();
        Optional<String> condition = given.option("--condition");
        List<Figure> all = figures(engine, design, id, condition, console);
        List<Figure> fitting = all.stream()
                .filter(figure -> given.option("--place").map(figure.place()::equals).orElse(true)).toList();
        if (fitting.isEmpty() && !all.isEmpty()) {
            throw Ending.badInput("--place " + given.option("--place").orElse("") + ": the figure is not given there; it is at "
                    + all.stream().map(Figure::place).distinct().collect(Collectors.joining(", ")) + ".");
        }
        Figure figure = worst(fitting).orElseThrow(() -> Ending.notComputed(
                id + " could not be computed; \"tramontane solve\" says why."));
        List<Trace.Step> steps = engine.trace(design, figure.condition(), id, figure.place());
        if (format == Format.JSON) {
            console.data().print(JsonReport.of(figure, steps));
        } else {
            text(figure, fitting.size(), steps, kinds, units, console);
        }
        return ExitCode.FINE;
    }

    private static Map<String, FigureKind> kinds(Engine engine) {
        return engine.analyses().stream().flatMap(analysis -> analysis.figures().stream())
                .collect(Collectors.toMap(FigureKind::id, kind -> kind, (one, other) -> one));
    }

    /** The figure at all places, in one condition or case or in all. */
    private static List<Figure> figures(Engine engine, Design design, String id, Optional<String> condition, Console console)
            throws Ending {
        // a case is named by its condition with more behind: "one failed: fans 2 locked"
        List<String> ids = design.workingConditions().stream().map(Condition::id).toList();
        Set<String> declared = condition.stream().flatMap(name -> ids.stream()
                .filter(each -> name.equals(each) || name.startsWith(each + ":"))).collect(Collectors.toSet());
        if (condition.isPresent() && declared.isEmpty()) {
            throw Ending.badInput("--condition " + condition.get() + ": there is no such condition in the design"
                    + Spelling.nearest(condition.get(), ids).map(near -> "; did you mean " + near + "?")
                    .orElse("; it has " + String.join(", ", ids) + "."));
        }
        Set<String> givers = engine.analyses().stream()
                .filter(analysis -> analysis.figures().stream().anyMatch(kind -> kind.id().equals(id)))
                .map(Engine.Loaded::id).collect(Collectors.toSet());
        Evaluation evaluation = engine.evaluate(
                new Engine.Request(design, givers, declared, Engine.Request.TIME_LIMIT), console.watch());
        if (evaluation.cancelled() || console.watch().cancelled()) {
            throw new Cancelled();
        }
        boolean oneCase = condition.isPresent() && !ids.contains(condition.get());
        // an analysis of the whole design gives its figures for all conditions, whichever were asked for
        Set<String> asked = oneCase ? Set.of(condition.get()) : evaluation.cases().stream()
                .map(each -> each.concrete().id()).collect(Collectors.toSet());
        return evaluation.figures().stream().filter(figure -> figure.kind().id().equals(id))
                .filter(figure -> figure.condition().isEmpty() || asked.contains(figure.condition())).toList();
    }

    private static Optional<Figure> worst(List<Figure> figures) {
        if (figures.isEmpty()) {
            return Optional.empty();
        }
        // to single precision, so that of figures that differ by rounding alone the first is taken
        Comparator<Figure> byValue = Comparator.comparing(figure -> (float) figure.value());
        Better better = figures.getFirst().kind().better();
        return switch (better) {
            case HIGHER -> figures.stream().min(byValue);
            case LOWER -> figures.stream().min(byValue.reversed());
            case NEITHER -> Optional.of(figures.getFirst());
        };
    }

    private static void text(Figure figure, int of, List<Trace.Step> steps, Map<String, FigureKind> kinds, UnitSystem units,
            Console console) {
        PrintWriter out = console.out();
        int width = console.width();
        QuantityKind quantity = figure.kind().quantity();
        List<String> lines = new ArrayList<>(Wrapping.lines(figure.kind().label() + place(figure.place())
                + (figure.condition().isEmpty() ? "" : " in " + figure.condition()) + ": "
                + Numbers.text(figure.value(), quantity, units) + "   (" + figure.kind().id() + ")", width));
        if (of > 1) {
            lines.add((figure.kind().better() == Better.NEITHER ? "The first of " : "The worst of ") + of
                    + "; choose another with --place and --condition.");
        }
        lines.add("");
        List<Derivation.Block> blocks = Derivation.of(steps, kinds.values()).blocks((si, kind) -> Numbers.text(si, kind, units));
        for (int i = 0; i < blocks.size(); i++) {
            Derivation.Block block = blocks.get(i);
            String lead = (i + 1) + ".  ";
            String indent = " ".repeat(lead.length());
            lines.addAll(Wrapping.hanging(lead, block.heading(), width));
            lines.addAll(Wrapping.hanging(indent + "by    ", block.by(), width));
            for (int j = 0; j < block.with().size(); j++) {
                lines.addAll(Wrapping.hanging(indent + (j == 0 ? "with  " : "      "), block.with().get(j), width));
            }
            if (!block.holds().isEmpty()) {
                lines.addAll(Wrapping.hanging(indent + "holds ", block.holds(), width));
            }
            if (!block.source().isEmpty()) {
                lines.addAll(Wrapping.hanging(indent + "[", block.source() + "]", width));
            }
        }
        if (steps.isEmpty()) {
            lines.add("The analysis does not say how it came to this figure.");
        }
        lines.forEach(line -> out.println(line.stripTrailing()));
    }

    private static String place(String place) {
        return place.isEmpty() ? "" : " at " + place;
    }
}
