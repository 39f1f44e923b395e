package tramontane.drive.internal;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import tramontane.drive.ComputedLaws;

/**
 * The lowest control law through what is needed.
 *
 * <p>Of all laws that never fall with temperature, never fall below a lowest setting, are no steeper than a slope, and give at each
 * of some sensor temperatures at least a setting, it is everywhere the lowest: f(T) = max over all needs of s where T is above
 * theirs, of s less the slope times the distance below. Where that is to rest at a temperature which falls with the setting, no other
 * such law rests at a lower setting. Above all needs it rises on to full speed.
 */
final class LeastLaw {

    /** Settings nearer than this are one. */
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
     * Its points.
     *
     * @param needs      what is needed; one at least
     * @param lowest     lowest setting
     * @param slope      steepest slope, 1/K, above zero
     * @param hysteresis of the law, K: no rise is narrower
     */
    static List<ComputedLaws.Point> points(List<Need> needs, double lowest, double slope, double hysteresis) {
        List<Need> sorted = new ArrayList<>(needs.stream().sorted(Comparator.comparingDouble(Need::temperature)).toList());
        double highest = sorted.stream().mapToDouble(Need::setting).max().orElseThrow();
        double level = Math.max(lowest, highest);
        if (level < 1 - SAME) { // on to full speed
            double last = sorted.getLast().temperature();
            sorted.add(new Need(last + width(1 - level, slope, hysteresis), 1));
        }
        List<Need> kept = kept(sorted, lowest, slope, hysteresis);
        List<ComputedLaws.Point> points = new ArrayList<>();
        double before = lowest;
        for (Need need : kept) {
            double begins = need.temperature() - width(need.setting() - before, slope, hysteresis);
            if (points.isEmpty() || begins > points.getLast().temperature() + LEVEL) {
                points.add(new ComputedLaws.Point(begins, before));
            }
            points.add(new ComputedLaws.Point(need.temperature(), need.setting()));
            before = need.setting();
        }
        if (points.isEmpty()) { // full speed everywhere
            points.add(new ComputedLaws.Point(sorted.getFirst().temperature(), lowest));
        }
        return points;
    }

    /** The needs that no other one covers, rising in both. */
    private static List<Need> kept(List<Need> sorted, double lowest, double slope, double hysteresis) {
        List<Need> kept = new ArrayList<>();
        for (Need need : sorted) {
            double before = kept.isEmpty() ? lowest : kept.getLast().setting();
            if (need.setting() <= before + SAME) {
                continue;
            }
            while (!kept.isEmpty() && begins(kept, need, lowest, slope, hysteresis) <= kept.getLast().temperature()) {
                Need covered = kept.removeLast();
                double here = need.setting() - slope * (need.temperature() - covered.temperature());
                if (here < covered.setting() - SAME) { // a rise that is made wider than the slope asks: it begins earlier
                    need = new Need(covered.temperature(), need.setting());
                }
            }
            kept.add(need);
        }
        return kept;
    }

    private static double begins(List<Need> kept, Need need, double lowest, double slope, double hysteresis) {
        double before = kept.isEmpty() ? lowest : kept.getLast().setting();
        return need.temperature() - width(need.setting() - before, slope, hysteresis);
    }

    private static double width(double rise, double slope, double hysteresis) {
        return Math.max(rise / slope, WIDER * hysteresis);
    }
}
