package tramontane.thermal.internal;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.osgi.service.component.annotations.Activate;
import org.osgi.service.component.annotations.Component;
import org.osgi.service.component.annotations.Reference;
import tramontane.analysis.Analysis;
import tramontane.analysis.Figure;
import tramontane.analysis.FigureKind;
import tramontane.analysis.Finding;
import tramontane.analysis.Input;
import tramontane.analysis.LinkKind;
import tramontane.analysis.Needs;
import tramontane.analysis.OperatingPoint;
import tramontane.analysis.Result;
import tramontane.analysis.Run;
import tramontane.analysis.Scope;
import tramontane.model.Design;
import tramontane.thermal.Loop;
import tramontane.thermal.Temperatures;
import tramontane.thermal.ThermalModel;
import tramontane.thermal.ThermalModels;
import tramontane.thermal.ThermalState;

/** Temperatures of air and components at the operating point. */
@Component(service = Analysis.class)
public final class ThermalAnalysis implements Analysis<Temperatures> {

    private final ThermalModels models;

    /**
     * Made by the framework.
     *
     * @param models makes models with what is loaded
     */
    @Activate
    public ThermalAnalysis(@Reference ThermalModels models) {
        this.models = models;
    }

    @Override
    public String id() {
        return "thermal";
    }

    @Override
    public String label() {
        return "temperatures";
    }

    @Override
    public Scope scope() {
        return Scope.CONDITION;
    }

    @Override
    public Class<Temperatures> gives() {
        return Temperatures.class;
    }

    @Override
    public Needs needs() {
        return Needs.results(OperatingPoint.class);
    }

    @Override
    public List<FigureKind> figures() {
        return Figures.ALL;
    }

    @Override
    public boolean mayBeBrief() {
        return true;
    }

    @Override
    public Design reads(Design design) {
        return models.reads(design);
    }

    @Override
    public Result<Temperatures> run(Input input, Run run) {
        ThermalModel model = models.model(input.design(), input.condition());
        if (!model.obstacles().isEmpty()) {
            return Result.notComputed(model.obstacles().toArray(Finding[]::new));
        }
        if (asksNothing(input.design())) {
            return Result.of(new Temperatures(Map.of(), List.of(), Map.of(), List.of(),
                    new ThermalState.Balance(0, 0, 0, 0, 0, List.of()), input.condition().temperature(), Map.of()));
        }
        if (!model.parts().nowhere().isEmpty()) {
            return Result.notComputed(ThermalFindings.nowhere(model.parts().nowhere()));
        }
        ThermalState given = model.at(input.result(OperatingPoint.class));
        run.check();
        Optional<ThermalState> own = wantsOwn(run) ? model.settle(run::cancelled).state() : Optional.empty();
        run.check();
        Reading reading = new Reading(input.design(), model, given, own);
        reading.look(run);
        run.check();
        if (run.trace().recording()) {
            ThermalSteps.record(reading, run.trace());
        }
        return new Result<>(Optional.of(reading.temperatures()), reading.figures(), ThermalFindings.of(reading));
    }

    /** Whether anything is wanted that the flows as given do not tell: what would be if, and what control laws come to. */
    private static boolean wantsOwn(Run run) {
        return !run.brief() || Stream.of(Figures.FLOW_NEEDED, Figures.FLOW_ESTIMATE, Figures.SPEED_NEEDED, Figures.SETTING)
                .anyMatch(figure -> run.wants(figure.id()));
    }

    /**
     * Whether nothing in a design is about temperatures: its sources, if any, stand nowhere and have neither chain nor limit, no
     * bay has walls, and nothing is required of temperatures.
     */
    private static boolean asksNothing(Design design) {
        return design.heatSources().stream().allMatch(source -> source.into().isEmpty() && source.chain().isEmpty()
                && source.limit().isEmpty()) && design.airPath().bays().stream().noneMatch(bay -> bay.section(EnclosureSection.NAME).isPresent())
                && design.requirements().isEmpty();
    }

    /** What is known of one condition: flows as given, and what would be if. */
    static final class Reading {
        final Design design;
        final ThermalModel model;
        final ThermalState state;
        final Optional<ThermalState> own;
        Optional<Bounds> bounds = Optional.empty();
        Optional<Backwards.Found> backwards = Optional.empty();
        Optional<Improvements> improvements = Optional.empty();

        Reading(Design design, ThermalModel model, ThermalState state, Optional<ThermalState> own) {
            this.design = design;
            this.model = model;
            this.state = state;
            this.own = own;
        }

        /** Looks at what would be if, from the model's own state. */
        void look(Run run) {
            if (own.isPresent()) {
                bounds = run.brief() ? Optional.empty() : Optional.of(Bounds.of(model, own.get(), run::cancelled));
                run.check();
                if (Stream.of(Figures.FLOW_NEEDED, Figures.FLOW_ESTIMATE, Figures.SPEED_NEEDED).anyMatch(figure -> run.wants(figure.id()))) {
                    backwards = Optional.of(Backwards.from(model, own.get(), run::cancelled));
                }
                run.check();
                improvements = run.brief() ? Optional.empty() : Backwards.worst(model, own.get()).or(this::hottest)
                        .map(part -> Improvements.of(model, own.get(), part, run::cancelled));
            }
        }

        private Optional<tramontane.thermal.PartState> hottest() {
            return own.get().parts().stream().filter(part -> part.junction().isPresent())
                    .max(java.util.Comparator.comparingDouble(part -> part.junction().getAsDouble()));
        }

        Map<String, Double> limits() {
            Map<String, Double> limits = new LinkedHashMap<>();
            design.heatSources().forEach(source -> source.limit().ifPresent(limit -> limits.put(source.id(), limit.si())));
            return limits;
        }

        Temperatures temperatures() {
            Map<String, Double> bays = new LinkedHashMap<>();
            for (int i = 0; i < design.airPath().bays().size(); i++) {
                if (!state.balance().unbounded().contains(design.airPath().bays().get(i).id())) {
                    bays.put(design.airPath().bays().get(i).id(), state.temperatures().get(i));
                }
            }
            Map<String, Temperatures.Span> spans = new LinkedHashMap<>();
            bounds.ifPresent(found -> found.junction().forEach((source, band) -> {
                if (!Double.isNaN(band.low())) {
                    spans.put(source, new Temperatures.Span(band.low(), band.high()));
                }
            }));
            return new Temperatures(bays, state.parts(), limits(), state.walls(), state.balance(), model.condition().temperature(), spans);
        }

        List<Figure> figures() {
            List<Figure> figures = new ArrayList<>();
            Map<String, Double> limits = limits();
            double outside = model.condition().temperature();
            state.parts().forEach(part -> part.junction().ifPresent(junction -> {
                String id = part.source();
                Optional<Bounds.Band> band = bounds.map(found -> found.junction().get(id)).filter(Bounds.Band::wide);
                figures.add(within(Figure.of(Figures.JUNCTION, id, junction), band));
                Optional.ofNullable(limits.get(id)).ifPresent(limit -> figures.add(within(Figure.of(Figures.MARGIN, id, limit - junction),
                        band.map(each -> new Bounds.Band(limit - each.high(), limit - each.low())))));
                figures.add(within(Figure.of(Figures.LOCAL, id, part.air()),
                        bounds.map(found -> found.local().get(id)).filter(Bounds.Band::wide)));
                figures.add(Figure.of(Figures.ARRIVING, id, part.arriving() - outside));
                figures.add(Figure.of(Figures.ALONG, id, part.air() - part.arriving()));
                for (LinkKind.Step step : LinkKind.Step.values()) {
                    if (part.links().stream().anyMatch(link -> link.step() == step)) {
                        figures.add(Figure.of(Figures.STEPS.get(step), id, part.rise(step)));
                    }
                }
            }));
            for (int i = 0; i < state.temperatures().size(); i++) {
                int bay = i;
                if (state.balance().unbounded().contains(design.airPath().bays().get(i).id())) {
                    continue;
                }
                figures.add(within(Figure.of(Figures.AIR, design.airPath().bays().get(i).id(), state.temperatures().get(i)),
                        bounds.map(found -> found.bays().get(bay)).filter(Bounds.Band::wide)));
            }
            whole(figures);
            return figures;
        }

        private void whole(List<Figure> figures) {
            ThermalState.Balance balance = state.balance();
            double leaving = model.balancing().leaving(state.point()) * model.path().outside().specificHeat();
            if (leaving > 0) {
                figures.add(Figure.of(Figures.EXHAUST, "", model.condition().temperature() + balance.toAir() / leaving));
            }
            figures.add(Figure.of(Figures.HEAT, "", balance.sources() + balance.movers()));
            if (balance.movers() > 0) {
                figures.add(Figure.of(Figures.MOVER_HEAT, "", balance.movers()));
            }
            if (!state.walls().isEmpty()) {
                figures.add(Figure.of(Figures.WALL_HEAT, "", balance.toWalls()));
            }
            own.ifPresent(settled -> model.controls().laws().stream().flatMap(law -> law.banks().stream()).distinct().forEach(bank ->
                    Optional.ofNullable(settled.feeds().get(bank)).ifPresent(feed ->
                            figures.add(Figure.of(Figures.SETTING, bank, feed.setting())))));
            if (backwards.isPresent() && backwards.get().answer().isEmpty() && !(Backwards.intake(model, state.point()) > 0)) {
                Backwards.estimate(model).ifPresent(flow -> figures.add(Figure.of(Figures.FLOW_ESTIMATE, "", flow)));
            }
            backwards.flatMap(Backwards.Found::answer).ifPresent(answer -> {
                figures.add(Figure.of(Figures.FLOW_NEEDED, "", answer.flow()));
                if (answer.estimate() > 0 && Double.isFinite(answer.estimate())) {
                    figures.add(Figure.of(Figures.FLOW_ESTIMATE, "", answer.estimate()));
                }
                answer.speeds().forEach((bank, speed) -> {
                    if (speed > 0) {
                        figures.add(Figure.of(Figures.SPEED_NEEDED, bank, speed));
                    }
                });
            });
        }

        private static Figure within(Figure figure, Optional<Bounds.Band> band) {
            return band.map(each -> figure.within(Math.min(figure.value(), each.low()), Math.max(figure.value(), each.high()))).orElse(figure);
        }
    }
}
