package tramontane.physics.control;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/** What a loop did in time: at most {@value #MOST} points, each after a step of the integration. Immutable. */
public final class Trajectory {

    /** Points kept, the first and last among them. */
    public static final int MOST = 4000;

    private static final double STILL = 0.01;

    /** How a run ended. */
    public enum End {
        /** After the whole duration. */
        COMPLETE,
        /** Before it, as asked. */
        STOPPED,
        /** Before it: the steps became too small, as the plant gives no number or jumps, or too many. */
        STUCK
    }

    /**
     * How far a loop swings.
     *
     * @param sensor  half of highest less lowest sensor temperature, K
     * @param setting half of highest less lowest setting asked for
     * @param period  from one upward crossing of the mean sensor temperature to the next, on average, s; infinite where there are
     *                fewer than two
     */
    public record Swing(double sensor, double setting, double period) {
    }

    private final End end;
    private final double[] times;
    private final double[] sensor;
    private final double[] asked;
    private final double[] actual;
    private final double[][] states;

    Trajectory(End end, double[] times, double[] sensor, double[] asked, double[] actual, double[][] states) {
        this.end = end;
        this.times = times;
        this.sensor = sensor;
        this.asked = asked;
        this.actual = actual;
        this.states = states;
    }

    /** How the run ended; what was reached until then is here. */
    public End end() {
        return end;
    }

    /** How many points. */
    public int size() {
        return times.length;
    }

    /** Times from the start, s, rising from 0. */
    public double[] times() {
        return times.clone();
    }

    /** Temperature of the sensor at these times, K. */
    public double[] sensor() {
        return sensor.clone();
    }

    /** The setting asked for at these times. */
    public double[] asked() {
        return asked.clone();
    }

    /** The setting that acts at these times, after dead time and lag of the mover. */
    public double[] actual() {
        return actual.clone();
    }

    /** State of the plant at a point, K. */
    public double[] state(int point) {
        return states[point].clone();
    }

    /**
     * How far it swings from a time on.
     *
     * @param from time, s; what comes before is left out
     */
    public Swing swing(double from) {
        int first = 0;
        while (first < times.length - 1 && times[first] < from) {
            first++;
        }
        double low = sensor[first];
        double high = low;
        double least = asked[first];
        double most = least;
        double area = 0;
        for (int i = first + 1; i < times.length; i++) {
            low = Math.min(low, sensor[i]);
            high = Math.max(high, sensor[i]);
            least = Math.min(least, asked[i]);
            most = Math.max(most, asked[i]);
            area += 0.5 * (sensor[i] + sensor[i - 1]) * (times[i] - times[i - 1]);
        }
        double span = times[times.length - 1] - times[first];
        double mean = span > 0 ? area / span : low;
        double begun = Double.NaN;
        double last = Double.NaN;
        int periods = 0;
        for (int i = first + 1; i < times.length; i++) {
            if (sensor[i - 1] < mean && sensor[i] >= mean) {
                last = times[i - 1] + (times[i] - times[i - 1]) * (mean - sensor[i - 1]) / (sensor[i] - sensor[i - 1]);
                if (Double.isNaN(begun)) {
                    begun = last;
                } else {
                    periods++;
                }
            }
        }
        return new Swing(0.5 * (high - low), 0.5 * (most - least), periods > 0 ? (last - begun) / periods : Double.POSITIVE_INFINITY);
    }

    /**
     * Whether the swing dies away: in the last third of the time the largest move of the sensor from one turn to the next is below
     * nine tenths of that in the middle third, or below 0.01 K. Turns, not extremes, so that a slow drift is no swing. The duration
     * should hold a dozen periods; with fewer it says little.
     */
    public boolean decays() {
        double duration = times[times.length - 1];
        double middle = 0;
        double last = 0;
        double turn = sensor[0];
        boolean first = true;
        for (int i = 1; i + 1 < times.length; i++) {
            if ((sensor[i] - sensor[i - 1]) * (sensor[i + 1] - sensor[i]) < 0) {
                double move = Math.abs(sensor[i] - turn);
                if (!first && times[i] > 2 * duration / 3) {
                    last = Math.max(last, move);
                } else if (!first && times[i] > duration / 3) {
                    middle = Math.max(middle, move);
                }
                first = false;
                turn = sensor[i];
            }
        }
        return last < STILL || last < 0.9 * middle;
    }

    /** Collects points, not closer than the duration over their number. */
    static final class Recorder {

        private final double spacing;
        private final List<double[]> scalars = new ArrayList<>();
        private final List<double[]> states = new ArrayList<>();
        private double due;
        private double latest = -1;

        Recorder(double duration) {
            spacing = duration / (MOST - 2);
        }

        void add(double time, double sensor, double asked, double actual, double[] state, int size, boolean last) {
            if (time <= latest || time < due && !last) {
                return;
            }
            latest = time;
            due = time + spacing;
            scalars.add(new double[] {time, sensor, asked, actual});
            states.add(Arrays.copyOf(state, size));
        }

        Trajectory end(End end) {
            return new Trajectory(end, column(0), column(1), column(2), column(3), states.toArray(double[][]::new));
        }

        private double[] column(int which) {
            double[] column = new double[scalars.size()];
            for (int i = 0; i < column.length; i++) {
                column[i] = scalars.get(i)[which];
            }
            return column;
        }
    }
}
