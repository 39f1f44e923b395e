package tramontane.drive.internal;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.osgi.service.component.annotations.Activate;
import org.osgi.service.component.annotations.Component;
import org.osgi.service.component.annotations.Reference;
import tramontane.analysis.Amount;
import tramontane.analysis.Analysis;
import tramontane.analysis.Better;
import tramontane.analysis.Figure;
import tramontane.analysis.FigureKind;
import tramontane.analysis.Finding;
import tramontane.analysis.Input;
import tramontane.analysis.Needs;
import tramontane.analysis.Relation;
import tramontane.analysis.Result;
import tramontane.analysis.Run;
import tramontane.analysis.Scope;
import tramontane.analysis.Severity;
import tramontane.analysis.Trace;
import tramontane.drive.LawDrive;
import tramontane.drive.LoopState;
import tramontane.model.ControlLaw;
import tramontane.model.Design;
import tramontane.physics.units.QuantityKind;
import tramontane.thermal.Loop;
import tramontane.thermal.ThermalModel;
import tramontane.thermal.ThermalModels;
import tramontane.thermal.ThermalState;

/** How far control laws are from hunting, around where they rest and in time; works where temperatures do. */
@Component(service = Analysis.class)
public final class LoopAnalysis implements Analysis<LoopState> {

    static final FigureKind GAIN = new FigureKind("drive.loop.gainMargin", "gain margin", QuantityKind.NUMBER, Better.HIGHER,
            "Factor by which the slope of a control law may rise until its loop hunts; 1000 stands for more than that, or any.");
    static final FigureKind PHASE = new FigureKind("drive.loop.phaseMargin", "phase margin", QuantityKind.ANGLE, Better.HIGHER,
            "Lag that may be added to the loop of a control law until it hunts; where no lag would do, there is none.");
    static final FigureKind SWING = new FigureKind("drive.loop.swing", "swing of the sensor", QuantityKind.TEMPERATURE_DIFFERENCE, Better.LOWER,
            "By how much the sensor of a control law still swings to either side at the end of a run from cold.");
    static final FigureKind SETTING_SWING = new FigureKind("drive.loop.settingSwing", "swing of the setting", QuantityKind.FRACTION, Better.LOWER,
            "By how much the setting of a control law still swings to either side at the end of a run from cold.");
    static final FigureKind PERIOD = new FigureKind("drive.loop.period", "time of a swing", QuantityKind.TIME, Better.HIGHER,
            "Time of one swing of a control law that does not come to rest.");

    static final Relation MARGIN = new Relation("gain margin", "1/|L(jω)| where arg L = -180°, L = -k G Π 1/(1 + jωτ) e^(-jωT)",
            "Nyquist's criterion; textbook, e.g. K. J. Åström, R. M. Murray, Feedback Systems, ch. 10",
            "small swings about rest; G of the heated bodies, flows and films as at rest; a reading interval counts as half of it of dead time");
    static final Relation RUN = new Relation("run from cold", "dT/dt = A(s) T + f(s), s = law(sensor)",
            "bodies linear at each setting, mixed between; TR-BDF2", "flows and films as at rest at each setting");

    static final Relation IDLE = new Relation("no loop", "the condition states a speed setting, so that no law acts", "the design", "");

    /** A gain margin that stands for any larger one. */
    static final double MOST_MARGIN = 1000;

    private final Decoding decoding = new Decoding();
    private final ThermalModels models;

    /**
     * Made by the framework, where temperatures are loaded.
     *
     * @param models makes thermal models
     */
    @Activate
    public LoopAnalysis(@Reference ThermalModels models) {
        this.models = models;
    }

    @Override
    public String id() {
        return "drive.control";
    }

    @Override
    public String label() {
        return "control";
    }

    @Override
    public Scope scope() {
        return Scope.CONDITION;
    }

    @Override
    public Class<LoopState> gives() {
        return LoopState.class;
    }

    @Override
    public Needs needs() {
        return Needs.NOTHING;
    }

    @Override
    public List<FigureKind> figures() {
        return List.of(GAIN, PHASE, SWING, SETTING_SWING, PERIOD);
    }

    @Override
    public Design reads(Design design) {
        return models.reads(design);
    }

    @Override
    public Result<LoopState> run(Input input, Run run) {
        ThermalModel model = models.model(input.design(), input.condition());
        List<ThermalModel.Acting> acting = Loops.controlling(model.acting(), input.design(), decoding);
        if (acting.isEmpty() || !model.obstacles().isEmpty()) {
            return idle(input, run);
        }
        Loop settled = model.settle(run::cancelled);
        run.check();
        Optional<ThermalState> rest = Loops.rest(settled);
        if (rest.isEmpty()) { // why, the temperatures say
            return Result.of(new LoopState(List.of()));
        }
        List<LoopState.Law> laws = new ArrayList<>();
        List<Figure> figures = new ArrayList<>();
        List<Finding> findings = new ArrayList<>();
        for (ThermalModel.Acting each : acting) {
            Loops loop = new Loops(input.design(), model, each, decoding);
            Optional<LoopState.Law> law = loop.of(rest.get(), run::cancelled);
            run.check();
            law.ifPresent(found -> {
                laws.add(found);
                figures.addAll(figures(found));
                findings.addAll(findings(loop, found, input.design()));
                steps(run.trace(), loop, found);
            });
            if (law.isEmpty() && !each.banks().isEmpty()) {
                findings.add(Finding.of(Severity.NOT_JUDGED, "", "control law " + each.law().id()
                        + " cannot be followed in time: there is no state of rest"
                        + " beside the one it has, or what it cools has no temperature"));
            }
        }
        return new Result<>(Optional.of(new LoopState(laws)), figures, findings);
    }

    /** A law that does not act cannot hunt. */
    private static Result<LoopState> idle(Input input, Run run) {
        List<Figure> figures = new ArrayList<>();
        if (input.condition().speed().isPresent()) {
            for (ControlLaw law : input.design().controlLaws()) {
                figures.add(Figure.of(GAIN, law.id(), MOST_MARGIN));
                if (run.trace().recording()) {
                    run.trace().step(new Trace.Step(GAIN.id(), law.id(), IDLE, MOST_MARGIN, List.of(new Trace.Term("speed setting",
                            QuantityKind.FRACTION,
                            input.condition().speedSetting(), "condition " + input.condition().id()))));
                }
            }
        }
        return new Result<>(Optional.of(new LoopState(List.of())), figures, List.of());
    }

    private static List<Figure> figures(LoopState.Law law) {
        List<Figure> figures = new ArrayList<>();
        figures.add(Figure.of(GAIN, law.law(), Math.min(MOST_MARGIN, law.gainMargin())));
        if (Double.isFinite(law.phaseMargin())) {
            figures.add(Figure.of(PHASE, law.law(), law.phaseMargin()));
        }
        figures.add(Figure.of(SWING, law.law(), law.swing()));
        figures.add(Figure.of(SETTING_SWING, law.law(), law.settingSwing()));
        law.period().ifPresent(period -> figures.add(Figure.of(PERIOD, law.law(), period)));
        return figures;
    }

    private static List<Finding> findings(Loops loop, LoopState.Law law, Design design) {
        String what = "control law " + law.law();
        double wanted = loop.drive().gainMargin();
        List<Finding> findings = new ArrayList<>();
        if (!law.steady()) {
            Object[] swings = {what + (loop.curve().stages() > 1 ? " goes to and fro" : " hunts") + ": its sensor swings by ±",
                new Amount(law.swing(), QuantityKind.TEMPERATURE_DIFFERENCE), ", its setting by ±", new Amount(law.settingSwing(),
                        QuantityKind.FRACTION),
                law.period().isPresent() ? ", once in " : "", law.period().<Object>map(period -> new Amount(period, QuantityKind.TIME)).orElse("")};
            findings.add(loop.curve().stages() > 1
                    ? Finding.caution("", swings).remedy("let it rise over a wider range of temperature than its hysteresis, if that is to be heard or felt")
                    : Finding.of(Severity.NOT_MET, "", swings).remedy(loop.graded()
                            ? new Object[] {"its speed grades are far apart: widen its hysteresis, so that one of"
                            + " them holds"} : flatter(law, wanted, loop.drive().interval() > 0)));
        } else if (law.gainMargin() < wanted) {
            findings.add(Finding.caution("", what + (law.gainMargin() < 1
                    ? " hunts about its rest, though its run from cold comes to it: its gain margin is "
                    : " is close to hunting: its gain margin is "), new Amount(law.gainMargin(), QuantityKind.NUMBER), ", and ",
                    new Amount(wanted, QuantityKind.NUMBER), " are wanted").remedy(flatter(law, wanted, loop.drive().interval() > 0))
                    .source(wanted == LawDrive.GAIN_MARGIN ? "6 dB: common practice" : "the drive section of the law"));
        }
        if (loop.drive().moverLag().isEmpty() && loop.moverLag() == Loops.ASSUMED_LAG && (!law.steady() || law.gainMargin() < wanted)) {
            findings.add(Finding.note("", "the movers of " + what + " are taken to follow their setting within ", new Amount(Loops.ASSUMED_LAG,
                    QuantityKind.TIME)).remedy("state startTime in the drive section of the part, or moverLag in that of the law")
                            .source("common practice"));
        }
        return findings;
    }

    private static Object[] flatter(LoopState.Law law, double wanted, boolean often) {
        double factor = wanted / law.gainMargin();
        return factor > 1 ? new Object[] {"let it rise over ", new Amount(factor, QuantityKind.NUMBER),
            " times the range of temperature", often ? ", or read its sensor more often" : ""}
                : new Object[] {"let it rise more slowly with temperature", often ? ", or read its sensor more often" : ""};
    }

    private static void steps(Trace trace, Loops loop, LoopState.Law law) {
        if (!trace.recording()) {
            return;
        }
        String section = "drive section of control law " + law.law();
        List<Trace.Term> terms = List.of(new Trace.Term("slope of the law k, 1/K", QuantityKind.NUMBER, law.slope(), "control law " + law.law()),
                new Trace.Term("change of the sensor with the setting at rest G(0)", QuantityKind.TEMPERATURE_DIFFERENCE, law.plant(),
                        "bodies of the design"),
                new Trace.Term("sensor lag τ", QuantityKind.TIME, loop.drive().lag(), section),
                new Trace.Term("mover lag τ", QuantityKind.TIME, loop.moverLag(), loop.drive().moverLag().isPresent() ? section
                        : "starting time of the part, or assumed"),
                new Trace.Term("dead time T, half of the reading interval", QuantityKind.TIME, loop.drive().interval() / 2, section));
        trace.step(new Trace.Step(GAIN.id(), law.law(), MARGIN, Math.min(MOST_MARGIN, law.gainMargin()), terms));
        if (Double.isFinite(law.phaseMargin())) {
            trace.step(new Trace.Step(PHASE.id(), law.law(), MARGIN, law.phaseMargin(), terms));
        }
        trace.step(new Trace.Step(SWING.id(), law.law(), RUN, law.swing(), terms));
        trace.step(new Trace.Step(SETTING_SWING.id(), law.law(), RUN, law.settingSwing(), terms));
        law.period().ifPresent(period -> trace.step(new Trace.Step(PERIOD.id(), law.law(), RUN, period, terms)));
    }
}
