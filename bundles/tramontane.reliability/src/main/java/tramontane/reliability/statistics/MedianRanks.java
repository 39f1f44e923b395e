package tramontane.reliability.statistics;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * Median ranks of failures: the share failed at which each is plotted.
 *
 * <p>Units that left the test alive move the later failures up by Johnson's adjusted orders. Of units that fail and leave at the same
 * time, the failures come first. A failure between two looks is put at the middle of its interval, one before the first look at half its
 * time: that is a convention, good where intervals are short against the life. {@link Turnbull} and likelihood need none.
 *
 * <p>Sources: A. Benard, E. Bos-Levenbach, Statistica Neerlandica 7 (1953); L. Johnson, "The Statistical Treatment of Fatigue Experiments"
 * (1964); NIST/SEMATECH e-Handbook of Statistical Methods, 8.2.2.1.
 *
 * @param ranks  of the failures, at rising times
 * @param units  all, with those that survived
 * @param method how ranks were made of orders
 */
public record MedianRanks(List<Rank> ranks, int units, Method method) {

    /** How a median rank is made of an order. */
    public enum Method {
        /** {@code (i - 0.3)/(N + 0.4)}. */
        BENARD,
        /** Median of the beta distribution of {@code i} and {@code N + 1 - i}. */
        EXACT
    }

    /**
     * A failure.
     *
     * @param time   of it
     * @param order  adjusted, 1 to the number of units
     * @param atRisk units in the test just before it, with this one
     * @param failed its median rank
     */
    public record Rank(double time, double order, int atRisk, double failed) {
    }

    /** Copies the list. */
    public MedianRanks {
        ranks = List.copyOf(ranks);
    }

    private record Seen(double time, boolean survived) {
    }

    /** Median ranks of all failures; none where there were none. */
    public static MedianRanks of(LifeData data, Method method) {
        List<Seen> seen = new ArrayList<>();
        for (Observation each : data.observations()) {
            double time = each.survived() ? each.from() : each.from() + (each.to() - each.from()) / 2;
            for (int i = 0; i < each.count(); i++) {
                seen.add(new Seen(time, each.survived()));
            }
        }
        seen.sort(Comparator.comparingDouble(Seen::time).thenComparing(Seen::survived));
        int units = seen.size();
        List<Rank> ranks = new ArrayList<>();
        double order = 0;
        for (int i = 0; i < units; i++) {
            if (!seen.get(i).survived()) {
                int atRisk = units - i;
                order += (units + 1 - order) / (1 + atRisk);
                ranks.add(new Rank(seen.get(i).time(), order, atRisk, failed(order, units, method)));
            }
        }
        return new MedianRanks(ranks, units, method);
    }

    private static double failed(double order, int units, Method method) {
        return switch (method) {
            case BENARD -> (order - 0.3) / (units + 0.4);
            case EXACT -> Quantiles.beta(0.5, order, units + 1 - order);
        };
    }

    /**
     * Two-sided bounds of the share failed at the time of a failure: 0.9 gives the 5 % and the 95 % rank.
     *
     * <p>Exact where all units fail or the survivors left last; with adjusted orders the usual approximation.
     */
    public Interval bounds(Rank rank, double confidence) {
        Requires.share("confidence", confidence);
        double side = (1 - confidence) / 2;
        double rest = units + 1 - rank.order();
        return new Interval(Quantiles.beta(side, rank.order(), rest), Quantiles.beta(1 - side, rank.order(), rest));
    }

    /** Points of a probability plot. */
    public List<PlotPoint> points() {
        return ranks.stream().map(each -> new PlotPoint(each.time(), each.failed())).toList();
    }
}
