package tramontane.reliability.statistics;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static tramontane.reliability.statistics.Observation.between;
import static tramontane.reliability.statistics.Observation.failure;
import static tramontane.reliability.statistics.Observation.survivor;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.DoubleStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import tramontane.reliability.statistics.GoodnessOfFit.Censoring;
import tramontane.reliability.statistics.GoodnessOfFit.Distance;

class GoodnessOfFitTest {

    private static LifeData handbook() {
        List<Observation> all = new ArrayList<>(
                DoubleStream.of(54, 187, 216, 240, 244, 335, 361, 373, 375, 386).mapToObj(Observation::failure).toList());
        all.add(survivor(500).times(10));
        return new LifeData(all);
    }

    /** NIST/SEMATECH e-Handbook 8.4.1.3: AIC 154.27 Weibull, 154.39 lognormal. */
    @Test
    void familiesAreInOrderOfTheirCriterion() {
        List<GoodnessOfFit.Candidate> found = GoodnessOfFit.compare(handbook(),
                List.of(Family.EXPONENTIAL, Family.LOGNORMAL, Family.WEIBULL));
        assertEquals(List.of(Family.WEIBULL, Family.LOGNORMAL, Family.EXPONENTIAL),
                found.stream().map(GoodnessOfFit.Candidate::family).toList());
        assertEquals(154.27, found.get(0).fit().orElseThrow().aic(), 0.005);
        assertEquals(154.39, found.get(1).fit().orElseThrow().aic(), 0.005);
        List<GoodnessOfFit.Candidate> one = GoodnessOfFit.compare(LifeData.of(failure(10), survivor(5)),
                List.of(Family.WEIBULL, Family.EXPONENTIAL));
        assertEquals(Family.EXPONENTIAL, one.get(0).family());
        assertTrue(one.get(1).fit().found().isEmpty());
    }

    /** Log-likelihoods: from R, survival::survreg, and by hand for the exponential, 10 ln(10/7771) - 10; p from R, pchisq. */
    @Test
    void exponentialIsTriedAgainstWeibull() {
        RatioTest test = GoodnessOfFit.exponentialAgainstWeibull(handbook()).orElseThrow();
        double simple = 10 * Math.log(10 / 7771.0) - 10;
        assertEquals(2 * (-75.1346181645 - simple), test.statistic(), 1e-7);
        assertEquals(1, test.degrees());
        assertEquals(P_OF_HANDBOOK, test.p(), 1e-6);
    }

    private static final double P_OF_HANDBOOK = 0.09182159224;

    /** By the definition of Anderson and Darling, {@code n ∫ (F - u)² / (u (1 - u)) du}, of the shares by their definition. */
    @Test
    void distanceIsTheIntegralOfItsDefinition() {
        List<Observation> seen = List.of(failure(20), failure(50), survivor(60), failure(70), survivor(100), survivor(100));
        double[] shares = DoubleStream.of(20, 50, 70).map(time -> hazardUntil(seen, time) / hazardUntil(seen, 100)).toArray();
        assertEquals(integral(shares), GoodnessOfFit.distance(new LifeData(seen), Family.WEIBULL, Math.log(90), 1 / 1.4), 1e-5);
        List<Observation> complete = DoubleStream.of(16, 34, 34, 75, 93, 120).mapToObj(Observation::failure).toList();
        double[] inner = DoubleStream.of(16, 34, 34, 75, 93).map(time -> hazardUntil(complete, time) / hazardUntil(complete, 120))
                .toArray();
        assertEquals(integral(inner), GoodnessOfFit.distance(new LifeData(complete), Family.WEIBULL, Math.log(90), 1 / 1.4), 1e-5);
    }

    private static double hazardUntil(List<Observation> units, double time) {
        return units.stream().mapToDouble(each -> Math.pow(Math.min(each.from(), time) / 90, 1.4)).sum();
    }

    private static double integral(double[] shares) {
        int steps = 2_000_000;
        double sum = 0;
        for (int i = 0; i < steps; i++) {
            double u = (i + 0.5) / steps;
            double below = 0;
            for (double share : shares) {
                below += share <= u ? 1.0 / shares.length : 0;
            }
            sum += (below - u) * (below - u) / (u * (1 - u));
        }
        return shares.length * sum / steps;
    }

    @Test
    void unitsThatAgeAreNoticed() {
        List<Observation> aging = new ArrayList<>();
        for (int i = 1; i <= 30; i++) {
            aging.add(failure(new Weibull(100, 3).life((i - 0.5) / 30)));
        }
        LifeFit fit = LifeFit.of(new LifeData(aging), Family.EXPONENTIAL).orElseThrow();
        assertTrue(GoodnessOfFit.andersonDarling(fit, 199, 1).orElseThrow().p() <= 0.01);
        LifeFit alone = LifeFit.of(LifeData.of(failure(5), survivor(3)), Family.EXPONENTIAL).orElseThrow();
        assertInstanceOf(Outcome.NotFound.class, GoodnessOfFit.andersonDarling(alone, 10, 1));
    }

    @Test
    void censoringIsRecognised() {
        assertEquals(Censoring.AT_A_TIME, distance(handbook()).censoring());
        assertEquals(Censoring.COMPLETE, distance(LifeData.of(failure(1), failure(2), failure(4))).censoring());
        assertEquals(Censoring.AT_A_FAILURE, distance(LifeData.of(failure(1), failure(2), failure(4), survivor(4).times(3))).censoring());
        assertEquals(Censoring.DRAWN, distance(LifeData.of(failure(1), survivor(2), failure(4), survivor(5))).censoring());
        assertInstanceOf(Outcome.NotFound.class, GoodnessOfFit.andersonDarling(
                LifeFit.of(LifeData.of(failure(1), between(3, 5), survivor(5)), Family.WEIBULL).orElseThrow(), 10, 1));
    }

    private static Distance distance(LifeData data) {
        return GoodnessOfFit.andersonDarling(LifeFit.of(data, Family.WEIBULL).orElseThrow(), 99, 1).orElseThrow();
    }

    @Test
    void sameSeedGivesTheSameAnswerAndTheHandbookExampleIsWeibullEnough() {
        Distance one = distance(handbook());
        assertEquals(one, distance(handbook()));
        assertTrue(one.p() > 0.05, one.toString());
        assertTrue(one.samples() >= 98);
    }

    @Test
    void anotherFamilyIsNoticed() {
        List<Observation> two = new ArrayList<>();
        for (int i = 1; i <= 25; i++) {
            two.add(failure(new Weibull(10, 5).life((i - 0.5) / 25)));
            two.add(failure(new Weibull(1000, 5).life((i - 0.5) / 25)));
        }
        assertTrue(distance(new LifeData(two)).p() <= 0.01);
    }

    /** Where the family is right, p is spread evenly: 20 % of tests are below 0.2, within three standard errors of the count. */
    @ParameterizedTest
    @EnumSource(Censoring.class)
    void valueIsHonest(Censoring censoring) {
        SplittableRandom random = new SplittableRandom(11);
        int runs = 400;
        int below = 0;
        for (int run = 0; run < runs; run++) {
            double[] lives = new double[15];
            for (int i = 0; i < lives.length; i++) {
                lives[i] = new Weibull(100, 2).life(random.nextDouble(1e-15, 1));
            }
            Arrays.sort(lives);
            List<Observation> seen = new ArrayList<>();
            for (double life : lives) {
                double end = switch (censoring) {
                    case COMPLETE -> Double.POSITIVE_INFINITY;
                    case AT_A_TIME -> 110;
                    case AT_A_FAILURE -> lives[9];
                    case DRAWN -> 60 + 100 * random.nextDouble();
                };
                seen.add(life <= end ? failure(life) : survivor(end));
            }
            LifeData data = new LifeData(seen);
            LifeFit fit = LifeFit.of(data, Family.WEIBULL).orElseThrow();
            below += GoodnessOfFit.andersonDarling(fit, 99, run).orElseThrow().p() <= 0.2 ? 1 : 0;
        }
        assertEquals(0.2 * runs, below, 3 * Math.sqrt(runs * 0.2 * 0.8));
    }
}
