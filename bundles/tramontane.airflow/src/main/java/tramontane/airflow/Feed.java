package tramontane.airflow;

import java.util.Objects;

/**
 * What the movers of a bank are fed with and work against, where that is not the setting of the condition and the air outside.
 *
 * @param setting     speed setting, 1 for full
 * @param density     density of the air at its inlet, kg/m³
 * @param temperature temperature of the air at its inlet, K
 * @param from        where the setting comes from, for traces: {@code condition hot day}, {@code control law fans}
 */
public record Feed(double setting, double density, double temperature, String from) {

    /** Refuses numbers that are none, a negative setting, and air without mass or warmth. */
    public Feed {
        Objects.requireNonNull(from);
        if (!(setting >= 0 && setting < Double.POSITIVE_INFINITY) || !(density > 0 && density < Double.POSITIVE_INFINITY)
                || !(temperature > 0 && temperature < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException("speed setting " + setting + ", density " + density
                    + " kg/m³, temperature " + temperature + " K; expected a setting of zero or more, and density and temperature above "
                    + "zero");
        }
    }
}
