package tramontane.reliability.internal;

import java.util.ArrayList;
import java.util.List;
import java.util.function.ToDoubleFunction;
import tramontane.analysis.Figure;
import tramontane.analysis.FigureKind;
import tramontane.analysis.Relation;
import tramontane.analysis.Trace;
import tramontane.physics.units.QuantityKind;
import tramontane.reliability.ServiceLife;
import tramontane.reliability.SystemLife;
import tramontane.reliability.system.SystemSurvival;

/** Figures of redundancy, and where they come from. */
final class SystemFigures {

    private final ServiceLife service;
    private final Trace trace;
    private final List<Figure> figures = new ArrayList<>();

    SystemFigures(Scene scene, SystemLife life, Trace trace) {
        this.service = scene.service();
        this.trace = trace;
        life.groups().forEach(this::group);
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
            more.add(new Trace.Term("service life", QuantityKind.TIME, end, "life section of the design"));
            service.interval().ifPresent(interval -> more.add(new Trace.Term("time between visits, all renewed", QuantityKind.TIME, interval, "life section of the design")));
            bounded(group, Figures.SYSTEM_SURVIVAL, Figures.SYSTEM_RELATION, survival -> survival(survival, service, end), more);
        });
        bounded(group, Figures.SYSTEM_L10, Figures.SYSTEM_RELATION, survival -> survival.life(0.1), terms);
        bounded(group, Figures.SYSTEM_MEAN, Figures.SYSTEM_RELATION, SystemSurvival::mean, terms);
    }

    /** Survival to a time, with all renewed at visits where there are any. */
    static double survival(SystemSurvival survival, ServiceLife service, double time) {
        return service.interval().map(interval -> survival.survival(time, interval)).orElseGet(() -> survival.survival(time));
    }

    private List<Trace.Term> terms(SystemLife.Group group) {
        List<Trace.Term> terms = new ArrayList<>();
        for (int kind = 0; kind < group.survival().lives().size(); kind++) {
            terms.add(new Trace.Term("L10 of a mover in calendar time" + (group.survival().lives().size() > 1 ? ", kind " + (kind + 1) : ""), QuantityKind.TIME,
                    group.survival().lives().get(kind).life(0.1), "life over the mission, stretched by the time at rest"));
        }
        terms.add(new Trace.Term("movers", QuantityKind.COUNT, group.graph().units(), "air path"));
        terms.add(new Trace.Term("movers to spare", QuantityKind.COUNT, group.spare(), Figures.SYSTEM_SPARE.id()));
        group.steps().stream().filter(step -> step.kept() && step.count() > 0).forEach(step -> terms.add(new Trace.Term("ageing of the rest with " + step.failed() + " failed",
                QuantityKind.NUMBER, step.ageing(), "what if")));
        return terms;
    }

    private void bounded(SystemLife.Group group, FigureKind kind, Relation relation, ToDoubleFunction<SystemSurvival> number, List<Trace.Term> terms) {
        double value = number.applyAsDouble(group.survival());
        if (!Double.isFinite(value)) {
            return;
        }
        double lower = value;
        double upper = value;
        for (SystemSurvival corner : group.corners()) {
            double other = number.applyAsDouble(corner);
            lower = Math.min(lower, other);
            upper = Math.max(upper, other);
        }
        figures.add(Figure.of(kind, group.place(), value).within(lower, upper));
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
