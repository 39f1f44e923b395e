package tramontane.drive.internal;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.BooleanSupplier;
import java.util.stream.IntStream;
import tramontane.drive.Control;
import tramontane.drive.LawDrive;
import tramontane.drive.LoopState;
import tramontane.drive.MoverDrive;
import tramontane.model.ControlLaw;
import tramontane.model.Design;
import tramontane.model.Quantity;
import tramontane.physics.control.ControlLoop;
import tramontane.physics.control.LoopSimulation;
import tramontane.physics.control.Margins;
import tramontane.physics.control.StateSpace;
import tramontane.physics.control.Trajectory;
import tramontane.thermal.LawCurve;
import tramontane.thermal.LinearPlant;
import tramontane.thermal.Linearization;
import tramontane.thermal.Loop;
import tramontane.thermal.ThermalModel;
import tramontane.thermal.ThermalState;

/**
 * The loop of one control law around where it rests, and in time.
 *
 * <p>The bodies are linear at each of some settings; between these, their rates and what the sensor reads are mixed in proportion.
 */
final class Loops {

    /** Settings at which the bodies are looked at. */
    private static final int SETTINGS = 9;
    /** Step of the setting by which the change of rates is taken. */
    private static final double STEP = 0.005;
    /** Share of a speed by which it may differ that much of a step further; more is a jump. */
    private static final double JUMP = 0.1;
    /** Time constant of movers of which nothing is stated, s: small ones run up within some three seconds (common practice). */
    static final double ASSUMED_LAG = 1;
    /** Run-up time over the time constant of a first-order lag: 95 % are reached after three. */
    private static final double RUN_UP = 3;
    /** Duration of a run in slowest time constants, and in swings. */
    private static final double CONSTANTS = 6;
    private static final double SWINGS = 40;
    private static final double LAGS = 60;
    /** The first for a law with switches, whose cycles are as long as its bodies are slow. */
    private static final double SWITCHED_CONSTANTS = 12;
    private static final double MOST_READINGS = 100_000;
    /** Change of a setting within one step of a law that is limited in its rate. */
    private static final double RATE_STEP = 0.01;
    private static final int MOMENTS = 400;
    /** Share of a run after which swings are looked at, and swing of a setting that counts as none. */
    private static final double LATE = 5.0 / 6;
    private static final double STILL = 0.01;

    private final Design design;
    private final ThermalModel model;
    private final ThermalModel.Acting acting;
    private final LawDrive drive;
    private final Decoding decoding;
    private final double moverLag;
    private final LawCurve curve;

    Loops(Design design, ThermalModel model, ThermalModel.Acting acting, Decoding decoding) {
        this.design = design;
        this.model = model;
        this.acting = acting;
        this.decoding = decoding;
        drive = decoding.law(acting.law());
        moverLag = drive.moverLag().or(() -> stated(decoding)).orElse(ASSUMED_LAG);
        curve = LawCurve.of(acting.law());
    }

    /** A third of the longest starting time of the movers it drives. */
    private Optional<Double> stated(Decoding decoding) {
        return design.airPath().passages().stream().filter(passage -> acting.banks().contains(passage.id()))
                .flatMap(passage -> design.airMover(Banks.mover(passage)).flatMap(decoding::mover).map(MoverDrive::supply)
                        .flatMap(MoverDrive.Intake::startTime).stream()).max(Double::compare).map(time -> time / RUN_UP);
    }

    /** The laws that reach any mover: those of which a bank says nothing of its drive, or has a control that follows a setting. */
    static List<ThermalModel.Acting> controlling(List<ThermalModel.Acting> acting, Design design, Decoding decoding) {
        return acting.stream().filter(law -> law.banks().stream().anyMatch(id -> design.airPath().passages().stream()
                .filter(passage -> passage.id().equals(id))
                .anyMatch(passage -> design.airMover(Banks.mover(passage)).flatMap(decoding::mover).map(part -> Banks.control(part,
                        decoding.bank(passage))
                        .followsSetting()).orElse(true)))).toList();
    }

    /** Whether it drives movers by speed grades. */
    boolean graded() {
        return acting.banks().stream().anyMatch(id -> design.airPath().passages().stream().filter(passage -> passage.id().equals(id))
                .anyMatch(passage -> design.airMover(Banks.mover(passage)).flatMap(decoding::mover).filter(part -> Banks.control(part,
                        decoding.bank(passage))
                        == Control.GRADES).isPresent()));
    }

    /** Time constant with which the speed follows, s. */
    double moverLag() {
        return moverLag;
    }

    LawDrive drive() {
        return drive;
    }

    LawCurve curve() {
        return curve;
    }

    /** Where it would rest, or one of the states it goes to and fro between. */
    static Optional<ThermalState> rest(Loop loop) {
        return loop.state().or(() -> loop.cycle().stream().findFirst());
    }

    /** The loop; empty where its bodies cannot be followed. */
    Optional<LoopState.Law> of(ThermalState rest, BooleanSupplier stop) {
        OptionalDouble sensor = model.sensed(acting.law(), rest);
        if (sensor.isEmpty() || acting.banks().isEmpty()) {
            return Optional.empty();
        }
        double setting = rest.feeds().get(acting.banks().getFirst()).setting();
        Optional<Bodies> bodies = bodies(rest, setting, stop);
        Optional<StateSpace> plant = bodies.flatMap(all -> near(rest, setting, stop));
        if (plant.isEmpty()) {
            return Optional.empty();
        }
        double slope = slope(sensor.getAsDouble(), setting);
        Margins margins = loop(plant.get(), slope).margins();
        Run run = run(bodies.get(), plant.get(), margins, stop);
        return run.trajectory().map(path -> {
            Trajectory.Swing swing = path.swing(LATE * run.duration());
            // a steep law may move the movers a lot while its sensor hardly moves; one in steps may go between two of them
            boolean steady = swing.setting() <= Math.max(STILL, drive.resolution()) || path.decays() && margins.gain() > 1 && curve.stages() == 1;
            return new LoopState.Law(acting.law().id(), sensor.getAsDouble(), setting, slope, plant.get().staticGain(), margins.gain(),
                    margins.phase(),
                    period(margins.phaseCrossover()), swing.sensor(), swing.setting(), steady ? Optional.empty()
                            : Optional.of(path.swing(run.duration() / 2).period()).filter(Double::isFinite), steady, moments(path));
        });
    }

    /** Its gain margin alone; empty where its bodies cannot be followed. */
    OptionalDouble gainMargin(ThermalState rest, BooleanSupplier stop) {
        OptionalDouble sensor = model.sensed(acting.law(), rest);
        if (sensor.isEmpty() || acting.banks().isEmpty()) {
            return OptionalDouble.empty();
        }
        double setting = rest.feeds().get(acting.banks().getFirst()).setting();
        double slope = slope(sensor.getAsDouble(), setting);
        return slope == 0 ? OptionalDouble.of(Double.POSITIVE_INFINITY)
                : near(rest, setting, stop).map(plant -> OptionalDouble.of(loop(plant, slope).margins().gain())).orElse(OptionalDouble.empty());
    }

    private static Optional<Double> period(double omega) {
        return Double.isFinite(omega) && omega > 0 ? Optional.of(2 * Math.PI / omega) : Optional.empty();
    }

    /** The opened loop at a slope of the law. */
    ControlLoop loop(StateSpace plant, double slope) {
        return new ControlLoop(plant, slope, List.of(drive.lag(), moverLag), drive.interval() / 2);
    }

    /** Slope of the law where it rests, 1/K. */
    private double slope(double sensor, double setting) {
        int stage = 0;
        for (int i = 0; i < curve.stages(); i++) { // the one whose setting it has
            stage = Math.abs(curve.setting(i, sensor) - setting) < Math.abs(curve.setting(stage, sensor) - setting) ? i : stage;
        }
        return curve.slope(stage, sensor);
    }

    /** The bodies around a setting; empty where there is no rest beside it. */
    Optional<StateSpace> near(ThermalState rest, double setting, BooleanSupplier stop) {
        double low = Math.max(0, setting - STEP);
        double high = Math.min(1, setting + STEP);
        List<Linearization> all = model.plants(acting.law(), List.of(low, setting, high), rest, stop);
        List<Optional<LinearPlant>> three = all.stream().map(Linearization::plant).toList();
        if (three.get(1).isEmpty()) {
            return Optional.empty();
        }
        LinearPlant here = three.get(1).get();
        // across the edge of a grade, or where the movers stop, there is no slope
        LinearPlant below = three.get(0).filter(each -> each.bodies().equals(here.bodies()) && alike(all.get(0), all.get(1))).orElse(here);
        LinearPlant above = three.get(2).filter(each -> each.bodies().equals(here.bodies()) && alike(all.get(2), all.get(1))).orElse(here);
        double width = (above == here ? setting : high) - (below == here ? setting : low);
        if (!(width > 0)) { // it stays as fast, whatever the setting is a little
            return Optional.of(new StateSpace(here.a(), new double[here.size()], here.c(), 0));
        }
        double[] at = here.rest();
        double[] up = above.rates(at);
        double[] down = below.rates(at);
        double[] change = new double[at.length];
        for (int i = 0; i < at.length; i++) {
            change[i] = (up[i] - down[i]) / width;
        }
        return Optional.of(new StateSpace(here.a(), change, here.c(), (above.reads(at) - below.reads(at)) / width));
    }

    /** Rows of a matrix without what is zero: a body knows few others. */
    private record Rows(int[][] columns, double[][] values) {

        static Rows of(double[][] full) {
            int[][] columns = new int[full.length][];
            double[][] values = new double[full.length][];
            for (int i = 0; i < full.length; i++) {
                double[] row = full[i];
                columns[i] = IntStream.range(0, row.length).filter(j -> row[j] != 0).toArray();
                values[i] = Arrays.stream(columns[i]).mapToDouble(j -> row[j]).toArray();
            }
            return new Rows(columns, values);
        }
    }

    /** Whether the movers that a law drives turn about as fast in two states. */
    private boolean alike(Linearization one, Linearization other) {
        return acting.banks().stream().allMatch(bank -> {
            double first = one.state().flatMap(state -> state.point().bank(bank)).map(point -> point.speed()).orElse(0.0);
            double second = other.state().flatMap(state -> state.point().bank(bank)).map(point -> point.speed()).orElse(0.0);
            return Math.abs(first - second) <= JUMP * Math.max(first, second);
        });
    }

    /** The bodies at some settings, those between mixed. */
    private record Bodies(double[] settings, List<Rows> a, List<double[]> f, List<double[]> c, double[] d,
            double cold) implements LoopSimulation.Plant {

        @Override
        public int size() {
            return f.getFirst().length;
        }

        private int piece(double setting) {
            int i = 0;
            while (i < settings.length - 2 && setting > settings[i + 1]) {
                i++;
            }
            return i;
        }

        private double weight(int piece, double setting) {
            return settings.length == 1 ? 0 : Math.clamp((setting - settings[piece]) / (settings[piece + 1] - settings[piece]), 0, 1);
        }

        @Override
        public void rates(double setting, double[] state, double[] rates) {
            int piece = piece(setting);
            double weight = weight(piece, setting);
            Arrays.fill(rates, 0, size(), 0);
            add(piece, 1 - weight, state, rates);
            if (weight > 0) {
                add(piece + 1, weight, state, rates);
            }
        }

        private void add(int k, double weight, double[] state, double[] rates) {
            Rows rows = a.get(k);
            double[] steady = f.get(k);
            for (int i = 0; i < steady.length; i++) {
                int[] columns = rows.columns()[i];
                double[] values = rows.values()[i];
                double rate = steady[i];
                for (int j = 0; j < columns.length; j++) {
                    rate += values[j] * state[columns[j]];
                }
                rates[i] += weight * rate;
            }
        }

        @Override
        public double sensed(double setting, double[] state) {
            int piece = piece(setting);
            double weight = weight(piece, setting);
            return (1 - weight) * reads(piece, state) + (weight > 0 ? weight * reads(piece + 1, state) : 0);
        }

        private double reads(int k, double[] state) {
            double reads = d[k];
            for (int i = 0; i < size(); i++) {
                reads += c.get(k)[i] * state[i];
            }
            return reads;
        }
    }

    private Optional<Bodies> bodies(ThermalState rest, double setting, BooleanSupplier stop) {
        double[] law = acting.law().speed().toArray();
        double low = Math.min(setting, Arrays.stream(law).min().orElse(setting));
        double high = Math.max(setting, Arrays.stream(law).max().orElse(setting));
        List<Double> settings = new ArrayList<>();
        for (int i = SETTINGS - 1; i >= 0; i--) { // from fast to slow: from each the next is near
            settings.add(low + (high - low) * i / (SETTINGS - 1));
        }
        List<Double> kept = new ArrayList<>();
        List<LinearPlant> plants = new ArrayList<>();
        List<Double> distinct = settings.stream().distinct().toList();
        List<Linearization> all = model.plants(acting.law(), distinct, rest, stop);
        for (int i = all.size() - 1; i >= 0; i--) {
            Optional<LinearPlant> plant = all.get(i).plant();
            if (plant.isPresent()) {
                kept.add(distinct.get(i));
                plants.add(plant.get());
            }
        }
        if (plants.isEmpty()) {
            return Optional.empty();
        }
        List<String> names = plants.getLast().bodies();
        for (int i = plants.size() - 1; i >= 0; i--) {
            if (!plants.get(i).bodies().equals(names)) {
                plants.remove(i);
                kept.remove(i);
            }
        }
        return Optional.of(new Bodies(kept.stream().mapToDouble(Double::doubleValue).toArray(), plants.stream()
                .map(plant -> Rows.of(plant.a())).toList(),
                plants.stream().map(LinearPlant::f).toList(), plants.stream().map(LinearPlant::c).toList(),
                plants.stream().mapToDouble(LinearPlant::d).toArray(), model.condition().temperature()));
    }

    /** A run in time. */
    private record Run(Optional<Trajectory> trajectory, double duration) {
    }

    private Run run(Bodies bodies, StateSpace plant, Margins margins, BooleanSupplier stop) {
        ControlLaw law = acting.law();
        double fastestRate = Math.max(law.riseLimit().map(Quantity::si).orElse(0.0), law.fallLimit().map(Quantity::si).orElse(0.0));
        double interval = drive.interval() > 0 || fastestRate == 0 ? drive.interval() : RATE_STEP / fastestRate;
        LoopSimulation.Timing timing = new LoopSimulation.Timing(drive.lag(), interval, 0, moverLag, drive.resolution());
        double slowest = bodies.size() == 0 ? 0 : plant.slowest();
        double swings = period(margins.phaseCrossover()).map(period -> SWINGS * period).orElse(0.0);
        double duration = Math.max(Math.max((curve.stages() > 1 ? SWITCHED_CONSTANTS : CONSTANTS) * slowest, swings), LAGS * (drive.lag()
                + interval + moverLag));
        if (!(duration > 0 && duration < Double.POSITIVE_INFINITY)) {
            return new Run(Optional.empty(), 0);
        }
        duration = interval > 0 ? Math.min(duration, MOST_READINGS * interval) : duration;
        double[] cold = new double[bodies.size()];
        Arrays.fill(cold, bodies.cold());
        double begin = curve.setting(0, bodies.cold());
        Trajectory path = LoopSimulation.run(bodies, new Follower(curve, begin, limit(law.riseLimit(), interval), limit(law.fallLimit(),
                interval)), timing,
                cold, bodies.cold(), begin, duration, stop);
        return new Run(path.size() < 3 ? Optional.empty() : Optional.of(path), duration);
    }

    private static double limit(Optional<Quantity> rate, double interval) {
        return rate.map(each -> each.si() * interval).orElse(Double.POSITIVE_INFINITY);
    }

    private static List<LoopState.Moment> moments(Trajectory path) {
        double[] times = path.times();
        double[] sensor = path.sensor();
        double[] actual = path.actual();
        List<LoopState.Moment> moments = new ArrayList<>();
        double spacing = times[times.length - 1] / (MOMENTS - 1);
        double due = 0;
        for (int i = 0; i < times.length; i++) {
            if (times[i] >= due || i == times.length - 1) {
                moments.add(new LoopState.Moment(times[i], sensor[i], actual[i]));
                due = times[i] + spacing;
            }
        }
        return moments;
    }

    /** A law with its switches, its play and its limits of rate, as it is asked one time after another. */
    private static final class Follower implements LoopSimulation.Law {
        private final LawCurve curve;
        private final double rise;
        private final double fall;
        private int stage;
        private double setting;

        Follower(LawCurve curve, double start, double rise, double fall) {
            this.curve = curve;
            this.rise = rise;
            this.fall = fall;
            setting = start;
        }

        @Override
        public double next(double sensorTemperature) {
            for (int i = 0; i < curve.stages(); i++) {
                stage = curve.next(stage, sensorTemperature);
            }
            double least = curve.setting(stage, sensorTemperature);
            double most = Math.max(least, curve.setting(stage, sensorTemperature + curve.hysteresis()));
            double wanted = Math.clamp(setting, least, most);
            setting = Math.clamp(wanted, setting - fall, setting + rise);
            return setting;
        }
    }
}
