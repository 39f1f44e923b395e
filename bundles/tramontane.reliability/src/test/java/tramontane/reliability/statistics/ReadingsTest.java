package tramontane.reliability.statistics;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.Size;
import org.junit.jupiter.api.Test;
import tramontane.reliability.statistics.FailureCriteria.Criterion;
import tramontane.reliability.statistics.Readings.Reading;
import tramontane.reliability.statistics.Readings.Verdict;

/** Readings of a unit and what they make of it. */
class ReadingsTest {

    private static Verdict judge(Reading... readings) {
        return Readings.of(readings).judge(FailureCriteria.DEFAULT);
    }

    private static Reading full(double time, double speed, double current, double level) {
        return Reading.running(time).withSpeed(speed).withCurrent(current).withLevel(level);
    }

    @Test
    void survivesItsLastReading() {
        assertEquals(new Verdict(Observation.survivor(3000), List.of()),
            judge(full(0, 300, 0.2, 40), full(1000, 290, 0.21, 41), full(3000, 256, 0.229, 42.9)));
        assertEquals(Observation.survivor(500), judge(Reading.running(500)).observation());
    }

    /** A change of just the limit is no failure, whichever way the numbers round. */
    @Test
    void theLimitItselfIsStillGood() {
        assertTrue(judge(full(0, 100, 0.2, 40), full(100, 85, 0.23, 43)).criteria().isEmpty());
        assertTrue(judge(full(0, 1, 1, 40.1), full(100, 0.85, 1.15, 43.1)).criteria().isEmpty());
        assertEquals(List.of(Criterion.SPEED), judge(full(0, 100, 0.2, 40), full(100, 84.99, 0.23, 43)).criteria());
    }

    @Test
    void failsBetweenTheLastGoodAndTheFirstBad() {
        Verdict verdict = judge(full(0, 300, 0.2, 40), full(1000, 300, 0.21, 41), full(2000, 250, 0.22, 42), full(3000, 300, 0.2, 40));
        assertEquals(new Verdict(Observation.between(1000, 2000), List.of(Criterion.SPEED)), verdict);
        assertEquals(List.of(Criterion.CURRENT), judge(full(0, 300, 0.2, 40), full(10, 300, 0.24, 40)).criteria());
        assertEquals(List.of(Criterion.LEVEL), judge(full(0, 300, 0.2, 40), full(10, 300, 0.2, 43.5)).criteria());
    }

    @Test
    void severalAtTheSameReading() {
        Verdict verdict = judge(full(0, 300, 0.2, 40), full(1000, 300, 0.2, 40), full(2000, 200, 0.3, 40), Reading.stopped(3000));
        assertEquals(new Verdict(Observation.between(1000, 2000), List.of(Criterion.SPEED, Criterion.CURRENT)), verdict);
    }

    @Test
    void theFirstToComeDecides() {
        Verdict verdict = judge(full(0, 300, 0.2, 40), full(1000, 300, 0.2, 44), full(2000, 200, 0.2, 44));
        assertEquals(new Verdict(Observation.between(0, 1000), List.of(Criterion.LEVEL)), verdict);
    }

    @Test
    void failsToStart() {
        assertEquals(new Verdict(Observation.between(10, 20), List.of(Criterion.NOT_RUNNING)),
            judge(Reading.running(10), Reading.stopped(20)));
        Verdict early = judge(Reading.stopped(20), Reading.running(30));
        assertEquals(new Verdict(Observation.failedBefore(20), List.of(Criterion.NOT_RUNNING)), early);
        assertEquals("the unit did not run at time 0, so it has no life to observe",
            assertThrows(IllegalArgumentException.class, () -> judge(Reading.stopped(0), Reading.stopped(10))).getMessage());
    }

    /** Sound was not measured at 2000: it may have risen at any time since 1000. */
    @Test
    void whatWasNotMeasuredMakesTheIntervalLonger() {
        Verdict verdict = judge(full(0, 300, 0.2, 40), full(1000, 300, 0.2, 40),
            Reading.running(2000).withSpeed(300), full(3000, 300, 0.2, 47));
        assertEquals(new Verdict(Observation.between(1000, 3000), List.of(Criterion.LEVEL)), verdict);
        Verdict both = judge(full(0, 300, 0.2, 40), Reading.running(2000).withSpeed(300), full(3000, 200, 0.2, 47));
        assertEquals(new Verdict(Observation.between(0, 3000), List.of(Criterion.SPEED, Criterion.LEVEL)), both);
    }

    @Test
    void eachQuantityHasItsOwnReference() {
        Verdict verdict = judge(Reading.running(0).withSpeed(300), full(100, 300, 0.2, 40), Reading.running(200).withCurrent(0.25));
        assertEquals(new Verdict(Observation.between(100, 200), List.of(Criterion.CURRENT)), verdict);
    }

    @Property(tries = 200)
    void widerLimitsNeverFailEarlier(@ForAll @Size(min = 1, max = 12) List<@DoubleRange(min = 100, max = 300) Double> speeds,
        @ForAll @DoubleRange(min = 0.05, max = 0.5) double limit) {
        List<Reading> read = new ArrayList<>();
        speeds.forEach(speed -> read.add(Reading.running(100.0 * read.size()).withSpeed(speed)));
        Observation strict = new Readings(read).judge(new FailureCriteria(limit, 1, 1)).observation();
        Observation wide = new Readings(read).judge(new FailureCriteria(limit + 0.1, 1, 1)).observation();
        assertTrue(wide.to() >= strict.to());
        assertTrue(strict.survived() || strict.to() - strict.from() == 100);
    }

    @Test
    void refusesInSentences() {
        assertEquals("readings are at rising times, got 5.0 after 5.0",
            assertThrows(IllegalArgumentException.class, () -> Readings.of(Reading.running(5), Reading.running(5))).getMessage());
        assertThrows(IllegalArgumentException.class, Readings::of);
        assertThrows(IllegalArgumentException.class, () -> Reading.running(-1));
        assertThrows(IllegalArgumentException.class, () -> Reading.running(1).withSpeed(0));
        assertThrows(IllegalArgumentException.class, () -> new FailureCriteria(1, 0.1, 3));
    }
}
