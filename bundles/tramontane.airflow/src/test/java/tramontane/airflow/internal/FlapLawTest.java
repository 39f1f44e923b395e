package tramontane.airflow.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;
import tramontane.analysis.FlowLaw;

class FlapLawTest {

    private final FlowLaw.Drop drop = new FlowLaw.Drop();

    private double drop(FlapLaw law, double flow) {
        law.at(flow, 1.2, 1.8e-5, drop);
        return drop.pressure();
    }

    @Test
    void forwardsItAsksForItsLossAndItsLiftingPressure() {
        FlapLaw law = FlapLaw.of(0.01, 1.5, 0.01, 2.7, 3);
        double expected = 1.5 * 0.6 * 2 * 2 + 3; // 2 m/s
        assertEquals(expected, drop(law, 0.02), 1e-4 * expected);
    }

    @Test
    void backwardsItIsItsLeak() {
        FlapLaw law = FlapLaw.of(0.01, 1.5, 0.01, 2.7, 3);
        assertEquals(-2.7 * 0.6 * 50 * 50, drop(law, -5e-3), 1e-6 * 4050);
        assertTrue(-drop(law, -5e-4) > 1000 * 1.5 * 0.6 * 0.05 * 0.05);
    }

    @Test
    void refusesALeakAsLargeAsItself() {
        assertThrows(IllegalArgumentException.class, () -> FlapLaw.of(0.01, 1.5, 1, 2.7, 3));
        assertThrows(IllegalArgumentException.class, () -> FlapLaw.of(0.01, 1.5, 0.1, 2.7, 0));
    }

    @Property
    void risesSmoothlyThroughRest(@ForAll @DoubleRange(min = 0.01, max = 0.5) double leakShare,
            @ForAll @DoubleRange(min = 0.01, max = 50) double lifting,
            @ForAll @DoubleRange(min = -1, max = 1) double exponentAndSign) {
        FlapLaw law = FlapLaw.of(0.004, 1.2, leakShare, 2.7, lifting);
        double flow = Math.signum(exponentAndSign) * Math.pow(10, -10 + 9 * Math.abs(exponentAndSign));
        double low = drop(law, flow * 0.999);
        double high = drop(law, flow * 1.001);
        assertTrue(flow > 0 ? high > low : flow == 0 || high < low);
        law.at(flow, 1.2, 1.8e-5, drop);
        double slope = drop.slope();
        assertTrue(slope > 0);
        if (flow != 0) {
            assertEquals((high - low) / (0.002 * flow), slope, 1e-5 * slope + 1e-10 * Math.abs(high / flow));
        }
        law.at(-1e-300, 1.2, 1.8e-5, drop);
        double before = drop.slope();
        law.at(1e-300, 1.2, 1.8e-5, drop);
        assertEquals(before, drop.slope(), 1e-9 * before);
    }
}
