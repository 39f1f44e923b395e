package tramontane.drive;

import java.util.List;
import java.util.Optional;

/**
 * What the movers take in a year, by the mission profile, and what they would at full speed.
 *
 * @param phases   the phases of the mission, in order
 * @param price    of a kilowatt-hour, in the currency; empty where none is stated
 * @param currency what prices are in
 */
public record EnergyUse(List<Phase> phases, Optional<Double> price, String currency) {

    /** Joules of a kilowatt-hour. */
    public static final double KILOWATT_HOUR = 3.6e6;

    public EnergyUse {
        phases = List.copyOf(phases);
    }

    /**
     * One phase.
     *
     * @param condition its condition
     * @param time      time in a year, s
     * @param power     what all movers take with the losses of their supplies, W; where the condition leaves open which mover has
     *                  failed, the mean of its cases
     * @param full      the same with all banks at full speed
     */
    public record Phase(String condition, double time, Optional<Double> power, Optional<Double> full) {
    }

    /** Energy in a year, J; empty where a phase is not known. */
    public Optional<Double> energy() {
        return sum(phases.stream().map(phase -> phase.power().map(watts -> watts * phase.time())).toList());
    }

    /** Energy in a year at full speed, J; empty where a phase is not known. */
    public Optional<Double> fullEnergy() {
        return sum(phases.stream().map(phase -> phase.full().map(watts -> watts * phase.time())).toList());
    }

    /** What an energy costs, in the currency. */
    public Optional<Double> cost(double energy) {
        return price.map(each -> each * energy / KILOWATT_HOUR);
    }

    private static Optional<Double> sum(List<Optional<Double>> all) {
        return all.isEmpty() || all.stream().anyMatch(Optional::isEmpty) ? Optional.empty()
                : Optional.of(all.stream().mapToDouble(Optional::get).sum());
    }
}
