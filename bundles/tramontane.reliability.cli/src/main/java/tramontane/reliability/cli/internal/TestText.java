package tramontane.reliability.cli.internal;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import tramontane.analysis.Table;
import tramontane.cli.Console;
import tramontane.physics.units.QuantityKind;
import tramontane.reliability.cli.internal.Evaluated.Answer;
import tramontane.reliability.cli.internal.Evaluated.Estimate;
import tramontane.reliability.statistics.Bounds;
import tramontane.reliability.statistics.FailureCriteria;
import tramontane.reliability.statistics.Family;
import tramontane.reliability.statistics.LifeTable;
import tramontane.reliability.statistics.Observation;
import tramontane.reliability.statistics.Quantity;
import tramontane.reliability.statistics.Readings;

/** An evaluated life test, for people. */
final class TestText {

    private static final double SHOWN = 0.1;

    private final Evaluated evaluated;
    private final Question question;
    private final LifeTable table;
    private final Console console;

    TestText(Evaluated evaluated, LifeTable table, Console console) {
        this.evaluated = evaluated;
        this.question = evaluated.question();
        this.table = table;
        this.console = console;
    }

    void print() {
        evaluated.answers().forEach(answer -> Cells.print(sentence(answer, question), console));
        onTest();
        verdicts();
        evaluated.answers().forEach(this::answer);
        evaluated.effect().ifPresent(this::effect);
        goodness();
        shown();
        Cells.print("To know before", evaluated.cautions(), console);
    }

    /** The answer, first of all. */
    static String sentence(Answer answer, Question question) {
        String lead = answer.where().isEmpty() ? "" : answer.where() + ": ";
        if (answer.estimates().isEmpty()) {
            String none = answer.data().failures() == 0 ? "no unit failed" : answer.without().getFirst().sentence();
            String text = answer.known().map(known -> "L10 is at least " + question.time(known.demonstratedLife(SHOWN,
                    question.confidence())) + " at "
                    + Cells.stated(question.confidence()) + " (one-sided, shape " + Cells.written(known.shape()) + " known); " + none + ".")
                    .orElseGet(() -> "no life can be given: " + none + "; a known shape (--shape) gives the life that this shows, and --at"
                    + " one by the"
                            + " other temperatures.");
            return lead.isEmpty() ? Cells.capital(text) : lead + text;
        }
        Question.Named life = question.lives().stream().filter(each -> each.failed() == SHOWN).findFirst().orElse(question.lives()
                .getFirst());
        Bounds bounds = answer.best().of(quantity(life));
        String value = (life.mean() ? lead.isEmpty() ? "Mean life" : "mean life" : life.name()) + " " + question.time(bounds.estimate());
        if (answer.best().bounds().isEmpty()) {
            return lead + value + " (" + question.methodWords() + ").";
        }
        return lead + value + ", " + range(bounds, question) + " at " + Cells.stated(question.confidence()) + " (" + question.methodWords()
                + ").";
    }

    /** From lower to upper, the unit once where it is the same. */
    private static String range(Bounds bounds, Question question) {
        boolean open = !Double.isFinite(bounds.upper()) || bounds.upper() > 1e300;
        String lower = question.time(bounds.lower());
        if (open) {
            return "at least " + lower;
        }
        String upper = question.time(bounds.upper());
        String unit = upper.substring(upper.indexOf(' '));
        return (lower.endsWith(unit) ? lower.substring(0, lower.length() - unit.length()) : lower) + " to " + upper;
    }

    static Quantity quantity(Question.Named life) {
        return life.mean() ? Quantity.mean() : Quantity.life(life.failed());
    }

    private void onTest() {
        boolean temperature = evaluated.groups().stream().anyMatch(group -> group.temperature().isPresent());
        boolean speed = evaluated.groups().stream().anyMatch(group -> group.speed().isPresent());
        List<String> columns = new ArrayList<>(List.of("failures known", "#units", "#failed", "#survived", "#longest"));
        if (speed) {
            columns.addFirst("#speed");
        }
        if (temperature) {
            columns.addFirst("#temperature");
        }
        List<List<Table.Cell>> rows = new ArrayList<>();
        for (LifeTable.Group group : evaluated.groups()) {
            List<Observation> seen = group.data().observations();
            int units = group.data().units();
            List<Table.Cell> row = new ArrayList<>();
            if (temperature) {
                row.add(Cells.amount(group.temperature().orElseThrow(), QuantityKind.TEMPERATURE));
            }
            if (speed) {
                row.add(Cells.amount(group.speed().orElseThrow(), QuantityKind.ROTATIONAL_SPEED));
            }
            row.addAll(List.of(Cells.words(known(seen)), Cells.count(units), Cells.count(group.data().failures()), Cells.count(units
                    - group.data().failures()), Cells.time(seen.stream().mapToDouble(each -> each.survived() ? each.from() : each.to())
                    .max()
                    .orElseThrow())));
            rows.add(row);
        }
        Cells.print(new Table("On test", Cells.columns(columns.toArray(String[]::new)), rows), question.units(), console);
    }

    private static String known(List<Observation> seen) {
        boolean exact = seen.stream().anyMatch(Observation::exact);
        boolean between = seen.stream().anyMatch(each -> !each.exact() && !each.survived());
        return exact && between ? "some between looks" : exact ? "to the moment" : between ? "between looks" : "none";
    }

    private void verdicts() {
        if (table.readings().isEmpty()) {
            return;
        }
        List<List<Table.Cell>> rows = new ArrayList<>();
        for (LifeTable.UnitReadings unit : table.readings()) {
            Readings.Verdict verdict = unit.readings().judge(question.criteria());
            rows.add(List.of(Cells.words(unit.unit()), Cells.words(question.time(verdict.observation().from())), verdict.observation()
                    .survived()
                    ? Cells.words("survived") : Cells.words(question.time(verdict.observation().to())),
                    Cells.words(String.join(", ", verdict.criteria().stream().map(FailureCriteria.Criterion::words).toList()))));
        }
        Cells.print(new Table("Units by their readings", Cells.columns("unit", "#good until", "#failed by", "because"), rows),
                question.units(),
                console);
    }

    private void answer(Answer answer) {
        if (answer.estimates().isEmpty()) {
            return;
        }
        Estimate best = answer.best();
        String behind = answer.where().isEmpty() ? "" : ", " + Cells.small(answer.where());
        boolean lognormal = best.family() == Family.LOGNORMAL;
        List<List<Table.Cell>> rows = new ArrayList<>();
        rows.add(row(lognormal ? "median" : best.family() == Family.EXPONENTIAL ? "mean life" : "scale (63.2 % failed)",
                best.of(Quantity.scale()),
                QuantityKind.TIME));
        if (best.family() != Family.EXPONENTIAL) {
            String name = lognormal ? "spread of ln life" : "shape";
            rows.add(best.shapeKnown() ? List.of(Cells.words(name + ", known"), Cells.number(best.shape()), new Table.Empty(),
                    new Table.Empty())
                    : row(name, best.of(Quantity.shape()), QuantityKind.NUMBER));
        }
        for (Question.Named life : question.lives()) {
            rows.add(row(life.mean() ? "mean life" : "life " + life.name(), best.of(quantity(life)), QuantityKind.TIME));
        }
        for (double time : question.times()) {
            rows.add(row("survival at " + question.time(time), best.of(Quantity.survival(time)), QuantityKind.PROBABILITY));
        }
        String bounds = best.bounds().isEmpty() ? "" : ", bounds at " + Cells.stated(question.confidence());
        Cells.print(new Table(Cells.capital(best.family().word()) + " distribution" + behind + bounds, best.bounds().isEmpty()
                ? Cells.columns("what", "#estimate") : Cells.columns("what", "#estimate", "#lower", "#upper"), best.bounds().isEmpty()
                ? rows.stream().map(row -> row.subList(0, 2)).toList() : rows), console);
    }

    /** Cells with units of their own, as times and numbers stand in one table. */
    private List<Table.Cell> row(String name, Bounds bounds, QuantityKind kind) {
        return List.of(Cells.words(name), text(bounds.estimate(), kind), text(bounds.lower(), kind), text(bounds.upper(), kind));
    }

    private Table.Cell text(double value, QuantityKind kind) {
        return Cells.words(Double.isFinite(value) && value < 1e300 ? kind.equals(QuantityKind.TIME) ? question.time(value)
                : Cells.text(value, kind) : "none");
    }

    private void effect(Evaluated.Effect effect) {
        List<List<Table.Cell>> rows = new ArrayList<>();
        Bounds energy = effect.energy();
        rows.add(List.of(Cells.words("activation energy"), Cells.words(electronVolts(energy.estimate())),
                Cells.words(electronVolts(energy.lower())),
                Cells.words(electronVolts(energy.upper()))));
        rows.add(row("factor per 10 K", effect.perTenKelvin(), QuantityKind.NUMBER));
        Cells.print(new Table("What temperature does, bounds at " + Cells.stated(question.confidence()), Cells.columns("what", "#estimate",
                "#lower",
                "#upper"), rows), console);
    }

    private static String electronVolts(double value) {
        return Double.isFinite(value) ? Cells.plain(value) + " eV" : "none";
    }

    private void goodness() {
        List<String> lines = new ArrayList<>();
        for (Answer answer : evaluated.answers()) {
            String lead = answer.where().isEmpty() ? "" : answer.where() + ": ";
            for (Estimate estimate : answer.estimates()) {
                String correlation = estimate.correlation().isPresent() ? "correlation on its probability paper "
                        + Cells.plain(estimate.correlation().getAsDouble()) : "";
                lines.add((lead.isEmpty() ? Cells.capital(estimate.family().word()) : lead + estimate.family().word()) + ": "
                        + (Double.isNaN(estimate.logLikelihood()) ? correlation : String.format(
                        java.util.Locale.ROOT, "log-likelihood %.2f, AIC %.2f (times in h)", estimate.logLikelihood(), estimate.aic())
                        + (correlation.isEmpty() ? "" : ", " + correlation)) + ".");
            }
            if (answer.data().failures() > 0) {
                answer.without().forEach(each -> lines.add((lead.isEmpty() ? Cells.capital(each.family().word()) : lead + each.family()
                        .word())
                        + ": " + each.sentence() + "."));
            }
            answer.ageing().ifPresent(test -> lines.add((lead.isEmpty() ? "Exponential" : lead + "exponential") + " against Weibull: p "
                    + Cells.plain(test.p()) + (test.p() < 0.05
                    ? "; the failure rate changes with age." : "; units that do not age are tenable.")));
            answer.distance().ifPresent(distance -> lines.add(lead + "Anderson-Darling distance of the " + answer.best().family().word()
                    + " fit "
                    + Cells.plain(distance.statistic()) + ": p " + Cells.plain(distance.p()) + " of " + distance.samples()
                    + " simulated tests."));
        }
        evaluated.effect().ifPresent(effect -> {
            effect.commonShape().ifPresent(test -> lines.add("One shape at all temperatures: p " + Cells.plain(test.p()) + "."));
            effect.law().ifPresent(test -> lines.add("Law of temperature against a scale of its own at each: p " + Cells.plain(test.p())
                    + "."));
        });
        Cells.print("Goodness of fit", lines, console);
    }

    private void shown() {
        List<String> lines = new ArrayList<>();
        for (Answer answer : evaluated.answers()) {
            String lead = answer.where().isEmpty() ? "" : answer.where() + ": ";
            Optional<String> exact = answer.known().map(known -> "L10 of at least " + question.time(known.demonstratedLife(SHOWN,
                    question.confidence())) + ", exactly, for a shape of " + Cells.written(known.shape()) + ".");
            Optional<String> fitted = answer.estimates().isEmpty() || answer.best().shown().isEmpty() ? Optional.empty()
                    : Optional.of("L10 of at least " + question.time(answer.best().shown().getAsDouble()) + " (" + question.methodWords()
                    + ").");
            exact.or(() -> fitted).ifPresent(text -> lines.add(lead + text));
        }
        Cells.print("Shown at " + Cells.stated(question.confidence()) + ", one-sided", lines, console);
    }
}
