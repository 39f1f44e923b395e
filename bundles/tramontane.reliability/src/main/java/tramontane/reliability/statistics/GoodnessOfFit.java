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
 * <p>Source: W. Meeker, L. Escobar, "Statistical Methods for Reliability Data" (1998), chapter 8; A. Pettitt, M. Stephens, "Modified
 * Cramér-von Mises statistics for censored data", Biometrika 63 (1976), for Anderson and Darling's distance over the range that was seen.
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
     * @param statistic Anderson and Darling's, against the Kaplan-Meier estimate, over the range that was seen
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
        /** Units end at times drawn from those seen, as if these had nothing to do with their lives. */
        DRAWN
    }

    /** Fits of several families, the one with the lowest AIC first; those that have no fit last. */
    public static List<Candidate> compare(LifeData data, List<Family> families) {
        return families.stream().map(each -> new Candidate(each, LifeFit.of(data, each))).sorted(Comparator.comparingDouble(Candidate::aic)).toList();
    }

    /** Whether units that do not age are tenable: exponential against Weibull, one degree of freedom. */
    public static Outcome<RatioTest> exponentialAgainstWeibull(LifeData data) {
        return switch (LifeFit.of(data, Family.EXPONENTIAL)) {
            case Outcome.NotFound<LifeFit>(Outcome.Reason reason, String sentence) -> new Outcome.NotFound<>(reason, sentence);
            case Outcome.Found<LifeFit>(LifeFit simple) -> switch (LifeFit.of(data, Family.WEIBULL)) {
                case Outcome.NotFound<LifeFit>(Outcome.Reason reason, String sentence) -> new Outcome.NotFound<>(reason, sentence);
                case Outcome.Found<LifeFit>(LifeFit wide) -> new Outcome.Found<>(RatioTest.of(simple.logLikelihood(), wide.logLikelihood(), 1));
            };
        };
    }

    /**
     * Anderson and Darling's distance with a p value from simulated tests that are fitted like the real one (parametric bootstrap), so
     * that it allows for the parameters having been estimated and for units that survived.
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
        SplittableRandom random = new SplittableRandom(seed);
        int farther = 0;
        int fitted = 0;
        for (int i = 0; i < samples; i++) {
            LifeData drawn = simulation.draw(random);
            Outcome<LifeFit> again = fit.givenShape().isPresent() ? LifeFit.ofShape(drawn, fit.family(), fit.givenShape().getAsDouble())
                    : LifeFit.of(drawn, fit.family());
            if (again instanceof Outcome.Found<LifeFit>(LifeFit found)) {
                fitted++;
                if (distance(drawn, found.family(), found.location(), found.spread()) >= seen) {
                    farther++;
                }
            }
        }
        return new Outcome.Found<>(new Distance(seen, (farther + 1.0) / (fitted + 1.0), fitted, simulation.censoring));
    }

    /** {@code n ∫ (F_seen - u)² / (u (1 - u)) du} from 0 to the fitted share that has failed by the last time seen. */
    static double distance(LifeData data, Family family, double location, double spread) {
        List<Observation> sorted = new ArrayList<>(data.observations());
        // At the same time a unit that survived was still there when the other failed.
        sorted.sort(Comparator.comparingDouble(Observation::from).thenComparing(Observation::survived));
        double atRisk = data.units();
        double survival = 1;
        double sum = 0;
        double logS = 0;
        double logF = Double.NEGATIVE_INFINITY;
        double u = 0;
        for (Observation each : sorted) {
            if (each.from() == 0) {
                atRisk -= each.count();
                continue;
            }
            double z = (Math.log(each.from()) - location) / spread;
            double nextS = family.logSurvival(z);
            double nextF = family.logFailed(z);
            double next = Math.exp(nextF);
            double failed = 1 - survival;
            double piece = -(next - u);
            if (failed > 0) {
                piece += failed * failed * (nextF - logF);
            }
            if (survival > 0) {
                piece -= survival * survival * (nextS - logS);
            }
            sum += piece;
            logS = nextS;
            logF = nextF;
            u = next;
            if (!each.survived()) {
                survival *= (atRisk - each.count()) / atRisk;
            }
            atRisk -= each.count();
        }
        if (survival == 0) {
            // All had failed: what is left of the range has F_seen = 1.
            sum += -logF - (1 - u);
        }
        return data.units() * sum;
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

        Simulation(LifeFit fit) {
            this.fit = fit;
            LifeData data = fit.data();
            units = data.units();
            failures = data.failures();
            double[] ended = data.observations().stream().filter(Observation::survived).mapToDouble(Observation::from).distinct().sorted().toArray();
            double last = data.observations().stream().filter(each -> !each.survived()).mapToDouble(Observation::to).max().orElseThrow();
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
            for (double life : lives) {
                double stop = all;
                if (censoring == Censoring.DRAWN) {
                    double share = random.nextDouble();
                    int i = 0;
                    while (i < ends.length && reached[i] <= share) {
                        i++;
                    }
                    stop = i < ends.length ? ends[i] : Double.POSITIVE_INFINITY;
                }
                result.add(life <= stop ? Observation.failure(life) : Observation.survivor(stop));
            }
            return new LifeData(result);
        }
    }
}
