package tramontane.thermal;

import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Temperatures of air and components in one condition.
 *
 * @param bays     temperature of each bay, K, by its id, in the order of the design
 * @param parts    the heat sources in the order of the design
 * @param limits   their limits, K, by id, as far as stated
 * @param walls    what goes through walls
 * @param balance  where the heat comes from and goes to
 * @param outside  temperature outside, K
 * @param junction bounds of junction temperatures by source, K
 */
public record Temperatures(Map<String, Double> bays, List<PartState> parts, Map<String, Double> limits,
        List<ThermalState.WallState> walls, ThermalState.Balance balance, double outside, Map<String, Span> junction) {

    /**
     * From lowest to highest.
     *
     * @param low  K
     * @param high K
     */
    public record Span(double low, double high) {
    }

    public Temperatures {
        bays = java.util.Collections.unmodifiableMap(new java.util.LinkedHashMap<>(bays));
        parts = List.copyOf(parts);
        limits = Map.copyOf(limits);
        walls = List.copyOf(walls);
        junction = Map.copyOf(junction);
    }

    /** The part of a heat source. */
    public Optional<PartState> part(String source) {
        return parts.stream().filter(part -> part.source().equals(source)).findFirst();
    }

    /** Limit less junction temperature, K; empty where either is missing. */
    public Optional<Double> margin(PartState part) {
        return Optional.ofNullable(limits.get(part.source())).filter(limit -> part.junction().isPresent())
                .map(limit -> limit - part.junction().getAsDouble());
    }
}
