package tramontane.thermal.internal.time;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import tramontane.analysis.Relation;
import tramontane.analysis.Trace;
import tramontane.model.Design;
import tramontane.model.HeatSource;
import tramontane.model.Link;
import tramontane.physics.units.QuantityKind;
import tramontane.thermal.History;
import tramontane.thermal.Transient;

/** Says where the figures of temperatures in time come from. */
final class TimeSteps {

    private static final Relation COURSE = new Relation("first law for bodies that hold heat, integrated in time",
            "C dT/dt = heat in - heat out, heat between bodies and air = ΔT/R",
            "F. P. Incropera, D. P. DeWitt, Fundamentals of Heat and Mass Transfer, ch. 5; integrated by J. R. Dormand, P. J. Prince, J."
                    + " Comput. Appl. Math. 6 (1980) 19-26, orders 8(5,3) as in E. Hairer, S. P. Nørsett, G. Wanner, Solving Ordinary"
                    + " Differential Equations I (1993), by the library Hipparchus",
            "bodies of one temperature each; air that holds no heat; flows brought up to date when a bay has moved by some 0.2 K");
    private static final Relation PASSES = new Relation("time at which a limit is passed", "T(t) = limit",
            "root of the integrator's continuous output (Hairer, Nørsett, Wanner 1993, sec. II.6)", "the duration where it is never passed");

    private TimeSteps() {
    }

    static void record(History history, Design design, List<Transient.Step> steps, Trace trace) {
        for (History.Course part : history.parts()) {
            HeatSource source = design.heatSources().stream().filter(each -> each.id().equals(part.source())).findFirst().orElseThrow();
            List<Trace.Term> inputs = new ArrayList<>();
            for (Transient.Step step : steps) {
                inputs.add(new Trace.Term(step.at() == 0 ? "heat" : "heat from " + step.at() + " s on", QuantityKind.POWER,
                        step.model().condition().heat(source), "heat source " + source.id() + ", condition " + step.model().condition().id()));
            }
            for (Link link : source.chain()) {
                link.heatCapacity().ifPresent(capacity -> inputs.add(new Trace.Term("heat capacity at " + link.kind(),
                        QuantityKind.HEAT_CAPACITY, capacity.si(), "heat source " + source.id())));
            }
            part.steady().ifPresent(steady -> inputs.add(new Trace.Term("where it would come to rest at the end", QuantityKind.TEMPERATURE, steady,
                    "steady state of the last condition")));
            trace.step(new Trace.Step(TimeFigures.END.id(), source.id(), COURSE, part.end(), inputs));
            List<Trace.Term> top = new ArrayList<>(inputs);
            top.add(new Trace.Term("time of the highest temperature", QuantityKind.TIME, part.peakTime(), "timeline"));
            trace.step(new Trace.Step(TimeFigures.PEAK.id(), source.id(), COURSE, part.peak(), top));
            part.limit().ifPresent(limit -> trace.step(new Trace.Step(TimeFigures.LIMIT.id(), source.id(), PASSES,
                    part.reached().orElse(history.duration()), List.of(
                            new Trace.Term("limit", QuantityKind.TEMPERATURE, limit, "heat source " + source.id()),
                            new Trace.Term("highest temperature", QuantityKind.TEMPERATURE, part.peak(), TimeFigures.PEAK.id()),
                            new Trace.Term("duration", QuantityKind.TIME, history.duration(), "timeline")))));
        }
        Optional<History.Course> first = history.first();
        if (history.parts().stream().anyMatch(part -> part.limit().isPresent())) {
            trace.step(new Trace.Step(TimeFigures.LIMIT.id(), "", PASSES, first.flatMap(History.Course::reached).orElse(history.duration()),
                    List.of(new Trace.Term(first.map(part -> "time to the limit of " + part.source()).orElse("duration"), QuantityKind.TIME,
                            first.flatMap(History.Course::reached).orElse(history.duration()), first.isPresent() ? TimeFigures.LIMIT.id() : "timeline"))));
        }
    }
}
