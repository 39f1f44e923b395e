package tramontane.reliability.internal;

import java.util.ArrayList;
import java.util.List;
import java.util.function.ToDoubleFunction;
import tramontane.analysis.Figure;
import tramontane.analysis.FigureKind;
import tramontane.analysis.Finding;
import tramontane.analysis.Relation;
import tramontane.analysis.Run;
import tramontane.analysis.Severity;
import tramontane.analysis.Trace;
import tramontane.physics.units.QuantityKind;
import tramontane.reliability.MissionLife;
import tramontane.reliability.ServiceLife;
import tramontane.reliability.SystemLife;
import tramontane.reliability.system.MaintenanceInterval;
import tramontane.reliability.system.Repair;
import tramontane.reliability.system.Spares;
import tramontane.reliability.system.SystemSurvival;

/** Figures of redundancy, and where they come from. */
final class SystemFigures {

    private static final String SECTION = "life section of the design";
    private static final String STRETCHED = "life over the mission, stretched by the time at rest";

    private final ServiceLife service;
    private final Trace trace;
    private final Run run;
    private final List<Figure> figures = new ArrayList<>();
    private final List<Finding> findings = new ArrayList<>();

    SystemFigures(Scene scene, SystemLife life, Run run) {
        this.service = scene.service();
        this.trace = run.trace();
        this.run = run;
        life.groups().forEach(this::group);
    }

    List<Finding> findings() {
        return List.copyOf(findings);
    }

    List<Figure> figures() {
        return List.copyOf(figures);
    }

    private void group(SystemLife.Group group) {
        add(group, Figures.SYSTEM_SPARE, group.spare(), Figures.SMALLEST, List.of(new Trace.Term("sets of failed movers that were looked at", QuantityKind.COUNT,
                group.steps().size(), "what if")));
        List<Trace.Term> terms = terms(group);
        service.serviceLife().ifPresent(end -> {
            List<Trace.Term> more = new ArrayList<>(terms);
            more.add(new Trace.Term("service life", QuantityKind.TIME, end, SECTION));
            service.interval().ifPresent(interval -> more.add(new Trace.Term("time between visits, all renewed", QuantityKind.TIME, interval, SECTION)));
            bounded(group, Figures.SYSTEM_SURVIVAL, Figures.SYSTEM_RELATION, survival -> survival(survival, service, end), more);
        });
        bounded(group, Figures.SYSTEM_L10, Figures.SYSTEM_RELATION, survival -> survival.life(0.1), terms);
        bounded(group, Figures.SYSTEM_MEAN, Figures.SYSTEM_RELATION, SystemSurvival::mean, terms);
        service.repair().ifPresent(time -> repaired(group, time, terms));
        visited(group, terms);
        fleet(group);
    }

    private void repaired(SystemLife.Group group, double time, List<Trace.Term> terms) {
        int crews = service.crews() == ServiceLife.Crews.ONE ? 1 : Repair.EACH;
        List<Trace.Term> more = new ArrayList<>(means(group));
        more.addAll(terms.subList(group.survival().lives().size(), terms.size()));
        more.add(new Trace.Term("time to repair, " + (crews == 1 ? "one after the other" : "all at once"), QuantityKind.TIME, time, SECTION));
        bounded(group, Figures.REPAIRED_MEAN, Figures.MARKOV, survival -> repair(survival, time, crews).mean(), more);
        bounded(group, Figures.AVAILABILITY, Figures.MARKOV, survival -> repair(survival, time, crews).availability(), more);
        bounded(group, Figures.DOWNTIME, Figures.MARKOV, survival -> repair(survival, time, crews).downTime(MissionLife.YEAR), more);
        service.serviceLife().ifPresent(end -> {
            more.add(new Trace.Term("service life", QuantityKind.TIME, end, SECTION));
            bounded(group, Figures.REPAIRED_SURVIVAL, Figures.MARKOV, survival -> repair(survival, time, crews).survival(end), more);
        });
    }

    private static Repair repair(SystemSurvival survival, double time, int crews) {
        return Repair.of(survival.graph(), survival.lives(), time, crews);
    }

    private void visited(SystemLife.Group group, List<Trace.Term> terms) {
        service.interval().ifPresent(interval -> {
            List<Trace.Term> more = new ArrayList<>(terms);
            more.add(new Trace.Term("time between visits τ, all renewed", QuantityKind.TIME, interval, SECTION));
            bounded(group, Figures.VISIT_AVAILABILITY, Figures.VISITS, survival -> new MaintenanceInterval(survival).availability(interval), more);
        });
        service.availability().ifPresent(availability -> {
            List<Trace.Term> more = new ArrayList<>(terms);
            more.add(new Trace.Term("availability that is asked for A", QuantityKind.PROBABILITY, availability, SECTION));
            bounded(group, Figures.INTERVAL, Figures.VISITS, survival -> new MaintenanceInterval(survival).longestForAvailability(availability), more);
        });
    }

    /** What a fleet uses up; nothing that stands in several banks, as their parts differ. */
    private void fleet(SystemLife.Group group) {
        List<Trace.Term> terms = means(group);
        terms.add(new Trace.Term("movers", QuantityKind.COUNT, group.graph().units(), "air path"));
        terms.add(new Trace.Term("fleet", QuantityKind.COUNT, service.fleet(), SECTION));
        bounded(group, Figures.FLEET_FAILURES, Figures.RENEWAL, survival -> service.fleet() * rate(survival) * MissionLife.YEAR, terms);
        if (!group.place().isEmpty()) {
            service.restocking().ifPresent(time -> {
                terms.add(new Trace.Term("restocking time", QuantityKind.TIME, time, SECTION));
                terms.add(new Trace.Term("confidence", QuantityKind.PROBABILITY, service.confidence(), SECTION));
                bounded(group, Figures.FLEET_SPARES, Figures.POISSON, survival -> Spares.of(rate(survival), time, service.fleet()).needed(service.confidence()), terms);
            });
        }
    }

    /** Failures per second of the movers of one group, each exchanged on failure, in the long run. */
    private static double rate(SystemSurvival survival) {
        return survival.graph().states().getFirst().failures().stream().mapToDouble(failure -> failure.units()
                * MaintenanceInterval.exchangesOnFailure(survival.lives().get(failure.kind()))).sum();
    }

    private static List<Trace.Term> means(SystemLife.Group group) {
        List<Trace.Term> terms = new ArrayList<>();
        for (int kind = 0; kind < group.survival().lives().size(); kind++) {
            terms.add(new Trace.Term("mean life of a mover in calendar time" + numbered(group, kind), QuantityKind.TIME, group.survival().lives().get(kind).mean(), STRETCHED));
        }
        return terms;
    }

    private static String numbered(SystemLife.Group group, int kind) {
        return group.survival().lives().size() > 1 ? ", kind " + (kind + 1) : "";
    }

    /** Survival to a time, with all renewed at visits where there are any. */
    static double survival(SystemSurvival survival, ServiceLife service, double time) {
        return service.interval().map(interval -> survival.survival(time, interval)).orElseGet(() -> survival.survival(time));
    }

    private List<Trace.Term> terms(SystemLife.Group group) {
        List<Trace.Term> terms = new ArrayList<>();
        for (int kind = 0; kind < group.survival().lives().size(); kind++) {
            terms.add(new Trace.Term("L10 of a mover in calendar time" + numbered(group, kind), QuantityKind.TIME,
                    group.survival().lives().get(kind).life(0.1), STRETCHED));
        }
        terms.add(new Trace.Term("movers", QuantityKind.COUNT, group.graph().units(), "air path"));
        terms.add(new Trace.Term("movers to spare", QuantityKind.COUNT, group.spare(), Figures.SYSTEM_SPARE.id()));
        group.steps().stream().filter(step -> step.kept() && step.count() > 0).forEach(step -> terms.add(new Trace.Term("ageing of the rest with " + step.failed() + " failed",
                QuantityKind.NUMBER, step.ageing(), "what if")));
        return terms;
    }

    private void bounded(SystemLife.Group group, FigureKind kind, Relation relation, ToDoubleFunction<SystemSurvival> number, List<Trace.Term> terms) {
        if (!run.wants(kind.id())) {
            return;
        }
        double value;
        double lower;
        double upper;
        try {
            value = number.applyAsDouble(group.survival());
            if (!Double.isFinite(value)) {
                return;
            }
            lower = value;
            upper = value;
            for (SystemSurvival corner : run.brief() ? List.<SystemSurvival>of() : group.corners()) {
                run.check();
                double other = number.applyAsDouble(corner);
                lower = Math.min(lower, other);
                upper = Math.max(upper, other);
            }
        } catch (IllegalStateException beyond) { // rates so far apart that no digits are left; their message says so
            findings.add(Finding.of(Severity.NOT_JUDGED, group.place(), kind.label() + (group.place().isEmpty() ? "" : " of " + group.place())
                    + " could not be computed: " + beyond.getMessage()).remedy("look at how much faster the rest ages when movers fail"));
            return;
        }
        Figure figure = Figure.of(kind, group.place(), value);
        figures.add(run.brief() ? figure : figure.within(lower, upper));
        step(kind, group.place(), relation, value, terms);
    }

    private void add(SystemLife.Group group, FigureKind kind, double value, Relation relation, List<Trace.Term> terms) {
        if (Double.isFinite(value)) {
            figures.add(Figure.of(kind, group.place(), value));
            step(kind, group.place(), relation, value, terms);
        }
    }

    private void step(FigureKind kind, String place, Relation relation, double value, List<Trace.Term> terms) {
        if (trace.recording()) {
            LifeSteps.step(kind.id(), place, relation, value, terms, trace);
        }
    }
}
