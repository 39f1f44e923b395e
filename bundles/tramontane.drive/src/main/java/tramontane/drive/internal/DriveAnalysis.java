package tramontane.drive.internal;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.osgi.service.component.annotations.Component;
import tramontane.analysis.Analysis;
import tramontane.analysis.Figure;
import tramontane.analysis.FigureKind;
import tramontane.analysis.Finding;
import tramontane.analysis.Input;
import tramontane.analysis.Needs;
import tramontane.analysis.OperatingPoint;
import tramontane.analysis.Result;
import tramontane.analysis.Run;
import tramontane.analysis.Scope;
import tramontane.drive.DriveState;
import tramontane.model.Design;

/** How all banks are fed in a condition, and what their supplies carry. */
@Component(service = Analysis.class)
public final class DriveAnalysis implements Analysis<DriveState> {

    private final Decoding decoding = new Decoding();

    @Override
    public String id() {
        return "drive";
    }

    @Override
    public String label() {
        return "drive";
    }

    @Override
    public Scope scope() {
        return Scope.CONDITION;
    }

    @Override
    public Class<DriveState> gives() {
        return DriveState.class;
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
    public Design reads(Design design) {
        return reads(design, MoverDriveSection.NAME);
    }

    /** The air path with its movers, the conditions, the control laws, and one section of the design itself. */
    static Design reads(Design design, String section) {
        return Design.EMPTY.withAirPath(design.airPath()).withAirMovers(design.airMovers()).withConditions(design.conditions())
                .withControlLaws(design.controlLaws()).withMore(design.only(java.util.List.of(section)));
    }

    @Override
    public Result<DriveState> run(Input input, Run run) {
        Feeds feeds = new Feeds(input.design(), input.condition(), input.result(OperatingPoint.class), decoding);
        List<Feeds.Bank> banks = feeds.banks();
        DriveState state = new DriveState(banks.stream().map(Feeds.Bank::feed).toList(), feeds.loads(banks), power(feeds, banks));
        List<Figure> figures = new ArrayList<>();
        for (DriveState.BankFeed bank : state.banks()) {
            figures.add(Figure.of(Figures.SETTING, bank.bank(), bank.feeding().setting()));
            add(figures, Figures.VOLTAGE, bank.bank(), bank.terminals());
            add(figures, Figures.DROP, bank.bank(), lost(bank));
            add(figures, Figures.CURRENT, bank.bank(), bank.current());
            add(figures, Figures.PULSES, bank.bank(), bank.pulses());
        }
        for (DriveState.Load load : state.supplies()) {
            add(figures, Figures.RUNNING, load.supply(), load.running());
            add(figures, Figures.FULLEST, load.supply(), load.fullest());
            add(figures, Figures.STARTING, load.supply(), load.starting());
            add(figures, Figures.INRUSH, load.supply(), load.inrush());
            add(figures, Figures.LOAD, load.supply(), share(load));
            add(figures, Figures.INPUT, load.supply(), load.power());
        }
        add(figures, Figures.POWER, "", state.power());
        if (run.trace().recording()) {
            new DriveSteps(run.trace(), feeds, input.condition()).of(banks, state);
        }
        List<Finding> findings = new SupplyFindings(feeds, input.condition()).of(banks, state);
        return new Result<>(Optional.of(state), figures, findings);
    }

    /** Share of the voltage that is lost on the way. */
    static Optional<Double> lost(DriveState.BankFeed bank) {
        return bank.terminals().flatMap(left -> bank.feeding().sent().filter(sent -> sent > 0).map(sent -> (sent - left) / sent));
    }

    /** Running current over what the supply gives for long; empty where one of both is not known, or it gives nothing any more. */
    static Optional<Double> share(DriveState.Load load) {
        return load.running().flatMap(amps -> load.most().filter(most -> most > 0).map(most -> amps / most));
    }

    /** What all movers take from the mains: those without a stated supply count as they are. */
    private static Optional<Double> power(Feeds feeds, List<Feeds.Bank> banks) {
        double sum = 0;
        for (Feeds.Bank bank : banks) {
            if (bank.feed().drawn().isEmpty()) {
                return Optional.empty();
            }
            sum += bank.feed().drawn().get() / efficiency(feeds, bank);
        }
        return banks.isEmpty() ? Optional.empty() : Optional.of(sum);
    }

    /** Efficiency of a bank's supply; 1 where none is stated. */
    static double efficiency(Feeds feeds, Feeds.Bank bank) {
        return bank.drive().supply().flatMap(feeds.supplies()::source).map(source -> source.efficiency()).orElse(1.0);
    }

    private static void add(List<Figure> figures, FigureKind kind, String place, Optional<Double> value) {
        value.ifPresent(number -> figures.add(Figure.of(kind, place, number)));
    }
}
