package tramontane.thermal.internal.time;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import tramontane.thermal.History;

/** Watches one speed setting for going to and fro. */
final class Swing {

    /** Change of a setting from which it counts as having turned. */
    private static final double TURNS = 0.002;
    /** Swing below which nobody minds. */
    private static final double MINDS = 0.01;
    /** Swing over the one before from which it does not die out. */
    private static final double LASTS = 0.9;
    /** Difference of periods and swings over themselves up to which cycles are alike. */
    private static final double ALIKE = 0.1;
    private static final int FEWEST = 3;

    private final List<double[]> tops = new ArrayList<>();
    private final List<double[]> bottoms = new ArrayList<>();
    private double[] extreme;
    private int way;
    private double since = Double.NaN;

    /** Takes the next value; whether it just turned down. */
    boolean add(double time, double setting) {
        if (extreme == null) {
            extreme = new double[] {time, setting};
            return false;
        }
        double change = setting - extreme[1];
        if (way == 0 && Math.abs(change) > TURNS) {
            way = change > 0 ? 1 : -1;
            extreme = new double[] {time, setting};
        } else if (way * change > 0) {
            extreme = new double[] {time, setting};
        } else if (way * change < -TURNS) {
            (way > 0 ? tops : bottoms).add(extreme);
            since = Double.isNaN(since) ? extreme[0] : since;
            way = -way;
            extreme = new double[] {time, setting};
            return way < 0;
        }
        return false;
    }

    /** Takes all so far to have been later, as when whole cycles are left out. */
    void shift(double seconds) {
        tops.forEach(top -> top[0] += seconds);
        bottoms.forEach(bottom -> bottom[0] += seconds);
        extreme[0] += seconds;
    }

    private double swing(int back) {
        return tops.get(tops.size() - 1 - back)[1] - bottoms.get(bottoms.size() - 1 - back)[1];
    }

    private double period(int back) {
        return tops.get(tops.size() - 1 - back)[0] - tops.get(tops.size() - 2 - back)[0];
    }

    /** Whether the last cycles are all alike. */
    boolean alike(int cycles) {
        if (tops.size() < cycles + 1 || bottoms.size() < cycles + 1 || swing(0) < MINDS) {
            return false;
        }
        for (int i = 1; i < cycles; i++) {
            if (Math.abs(swing(i) - swing(0)) > ALIKE * swing(0) || Math.abs(period(i) - period(0)) > ALIKE * period(0)) {
                return false;
            }
        }
        return true;
    }

    /** The cycle, if it does not die out. */
    Optional<History.Cycle> cycle(String law) {
        int n = Math.min(tops.size(), bottoms.size());
        if (n < FEWEST + 1 || swing(0) < MINDS || swing(0) < LASTS * swing(1)) {
            return Optional.empty();
        }
        double period = (tops.getLast()[0] - tops.get(tops.size() - 1 - FEWEST)[0]) / FEWEST;
        return Optional.of(new History.Cycle(law, since, period, bottoms.getLast()[1], tops.getLast()[1]));
    }
}
