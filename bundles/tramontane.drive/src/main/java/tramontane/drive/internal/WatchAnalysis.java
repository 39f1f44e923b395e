package tramontane.drive.internal;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.osgi.service.component.annotations.Component;
import tramontane.analysis.Amount;
import tramontane.analysis.Analysis;
import tramontane.analysis.Better;
import tramontane.analysis.Figure;
import tramontane.analysis.FigureKind;
import tramontane.analysis.Finding;
import tramontane.analysis.Input;
import tramontane.analysis.Needs;
import tramontane.analysis.OperatingPoint;
import tramontane.analysis.Overview;
import tramontane.analysis.Relation;
import tramontane.analysis.Result;
import tramontane.analysis.Run;
import tramontane.analysis.Scope;
import tramontane.analysis.Table;
import tramontane.analysis.Trace;
import tramontane.drive.AlarmWindow;
import tramontane.model.Design;
import tramontane.physics.electric.Electricity;
import tramontane.physics.units.QuantityKind;

/** Which alarm threshold tells failed movers from healthy ones, over all cases. */
@Component(service = Analysis.class)
public final class WatchAnalysis implements Analysis<AlarmWindow> {

    static final FigureKind LOWEST = new FigureKind("drive.watch.lowest", "lowest healthy speed", QuantityKind.ROTATIONAL_SPEED, Better.HIGHER,
            "Lowest speed of a healthy mover of a bank in any case, at any setting of its control laws, its tolerance taken off.");
    static final FigureKind FAILED = new FigureKind("drive.watch.failed", "speed of failed movers", QuantityKind.ROTATIONAL_SPEED, Better.LOWER,
            "Highest speed at which air turns a failed mover of a bank in any case.");
    static final FigureKind PULSES = new FigureKind("drive.watch.pulses", "lowest tacho frequency", QuantityKind.FREQUENCY, Better.HIGHER,
            "Tacho frequency at the lowest healthy speed.");
    static final FigureKind FROM = new FigureKind("drive.watch.from", "lowest threshold", QuantityKind.ROTATIONAL_SPEED, Better.LOWER,
            "Lowest alarm threshold that no failed mover passes, tolerances included.");
    static final FigureKind TO = new FigureKind("drive.watch.to", "highest threshold", QuantityKind.ROTATIONAL_SPEED, Better.HIGHER,
            "Highest alarm threshold that no healthy mover falls below, tolerances included.");
    static final FigureKind SHARE_FROM = new FigureKind("drive.watch.shareFrom", "lowest share", QuantityKind.FRACTION, Better.LOWER,
            "The same as a share of the speed that is asked for.");
    static final FigureKind SHARE_TO = new FigureKind("drive.watch.shareTo", "highest share", QuantityKind.FRACTION, Better.HIGHER,
            "The same as a share of the speed that is asked for.");

    static final Relation HEALTHY = new Relation("lowest healthy speed", "n_h = (1 - t_n) min n", "tolerance of the part; lowest over all cases"
            + " and control laws", "");
    static final Relation TURNED = new Relation("speed of a failed mover", "n_f = n_1 |Q|/Q_1", "estimate: a rotor that air turns freely has the"
            + " flow coefficient of free delivery (fan laws; friction left out)", "0 where no failed mover is free to turn");
    static final Relation LOW = new Relation("lowest threshold", "n_a > (n_f + d)/(1 - t_a), d = 2π/(z t_gate)",
            "a count of pulses in a gate time is off by up to one", "d = 0 where the distance of pulses is measured");
    static final Relation HIGH = new Relation("highest threshold", "n_a < (n_h - d)/(1 + t_a), d = 2π/(z t_gate)",
            "a count of pulses in a gate time is off by up to one", "d = 0 where the distance of pulses is measured");
    static final Relation SHARE_LOW = new Relation("lowest share", "s_a > (s_f + d/n)/(1 - t_a), d = 2π/(z t_gate)",
            "a count of pulses in a gate time is off by up to one", "d = 0 where the distance of pulses is measured");
    static final Relation SHARE_HIGH = new Relation("highest share", "s_a < (1 - t_n - d/n)/(1 + t_a), d = 2π/(z t_gate)",
            "a count of pulses in a gate time is off by up to one", "d = 0 where the distance of pulses is measured");
    static final Relation FREQUENCY = new Relation("tacho frequency", "f = z n/(2π)",
            "4-Wire Pulse Width Modulation (PWM) Controlled Fans Specification, rev. 1.3, 2005: z = 2", "");

    private final Decoding decoding = new Decoding();

    @Override
    public String id() {
        return "drive.watch";
    }

    @Override
    public String label() {
        return "alarm";
    }

    @Override
    public Scope scope() {
        return Scope.DESIGN;
    }

    @Override
    public Class<AlarmWindow> gives() {
        return AlarmWindow.class;
    }

    @Override
    public Needs needs() {
        return Needs.results(OperatingPoint.class);
    }

    @Override
    public List<FigureKind> figures() {
        return List.of(LOWEST, FAILED, PULSES, FROM, TO, SHARE_FROM, SHARE_TO);
    }

    @Override
    public Design reads(Design design) {
        return DriveAnalysis.reads(design, MoverDriveSection.NAME);
    }

    @Override
    public Result<AlarmWindow> run(Input input, Run run) {
        Map<String, OperatingPoint> points = input.results(OperatingPoint.class);
        List<AlarmWindow.Bank> windows = new ArrayList<>();
        List<Figure> figures = new ArrayList<>();
        List<Finding> findings = new ArrayList<>();
        List<List<Table.Cell>> rows = new ArrayList<>();
        for (FitAnalysis.Fitted bank : FitAnalysis.banks(input.design(), decoding)) {
            Optional<Watched> watched = Watched.of(input.design(), bank, points, decoding);
            watched.ifPresent(each -> {
                AlarmWindow.Bank window = each.window();
                windows.add(window);
                figures.addAll(figures(each, window));
                findings.addAll(each.findings());
                rows.add(row(each, window));
                if (run.trace().recording()) {
                    steps(run.trace(), each, window);
                }
            });
        }
        Result<AlarmWindow> result = new Result<>(Optional.of(new AlarmWindow(windows)), figures, findings);
        return rows.isEmpty() ? result : result.with(new Overview(new Table("Alarm, over all conditions", COLUMNS, rows),
                figures().stream().map(FigureKind::id).toList()));
    }

    private static List<Figure> figures(Watched bank, AlarmWindow.Bank window) {
        List<Figure> figures = new ArrayList<>();
        figures.add(Figure.of(LOWEST, window.bank(), window.lowest()));
        figures.add(Figure.of(FAILED, window.bank(), window.failed()));
        if (bank.counts()) {
            figures.add(Figure.of(PULSES, window.bank(), Electricity.pulses(window.lowest(), bank.pulses())));
            figures.add(Figure.of(window.byShare() ? SHARE_FROM : FROM, window.bank(), window.from()));
            figures.add(Figure.of(window.byShare() ? SHARE_TO : TO, window.bank(), window.to()));
        }
        return figures;
    }

    private static final List<Table.Column> COLUMNS = List.of(new Table.Column("bank", false), new Table.Column("lowest healthy speed", true),
            new Table.Column("failed one turns", true), new Table.Column("lowest tacho", true), new Table.Column("lowest threshold", true),
            new Table.Column("highest threshold", true), new Table.Column("stated threshold", true));

    private static List<Table.Cell> row(Watched bank, AlarmWindow.Bank window) {
        QuantityKind kind = window.byShare() ? QuantityKind.FRACTION : QuantityKind.ROTATIONAL_SPEED;
        Table.Cell none = new Table.Empty();
        return List.of(new Table.Words(window.bank()), new Amount(window.lowest(), QuantityKind.ROTATIONAL_SPEED),
                new Amount(window.failed(), QuantityKind.ROTATIONAL_SPEED),
                bank.counts() ? new Amount(Electricity.pulses(window.lowest(), bank.pulses()), QuantityKind.FREQUENCY) : none,
                bank.counts() && window.possible() ? new Amount(window.from(), kind) : none,
                bank.counts() && window.possible() ? new Amount(window.to(), kind) : none,
                window.stated().<Table.Cell>map(threshold -> new Amount(threshold, kind)).orElse(none));
    }

    private static void steps(Trace trace, Watched bank, AlarmWindow.Bank window) {
        String id = window.bank();
        String part = "air mover " + bank.bank().mover().id();
        trace.step(new Trace.Step(LOWEST.id(), id, HEALTHY, window.lowest(), List.of(
                new Trace.Term("lowest speed, " + bank.slowestCase(), QuantityKind.ROTATIONAL_SPEED, bank.slowest(), "airflow.bank.speed"),
                new Trace.Term("tolerance of the speed t_n", QuantityKind.FRACTION, bank.tolerance(), part))));
        trace.step(new Trace.Step(FAILED.id(), id, TURNED, window.failed(), List.of(
                new Trace.Term("flow through the failed mover" + bank.failedCase().map(name -> ", " + name).orElse("") + " Q", QuantityKind.FLOW,
                        bank.failedFlow(), "airflow.bank.flow"),
                new Trace.Term("free delivery at rated speed Q_1", QuantityKind.FLOW, SupplyFindings.freeFlow(bank.bank().mover()), part),
                new Trace.Term("rated speed n_1", QuantityKind.ROTATIONAL_SPEED, bank.bank().mover().ratedSpeedSi().orElse(0.0), part))));
        if (bank.counts()) {
            Trace.Term pulses = new Trace.Term("pulses per revolution z", QuantityKind.COUNT, bank.pulses(), part);
            trace.step(new Trace.Step(PULSES.id(), id, FREQUENCY, Electricity.pulses(window.lowest(), bank.pulses()), List.of(pulses,
                    new Trace.Term("lowest healthy speed n", QuantityKind.ROTATIONAL_SPEED, window.lowest(), LOWEST.id()))));
            Trace.Term error = new Trace.Term("error of a count d", QuantityKind.ROTATIONAL_SPEED, bank.counting(), "bank " + id);
            Trace.Term tolerance = new Trace.Term("tolerance of the threshold t_a", QuantityKind.FRACTION, bank.thresholdTolerance(), "bank " + id);
            if (window.byShare()) {
                Trace.Term slowest = new Trace.Term("lowest speed n", QuantityKind.ROTATIONAL_SPEED, bank.slowest(), bank.slowestCase());
                trace.step(new Trace.Step(SHARE_FROM.id(), id, SHARE_LOW, window.from(), List.of(new Trace.Term("highest share of a failed mover s_f",
                        QuantityKind.FRACTION, bank.share(), "drive.watch.failed, over the speed in the same case"), error, slowest, tolerance)));
                trace.step(new Trace.Step(SHARE_TO.id(), id, SHARE_HIGH, window.to(), List.of(new Trace.Term("tolerance of the speed t_n",
                        QuantityKind.FRACTION,
                        bank.tolerance(), part), error, slowest, tolerance)));
                return;
            }
            trace.step(new Trace.Step(FROM.id(), id, LOW, window.from(), List.of(
                    new Trace.Term("speed of a failed mover n_f", QuantityKind.ROTATIONAL_SPEED, window.failed(), FAILED.id()), error, tolerance)));
            trace.step(new Trace.Step(TO.id(), id, HIGH, window.to(), List.of(
                    new Trace.Term("lowest healthy speed n_h", QuantityKind.ROTATIONAL_SPEED, window.lowest(), LOWEST.id()), error, tolerance)));
        }
    }
}
