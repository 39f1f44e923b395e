package tramontane.physics.control;

import java.util.function.BooleanSupplier;

/**
 * A temperature control loop in time: plant, sensor that lags, law that is asked at instants or always, dead time, setting in steps,
 * fan that lags.
 *
 * <p>Integrated by TR-BDF2 (R. E. Bank et al., IEEE Trans. Electron Devices 32 (1985) 1992-2007; with the error estimate of
 * M. E. Hosea, L. F. Shampine, Applied Numerical Mathematics 20 (1996) 21-37, both from memory): second order, damps whatever is too
 * fast for the step, so a plant may hold milliseconds and hours at once. Sensor and fan are part of the same system. Sampling instants
 * and the instants at which a setting begins to act are hit exactly.
 *
 * <p>A law that is asked always is asked once after each step, in the order of time; its setting runs straight from one step to the
 * next. Steps are kept so short that the sensor moves by at most 0.05 K, and that the setting does not leave the straight line through
 * the last two by more than ten times the tolerance per kelvin. A law that jumps is taken to jump within a step, a millionth of the
 * duration at the shortest. A loop without any lag, sampling or dead time, whose sensed temperature follows the setting at once, is an
 * equation and not a motion; do not run it.
 */
public final class LoopSimulation {

    /** Error of a step in any temperature, K, where none is given. Loops that settle are then right to 0.1 mK, loops that hunt to 5 mK. */
    public static final double TOLERANCE = 1e-6;

    /** What is heated and cooled. Pure: the same answer to the same question. */
    public interface Plant {

        /** How many states, may be zero. */
        int size();

        /**
         * How fast its states move.
         *
         * @param setting the setting that acts
         * @param state   temperatures, K; not to be changed
         * @param rates   filled with K/s
         */
        void rates(double setting, double[] state, double[] rates);

        /**
         * The temperature around the sensor, K.
         *
         * @param setting the setting that acts
         * @param state   temperatures, K; not to be changed
         */
        double sensed(double setting, double[] state);
    }

    /** What asks for a speed. */
    @FunctionalInterface
    public interface Law {

        /**
         * The setting asked for. Called once for each instant, in order, so it may remember.
         *
         * @param sensorTemperature temperature that the sensor shows, K
         */
        double next(double sensorTemperature);
    }

    /**
     * What lies between plant and law. Zero is none.
     *
     * @param sensorLag  time constant of the sensor, s
     * @param interval   time from one question to the law to the next, s; zero asks it always
     * @param deadTime   from question until the setting begins to act, s
     * @param moverLag   time constant of the fan, s
     * @param resolution least step of the setting asked for, which is rounded to multiples of it; zero is smooth
     */
    public record Timing(double sensorLag, double interval, double deadTime, double moverLag, double resolution) {

        /** Refuses what is below zero or no number. */
        public Timing {
            Inputs.notNegative("lag of the sensor", sensorLag);
            Inputs.notNegative("interval", interval);
            Inputs.notNegative("dead time", deadTime);
            Inputs.notNegative("lag of the mover", moverLag);
            Inputs.notNegative("resolution", resolution);
        }
    }

    private LoopSimulation() {
    }

    /** {@link #run(Plant, Law, Timing, double[], double, double, double, double, BooleanSupplier)} with {@link #TOLERANCE}. */
    public static Trajectory run(Plant plant, Law law, Timing timing, double[] start, double startSensor, double startSetting,
            double duration, BooleanSupplier stop) {
        return run(plant, law, timing, start, startSensor, startSetting, duration, TOLERANCE, stop);
    }

    /**
     * Follows the loop from a start.
     *
     * @param plant        what is cooled
     * @param law          asked first at time 0
     * @param timing       what lies between
     * @param start        state of the plant at time 0, K
     * @param startSensor  what the sensor shows at time 0, K; without lag it shows what is sensed instead
     * @param startSetting the setting that acts at time 0 and until the first one asked for does
     * @param duration     s, above zero
     * @param tolerance    error of a step in any temperature, K, above zero; a hundredth of it in the setting
     * @param stop         asked before each step; true ends the run with what is there
     * @throws IllegalArgumentException where a number means nothing, or the law gives none
     */
    public static Trajectory run(Plant plant, Law law, Timing timing, double[] start, double startSensor, double startSetting,
            double duration, double tolerance, BooleanSupplier stop) {
        if (start.length != plant.size()) {
            throw new IllegalArgumentException("a plant of " + plant.size() + " states started from " + start.length);
        }
        Inputs.finite("state", start);
        Inputs.finite("temperature of the sensor", startSensor);
        Inputs.finite("setting", startSetting);
        Inputs.positive("duration", duration);
        Inputs.positive("tolerance", tolerance);
        return new LoopRun(plant, law, timing, start, startSensor, startSetting, duration, tolerance).go(stop);
    }
}
