package tramontane.reliability.system;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;

import tramontane.reliability.statistics.Exponential;
import tramontane.reliability.statistics.Weibull;

class SystemPropertiesTest {

    @Property(tries = 60)
    void survivalFallsAndMoreUnitsHelp(@ForAll @IntRange(min = 1, max = 5) int needed, @ForAll @IntRange(min = 0, max = 4) int more,
            @ForAll @DoubleRange(min = 0.5, max = 6) double shape) {
        Weibull life = new Weibull(1, shape);
        List<SystemSurvival.Point> points = SystemSurvival.of(needed, needed + more, life).course(2, 20);
        List<SystemSurvival.Point> oneMore = SystemSurvival.of(needed, needed + more + 1, life).course(2, 20);
        List<SystemSurvival.Point> strict = SystemSurvival.of(needed + 1, needed + more + 1, life).course(2, 20);
        for (int i = 0; i < points.size(); i++) {
            assertTrue(i == 0 || points.get(i).survival() <= points.get(i - 1).survival());
            assertTrue(i == 0 || points.get(i).failed() >= points.get(i - 1).failed());
            assertTrue(oneMore.get(i).survival() >= points.get(i).survival() - 1e-9);
            assertTrue(strict.get(i).survival() <= oneMore.get(i).survival() + 1e-9);
        }
    }

    @Property(tries = 60)
    void ageingFasterNeverHelps(@ForAll @IntRange(min = 1, max = 3) int needed, @ForAll @IntRange(min = 1, max = 3) int more,
            @ForAll @DoubleRange(min = 0.5, max = 5) double shape, @ForAll @DoubleRange(min = 1, max = 2.5) double ageing,
            @ForAll @DoubleRange(min = 1, max = 1.5) double worse) {
        List<SystemSurvival.Point> plain = Sharing.needed(needed, needed + more, shape, 1).course(1.5, 15);
        List<SystemSurvival.Point> fast = Sharing.needed(needed, needed + more, shape, ageing).course(1.5, 15);
        List<SystemSurvival.Point> faster = Sharing.needed(needed, needed + more, shape, ageing * worse).course(1.5, 15);
        for (int i = 0; i < plain.size(); i++) {
            assertTrue(fast.get(i).failed() >= plain.get(i).failed() * (1 - 1e-5) - 1e-8, plain.get(i) + " " + fast.get(i));
            assertTrue(faster.get(i).failed() >= fast.get(i).failed() * (1 - 1e-5) - 1e-5, fast.get(i) + " " + faster.get(i));
        }
    }

    /** Lives with a rising failure rate survive their mean with at least 1/e (R. E. Barlow, F. Proschan, 1965); so do such systems. */
    @Property(tries = 40)
    void survivesItsMeanWithAtLeastOneOverE(@ForAll @IntRange(min = 1, max = 4) int needed, @ForAll @IntRange(min = 0, max = 3) int more,
            @ForAll @DoubleRange(min = 1, max = 5) double shape) {
        SystemSurvival system = SystemSurvival.of(needed, needed + more, new Weibull(1, shape));
        assertTrue(system.survival(system.mean()) >= Math.exp(-1) - 1e-7);
    }

    @Property(tries = 100)
    void fasterRepairNeverHurts(@ForAll @IntRange(min = 1, max = 4) int needed, @ForAll @IntRange(min = 0, max = 4) int more,
            @ForAll @DoubleRange(min = 1, max = 1000) double time, @ForAll @DoubleRange(min = 1, max = 10) double faster) {
        FailureGraph graph = FailureGraph.needed(needed, needed + more, failed -> 1 + 0.1 * failed);
        for (int crews : new int[] {1, 2, Repair.EACH}) {
            Repair slow = Repair.of(graph, List.of(new Exponential(1e4)), time, crews);
            Repair fast = Repair.of(graph, List.of(new Exponential(1e4)), time / faster, crews);
            assertTrue(fast.unavailability() <= slow.unavailability() * (1 + 1e-12));
            assertTrue(fast.mean() >= slow.mean() * (1 - 1e-12));
            assertTrue(fast.failed(1e4) <= slow.failed(1e4) * (1 + 1e-9));
        }
    }
}
