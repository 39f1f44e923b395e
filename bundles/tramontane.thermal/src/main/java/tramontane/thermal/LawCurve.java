package tramontane.thermal;

import java.util.ArrayList;
import java.util.List;
import tramontane.model.ControlLaw;
import tramontane.model.Quantity;

/**
 * The speed setting that a control law gives.
 *
 * <p>Straight between its points, held beyond them. A rise of the setting within no more than the hysteresis is taken as a
 * switch: it goes on at the upper end of that stretch and off when the sensor has fallen to its lower end less the hysteresis.
 * Elsewhere the way up counts, as when warming up. Switches that are off or on make stages: stage 0 has none on.
 *
 * <pre>{@code
 * LawCurve curve = LawCurve.of(law);
 * double gain = curve.slope(0, sensor); // 1/K
 * }</pre>
 */
public final class LawCurve {

    private final double[] temperature;
    private final double[] speed;
    private final double hysteresis;
    private final List<Integer> switches = new ArrayList<>();

    /**
     * A rise that acts as a switch.
     *
     * @param on   sensor temperature above which it goes on, K
     * @param off  sensor temperature below which it goes off, K
     * @param low  setting while it is off, 1 for full
     * @param high setting when it has gone on
     */
    public record Switch(double on, double off, double low, double high) {
    }

    private LawCurve(double[] temperature, double[] speed, double hysteresis) {
        this.temperature = temperature;
        this.speed = speed;
        this.hysteresis = hysteresis;
        for (int i = 0; i + 1 < temperature.length; i++) {
            if (speed[i + 1] > speed[i] && temperature[i + 1] - temperature[i] <= hysteresis) {
                switches.add(i);
            }
        }
    }

    /**
     * The curve of a law.
     *
     * @throws IllegalArgumentException for a law without points, or whose lists are not of one length
     */
    public static LawCurve of(ControlLaw law) {
        if (law.temperature().size() == 0 || law.temperature().size() != law.speed().size()) {
            throw new IllegalArgumentException("expected one setting for each temperature, got " + law.temperature().size()
                    + " temperatures and " + law.speed().size() + " settings");
        }
        return new LawCurve(law.temperature().toArray(), law.speed().toArray(),
                law.hysteresis().map(Quantity::si).orElse(0.0));
    }

    /** How far the way down lies below the way up, K. */
    public double hysteresis() {
        return hysteresis;
    }

    /** Its switches, from the lowest. */
    public List<Switch> switches() {
        return switches.stream().map(i -> new Switch(temperature[i + 1], temperature[i] - hysteresis, speed[i], speed[i + 1])).toList();
    }

    /** Number of stages: one more than switches. */
    public int stages() {
        return switches.size() + 1;
    }

    /**
     * The setting in a stage.
     *
     * @param stage  how many switches are on, from the lowest
     * @param sensor K
     */
    public double setting(int stage, double sensor) {
        double lowest = stage == 0 ? Double.NEGATIVE_INFINITY : temperature[switches.get(stage - 1) + 1];
        double highest = stage == switches.size() ? Double.POSITIVE_INFINITY : temperature[switches.get(stage)];
        return up(Math.max(lowest, Math.min(highest, sensor)));
    }

    /**
     * Slope of the setting in a stage, 1/K: 0 where it is held. At a point of the law the steeper side counts.
     *
     * @param stage  how many switches are on, from the lowest
     * @param sensor K
     */
    public double slope(int stage, double sensor) {
        int first = stage == 0 ? 0 : switches.get(stage - 1) + 1;
        int last = stage == switches.size() ? speed.length - 1 : switches.get(stage);
        double steepest = 0;
        for (int i = first; i < last; i++) {
            double slope = (speed[i + 1] - speed[i]) / (temperature[i + 1] - temperature[i]);
            if (sensor >= temperature[i] && sensor <= temperature[i + 1] && Math.abs(slope) > Math.abs(steepest)) {
                steepest = slope;
            }
        }
        return steepest;
    }

    /** The stage in which it is left at a sensor temperature: the next higher or lower one, or the same. */
    public int next(int stage, double sensor) {
        if (stage < switches.size() && sensor > temperature[switches.get(stage) + 1]) {
            return stage + 1;
        }
        return stage > 0 && sensor < temperature[switches.get(stage - 1)] - hysteresis ? stage - 1 : stage;
    }

    /** The way up, straight between points. */
    public double up(double sensor) {
        int last = temperature.length - 1;
        if (sensor <= temperature[0]) {
            return speed[0];
        }
        for (int i = 0; i < last; i++) {
            if (sensor <= temperature[i + 1]) {
                return speed[i] + (speed[i + 1] - speed[i]) * (sensor - temperature[i]) / (temperature[i + 1] - temperature[i]);
            }
        }
        return speed[last];
    }

    /** The way down, which lies below the way up by the hysteresis. */
    public double down(double sensor) {
        return up(sensor + hysteresis);
    }

    /** Lowest setting of a stage. */
    public double lowest(int stage) {
        return extreme(stage, true);
    }

    /** Highest setting of a stage. */
    public double highest(int stage) {
        return extreme(stage, false);
    }

    private double extreme(int stage, boolean low) {
        int first = stage == 0 ? 0 : switches.get(stage - 1) + 1;
        int last = stage == switches.size() ? speed.length - 1 : switches.get(stage);
        double extreme = speed[first];
        for (int i = first; i <= last; i++) {
            extreme = low ? Math.min(extreme, speed[i]) : Math.max(extreme, speed[i]);
        }
        return extreme;
    }
}
