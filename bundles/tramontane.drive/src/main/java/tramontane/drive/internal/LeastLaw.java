package tramontane.drive.internal;

import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import tramontane.drive.ComputedLaws;

/**
 * The lowest control law through what is needed.
 *
 * <p>Of all laws that never fall with temperature, never fall below a lowest setting, are nowhere steeper than their loop allows at that
 * setting, and give at each of some sensor temperatures at least a setting, it is everywhere the lowest: from each need it goes down
 * towards lower temperatures as steeply as it may, and the highest of these counts. Where that is to rest at a temperature which falls
 * with the setting, no other such law rests at a lower setting. Above all needs it rises on to full speed as steeply as it may.
 */
final class LeastLaw {

    /** Settings, and temperatures, nearer than this are one. */
    private static final double SAME = 1e-6;
    /** Level pieces shorter than this, K, are left out: the law rises a little earlier there. */
    private static final double LEVEL = 1;
    /** How much wider than its hysteresis a rise must be, so that it is no switch. */
    private static final double WIDER = 1.05;

    private LeastLaw() {
    }

    /**
     * What is needed somewhere.
     *
     * @param temperature that the sensor shows, K
     * @param setting     that it is to give at least
     */
    record Need(double temperature, double setting) {
    }

    /**
     * How steep a law may be, by its setting: one slope from each level to the next.
     *
     * @param levels settings, rising, the last one full speed
     * @param slopes above each level but the last, 1/K, above zero
     */
    record Steepness(double[] levels, double[] slopes) {

        /** The same at all settings. */
        static Steepness of(double slope) {
            return new Steepness(new double[] {0, 1}, new double[] {slope});
        }

        /** Kelvin that the rise from the first level to a setting takes. */
        double kelvin(double setting) {
            double sum = 0;
            for (int i = 0; i < slopes.length; i++) {
                double top = i + 1 == slopes.length ? setting : Math.min(setting, levels[i + 1]);
                double bottom = i == 0 ? levels[0] : levels[i];
                sum += i == 0 || top > bottom ? (top - bottom) / slopes[i] : 0;
            }
            return sum;
        }

        /** Levels strictly between two settings, falling. */
        List<Double> between(double low, double high) {
            List<Double> inside = new ArrayList<>();
            for (int i = levels.length - 2; i > 0; i--) {
                if (levels[i] > low + SAME && levels[i] < high - SAME) {
                    inside.add(levels[i]);
                }
            }
            return inside;
        }
    }

    /**
     * Its points.
     *
     * @param needs      what is needed; one at least
     * @param lowest     lowest setting
     * @param steepness  how steep it may be
     * @param hysteresis of the law, K: no rise is narrower
     */
    static List<ComputedLaws.Point> points(List<Need> needs, double lowest, Steepness steepness, double hysteresis) {
        List<Need> sorted = new ArrayList<>(needs.stream().sorted(Comparator.comparingDouble(Need::temperature)).toList());
        double level = Math.max(lowest, sorted.stream().mapToDouble(Need::setting).max().orElseThrow());
        List<ComputedLaws.Point> falling = new ArrayList<>(); // from the highest point down
        List<Need> kept = kept(sorted, lowest, steepness);
        for (int i = kept.size() - 1; i >= 0; i--) {
            Need need = kept.get(i);
            double below = i == 0 ? lowest : kept.get(i - 1).setting();
            falling.add(new ComputedLaws.Point(need.temperature(), need.setting()));
            for (double inside : steepness.between(below, need.setting())) {
                falling.add(new ComputedLaws.Point(need.temperature() - steepness.kelvin(need.setting()) + steepness.kelvin(inside), inside));
            }
            double begins = need.temperature() - steepness.kelvin(need.setting()) + steepness.kelvin(below);
            if (i == 0 || begins > kept.get(i - 1).temperature() + LEVEL) {
                falling.add(new ComputedLaws.Point(begins, below));
            }
        }
        double last = sorted.getLast().temperature();
        if (falling.isEmpty() || last > falling.getFirst().temperature() + LEVEL) { // as fast as ever needed up to the warmest need
            falling.addFirst(new ComputedLaws.Point(last, level));
        }
        List<ComputedLaws.Point> points = widened(straight(falling), WIDER * hysteresis);
        Collections.reverse(points);
        onToFull(points, level, steepness, WIDER * hysteresis);
        return points;
    }

    /** Goes on to full speed above all needs; there it may be as wide as it must. */
    private static void onToFull(List<ComputedLaws.Point> points, double level, Steepness steepness, double width) {
        double from = level;
        for (double next : steepness.between(level, 1).reversed()) {
            rise(points, from, next, steepness, width);
            from = next;
        }
        if (from < 1 - SAME) {
            rise(points, from, 1, steepness, width);
        }
    }

    private static void rise(List<ComputedLaws.Point> points, double from, double to, Steepness steepness, double width) {
        double wide = Math.max(width, steepness.kelvin(to) - steepness.kelvin(from));
        points.add(new ComputedLaws.Point(points.getLast().temperature() + wide, to));
    }

    /** The needs that no other one covers, rising in both. */
    private static List<Need> kept(List<Need> sorted, double lowest, Steepness steepness) {
        List<Need> kept = new ArrayList<>();
        for (Need need : sorted) {
            if (need.setting() <= (kept.isEmpty() ? lowest : kept.getLast().setting()) + SAME) {
                continue;
            }
            while (!kept.isEmpty() && need.temperature() - steepness.kelvin(need.setting()) + steepness.kelvin(kept.getLast().setting())
                    <= kept.getLast().temperature() + SAME) {
                kept.removeLast();
            }
            kept.add(need);
        }
        return kept;
    }

    /** Without points that lie on the line through their neighbours. */
    private static List<ComputedLaws.Point> straight(List<ComputedLaws.Point> falling) {
        List<ComputedLaws.Point> points = new ArrayList<>();
        for (ComputedLaws.Point point : falling) {
            int last = points.size() - 1;
            if (last > 0) {
                ComputedLaws.Point above = points.get(last - 1);
                ComputedLaws.Point middle = points.get(last);
                double chord = above.setting() + (point.setting() - above.setting()) * (middle.temperature() - above.temperature())
                        / (point.temperature() - above.temperature());
                if (Math.abs(chord - middle.setting()) < SAME) {
                    points.removeLast();
                }
            }
            points.add(point);
        }
        return points;
    }

    /** With every rise so wide at least: it begins earlier, and where that meets what lies below, that gives way to lower temperatures. */
    private static List<ComputedLaws.Point> widened(List<ComputedLaws.Point> falling, double width) {
        List<ComputedLaws.Point> points = new ArrayList<>();
        ComputedLaws.Point before = null;
        for (ComputedLaws.Point point : falling) {
            double temperature = point.temperature();
            if (before != null) {
                double above = points.getLast().temperature();
                boolean rises = before.setting() > point.setting() + SAME;
                temperature = Math.min(temperature, rises ? above - Math.max(width, before.temperature() - temperature) : above);
            }
            before = point;
            if (points.isEmpty() || temperature < points.getLast().temperature() - SAME) {
                points.add(new ComputedLaws.Point(temperature, point.setting()));
            }
        }
        return points;
    }
}
