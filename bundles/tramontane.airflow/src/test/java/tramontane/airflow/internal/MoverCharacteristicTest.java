package tramontane.airflow.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import net.jqwik.api.Assume;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.Scale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tramontane.analysis.FlowLaw;
import tramontane.model.AirMover;
import tramontane.model.MoverCurve;
import tramontane.model.Quantities;
import tramontane.model.Value;

class MoverCharacteristicTest {

    private static double rise(FlowLaw law, double flow, double density) {
        FlowLaw.Drop drop = new FlowLaw.Drop();
        law.at(flow, density, 1.8e-5, drop);
        return -drop.pressure();
    }

    private static double slope(FlowLaw law, double flow) {
        FlowLaw.Drop drop = new FlowLaw.Drop();
        law.at(flow, 1.2, 1.8e-5, drop);
        return -drop.slope();
    }

    @Test
    void goesThroughTheMeasuredPoints() {
        MoverCharacteristic mover = MoverCharacteristic.of(Cases.mover(), Cases.SPEED);
        for (int i = 0; i < Cases.FLOW.length; i++) {
            assertEquals(Cases.PRESSURE[i], rise(mover, Cases.FLOW[i], 1.2), 1e-12);
            assertEquals(Cases.POWER[i], mover.power(Cases.FLOW[i], 1.2).orElseThrow(), 1e-12);
        }
    }

    /**
     * Conversion rules of ISO 5801 and AMCA 210 with Kp = 1: Q ∝ n D³, Δp ∝ n² D² ρ, P ∝ n³ D⁵ ρ; base point 0.05 m³/s, 80 Pa,
     * 9 W at 2800 rpm, 120 mm and 1.2 kg/m³.
     */
    @ParameterizedTest
    @CsvSource({"2800, 0.120, 1.2, 0.05, 80, 9", "2100, 0.120, 1.2, 0.0375, 45.0, 3.796875",
        "2800, 0.140, 1.2, 0.0793981481, 108.8888889, 19.4525463", "2800, 0.120, 0.909122, 0.05, 60.6081333, 6.818415",
        "3500, 0.120, 1.0, 0.0625, 104.1666667, 14.6484375", "3500, 0.092, 1.0, 0.0281643519, 61.2268519, 3.8799328"})
    void followsTheFanLaws(double rpm, double diameter, double density, double flow, double pressure, double power) {
        AirMover part = Movers.with(Cases.part(Movers.curve("speed", "2800 rpm", "rotorDiameter", "120 mm", "flow", "0 0.05 0.08 m³/s",
                "pressure", "100 80 0 Pa", "power", "8 9 8.5 W")), "rotorDiameter", diameter);
        MoverCharacteristic mover = MoverCharacteristic.of(part, rpm * Math.PI / 30);
        // the table has ten digits
        assertEquals(pressure, rise(mover, flow, density), 2e-9 * pressure + 5e-8);
        assertEquals(power, mover.power(flow, density).orElseThrow(), 2e-9 * power + 5e-8);
    }

    @Property
    void aLikeMoverOfAnotherSizeAndSpeedScales(@ForAll @DoubleRange(min = 0.5, max = 2) @Scale(9) double size,
            @ForAll @DoubleRange(min = 0.5, max = 2) @Scale(9) double speed, @ForAll @DoubleRange(min = -0.02, max = 0.08) @Scale(9) double q) {
        AirMover measured = Cases.part(Movers.curve("speed", Cases.SPEED, "rotorDiameter", 0.1, "flow", "0 0.01 0.02 0.03 0.04 0.05 m³/s",
                "pressure", "80 78 70 54 30 0 Pa", "power", "6 6.5 7 7.2 7 6.4 W"));
        MoverCharacteristic base = MoverCharacteristic.of(Cases.mover(), Cases.SPEED);
        MoverCharacteristic scaled = MoverCharacteristic.of(Movers.with(measured, "rotorDiameter", 0.1 * size), speed * Cases.SPEED);
        double flow = q * speed * Math.pow(size, 3);
        double pressure = Math.pow(speed * size, 2);
        assertEquals(rise(base, q, 1.2) * pressure, rise(scaled, flow, 1.2), 1e-9 * pressure * 80);
        assertEquals(base.power(q, 1.2).orElseThrow() * Math.pow(speed, 3) * Math.pow(size, 5),
                scaled.power(flow, 1.2).orElseThrow(), 1e-8);
        assertEquals(base.lastFlow() * speed * Math.pow(size, 3), scaled.lastFlow(), 1e-12);
    }

    // several speeds

    private static final AirMover TWO_SPEEDS = Cases.part(Cases.curve(100, 1.2, new double[] {0, 0.1}, new double[] {10, 0}, new double[] {1, 2}),
            Cases.curve(200, 1.2, new double[] {0, 0.2}, new double[] {41, 0}, new double[] {9, 15}));

    /** At 120 rad/s four fifths of 10 Pa brought up and one fifth of 41 Pa brought down. */
    @ParameterizedTest
    @CsvSource({"100, 10, 1", "200, 41, 9", "120, 14.472, 1.7712", "180, 33.048, 6.4152", "50, 2.5, 0.125", "400, 164, 72"})
    void mixesTheCurvesOnEitherSideInProportionToTheDistance(double speed, double shutOff, double power) {
        MoverCharacteristic mover = MoverCharacteristic.of(TWO_SPEEDS, speed);
        assertEquals(shutOff, rise(mover, 0, 1.2), 1e-12 * shutOff);
        assertEquals(power, mover.power(0, 1.2).orElseThrow(), 1e-12 * power);
    }

    @Test
    void namesTheNearestOfItsCurves() {
        assertEquals(100, MoverCharacteristic.of(TWO_SPEEDS, 120).measuredSpeed());
        assertEquals(200, MoverCharacteristic.of(TWO_SPEEDS, 180).measuredSpeed());
        assertEquals(2, MoverCharacteristic.of(TWO_SPEEDS, 180).shares().size());
        assertEquals(1, MoverCharacteristic.of(TWO_SPEEDS, 200).shares().size());
    }

    /** A part of two speeds, of curves drawn at random. */
    private static AirMover random(long seed, boolean falling) {
        Random random = new Random(seed);
        MoverCurve[] curves = new MoverCurve[2];
        for (int c = 0; c < 2; c++) {
            int points = 2 + random.nextInt(6);
            double[] flow = new double[points];
            double[] pressure = new double[points];
            for (int i = 0; i < points; i++) {
                flow[i] = (i == 0 ? 0.005 * random.nextInt(2) : flow[i - 1]) + (c + 1) * 0.01 * (0.1 + random.nextDouble());
                pressure[i] = i == 0 ? 100 : falling ? pressure[i - 1] - random.nextInt(2) * 30 * random.nextDouble()
                        : 100 * random.nextDouble();
            }
            curves[c] = Cases.curve(200 * (c + 1), 1.2, flow, pressure, new double[0]);
        }
        return Cases.part(curves);
    }

    @Property
    void mixedCurvesThatFallStillFall(@ForAll long seed, @ForAll @DoubleRange(min = 100, max = 600) @Scale(9) double speed,
            @ForAll @DoubleRange(min = -0.1, max = 0.2) @Scale(9) double flow, @ForAll @DoubleRange(min = 1e-5, max = 0.1) @Scale(9) double step) {
        MoverCharacteristic mover = MoverCharacteristic.of(random(seed, true), speed);
        assertTrue(mover.increasing());
        assertTrue(rise(mover, flow, 1.2) > rise(mover, flow + step, 1.2));
        assertTrue(slope(mover, flow) < 0);
    }

    @Property
    void saysRightlyWhetherItFalls(@ForAll long seed, @ForAll @DoubleRange(min = 100, max = 600) @Scale(9) double speed) {
        MoverCharacteristic mover = MoverCharacteristic.of(random(seed, false), speed);
        double steepest = Double.NEGATIVE_INFINITY;
        for (int i = 0; i <= 4000; i++) {
            steepest = Math.max(steepest, slope(mover, mover.lastFlow() * (-0.5 + 2.0 * i / 4000)));
        }
        // a rise of no account between two places is not seen by looking
        if (mover.increasing()) {
            assertTrue(steepest < 0);
        } else {
            assertTrue(steepest > -0.01 * 100 / mover.lastFlow());
        }
    }

    @Property
    void givesTheSlopeOfItsPressure(@ForAll long seed, @ForAll @DoubleRange(min = 100, max = 600) @Scale(9) double speed,
            @ForAll @DoubleRange(min = -0.05, max = 0.2) @Scale(9) double flow) {
        MoverCharacteristic mover = MoverCharacteristic.of(random(seed, false), speed);
        double h = 1e-7;
        double numeric = (rise(mover, flow + h, 1.2) - rise(mover, flow - h, 1.2)) / (2 * h);
        double bend = Math.abs(slope(mover, flow + h) - slope(mover, flow - h));
        // a level piece is given a fall of a millionth of the highest pressure over the largest flow
        assertEquals(numeric, slope(mover, flow), bend + 1e-6 * Math.abs(numeric) + 1);
    }

    @Property
    void speedsNearAMeasuredOneGiveNearlyItsCurve(@ForAll long seed, @ForAll @DoubleRange(min = -0.05, max = 0.2) @Scale(9) double flow) {
        AirMover part = random(seed, false);
        for (int c = 0; c < 2; c++) {
            double measured = 200 * (c + 1);
            double at = rise(MoverCharacteristic.of(Cases.part(part.curves().get(c)), measured), flow, 1.2);
            assertEquals(at, rise(MoverCharacteristic.of(part, measured), flow, 1.2), 1e-12 * Math.abs(at));
            // the other curve has some 1e-9 of a say, and may lie far off where the flow is beyond its end
            double other = rise(MoverCharacteristic.of(Cases.part(part.curves().get(1 - c)), measured), flow, 1.2);
            for (double off : new double[] {-1e-9, 1e-9}) {
                assertEquals(at, rise(MoverCharacteristic.of(part, measured * (1 + off)), flow, 1.2),
                        1e-7 * (100 + Math.abs(at) + Math.abs(other)));
            }
        }
    }

    @Property
    void pointsRiseAndSpanBothCurves(@ForAll long seed, @ForAll @DoubleRange(min = 200, max = 400) @Scale(9) double speed) {
        AirMover part = random(seed, false);
        MoverCharacteristic mover = MoverCharacteristic.of(part, speed);
        for (int i = 1; i < mover.points(); i++) {
            assertTrue(mover.flow(i) > mover.flow(i - 1));
        }
        double largest = Math.max(last(part.curves().get(0)) * speed / 200, last(part.curves().get(1)) * speed / 400);
        // at a measured speed only that curve counts
        assertTrue(speed == 200 || speed == 400 || Math.abs(largest - mover.lastFlow()) < 1e-12);
        assertEquals(mover.flow(0), mover.firstFlow());
        assertEquals(rise(mover, mover.flow(1), 1.2), mover.pressure(1), 1e-9);
    }

    private static double last(MoverCurve curve) {
        return curve.flow().si().getLast();
    }

    @Test
    void curvesThatFollowTheFanLawsGiveTheSamePointsOnce() {
        double[] flow = {0, 0.011, 0.023};
        AirMover part = Cases.part(Cases.curve(100, 1.2, flow, new double[] {30, 20, 0}, new double[0]),
                Cases.curve(300, 1.2, java.util.Arrays.stream(flow).map(q -> 3 * q).toArray(), new double[] {270, 180, 0}, new double[0]));
        assertEquals(3, MoverCharacteristic.of(part, 170).points());
    }

    @Test
    void powerComesFromTheCurvesThatStateIt() {
        AirMover part = Cases.part(Cases.curve(100, 1.2, new double[] {0, 0.1}, new double[] {10, 0}, new double[0]),
                Cases.curve(200, 1.2, new double[] {0, 0.2}, new double[] {41, 0}, new double[] {8, 8}));
        assertEquals(8 * 0.216, MoverCharacteristic.of(part, 120).power(0.05, 1.2).orElseThrow(), 1e-12);
    }

    /** The cube of the speed by the fan laws (ISO 5801), above what is always lost: 1 + 8 · 0.5³ = 2. */
    @ParameterizedTest
    @CsvSource({"0, 0.5, 1.2, 1.125", "1, 0.5, 1.2, 2", "1, 1, 1.2, 9", "1, 1, 0.6, 5", "1, 2, 1.2, 65", "9, 0.1, 1.2, 9"})
    void aFixedLossStandsOutsideOfTheCube(double loss, double speed, double density, double power) {
        AirMover curve = Movers.with(Cases.part(Movers.curve("speed", Cases.SPEED, "flow", "0 0.05 m³/s", "pressure", "80 0 Pa",
                "power", "9 9 W")), "fixedLoss", loss);
        assertEquals(power, MoverCharacteristic.of(curve, speed * Cases.SPEED).power(0.02, density).orElseThrow(), 1e-12 * power);
        AirMover plain = Movers.with(Movers.with(Movers.with(Cases.part(Movers.curve("flow", "0 0.05 m³/s", "pressure", "80 0 Pa")),
                "ratedSpeed", Cases.SPEED), "ratedPower", 9), "fixedLoss", loss);
        MoverCharacteristic flat = MoverCharacteristic.of(plain, speed * Cases.SPEED);
        assertEquals(power, flat.power(0.02, density).orElseThrow(), 1e-12 * power);
        assertEquals(Optional.empty(), flat.bestEfficiency(density));
    }

    @Test
    void aFixedLossMovesTheBestPoint() {
        // 80 (1 - q/0.05) q over 4 W at half speed 1/8 of 3 W and 1 W: best at half of the flow, 1/8 of 1 W of air power
        AirMover part = Movers.with(Cases.part(Movers.curve("speed", 100, "flow", "0 0.05 m³/s", "pressure", "80 0 Pa", "power", "4 4 W")),
                "fixedLoss", 1);
        MoverCharacteristic.Best best = MoverCharacteristic.of(part, 50).bestEfficiency(1.2).orElseThrow();
        assertEquals(0.0125, best.flow(), 1e-6);
        assertEquals(0.125 / (1 + 3.0 / 8), best.efficiency(), 1e-9);
    }

    // supply frequency

    private static final AirMover MAINS = Cases.part(
            Movers.curve("speed", 280, "frequency", "50 Hz", "flow", "0 0.05 m³/s", "pressure", "80 0 Pa"),
            Movers.curve("speed", 330, "frequency", "60 Hz", "flow", "0 0.06 m³/s", "pressure", "120 0 Pa"));

    /** Never mixed across frequencies: at 50 Hz and 330 rad/s it is the curve of 50 Hz, brought up. */
    @ParameterizedTest
    @CsvSource({"50, 280, 80", "60, 330, 120", ", 280, 80", "50.5, 280, 80", "59, 330, 120", "400, 330, 120", "60, 280, 86.3911846",
        "50, 330, 111.122449"})
    void takesTheCurvesOfTheSupplyFrequency(Double frequency, double speed, double shutOff) {
        assertEquals(shutOff, rise(MoverCharacteristic.of(MAINS, Optional.ofNullable(frequency), speed,
                MoverCharacteristic.Derating.NONE), 0, 1.2), 1e-6);
    }

    @Test
    void saysWhetherAFrequencyWasMeasured() {
        assertTrue(MeasuredCurves.of(MAINS, Optional.of(60.9)).asked());
        assertFalse(MeasuredCurves.of(MAINS, Optional.of(62.0)).asked());
        assertEquals(Optional.of(60.0), MeasuredCurves.of(MAINS, Optional.of(62.0)).frequency());
        assertTrue(MeasuredCurves.of(MAINS, Optional.empty()).asked());
        assertTrue(MeasuredCurves.of(Cases.mover(), Optional.of(62.0)).asked());
        assertEquals(Optional.empty(), MeasuredCurves.of(Cases.mover(), Optional.of(62.0)).frequency());
    }

    // derating, peak, best point

    @Test
    void aDeratedCurveGivesLessFlowAndPressure() {
        MoverCharacteristic mover = MoverCharacteristic.of(Cases.mover(), Optional.empty(), Cases.SPEED,
                new MoverCharacteristic.Derating(0.9, 0.8));
        for (int i = 0; i < Cases.FLOW.length; i++) {
            assertEquals(0.8 * Cases.PRESSURE[i], rise(mover, 0.9 * Cases.FLOW[i], 1.2), 1e-12);
            assertEquals(Cases.POWER[i], mover.power(0.9 * Cases.FLOW[i], 1.2).orElseThrow(), 1e-12);
        }
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {"0 0.01 0.02 0.03|80 60 70 0|0.02", "0 0.01 0.02 0.03|80 90 70 0|0.01",
        "0 0.01 0.02 0.03 0.04 0.05|80 90 60 70 40 0|0.03", "0 0.01 0.02|80 60 0|", "0 0.01 0.02|80 60 70|",
        "0 0.01 0.02 0.03|60 80 40 50|0.01"})
    void findsThePeakRightOfTheDip(String flows, String pressures, Double peak) {
        AirMover part = Cases.part(Movers.curve("speed", 100, "flow", flows + " m³/s", "pressure", pressures + " Pa"));
        OptionalDouble found = MoverCharacteristic.of(part, 200).peakFlow();
        assertEquals(peak != null, found.isPresent());
        if (peak != null) {
            assertEquals(2 * peak, found.getAsDouble(), 1e-12);
        }
    }

    @Property(tries = 5000)
    void thePeakOfAMixedCurveIsOne(@ForAll long seed, @ForAll @DoubleRange(min = 200, max = 400) @Scale(9) double speed) {
        MoverCharacteristic mover = MoverCharacteristic.of(random(seed, false), speed);
        OptionalDouble peak = mover.peakFlow();
        Assume.that(peak.isPresent());
        double at = peak.getAsDouble();
        double near = 1e-7 * mover.lastFlow();
        assertFalse(mover.increasing());
        assertTrue(at > mover.firstFlow() && at < mover.lastFlow());
        assertTrue(rise(mover, at, 1.2) > rise(mover, at - near, 1.2) - 1e-9);
        assertTrue(rise(mover, at, 1.2) > rise(mover, at + near, 1.2) - 1e-9);
    }

    /** p = 80 (1 - q/0.05) Pa at 8 W: best in the middle, with 0.05 · 80/(4 · 8). */
    @Test
    void findsTheBestPoint() {
        AirMover part = Cases.part(Cases.curve(100, 1.2, new double[] {0, 0.05}, new double[] {80, 0}, new double[] {8, 8}));
        MoverCharacteristic.Best best = MoverCharacteristic.of(part, 100).bestEfficiency(1.2).orElseThrow();
        assertEquals(0.025, best.flow(), 1e-8);
        assertEquals(0.125, best.efficiency(), 1e-12);
        // point and efficiency stay with speed, as the fan laws have it
        MoverCharacteristic.Best faster = MoverCharacteristic.of(part, 150).bestEfficiency(0.8).orElseThrow();
        assertEquals(0.0375, faster.flow(), 1e-8);
        assertEquals(0.125, faster.efficiency(), 1e-12);
        assertEquals(Optional.empty(), MoverCharacteristic.of(Cases.dipping(), 100).bestEfficiency(1.2));
    }

    @Property
    void noMeasuredFlowIsBetterThanTheBest(@ForAll @DoubleRange(min = 0, max = 0.05) @Scale(9) double flow) {
        MoverCharacteristic mover = MoverCharacteristic.of(Cases.mover(), Cases.SPEED);
        assertTrue(flow * rise(mover, flow, 1.2) / mover.power(flow, 1.2).orElseThrow()
                <= mover.bestEfficiency(1.2).orElseThrow().efficiency() * (1 + 1e-12));
    }

    @Test
    void aCurveOfAnotherStatedDensityIsBroughtToTheAir() {
        AirMover part = Cases.part(Cases.curve(100, 1.0, new double[] {0, 0.1}, new double[] {10, 0}, new double[0]));
        assertEquals(12, rise(MoverCharacteristic.of(part, 100), 0, 1.2), 1e-12);
    }

    @Property
    void fallsEverywhere(@ForAll @DoubleRange(min = -1, max = 1) @Scale(15) double a, @ForAll @DoubleRange(min = -1, max = 1) @Scale(15) double b,
            @ForAll @DoubleRange(min = 10, max = 900) @Scale(15) double speed) {
        MoverCharacteristic mover = MoverCharacteristic.of(Cases.mover(), speed);
        assertTrue(mover.increasing());
        if (b - a > 1e-6) {
            assertTrue(rise(mover, a, 1.2) > rise(mover, b, 1.2));
        }
    }

    @Property
    void isSmoothAcrossItsEnds(@ForAll @DoubleRange(min = 1e-12, max = 1e-7) @Scale(15) double step) {
        MoverCharacteristic mover = MoverCharacteristic.of(Cases.mover(), Cases.SPEED);
        for (double end : new double[] {0, 0.05}) {
            double at = rise(mover, end, 1.2);
            assertEquals(at + slope(mover, end) * step, rise(mover, end + step, 1.2),
                    2e-3 * step + 1e6 * step * step + 1e-12);
            assertEquals(slope(mover, end - step), slope(mover, end + step), 1e6 * step + 1e-9);
        }
    }

    @Test
    void isAResistanceBeyondItsEnds() {
        MoverCharacteristic mover = MoverCharacteristic.of(Cases.mover(), Cases.SPEED);
        assertTrue(rise(mover, -0.05, 1.2) > 2 * 80 - 1e-9);
        assertTrue(rise(mover, 0.10, 1.2) < -80);
        // at least a square law far out
        assertTrue(rise(mover, -1.0, 1.2) / rise(mover, -0.5, 1.2) > 3.5);
        assertTrue(rise(mover, 1.0, 1.2) / rise(mover, 0.5, 1.2) > 3.5);
    }

    private static final AirMover RISING_FROM_REST = Cases.part(Cases.curve(100, 1.2, new double[] {0, 5e-3, 0.02, 0.04},
            new double[] {60, 120, 110, 0}, new double[0]));

    /** The slope at rest, by the three-point formula of PCHIP, is 15167 Pa/(m³/s); a quarter of it over 2 % of 0.04 m³/s is 3.03 Pa. */
    @Property
    void aRiseFromRestDoesNotSuckAirBackwards(@ForAll @DoubleRange(min = -0.2, max = 0) @Scale(9) double flow) {
        MoverCharacteristic mover = MoverCharacteristic.of(RISING_FROM_REST, 100);
        assertEquals(15166.667, slope(mover, 0), 1e-2);
        // the square term at the lowest place
        assertTrue(rise(mover, flow, 1.2) > 60 - 3.04);
        assertEquals(60 + flow * slope(mover, 0) / Math.pow(1 - flow / 8e-4, 2) + 120 * Math.pow(flow / 0.04, 2), rise(mover, flow, 1.2),
                1e-9 * (60 + Math.abs(rise(mover, flow, 1.2))));
    }

    @Test
    void aRiseAtTheLastPointSoonEnds() {
        double[] pressure = {80, 60, 20, 40};
        MoverCharacteristic mover = MoverCharacteristic.of(Cases.part(Cases.curve(100, 1.2, new double[] {0, 0.02, 0.04, 0.05},
                pressure, new double[0])), 100);
        double slope = slope(mover, 0.05);
        assertTrue(slope > 1000);
        double highest = 0;
        for (double flow = 0.05; flow < 0.2; flow += 1e-5) {
            highest = Math.max(highest, rise(mover, flow, 1.2));
        }
        assertEquals(40 + slope * 0.001 / 4, highest, 80 * 0.02 * 0.02);
        assertTrue(rise(mover, 0.15, 1.2) < 40 - 80 * 4 + slope * 0.001 / 4);
    }

    /** Curves that rise at either end or both: neither pressure nor slope jumps, and beyond them neither leaves its bound. */
    @Property
    void risesAtTheEndsDieAwaySmoothly(@ForAll @DoubleRange(min = 1, max = 79) @Scale(9) double first,
            @ForAll @DoubleRange(min = 1, max = 79) @Scale(9) double last, @ForAll @DoubleRange(min = 1e-4, max = 0.5) @Scale(9) double far,
            @ForAll @DoubleRange(min = 30, max = 300) @Scale(9) double speed) {
        AirMover part = Cases.part(Cases.curve(100, 1.2, new double[] {0.002, 0.01, 0.03, 0.05}, new double[] {first, 80, 0, last},
                new double[0]));
        MoverCharacteristic mover = MoverCharacteristic.of(part, speed);
        double ratio = speed / 100;
        for (double end : new double[] {mover.firstFlow(), mover.lastFlow()}) {
            double at = rise(mover, end, 1.2);
            double slope = slope(mover, end);
            assertTrue(slope > 0);
            double step = 1e-9 * mover.lastFlow();
            assertEquals(at, rise(mover, end + step, 1.2), 2 * slope * step);
            assertEquals(at, rise(mover, end - step, 1.2), 2 * slope * step);
            assertEquals(slope, slope(mover, end + step), 1e-5 * (slope + 80 * ratio / 0.05));
            assertEquals(slope, slope(mover, end - step), 1e-5 * (slope + 80 * ratio / 0.05));
            double side = end == mover.firstFlow() ? -1 : 1;
            double square = 80 * far * far / 0.05 / 0.05 * ratio * ratio;
            double added = rise(mover, end + side * far * ratio, 1.2) - at + side * square;
            assertTrue(side * added > 0);
            assertTrue(side * added <= slope * 0.02 * mover.lastFlow() / 4 + 1e-12 * square);
            double h = 1e-5 * far * ratio;
            double numeric = (rise(mover, end + side * far * ratio + h, 1.2) - rise(mover, end + side * far * ratio - h, 1.2)) / (2 * h);
            assertEquals(numeric, slope(mover, end + side * far * ratio), 1e-3 * slope + 1e-4 * square / (far * ratio));
        }
    }

    @Test
    void powerStaysAtItsEnds() {
        MoverCharacteristic mover = MoverCharacteristic.of(Cases.mover(), Cases.SPEED);
        assertEquals(OptionalDouble.of(6), mover.power(-0.01, 1.2));
        assertEquals(OptionalDouble.of(6.4), mover.power(0.09, 1.2));
        assertEquals(OptionalDouble.empty(), MoverCharacteristic.of(Cases.dipping(), Cases.SPEED).power(0.01, 1.2));
    }

    @Test
    void aLevelPieceStillFallsALittle() {
        AirMover part = Cases.part(Cases.curve(100, 1.2, new double[] {0, 0.1, 0.2, 0.3}, new double[] {50, 50, 30, 0}, new double[0]));
        MoverCharacteristic mover = MoverCharacteristic.of(part, 100);
        assertTrue(mover.increasing());
        for (double flow = -0.1; flow < 0.4; flow += 0.001) {
            assertTrue(slope(mover, flow) < 0);
        }
        assertEquals(50, rise(mover, 0.05, 1.2), 50e-6);
    }

    @Test
    void aDipIsSeen() {
        assertFalse(MoverCharacteristic.of(Cases.dipping(), Cases.SPEED).increasing());
    }

    @Test
    void saysWhatAPartLacks() {
        assertEquals(Optional.empty(), MoverCharacteristic.fault(Cases.mover()));
        assertEquals(Optional.of("has no curve"), MoverCharacteristic.fault(Cases.part()));
        MoverCurve speedless = new MoverCurve(Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty(),
                Quantities.of(0, 1), Quantities.of(5, 0), Optional.empty(), Optional.empty(), Value.Tree.EMPTY);
        assertEquals(Optional.of("states no speed, neither a rated one nor at a curve"),
                MoverCharacteristic.fault(Cases.part(speedless)));
        assertEquals(Optional.of("has 2 flows and 3 pressures in its curve"), MoverCharacteristic.fault(
                Cases.part(Cases.curve(1, 1.2, new double[] {0, 1}, new double[] {5, 3, 0}, new double[0]))));
        assertEquals(Optional.of("gives no pressure at any flow in its curve"), MoverCharacteristic.fault(
                Cases.part(Cases.curve(1, 1.2, new double[] {0, 1}, new double[] {0, -1}, new double[0]))));
    }
}
