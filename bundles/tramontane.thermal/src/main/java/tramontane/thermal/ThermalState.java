package tramontane.thermal;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import tramontane.airflow.AirPathSolution;
import tramontane.airflow.Feed;
import tramontane.analysis.OperatingPoint;

/**
 * Flows and temperatures that agree.
 *
 * @param drive        the settings and factors they hold for
 * @param point        where everything works
 * @param temperatures temperature of each bay in the order of the design, K; NaN where it has no bound
 * @param parts        the heat sources in the order of the design, those that stand nowhere left out
 * @param walls        what goes through walls, by bay
 * @param balance      where the heat comes from and goes to
 * @param feeds        what the banks are fed with and work against
 * @param solution     the solved air path, to start the next one from; empty where flows were given
 * @param steps        how often flows were solved
 */
public record ThermalState(Drive drive, OperatingPoint point, List<Double> temperatures, List<PartState> parts,
        List<WallState> walls, Balance balance, Map<String, Feed> feeds, Optional<AirPathSolution> solution, int steps) {

    public ThermalState {
        temperatures = List.copyOf(temperatures);
        parts = List.copyOf(parts);
        walls = List.copyOf(walls);
        feeds = Map.copyOf(feeds);
    }

    /**
     * Heat through one wall.
     *
     * @param bay   the bay
     * @param heat  heat that leaves the bay by it, W; negative where sunshine heats it
     * @param inner temperature of its inner face, K
     * @param outer temperature of its outer face, K
     */
    public record WallState(String bay, double heat, double inner, double outer) {
    }

    /**
     * Where heat comes from and goes to.
     *
     * @param sources  heat of the sources that stand somewhere, W
     * @param movers   electrical input of the movers, as far as their curves state it, W
     * @param toAir    heat that air carries outside, W
     * @param toWalls  heat that leaves through walls, sunshine taken off, W
     * @param error    what does not close, W
     * @param unbounded bays that get heat which nothing carries off, or so little that they would be more than 400 K warmer than
     *                  outside, where properties of air are no longer followed
     */
    public record Balance(double sources, double movers, double toAir, double toWalls, double error, List<String> unbounded) {
        public Balance {
            unbounded = List.copyOf(unbounded);
        }
    }

    /** The part of a heat source. */
    public Optional<PartState> part(String source) {
        return parts.stream().filter(part -> part.source().equals(source)).findFirst();
    }
}
