package tramontane.physics.control;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.Iterator;
import java.util.function.BooleanSupplier;

/** One run of a loop: instants, what was asked when, and the choice of steps. */
final class LoopRun {

    private static final double SENSOR_STEP = 0.05;
    private static final int LEAST_STEPS = 200;
    private static final double SHORTEST = 1e-6;
    private static final double TOO_SHORT = 1e-13;
    private static final int MOST_STEPS = 2_000_000;

    private final LoopSimulation.Law law;
    private final LoopSimulation.Timing timing;
    private final double startSetting;
    private final double duration;
    private final double settingTolerance;
    private final StiffSteps steps;
    private final Trajectory.Recorder recorder;

    /** Times and settings asked for, from the one that acts on; a sampled one waits here for its time. */
    private final Deque<double[]> askedFor = new ArrayDeque<>();
    private double time;
    private double wish;
    private double held;
    private double asked;
    private double slope;
    private double sensor;

    LoopRun(LoopSimulation.Plant plant, LoopSimulation.Law law, LoopSimulation.Timing timing, double[] start, double startSensor,
            double startSetting, double duration, double tolerance) {
        this.law = law;
        this.timing = timing;
        this.startSetting = startSetting;
        this.duration = duration;
        settingTolerance = timing.resolution() > 0 ? 1.01 * timing.resolution() : 10 * tolerance;
        steps = new StiffSteps(plant, timing.sensorLag(), timing.moverLag(), tolerance, start, startSensor, startSetting);
        recorder = new Trajectory.Recorder(duration);
        held = startSetting;
        wish = duration / LEAST_STEPS / 100;
    }

    Trajectory go(BooleanSupplier stop) {
        boolean always = timing.interval() == 0;
        long instant = 0;
        double nextInstant = 0;
        sensor = steps.sensor(startSetting);
        if (always) {
            ask();
            askedFor.add(new double[] {0, asked});
        }
        Trajectory.End end = Trajectory.End.COMPLETE;
        for (int tried = 0; time < duration; tried++) {
            double target = duration;
            if (!always) {
                if (time >= nextInstant) {
                    sensor = steps.sensor(held);
                    ask();
                    askedFor.add(new double[] {time + timing.deadTime(), asked});
                    instant++;
                    nextInstant = instant * timing.interval();
                }
                // instants that differ by rounding only are one
                while (!askedFor.isEmpty() && askedFor.peek()[0] <= time + TOO_SHORT * duration) {
                    held = askedFor.remove()[1];
                }
                target = Math.min(target, nextInstant);
                target = askedFor.isEmpty() ? target : Math.min(target, askedFor.peek()[0]);
            } else if (time < timing.deadTime()) {
                target = Math.min(target, timing.deadTime());
            }
            double acts = applied(time, time + TOO_SHORT * duration);
            recorder.add(time, steps.sensor(acts), asked, steps.actual(acts), steps.state(), steps.plantSize(), false);
            if (stop.getAsBoolean()) {
                end = Trajectory.End.STOPPED;
                break;
            }
            if (wish < TOO_SHORT * duration || tried >= MOST_STEPS) {
                end = Trajectory.End.STUCK;
                break;
            }
            double count = Math.ceil((target - time) / Math.min(wish, duration / LEAST_STEPS) - 1e-9);
            step((target - time) / Math.max(1, count), count <= 1 ? target : Double.NaN, always);
        }
        double acts = applied(time, time + TOO_SHORT * duration);
        recorder.add(time, steps.sensor(acts), asked, steps.actual(acts), steps.state(), steps.plantSize(), true);
        return recorder.end(end);
    }

    private void ask() {
        double setting = law.next(sensor);
        Inputs.finite("setting of the law at " + sensor + " K", setting);
        asked = timing.resolution() > 0 ? timing.resolution() * Math.rint(setting / timing.resolution()) : setting;
    }

    /** Tries one step; where it is refused, only the wish gets smaller. */
    private void step(double h, double target, boolean always) {
        double until = Double.isNaN(target) ? time + h : target;
        if (!solve(h, until)) {
            wish = steps.renew() ? wish : 0.25 * h;
            return;
        }
        double factor = Math.max(0.2, Math.min(3, 0.9 / Math.cbrt(steps.error())));
        double shown = steps.nextSensor(applied(until, until));
        if (steps.error() > 1 || !(Math.abs(shown) < Double.POSITIVE_INFINITY)) {
            wish = steps.error() > 1 ? Math.min(factor, 0.9) * h : 0.25 * h;
            return;
        }
        double move = Math.abs(shown - sensor);
        if (always && move > SENSOR_STEP && h > SHORTEST * duration) {
            wish = Math.max(0.2, 0.9 * SENSOR_STEP / move) * h;
            return;
        }
        // a step cut short by an instant says nothing against a longer one
        double next = factor * h;
        boolean cut = h < 0.999 * wish && factor >= 1;
        // a step that stays keeps its matrix
        double longer = cut ? Math.max(wish, next) : factor >= 1 && factor < 1.5 ? h : next;
        sensor = shown;
        if (always) {
            longer = Math.min(longer, Math.max(SHORTEST * duration, follow(h, until)));
        }
        steps.accept();
        time = until;
        wish = Math.min(longer, duration / LEAST_STEPS);
        while (always && askedFor.size() > 1 && second()[0] <= time - timing.deadTime()) {
            askedFor.remove();
        }
    }

    /** Asks a law that is asked always, takes the step again where its answer acts within it, and says how long the next may be. */
    private double follow(double h, double until) {
        double before = asked;
        double expected = before + slope * h;
        ask();
        double off = Math.abs(asked - expected);
        askedFor.add(new double[] {until, asked});
        if (off > 0 && h > timing.deadTime() && !solve(h, until)) {
            // what was found before stands; the next step begins from there
            askedFor.removeLast();
            solve(h, until);
            askedFor.add(new double[] {until, asked});
        }
        slope = timing.resolution() > 0 || off > 4 * settingTolerance ? 0 : (asked - before) / h;
        return h * (off > 0 ? Math.max(0.2, Math.min(2, 0.9 * Math.sqrt(settingTolerance / off))) : 2);
    }

    private boolean solve(double h, double until) {
        return steps.solve(h, applied(time, until), applied(time + StiffSteps.GAMMA * h, until), applied(until, until));
    }

    private double[] second() {
        Iterator<double[]> all = askedFor.iterator();
        all.next();
        return all.next();
    }

    /**
     * The setting that comes to the mover.
     *
     * @param at    time, s
     * @param until end of the step, which tells what is before from what is after a jump
     */
    private double applied(double at, double until) {
        if (timing.interval() > 0) {
            return held;
        }
        if (until <= timing.deadTime() && timing.deadTime() > 0) {
            return startSetting;
        }
        double then = at - timing.deadTime();
        Iterator<double[]> all = askedFor.iterator();
        double[] last = all.next();
        while (all.hasNext()) {
            double[] next = all.next();
            if (then <= next[0]) {
                return last[1] + (next[1] - last[1]) * Math.max(0, (then - last[0]) / (next[0] - last[0]));
            }
            last = next;
        }
        return last[1] + slope * Math.max(0, then - last[0]);
    }
}
