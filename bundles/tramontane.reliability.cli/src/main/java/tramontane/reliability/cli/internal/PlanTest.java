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
import tramontane.reliability.statistics.LifeTestPlan;
import tramontane.reliability.statistics.LifeTestPlan.FailedUnits;

/** How many units must run how long to show a life. */
final class PlanTest extends TerminalVerb {

    private static final String LIFE = "--life";
    private static final String FAILED = "--failed";
    private static final String CONFIDENCE = "--confidence";
    private static final String UNITS = "--units";
    private static final String TIME = "--time";
    private static final String SHAPE = "--shape";
    private static final String FAILURES = "--failures";
    private static final String FAILED_UNITS = "--failed-units";
    private static final int MOST_UNITS = 1_000_000;
    private static final List<Double> RATIOS = List.of(0.5, 0.75, 1.0, 1.5, 2.0, 3.0, 5.0);
    private static final List<Double> CHANCES = List.of(0.5, 0.9);

    PlanTest() {
        super("life plan", "How many units must run how long to show a life; the chance to pass.");
    }

    @Override
    protected Syntax syntax() {
        return Relation.options(new Syntax(name())
                .option(LIFE, "TIME", "The life to be shown; must be given.")
                .option(FAILED, "SHARE", "Share that may have failed by then; standard 10 %, which is L10.")
                .option(CONFIDENCE, "SHARE", "At which it is shown, one-sided; standard 90 %.")
                .option(UNITS, "NUMBER", "So many units are tested; the time is found.")
                .option(TIME, "TIME", "Each unit runs so long; the number of units is found. With --units the life that this shows.")
                .option(SHAPE, "NUMBER", "Weibull shape; standard 3, common for ball bearings.")
                .option(FAILURES, "NUMBER", "So many may fail; standard 0.")
                .option(FAILED_UNITS, "WORD", "What is done with those: removed (standard), or repaired, which ages as before."))
                .option(Options.FORMAT, "FORMAT", "text (standard) or json.")
                .footer("Exit codes:",
                        "  0  planned",
                        "  2  the command line has mistakes",
                        "",
                        "Examples:",
                        "  tramontane life plan --life \"60000 h\" --units 20 --shape 3",
                        "  tramontane life plan --life \"60000 h\" --time \"3000 h\" --failures 1",
                        "                       --factor 1.5 --test-at \"70 °C\" --rated-at \"40 °C\"");
    }

    /** A plan and its two numbers. */
    private record Planned(LifeTestPlan plan, int units, double time, boolean bothGiven, Optional<Relation> relation,
            boolean shapeAssumed) {

        double shownLife() {
            return plan.shownLife(units, time);
        }
    }

    @Override
    protected int run(Syntax.Given given, Console console) throws Ending {
        Format format = Options.format(given, Format.TEXT, Format.JSON);
        double life = Amounts.needed(Amounts.time(given, LIFE), name(), LIFE, "the life to be shown, for example \"60000 h\"");
        double failed = Amounts.share(given, FAILED, "10 %").orElse(0.1);
        double confidence = Amounts.share(given, CONFIDENCE, "90 %").orElse(0.9);
        Optional<Double> shape = Amounts.shape(given, SHAPE);
        int failures = Amounts.whole(given, FAILURES, 0, 10_000).orElse(0);
        FailedUnits done = Amounts.word(given, FAILED_UNITS, "removed", "repaired").equals("removed") ? FailedUnits.REMOVED
                : FailedUnits.REPAIRED;
        Optional<Integer> units = Amounts.whole(given, UNITS, 1, MOST_UNITS);
        Optional<Double> time = Amounts.time(given, TIME);
        if (units.isEmpty() && time.isEmpty()) {
            throw Ending.badInput(name() + ": " + UNITS + " or " + TIME
                    + " is missing: give one, the other is found. See \"tramontane help "
                    + name() + "\".");
        }
        if (done == FailedUnits.REMOVED && units.isPresent() && units.get() <= failures) {
            throw Ending.badInput(UNITS + " " + units.get() + ": more units are needed than the " + failures + " of " + FAILURES + ".");
        }
        Optional<Relation> relation = Relation.of(given);
        LifeTestPlan plan = new LifeTestPlan(life, failed, confidence, shape.orElse(LifeModel.SHAPE), failures,
                relation.map(Relation::acceleration).orElse(1.0), done);
        Planned planned;
        try {
            planned = new Planned(plan, units.isPresent() ? units.get() : plan.units(time.get()), time.isPresent() ? time.get()
                    : plan.time(units.get()),
                    units.isPresent() && time.isPresent(), relation, shape.isEmpty());
        } catch (IllegalArgumentException impossible) {
            throw Ending.badInput(TIME + " \"" + given.option(TIME).orElse("")
                    + "\" is too short: more than 1000000000 units would be needed; run"
                    + " longer or hotter.");
        }
        if (format == Format.JSON) {
            console.data().print(json(planned));
        } else {
            text(planned, console);
        }
        return ExitCode.FINE;
    }

    private static String sentence(Planned planned) {
        LifeTestPlan plan = planned.plan();
        String units = planned.units() + (planned.units() == 1 ? " unit" : " units");
        String life = "L" + Cells.stated(plan.failed()).replace(" %", "");
        String at = planned.relation().map(each -> " at " + Cells.text(each.testAt(), QuantityKind.TEMPERATURE)).orElse("");
        String rated = planned.relation().map(each -> " at " + Cells.text(each.ratedAt(), QuantityKind.TEMPERATURE)).orElse("");
        String passed = plan.failures() == 0 ? "without a failure" : "with at most " + plan.failures() + (plan.failures() == 1 ? " failure"
                : " failures");
        String shape = " at " + Cells.stated(plan.confidence()) + " (shape " + Cells.written(plan.shape()) + (planned.shapeAssumed()
                ? ", assumed" : "")
                + ").";
        if (planned.bothGiven()) {
            return units + " that run " + Cells.years(planned.time()) + " each" + at + " " + passed + " show " + life + " "
                    + Cells.years(planned.shownLife()) + rated + shape;
        }
        return units + " must run " + Cells.years(planned.time()) + " each" + at + " " + passed + " to show " + life + " "
                + Cells.years(plan.life())
                + rated + shape;
    }

    private static void text(Planned planned, Console console) {
        LifeTestPlan plan = planned.plan();
        Cells.print(sentence(planned), console);
        planned.relation().ifPresent(relation -> Cells.print("Units age " + Cells.plain(plan.acceleration())
                + " times as fast in the test: "
                + relation.words() + ".", console));
        List<List<Table.Cell>> rows = new ArrayList<>();
        for (double ratio : RATIOS) {
            rows.add(List.of(Cells.words(Cells.plain(ratio)), Cells.time(ratio * plan.life()),
                    Cells.share(plan.passProbability(planned.units(),
                    planned.time(), ratio))));
        }
        Cells.print(new Table("Chance to pass", Cells.columns("#true life over wanted", "#true life", "#chance to pass"), rows), console);
        console.out().println();
        for (double chance : CHANCES) {
            Cells.print("To pass with " + Cells.stated(chance) + ", units must truly live " + Cells.plain(plan.ratioToPass(planned.units(),
                    planned.time(),
                    chance)) + " times the wanted life.", console);
        }
        if (!planned.bothGiven()) {
            Cells.print(new Table("By the shape, for " + planned.units() + (planned.units() == 1 ? " unit" : " units"),
                    Cells.columns("#shape",
                    "#time of each"), shapes(plan).stream().map(shape -> List.of(Cells.number(shape), Cells.time(shaped(plan, shape)
                    .time(planned.units())))).toList()), console);
        }
        List<String> cautions = new ArrayList<>();
        if (planned.shapeAssumed()) {
            cautions.add("The shape of 3 is common practice for ball bearings, not known of these units; the table above shows what it"
                    + " decides.");
        }
        if (planned.relation().isPresent()) {
            cautions.add("The test shows the life at " + Cells.text(planned.relation().get().ratedAt(), QuantityKind.TEMPERATURE)
                    + " only as far as the law of temperature holds.");
        }
        Cells.print("To know before", cautions, console);
    }

    private static List<Double> shapes(LifeTestPlan plan) {
        return List.of(LifeModel.LOWEST_SHAPE, plan.shape(), LifeModel.HIGHEST_SHAPE).stream().distinct().sorted().toList();
    }

    private static LifeTestPlan shaped(LifeTestPlan plan, double shape) {
        return new LifeTestPlan(plan.life(), plan.failed(), plan.confidence(), shape, plan.failures(), plan.acceleration(),
                plan.failedUnits());
    }

    private static String json(Planned planned) {
        LifeTestPlan plan = planned.plan();
        return JsonDocument.of(json -> {
            json.beginObject().name("format").value(1).name("sentence").value(sentence(planned)).name("life").value(plan.life())
                    .name("failed")
                    .value(plan.failed()).name("confidence").value(plan.confidence()).name("shape").value(plan.shape()).name("failures")
                    .value(plan.failures()).name("failedUnits").value(plan.failedUnits() == FailedUnits.REMOVED ? "removed" : "repaired")
                    .name("acceleration").value(plan.acceleration()).name("units").value(planned.units()).name("time")
                    .value(planned.time());
            TestJson.number(json, "shownLife", planned.shownLife());
            TestJson.number(json, "shownConfidence", plan.shownConfidence(planned.units(), planned.time()));
            json.name("chances").beginArray();
            for (double ratio : RATIOS) {
                json.beginObject().name("ratio").value(ratio).name("chance").value(plan.passProbability(planned.units(), planned.time(),
                        ratio)).endObject();
            }
            json.endArray().name("ratiosToPass").beginArray();
            for (double chance : CHANCES) {
                json.beginObject().name("chance").value(chance).name("ratio").value(plan.ratioToPass(planned.units(), planned.time(),
                        chance)).endObject();
            }
            json.endArray().endObject();
        });
    }
}
