package tramontane.physics.control;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Assume;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.DoubleRange;

/** Nyquist, Routh and time must say the same of one loop. */
class LoopPropertiesTest {

    @Provide
    Arbitrary<List<Double>> lags() {
        return Arbitraries.doubles().between(-0.5, 2).map(x -> Math.pow(10, x)).list().ofMinSize(1).ofMaxSize(5);
    }

    @Provide
    Arbitrary<List<Double>> zeros() {
        return Arbitraries.doubles().between(-60, 60).list().ofMaxSize(2);
    }

    /** Lags as states, further ones in the loop, and leads or their opposites above. */
    @Property(tries = 600)
    void nyquistAgreesWithRouth(@ForAll("lags") List<Double> states, @ForAll("zeros") List<Double> zeros, @ForAll("lags") List<Double> lags,
            @ForAll @DoubleRange(min = -1, max = 3) double exponent) {
        Assume.that(zeros.size() < states.size());
        double gain = Math.pow(10, exponent);
        double[] denominator = {1};
        for (double tau : states) {
            denominator = Polynomials.times(denominator, new double[] {tau, 1});
        }
        double[] numerator = {1};
        for (double tau : zeros) {
            numerator = Polynomials.times(numerator, new double[] {tau, 1});
        }
        double[] all = denominator;
        for (double tau : lags) {
            all = Polynomials.times(all, new double[] {tau, 1});
        }
        ControlLoop loop = new ControlLoop(Polynomials.companion(Polynomials.scaled(numerator, -1), denominator), gain, lags, 0);
        Margins margins = loop.margins();
        // on the border both are right
        Assume.that(Math.abs(margins.gain() - 1) > 1e-5);
        boolean stable = RouthHurwitz.stable(Polynomials.sum(all, Polynomials.scaled(numerator, gain)));
        assertEquals(stable, loop.closedLoopStable(), () -> margins.toString());
        if (margins.gain() > 1) {
            assertTrue(stable);
        }
    }

    /** More gain, as much less room; more dead time, never more room than before in phase. */
    @Property(tries = 200)
    void marginsScale(@ForAll("lags") List<Double> lags, @ForAll @DoubleRange(min = 0.1, max = 50) double gain,
            @ForAll @DoubleRange(min = 0.1, max = 20) double deadTime) {
        StateSpace plant = ControlLoopTest.chain(lags.stream().mapToDouble(x -> x).toArray());
        Margins margins = new ControlLoop(plant, gain, List.of(3.0), deadTime).margins();
        Margins twice = new ControlLoop(plant, 2 * gain, List.of(3.0), deadTime).margins();
        assertEquals(margins.gain(), 2 * twice.gain(), 1e-8 * margins.gain());
        assertEquals(margins.phaseCrossover(), twice.phaseCrossover(), 1e-7 * margins.phaseCrossover());
        Margins quicker = new ControlLoop(plant, gain, List.of(3.0), 0).margins();
        if (gain > 1) {
            assertEquals(quicker.phase() - quicker.gainCrossover() * deadTime, margins.phase(), 1e-8);
        }
    }

    /** A loop with less than 0.9 of room swings on, with more than 1.3 it comes to rest. */
    @Property(tries = 60)
    void timeAgreesWithTheGainMargin(@ForAll("lags") List<Double> lags, @ForAll @DoubleRange(min = 0.3, max = 2.5) double room,
            @ForAll @DoubleRange(min = 0, max = 10) double deadTime, @ForAll @DoubleRange(min = 0.5, max = 30) double sensorLag,
            @ForAll @DoubleRange(min = 0.5, max = 30) double moverLag) {
        Assume.that(room < 0.9 || room > 1.3);
        double[] taus = lags.stream().mapToDouble(x -> x).toArray();
        StateSpace linear = ControlLoopTest.chain(taus);
        List<Double> others = List.of(sensorLag, moverLag);
        Margins one = new ControlLoop(linear, 1, others, deadTime).margins();
        Assume.that(one.gain() < 1e3);
        double gain = one.gain() / room;
        // setting and temperatures around zero; a law of 0.5 per kelvin, cut at ±1
        double[] start = new double[taus.length];
        start[taus.length - 1] = 0.6;
        double period = 2 * Math.PI / one.phaseCrossover();
        Trajectory path = LoopSimulation.run(new Chain(taus, 2 * gain), t -> Math.max(-1, Math.min(1, 0.5 * t)),
                new LoopSimulation.Timing(sensorLag, 0, deadTime, moverLag, 0), start, 0.4, 0, 60 * period, 1e-4, () -> false);
        assertEquals(Trajectory.End.COMPLETE, path.end());
        assertEquals(room > 1, new ControlLoop(linear, gain, others, deadTime).closedLoopStable());
        Trajectory.Swing swing = path.swing(40 * period);
        assertEquals(room > 1, path.decays(), () -> "room " + room + ", swing " + swing + ", one " + one);
        if (room < 0.9 && room > 0.8) {
            // hardly cut, so it swings at the frequency of the border
            assertEquals(period, swing.period(), 0.1 * period);
        }
    }

    /** Lags in a row, static gain negative. */
    private record Chain(double[] taus, double gain) implements LoopSimulation.Plant {
        @Override
        public int size() {
            return taus.length;
        }

        @Override
        public void rates(double setting, double[] state, double[] rates) {
            for (int i = 0; i < taus.length; i++) {
                rates[i] = ((i == 0 ? -gain * setting : state[i - 1]) - state[i]) / taus[i];
            }
        }

        @Override
        public double sensed(double setting, double[] state) {
            return state[taus.length - 1];
        }
    }
}
