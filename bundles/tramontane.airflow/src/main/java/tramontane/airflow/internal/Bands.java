package tramontane.airflow.internal;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import java.util.function.Function;
import java.util.function.IntToDoubleFunction;
import tramontane.analysis.Figure;

/**
 * Bounds of figures from the tolerances of curves and resistances.
 *
 * <p>Each tolerance by itself is taken to its two ends; what they change adds up, as if every one were at its worst at once.
 * That is exact where everything is linear. Where it is not, samples tell: all tolerances together at the ends at which a figure
 * should be at its worst, and at some places between, always the same ones. A figure that a sample brings beyond its bounds widens them.
 *
 * @param figures the figures with their bounds
 * @param beyond  farthest that a sample lay beyond bounds that were added up, over their width; 0 where all lay within
 * @param without how many ends and samples have no answer
 * @param left    how many ends and samples take a bank off its stretch of the curve
 */
record Bands(List<Figure> figures, double beyond, int without, int left) {

    /** Samples that check what was added up, beside the corners at which figures should be at their worst. */
    static final int SAMPLES = 8;
    private static final int MOST_CORNERS = 64;
    /** Movements of a figure over its value that count as rounding. */
    private static final double ROUNDING = 1e-9;

    Bands {
        figures = List.copyOf(figures);
    }

    /**
     * What is found with factors on pressures at equal flow.
     *
     * @param figures the figures
     * @param stays   whether every bank is on the stretch of its curve that it is on without the factors
     */
    record Found(List<Figure> figures, boolean stays) {
    }

    private record Key(String kind, String place) {
        static Key of(Figure figure) {
            return new Key(figure.kind().id(), figure.place());
        }
    }

    /** Lowest and highest that a figure comes to. */
    private static final class Bound {
        private static final Bound NONE = new Bound(0);

        private final double value;
        private double below;
        private double above;

        private Bound(double value) {
            this.value = value;
        }
    }

    /**
     * Bounds of figures.
     *
     * @param nominal    the figures without factors
     * @param tolerances relative tolerance of a pressure at equal flow, by passage, in a fixed order
     * @param with       the figures with factors by passage; empty where there is no answer
     */
    static Bands of(List<Figure> nominal, Map<String, Double> tolerances,
            Function<Map<String, Double>, Optional<Found>> with) {
        Map<Key, Bound> bounds = new LinkedHashMap<>();
        nominal.forEach(figure -> bounds.put(Key.of(figure), new Bound(figure.value())));
        Tried tried = new Tried(bounds, with);
        Map<Key, boolean[]> rises = new LinkedHashMap<>();
        int i = 0;
        for (Map.Entry<String, Double> each : tolerances.entrySet()) {
            Map<Key, Bound> low = tried.at(Map.of(each.getKey(), 1 - each.getValue()));
            Map<Key, Bound> high = tried.at(Map.of(each.getKey(), 1 + each.getValue()));
            for (Map.Entry<Key, Bound> bound : bounds.entrySet()) {
                Bound atLow = low.getOrDefault(bound.getKey(), Bound.NONE);
                Bound atHigh = high.getOrDefault(bound.getKey(), Bound.NONE);
                bound.getValue().below += Math.max(atLow.below, atHigh.below);
                bound.getValue().above += Math.max(atLow.above, atHigh.above);
                rises.computeIfAbsent(bound.getKey(), key -> new boolean[tolerances.size()])[i] =
                        atHigh.above - atHigh.below >= atLow.above - atLow.below;
            }
            i++;
        }
        Map<Key, Bound> seen = new HashMap<>();
        for (Map<String, Double> factors : samples(tolerances, rises)) {
            tried.at(factors).forEach((key, move) -> {
                Bound farthest = seen.computeIfAbsent(key, same -> new Bound(0));
                farthest.below = Math.max(farthest.below, move.below);
                farthest.above = Math.max(farthest.above, move.above);
            });
        }
        double beyond = 0;
        for (Map.Entry<Key, Bound> each : seen.entrySet()) {
            Bound bound = bounds.get(each.getKey());
            double width = bound.below + bound.above;
            double out = Math.max(each.getValue().below - bound.below, each.getValue().above - bound.above);
            if (out > ROUNDING * Math.abs(bound.value) && width > ROUNDING * Math.abs(bound.value)) {
                beyond = Math.max(beyond, out / width);
            }
            bound.below = Math.max(bound.below, each.getValue().below);
            bound.above = Math.max(bound.above, each.getValue().above);
        }
        List<Figure> figures = new ArrayList<>();
        for (Figure figure : nominal) {
            Bound bound = bounds.get(Key.of(figure));
            boolean moves = bound.below + bound.above > ROUNDING * Math.abs(bound.value);
            figures.add(moves ? figure.within(figure.value() - bound.below, figure.value() + bound.above) : figure);
        }
        return new Bands(figures, beyond, tried.without, tried.left);
    }

    /** Both ends of all tolerances together, as each figure rises or falls with them, and some at random. */
    private static List<Map<String, Double>> samples(Map<String, Double> tolerances, Map<Key, boolean[]> rises) {
        List<Map<String, Double>> samples = new ArrayList<>();
        if (tolerances.isEmpty()) {
            return samples;
        }
        Set<List<Boolean>> corners = new LinkedHashSet<>();
        for (boolean[] rising : rises.values()) {
            List<Boolean> up = new ArrayList<>();
            List<Boolean> down = new ArrayList<>();
            for (boolean each : rising) {
                up.add(each);
                down.add(!each);
            }
            if (corners.size() < MOST_CORNERS) {
                corners.add(up);
                corners.add(down);
            }
        }
        for (List<Boolean> corner : corners) {
            samples.add(factors(tolerances, k -> corner.get(k) ? 1 : -1));
        }
        Random random = new Random(1);
        for (int k = 0; k < SAMPLES; k++) {
            samples.add(factors(tolerances, tolerance -> 2 * random.nextDouble() - 1));
        }
        return samples;
    }

    private static Map<String, Double> factors(Map<String, Double> tolerances, IntToDoubleFunction share) {
        Map<String, Double> factors = new LinkedHashMap<>();
        int k = 0;
        for (Map.Entry<String, Double> each : tolerances.entrySet()) {
            factors.put(each.getKey(), 1 + share.applyAsDouble(k++) * each.getValue());
        }
        return factors;
    }

    /** What was tried, and how it went. */
    private static final class Tried {
        private final Map<Key, Bound> bounds;
        private final Function<Map<String, Double>, Optional<Found>> with;
        private int without;
        private int left;

        private Tried(Map<Key, Bound> bounds, Function<Map<String, Double>, Optional<Found>> with) {
            this.bounds = bounds;
            this.with = with;
        }

        /** How far each figure moves with factors; empty where there is no answer. */
        private Map<Key, Bound> at(Map<String, Double> factors) {
            Map<Key, Bound> moves = new HashMap<>();
            Optional<Found> found = with.apply(factors);
            without += found.isPresent() ? 0 : 1;
            left += found.isPresent() && !found.get().stays() ? 1 : 0;
            for (Figure figure : found.map(Found::figures).orElse(List.of())) {
                Bound bound = bounds.get(Key.of(figure));
                if (bound != null) {
                    Bound move = new Bound(0);
                    move.below = Math.max(0, bound.value - figure.value());
                    move.above = Math.max(0, figure.value() - bound.value);
                    moves.put(Key.of(figure), move);
                }
            }
            return moves;
        }
    }
}
