package tramontane.thermal.internal.time;

import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import tramontane.model.ControlLaw;
import tramontane.model.Quantity;
import tramontane.thermal.LawCurve;
import tramontane.thermal.ThermalModel;
import tramontane.thermal.ThermalState;
import tramontane.thermal.internal.Controls;

/**
 * Control laws in time. On the way up a setting follows the curve, on the way down the curve shifted by the hysteresis, in between
 * it stands (play, e.g. M. Brokate, J. Sprekels, "Hysteresis and Phase Transitions", Springer 1996, sec. 2.2). Narrow rises act as
 * switches. A setting changes no faster than its limits say.
 */
final class Regulation {

    /** Part of the pause by which times differ through rounding at most. */
    private static final double SLACK = 1e-6;

    private final List<Controls.Control> laws;
    private final double pause;

    /**
     * Where laws stand.
     *
     * @param stage   how many switches of each are on
     * @param setting speed setting of each
     * @param since   when each was last switched, s
     * @param up      whether it was last switched on
     */
    record State(int[] stage, double[] setting, double[] since, boolean[] up) {

        State with(double[] changed) {
            return new State(stage, changed, since, up);
        }

        /** The same later. */
        State after(double seconds) {
            return new State(stage, setting, Arrays.stream(since).map(each -> each + seconds).toArray(), up);
        }

        State switched(int law, boolean on, double time) {
            int[] stages = stage.clone();
            double[] times = since.clone();
            boolean[] ways = up.clone();
            stages[law] += on ? 1 : -1;
            times[law] = time;
            ways[law] = on;
            return new State(stages, setting, times, ways);
        }
    }

    /**
     * Laws in time.
     *
     * @param laws  that act
     * @param pause time before which none is switched back, s
     */
    Regulation(List<Controls.Control> laws, double pause) {
        this.laws = List.copyOf(laws);
        this.pause = pause;
    }

    List<Controls.Control> laws() {
        return laws;
    }

    /** All switches off, nothing said of settings yet. */
    State off() {
        double[] since = new double[laws.size()];
        Arrays.fill(since, Double.NEGATIVE_INFINITY);
        return new State(new int[laws.size()], new double[laws.size()], since, new boolean[laws.size()]);
    }

    /**
     * Where laws stand that give known settings in a steady state: of the stages in which each would stay that whose setting is
     * nearest.
     */
    State at(double[] sensors, double[] known) {
        State state = off();
        for (int i = 0; i < laws.size(); i++) {
            LawCurve curve = laws.get(i).curve();
            double nearest = Double.POSITIVE_INFINITY;
            for (int stage = 0; stage < curve.stages(); stage++) {
                double far = Math.abs(curve.setting(stage, sensors[i]) - known[i]);
                if (curve.next(stage, sensors[i]) == stage && far < nearest) {
                    nearest = far;
                    state.stage[i] = stage;
                }
            }
            state.setting[i] = curve.setting(state.stage[i], sensors[i]);
        }
        return state;
    }

    /** Where laws stand in a steady state. */
    State at(ThermalState rest, ThermalModel model) {
        double[] sensors = new double[laws.size()];
        double[] known = new double[laws.size()];
        for (int i = 0; i < sensors.length; i++) {
            Controls.Control control = laws.get(i);
            sensors[i] = Controls.sensor(control.law(), rest, model).orElse(model.condition().temperature());
            known[i] = control.banks().isEmpty() ? 0 : rest.feeds().get(control.banks().getFirst()).setting();
        }
        return at(sensors, known);
    }

    /**
     * The settings that laws ask for.
     *
     * @param before  where they stood
     * @param sensors what their sensors read, K
     * @param elapsed time since then, s; infinite where nothing went before
     */
    double[] settings(State before, double[] sensors, double elapsed) {
        double[] settings = new double[laws.size()];
        for (int i = 0; i < settings.length; i++) {
            ControlLaw law = laws.get(i).law();
            LawCurve curve = laws.get(i).curve();
            double upwards = curve.setting(before.stage[i], sensors[i]);
            if (Double.isInfinite(elapsed)) {
                settings[i] = upwards;
                continue;
            }
            double downwards = curve.setting(before.stage[i], sensors[i] + law.hysteresis().map(Quantity::si).orElse(0.0));
            double target = Math.max(Math.min(upwards, downwards), Math.min(Math.max(upwards, downwards), before.setting[i]));
            double most = law.riseLimit().map(rate -> rate.si() * elapsed).orElse(Double.POSITIVE_INFINITY);
            double least = law.fallLimit().map(rate -> rate.si() * elapsed).orElse(Double.POSITIVE_INFINITY);
            settings[i] = Math.max(before.setting[i] - least, Math.min(before.setting[i] + most, target));
        }
        return settings;
    }

    /** A setting brought to where a law may be: between the ends of its stage, or on its way there from where it stood. */
    double within(int law, State before, double setting) {
        LawCurve curve = laws.get(law).curve();
        double low = Math.min(before.setting[law], curve.lowest(before.stage[law]));
        double high = Math.max(before.setting[law], curve.highest(before.stage[law]));
        return Math.max(low, Math.min(high, setting));
    }

    /** Whether a law is to be switched. */
    boolean trips(int law, State state, double sensor, double time) {
        int next = laws.get(law).curve().next(state.stage[law], sensor);
        boolean back = next > state.stage[law] != state.up[law];
        return next != state.stage[law] && (!back || time >= due(law, state) - SLACK * pause);
    }

    /** The same law switched. */
    State switched(int law, State state, double sensor, double time) {
        return state.switched(law, laws.get(law).curve().next(state.stage[law], sensor) > state.stage[law], time);
    }

    /** When a law may be switched back, s. */
    private double due(int law, State state) {
        return state.since[law] + pause;
    }

    /** The first time after another at which a law may be switched back that has been switched; infinite where there is none. */
    double due(State state, double time) {
        double first = Double.POSITIVE_INFINITY;
        for (int i = 0; i < laws.size(); i++) {
            first = due(i, state) > time + SLACK * pause ? Math.min(first, due(i, state)) : first;
        }
        return first;
    }

    /** The settings of banks: of several laws the one counts that asks for most. */
    Map<String, Double> banks(double[] settings) {
        Map<String, Double> byBank = new HashMap<>();
        for (int i = 0; i < settings.length; i++) {
            for (String bank : laws.get(i).banks()) {
                byBank.merge(bank, settings[i], Math::max);
            }
        }
        return byBank;
    }

    /** The highest settings that laws can give. */
    double[] highest() {
        return laws.stream().mapToDouble(law -> law.curve().highest(law.curve().stages() - 1)).toArray();
    }
}
