package tramontane.reliability.statistics;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.hipparchus.distribution.continuous.NormalDistribution;

/**
 * Survival as the data alone give it, without a distribution: Turnbull's estimate, which is that of Kaplan and Meier where every failure
 * is known to the moment.
 *
 * <p>Survival falls in steps. Where failures were between looks, a step is an interval in which the data do not say how survival falls. A
 * unit that leaves alive at a moment when another fails was still at risk.
 *
 * <p>Sources: E. Kaplan, P. Meier, J. Am. Stat. Assoc. 53 (1958); B. Turnbull, J. R. Stat. Soc. B 38 (1976); the maximum is found by
 * turns of self-consistency and iterative convex minorants, J. Wellner, Y. Zhan, J. Am. Stat. Assoc. 92 (1997). NIST/SEMATECH e-Handbook,
 * 8.2.1.5.
 *
 * @param steps     at rising times; none where no unit failed
 * @param converged whether the maximum of likelihood was reached: no share of failures, moved elsewhere, makes the data likelier by more
 *                  than one part in 1e10 of what moved
 * @param turns     iterations that took; 0 for Kaplan and Meier
 */
public record Turnbull(List<Step> steps, boolean converged, int turns) {

    private static final NormalDistribution NORMAL = new NormalDistribution();
    private static final int TURNS = 20_000;
    private static final double TOLERANCE = 1e-10;
    /** A step that is smaller is nothing but rounding. */
    private static final double NO_STEP = 1e-9;

    /**
     * A fall of survival.
     *
     * @param from          survival begins to fall after this time
     * @param to            and has fallen by this one; the same where the moment is known
     * @param before        share that survives until {@code from}
     * @param survival      share that survives {@code to}
     * @param standardError of {@code survival} by Greenwood; empty where failures are not known to the moment or none survive
     */
    public record Step(double from, double to, double before, double survival, OptionalDouble standardError) {

        /** Whether the moment of failure is known. */
        public boolean exact() {
            return from == to;
        }

        /**
         * Two-sided bounds of survival at this time alone, normal in {@code ln(-ln S)}; empty where there is no standard error.
         */
        public Optional<Interval> bounds(double confidence) {
            Requires.share("confidence", confidence);
            if (standardError.isEmpty()) {
                return Optional.empty();
            }
            double z = NORMAL.inverseCumulativeProbability((1 + confidence) / 2);
            double spread = z * standardError.getAsDouble() / (survival * -Math.log(survival));
            return Optional.of(new Interval(Math.pow(survival, Math.exp(spread)), Math.pow(survival, Math.exp(-spread))));
        }
    }

    /** Copies the list. */
    public Turnbull {
        steps = List.copyOf(steps);
    }

    /** The estimate for these data. */
    public static Turnbull of(LifeData data) {
        return data.exact() ? kaplanMeier(data) : turnbull(data);
    }

    /** Share that survives a time; within an interval of unknown moments, what survived its beginning. */
    public double survival(double time) {
        double survival = 1;
        for (Step each : steps) {
            if (each.to() > time) {
                break;
            }
            survival = each.survival();
        }
        return survival;
    }

    /**
     * Points of a probability plot: failures known to the moment in the middle of their step, others at the end of their interval with
     * what has failed by then. What has no place on paper, because none survive, is left out.
     *
     * <p>Source: W. Meeker, L. Escobar, "Statistical Methods for Reliability Data" (1998), 6.4.
     */
    public List<PlotPoint> points() {
        List<PlotPoint> points = new ArrayList<>();
        for (Step each : steps) {
            double failed = each.exact() ? 1 - (each.before() + each.survival()) / 2 : 1 - each.survival();
            if (failed < 1 && failed > 0) {
                points.add(new PlotPoint(each.to(), failed));
            }
        }
        return points;
    }

    private static Turnbull kaplanMeier(LifeData data) {
        List<Observation> rising = data.observations().stream().sorted(Comparator.comparingDouble(Observation::from)).toList();
        List<Step> steps = new ArrayList<>();
        int atRisk = data.units();
        double survival = 1;
        double sum = 0;
        int next = 0;
        while (next < rising.size()) {
            double time = rising.get(next).from();
            int failed = 0;
            int left = 0;
            for (; next < rising.size() && rising.get(next).from() == time; next++) {
                Observation each = rising.get(next);
                left += each.count();
                failed += each.survived() ? 0 : each.count();
            }
            if (failed > 0) {
                double before = survival;
                survival *= (double) (atRisk - failed) / atRisk;
                sum += (double) failed / atRisk / (atRisk - failed);
                steps.add(new Step(time, time, before, survival,
                    survival > 0 ? OptionalDouble.of(survival * Math.sqrt(sum)) : OptionalDouble.empty()));
            }
            atRisk -= left;
        }
        return new Turnbull(steps, true, 0);
    }

    /** An end of what was observed; order decides between ends at the same time. */
    private record End(double time, int order, boolean left) {

        /** A failure at a time begins just before it, an interval that ends there includes it, one that begins there does not. */
        static End left(Observation of) {
            return new End(of.from(), of.exact() ? 0 : 2, true);
        }

        static End right(Observation of) {
            return new End(of.to(), 1, false);
        }

        static final Comparator<End> RISING = Comparator.comparingDouble(End::time).thenComparingInt(End::order);
    }

    private static Turnbull turnbull(LifeData data) {
        List<End> ends = new ArrayList<>();
        for (Observation each : data.observations()) {
            ends.add(End.left(each));
            ends.add(End.right(each));
        }
        ends.sort(End.RISING);
        // Only where a beginning is followed at once by an end can failures make the data likeliest.
        List<End> lefts = new ArrayList<>();
        List<End> rights = new ArrayList<>();
        for (int i = 1; i < ends.size(); i++) {
            if (ends.get(i - 1).left() && !ends.get(i).left()) {
                lefts.add(ends.get(i - 1));
                rights.add(ends.get(i));
            }
        }
        int places = lefts.size();
        int count = data.observations().size();
        int[] first = new int[count];
        int[] last = new int[count];
        double[] weight = new double[count];
        for (int i = 0; i < count; i++) {
            Observation each = data.observations().get(i);
            End left = End.left(each);
            End right = End.right(each);
            first[i] = (int) lefts.stream().filter(other -> End.RISING.compare(other, left) < 0).count();
            last[i] = (int) rights.stream().filter(other -> End.RISING.compare(other, right) <= 0).count();
            weight[i] = each.count();
        }
        Likeliest likeliest = new Likeliest(places, first, last, weight);
        boolean converged = likeliest.climb();
        List<Step> steps = new ArrayList<>();
        double survival = 1;
        for (int j = 0; j < places; j++) {
            double failed = likeliest.failed[j + 1];
            if (Double.isInfinite(rights.get(j).time()) || likeliest.failed[j + 1] - likeliest.failed[j] < NO_STEP) {
                continue;
            }
            double after = failed > 1 - NO_STEP ? 0 : 1 - failed;
            steps.add(new Step(lefts.get(j).time(), rights.get(j).time(), survival, after, OptionalDouble.empty()));
            survival = after;
        }
        return new Turnbull(steps, converged, likeliest.turns);
    }

    /** The search for the likeliest share failed after each place. Mutable, and seen by nobody else. */
    private static final class Likeliest {

        private final int places;
        private final int[] first;
        private final int[] last;
        private final double[] weight;
        private final double units;
        /** Share failed after so many places: 0 at first, 1 at last. */
        private double[] failed;
        private int turns;

        /** Observation i lies in places first[i] to last[i] - 1. */
        Likeliest(int places, int[] first, int[] last, double[] weight) {
            this.places = places;
            this.first = first;
            this.last = last;
            this.weight = weight;
            units = Arrays.stream(weight).sum();
            failed = new double[places + 1];
            for (int j = 0; j <= places; j++) {
                failed[j] = (double) j / places;
            }
        }

        boolean climb() {
            for (turns = 1; turns <= TURNS; turns++) {
                double[] gain = gains(failed);
                if (Arrays.stream(gain).max().orElse(units) <= units * (1 + TOLERANCE)) {
                    return true;
                }
                failed = selfConsistent(failed, gain);
                failed = convexMinorant(failed);
            }
            return false;
        }

        private double logLikelihood(double[] of) {
            double sum = 0;
            for (int i = 0; i < first.length; i++) {
                sum += weight[i] * Math.log(of[last[i]] - of[first[i]]);
            }
            return sum;
        }

        /** How much likelier a share at each place makes the data; at the maximum the number of units, or less where none fail. */
        private double[] gains(double[] of) {
            double[] change = new double[places + 1];
            for (int i = 0; i < first.length; i++) {
                double part = weight[i] / (of[last[i]] - of[first[i]]);
                change[first[i]] += part;
                change[last[i]] -= part;
            }
            double[] gain = new double[places];
            double sum = 0;
            for (int j = 0; j < places; j++) {
                sum += change[j];
                gain[j] = sum;
            }
            return gain;
        }

        private double[] selfConsistent(double[] of, double[] gain) {
            double[] next = new double[places + 1];
            for (int j = 0; j < places; j++) {
                next[j + 1] = next[j] + (of[j + 1] - of[j]) * gain[j] / units;
            }
            for (int j = 1; j < places; j++) {
                next[j] /= next[places];
            }
            next[places] = 1;
            return next;
        }

        private double[] convexMinorant(double[] of) {
            double[] slope = new double[places + 1];
            double[] curvature = new double[places + 1];
            for (int i = 0; i < first.length; i++) {
                double share = of[last[i]] - of[first[i]];
                slope[last[i]] += weight[i] / share;
                slope[first[i]] -= weight[i] / share;
                curvature[last[i]] += weight[i] / (share * share);
                curvature[first[i]] += weight[i] / (share * share);
            }
            double[] target = monotone(of, slope, curvature);
            double now = logLikelihood(of);
            for (double part = 1; part > 1e-10; part /= 2) {
                double[] next = new double[places + 1];
                for (int j = 1; j <= places; j++) {
                    next[j] = Math.max(next[j - 1], of[j] + part * (target[j] - of[j]));
                }
                next[places] = 1;
                if (logLikelihood(next) > now) {
                    return next;
                }
            }
            return of;
        }

        /** Weighted least squares of one Newton step that never falls, by pooling neighbours. */
        private double[] monotone(double[] of, double[] slope, double[] curvature) {
            double[] mean = new double[places];
            double[] weights = new double[places];
            int[] end = new int[places];
            int pools = 0;
            for (int j = 1; j < places; j++) {
                mean[pools] = of[j] + slope[j] / curvature[j];
                weights[pools] = curvature[j];
                end[pools] = j;
                while (pools > 0 && mean[pools - 1] >= mean[pools]) {
                    double sum = weights[pools - 1] + weights[pools];
                    mean[pools - 1] = (weights[pools - 1] * mean[pools - 1] + weights[pools] * mean[pools]) / sum;
                    weights[pools - 1] = sum;
                    end[pools - 1] = end[pools];
                    pools--;
                }
                pools++;
            }
            double[] target = new double[places + 1];
            int j = 1;
            for (int pool = 0; pool < pools; pool++) {
                for (; j <= end[pool]; j++) {
                    target[j] = Math.clamp(mean[pool], 0.0, 1.0);
                }
            }
            target[places] = 1;
            return target;
        }
    }
}
