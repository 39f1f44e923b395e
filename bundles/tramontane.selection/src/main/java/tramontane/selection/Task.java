package tramontane.selection;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import tramontane.model.AirMover;
import tramontane.model.Design;

/**
 * What is to be chosen for what.
 *
 * @param design  the design; its bank need not hold a part yet
 * @param bank    the id of the bank that a part is chosen for
 * @param parts   the parts to choose from, with ids that differ; each is asked for once, from several threads, so that a list that makes
 *                them when asked will do
 * @param space   the room for them
 * @param weights of criteria, by {@link Criterion#id}, not negative; one without a weight does not count in the ranking
 * @param lowest  lowest speed setting that is looked at, above 0 to 1
 * @param listed  how many candidates are ranked
 * @param misses  how many of those that fail are looked at for what would have to change
 * @param certain whether all that is required must be judged and hold at the edge of the bounds of its figures, too, where they have
 *                some, as from tolerances that a design states: slower by several times
 * @param exactly whether every candidate is judged exactly, whatever the reduced design says of it: slow, for who doubts it
 */
public record Task(Design design, String bank, List<AirMover> parts, Space space, Map<String, Double> weights, double lowest, int listed,
        int misses, boolean certain, boolean exactly) {

    /** Power, noise, life, cost, size and mass count alike. */
    public static final Map<String, Double> EVEN = even();

    /** Movers are seldom run, and seldom specified, below a fifth of their speed (common practice). */
    public static final double LOWEST = 0.2;

    private static Map<String, Double> even() {
        Map<String, Double> even = new LinkedHashMap<>();
        List.of(Criterion.POWER, Criterion.NOISE, Criterion.LIFE, Criterion.COST, Criterion.SIZE, Criterion.MASS).forEach(each -> even.put(each, 1.0));
        return Collections.unmodifiableMap(even);
    }

    public Task {
        Objects.requireNonNull(parts);
        weights = Collections.unmodifiableMap(new LinkedHashMap<>(weights));
        if (weights.values().stream().anyMatch(weight -> !(weight >= 0 && weight < Double.POSITIVE_INFINITY))) {
            throw new IllegalArgumentException("weights are numbers not below zero, got " + weights);
        }
        if (!(lowest > 0 && lowest <= 1)) {
            throw new IllegalArgumentException("the lowest setting lies above 0 and up to 1, got " + lowest);
        }
    }

    /** The twenty best of some parts for a bank, all criteria alike. */
    public static Task of(Design design, String bank, List<AirMover> parts, Space space) {
        return new Task(design, bank, parts, space, EVEN, LOWEST, 20, 5, false, false);
    }

    /** The same with every candidate judged exactly, or not. */
    public Task exactly(boolean changed) {
        return new Task(design, bank, parts, space, weights, lowest, listed, misses, certain, changed);
    }

    /** The same with bounds that must hold, or not. */
    public Task certain(boolean changed) {
        return new Task(design, bank, parts, space, weights, lowest, listed, misses, changed, exactly);
    }

    /** The same with other weights. */
    public Task withWeights(Map<String, Double> changed) {
        return new Task(design, bank, parts, space, changed, lowest, listed, misses, certain, exactly);
    }
}
