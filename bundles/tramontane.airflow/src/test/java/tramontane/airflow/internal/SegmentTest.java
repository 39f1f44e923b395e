package tramontane.airflow.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import org.junit.jupiter.api.Test;
import tramontane.analysis.FlowLaw;

class SegmentTest {

    private static BankLaw law(double[] flow, double[] pressure, int columns) {
        return BankLaw.of(Optional.of(MoverCharacteristic.of(Cases.part(Cases.curve(Cases.SPEED, 1.2, flow, pressure,
                new double[0])), Cases.SPEED)), columns, 1, Map.of());
    }

    @Test
    void aDipGivesThreeStretchesThatTurnAtItsEnds() {
        BankLaw law = law(new double[] {0, 0.01, 0.015, 0.025, 0.04, 0.05}, new double[] {80, 60, 50, 60, 40, 0}, 2);
        List<Segment> segments = Segment.of(law, 1.2, 1.8e-5);
        assertEquals(3, segments.size());
        assertEquals(0.03, segments.get(0).to(), 1e-12);
        assertEquals(0.05, segments.get(1).to(), 1e-12);
        assertEquals(List.of(true, false, true), segments.stream().map(Segment::falling).toList());
    }

    /** The curve goes on rising beyond its last point, until its square term turns it. */
    @Test
    void aCurveThatRisesAtItsEndFallsBehindIt() {
        List<Segment> segments = Segment.of(law(new double[] {0, 0.01, 0.02}, new double[] {50, 40, 60}, 1), 1.2, 1.8e-5);
        assertEquals(List.of(true, false, true), segments.stream().map(Segment::falling).toList());
        assertTrue(segments.get(1).to() > 0.02);
    }

    @Property(tries = 200)
    void theCurveKeepsItsSenseOnEachStretch(@ForAll long seed) {
        Random random = new Random(seed);
        int n = 3 + random.nextInt(6);
        double[] flow = new double[n];
        double[] pressure = new double[n];
        for (int i = 0; i < n; i++) {
            flow[i] = i == 0 ? random.nextInt(2) * 0.002 : flow[i - 1] + 0.001 + 0.01 * random.nextDouble();
            pressure[i] = 1 + 80 * random.nextDouble();
        }
        BankLaw law = law(flow, pressure, 1 + random.nextInt(3));
        List<Segment> segments = Segment.of(law, 1.2, 1.8e-5);
        FlowLaw.Drop drop = new FlowLaw.Drop();
        double largest = flow[n - 1] * law.width();
        for (int i = 0; i < segments.size(); i++) {
            Segment segment = segments.get(i);
            assertEquals(i % 2 == 0, segment.falling());
            assertEquals(i == 0 ? Double.NEGATIVE_INFINITY : segments.get(i - 1).to(), segment.from());
            double from = Math.max(segment.from(), -20 * largest);
            double to = Math.min(segment.to(), 20 * largest);
            for (int k = 1; k < 40; k++) {
                law.at(from + (to - from) * k / 40, 1.2, 1.8e-5, drop);
                assertTrue(segment.falling() ? drop.slope() >= 0 : drop.slope() <= 0);
            }
        }
        assertTrue(segments.getLast().falling());
    }
}
