package tramontane.reliability.statistics;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.SplittableRandom;
import java.util.function.Predicate;

/**
 * How well families of distributions agree with what was seen.
 *
 * <p>Sources: W. Meeker, L. Escobar, "Statistical Methods for Reliability Data" (1998), chapter 8; for the distance D. Cox, E. Snell, "A
 * General Definition of Residuals", J. R. Stat. Soc. B 30 (1968), R. Barlow, R. Campo, "Total Time on Test Processes and Applications to
 * Failure Data Analysis" (1975), and T. Anderson, D. Darling, "A Test of Goodness of Fit", J. Am. Stat. Assoc. 49 (1954); for simulated
 * ends of units A. Davison, D. Hinkley, "Bootstrap Methods and their Application" (1997), section 3.5.
 */
public final class GoodnessOfFit {

    /** Simulated tests where nothing else is asked for; the p value is then known to about 0.01. */
    public static final int SAMPLES = 999;

    private GoodnessOfFit() {
    }

    /**
     * A family and its fit.
     *
     * @param family the family
     * @param fit    its fit, or why there is none
     */
    public record Candidate(Family family, Outcome<LifeFit> fit) {

        private double aic() {
            return fit.found().map(LifeFit::aic).orElse(Double.POSITIVE_INFINITY);
        }
    }

    /**
     * How far the fitted distribution lies from what was seen.
     *
     * @param statistic Anderson and Darling's, of how evenly failures are spread over the hazard that all units together went through
     * @param p         share of simulated tests that lie as far or farther if the fitted distribution holds: a small one speaks against
     *                  the family, one near 1 says nothing for it
     * @param samples   simulated tests that could be fitted
     * @param censoring how tests were simulated
     */
    public record Distance(double statistic, double p, int samples, Censoring censoring) {
    }

    /** How the end of units that survived is simulated. */
    public enum Censoring {
        /** All failed. */
        COMPLETE,
        /** All units end at one time. */
        AT_A_TIME,
        /** All units end with a certain failure. */
        AT_A_FAILURE,
        /** Survivors end when they did, the others at times drawn from those seen, as if these had nothing to do with their lives. */
        DRAWN
    }

    /** Fits of several families, the one with the lowest AIC first; those that have no fit last. */
    public static List<Candidate> compare(LifeData data, List<Family> families) {
        return families.stream().map(each -> new Candidate(each, LifeFit.of(data, each)))
                .sorted(Comparator.comparingDouble(Candidate::aic)).toList();
    }

    /** Whether units that do not age are tenable: exponential against Weibull, one degree of freedom. */
    public static Outcome<RatioTest> exponentialAgainstWeibull(LifeData data) {
        return switch (LifeFit.of(data, Family.EXPONENTIAL)) {
            case Outcome.NotFound<LifeFit>(Outcome.Reason reason, String sentence) -> new Outcome.NotFound<>(reason, sentence);
            case Outcome.Found<LifeFit>(LifeFit simple) -> switch (LifeFit.of(data, Family.WEIBULL)) {
                case Outcome.NotFound<LifeFit>(Outcome.Reason reason, String sentence) -> new Outcome.NotFound<>(reason, sentence);
                case Outcome.Found<LifeFit>(LifeFit wide) ->
                    new Outcome.Found<>(RatioTest.of(simple.logLikelihood(), wide.logLikelihood(), 1));
            };
        };
    }

    /**
     * Anderson and Darling's distance with a p value from simulated tests that are fitted like the real one (parametric bootstrap), so
     * that it allows for the parameters having been estimated and for units that survived.
     *
     * <p>Under the fitted distribution each unit goes through its cumulative hazard {@code -ln R(t)}; summed over all units up to each
     * failure, as a share of the sum at the end, these are evenly spread whatever units were removed.
     *
     * @param fit     of data in which every failure is known to the moment
     * @param samples how many tests are simulated, for example {@link #SAMPLES}
     * @param seed    same seed, same answer
     */
    public static Outcome<Distance> andersonDarling(LifeFit fit, int samples, long seed) {
        LifeData data = fit.data();
        if (!data.exact()) {
            return new Outcome.NotFound<>(Outcome.Reason.NOT_DETERMINED,
                    "the distance is defined here for failures known to the moment, not for those between two looks");
        }
        if (samples < 1) {
            throw new IllegalArgumentException("at least 1 test is simulated, got " + samples);
        }
        Simulation simulation = new Simulation(fit);
        double seen = distance(data, fit.family(), fit.location(), fit.spread());
        if (Double.isNaN(seen)) {
            return new Outcome.NotFound<>(Outcome.Reason.NOT_DETERMINED,
                    "one failure, the last of all units, does not show how failures are spread");
        }
        SplittableRandom random = new SplittableRandom(seed);
        int farther = 0;
        int fitted = 0;
        for (int i = 0; i < samples; i++) {
            LifeData drawn = simulation.draw(random);
            Outcome<LifeFit> again = fit.givenShape().isPresent() ? LifeFit.ofShape(drawn, fit.family(), fit.givenShape().getAsDouble())
                    : LifeFit.of(drawn, fit.family());
            if (again instanceof Outcome.Found<LifeFit>(LifeFit found)) {
                double other = distance(drawn, found.family(), found.location(), found.spread());
                fitted += Double.isNaN(other) ? 0 : 1;
                farther += other >= seen ? 1 : 0;
            }
        }
        return new Outcome.Found<>(new Distance(seen, (farther + 1.0) / (fitted + 1.0), fitted, simulation.censoring));
    }

    /**
     * Anderson and Darling's statistic for evenly spread numbers, of the share of the total hazard that all units together had gone through
     * at each failure; a failure after which no unit is left always has 1 and is left out. NaN where nothing else failed.
     */
    static double distance(LifeData data, Family family, double location, double spread) {
        List<Observation> sorted = new ArrayList<>(data.observations());
        // At the same time a unit that survived was still there when the other failed.
        sorted.sort(Comparator.comparingDouble(Observation::from).thenComparing(Observation::survived));
        double[] gone = new double[data.failures()];
        double atRisk = data.units();
        double total = 0;
        double hazard = 0;
        int failed = 0;
        int inside = 0;
        for (Observation each : sorted) {
            double next = -family.logSurvival((Math.log(each.from()) - location) / spread);
            total += atRisk * (next - hazard);
            hazard = next;
            if (!each.survived()) {
                Arrays.fill(gone, failed, failed + each.count(), total);
                failed += each.count();
            }
            atRisk -= each.count();
        }
        while (inside < failed && gone[inside] < total) {
            inside++;
        }
        if (inside == 0) {
            return Double.NaN;
        }
        double sum = 0;
        for (int i = 0; i < inside; i++) {
            sum += (2 * i + 1) * (Math.log(gone[i] / total) + Math.log1p(-gone[inside - 1 - i] / total));
        }
        return -inside - sum / inside;
    }

    /** Tests like the one seen, from the fitted distribution. */
    private static final class Simulation {

        private final LifeFit fit;
        private final Censoring censoring;
        private final int units;
        private final int failures;
        private final double end;
        private final double[] ends;
        private final double[] reached;
        private final double[] seen;
        private final boolean[] survived;

        Simulation(LifeFit fit) {
            this.fit = fit;
            LifeData data = fit.data();
            units = data.units();
            failures = data.failures();
            double[] ended = data.observations().stream().filter(Observation::survived).mapToDouble(Observation::from)
                    .distinct().sorted().toArray();
            double last = data.observations().stream().filter(each -> !each.survived()).mapToDouble(Observation::to).max().orElseThrow();
            seen = new double[units];
            survived = new boolean[units];
            int unit = 0;
            for (Observation each : data.observations()) {
                Arrays.fill(seen, unit, unit + each.count(), each.from());
                Arrays.fill(survived, unit, unit + each.count(), each.survived());
                unit += each.count();
            }
            end = ended.length == 0 ? Double.POSITIVE_INFINITY : ended[0];
            ends = ended;
            reached = new double[ended.length];
            if (ended.length == 0) {
                censoring = Censoring.COMPLETE;
            } else if (ended.length == 1 && end > last) {
                censoring = Censoring.AT_A_TIME;
            } else if (ended.length == 1 && end == last) {
                censoring = Censoring.AT_A_FAILURE;
            } else {
                censoring = Censoring.DRAWN;
                double left = 1;
                for (int i = 0; i < ends.length; i++) {
                    double time = ends[i];
                    int here = count(data, each -> each.survived() && each.from() == time);
                    int there = count(data, each -> each.survived() ? each.from() >= time : each.to() > time);
                    left *= 1 - here / (double) there;
                    reached[i] = 1 - left;
                }
            }
        }

        private static int count(LifeData data, Predicate<Observation> which) {
            return data.observations().stream().filter(which).mapToInt(Observation::count).sum();
        }

        /** A survivor ends when it did; a unit that failed would have ended later than it failed. */
        private double end(int unit, SplittableRandom random) {
            if (survived[unit]) {
                return seen[unit];
            }
            int i = 0;
            double before = 0;
            while (i < ends.length && ends[i] < seen[unit]) {
                before = reached[i];
                i++;
            }
            double share = before + (1 - before) * random.nextDouble();
            while (i < ends.length && reached[i] <= share) {
                i++;
            }
            return i < ends.length ? ends[i] : Double.POSITIVE_INFINITY;
        }

        LifeData draw(SplittableRandom random) {
            double[] lives = new double[units];
            for (int i = 0; i < units; i++) {
                lives[i] = Math.exp(fit.location() + fit.spread() * fit.family().quantile(random.nextDouble(0x1p-53, 1)));
            }
            double all = end;
            if (censoring == Censoring.AT_A_FAILURE) {
                double[] sorted = lives.clone();
                Arrays.sort(sorted);
                all = sorted[failures - 1];
            }
            List<Observation> result = new ArrayList<>(units);
            for (int unit = 0; unit < units; unit++) {
                double life = lives[unit];
                double stop = censoring == Censoring.DRAWN ? end(unit, random) : all;
                result.add(life <= stop ? Observation.failure(life) : Observation.survivor(stop));
            }
            return new LifeData(result);
        }
    }
}
