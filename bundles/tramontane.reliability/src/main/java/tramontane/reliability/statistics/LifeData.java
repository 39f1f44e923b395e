package tramontane.reliability.statistics;

import java.util.List;

/**
 * What was seen in a life test, of units that are alike and were run alike.
 *
 * @param observations at least one
 */
public record LifeData(List<Observation> observations) {

    /** Refuses a test without units. */
    public LifeData {
        observations = List.copyOf(observations);
        if (observations.isEmpty()) {
            throw new IllegalArgumentException("a life test has at least one unit, got none");
        }
    }

    /** These observations. */
    public static LifeData of(Observation... observations) {
        return new LifeData(List.of(observations));
    }

    /** How many units there were. */
    public int units() {
        return observations.stream().mapToInt(Observation::count).sum();
    }

    /** How many of them are known to have failed. */
    public int failures() {
        return observations.stream().filter(each -> !each.survived()).mapToInt(Observation::count).sum();
    }

    /** Whether every failure is known to the moment. */
    public boolean exact() {
        return observations.stream().allMatch(each -> each.exact() || each.survived());
    }

    /** All times multiplied by a factor above zero. */
    public LifeData scaled(double factor) {
        return new LifeData(observations.stream().map(each -> new Observation(factor * each.from(), factor * each.to(), each.count())).toList());
    }
}
