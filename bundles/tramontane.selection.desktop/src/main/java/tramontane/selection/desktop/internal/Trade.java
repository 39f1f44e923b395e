package tramontane.selection.desktop.internal;

import java.util.List;
import java.util.Map;
import tramontane.analysis.Better;
import tramontane.selection.Criterion;

/** Which of two is better where there is more than one thing to be better in. */
final class Trade {

    private Trade() {
    }

    /** Whether one is as good by every criterion, and better by one; what is not known is worst. */
    static boolean dominates(List<Criterion> criteria, Map<String, Double> one, Map<String, Double> other) {
        boolean better = false;
        for (Criterion criterion : criteria) {
            double a = badness(criterion.better(), one.get(criterion.id()));
            double b = badness(criterion.better(), other.get(criterion.id()));
            if (a > b) {
                return false;
            }
            better |= a < b;
        }
        return better;
    }

    /** More is worse; what is not known is worst. */
    static double badness(Better better, Double value) {
        return value == null ? Double.POSITIVE_INFINITY : better == Better.HIGHER ? -value : value;
    }
}
