package tramontane.reliability.statistics;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static tramontane.reliability.statistics.Bounds.Method.FISHER;
import static tramontane.reliability.statistics.Bounds.Method.LIKELIHOOD_RATIO;
import static tramontane.reliability.statistics.Observation.between;
import static tramontane.reliability.statistics.Observation.failedBefore;
import static tramontane.reliability.statistics.Observation.failure;
import static tramontane.reliability.statistics.Observation.survivor;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.DoubleStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.MethodSource;

class LifeFitTest {

    private static final LifeData HANDBOOK = handbook();

    private static LifeData handbook() {
        List<Observation> all = new ArrayList<>(
                DoubleStream.of(54, 187, 216, 240, 244, 335, 361, 373, 375, 386).mapToObj(Observation::failure).toList());
        all.add(survivor(500).times(10));
        return new LifeData(all);
    }

    private static LifeFit weibull(LifeData data) {
        return LifeFit.of(data, Family.WEIBULL).orElseThrow();
    }

    private static void near(double expected, double actual, double relative) {
        if (Double.isInfinite(expected)) {
            assertEquals(expected, actual);
        } else {
            assertEquals(expected, actual, relative * Math.abs(expected));
        }
    }

    /** NIST/SEMATECH e-Handbook 8.4.1.3; covariance and further digits from R, survival::survreg. */
    @Test
    void handbookExampleIsFitted() {
        LifeFit fit = weibull(HANDBOOK);
        Weibull found = (Weibull) fit.distribution();
        near(606.5276, found.scale(), 1e-6);
        near(1.720797, found.shape(), 1e-6);
        near(540.7370, found.mean(), 1e-6);
        near(-75.13462, fit.logLikelihood(), 1e-7);
        near(154.2692, fit.aic(), 1e-6);
        near(154.3925, LifeFit.of(HANDBOOK, Family.LOGNORMAL).orElseThrow().aic(), 1e-6);
        near(6.407749, fit.location(), 1e-6);
        near(0.04241289, fit.covariance().get(0).get(0), 1e-5);
        near(0.02712784, fit.covariance().get(0).get(1), 1e-5);
        near(0.08515469, fit.covariance().get(1).get(1), 1e-5);
        assertTrue(fit.iterations() < 15, "took " + fit.iterations());
    }

    /** NIST/SEMATECH e-Handbook 8.4.1.3 data; bounds from R, survival::survreg, likelihood ratio by profile. */
    @ParameterizedTest
    @CsvSource({"scale,    0, FISHER, 0.95, 405.089, 908.135", "scale,    0, FISHER, 0.90, 432.249, 851.073",
        "shape,    0, FISHER, 0.95, 0.97127, 3.04875", "shape,    0, FISHER, 0.90, 1.06481, 2.78091",
        "life,   0.1, FISHER, 0.95, 83.875, 320.755", "life,   0.1, FISHER, 0.90, 93.425, 287.968",
        "life,  0.01, FISHER, 0.95, 10.3854, 168.775", "life,  0.01, FISHER, 0.90, 12.9946, 134.887",
        "life,  0.05, FISHER, 0.95, 44.692, 260.759", "life,  0.05, FISHER, 0.90, 51.500, 226.288",
        "life,   0.5, FISHER, 0.95, 340.207, 706.248", "life,   0.5, FISHER, 0.90, 360.780, 665.974",
        "scale,    0, LIKELIHOOD_RATIO, 0.95, 437.557, 1118.878", "scale,    0, LIKELIHOOD_RATIO, 0.90, 458.931, 975.010",
        "shape,    0, LIKELIHOOD_RATIO, 0.95, 0.90565, 2.88574", "shape,    0, LIKELIHOOD_RATIO, 0.90, 1.01465, 2.67345",
        "life,   0.1, LIKELIHOOD_RATIO, 0.95, 59.855, 271.950", "life,   0.1, LIKELIHOOD_RATIO, 0.90, 74.834, 254.762"})
    void handbookExampleIsBounded(String what, double at, Bounds.Method method, double confidence, double lower, double upper) {
        Quantity quantity = switch (what) {
            case "scale" -> Quantity.scale();
            case "shape" -> Quantity.shape();
            default -> Quantity.life(at);
        };
        LifeFit fit = weibull(HANDBOOK);
        Bounds bounds = fit.bounds(quantity, confidence, method);
        near(lower, bounds.lower(), 2e-5);
        near(upper, bounds.upper(), 2e-5);
        near(bounds.lower(), fit.lower(quantity, (1 + confidence) / 2, method), 1e-9);
        near(bounds.upper(), fit.upper(quantity, (1 + confidence) / 2, method), 1e-9);
    }

    /** A teaching set of Weibull texts; numbers from R, survival::survreg. */
    @Test
    void sixUnitsAreFitted() {
        LifeFit fit = weibull(new LifeData(DoubleStream.of(16, 34, 53, 75, 93, 120).mapToObj(Observation::failure).toList()));
        near(1.932678, fit.shape(), 1e-6);
        near(73.52607, Math.exp(fit.location()), 1e-6);
        near(-29.58492, fit.logLikelihood(), 1e-6);
        Bounds shape = fit.bounds(Quantity.shape(), 0.9, FISHER);
        near(1.112518, shape.lower(), 1e-6);
        near(3.357470, shape.upper(), 1e-6);
        Bounds scale = fit.bounds(Quantity.scale(), 0.9, FISHER);
        near(51.02614, scale.lower(), 1e-6);
        near(105.9473, scale.upper(), 1e-6);
    }

    /** Numbers from R, survival::survreg. */
    @Test
    void failedAndRemovedUnitsMixedAreFitted() {
        LifeFit fit = weibull(LifeData.of(failure(31), failure(39), failure(57), survivor(65), failure(70), survivor(105), failure(110)));
        near(2.235661, fit.shape(), 1e-6);
        near(87.02097, Math.exp(fit.location()), 1e-6);
        near(-26.07739, fit.logLikelihood(), 1e-6);
    }

    static Stream<Arguments> withoutMaximum() {
        return Stream.of(
                Arguments.of(Outcome.Reason.NO_FAILURE, LifeData.of(survivor(100), survivor(200))),
                Arguments.of(Outcome.Reason.NO_FAILURE, LifeData.of(survivor(100).times(30))),
                Arguments.of(Outcome.Reason.ALL_FAILED_BEFORE, LifeData.of(failedBefore(100), failedBefore(50))),
                Arguments.of(Outcome.Reason.NO_SPREAD, LifeData.of(failure(100))),
                Arguments.of(Outcome.Reason.NO_SPREAD, LifeData.of(failure(100).times(7))),
                Arguments.of(Outcome.Reason.NO_SPREAD, LifeData.of(failure(100), survivor(100))),
                Arguments.of(Outcome.Reason.NO_SPREAD, LifeData.of(failure(100), survivor(60))),
                Arguments.of(Outcome.Reason.NO_SPREAD, LifeData.of(failure(100), failedBefore(100), between(80, 120), survivor(100))),
                Arguments.of(Outcome.Reason.NO_SPREAD, LifeData.of(between(10, 20).times(5))),
                Arguments.of(Outcome.Reason.NO_SPREAD, LifeData.of(between(10, 20), between(20, 30))),
                Arguments.of(Outcome.Reason.NO_SPREAD, LifeData.of(between(10, 20), between(15, 30), survivor(5))),
                Arguments.of(Outcome.Reason.NO_SPREAD, LifeData.of(failedBefore(20), survivor(10))),
                Arguments.of(Outcome.Reason.NO_SPREAD, LifeData.of(failedBefore(20).times(3), survivor(20).times(7))),
                Arguments.of(Outcome.Reason.INFINITE_SPREAD, LifeData.of(failedBefore(10), survivor(20))),
                Arguments.of(Outcome.Reason.INFINITE_SPREAD,
                        LifeData.of(failedBefore(10).times(5), survivor(10).times(5), failedBefore(20).times(5), survivor(20).times(5))));
    }

    @ParameterizedTest
    @MethodSource("withoutMaximum")
    void whereTheLikelihoodHasNoMaximumItSaysWhy(Outcome.Reason reason, LifeData data) {
        for (Family family : List.of(Family.WEIBULL, Family.LOGNORMAL)) {
            if (!(LifeFit.of(data, family) instanceof Outcome.NotFound<LifeFit>(Outcome.Reason got, String sentence))) {
                throw new AssertionError("a " + family + " fit was made of " + data);
            }
            assertEquals(reason, got, sentence);
            assertTrue(sentence.length() > 40);
        }
    }

    static Stream<LifeData> withMaximum() {
        return Stream.of(LifeData.of(failure(100), survivor(100.001)), LifeData.of(failure(100), survivor(1000).times(1000)),
                LifeData.of(failure(100).times(5), survivor(101)), LifeData.of(failure(100), failure(100.0001)),
                LifeData.of(between(10, 20), between(20.5, 30)), LifeData.of(between(10, 20), survivor(21)),
                LifeData.of(failedBefore(10), failure(11)), LifeData.of(failure(5), failedBefore(4)),
                LifeData.of(failedBefore(10), survivor(10), failedBefore(20).times(2), survivor(20)),
                LifeData.of(failedBefore(20), survivor(21), failedBefore(30)), LifeData.of(failure(1e-9), failure(1), failure(1e9)),
                LifeData.of(failure(100), failure(200), survivor(300).times(1_000_000)),
                LifeData.of(failure(100), failure(200).times(1_000_000), survivor(300)),
                LifeData.of(between(10, 10.0000001), between(20, 20.0000001), survivor(30)),
                LifeData.of(survivor(0), failure(10), failure(20)));
    }

    @ParameterizedTest
    @MethodSource("withMaximum")
    void whereTheLikelihoodHasAMaximumNoNeighbourIsMoreLikely(LifeData data) {
        for (Family family : Family.values()) {
            LifeFit fit = LifeFit.of(data, family).orElseThrow();
            double found = direct(family, data, fit.location(), fit.spread());
            assertEquals(found, fit.logLikelihood(), 1e-6 * Math.max(1, Math.abs(found)));
            double step = 1e-2 * Math.sqrt(fit.covariance().get(0).get(0));
            for (double by : new double[] {-step, step}) {
                assertTrue(direct(family, data, fit.location() + by, fit.spread()) < found, family + " beside " + fit);
            }
            if (!family.shapeKnown()) {
                double turn = 1e-2 * Math.sqrt(fit.covariance().get(1).get(1));
                for (double by : new double[] {-turn, turn}) {
                    assertTrue(direct(family, data, fit.location(), fit.spread() * Math.exp(by)) < found, family + " beside " + fit);
                }
            }
        }
    }

    @ParameterizedTest
    @MethodSource("withMaximum")
    void everyFitIsBoundedAroundItsEstimate(LifeData data) {
        for (Family family : Family.values()) {
            LifeFit fit = LifeFit.of(data, family).orElseThrow();
            for (Quantity each : List.of(Quantity.scale(), Quantity.shape(), Quantity.life(0.001), Quantity.life(0.1), Quantity.life(0.9),
                    Quantity.survival(15), Quantity.survival(100), Quantity.mean())) {
                for (Bounds.Method method : Bounds.Method.values()) {
                    for (double confidence : new double[] {0.5, 0.9, 0.999}) {
                        Bounds bounds = fit.bounds(each, confidence, method);
                        assertTrue(bounds.lower() <= bounds.estimate() && bounds.estimate() <= bounds.upper(),
                                family + " " + each + " " + method + " " + bounds + " of " + data);
                    }
                }
            }
        }
    }

    /** The log-likelihood by the distributions themselves. */
    private static double direct(Family family, LifeData data, double location, double spread) {
        LifeDistribution life = family.distribution(location, spread);
        double sum = 0;
        for (Observation each : data.observations()) {
            double one = (Math.log(each.from()) - location) / spread;
            double two = (Math.log(each.to()) - location) / spread;
            double log;
            if (each.exact()) {
                log = family.logDensity(one) - Math.log(spread * each.from());
            } else if (each.survived()) {
                log = each.from() == 0 ? 0 : family.logSurvival(one);
            } else if (each.from() == 0) {
                log = family.logFailed(two);
            } else if (each.to() / each.from() < 1.0001) {
                log = family.logDensity((one + two) / 2) + Math.log(two - one);
            } else {
                log = Math.log(life.survival(each.from()) - life.survival(each.to()));
            }
            sum += each.count() * log;
        }
        return sum;
    }

    @Test
    void oneFailureIsEnoughForAnExponentialFit() {
        LifeFit fit = LifeFit.of(LifeData.of(failure(100), survivor(300).times(3)), Family.EXPONENTIAL).orElseThrow();
        near(1000, fit.distribution().mean(), 1e-9);
        assertEquals(1, fit.parameters());
        assertEquals(new Bounds(1, 1, 1), fit.bounds(Quantity.shape(), 0.9, LIKELIHOOD_RATIO));
    }

    /** With β known, t^β is exponential: η^β = sum of t^β / failures, and ln η has the standard error 1/(β √failures). */
    @Test
    void knownShapeLeavesTheScale() {
        LifeFit fit = LifeFit.ofShape(HANDBOOK, Family.WEIBULL, 2).orElseThrow();
        double sum = HANDBOOK.observations().stream().mapToDouble(each -> each.count() * each.from() * each.from()).sum();
        near(Math.sqrt(sum / 10), Math.exp(fit.location()), 1e-12);
        near(1 / (4 * 10.0), fit.covariance().get(0).get(0), 1e-12);
        assertEquals(1, fit.parameters());
        assertEquals(2, fit.shape(), 1e-15);
        Bounds ratio = fit.bounds(Quantity.life(0.1), 0.9, LIKELIHOOD_RATIO);
        for (double eta : new double[] {ratio.lower(), ratio.upper()}) {
            double held = direct(Family.WEIBULL, HANDBOOK, Math.log(eta / Math.sqrt(-Math.log(0.9))), 0.5);
            assertEquals(2.705543454, 2 * (fit.logLikelihood() - held), 1e-7);
        }
        Bounds mean = fit.bounds(Quantity.mean(), 0.9, LIKELIHOOD_RATIO);
        near(ratio.lower() / ratio.estimate(), mean.lower() / mean.estimate(), 1e-9);
        Bounds wald = fit.bounds(Quantity.scale(), 0.9, FISHER);
        near(Math.exp(1.644853627 / Math.sqrt(40)), wald.upper() / wald.estimate(), 1e-8);
        assertEquals(Outcome.Reason.NO_FAILURE,
                ((Outcome.NotFound<LifeFit>) LifeFit.ofShape(LifeData.of(survivor(3)), Family.WEIBULL, 2)).reason());
        near(1, LifeFit.ofShape(LifeData.of(failure(100)), Family.LOGNORMAL, 0.5).orElseThrow().location() / Math.log(100), 1e-12);
    }

    @ParameterizedTest
    @EnumSource(Bounds.Method.class)
    void survivalBoundsInvertLifeBoundsOfTheLikelihoodRatio(Bounds.Method method) {
        LifeFit fit = weibull(HANDBOOK);
        double life = fit.lower(Quantity.life(0.1), 0.95, method);
        double survival = fit.lower(Quantity.survival(life), 0.95, method);
        // Both ask which distributions with R(life) = 0.9 are just likely enough; Wald bounds agree to first order only.
        near(0.9, survival, method == LIKELIHOOD_RATIO ? 1e-8 : 0.1);
    }

    @Test
    void oneSidedBoundAtHalfIsTheEstimateAndBelowHalfBeyondIt() {
        LifeFit fit = weibull(HANDBOOK);
        for (Bounds.Method method : Bounds.Method.values()) {
            double estimate = fit.distribution().life(0.1);
            near(estimate, fit.lower(Quantity.life(0.1), 0.5, method), 1e-12);
            near(fit.upper(Quantity.life(0.1), 0.8, method), fit.lower(Quantity.life(0.1), 0.2, method), 1e-9);
        }
    }

    @Test
    void whatTheDataLeaveOpenIsOpen() {
        LifeFit fit = weibull(LifeData.of(failedBefore(10), survivor(10), failedBefore(20).times(2), survivor(20)));
        Bounds life = fit.bounds(Quantity.life(0.01), 0.95, LIKELIHOOD_RATIO);
        assertEquals(0, life.lower());
        assertTrue(Double.isFinite(life.upper()));
        Bounds shape = fit.bounds(Quantity.shape(), 0.95, LIKELIHOOD_RATIO);
        assertTrue(shape.lower() < 1e-10, shape.toString());
    }

    @ParameterizedTest
    @CsvSource({"0", "1", "-0.1", "NaN"})
    void confidencesLieBetweenNoneAndCertainty(double confidence) {
        LifeFit fit = weibull(HANDBOOK);
        assertThrows(IllegalArgumentException.class, () -> fit.bounds(Quantity.mean(), confidence, FISHER));
        assertThrows(IllegalArgumentException.class, () -> fit.lower(Quantity.mean(), confidence, LIKELIHOOD_RATIO));
        assertThrows(IllegalArgumentException.class, () -> fit.upper(Quantity.mean(), confidence, LIKELIHOOD_RATIO));
    }
}
