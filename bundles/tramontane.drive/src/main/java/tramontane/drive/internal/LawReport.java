package tramontane.drive.internal;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import tramontane.analysis.Amount;
import tramontane.analysis.Figure;
import tramontane.analysis.Finding;
import tramontane.analysis.Overview;
import tramontane.analysis.Result;
import tramontane.analysis.Severity;
import tramontane.analysis.Table;
import tramontane.analysis.Trace;
import tramontane.drive.ComputedLaws;
import tramontane.drive.LawDrive;
import tramontane.model.ControlLaw;
import tramontane.model.Design;
import tramontane.model.Requirement;
import tramontane.physics.units.QuantityKind;
import tramontane.thermal.ThermalModel;

/** What there is to say of computed control laws: figures, findings, tables, and where they come from. */
final class LawReport {

    private static final double ALIKE = 0.005;

    private final LawComputation computation;
    private final Design changed;
    private final List<ControlLaw> computed;
    private final boolean holds;
    private final List<LawCase> cases;
    private final List<Finding> findings;

    /**
     * Of laws.
     *
     * @param computation how they were computed
     * @param changed     the design with all of them
     * @param computed    the laws, in the order of those that act
     * @param holds       whether all holds with them
     */
    LawReport(LawComputation computation, Design changed, List<ControlLaw> computed, boolean holds) {
        this.computation = computation;
        this.changed = changed;
        this.computed = computed;
        this.holds = holds;
        cases = computation.cases();
        findings = computation.findings();
    }

    Result<ComputedLaws> result() {
        List<ThermalModel.Acting> laws = cases.getFirst().laws;
        List<ComputedLaws.Law> told = new ArrayList<>();
        List<Figure> figures = new ArrayList<>();
        List<Overview> overviews = new ArrayList<>();
        boolean enough = cases.stream().allMatch(each -> each.missing == 0);
        for (int i = 0; i < laws.size(); i++) {
            ControlLaw law = computed.get(i);
            double[] temperature = law.temperature().toArray();
            double[] setting = law.speed().toArray();
            List<ComputedLaws.Point> points = new ArrayList<>();
            double steepest = 0;
            for (int k = 0; k < temperature.length; k++) {
                points.add(new ComputedLaws.Point(temperature[k], setting[k]));
                steepest = k == 0 ? 0 : Math.max(steepest, (setting[k] - setting[k - 1]) / (temperature[k] - temperature[k - 1]));
            }
            List<ComputedLaws.Case> takes = new ArrayList<>();
            for (LawCase each : cases) {
                takes.add(new ComputedLaws.Case(each.id, each.declared, each.needed[i], each.sensor[i], each.setting(each.now, i),
                        each.setting(each.then, i), each.missing,
                        each.held, each.gain[i]));
                figures.add(Figure.of(LawAnalysis.NEEDED, law.id(), each.needed[i]).in(each.id));
                each.setting(each.then, i).ifPresent(then -> figures.add(Figure.of(LawAnalysis.COMPUTED, law.id(), then).in(each.id)));
            }
            double most = steepest;
            int which = i;
            cases.forEach(each -> steps(each, which, law.id(), most, points));
            ComputedLaws.Law one = new ComputedLaws.Law(law.id(), law.sensor(), laws.get(i).banks(), LawComputation.aim(laws, computation.decoding()),
                    points, steepest, holds && enough, takes);
            told.add(one);
            overviews.add(new Overview(pointTable(one), List.of()));
            overviews.add(new Overview(caseTable(one), List.of(LawAnalysis.NEEDED.id(), LawAnalysis.COMPUTED.id())));
            say(one, computation.decoding().law(law), holds);
        }
        Result<ComputedLaws> result = new Result<>(Optional.of(new ComputedLaws(told)), figures, findings);
        broken();
        return result.with(overviews.toArray(Overview[]::new));
    }

    private void say(ComputedLaws.Law law, LawDrive drive, boolean holds) {
        String what = "control law " + law.law();
        for (LawCase each : cases) {
            if (each.missing == 0) {
                continue;
            }
            boolean reserved = each.limited && each.missing <= computation.reserve();
            Object[] why = !each.limited ? new Object[] {"no setting of " + what + " meets " + each.held + ": not even full speed does"}
                    : reserved ? new Object[] {"no setting of " + what + " leaves the reserve of ", kelvins(computation.reserve()),
                            ": even full speed is ",
                        kelvins(each.missing), " short of it"}
                    : new Object[] {"no setting of " + what + " holds the " + each.held + ": even full speed is ",
                            kelvins(each.missing - computation.reserve()), " short"};
            findings.add(Finding.of(reserved ? Severity.CAUTION : Severity.NOT_MET, "", why)
                    .remedy("take stronger or more movers, or ease the air path")
                    .in(each.id));
        }
        double now = mean(each -> each.setting(each.now, index(law)));
        double then = mean(each -> each.setting(each.then, index(law)));
        if (holds && law.holds() && then < now - ALIKE) {
            findings.add(Finding.note("", what + " asks for more than it must: ", new Amount(now, QuantityKind.FRACTION),
                    " on the mean of all conditions,"
                    + " where a law computed for least " + law.aim() + " asks for ", new Amount(then, QuantityKind.FRACTION),
                            " and holds all limits")
                    .remedy("take the computed points; the export control-law writes them as a table"));
        } else if (!holds) {
            findings.add(Finding.caution("", "the law computed for " + what + " was not found to hold all limits in all conditions").remedy(
                    "leave a larger reserve in its drive section"));
        }
        if (drive.lowest().isEmpty() && computation.needed(cases.getFirst().laws.get(index(law))).isEmpty()) {
            findings.add(Finding.note("", "nothing says from which setting the movers of " + what + " run; the computed law goes down to ",
                    new Amount(LawComputation.ASSUMED_LOWEST, QuantityKind.FRACTION))
                            .remedy("state startSetting in the drive section of the part, or lowest in that of the law")
                    .source("common practice"));
        }
        if (!computation.idle().isEmpty()) {
            findings.add(Finding.note("", what + " is computed without " + String.join(", ", computation.idle()) + ", which "
                    + (computation.idle().size() == 1 ? "states its" : "state their")
                    + " own speed setting"));
        }
    }

    /** The mean over all conditions of the highest setting in each. */
    private double mean(java.util.function.Function<LawCase, Optional<Double>> setting) {
        return cases.stream().collect(Collectors.groupingBy(each -> each.declared, LinkedHashMap::new, Collectors.mapping(each -> setting.apply(each)
                .orElse(Double.NaN), Collectors.reducing(Double.NEGATIVE_INFINITY, Math::max)))).values().stream()
                        .mapToDouble(Double::doubleValue).average()
                .orElse(Double.NaN);
    }

    /** What the computed laws would break that holds with the laws as they are. */
    private void broken() {
        Wishes wishes = computation.wishes();
        for (LawCase each : cases) {
            if (each.then.isEmpty() || each.now.isEmpty()) {
                continue;
            }
            Wishes.At then = new Wishes.At(changed, each.condition, computation.models().model(changed, each.condition), each.then.get());
            Wishes.At now = new Wishes.At(computation.design(), each.condition, each.model, each.now.get());
            for (Requirement requirement : wishes.in(each.declared)) {
                if (!each.helped.contains(requirement) && wishes.margin(requirement, then) < 0 && wishes.margin(requirement, now) >= 0) {
                    List<Object> words = new ArrayList<>(List.of("with the computed laws " + wishes.name(requirement) + " would be "));
                    words.addAll(List.of(wishes.amounts(requirement, then)));
                    findings.add(Finding.caution("", words.toArray()).remedy("keep the laws as they are, or ease that requirement").in(each.id));
                }
            }
        }
    }

    private static Amount kelvins(double kelvin) {
        return new Amount(kelvin, QuantityKind.TEMPERATURE_DIFFERENCE);
    }

    private int index(ComputedLaws.Law law) {
        List<ThermalModel.Acting> laws = cases.getFirst().laws;
        for (int i = 0; i < laws.size(); i++) {
            if (laws.get(i).law().id().equals(law.law())) {
                return i;
            }
        }
        throw new IllegalStateException("no law " + law.law());
    }

    private void steps(LawCase each, int law, String id, double slope, List<ComputedLaws.Point> points) {
        if (!computation.run().trace().recording()) {
            return;
        }
        computation.run().trace().step(new Trace.Step(LawAnalysis.NEEDED.id(), id, LawAnalysis.LEAST, each.needed[law], List.of(
                new Trace.Term("reserve", QuantityKind.TEMPERATURE_DIFFERENCE, computation.reserve(), "drive section of control law " + id),
                new Trace.Term("lowest setting that is looked at", QuantityKind.FRACTION, each.lowest[law],
                        "drive sections of law and part, or assumed"),
                new Trace.Term("sensor at that setting", QuantityKind.TEMPERATURE, each.sensor[law], "what if: " + each.id + ", held by "
                        + each.held),
                new Trace.Term("sensor tolerance that the law leaves", QuantityKind.TEMPERATURE_DIFFERENCE, computation.decoding()
                        .law(each.laws.get(law).law()).tolerance(),
                        "drive section of control law " + id))));
        List<Trace.Term> terms = new ArrayList<>();
        terms.add(new Trace.Term("steepest slope k, 1/K", QuantityKind.NUMBER, slope,
                "gain margins at each setting, and 10 % per kelvin at most (common practice)"));
        points.forEach(point -> terms.add(new Trace.Term("setting at " + Math.round(10 * (point.temperature() - 273.15)) / 10.0 + " °C",
                QuantityKind.FRACTION,
                point.setting(), "computed")));
        each.setting(each.then, law).ifPresent(then -> computation.run().trace().step(new Trace.Step(LawAnalysis.COMPUTED.id(), id,
                LawAnalysis.THROUGH, then, terms)));
    }

    private static Table pointTable(ComputedLaws.Law law) {
        return new Table("Computed for " + law.law() + ", least " + law.aim(), List.of(new Table.Column("point", false),
                new Table.Column(law.sensor(), true),
                new Table.Column("setting", true)), java.util.stream.IntStream.range(0, law.points().size()).mapToObj(i -> List.<Table.Cell>of(
                        new Table.Words(Integer.toString(i + 1)), new Amount(law.points().get(i).temperature(), QuantityKind.TEMPERATURE),
                        new Amount(law.points().get(i).setting(), QuantityKind.FRACTION))).toList());
    }

    /** Of the cases of each condition the one that needs most. */
    private static List<ComputedLaws.Case> worst(List<ComputedLaws.Case> cases) {
        Map<String, ComputedLaws.Case> worst = new LinkedHashMap<>();
        cases.forEach(each -> worst.merge(each.condition(), each, (one, other) -> other.needed() > one.needed() + ALIKE ? other : one));
        return List.copyOf(worst.values());
    }

    private static Table caseTable(ComputedLaws.Law law) {
        return new Table("Settings of " + law.law(), List.of(new Table.Column("condition", false), new Table.Column("needed", true),
                new Table.Column("held by", false),
                new Table.Column(law.sensor() + " then", true), new Table.Column("with the law as it is", true),
                        new Table.Column("with the computed one", true),
                new Table.Column("gain margin", true)),
                worst(law.cases()).stream().map(each -> List.<Table.Cell>of(new Table.Words(each.id()), new Amount(each.needed(),
                        QuantityKind.FRACTION), new Table.Words(each.held()),
                        new Amount(each.sensor(), QuantityKind.TEMPERATURE), cell(each.now()), cell(each.then()),
                        each.gainMargin() < LoopAnalysis.MOST_MARGIN ? new Amount(each.gainMargin(), QuantityKind.NUMBER)
                                : new Table.Words("any"))).toList());
    }

    private static Table.Cell cell(Optional<Double> setting) {
        return setting.<Table.Cell>map(share -> new Amount(share, QuantityKind.FRACTION)).orElse(new Table.Empty());
    }
}
