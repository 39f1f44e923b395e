package tramontane.reliability.internal;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.ToDoubleFunction;
import org.osgi.service.component.annotations.Component;
import tramontane.analysis.Analysis;
import tramontane.analysis.Figure;
import tramontane.analysis.FigureKind;
import tramontane.analysis.Input;
import tramontane.analysis.Needs;
import tramontane.analysis.OperatingPoint;
import tramontane.analysis.Result;
import tramontane.analysis.Run;
import tramontane.analysis.Scope;
import tramontane.model.Design;
import tramontane.reliability.LifeModel;
import tramontane.reliability.LifeState;
import tramontane.reliability.LifeState.Spread;
import tramontane.reliability.MoverLife;
import tramontane.reliability.statistics.LifeDistribution;

/** How long movers would live that worked in one condition all the time. */
@Component(service = Analysis.class)
public final class LifeAnalysis implements Analysis<LifeState> {

    @Override
    public String id() {
        return "reliability";
    }

    @Override
    public String label() {
        return "life";
    }

    @Override
    public Scope scope() {
        return Scope.CONDITION;
    }

    @Override
    public Class<LifeState> gives() {
        return LifeState.class;
    }

    @Override
    public Needs needs() {
        return Needs.results(OperatingPoint.class);
    }

    @Override
    public List<FigureKind> figures() {
        return Figures.CONDITION;
    }

    @Override
    public boolean mayBeBrief() {
        return true;
    }

    @Override
    public Design reads(Design design) {
        return design.withHeatSources(List.of()).withControlLaws(List.of()).withMore(design.only(List.of(MoverLife.SECTION)));
    }

    @Override
    public Result<LifeState> run(Input input, Run run) {
        Scene scene = Scene.of(input.design());
        if (!scene.asked()) {
            return Result.of(new LifeState(List.of(), List.of()));
        }
        OperatingPoint point = input.result(OperatingPoint.class);
        List<LifeState.BankState> banks = new ArrayList<>();
        List<String> unknown = new ArrayList<>();
        for (Scene.Bank bank : scene.banks()) {
            Optional<OperatingPoint.BankPoint> at = point.bank(bank.id());
            if (bank.model().isEmpty() || at.isEmpty()) {
                unknown.add(bank.id());
            } else {
                banks.add(state(bank, bank.model().get(), at.get(), run.brief()));
            }
        }
        LifeState state = new LifeState(banks, unknown);
        List<Figure> figures = new ArrayList<>();
        for (LifeState.BankState bank : banks) {
            bank.worst().ifPresent(worst -> {
                add(figures, Figures.L10, bank, lives -> lives.life(0.1));
                add(figures, Figures.L1, bank, lives -> lives.life(0.01));
                add(figures, Figures.L50, bank, lives -> lives.life(0.5));
                add(figures, Figures.MEAN, bank, LifeDistribution::mean);
            });
        }
        if (run.trace().recording()) {
            LifeSteps.condition(scene, state, run.trace());
        }
        return run.brief() ? new Result<>(Optional.of(state), figures, List.of())
                : new Result<>(Optional.of(state), figures, LifeFindings.of(scene, state), LifeTables.condition(state));
    }

    private static LifeState.BankState state(Scene.Bank bank, LifeModel model, OperatingPoint.BankPoint at, boolean brief) {
        List<LifeState.MoverState> movers = at.movers().stream().filter(mover -> mover.running() && mover.speed() > 0)
                .map(mover -> new LifeState.MoverState(mover.position(), at.temperature(), mover.speed(), new Spread(
                        model.at(model.nominal(), at.temperature(), mover.speed()),
                        model.corners().stream().map(corner -> model.at(corner, at.temperature(), mover.speed())).toList()))).toList();
        return new LifeState.BankState(bank.id(), bank.part().orElseThrow().id(), model, movers);
    }

    /** Of the movers of a bank the least counts; so do the least of each bound. */
    private static void add(List<Figure> figures, FigureKind kind, LifeState.BankState bank, ToDoubleFunction<LifeDistribution> number) {
        bounded(kind, bank.bank(), bank.movers().stream().map(LifeState.MoverState::spread).toList(), number, 1).ifPresent(figures::add);
    }

    /**
     * A life with its bounds: the least of several movers.
     *
     * @param factor by which it is stretched
     */
    static Optional<Figure> bounded(FigureKind kind, String place, List<Spread> movers, ToDoubleFunction<LifeDistribution> number, double factor) {
        double value = factor * movers.stream().mapToDouble(each -> each.value(number)).min().orElse(Double.POSITIVE_INFINITY);
        double lower = factor * movers.stream().mapToDouble(each -> each.lower(number)).min().orElse(Double.POSITIVE_INFINITY);
        double upper = factor * movers.stream().mapToDouble(each -> each.upper(number)).min().orElse(Double.POSITIVE_INFINITY);
        return Double.isFinite(value) && Double.isFinite(lower) && Double.isFinite(upper)
                ? Optional.of(Figure.of(kind, place, value).within(Math.min(lower, value), Math.max(upper, value))) : Optional.empty();
    }
}
