package tramontane.thermal;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import tramontane.analysis.AirStream;
import tramontane.analysis.LinkKind;

/**
 * The temperatures of one heat source, from the air to its junction.
 *
 * @param source    its id
 * @param heat      heat that it gives off, W
 * @param chainHeat heat that goes through its chain, to the first of its places, W
 * @param arriving  temperature of the air that comes to its place, K
 * @param air       temperature of the air at it, from which its chain counts, K
 * @param stream    the air at it, at the mean temperature of surface and air
 * @param links     its chain, from the junction outwards; empty where it has none
 * @param fault     why its junction temperature cannot be told; empty where it can
 */
public record PartState(String source, double heat, double chainHeat, double arriving, double air, Optional<AirStream> stream,
        List<LinkState> links, Optional<String> fault) {

    public PartState {
        links = List.copyOf(links);
    }

    /**
     * One link of a chain.
     *
     * @param kind       its kind
     * @param step       the step of the budget that it belongs to
     * @param resistance K/W
     * @param rise       temperature across it, K
     * @param tolerance  relative tolerance of its resistance; 0 where none is stated
     */
    public record LinkState(String kind, LinkKind.Step step, double resistance, double rise, double tolerance) {
    }

    /** Temperature of its junction, K; of the air at it where it has no chain. Empty where it cannot be told. */
    public OptionalDouble junction() {
        return fault.isPresent() ? OptionalDouble.empty()
                : OptionalDouble.of(air + links.stream().mapToDouble(LinkState::rise).sum());
    }

    /** Temperature of the surface that touches the air, K: the hot side of its last link. */
    public double surface() {
        return air + (links.isEmpty() ? 0 : links.getLast().rise());
    }

    /** Temperature across all links of a step, K. */
    public double rise(LinkKind.Step step) {
        return links.stream().filter(link -> link.step() == step).mapToDouble(LinkState::rise).sum();
    }

    /** Resistance of the whole chain, K/W. */
    public double resistance() {
        return links.stream().mapToDouble(LinkState::resistance).sum();
    }
}
