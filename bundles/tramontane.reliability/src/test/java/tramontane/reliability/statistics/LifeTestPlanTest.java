package tramontane.reliability.statistics;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalInt;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import tramontane.reliability.statistics.ExactBounds.Ending;
import tramontane.reliability.statistics.LifeTestPlan.FailedUnits;
import tramontane.reliability.statistics.Weibayes.Convention;

/** Plans of life tests, demonstrations and Weibayes against values computed apart with SciPy (chi2, binom) and R (qchisq, pbinom). */
class LifeTestPlanTest {

    @ParameterizedTest
    @CsvSource({"0.90, 0.90, 21.8543, 22", "0.90, 0.60, 8.6967, 9", "0.95, 0.90, 44.8906, 45", "0.99, 0.90, 229.105, 230",
        "0.90, 0.95, 28.4332, 29"})
    void unitsWithoutFailures(double reliability, double confidence, double exact, int units) {
        assertEquals(exact, Demonstration.units(reliability, confidence), exact > 100 ? 5.1e-4 : 5.1e-5);
        assertEquals(units, Demonstration.units(reliability, confidence, 0));
    }

    @ParameterizedTest
    @CsvSource({"0.90, 1, 38", "0.95, 1, 77", "0.90, 2, 52", "0.95, 2, 105"})
    void unitsWithFailures(double reliability, int failures, int units) {
        assertEquals(units, Demonstration.units(reliability, 0.9, failures));
        assertTrue(Demonstration.reliability(units, failures, 0.9) >= reliability);
        assertTrue(Demonstration.reliability(units - 1, failures, 0.9) < reliability);
        assertTrue(Demonstration.confidence(units, failures, reliability) >= 0.9);
    }

    /** R: pbinom(1, 38, 0.02), pbinom(0, 22, 0.1). */
    @Test
    void passProbabilityOfADemonstration() {
        assertEquals(Math.pow(0.98, 38) + 38 * 0.02 * Math.pow(0.98, 37), Demonstration.passProbability(38, 1, 0.98), 1e-12);
        assertEquals(Math.pow(0.9, 22), Demonstration.passProbability(22, 0, 0.9), 1e-14);
    }

    @ParameterizedTest
    @CsvSource({"3, 30, 0.90, 60000, 0, 53987.112, 15996.181", "3, 22, 0.90, 60000, 0, 59867.293, 17738.458",
        "1.1, 30, 0.90, 60000, 0, 44985.793, 13329.123",
        "3, 50, 0.90, 60000, 0, 45534.494, 13491.702", "2, 30, 0.60, 50000, 0, 26920.745, 7976.517", "3, 40, 0.90, 70000, 1, , 20193.786",
        "3, 40, 0.90, 70000, 0, 57225.638, 16955.745"})
    void times(double shape, int units, double confidence, double life, int failures, Double plain, double accelerated) {
        LifeTestPlan plan = LifeTestPlan.toShow(life, confidence, shape).withFailures(failures);
        if (plain != null) {
            assertEquals(plain, plan.time(units), 1e-6 * accelerated);
        }
        LifeTestPlan fast = plan.withAcceleration(3.375);
        double time = fast.time(units);
        assertEquals(accelerated, time, 1e-6 * accelerated);
        assertEquals(units, fast.units(time));
        assertEquals(units + 1, fast.units(time * 0.9999));
        assertEquals(OptionalInt.of(failures), fast.allowedFailures(units, time));
        assertEquals(3.375, plan.acceleration(units, time), 1e-9);
        assertEquals(life, fast.shownLife(units, time), 1e-6);
        assertEquals(confidence, fast.shownConfidence(units, time), 1e-9);
        assertEquals(1 - confidence, fast.passProbability(units, time, 1), 1e-9);
    }

    /** By hand: with all of 30 alive at R^(x^-3), the probability to pass is (0.1)^(x^-3). */
    @Test
    void passProbabilityByTheTrueLife() {
        LifeTestPlan plan = LifeTestPlan.toShow(60000, 0.9, 3);
        for (FailedUnits done : FailedUnits.values()) {
            LifeTestPlan each = plan.withFailedUnits(done);
            double time = each.time(30);
            assertEquals(53987.112, time, 1e-6 * time);
            assertEquals(Math.pow(0.1, 1.0 / 8), each.passProbability(30, time, 2), 1e-9);
            assertEquals(0.9, each.passProbability(30, time, each.ratioToPass(30, time, 0.9)), 1e-9);
            assertEquals(Math.cbrt(Math.log(0.1) / Math.log(0.9)), each.ratioToPass(30, time, 0.9), 1e-9);
        }
    }

    /** Removed units: at the planned time the share that failed is the upper bound of Clopper and Pearson. */
    @Test
    void removedUnitsFollowBinomial() {
        LifeTestPlan plan = LifeTestPlan.toShow(70000, 0.9, 3).withFailures(1).withFailedUnits(FailedUnits.REMOVED);
        double time = plan.time(40);
        assertEquals(ExactBounds.upperShare(1, 40, 0.9), 1 - plan.target().survival(time), 1e-12);
        assertEquals(Demonstration.units(0.9, 0.9, 1), plan.units(70000));
        assertEquals(OptionalInt.of(1), plan.allowedFailures(40, time));
        assertEquals(OptionalInt.empty(), plan.allowedFailures(3, 70000));
        assertEquals("more units are needed than the 1 that may fail, got 1",
            assertThrows(IllegalArgumentException.class, () -> plan.time(1)).getMessage());
    }

    /** Ageless units together run the factor of the e-Handbook. */
    @Test
    void shapeOneIsTheExponentialTest() {
        LifeTestPlan plan = new LifeTestPlan(1000, -Math.expm1(-1), 0.8, 1, 2, 1, FailedUnits.REPAIRED);
        assertEquals(4279.030, 7 * plan.time(7), 1e-3);
    }

    @Test
    void weibayesOfATestWithoutFailures() {
        Weibayes test = Weibayes.of(LifeData.of(Observation.survivor(3000).times(30)), 3);
        assertEquals(9321.698, test.scale(Convention.MOST_LIKELY), 1e-3);
        assertEquals(10533.027, test.scale(Convention.MEDIAN), 1e-3);
        assertEquals(7059.216, test.lowerScale(Ending.TIME, 0.9), 1e-3);
        assertEquals(3334.129, test.demonstratedLife(0.1, 0.9), 1e-3);
        assertEquals(Double.POSITIVE_INFINITY, test.upperScale(Ending.TIME, 0.9));
    }

    /** By hand: Σ t² = 1² + 2² + 2·5² = 55, two failures; R: sqrt(55 / (qchisq(0.9, 6) / 2)) = 3.21462886. */
    @Test
    void weibayesOfATestWithFailures() {
        LifeData data = LifeData.of(Observation.failure(1), Observation.failure(2), Observation.survivor(5).times(2));
        Weibayes test = Weibayes.of(data, 2);
        assertEquals(Math.sqrt(27.5), test.scale(Convention.MOST_LIKELY), 1e-12);
        assertEquals(3.21462886, test.lowerScale(Ending.TIME, 0.9), 1e-6);
        assertEquals(3.21462886 * Math.sqrt(-Math.log(0.9)), test.demonstratedLife(0.1, 0.9), 1e-6);
        Interval both = test.scale(Ending.FAILURE, 0.8);
        assertEquals(Math.sqrt(ExactBounds.lowerMean(55, 2, Ending.FAILURE, 0.9)), both.lower(), 1e-9);
        assertEquals(Math.sqrt(ExactBounds.upperMean(55, 2, Ending.FAILURE, 0.9)), both.upper(), 1e-9);
    }

    @Test
    void weibayesIsCautiousWhereTheMomentIsUnknown() {
        LifeData looked = LifeData.of(Observation.between(400, 500), Observation.failedBefore(100), Observation.survivor(1000).times(8));
        assertThrows(IllegalArgumentException.class, () -> Weibayes.of(looked, 2));
        Weibayes cautious = Weibayes.cautious(looked, 2);
        assertEquals(2, cautious.failures());
        assertEquals(Math.sqrt(160000 + 8e6), cautious.exposure(), 1e-9);
        assertThrows(IllegalArgumentException.class, () -> Weibayes.cautious(LifeData.of(Observation.failedBefore(10)), 2));
        assertEquals(60000, Weibayes.of(LifeData.of(Observation.survivor(60000)), 90).exposure(), 1e-9);
    }

    /** A test planned to show a life and passed shows that life. */
    @Property(tries = 200)
    void plansAndDemonstrationsAgree(@ForAll @IntRange(min = 1, max = 200) int units, @ForAll @DoubleRange(min = 0.5, max = 6) double shape,
        @ForAll @DoubleRange(min = 0.5, max = 0.99) double confidence) {
        double time = LifeTestPlan.toShow(60000, confidence, shape).time(units);
        Weibayes test = Weibayes.of(LifeData.of(Observation.survivor(time).times(units)), shape);
        assertEquals(60000, test.demonstratedLife(0.1, confidence), 1e-6);
    }

    @Property(tries = 300)
    void whatLengthensATest(@ForAll @IntRange(min = 12, max = 400) int units, @ForAll @IntRange(min = 0, max = 10) int failures,
        @ForAll @DoubleRange(min = 0.5, max = 5) double shape, @ForAll @DoubleRange(min = 0.1, max = 0.94) double confidence,
            @ForAll FailedUnits done) {
        LifeTestPlan plan = LifeTestPlan.toShow(60000, confidence, shape).withFailures(failures).withFailedUnits(done);
        double time = plan.time(units);
        assertTrue(plan.time(units + 1) < time);
        assertTrue(plan.withFailures(failures + 1).time(units) > time);
        assertTrue(plan.withAcceleration(1.1).time(units) < time);
        LifeTestPlan surer = new LifeTestPlan(60000, 0.1, confidence + 0.05, shape, failures, 1, done);
        assertTrue(surer.time(units) > time);
        LifeTestPlan steeper = new LifeTestPlan(60000, 0.1, confidence, shape + 1, failures, 1, done);
        assertTrue(time < 60000 ? steeper.time(units) > time : steeper.time(units) <= time);
        assertTrue(plan.shownLife(units, 1.1 * time) > plan.shownLife(units, time));
        assertTrue(plan.passProbability(units, time, 1.2) > plan.passProbability(units, time, 1));
        assertEquals(units, plan.units(time));
        assertEquals(OptionalInt.of(failures), plan.allowedFailures(units, time));
        assertEquals(confidence, plan.shownConfidence(units, time), 1e-9);
    }

    @Property(tries = 200)
    void demonstratedLifeGrowsWithTimeOnTest(@ForAll List<@DoubleRange(min = 1, max = 1000) Double> times,
        @ForAll @DoubleRange(min = 0.5, max = 6) double shape) {
        List<Observation> seen = new ArrayList<>(times.stream().map(Observation::survivor).toList());
        seen.add(Observation.failure(500));
        double before = Weibayes.of(new LifeData(seen), shape).demonstratedLife(0.1, 0.9);
        seen.add(Observation.survivor(300));
        assertTrue(Weibayes.of(new LifeData(seen), shape).demonstratedLife(0.1, 0.9) > before);
        seen.set(seen.size() - 1, Observation.failure(300));
        assertTrue(Weibayes.of(new LifeData(seen), shape).demonstratedLife(0.1, 0.9)
            < Weibayes.of(new LifeData(seen), shape).demonstratedLife(0.1, 0.8));
    }

    /** Repaired and removed differ with failures only; by how much stands here so that nobody is surprised. */
    @ParameterizedTest
    @EnumSource(FailedUnits.class)
    void repairedAndRemovedUnitsDifferLittle(FailedUnits done) {
        LifeTestPlan plan = LifeTestPlan.toShow(70000, 0.9, 3).withFailures(1).withFailedUnits(done);
        assertEquals(done == FailedUnits.REPAIRED ? 68154.0278 : 68444.5916, plan.time(40), 0.01);
    }

    /**
     * The usual formula where failed units are taken out: near the confidence asked for, and on the unsafe side. R: 1 - pbinom(1, 40, p).
     */
    @Test
    void theUsualFormulaIsALittleShortForRemovedUnits() {
        LifeTestPlan plan = LifeTestPlan.toShow(70000, 0.9, 3).withFailures(1);
        double shown = plan.withFailedUnits(FailedUnits.REMOVED).shownConfidence(40, plan.time(40));
        assertEquals(0.89600373151, shown, 1e-8);
        assertTrue(shown < 0.9);
    }

    @Test
    void refusesInSentences() {
        LifeTestPlan plan = LifeTestPlan.toShow(60000, 0.9, 2);
        assertEquals("at least 1 unit is needed, got 0", assertThrows(IllegalArgumentException.class, () -> plan.time(0)).getMessage());
        assertThrows(IllegalArgumentException.class, () -> plan.units(0));
        assertThrows(IllegalArgumentException.class, () -> plan.units(1e-3));
        assertThrows(IllegalArgumentException.class, () -> plan.withAcceleration(0));
        assertThrows(IllegalArgumentException.class, () -> plan.withFailures(-1));
        assertThrows(IllegalArgumentException.class, () -> LifeTestPlan.toShow(60000, 1, 2));
        assertThrows(IllegalArgumentException.class, () -> Demonstration.units(1, 0.9));
        assertThrows(IllegalArgumentException.class, () -> Demonstration.passProbability(0, 0, 0.9));
    }
}
