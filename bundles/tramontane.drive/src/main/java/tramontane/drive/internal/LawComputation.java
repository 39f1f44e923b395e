package tramontane.drive.internal;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.stream.Collectors;
import tramontane.analysis.Cases;
import tramontane.analysis.Engine;
import tramontane.analysis.Finding;
import tramontane.analysis.Result;
import tramontane.analysis.Run;
import tramontane.analysis.Severity;
import tramontane.drive.ComputedLaws;
import tramontane.model.ControlLaw;
import tramontane.model.Design;
import tramontane.model.Quantities;
import tramontane.model.Quantity;
import tramontane.model.Requirement;
import tramontane.thermal.Drive;
import tramontane.thermal.PartState;
import tramontane.thermal.ThermalModel;
import tramontane.thermal.ThermalModels;
import tramontane.thermal.ThermalState;

/**
 * The computation of control laws that hold every limit, and every requirement that more speed helps, in every case.
 *
 * <p>In each case the lowest settings are searched; the laws are the lowest ones through these that never fall, start the movers, and
 * are no steeper than their gain margin allows at that setting. They are then put into the design and asked about again; what does not
 * hold yet is raised, what is near hunting made flatter.
 */
final class LawComputation {

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

    private final ThermalModels models;
    private final Decoding decoding;
    private final Design design;
    private final Run run;
    private final List<Finding> findings = new ArrayList<>();
    private final List<LawCase> cases = new ArrayList<>();
    private final List<String> idle = new ArrayList<>();
    private OptionalDouble guess = OptionalDouble.empty();
    private final double reserve;
    private final Wishes wishes;

    LawComputation(Design design, ThermalModels models, Decoding decoding, Run run) {
        this.models = models;
        this.decoding = decoding;
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
        cases.removeIf(each -> each.needed == null);
        if (cases.isEmpty()) {
            return new Result<>(Optional.of(new ComputedLaws(List.of())), List.of(), findings);
        }
        List<ThermalModel.Acting> laws = cases.getFirst().laws;
        weigh(laws);
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
        return new LawReport(this, with(computed), computed, checked.holds()).result();
    }

    /** The aim of all laws: several are computed together. */
    static String aim(List<ThermalModel.Acting> laws, Decoding decoding) {
        return decoding.law(laws.getFirst().law()).aim();
    }

    /** What to know where several laws are weighed against each other. */
    private void weigh(List<ThermalModel.Acting> laws) {
        String aim = aim(laws, decoding);
        if (laws.stream().anyMatch(law -> !decoding.law(law.law()).aim().equals(aim))) {
            findings.add(Finding.caution("", "the control laws state different aims; they are computed together, for least " + aim)
                    .remedy("state one aim for all of them"));
        }
        if (laws.size() > 1 && aim.equals("noise") && !LeastSettings.sizesKnown(design)) {
            findings.add(Finding.of(Severity.NOT_JUDGED, "", "which control law is to spare noise at the expense of another cannot be told: not all air movers"
                    + " state their size; alike sizes are taken").remedy("give rotorDiameter or width of each"));
        }
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
        LawCase found = new LawCase(each, model, laws, lowest, now);
        cases.add(found);
        String aim = aim(laws, decoding);
        found.helped = helped(found, model, now);
        LeastSettings.Found least = new LeastSettings(design, model, laws, lowest, aim, (settings, state) -> asked(found, model, settings, state),
                now, run::cancelled).find(reserve, guess);
        guess = OptionalDouble.of(least.settings()[laws.size() - 1]);
        run.check();
        found.missing = Math.max(0, -least.margin());
        if (least.state().isEmpty()) {
            findings.add(Finding.of(Severity.NOT_JUDGED, "", "computed control laws leave out this condition: flow and temperature come to no rest in it"
                    + " even at full speed").in(each.concrete().id()));
            return;
        }
        double[] sensor = new double[laws.size()];
        for (int i = 0; i < sensor.length; i++) {
            ThermalModel.Acting law = laws.get(i);
            OptionalDouble reads = model.sensed(law.law(), least.state().get());
            if (reads.isEmpty()) {
                findings.add(Finding.of(Severity.NOT_JUDGED, "", "computed control laws leave out this condition: what " + law.law().id()
                        + " reads has no temperature in it").in(each.concrete().id()));
                return;
            }
            sensor[i] = reads.getAsDouble();
        }
        found.needed = least.settings();
        found.aimed = least.settings().clone();
        found.sensor = sensor;
        found.state = least.state();
        found.held = held(found, model, least);
    }

    /** The lowest setting that the movers of a law can do with. */
    private double lowest(ThermalModel.Acting law) {
        Optional<Double> stated = decoding.law(law.law()).lowest();
        Optional<Double> needed = needed(law);
        return Math.min(1, stated.isPresent() ? Math.max(stated.get(), needed.orElse(0.0)) : needed.orElse(ASSUMED_LOWEST));
    }

    /** The lowest setting at which the movers of a law run, where something says it. */
    Optional<Double> needed(ThermalModel.Acting law) {
        return FitAnalysis.banks(design, decoding).stream().filter(bank -> law.banks().contains(bank.bank().id()))
                .flatMap(bank -> bank.part().flatMap(part -> FitFindings.lowestSetting(part, bank)).stream()).max(Double::compare);
    }

    /** The requirements that more speed helps in a case. */
    private List<Requirement> helped(LawCase of, ThermalModel model, Optional<ThermalState> near) {
        if (wishes.in(of.declared).isEmpty()) {
            return List.of();
        }
        double[] full = new double[of.laws.size()];
        Arrays.fill(full, 1);
        Optional<Wishes.At> most = at(of, model, full, near);
        return most.map(there -> wishes.helped(of.declared, there, at(of, model, of.lowest, near))).orElse(List.of());
    }

    /** The state at settings of the laws. */
    private Optional<Wishes.At> at(LawCase of, ThermalModel model, double[] settings, Optional<ThermalState> near) {
        Map<String, Double> banks = new LinkedHashMap<>();
        for (int i = 0; i < settings.length; i++) {
            double setting = settings[i];
            of.laws.get(i).banks().forEach(bank -> banks.merge(bank, setting, Math::max));
        }
        return model.at(Drive.STATED.with(banks), near, run::cancelled).state().filter(state -> state.balance().unbounded().isEmpty())
                .map(state -> new Wishes.At(held(of, settings), of.condition, model, state));
    }

    /** The design with its laws held at settings. */
    private Design held(LawCase of, double[] settings) {
        List<ControlLaw> held = new ArrayList<>();
        for (int i = 0; i < settings.length; i++) {
            held.add(law(of.laws.get(i).law(), List.of(new ComputedLaws.Point(of.condition.temperature(), settings[i]))));
        }
        return with(held);
    }

    /** The least margin of the requirements that more speed helps at settings of the laws, K. */
    private double asked(LawCase of, ThermalModel model, double[] settings, ThermalState state) {
        return wishes.margin(of.helped, new Wishes.At(held(of, settings), of.condition, model, state));
    }

    private Design with(List<ControlLaw> changed) {
        Map<String, ControlLaw> byId = changed.stream().collect(Collectors.toMap(ControlLaw::id, law -> law));
        return design.withControlLaws(design.controlLaws().stream().map(law -> byId.getOrDefault(law.id(), law)).toList());
    }

    private ControlLaw law(ControlLaw law, List<ComputedLaws.Point> points) {
        return new ControlLaw(law.id(), law.sensor(), law.banks(), Quantities.of(points.stream().mapToDouble(ComputedLaws.Point::temperature)
                .toArray()),
                Quantities.of(points.stream().mapToDouble(ComputedLaws.Point::setting).toArray()), points.size() == 1 ? Optional.empty()
                        : law.hysteresis(),
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
        for (LawCase each : cases) {
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
            tooLittle.add(each.missing == 0 && margin < reserve - HELD);
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
            List<LawCase> sorted = cases.stream().sorted(Comparator.comparingDouble(each -> each.needed[law])).toList();
            List<LawCase> looked = List.of(sorted.getFirst(), sorted.get(sorted.size() / 2), sorted.getLast()).stream().distinct().toList();
            double lowest = Math.min(cases.getFirst().lowest[i], MOST_LOWEST);
            double[] levels = new double[LEVELS + 1];
            double[] allowed = new double[levels.length];
            for (int k = 0; k < levels.length; k++) {
                levels[k] = lowest + (1 - lowest) * k / LEVELS;
                allowed[k] = STEEPEST;
                for (LawCase each : looked) {
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
        Arrays.fill(share, 1);
        for (int i = 0; i < cases.size(); i++) {
            LawCase each = cases.get(i);
            for (int law = 0; law < share.length; law++) {
                each.aimed[law] = checked.tooLittle().get(i) ? Math.min(1, each.aimed[law] + RAISE) : each.aimed[law];
                share[law] = Math.min(share[law], checked.gains().get(i)[law] / checked.wanted().get(i)[law]);
            }
        }
        List<LeastLaw.Steepness> flatter = new ArrayList<>();
        for (int law = 0; law < share.length; law++) {
            double factor = share[law] < 1 ? SAFE * share[law] : 1;
            flatter.add(new LeastLaw.Steepness(slope.get(law).levels(), Arrays.stream(slope.get(law).slopes()).map(each -> factor * each).toArray()));
        }
        return flatter;
    }

    /** What keeps the setting of a case from being lower. */
    private String held(LawCase of, ThermalModel model, LeastSettings.Found least) {
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
            double margin = design.heatSources().stream().filter(source -> source.id().equals(part.source())).flatMap(source -> source.limit()
                    .stream())
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
            return "sound duty point";
        }
        return tightest;
    }

    Design design() {
        return design;
    }

    Run run() {
        return run;
    }

    Decoding decoding() {
        return decoding;
    }

    ThermalModels models() {
        return models;
    }

    /** What requirements ask. */
    Wishes wishes() {
        return wishes;
    }

    /** The cases that a law acts in. */
    List<LawCase> cases() {
        return cases;
    }

    /** Conditions that state a speed of their own. */
    List<String> idle() {
        return idle;
    }

    /** What was found on the way. */
    List<Finding> findings() {
        return findings;
    }

    /** What limits and temperatures are to keep free, K. */
    double reserve() {
        return reserve;
    }
}
