package tramontane.thermal;

import java.util.LinkedHashMap;
import java.util.Map;

/**
 * What is given to the loop of flow and temperature: speed settings, and factors on what is stated.
 *
 * @param settings speed setting of each bank, 1 for full; the condition's where one is missing
 * @param speed    factor on the speed of all banks
 * @param pressure factor on the pressure drop of a passage, or the pressure of a bank, at equal flow, by id; 1 for one missing
 */
public record Drive(Map<String, Double> settings, double speed, Map<String, Double> pressure) {

    /** All as stated. */
    public static final Drive STATED = new Drive(Map.of(), 1, Map.of());

    public Drive {
        settings = Map.copyOf(settings);
        pressure = Map.copyOf(pressure);
        if (!(speed >= 0 && speed < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException("factor on speed must be a number not below zero, got " + speed);
        }
    }

    /** The same with the setting of some banks. */
    public Drive with(Map<String, Double> changed) {
        Map<String, Double> all = new LinkedHashMap<>(settings);
        all.putAll(changed);
        return new Drive(all, speed, pressure);
    }

    /** The same at other speeds. */
    public Drive faster(double factor) {
        return new Drive(settings, speed * factor, pressure);
    }

    /** The same with the pressure of one passage or bank at equal flow changed. */
    public Drive withPressure(String passage, double factor) {
        return new Drive(settings, speed, Map.of(passage, factor));
    }
}
