package tramontane.thermal.internal.time;

import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.BooleanSupplier;
import tramontane.airflow.AirPathSolution;
import tramontane.airflow.AirPathSolver;
import tramontane.airflow.Feed;
import tramontane.airflow.NetworkSolver;
import tramontane.analysis.Finding;
import tramontane.analysis.OperatingPoint;
import tramontane.analysis.Severity;
import tramontane.model.ControlLaw;
import tramontane.thermal.AirBalance;
import tramontane.thermal.Drive;
import tramontane.thermal.ThermalModel;
import tramontane.thermal.internal.Balancing;
import tramontane.thermal.internal.FixedPoint;
import tramontane.thermal.internal.Parts;

/**
 * The design in one condition: brings flows, air temperatures and speed settings into agreement for given temperatures of the
 * bodies. Flows, resistances and walls are then held until the next time.
 */
final class Plant {

    /** Change of a temperature up to which resistances are kept, K; properties of air change by some 0.2 % per kelvin. */
    private static final double SAME_AIR = 0.02;
    /** Relative change of a flow up to which resistances are kept. */
    private static final double SAME_FLOW = 1e-5;
    /** Change of a bay's temperature up to which the tangent of its walls is kept, K. */
    private static final double SAME_WALL = 0.2;
    /** Relative change of the air into a bay up to which it is kept. */
    private static final double SAME_DRAUGHT = 1e-2;
    /** Kelvin for which a change of a speed setting by 1 counts when flows and settings are brought into agreement. */
    private static final double PER_SETTING = 100;
    /** Rise of a bay that nothing carries heat off, while looking, K. */
    private static final double STAND_IN = 60;
    /** Rise of all bays from which air that does not move is given a start, K. */
    private static final double WARM_START = 10;
    private static final int MOST_STEPS = 60;

    private final ThermalModel model;
    private final Bodies bodies;
    private final Contacts contacts;
    private final Regulation regulation;
    private final double[] power;
    private final double[][] resistance;
    private final double[] localFor;
    private final double[] surfaceFor;
    private final double[] flowFor;
    private final double[] wallHeat;
    private final double[] wallSlope;
    private final double[] wallAt;
    private final double[] wallDraught;
    private final boolean[] untold;
    private AirPathSolver solver;

    /**
     * All held for a while.
     *
     * @param network  bodies and air
     * @param reading  temperatures at the time it was made
     * @param point    the flows
     * @param feeds    what the banks are fed with
     * @param solution to start the next one from
     * @param settings of the control laws
     * @param agreed   whether flows and temperatures agree
     */
    record Held(Network network, Network.Reading reading, OperatingPoint point, Map<String, Feed> feeds, AirPathSolution solution,
            double[] settings, boolean agreed) {

        boolean still() {
            return point.passages().stream().allMatch(flow -> flow.massFlow() == 0);
        }
    }

    /** Why it does not go on. */
    static final class Stuck extends Exception {
        private static final long serialVersionUID = 1;
        private final transient List<Finding> why;

        Stuck(List<Finding> why) {
            super(why.toString());
            this.why = List.copyOf(why);
        }

        List<Finding> why() {
            return why;
        }
    }

    Plant(ThermalModel model, Bodies bodies, Regulation regulation) {
        this.model = model;
        this.bodies = bodies;
        this.regulation = regulation;
        contacts = Contacts.of(model.parts(), bodies);
        List<Parts.Part> parts = model.parts().list();
        power = parts.stream().mapToDouble(Parts.Part::chainHeat).toArray();
        resistance = new double[parts.size()][0];
        localFor = nan(parts.size());
        surfaceFor = nan(parts.size());
        flowFor = nan(parts.size());
        untold = new boolean[parts.size()];
        for (int k = 0; k < untold.length; k++) {
            untold[k] = parts.get(k).fault().isPresent();
        }
        int bays = contacts.bays();
        wallHeat = new double[bays];
        wallSlope = new double[bays];
        wallAt = nan(bays);
        wallDraught = nan(bays);
    }

    private static double[] nan(int n) {
        double[] all = new double[n];
        Arrays.fill(all, Double.NaN);
        return all;
    }

    Regulation regulation() {
        return regulation;
    }

    ThermalModel model() {
        return model;
    }

    /** Whether the chain of a part has a link that cannot tell its resistance. */
    boolean untold(int part) {
        return untold[part];
    }

    /**
     * Brings all into agreement.
     *
     * @param temperatures of the bodies, K
     * @param near         what held before, to start from
     * @param laws         where control laws stood then
     * @param elapsed      time since then, s; infinite where nothing went before
     * @param tolerance    change of a bay's temperature at which flows and temperatures count as agreed, K
     * @param stop         asked now and then whether the answer is no longer wanted
     */
    Held hold(double[] temperatures, Optional<Held> near, Regulation.State laws, double elapsed, double tolerance,
            BooleanSupplier stop) throws Stuck {
        boolean still = near.isEmpty() || near.get().still();
        Search search = new Search(temperatures, near, laws, elapsed, stop);
        Held held = search.run(start(near, laws, 0), tolerance);
        if (still && held.still() && bodies.size() + power.length > 0) { // air at rest may stay so, or begin to rise
            Held warm = new Search(temperatures, near, laws, elapsed, stop).run(start(near, laws, WARM_START), tolerance);
            return warm.still() || !warm.agreed() ? held : warm;
        }
        return held;
    }

    /** Flows at settings and temperatures as they are given, nothing brought into agreement. */
    Held once(double[] temperatures, Regulation.State laws, BooleanSupplier stop) throws Stuck {
        return new Search(temperatures, Optional.empty(), laws, Double.POSITIVE_INFINITY, stop).run(start(Optional.empty(), laws, 0),
                Double.POSITIVE_INFINITY);
    }

    private double[] start(Optional<Held> near, Regulation.State laws, double above) {
        int bays = contacts.bays();
        double[] start = new double[bays + laws.setting().length];
        for (int i = 0; i < bays; i++) {
            double known = near.isPresent() ? near.get().reading().bay()[i] : Double.NaN;
            start[i] = Double.isNaN(known) ? model.condition().temperature() : known;
            start[i] = above > 0 ? Math.max(start[i], model.condition().temperature() + above) : start[i];
        }
        for (int i = bays; i < start.length; i++) {
            start[i] = PER_SETTING * (near.isPresent() ? near.get().settings()[i - bays] : laws.setting()[i - bays]);
        }
        return start;
    }

    /** One search for agreement. */
    private final class Search {
        private final double[] temperatures;
        private final Regulation.State laws;
        private final double elapsed;
        private final BooleanSupplier stop;
        private Optional<AirPathSolution> last;
        private Network.Reading reading;
        private Held held;
        private List<Finding> failed = List.of();

        Search(double[] temperatures, Optional<Held> near, Regulation.State laws, double elapsed, BooleanSupplier stop) {
            this.temperatures = temperatures;
            this.laws = laws;
            this.elapsed = elapsed;
            this.stop = stop;
            last = near.map(Held::solution);
            reading = near.map(Held::reading).orElse(null);
        }

        Held run(double[] start, double tolerance) throws Stuck {
            FixedPoint found = FixedPoint.of(this::next, start, tolerance, MOST_STEPS, () -> stop.getAsBoolean() || !failed.isEmpty());
            if (!failed.isEmpty() || held == null) {
                throw new Stuck(failed);
            }
            return new Held(held.network(), held.reading(), held.point(), held.feeds(), held.solution(), held.settings(), found.converged());
        }

        private double[] next(double[] z) {
            int bays = contacts.bays();
            double[] asked = new double[z.length - bays];
            for (int i = 0; i < asked.length; i++) {
                asked[i] = regulation.within(i, laws, z[bays + i] / PER_SETTING);
            }
            Drive drive = Drive.STATED.with(regulation.banks(asked));
            double[] air = model.balancing().held(Arrays.copyOf(z, bays));
            Map<String, Feed> feeds = model.feeds(drive, air);
            Optional<OperatingPoint> point = point(air, model.speeds(drive, feeds));
            if (point.isEmpty()) {
                return z;
            }
            Network network = network(point.get(), air);
            reading = network.read(temperatures);
            double[] sensors = sensors(network, reading);
            if (!failed.isEmpty()) {
                return z;
            }
            double[] settings = regulation.settings(laws, sensors, elapsed);
            held = new Held(network, reading, point.get(), feeds, last.orElseThrow(), asked, true);
            double[] next = Arrays.copyOf(model.balancing().held(reading.bay()), z.length);
            for (int i = 0; i < settings.length; i++) {
                next[bays + i] = PER_SETTING * settings[i];
            }
            return next;
        }

        private Optional<OperatingPoint> point(double[] air, Map<String, Double> speeds) {
            solver = solver == null ? model.path().at(speeds, Map.of(), Map.of()) : solver.withSpeeds(speeds);
            AirPathSolution solution = last.isPresent() ? solver.near(air, last.get(), stop)
                    : solver.solve(air, NetworkSolver.Settings.STANDARD, Optional.empty(), stop);
            if (solution.point().isEmpty() && last.isPresent()) { // from afar it may still be found
                solution = solver.solve(air, NetworkSolver.Settings.STANDARD, Optional.empty(), stop);
            }
            if (solution.point().isEmpty()) {
                failed = solution.obstacles().isEmpty() ? List.of(Finding.of(Severity.NOT_JUDGED, "", "the flows could not be computed"))
                        : solution.obstacles();
                return Optional.empty();
            }
            last = Optional.of(solution);
            return solution.point();
        }

        private Network network(OperatingPoint point, double[] air) {
            Balancing.Carried carried = model.balancing().carried(point);
            AirSystem.Passing passing = AirSystem.Passing.of(contacts, carried);
            resist(passing);
            walls(point, passing, air);
            double[] heat = new double[contacts.givers().size()];
            for (int p = 0, g = 0; p < contacts.places(); p++) {
                for (Parts.Share share : model.parts().shares(p)) {
                    heat[g++] = share.heat();
                }
            }
            double[][] chains = resistance.clone();
            for (int k = 0; k < chains.length; k++) {
                chains[k] = untold[k] ? null : chains[k];
            }
            AirSystem system = new AirSystem(contacts, passing, carried, Network.conductances(bodies, contacts, chains), heat,
                    wallHeat.clone(), wallSlope.clone());
            return new Network(bodies, contacts, system, model.condition().temperature(), power, chains);
        }

        private void resist(AirSystem.Passing passing) {
            List<Parts.Part> parts = model.parts().list();
            for (int k = 0; k < power.length; k++) {
                int links = parts.get(k).fault().isPresent() ? 0 : parts.get(k).source().chain().size();
                double flow = passing.massFlow()[contacts.airs().get(k).place()];
                double outside = model.condition().temperature();
                double local = reading == null || Double.isNaN(reading.local()[k]) ? outside : reading.local()[k];
                double surface = reading == null || Double.isNaN(reading.surface()[k]) ? local : reading.surface()[k];
                if (links == 0 || Math.abs(local - localFor[k]) <= SAME_AIR && Math.abs(surface - surfaceFor[k]) <= SAME_AIR
                        && Math.abs(flow - flowFor[k]) <= SAME_FLOW * flow) {
                    continue;
                }
                double[] chain = model.parts().resistances(k, model.balancing().held(new double[] {local})[0], surface, flow);
                for (int i = 0; i < chain.length; i++) {
                    if (!(chain[i] >= 0)) {
                        untold[k] = true;
                    }
                }
                resistance[k] = chain;
                localFor[k] = local;
                surfaceFor[k] = surface;
                flowFor[k] = flow;
            }
        }

        /** Tangents of what leaves through walls, each at the temperature of its bay. */
        private void walls(OperatingPoint point, AirSystem.Passing passing, double[] air) {
            AirBalance.Walls walls = model.balancing().walls(point);
            AirBalance.Loss loss = new AirBalance.Loss();
            double outside = model.condition().temperature();
            for (int i = 0; walls != AirBalance.Walls.NONE && i < air.length; i++) {
                double flow = passing.massFlow()[i];
                if (!(Math.abs(air[i] - wallAt[i]) <= SAME_WALL && Math.abs(flow - wallDraught[i]) <= SAME_DRAUGHT * flow)) {
                    walls.at(i, air[i] - outside, loss);
                    wallSlope[i] = loss.slope();
                    wallHeat[i] = loss.heat() - loss.slope() * (air[i] - outside);
                    wallAt[i] = air[i];
                    wallDraught[i] = flow;
                }
            }
        }

        private double[] sensors(Network network, Network.Reading now) {
            double[] sensors = new double[regulation.laws().size()];
            for (int i = 0; i < sensors.length; i++) {
                sensors[i] = sensor(regulation.laws().get(i).law(), network, now);
                if (Double.isNaN(sensors[i])) {
                    ControlLaw law = regulation.laws().get(i).law();
                    failed = List.of(Finding.of(Severity.NOT_JUDGED, "", "control law " + law.id() + " reads " + law.sensor()
                            + ", whose temperature cannot be told").remedy("let it read a bay, a passage or a heat source with a place"));
                }
            }
            return sensors;
        }
    }

    /** What the sensors of the control laws read, K. */
    double[] sensors(Network network, Network.Reading reading) {
        return regulation.laws().stream().mapToDouble(control -> sensor(control.law(), network, reading)).toArray();
    }

    /** What a law's sensor reads, K; NaN where it has no temperature. The same as in a steady state. */
    private double sensor(ControlLaw law, Network network, Network.Reading reading) {
        Sensor sensor = Sensor.of(law, model);
        boolean told = sensor.kind() != Sensor.Kind.NOTHING && (sensor.kind() != Sensor.Kind.PART || !untold[sensor.number()]);
        return told ? warm(sensor.read(network, reading)) : Double.NaN;
    }

    /** What has no bound while no air moves is warm enough for a law to do something about it. */
    private double warm(double temperature) {
        return Double.isNaN(temperature) ? model.condition().temperature() + STAND_IN : temperature;
    }
}
