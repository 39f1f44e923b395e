package tramontane.drive.internal;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.stream.Collectors;
import org.osgi.service.component.annotations.Activate;
import org.osgi.service.component.annotations.Component;
import org.osgi.service.component.annotations.Reference;
import tramontane.analysis.Amount;
import tramontane.analysis.Analysis;
import tramontane.analysis.Better;
import tramontane.analysis.Cases;
import tramontane.analysis.Engine;
import tramontane.analysis.Figure;
import tramontane.analysis.FigureKind;
import tramontane.analysis.Finding;
import tramontane.analysis.Input;
import tramontane.analysis.Needs;
import tramontane.analysis.Overview;
import tramontane.analysis.Relation;
import tramontane.analysis.Result;
import tramontane.analysis.Run;
import tramontane.analysis.Scope;
import tramontane.analysis.Severity;
import tramontane.analysis.Table;
import tramontane.analysis.Trace;
import tramontane.drive.ComputedLaws;
import tramontane.drive.LawDrive;
import tramontane.model.Condition;
import tramontane.model.ControlLaw;
import tramontane.model.Design;
import tramontane.model.Quantities;
import tramontane.model.Quantity;
import tramontane.model.Requirement;
import tramontane.physics.units.QuantityKind;
import tramontane.thermal.Drive;
import tramontane.thermal.PartState;
import tramontane.thermal.ThermalModel;
import tramontane.thermal.ThermalModels;
import tramontane.thermal.ThermalState;

/**
 * The control laws that spare most and still hold every temperature in every condition.
 *
 * <p>In each case the lowest settings are searched at which all limits and all requirements on temperatures and flows hold; the laws are the lowest
 * ones through these that never fall, start the movers, and are no steeper than their gain margin allows. They are then put into the
 * design and asked about again, and what does not hold yet is raised.
 */
@Component(service = Analysis.class)
public final class LawAnalysis implements Analysis<ComputedLaws> {

    static final FigureKind NEEDED = new FigureKind("drive.law.needed", "setting needed", QuantityKind.FRACTION, Better.LOWER,
            "Lowest setting of a control law that holds all temperatures in a case; full speed where none does.");
    static final FigureKind COMPUTED = new FigureKind("drive.law.setting", "setting by the computed law", QuantityKind.FRACTION, Better.LOWER,
            "The setting at which the computed control law rests in a case.");

    static final Relation LEAST = new Relation("setting needed", "the least s at which every limit leaves the reserve, and every requirement that more speed helps is met", "thermal model; root search",
            "margins rise with speed");
    static final Relation THROUGH = new Relation("computed law", "f(T) = max over cases of min(s_c, s_c - k (T_c - T))",
            "the lowest law that never falls, is no steeper than k, and gives s_c at T_c", "k by the gain margin wanted");

    /** Lowest setting of a law whose movers say of none. */
    static final double ASSUMED_LOWEST = 0.2;
    /** Steepest law whatever its loop allows, 1/K: from nothing to full speed within ten kelvin, so that changes are not heard (common practice). */
    private static final double STEEPEST = 0.1;
    /** Kept of the steepest slope that the gain margin allows. */
    private static final double SAFE = 0.95;
    /** Rounds in which what does not hold yet is raised. */
    private static final int ROUNDS = 6;
    /** Number of stretches of settings with a steepness of their own, and the highest setting that they begin at. */
    private static final int LEVELS = 4;
    private static final double MOST_LOWEST = 0.8;
    /** Flattest law that is given, 1/K: its loop is judged by itself then. */
    private static final double FLATTEST = 1e-3;
    /** Margin above the reserve from which the lowest setting is what holds, K. */
    private static final double FREE = 0.05;
    /** By how much a setting is raised that is too low, and a margin that counts as held, K. */
    private static final double RAISE = 0.02;
    private static final double HELD = 1e-3;
    private static final double ALIKE = 0.005;

    private final Decoding decoding = new Decoding();
    private final ThermalModels models;

    /**
     * Made by the framework, where temperatures are loaded.
     *
     * @param models makes thermal models
     */
    @Activate
    public LawAnalysis(@Reference ThermalModels models) {
        this.models = models;
    }

    @Override
    public String id() {
        return "drive.law";
    }

    @Override
    public String label() {
        return "computed control law";
    }

    @Override
    public Scope scope() {
        return Scope.DESIGN;
    }

    @Override
    public Class<ComputedLaws> gives() {
        return ComputedLaws.class;
    }

    @Override
    public Needs needs() {
        return Needs.NOTHING;
    }

    @Override
    public List<FigureKind> figures() {
        return List.of(NEEDED, COMPUTED);
    }

    @Override
    public Design reads(Design design) {
        return models.reads(design).withRequirements(design.requirements());
    }

    /** What a case takes of all laws. */
    private static final class Case {
        private final String id;
        private final String declared;
        private final Condition condition;
        private final List<ThermalModel.Acting> laws;
        private final double[] lowest;
        private final Optional<ThermalState> now;
        private double[] needed;
        private double[] aimed;
        private List<Requirement> helped = List.of();
        private boolean limited;
        private double[] sensor;
        private ThermalModel model;
        private Optional<ThermalState> state = Optional.empty();
        private double missing;
        private String held = "";
        private Optional<ThermalState> then = Optional.empty();
        private double[] gain = {};

        Case(Engine.Case of, List<ThermalModel.Acting> laws, double[] lowest, Optional<ThermalState> now) {
            id = of.concrete().id();
            declared = of.declared();
            condition = of.concrete();
            this.laws = laws;
            this.lowest = lowest;
            this.now = now;
        }

        Optional<Double> setting(Optional<ThermalState> state, int law) {
            return laws.get(law).banks().stream().findFirst().flatMap(bank -> state.map(each -> each.feeds().get(bank).setting()));
        }
    }

    @Override
    public Result<ComputedLaws> run(Input input, Run run) {
        return new Computation(input.design(), run).result();
    }

    /** One computation. */
    private final class Computation {
        private final Design design;
        private final Run run;
        private final List<Finding> findings = new ArrayList<>();
        private final List<Case> cases = new ArrayList<>();
        private final List<String> idle = new ArrayList<>();
        private OptionalDouble guess = OptionalDouble.empty();
        private final double reserve;
        private final Wishes wishes;

        Computation(Design design, Run run) {
            this.design = design;
            this.run = run;
            reserve = design.controlLaws().stream().mapToDouble(law -> decoding.law(law).reserve()).max().orElse(0);
            wishes = new Wishes(design, run, reserve);
        }

        Result<ComputedLaws> result() {
            if (design.controlLaws().isEmpty()) {
                return Result.of(new ComputedLaws(List.of()));
            }
            List<Engine.Case> all = Cases.of(design, Set.of()).list();
            for (int i = 0; i < all.size(); i++) {
                run.check();
                run.progress(0.7 * i / all.size(), all.get(i).concrete().id());
                look(all.get(i));
            }
            if (cases.isEmpty() && !idle.isEmpty()) {
                findings.add(Finding.note("", "no control law is computed: every condition states its own speed setting").remedy(
                        "leave out speed in the conditions that a law is to drive"));
            }
            if (cases.isEmpty() || cases.stream().anyMatch(each -> each.needed == null)) {
                return new Result<>(Optional.of(new ComputedLaws(List.of())), List.of(), findings);
            }
            List<ThermalModel.Acting> laws = cases.getFirst().laws;
            List<LeastLaw.Steepness> slope = steepness(laws);
            List<ControlLaw> computed = laws(laws, slope);
            Checked checked = check(with(computed), slope.size());
            for (int round = 0; round < ROUNDS && !checked.holds(); round++) {
                run.progress(0.7 + 0.2 * round / ROUNDS, "round " + (round + 1));
                slope = mend(checked, slope);
                computed = laws(laws, slope);
                checked = check(with(computed), slope.size());
            }
            for (int i = 0; i < cases.size(); i++) {
                cases.get(i).then = checked.states().get(i);
                cases.get(i).gain = checked.gains().get(i);
            }
            return told(laws, computed, checked.holds());
        }

        private void look(Engine.Case each) {
            ThermalModel model = models.model(design, each.concrete());
            List<ThermalModel.Acting> laws = Loops.controlling(model.acting(), design, decoding);
            if (!model.obstacles().isEmpty() || laws.isEmpty()) {
                if (each.concrete().speed().isPresent()) {
                    idle.add(each.concrete().id());
                }
                return;
            }
            double[] lowest = laws.stream().mapToDouble(this::lowest).toArray();
            Optional<ThermalState> now = model.settle(run::cancelled).state();
            Case found = new Case(each, laws, lowest, now);
            cases.add(found);
            String aim = decoding.law(laws.getFirst().law()).aim();
            found.helped = helped(found, model, now);
            LeastSettings.Found least = new LeastSettings(design, model, laws, lowest, aim, (settings, state) -> asked(found, model, settings, state), now, run::cancelled).find(reserve(), guess);
            guess = OptionalDouble.of(least.settings()[laws.size() - 1]);
            run.check();
            found.missing = Math.max(0, -least.margin());
            if (least.state().isEmpty()) {
                findings.add(Finding.of(Severity.NOT_JUDGED, "", "no control law can be computed: in " + each.concrete().id()
                        + " flow and temperature come to no rest even at full speed"));
                return;
            }
            double[] sensor = new double[laws.size()];
            for (int i = 0; i < sensor.length; i++) {
                ThermalModel.Acting law = laws.get(i);
                OptionalDouble reads = model.sensed(law.law(), least.state().get());
                if (reads.isEmpty()) {
                    findings.add(Finding.of(Severity.NOT_JUDGED, "", "no control law can be computed: what " + law.law().id() + " reads has no temperature in "
                            + each.concrete().id()));
                    return;
                }
                sensor[i] = reads.getAsDouble();
            }
            found.needed = least.settings();
            found.aimed = least.settings().clone();
            found.sensor = sensor;
            found.state = least.state();
            found.model = model;
            found.held = held(found, model, least);
        }

        /** The lowest setting that the movers of a law can do with. */
        private double lowest(ThermalModel.Acting law) {
            Optional<Double> stated = decoding.law(law.law()).lowest();
            Optional<Double> needed = needed(law);
            return Math.min(1, stated.isPresent() ? Math.max(stated.get(), needed.orElse(0.0)) : needed.orElse(ASSUMED_LOWEST));
        }

        /** The lowest setting at which the movers of a law run, where something says it. */
        private Optional<Double> needed(ThermalModel.Acting law) {
            return FitAnalysis.banks(design, decoding).stream().filter(bank -> law.banks().contains(bank.bank().id()))
                    .flatMap(bank -> bank.part().flatMap(part -> FitFindings.lowestSetting(part, bank)).stream()).max(Double::compare);
        }

        /** The requirements that more speed helps in a case. */
        private List<Requirement> helped(Case of, ThermalModel model, Optional<ThermalState> near) {
            if (wishes.in(of.declared).isEmpty()) {
                return List.of();
            }
            double[] full = new double[of.laws.size()];
            java.util.Arrays.fill(full, 1);
            Optional<Wishes.At> most = at(of, model, full, near);
            return most.map(there -> wishes.helped(of.declared, there, at(of, model, of.lowest, near))).orElse(List.of());
        }

        /** The state at settings of the laws. */
        private Optional<Wishes.At> at(Case of, ThermalModel model, double[] settings, Optional<ThermalState> near) {
            Map<String, Double> banks = new LinkedHashMap<>();
            for (int i = 0; i < settings.length; i++) {
                double setting = settings[i];
                of.laws.get(i).banks().forEach(bank -> banks.merge(bank, setting, Math::max));
            }
            return model.at(Drive.STATED.with(banks), near, run::cancelled).state().filter(state -> state.balance().unbounded().isEmpty())
                    .map(state -> new Wishes.At(held(of, settings), of.condition, model, state));
        }

        /** The design with its laws held at settings. */
        private Design held(Case of, double[] settings) {
            List<ControlLaw> held = new ArrayList<>();
            for (int i = 0; i < settings.length; i++) {
                held.add(law(of.laws.get(i).law(), List.of(new ComputedLaws.Point(of.condition.temperature(), settings[i]))));
            }
            return with(held);
        }

        /** The least margin of the requirements that more speed helps at settings of the laws, K. */
        private double asked(Case of, ThermalModel model, double[] settings, ThermalState state) {
            return wishes.margin(of.helped, new Wishes.At(held(of, settings), of.condition, model, state));
        }

        private double reserve() {
            return reserve;
        }

        private Design with(List<ControlLaw> changed) {
            Map<String, ControlLaw> byId = changed.stream().collect(Collectors.toMap(ControlLaw::id, law -> law));
            return design.withControlLaws(design.controlLaws().stream().map(law -> byId.getOrDefault(law.id(), law)).toList());
        }

        private ControlLaw law(ControlLaw law, List<ComputedLaws.Point> points) {
            return new ControlLaw(law.id(), law.sensor(), law.banks(), Quantities.of(points.stream().mapToDouble(ComputedLaws.Point::temperature).toArray()),
                    Quantities.of(points.stream().mapToDouble(ComputedLaws.Point::setting).toArray()), points.size() == 1 ? Optional.empty() : law.hysteresis(),
                    law.riseLimit(), law.fallLimit(), law.more());
        }

        private List<ControlLaw> laws(List<ThermalModel.Acting> laws, List<LeastLaw.Steepness> slope) {
            List<ControlLaw> computed = new ArrayList<>();
            for (int i = 0; i < laws.size(); i++) {
                int law = i;
                ControlLaw stated = laws.get(i).law();
                double tolerance = decoding.law(stated).tolerance();
                double lowest = cases.getFirst().lowest[i];
                List<LeastLaw.Need> needs = cases.stream().map(each -> new LeastLaw.Need(each.sensor[law] - tolerance, Math.max(lowest, each.aimed[law])))
                        .toList();
                computed.add(law(stated, LeastLaw.points(needs, lowest, slope.get(i), stated.hysteresis().map(Quantity::si).orElse(0.0))));
            }
            return computed;
        }

        /**
         * How the cases come out with laws in the design.
         *
         * @param states    where each rests
         * @param tooLittle whether a temperature or flow does not hold there
         * @param gains     gain margin of each law there
         * @param wanted    the one that is wanted
         */
        private record Checked(List<Optional<ThermalState>> states, List<Boolean> tooLittle, List<double[]> gains, List<double[]> wanted) {

            boolean holds() {
                for (int i = 0; i < gains.size(); i++) {
                    for (int law = 0; law < gains.get(i).length; law++) {
                        if (gains.get(i)[law] < wanted.get(i)[law]) {
                            return false;
                        }
                    }
                }
                return tooLittle.stream().noneMatch(Boolean::booleanValue);
            }
        }

        private Checked check(Design changed, int laws) {
            List<Optional<ThermalState>> states = new ArrayList<>();
            List<Boolean> tooLittle = new ArrayList<>();
            List<double[]> gains = new ArrayList<>();
            List<double[]> wanted = new ArrayList<>();
            for (Case each : cases) {
                run.check();
                ThermalModel model = models.model(changed, each.condition);
                Optional<ThermalState> then = model.settle(run::cancelled).state();
                double margin = then.isEmpty() ? Double.NEGATIVE_INFINITY : model.margin(then.get()).orElse(Double.POSITIVE_INFINITY);
                if (margin >= 0 && then.isPresent()) {
                    margin = Math.min(margin, wishes.margin(each.helped, new Wishes.At(changed, each.condition, model, then.get())));
                }
                List<ThermalModel.Acting> acting = Loops.controlling(model.acting(), changed, decoding);
                double[] gain = new double[laws];
                double[] least = new double[laws];
                for (int i = 0; i < laws; i++) {
                    least[i] = decoding.law(acting.get(i).law()).gainMargin();
                    Loops loop = new Loops(changed, model, acting.get(i), decoding);
                    gain[i] = then.map(state -> loop.gainMargin(state, run::cancelled).orElse(Double.POSITIVE_INFINITY)).orElse(Double.POSITIVE_INFINITY);
                }
                states.add(then);
                tooLittle.add(each.missing == 0 && margin < reserve() - HELD);
                gains.add(gain);
                wanted.add(least);
            }
            return new Checked(states, tooLittle, gains, wanted);
        }

        /**
         * How steep each law may be at each setting, so that its gain margin holds wherever it may come to rest: in the cases that need
         * least and most, and one between, at settings from the lowest to full.
         */
        private List<LeastLaw.Steepness> steepness(List<ThermalModel.Acting> laws) {
            List<LeastLaw.Steepness> all = new ArrayList<>();
            for (int i = 0; i < laws.size(); i++) {
                int law = i;
                List<Case> sorted = cases.stream().sorted(Comparator.comparingDouble(each -> each.needed[law])).toList();
                List<Case> looked = List.of(sorted.getFirst(), sorted.get(sorted.size() / 2), sorted.getLast()).stream().distinct().toList();
                double lowest = Math.min(cases.getFirst().lowest[i], MOST_LOWEST);
                double[] levels = new double[LEVELS + 1];
                double[] allowed = new double[levels.length];
                for (int k = 0; k < levels.length; k++) {
                    levels[k] = lowest + (1 - lowest) * k / LEVELS;
                    allowed[k] = STEEPEST;
                    for (Case each : looked) {
                        run.check();
                        Loops loop = new Loops(design, each.model, each.laws.get(i), decoding);
                        double gain = loop.near(each.state.orElseThrow(), levels[k], run::cancelled).map(plant -> loop.loop(plant, 1).margins().gain())
                                .orElse(Double.POSITIVE_INFINITY);
                        allowed[k] = Math.min(allowed[k], SAFE * gain / decoding.law(each.laws.get(i).law()).gainMargin());
                    }
                }
                double[] slopes = new double[LEVELS];
                for (int k = 0; k < slopes.length; k++) {
                    slopes[k] = Math.max(FLATTEST, Math.min(allowed[k], allowed[k + 1]));
                }
                all.add(new LeastLaw.Steepness(levels, slopes));
            }
            return all;
        }

        /** Raises what does not hold, and makes flatter what is near hunting. */
        private List<LeastLaw.Steepness> mend(Checked checked, List<LeastLaw.Steepness> slope) {
            double[] share = new double[slope.size()];
            java.util.Arrays.fill(share, 1);
            for (int i = 0; i < cases.size(); i++) {
                Case each = cases.get(i);
                for (int law = 0; law < share.length; law++) {
                    each.aimed[law] = checked.tooLittle().get(i) ? Math.min(1, each.aimed[law] + RAISE) : each.aimed[law];
                    share[law] = Math.min(share[law], checked.gains().get(i)[law] / checked.wanted().get(i)[law]);
                }
            }
            List<LeastLaw.Steepness> flatter = new ArrayList<>();
            for (int law = 0; law < share.length; law++) {
                double factor = share[law] < 1 ? SAFE * share[law] : 1;
                flatter.add(new LeastLaw.Steepness(slope.get(law).levels(), java.util.Arrays.stream(slope.get(law).slopes()).map(each -> factor * each).toArray()));
            }
            return flatter;
        }

        /** What keeps the setting of a case from being lower. */
        private String held(Case of, ThermalModel model, LeastSettings.Found least) {
            boolean lowest = least.margin() > FREE;
            for (int i = 0; i < of.lowest.length && lowest; i++) {
                lowest = least.settings()[i] <= of.lowest[i] + 1e-9;
            }
            if (lowest) {
                return "lowest setting";
            }
            ThermalState state = least.state().orElseThrow();
            String tightest = "";
            double tight = Double.POSITIVE_INFINITY;
            for (PartState part : state.parts()) {
                double margin = design.heatSources().stream().filter(source -> source.id().equals(part.source())).flatMap(source -> source.limit().stream())
                        .mapToDouble(limit -> limit.si() - part.junction().orElse(Double.NEGATIVE_INFINITY)).min().orElse(Double.POSITIVE_INFINITY);
                if (margin < tight) {
                    tight = margin;
                    tightest = "limit of " + part.source();
                }
            }
            of.limited = tight < Double.POSITIVE_INFINITY;
            Wishes.At at = new Wishes.At(held(of, least.settings()), of.condition, model, state);
            for (Requirement requirement : of.helped) {
                double margin = wishes.margin(requirement, at);
                if (margin < tight) {
                    tight = margin;
                    tightest = wishes.name(requirement);
                    of.limited = false;
                }
            }
            if (Wishes.unstable(state)) {
                of.limited = false;
                return "stable duty point";
            }
            return tightest;
        }

        private Result<ComputedLaws> told(List<ThermalModel.Acting> laws, List<ControlLaw> computed, boolean holds) {
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
                for (Case each : cases) {
                    takes.add(new ComputedLaws.Case(each.id, each.declared, each.needed[i], each.sensor[i], each.setting(each.now, i), each.setting(each.then, i), each.missing,
                            each.held, each.gain[i]));
                    figures.add(Figure.of(NEEDED, law.id(), each.needed[i]).in(each.id));
                    each.setting(each.then, i).ifPresent(then -> figures.add(Figure.of(COMPUTED, law.id(), then).in(each.id)));
                }
                double most = steepest;
                int which = i;
                cases.forEach(each -> steps(each, which, law.id(), most, points));
                ComputedLaws.Law one = new ComputedLaws.Law(law.id(), law.sensor(), laws.get(i).banks(), decoding.law(law).aim(), points, steepest, holds && enough, takes);
                told.add(one);
                overviews.add(new Overview(pointTable(one), List.of()));
                overviews.add(new Overview(caseTable(one), List.of(NEEDED.id(), COMPUTED.id())));
                say(one, decoding.law(law), holds);
            }
            Result<ComputedLaws> result = new Result<>(Optional.of(new ComputedLaws(told)), figures, findings);
            return result.with(overviews.toArray(Overview[]::new));
        }

        private void say(ComputedLaws.Law law, LawDrive drive, boolean holds) {
            String what = "control law " + law.law();
            for (Case each : cases) {
                if (each.missing == 0) {
                    continue;
                }
                boolean reserved = each.limited && each.missing <= reserve;
                Object[] why = !each.limited ? new Object[] {"no setting of " + what + " meets " + each.held + ": not even full speed does"}
                        : reserved ? new Object[] {"no setting of " + what + " leaves the reserve of ", kelvins(reserve), ": even full speed is ",
                            kelvins(each.missing), " short of it"}
                        : new Object[] {"no setting of " + what + " holds the " + each.held + ": even full speed is ", kelvins(each.missing - reserve), " short"};
                findings.add(Finding.of(reserved ? Severity.CAUTION : Severity.NOT_MET, "", why).remedy("take stronger or more movers, or ease the air path")
                        .in(each.id));
            }
            double now = mean(each -> each.setting(each.now, index(law)));
            double then = mean(each -> each.setting(each.then, index(law)));
            broken(what, law);
            if (holds && law.holds() && then < now - ALIKE) {
                findings.add(Finding.note("", what + " asks for more than it must: ", new Amount(now, QuantityKind.FRACTION), " on the mean of all conditions,"
                        + " where a law computed for least " + law.aim() + " asks for ", new Amount(then, QuantityKind.FRACTION), " and holds all temperatures")
                        .remedy("take the computed points; the export control-law writes them as a table"));
            } else if (!holds) {
                findings.add(Finding.caution("", "the law computed for " + what + " was not found to hold all temperatures in all conditions").remedy(
                        "leave a larger reserve in its drive section"));
            }
            if (drive.lowest().isEmpty() && needed(cases.getFirst().laws.get(index(law))).isEmpty()) {
                findings.add(Finding.note("", "nothing says from which setting the movers of " + what + " run; the computed law goes down to ",
                        new Amount(ASSUMED_LOWEST, QuantityKind.FRACTION)).remedy("state startSetting in the drive section of the part, or lowest in that of the law")
                        .source("common practice"));
            }
            if (!idle.isEmpty()) {
                findings.add(Finding.note("", what + " is computed without " + String.join(", ", idle) + ", which " + (idle.size() == 1 ? "states its" : "state their")
                        + " own speed setting"));
            }
        }

        /** The mean over all conditions of the highest setting in each. */
        private double mean(java.util.function.Function<Case, Optional<Double>> setting) {
            return cases.stream().collect(Collectors.groupingBy(each -> each.declared, LinkedHashMap::new, Collectors.mapping(each -> setting.apply(each)
                    .orElse(Double.NaN), Collectors.reducing(Double.NEGATIVE_INFINITY, Math::max)))).values().stream().mapToDouble(Double::doubleValue).average()
                    .orElse(Double.NaN);
        }

        /** What the computed law would break that holds with the law as it is. */
        private void broken(String what, ComputedLaws.Law law) {
            for (Case each : cases) {
                if (each.then.isEmpty() || each.now.isEmpty()) {
                    continue;
                }
                Design changed = with(List.of(law(each.laws.get(index(law)).law(), law.points())));
                Wishes.At then = new Wishes.At(changed, each.condition, models.model(changed, each.condition), each.then.get());
                Wishes.At now = new Wishes.At(design, each.condition, each.model, each.now.get());
                for (Requirement requirement : wishes.in(each.declared)) {
                    if (!each.helped.contains(requirement) && wishes.margin(requirement, then) < 0 && wishes.margin(requirement, now) >= 0) {
                        List<Object> words = new ArrayList<>(List.of("with the law computed for " + what + " " + wishes.name(requirement) + " would be "));
                        words.addAll(List.of(wishes.amounts(requirement, then)));
                        findings.add(Finding.caution("", words.toArray()).remedy("keep the law as it is, or ease that requirement").in(each.id));
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

        private void steps(Case each, int law, String id, double slope, List<ComputedLaws.Point> points) {
            if (!run.trace().recording()) {
                return;
            }
            run.trace().step(new Trace.Step(NEEDED.id(), id, LEAST, each.needed[law], List.of(
                    new Trace.Term("reserve", QuantityKind.TEMPERATURE_DIFFERENCE, decoding.law(each.laws.get(law).law()).reserve(), "drive section of control law " + id),
                    new Trace.Term("lowest setting that is looked at", QuantityKind.FRACTION, each.lowest[law], "drive sections of law and part, or assumed"),
                    new Trace.Term("sensor at that setting", QuantityKind.TEMPERATURE, each.sensor[law], "what if: " + each.id + ", held by " + each.held),
                    new Trace.Term("sensor tolerance that the law leaves", QuantityKind.TEMPERATURE_DIFFERENCE, decoding.law(each.laws.get(law).law()).tolerance(),
                            "drive section of control law " + id))));
            List<Trace.Term> terms = new ArrayList<>();
            terms.add(new Trace.Term("steepest slope k, 1/K", QuantityKind.NUMBER, slope, "drive.loop.gainMargin at the settings needed"));
            points.forEach(point -> terms.add(new Trace.Term("setting at " + Math.round(10 * (point.temperature() - 273.15)) / 10.0 + " °C", QuantityKind.FRACTION,
                    point.setting(), "computed")));
            each.setting(each.then, law).ifPresent(then -> run.trace().step(new Trace.Step(COMPUTED.id(), id, THROUGH, then, terms)));
        }
    }

    private static Table pointTable(ComputedLaws.Law law) {
        return new Table("Computed for " + law.law() + ", least " + law.aim(), List.of(new Table.Column("point", false), new Table.Column(law.sensor(), true),
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
        return new Table("Settings of " + law.law(), List.of(new Table.Column("condition", false), new Table.Column("needed", true), new Table.Column("held by", false),
                new Table.Column(law.sensor() + " then", true), new Table.Column("with the law as it is", true), new Table.Column("with the computed one", true),
                new Table.Column("gain margin", true)),
                worst(law.cases()).stream().map(each -> List.<Table.Cell>of(new Table.Words(each.id()), new Amount(each.needed(), QuantityKind.FRACTION), new Table.Words(each.held()),
                        new Amount(each.sensor(), QuantityKind.TEMPERATURE), cell(each.now()), cell(each.then()),
                        each.gainMargin() < LoopAnalysis.MOST_MARGIN ? new Amount(each.gainMargin(), QuantityKind.NUMBER) : new Table.Words("any"))).toList());
    }

    private static Table.Cell cell(Optional<Double> setting) {
        return setting.<Table.Cell>map(share -> new Amount(share, QuantityKind.FRACTION)).orElse(new Table.Empty());
    }
}
