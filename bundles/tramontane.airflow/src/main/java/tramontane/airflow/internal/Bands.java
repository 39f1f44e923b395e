package tramontane.airflow.internal;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.function.Function;
import tramontane.analysis.Figure;

/**
 * Bounds of figures from the tolerances of curves and resistances.
 *
 * <p>Each tolerance by itself is taken to its two ends; what they change adds up, as if every one were at its worst at once.
 * That is exact where everything is linear. Where it is not, samples tell: all tolerances together at random ends or between,
 * always the same ones. A figure that a sample brings beyond its bounds widens them.
 *
 * @param figures the figures with their bounds
 * @param beyond  farthest that a sample lay beyond bounds that were added up, over their width; 0 where all lay within
 * @param without how many ends and samples have no answer
 * @param left    how many ends and samples take a bank off its stretch of the curve
 */
record Bands(List<Figure> figures, double beyond, int without, int left) {

    /** Samples that check what was added up. */
    static final int SAMPLES = 24;
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
        Map<Key, Bound> bounds = new HashMap<>();
        nominal.forEach(figure -> bounds.put(Key.of(figure), new Bound(figure.value())));
        int without = 0;
        int left = 0;
        for (Map.Entry<String, Double> each : tolerances.entrySet()) {
            Map<Key, Bound> moves = new HashMap<>();
            for (double end : new double[] {1 - each.getValue(), 1 + each.getValue()}) {
                Optional<Found> found = with.apply(Map.of(each.getKey(), end));
                without += found.isPresent() ? 0 : 1;
                left += found.isPresent() && !found.get().stays() ? 1 : 0;
                found.ifPresent(there -> there.figures().forEach(figure -> {
                    Bound bound = bounds.get(Key.of(figure));
                    if (bound != null) {
                        Bound move = moves.computeIfAbsent(Key.of(figure), key -> new Bound(0));
                        move.below = Math.max(move.below, bound.value - figure.value());
                        move.above = Math.max(move.above, figure.value() - bound.value);
                    }
                }));
            }
            moves.forEach((key, move) -> {
                bounds.get(key).below += move.below;
                bounds.get(key).above += move.above;
            });
        }
        Map<Key, Bound> seen = new HashMap<>();
        Random random = new Random(1);
        for (int i = 0; i < SAMPLES && !tolerances.isEmpty(); i++) {
            Map<String, Double> factors = new HashMap<>();
            for (Map.Entry<String, Double> each : tolerances.entrySet()) {
                double share = i % 2 == 0 ? random.nextBoolean() ? 1 : -1 : 2 * random.nextDouble() - 1;
                factors.put(each.getKey(), 1 + share * each.getValue());
            }
            Optional<Found> found = with.apply(factors);
            without += found.isPresent() ? 0 : 1;
            left += found.isPresent() && !found.get().stays() ? 1 : 0;
            found.ifPresent(there -> there.figures().forEach(figure -> {
                Bound bound = bounds.get(Key.of(figure));
                if (bound != null) {
                    Bound farthest = seen.computeIfAbsent(Key.of(figure), key -> new Bound(0));
                    farthest.below = Math.max(farthest.below, bound.value - figure.value());
                    farthest.above = Math.max(farthest.above, figure.value() - bound.value);
                }
            }));
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
        return new Bands(figures, beyond, without, left);
    }
}
