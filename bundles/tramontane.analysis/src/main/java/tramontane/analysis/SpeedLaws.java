package tramontane.analysis;

import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import tramontane.model.Design;
import tramontane.model.Value;

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

    /**
     * What speed laws read of the design itself: its sections that any of them names, as its unknown members hold them.
     *
     * @param design the whole design
     * @param laws   the loaded speed laws
     */
    public static Value.Tree read(Design design, List<? extends SpeedLaw> laws) {
        return design.only(laws.stream().flatMap(law -> law.sections().stream()).distinct().sorted().toList());
    }

    /**
     * The law that says how fast a mover turns: the first that has an answer; empty where none has.
     *
     * @param laws   the loaded speed laws, highest ranked first
     * @param supply what the mover is fed with and works against
     */
    public static Optional<SpeedLaw> answering(List<? extends SpeedLaw> laws, SpeedLaw.Supply supply) {
        return laws.stream().filter(law -> law.speed(supply).isPresent()).<SpeedLaw>map(law -> law).findFirst();
    }

    private static long number(Map<String, Object> properties, String name) {
        return properties.get(name) instanceof Number number ? number.longValue() : 0;
    }
}
