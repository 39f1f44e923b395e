package tramontane.drive;

import java.util.List;
import java.util.Optional;

/**
 * What single supplies give in a condition, where that is not what they give as a rule.
 *
 * @param list the levels
 */
public record SupplyLevels(List<Level> list) {

    /** Of which nothing is said. */
    public static final SupplyLevels NONE = new SupplyLevels(List.of());

    public SupplyLevels {
        list = List.copyOf(list);
    }

    /**
     * What one supply gives.
     *
     * @param supply    its name
     * @param voltage   V
     * @param frequency Hz
     */
    public record Level(String supply, Optional<Double> voltage, Optional<Double> frequency) {
    }

    /** The level of a supply. */
    public Optional<Level> of(String supply) {
        return list.stream().filter(level -> level.supply().equals(supply)).findFirst();
    }
}
