package tramontane.drive;

import java.util.List;
import java.util.Optional;

/**
 * How the control laws of a design behave in one condition: where they rest, how far they are from hunting, and how they get there
 * from cold.
 *
 * @param laws the laws that act, in the order of the design, as far as they can be followed
 */
public record LoopState(List<Law> laws) {

    public LoopState {
        laws = List.copyOf(laws);
    }

    /** One moment: seconds since the start, what the sensor shows (K), and the setting of the movers. */
    public record Moment(double time, double sensor, double setting) {
    }

    /**
     * One law.
     *
     * @param law           its id
     * @param sensor        what its sensor reads at rest, K
     * @param setting       the setting it rests at, 1 for full
     * @param slope         of its curve there, 1/K
     * @param plant         change of what the sensor reads at rest with the setting, K; below zero where more speed cools
     * @param gainMargin    factor by which the slope may rise until the loop hunts; infinite where it never would
     * @param phaseMargin   lag that may be added until it hunts, rad; infinite where no lag would do
     * @param crossing      time of one swing at which it would hunt, s; empty where it never would
     * @param swing         by how much the sensor still swings at the end of a run from cold, half of it to either side, K
     * @param settingSwing  the same of the setting
     * @param period        time of one swing, s; empty where nothing swings
     * @param steady        whether it has come to rest, or comes nearer and nearer
     * @param response      what happens from cold
     */
    public record Law(String law, double sensor, double setting, double slope, double plant, double gainMargin, double phaseMargin,
            Optional<Double> crossing, double swing, double settingSwing, Optional<Double> period, boolean steady, List<Moment> response) {
        public Law {
            response = List.copyOf(response);
        }
    }

    /** The law of that id. */
    public Optional<Law> law(String id) {
        return laws.stream().filter(law -> law.law().equals(id)).findFirst();
    }
}
