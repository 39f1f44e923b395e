package tramontane.airflow;

import java.util.Comparator;
import java.util.List;
import java.util.Map;
import tramontane.analysis.SpeedLaw;

/** The loaded speed laws in the order in which they are asked. */
public final class SpeedLaws {

    private SpeedLaws() {
    }

    /**
     * Sorts speed laws as {@link SpeedLaw} says: the highest service ranking first, 0 where none is stated; of equals the one
     * that was there first, by its service id.
     *
     * @param services speed laws with their service properties, as the framework hands them over
     */
    public static List<SpeedLaw> ranked(List<? extends Map.Entry<Map<String, Object>, SpeedLaw>> services) {
        return services.stream().sorted(Comparator
                .<Map.Entry<Map<String, Object>, SpeedLaw>>comparingLong(service -> -number(service.getKey(), "service.ranking"))
                .thenComparingLong(service -> number(service.getKey(), "service.id"))).<SpeedLaw>map(Map.Entry::getValue).toList();
    }

    private static long number(Map<String, Object> properties, String name) {
        return properties.get(name) instanceof Number number ? number.longValue() : 0;
    }
}
