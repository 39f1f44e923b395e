package tramontane.physics;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ResistanceTest {

    private static final double RHO = 1.2;
    private static final double MU = 1.81e-5;

    /** Idelchik, Handbook of Hydraulic Resistance, 3rd ed., diagrams 8-1 and 8-3; friction factor 0.02. */
    @ParameterizedTest
    @CsvSource({
        "0.2, 52.58039, 44.90768, 31.55387, 27.92622",
        "0.3, 19.31567, 16.49631, 11.57544, 10.27087",
        "0.4, 8.75789,  7.48690,  5.25953,  4.68975",
        "0.5, 4.36953,  3.74538,  2.64483,  2.37876",
        "0.6, 2.25705,  1.94550,  1.39050,  1.26923",
        "0.7, 1.14836,  1.00094,  0.73306,  0.68641",
        "0.8, 0.53773,  0.47979,  0.36902,  0.36192",
    })
    void perforatedPlates(double free, double thin, double thickHalf, double thickOne, double thickTwo) {
        assertEquals(thin, Resistance.thinPlate(free), 1e-5 * thin + 5e-6);
        assertEquals(thickHalf, Resistance.thickPlate(free, 0.5, 0.02), 1e-5 * thickHalf + 5e-6);
        assertEquals(thickOne, Resistance.thickPlate(free, 1, 0.02), 1e-5 * thickOne + 5e-6);
        assertEquals(thickTwo, Resistance.thickPlate(free, 2, 0.02), 1e-5 * thickTwo + 5e-6);
    }

    @Test
    void openingInALargeWall() {
        assertEquals(1.707 * 1.707, Resistance.opening(0), 1e-12);
        // ideal contraction to 0.611 (Kirchhoff) is the lower bound
        assertTrue(Resistance.opening(0) > 1 / (0.611 * 0.611));
        assertEquals(0, Resistance.opening(1));
        assertThrows(IllegalArgumentException.class, () -> Resistance.opening(1.1));
        assertThrows(IllegalArgumentException.class, () -> Resistance.thickPlate(0, 1, 0.02));
    }

    @Test
    void dropIsTheSquareLawAtOrdinaryFlow() {
        double area = 0.01;
        double c = Resistance.coefficient(2.5, RHO, area);
        double q0 = Resistance.transitionFlow(area, 0.003, RHO, MU);
        double v = 2; // m/s through 3 mm holes: Re 400
        double square = 2.5 * RHO * v * v / 2;
        assertEquals(square, Resistance.drop(v * area, c, q0), 1e-6 * square);
        assertEquals(2 * square / (v * area), Resistance.slope(v * area, c, q0), 1e-6 * 2 * square / (v * area));
    }

    @Test
    void creepingFlowIsLinearAndGoesWithViscosityOnly() {
        double area = 0.01;
        double q = 1e-9;
        double thick = Resistance.drop(q, Resistance.coefficient(2.5, RHO, area),
                Resistance.transitionFlow(area, 0.003, RHO, 2 * MU));
        double thin = Resistance.drop(q, Resistance.coefficient(2.5, RHO, area),
                Resistance.transitionFlow(area, 0.003, RHO, MU));
        double light = Resistance.drop(q, Resistance.coefficient(2.5, RHO / 2, area),
                Resistance.transitionFlow(area, 0.003, RHO / 2, MU));
        assertEquals(2, thick / thin, 1e-9);
        assertEquals(1, light / thin, 1e-9);
    }

    /** Worked by hand: 20 v + 8 v² with v the face velocity, area 1 m². */
    @ParameterizedTest
    @CsvSource({"0.5, 12", "1, 28", "2, 72", "2.5, 100"})
    void filterOfLinearAndSquarePart(double flow, double drop) {
        assertEquals(drop, Resistance.drop(flow, 20, 8, 0), 1e-12 * drop);
        assertEquals(20 + 16 * flow, Resistance.slope(flow, 20, 8, 0), 1e-12);
        double[] q = {0.5, 1, 2};
        MeasuredResistance measured = MeasuredResistance.of(q, new double[] {12, 28, 72}, RHO, MU);
        assertEquals(drop, measured.drop(flow, RHO, MU), 1e-12 * drop);
        assertEquals(-20 - 16 * flow, -measured.slope(-flow, RHO, MU), 1e-10);
    }

    @Test
    void slopeAtRestIsFiniteAndPositive() {
        assertEquals(5 * 0.01, Resistance.slope(0, 5, 0.01), 1e-15);
        assertEquals(7 + 5 * 0.01, Resistance.slope(0, 7, 5, 0.01), 1e-15);
        assertEquals(7, Resistance.slope(0, 7, 5, 0));
        assertEquals(7, Resistance.slope(1e-300, 7, 5, 0)); // whose fourth power is 0
    }

    @Test
    void onePointIsASquareLawThatGoesWithDensity() {
        MeasuredResistance law = MeasuredResistance.of(new double[] {0.02}, new double[] {50}, RHO, MU);
        assertEquals(50, law.drop(0.02, RHO, MU), 1e-6);
        assertEquals(200, law.drop(0.04, RHO, MU), 1e-6);
        assertEquals(-150, law.drop(-0.04, 0.9, MU), 1e-6);
        assertEquals(50, law.drop(0.02, RHO, 1.1 * MU), 1e-6);
    }

    @Test
    void linearPartGoesWithViscosityAndSquarePartWithDensity() {
        double[] q = {0.01, 0.02, 0.04};
        MeasuredResistance law = MeasuredResistance.of(q, new double[] {7, 20, 64}, RHO, MU); // 400 q + 3e4 q²
        double flow = 0.015;
        assertEquals(400 * 1.2 * flow + 3e4 * 0.8 * flow * flow, law.drop(flow, 0.8 * RHO, 1.2 * MU), 1e-10);
        assertEquals(400 * 1.2 + 6e4 * 0.8 * flow, law.slope(flow, 0.8 * RHO, 1.2 * MU), 1e-8);
    }

    @Test
    void refusesTablesThatDoNotRise() {
        assertThrows(IllegalArgumentException.class,
                () -> MeasuredResistance.of(new double[] {0}, new double[] {0}, RHO, MU));
        assertThrows(IllegalArgumentException.class,
                () -> MeasuredResistance.of(new double[] {1, 2}, new double[] {5, 5}, RHO, MU));
        assertThrows(IllegalArgumentException.class,
                () -> MeasuredResistance.of(new double[] {1, 1}, new double[] {5, 6}, RHO, MU));
        assertThrows(IllegalArgumentException.class,
                () -> MeasuredResistance.of(new double[] {1, 2}, new double[] {5, Double.NaN}, RHO, MU));
        assertThrows(IllegalArgumentException.class,
                () -> MeasuredResistance.of(new double[] {1}, new double[] {5}, 0, MU));
    }

    @Provide
    Arbitrary<Double> flows() {
        return Arbitraries.doubles().between(-7, 1).map(exponent -> Math.pow(10, exponent));
    }

    @Provide
    Arbitrary<double[]> steps() {
        return Arbitraries.doubles().between(0.05, 5).array(double[].class).ofMinSize(1).ofMaxSize(7);
    }

    @Property
    void dropIsOddRisingAndItsSlopeTheDerivative(@ForAll("flows") double flow,
            @ForAll("flows") double transition) {
        double h = 1e-5 * flow;
        double above = Resistance.drop(flow + h, 3, 40, transition);
        double below = Resistance.drop(flow - h, 3, 40, transition);
        assertTrue(above > below);
        assertEquals(-above, Resistance.drop(-flow - h, 3, 40, transition));
        double slope = Resistance.slope(flow, 3, 40, transition);
        assertEquals((above - below) / (2 * h), slope, 1e-7 * slope);
        assertEquals(slope, Resistance.slope(-flow, 3, 40, transition));
    }

    @Property
    void measuredDropIsOddRisingThroughItsPointsAndSmooth(@ForAll("steps") double[] flowSteps,
            @ForAll("steps") double[] dropSteps, @ForAll @DoubleRange(min = 0, max = 1.5) double part) {
        int n = Math.min(flowSteps.length, dropSteps.length);
        double[] q = new double[n];
        double[] p = new double[n];
        for (int i = 0; i < n; i++) {
            q[i] = flowSteps[i] + (i == 0 ? 0 : q[i - 1]);
            p[i] = dropSteps[i] + (i == 0 ? 0 : p[i - 1]);
        }
        MeasuredResistance law = MeasuredResistance.of(q, p, RHO, MU);
        for (int i = 0; i < n; i++) {
            assertEquals(p[i], law.drop(q[i], RHO, MU), 1e-8 * p[i]);
            double below = law.slope(Math.nextDown(q[i]), RHO, MU);
            assertEquals(below, law.slope(Math.nextUp(q[i]), RHO, MU), 1e-9 * (1 + below));
        }
        double at = part * q[n - 1];
        double h = 1e-6 * q[n - 1];
        double above = law.drop(at + h, RHO, MU);
        double below = law.drop(at - h, RHO, MU);
        assertTrue(above > below);
        assertEquals(-above, law.drop(-at - h, RHO, MU), 1e-12 * Math.abs(above));
        // at rest the slope has an extremum, so its values on both sides do not bound the secant by themselves
        double[] slopes = {law.slope(at - h, RHO, MU), law.slope(at, RHO, MU), law.slope(at + h, RHO, MU)};
        double low = Arrays.stream(slopes).min().getAsDouble();
        double high = Arrays.stream(slopes).max().getAsDouble();
        double secant = (above - below) / (2 * h);
        assertTrue(secant >= low - 1e-4 * (1 + low) && secant <= high + 1e-4 * (1 + high), secant + " " + low);
        assertTrue(law.slope(0, RHO, MU) > 0);
        assertEquals(0, law.drop(0, RHO, MU));
    }
}
