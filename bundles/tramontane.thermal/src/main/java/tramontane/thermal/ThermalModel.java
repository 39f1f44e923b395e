package tramontane.thermal;

import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.BooleanSupplier;
import tramontane.airflow.AirPathModel;
import tramontane.airflow.AirPathSolution;
import tramontane.airflow.AirPathSolver;
import tramontane.airflow.AirflowStudy;
import tramontane.airflow.Feed;
import tramontane.airflow.NetworkSolver;
import tramontane.analysis.Figure;
import tramontane.analysis.Finding;
import tramontane.analysis.LinkKind;
import tramontane.analysis.OperatingPoint;
import tramontane.analysis.PassageKind;
import tramontane.analysis.Result;
import tramontane.analysis.Run;
import tramontane.analysis.SpeedLaw;
import tramontane.model.Condition;
import tramontane.model.ControlLaw;
import tramontane.model.Design;
import tramontane.physics.AirState;
import tramontane.thermal.internal.Balancing;
import tramontane.thermal.internal.Controls;
import tramontane.thermal.internal.FixedPoint;
import tramontane.thermal.internal.Margins;
import tramontane.thermal.internal.Parts;
import tramontane.thermal.internal.time.Linearizing;

/**
 * A design in one condition as a loop: flow decides temperatures, temperatures decide density, buoyancy and speed, and these the
 * flow.
 *
 * <pre>{@code
 * ThermalModel model = ThermalModel.of(design, condition, passageKinds, linkKinds, speedLaws);
 * Loop loop = model.settle(() -> false);
 * loop.state().ifPresent(state -> state.part("processor").orElseThrow().junction());
 * }</pre>
 */
public final class ThermalModel {

    /** Change of a bay's temperature at which flows and temperatures count as agreed, K. */
    private static final double AGREED = 1e-9;
    private static final int MOST_STEPS = 200;
    /** Rise of all bays from which a design without running movers starts, so that its air begins to move, K. */
    private static final double WARM_START = 10;

    private final Design design;
    private final Condition condition;
    private final AirPathModel path;
    private final List<SpeedLaw> speedLaws;
    private final Parts parts;
    private final Balancing balancing;
    private final Controls controls;
    private final List<Finding> obstacles;

    private ThermalModel(Design design, Condition condition, AirPathModel path, List<SpeedLaw> speedLaws, Parts parts) {
        this.design = design;
        this.condition = condition;
        this.path = path;
        this.speedLaws = List.copyOf(speedLaws);
        this.parts = parts;
        obstacles = path.obstacles();
        balancing = obstacles.isEmpty() ? new Balancing(design, condition, path, parts) : null;
        controls = obstacles.isEmpty() ? Controls.of(design, condition, path) : null;
    }

    /**
     * The model of a design in a condition.
     *
     * @param design       a design without errors
     * @param condition    the condition, failed movers all concrete
     * @param passageKinds the loaded kinds of passages
     * @param linkKinds    the loaded kinds of links
     * @param speedLaws    the loaded speed laws, highest ranked first
     */
    public static ThermalModel of(Design design, Condition condition, Collection<? extends PassageKind> passageKinds,
            Collection<? extends LinkKind> linkKinds, List<SpeedLaw> speedLaws) {
        AirPathModel path = AirPathModel.of(design, condition, passageKinds);
        return new ThermalModel(design, condition, path, speedLaws, Parts.of(design, condition, path, linkKinds));
    }

    /** Why it cannot be solved at all; empty if nothing is in the way. */
    public List<Finding> obstacles() {
        return obstacles;
    }

    /** The design. */
    public Design design() {
        return design;
    }

    /** The condition. */
    public Condition condition() {
        return condition;
    }

    /** The air path. */
    public AirPathModel path() {
        return path;
    }

    /** The speed laws, highest ranked first. */
    public List<SpeedLaw> speedLaws() {
        return speedLaws;
    }

    /** The heat sources with their chains. */
    public Parts parts() {
        return parts;
    }

    /** The control laws that act in the condition. */
    public Controls controls() {
        return controls;
    }

    /**
     * A control law that acts.
     *
     * @param law   the law; {@link LawCurve#of} makes its curve
     * @param banks the banks of the air path that it drives; none where it names only banks that are not there
     */
    public record Acting(ControlLaw law, List<String> banks) {
        public Acting {
            banks = List.copyOf(banks);
        }
    }

    /**
     * The control laws that act in the condition, in the order of the design. None where it states a speed setting, or where the
     * air path cannot be solved; those without points are left out.
     */
    public List<Acting> acting() {
        return controls == null ? List.of()
                : controls.laws().stream().map(control -> new Acting(control.law(), control.banks())).toList();
    }

    /**
     * What the sensor of a control law reads in a state, K: the junction of a heat source, the air of a bay, the mean air of a
     * passage, or outside. Empty where that has no temperature: no air moves there, nothing bounds it, what is stated does not tell
     * it, or the design has no such place.
     *
     * @param law   a law of the design, whether it acts or not
     * @param state a state of this model
     */
    public OptionalDouble sensed(ControlLaw law, ThermalState state) {
        return Controls.sensor(law, state, this);
    }

    /**
     * The least margin to the limits of the heat sources in a state, K: negative where one is not met. Where nothing carries off
     * the heat of some bay or of a source with a limit it is -400 K. Empty where no source has a limit, or where what is stated of
     * one that has does not tell its temperature.
     *
     * @param state a state of this model
     */
    public OptionalDouble margin(ThermalState state) {
        return Margins.least(this, state);
    }

    /** Energy balances. */
    public Balancing balancing() {
        return balancing;
    }

    /**
     * Where flow, temperatures and speeds come to rest, control laws acting, warming up from cold.
     *
     * @param stop asked now and then whether the answer is no longer wanted
     */
    public Loop settle(BooleanSupplier stop) {
        return settle(Drive.STATED, Optional.empty(), stop);
    }

    /**
     * The same with something other than stated.
     *
     * @param drive factors on what is stated
     * @param near  a state that is not far, to start from
     * @param stop  asked now and then whether the answer is no longer wanted
     */
    public Loop settle(Drive drive, Optional<ThermalState> near, BooleanSupplier stop) {
        if (!obstacles.isEmpty()) {
            return Loop.none(obstacles);
        }
        return controls.settle(this, drive, near, stop);
    }

    /**
     * Where flow and temperatures come to rest at given speed settings, whatever control laws say.
     *
     * @param drive settings and factors
     * @param near  a state that is not far, to start from; with banks of several duty points it stays on its stretch of the curve
     * @param stop  asked now and then whether the answer is no longer wanted
     */
    public Loop at(Drive drive, Optional<ThermalState> near, BooleanSupplier stop) {
        return obstacles.isEmpty() ? new Search(drive, near, stop).run() : Loop.none(obstacles);
    }

    /**
     * The bodies of the design around where they rest at given speed settings, whatever control laws say, as a linear system. Where
     * the resistance of a heat source cannot be told, its bodies are left out and its heat goes into the air at once, as in time.
     *
     * @param law   the law whose sensor is read
     * @param drive settings and factors
     * @param near  a state that is not far, to start from
     * @param stop  asked now and then whether the answer is no longer wanted
     * @return the plant, or why there is none: no rest, a bay or body that nothing carries heat off, a sensor without temperature
     */
    public Linearization plant(ControlLaw law, Drive drive, Optional<ThermalState> near, BooleanSupplier stop) {
        return obstacles.isEmpty() ? Linearizing.of(this, law, drive, near, stop)
                : new Linearization(drive, Optional.empty(), Optional.empty(), obstacles);
    }

    /**
     * The same at several settings of the banks of one law, those of all other banks held where they are. Of several laws on one
     * bank the one counts that asks for most, so where another law keeps a bank faster it stays so.
     *
     * @param law      the law, whether it acts or not
     * @param settings of the banks it drives, 1 for full; best in order, as each search starts from where the one before ended
     * @param rest     a state of this model from which the first search starts and in which the other banks are held
     * @param stop     asked now and then whether the answer is no longer wanted
     * @return one for each setting, in their order
     */
    public List<Linearization> plants(ControlLaw law, List<Double> settings, ThermalState rest, BooleanSupplier stop) {
        return Linearizing.all(this, law, settings, rest, stop);
    }

    /**
     * The speed settings of a state with those of one law's banks changed.
     *
     * @param law     the law, whether it acts or not
     * @param rest    a state of this model
     * @param setting of the banks it drives, 1 for full; a bank that another law keeps faster stays so
     */
    public Drive drive(ControlLaw law, ThermalState rest, double setting) {
        return Linearizing.drive(this, law, rest, setting);
    }

    /**
     * Temperatures at flows that are given.
     *
     * @param point the flows and what the movers take up
     */
    public ThermalState at(OperatingPoint point) {
        return balancing.state(Drive.STATED, point, Map.of(), Optional.empty(), 0);
    }

    /**
     * What there is to say of the air flow in a state, by {@link AirflowStudy}.
     *
     * @param state a state of this model that was solved, not one at given flows
     * @param run   cancel, trace, and whether bounds and findings are wanted
     */
    public Result<OperatingPoint> study(ThermalState state, Run run) {
        double[] temperatures = balancing.held(state.temperatures().stream().mapToDouble(Double::doubleValue).toArray());
        return AirflowStudy.of(design, path, speedLaws, state.feeds(), temperatures, Optional.of(state.solution().orElseThrow()), run);
    }

    /**
     * The figures of the air flow in a state, without bounds and without those that vary something.
     *
     * @param state a state of this model that was solved, not one at given flows
     */
    public List<Figure> flowFigures(ThermalState state) {
        return AirflowStudy.figures(design, path, speedLaws, state.feeds(), state.solution().orElseThrow());
    }

    /** What the banks are fed with at given bay temperatures. */
    public Map<String, Feed> feeds(Drive drive, double[] temperatures) {
        Map<String, Feed> feeds = new LinkedHashMap<>();
        for (String bank : path.banks()) {
            Feed plain = path.feed(bank);
            Optional<Double> setting = Optional.ofNullable(drive.settings().get(bank));
            double temperature = temperature(balancing.inletBay(bank), temperatures);
            feeds.put(bank, new Feed(setting.orElse(plain.setting()), density(temperature), temperature,
                    setting.flatMap(own -> controls.nameOf(bank)).orElse(plain.from())));
        }
        return feeds;
    }

    private double temperature(int bay, double[] temperatures) {
        return bay == AirBalance.OUTSIDE ? path.outside().temperature() : temperatures[bay];
    }

    private double density(double temperature) {
        AirState outside = path.outside();
        return temperature == outside.temperature() ? outside.density() : outside.heatedTo(temperature).density();
    }

    /** The speeds of the banks' movers at given feeds, rad/s. */
    public Map<String, Double> speeds(Drive drive, Map<String, Feed> feeds) {
        Map<String, Double> speeds = path.speeds(speedLaws, feeds);
        if (drive.speed() != 1) {
            speeds = new HashMap<>(speeds);
            speeds.replaceAll((bank, speed) -> speed * drive.speed());
        }
        return speeds;
    }

    /** One search for flows and temperatures that agree. */
    private final class Search {
        private final Drive drive;
        private final Optional<ThermalState> near;
        private final BooleanSupplier stop;
        private AirPathSolver solver;
        private Map<String, Double> speeds = Map.of();
        private Map<String, Feed> feeds = Map.of();
        private Optional<AirPathSolution> last;
        private List<Finding> failed = List.of();
        private int steps;

        Search(Drive drive, Optional<ThermalState> near, BooleanSupplier stop) {
            this.drive = drive;
            this.near = near;
            this.stop = stop;
            last = near.flatMap(ThermalState::solution);
        }

        Loop run() {
            FixedPoint found = FixedPoint.of(this::next, start(), AGREED, MOST_STEPS, () -> stop.getAsBoolean() || !failed.isEmpty());
            if (!failed.isEmpty() || stop.getAsBoolean()) {
                return Loop.none(failed);
            }
            if (!found.converged()) {
                return new Loop(Optional.empty(), cycle(found), Optional.empty(), List.of());
            }
            return Loop.of(balancing.state(drive, last.orElseThrow().point().orElseThrow(), feeds, last, steps));
        }

        private double[] start() {
            double[] start = path.temperatures();
            boolean runs = path.speeds(speedLaws).values().stream().anyMatch(speed -> speed > 0) && drive.speed() > 0;
            for (int i = 0; i < start.length; i++) {
                double known = near.isPresent() ? near.get().temperatures().get(i) : Double.NaN;
                start[i] = !Double.isNaN(known) ? known : runs ? start[i] : start[i] + WARM_START;
            }
            return start;
        }

        /** Temperatures that the flows at given temperatures would make. */
        private double[] next(double[] temperatures) {
            OperatingPoint point = point(temperatures);
            if (point == null) {
                return temperatures;
            }
            AirBalance.Rises rises = balancing.rises(point);
            double[] next = new double[temperatures.length];
            for (int i = 0; i < next.length; i++) {
                next[i] = condition.temperature() + rises.at(i);
            }
            return balancing.held(next);
        }

        private OperatingPoint point(double[] temperatures) {
            steps++;
            double[] held = balancing.held(temperatures);
            feeds = feeds(drive, held);
            Map<String, Double> now = speeds(drive, feeds);
            if (solver == null || !now.equals(speeds)) {
                solver = solver == null ? path.at(now, drive.pressure(), Map.of()) : solver.withSpeeds(now);
                speeds = now;
            }
            AirPathSolution solution = last.isPresent() ? solver.near(held, last.get(), stop)
                    : solver.reached(held, stop);
            if (solution.point().isEmpty() && last.isPresent()) { // from afar it may still be found
                solution = solver.reached(held, stop);
            }
            if (solution.point().isEmpty()) {
                failed = solution.obstacles();
                return null;
            }
            last = Optional.of(solution);
            return solution.point().get();
        }

        /** The states that temperatures go round between, the one nearest to the last first. */
        private List<ThermalState> cycle(FixedPoint found) {
            List<ThermalState> cycle = new ArrayList<>();
            for (double[] temperatures : found.last().subList(Math.max(0, found.last().size() - 2), found.last().size())) {
                OperatingPoint point = point(temperatures);
                if (point != null) {
                    cycle.add(balancing.state(drive, point, feeds, last, steps));
                }
            }
            return cycle;
        }
    }
}
