package tramontane.reliability.cli.internal;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import tramontane.analysis.Table;
import tramontane.cli.Console;
import tramontane.cli.ExitCode;
import tramontane.cli.terminal.Ending;
import tramontane.cli.terminal.JsonDocument;
import tramontane.cli.terminal.Options;
import tramontane.cli.terminal.Options.Format;
import tramontane.cli.terminal.Syntax;
import tramontane.cli.terminal.TerminalVerb;
import tramontane.physics.units.QuantityKind;
import tramontane.reliability.LifeModel;
import tramontane.reliability.MissionLife;
import tramontane.reliability.statistics.LifeDistribution;
import tramontane.reliability.statistics.Weibull;
import tramontane.reliability.system.FailureGraph;
import tramontane.reliability.system.MaintenanceInterval;
import tramontane.reliability.system.Repair;
import tramontane.reliability.system.Spares;
import tramontane.reliability.system.SystemSurvival;

/** How long a bank of units keeps enough of them running. */
final class JudgeRedundancy extends TerminalVerb {

    private static final String NEEDED = "--needed";
    private static final String OF = "--of";
    private static final String LIFE = "--life";
    private static final String FAILED = "--failed";
    private static final String SHAPE = "--shape";
    private static final String AFTER = "--after";
    private static final String AGEING = "--ageing";
    private static final String REPAIR = "--repair";
    private static final String CREWS = "--crews";
    private static final String INTERVAL = "--interval";
    private static final String AVAILABILITY = "--availability";
    private static final String FLEET = "--fleet";
    private static final String RESTOCKING = "--restocking";
    private static final String CONFIDENCE = "--confidence";
    private static final int MOST_UNITS = 64;
    private static final int MOST_FLEET = 10_000_000;

    JudgeRedundancy() {
        super("life redundancy", "How long enough of some alike units run; repair, visits, spares.");
    }

    @Override
    protected Syntax syntax() {
        return new Syntax(name())
                .option(NEEDED, "NUMBER", "So many units must run; must be given.")
                .option(OF, "NUMBER", "So many there are; must be given.")
                .option(LIFE, "TIME", "Life of a unit, L10; must be given.")
                .option(FAILED, "SHARE", "Share of units that have failed by that life; standard 10 %.")
                .option(SHAPE, "NUMBER", "Weibull shape; standard 3, common for ball bearings.")
                .options(AFTER, "TIME", "Say what survives this time; may be given several times. Standard 5 years.")
                .option(AGEING, "NUMBER", "With each failed unit the rest age faster by this factor; standard 1.")
                .option(REPAIR, "TIME", "A failed unit is exchanged after this time.")
                .option(CREWS, "WORD", "With --repair: one (standard), one after the other; or each, all at the same time.")
                .option(INTERVAL, "TIME", "All units are exchanged at visits, so far apart.")
                .option(AVAILABILITY, "SHARE", "Share of the time in which enough must run; says which interval keeps it, or whether repair"
                + " does.")
                .option(FLEET, "NUMBER", "So many such systems; standard 1.")
                .option(RESTOCKING, "TIME", "Time until spares are there again; says how many must lie ready.")
                .option(CONFIDENCE, "SHARE", "That spares last so long; standard 95 %.")
                .option(Options.FORMAT, "FORMAT", "text (standard) or json.")
                .footer("Without --repair and --interval nothing is exchanged. Repair counts each unit with",
                        "its mean rate in the long run; units that wear fail less often than that at first.",
                        "",
                        "Exit codes:",
                        "  0  computed; the availability asked for is kept",
                        "  1  it is not kept",
                        "  2  the command line has mistakes",
                        "",
                        "Examples:",
                        "  tramontane life redundancy --needed 3 --of 4 --life \"60000 h\" --shape 3",
                        "                             --after \"5 years\" --after \"10 years\"",
                        "  tramontane life redundancy --needed 3 --of 4 --life \"60000 h\" --ageing 1.1",
                        "                             --repair \"72 h\" --fleet 200 --restocking \"30 d\"",
                        "  tramontane life redundancy --needed 5 --of 6 --life \"40000 h\"",
                        "                             --availability \"99.99 %\"");
    }

    /** What is asked, and what it was asked of. */
    private record Case(int needed, int units, LifeDistribution unit, boolean shapeAssumed, SystemSurvival system, List<Double> times,
            Optional<Repair> repair, Optional<Double> interval, Optional<Double> availability, int fleet, Optional<Double> restocking,
            double confidence) {

        double survival(double time) {
            return repair.isPresent() ? repair.get().survival(time) : interval.map(each -> system.survival(time, each))
                    .orElseGet(() -> system
                    .survival(time));
        }

        double available() {
            return repair.map(Repair::availability).orElseGet(() -> interval.map(each -> new MaintenanceInterval(system).availability(each))
                    .orElse(Double.NaN));
        }

        /** Exchanges of units per second and system. */
        double exchanges() {
            return repair.map(Repair::failureRate).orElseGet(() -> interval.map(each -> new MaintenanceInterval(system)
                    .exchangesOfAll(each, 1))
                    .orElseGet(() -> units * MaintenanceInterval.exchangesOnFailure(unit)));
        }

        Optional<Integer> spares() {
            return restocking.map(time -> Spares.of(repair.map(Repair::failureRate).orElseGet(() -> units
                    * MaintenanceInterval.exchangesOnFailure(unit)), time, fleet).needed(confidence));
        }

        boolean kept() {
            return availability.isEmpty() || Double.isNaN(available()) || available() >= availability.get();
        }

        Optional<Double> longest() {
            return repair.isPresent() ? Optional.empty() : availability.map(each -> new MaintenanceInterval(system)
                    .longestForAvailability(each));
        }
    }

    @Override
    protected int run(Syntax.Given given, Console console) throws Ending {
        Format format = Options.format(given, Format.TEXT, Format.JSON);
        int needed = Amounts.needed(Amounts.whole(given, NEEDED, 1, MOST_UNITS), name(), NEEDED, "how many units must run");
        int units = Amounts.needed(Amounts.whole(given, OF, 1, MOST_UNITS), name(), OF, "how many units there are");
        if (needed > units) {
            throw Ending.badInput(NEEDED + " " + needed + " is more than the " + units + " of " + OF + "; at most as many can be needed.");
        }
        double life = Amounts.needed(Amounts.time(given, LIFE), name(), LIFE, "the life of a unit, for example \"60000 h\"");
        double failed = Amounts.share(given, FAILED, "10 %").orElse(0.1);
        Optional<Double> shape = Amounts.between(given, SHAPE, 0.2, 30);
        double ageing = Amounts.between(given, AGEING, 1, 2).orElse(1.0);
        Optional<Double> repair = Amounts.time(given, REPAIR);
        Optional<Double> interval = Amounts.time(given, INTERVAL);
        if (repair.isPresent() && interval.isPresent()) {
            throw Ending.badInput(REPAIR + " and " + INTERVAL + ": units are exchanged when they fail or at visits; give one.");
        }
        if (repair.isEmpty() && given.option(CREWS).isPresent()) {
            throw Ending.badInput(CREWS + " belongs to " + REPAIR + ", the time of an exchange; it is missing.");
        }
        int crews = Amounts.word(given, CREWS, "one", "each").equals("one") ? 1 : Repair.EACH;
        Weibull unit = Weibull.through(life, failed, shape.orElse(LifeModel.SHAPE));
        FailureGraph graph = FailureGraph.needed(needed, units, down -> Math.pow(ageing, down));
        List<Double> times = Amounts.times(given, AFTER);
        Optional<Double> restocking = Amounts.time(given, RESTOCKING);
        int fleet = Amounts.whole(given, FLEET, 1, MOST_FLEET).orElse(1);
        double confidence = Amounts.share(given, CONFIDENCE, "95 %").orElse(0.95);
        Case asked = new Case(needed, units, unit, shape.isEmpty(), new SystemSurvival(graph, List.of(unit)), times.isEmpty()
                ? List.of(5 * MissionLife.YEAR) : times, repair.map(each -> Repair.of(graph, List.of(unit), each, crews)), interval,
                Amounts.share(given, AVAILABILITY, "99.99 %"), fleet, restocking, confidence);
        if (restocking.isPresent() && asked.units() * MaintenanceInterval.exchangesOnFailure(unit) * Math.pow(ageing,
                units) * restocking.get() * fleet > 1e8) {
            throw Ending.badInput(RESTOCKING + " \"" + given.option(RESTOCKING).orElse("")
                    + "\": more than 100000000 spares would be needed; check "
                    + FLEET + " and " + LIFE + ".");
        }
        if (format == Format.JSON) {
            console.data().print(json(asked));
        } else {
            text(asked, console);
        }
        return asked.kept() ? ExitCode.FINE : ExitCode.NOT_MET;
    }

    private static String sentence(Case asked) {
        double time = asked.times().getFirst();
        return asked.needed() + " of " + asked.units() + " units: with a probability of " + Cells.percent(asked.survival(time))
                + " enough run until "
                + Cells.years(time) + how(asked) + ".";
    }

    private static String how(Case asked) {
        return asked.repair().isPresent() ? ", with repair" : asked.interval().map(each -> ", with all exchanged every "
                + Cells.years(each))
                .orElse(", without repair");
    }

    private static void text(Case asked, Console console) {
        Cells.print(sentence(asked), console);
        List<List<Table.Cell>> rows = new ArrayList<>();
        for (double time : asked.times()) {
            rows.add(List.of(Cells.words(Cells.years(time)), Cells.share(asked.unit().survival(time)), Cells.share(asked.survival(time))));
        }
        boolean looked = asked.repair().isPresent() || asked.interval().isPresent();
        if (looked) {
            for (int i = 0; i < rows.size(); i++) {
                List<Table.Cell> row = new ArrayList<>(rows.get(i));
                row.add(2, Cells.share(asked.system().survival(asked.times().get(i))));
                rows.set(i, row);
            }
        }
        Cells.print(new Table("Survival", looked ? Cells.columns("time", "#a unit alone", "#the system alone", "#the system" + how(asked).replaceFirst(",", ""))
                : Cells.columns("time", "#a unit", "#the system"), rows), console);
        List<List<Table.Cell>> lives = new ArrayList<>();
        lives.add(List.of(Cells.words("a unit"), Cells.time(asked.unit().life(0.01)), Cells.time(asked.unit().life(0.1)),
                Cells.time(asked.unit()
                .mean())));
        lives.add(List.of(Cells.words("the system without repair"), Cells.time(asked.system().life(0.01)), Cells.time(asked.system()
                .life(0.1)),
                Cells.time(asked.system().mean())));
        asked.repair().ifPresent(repair -> lives.add(List.of(Cells.words("the system with repair"), new Table.Empty(), new Table.Empty(),
                Cells.time(repair.mean()))));
        Cells.print(new Table("Lives", Cells.columns("of", "#L1", "#L10", "#mean (MTTF)"), lives), console);
        List<String> lines = new ArrayList<>();
        if (!Double.isNaN(asked.available())) {
            lines.add("Enough units run " + Cells.percent(asked.available()) + " of the time; too few " + Cells.text((1 - asked.available())
                    * MissionLife.YEAR, QuantityKind.TIME) + " in a year" + (asked.availability().isPresent() ? asked.kept() ? ": kept, "
                    + Cells.percent(asked.availability().get()) + " was asked for." : ": not kept, " + Cells.percent(asked.availability()
                            .get())
                    + " was asked for." : "."));
        }
        asked.longest().ifPresent(longest -> lines.add("All units exchanged every " + Cells.years(longest) + " or more often keep "
                + Cells.percent(asked.availability().orElseThrow()) + "."));
        lines.add("Exchanges: " + Cells.plain(asked.exchanges() * MissionLife.YEAR * asked.fleet()) + " units in a year in the long run"
                + (asked.fleet() > 1 ? ", of " + asked.fleet() + " systems" : "") + (asked.repair().isEmpty() && asked.interval().isEmpty()
                ? ", if each is exchanged when it fails." : "."));
        asked.spares().ifPresent(spares -> lines.add(spares + (spares == 1 ? " spare lasts " : " spares last ")
                + Cells.years(asked.restocking()
                .orElseThrow()) + " at " + Cells.stated(asked.confidence()) + " for what fails" + (asked.interval().isPresent()
                ? "; exchanges at visits come on top." : ".")));
        Cells.print("Upkeep", lines, console);
        List<String> cautions = new ArrayList<>();
        if (asked.shapeAssumed()) {
            cautions.add("The shape of 3 is common practice for ball bearings, not known of these units; with 1.1, L10 of the system is "
                    + Cells.years(new SystemSurvival(asked.system().graph(), List.of(Weibull.through(asked.unit().life(0.1), 0.1,
                    LifeModel.LOWEST_SHAPE))).life(0.1)) + ".");
        }
        if (asked.repair().isPresent()) {
            cautions.add("With repair each unit fails at its mean rate in the long run, whatever its age.");
        }
        Cells.print("To know before", cautions, console);
    }

    private static String json(Case asked) {
        return JsonDocument.of(json -> {
            json.beginObject().name("format").value(1).name("sentence").value(sentence(asked)).name("needed").value(asked.needed())
                    .name("units")
                    .value(asked.units()).name("survival").beginArray();
            for (double time : asked.times()) {
                json.beginObject().name("time").value(time).name("unit").value(asked.unit().survival(time)).name("system")
                        .value(asked.survival(time))
                        .endObject();
            }
            json.endArray();
            TestJson.number(json, "l1", asked.system().life(0.01));
            TestJson.number(json, "l10", asked.system().life(0.1));
            TestJson.number(json, "mean", asked.system().mean());
            TestJson.number(json, "meanWithRepair", asked.repair().map(Repair::mean).orElse(Double.NaN));
            TestJson.number(json, "availability", asked.available());
            json.name("kept");
            if (asked.availability().isPresent() && !Double.isNaN(asked.available())) {
                json.value(asked.kept());
            } else {
                json.nullValue();
            }
            TestJson.number(json, "longestInterval", asked.longest().orElse(Double.NaN));
            TestJson.number(json, "exchangesPerYear", asked.exchanges() * MissionLife.YEAR * asked.fleet());
            json.name("spares");
            if (asked.spares().isPresent()) {
                json.value(asked.spares().get());
            } else {
                json.nullValue();
            }
            json.endObject();
        });
    }
}
