package tramontane.reliability.statistics;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static tramontane.reliability.statistics.Bounds.Method.FISHER;
import static tramontane.reliability.statistics.Bounds.Method.LIKELIHOOD_RATIO;
import static tramontane.reliability.statistics.Observation.failure;
import static tramontane.reliability.statistics.Observation.survivor;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import tramontane.reliability.statistics.Acceleration.Law;

class AccelerationTest {

    private static final double HOT = 398.15;
    private static final double WARM = 378.15;
    private static final double COOL = 358.15;

    /** Lives of a test at a quantile each, so that scale and shape come out near the true ones. */
    private static LifeData ideal(double scale, double shape, int units, double end) {
        List<Observation> result = new ArrayList<>();
        for (int i = 1; i <= units; i++) {
            double life = new Weibull(scale, shape).life((i - 0.3) / (units + 0.4));
            result.add(life <= end ? failure(life) : survivor(end));
        }
        return new LifeData(result);
    }

    private static List<StressTest> arrhenius(double energy, double shape) {
        List<StressTest> tests = new ArrayList<>();
        for (double temperature : new double[] {COOL, WARM, HOT}) {
            double scale = 1000 * Math.exp(energy / Acceleration.BOLTZMANN * (1 / temperature - 1 / HOT));
            tests.add(StressTest.at(temperature, ideal(scale, shape, 12, 1e9)));
        }
        return tests;
    }

    private static Acceleration fit(List<StressTest> tests, Law law) {
        return Acceleration.of(tests, Family.WEIBULL, law).orElseThrow();
    }

    /** With the same pattern of lives at each stress the law goes through all scales exactly. */
    @Test
    void activationEnergyIsFound() {
        Acceleration fit = fit(arrhenius(0.7, 2), Law.ARRHENIUS);
        Bounds energy = fit.temperatureEffect(0.9, FISHER);
        assertEquals(0.7, energy.estimate(), 1e-9);
        assertEquals(energy.upper() - energy.estimate(), energy.estimate() - energy.lower(), 1e-9);
        Bounds ratio = fit.temperatureEffect(0.9, LIKELIHOOD_RATIO);
        assertEquals(0.7, ratio.estimate(), 1e-9);
        assertTrue(ratio.lower() < 0.7 && ratio.upper() > 0.7);
        LifeFit alone = LifeFit.of(fit.tests().get(0).data(), Family.WEIBULL).orElseThrow();
        assertEquals(alone.shape(), fit.shape(), 1e-9);
        assertEquals(0, fit.lawAgainstSeparateScales().orElseThrow().statistic(), 1e-8);
        assertEquals(0, fit.commonShape().orElseThrow().statistic(), 1e-8);
        assertEquals(1, fit.commonShape().orElseThrow().p(), 1e-3);
    }

    @Test
    void factorPerTenKelvinIsFound() {
        List<StressTest> tests = new ArrayList<>();
        for (double temperature : new double[] {330, 345, 360}) {
            tests.add(StressTest.at(temperature, ideal(1000 * Math.pow(1.8, (360 - temperature) / 10), 1.5, 10, 1e9)));
        }
        Acceleration fit = fit(tests, Law.PER_TEN_KELVIN);
        Bounds factor = fit.temperatureEffect(0.95, LIKELIHOOD_RATIO);
        assertEquals(1.8, factor.estimate(), 1e-9);
        assertTrue(factor.lower() > 1 && factor.lower() < 1.8 && factor.upper() > 1.8);
        Bounds thirty = fit.factor(330, 360, 0.95, LIKELIHOOD_RATIO);
        assertEquals(Math.pow(factor.lower(), 3), thirty.lower(), 1e-9 * thirty.lower());
        assertEquals(Math.pow(1.8, 3), thirty.estimate(), 1e-8);
        Bounds back = fit.factor(360, 330, 0.95, LIKELIHOOD_RATIO);
        assertEquals(1 / thirty.upper(), back.lower(), 1e-9);
        assertEquals(new Bounds(1, 1, 1), fit.factor(340, 340, 0.95, FISHER));
    }

    @Test
    void predictionSaysHowFarItReaches() {
        Acceleration fit = fit(arrhenius(0.7, 2), Law.ARRHENIUS);
        Acceleration.Prediction use = fit.at(313.15);
        assertEquals(-45, use.kelvinOutside(), 1e-9);
        assertTrue(use.extrapolated());
        assertEquals(1.85, fit.at(400).kelvinOutside(), 1e-9);
        assertEquals(0, fit.at(370).kelvinOutside());
        assertFalse(fit.at(370).extrapolated());
        for (Bounds.Method method : Bounds.Method.values()) {
            Bounds near = fit.at(378.15).bounds(Quantity.life(0.1), 0.9, method);
            Bounds far = use.bounds(Quantity.life(0.1), 0.9, method);
            assertEquals(use.distribution().life(0.1), far.estimate(), 1e-9 * far.estimate());
            assertTrue(far.upper() / far.lower() > 1.5 * near.upper() / near.lower(), "bounds widen away from the tests");
            assertEquals(far.lower(), use.lower(Quantity.life(0.1), 0.95, method), 1e-9 * far.lower());
            assertEquals(far.upper(), use.upper(Quantity.life(0.1), 0.95, method), 1e-9 * far.upper());
        }
        Bounds mean = use.bounds(Quantity.mean(), 0.9, LIKELIHOOD_RATIO);
        assertEquals(use.distribution().mean(), mean.estimate(), 1e-9 * mean.estimate());
        assertEquals(fit.shape(0.9, LIKELIHOOD_RATIO), use.bounds(Quantity.shape(), 0.9, LIKELIHOOD_RATIO));
    }

    /** The likelihood with L10 at the use temperature held, maximised over the rest by another way: a fine search over energy and shape. */
    @Test
    void likelihoodRatioBoundOfAPredictionIsAsLikelyAsItSays() {
        List<StressTest> tests = List.of(StressTest.at(HOT, ideal(1000, 2, 6, 900)), StressTest.at(WARM, ideal(2500, 2.4, 6, 2500)));
        Acceleration fit = fit(tests, Law.ARRHENIUS);
        Acceleration.Prediction use = fit.at(333.15);
        double lower = use.lower(Quantity.life(0.1), 0.95, LIKELIHOOD_RATIO);
        double best = Double.NEGATIVE_INFINITY;
        double energy = fit.coefficients().get(1);
        double spread = fit.spread();
        double step = 0.1;
        while (step > 1e-8) {
            double from = best;
            for (double[] move : new double[][] {{0, 0}, {1, 0}, {-1, 0}, {0, 1}, {0, -1}, {1, 1}, {-1, -1}, {1, -1}, {-1, 1}}) {
                double log = held(tests, lower, 333.15, energy + move[0] * step, spread * Math.exp(move[1] * step));
                if (log > best) {
                    best = log;
                    energy += move[0] * step;
                    spread *= Math.exp(move[1] * step);
                    break;
                }
            }
            if (best == from) {
                step /= 2;
            }
        }
        assertEquals(2.705543454, 2 * (fit.logLikelihood() - best), 1e-6);
    }

    private static double held(List<StressTest> tests, double life, double use, double energy, double spread) {
        double sum = 0;
        for (StressTest test : tests) {
            double at = life * Math.exp(energy / Acceleration.BOLTZMANN * (1 / test.temperature() - 1 / use));
            Weibull weibull = Weibull.through(at, 0.1, 1 / spread);
            for (Observation each : test.data().observations()) {
                sum += Math.log(weibull.survival(each.from())) + (each.exact() ? Math.log(weibull.hazard(each.from())) : 0);
            }
        }
        return sum;
    }

    @Test
    void differentShapesAreNoticed() {
        List<StressTest> tests = List.of(StressTest.at(HOT, ideal(1000, 6, 20, 1e9)), StressTest.at(COOL, ideal(9000, 1, 20, 1e9)));
        RatioTest test = fit(tests, Law.ARRHENIUS).commonShape().orElseThrow();
        assertEquals(1, test.degrees());
        assertTrue(test.p() < 1e-4, test.toString());
    }

    @Test
    void anotherLawIsNoticed() {
        List<StressTest> tests = List.of(StressTest.at(HOT, ideal(1000, 3, 20, 1e9)), StressTest.at(WARM, ideal(1100, 3, 20, 1e9)),
                StressTest.at(COOL, ideal(20000, 3, 20, 1e9)));
        RatioTest test = fit(tests, Law.ARRHENIUS).lawAgainstSeparateScales().orElseThrow();
        assertEquals(1, test.degrees());
        assertTrue(test.p() < 1e-4, test.toString());
        assertTrue(fit(tests, Law.ARRHENIUS).commonShape().orElseThrow().p() > 0.9);
    }

    /** Where both hypotheses hold, p is spread evenly: 10 % of tests are below 0.1, within three standard errors of the count. */
    @Test
    void ratioTestsKeepTheirLevel() {
        SplittableRandom random = new SplittableRandom(7);
        int shape = 0;
        int law = 0;
        int runs = 400;
        for (int run = 0; run < runs; run++) {
            List<StressTest> tests = new ArrayList<>();
            for (double temperature : new double[] {COOL, WARM, HOT}) {
                List<Observation> seen = new ArrayList<>();
                for (int i = 0; i < 40; i++) {
                    double scale = 1000 * Math.exp(0.6 / Acceleration.BOLTZMANN * (1 / temperature - 1 / HOT));
                    seen.add(failure(new Weibull(scale, 2).life(random.nextDouble(1e-15, 1))));
                }
                tests.add(StressTest.at(temperature, new LifeData(seen)));
            }
            Acceleration fit = fit(tests, Law.ARRHENIUS);
            shape += fit.commonShape().orElseThrow().p() < 0.1 ? 1 : 0;
            law += fit.lawAgainstSeparateScales().orElseThrow().p() < 0.1 ? 1 : 0;
        }
        double allowed = 3 * Math.sqrt(runs * 0.1 * 0.9);
        assertEquals(0.1 * runs, shape, allowed);
        assertEquals(0.1 * runs, law, allowed);
    }

    @Test
    void speedIsASecondStress() {
        List<StressTest> tests = new ArrayList<>();
        for (double temperature : new double[] {COOL, HOT}) {
            for (double speed : new double[] {50, 100}) {
                double scale = 1000 * Math.pow(speed / 100, -1.5) * Math.exp(0.5 / Acceleration.BOLTZMANN * (1 / temperature - 1 / HOT));
                tests.add(StressTest.at(temperature, speed, ideal(scale, 2, 8, 1e9)));
            }
        }
        Acceleration fit = fit(tests, Law.ARRHENIUS);
        assertEquals(0.5, fit.temperatureEffect(0.9, FISHER).estimate(), 1e-9);
        Bounds exponent = fit.speedExponent(0.9, LIKELIHOOD_RATIO);
        assertEquals(-1.5, exponent.estimate(), 1e-8);
        assertTrue(exponent.lower() < -1.5 && exponent.upper() > -1.5);
        assertEquals(0.5, fit.at(370, 25).speedOutside(), 1e-12);
        assertTrue(fit.at(370, 25).extrapolated());
        assertFalse(fit.at(370, 70).extrapolated());
        double two = fit.at(HOT, 50).distribution().mean() / fit.at(HOT, 100).distribution().mean();
        assertEquals(Math.pow(2, 1.5), two, 1e-8);
        assertThrows(IllegalArgumentException.class, () -> fit.at(370));
        assertEquals(1, fit.lawAgainstSeparateScales().orElseThrow().degrees());
        assertThrows(IllegalStateException.class, () -> fit(arrhenius(0.7, 2), Law.ARRHENIUS).speedExponent(0.9, FISHER));
        List<StressTest> half = List.of(tests.get(0), StressTest.at(HOT, tests.get(1).data()));
        assertThrows(IllegalArgumentException.class, () -> Acceleration.of(half, Family.WEIBULL, Law.ARRHENIUS));
    }

    @ParameterizedTest
    @EnumSource(Family.class)
    void withoutFailuresAtASecondTemperatureItSaysSo(Family family) {
        LifeData failed = ideal(1000, 2, 8, 1e9);
        LifeData lived = LifeData.of(survivor(3000).times(8));
        for (Law law : Law.values()) {
            assertReason(Outcome.Reason.NOT_DETERMINED,
                    Acceleration.of(List.of(StressTest.at(HOT, failed), StressTest.at(COOL, lived)), family, law));
            assertReason(Outcome.Reason.NOT_DETERMINED,
                    Acceleration.of(List.of(StressTest.at(HOT, failed), StressTest.at(WARM, lived), StressTest.at(COOL, lived)),
                            family, law));
            assertReason(Outcome.Reason.NOT_DETERMINED,
                    Acceleration.of(List.of(StressTest.at(HOT, failed), StressTest.at(HOT, failed)), family, law));
            assertReason(Outcome.Reason.NO_FAILURE,
                    Acceleration.of(List.of(StressTest.at(HOT, lived), StressTest.at(COOL, lived)), family, law));
        }
    }

    /** Survivors above and below the one temperature with failures hold the law from both sides. */
    @Test
    void survivorsAtOtherTemperaturesBothSidesBoundOneSideEach() {
        LifeData failed = ideal(1000, 2, 8, 1e9);
        LifeData lived = LifeData.of(survivor(500).times(8));
        Acceleration fit = fit(List.of(StressTest.at(HOT, lived), StressTest.at(WARM, failed), StressTest.at(COOL, lived)), Law.ARRHENIUS);
        Bounds energy = fit.temperatureEffect(0.9, LIKELIHOOD_RATIO);
        assertTrue(energy.lower() < energy.estimate() && energy.estimate() < energy.upper());
        assertTrue(Double.isFinite(energy.lower()) && Double.isFinite(energy.upper()));
    }

    @Test
    void allAtOnceAtEachTemperatureHasNoSpread() {
        assertReason(Outcome.Reason.NO_SPREAD, Acceleration.of(List.of(StressTest.at(HOT, LifeData.of(failure(100).times(3))),
                StressTest.at(COOL, LifeData.of(failure(900).times(2), survivor(900)))), Family.WEIBULL, Law.ARRHENIUS));
    }

    /** One failure at each of three temperatures not in line is enough for all, with a given shape one at each of two. */
    @Test
    void fewFailuresAreEnoughWhereTheyDetermine() {
        List<StressTest> three = List.of(StressTest.at(HOT, LifeData.of(failure(100))), StressTest.at(WARM, LifeData.of(failure(500))),
                StressTest.at(COOL, LifeData.of(failure(900))));
        assertTrue(fit(three, Law.ARRHENIUS).spread() > 0);
        List<StressTest> two = List.of(StressTest.at(HOT, LifeData.of(failure(100))), StressTest.at(COOL, LifeData.of(failure(900))));
        assertReason(Outcome.Reason.NO_SPREAD, Acceleration.of(two, Family.WEIBULL, Law.ARRHENIUS));
        Acceleration given = Acceleration.ofShape(two, Family.WEIBULL, Law.ARRHENIUS, 2).orElseThrow();
        assertEquals(2, given.shape(), 1e-15);
        assertEquals(100, Math.exp(given.coefficients().get(0) + given.coefficients().get(1) / (Acceleration.BOLTZMANN * HOT)), 1e-6);
        Bounds energy = given.temperatureEffect(0.9, FISHER);
        double error = 0.5 * Math.sqrt(2) / (1 / (Acceleration.BOLTZMANN * COOL) - 1 / (Acceleration.BOLTZMANN * HOT));
        assertEquals(1.644853627 * error, energy.upper() - energy.estimate(), 1e-7);
    }

    private static void assertReason(Outcome.Reason reason, Outcome<Acceleration> outcome) {
        if (!(outcome instanceof Outcome.NotFound<Acceleration>(Outcome.Reason got, String sentence))) {
            throw new AssertionError("a fit was made: " + outcome);
        }
        assertEquals(reason, got, sentence);
    }
}
