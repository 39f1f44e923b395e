package tramontane.thermal.internal.time;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.osgi.service.component.annotations.Activate;
import org.osgi.service.component.annotations.Component;
import org.osgi.service.component.annotations.Reference;
import tramontane.analysis.Analysis;
import tramontane.analysis.Cases;
import tramontane.analysis.Figure;
import tramontane.analysis.FigureKind;
import tramontane.analysis.Finding;
import tramontane.analysis.Input;
import tramontane.analysis.Result;
import tramontane.analysis.Run;
import tramontane.analysis.Scope;
import tramontane.analysis.Sections;
import tramontane.analysis.Sentence;
import tramontane.analysis.Severity;
import tramontane.model.Condition;
import tramontane.model.Design;
import tramontane.model.FailedMover;
import tramontane.model.Passage;
import tramontane.model.Problem;
import tramontane.model.Quantity;
import tramontane.model.Values;
import tramontane.thermal.History;
import tramontane.thermal.ThermalModels;
import tramontane.thermal.Transient;

/** Temperatures in the course of a condition's timeline. */
@Component(service = Analysis.class)
public final class TimeAnalysis implements Analysis<History> {

    private static final TimelineSection TIMELINE = new TimelineSection();

    private final ThermalModels models;

    /**
     * Made by the framework.
     *
     * @param models makes models with what is loaded
     */
    @Activate
    public TimeAnalysis(@Reference ThermalModels models) {
        this.models = models;
    }

    @Override
    public String id() {
        return "thermal.time";
    }

    @Override
    public String label() {
        return "temperatures in time";
    }

    @Override
    public Scope scope() {
        return Scope.CONDITION;
    }

    @Override
    public Class<History> gives() {
        return History.class;
    }

    @Override
    public List<FigureKind> figures() {
        return TimeFigures.ALL;
    }

    @Override
    public Design reads(Design design) {
        return models.reads(design);
    }

    @Override
    public Result<History> run(Input input, Run run) {
        Condition condition = input.condition();
        if (condition.section(TimelineSection.NAME).isEmpty()) {
            return Result.of(History.NONE);
        }
        List<Problem> problems = new ArrayList<>();
        Optional<Values> values = Sections.read(TIMELINE, condition.section(TimelineSection.NAME).get(), "", problems);
        values.ifPresent(read -> problems.addAll(TIMELINE.check(read, "")));
        Optional<Problem> error = problems.stream().filter(Problem::isError).findFirst();
        if (values.isEmpty() || error.isPresent()) {
            return Result.notComputed(Finding.of(Severity.NOT_JUDGED, "", "the timeline of condition " + condition.id() + " cannot be used: "
                    + error.map(Problem::sentence).orElse("nothing loaded here knows its version")).remedy("correct it"));
        }
        TimelineSection.Timeline timeline = TIMELINE.decode(values.get());
        Optional<Finding> unknown = unknown(input.design(), timeline);
        if (unknown.isPresent()) {
            return Result.notComputed(unknown.get());
        }
        List<Transient.Step> steps = steps(input.design(), condition, timeline);
        List<String> nowhere = steps.stream().flatMap(step -> step.model().parts().nowhere().stream()).distinct().toList();
        if (!nowhere.isEmpty()) {
            return Result.notComputed(Finding.of(Severity.NOT_JUDGED, nowhere.getFirst(), nowhere.size() == 1
                    ? "heat source " + nowhere.getFirst() + " goes nowhere" : "heat sources " + String.join(", ", nowhere) + " go nowhere",
                    "; without a place for all heat no temperature can be told").remedy("say into which bays or passages the heat goes"));
        }
        Transient.Start start = timeline.settled() ? Transient.Start.SETTLED
                : new Transient.At(timeline.startTemperature().map(Quantity::si));
        Transient outcome = Transient.of(steps, start, timeline.duration().si(), run::cancelled);
        run.check();
        if (outcome.history().isEmpty()) {
            return Result.notComputed(outcome.obstacles().toArray(Finding[]::new));
        }
        History history = outcome.history().get();
        if (run.trace().recording()) {
            TimeSteps.record(history, input.design(), steps, run.trace());
        }
        return new Result<>(Optional.of(history), figures(history), TimeFindings.of(history), TimeTable.of(history));
    }

    /** A mover that fails but is not there. */
    private static Optional<Finding> unknown(Design design, TimelineSection.Timeline timeline) {
        for (TimelineSection.Step step : timeline.steps()) {
            for (FailedMover mover : step.failed().orElse(List.of())) {
                Optional<Passage> bank = design.airPath().banks().stream().filter(each -> each.id().equals(mover.bank().orElse(""))).findFirst();
                int positions = bank.map(Cases::positions).orElse(0);
                if (mover.position().orElse(1) > positions) {
                    return Optional.of(Finding.of(Severity.NOT_JUDGED, "", "the timeline lets mover " + mover.position().orElse(1) + " of "
                            + mover.bank().orElse("") + " fail, " + (bank.isEmpty() ? "which is no bank of the design"
                            : "but that has " + positions + (positions == 1 ? " mover" : " movers")))
                            .remedy("correct bank and position in the failed movers of its steps"));
                }
            }
        }
        return Optional.empty();
    }

    private List<Transient.Step> steps(Design design, Condition condition, TimelineSection.Timeline timeline) {
        List<Transient.Step> steps = new ArrayList<>();
        steps.add(new Transient.Step(0, models.model(design, condition), Sentence.of(timeline.settled() ? "the beginning, settled" : "the start")));
        Condition now = condition;
        for (TimelineSection.Step step : timeline.steps()) {
            Sentence words = step.words(now);
            now = step.after(now);
            steps.add(new Transient.Step(step.at().si(), models.model(design, now), words));
        }
        return steps;
    }

    private static List<Figure> figures(History history) {
        List<Figure> figures = new ArrayList<>();
        double least = history.duration();
        boolean limited = false;
        for (History.Course part : history.parts()) {
            if (part.limit().isPresent()) {
                limited = true;
                double time = part.reached().orElse(history.duration());
                least = Math.min(least, time);
                figures.add(Figure.of(TimeFigures.LIMIT, part.source(), time));
            }
            figures.add(Figure.of(TimeFigures.PEAK, part.source(), part.peak()));
            figures.add(Figure.of(TimeFigures.END, part.source(), part.end()));
        }
        if (limited) {
            figures.add(Figure.of(TimeFigures.LIMIT, "", least));
        }
        return figures;
    }
}
